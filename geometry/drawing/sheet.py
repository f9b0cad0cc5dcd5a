"""Placing the views on the sheet: the largest standard scale at which everything finds room."""

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import replace
from functools import lru_cache
from itertools import product
from math import inf

from geometry.drawing.arrangement import (
    Placed,
    Sheets,
    right_limit_of,
    with_picture,
)
from geometry.drawing.details import details_of, lip_shows_in_corner
from geometry.drawing.errors import SheetError
from geometry.drawing.facts import SheetFacts
from geometry.drawing.frame import PAPER_MM, Sheet
from geometry.drawing.main_plan import Plan, lip_needs_detail
from geometry.drawing.measures import measures
from geometry.drawing.model import Drawing, PlacedView, shifted
from geometry.drawing.other_views import Leeway
from geometry.drawing.placing import NoRoomError
from geometry.drawing.plan_view import AT_TOP
from geometry.drawing.scales import SCALES, Scale
from geometry.drawing.side_signs import AT_SIDE
from geometry.drawing.style import STYLE
from geometry.drawing.title_block import title_block
from geometry.drawing.views_about import AtScale, Found, Views, trouble_on
from geometry.pad import Pad

_DETAILS = ((STYLE.detail_radii_mm[0], False), (STYLE.detail_radii_mm[1], False), (STYLE.detail_radii_mm[1], True))
"""Radius of the details' windows, and whether words are kept above them."""
_LAST_READABLE = 0.5
_MUCH_TROUBLE = 8.0
"""Where more could not be helped, less room beside the section may yet leave room for a side view, which takes some of it."""


@lru_cache(maxsize=16)
def draw(pad: Pad, facts: SheetFacts) -> Drawing:
    """The pad's drawing: a buildable pad and the facts of its sheet, on one page.

    A sheet laid out a moment ago is kept: page, files and packet of a design ask for the same one.

    Raises SheetError where no standard scale leaves room.
    """
    shown = measures(pad, facts)
    sheets = Sheets(pad, facts)
    hasty = None
    for scale in SCALES:
        area = sheets.largest
        if pad.body_diameter_mm * scale.factor > area.width or pad.overall_height_mm * scale.factor > area.height:
            continue
        is_careful, found = _found(AtScale.of(pad, shown, sheets, scale))
        if found:
            this = scale, *found
            if is_careful:
                return _finished(pad, *this)
            # Rather at the next scale with good places for everything than here with any.
            hasty = hasty or this
        if hasty and scale.factor <= _LAST_READABLE:
            return _finished(pad, *hasty)
    if hasty:
        return _finished(pad, *hasty)
    raise SheetError("The pad is too large or too slender to be drawn on this paper at a standard scale.")


def _ways(pad: Pad, scale: Scale) -> Iterator[tuple[bool, Leeway]]:
    """What is tried at a scale: whether a narrow lip has a detail of its own, and what is allowed to find room.

    Where the next scale would make the slot too small to be seen, rather more leeway than that.
    """
    is_narrow, is_last = lip_needs_detail(pad, scale), scale.factor <= _LAST_READABLE
    for lip_apart in (True, False) if is_narrow else (False,):
        # In a narrow groove a leader seems to mean the groove's walls.
        if lip_apart or is_last or not (pad.has_skirt and is_narrow):
            yield lip_apart, Leeway()
        if is_last:
            yield lip_apart, Leeway(at_right=True)
            yield lip_apart, Leeway(at_right=True, crowded=True)


def _found(at: AtScale) -> tuple[bool, Found | None]:
    """All views in the first way in which all find good places, else in the first with any; None where there is none.

    And whether they are good places.
    """
    fallback = None
    for lip_apart, leeway in _ways(at.pad, at.scale):
        is_careful, found = _in_one_way(at, lip_apart, leeway)
        if is_careful:
            return True, found
        fallback = fallback or found
    return False, fallback


def _in_one_way(at: AtScale, lip_apart: bool, leeway: Leeway) -> tuple[bool, Found | None]:
    """All views with words where they like, or kept close to the section; the first with little trouble, else the least.

    And whether they were placed with care: in haste anything is taken that finds room.
    """
    least, fallback = inf, None
    for views in _trials(at, lip_apart, leeway):
        found = views.in_haste()
        if found:
            # Where there is room, more care may leave fewer leaders in the way of other lines.
            careful = _with_moved(at, views) or views.with_care()
            trouble = trouble_on(careful) if careful else inf
            if careful and trouble <= _MUCH_TROUBLE:
                return True, careful
            if fallback is None or trouble < least:
                least, fallback = trouble, careful or found
    return least < inf, fallback


def _with_moved(at: AtScale, views: Views) -> Found | None:
    """The same with what is in the way at the section left to other views; for those there may be more leeway."""
    # A sheet that has no room for a side view still has a top view.
    for may_move in (AT_SIDE | AT_TOP, AT_TOP):
        free = replace(views, plan=replace(views.plan, may_move=may_move))
        found = free.with_care()
        if not found and at.scale.factor <= _LAST_READABLE:
            found = replace(free, leeway=Leeway(at_right=True, crowded=True)).with_care()
        if found:
            return found
    return None


def _trials(at: AtScale, lip_apart: bool, leeway: Leeway) -> Iterator[Views]:
    """Views with large or small details, with more or less room for words beside the section."""
    pad, facts, scale = at.pad, at.sheets.facts, at.scale
    limits = (inf, right_limit_of(pad, at.sheets.largest, scale))
    windows_shared = (True, False) if pad.has_skirt and lip_apart else (True,)
    for shared, right_limit, (reach, narrow) in product(windows_shared, limits, _DETAILS):
        with suppress(NoRoomError):
            details = details_of(
                pad, at.shown, scale, facts, reach_mm=reach, lip_apart=lip_apart, narrow=narrow, shared=shared
            )
            windows = tuple((detail.centre, detail.window_mm) for detail in details)
            plan = Plan(
                unit=facts.figure_unit,
                windows=windows,
                right_limit=right_limit,
                lip_apart=lip_apart,
                run_out_apart=lip_shows_in_corner(details, pad),
                is_printed=facts.as_printed,
                located_by=facts.located_by,
                critical=facts.critical,
            )
            yield Views(at, plan, details, leeway)


def _finished(pad: Pad, scale: Scale, sheet: Sheet, projected: Placed) -> Drawing:
    """Everything moved to its place, and a picture of the whole where there is room."""
    placed = with_picture(pad, scale, projected, sheet)
    title_block(sheet, scale)
    views, dimensions = [], []
    for block, at in placed:
        views.append(PlacedView(block.view, at, block.scale))
        dimensions += [dimension.moved(at) for dimension in block.canvas.dimensions]
        sheet.texts += [text.moved(at) for text in block.canvas.texts]
        sheet.shapes += [shifted(shape, at) for shape in block.canvas.shapes]
    width, height = PAPER_MM[sheet.facts.paper]
    return Drawing(
        sheet.facts,
        width,
        height,
        sheet.frame,
        scale,
        tuple(views),
        tuple(dimensions),
        tuple(sheet.shapes),
        tuple(sheet.texts),
    )
