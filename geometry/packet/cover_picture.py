"""The assembled section on paper: letters of the shipped font, no label cut short, and no empty page above the picture."""

import re
from collections.abc import Iterable
from dataclasses import replace
from html import escape, unescape

from geometry.design import Design
from geometry.drawing import section
from geometry.drawing.facts import SheetFacts
from geometry.drawing.lettering import FONT_FAMILY
from geometry.drawing.section_lettering import text_width, wrapped
from geometry.drawing.section_page import TEXT
from geometry.packet.words import shop_units

WIDTH = 840
"""As wide as the page is then, letters of the balloons are 7 points high at the least."""
_SIDES_Y, _SIDES_ROOM = 16.0, 30.0
"""Where the words for the two sides stand, and what they need above the picture."""
_SMALLER, _STEP = 11.5, 12.0
_CUT = re.compile(r'(<text class="balloon-label" x="[^"]*" y=")([^"]*)("[^>]*font-size=")[^"]*("[^>]*>)([^<]*)…</text>')
_VIEW = re.compile(r'viewBox="0 0 ([\d.]+) ([\d.]+)"')
_AT_Y = re.compile(r' c?y="([-\d.]+)"|[ML][-\d.]+ ([-\d.]+)')


def section_picture(design: Design, facts: SheetFacts, *, width: int = WIDTH, is_bare: bool = False) -> str:
    """The assembled section of a design; bare, it has no balloons."""
    found = section.section_of_design(design.measurements, design.pad, design.checks)
    if is_bare:
        found = replace(found, pointers=(), troubles=())
    drawn = section.to_svg(found, units=shop_units(facts), width=width)
    whole = uncut(drawn, [pointer.title for pointer in found.pointers])
    return lowered(whole).replace('font-family="sans-serif"', f'font-family="{FONT_FAMILY}"', 1)


def uncut(drawn: str, titles: Iterable[str]) -> str:
    """Labels that the screen cuts short in two smaller lines: on paper nobody can look behind the dots."""
    known = tuple(titles)

    def in_full(found: re.Match[str]) -> str:
        head, y, middle, tail, words = found.groups()
        title = next((title for title in known if title.startswith(unescape(words))), None)
        if title is None:
            return found[0]
        lines = wrapped(title, size=_SMALLER, width=text_width(f"{unescape(words)}…", TEXT), most=2)
        tops = (float(y) + _STEP * (i + 1 - len(lines)) for i in range(len(lines)))
        return "".join(
            f"{head}{top:g}{middle}{_SMALLER:g}{tail}{escape(line)}</text>"
            for top, line in zip(tops, lines, strict=True)
        )

    return _CUT.sub(in_full, drawn)


def lowered(drawn: str) -> str:
    """The picture without the empty room between the words for its sides and what is drawn."""
    view = _VIEW.search(drawn)
    if view is None:
        return drawn
    figure = drawn.partition("</defs>")[2]
    heights = [float(a or b) for a, b in _AT_Y.findall(figure)]
    top = min((y for y in heights if y > _SIDES_Y), default=0.0) - _SIDES_ROOM
    if top <= 0:
        return drawn
    box = f'viewBox="0 {top:g} {view[1]} {float(view[2]) - top:g}"'
    side = f'y="{_SIDES_Y:g}"'
    return drawn.replace(view[0], box, 1).replace(side, f'y="{top + _SIDES_Y:g}"')
