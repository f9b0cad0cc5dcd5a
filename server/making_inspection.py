"""The inspection sheet in words: every characteristic with its limits, its reading and the verdict, and the part as made."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from geometry.as_made import AsMade, judge_as_made
from geometry.conditions import Conditions
from geometry.document.as_made import READABLE
from geometry.inspection import Characteristic, InspectionSheet, inspection_sheet
from geometry.letters import lower_first
from geometry.making.instruments import EYE
from geometry.making.sources import inspection_sources
from geometry.making.wording import Units
from geometry.readings import Judged, Verdict
from geometry.rules import CHECK_RULES
from geometry.standing import sets_of
from server import shown
from server.check_views import verdict_words
from server.field_views import FieldView
from server.forms import FormReading
from server.making_case import SETS, Case, Head, head_of, hidden_of
from server.making_shop import ask
from server.making_views import in_units

ABOUT = ("instrument", "uncertainty_mm", "part_temperature_c", "hours_since_cutting", "note")
"""What is asked about a whole set of readings."""
SET_WORDS = ("First readings", "Second readings, such as a day later", "Third readings")
KEPT_IN_ADDRESS = (
    "Readings typed here stand in this page's address and nowhere else: nobody gets them unless you send it on. Somebody who sent"
    " you a link to a saved design gets what you type on the inspection sheet that its page leads to."
)
"""What becomes of readings, unless the page belongs to a saved design."""
VERDICT_WORDS: Mapping[Verdict, str] = {
    "accept": "inside its limits",
    "doubtful": "in doubt",
    "reject": "outside its limits",
    "asked": "is this a slip?",
    "open": "open",
}


@dataclass(frozen=True, slots=True)
class VerdictView:
    """What became of the readings of one dimension."""

    kind: Verdict
    short: str
    words: str
    sure: str
    """The key that says that the readings are no slip; empty where nothing is asked."""


@dataclass(frozen=True, slots=True)
class LineView:
    """One line of the sheet."""

    number: int
    title: str
    is_reference: bool
    nominal: str
    limits: str
    """Empty for what is only looked at."""
    instrument: str
    instrument_note: str
    is_held: bool
    """Whether it is held to an instrument though nothing is entered here, so that the method is told with its limit."""
    how: str
    checks: tuple[str, ...]
    field: FieldView | None
    verdict: VerdictView | None
    """None for what is only looked at."""


@dataclass(frozen=True, slots=True)
class SetView:
    """The questions of a further set of readings."""

    heading: str
    line: str
    about: tuple[FieldView, ...]
    readings: tuple[tuple[FieldView, VerdictView | None], ...]
    is_open: bool


@dataclass(frozen=True, slots=True)
class MarginRow:
    """One estimate before and after the part was measured."""

    title: str
    drawn: str
    made: str
    is_worse: bool


@dataclass(frozen=True, slots=True)
class OutcomeView:
    """What the readings say of the part."""

    outcome: str
    words: str
    reasons: tuple[str, ...]
    notes: tuple[str, ...]
    margins: tuple[MarginRow, ...]
    unmoved: str
    unread: str


@dataclass(frozen=True, slots=True)
class InspectionPage:
    """The sheet, the form and the outcome."""

    head: Head
    back: str
    caution_line: str
    kept: str
    """What becomes of readings that are typed here."""
    notes: tuple[str, ...]
    about: tuple[FieldView, ...]
    lines: tuple[LineView, ...]
    further: tuple[SetView, ...]
    hidden: tuple[tuple[str, str], ...]
    outcome: OutcomeView | None
    shows_standing: bool
    """Whether readings in service say more of the part than the outcome."""
    problems: tuple[tuple[str, str], ...]
    """The title and the id of each field with something wrong."""
    sources: tuple[tuple[str, str], ...]
    units: str


def inspection_page(case: Case) -> InspectionPage:
    """The context of the page."""
    design, reading = case.design, case.reading
    made = judge_as_made(design.pad, design.conditions, sets_of(design))
    judged = {j.dimension: j for j in made.judged}
    head = head_of(case, "inspection")
    sheet = inspection_sheet(design.pad, design.conditions)
    lines = lines_of(sheet, design.conditions, reading, judged)
    first, *others = SETS
    about = about_set(first, reading)
    further = tuple(_further(n, group, judged, reading) for n, group in enumerate(others, start=2))
    asked = [*about, *(line.field for line in lines if line.field)]
    asked += [f for s in further for f in (*s.about, *(f for f, _ in s.readings))]
    return InspectionPage(
        head=head,
        back=head.back,
        caution_line=head.caution_line,
        kept=KEPT_IN_ADDRESS,
        notes=tuple(note.shown(reading.units) for note in sheet.notes),
        about=about,
        lines=lines,
        further=further,
        hidden=hidden_of(reading, frozenset(field.key for field in asked), case.day),
        outcome=outcome_view(made, reading.units) if any(taken.given() for taken in sets_of(design)) else None,
        shows_standing=bool(design.measurements.wear.log) and made.outcome != "do_not_use",
        problems=tuple((field.title, field.id) for field in asked if field.problem),
        sources=tuple((words, str(source)) for words, source in inspection_sources(design.conditions)),
        units=reading.units,
    )


def asked_on(page: InspectionPage) -> frozenset[str]:
    """The keys of every answer that a page asks for."""
    further = [f for s in page.further for f in (*s.about, *(f for f, _ in s.readings))]
    return frozenset(f.key for f in (*page.about, *(line.field for line in page.lines if line.field), *further))


def lines_of(
    sheet: InspectionSheet, conditions: Conditions, reading: FormReading, judged: Mapping[str, Judged]
) -> tuple[LineView, ...]:
    """Every line of a sheet; sizes that can be read have a box, with what became of what was read."""
    return tuple(_line(c, judged.get(c.name), conditions, reading) for c in sheet.characteristics)


def about_set(group: str, reading: FormReading) -> tuple[FieldView, ...]:
    """The questions about a set; that its readings are no slips is asked only where it was said, to take it back."""
    names = (*ABOUT, *(("sure",) if f"{group}sure" in reading.typed else ()))
    return tuple(ask(f"{group}{name}", reading) for name in names)


def _line(c: Characteristic, j: Judged | None, conditions: Conditions, reading: FormReading) -> LineView:
    units = reading.units
    is_measured = c.lower_mm is not None and c.upper_mm is not None and c.nominal_mm is not None
    limits = f"{shown.length(c.lower_mm or 0, units)} to {shown.length_with_unit(c.upper_mm or 0, units)}"
    rough = "" if c.is_fine_enough else "decides only roughly: its limits are close for it"
    return LineView(
        number=c.number,
        title=c.title,
        is_reference=c.is_reference,
        nominal=shown.length_with_unit(c.nominal_mm, units) if c.nominal_mm is not None else "",
        limits=limits if is_measured else "",
        instrument=c.instrument.name,
        instrument_note=rough,
        is_held=not is_measured and c.instrument is not EYE,
        how=c.how.shown(units),
        checks=tuple(lower_first(conditions.said(CHECK_RULES[code].title)) for code in c.checks),
        field=ask(f"{SETS[0]}{c.name}", reading) if c.name in READABLE else None,
        verdict=verdict_view(j, units) if j else None,
    )


def verdict_view(j: Judged, units: Units, *, in_set: int = 1) -> VerdictView:
    """A verdict in words beside the readings of one set; where another set counts, it says which."""
    if j.set_number and j.set_number != in_set:
        later = f"Judged by the {('first', 'second', 'third')[j.set_number - 1]} readings: {VERDICT_WORDS[j.verdict]}."
        return VerdictView(j.verdict, VERDICT_WORDS[j.verdict], later, "")
    words = "" if j.verdict == "open" else j.words.shown(units)
    sure = f"{SETS[j.set_number - 1]}sure" if j.verdict == "asked" else ""
    return VerdictView(j.verdict, VERDICT_WORDS[j.verdict], words, sure)


def _further(number: int, group: str, judged: Mapping[str, Judged], reading: FormReading) -> SetView:
    """A second or third set; open where something of it was typed."""
    about = about_set(group, reading)
    rows = []
    for name in READABLE:
        if name in judged or f"{group}{name}" in reading.typed:
            field, j = ask(f"{group}{name}", reading), judged.get(name)
            field = replace(field, title=f"{j.title}, as read") if j else field
            counts = j is not None and j.set_number == number
            rows.append((field, verdict_view(j, reading.units, in_set=number) if j and counts else None))
    given = sum(1 for field, _ in rows if field.text)
    is_touched = given > 0 or any(field.text for field in about)
    line = f"{given} of {len(rows)} read" if given else "none yet"
    return SetView(SET_WORDS[number - 1], line, about, tuple(rows), is_touched)


def outcome_view(made: AsMade, units: Units) -> OutcomeView:
    """The outcome in words, with the margins before and after."""
    rows = (MarginRow(c.made.title, verdict_words(c.drawn), verdict_words(c.made), c.is_worse) for c in made.changed)
    moved = tuple(row for row in rows if row.drawn != row.made)
    still = len(made.checks) - len(moved)
    titles = {j.dimension: lower_first(j.title) for j in made.judged}
    return OutcomeView(
        outcome=made.outcome,
        words=made.words,
        reasons=tuple(in_units(reason, units) for reason in made.reasons),
        notes=tuple(note.shown(units) for note in made.notes),
        margins=moved,
        unmoved=f"The other {still} are as drawn, to a hundredth of their limit."
        if moved
        else "No estimate has moved.",
        unread=", ".join(titles[name] for name in made.unread),
    )
