"""The main view with its dimensions: section A–A across the slot, everything sized by function from the seat face."""

from collections.abc import Callable
from dataclasses import dataclass
from math import inf

from geometry.drawing.callouts import place_axis_datum, place_beside, place_callout, place_datum, place_square
from geometry.drawing.canvas import Canvas
from geometry.drawing.facts import Units
from geometry.drawing.geometrical import SEAT_ROUGHNESS_UM
from geometry.drawing.model import Box, Dimension, Measure, Point, View
from geometry.drawing.placing import NoRoomError, Pointer, Span, place_pointer, place_span
from geometry.drawing.scales import Scale
from geometry.drawing.signs import texture, tolerance_frame
from geometry.drawing.style import STYLE
from geometry.drawing.views import section_view
from geometry.geometrical import LIP_RUN_OUT, SEAT_AXIS, SEAT_FACE, SLOT_SYMMETRY
from geometry.pad import Pad

_LENGTHS = (5.0, 7.0, 9.0, 12.0, 15.0, 19.0, 24.0, 30.0, 37.0, 45.0, 55.0, 70.0)
_CORNER = (-45.0, -35.0, -55.0, -25.0, -65.0, -15.0, -75.0)
_ASIDE = (-20.0, -10.0, -35.0, 0.0, 10.0, 20.0, -50.0, 35.0)
_UP = (60.0, 45.0, 75.0, 30.0, 20.0, 12.0, 105.0, 120.0)
"""Directions in which leaders leave, the most wanted first."""
_DOWN = (-60.0, -45.0, -120.0, -135.0)
_NARROW_LIP_MM = 2.0
"""A lip that is narrower on paper, less its chamfer, is shown in a detail."""
_SMALL_RADIUS_MM = 1.2
"""A seat corner that is smaller on paper is dimensioned in a detail."""


@dataclass(frozen=True, slots=True)
class Plan:
    """What goes onto the section and what into a detail or a note instead."""

    units: Units
    windows: tuple[tuple[Point, float], ...] = ()
    """Details: where they look, and how far about it, in model mm."""
    right_limit: float = inf
    lip_apart: bool = False
    """The lip has a detail of its own, with its chamfer and its run-out."""
    is_trial: bool = False
    """Whether any order of placing will do, crossings or not: enough to see whether a scale has room."""


