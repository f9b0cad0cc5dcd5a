"""Where everything stands when the seam has just come down on the slot's floor: levels and widths in model mm.

The seat face is y = 0, the middle of the seam x = 0, outboard is left. Between the cup and the ground the picture may be
shortened; everything above is to scale.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

from geometry.buildable import require_buildable
from geometry.drawing.section_known import Known
from geometry.errors import BadMeasurementsError
from geometry.heads.slot.fields import ASSUMED_PAINT_MM, ASSUMED_SHEET_MM
from geometry.pad import Pad

TYPICAL_MM = {
    "cup_bore_mm": 68.0,
    "cup_depth_mm": 12.0,
    "rim_height_low_mm": 105.0,
    "thickness_mm": 3.0,
    "height_mm": 20.0,
    "edge_height_mm": 190.0,
}
"""What is drawn faintly until it is measured; common practice, no source."""

_SHAPE = 0.8
"""Height of the picture over its width; what is left of it below the cup brings the ground nearer to its true distance."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """The assembled job in numbers; half widths are from the centre line."""

    known: Known
    pad: Pad
    pad_is_stand_in: bool
    unit_mm: float
    """A hundredth of the picture's size: offsets of what is drawn but not measured."""
    bore: float
    """Half the cup bore."""
    depth: float
    corner: float
    rim: float
    """Half the rim's outside diameter."""
    hole: float
    """Half the stem hole, 0 for none."""
    hole_floor: float | None
    """Level of the hole's floor, None where it goes through."""
    under: float
    """Level of the cup's underside."""
    thickness: float
    bare: float
    sheets: int
    sill: float
    """Level of the sill's underside beside the seam."""
    outboard: float
    inboard: float
    """Levels of the lowest other thing on each side, as far as they are drawn."""
    is_clear_cut: bool
    """Whether a clear height is so great that it is drawn shorter."""
    step: float
    """How far out the lowest other thing begins."""
    reach: float
    """Half the width of the picture's subject."""
    top: float
    rim_low: float | None
    """Level of the rim with the jack down, as drawn; None where it would lie above the pad."""
    ground: float
    breaks: tuple[float, ...]
    """Levels at which the picture is shortened."""

    @property
    def edge(self) -> float:
        """Level of the seam's edge: it stands on the slot's floor."""
        return self.pad.web_mm

    @property
    def wall_top(self) -> float:
        """Level of the pad's top."""
        return self.pad.top_height_mm

    @property
    def body(self) -> float:
        """Half the body's diameter."""
        return self.pad.body_diameter_mm / 2


def scene_of(known: Known, pad: Pad | None, so_far: Mapping[str, float] | None = None) -> Scene:
    """Everything in its place; what is not known is filled in with something typical."""
    corner = _corner(known)
    shown = pad or stand_in_pad(known, corner, so_far or {})
    rim = (known.rim_diameter_mm or _bore(known) + 16.0) / 2
    height = _or_typical(known, "height_mm")
    unit = max(2 * rim, shown.body_diameter_mm, 0.8 * (shown.top_height_mm + height)) / 100
    step, reach = _widths(shown, _or_typical(known, "thickness_mm"), rim, unit)
    cap = max(height, shown.slot_depth_mm) + 30 * unit
    clear_out, clear_in = (
        min(height if clear is None else clear, cap) for clear in (known.clear_outboard_mm, known.clear_inboard_mm)
    )
    hole, hole_floor, under = _hole(known, shown, unit)
    edge = shown.web_mm
    top = max(edge + max(height, clear_out, clear_in), shown.top_height_mm) + 22 * unit
    room = _SHAPE * 2 * reach - (top - under)
    rim_low, ground, breaks = _levels_below(known, shown, under, unit, room)
    sheets = known.sheets or 2
    return Scene(
        known=known,
        pad=shown,
        pad_is_stand_in=pad is None,
        unit_mm=unit,
        bore=_bore(known) / 2,
        depth=_or_typical(known, "cup_depth_mm"),
        corner=corner,
        rim=rim,
        hole=hole,
        hole_floor=hole_floor,
        under=under,
        thickness=_or_typical(known, "thickness_mm"),
        bare=_bare(known, sheets),
        sheets=sheets,
        sill=edge + height,
        outboard=edge + clear_out,
        inboard=edge + clear_in,
        is_clear_cut=cap < max(known.clear_outboard_mm or 0, known.clear_inboard_mm or 0),
        step=step,
        reach=reach,
        top=top,
        rim_low=rim_low,
        ground=ground,
        breaks=breaks,
    )


def stand_in_pad(known: Known, corner: float, so_far: Mapping[str, float]) -> Pad:
    """A pad of likely shape, drawn faintly where none is sized; it takes over what was chosen so far."""
    likely = _likely_pad(known, corner, so_far)
    try:
        require_buildable(likely)
    except BadMeasurementsError:
        return _likely_pad(known, corner, {})
    return likely


