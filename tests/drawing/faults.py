"""What is wrong with a drawn sheet: texts over texts, over lines or out of the frame; by clipping of its own."""

from collections.abc import Iterator
from itertools import combinations, pairwise
from math import cos, hypot, pi, sin

import numpy as np

from geometry.drawing.model import (
    Arc,
    Arrow,
    Box,
    Curve,
    Dimension,
    Drawing,
    Layer,
    Line,
    PlacedView,
    Point,
    Shape,
    Text,
)
from geometry.drawing.style import STYLE

TOUCH_MM = 0.01


def faults(drawing: Drawing) -> list[str]:
    """Each overlap and each thing outside the frame, in words."""
    texts = [*drawing.texts, *(dimension.text for dimension in drawing.dimensions)]
    found = [f"“{a.words}” over “{b.words}”" for a, b in combinations(texts, 2) if _overlap(a.box, b.box)]
    lines = list(all_lines(drawing))
    ends = np.array(lines)
    low, high = ends.min(axis=1), ends.max(axis=1)
    for text in texts:
        box = text.box
        near = (low < (box.right, box.top)).all(axis=1) & (high > (box.left, box.bottom)).all(axis=1)
        passing = [lines[i] for i in np.flatnonzero(near) if _passes(box, *lines[i])]
        found += [f"line {a}–{b} through “{text.words}”" for a, b in passing]
    found += [
        f"{a.measure.name} on the line of {b.measure.name}"
        for a, b in combinations(drawing.dimensions, 2)
        if _on_one_line(a, b)
    ]
    inside = [text for text in texts if text.layer is not Layer.FRAME]
    found += [f"“{text.words}” outside the frame" for text in inside if not _inside(text.box, drawing.frame)]
    border = drawing.frame.grown(STYLE.grid_mm)
    found += [
        f"“{text.words}” not in the border of the frame"
        for text in texts
        if text.layer is Layer.FRAME and (not _inside(text.box, border) or text.box.meets(drawing.frame))
    ]
    inner = [point for line in placed_lines(drawing) for point in line]
    found += [f"{point} outside the frame" for point in inner if not _inside(Box(*point, *point), drawing.frame)]
    return found


def _on_one_line(a: Dimension, b: Dimension) -> bool:
    """Whether two linear dimensions lie on one another; in a chain they touch."""
    if a.kind != b.kind or a.kind not in {"across", "up"}:
        return False
    along = 0 if a.kind == "across" else 1
    same = abs(a.line_at[1 - along] - b.line_at[1 - along]) < TOUCH_MM
    (low, high), (near, far) = (sorted((d.start[along], d.end[along])) for d in (a, b))
    return same and min(high, far) - max(low, near) > TOUCH_MM


def placed_lines(drawing: Drawing) -> Iterator[tuple[Point, Point]]:
    """All lines of views and dimensions on paper."""
    for placed in drawing.views:
        for shape in placed.view.shapes:
            yield from ((placed.on_paper(a), placed.on_paper(b)) for a, b in _lines(shape))
    for dimension in drawing.dimensions:
        yield from ((line.start, line.end) for line in dimension.lines)


def all_lines(drawing: Drawing) -> Iterator[tuple[Point, Point]]:
    """Those, and frame, title block and symbols."""
    yield from placed_lines(drawing)
    for shape in drawing.shapes:
        yield from _lines(shape)


def _lines(shape: Shape) -> Iterator[tuple[Point, Point]]:
    match shape:
        case Line(start, end, _):
            yield start, end
        case Curve(points, _):
            yield from pairwise(points)
        case Arc((x, y), radius, start, end, _):
            turns = [(start + (end - start) * i / 48) * pi / 180 for i in range(49)]
            yield from pairwise([(x + radius * cos(t), y + radius * sin(t)) for t in turns])
        case Arrow(tip=tip):
            yield tip, tip


