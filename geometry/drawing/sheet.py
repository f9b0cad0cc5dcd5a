"""Placing the views on the sheet: the largest standard scale at which everything finds room."""

from collections.abc import Iterator
from itertools import product
from math import inf

from geometry.drawing.blocks import Block, isometric_block, section_block, side_block, top_block, underside_block
from geometry.drawing.details import Detail, details_of
from geometry.drawing.errors import SheetError
from geometry.drawing.facts import SheetFacts
from geometry.drawing.frame import PAPER_MM, Sheet, fill_sheet, title_block
from geometry.drawing.measures import measures
from geometry.drawing.model import Box, Drawing, Measure, PlacedView, Point, shifted
from geometry.drawing.placing import NoRoomError
from geometry.drawing.scales import SCALES, Scale
from geometry.drawing.style import STYLE
from geometry.pad import Pad

_SEARCH_STEP_MM = 3.0
_LEAST_PICTURE_MM = 12.0
Placed = list[tuple[Block, Point]]


def draw(pad: Pad, facts: SheetFacts) -> Drawing:
    """The pad's drawing: a buildable pad and the facts of its sheet, on one page.

    Raises SheetError where no standard scale leaves room.
    """
    shown = measures(pad, facts)
    sheet = fill_sheet(facts)
    for scale in SCALES:
        if (
            pad.body_diameter_mm * scale.factor > sheet.area.width
            or pad.overall_height_mm * scale.factor > sheet.area.height
        ):
            continue
        placed = _at_scale(pad, shown, sheet, scale)
        if placed:
            return _finished(sheet, scale, placed)
    raise SheetError("The pad is too large or too slender to be drawn on this paper at a standard scale.")


def _at_scale(pad: Pad, shown: dict[str, Measure], sheet: Sheet, scale: Scale) -> Placed | None:
    """All views at one main scale, else with words kept close to the section; None where something finds no room."""
    for right_limit in (inf, _right_limit(pad, sheet.area, scale)):
        for reach in STYLE.detail_radii_mm:
            try:
                details = details_of(pad, shown, scale, sheet.facts.units, reach_mm=reach)
                section = section_block(pad, shown, scale, sheet.facts.units, details, right_limit=right_limit)
            except NoRoomError:
                return None
            mains = [main for half in (False, True) if (main := _projected(pad, sheet, section, half=half))]
            for main, extras in product(mains, _extras(pad, scale, details)):
                placed = _with_extras(main, extras, sheet)
                if placed:
                    return _with_picture(pad, scale, placed, sheet)
            if not mains:
                break
    return None


def _right_limit(pad: Pad, area: Box, scale: Scale) -> float:
    """How far right of the axis words may go, so that a half side view still fits beside them."""
    radius = pad.body_diameter_mm * scale.factor / 2
    left = radius + STYLE.first_row_mm + 2 * STYLE.row_pitch_mm + STYLE.text_gap_mm + 1.1 * STYLE.text_mm
    return area.width - left - STYLE.view_gap_mm - radius - STYLE.centre_over_mm / 2


def _projected(pad: Pad, sheet: Sheet, section: Block, *, half: bool) -> Placed | None:
    """Section, side and top view in projection (ISO 5456-2); None where the sheet is too small."""
    area, gap = sheet.area, STYLE.view_gap_mm
    side, top = side_block(pad, section.scale, half=half), top_block(pad, section.scale)
    main, beside, plan = section.box, side.box, top.box
    left = max(-main.left, -plan.left)
    side_x = left + main.right + gap - beside.left
    width = max(side_x + beside.right, left + plan.right)
    height = main.height + gap + plan.height
    if width > area.width or height > area.height:
        return None
    spread = min((area.height - height) / 3, gap)
    x = area.left + left
    # In first angle the top view stands below the section, in third angle above it; seen from the right and seen from the
    # left the pad looks the same, so the side view may stay on the right.
    if sheet.facts.projection == "first":
        y = area.top - spread - main.top
        plan_y = y + main.bottom - gap - spread - plan.top
    else:
        plan_y = area.top - spread - plan.top
        y = plan_y + plan.bottom - gap - spread - main.top
    placed = [(section, (x, y)), (side, (area.left + side_x, y)), (top, (x, plan_y))]
    return None if any(block.box.moved(at).meets(_kept_free(sheet)) for block, at in placed) else placed


def _kept_free(sheet: Sheet) -> Box:
    """Where no view may stand: the foot and a little above and beside it."""
    return sheet.foot.grown(3)


def _extras(pad: Pad, scale: Scale, details: tuple[Detail, ...]) -> Iterator[list[Block]]:
    """Details, and the underside where there is a stem, at ever smaller scales."""
    blocks = [Block(detail.view, detail.scale, detail.canvas) for detail in details]
    if not pad.has_stem:
        yield blocks
        return
    for smaller in SCALES:
        if smaller <= scale and (smaller == scale or pad.body_diameter_mm * smaller.factor >= _LEAST_PICTURE_MM):
            yield [underside_block(pad, smaller, main=scale), *blocks]


def _with_extras(main: Placed, extras: list[Block], sheet: Sheet) -> Placed | None:
    """The projected views with the others, each in the first free place from the top right."""
    placed = list(main)
    taken = [_kept_free(sheet), *(block.box.moved(at).grown(STYLE.view_gap_mm / 2) for block, at in placed)]
    for block in extras:
        at = _free_place(block.box, taken, sheet.area)
        if at is None:
            return None
        placed.append((block, at))
        taken.append(block.box.moved(at).grown(STYLE.view_gap_mm / 2))
    return placed


def _with_picture(pad: Pad, scale: Scale, placed: Placed, sheet: Sheet) -> Placed:
    """The views with an isometric picture as large as there is room for, if there is."""
    for smaller in SCALES:
        if smaller > scale or pad.body_diameter_mm * smaller.factor < _LEAST_PICTURE_MM:
            continue
        more = _with_extras(placed, [isometric_block(pad, smaller)], sheet)
        if more:
            return more
    return placed


def _free_place(box: Box, taken: list[Box], area: Box) -> Point | None:
    """An origin at which a box meets nothing, found on a grid."""
    columns, rows = (int(room / _SEARCH_STEP_MM) for room in (area.width - box.width, area.height - box.height))
    for row in range(rows + 1):
        y = area.top - box.top - row * _SEARCH_STEP_MM
        for column in range(columns + 1):
            x = area.right - box.right - column * _SEARCH_STEP_MM
            moved = box.moved((x, y))
            if not any(moved.meets(other) for other in taken):
                return x, y
    return None


def _finished(sheet: Sheet, scale: Scale, placed: Placed) -> Drawing:
    """Everything moved to its place."""
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
