"""The pad seen along (1, −1, 1): its edges and contours from exact formulas, the hidden parts taken away by looking.

Each edge is walked in small steps; a step is hidden where the straight way from it to the eye passes through the part.
"""

from collections.abc import Iterator
from functools import lru_cache
from math import acos, pi, sqrt

import numpy as np
from numpy.typing import NDArray

from geometry.drawing.inside import inside, slot_half_mm
from geometry.drawing.isometric_edges import all_edges
from geometry.drawing.model import Box, Curve, Layer, Line, Point, View
from geometry.pad import Pad

Points = NDArray[np.float64]
_TO_EYE = np.array([1.0, -1.0, 1.0]) / sqrt(3)
_RIGHT = np.array([1.0, 1.0, 0.0]) / sqrt(2)
_UP = np.array([-1.0, 1.0, 2.0]) / sqrt(6)
_STEPS = 60
_LOOKS = 200
_HALVINGS = 6
_SKIN_MM = 0.03
"""The part is looked through this much thinner than it is, so that an edge does not hide itself."""


@lru_cache(maxsize=64)
def isometric_view(pad: Pad) -> View:
    """What can be seen of the pad's edges and contours, projected along a space diagonal (ISO 5456-3).

    The edges of a plain pad are known beforehand; to find which of any pad's are real takes more than twice as long.
    """
    edges = _edges(pad) if pad.is_plain else all_edges(pad)
    shapes = tuple(shape for points, straight in edges for shape in _seen(pad, points, straight=straight))
    flat = [p for shape in shapes for p in (shape.points if isinstance(shape, Curve) else (shape.start, shape.end))]
    xs, ys = [x for x, _ in flat], [y for _, y in flat]
    return View("isometric", shapes, Box(min(xs), min(ys), max(xs), max(ys)))


def _seen(pad: Pad, points: Points, *, straight: bool) -> Iterator[Line | Curve]:
    """The visible stretches of one edge on paper."""
    visible = ~_hidden(pad, points)
    bounds = np.flatnonzero(np.diff(np.concatenate(([False], visible, [False]))))
    firsts, lasts = bounds[::2], bounds[1::2] - 1
    starts = _where_hidden(pad, points, firsts, np.maximum(firsts - 1, 0))
    ends = _where_hidden(pad, points, lasts, np.minimum(lasts + 1, len(points) - 1))
    for first, last, start, end in zip(firsts, lasts, starts, ends, strict=True):
        seen = np.concatenate((start[None], points[first : last + 1], end[None]))
        stretch: tuple[Point, ...] = tuple((float(x), float(y)) for x, y in zip(seen @ _RIGHT, seen @ _UP, strict=True))
        if last > first:
            yield Line(stretch[0], stretch[-1], Layer.VISIBLE) if straight else Curve(stretch, Layer.VISIBLE)


def _where_hidden(pad: Pad, points: Points, seen: NDArray[np.int64], unseen: NDArray[np.int64]) -> Points:
    """Where an edge goes out of sight between points that are seen and their neighbours; found by halving."""
    near, far = points[seen], points[unseen]
    for _ in range(_HALVINGS if len(seen) else 0):
        middle = (near + far) / 2
        hidden = _hidden(pad, middle)[:, None]
        near, far = np.where(hidden, near, middle), np.where(hidden, middle, far)
    return near


def _hidden(pad: Pad, points: Points) -> NDArray[np.bool_]:
    """Which points have some of the part between them and the eye."""
    reach = 1.8 * (pad.body_diameter_mm + pad.overall_height_mm)
    # Short steps near the edge, where the part is thin, longer ones further off.
    away = reach * np.linspace(0, 1, _LOOKS)[1:] ** 2
    looked = points[:, None, :] + away[None, :, None] * _TO_EYE
    x, y, z = looked[..., 0], looked[..., 1], looked[..., 2]
    return np.asarray(inside(pad, x, y, z, skin_mm=_SKIN_MM).any(axis=1))


