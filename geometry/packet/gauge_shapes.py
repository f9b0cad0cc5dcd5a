"""What every gauge is: a closed outline in true size, y up, with a handle to hold it by."""

from dataclasses import dataclass

from geometry.drawing.model import Box
from geometry.outline import Arc, Line, Outline, Point, polyline, walked_back_mirrored

HANDLE_MM = 12.0
SHOULDER_MM = 8.0
"""What is added to hold a gauge by and to stop it: chosen for card, no source."""
SKIRT_SHARE = 0.8
"""Of the gap between seat and skirt, what a gauge fills."""
LEAST_CARD_MM = 3.0
"""A tongue of card narrower than this bends: judged."""


@dataclass(frozen=True, slots=True)
class Gauge:
    """One piece: its closed outline in mm, y up, and what to do with it."""

    key: str
    title: str
    use: str
    outline: Outline
    half: Outline
    """The right half, for paper that the whole is too wide for; the whole where halving makes no sense."""

    @property
    def can_be_halved(self) -> bool:
        """Whether the piece is the same on both sides of its axis."""
        return self.half != self.outline


def bounds(outline: Outline) -> Box:
    """What an outline covers: its arcs are quarter turns between level and upright, so their ends are their extremes."""
    points = [point for piece in outline for point in (piece.start, piece.end)]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs), min(ys), max(xs), max(ys))


def moved(outline: Outline, by: Point) -> Outline:
    """The outline elsewhere."""

    def at(point: Point) -> Point:
        return point[0] + by[0], point[1] + by[1]

    return tuple(
        Arc(at(p.start), at(p.end), at(p.centre)) if isinstance(p, Arc) else Line(at(p.start), at(p.end))
        for p in outline
    )


def closed(right: Outline) -> tuple[Outline, Outline]:
    """A symmetric outline, and its right half closed along the axis; ``right`` runs from the axis round to the axis."""
    whole = (*right, *walked_back_mirrored(right))
    return joined(whole), (*right, *polyline([right[-1].end, right[0].start]))


def bridge(key: str, title: str, use: str, width_mm: float, legs_mm: tuple[float, float]) -> Gauge:
    """A bridge on two legs (long, wide), the legs down."""
    (depth_mm, leg_mm), half = legs_mm, width_mm / 2
    out, top = half + leg_mm, depth_mm + HANDLE_MM
    right: Outline = polyline([(0, depth_mm), (half, depth_mm), (half, 0), (out, 0), (out, top), (0, top)])
    whole, _ = closed(right)
    return Gauge(key, title, use, whole, whole)


def joined(whole: Outline) -> Outline:
    """The outline with the two halves of a straight piece across the axis made one."""
    pieces = list(whole)
    for i in range(len(pieces)):
        one, other = pieces[i - 1], pieces[i]
        if isinstance(one, Line) and isinstance(other, Line) and one.end[0] == 0 and _is_level(one, other):
            pieces[i] = Line(one.start, other.end)
            del pieces[i - 1]
            return joined(tuple(pieces))
    return tuple(pieces)


def _is_level(one: Line, other: Line) -> bool:
    return one.start[1] == one.end[1] == other.start[1] == other.end[1]
