"""Finding room: what already stands about a view, whether a new text or line may stand there too, and how well it would."""

from collections.abc import Iterable
from dataclasses import dataclass, field, fields
from math import inf
from typing import TypeVar

from geometry.drawing.meeting import (
    Kept,
    Rival,
    Segment,
    cost_among,
    crossed_by,
    enters,
    extent,
    head_at,
    head_of,
    is_free,
    is_met,
    length_within,
    passed_by,
    price_of,
    rival,
)
from geometry.drawing.model import Box, Dimension, Layer, Line, Point, Shape, Text
from geometry.drawing.signs import frame_about
from geometry.drawing.style import STYLE

Candidate = TypeVar("Candidate")
PATIENT, MEASURED, HASTY = 60, 12, 0
"""How many places with room are looked at for one that troubles nothing; the first will do to see whether there is room at all."""
_ORDER_COST = 0.01
"""What a place costs for every better wanted one that has room too."""
FINE = 0.5
"""What costs less troubles nobody."""
_ACROSS, _ACROSS_EXTENSION, _ACROSS_LEADER, _INTO_CIRCLE = 3.0, 1.0, 4.0, 3.0
"""A leader had better cross no dimension line, no window of a detail and least of all a leader; an extension line is less
confusing."""
BESIDE, _BESIDE_EDGE = 4.0, 3.0
"""What runs on or close beside another line, or level with an edge of the part, says something that is wrong."""
_NEAR_SIGN, _NEAR_TEXT = 2.0, 1.0
_JOINED, _JOINED_MM, _CONTINUED_MM = 2.0, 0.7, 1.5
"""What begins so near a line of something else, or so little beyond its end, looks like the rest of it."""
_NEAR_FOOT, _NEAR_FOOT_MM = 2.0, 2.5
"""What it costs that the triangle of a datum stands so near a line of something else that it seems to stand on that."""
_ACROSS_HEAD = 0.8
"""What it costs that a line crosses an arrow, besides that it crosses the leader which that belongs to."""
_THROUGH, _LEAST_THROUGH_MM = 0.15, 2.0
"""For every millimetre of a leader within the part, beyond a few about its own tip."""
_PROLONGED_MM = 6.0
"""So far beyond an edge of the part a line that is level with it looks like an extension line."""
_LEVEL_MM, _LEAST_LEVEL_MM = 0.8, 4.0
_SAME_MM = 0.01


