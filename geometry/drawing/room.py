"""Which of many places about a view may have room, looked at many at once: what is dear is then asked of few."""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from geometry.drawing.canvas import Canvas
from geometry.drawing.style import STYLE

Numbers = NDArray[np.float64]
_SLACK_MM = 1e-6
"""What is as near as this may have room: the canvas itself decides."""
_AT_ONCE = 256
_NOWHERE = (np.inf, np.inf, -np.inf, -np.inf)


def perhaps_free(canvas: Canvas, left: Numbers, bottom: Numbers, width: float, height: float) -> Iterator[int]:
    """The numbers of those rectangles of one size, by their lower left corners, that meet no words, no sign and not the part."""
    boxes = (*canvas.boxes, *canvas.solids)
    taken = np.array([(box.left, box.bottom, box.right, box.top) for box in boxes] or [_NOWHERE]).T
    apart = STYLE.clear_mm - _SLACK_MM
    for first in range(0, len(left), _AT_ONCE):
        x, y = left[first : first + _AT_ONCE], bottom[first : first + _AT_ONCE]
        far, high = x + (width + apart), y + (height + apart)
        meets = ((x - apart)[:, None] < taken[2]) & (taken[0] < far[:, None])
        meets &= ((y - apart)[:, None] < taken[3]) & (taken[1] < high[:, None])
        yield from (first + np.flatnonzero(~meets.any(axis=1) & (x + width <= canvas.right_limit + _SLACK_MM))).tolist()
