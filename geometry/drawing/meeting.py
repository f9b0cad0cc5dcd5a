"""How lines and rectangles on paper meet: cross, run beside one another, go through, and what such a meeting costs."""

from collections.abc import Iterable
from math import cos, hypot, radians, sin
from typing import NamedTuple

from geometry.drawing.model import Arc, Arrow, Box, Curve, Fill, Layer, Line, Point, Shape
from geometry.drawing.style import STYLE

Segment = tuple[Point, Point]
Kept = tuple[float, float, float, float, float]
"""A rectangle that lines had better keep out of, and what it costs if they do not."""
_LEAST_MM = 1.5
"""Lines that are near each other over less than this only meet."""


class Rival(NamedTuple):
    """A line that new ones had better neither cross nor run beside: where it is, in its own axes too, and what either costs."""

    left: float
    bottom: float
    right: float
    top: float
    """What comes near it comes into this rectangle."""
    x: float
    y: float
    along_x: float
    along_y: float
    length: float
    across: float
    beside: float
    near: float
    """How near another runs beside it."""
    least: float
    """Over how much of it, at least; over less they only meet."""


def rival(
    line: Segment, *, across: float, beside: float, near: float = STYLE.beside_mm, least: float = _LEAST_MM
) -> Rival:
    """A line as a rival of others."""
    (ax, ay), (bx, by) = line
    length = hypot(bx - ax, by - ay)
    sides = (min(ax, bx) - near, min(ay, by) - near, max(ax, bx) + near, max(ay, by) + near)
    along = ((bx - ax) / length, (by - ay) / length) if length else (1.0, 0.0)
    return Rival(*sides, ax, ay, *along, length, across, beside, near, least)


def cost_among(line: Segment, rivals: Iterable[Rival]) -> tuple[float, float]:
    """What it costs that a line crosses some others, and that it runs so near beside them that they are read as one."""
    (ax, ay), (bx, by) = line
    crossed = alongside = 0.0
    for left, bottom, right, top, x, y, along_x, along_y, length, across, beside, near, least in rivals:
        if (
            (ax < left and bx < left)
            or (ax > right and bx > right)
            or (ay < bottom and by < bottom)
            or (ay > top and by > top)
        ):
            continue
        # Along the rival and off it, at both ends.
        s, off = (ax - x) * along_x + (ay - y) * along_y, (ay - y) * along_x - (ax - x) * along_y
        t, away = (bx - x) * along_x + (by - y) * along_y, (by - y) * along_x - (bx - x) * along_y
        if off * away < 0 and 0 < s + (t - s) * off / (off - away) < length:
            crossed += across
        if s > t:
            s, t, off, away = t, s, away, off
        low, high = max(s, 0.0), min(t, length)
        if high - low > least:
            slope = (away - off) / (t - s)
            if abs(off + slope * (low - s)) < near and abs(off + slope * (high - s)) < near:
                alongside += beside
    return crossed, alongside


def is_met(point: Point, rivals: Iterable[Rival], near: float, *, beyond: float) -> bool:
    """Whether a point lies so near some line, or so little beyond its end, that a line ending there looks like a part of it."""
    px, py = point
    room = max(near, beyond)
    for left, bottom, right, top, x, y, along_x, along_y, length, *_ in rivals:
        if left - room <= px <= right + room and bottom - room <= py <= top + room:
            along, off = (px - x) * along_x + (py - y) * along_y, (py - y) * along_x - (px - x) * along_y
            if -beyond < along < length + beyond and abs(off) < near:
                return True
    return False


def head_of(line: Line) -> Segment:
    """Where the arrow at the beginning of a line lies, and a little more: a slanting line meets its back corners too."""
    (ax, ay), (bx, by) = line.start, line.end
    reach = STYLE.arrow_mm + STYLE.arrow_width_mm
    share = reach / max(reach, hypot(bx - ax, by - ay))
    return (ax, ay), (ax + share * (bx - ax), ay + share * (by - ay))


def head_at(arrow: Arrow) -> Segment:
    """Where an arrow lies, from its tip."""
    turn = radians(arrow.direction_deg)
    return arrow.tip, (arrow.tip[0] - STYLE.arrow_mm * cos(turn), arrow.tip[1] - STYLE.arrow_mm * sin(turn))


def crossed_by(line: Segment, others: Iterable[Segment], *, beyond: float) -> int:
    """How many other lines cross a line, or would if they went a little further."""
    (ax, ay), (bx, by) = line
    count = 0
    for (cx, cy), (dx, dy) in others:
        ux, uy, length = dx - cx, dy - cy, hypot(dx - cx, dy - cy)
        off, away = (ay - cy) * ux - (ax - cx) * uy, (by - cy) * ux - (bx - cx) * uy
        if off * away < 0:
            share = off / (off - away)
            along = ((ax + share * (bx - ax) - cx) * ux + (ay + share * (by - ay) - cy) * uy) / length
            count += -beyond < along < length + beyond
    return count


