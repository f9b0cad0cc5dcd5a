"""The side view: the pad seen along x, across the slot's length, as exact lines, arcs and curves in model mm."""

from collections.abc import Callable, Iterable, Iterator
from functools import lru_cache
from itertools import pairwise
from math import asin, degrees, sqrt

from geometry import profile
from geometry.drawing.model import Arc, Box, Curve, Layer, Line, Point, Shape, View
from geometry.drawing.views import along, drawn, empty, mirrored, outermost_at, symmetry_marks
from geometry.outline import Arc as Bend
from geometry.outline import Outline, Segment, polyline
from geometry.pad import Pad

_CURVE_STEPS = 12
"""Points on a curve that is neither line nor arc; such curves are at most a corner's size."""
_NEARLY_MM = 1e-9


@lru_cache(maxsize=64)
def side_view(pad: Pad, *, over_mm: float, half: bool = False, inner_edges: bool = True) -> View:
    """Along x, seeing the slot's length: y to the right, z up; a half view of a symmetrical part ends on its axis.

    Without ``inner_edges`` a chamfer is seen by its cut corner alone: on paper its two edges would run into one line.
    """
    right = tuple(_right_half(pad, inner_edges=inner_edges))
    left = () if half else tuple(mirrored(shape) for shape in right)
    radius, top = pad.body_diameter_mm / 2, pad.top_height_mm
    box = Box(0 if half else -radius, -pad.foot_depth_mm, radius, top)
    axes = [Line((0, box.bottom - over_mm), (0, top + over_mm), Layer.CENTRE)]
    if pad.has_cross_hole:
        out, level = pad.cross_hole_diameter_mm / 2 + over_mm, -pad.cross_hole_distance_mm
        axes.append(Line((0 if half else -out, level), (out, level), Layer.CENTRE))
    return View("side", (*right, *left, *axes, *(symmetry_marks(box, over_mm) if half else ())), box)


def _right_half(pad: Pad, *, inner_edges: bool) -> Iterator[Shape]:
    """Right of the axis, from the foot up."""
    yield from _foot(pad)
    yield from _body(pad)
    yield from _slots(pad, inner_edges=inner_edges) if pad.has_slot else _closed_top(pad)
    if pad.has_plug:
        yield from _plug(pad)
    if inner_edges:
        yield from _inner_edges(pad)


def _inner_edges(pad: Pad) -> Iterator[Line]:
    """Where the chamfers of body and plug end within the silhouette; at the top of a slotted body the slot has its say."""
    body, edge, flat = pad.body_diameter_mm / 2, pad.edge_chamfer_mm, flat_end_mm(pad)
    low, shoulder = pad.foot_bottom_mm + edge, pad.body_top_mm - edge
    if edge:
        yield Line((flat, low), (body, low), Layer.VISIBLE)
        # A slot shallower than the chamfer leaves the chamfer's lower edge whole.
        if not pad.has_slot or pad.web_mm > shoulder:
            yield Line((flat, shoulder), (body, shoulder), Layer.VISIBLE)
    if edge and pad.has_plug:
        yield Line((0, pad.top_height_mm - edge), (pad.plug_length_mm / 2, pad.top_height_mm - edge), Layer.VISIBLE)


def _foot(pad: Pad) -> Iterator[Shape]:
    """Stem, seat and what is hidden in them or behind a skirt."""
    lip, low = pad.seat_length_mm, pad.foot_bottom_mm
    outline = [p for p in profile.turned_outline(pad) if max(p.start[1], p.end[1]) <= lip + _NEARLY_MM]
    inside = pad.seat_recess_diameter_mm / 2 + _NEARLY_MM
    body = pad.body_diameter_mm / 2
    for piece in outline:
        furthest = max(piece.start[0], piece.end[0])
        if empty(piece) or (furthest > body - pad.edge_chamfer_mm - _NEARLY_MM and pad.has_skirt):
            continue
        if pad.has_recess and furthest < inside and max(piece.start[1], piece.end[1]) > 0:
            yield from _drawn((piece,), Layer.HIDDEN)
        elif pad.has_skirt:
            yield from _behind_skirt((piece,), low)
        else:
            yield from _drawn((piece,), Layer.VISIBLE)
    root = pad.seat_recess_diameter_mm / 2 if pad.has_recess else pad.stem_diameter_mm / 2 if pad.has_stem else 0.0
    if root:
        yield Line((0, 0), (root, 0), Layer.HIDDEN if pad.has_skirt and low < 0 else Layer.VISIBLE)
    if pad.has_skirt:
        bore = pad.skirt_bore_mm / 2
        yield Line((bore, low), (bore, lip), Layer.HIDDEN)
        yield Line((pad.seat_diameter_mm / 2, lip), (bore, lip), Layer.HIDDEN)
    if pad.has_cross_hole:
        yield from _cross_hole(pad, low if pad.has_skirt else lip)


