"""The border with grid references about a large sheet's frame (ISO 5457), by which people speak of a place on it."""

from collections.abc import Iterator

from geometry.drawing.meeting import rectangle
from geometry.drawing.model import Box, Layer, Line, Point, Text
from geometry.drawing.style import STYLE

_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""Without I and O, which are read as figures."""


def grid_references(frame: Box, width: float, height: float) -> tuple[tuple[Line, ...], tuple[Text, ...]]:
    """Border, marks between its fields, and their names, for a frame on paper of a width and a height, all in mm.

    Fields are 50 mm long from the paper's middle outwards; those in the corners take the differences. Numerals go from left to
    right, letters from the top down, on all four sides.
    """
    border, half = frame.grown(STYLE.grid_mm), STYLE.grid_mm / 2
    lines, texts = list(rectangle(border, Layer.FRAME)), []
    columns = _fields(frame.left, frame.right, width / 2)
    for number, (left, right) in enumerate(columns, 1):
        for level, outside in ((frame.top, border.top), (frame.bottom, border.bottom)):
            texts.append(_name(((left + right) / 2, (level + outside) / 2), str(number)))
            # In the middle there is the centring mark.
            if number > 1 and left != width / 2:
                lines.append(Line((left, level), (left, outside), Layer.FRAME))
    # From the top down.
    rows = [
        (height - far, height - near) for near, far in _fields(height - frame.top, height - frame.bottom, height / 2)
    ]
    for letter, (low, high) in zip(_LETTERS, rows, strict=False):
        for level in (frame.left - half, frame.right + half):
            texts.append(_name((level, (low + high) / 2), letter))
            if low > frame.bottom and low != height / 2:
                lines.append(Line((level - half, low), (level + half, low), Layer.FRAME))
    return tuple(lines), tuple(texts)


def _fields(start: float, end: float, middle: float) -> Iterator[tuple[float, float]]:
    """The fields of one side, from where the frame begins to where it ends; as many on both sides of the middle."""
    step = STYLE.grid_step_mm
    half = round(max(middle - start, end - middle) / step)
    for i in range(-half, half):
        yield start if i == -half else middle + i * step, end if i == half - 1 else middle + (i + 1) * step


def _name(middle: Point, words: str) -> Text:
    """A numeral or letter in the middle of its field, with what letters may take above and below."""
    return Text((middle[0], middle[1] - 0.39 * STYLE.large_mm), words, STYLE.large_mm, "centre", layer=Layer.FRAME)
