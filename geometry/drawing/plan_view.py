"""The top view's dimensions: what the section does not show in its true size."""

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import replace
from math import cos, hypot, radians, sin

from geometry.drawing.canvas import Canvas
from geometry.drawing.model import Box, Measure, Point
from geometry.drawing.placing import NoRoomError, Pointer, Span, WordsAt, place_pointer, place_span
from geometry.drawing.scales import Scale
from geometry.drawing.style import STYLE
from geometry.pad import Pad

_BESIDE_SIGHT_MM = 9.6
"""From the outline to where rows begin at the view's sides, past the ends of the cutting plane and their letters."""
_NEARER_MM = 3.0
"""By how much the first row above is nearer than others: nothing else stands there."""
_LENGTHS = (6.0, 9.0, 13.0, 18.0, 24.0, 32.0, 42.0, 55.0, 70.0)
_ROWS = range(5)
_WORDS: tuple[WordsAt, ...] = ("middle", "high", "low")
_OUTWARD = (45.0, 30.0, 60.0)
_AT_RIM_DEG = 75.0
"""Where between flats and slot the rim is pointed at."""
_OFF_RIM = (60.0, 45.0, 75.0)
"""From outside: a leader across a flat would seem to mean that."""
_OFF_OUTLINE_MM = 1.5
"""How far a leader's bend keeps off the outline that the leader comes through."""


def add_plan_dimensions(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale) -> None:
    """Lengths along the slot aside, widths below, how far a slot stands off the axis above, and what only this view shows round.

    The section has the slot's width just there, whose arrows and extension lines would stand among those of the offset.

    Raises NoRoomError where one finds no place.
    """
    k, body, middle = scale.factor, pad.body_diameter_mm / 2, pad.slot_offset_mm
    if pad.has_relief:
        half, y = pad.relief_width_mm / 2, pad.relief_length_mm / 2
        _along(canvas, pad, shown, "relief_length_mm", scale, (middle - half, middle + half), y)
        _across_pocket(canvas, pad, shown["relief_width_mm"], scale)
    if "slot_offset_mm" in shown:
        above = body * k + STYLE.centre_over_mm
        # From the ends of the axes, which are what it measures between.
        span = Span(shown["slot_offset_mm"], "above", (0.0, above), (middle * k, above), body * k - _NEARER_MM)
        place_span(canvas, span, scale, rows=_ROWS, words=_WORDS)
    if "cross_slot_width_mm" in shown:
        y = pad.cross_slot_width_mm / 2
        x = min(pad.flats_width_mm / 2 if pad.has_flats else body, (body**2 - y**2) ** 0.5)
        _along(canvas, pad, shown, "cross_slot_width_mm", scale, (-x, x), y)
    if pad.has_plug and not pad.plug_is_round:
        x = pad.plug_width_mm / 2
        _along(canvas, pad, shown, "plug_length_mm", scale, (-x, x), pad.plug_length_mm / 2)
    if pad.has_flats:
        _along(canvas, pad, shown, "body_diameter_mm", scale, (0.0, 0.0), body)
    # Long words on leaders go round the rows, not the other way about.
    if "relief_corner_radius_mm" in shown:
        radius = pad.relief_corner_radius_mm
        x, y = (pad.relief_width_mm / 2 - radius) * k, (pad.relief_length_mm / 2 - radius) * k
        # Over the top, from the side of the material: the other way leads across the whole pocket.
        _corner(canvas, scale, shown["relief_corner_radius_mm"], (x, y), radius * k, body * k, aside=middle * k)
    if "plug_corner_radius_mm" in shown:
        radius = pad.plug_corner_radius_mm
        x, y = (pad.plug_width_mm / 2 - radius) * k, (pad.plug_length_mm / 2 - radius) * k
        _corner(canvas, scale, shown["plug_corner_radius_mm"], (x, y), radius * k, body * k)
    if pad.has_flats and "edge_chamfer_mm" in shown:
        _edge(canvas, pad, shown, scale)


def _across_pocket(canvas: Canvas, pad: Pad, measure: Measure, scale: Scale) -> None:
    """The pocket's width just below it on the face, if that has room: extension lines to the outside run along the slot."""
    k, body, middle = scale.factor, pad.body_diameter_mm / 2 * scale.factor, pad.slot_offset_mm * scale.factor
    half, y = pad.relief_width_mm / 2 * k, -pad.relief_length_mm / 2 * k
    near = Span(measure, "below", (middle - half, y), (middle + half, y), y)
    on_face = canvas.copied()
    # Words on the face keep off slot, pocket and flats.
    strip = max(half, (pad.slot_width_mm / 2 + pad.slot_mouth_chamfer_mm) * k)
    flat = pad.flats_width_mm / 2 * k if pad.has_flats else body
    on_face.solids = [Box(middle - strip, -body, middle + strip, body)]
    on_face.solids += [Box(-2 * body, -body, -flat, body), Box(flat, -body, 2 * body, body)]
    with suppress(NoRoomError):
        placed = place_span(on_face, near, scale, rows=(0,), words=("high", "low"))
        box = placed.words_box
        rim = body - pad.edge_chamfer_mm * k - _OFF_OUTLINE_MM
        if all(hypot(x, z) < rim for x in (box.left, box.right) for z in (box.bottom, box.top)):
            on_face.solids = canvas.solids
            canvas.become(on_face)
            return
    place_span(canvas, replace(near, edge=-body), scale, rows=_ROWS, words=_WORDS)


