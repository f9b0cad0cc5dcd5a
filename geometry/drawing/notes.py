"""What the sheet says in words of the whole part: units, general tolerances, edges, surfaces, marking, load."""

from collections.abc import Callable
from itertools import pairwise
from math import inf, isfinite
from typing import Literal

from geometry.drawing.facts import CRITICAL_MARK, FigureUnit, SheetFacts, Unit
from geometry.drawing.figures import in_figures, length_words, tolerance_words
from geometry.drawing.geometrical import SEAT_ROUGHNESS_UM
from geometry.fits import linear_tolerance_mm, radius_tolerance_mm
from geometry.letters import upper_first
from geometry.pad import Pad
from geometry.spread import OUTER_CORNERS
from geometry.units import STANDARD_GRAVITY, kg_to_pound

OnLeader = Literal["stem root", "lead-in", "plug root", "pocket corners", "seat texture"]
"""What a leader tells, else a note: at stem and plug the drawing sizes it and does not draw it."""
MARKING = ("Mark drawing number and", "date on the cylindrical", "side, at most {depth} deep")
"""Stands on a leader at the body's side, in lines; a note where no leader finds room."""
_MARKING_DEPTH_MM = 0.3
_OUTER_EDGE_MM, _INNER_CORNER_MM = 0.3, 0.4
"""Edges in the way of ISO 13715 (from memory): an outer edge loses at most this, an inner corner keeps at most this. Judged:
a light break by hand, and the nose of a common turning tool."""
_POCKET = "Pocket centred across on the slot, along on the pad"
LEAD_IN_MM, ROOT_LEAST_MM, ROOT_MOST_MM = 0.5, 0.2, _INNER_CORNER_MM
"""The stem's end finds its hole, and the root of stem or plug has no sharp notch; judged."""
_RUN_OUT_MM, _SYMMETRY_MM = 0.2, 0.6
_SQUARE_MM = ((100.0, 0.4), (300.0, 0.6))
"""Class K of ISO 2768-2:1989 (withdrawn; from memory) for the sizes of such a part: squareness (up to, zone), symmetry up to
300 mm, and run-out, which has one value."""


def note_words(
    facts: SheetFacts,
    pad: Pad,
    *,
    marking: bool = False,
    told: frozenset[OnLeader] = frozenset(),
) -> tuple[str, ...]:
    """The general notes of the sheet; marking where no view tells it, and all but what is told on leaders."""
    said = (
        _unit_words(facts),
        f"Unless stated ISO\u00a02768-mK: {_tolerance_words(pad, facts.one_unit)}",
        _edge_words(pad, facts.one_unit, told) + ("" if facts.as_printed else _texture_words(told)),
        *((f"{CRITICAL_MARK} An estimate depends on this: measure and record it.",) if facts.critical else ()),
        *_slot_words(pad, facts.one_unit, told),
        *((_marking_note(pad, facts.one_unit),) if marking else ()),
        _load_words(facts),
    )
    return tuple(note.replace(" °C", "\u00a0°C") for note in said)


def _unit_words(facts: SheetFacts) -> str:
    """In which units the sheet speaks, which of two rules, and when the sizes hold."""
    unit = {"mm": "mm", "in": "inches", "in_fraction": "inches", "dual": "mm [inches]"}[facts.units]
    job = {"mm": "mm", "in": "inches"}[facts.job_units]
    converted = "" if unit.startswith(job) else f", converted from {job}"
    if unit == "inches":
        converted = f" (ISO practice){converted}"
    if facts.units == "dual":
        converted = f", {job} govern; chamfers, frames, notes in {job}"
    return f"Sizes in {unit}{converted}. {upper_first(facts.moisture)}, {facts.temperature}."


def _texture_words(told: frozenset[OnLeader]) -> str:
    """The unit of roughness, and the seat's where no sign at it tells it; that of all other faces stands in the title block."""
    seat = "" if "seat texture" in told else f"; seat face (datum A) {SEAT_ROUGHNESS_UM}"
    return f" Ra in\u00a0µm{seat}."


def _slot_words(pad: Pad, unit: Unit, told: frozenset[OnLeader]) -> tuple[str, ...]:
    """What a slot that is more than one straight cut through the middle asks for, where no dimension can say it: in one note."""
    said = (
        *(("Slots at right angles through the axis; CZ: both floors in one zone.",) if pad.is_crossed else ()),
        *((_pocket_words(pad, unit, told),) if pad.has_relief else ()),
        *((_arrow_words(unit),) if pad.slot_offset_mm else ()),
    )
    return (" ".join(said),) if said else ()


def _arrow_words(unit: Unit) -> str:
    depth = length_words(_MARKING_DEPTH_MM, unit)
    return f"Arrow of any size to the seam's side (right in A–A) anywhere on top, at most {depth} deep."


def _pocket_words(pad: Pad, unit: Unit, told: frozenset[OnLeader]) -> str:
    """Where the pocket stands, and the corners that an end mill leaves in it where the top view has no room for them."""
    if "pocket corners" in told:
        return f"{_POCKET}."
    return f"{_POCKET}, corners R{length_words(pad.relief_corner_radius_mm, unit)}\u00a0max."


