"""Where everything stands when the seam has just come down on the slot's floor: levels and widths in model mm.

The seat face is y = 0, the axis of cup and pad x = 0, outboard is left; the seam stands in the slot, wherever that is.
Between the cup and the ground the picture may be
shortened; everything above is to scale.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

from geometry.drawing.section_known import Known
from geometry.drawing.section_stand_in import stand_in_pad
from geometry.drawing.section_typical import (
    TYPICAL_MM,
    bare_of,
    bore_of,
    corner_of,
    hole_depth_of,
    hole_of,
    or_typical,
    rim_of,
)
from geometry.pad import Pad

_SHAPE = 0.8
"""Height of the picture over its width; what is left of it below the cup brings the ground nearer to its true distance."""

_CLEAR_OF_STEM = 6
"""In units of the picture: how far the floor of a deep hole is drawn from the stem at least, so that it is seen to be clear."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """The assembled job in numbers; half widths are from the centre line, those of the car from its seam."""

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
    boss: float
    """Half the boss on the cup's floor, 0 for none."""
    boss_height: float
    under: float
    """Level of the cup's underside."""
    thickness: float
    bare: float
    sheets: int
    thickest: float
    """Thickness of the seam where the cut goes through it."""
    hanging: float
    """How far something hangs below the seam's edge there, as far as the cup's floor."""
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
    def is_in_a_bore(self) -> bool:
        """Whether the seat drops into something, and does not stand on top of it."""
        return self.known.is_in_a_bore

    @property
    def face_is_ghost(self) -> bool:
        """Whether what carries the car is not measured yet."""
        return self.known.thickness_mm is None

    @property
    def middle(self) -> float:
        """Where the middle of slot and seam is."""
        return self.pad.slot_offset_mm

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

    @property
    def side(self) -> float:
        """Half the body's width where it is cut: a flat takes of it."""
        return (self.pad.flats_width_mm or self.pad.body_diameter_mm) / 2


def scene_of(known: Known, pad: Pad | None, so_far: Mapping[str, float] | None = None) -> Scene:
    """Everything in its place; what is not known is filled in with something typical."""
    corner = corner_of(known)
    shown = pad or stand_in_pad(known, corner, so_far or {})
    rim = rim_of(known) / 2
    height = or_typical(known, "height_mm")
    unit = max(2 * rim, shown.body_diameter_mm, 0.8 * (shown.top_height_mm + height)) / 100
    thickness = or_typical(known, "thickness_mm")
    thickest = max(thickness, known.local_thickness_mm or 0.0)
    step, reach = _widths(shown, thickest, rim, unit)
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
    boss, boss_height = _boss(known)
    return Scene(
        known=known,
        pad=shown,
        pad_is_stand_in=pad is None,
        unit_mm=unit,
        bore=bore_of(known) / 2 if known.is_in_a_bore else rim,
        depth=or_typical(known, "cup_depth_mm") if known.is_in_a_bore else 0.0,
        corner=corner,
        rim=rim,
        hole=hole,
        hole_floor=hole_floor,
        boss=boss,
        boss_height=boss_height,
        under=under,
        thickness=thickness,
        bare=bare_of(known, sheets),
        sheets=sheets,
        thickest=thickest,
        hanging=min(known.local_drop_mm or 0.0, edge),
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


def _widths(pad: Pad, thickness: float, rim: float, unit: float) -> tuple[float, float]:
    """Where the lowest other things begin, and where the picture's subject ends."""
    body = pad.body_diameter_mm / 2
    step = max(0.62 * body, thickness / 2 + 10 * unit)
    return step, max(body + 10 * unit, pad.slot_offset_mm + step + 16 * unit, rim + 10 * unit)


def _boss(known: Known) -> tuple[float, float]:
    """Half the boss and its height, once both are measured."""
    width, height = known.floor_boss_diameter_mm, known.floor_boss_height_mm
    return (width / 2, height) if width and height else (0.0, 0.0)


def _hole(known: Known, pad: Pad, unit: float) -> tuple[float, float | None, float]:
    """Half the hole, the level of its floor, and the level of the cup's underside."""
    diameter = min(hole_of(known), (bore_of(known) if known.is_in_a_bore else rim_of(known)) - 4)
    free = known.value_of("jack.free_edge_mm") or 0.0
    least = max(10 * unit, pad.stem_length_mm + 3 * unit if pad.has_stem else 0.0, pad.foot_depth_mm + 3 * unit, free)
    if diameter <= 0:
        return 0.0, None, -least
    depth = hole_depth_of(known)
    if depth is None:
        return diameter / 2, None, -least
    floor = min(depth, max(40 * unit, pad.stem_length_mm + _CLEAR_OF_STEM * unit))
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
