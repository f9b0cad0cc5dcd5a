"""Lines and arcs in a plane, in mm: the pieces that every exact outline is made of."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import dist, sqrt

Point = tuple[float, float]

SAME_POINT_MM = 1e-7
"""Two points nearer than this are one: the modelling kernel's own precision."""


@dataclass(frozen=True, slots=True)
class Line:
    """A straight piece."""

    start: Point
    end: Point

    def reversed(self) -> "Line":
        """The same piece, walked the other way."""
        return Line(self.end, self.start)

    def mirrored(self) -> "Line":
        """The same piece on the other side of the vertical axis."""
        return Line(_mirror(self.start), _mirror(self.end))

    def moved(self, across: float) -> "Line":
        """The same piece further to the right."""
        return Line(_move(self.start, across), _move(self.end, across))


@dataclass(frozen=True, slots=True)
class Arc:
    """A circular piece of less than half a turn."""

    start: Point
    end: Point
    centre: Point

    @property
    def radius_mm(self) -> float:
        """Distance of the piece from its centre."""
        return dist(self.start, self.centre)

    @property
    def middle(self) -> Point:
        """The point half way along the piece."""
        x, y = self.centre
        chord_middle = ((self.start[0] + self.end[0]) / 2, (self.start[1] + self.end[1]) / 2)
        scale = self.radius_mm / dist(chord_middle, self.centre)
        return x + scale * (chord_middle[0] - x), y + scale * (chord_middle[1] - y)

    def reversed(self) -> "Arc":
        """The same piece, walked the other way."""
        return Arc(self.end, self.start, self.centre)

    def mirrored(self) -> "Arc":
        """The same piece on the other side of the vertical axis."""
        return Arc(_mirror(self.start), _mirror(self.end), _mirror(self.centre))

    def moved(self, across: float) -> "Arc":
        """The same piece further to the right."""
        return Arc(_move(self.start, across), _move(self.end, across), _move(self.centre, across))


Segment = Line | Arc
Outline = tuple[Segment, ...]


def polyline(points: Iterable[Point]) -> Outline:
    """Straight pieces through the points; pieces of no length are left out."""
    return tuple(Line(a, b) for a, b in pairwise(points) if dist(a, b) > SAME_POINT_MM)


def corner(start: Point, end: Point, centre: Point) -> Outline:
    """A round corner as one arc, or nothing where its radius is none."""
    return (Arc(start, end, centre),) if dist(start, centre) > SAME_POINT_MM else ()


def rounded_rectangle(half_x: float, half_y: float, radius: float) -> Outline:
    """A closed walk, anticlockwise from the lower end of the right side; with a great enough radius a circle."""
    x, y = half_x - radius, half_y - radius
    return (
        *polyline([(half_x, -y), (half_x, y)]),
        *corner((half_x, y), (x, half_y), (x, y)),
        *polyline([(x, half_y), (-x, half_y)]),
        *corner((-x, half_y), (-half_x, y), (-x, y)),
        *polyline([(-half_x, y), (-half_x, -y)]),
        *corner((-half_x, -y), (-x, -half_y), (-x, -y)),
        *polyline([(-x, -half_y), (x, -half_y)]),
        *corner((x, -half_y), (half_x, -y), (x, -y)),
    )


def walked_back_mirrored(outline: Sequence[Segment]) -> Outline:
    """The other half of a symmetric outline, so that both halves make one walk."""
    return tuple(piece.reversed().mirrored() for piece in reversed(outline))


def moved(outline: Sequence[Segment], across: float) -> Outline:
    """The whole outline further to the right."""
    return tuple(piece.moved(across) for piece in outline) if across else tuple(outline)


def fillet_inset_mm(radius: float, height: float) -> float:
    """How far a rounded corner stands back from its straight side, at a height above the corner's foot."""
    below = max(0.0, radius - height)
    return radius - sqrt(max(0.0, radius**2 - below**2))


def _mirror(point: Point) -> Point:
    return -point[0], point[1]


def _move(point: Point, across: float) -> Point:
    return point[0] + across, point[1]
