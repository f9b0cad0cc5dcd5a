"""Top view and underside: the pad seen along its axis, as exact lines, arcs and curves in model mm."""

from collections.abc import Iterator
from functools import lru_cache
from itertools import pairwise
from math import acos, asin, cos, degrees, radians, sin, sqrt

from geometry import profile
from geometry.drawing.model import Arc, Box, Curve, Layer, Line, Point, Shape, View
from geometry.drawing.views import along, cross, drawn, empty, outermost_at, wall_is_beside_axis
from geometry.outline import rounded_rectangle
from geometry.pad import Pad

_CURVE_STEPS = 12
_NEARLY_MM = 1e-9


@lru_cache(maxsize=64)
def top_view(pad: Pad, *, over_mm: float, apart_mm: float = 0.0) -> View:
    """From above: x to the right, y up the sheet along the slot.

    Where a wall of slot or pocket is nearer to the pad's axis than ``apart_mm``, that is drawn outside the pad alone.
    """
    body = pad.body_diameter_mm / 2
    edges = [*_outside(pad, body)]
    if pad.edge_chamfer_mm:
        edges += _rim(pad)
    if pad.has_slot:
        edges += _slot(pad)
    if pad.is_crossed:
        edges += _cross_slot(pad)
    if pad.has_relief:
        edges += _relief(pad)
    if pad.has_plug:
        edges += _plug(pad)
    level, upright = cross(body + over_mm)
    axes = [level, upright]
    if wall_is_beside_axis(pad, apart_mm):
        axes = [level, *(Line((0, way * body), (0, way * (body + over_mm)), Layer.CENTRE) for way in (1, -1))]
    if pad.slot_offset_mm:
        x, end = pad.slot_offset_mm, sqrt(body**2 - pad.slot_offset_mm**2) + over_mm
        axes.append(Line((x, -end), (x, end), Layer.CENTRE))
    return View("top", (*edges, *axes), Box(-body, -body, body, body))


def underside_view(pad: Pad, *, over_mm: float) -> View:
    """From below: stem, recess, seat face, seat, skirt and body; the slot is out of sight."""
    body, edge = pad.body_diameter_mm / 2, pad.edge_chamfer_mm
    inner = [pad.seat_diameter_mm, pad.stem_diameter_mm if pad.has_stem else 0.0]
    inner += [pad.seat_recess_diameter_mm if pad.has_recess else 0.0, pad.skirt_bore_mm if pad.has_skirt else 0.0]
    circles = [Arc((0, 0), d / 2, 0, 360, Layer.VISIBLE) for d in sorted(set(inner)) if d]
    outer = [shape for radius in sorted({body, body - edge}) for shape in _outside(pad, radius)]
    # The edge where the corner radius runs out smoothly is an imaginary one: thin.
    tangent = [Arc((0, 0), pad.seat_flat_diameter_mm / 2, 0, 360, Layer.THIN)] if pad.seat_corner_radius_mm else []
    hole: list[Shape] = []
    if pad.has_cross_hole:
        y = pad.cross_hole_diameter_mm / 2
        x = sqrt((pad.stem_diameter_mm / 2) ** 2 - y**2)
        hole = [Line((-x, way * y), (x, way * y), Layer.HIDDEN) for way in (1, -1)]
    box = Box(-body, -body, body, body)
    return View("underside", (*circles, *outer, *tangent, *hole, *cross(body + over_mm)), box)


def _outside(pad: Pad, radius: float) -> Iterator[Shape]:
    """A circle of the body as far as the flats leave it, and the flats where they are outermost."""
    if not pad.has_flats:
        yield Arc((0, 0), radius, 0, 360, Layer.VISIBLE)
        return
    half = pad.flats_width_mm / 2
    turn = degrees(acos(half / radius))
    yield Arc((0, 0), radius, turn, 180 - turn, Layer.VISIBLE)
    yield Arc((0, 0), radius, 180 + turn, 360 - turn, Layer.VISIBLE)
    if radius == pad.body_diameter_mm / 2:
        y = sqrt(radius**2 - half**2)
        yield Line((half, -y), (half, y), Layer.VISIBLE)
        yield Line((-half, -y), (-half, y), Layer.VISIBLE)