def _likely_pad(known: Known, corner: float, so_far: Mapping[str, float]) -> Pad:
    depth, thickness, height = (_or_typical(known, n) for n in ("cup_depth_mm", "thickness_mm", "height_mm"))
    clear = min(height, *(c for c in (known.clear_outboard_mm, known.clear_inboard_mm) if c is not None), height)
    seat = so_far.get("seat_diameter_mm", _bore(known) - 0.8)
    radius = so_far.get("seat_corner_radius_mm", min(corner + 0.5, seat / 4))
    length = so_far.get("seat_length_mm", max(radius + 1, depth + 1.5))
    slot = so_far.get("slot_width_mm", thickness + 1.8)
    return Pad(
        seat_diameter_mm=seat,
        seat_length_mm=length,
        seat_corner_radius_mm=radius,
        stem_diameter_mm=so_far.get("stem_diameter_mm", 0.0) if "stem_length_mm" in so_far else 0.0,
        stem_length_mm=so_far.get("stem_length_mm", 0.0) if "stem_diameter_mm" in so_far else 0.0,
        body_diameter_mm=so_far.get("body_diameter_mm", max(seat + 16, slot + 24)),
        slot_width_mm=slot,
        slot_depth_mm=so_far.get("slot_depth_mm", max(3.0, clear - 3.5)),
        web_mm=so_far.get("web_mm", max(10.0, depth + 6, length + 4)),
        slot_corner_radius_mm=so_far.get("slot_corner_radius_mm", 0.3),
        slot_mouth_chamfer_mm=1.0,
        edge_chamfer_mm=1.0,
    )


def _or_typical(known: Known, name: str) -> float:
    value: float | None = getattr(known, name)
    return TYPICAL_MM[name] if value is None else value


def _bore(known: Known) -> float:
    """The cup bore; typically one that leaves room for what is known of the hole and the rim."""
    if known.cup_bore_mm is not None:
        return known.cup_bore_mm
    bore = max(TYPICAL_MM["cup_bore_mm"], (known.stem_hole_diameter_mm or 0.0) + 16)
    return min(bore, known.rim_diameter_mm - 6) if known.rim_diameter_mm else bore


def _corner(known: Known) -> float:
    """The cup's corner radius, never more than the cup as drawn has room for."""
    depth, bore = _or_typical(known, "cup_depth_mm"), _bore(known)
    corner = min(5.0, depth / 2) if known.cup_corner_radius_mm is None else known.cup_corner_radius_mm
    return min(corner, depth - 1, bore / 2)


def _bare(known: Known, sheets: int) -> float:
    thickness = _or_typical(known, "thickness_mm")
    assumed = max(ASSUMED_SHEET_MM * sheets, thickness - ASSUMED_PAINT_MM)
    return min(thickness, assumed if known.bare_thickness_mm is None else known.bare_thickness_mm)


def _widths(pad: Pad, thickness: float, rim: float, unit: float) -> tuple[float, float]:
    """Where the lowest other things begin, and where the picture's subject ends."""
    body = pad.body_diameter_mm / 2
    step = max(0.62 * body, thickness / 2 + 10 * unit)
    return step, max(body + 10 * unit, step + 16 * unit, rim + 10 * unit)


def _hole(known: Known, pad: Pad, unit: float) -> tuple[float, float | None, float]:
    """Half the hole, the level of its floor, and the level of the cup's underside."""
    diameter = min(known.stem_hole_diameter_mm or 0.0, _bore(known) - 6)
    least = max(10 * unit, pad.stem_length_mm + 3 * unit if pad.has_stem else 0.0)
    if diameter <= 0:
        return 0.0, None, -least
    if known.stem_hole_depth_mm is None:
        return diameter / 2, None, -least
    floor = min(known.stem_hole_depth_mm, max(40 * unit, pad.stem_length_mm + unit))
    return diameter / 2, -floor, -max(least, floor + 4 * unit)


def _levels_below(
    known: Known, pad: Pad, under: float, unit: float, room: float
) -> tuple[float | None, float, tuple[float, ...]]:
    """Levels of the lowered rim and of the ground as drawn, and where the picture is shortened to bring them near."""
    low, edge = known.rim_height_low_mm, known.edge_height_mm
    if low is None:
        low = TYPICAL_MM["rim_height_low_mm"] if edge is None else max(edge - 85, edge / 3)
    if edge is None:
        edge = low + 85
    ground = pad.web_mm - edge
    rim_low = ground + low
    targets = (rim_low, ground) if rim_low < under else (ground,)
    gaps = [a - b for a, b in pairwise((under, *targets))]
    longest = max(18 * unit, room / len(targets), room - min(gaps) if len(targets) > 1 else 0.0)
    shortest = 6 * unit
    level, true, breaks = under, under, []
    drawn: list[float] = []
    for target in targets:
        gap = true - target
        shown = max(shortest, min(longest, gap))
        if shown != gap:
            breaks.append(level - 0.6 * shown)
        level, true = level - shown, min(true, target)
        drawn.append(level)
    if rim_low < under:
        return drawn[0], drawn[1], tuple(breaks)
    return (rim_low if rim_low <= pad.top_height_mm else None), drawn[0], tuple(breaks)
