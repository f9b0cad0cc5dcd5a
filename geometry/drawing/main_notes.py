"""Chamfers and radii of the main view, on leaders."""

from geometry.drawing.canvas import Canvas
from geometry.drawing.main_plan import Plan, seat_corner_needs_detail
from geometry.drawing.model import Measure, Point
from geometry.drawing.placing import Pointer, place_pointer
from geometry.drawing.scales import Scale
from geometry.pad import Pad

_LENGTHS = (4.0, 5.0, 7.0, 9.0, 12.0, 15.0, 19.0, 24.0, 30.0, 37.0, 45.0, 55.0, 70.0)
_CORNER = (-45.0, -35.0, -55.0, -25.0, -65.0, -15.0, -75.0)
ASIDE = (-20.0, -10.0, -35.0, 0.0, 10.0, 20.0, -50.0, 35.0)
UP = (60.0, 45.0, 75.0, 30.0, 105.0, 120.0)
"""Directions in which leaders leave, the most wanted first."""


def mouth_note(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The chamfer of the slot's mouth, on a leader upwards."""
    mouth, z = pad.slot_width_mm / 2 + pad.slot_mouth_chamfer_mm / 2, pad.body_top_mm - pad.slot_mouth_chamfer_mm / 2
    left = tuple(180 - angle for angle in UP)
    places = (((pad.slot_offset_mm + mouth, z), UP), ((pad.slot_offset_mm - mouth, z), left))
    note(canvas, shown, "slot_mouth_chamfer_mm", scale, places, mirrored=False)


def edge_note(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The chamfer of the body's edges: at the lip or at the top, whichever has room; flats take it out of the section."""
    edge = pad.edge_chamfer_mm / 2
    rim = pad.body_diameter_mm / 2 - edge
    is_in_detail = plan.lip_apart and not pad.has_skirt
    if not is_in_detail and not pad.has_flats:
        low, top = (rim, pad.foot_bottom_mm + edge), (rim, pad.body_top_mm - edge)
        note(canvas, shown, "edge_chamfer_mm", scale, ((low, ASIDE), *(() if pad.is_crossed else ((top, UP),))))


def corner_note(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The seat's corner radius, where the section shows it large enough."""
    radius, k = pad.seat_corner_radius_mm, scale.factor
    if "seat_corner_radius_mm" in shown and not seat_corner_needs_detail(pad, scale):
        at = ((pad.seat_diameter_mm / 2 - radius) * k, radius * k)
        pointer = Pointer(shown["seat_corner_radius_mm"], "radius", at, radius * k, _CORNER, _LENGTHS)
        place_pointer(canvas, scale, pointer, pointer.mirrored())


def note(
    canvas: Canvas,
    shown: dict[str, Measure],
    name: str,
    scale: Scale,
    places: tuple[tuple[Point, tuple[float, ...]], ...],
    *,
    mirrored: bool = True,
) -> None:
    """One size on a leader at one of some places, each with the directions in which its leader may leave, model mm and degrees.

    ``mirrored`` says that the same place on the other side of the axis will do as well. Raises NoRoomError.
    """
    if name in shown:
        k = scale.factor
        pointers = [Pointer(shown[name], "note", (x * k, z * k), 0.0, angles, _LENGTHS) for (x, z), angles in places]
        both = [either for pointer in pointers for either in (pointer, pointer.mirrored())]
        place_pointer(canvas, scale, *(both if mirrored else pointers))