def _load_words(facts: SheetFacts) -> str:
    """The load of the estimates; of a part that is not fit to make no load is printed that could be read as its own."""
    if not facts.fit_to_make:
        return "No load is stated: this part is not fit to make."
    load = f"{_three_figures(facts.design_load_n / 1000)}\u00a0kN"
    if facts.units != "mm":
        load += f" ({_three_figures(kg_to_pound(facts.design_load_n / STANDARD_GRAVITY))}\u00a0lbf)"
    return f"Load used in the estimates: about {load}, not tested."


def marking_words(unit: FigureUnit) -> tuple[str, ...]:
    """What is marked on the part, where and how deep."""
    return tuple(line.format(depth=in_figures(_MARKING_DEPTH_MM, unit, words=length_words)) for line in MARKING)


def _marking_note(pad: Pad, unit: Unit) -> str:
    """The same as a note; a part without a side to mark gets a tag."""
    if not pad.has_side_to_mark:
        return "Drawing number and date on a tag or its bag: the side is too low to mark."
    return f"{' '.join(marking_words(unit))}."


def root_words(unit: FigureUnit) -> str:
    """The radius at the root of a stem or a plug: least and greatest."""
    least, most = (in_figures(size, unit, words=length_words) for size in (ROOT_LEAST_MM, ROOT_MOST_MM))
    return f"R{least} to R{most}"


def lead_in_words(unit: FigureUnit) -> str:
    """The chamfer at the stem's end."""
    return f"{in_figures(LEAD_IN_MM, unit, words=length_words)} × 45°"


def _three_figures(value: float) -> str:
    """Three figures, without a power of ten: nobody knows it better.

    >>> _three_figures(10.153), _three_figures(4.943), _three_figures(2282.5)
    ('10.2', '4.94', '2280')
    """
    return f"{float(f'{value:.3g}'):g}"


def _edge_words(pad: Pad, unit: Unit, told: frozenset[OnLeader]) -> str:
    """Edges without a size of their own, and which edges the counted chamfer is at."""

    def size(length_mm: float) -> str:
        return length_words(length_mm, unit)

    said: tuple[tuple[OnLeader, bool, str], ...] = (
        ("lead-in", pad.has_stem, f"; stem end {lead_in_words(unit)} as a lead-in"),
        ("stem root", pad.has_stem, f"; stem root {root_words(unit)}"),
        ("plug root", pad.has_plug, f"; plug root {root_words(unit)}"),
    )
    roots = "".join(words for root, is_there, words in said if is_there and root not in told)
    top = ", and the plug's top edge" if pad.has_plug else ""
    which = "body's round edges only" if pad.has_flats else "body's outer edges" if pad.has_skirt else "body's edges"
    rim = f"; chamfer: {which}, top and bottom{top}" if pad.edge_chamfer_mm else ""
    edges = (
        f"Edges, ISO\u00a013715: outer −{size(_OUTER_EDGE_MM)}, no burr; inner corners not shown R{size(_INNER_CORNER_MM)}\u00a0max"
        f"{rim}{roots}."
    )
    return edges.replace(" × ", "\u00a0×\u00a0")


def _tolerance_words(pad: Pad, unit: Unit) -> str:
    """The rows of ISO 2768 that this part needs, for a reader who has no copy; converted ones are no wider."""
    # The corner of a round plug is its whole side.
    present = {
        name: getattr(pad, name) for name in pad.present if name != "plug_corner_radius_mm" or not pad.plug_is_round
    }
    lengths = [size for name, size in present.items() if name not in OUTER_CORNERS]
    rounds = [size for name, size in present.items() if name in OUTER_CORNERS]
    (to, square), (_, longer) = _SQUARE_MM
    over = (
        f", over\u00a0{length_words(to, unit)}\u00a0long {tolerance_words(longer, unit)}" if max(lengths) > to else ""
    )
    said = (
        f"lengths {_rows((6, 30, 120), lengths, linear_tolerance_mm, unit)}",
        *((f"outer radii, chamfers {_rows((3, 6), rounds, radius_tolerance_mm, unit)}",) if any(rounds) else ()),
        "45°\u00a0±1°",
        f"run-out\u00a0{tolerance_words(_RUN_OUT_MM, unit)}",
        f"symmetry\u00a0{tolerance_words(_SYMMETRY_MM, unit)}",
        f"squareness\u00a0{tolerance_words(square, unit)}{over}",
    )
    return f"{'; '.join(said)}."


def _rows(limits_mm: tuple[float, ...], sizes_mm: list[float], tolerance: Callable[[float], float], unit: Unit) -> str:
    """The rows of a table in which some sizes fall."""

    def row(low: float, high: float) -> str:
        where = f"to\u00a0{length_words(high, unit)}" if isfinite(high) else f"above\u00a0{length_words(low, unit)}"
        return f"{where}\u00a0±{tolerance_words(tolerance(min(high, low + 1)), unit)}"

    bands = pairwise((0.0, *limits_mm, inf))
    return ", ".join(row(low, high) for low, high in bands if any(low < size <= high for size in sizes_mm))
