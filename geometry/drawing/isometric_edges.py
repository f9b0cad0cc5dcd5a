"""Every edge and contour of a pad of any kind that can be seen from above: curves in space, and where each of them is real.

A curve is drawn where the pad has material on the one side that makes it an edge, and none on the other; where two cuts meet,
or a cut ends, that changes along the curve, and the place is found by halving.
"""

from collections.abc import Iterator
from math import pi, sqrt

import numpy as np

from geometry.drawing.inside import (
    Numbers,
    Truths,
    body_radius_mm,
    inside,
    relief_half_length_mm,
    slot_half_mm,
)
from geometry.drawing.isometric_curves import (
    Edge,
    Way,
    along_piece,
    fixed,
    level_edges,
    stacked,
    straight_way,
    turned_edges,
    upright,
)
from geometry.outline import Segment, rounded_rectangle
from geometry.pad import Pad
from geometry.profile import cross_slot_outline, plug_outline, relief_outline, slot_outline

_ASIDE_MM = 1e-3
_LOOKS = 240
_STEPS = 60


def all_edges(pad: Pad) -> Iterator[tuple[Numbers, bool]]:
    """All edges and contours as points in space, and whether each is straight."""
    for edge in _candidates(pad):
        for first, last in _stretches(pad, edge):
            yield edge.at(np.linspace(first, last, _STEPS if edge.straight else 2 * _STEPS)), edge.straight


def _stretches(pad: Pad, edge: Edge) -> Iterator[tuple[float, float]]:
    """Where along the curve the edge is real."""
    along = np.linspace(0.0, 1.0, _LOOKS + 1)
    real = _is_real(pad, edge, along)
    turns = np.flatnonzero(np.diff(np.concatenate(([False], real, [False]))))
    for first, after in zip(turns[::2], turns[1::2], strict=True):
        start = _end(pad, edge, along[first], along[first - 1]) if first else 0.0
        stop = _end(pad, edge, along[after - 1], along[after]) if after <= _LOOKS else 1.0
        if stop > start:
            yield start, stop


def _end(pad: Pad, edge: Edge, real: float, unreal: float) -> float:
    """The place between a real and an unreal one where the edge ends."""
    for _ in range(24):
        middle = (real + unreal) / 2
        real, unreal = (middle, unreal) if _is_real(pad, edge, np.array([middle]))[0] else (real, middle)
    return real


def _is_real(pad: Pad, edge: Edge, along: Numbers) -> Truths:
    at = edge.at(along)
    real = inside(pad, *(at + _ASIDE_MM * edge.material(along)).T)
    if edge.air:
        real &= ~inside(pad, *(at + _ASIDE_MM * edge.air(along)).T)
    return real


def _candidates(pad: Pad) -> Iterator[Edge]:
    yield from turned_edges(pad)
    if pad.has_slot:
        yield from _slots(pad)
    if pad.has_flats:
        yield from _flats(pad)
    if pad.has_relief:
        yield from _relief(pad)
    if pad.has_plug and not pad.plug_is_round:
        yield from _plug(pad)
    if pad.has_cross_hole:
        yield from _cross_hole(pad)


def _slots(pad: Pad) -> Iterator[Edge]:
    """Long edges of both slots, their profiles where they break out, and the upright edges where they meet."""
    across = pad.slot_offset_mm
    yield from _long_edges(pad, pad.slot_width_mm, across, along_x=False)
    for piece in slot_outline(pad):
        for end in (1, -1):
            yield _broken_out(pad, piece, end, along_x=False)
    if pad.is_crossed:
        yield from _long_edges(pad, pad.cross_slot_width_mm, 0.0, along_x=True)
        for piece in cross_slot_outline(pad):
            for end in (1, -1):
                yield _broken_out(pad, piece, end, along_x=True)
        yield from _posts(pad)


def _long_edges(pad: Pad, width: float, middle: float, *, along_x: bool) -> Iterator[Edge]:
    half, mouth, top, far = width / 2, pad.slot_mouth_chamfer_mm, pad.body_top_mm, pad.body_diameter_mm / 2
    lines = {(half + mouth, top, -1), (half, top - mouth, -1)}
    lines |= set() if pad.slot_corner_radius_mm else {(half, pad.web_mm, 1)}
    for out, z, side in sorted(lines):
        for way in (1, -1):
            across = middle + way * out
            if along_x:
                yield Edge(straight_way((-far, across, z), (far, across, z)), fixed(0, way, side), straight=True)
            else:
                yield Edge(straight_way((across, -far, z), (across, far, z)), fixed(way, 0, side), straight=True)


def _broken_out(pad: Pad, piece: Segment, end: int, *, along_x: bool) -> Edge:
    """Where a slot's profile meets the outside of the body, or a flat."""
    limit = pad.flats_width_mm / 2 if along_x and pad.has_flats else np.inf

    def at(t: Numbers) -> Numbers:
        across, z, _, _ = along_piece(piece, t)
        reach = np.minimum(limit, np.sqrt(np.maximum(0.0, body_radius_mm(pad, z) ** 2 - across**2)))
        return stacked(end * reach, across, z) if along_x else stacked(across, end * reach, z)

    def material(t: Numbers) -> Numbers:
        _, _, out, up = along_piece(piece, t)
        inward = np.full_like(t, -3.0 * end)
        return stacked(inward, out, up) if along_x else stacked(out, inward, up)

    return Edge(at, material)


