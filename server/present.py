"""One typed context for the working sheet: everything its templates print, as words. They compute nothing."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from markupsafe import Markup

from geometry.cautions import ONE_LINE
from geometry.design import Design
from geometry.errors import NoPadFitsError
from geometry.plausible import doubts_of
from server import check_views, field_groups, links, shown
from server import design_views as views
from server.check_views import CheckGroup
from server.field_groups import FieldGroup
from server.field_views import FieldView, LinkView, field_id, field_view, link_to, title_of, with_units_spelled_out
from server.forms import FormReading
from server.making_views import SheetMaking, sheet_making
from server.stand import not_here, stand_for
from server.turn_view import TurnView, turn_view
from server.ways import ways_of

State = Literal["start", "unfinished", "refused", "no_pad", "fit", "not_fit"]
"""How far the job has come: nothing typed, something missing, something wrong, nothing fits, a pad."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """The outcome in one or two sentences."""

    headline: str
    beside: str
    """What else to know at once; may be empty."""
    short: str = ""
    """The same in fewer words, for the edge of a phone; empty where there are few."""

    @property
    def at_the_edge(self) -> str:
        """What stands at the bottom edge of a phone."""
        return self.short or self.headline


@dataclass(frozen=True, slots=True)
class FileView:
    """One file of the design."""

    name: str
    words: str
    href: str
    """Its address; of a model that is not fit to make, the address that the confirmation is sent to."""


@dataclass(frozen=True, slots=True)
class MarkView:
    """The words beside a lettered mark of the wide picture."""

    mark: str
    words: str
    numbers: str
    at: int
    is_left: bool


_OUTBOARD = "seam.clear_outboard_mm"


@dataclass(frozen=True, slots=True)
class SectionView:
    """The assembled section for two widths, and at which hundredth of the wide one's height each balloon stands."""

    wide: Markup
    phone: Markup
    heights: Mapping[str, int]
    marks: tuple[MarkView, ...]

    @property
    def jack_top(self) -> int:
        """Where the jack's column begins."""
        return self._top(is_left=True)

    @property
    def car_top(self) -> int:
        """Where the car's column begins."""
        return self._top(is_left=False)

    @property
    def outboard_is_first(self) -> bool:
        """Whether the car's one question on the jack's side stands above all of the jack's."""
        return self.heights.get(_OUTBOARD, 100) < self.jack_top

    def _top(self, *, is_left: bool) -> int:
        questions = [at for key, at in self.heights.items() if key.startswith("jack.") == is_left and key != _OUTBOARD]
        return min(questions + [mark.at for mark in self.marks if mark.is_left == is_left])


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of a reading: a design, a conflict, or neither yet."""

    reading: FormReading
    design: Design | None = None
    conflict: NoPadFitsError | None = None

    @property
    def state(self) -> State:
        """How far the job has come."""
        if self.conflict:
            return "no_pad"
        if self.design:
            return "fit" if self.design.fit_to_make else "not_fit"
        if self.reading.problems:
            return "refused"
        return "unfinished" if self.reading.typed else "start"


@dataclass(frozen=True, slots=True)
class PadPage:
    """The working sheet."""

    state: State
    has_welcome: bool
    job: FieldView
    units: str
    units_links: tuple[LinkView, ...]
    measure: str
    """The address of the measuring sheet."""
    elsewhere: tuple[LinkView, ...]
    """The other pages that this one leads to."""
    samples: tuple[LinkView, ...]
    section: SectionView
    kinds: tuple[FieldView, ...]
    """What the jack carries with and what the car is lifted by."""
    jack: tuple[FieldView, ...]
    seam: tuple[FieldView, ...]
    jack_mass: FieldView
    car_mass: FieldView
    not_here: str
    """Which of the numbered measurements this jack has no use for; empty where all are asked."""
    more_jack: FieldGroup
    more_seam: FieldGroup
    groups: tuple[FieldGroup, ...]
    hidden: tuple[tuple[str, str], ...]
    problems: tuple[LinkView, ...]
    doubts: tuple[LinkView, ...]
    """Numbers that can be and seldom are; they stand in nobody's way."""
    missing: tuple[LinkView, ...]
    verdict: Verdict
    conflict: views.ConflictView | None
    dimensions: tuple[views.DimensionView, ...]
    pad_line: str
    checks: tuple[CheckGroup, ...]
    load: tuple[tuple[str, str], ...]
    calculation: str
    """The address of every line of the calculation; empty where there is no pad."""
    changes: str
    """The address of computed changes that would help; empty where nothing can be computed yet."""
    beside: str
    """The address of what is computed from many designs at once; empty where there is no pad."""
    turn: TurnView | None
    """The pad to turn in the hand; None where there is no pad."""
    no_models: str
    """What keeps this machine from building models, and what to install; empty where nothing does."""
    drawing: str
    drawing_page: str
    """The address where the drawing can be looked at closely; empty where there is no pad."""
    save: str
    """Where the design is saved, and links to it are made."""
    fixed: tuple[LinkView, ...]
    """The sizes that somebody fixed, each with the way to its box."""
    all_let_go: str
    """The address without any fixed size."""
    inch_steps: str
    """The same job in inch steps, for one who reads inches; empty where it is so, or not wanted."""
    making: SheetMaking | None
    files: tuple[FileView, ...]
    models: tuple[FileView, ...]
    typed: tuple[tuple[str, str], ...]
    cautions: tuple[views.CautionGroup, ...]
    caution_line: str

    @property
    def kinds_line(self) -> str:
        """What the jack carries with and what the car is lifted by, in a line."""
        chosen = {field.key: field.chosen_words for field in self.kinds}
        return f"{chosen['foot']}; {chosen['head']}"

    @property
    def kinds_are_unusual(self) -> bool:
        """Whether the jack is not one with a cup, or the car is not lifted by its seam."""
        return any(field.text for field in self.kinds)

    @property
    def outboard(self) -> str:
        """The one measurement of the car that stands on the jack's side of a wide picture."""
        return _OUTBOARD

    @property
    def is_fit(self) -> bool:
        """Whether model files may be taken without a confirmation."""
        return self.state == "fit"


