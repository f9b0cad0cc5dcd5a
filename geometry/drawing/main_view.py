"""The main view with its dimensions: section A–A across the slot, everything sized by function from the seat face."""

from math import inf

from geometry.drawing.callouts import place_axis_datum, place_beside, place_callout, place_datum
from geometry.drawing.canvas import Canvas
from geometry.drawing.facts import Units
from geometry.drawing.model import Box, Kind, Measure, Point, View
from geometry.drawing.placing import NoRoomError, Pointer, Span, place_pointer, place_span
from geometry.drawing.scales import Scale
from geometry.drawing.signs import tolerance_frame
from geometry.drawing.style import STYLE
from geometry.drawing.views import section_view
from geometry.geometrical import LIP_RUN_OUT, SEAT_AXIS, SEAT_FACE, SLOT_SYMMETRY
from geometry.pad import Pad

_LENGTHS = (5.0, 7.0, 9.0, 12.0, 15.0, 19.0, 24.0, 30.0, 37.0, 45.0, 55.0, 70.0)
_DOWN_RIGHT = (-60.0, -50.0, -70.0, -40.0, -80.0, -30.0, -20.0, -10.0, -5.0)
_CORNER = (-45.0, -35.0, -55.0, -25.0, -65.0, -15.0, -75.0, -5.0, -85.0)
_ASIDE = (-20.0, -10.0, -35.0, 0.0, 10.0, 20.0, -50.0, 35.0)
_UP = (60.0, 45.0, 75.0, 30.0, 20.0, 105.0, 120.0)
"""Directions in which leaders leave, the most wanted first."""
_SMALL_RADIUS_MM = 1.2
"""A seat corner that is smaller on paper is dimensioned in a detail."""


def section_canvas(
    pad: Pad,
    shown: dict[str, Measure],
    scale: Scale,
    units: Units,
    *,
    windows: tuple[tuple[Point, float], ...] = (),
    right_limit: float = inf,
) -> tuple[View, Canvas]:
    """The section at a scale with all its dimensions, in paper mm about the view's origin, clear of its details' windows."""
    view = section_view(pad, over_mm=STYLE.centre_over_mm / scale.factor)
    try:
        canvas = _empty_canvas(pad, scale, windows, right_limit)
        _spans(canvas, pad, shown, scale)
        _signs(canvas, pad, scale, units)
        _pointers(canvas, pad, shown, scale)
    except NoRoomError:
        # Long words on leaders may find room where signs have not taken it yet.
        canvas = _empty_canvas(pad, scale, windows, right_limit)
        _spans(canvas, pad, shown, scale)
        _pointers(canvas, pad, shown, scale)
        _signs(canvas, pad, scale, units)
    return view, canvas


def _empty_canvas(pad: Pad, scale: Scale, windows: tuple[tuple[Point, float], ...], right_limit: float) -> Canvas:
    """The part's own places, that no words may stand on, and its axis."""
    k = scale.factor
    seat, body, top = pad.seat_diameter_mm * k / 2, pad.body_diameter_mm * k / 2, pad.top_height_mm * k
    lip, foot = pad.seat_length_mm * k, -pad.stem_length_mm * k
    canvas = Canvas(right_limit, solids=[Box(-body, lip, body, top), Box(-seat, 0, seat, lip)])
    if pad.has_stem:
        stem = pad.stem_diameter_mm * k / 2
        canvas.solids.append(Box(-stem, foot, stem, 0))
    for (x, y), reach in windows:
        canvas.solids.append(Box((x - reach) * k, (y - reach) * k, (x + reach) * k, (y + reach) * k))
    canvas.lines.append(((0, foot - STYLE.centre_over_mm), (0, top + STYLE.centre_over_mm)))
    return canvas


def _spans(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale) -> None:
    """Heights and diameters."""
    _heights(canvas, pad, shown, scale)
    _diameters(canvas, pad, shown, scale)


def _signs(canvas: Canvas, pad: Pad, scale: Scale, units: Units) -> None:
    """Datums and geometrical tolerances."""
    _datums(canvas, pad, scale, units)
    _lip(canvas, pad, scale, units)


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
    rim = pad.body_diameter_mm / 2 - edge
    places: tuple[tuple[str, tuple[tuple[Point, tuple[float, ...]], ...]], ...] = (
        ("seat_corner_radius_mm", (((pad.seat_diameter_mm / 2 - corner, corner), _CORNER),)),
        ("slot_mouth_chamfer_mm", (((pad.slot_width_mm / 2 + mouth, pad.top_height_mm - mouth), _UP),)),
        ("edge_chamfer_mm", (((rim, pad.seat_length_mm + edge), _ASIDE), ((rim, pad.top_height_mm - edge), _UP))),
    )
    for name, points in places:
        is_corner = name == "seat_corner_radius_mm"
        if name not in shown or (is_corner and seat_corner_needs_detail(pad, scale)):
            continue
        kind: Kind = "radius" if is_corner else "note"
        radius = corner * k if is_corner else 0.0
        pointers = [Pointer(shown[name], kind, (x * k, z * k), radius, angles, _LENGTHS) for (x, z), angles in points]
        place_pointer(canvas, scale, *(either for pointer in pointers for either in (pointer, pointer.mirrored())))


def _datums(canvas: Canvas, pad: Pad, scale: Scale, units: Units) -> None:
    """Datum A at the seat face, datum B at the seat's axis, and the slot's symmetry about that."""
    k = scale.factor
    face, body = pad.seat_flat_diameter_mm * k / 2, pad.body_diameter_mm * k / 2
    stem = pad.stem_diameter_mm * k / 2 if pad.has_stem else 0.0
    feet = [(way * (stem + (face - stem) * share), 0.0) for share in (0.75, 0.6, 0.9, 0.45, 0.3) for way in (1, -1)]
    beside = [(way * (body + x), 0.0) for x in (3.5, 5.0, 12.0, 17.0, 22.0, 30.0) for way in (-1, 1)]
    places = [(foot, 270.0) for foot in feet] + [(foot, turn) for foot in beside for turn in (270.0, 90.0)]
    place_datum(canvas, SEAT_FACE, places, reached_from=face)
    line = next(d.lines[0] for d in canvas.dimensions if d.measure.name == "seat_diameter_mm")
    place_axis_datum(canvas, SEAT_AXIS, line)
    slot = next(d.lines[0] for d in canvas.dimensions if d.measure.name == "slot_width_mm")
    place_beside(canvas, tolerance_frame(SLOT_SYMMETRY, units), slot, "slot symmetry")


def _lip(canvas: Canvas, pad: Pad, scale: Scale, units: Units) -> None:
    """The lip's run-out."""
    k = scale.factor
    middle = (pad.seat_diameter_mm / 2 + pad.body_diameter_mm / 2 - pad.edge_chamfer_mm) * k / 2
    at = (middle, pad.seat_length_mm * k)
    place_callout(canvas, tolerance_frame(LIP_RUN_OUT, units), [at], _DOWN_RIGHT, "lip run-out", mirrored=True)


def seat_corner_needs_detail(pad: Pad, scale: Scale) -> bool:
    """Whether the seat's corner is too small on paper to point at."""
    return 0 < pad.seat_corner_radius_mm * scale.factor < _SMALL_RADIUS_MM
