"""What of the section shows in a round window: lines and arcs cut exactly, the hatched region as a fine polygon."""

from functools import lru_cache
from itertools import pairwise
from math import atan2, ceil, cos, degrees, hypot, pi, sin, sqrt, tan

from geometry import profile
from geometry.drawing.model import Arc, Area, Box, Layer, Line, Point, View
from geometry.drawing.views import drawn, hatched, slot_beyond
from geometry.pad import Pad

_NEARLY_MM = 1e-9


@lru_cache(maxsize=64)
def detail_view(pad: Pad, name: str, *, centre: Point, window_mm: float) -> View:
    """The part of the section inside a round window, about the window's centre."""
    outline = profile.section_outline(pad)
    # As on the section: what a crossing or a pocket takes out of the cut shows behind it.
    behind = [shape for shape in slot_beyond(pad) if isinstance(shape, Line | Arc)] if pad.opens_the_section else []
    shown = [*map(drawn, outline), *behind]
    inside = tuple(piece for shape in shown for piece in _inside(shape, centre, window_mm))
    moved = tuple(_shifted(shape, (-centre[0], -centre[1])) for shape in inside)
    area = _area_inside(hatched(outline), centre, window_mm)
    rim = Arc((0, 0), window_mm, 0, 360, Layer.THIN)
    return View(name, (*((area,) if area else ()), *moved, rim), Box(-window_mm, -window_mm, window_mm, window_mm))


def _shifted(shape: Line | Arc, by: Point) -> Line | Arc:
    if isinstance(shape, Line):
        (ax, ay), (bx, by_), (dx, dy) = shape.start, shape.end, by
        return Line((ax + dx, ay + dy), (bx + dx, by_ + dy), shape.layer)
    centre = (shape.centre[0] + by[0], shape.centre[1] + by[1])
    return Arc(centre, shape.radius_mm, shape.start_deg, shape.end_deg, shape.layer)


def _inside(shape: Line | Arc, centre: Point, window: float) -> list[Line | Arc]:
    """What of a line or an arc lies inside a circle."""
    if isinstance(shape, Line):
        return list(_line_inside(shape, centre, window))
    return list(_arc_inside(shape, centre, window))


def _line_inside(line: Line, centre: Point, window: float) -> list[Line]:
    (ax, ay), (bx, by) = line.start, line.end
    dx, dy, ex, ey = bx - ax, by - ay, ax - centre[0], ay - centre[1]
    a, b, c = dx * dx + dy * dy, ex * dx + ey * dy, ex * ex + ey * ey - window * window
    if a < _NEARLY_MM**2 or b * b <= a * c:
        return []
    root = sqrt(b * b - a * c)
    low, high = max(0.0, (-b - root) / a), min(1.0, (-b + root) / a)
    if low >= high:
        return []
    return [Line((ax + low * dx, ay + low * dy), (ax + high * dx, ay + high * dy), line.layer)]


def _arc_inside(arc: Arc, centre: Point, window: float) -> list[Arc]:
    """An arc in a window around it: cut at the two crossings of the circles, kept where its middle is inside."""
    dx, dy = centre[0] - arc.centre[0], centre[1] - arc.centre[1]
    distance = hypot(dx, dy)
    cuts = [arc.start_deg, arc.end_deg]
    if abs(arc.radius_mm - window) < distance < arc.radius_mm + window:
        towards = degrees(atan2(dy, dx))
        opening = (distance**2 + arc.radius_mm**2 - window**2) / (2 * distance * arc.radius_mm)
        half = degrees(atan2(sqrt(max(0.0, 1 - opening**2)), opening))
        for angle in (towards - half, towards + half):
            turned = arc.start_deg + (angle - arc.start_deg) % 360
            if turned < arc.end_deg:
                cuts.append(turned)
    kept = []
    for start, end in pairwise(sorted(cuts)):
        middle = (start + end) / 2 * pi / 180
        x, y = arc.centre[0] + arc.radius_mm * cos(middle), arc.centre[1] + arc.radius_mm * sin(middle)
        if end > start and hypot(x - centre[0], y - centre[1]) < window:
            kept.append(Arc(arc.centre, arc.radius_mm, start, end, arc.layer))
    return kept


def _area_inside(area: Area, centre: Point, window: float) -> Area | None:
    """The region inside the window, both as fine polygons, about the window's centre."""
    polygon = [(x - centre[0], y - centre[1]) for x, y in _flattened(area)]
    for nx, ny in ((1, 0), (0, 1), (-1, 0), (0, -1)):
        polygon = _cut_by_half_plane(polygon, nx, ny, window)
    sides = 48
    for i in range(sides):
        angle = 2 * pi * i / sides
        polygon = _cut_by_half_plane(polygon, cos(angle), sin(angle), window)
    return Area(tuple(polygon), (0.0,) * len(polygon)) if len(polygon) > 2 else None


def _cut_by_half_plane(polygon: list[Point], nx: float, ny: float, reach: float) -> list[Point]:
    """What of a polygon lies on the inner side of a straight cut (one step of Sutherland and Hodgman's clipping)."""
    kept: list[Point] = []
    for (ax, ay), (bx, by) in zip(polygon, polygon[1:] + polygon[:1], strict=True):
        a, b = ax * nx + ay * ny - reach, bx * nx + by * ny - reach
        if a <= 0:
            kept.append((ax, ay))
        if (a < 0 < b) or (b < 0 < a):
            share = a / (a - b)
            kept.append((ax + share * (bx - ax), ay + share * (by - ay)))
    return kept


def _flattened(area: Area) -> list[Point]:
    """The region's outline as points, arcs in steps of at most 5 degrees."""
    points: list[Point] = []
    following = area.points[1:] + area.points[:1]
    for (ax, ay), (bx, by), bulge in zip(area.points, following, area.bulges, strict=True):
        points.append((ax, ay))
        if not bulge:
            continue
        turn = 4 * atan2(bulge, 1)
        # The centre lies on the chord's normal, half a chord over the tangent of half the turn away.
        away = 1 / (2 * tan(turn / 2)) if abs(abs(turn) - pi) > _NEARLY_MM else 0.0
        x, y = (ax + bx) / 2 - (by - ay) * away, (ay + by) / 2 + (bx - ax) * away
        steps = ceil(abs(turn) * 180 / pi / 5)
        for i in range(1, steps):
            c, s = cos(turn * i / steps), sin(turn * i / steps)
            points.append((x + (ax - x) * c - (ay - y) * s, y + (ax - x) * s + (ay - y) * c))
    return points
