"""Where on a sheet a view still has room: the sheet as small squares, of which those are taken that something reaches into."""

from collections.abc import Iterator
from itertools import chain
from math import ceil, hypot

import numpy as np
from numpy.typing import NDArray

from geometry.drawing.canvas import Canvas
from geometry.drawing.meeting import extent
from geometry.drawing.model import Box, Line, Point

_SQUARE_MM = 1.5


class FreeSpace:
    """An area of a sheet in paper mm, filled as views are placed; a view may stand in the empty corner of another's."""

    def __init__(self, area: Box) -> None:
        self.area = area
        rows, columns = (ceil(length / _SQUARE_MM) for length in (area.height, area.width))
        self.taken: NDArray[np.bool_] = np.zeros((rows, columns), dtype=np.bool_)

    def take_all(self, edges: NDArray[np.float64], at: Point, around_mm: float) -> None:
        """Keep others out of rectangles, given by their left, bottom, right and top, and a border about each of them."""
        x, y = at[0] - self.area.left, at[1] - self.area.bottom
        border = np.array([x - around_mm, y - around_mm, x + around_mm, y + around_mm])
        squares = (edges + border) / _SQUARE_MM
        squares = np.maximum(0.0, np.concatenate((np.floor(squares[:, :2]), np.ceil(squares[:, 2:])), axis=1))
        for left, low, right, high in squares.astype(int).tolist():
            self.taken[low:high, left:right] = True

    def take(self, box: Box, at: Point = (0.0, 0.0), around_mm: float = 0.0) -> None:
        """Keep others out of a rectangle."""
        x, y = at[0] - self.area.left, at[1] - self.area.bottom
        left, right = (box.left + x - around_mm) / _SQUARE_MM, (box.right + x + around_mm) / _SQUARE_MM
        low, high = (box.bottom + y - around_mm) / _SQUARE_MM, (box.top + y + around_mm) / _SQUARE_MM
        self.taken[max(0, int(low)) : max(0, ceil(high)), max(0, int(left)) : max(0, ceil(right))] = True

    def place_for(self, box: Box) -> Point | None:
        """An origin at which a box meets nothing, from the top right; None where there is none."""
        rows, columns = ceil(box.height / _SQUARE_MM) + 1, ceil(box.width / _SQUARE_MM) + 1
        if rows > self.taken.shape[0] or columns > self.taken.shape[1]:
            return None
        sums = np.zeros((self.taken.shape[0] + 1, self.taken.shape[1] + 1), dtype=np.int64)
        sums[1:, 1:] = self.taken.cumsum(axis=0).cumsum(axis=1)
        inside = sums[rows:, columns:] - sums[:-rows, columns:] - sums[rows:, :-columns] + sums[:-rows, :-columns]
        free = np.argwhere(inside[::-1, ::-1] == 0)
        if not len(free):
            return None
        row, column = inside.shape[0] - 1 - free[0][0], inside.shape[1] - 1 - free[0][1]
        left, bottom = self.area.left + column * _SQUARE_MM, self.area.bottom + row * _SQUARE_MM
        # Never beyond the area, which need not end with a whole square.
        x, y = min(left, self.area.right - box.width), min(bottom, self.area.top - box.height)
        return float(x - box.left), float(y - box.bottom)


def covered_by(canvas: Canvas) -> Iterator[Box]:
    """Rectangles about everything of a view: the part, words, signs and lines."""
    yield from canvas.solids
    for text in chain(canvas.texts, (dimension.text for dimension in canvas.dimensions)):
        yield text.box
    for a, b in canvas.lines:
        # A slanting line is taken in short pieces, so that its rectangle does not take a whole corner.
        pieces = 1 if a[0] == b[0] or a[1] == b[1] else ceil(hypot(b[0] - a[0], b[1] - a[1]) / (2 * _SQUARE_MM))
        for i in range(pieces):
            ends = [(a[0] + (b[0] - a[0]) * t / pieces, a[1] + (b[1] - a[1]) * t / pieces) for t in (i, i + 1)]
            yield _about(ends)
    for shape in canvas.shapes:
        # A line of a sign or a leader is among the canvas's lines already.
        if not isinstance(shape, Line):
            yield _about(extent(shape))


def _about(points: tuple[Point, ...] | list[Point]) -> Box:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs), min(ys), max(xs), max(ys))
