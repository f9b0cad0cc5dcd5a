"""Letters from the font that is shipped, never from one that a machine may lack: widths and outlines."""

from functools import cache, lru_cache
from pathlib import Path
from typing import Any

from fontTools.pens.svgPathPen import SVGPathPen  # type: ignore[import-untyped]
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

FONT_DIRECTORY = Path(__file__).parent / "fonts"
FONT_FILE = "DejaVuSans.ttf"
FONT_FAMILY = "DejaVu Sans"
UNITS_PER_EM = 2048
CAP_HEIGHT_UNITS = 1493
"""Height of capitals in the font's own units; a height of lettering is that of its capitals (ISO 3098-1)."""
CAP_HEIGHT_PER_EM = CAP_HEIGHT_UNITS / UNITS_PER_EM


@cache
def use_shipped_font() -> None:
    """Make the DXF library forget every font but the shipped one."""
    from ezdxf.fonts import fonts  # noqa: PLC0415  15 MB that only a process that draws has use for

    fonts.font_manager.clear()
    fonts.font_manager.build([str(FONT_DIRECTORY)], support_dirs=False)


@cache
def _font() -> tuple[Any, dict[int, str]]:
    """The font's glyphs, and which glyph a character has."""
    font = TTFont(FONT_DIRECTORY / FONT_FILE, lazy=True)
    return font.getGlyphSet(), font.getBestCmap()


def _glyph(character: str) -> Any:
    glyphs, names = _font()
    return glyphs[names.get(ord(character), ".notdef")]


@cache
def advance_units(character: str) -> int:
    """How far a character moves the pen, in font units."""
    return int(_glyph(character).width)


@cache
def outline(character: str) -> str:
    """A character's outline as SVG path data in font units, y up; empty for a space."""
    pen = SVGPathPen(_font()[0], ntos=lambda number: str(round(number)))
    _glyph(character).draw(pen)
    return str(pen.getCommands())


@lru_cache(maxsize=4096)
def in_shipped_font(words: str) -> str:
    """The words with a box for each character that the shipped font lacks: a tagged PDF must not hold what it cannot show.

    >>> in_shipped_font("名 Vän")
    '□ Vän'
    """
    names = _font()[1]
    return "".join(character if ord(character) in names else "□" for character in words)


@lru_cache(maxsize=4096)
def text_width_mm(words: str, height_mm: float) -> float:
    """Length of a line of text whose capitals are ``height_mm`` high, without kerning."""
    return height_mm * sum(map(advance_units, words)) / CAP_HEIGHT_UNITS


def wrapped(words: str, *, height_mm: float, width_mm: float) -> tuple[str, ...]:
    """The words broken into lines no longer than ``width_mm``; a single longer word is cut."""
    lines: list[str] = []
    line = ""
    for word in words.split(" "):
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