def _overlap(a: Box, b: Box) -> bool:
    return (
        min(a.right, b.right) - max(a.left, b.left) > TOUCH_MM
        and min(a.top, b.top) - max(a.bottom, b.bottom) > TOUCH_MM
    )


def _inside(box: Box, frame: Box) -> bool:
    return frame.left <= box.left and box.right <= frame.right and frame.bottom <= box.bottom and box.top <= frame.top


def _passes(box: Box, a: Point, b: Point) -> bool:
    """Liang and Barsky: whether the line has a part inside the box."""
    low, high = 0.0, 1.0
    dx, dy = b[0] - a[0], b[1] - a[1]
    inner = box.grown(-TOUCH_MM)
    for step, room in (
        (-dx, a[0] - inner.left),
        (dx, inner.right - a[0]),
        (-dy, a[1] - inner.bottom),
        (dy, inner.top - a[1]),
    ):
        if abs(step) < 1e-12:
            if room <= 0:
                return False
        elif step < 0:
            low = max(low, room / step)
        else:
            high = min(high, room / step)
    return low < high


def overlapping_views(drawing: Drawing) -> list[str]:
    """Pairs of views that share paper: a line of one comes into the circle or rectangle that another fills."""
    found = []
    for a, b in combinations(drawing.views, 2):
        boxes = _box(a), _box(b)
        if _overlap(*boxes) and any(_comes_into(p, q, box) for p, q, box in ((a, b, boxes[1]), (b, a, boxes[0]))):
            found.append(f"{a.view.name} over {b.view.name}")
    return found


def _box(placed: PlacedView) -> Box:
    b = placed.view.box
    (left, bottom), (right, top) = placed.on_paper((b.left, b.bottom)), placed.on_paper((b.right, b.top))
    return Box(left, bottom, right, top)


def _comes_into(placed: PlacedView, other: PlacedView, box: Box) -> bool:
    """Whether a line of one view comes into another's outline: round where the part is seen along its axis."""
    lines = [(placed.on_paper(a), placed.on_paper(b)) for shape in placed.view.shapes for a, b in _lines(shape)]
    if other.view.name not in {"top", "underside"}:
        return any(_passes(box, a, b) for a, b in lines)
    (x, y), radius = other.at, box.width / 2 - TOUCH_MM
    return any(_distance((x, y), a, b) < radius for a, b in lines)


def _distance(point: Point, a: Point, b: Point) -> float:
    """From a point to a straight line's nearest part."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    length = dx * dx + dy * dy
    share = ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / length if length else 0.0
    share = min(1.0, max(0.0, share))
    return hypot(a[0] + share * dx - point[0], a[1] + share * dy - point[1])


def words_of(drawing: Drawing) -> list[Text]:
    """Every text of the sheet."""
    return [*drawing.texts, *(dimension.text for dimension in drawing.dimensions)]


def crossed_leaders(drawing: Drawing, *, more: tuple[Line, ...] = ()) -> list[str]:
    """Where a leader, or a line of a tolerance, crosses a dimension line."""
    notes = [d for d in drawing.dimensions if d.kind in {"radius", "note"}]
    leaders = [line for dimension in notes for line in dimension.lines]
    leaders += [s for s in (*drawing.shapes, *more) if isinstance(s, Line) and s.layer == Layer.TOLERANCE]
    others = [d.lines[0] for d in drawing.dimensions if d not in notes]
    return [f"{a.start}–{a.end} over {b.start}–{b.end}" for a in leaders for b in others if _cross(a, b)]


def crossed_arrows(drawing: Drawing) -> list[str]:
    """Where a line of a dimension or a sign crosses the arrow of a leader that is not its own."""
    signs = [s for s in drawing.shapes if isinstance(s, Line) and s.layer in {Layer.TOLERANCE, Layer.THIN}]
    found = []
    for dimension in drawing.dimensions:
        others = [line for other in drawing.dimensions if other is not dimension for line in other.lines]
        for arrow in dimension.arrows if dimension.kind in {"radius", "note"} else ():
            turn = arrow.direction_deg * pi / 180
            x, y = arrow.tip
            head = Line((x, y), (x - STYLE.arrow_mm * cos(turn), y - STYLE.arrow_mm * sin(turn)), Layer.DIMENSION)
            found += [f"arrow of {dimension.measure.name} under {b}" for b in (*others, *signs) if _cross(head, b)]
    return found


def _cross(a: Line, b: Line) -> bool:
    """Whether two lines share a point inside both; their parameters by Cramer's rule."""
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = a.start, a.end, b.start, b.end
    ux, uy, vx, vy = bx - ax, by - ay, dx - cx, dy - cy
    denominator = ux * vy - uy * vx
    if abs(denominator) < 1e-12:
        return False
    s = ((cx - ax) * vy - (cy - ay) * vx) / denominator
    t = ((cx - ax) * uy - (cy - ay) * ux) / denominator
    return 1e-6 < s < 1 - 1e-6 and 1e-6 < t < 1 - 1e-6