def section_canvas(pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> tuple[View, Canvas]:
    """The section at a scale with its dimensions, in paper mm about the view's origin, clear of its details' windows.

    Where one order of placing leaves leaders crossing other lines, others are tried.
    """
    view = section_view(pad, over_mm=STYLE.centre_over_mm / scale.factor)
    tried = []
    for order in _ORDERS:
        canvas = _empty_canvas(pad, scale, plan)
        try:
            for step in order:
                step(canvas, pad, shown, scale, plan)
        except NoRoomError:
            continue
        if plan.is_trial or not canvas.crossed:
            return view, canvas
        tried.append(canvas)
    if not tried:
        raise NoRoomError(f"no room for the dimensions of the section at {scale.words}")
    return view, min(tried, key=lambda canvas: canvas.crossed)


def _empty_canvas(pad: Pad, scale: Scale, plan: Plan) -> Canvas:
    """The part's own places, that no words may stand on, and its axis."""
    k = scale.factor
    seat, body, top = pad.seat_diameter_mm * k / 2, pad.body_diameter_mm * k / 2, pad.top_height_mm * k
    lip, foot = pad.seat_length_mm * k, -pad.stem_length_mm * k
    canvas = Canvas(plan.right_limit, solids=[Box(-body, lip, body, top), Box(-seat, 0, seat, lip)])
    if pad.has_stem:
        stem = pad.stem_diameter_mm * k / 2
        canvas.solids.append(Box(-stem, foot, stem, 0))
    for (x, y), reach in plan.windows:
        canvas.solids.append(Box((x - reach) * k, (y - reach) * k, (x + reach) * k, (y + reach) * k))
        canvas.circles.append(((x * k, y * k), reach * k))
    canvas.lines.append(((0, foot - STYLE.centre_over_mm), (0, top + STYLE.centre_over_mm)))
    return canvas


def _heights(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """Left of the part, from the seat face: seat length, web with slot depth in one chain, and what they add up to."""
    k = scale.factor
    body, rim = pad.body_diameter_mm * k / 2, (pad.body_diameter_mm / 2 - pad.edge_chamfer_mm) * k
    face: Point = (-pad.seat_flat_diameter_mm * k / 2, 0)
    floor: Point = (-(pad.slot_width_mm / 2 - pad.slot_corner_radius_mm) * k, pad.web_mm * k)
    lip: Point = (-rim, pad.seat_length_mm * k)
    top: Point = (-rim, pad.top_height_mm * k)

    def span(name: str, start: Point, end: Point) -> Span:
        return Span(shown[name], "left", start, end, -body)

    if pad.has_stem:
        foot: Point = (-pad.stem_diameter_mm * k / 2, -pad.stem_length_mm * k)
        place_span(canvas, span("overall_height_mm", foot, top), scale, rows=(3, 4, 5), words=("middle", "low", "high"))
    # The outermost first: its extension lines are there when the words of the inner ones look for room.
    place_span(canvas, span("top_height_mm", face, top), scale, rows=(2, 3, 4), words=("middle", "high", "low"))
    place_span(canvas, span("web_mm", face, floor), scale, rows=(1, 3, 4), words=("middle", "low"))
    place_span(canvas, span("slot_depth_mm", floor, top), scale, rows=(1, 3, 4), words=("middle", "high"))
    place_span(canvas, span("seat_length_mm", face, lip), scale, rows=(0, 3, 4), words=("middle", "low", "high"))


def _stem_length(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """Right of the stem, from the seat face."""
    if pad.has_stem:
        k = scale.factor
        face: Point = (pad.seat_flat_diameter_mm * k / 2, 0)
        end: Point = (pad.stem_diameter_mm * k / 2, -pad.stem_length_mm * k)
        span = Span(shown["stem_length_mm"], "right", face, end, pad.body_diameter_mm * k / 2)
        place_span(canvas, span, scale, rows=range(4), words=("middle", "low"))


def _diameters(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
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
    place_span(canvas, seat, scale, rows=(1, 0, 2, 3, 4, 5), words=("middle", "low", "high"))
    if pad.has_stem:
        stem = both("stem_diameter_mm", pad.stem_diameter_mm / 2, -pad.stem_length_mm, foot - 1e-6)
        place_span(canvas, stem, scale, rows=(0, 2, 3, 4, 5), words=("middle", "high", "low"))


def _mouth(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The chamfer of the slot's mouth, on a leader upwards."""
    mouth = pad.slot_mouth_chamfer_mm / 2
    at = (pad.slot_width_mm / 2 + mouth, pad.top_height_mm - mouth)
    _note(canvas, shown, "slot_mouth_chamfer_mm", scale, ((at, _UP),))


def _edge(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The chamfer of the body's edges: at the lip or at the top, whichever has room."""
    edge = pad.edge_chamfer_mm / 2
    rim = pad.body_diameter_mm / 2 - edge
    if not plan.lip_apart:
        lip, top = (rim, pad.seat_length_mm + edge), (rim, pad.top_height_mm - edge)
        _note(canvas, shown, "edge_chamfer_mm", scale, ((lip, _ASIDE), (top, _UP)))


def _note(
    canvas: Canvas,
    shown: dict[str, Measure],
    name: str,
    scale: Scale,
    places: tuple[tuple[Point, tuple[float, ...]], ...],
) -> None:
    if name in shown:
        k = scale.factor
        pointers = [Pointer(shown[name], "note", (x * k, z * k), 0.0, angles, _LENGTHS) for (x, z), angles in places]
        place_pointer(canvas, scale, *(either for pointer in pointers for either in (pointer, pointer.mirrored())))


def _corner(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The seat's corner radius, where the section shows it large enough."""
    radius, k = pad.seat_corner_radius_mm, scale.factor
    if "seat_corner_radius_mm" in shown and not seat_corner_needs_detail(pad, scale):
        at = ((pad.seat_diameter_mm / 2 - radius) * k, radius * k)
        pointer = Pointer(shown["seat_corner_radius_mm"], "radius", at, radius * k, _CORNER, _LENGTHS)
        place_pointer(canvas, scale, pointer, pointer.mirrored())


def _datums(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """Datum A at the seat face, datum B at the seat's axis, and the slot's symmetry about that."""
    k = scale.factor
    face, body = pad.seat_flat_diameter_mm * k / 2, pad.body_diameter_mm * k / 2
    place_axis_datum(canvas, SEAT_AXIS, _placed(canvas, "seat_diameter_mm"))
    beside = [(way * (body + x), 0.0) for x in (3.5, 5.0, 12.0, 17.0, 22.0, 30.0) for way in (-1, 1)]
    places = [((x, 0.0), 270.0) for x in _face_places(pad, scale)]
    places += [(foot, turn) for foot in beside for turn in (270.0, 90.0)]
    place_datum(canvas, SEAT_FACE, places, reached_from=face)
    slot = _placed(canvas, "slot_width_mm").lines[0]
    place_beside(canvas, tolerance_frame(SLOT_SYMMETRY, plan.units), slot, "slot symmetry")


def _placed(canvas: Canvas, name: str) -> Dimension:
    return next(d for d in canvas.dimensions if d.measure.name == name)


def _face_places(pad: Pad, scale: Scale) -> list[float]:
    """Where on the seat face, left and right, a sign may stand, the most wanted first."""
    k = scale.factor
    face, stem = pad.seat_flat_diameter_mm * k / 2, pad.stem_diameter_mm * k / 2 if pad.has_stem else 0.0
    return [way * (stem + (face - stem) * share) for share in (0.75, 0.6, 0.9, 0.45, 0.3) for way in (1, -1)]


def add_seat_texture(canvas: Canvas, pad: Pad, scale: Scale) -> None:
    """The seat face's texture, on a leader: the sign cannot stand upside down on the face itself.

    Raises NoRoomError where it finds no place.
    """
    tips = [(x, 0.0) for x in _face_places(pad, scale)[:4]]
    place_callout(canvas, texture(SEAT_ROUGHNESS_UM), tips, _DOWN, "the seat face's texture")


def _lip(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The lip's run-out."""
    if not plan.lip_apart:
        k = scale.factor
        middle = (pad.seat_diameter_mm / 2 + pad.body_diameter_mm / 2 - pad.edge_chamfer_mm) * k / 2
        at = (middle, pad.seat_length_mm * k)
        place_square(canvas, tolerance_frame(LIP_RUN_OUT, plan.units), [at], "lip run-out", up=False, mirrored=True)


def seat_corner_needs_detail(pad: Pad, scale: Scale) -> bool:
    """Whether the seat's corner is too small on paper to point at."""
    return 0 < pad.seat_corner_radius_mm * scale.factor < _SMALL_RADIUS_MM


def lip_needs_detail(pad: Pad, scale: Scale) -> bool:
    """Whether two leaders at the lip would end where one cannot tell them apart."""
    lip = (pad.body_diameter_mm - pad.seat_diameter_mm) / 2 - pad.edge_chamfer_mm
    return pad.edge_chamfer_mm > 0 and lip * scale.factor < _NARROW_LIP_MM


_Step = Callable[[Canvas, Pad, dict[str, Measure], Scale, Plan], None]
_ORDERS: tuple[tuple[_Step, ...], ...] = (
    (_heights, _diameters, _stem_length, _datums, _lip, _corner, _mouth, _edge),
    (_heights, _mouth, _diameters, _stem_length, _datums, _lip, _corner, _edge),
    (_heights, _mouth, _diameters, _stem_length, _lip, _corner, _edge, _datums),
    (_heights, _stem_length, _diameters, _datums, _lip, _corner, _mouth, _edge),
    # Long words on leaders may find room where signs have not taken it yet.
    (_heights, _stem_length, _diameters, _corner, _mouth, _edge, _datums, _lip),
    (_heights, _diameters, _stem_length, _corner, _mouth, _edge, _datums, _lip),
)
"""What is placed first finds room most easily."""