def _posts(pad: Pad) -> Iterator[Edge]:
    """The four upright edges between crossed slots."""
    for way_x, way_y in ((1, 1), (1, -1), (-1, 1), (-1, -1)):

        def at(t: Numbers, way_x: int = way_x, way_y: int = way_y) -> Numbers:
            z = pad.web_mm + t**2 * pad.slot_depth_mm
            x, y = (slot_half_mm(pad, z, width) for width in (pad.slot_width_mm, pad.cross_slot_width_mm))
            return stacked(way_x * x, way_y * y, z)

        yield Edge(at, fixed(2 * way_x, 2 * way_y, 0))


def _flats(pad: Pad) -> Iterator[Edge]:
    """Each flat's upper and lower edge, and where it runs out into the round."""
    half, low, top, far = pad.flats_width_mm / 2, pad.foot_bottom_mm, pad.body_top_mm, pad.body_diameter_mm / 2
    for side in (1, -1):
        for z, way in ((low, 1), (top, -1)):
            line = straight_way((side * half, -far, z), (side * half, far, z))
            yield Edge(line, fixed(-side, 0, way), straight=True)
        for end in (1, -1):

            def at(t: Numbers, side: int = side, end: int = end) -> Numbers:
                z = low + t * (top - low)
                reach = np.sqrt(np.maximum(0.0, body_radius_mm(pad, z) ** 2 - half**2))
                return stacked(np.full_like(t, side * half), end * reach, z)

            yield Edge(at, fixed(-side, -3 * end, 0))


def _relief(pad: Pad) -> Iterator[Edge]:
    """The pocket's upper and lower edges, and where slot and pocket cut each other."""
    floor = pad.body_top_mm - pad.relief_depth_mm
    yield from level_edges(relief_outline(pad), pad.body_top_mm, outward=1, up=-1)
    yield from level_edges(relief_outline(pad), floor, outward=1, up=1)
    for piece in slot_outline(pad):
        for end in (1, -1):
            yield _cut_by_relief(pad, piece, end)
    if pad.floor_is_open:
        return
    half, length = float(slot_half_mm(pad, np.array([floor]), pad.slot_width_mm)[0]), pad.relief_length_mm / 2
    for way in (1, -1):
        x = pad.slot_offset_mm + way * half
        line = straight_way((x, -length, floor), (x, length, floor))
        yield Edge(line, fixed(way, 0, -1), fixed(way, 0, 1), straight=True)


def _cut_by_relief(pad: Pad, piece: Segment, end: int) -> Edge:
    """Where a slot's profile meets the pocket's end."""

    def at(t: Numbers) -> Numbers:
        across, z, _, _ = along_piece(piece, t)
        return stacked(across, end * relief_half_length_mm(pad, across - pad.slot_offset_mm), z)

    def beside(way: int) -> Way:
        def aside(t: Numbers) -> Numbers:
            _, _, out, up = along_piece(piece, t)
            return stacked(out, np.full_like(t, 3.0 * way * end), up)

        return aside

    return Edge(at, beside(1), beside(-1))


def _plug(pad: Pad) -> Iterator[Edge]:
    """A plug that is not round: its foot, its chamfer, and its corners."""
    x, y, radius = pad.plug_width_mm / 2, pad.plug_length_mm / 2, pad.plug_corner_radius_mm
    edge, top = pad.edge_chamfer_mm, pad.top_height_mm
    yield from level_edges(plug_outline(pad), pad.web_mm, outward=-1, up=1)
    yield from level_edges(plug_outline(pad), top - edge, outward=-1, up=-1)
    if edge:
        inner = rounded_rectangle(x - edge, y - edge, max(0.0, radius - edge))
        yield from level_edges(inner, top, outward=-1, up=-2)
    aside = radius * (1 - 1 / sqrt(2))
    if radius:
        yield from upright(x - aside, y - aside, pad.web_mm, top - edge)
    for way_x, way_y in ((1, 1), (1, -1), (-1, 1), (-1, -1)):
        inward = fixed(-way_x, -way_y, 0)
        if not radius:
            corner = (way_x * x, way_y * y)
            yield Edge(straight_way((*corner, pad.web_mm), (*corner, top - edge)), inward, straight=True)
        if radius < edge:
            start = (way_x * (x - radius), way_y * (y - radius), top - edge + radius)
            end = (way_x * (x - edge), way_y * (y - edge), top)
            yield Edge(straight_way(start, end), fixed(-2 * way_x, -2 * way_y, -1), straight=True)


def _cross_hole(pad: Pad) -> Iterator[Edge]:
    """Where the cross-hole breaks out of the stem."""
    hole, stem, drop = pad.cross_hole_diameter_mm / 2, pad.stem_diameter_mm / 2, pad.cross_hole_distance_mm

    def at(side: int) -> Way:
        def curve(t: Numbers) -> Numbers:
            y, z = hole * np.cos(2 * pi * t), hole * np.sin(2 * pi * t) - drop
            return stacked(side * np.sqrt(stem**2 - y**2), y, z)

        return curve

    def material(side: int) -> Way:
        def way(t: Numbers) -> Numbers:
            return stacked(np.full_like(t, -3.0 * side), 3 * np.cos(2 * pi * t), 3 * np.sin(2 * pi * t))

        return way

    for side in (1, -1):
        yield Edge(at(side), material(side))
