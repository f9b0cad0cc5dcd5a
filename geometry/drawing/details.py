"""Round windows of the section at a larger scale, for corners that the main scale hides."""

from dataclasses import dataclass

from geometry.drawing.canvas import Canvas
from geometry.drawing.model import Box, Measure, Point, Text, View
from geometry.drawing.placing import Pointer, place_pointer
from geometry.drawing.scales import Scale, largest_scale
from geometry.drawing.section_sheet import seat_corner_needs_detail
from geometry.drawing.style import STYLE
from geometry.drawing.views import detail_view
from geometry.pad import Pad

_LEAST_WINDOW_MM = 1.5


@dataclass(slots=True)
class Detail:
    """One window: its letter, what it shows and where it lies on the part."""

    letter: str
    view: View
    scale: Scale
    canvas: Canvas
    centre: Point
    window_mm: float


def details_of(pad: Pad, shown: dict[str, Measure], main: Scale, *, reach_mm: float) -> tuple[Detail, ...]:
    """The details that a section at a scale needs, their windows ``reach_mm`` in radius on paper."""
    found = (_slot_detail(pad, shown, main, reach_mm), _corner_detail(pad, shown, main, reach_mm))
    return tuple(detail for detail in found if detail)


def _slot_detail(pad: Pad, shown: dict[str, Measure], main: Scale, reach: float) -> Detail | None:
    """Detail X: the right corner of the slot's floor with its radius."""
    if "slot_corner_radius_mm" not in shown:
        return None
    radius = pad.slot_corner_radius_mm
    corner = (pad.slot_width_mm / 2, pad.web_mm)
    arc_centre = (-radius, radius)
    angles = (135.0, 125.0, 145.0, 115.0, 155.0)
    return _detail(
        pad, "X", shown["slot_corner_radius_mm"], corner, arc_centre, radius, angles, main, reach, inner=True
    )


def _corner_detail(pad: Pad, shown: dict[str, Measure], main: Scale, reach: float) -> Detail | None:
    """Detail Y: the seat's corner radius, where it is too small on the section."""
    if "seat_corner_radius_mm" not in shown or not seat_corner_needs_detail(pad, main):
        return None
    radius = pad.seat_corner_radius_mm
    corner = (pad.seat_diameter_mm / 2, 0.0)
    angles = (-45.0, -35.0, -55.0, -25.0, -65.0)
    return _detail(
        pad, "Y", shown["seat_corner_radius_mm"], corner, (-radius, radius), radius, angles, main, reach, inner=False
    )


def _detail(
    pad: Pad,
    letter: str,
    measure: Measure,
    corner: Point,
    arc_centre: Point,
    radius: float,
    angles: tuple[float, ...],
    main: Scale,
    reach: float,
    *,
    inner: bool,
) -> Detail:
    """A window about a corner, at the largest standard scale that still shows the whole corner."""
    scale = largest_scale(reach / max(_LEAST_WINDOW_MM, 2.2 * radius))
    scale = max(scale, main)
    window = reach / scale.factor
    k = scale.factor
    view = detail_view(pad, letter, centre=corner, window_mm=window)
    canvas = Canvas(solids=[Box(-reach, -reach, reach, reach)])
    pointer = Pointer(
        measure,
        "radius",
        (arc_centre[0] * k, arc_centre[1] * k),
        radius * k,
        angles,
        tuple(reach * share for share in (0.9, 1.0, 1.1, 1.2, 1.3, 1.4, 1.6, 1.8, 2.0)),
        inner=inner,
    )
    place_pointer(canvas, scale, pointer)
    canvas.add_text(Text((0, canvas.box.top + 3), f"{letter} ({scale.words})", STYLE.large_mm, "centre"))
    return Detail(letter, view, scale, canvas, corner, window)
