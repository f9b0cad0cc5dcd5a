"""The main view with its dimensions: section A–A across the slot, everything sized by function from the seat face."""

from geometry.drawing.canvas import Canvas
from geometry.drawing.model import Box, Measure, Point, View
from geometry.drawing.placing import Pointer, Span, place_pointer, place_span
from geometry.drawing.scales import Scale
from geometry.drawing.style import STYLE
from geometry.drawing.views import section_view
from geometry.pad import Pad

_LENGTHS = (5.0, 7.0, 9.0, 12.0, 15.0, 19.0, 24.0, 30.0, 37.0, 45.0, 55.0, 70.0)
_SMALL_RADIUS_MM = 1.2
"""A seat corner that is smaller on paper is dimensioned in a detail."""


def section_canvas(
    pad: Pad, shown: dict[str, Measure], scale: Scale, windows: tuple[tuple[Point, float], ...] = ()
) -> tuple[View, Canvas]:
    """The section at a scale with all its dimensions, in paper mm about the view's origin, clear of its details' windows."""
    k = scale.factor
    view = section_view(pad, over_mm=STYLE.centre_over_mm / k)
    seat, body, top = pad.seat_diameter_mm * k / 2, pad.body_diameter_mm * k / 2, pad.top_height_mm * k
    lip, foot = pad.seat_length_mm * k, -pad.stem_length_mm * k
    canvas = Canvas(solids=[Box(-body, lip, body, top), Box(-seat, 0, seat, lip)])
    if pad.has_stem:
        stem = pad.stem_diameter_mm * k / 2
        canvas.solids.append(Box(-stem, foot, stem, 0))
    for (x, y), reach in windows:
        canvas.solids.append(Box((x - reach) * k, (y - reach) * k, (x + reach) * k, (y + reach) * k))
    canvas.lines.append(((0, foot - STYLE.centre_over_mm), (0, top + STYLE.centre_over_mm)))
    _heights(canvas, pad, shown, scale)
    _diameters(canvas, pad, shown, scale)
    _pointers(canvas, pad, shown, scale)
    return view, canvas


def _heights(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale) -> None:
    """Left of the part, from the seat face: seat length, web with slot depth in one chain, and what they add up to."""
    k = scale.factor
    body, rim = pad.body_diameter_mm * k / 2, (pad.body_diameter_mm / 2 - pad.edge_chamfer_mm) * k
    face: Point = (-pad.seat_flat_diameter_mm * k / 2, 0)
    floor: Point = (-(pad.slot_width_mm / 2 - pad.slot_corner_radius_mm) * k, pad.web_mm * k)
    lip: Point = (-rim, pad.seat_length_mm * k)
    top: Point = (-rim, pad.top_height_mm * k)

    def span(name: str, start: Point, end: Point) -> Span:
        return Span(shown[name], "left", start, end, -body)

    # The outermost first: its extension lines are there when the words of the inner ones look for room.
    place_span(canvas, span("top_height_mm", face, top), scale, rows=(2, 3, 4), words=("middle", "high", "low"))
    place_span(canvas, span("web_mm", face, floor), scale, rows=(1, 3, 4), words=("middle", "low"))
    place_span(canvas, span("slot_depth_mm", floor, top), scale, rows=(1, 3, 4), words=("middle", "high"))
    place_span(canvas, span("seat_length_mm", face, lip), scale, rows=(0, 3, 4), words=("middle", "low", "high"))
    if pad.has_stem:
        end: Point = (pad.stem_diameter_mm * k / 2, -pad.stem_length_mm * k)
        right = Span(shown["stem_length_mm"], "right", (-face[0], 0), end, body)
        place_span(canvas, right, scale, rows=range(3), words=("middle", "low"))


def _diameters(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale) -> None:
    """Slot and body above the part, stem and seat below it."""
    k = scale.factor
    top, foot = pad.top_height_mm * k, -pad.stem_length_mm * k

    def both(name: str, half: float, z: float, edge: float) -> Span:
        return Span(shown[name], "above" if edge > 0 else "below", (-half * k, z * k), (half * k, z * k), edge)

    mouth = pad.top_height_mm - pad.slot_mouth_chamfer_mm
    body = both("body_diameter_mm", pad.body_diameter_mm / 2, pad.top_height_mm - pad.edge_chamfer_mm, top)
    place_span(canvas, body, scale, rows=(1, 2, 3), words=("middle", "high", "low"))
    slot = both("slot_width_mm", pad.slot_width_mm / 2, mouth, top)
    place_span(canvas, slot, scale, rows=(0, 2, 3), words=("middle", "low", "high"))
    seat = both("seat_diameter_mm", pad.seat_diameter_mm / 2, pad.seat_corner_radius_mm, foot - 1e-6)
    place_span(canvas, seat, scale, rows=range(1 if pad.has_stem else 0, 6), words=("middle", "low", "high"))
    if pad.has_stem:
        stem = both("stem_diameter_mm", pad.stem_diameter_mm / 2, -pad.stem_length_mm, foot - 1e-6)
        place_span(canvas, stem, scale, rows=(0, 2, 3, 4, 5), words=("middle", "high", "low"))


def _pointers(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale) -> None:
    """Seat corner and chamfers on leaders to the right, or to the left where that is full."""
    k = scale.factor
    corner, edge, mouth = pad.seat_corner_radius_mm, pad.edge_chamfer_mm / 2, pad.slot_mouth_chamfer_mm / 2
    places: tuple[tuple[str, Point, tuple[float, ...]], ...] = (
        ("seat_corner_radius_mm", (pad.seat_diameter_mm / 2 - corner, corner), (-45, -35, -55, -25, -65, -15, -75)),
        (
            "edge_chamfer_mm",
            (pad.body_diameter_mm / 2 - edge, pad.seat_length_mm + edge),
            (-20, -10, -35, 0, 10, 20, -50, 35),
        ),
        ("slot_mouth_chamfer_mm", (pad.slot_width_mm / 2 + mouth, pad.top_height_mm - mouth), (60, 45, 75, 30, 20)),
    )
    for name, (x, z), angles in places:
        is_corner = name == "seat_corner_radius_mm"
        if name not in shown or (is_corner and seat_corner_needs_detail(pad, scale)):
            continue
        radius = corner * k if is_corner else 0.0
        pointer = Pointer(shown[name], "radius" if is_corner else "note", (x * k, z * k), radius, angles, _LENGTHS)
        place_pointer(canvas, scale, pointer, pointer.mirrored())


def seat_corner_needs_detail(pad: Pad, scale: Scale) -> bool:
    """Whether the seat's corner is too small on paper to point at."""
    return 0 < pad.seat_corner_radius_mm * scale.factor < _SMALL_RADIUS_MM