def _corner(
    canvas: Canvas, scale: Scale, measure: Measure, centre: Point, radius: float, outline: float, *, aside: float = 0.0
) -> None:
    """A radius on a leader from outside that bends clear of the round outline that it comes through, paper mm."""
    pointers = []
    for angle in _OUTWARD:
        turn = radians(angle)
        tip = (centre[0] + radius * cos(turn) + aside, centre[1] + radius * sin(turn))
        lengths = tuple(_clear_of_outline(tip, angle, outline))
        pointers.append(Pointer(measure, "radius", centre, radius, (angle,), lengths))
    quarters = (each for pointer in pointers if pointer.lengths for each in _in_each_quarter(pointer))
    place_pointer(canvas, scale, *(_moved(each, aside) for each in quarters))


def _edge(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale) -> None:
    """The chamfer of the body's edge on a leader from outside."""
    rim = (pad.body_diameter_mm - pad.edge_chamfer_mm) / 2 * scale.factor
    at = (rim * cos(radians(_AT_RIM_DEG)), rim * sin(radians(_AT_RIM_DEG)))
    edge = Pointer(shown["edge_chamfer_mm"], "note", at, 0.0, _OFF_RIM, _LENGTHS)
    place_pointer(canvas, scale, *_in_each_quarter(edge))


def moved_to_plan(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, moved: frozenset[str]) -> None:
    """Chamfers for which the section, and a side view, have no room, on leaders to their edges; raises NoRoomError.

    ``pad`` is what the view shows: without a chamfer that is small on paper.
    """
    if "edge_chamfer_mm" in moved:
        _edge(canvas, pad, shown, scale)
    if "slot_mouth_chamfer_mm" in moved:
        _mouth(canvas, pad, shown, scale)


AT_TOP = frozenset({"edge_chamfer_mm", "slot_mouth_chamfer_mm"})
"""What the section may leave to the top view."""


def _mouth(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale) -> None:
    k, rim = scale.factor, pad.body_diameter_mm / 2 - pad.edge_chamfer_mm
    x, begin = (pad.slot_width_mm + pad.slot_mouth_chamfer_mm) / 2, pad.relief_length_mm / 2
    for share in (0.75, 0.6, 0.85):
        at = (x * k, (begin + (rim - begin) * share) * k)
        pointers = [
            Pointer(shown["slot_mouth_chamfer_mm"], "note", at, 0.0, (angle,), lengths)
            for angle in _OUTWARD
            if (lengths := tuple(_clear_of_outline(at, angle, pad.body_diameter_mm / 2 * k)))
        ]
        with suppress(NoRoomError):
            # Beside the axis from the far side alone: the other way leads across it.
            seen = 2 if pad.slot_offset_mm else 4
            quarters = (each for pointer in pointers for each in _in_each_quarter(pointer)[:seen])
            place_pointer(canvas, scale, *(_moved(each, pad.slot_offset_mm * k) for each in quarters))
            return
    raise NoRoomError(f"no room for slot_mouth_chamfer_mm at {scale.words}")


def _clear_of_outline(at: Point, angle_deg: float, radius: float) -> Iterator[float]:
    """Lengths of a leader out of a round outline whose bend comes to lie well outside it, paper mm."""
    c, s = cos(radians(angle_deg)), sin(radians(angle_deg))
    for length in _LENGTHS:
        if hypot(at[0] + length * c, at[1] + length * s) > radius + _OFF_OUTLINE_MM:
            yield length


def _along(
    canvas: Canvas, pad: Pad, shown: dict[str, Measure], name: str, scale: Scale, ends_mm: tuple[float, float], y: float
) -> None:
    """A length along the slot, on both sides of the middle, at the right or else at the left."""
    k, rows_from = scale.factor, pad.body_diameter_mm / 2 * scale.factor + _BESIDE_SIGHT_MM
    left, right = ends_mm
    spans = (
        Span(shown[name], "right", (right * k, -y * k), (right * k, y * k), rows_from),
        Span(shown[name], "left", (left * k, -y * k), (left * k, y * k), -rows_from),
    )
    for span in spans:
        with suppress(NoRoomError):
            place_span(canvas, span, scale, rows=_ROWS, words=_WORDS)
            return
    raise NoRoomError(f"no room for {name} at {scale.words}")


def _moved(pointer: Pointer, right: float) -> Pointer:
    """The same feature beside the axis."""
    return replace(pointer, start=(pointer.start[0] + right, pointer.start[1]))


def _in_each_quarter(pointer: Pointer) -> tuple[Pointer, ...]:
    """The same feature in the other quarters of the view, which is the same on both sides of both axes."""
    x, y = pointer.start
    lower = replace(pointer, start=(x, -y), angles_deg=tuple(-angle for angle in pointer.angles_deg))
    return pointer, lower, pointer.mirrored(), lower.mirrored()