@dataclass(slots=True)
class Canvas:
    """One view's surroundings in paper mm, filled as things are placed; used only while a sheet is laid out."""

    right_limit: float = inf
    """How far to the right words may go."""
    patience: int = PATIENT
    """How many places with room are looked at for one that troubles nothing."""
    solids: list[Box] = field(default_factory=list)
    """Where the part itself is: no text may stand there."""
    part: list[Box] = field(default_factory=list)
    """The same where a leader had better not go either."""
    boxes: list[Box] = field(default_factory=list)
    """What the texts cover, with the space kept to other texts."""
    near_boxes: list[Kept] = field(default_factory=list)
    """The same with the smaller space kept to lines."""
    wide_boxes: list[Kept] = field(default_factory=list)
    """The same with the space that lines had better keep."""
    lines: list[Segment] = field(default_factory=list)
    rivals: list[Rival] = field(default_factory=list)
    """What a leader had better not cross or run beside."""
    leaders: list[Rival] = field(default_factory=list)
    """Of these the leaders, which a dimension had better not."""
    ends: list[Point] = field(default_factory=list)
    """Ends of dimension lines and tips of leaders: another line through one, or just past it, seems to belong to it."""
    circles: list[tuple[Point, float]] = field(default_factory=list)
    """Windows of details: a leader had better stay out of them."""
    trouble: float = 0.0
    """What could not be helped."""
    moved: frozenset[str] = frozenset()
    """What stands at another view instead, by the names of sizes and tolerances."""
    dimensions: list[Dimension] = field(default_factory=list)
    texts: list[Text] = field(default_factory=list)
    shapes: list[Shape] = field(default_factory=list)

    def add_edges(self, shapes: Iterable[Shape], factor: float) -> None:
        """Level and upright edges of the part: a leader in line with one looks like its extension line."""
        for shape in shapes:
            if isinstance(shape, Line) and shape.layer is Layer.VISIBLE:
                (ax, ay), (bx, by) = sorted((shape.start, shape.end))
                if ax == bx or ay == by:
                    x, y = (_PROLONGED_MM, 0.0) if ay == by else (0.0, _PROLONGED_MM)
                    ends = ((ax * factor - x, ay * factor - y), (bx * factor + x, by * factor + y))
                    self.rivals.append(
                        rival(ends, across=0.0, beside=_BESIDE_EDGE, near=_LEVEL_MM, least=_LEAST_LEVEL_MM)
                    )

    def has_room_for(self, text: Text, lines: Iterable[Line]) -> bool:
        """Whether a text with its lines meets no other text, no line and not the part."""
        return self.has_room(text.box, lines)

    def has_room(self, box: Box, lines: Iterable[Line]) -> bool:
        """Whether a box of words or signs, with its lines, meets no other, no line and not the part."""
        if box.right > self.right_limit:
            return False
        apart = box.grown(STYLE.clear_mm)
        left, bottom, right, top = apart.left, apart.bottom, apart.right, apart.top
        for others in (self.boxes, self.solids):
            for other in others:
                if left < other.right and other.left < right and bottom < other.top and other.bottom < top:
                    return False
        for line in lines:
            if price_of((line.start, line.end), self.near_boxes):
                return False
        return is_free(box.grown(STYLE.line_clear_mm), self.lines)

    def trouble_of_leader(
        self, box: Box, lines: Iterable[Line], *, is_sign: bool, apart_from: Line | None = None
    ) -> float:
        """What it costs to put words or a sign on a leader here: lines crossed or run along, the part gone through."""
        if not self.patience:
            return 0.0
        own = (*apart_from.start, *apart_from.end) if apart_from else ()
        rivals = [r for r in self.rivals if r[4:6] != own[:2]] if own else self.rivals
        cost = 0.0
        *_, last = lines = tuple(lines)
        for line in lines:
            a, b = line.start, line.end
            cost += sum(cost_among((a, b), rivals))
            cost += _INTO_CIRCLE * sum(enters(a, b, centre, radius) for centre, radius in self.circles)
            cost += _JOINED * passed_by(a, b, self.ends, _JOINED_MM)
            inside = sum(length_within(solid, a, b) for solid in self.part)
            cost += _THROUGH * max(0.0, inside - _LEAST_THROUGH_MM)
            # A leader's shelf, or where the leader of a letter ends.
            ends = (a, b) if a[1] == b[1] else (b,) if line is last else ()
            cost += _JOINED * sum(is_met(end, rivals, _JOINED_MM, beyond=_CONTINUED_MM) for end in ends)
        cost += _ACROSS_HEAD * crossed_by(head_of(lines[0]), self.lines, beyond=STYLE.arrow_width_mm / 2)
        return cost + self._nearness(box, lines, is_sign=is_sign)

    def trouble_of_datum(
        self,
        frame: Box,
        lines: Iterable[Line],
        foot: Point,
        *,
        beyond: Iterable[Line] = (),
        apart_from: tuple[Line, ...] = (),
    ) -> float:
        """What it costs to put a datum here: lines crossed, others so near its foot that it seems to stand on one of them.

        Along its own face's line it runs with good reason; ``beyond`` prolongs that, and had better have none beside it.
        ``apart_from`` are the dimension and extension lines that it may stand on.
        """
        if not self.patience:
            return 0.0
        own = [line.start for line in apart_from]
        rivals = [r for r in self.rivals if r[4:6] not in own]
        cost = sum(cost_among((line.start, line.end), rivals)[0] for line in (*lines, *beyond))
        own_ends = {end for line in apart_from for end in (line.start, line.end)}
        near = [end for end in self.ends if end not in own_ends]
        cost += _JOINED * sum(passed_by(line.start, line.end, near, _JOINED_MM) for line in (*lines, *beyond))
        for line in beyond:
            (ax, y), (bx, _) = line.start, line.end
            others = [r for r in rivals if abs(r.y - y) > _SAME_MM or r.along_x == 0]
            cost += cost_among(((ax, y), (bx, y)), others)[1]
        if apart_from:
            others = [r for r in rivals if r.across]
            cost += _NEAR_FOOT * is_met(foot, others, _NEAR_FOOT_MM, beyond=0.0)
        return cost + self._nearness(frame, (), is_sign=True)

    def trouble_of_dimension(self, dimension: Dimension) -> float:
        """What it costs to put a dimension here: leaders crossed or run along, its own line first, and words that crowd it."""
        if not self.patience:
            return 0.0
        first, *others = [(line.start, line.end) for line in dimension.lines]
        cost = sum(cost_among(first, self.leaders))
        for line in others:
            cost += sum(cost_among(line, self.leaders)) / _ACROSS
        for arrow in dimension.arrows:
            cost += _ACROSS_HEAD * crossed_by(head_at(arrow), self.lines, beyond=0.0)
        return cost + self._nearness(dimension.words_box, dimension.lines, is_sign=False)

    def _nearness(self, box: Box, lines: Iterable[Line], *, is_sign: bool) -> float:
        """What it costs that lines come close to words or signs."""
        *sides, price = _wide(box, is_sign=is_sign)
        cost = 0.0 if is_free(Box(*sides), self.lines) else price
        return cost + sum(price_of((line.start, line.end), self.wide_boxes) for line in lines)

    def best_of(self, candidates: Iterable[tuple[float, Candidate]]) -> Candidate | None:
        """Of what has room, the first that troubles nothing; else, of the first few, that which troubles least."""
        best: tuple[float, Candidate] | None = None
        for number, (trouble, candidate) in enumerate(candidates):
            cost = trouble + number * _ORDER_COST
            if best is None or cost < best[0]:
                best = cost, candidate
            if trouble < FINE or number >= self.patience:
                break
        return best[1] if best else None

    def add_dimension(self, dimension: Dimension) -> None:
        """Place a dimension."""
        if dimension.kind in {"radius", "note"}:
            self.trouble += self.trouble_of_leader(dimension.text.box, dimension.lines, is_sign=False)
            self._add_leader(dimension.lines)
        else:
            self.trouble += self.trouble_of_dimension(dimension)
            first, *others = [(line.start, line.end) for line in dimension.lines]
            # The outer ends of extension lines too: a shelf through them would join them.
            self.ends += [*first, *(end for _, end in others)]
            self.rivals.append(rival(first, across=_ACROSS, beside=BESIDE))
            self.rivals += [rival(line, across=_ACROSS_EXTENSION, beside=BESIDE) for line in others]
        self.dimensions.append(dimension)
        self._occupy(dimension.words_box, dimension.lines, is_sign=False)
        if dimension.measure.exact:
            self.shapes += frame_about(dimension.text)

    def add_text(self, text: Text, *shapes: Shape) -> None:
        """Place a text with the lines that belong to it."""
        self.add(text.box, (text,), shapes, is_sign=False)

    def add(
        self,
        box: Box,
        texts: Iterable[Text],
        shapes: Iterable[Shape],
        *,
        leader: tuple[Line, ...] = (),
        apart_from: Line | None = None,
        is_sign: bool = True,
        trouble: float | None = None,
    ) -> None:
        """Place texts and lines that keep others out of a box, and the leader that holds them, its trouble known or not."""
        drawn = (*leader, *shapes)
        self.texts += texts
        self.shapes += drawn
        if trouble is not None:
            self.trouble += trouble
        elif leader:
            self.trouble += self.trouble_of_leader(box, leader, is_sign=is_sign, apart_from=apart_from)
        self._add_leader(leader)
        self._occupy(box, [shape for shape in drawn if isinstance(shape, Line)], is_sign=is_sign)

    def _add_leader(self, lines: tuple[Line, ...]) -> None:
        added = [rival((line.start, line.end), across=_ACROSS_LEADER, beside=BESIDE) for line in lines]
        self.rivals += added
        self.leaders += added
        self.ends += [line.start for line in lines[:1]]

    def _occupy(self, box: Box, lines: Iterable[Line], *, is_sign: bool) -> None:
        self.boxes.append(box.grown(STYLE.clear_mm))
        self.near_boxes.append(_kept(box, STYLE.line_clear_mm, 1.0))
        self.wide_boxes.append(_wide(box, is_sign=is_sign))
        self.lines += [(line.start, line.end) for line in lines]

    def copied(self) -> "Canvas":
        """The same surroundings, to be filled further in another way."""
        other = Canvas()
        other.become(self)
        return other

    def become(self, other: "Canvas") -> None:
        """Take over what was placed on a copy."""
        for name in _FIELDS:
            kept = getattr(other, name)
            setattr(self, name, list(kept) if isinstance(kept, list) else kept)

    @property
    def box(self) -> Box:
        """Everything that was placed, and the part."""
        words = [*(text.box for text in self.texts), *(dimension.text.box for dimension in self.dimensions)]
        boxes = [*self.solids, *words]
        points = [point for line in self.lines for point in line] + [p for shape in self.shapes for p in extent(shape)]
        xs, ys = [x for x, _ in points], [y for _, y in points]
        return Box(
            min([box.left for box in boxes] + xs),
            min([box.bottom for box in boxes] + ys),
            max([box.right for box in boxes] + xs),
            max([box.top for box in boxes] + ys),
        )


_FIELDS = tuple(each.name for each in fields(Canvas))


def _wide(box: Box, *, is_sign: bool) -> Kept:
    """The rectangle that lines had better keep out of."""
    return _kept(box, STYLE.sign_clear_mm, _NEAR_SIGN) if is_sign else _kept(box, STYLE.text_clear_mm, _NEAR_TEXT)


def _kept(box: Box, around: float, price: float) -> Kept:
    return box.left - around, box.bottom - around, box.right + around, box.top + around, price
