"""Signs of drawing practice as lines and words: tolerance frames, datum letters, surface texture."""

from dataclasses import dataclass, replace

from geometry.drawing.facts import CRITICAL_MARK, FigureUnit
from geometry.drawing.figures import in_figures, tolerance_words
from geometry.drawing.lettering import text_width_mm
from geometry.drawing.meeting import rectangle
from geometry.drawing.model import Arc, Arrow, Box, Layer, Line, Point, Shape, Text, shifted
from geometry.drawing.style import STYLE
from geometry.geometrical import Characteristic, GeometricalTolerance

_ON = Layer.TOLERANCE
_FLAG_GAP_MM = 0.8
_ABOVE_BAR_MM = 0.5
FRAME_MM = 2 * STYLE.text_mm
"""Height of a tolerance frame, twice that of its lettering (ISO 1101)."""


@dataclass(frozen=True, slots=True)
class Sign:
    """Lines and words with their lower left corner at the origin."""

    width: float
    height: float
    shapes: tuple[Shape, ...]
    texts: tuple[Text, ...]
    handle: float
    """Height at which a leader meets the sign's side; 0 where it stands on the leader."""
    flag: Text | None = None
    """Words before the sign, within its width; they stand after it where a leader comes from the left."""

    def box_at(self, corner: Point) -> Box:
        """What the sign covers at a place."""
        return Box(corner[0], corner[1], corner[0] + self.width, corner[1] + self.height)

    def at(self, corner: Point, *, from_left: bool = False) -> tuple[Box, tuple[Shape, ...], tuple[Text, ...]]:
        """The sign at a place: what it covers, its lines, its words; a leader from the left must reach the sign itself."""
        moved, place = self.box_at(corner), corner
        flags: tuple[Text, ...] = ()
        if self.flag:
            room = self.flag.width_mm + _FLAG_GAP_MM
            place = (corner[0] if from_left else corner[0] + room, corner[1])
            flag_x = moved.right - self.flag.width_mm if from_left else corner[0]
            flags = (self.flag.moved((flag_x, corner[1])),)
        return (
            moved,
            tuple(shifted(shape, place) for shape in self.shapes),
            (*(text.moved(place) for text in self.texts), *flags),
        )


def tolerance_frame(
    tolerance: GeometricalTolerance, unit: FigureUnit, *, critical: tuple[str, ...] = (), is_shared: bool = False
) -> Sign:
    """A frame with characteristic, value and datum; before it, outside, the mark of what an estimate depends on.

    Inside, a sign before the value would be read as one of the standard's own modifiers; ``is_shared`` says that several
    features lie in one combined zone, CZ (ISO 1101, from memory).
    """
    zone = "⌀" if tolerance.is_round else ""
    value = f"{zone}{in_figures(tolerance.value_mm, unit, words=tolerance_words)}{' CZ' if is_shared else ''}"
    h, words_width = FRAME_MM, text_width_mm(value, STYLE.text_mm)
    first, second = h, h + words_width + 2
    width = second + h
    lines = [Line((x, 0), (x, h), _ON) for x in (0, first, second, width)]
    lines += [Line((0, y), (width, y), _ON) for y in (0, h)]
    baseline = (h - STYLE.text_mm) / 2
    texts = (
        Text((first + 1, baseline), value, STYLE.text_mm, layer=_ON),
        Text((second + h / 2, baseline), tolerance.datum, STYLE.text_mm, "centre", layer=_ON),
    )
    flag = Text((0, baseline), CRITICAL_MARK, STYLE.text_mm, layer=_ON) if tolerance.name in critical else None
    room = flag.width_mm + _FLAG_GAP_MM if flag else 0.0
    return Sign(width + room, h, (*lines, *_characteristic(tolerance.characteristic)), texts, h / 2, flag)


