"""One design on the shop's pages: what is read of its address, and what stands at the head and foot of each page."""

from dataclasses import dataclass, replace
from typing import Literal

from geometry import ENGINE_VERSION
from geometry.cautions import ONE_LINE
from geometry.design import Design
from geometry.drawing.frame import NOT_FIT
from geometry.errors import Problem
from server import links
from server.carried import NO_DAY, AnotherDay
from server.field_views import LinkView, with_units_spelled_out
from server.fields import FIELDS
from server.forms import FormReading, Units, read_form
from server.making_views import Standing, as_made_standing
from server.outcome import outcome_of

Kind = Literal["route", "inspection", "record"]
TITLES: dict[Kind, str] = {
    "route": "Route card",
    "inspection": "Inspection sheet",
    "record": "Record in service",
}
"""The pages of the shop, in the order in which they are needed."""
SHOP, SETS, WEAR = "shop.", ("as_made.", "as_made_2.", "as_made_3."), "wear."
"""Keys that change neither the drawing nor its estimates: what is wrong in them is said beside them, and left out."""
_UNITS: tuple[Units, ...] = ("mm", "in")
_PENDING = "Go on with the readings of another day: they are typed and not entered"


@dataclass(frozen=True, slots=True)
class Case:
    """A design, and the reading of the address that it was made from."""

    reading: FormReading
    """As typed, with every problem."""
    design: Design
    day: AnotherDay = NO_DAY
    """Readings of another day that were typed and are not entered."""


@dataclass(frozen=True, slots=True)
class Belongs:
    """The saved revision that a page of the shop was opened from."""

    way: LinkView
    """The way back to it."""
    letters: str


@dataclass(frozen=True, slots=True)
class Head:
    """What stands at the head and the foot of a page, on the screen and on every sheet of paper."""

    kind: str
    title: str
    identity: str
    verdict: str
    unfit: str
    """The words for a design that fails an estimate; empty where none fails."""
    standing: Standing | None
    """What the readings say of the part that was made; None where there are none."""
    back: str
    pages: tuple[tuple[LinkView, bool], ...]
    """The pages of the shop, and whether each is this one."""
    data: str
    units: str
    units_links: tuple[LinkView, ...]
    caution_line: str
    here: str
    """Where a form of this page is sent to."""
    belongs: Belongs | None = None
    """None for a design that stands in its address alone."""
    pending: LinkView | None = None
    """The way to readings of another day that were typed and are not entered; None where there are none."""


def case_of(reading: FormReading, day: AnotherDay = NO_DAY) -> Case | None:
    """The design of an address; what is wrong in shop and readings is left out, anything else leaves no design."""
    wrong = {_key(problem.field) for problem in reading.problems}
    if not all(key in FIELDS and key.startswith((SHOP, *SETS, WEAR)) for key in wrong):
        return None
    rest = [(key, text) for key, text in reading.typed.items() if key not in wrong]
    whole = read_form([*rest, ("units", reading.units)]) if wrong else reading
    design = outcome_of(whole).design
    if design is None:
        return None
    problems = tuple(replace_field(problem) for problem in reading.problems)
    return Case(replace(reading, problems=problems, measurements=whole.measurements), design, day)


def _key(field: str) -> str:
    """The field that a problem belongs to; a problem of one of several readings belongs to their field."""
    return ".".join(field.split(".")[:2])


def replace_field(problem: Problem) -> Problem:
    """The problem, named by the field that is asked for."""
    return Problem(_key(problem.field), problem.value, problem.message)


def head_of(case: Case, kind: Kind, *, title: str = "") -> Head:
    """Head and foot of a page."""
    design, reading, day = case.design, case.reading, case.day
    unfit = "" if design.fit_to_make else f"{NOT_FIT}."
    return Head(
        kind=title or TITLES[kind],
        title=design.measurements.title or "Lifting pad",
        identity=f"design {design.design_id}, engine {ENGINE_VERSION}",
        verdict=design.verdict_words,
        unfit=unfit,
        standing=as_made_standing(design, reading.units),
        back=links.pad_address(reading.typed, units=reading.units),
        pages=tuple((LinkView(words, address(reading, page, day=day)), page == kind) for page, words in TITLES.items()),
        data=address(reading, kind, ".json"),
        units=reading.units,
        units_links=tuple(
            LinkView(
                wanted,
                links.pad_address(
                    with_units_spelled_out(reading.typed, reading.units, wanted),
                    f"/{kind}",
                    units=wanted,
                    view=day.keys(reading.units, wanted),
                ),
            )
            for wanted in _UNITS
        ),
        caution_line=ONE_LINE,
        here=f"/pad/{kind}",
        pending=pending_way(kind, address(reading, "record", day=day)) if day.texts else None,
    )


def pending_way(kind: Kind, record: str) -> LinkView | None:
    """From another page to the record on which the readings of another day wait to be entered."""
    return LinkView(_PENDING, f"{record}#another-day") if kind != "record" else None


def address(reading: FormReading, page: Kind, ending: str = "", *, day: AnotherDay = NO_DAY) -> str:
    """The address of one of the pages."""
    carried = day.keys(reading.units, reading.units)
    return links.pad_address(reading.typed, f"/{page}{ending}", units=reading.units, view=carried)


def hidden_of(reading: FormReading, asked: frozenset[str], day: AnotherDay = NO_DAY) -> tuple[tuple[str, str], ...]:
    """What a form has to carry along: every answer that it does not ask for, another day's readings, and the viewer's units."""
    kept = [(key, text) for key, text in reading.typed.items() if key not in asked]
    kept += day.keys(reading.units, reading.units).items()
    return (*kept, *((("units", reading.units),) if reading.units != "mm" else ()))
