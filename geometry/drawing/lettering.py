"""How wide a text is: measured in the font that is shipped, never in one that a machine may lack."""

from functools import cache
from pathlib import Path

from ezdxf.fonts import fonts

FONT_DIRECTORY = Path(__file__).parent / "fonts"
FONT_FILE = "DejaVuSans.ttf"
FONT_FAMILY = "DejaVu Sans"
CAP_HEIGHT_PER_EM = 1493 / 2048
"""Height of capitals over the font size, from the font's own table."""


@cache
def shipped_font() -> fonts.AbstractFont:
    """The font at 1 mm capital height; the library forgets every other font, so that no machine's fonts matter."""
    fonts.font_manager.clear()
    fonts.font_manager.build([str(FONT_DIRECTORY)], support_dirs=False)
    return fonts.make_font(FONT_FILE, 1.0)


@cache
def _width_at_1_mm(character: str) -> float:
    return shipped_font().text_width(character)


def text_width_mm(words: str, height_mm: float) -> float:
    """Length of a line of text whose capitals are ``height_mm`` high, without kerning."""
    return height_mm * sum(map(_width_at_1_mm, words))


def wrapped(words: str, *, height_mm: float, width_mm: float) -> tuple[str, ...]:
    """The words broken into lines no longer than ``width_mm``; a single longer word is cut."""
    lines: list[str] = []
    line = ""
    for word in words.split():
        longer = f"{line} {word}".strip()
        if text_width_mm(longer, height_mm) <= width_mm:
            line = longer
            continue
        if line:
            lines.append(line)
        line = cut_to_width(word, height_mm=height_mm, width_mm=width_mm)
    return (*lines, line) if line else tuple(lines)


def cut_to_width(words: str, *, height_mm: float, width_mm: float) -> str:
    """The words, with an ellipsis in place of what would not fit."""
    if text_width_mm(words, height_mm) <= width_mm:
        return words
    while words and text_width_mm(words + "…", height_mm) > width_mm:
        words = words[:-1]
    return words + "…"
