"""Dimensions by ISO 129-1 about a view: where each could stand, and the first place that has room."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import product
from math import atan2, cos, degrees, radians, sin
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from geometry.drawing.canvas import Canvas
from geometry.drawing.errors import SheetError
from geometry.drawing.lettering import text_width_mm
from geometry.drawing.meeting import is_free, length_within
from geometry.drawing.model import (
    TEXT_BELOW,
    TEXT_BOX,
    Anchor,
    Arc,
    Arrow,
    Dimension,
    Kind,
    Layer,
    Line,
    Measure,
    Point,
    Text,
)
from geometry.drawing.room import Numbers, perhaps_free
from geometry.drawing.scales import Scale
from geometry.drawing.style import STYLE

Side = Literal["left", "right", "above", "below"]
WordsAt = Literal["middle", "low", "high"]
_ON = Layer.DIMENSION
_OUTSIDE_MM = 2 * STYLE.arrow_mm
"""Length of the tails of arrows that point inwards from outside."""
_FURTHER_MM = (0.0, 3.0, 6.0, 10.0, 14.0, 18.0, 24.0, 30.0, 40.0)
"""How much further out words may stand on a prolonged dimension line."""

_TOUCH_MM = 0.01
"""Dimensions in a chain meet at their arrows."""
_TURN_COST_MM = 2.5
"""A less wanted direction counts as that much more length."""
_AT_ARCS_END, _ON_ARC_DEG = 0.8, 25.0
"""What it costs that a leader meets a quarter of a circle further than this from its middle: it seems to mean the line there."""
_THROUGH_PART = 0.12
"""For every millimetre that the leader of a detail's letter goes through the part: it seems to mean where it comes out."""
_OTHER_COST_MM = 15.0
"""So does the same feature on the other side."""


class NoRoomError(SheetError):
    """A dimension finds no place about its view at this scale."""


@dataclass(frozen=True, slots=True)
class Span:
    """A distance to dimension: two points in paper mm, and where the rows of dimension lines begin."""

    measure: Measure
    side: Side
    start: Point
    end: Point
    edge: float
    """Paper coordinate from which the first row is counted."""

    @property
    def holds_words(self) -> bool:
        """Whether its words fit between its arrows."""
        along = 1 if self.side in {"left", "right"} else 0
        room = abs(self.end[along] - self.start[along]) - 2 * STYLE.text_clear_mm
        return text_width_mm(self.measure.words, STYLE.text_mm) <= room

    def mirrored(self) -> "Span":
        """The same on the other side of the axis, of what is round: from the left to the right."""
        (ax, ay), (bx, by) = self.start, self.end
        return Span(self.measure, "right", (-ax, ay), (-bx, by), -self.edge)


def place_span(
    canvas: Canvas,
    span: Span,
    scale: Scale,
    *,
    rows: Iterable[int],
    words: tuple[WordsAt, ...],
    else_at: tuple[Span, tuple[WordsAt, ...]] | None = None,
) -> Dimension:
    """Put a linear dimension where it has room: in its row, else further along its line, else in the next row.

    ``else_at`` is the same distance at another side, and where words may stand there, which is rather taken than another row.
    """
    first, *more = rows
    there = [(else_at[0], row, else_at[1]) for row in range(3)] if else_at else []
    places = ((span, first, words), *there, *((span, row, words) for row in more))
    tries = (
        _linear(each, scale, row, at, further)
        for each, row, where in places
        for further, at in product(_FURTHER_MM, where)
        if not further or at != "middle"
    )
    best = canvas.best_of(
        (canvas.trouble_of_dimension(dimension), dimension)
        for dimension in tries
        if dimension
        and canvas.has_room(dimension.words_box, dimension.lines)
        and not _lies_on_another(canvas, dimension)
    )
    if best is None:
        raise NoRoomError(f"no room for {span.measure.name} at {scale.words}")
    canvas.add_dimension(best)
    return best


def _lies_on_another(canvas: Canvas, dimension: Dimension) -> bool:
    """Whether its arrows would stand on another dimension's line: one could not tell which belongs to which."""
    along = 1 if dimension.kind == "up" else 0
    low, high = sorted((dimension.start[along], dimension.end[along]))
    for other in canvas.dimensions:
        apart = abs(other.line_at[1 - along] - dimension.line_at[1 - along])
        if other.kind == dimension.kind and apart < STYLE.apart_mm:
            near, far = sorted((other.start[along], other.end[along]))
            if min(high, far) - max(low, near) > _TOUCH_MM:
                return True
    return False