def _rim(pad: Pad) -> Iterator[Shape]:
    """The top face's edge, without what slots and flats took of it."""
    radius, mouth = pad.body_diameter_mm / 2 - pad.edge_chamfer_mm, pad.slot_mouth_chamfer_mm
    ways = (1, -1)
    slot = pad.slot_width_mm / 2 + mouth if pad.has_slot else 0.0
    second = pad.cross_slot_width_mm / 2 + mouth if pad.is_crossed else 0.0
    flat = pad.flats_width_mm / 2 if pad.has_flats else radius
    turns = {0.0, 360.0}
    for x in [pad.slot_offset_mm + way * slot for way in ways if slot] + [way * flat for way in ways if flat < radius]:
        turns |= {degrees(acos(x / radius)), 360 - degrees(acos(x / radius))}
    for y in [way * second for way in ways if second]:
        turns |= {degrees(asin(y / radius)) % 360, 180 - degrees(asin(y / radius))}
    for start, end in pairwise(sorted(turns)):
        middle = radians((start + end) / 2)
        x, y = radius * cos(middle), radius * sin(middle)
        is_cut = abs(x - pad.slot_offset_mm) < slot or abs(y) < second or abs(x) > flat
        if not is_cut and end - start > _NEARLY_MM:
            yield Arc((0, 0), radius, start, end, Layer.VISIBLE)


def _slot(pad: Pad) -> Iterator[Shape]:
    """Walls and mouth of the slot, to a second slot or a relief in its middle, and where they end on the body."""
    rim, turned = pad.body_diameter_mm / 2 - pad.edge_chamfer_mm, profile.turned_outline(pad)
    foot = outermost_at(turned, pad.web_mm + pad.slot_corner_radius_mm)
    half, chamfer, offset = pad.slot_width_mm / 2, pad.slot_mouth_chamfer_mm, pad.slot_offset_mm
    inner_wall = pad.cross_slot_width_mm / 2 if pad.is_crossed else 0.0
    inner_mouth = inner_wall + chamfer if pad.is_crossed else 0.0
    if pad.has_relief:
        inner_mouth = pad.relief_length_mm / 2
        inner_wall = inner_mouth if pad.floor_is_open else 0.0
    for side in (1, -1):
        wall, mouth = offset + side * half, offset + side * (half + chamfer)
        yield from _both(wall, inner_wall, sqrt(foot**2 - wall**2))
        if chamfer:
            yield from _both(mouth, inner_mouth, sqrt(rim**2 - mouth**2))
            flare = [_flare_point(pad, side, i / _CURVE_STEPS) for i in range(_CURVE_STEPS + 1)]
            yield Curve(tuple(flare), Layer.VISIBLE)
            yield Curve(tuple((x, -y) for x, y in flare), Layer.VISIBLE)
            if pad.is_crossed:
                for way in (1, -1):
                    yield Line((wall, way * inner_wall), (mouth, way * inner_mouth), Layer.VISIBLE)
    if foot < pad.body_diameter_mm / 2:
        yield from _floor_ends(pad)


def _floor_ends(pad: Pad) -> Iterator[Shape]:
    """Where the floor and its rounded corners end on the body's chamfer: only of a slot that is shallower than it."""
    turned, high = profile.turned_outline(pad), pad.web_mm + pad.slot_corner_radius_mm + _NEARLY_MM
    for piece in profile.slot_outline(pad):
        if empty(piece) or max(piece.start[1], piece.end[1]) > high:
            continue
        points = [(x, sqrt(outermost_at(turned, z) ** 2 - x**2)) for x, z in along(piece)]
        yield Curve(tuple(points), Layer.VISIBLE)
        yield Curve(tuple((x, -y) for x, y in points), Layer.VISIBLE)


