"""Route card and inspection sheet for paper."""

from collections.abc import Callable, Iterator, Mapping
from functools import partial
from html import escape

from geometry.calculation.sheet import CalculationSheet
from geometry.design import Design
from geometry.drawing.facts import SheetFacts
from geometry.drawing.figures import length_words, limit_shown
from geometry.inspection import Characteristic, inspection_sheet
from geometry.letters import upper_first
from geometry.making.card import Cut, Operation, Picture, Table
from geometry.making.how_measured import left_sizes
from geometry.making.instruments import EYE
from geometry.making.set_ups import set_up_heading
from geometry.making.slot_words import cell_words
from geometry.making.sources import inspection_sources, route_sources
from geometry.making.wording import Units, feed_shown, length_shown, speed_shown
from geometry.packet.paper import Data
from geometry.packet.shapes import shapes_svg
from geometry.packet.words import mass_words, shop_units
from geometry.pad import Pad
from geometry.readings import Judged, Verdict
from geometry.route import RouteCard, route_card
from geometry.rules import CHECK_RULES
from geometry.standing import made_of
from geometry.units import in_unit

VERDICTS: Mapping[Verdict, str] = {
    "accept": "inside",
    "doubtful": "in doubt",
    "reject": "outside",
    "asked": "a slip?",
    "open": "open",
}
"""What became of a reading, in as few letters as a column has room for."""


def making_data(design: Design, facts: SheetFacts) -> Data:
    """How the pad is made in the shop of the document."""
    units = shop_units(facts)
    card = route_card(design.pad, design.conditions, design.measurements.shop)
    process = design.conditions.process
    headings = {o.set_up: set_up_heading(o.set_up, design.pad, process) for o in card.operations}
    return {
        "title": card.title,
        "intro": list(_intro(card, units)),
        "troubles": [s.shown(units) for s in card.troubles],
        "set_ups": [[headings[s.number], s.holding.shown(units), s.datum.shown(units)] for s in card.set_ups],
        "tools": [[t.name.shown(units), ", ".join(map(str, t.operations))] for t in card.tools],
        "operations": [
            _operation(n, o, headings[o.set_up], held, units, design.pad, has_dials=process != "cnc")
            for n, (o, held) in enumerate(zip(card.operations, _held_anew(card, units), strict=True), start=1)
        ],
        "sources": [[w, str(s)] for w, s in route_sources(card, design.conditions, design.measurements.shop)],
    }


def _intro(card: RouteCard, units: Units) -> Iterator[str]:
    yield f"{upper_first(card.material)}. About {card.time_min:.0f} min for one pad, settings included: estimated."
    if card.stock:
        plan = card.stock
        yield (
            f"Bar {length_shown(plan.bar_mm, units)} across; saw off {length_shown(plan.blank_mm, units)}, saw cut"
            f" {length_shown(plan.kerf_mm, units)}, {mass_words(plan.mass_kg, units)}. {plan.why.shown(units)}"
        )
    for batch in card.batches:
        if batch.pads > 1:
            used = length_shown(batch.bar_used_mm, units)
            yield f"{batch.pads} pads from one bar: {used} of it, about {batch.time_each_min:.0f} min each."
    if card.printing:
        printed = card.printing
        yield f"{printed.orientation.shown(units)} {printed.words}"
        yield (
            f"{printed.layers} layers of {printed.layer_height_mm:g} mm, {printed.walls} walls,"
            f" {printed.infill_percent:g} % infill, {mass_words(printed.mass_kg, units)}."
        )


def _held_anew(card: RouteCard, units: Units) -> Iterator[str]:
    """How each operation is held; nothing where it stays as the one before left it."""
    before = ""
    for operation in card.operations:
        words = operation.holding.shown(units)
        yield "" if words == before else words
        before = words


def _operation(number: int, o: Operation, set_up: str, held: str, units: Units, pad: Pad, *, has_dials: bool) -> Data:
    return {
        "title": f"{number}  {o.title}",
        "set_up": set_up,
        "holding": held,
        "tool": o.tool.shown(units),
        "cuts": list(_cuts(o, units)),
        "steps": [s.shown(units) for s in o.steps],
        "why": o.why.shown(units) if o.why else "",
        "watch": [s.shown(units) for s in o.watch],
        "passes": _passes(o, units, has_dials=has_dials),
        "tables": [_table(t, units) for t in o.tables],
        "picture": _picture(o.picture, units) if o.picture else None,
        "leaves": "; ".join(f"{words} {length_shown(mm, units)}" for words, mm in left_sizes(o.leaves_mm, pad)),
        "time": f"{o.time_min:.0f} min",
    }


def _cuts(o: Operation, units: Units) -> Iterator[str]:
    """What to set, for roughing and for finishing where they differ."""
    if o.cut is None:
        return
    if o.finish_cut is None:
        yield _cut(o.cut, units)
        return
    yield f"{_cut(o.cut, units)}, to rough"
    yield f"{_cut(o.finish_cut, units)}, to finish"


def _cut(cut: Cut, units: Units) -> str:
    """Speed and feed to set."""
    words = f"{cut.rpm:.0f} turns/min ({speed_shown(cut.speed_m_min, units)} on {length_shown(cut.diameter_mm, units)})"
    if cut.feed_mm_rev:
        words += f", feed {feed_shown(cut.feed_mm_rev, units)} a turn"
    if cut.table_feed_mm_min:
        words += f", table {length_shown(cut.table_feed_mm_min, units)}/min"
    return words + (": the slowest there is, and faster than wanted" if cut.is_too_fast else "")