def _cross_hole(pad: Pad, edge: float) -> Iterator[Shape]:
    """The hole towards the eye, hidden as far as a skirt reaches down before it."""
    z, radius = -pad.cross_hole_distance_mm, pad.cross_hole_diameter_mm / 2
    turn = degrees(asin(max(-1.0, min(1.0, (edge - z) / radius))))
    if turn > -90:
        yield Arc((0, z), radius, -90, turn, Layer.VISIBLE)
    if turn < 90:
        yield Arc((0, z), radius, turn, 90, Layer.HIDDEN)


def _behind_skirt(outline: Outline, level: float) -> Iterator[Shape]:
    """An outline that a skirt hides above a level."""
    for piece in outline:
        if isinstance(piece, Bend):
            points = along(piece)
        else:
            (ax, az), (bx, bz) = piece.start, piece.end
            cut = [(ax + (bx - ax) * (level - az) / (bz - az), level)] if min(az, bz) < level < max(az, bz) else []
            points = [piece.start, *cut, piece.end]
        for a, b in pairwise(points):
            yield Line(a, b, Layer.HIDDEN if (a[1] + b[1]) / 2 > level + _NEARLY_MM else Layer.VISIBLE)


def _body(pad: Pad) -> Iterator[Shape]:
    """The body's outside below the slot, with its lower edges and its flats."""
    body, edge, low = pad.body_diameter_mm / 2, pad.edge_chamfer_mm, pad.foot_bottom_mm
    yield Line((0, low), (body - edge, low), Layer.VISIBLE)
    if edge:
        yield Line((body - edge, low), (body, low + edge), Layer.VISIBLE)
    shoulder = pad.body_top_mm - edge
    high = min(pad.web_mm, shoulder) if pad.has_slot else shoulder
    if high > low + edge:
        yield Line((body, low + edge), (body, high), Layer.VISIBLE)
    if pad.has_slot and pad.web_mm > shoulder:
        yield Line((body, shoulder), (body - (pad.web_mm - shoulder), pad.web_mm), Layer.VISIBLE)
    if pad.has_flats:
        yield from _flat(pad)


def flat_end_mm(pad: Pad) -> float:
    """How far the flat reaches along the slot; 0 without one."""
    return sqrt((pad.body_diameter_mm / 2) ** 2 - (pad.flats_width_mm / 2) ** 2) if pad.has_flats else 0.0


def _flat(pad: Pad) -> Iterator[Shape]:
    """The end of the flat: upright, and bent where it cuts the chamfers."""
    half, body, edge = pad.flats_width_mm / 2, pad.body_diameter_mm / 2, pad.edge_chamfer_mm
    low, top, reach = pad.foot_bottom_mm, pad.body_top_mm, flat_end_mm(pad)
    yield Line((reach, low + edge), (reach, top - edge), Layer.VISIBLE)
    if edge:
        steps = [edge * i / _CURVE_STEPS for i in range(_CURVE_STEPS + 1)]
        bent = [(sqrt((body - edge + rise) ** 2 - half**2), rise) for rise in steps]
        yield Curve(tuple((y, low + rise) for y, rise in bent), Layer.VISIBLE)
        yield Curve(tuple((y, top - rise) for y, rise in bent), Layer.VISIBLE)


def _closed_top(pad: Pad) -> Iterator[Shape]:
    """The top of a body without a slot."""
    body, edge, top = pad.body_diameter_mm / 2, pad.edge_chamfer_mm, pad.body_top_mm
    yield Line((0, top), (body - edge, top), Layer.VISIBLE)
    if edge:
        yield Line((body, top - edge), (body - edge, top), Layer.VISIBLE)


