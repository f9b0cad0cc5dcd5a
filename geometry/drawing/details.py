"""Round windows of the section at a larger scale, for corners that the main scale hides."""

from dataclasses import dataclass

from geometry.drawing.callouts import place_callout
from geometry.drawing.canvas import Canvas
from geometry.drawing.facts import Units
from geometry.drawing.geometrical import FLOOR_ROUGHNESS_UM
from geometry.drawing.main_view import seat_corner_needs_detail
from geometry.drawing.model import Box, Measure, Point, Text, View
from geometry.drawing.placing import Pointer, place_pointer
from geometry.drawing.scales import Scale, largest_scale
from geometry.drawing.signs import stacked, texture, tolerance_frame
from geometry.drawing.style import STYLE
from geometry.drawing.windows import detail_view
from geometry.geometrical import FLOOR_PARALLELISM
from geometry.pad import Pad

_LEAST_WINDOW_MM = 1.5
_UP_LEFT = (135.0, 125.0, 145.0, 115.0, 155.0)
_LEFT = (165.0, 170.0, 160.0, 175.0, 155.0, 150.0)
_DOWN_RIGHT = (-45.0, -35.0, -55.0, -25.0, -65.0)


@dataclass(slots=True)
class Detail:
    """One window: its letter, what it shows and where it lies on the part."""

    letter: str
    view: View
    scale: Scale
    canvas: Canvas
    centre: Point
    window_mm: float


def details_of(
    pad: Pad, shown: dict[str, Measure], main: Scale, units: Units, *, reach_mm: float
) -> tuple[Detail, ...]:
    """The details that a section at a scale needs, their windows ``reach_mm`` in radius on paper."""
    slot = _slot_detail(pad, shown, main, units, reach_mm)
    if "seat_corner_radius_mm" in shown and seat_corner_needs_detail(pad, main):
        return slot, _corner_detail(pad, shown, main, reach_mm)
    return (slot,)


def _slot_detail(pad: Pad, shown: dict[str, Measure], main: Scale, units: Units, reach: float) -> Detail:
    """Detail X: the right corner of the slot's floor with its radius, its parallelism and its texture."""
    radius = pad.slot_corner_radius_mm
    detail = _window(pad, "X", (pad.slot_width_mm / 2, pad.web_mm), radius, main, reach)
    k = detail.scale.factor
    if radius:
        at = (-radius * k, radius * k)
        pointer = Pointer(
            shown["slot_corner_radius_mm"], "radius", at, radius * k, _UP_LEFT, _lengths(reach), inner=True
        )
        place_pointer(detail.canvas, detail.scale, pointer)
    # Where on the floor the leader ends: half way between the corner and what else the window shows of the floor.
    floor_mm = radius + max(0.0, min(detail.window_mm, pad.slot_width_mm - radius) - radius) / 2
    sign = stacked(tolerance_frame(FLOOR_PARALLELISM, units), texture(FLOOR_ROUGHNESS_UM))
    place_callout(detail.canvas, sign, [(-floor_mm * k, 0.0)], _LEFT, "slot floor parallelism")
    return _named(detail)


def _corner_detail(pad: Pad, shown: dict[str, Measure], main: Scale, reach: float) -> Detail:
    """Detail Y: the seat's corner radius, where it is too small on the section."""
    radius = pad.seat_corner_radius_mm
    detail = _window(pad, "Y", (pad.seat_diameter_mm / 2, 0.0), radius, main, reach)
    k = detail.scale.factor
    at = (-radius * k, radius * k)
    pointer = Pointer(shown["seat_corner_radius_mm"], "radius", at, radius * k, _DOWN_RIGHT, _lengths(reach))
    place_pointer(detail.canvas, detail.scale, pointer)
    return _named(detail)


def _window(pad: Pad, letter: str, corner: Point, radius: float, main: Scale, reach: float) -> Detail:
    """A window about a corner, at the largest standard scale that still shows the whole corner."""
    scale = max(largest_scale(reach / max(_LEAST_WINDOW_MM, 2.2 * radius)), main)
    window = reach / scale.factor
    view = detail_view(pad, letter, centre=corner, window_mm=window)
    return Detail(letter, view, scale, Canvas(solids=[Box(-reach, -reach, reach, reach)]), corner, window)


def _named(detail: Detail) -> Detail:
    """The detail with its letter and scale above everything else."""
    words = f"{detail.letter} ({detail.scale.words})"
    detail.canvas.add_text(Text((0, detail.canvas.box.top + 3), words, STYLE.large_mm, "centre"))
    return detail


def _lengths(reach: float) -> tuple[float, ...]:
    return tuple(reach * share for share in (0.9, 1.0, 1.1, 1.2, 1.3, 1.4, 1.6, 1.8, 2.0))