def pad_page(outcome: Outcome, section: SectionView, *, has_welcome: bool = False, no_models: str = "") -> PadPage:
    """The context of the working sheet."""
    reading, design = outcome.reading, outcome.design
    units, typed = reading.units, reading.typed
    needed = field_groups.needed_in(reading)

    doubts = doubts_of(_numbers(reading))
    stand = stand_for(reading)

    def asked(*keys: str) -> tuple[FieldView, ...]:
        return tuple(field_view(key, reading, stand.balloons, needed, doubts) for key in keys)

    own = links.pad_address(typed, units=units)
    groups = field_groups.groups(reading, design, asked)
    on_sheet = field_groups.keys_on_sheet(groups, stand)
    return PadPage(
        state=outcome.state,
        has_welcome=has_welcome,
        job=asked("title")[0],
        units=units,
        units_links=_units_links(reading),
        measure=ways_of(reading, units=units).measure,
        elsewhere=_elsewhere(reading, own),
        samples=tuple(LinkView(sample.title, sample.address) for sample in links.samples()),
        section=section,
        kinds=asked(*stand.kinds),
        jack=asked(*stand.jack),
        seam=asked(*stand.car),
        jack_mass=asked("jack.rated_load_kg")[0],
        car_mass=asked("car.gross_mass_kg")[0],
        not_here=not_here(stand, reading.fields),
        more_jack=field_groups.more("jack", "More about the jack", asked(*stand.more_jack)),
        more_seam=field_groups.more("seam", f"More about the {stand.car_heading}", asked(*stand.more_car)),
        groups=groups,
        hidden=_hidden(reading),
        problems=tuple(link_to(p.field, on_sheet, shown.quantities_in(p.message, units)) for p in reading.problems),
        doubts=tuple(link_to(key, on_sheet, shown.quantities_in(words, units)) for key, words in doubts.items()),
        missing=tuple(link_to(key, on_sheet, reading.fields[key].title) for key in reading.missing),
        verdict=_verdict(outcome),
        conflict=views.conflict_of(outcome.conflict, units, on_sheet) if outcome.conflict else None,
        dimensions=views.dimensions_of(design, typed, units) if design else (),
        pad_line=_pad_line(design, units) if design else "",
        checks=check_views.check_groups(design, on_sheet, units) if design else (),
        load=views.load_rows(design.conditions, units) if design else (),
        calculation=_sibling(own, "/calculation") if design else "",
        changes=_sibling(own, "/changes") if design or outcome.conflict else "",
        beside=_sibling(own, "/beside") if design else "",
        turn=turn_view(design, reading) if design else None,
        no_models=no_models,
        drawing=_sibling(own, ".svg") if design else "",
        drawing_page=_sibling(own, "/drawing") if design else "",
        save=links.save_address(typed, units=units),
        fixed=_fixed(typed),
        all_let_go=links.pad_address({k: v for k, v in typed.items() if not k.startswith("fixed.")}, units=units),
        inch_steps=_inch_steps(reading) if design else "",
        making=sheet_making(design, typed, units) if design else None,
        files=_files(own) if design else (),
        models=_models(own if design.fit_to_make else "/pad") if design else (),
        typed=tuple(typed.items()),
        cautions=views.caution_groups(design.cautions, units) if design else (),
        caution_line=ONE_LINE,
    )


def _units_links(reading: FormReading) -> tuple[LinkView, ...]:
    """The same job read in millimetres and in inches."""
    return tuple(
        LinkView(
            wanted,
            links.pad_address(with_units_spelled_out(reading.typed, reading.units, wanted), units=wanted),
        )
        for wanted in ("mm", "in")
    )


