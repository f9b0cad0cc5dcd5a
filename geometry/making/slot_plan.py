"""How a cutter opens the slot: passes across and down, each with its place from the centre line."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import ceil, floor
from typing import Literal

from geometry.drawing.model import Layer, Line, Shape
from geometry.machining import milling_time_min
from geometry.making.card import Cut, Label, Picture, picture, rectangle
from geometry.making.cutter import MODULUS_MPA, cutter_deflection_mm, cutting_force_n
from geometry.making.cutting import ToolMaterial, tooth_feed_mm
from geometry.making.machine import Machine
from geometry.making.wording import said
from geometry.pad import Pad
from geometry.provenance import practice

SAME_MM = 0.02
"""A cutter this near to the slot's width makes it in one pass."""
DEEPEST_SHARE = 0.5
"""Depth of a pass over the cutter's diameter when it cuts full width."""
CHUCK_SHARE = 0.25
"""The same where a chuck holds the cutter, or a vertical slide the work."""
STEP_SHARE = 0.7
"""Step across over the cutter's diameter, so that neighbouring passes overlap."""
SHARES_SOURCE = practice(
    "Half a diameter deep in a full slot, a quarter on a slender set-up, passes overlapping by a third"
)
REACH_CLEARANCE_MM = 3.0

_HAIR = 1e-9
_LEAST_LINES = 2
"""Steps of fewer lines of the dial than this are set between the lines."""

Direction = Literal["+x", "-x"]
Way = Literal["full", "climb", "conventional"]
Job = Literal["rough", "floor", "wall"]


@dataclass(frozen=True, slots=True, kw_only=True)
class SlotPass:
    """One run of the cutter along the slot; x runs along it, y across it to the left, from the pad's centre line."""

    number: int
    job: Job
    y_mm: float
    """Place of the cutter's middle across the slot."""
    depth_mm: float
    """Depth of the cutter's end below the wall tops."""
    direction: Direction
    way: Way
    cut_deep_mm: float
    """How deep this pass cuts."""
    cut_wide_mm: float
    """How wide it cuts."""
    time_min: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SlotPlan:
    """The whole slot."""

    cutter_mm: float
    width_mm: float
    depth_mm: float
    length_mm: float
    side_allowance_mm: float
    """Left on each wall by roughing; 0 where the cutter is as wide as the slot."""
    floor_allowance_mm: float
    reach_mm: float
    """Length of cutter out of its holder."""
    cut: Cut
    passes: tuple[SlotPass, ...]
    deflection_mm: float
    """Estimated bend of the cutter at its end in the finishing pass."""
    corner_note_mm: float
    """Radius wanted on the cutter's corners."""
    offset_mm: float = 0.0
    """From the pad's centre line to the middle of the slot, to the left."""

    @property
    def time_min(self) -> float:
        """Time in the cut."""
        return sum(p.time_min for p in self.passes)

    def of(self, job: Job) -> tuple[SlotPass, ...]:
        """The passes of one job."""
        return tuple(p for p in self.passes if p.job == job)


def cutter_for(*, slot_width_mm: float, cutters_mm: tuple[float, ...], finishing_mm: float) -> float | None:
    """The cutter for a slot: as wide as it, else the largest that leaves both walls a finishing cut, else the largest that enters.

    >>> cutter_for(slot_width_mm=9, cutters_mm=(3, 6, 8, 10), finishing_mm=0.1)
    8
    """
    entering = [d for d in cutters_mm if d <= slot_width_mm + 1e-9]
    exact = [d for d in entering if slot_width_mm - d <= SAME_MM]
    with_finish = [d for d in entering if d <= slot_width_mm - 2 * finishing_mm]
    return max(exact or with_finish or entering, default=None)


def slot_plan(pad: Pad, machine: Machine, *, cutter_mm: float, tool: ToolMaterial, is_slender: bool) -> SlotPlan:
    """Lay the passes of a slot.

    Roughing goes down level by level, from the slot's middle outwards; then the floor, then the left and the right wall.
    A slot off the middle is laid as one in the middle and moved: the places of its passes stay counted from the pad's centre
    line, where the dials are zero.
    """
    width, depth, length = pad.slot_width_mm, pad.slot_depth_mm, pad.body_diameter_mm
    cut = machine.milling(cutter_mm)
    is_full = abs(width - cutter_mm) <= SAME_MM
    side = 0.0 if is_full else min(machine.finishing_mm, (width - cutter_mm) / 2)
    left = min(machine.finishing_mm, depth / 2)
    share = CHUCK_SHARE if is_slender else DEEPEST_SHARE
    levels = _levels(depth - left, most_mm=share * cutter_mm, grid_mm=machine.division_mm)
    reach = depth + REACH_CLEARANCE_MM
    layer = _Layer(cut, cutter_mm, length)
    places = _places(room_mm=(width - cutter_mm) / 2 - side, cutter_mm=cutter_mm)
    end = (width - cutter_mm) / 2
    laid: list[SlotPass] = []
    before = 0.0
    for level in levels:
        laid += layer.across(len(laid), "rough", places, level, deep=level - before, is_full=is_full)
        before = level
    laid += layer.across(len(laid), "floor", places, depth, deep=left, is_full=is_full)
    if side > 0:
        laid += layer.walls(len(laid), end, depth, side)
    force = cutting_force_n(
        deep_mm=depth if side > 0 else left,
        wide_mm=side if side > 0 else cutter_mm,
        cutter_diameter_mm=cutter_mm,
        feed_mm_tooth=tooth_feed_mm(cutter_mm),
    )
    offset = pad.slot_offset_mm
    return SlotPlan(
        offset_mm=offset,
        cutter_mm=cutter_mm,
        width_mm=width,
        depth_mm=depth,
        length_mm=length,
        side_allowance_mm=side,
        floor_allowance_mm=left,
        reach_mm=reach,
        cut=cut,
        passes=tuple(replace(p, y_mm=p.y_mm + offset) for p in laid),
        deflection_mm=cutter_deflection_mm(
            force_n=force, reach_mm=reach, cutter_diameter_mm=cutter_mm, modulus_mpa=MODULUS_MPA[tool]
        ),
        corner_note_mm=pad.slot_corner_radius_mm,
    )