BESIDE_MM = 1.0
LEAST_BESIDE_MM = 2.0
"""Nearer than this, over this length, two lines are read as one, or one as the other's."""


def lines_beside_others(drawing: Drawing, *, more: tuple[Line, ...] = ()) -> list[str]:
    """Where a leader, a shelf or an edge of a frame runs on or close beside a line of something else."""
    notes = [d for d in drawing.dimensions if d.kind in {"radius", "note"}]
    sizes = [line for d in drawing.dimensions if d not in notes for line in d.lines]
    pointing = [[*d.lines] for d in notes]
    signs = [s for s in (*drawing.shapes, *more) if isinstance(s, Line) and s.layer == Layer.TOLERANCE]
    signs = [line for line in signs if not _prolongs_a_datums_face(line, drawing)]
    found = [(a, b) for a in (*signs, *(line for lines in pointing for line in lines)) for b in sizes if _beside(a, b)]
    found += [(a, b) for a in signs for lines in pointing for b in lines if _beside(a, b)]
    found += [(a, b) for one, two in combinations(pointing, 2) for a in one for b in two if _beside(a, b)]
    return [f"{a.start}–{a.end} beside {b.start}–{b.end}" for a, b in found]


def _prolongs_a_datums_face(line: Line, drawing: Drawing) -> bool:
    """Whether a datum triangle stands on a level line: that line is the face's own, like its extension lines."""
    triangles = [s for s in drawing.shapes if isinstance(s, Arrow) and s.width_mm > 2]
    feet = [t.tip[1] - 2.5 * sin(t.direction_deg * pi / 180) for t in triangles if t.direction_deg % 180 == 90]
    return line.start[1] == line.end[1] and any(abs(line.start[1] - foot) < TOUCH_MM for foot in feet)


def _beside(a: Line, b: Line) -> bool:
    """Whether a stretch of one line lies close to the other; in the other's own axes: along it and off it."""
    (cx, cy), (dx, dy) = b.start, b.end
    length = hypot(dx - cx, dy - cy)
    if length < LEAST_BESIDE_MM:
        return False
    ux, uy = (dx - cx) / length, (dy - cy) / length
    ends = [((x - cx) * ux + (y - cy) * uy, (y - cy) * ux - (x - cx) * uy) for x, y in (a.start, a.end)]
    (s, off), (t, away) = sorted(ends)
    if t - s < LEAST_BESIDE_MM:
        return False
    low, high = max(s, 0.0), min(t, length)
    if high - low < LEAST_BESIDE_MM:
        return False
    offs = [off + (away - off) * (at - s) / (t - s) for at in (low, high)]
    # Over its whole common stretch: a line that crosses another comes near it only where it does so.
    return max(map(abs, offs)) < BESIDE_MM
