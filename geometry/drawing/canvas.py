"""Finding room: what already stands about a view, and whether a new text or line may stand there too."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from math import inf

from geometry.drawing.model import Arc, Arrow, Box, Curve, Dimension, Fill, Layer, Line, Point, Shape, Text
from geometry.drawing.style import STYLE


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

    def add_dimension(self, dimension: Dimension) -> None:
        """Place a dimension."""
        self.dimensions.append(dimension)
        self._occupy(dimension.text.box, dimension.lines)

    def add_text(self, text: Text, *shapes: Shape) -> None:
        """Place a text with the lines that belong to it."""
        self.add(text.box, (text,), shapes)

    def add(self, box: Box, texts: Iterable[Text], shapes: Iterable[Shape]) -> None:
        """Place texts and lines that keep others out of a box."""
        drawn = tuple(shapes)
        self.texts += texts
        self.shapes += drawn
        self._occupy(box, [shape for shape in drawn if isinstance(shape, Line)])

    def _occupy(self, box: Box, lines: Iterable[Line]) -> None:
        self.boxes.append(box.grown(STYLE.clear_mm))
        self.near_boxes.append(box.grown(STYLE.line_clear_mm))
        self.lines += [(line.start, line.end) for line in lines]

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