def is_free(box: Box, lines: Iterable[Segment]) -> bool:
    """Whether no line has a part inside a rectangle."""
    left, bottom, right, top = box.left, box.bottom, box.right, box.top
    for a, b in lines:
        if (
            (a[0] <= left and b[0] <= left)
            or (a[0] >= right and b[0] >= right)
            or (a[1] <= bottom and b[1] <= bottom)
            or (a[1] >= top and b[1] >= top)
        ):
            continue
        if crosses(box, a, b):
            return False
    return True


def price_of(line: Segment, kept: Iterable[Kept]) -> float:
    """What it costs that a line comes into rectangles that are kept free."""
    a, b = line
    price = 0.0
    for sides in kept:
        left, bottom, right, top, each = sides
        if (
            (a[0] <= left and b[0] <= left)
            or (a[0] >= right and b[0] >= right)
            or (a[1] <= bottom and b[1] <= bottom)
            or (a[1] >= top and b[1] >= top)
        ):
            continue
        if crosses(Box(left, bottom, right, top), a, b):
            price += each
    return price


def crosses(box: Box, a: Point, b: Point) -> bool:
    """Whether a straight line has a part inside a rectangle."""
    if max(a[0], b[0]) <= box.left or min(a[0], b[0]) >= box.right:
        return False
    if max(a[1], b[1]) <= box.bottom or min(a[1], b[1]) >= box.top:
        return False
    if a[0] == b[0] or a[1] == b[1]:
        return True
    dx, dy = b[0] - a[0], b[1] - a[1]
    sides = [dx * (y - a[1]) - dy * (x - a[0]) for x in (box.left, box.right) for y in (box.bottom, box.top)]
    return min(sides) < 0 < max(sides)


def length_within(box: Box, a: Point, b: Point) -> float:
    """How much of a straight line lies inside a rectangle (clipped as by Liang and Barsky)."""
    low, high = 0.0, 1.0
    dx, dy = b[0] - a[0], b[1] - a[1]
    for step, room in ((-dx, a[0] - box.left), (dx, box.right - a[0]), (-dy, a[1] - box.bottom), (dy, box.top - a[1])):
        if not step:
            if room <= 0:
                return 0.0
        elif step < 0:
            low = max(low, room / step)
        else:
            high = min(high, room / step)
    return max(0.0, high - low) * hypot(dx, dy)


def enters(a: Point, b: Point, centre: Point, radius: float) -> bool:
    """Whether a straight line comes inside a circle."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    length = dx * dx + dy * dy
    share = ((centre[0] - a[0]) * dx + (centre[1] - a[1]) * dy) / length if length else 0.0
    share = min(1.0, max(0.0, share))
    return hypot(a[0] + share * dx - centre[0], a[1] + share * dy - centre[1]) < radius - STYLE.line_clear_mm


def extent(shape: Shape) -> tuple[Point, ...]:
    """Points whose surrounding rectangle holds the shape (for an arc, that of its whole circle)."""
    match shape:
        case Line(start, end, _):
            return start, end
        case Arc((x, y), radius, _, _, _):
            return (x - radius, y - radius), (x + radius, y + radius)
        case Curve(points, _):
            return points
        case Arrow(tip=tip):
            return (tip,)
        case Fill(boxes, _):
            return tuple(p for box in boxes for p in ((box.left, box.bottom), (box.right, box.top)))
    return shape.points


def passed_by(a: Point, b: Point, points: Iterable[Point], near: float) -> int:
    """Through or close by how many points a straight line goes, other than with its own beginning."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    length = dx * dx + dy * dy
    left, right = min(a[0], b[0]) - near, max(a[0], b[0]) + near
    bottom, top = min(a[1], b[1]) - near, max(a[1], b[1]) + near
    count = 0
    for px, py in points:
        if left < px < right and bottom < py < top:
            x, y = px - a[0], py - a[1]
            if length and x * x + y * y >= near * near:
                share = min(1.0, max(0.0, (x * dx + y * dy) / length))
                count += (x - share * dx) ** 2 + (y - share * dy) ** 2 < near * near
    return count


def axes_of(shapes: Iterable[Shape], factor: float) -> list[Segment]:
    """The centre lines among a view's shapes, and the strokes across one at which a half view ends, in paper mm."""
    axes = [shape for shape in shapes if isinstance(shape, Line) and shape.layer in {Layer.CENTRE, Layer.THIN}]
    return [
        ((ax * factor, ay * factor), (bx * factor, by * factor))
        for (ax, ay), (bx, by) in ((a.start, a.end) for a in axes)
    ]


def rectangle(box: Box, layer: Layer) -> tuple[Line, ...]:
    """The four sides of a rectangle."""
    corners = [(box.left, box.bottom), (box.right, box.bottom), (box.right, box.top), (box.left, box.top)]
    return tuple(Line(a, b, layer) for a, b in zip(corners, corners[1:] + corners[:1], strict=True))


def arrow_line(start: Point, end: Point, direction_deg: float, layer: Layer) -> tuple[Line, Arrow]:
    """A line with an arrow head at its end."""
    return Line(start, end, layer), Arrow(end, direction_deg, layer)
