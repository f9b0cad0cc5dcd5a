"""Finding room: what already stands about a view, and whether a new text or line may stand there too."""

from collections.abc import Iterable
from dataclasses import dataclass, field, fields, replace
from itertools import islice
from math import hypot, inf
from typing import TypeVar

from geometry.drawing.facts import CRITICAL_MARK
from geometry.drawing.lettering import text_width_mm
from geometry.drawing.model import Arc, Arrow, Box, Curve, Dimension, Fill, Layer, Line, Point, Shape, Text
from geometry.drawing.style import STYLE

Candidate = TypeVar("Candidate")
_GRAVE = 3
_PATIENCE = 100
"""How many places with room are looked at for one whose leader crosses nothing."""


@dataclass(slots=True)
class Canvas:
    """One view's surroundings in paper mm, filled as things are placed; used only while a sheet is laid out."""

    right_limit: float = inf
    """How far to the right words may go."""
    solids: list[Box] = field(default_factory=list)
    """Where the part itself is: no text may stand there."""
    boxes: list[Box] = field(default_factory=list)
    """What the texts cover, with the space kept to other texts."""
    near_boxes: list[Box] = field(default_factory=list)
    """The same with the smaller space kept to lines."""
    lines: list[tuple[Point, Point]] = field(default_factory=list)
    drawn: list[tuple[Point, Point]] = field(default_factory=list)
    """Dimension lines and leaders: a leader had better cross none of them."""
    extensions: list[tuple[Point, Point]] = field(default_factory=list)
    """Extension lines: the same, though it is less confusing."""
    leaders: list[tuple[Point, Point]] = field(default_factory=list)
    """Of these the leaders."""
    circles: list[tuple[Point, float]] = field(default_factory=list)
    """Windows of details: a leader had better stay out of them."""
    crossed: int = 0
    """How often that could not be helped."""
    dimensions: list[Dimension] = field(default_factory=list)
    texts: list[Text] = field(default_factory=list)
    shapes: list[Shape] = field(default_factory=list)

    def has_room_for(self, text: Text, lines: Iterable[Line]) -> bool:
        """Whether a text with its lines meets no other text, no line and not the part."""
        return self.has_room(text.box, lines)

    def has_room(self, box: Box, lines: Iterable[Line]) -> bool:
        """Whether a box of words or signs, with its lines, meets no other, no line and not the part."""
        if box.right > self.right_limit:
            return False
        apart = box.grown(STYLE.clear_mm)
        if any(apart.meets(other) for other in self.boxes) or any(apart.meets(solid) for solid in self.solids):
            return False
        if any(crosses(other, line.start, line.end) for other in self.near_boxes for line in lines):
            return False
        near = box.grown(STYLE.line_clear_mm)
        return not any(crosses(near, a, b) for a, b in self.lines)

    def crossings(self, lines: Iterable[Line], *, apart_from: Line | None = None) -> int:
        """How many lines a leader would cross or run along; extension lines count less than all others."""
        own = (apart_from.start, apart_from.end) if apart_from else None
        return sum(
            _GRAVE * sum(meet(line.start, line.end, a, b) for a, b in self.drawn if (a, b) != own)
            + sum(meet(line.start, line.end, a, b) for a, b in self.extensions)
            + _GRAVE * sum(enters(line.start, line.end, centre, radius) for centre, radius in self.circles)
            for line in lines
        )

    def crossings_with_leaders(self, lines: Iterable[Line]) -> int:
        """How many leaders the lines of a dimension would cross, its own line first."""
        crossed = [sum(meet(line.start, line.end, a, b) for a, b in self.leaders) for line in lines]
        return _GRAVE * sum(crossed[:1]) + sum(crossed[1:])

    def add_dimension(self, dimension: Dimension) -> None:
        """Place a dimension."""
        lines = [(line.start, line.end) for line in dimension.lines]
        is_leader = dimension.kind in {"radius", "note"}
        if is_leader:
            self.crossed += self.crossings(dimension.lines)
            self.leaders += lines
        else:
            self.crossed += self.crossings_with_leaders(dimension.lines)
        self.drawn += lines if is_leader else lines[:1]
        self.extensions += [] if is_leader else lines[1:]
        self.dimensions.append(dimension)
        self._occupy(dimension.text.box, dimension.lines)
        if dimension.measure.exact:
            self.shapes += _framed(dimension.text)

    def add_text(self, text: Text, *shapes: Shape) -> None:
        """Place a text with the lines that belong to it."""
        self.add(text.box, (text,), shapes)

    def add(
        self,
        box: Box,
        texts: Iterable[Text],
        shapes: Iterable[Shape],
        *,
        leader: tuple[Line, ...] = (),
        apart_from: Line | None = None,
    ) -> None:
        """Place texts and lines that keep others out of a box, and the leader that holds them."""
        drawn = (*leader, *shapes)
        self.texts += texts
        self.shapes += drawn
        self.crossed += self.crossings(leader, apart_from=apart_from)
        lines = [(line.start, line.end) for line in leader]
        self.leaders += lines
        self.drawn += lines
        self._occupy(box, [shape for shape in drawn if isinstance(shape, Line)])

    def _occupy(self, box: Box, lines: Iterable[Line]) -> None:
        self.boxes.append(box.grown(STYLE.clear_mm))
        self.near_boxes.append(box.grown(STYLE.line_clear_mm))
        self.lines += [(line.start, line.end) for line in lines]

    def touches(self, box: Box) -> bool:
        """Whether anything that was placed, or the part, reaches into a rectangle."""
        covered = [*self.solids, *(text.box for text in self.texts), *(d.text.box for d in self.dimensions)]
        return any(box.meets(other) for other in covered) or any(crosses(box, a, b) for a, b in self.lines)

    def copied(self) -> "Canvas":
        """The same surroundings, to be filled further in another way."""
        other = Canvas(self.right_limit, crossed=self.crossed)
        for name in (f.name for f in fields(self)):
            kept = getattr(self, name)
            if isinstance(kept, list):
                setattr(other, name, list(kept))
        return other

    @property
    def box(self) -> Box:
        """Everything that was placed, and the part."""
        boxes = [
            *self.solids,
            *(text.box for text in self.texts),
            *(dimension.text.box for dimension in self.dimensions),
        ]
        points = [point for line in self.lines for point in line] + [p for shape in self.shapes for p in extent(shape)]
        lefts, rights = (
            [b.left for b in boxes] + [x for x, _ in points],
            [b.right for b in boxes] + [x for x, _ in points],
        )
        lows, highs = (
            [b.bottom for b in boxes] + [y for _, y in points],
            [b.top for b in boxes] + [y for _, y in points],
        )
        return Box(min(lefts), min(lows), max(rights), max(highs))


