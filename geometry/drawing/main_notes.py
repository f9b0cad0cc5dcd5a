"""Chamfers and radii of the main view, on leaders; what has no good place there is left to a view that shows it too."""

from collections.abc import Callable
from contextlib import suppress

from geometry.drawing.canvas import Canvas
from geometry.drawing.main_plan import Plan, seat_corner_needs_detail
from geometry.drawing.model import Measure, Point
from geometry.drawing.placing import NoRoomError, Pointer, place_pointer
from geometry.drawing.scales import Scale
from geometry.pad import Pad

LENGTHS = (4.0, 5.0, 7.0, 9.0, 12.0, 15.0, 19.0, 24.0, 30.0, 37.0, 45.0, 55.0, 70.0)
CORNER = (-45.0, -35.0, -55.0, -25.0, -65.0, -70.0, -15.0, -75.0)
ASIDE = (-20.0, -10.0, -35.0, 0.0, 10.0, 20.0, -50.0, 35.0)
UP = (60.0, 45.0, 75.0, 30.0, 105.0, 120.0)
_OUT_OF_SLOT = (60.0, 45.0, 75.0, 105.0, 120.0)
_OFF_TOP = (30.0, 20.0, 45.0, 60.0, 75.0, 105.0, 120.0)
"""Directions in which leaders leave, the most wanted first."""
LITTLE = 1.5
"""What a leader may cost that could stand at another view or in a note instead: to cross one extension line."""


def placed_or_moved(
    canvas: Canvas, plan: Plan, name: str, place: Callable[[Canvas], None], *, is_seen: bool = True
) -> None:
    """Place what stands on a leader, or leave it to another view where that is allowed and the leader would be in the way here.

    ``is_seen`` says that another view shows its feature. Raises NoRoomError where there is no room and it may not be left out.
    """
    if name not in plan.may_move or not is_seen:
        place(canvas)
        return
    trial = canvas.copied()
    with suppress(NoRoomError):
        place(trial)
        if trial.trouble - canvas.trouble <= LITTLE:
            canvas.become(trial)
            return
    canvas.moved |= {name}


def mouth_note(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The chamfer of the slot's mouth, on a leader upwards."""
    mouth, z = pad.slot_width_mm / 2 + pad.slot_mouth_chamfer_mm / 2, pad.body_top_mm - pad.slot_mouth_chamfer_mm / 2
    left = tuple(180 - angle for angle in _OUT_OF_SLOT)
    places = (((pad.slot_offset_mm + mouth, z), _OUT_OF_SLOT), ((pad.slot_offset_mm - mouth, z), left))
    name = "slot_mouth_chamfer_mm"
    if name in shown:
        if pad.has_relief and name in plan.may_move:
            # The section cuts the pocket: the top view shows where the slot itself is.
            canvas.moved |= {name}
            return
        placed_or_moved(canvas, plan, name, lambda canvas: note(canvas, shown[name], scale, places, mirrored=False))


def edge_note(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The chamfer of the body's edges: at the lip or at the top, whichever has room; flats take it out of the section."""
    edge = pad.edge_chamfer_mm / 2
    rim = pad.body_diameter_mm / 2 - edge
    is_in_detail = plan.lip_apart and not pad.has_skirt
    name = "edge_chamfer_mm"
    if name in shown and not is_in_detail and not pad.has_flats:
        low, top = (rim, pad.foot_bottom_mm + edge), (rim, pad.body_top_mm - edge)
        places = ((low, ASIDE), *(() if pad.is_crossed else ((top, _OFF_TOP),)))
        placed_or_moved(canvas, plan, name, lambda canvas: note(canvas, shown[name], scale, places))


def corner_note(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The seat's corner radius, where the section shows it large enough."""
    radius, k = pad.seat_corner_radius_mm, scale.factor
    if "seat_corner_radius_mm" in shown and not seat_corner_needs_detail(pad, scale):
        at = ((pad.seat_diameter_mm / 2 - radius) * k, radius * k)
        pointer = Pointer(shown["seat_corner_radius_mm"], "radius", at, radius * k, CORNER, LENGTHS)

        def place(canvas: Canvas) -> None:
            place_pointer(canvas, scale, pointer, pointer.mirrored())

        placed_or_moved(canvas, plan, "seat_corner_radius_mm", place, is_seen=not pad.has_skirt)


def note(
    canvas: Canvas,
    measure: Measure,
    scale: Scale,
    places: tuple[tuple[Point, tuple[float, ...]], ...],
    *,
    mirrored: bool = True,
) -> None:
    """One size on a leader at one of some places, each with the directions in which its leader may leave, model mm and degrees.

    ``mirrored`` says that the same place on the other side of the axis will do as well. Raises NoRoomError.
    """
    k = scale.factor
    pointers = [Pointer(measure, "note", (x * k, z * k), 0.0, angles, LENGTHS) for (x, z), angles in places]
    both = [either for pointer in pointers for either in (pointer, pointer.mirrored())]
    place_pointer(canvas, scale, *(both if mirrored else pointers))