def _slots(pad: Pad, *, inner_edges: bool) -> Iterator[Shape]:
    """What the slot leaves of the silhouette, and the slot's own edges."""
    web, top, edge = pad.web_mm, pad.body_top_mm, pad.edge_chamfer_mm
    outline = _walls_end(pad, lambda z: max(0.0, _half_width(pad, z) - pad.slot_offset_mm))
    near = outline
    yield Curve(outline, Layer.VISIBLE)
    if pad.slot_offset_mm:
        # The nearer wall of a slot that is off centre ends before the farther one, which shows behind it.
        near = _walls_end(pad, lambda z: _half_width(pad, z) + pad.slot_offset_mm)
        yield from _walls_apart(pad, near, inner_edges=inner_edges)
    inner = 0.0
    if pad.is_crossed:
        right = [p for p in profile.cross_slot_outline(pad) if min(p.start[0], p.end[0]) > -_NEARLY_MM]
        yield from _drawn(right, Layer.VISIBLE)
        inner = pad.cross_slot_width_mm / 2
        yield Line((0, web), (inner - pad.slot_corner_radius_mm, web), Layer.VISIBLE)
    if inner_edges and edge and top - edge >= web:
        start = max(flat_end_mm(pad), inner + max(0.0, pad.slot_mouth_chamfer_mm - edge) if pad.is_crossed else 0.0)
        far = _far_end(pad, top - edge) if pad.slot_offset_mm else 0.0
        if far:
            yield Line((start, top - edge), (_at(near, top - edge), top - edge), Layer.VISIBLE)
        yield Line((max(start, far), top - edge), (_at(outline, top - edge), top - edge), Layer.VISIBLE)
    yield Line((inner + pad.slot_mouth_chamfer_mm if pad.is_crossed else 0.0, top), outline[-1], Layer.VISIBLE)
    hidden_from = max(inner, pad.relief_length_mm / 2 if pad.floor_is_open else 0.0)
    yield Line((hidden_from, web), (near[1][0], web), Layer.HIDDEN)
    if pad.has_relief:
        long, floor = pad.relief_length_mm / 2, top - pad.relief_depth_mm
        yield from _drawn(polyline([(0, floor), (long, floor), (long, top)]), Layer.HIDDEN)


def _far_end(pad: Pad, z: float) -> float:
    """Where the farther wall of a slot off centre ends on the body at a height; 0 where that is the body's own outline."""
    x = pad.slot_offset_mm - _half_width(pad, z)
    return sqrt(outermost_at(profile.turned_outline(pad), z) ** 2 - x**2) if x > 0 else 0.0


def _walls_apart(pad: Pad, near: tuple[Point, ...], *, inner_edges: bool) -> Iterator[Shape]:
    """The end of the nearer wall, and what shows of the farther one beyond it: its end, its mouth and the floor before it."""
    web, level = pad.web_mm, pad.body_top_mm - pad.slot_mouth_chamfer_mm
    far = _walls_end(pad, lambda z: pad.slot_offset_mm - _half_width(pad, z))
    floor_end = far[1] if pad.slot_offset_mm > _half_width(pad, web) else far[0]
    yield Curve((floor_end, *near[1:]), Layer.VISIBLE)
    yield Curve(tuple(point for point in far[1:] if _far_end(pad, point[1])), Layer.VISIBLE)
    if inner_edges and pad.slot_mouth_chamfer_mm:
        end = _far_end(pad, level) or _at(far, level)
        yield Line((_at(near, level), level), (end, level), Layer.VISIBLE)


def _half_width(pad: Pad, z: float) -> float:
    """Half the slot's width at a height, in its own middle."""
    return outermost_at(profile.slot_outline(pad), z) - pad.slot_offset_mm


def _walls_end(pad: Pad, aside: Callable[[float], float]) -> tuple[Point, ...]:
    """From the slot floor up, where walls at a distance from the axis end on the body: √(ρ² − x²), the floor's step first."""
    web, top, edge, turned = pad.web_mm, pad.body_top_mm, pad.edge_chamfer_mm, profile.turned_outline(pad)

    def reach(z: float) -> float:
        return sqrt(outermost_at(turned, z) ** 2 - aside(z) ** 2)

    corners = {web, web + pad.slot_corner_radius_mm, top - pad.slot_mouth_chamfer_mm, top - edge, top}
    heights = sorted(z for z in corners | {pad.foot_bottom_mm + edge} if web <= z <= top)
    points: list[Point] = [(outermost_at(turned, web), web)]
    for low, high in pairwise(heights):
        above = max(pad.slot_mouth_chamfer_mm, edge)
        straight = low >= web + pad.slot_corner_radius_mm and high <= top - above
        steps = 1 if straight else _CURVE_STEPS
        # Towards a fillet's foot the width runs off like a root: points crowd there.
        points += [(reach(z), z) for z in (low + (high - low) * (i / steps) ** 2 for i in range(steps))]
    return (*points, (reach(top), top))


def _at(curve: tuple[Point, ...], z: float) -> float:
    """Where a rising curve is at the height of one of its points."""
    return next(y for y, height in reversed(curve) if abs(height - z) < 1e-6)


def _plug(pad: Pad) -> Iterator[Shape]:
    """The plug on the shoulder, its top edge broken."""
    half, edge, low, top = pad.plug_length_mm / 2, pad.edge_chamfer_mm, pad.body_top_mm, pad.top_height_mm
    yield from _drawn(polyline([(half, low), (half, top - edge), (half - edge, top), (0, top)]), Layer.VISIBLE)


def _drawn(outline: Iterable[Segment], layer: Layer) -> Iterator[Shape]:
    """Pieces of an outline on a layer."""
    return (drawn(piece, layer) for piece in outline if not empty(piece))
