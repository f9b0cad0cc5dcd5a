"""What is lettered around the section as SVG: balloons that link to their fields, trouble marks, notes."""

from collections.abc import Mapping
from html import escape

from geometry.drawing.section_ink import CHALK, INK, PENCIL, attributes, number, pair, tip
from geometry.drawing.section_known import element_id
from geometry.drawing.section_layout import value_words
from geometry.drawing.section_page import LABEL_GAP, LINE, RADIUS, SMALL, TEXT, Box, Page, Placed, label_line
from geometry.drawing.section_pointers import Pointer
from geometry.units import LengthUnit


def balloon(placed: Placed, pointer: Pointer, units: LengthUnit, typed: Mapping[str, str], *, is_lit: bool) -> str:
    """A numbered circle that links to its field."""
    key = element_id(pointer.field)
    name = f"{pointer.number} {pointer.title} {value_words(pointer, units, typed)}"
    (ax, ay), (x, y) = placed.leader[0], placed.centre
    state = " lit" if is_lit else ""
    missing = " missing" if pointer.value_mm is None else ""
    ring = {"fill": INK} if is_lit else {}
    if missing and not is_lit:
        ring["stroke_dasharray"] = "3 2.5"
    width = {"stroke": INK, "stroke_width": "1.6"} if is_lit else {}
    return (
        f'<a id="balloon-{key}" class="balloon{state}{missing}" data-field="{pointer.field}" href="#field-{key}"'
        f' aria-label="{escape(name)}">{_target(placed.target)}'
        f'<path d="M{pair(placed.leader[0])}L{pair(placed.leader[1])}" {attributes("leader", **width)}/>'
        f'<circle cx="{number(ax)}" cy="{number(ay)}" r="2.4" {attributes("dot")}/>'
        f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(RADIUS)}" {attributes("balloon-ring", **ring)}/>'
        f'<text class="balloon-number" x="{number(x)}" y="{number(y + 5)}" text-anchor="middle" font-weight="600"'
        f' fill="{CHALK if is_lit else INK}">{pointer.number}</text>{_label(placed)}</a>'
    )


def _target(box: Box) -> str:
    """What a finger may hit."""
    size = f'width="{number(box.right - box.left)}" height="{number(box.bottom - box.top)}"'
    return (
        f'<rect class="target" x="{number(box.left)}" y="{number(box.top)}" {size} fill="none" pointer-events="all"/>'
    )


def _label(placed: Placed) -> str:
    """The label's lines beside the balloon, turned away from the picture."""
    step = label_line(placed.label)
    x = placed.centre[0] + (-1 if placed.is_left else 1) * (RADIUS + LABEL_GAP)
    anchor = "end" if placed.is_left else "start"
    first = placed.centre[1] - step * len(placed.label) / 2 + 0.72 * step
    is_missing = placed.pointer is not None and placed.pointer.value_mm is None
    lines = []
    for i, line in enumerate(placed.label):
        is_strong = line.role in {"balloon-value", "trouble-words"} and not is_missing
        size = TEXT if line.role.startswith("balloon") else SMALL
        weight = ' font-weight="600"' if is_strong else ""
        colour = PENCIL if is_missing or line.role == "balloon-label" else INK
        lines.append(
            f'<text class="{line.role}" x="{number(x)}" y="{number(first + i * step)}" text-anchor="{anchor}"'
            f' font-size="{number(size)}"{weight} fill="{colour}">{escape(line.words)}</text>'
        )
    return "".join(lines)


def trouble(placed: Placed) -> str:
    """An arrow to the trouble spot, a lettered mark, and a few words."""
    (x, y), r = placed.centre, RADIUS
    start, end = placed.leader
    diamond = f"M{number(x)} {number(y - r)}L{number(x + r)} {number(y)}L{number(x)} {number(y + r)}L{number(x - r)} {number(y)}Z"
    return (
        f'<g class="trouble" id="trouble-{placed.mark.lower()}">'
        f'<path d="M{pair(start)}L{pair(end)}" {attributes("trouble-line")}/>{tip(start, end)}'
        f'<path d="{diamond}" {attributes("trouble-mark")}/>'
        f'<text class="trouble-letter" x="{number(x)}" y="{number(y + 5)}" text-anchor="middle" font-weight="600" fill="{CHALK}">'
        f"{placed.mark}</text>{_label(placed)}</g>"
    )


def sides(page: Page) -> str:
    """Which side is which, beside the centre line."""
    words = ((-12, "end", "← outboard"), (12, "start", "inboard →"))
    return "".join(
        f'<text class="side" x="{number(page.frame.x0 + dx)}" y="16" text-anchor="{anchor}" fill="{PENCIL}"'
        f' font-size="{number(SMALL)}">{text}</text>'
        for dx, anchor, text in words
    )


def notes(page: Page) -> str:
    """The lines below the ground."""
    first = page.ground_y + 26
    return "".join(
        f'<text class="note" x="{number(page.width / 2)}" y="{number(first + LINE * i)}" text-anchor="middle" fill="{INK}">'
        f"{escape(words)}</text>"
        for i, words in enumerate(page.notes)
        if words
    )