def _both(x: float, near: float, far: float) -> Iterator[Line]:
    """A line along the slot, whole or with its middle missing."""
    if not near:
        yield Line((x, -far), (x, far), Layer.VISIBLE)
        return
    for way in (1, -1):
        yield Line((x, way * near), (x, way * far), Layer.VISIBLE)


def _flare_point(pad: Pad, side: int, share: float) -> Point:
    """A point of the edge between mouth chamfer and the body's outside, from the wall (0) to the top (1)."""
    z = pad.body_top_mm - pad.slot_mouth_chamfer_mm * (1 - share)
    x = pad.slot_offset_mm + side * (pad.slot_width_mm / 2 + pad.slot_mouth_chamfer_mm * share)
    return x, sqrt(outermost_at(profile.turned_outline(pad), z) ** 2 - x**2)


def _cross_slot(pad: Pad) -> Iterator[Shape]:
    """Walls and mouth of the second slot, from the first to the outside."""
    half, chamfer, first = pad.cross_slot_width_mm / 2, pad.slot_mouth_chamfer_mm, pad.slot_width_mm / 2
    body, top, turned = pad.body_diameter_mm / 2, pad.body_top_mm, profile.turned_outline(pad)
    flat = pad.flats_width_mm / 2 if pad.has_flats else body

    def end(y: float, radius: float) -> float:
        return min(flat, sqrt(radius**2 - y**2))

    radius = pad.slot_corner_radius_mm
    if radius:
        for side, way in ((1, 1), (1, -1), (-1, 1), (-1, -1)):
            foot = (side * (first - radius), way * (half - radius))
            yield Line(foot, (side * first, way * half), Layer.VISIBLE)
    levels = [top - chamfer * (1 - i / _CURVE_STEPS) for i in range(_CURVE_STEPS + 1)]
    flare = [(half + chamfer - (top - z), outermost_at(turned, z)) for z in levels]
    for side in (1, -1):
        for way in (1, -1):
            yield Line((side * first, way * half), (side * end(half, body), way * half), Layer.VISIBLE)
            if chamfer:
                y, rim = flare[-1]
                yield Line((side * (first + chamfer), way * y), (side * end(y, rim), way * y), Layer.VISIBLE)
                yield Curve(tuple((side * end(y, r), way * y) for y, r in flare), Layer.VISIBLE)


def _relief(pad: Pad) -> Iterator[Shape]:
    """The relief's outline, open where the slot runs on at its ends."""
    offset, half, end = pad.slot_offset_mm, pad.slot_width_mm / 2, pad.relief_length_mm / 2
    for piece in profile.relief_outline(pad):
        if empty(piece):
            continue
        is_end = abs(abs(piece.start[1]) - end) < 1e-6 and abs(abs(piece.end[1]) - end) < 1e-6
        if not is_end or pad.floor_is_open:
            yield drawn(piece)
            continue
        left, right = sorted((piece.start[0], piece.end[0]))
        yield Line((left, piece.start[1]), (offset - half, piece.start[1]), Layer.VISIBLE)
        yield Line((offset + half, piece.start[1]), (right, piece.start[1]), Layer.VISIBLE)


def _plug(pad: Pad) -> Iterator[Shape]:
    """The plug's outline, and its top face within the chamfer."""
    edge = pad.edge_chamfer_mm
    half_x, half_y, radius = pad.plug_width_mm / 2, pad.plug_length_mm / 2, pad.plug_corner_radius_mm
    for inset in sorted({0.0, edge}):
        rounded = rounded_rectangle(half_x - inset, half_y - inset, max(0.0, radius - inset))
        yield from (drawn(piece) for piece in rounded if not empty(piece))
    if edge > radius:
        # The chamfers of two sides meet in a mitre where no round is left between them.
        for x, y in ((1, 1), (1, -1), (-1, 1), (-1, -1)):
            outer, inner = (x * (half_x - radius), y * (half_y - radius)), (x * (half_x - edge), y * (half_y - edge))
            yield Line(outer, inner, Layer.VISIBLE)