def _linear(span: Span, scale: Scale, row: int, words_at: WordsAt, further: float) -> Dimension | None:
    """The dimension in one row, its words at one place; None where they would not fit between the arrows."""
    upright = span.side in {"left", "right"}
    outward = 1 if span.side in {"right", "above"} else -1
    level = span.edge + outward * (STYLE.first_row_mm + row * STYLE.row_pitch_mm)
    along, across = (1, 0) if upright else (0, 1)
    low, high = sorted((span.start, span.end), key=lambda point: point[along])
    a, b = low[along], high[along]
    width = text_width_mm(span.measure.words, STYLE.text_mm)
    inside = b - a >= 2 * STYLE.arrow_mm + 1
    if words_at == "middle" and not span.holds_words:
        return None
    beyond = further + (1.0 if inside else STYLE.arrow_mm + 1.5)
    text_low = {"middle": (a + b - width) / 2, "low": a - beyond - width, "high": b + beyond}[words_at]
    reach_low, reach_high = min(a, text_low), max(b, text_low + width)
    if not inside:
        reach_low, reach_high = min(reach_low, a - _OUTSIDE_MM), max(reach_high, b + _OUTSIDE_MM)

    def point(s: float, t: float) -> Point:
        return (t, s) if upright else (s, t)

    extensions = (_extension(end, end[across], level, point, along) for end in (low, high))
    turn = 90 if upright else 0
    heads = ((a, turn + 180), (b, turn)) if inside else ((a, turn), (b, turn + 180))
    above = STYLE.framed_gap_mm if span.measure.exact else STYLE.text_gap_mm
    text_at = point(text_low, level - above if upright else level + above)
    return Dimension(
        span.measure,
        "up" if upright else "across",
        scale,
        low,
        high,
        point((a + b) / 2, level),
        (Line(point(reach_low, level), point(reach_high, level), _ON), *extensions),
        tuple(Arrow(point(at, level), direction, _ON) for at, direction in heads),
        Text(text_at, span.measure.words, STYLE.text_mm, turned=upright, layer=_ON),
    )


def _extension(end: Point, across: float, level: float, point: Callable[[float, float], Point], along: int) -> Line:
    """The extension line from a measured point to a little past the dimension line."""
    outward = 1 if level > across else -1
    start = point(end[along], across + outward * STYLE.extension_gap_mm)
    return Line(start, point(end[along], level + outward * STYLE.extension_over_mm), _ON)


@dataclass(frozen=True, slots=True)
class Pointer:
    """A radius or a note on a leader: the measured points, and the directions and lengths that may be tried."""

    measure: Measure
    kind: Kind
    start: Point
    """Centre of the arc, or again the tip for a note."""
    radius: float
    angles_deg: tuple[float, ...]
    """Directions from the tip in which the leader may leave."""
    lengths: tuple[float, ...]
    inner: bool = False
    """An inner radius is pointed at through its centre."""
    is_turned: bool = False
    """Words stand back over the leader, where they must not reach far aside."""

    def meets_arcs_end(self, angle_deg: float) -> bool:
        """Whether a leader to an outer corner's arc ends so near where that goes over into a straight line."""
        is_outer = self.kind == "radius" and not self.inner and not self.is_turned
        return is_outer and abs(angle_deg % 90 - 45) > _ON_ARC_DEG

    def mirrored(self) -> "Pointer":
        """The same feature on the other side of the axis."""
        turned = tuple(180 - angle for angle in self.angles_deg)
        start = (-self.start[0], self.start[1])
        return Pointer(self.measure, self.kind, start, self.radius, turned, self.lengths, self.inner, self.is_turned)


def place_pointer(canvas: Canvas, scale: Scale, *pointers: Pointer) -> Dimension:
    """Put a leader with its words where there is room, nearer before farther; pointers are equal places on the part."""
    which, lengths, angles = _pointer_tries(tuple((pointer.lengths, pointer.angles_deg) for pointer in pointers))
    # Equal places have the same words.
    words = text_width_mm(pointers[0].measure.words, STYLE.text_mm)
    left, low = _words_at(pointers, which, lengths, angles, words)
    best = canvas.best_of(
        (
            canvas.trouble_of_leader(dimension.text.box, dimension.lines, is_sign=False)
            + _AT_ARCS_END * pointers[n].meets_arcs_end(angle),
            dimension,
        )
        for n, angle, dimension in (
            (n, angle, _pointed(pointers[n], scale, angle, length))
            for number in perhaps_free(canvas, left, low, words, TEXT_BOX * STYLE.text_mm)
            for n, length, angle in ((int(which[number]), float(lengths[number]), float(angles[number])),)
        )
        if canvas.has_room_for(dimension.text, dimension.lines)
    )
    if best is None:
        raise NoRoomError(f"no room for {pointers[0].measure.name} at {scale.words}")
    canvas.add_dimension(best)
    return best


