"""The working sheet in words: what is asked, what came of it, and all that a pad adds. Its templates compute nothing."""

from collections.abc import Mapping, Set
from dataclasses import replace

from geometry.design import Design
from geometry.letters import lower_first
from geometry.plausible import doubts_of
from server import check_views, field_groups, links, shown
from server import design_views as views
from server.field_views import FieldView, LinkView, field_id, field_view, link_to, title_of, with_units_spelled_out
from server.forms import FormReading
from server.making_views import sheet_making
from server.outcome import Outcome
from server.section_view import SectionView
from server.sheet_context import PadPage, Verdict
from server.sheet_files import files_of, models_of, sibling
from server.stand import JACK_UP, not_here, stand_for
from server.turn_view import turn_view
from server.ways import Ways, ways_of


def pad_page(outcome: Outcome, section: SectionView, *, has_welcome: bool = False, no_models: str = "") -> PadPage:
    """The context of the working sheet."""
    reading, design, conflict = outcome.reading, outcome.design, outcome.conflict
    stand, doubts, needed = stand_for(reading), doubts_of(_numbers(reading)), field_groups.needed_in(reading)

    def asked(*keys: str) -> tuple[FieldView, ...]:
        return tuple(field_view(key, reading, stand.balloons, needed, doubts) for key in keys)

    own, ways = links.pad_address(reading.typed, units=reading.units), ways_of(reading, units=reading.units)
    save = own.replace("/pad", "/save", 1)
    groups = field_groups.groups(reading, design, asked)
    on_sheet, fixed = field_groups.keys_on_sheet(groups, stand), _fixed(reading.typed)
    page = PadPage(
        state=outcome.state,
        has_welcome=has_welcome,
        job=asked("title")[0],
        units=reading.units,
        units_links=_units_links(reading),
        measure=ways.measure,
        elsewhere=_elsewhere(reading, ways, save),
        samples=tuple(LinkView(sample.title, sample.address) for sample in links.samples()),
        section=section,
        kinds=asked(*stand.kinds),
        jack=asked(*stand.jack),
        seam=asked(*stand.car),
        jack_mass=asked("jack.rated_load_kg")[0],
        jack_up=asked(JACK_UP)[0],
        car_mass=asked("car.gross_mass_kg")[0],
        not_here=not_here(stand, reading.fields),
        more_jack=field_groups.more("jack", "More about the jack", asked(*stand.more_jack)),
        more_seam=field_groups.more("seam", f"More about the {stand.car_heading}", asked(*stand.more_car)),
        groups=groups,
        hidden=_hidden(reading),
        problems=tuple(link_to(p.field, on_sheet, _in_units(p.message, reading)) for p in reading.problems),
        doubts=tuple(link_to(key, on_sheet, _in_units(words, reading)) for key, words in doubts.items()),
        missing=tuple(link_to(key, on_sheet, reading.fields[key].title) for key in reading.missing),
        verdict=_verdict(outcome),
        conflict=views.conflict_of(conflict, reading.units, on_sheet) if conflict else None,
        changes=sibling(own, "/changes") if design or conflict else "",
        no_models=no_models,
        save=save,
        fixed=fixed,
        all_let_go=_all_let_go(reading) if fixed else "",
        typed=tuple(reading.typed.items()),
    )
    return _with_pad(page, design, reading, own, on_sheet) if design else page


def _with_pad(page: PadPage, design: Design, reading: FormReading, own: str, on_sheet: Set[str]) -> PadPage:
    """The sheet with all that only a pad can fill."""
    units, typed = reading.units, reading.typed
    return replace(
        page,
        dimensions=views.dimensions_of(design, typed, units),
        pad_line=_pad_line(design, units),
        checks=check_views.check_groups(design, on_sheet, units),
        load=views.load_rows(design.conditions, units),
        calculation=sibling(own, "/calculation"),
        changes_way=_changes_way(design, own),
        beside=sibling(own, "/beside"),
        turn=turn_view(design, reading),
        drawing=sibling(own, ".svg"),
        drawing_page=sibling(own, "/drawing"),
        inch_steps=_inch_steps(reading),
        making=sheet_making(design, typed, units),
        files=files_of(own),
        models=models_of(own if design.fit_to_make else "/pad"),
        cautions=views.caution_groups(design.cautions, units),
    )


def _changes_way(design: Design, own: str) -> str:
    """The way from the estimates to the changes that would help."""
    if design.failures:
        return "#help"
    return sibling(own, "/changes") if check_views.troubling(design) else ""


def _in_units(words: str, reading: FormReading) -> str:
    return shown.quantities_in(words, reading.units)


def _all_let_go(reading: FormReading) -> str:
    """The address without any fixed size."""
    typed = {key: text for key, text in reading.typed.items() if not key.startswith("fixed.")}
    return links.pad_address(typed, units=reading.units)


def _units_links(reading: FormReading) -> tuple[LinkView, ...]:
    """The same job read in millimetres and in inches."""
    return tuple(
        LinkView(
            wanted,
            links.pad_address(with_units_spelled_out(reading.typed, reading.units, wanted), units=wanted),
        )
        for wanted in ("mm", "in")
    )


def _fixed(typed: Mapping[str, str]) -> tuple[LinkView, ...]:
    """Each fixed size in words, with the way to its box."""
    sizes = ((key, text) for key, text in typed.items() if key.startswith("fixed."))
    return tuple(LinkView(f"{lower_first(title_of(key))} {text}", f"#{field_id(key)}") for key, text in sizes)


def _inch_steps(reading: FormReading) -> str:
    """The address that asks for inch steps, where inches are read and the steps are metric."""
    if reading.units != "in" or reading.typed.get("make.step") == "inch":
        return ""
    return links.pad_address({**reading.typed, "make.step": "inch"}, units="in")


def _elsewhere(reading: FormReading, ways: Ways, save: str) -> tuple[LinkView, ...]:
    """The guide, the measuring sheet to print, the materials, what this browser saved, and the place to save."""
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