def _edges(pad: Pad) -> Iterator[tuple[Points, bool]]:
    """All edges and contours as points in space, and whether each is straight."""
    seat, body = pad.seat_diameter_mm / 2, pad.body_diameter_mm / 2
    lip, top, edge = pad.seat_length_mm, pad.top_height_mm, pad.edge_chamfer_mm
    circles = {(body - edge, top), (body, top - edge), (body, lip + edge), (body - edge, lip), (seat, lip)}
    if pad.has_stem:
        circles |= {(pad.stem_diameter_mm / 2, 0.0), (pad.stem_diameter_mm / 2, -pad.stem_length_mm)}
    for radius, z in sorted(circles):
        yield from _circle(pad, radius, z)
    uprights = [(seat, pad.seat_corner_radius_mm, lip), (body, lip + edge, top - edge)]
    if pad.has_stem:
        uprights.append((pad.stem_diameter_mm / 2, -pad.stem_length_mm, 0.0))
    for radius, low, high in uprights:
        for way in (1, -1):
            xy = way * radius / sqrt(2)
            yield _straight((xy, xy, low), (xy, xy, high)), True
    if edge:
        # The upper chamfer's other contour would lie at x = 0, where the slot is.
        yield _straight((-body, 0, top - edge), (edge - body, 0, top)), True
        for x, y in ((1, 0), (0, -1)):
            yield _straight(((body - edge) * x, (body - edge) * y, lip), (body * x, body * y, lip + edge)), True
    yield from _seat_corner(pad)
    yield from _slot(pad)


def _circle(pad: Pad, radius: float, z: float) -> Iterator[tuple[Points, bool]]:
    """A circle of the turned body, without what the slot took."""
    half = float(slot_half_mm(pad, np.array([z]), pad.slot_width_mm, _SKIN_MM)[0])
    start = acos(min(1.0, max(0.0, half) / radius))
    arcs = [(-start, start), (pi - start, pi + start)] if half > 0 else [(-3 * pi / 4, 5 * pi / 4)]
    for first, last in arcs:
        turn = np.linspace(first, last, 2 * _STEPS)
        yield np.stack((radius * np.cos(turn), radius * np.sin(turn), np.full_like(turn, z)), axis=1), False


def _seat_corner(pad: Pad) -> Iterator[tuple[Points, bool]]:
    """The contour of the seat's rounded corner, where its surface turns away from the eye; a sharp edge without radius."""
    corner, inner = pad.seat_corner_radius_mm, pad.seat_flat_diameter_mm / 2
    if not corner:
        yield from _circle(pad, inner, 0.0)
        return
    slope = np.linspace(0.0, np.arctan(sqrt(2.0)), _STEPS)
    apart = np.arccos(np.clip(np.tan(slope) / sqrt(2), -1.0, 1.0))
    radius, z = inner + corner * np.cos(slope), corner - corner * np.sin(slope)
    for way in (1, -1):
        turn = -pi / 4 + way * apart
        yield np.stack((radius * np.cos(turn), radius * np.sin(turn), z), axis=1), False


def _slot(pad: Pad) -> Iterator[tuple[Points, bool]]:
    """The slot's long edges, and its profile where it breaks out of the body on both ends."""
    half, mouth, top, web = pad.slot_width_mm / 2, pad.slot_mouth_chamfer_mm, pad.top_height_mm, pad.web_mm
    corner = pad.slot_corner_radius_mm
    long_edges = {(half + mouth, top), (half, top - mouth)} | (set() if corner else {(half, web)})
    for x, z in sorted(long_edges):
        reach = sqrt(max(0.0, _radius_at(pad, z) ** 2 - x**2))
        for way in (1, -1):
            yield _straight((way * x, -reach, z), (way * x, reach, z)), True
    heights = np.concatenate((web + corner * np.linspace(0, 1, _STEPS) ** 2, np.linspace(web + corner, top, _STEPS)))
    widths = slot_half_mm(pad, heights, pad.slot_width_mm, _SKIN_MM)
    floor = np.linspace(0.0, float(widths[0]), 20)[:-1]
    across = np.concatenate((floor, widths))
    up = np.concatenate((np.full_like(floor, web), heights))
    along = np.sqrt(np.maximum(0.0, np.array([_radius_at(pad, level) for level in up]) ** 2 - across**2))
    for side in (1, -1):
        for end in (1, -1):
            yield np.stack((side * across, end * along, up), axis=1), False


def _radius_at(pad: Pad, z: float) -> float:
    """Radius of the body at a height within it, its end faces included."""
    edge = pad.edge_chamfer_mm
    return pad.body_diameter_mm / 2 - max(0.0, edge - (z - pad.seat_length_mm), edge - (pad.top_height_mm - z))


def _straight(start: tuple[float, float, float], end: tuple[float, float, float]) -> Points:
    return np.linspace(start, end, _STEPS)