@lru_cache(maxsize=256)
def _pointer_tries(
    pointers: tuple[tuple[tuple[float, ...], tuple[float, ...]], ...],
) -> tuple[NDArray[np.intp], Numbers, Numbers]:
    """Which of some pointers, given by their lengths and directions, how long and which way: each leader, the most wanted first."""
    tries = sorted(
        (length + _TURN_COST_MM * i + _OTHER_COST_MM * n, n, length, angle)
        for n, (lengths, angles) in enumerate(pointers)
        for length, (i, angle) in product(lengths, enumerate(angles))
    )
    _, which, lengths, angles = zip(*tries, strict=True)
    return np.array(which), np.array(lengths, dtype=float), np.array(angles, dtype=float)


def _words_at(
    pointers: tuple[Pointer, ...], which: NDArray[np.intp], lengths: Numbers, angles: Numbers, width: float
) -> tuple[Numbers, Numbers]:
    """Left and lower ends of the words of such leaders, whose lines are those of ``_pointed``."""
    each = np.array([(*p.start, -p.radius if p.inner else p.radius, p.is_turned) for p in pointers])[which]
    across, up = np.cos(np.radians(angles)), np.sin(np.radians(angles))
    x, y = each[:, 0] + (each[:, 2] + lengths) * across, each[:, 1] + (each[:, 2] + lengths) * up
    left = np.where((across > 0) != (each[:, 3] > 0), x + 1, x - 1 - width)
    return left, y + STYLE.text_gap_mm - TEXT_BELOW * STYLE.text_mm


def _pointed(pointer: Pointer, scale: Scale, angle: float, length: float) -> Dimension:
    """A leader from the tip outwards, then level under the words."""
    c, s = cos(radians(angle)), sin(radians(angle))
    # From outside the leader meets an arc on the near side, from inside (through the centre) on the far side.
    side = -1 if pointer.inner else 1
    tip = (pointer.start[0] + side * pointer.radius * c, pointer.start[1] + side * pointer.radius * s)
    elbow = (tip[0] + length * c, tip[1] + length * s)
    width = text_width_mm(pointer.measure.words, STYLE.text_mm)
    rightwards = (c > 0) != pointer.is_turned
    text_left = elbow[0] + 1 if rightwards else elbow[0] - 1 - width
    shoulder_end = elbow[0] + width + 1 if rightwards else elbow[0] - width - 1
    return Dimension(
        pointer.measure,
        pointer.kind,
        scale,
        pointer.start,
        tip,
        elbow,
        (Line(tip, elbow, _ON), Line(elbow, (shoulder_end, elbow[1]), _ON)),
        (Arrow(tip, degrees(atan2(-s, -c)), _ON),),
        Text((text_left, elbow[1] + STYLE.text_gap_mm), pointer.measure.words, STYLE.text_mm, layer=_ON),
    )


def place_letter(canvas: Canvas, letter: str, *, centre: Point, radius: float, angles_deg: tuple[float, ...]) -> None:
    """Name a round window of the section: a thin circle, a thin leader, and a letter where there is room."""
    best = canvas.best_of(
        # A letter close to a figure would be read as part of it.
        (
            trouble
            + sum(text.box.grown(STYLE.letter_clear_mm).meets(box) for box in canvas.boxes)
            + (not is_free(text.box.grown(STYLE.letter_clear_mm), canvas.lines)),
            (trouble, text, line),
        )
        for text, line in _letters(letter, centre, radius, angles_deg)
        if canvas.has_room_for(text, (line,))
        for trouble in (
            canvas.trouble_of_leader(text.box, (line,), is_sign=True)
            + _THROUGH_PART * sum(length_within(solid, line.start, line.end) for solid in canvas.part),
        )
    )
    if best is None:
        raise NoRoomError(f"no room for the letter {letter}")
    trouble, text, line = best
    # What comes later keeps as far off as from a sign: a line beside a letter would be read as its leader.
    ring = Arc(centre, radius, 0, 360, Layer.THIN)
    canvas.add(text.box, (text,), (ring,), leader=(line,), is_sign=True, trouble=trouble)


def _letters(letter: str, centre: Point, radius: float, angles_deg: tuple[float, ...]) -> Iterator[tuple[Text, Line]]:
    """Where the letter could stand, and the thin leader to it."""
    for length, angle in product((3, 4.5, 6, 9, 12, 16, 20, 26, 32, 40, 50, 60, 75, 90), angles_deg):
        c, s = cos(radians(angle)), sin(radians(angle))
        near = (centre[0] + radius * c, centre[1] + radius * s)
        far = (near[0] + length * c, near[1] + length * s)
        aside: float = 0.8 if c >= 0 else -0.8
        anchor: Anchor = "left" if c >= 0 else "right"
        yield Text((far[0] + aside, far[1] - 1), letter, STYLE.large_mm, anchor), Line(near, far, Layer.THIN)