@dataclass(frozen=True, slots=True)
class _Layer:
    """Writes passes of one cutter."""

    cut: Cut
    cutter_mm: float
    length_mm: float

    @property
    def time_min(self) -> float:
        return milling_time_min(
            length_mm=self.length_mm,
            cutter_diameter_mm=self.cutter_mm,
            table_feed_mm_min=self.cut.table_feed_mm_min or 1.0,
        )

    def across(
        self, done: int, job: Job, places: tuple[float, ...], depth: float, *, deep: float, is_full: bool
    ) -> Iterator[SlotPass]:
        """One level: the centre line first, then each side in turn, always against the cutter's turning."""
        for i, y in enumerate(places):
            fed: Direction = "+x" if y >= 0 else "-x"
            way: Way = "full" if i == 0 or is_full else "conventional"
            wide = self.cutter_mm if i == 0 else min(abs(y - p) for p in places[:i])
            yield self._pass(done + i + 1, job, y, depth, fed, way, deep, wide)

    def walls(self, done: int, end: float, depth: float, side: float) -> Iterator[SlotPass]:
        """The two finishing passes: the left wall going out, the right wall coming back."""
        yield self._pass(done + 1, "wall", end, depth, "+x", "conventional", depth, side)
        yield self._pass(done + 2, "wall", -end, depth, "-x", "conventional", depth, side)

    def _pass(
        self, number: int, job: Job, y: float, depth: float, fed: Direction, way: Way, deep: float, wide: float
    ) -> SlotPass:
        return SlotPass(
            number=number,
            job=job,
            y_mm=y,
            depth_mm=depth,
            direction=fed,
            way=way,
            cut_deep_mm=deep,
            cut_wide_mm=wide,
            time_min=self.time_min,
        )


def _levels(total_mm: float, *, most_mm: float, grid_mm: float) -> tuple[float, ...]:
    """Depths down to a total by steps of whole lines of the dial, the odd part first; even steps where lines are too coarse."""
    deepest = floor(most_mm / grid_mm + _HAIR)
    if deepest < _LEAST_LINES:
        count = max(1, ceil(total_mm / most_mm - _HAIR))
        return tuple(total_mm * (k + 1) / count for k in range(count))
    count = max(1, ceil(total_mm / (deepest * grid_mm) - _HAIR))
    step = min(deepest, ceil(total_mm / count / grid_mm - _HAIR)) * grid_mm
    later = max(0, ceil(total_mm / step - _HAIR) - 1)
    return tuple(total_mm - step * (later - k) for k in range(later + 1))


def _places(*, room_mm: float, cutter_mm: float) -> tuple[float, ...]:
    """Places across, from the centre line outwards by even steps: 0, left, right, further left and so on."""
    if room_mm <= 1e-9:
        return (0.0,)
    count = max(1, ceil(room_mm / (STEP_SHARE * cutter_mm) - 1e-9))
    steps = [room_mm * (k + 1) / count for k in range(count)]
    return (0.0, *(sign * step for step in steps for sign in (1, -1)))


def slot_picture(plan: SlotPlan) -> Picture:
    """The slot in section, y up from its floor, seen along +x, so that +y is on the left.

    Walls and floor are thick; the levels of roughing are thin lines inside. Above, one row for each place of the cutter, in
    the order in which they are first taken, with its distance from the centre line.
    """
    half, depth, row = plan.width_mm / 2, plan.depth_mm, plan.cutter_mm / 2
    left, right = -plan.offset_mm - half, -plan.offset_mm + half
    spare = plan.side_allowance_mm
    places = list(dict.fromkeys(p.y_mm for p in plan.passes))
    shapes: list[Shape] = [
        Line((right, depth), (right, 0), Layer.VISIBLE),
        Line((right, 0), (left, 0), Layer.VISIBLE),
        Line((left, 0), (left, depth), Layer.VISIBLE),
        Line((0, -row), (0, depth + (len(places) + 1) * row), Layer.CENTRE),
    ]
    for level in dict.fromkeys(p.depth_mm for p in plan.of("rough")):
        shapes.append(Line((left + spare, depth - level), (right - spare, depth - level), Layer.THIN))
    labels = []
    for i, y in enumerate(places):
        foot = depth + (i + 0.5) * row
        shapes += rectangle(-y - plan.cutter_mm / 2, foot, -y + plan.cutter_mm / 2, foot + 0.8 * row, Layer.THIN)
        words = f"cutter's place {i + 1}: {{y}} across" if len(places) > 1 else "cutter in every pass: {y} across"
        labels.append(Label((max(right, 0.0) + row, foot), said(words, y=y)))
    return picture("slot passes", shapes, tuple(labels))