def _framed(text: Text) -> tuple[Line, ...]:
    """The frame of a theoretically exact dimension (ISO 1101), without the mark before it."""
    box, aside = text.box, 0.8 * STYLE.clear_mm
    if text.words.startswith(CRITICAL_MARK):
        mark = text_width_mm(f"{CRITICAL_MARK} ", text.height_mm)
        box = replace(box, bottom=box.bottom + mark) if text.turned else replace(box, left=box.left + mark)
    (x, y) = (0.0, aside) if text.turned else (aside, 0.0)
    corners = [
        (box.left - x, box.bottom - y),
        (box.right + x, box.bottom - y),
        (box.right + x, box.top + y),
        (box.left - x, box.top + y),
    ]
    return tuple(Line(a, b, Layer.DIMENSION) for a, b in zip(corners, corners[1:] + corners[:1], strict=True))


def fewest(candidates: Iterable[tuple[int, Candidate]]) -> Candidate | None:
    """Of what has room, the first that crosses nothing; else, of the first few, that which crosses least."""
    best: tuple[int, Candidate] | None = None
    for crossed, candidate in islice(candidates, _PATIENCE):
        if best is None or crossed < best[0]:
            best = crossed, candidate
        if not crossed:
            break
    return best[1] if best else None


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


def meet(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two straight lines cross, or run on in one another so that they look like one."""
    apart = STYLE.apart_mm
    if min(a[0], b[0]) > max(c[0], d[0]) + apart or min(c[0], d[0]) > max(a[0], b[0]) + apart:
        return False
    if min(a[1], b[1]) > max(c[1], d[1]) + apart or min(c[1], d[1]) > max(a[1], b[1]) + apart:
        return False
    if (a[0] == b[0] and c[0] == d[0]) or (a[1] == b[1] and c[1] == d[1]):
        return True
    ux, uy, vx, vy = b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]
    first = (ux * (c[1] - a[1]) - uy * (c[0] - a[0])) * (ux * (d[1] - a[1]) - uy * (d[0] - a[0]))
    return first < 0 and (vx * (a[1] - c[1]) - vy * (a[0] - c[0])) * (vx * (b[1] - c[1]) - vy * (b[0] - c[0])) < 0


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


def arrow_line(start: Point, end: Point, direction_deg: float, layer: Layer) -> tuple[Line, Arrow]:
    """A line with an arrow head at its end."""
    return Line(start, end, layer), Arrow(end, direction_deg, layer)