def _number(length_mm: float, units: Units) -> str:
    """A length without its unit, every figure with as many decimals; a limit is rounded to the part's side."""
    digits = 3 if units == "in" else 2
    return f"{in_unit(length_mm, units, digits):.{digits}f}"


def _passes(o: Operation, units: Units, *, has_dials: bool) -> Data | None:
    """The passes as a table in the shop's unit."""
    if not o.passes:
        return None
    unit = "in" if units == "in" else "mm"
    dials = ("dial by", "dial reads") if has_dials else ()
    rows = [
        [
            str(p.number),
            p.kind,
            p.axis,
            *(_number(x, units) for x in (p.before_mm, p.after_mm, p.infeed_mm)),
            *((_number(p.dial_step_mm, units), _number(p.dial_reading_mm, units)) if has_dials else ()),
        ]
        for p in o.passes
    ]
    return {
        "title": "Passes",
        "columns": ["pass", "kind", "of", *(f"{w}, {unit}" for w in ("from", "to", "infeed", *dials))],
        "rows": rows,
    }


def _table(table: Table, units: Units) -> Data:
    shown = [
        [
            cell_words(cell) if isinstance(cell, str) else _number(cell, units) if unit == "mm" else f"{cell:.4g}"
            for cell, (_, unit) in zip(row, table.columns, strict=True)
        ]
        for row in table.rows
    ]
    named = {"mm": "in" if units == "in" else "mm", "°": "°"}
    columns = [f"{words}, {named[unit]}" if unit in named else words for words, unit in table.columns]
    return {"title": table.title, "columns": columns, "rows": shown}


def _picture(picture: Picture, units: Units) -> Data:
    labels = [(label.at, label.words.shown(units)) for label in picture.labels]
    svg, width = shapes_svg(picture.view, labels)
    return {"svg": svg, "width": width, "alt": escape(f"Picture: {picture.view.name}")}


def inspection_data(design: Design, facts: SheetFacts) -> Data:
    """What is measured on the finished pad, with room for the readings."""
    units = shop_units(facts)
    sheet = inspection_sheet(design.pad, design.conditions)
    made = made_of(design)
    judged = {j.dimension: j for j in made.judged} if made else {}
    moves = partial(_moves, said=design.conditions.said)
    measured = [c for c in sheet.characteristics if c.nominal_mm is not None]
    return {
        "unit": "in" if units == "in" else "mm",
        "rows": [[*_row(c, facts), moves(c), _read(judged.get(c.name), units)] for c in measured],
        "outcome": made.words if made else "",
        "looks": [[*_look(c, units), moves(c)] for c in sheet.characteristics if c.nominal_mm is None],
        "notes": [s.shown(units) for s in sheet.notes],
        "sources": [[words, str(source)] for words, source in inspection_sources(design.conditions)],
    }


def _moves(c: Characteristic, said: Callable[[str], str]) -> str:
    """The two estimates that move most with a size or within a zone, in the words of the pad's kinds; empty where none does."""
    return "; ".join(said(CHECK_RULES[code].title) for code in c.checks[:2])


def _row(c: Characteristic, facts: SheetFacts) -> list[str]:
    """What is measured: its limits as the drawing has them, with what, and how."""
    limits = [limit_shown(limit, facts.units) for limit in (c.lower_mm, c.upper_mm) if limit is not None]
    nominal = length_words(c.nominal_mm or 0.0, facts.units)
    fine = "" if c.is_fine_enough else " (coarser than a fifth of the zone: repeat the reading)"
    title = upper_first(c.title)
    return [
        str(c.number),
        f"({title})" if c.is_reference else title,
        f"({nominal})" if c.is_reference else nominal,
        " to ".join(limits),
        f"{upper_first(c.instrument.name)}{fine}. {c.how.shown(shop_units(facts))}",
    ]


def _look(c: Characteristic, units: Units) -> list[str]:
    """What is looked at, or held to an indicator: then with what and how, and how far it may be off."""
    how = "" if c.instrument is EYE else f"{upper_first(c.instrument.name)}. {c.how.shown(units)}"
    return [str(c.number), c.title, how]


def _read(judged: Judged | None, units: Units) -> str:
    """What was read and how it was judged; what was not read stays open, and empty before anything was read."""
    if judged is None:
        return ""
    if not judged.readings_mm:
        return "open"
    return f"{'; '.join(_number(r, units) for r in judged.readings_mm)}: {VERDICTS[judged.verdict]}"


def source_rows(design: Design, sheet: CalculationSheet) -> list[list[str]]:
    """Every source that the packet rests on: mark and number, words, and what rests on it."""
    rows = [
        [f"{use.source.mark.value}{i}", f"{use.source.text} ({use.source.mark.words})", ", ".join(use.uses)]
        for i, use in enumerate(sheet.sources, start=1)
    ]
    said: dict[str, list[str]] = {}
    for caution in design.cautions:
        said.setdefault(str(caution.source), []).append(caution.signal)
    return rows + [["–", source, "cautions"] for source in said]