def _characteristic(kind: Characteristic) -> tuple[Shape, ...]:
    """The sign of a characteristic within the frame's first cell."""
    m = FRAME_MM / 2
    if kind == "parallelism":
        return tuple(Line((m - 1.3 + x, m - 1.5), (m - 0.1 + x, m + 1.5), _ON) for x in (0, 1.4))
    if kind == "symmetry":
        return tuple(Line((m - half, m + y), (m + half, m + y), _ON) for half, y in ((0.9, 0.9), (1.7, 0), (0.9, -0.9)))
    if kind == "position":
        cross = (Line((m - 1.7, m), (m + 1.7, m), _ON), Line((m, m - 1.7), (m, m + 1.7), _ON))
        return (*cross, Arc((m, m), 1.1, 0, 360, _ON))
    return (Line((m - 1.4, m - 1.4), (m + 1.4, m + 1.4), _ON), Arrow((m + 1.4, m + 1.4), 45, _ON))


def texture(roughness_um: str, h: float = STYLE.text_mm) -> Sign:
    """The sign for a surface from which material is removed, with its greatest Ra (ISO 21920-1), lettered ``h`` mm high."""
    words = f"Ra {roughness_um}"
    low, left, right = 0.0, -1.0, 2 * h * 0.5774
    width = text_width_mm(words, h)
    lines = (
        Line((0, low), (left, 1.4 * h * 0.75), _ON),
        Line((0, low), (right, 2 * h), _ON),
        Line((left, 1.4 * h * 0.75), (1.4 * h * 0.75 * 0.5774, 1.4 * h * 0.75), _ON),
        Line((right, 2 * h), (right + width + 1.5, 2 * h), _ON),
    )
    moved = tuple(shifted(line, (-left, 0)) for line in lines)
    text = Text((right - left + 0.8, 2 * h - h - 0.6), words, h, layer=_ON)
    # Its bar would be a step of the face just above it.
    return Sign(right - left + width + 1.5, 2 * h + _ABOVE_BAR_MM, moved, (text,), 0.0)


def counted(frame: Sign, count: str) -> Sign:
    """A tolerance frame with how often it applies above it, such as ``2×`` (ISO 1101)."""
    words = Text((0.4, frame.height + STYLE.text_gap_mm), count, STYLE.text_mm, layer=_ON)
    height = words.at[1] + 1.1 * STYLE.text_mm
    return Sign(frame.width, height, frame.shapes, (*frame.texts, words), frame.handle, frame.flag)


def stacked(frame: Sign, upper: Sign, *, count: str = "") -> Sign:
    """A sign standing on a tolerance frame, both on the frame's leader, after how often the frame applies."""
    framed = counted(frame, count) if count else frame
    aside = text_width_mm(f"{count} ", STYLE.text_mm) if count else 0.0
    _, shapes, texts = upper.at((aside, frame.height))
    width, height = max(frame.width, aside + upper.width), frame.height + upper.height
    return Sign(width, height, (*frame.shapes, *shapes), (*framed.texts, *texts), frame.handle, frame.flag)


def lines_of_words(words: tuple[str, ...]) -> Sign:
    """Lines of words that a leader holds at their side."""
    h, step = STYLE.text_mm, STYLE.line_step_mm
    starts = [(0.4, 0.3 * h + (len(words) - 1 - i) * step) for i in range(len(words))]
    texts = tuple(Text(at, line, h, layer=Layer.DIMENSION) for at, line in zip(starts, words, strict=True))
    height = (len(words) - 1) * step + 1.5 * h
    # At the height of the longest, where the leader meets words on whichever side it comes from.
    longest = max(texts, key=lambda text: text.width_mm)
    return Sign(longest.width_mm + 0.8, height, (), texts, longest.at[1] + 0.45 * h)


def datum(letter: str) -> Sign:
    """The framed letter of a datum."""
    h = FRAME_MM
    lines = [Line((x, 0), (x, h), _ON) for x in (0, h)] + [Line((0, y), (h, y), _ON) for y in (0, h)]
    text = Text((h / 2, (h - STYLE.text_mm) / 2), letter, STYLE.text_mm, "centre", layer=_ON)
    return Sign(h, h, tuple(lines), (text,), h / 2)


def frame_about(text: Text) -> tuple[Line, ...]:
    """The frame of a theoretically exact dimension (ISO 1101), without the mark before it."""
    box = text.box
    if text.words.startswith(CRITICAL_MARK):
        mark = text_width_mm(f"{CRITICAL_MARK} ", text.height_mm)
        box = replace(box, bottom=box.bottom + mark) if text.turned else replace(box, left=box.left + mark)
    return rectangle(box.grown(STYLE.frame_gap_mm), Layer.DIMENSION)
