"""The assembled section on the working sheet: one picture for wide screens and one for phones.

In the wide one the balloons stand in even rows, so that the questions beside them keep their places while a size is typed.
"""

import re
from collections.abc import Mapping
from dataclasses import replace
from math import ceil, floor

from markupsafe import Markup

from geometry.drawing import section_layout, section_svg, section_words
from geometry.drawing.section import Section, section_of_conflict, section_of_design, section_of_partial, to_svg
from geometry.drawing.section_columns import without_crossings
from geometry.drawing.section_layout import RADIUS, Page, Placed
from server.present import Outcome, SectionView

_WIDE, _PHONE = 638, 390
_ROW = 76.0
"""Least distance of two balloons in the wide picture: a question has up to two lines of notes below it."""
_HEADROOM, _FOOTROOM = 72.0, 58.0
"""Room above the topmost thing, and between the last balloon and the ground, in page units."""
_CUT = 50.0
"""What is empty at the top is cut off in steps, so that the picture keeps its height while a size is typed."""
_COARSE = 4
"""Columns start at every fourth hundredth, so that questions keep their places, too."""

_LIT_DIMENSION = re.compile(r'<g class="lit-dimension">.*?</g>')


def section_view(outcome: Outcome) -> SectionView:
    """The pictures of what is known so far, and where the balloons of the wide one stand."""
    section = _section(outcome)
    reading = outcome.reading
    page = section_layout.lay_out(
        section.scene,
        section.pointers,
        section.troubles,
        units=reading.units,
        width=_WIDE,
        typed=reading.typed,
        lit=None,
    )
    even = in_even_rows(page, _top(section, page))
    wide = section_svg.svg_of(
        even,
        section.shapes,
        title=section_words.TITLE,
        description=section_words.description(section.scene, section.pointers, section.troubles, units=reading.units),
        units=reading.units,
        typed=reading.typed,
        lit=None,
        lit_span=None,
        prefix="wide",
    )
    ground = f'<path class="ground" d="M{-_WIDE} {even.ground_y:g}H{2 * _WIDE}"/>'
    wide = wide.replace("</svg>", ground + _dimensions(section, even) + "</svg>")
    phone = to_svg(section, units=reading.units, width=_PHONE, typed=reading.typed, prefix="phone")
    return SectionView(wide=_own_ids(wide, "wide"), phone=_own_ids(phone, "phone"), heights=heights(even))


def _section(outcome: Outcome) -> Section:
    reading = outcome.reading
    if outcome.design:
        return section_of_design(outcome.design.measurements, outcome.design.pad, outcome.design.checks)
    if outcome.conflict and reading.measurements:
        return section_of_conflict(reading.measurements, outcome.conflict)
    return section_of_partial(reading.document)


def in_even_rows(page: Page, top: float) -> Page:
    """The same page without its empty top, the balloons of each column in even rows near what they point at.

    ``top`` is the level of the topmost shape. Rows stand at whole hundredths of the height, still without a crossing.
    """
    own = replace(page, placed=tuple(_on_its_side(item, page.width) for item in page.placed))
    sides = [[i for i, item in enumerate(own.placed) if item.is_left == left] for left in (True, False)]
    wanted = [_start([page.placed[i].leader[0][1] for i in side], page.ground_y) for side in sides if side]
    cut = max(0.0, floor((min(top, *wanted) - _HEADROOM) / _CUT) * _CUT)
    height = page.height - cut
    placed = [_raised(item, cut) for item in own.placed]
    for side in sides:
        _stand_in_rows(placed, side, height=height, ground=page.ground_y - cut)
    frame = replace(page.frame, y0=page.frame.y0 - cut)
    return replace(page, frame=frame, height=height, ground_y=page.ground_y - cut, placed=tuple(placed))


def _start(targets: list[float], ground: float) -> float:
    """Level of the first of a column's rows, the column centred on its targets as far as there is room above the ground."""
    span = _ROW * (len(targets) - 1)
    return max(_HEADROOM, min(sum(targets) / len(targets) - span / 2, ground - _FOOTROOM - span))


def _on_its_side(item: Placed, width: float) -> Placed:
    """The item on the side of its questions: the jack's stand left, the car's right."""
    is_left = item.pointer.field.startswith("jack.") if item.pointer else item.is_left
    if is_left == item.is_left:
        return item
    end = (width - item.leader[1][0], item.leader[1][1])
    centre = (width - item.centre[0], item.centre[1])
    return replace(item, is_left=is_left, centre=centre, leader=(item.leader[0], end))


def _raised(item: Placed, by: float) -> Placed:
    (ax, ay), (bx, by_) = item.leader
    return replace(item, centre=(item.centre[0], item.centre[1] - by), leader=((ax, ay - by), (bx, by_ - by)))


def _stand_in_rows(placed: list[Placed], side: list[int], *, height: float, ground: float) -> None:
    """Give the items of one column their rows."""
    if not side:
        return
    hundredth = height / 100
    targets = [placed[i].leader[0] for i in side]
    room = ground - _FOOTROOM - _HEADROOM
    pitch = min(ceil(_ROW / hundredth) * hundredth, floor(room / max(1, len(side) - 1) / hundredth) * hundredth)
    first = round(_start([y for _, y in targets], ground) / hundredth / _COARSE) * _COARSE * hundredth
    last = floor((ground - _FOOTROOM) / hundredth) * hundredth
    first = max(0.0, min(first, last - pitch * (len(side) - 1)))
    places = [first + pitch * row for row in range(len(side))]
    near = placed[side[0]].leader[1][0]
    for i, y in zip(side, without_crossings(targets, places=places, x=near), strict=True):
        x = placed[i].centre[0]
        box = section_layout.Box(x - RADIUS, y - RADIUS, x + RADIUS, y + RADIUS)
        placed[i] = replace(placed[i], centre=(x, y), leader=(placed[i].leader[0], (near, y)), label_box=box)


def heights(page: Page) -> Mapping[str, int]:
    """At which hundredth of the picture's height each balloon stands, by the dotted key of its field."""
    return {p.pointer.field: round(100 * p.centre[1] / page.height) for p in page.placed if p.pointer}


def _dimensions(section: Section, page: Page) -> str:
    """Every measurement's dimension line, unseen until its field is in use."""
    bare = replace(page, placed=())
    found = []
    for pointer in section.pointers:
        picture = section_svg.svg_of(
            bare, (), title="", description="", units="mm", typed={}, lit=None, lit_span=pointer.span, prefix="span"
        )
        lines = _LIT_DIMENSION.search(picture)
        found.append(f'<g visibility="hidden" data-field="{pointer.field}">{lines[0] if lines else ""}</g>')
    return "".join(found)


def _top(section: Section, page: Page) -> float:
    """Level of the topmost shape on the page."""
    return page.frame.at((0, section.scene.top))[1]


def _own_ids(svg: str, prefix: str) -> Markup:
    """The picture as markup, its balloons' ids apart from those of the other picture on the page."""
    for name in ("balloon", "trouble"):
        svg = svg.replace(f'id="{name}-', f'id="{prefix}-{name}-')
    return Markup(svg)  # noqa: S704 - written by our own drawing code, which escapes every text
