"""The top view's dimensions: what the section does not show in its true size."""

from math import cos, radians, sin

from geometry.drawing.canvas import Canvas
from geometry.drawing.model import Measure, Point
from geometry.drawing.placing import Pointer, Side, Span, place_pointer, place_span
from geometry.drawing.scales import Scale
from geometry.pad import Pad

_BESIDE_SIGHT_MM = 9.0
"""From the outline to where rows begin at the view's sides, past the ends of the cutting plane and their letters."""
_LENGTHS = (6.0, 9.0, 13.0, 18.0, 24.0, 32.0, 42.0, 55.0)
_OUTWARD = (45.0, 30.0, 60.0, -45.0, -30.0, -60.0)


def add_plan_dimensions(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale) -> None:
    """Lengths along the slot at the right, widths below, and what only this view shows round.

    Raises NoRoomError where one finds no place.
    """
    k, body = scale.factor, pad.body_diameter_mm / 2

    def span(name: str, side: Side, start: Point, end: Point) -> None:
        if name in shown:
            edge = {"right": body * k + _BESIDE_SIGHT_MM, "below": -body * k}[side]
            (ax, ay), (bx, by) = start, end
            placed = Span(shown[name], side, (ax * k, ay * k), (bx * k, by * k), edge)
            place_span(canvas, placed, scale, rows=range(5), words=("middle", "high", "low"))

    if pad.has_relief:
        x, half, y = pad.slot_offset_mm, pad.relief_width_mm / 2, pad.relief_length_mm / 2
        span("relief_length_mm", "right", (x + half, -y), (x + half, y))
        span("relief_width_mm", "below", (x - half, -y), (x + half, -y))
    if pad.is_crossed:
        y = pad.cross_slot_width_mm / 2
        x = min(pad.flats_width_mm / 2 if pad.has_flats else body, (body**2 - y**2) ** 0.5)
        span("cross_slot_width_mm", "right", (x, -y), (x, y))
    if pad.has_plug and not pad.plug_is_round:
        x, y = pad.plug_width_mm / 2, pad.plug_length_mm / 2
        span("plug_length_mm", "right", (x, -y), (x, y))
        if "plug_corner_radius_mm" in shown:
            radius = pad.plug_corner_radius_mm
            at = ((x - radius) * k, (y - radius) * k)
            pointer = Pointer(shown["plug_corner_radius_mm"], "radius", at, radius * k, _OUTWARD[:3], _LENGTHS)
            place_pointer(canvas, scale, pointer, pointer.mirrored())
    if pad.has_flats:
        span("body_diameter_mm", "right", (0.0, -body), (0.0, body))
        if "edge_chamfer_mm" in shown:
            rim = (body - pad.edge_chamfer_mm / 2) * k
            turn = radians(75.0)
            places = [(rim * cos(turn), way * rim * sin(turn)) for way in (1, -1)]
            pointers = [Pointer(shown["edge_chamfer_mm"], "note", at, 0.0, _OUTWARD, _LENGTHS) for at in places]
            place_pointer(canvas, scale, *pointers)
