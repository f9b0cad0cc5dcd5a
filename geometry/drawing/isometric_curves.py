"""The turned surfaces' edges and contours seen along (1, −1, 1), and what every edge of the isometric picture is made of."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import pi, sqrt

import numpy as np

from geometry.drawing.inside import Numbers
from geometry.outline import Arc, Outline, Segment
from geometry.pad import Pad

Way = Callable[[Numbers], Numbers]
"""From 0 to 1 along a curve: points in space, or the way from them towards material."""


@dataclass(frozen=True, slots=True)
class Edge:
    """A curve, towards where there must be material, and towards where there must be none."""

    at: Way
    material: Way
    air: Way | None = None
    straight: bool = False


def fixed(x: float, y: float, z: float) -> Way:
    """The same way from every point of a curve."""
    return lambda t: np.tile((x, y, z), (len(t), 1))


def straight_way(start: tuple[float, float, float], end: tuple[float, float, float]) -> Way:
    """Evenly from one point to another."""
    return lambda t: np.array(start) + t[:, None] * (np.array(end) - np.array(start))


def stacked(x: Numbers, y: Numbers, z: Numbers) -> Numbers:
    """Three coordinates as points, one a row."""
    return np.stack(np.broadcast_arrays(x, y, z), axis=1).astype(float)


def along_piece(piece: Segment, t: Numbers) -> tuple[Numbers, Numbers, Numbers, Numbers]:
    """Points along a piece of an outline, and the way to its right: to the material beside a slot, out of a closed walk."""
    (x0, z0), (x1, z1) = piece.start, piece.end
    if not isinstance(piece, Arc):
        length = np.hypot(x1 - x0, z1 - z0)
        right = np.full_like(t, (z1 - z0) / length), np.full_like(t, (x0 - x1) / length)
        return x0 + t * (x1 - x0), z0 + t * (z1 - z0), *right
    x, z = piece.centre
    first = np.arctan2(z0 - z, x0 - x)
    turn = (np.arctan2(z1 - z, x1 - x) - first + pi) % (2 * pi) - pi
    angle = first + t * turn
    out = 1.0 if turn > 0 else -1.0
    cos, sin = np.cos(angle), np.sin(angle)
    return x + piece.radius_mm * cos, z + piece.radius_mm * sin, out * cos, out * sin


def level_edges(outline: Outline, z: float, *, outward: float, up: float) -> Iterator[Edge]:
    """A closed outline seen from above, as edges at a height."""
    for piece in outline:

        def at(t: Numbers, piece: Segment = piece) -> Numbers:
            x, y, _, _ = along_piece(piece, t)
            return stacked(x, y, np.full_like(t, z))

        def material(t: Numbers, piece: Segment = piece) -> Numbers:
            _, _, x, y = along_piece(piece, t)
            return stacked(outward * x, outward * y, np.full_like(t, up))

        yield Edge(at, material, straight=not isinstance(piece, Arc))


def upright(x: float, y: float, low: float, high: float) -> Iterator[Edge]:
    """Both contours of an upright cylinder, where it turns away from the eye."""
    for way in (1, -1):
        yield Edge(straight_way((way * x, way * y, low), (way * x, way * y, high)), fixed(-way, -way, 0), straight=True)


def _circle(radius: float, z: float, side: int) -> Edge:
    """A whole turn, beginning behind; the material lies inward, and up or down."""

    def at(t: Numbers) -> Numbers:
        turn = 2 * pi * t + 3 * pi / 4
        return stacked(radius * np.cos(turn), radius * np.sin(turn), np.full_like(t, z))

    def material(t: Numbers) -> Numbers:
        turn = 2 * pi * t + 3 * pi / 4
        return stacked(-np.cos(turn), -np.sin(turn), np.full_like(t, side))

    return Edge(at, material)


def _cone(radius: float, z: float, edge: float) -> Iterator[Edge]:
    """Both contours of a chamfer at 45°: those of a lower one in front, of an upper one behind."""
    side = 1 if edge > 0 else -1
    for x, y in ((side, 0), (0, -side)):
        narrow, wide = radius - abs(edge), radius
        way = straight_way((narrow * x, narrow * y, z), (wide * x, wide * y, z + edge))
        yield Edge(way, fixed(-2 * x, -2 * y, 0), straight=True)


def turned_edges(pad: Pad) -> Iterator[Edge]:
    """Circles and contours of the turned surfaces."""
    seat, body, edge, lip = pad.seat_diameter_mm / 2, pad.body_diameter_mm / 2, pad.edge_chamfer_mm, pad.seat_length_mm
    low, top, corner = pad.foot_bottom_mm, pad.body_top_mm, pad.seat_corner_radius_mm
    circles = {
        (body - edge, top, -1),
        (body, top - edge, -1),
        (body, low + edge, 1),
        (body - edge, low, 1),
        (seat, lip, -1),
    }
    uprights, cones = {(seat, corner, lip), (body, low + edge, top - edge)}, {(body, low, 1), (body, top, -1)}
    if pad.has_stem:
        stem = pad.stem_diameter_mm / 2
        circles |= {(stem, 0.0, -1), (stem, -pad.stem_length_mm, 1)}
        uprights.add((stem, -pad.stem_length_mm, 0.0))
    if pad.plug_is_round:
        plug, high = pad.plug_width_mm / 2, pad.top_height_mm
        circles |= {(plug, pad.web_mm, 1), (plug, high - edge, -1), (plug - edge, high, -1)}
        uprights.add((plug, pad.web_mm, high - edge))
        cones.add((plug, high, -1))
    for radius, z, side in sorted(circles):
        yield _circle(radius, z, side)
    for radius, start, end in sorted(uprights):
        yield from upright(radius / sqrt(2), radius / sqrt(2), start, end)
    for radius, z, side in sorted(cones) if edge else ():
        yield from _cone(radius, z, side * edge)
    yield from _seat_corner(pad)


def _seat_corner(pad: Pad) -> Iterator[Edge]:
    """The contour of the seat's rounded corner, or its sharp edge."""
    corner, inner = pad.seat_corner_radius_mm, pad.seat_flat_diameter_mm / 2
    if not corner:
        yield _circle(inner, 0.0, 1)
        return
    for way in (1, -1):

        def turn_of(t: Numbers, way: int = way) -> tuple[Numbers, Numbers]:
            slope = t * np.arctan(sqrt(2.0))
            return slope, -pi / 4 + way * np.arccos(np.clip(np.tan(slope) / sqrt(2), -1.0, 1.0))

        def at(t: Numbers, of: Callable[[Numbers], tuple[Numbers, Numbers]] = turn_of) -> Numbers:
            slope, turn = of(t)
            radius = inner + corner * np.cos(slope)
            return stacked(radius * np.cos(turn), radius * np.sin(turn), corner - corner * np.sin(slope))

        def material(t: Numbers, of: Callable[[Numbers], tuple[Numbers, Numbers]] = turn_of) -> Numbers:
            slope, turn = of(t)
            return stacked(-np.cos(turn), -np.sin(turn), np.sin(slope))

        yield Edge(at, material)