def _sibling(own: str, suffix: str) -> str:
    """The same design's address with another ending."""
    return own.replace("/pad", f"/pad{suffix}", 1)


def _fixed(typed: Mapping[str, str]) -> tuple[LinkView, ...]:
    """Each fixed size in words, with the way to its box."""
    sizes = ((key, text) for key, text in typed.items() if key.startswith("fixed."))
    return tuple(LinkView(f"{shown.lower_first(title_of(key))} {text}", f"#{field_id(key)}") for key, text in sizes)


def _inch_steps(reading: FormReading) -> str:
    """The address that asks for inch steps, where inches are read and the steps are metric."""
    if reading.units != "in" or reading.typed.get("make.step") == "inch":
        return ""
    return links.pad_address({**reading.typed, "make.step": "inch"}, units="in")


def _elsewhere(reading: FormReading, own: str) -> tuple[LinkView, ...]:
    """The guide, the measuring sheet to print, the materials, what this browser saved, and the place to save."""
    ways = ways_of(reading, units=reading.units)
    save = own.replace("/pad", "/save", 1)
    found = [
        LinkView("Guide", ways.guide),
        LinkView("Measuring sheet", ways.measure),
        LinkView("Materials", ways.materials),
        LinkView("My designs", "/mine"),
    ]
    return (*found, LinkView("Save", save)) if reading.measurements else tuple(found)


def _numbers(reading: FormReading) -> dict[str, float]:
    """Every number that could be read and can be, by its dotted key."""
    wrong = {problem.field for problem in reading.problems}
    return {
        f"{group}.{name}": float(value)
        for group, answers in reading.document.items()
        if isinstance(answers, dict)
        for name, value in answers.items()
        if isinstance(value, int | float) and f"{group}.{name}" not in wrong
    }


def _hidden(reading: FormReading) -> tuple[tuple[str, str], ...]:
    """What the address holds and no question of the sheet asks: the viewer's units, and answers about another foot or head."""
    units = (("units", reading.units),) if reading.units != "mm" else ()
    return (*units, *((key, text) for key, text in reading.typed.items() if key not in reading.fields))


def _verdict(outcome: Outcome) -> Verdict:
    """The outcome in words."""
    reading, design = outcome.reading, outcome.design
    if design:
        short = (
            f"Do not make: {len(design.failures)} of {design.judged} estimates fail. Not tested."
            if design.failures
            else ""
        )
        return Verdict(
            design.verdict_words.replace(" %", "\N{NO-BREAK SPACE}%"), check_views.governing_words(design), short
        )
    if outcome.conflict:
        return Verdict(views.conflict_headline(outcome.conflict, reading.units), "")
    wrong, left = len(reading.problems), len(reading.missing)
    if wrong:
        count = "One answer cannot be right." if wrong == 1 else f"{wrong} answers cannot be right."
        return Verdict(count, "What is wrong stands beside the field.")
    count = "One measurement is" if left == 1 else f"{left} measurements are"
    return Verdict(f"{count} still to be taken." if reading.typed else f"{left} measurements make a first pad.", "")


def _pad_line(design: Design, units: str) -> str:
    """The pad in a line: how large, of what, how heavy."""
    pad = design.pad
    across, tall = (shown.length_with_unit(x, units) for x in (pad.body_diameter_mm, pad.overall_height_mm))
    material = design.conditions.material.name
    return f"{across} across, {tall} tall, of {material}; about {shown.mass(design.mass_kg, units)}."


def _files(own: str) -> tuple[FileView, ...]:
    """What may be taken at any time."""
    return tuple(
        FileView(name, words, _sibling(own, suffix))
        for name, words, suffix in (
            ("PDF", "the drawing on paper", ".pdf"),
            ("DXF", "the drawing for another drawing program", ".dxf"),
            ("SVG", "the drawing as a picture", ".svg"),
            ("Packet", "everything for paper, the card for the garage wall too", "/packet.pdf"),
            ("Gauges", "true-size outlines to cut from card", "/gauge.pdf"),
            ("JSON", "everything on this page as data", ".json"),
            ("Measurements", "what you typed, as a file of your own", ".document.json"),
        )
    )


def _models(own: str) -> tuple[FileView, ...]:
    """The model; of a pad that is not fit to make, the bare address that a confirmation is sent to."""
    return tuple(
        FileView(name, words, _sibling(own, suffix))
        for name, words, suffix in (
            ("STEP", "the exact solid, for machining", ".step"),
            ("STL", "the solid in triangles", ".stl"),
            ("3MF", "the solid in triangles, with its unit, for printing", ".3mf"),
            ("GLB", "the solid in triangles, in metres, for pictures", ".glb"),
            ("ZIP", "everything in one archive", ".zip"),
        )
    )
