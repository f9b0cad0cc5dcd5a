"""Placing the views on the sheet: the largest standard scale at which everything finds room."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.drawing.canvas import Canvas, arrow_line
from geometry.drawing.details import Detail, corner_detail, slot_detail
from geometry.drawing.errors import SheetError
from geometry.drawing.facts import SheetFacts
from geometry.drawing.frame import PAPER_MM, Sheet, fill_sheet, title_block
from geometry.drawing.measures import measures
from geometry.drawing.model import (
    Box,
    Drawing,
    Layer,
    Line,
    Measure,
    PlacedView,
    Point,
    Text,
    View,
    shifted,
)
from geometry.drawing.placing import NoRoomError, place_letter
from geometry.drawing.scales import SCALES, Scale
from geometry.drawing.section_sheet import section_canvas
from geometry.drawing.style import STYLE
from geometry.drawing.views import side_view, top_view, underside_view
from geometry.pad import Pad

_LETTER_ANGLES = (0.0, 20.0, -20.0, 40.0, -40.0, 60.0, -60.0, 180.0, 160.0, 200.0, 140.0, 220.0, 75.0, -75.0, 105.0, -105.0)


@dataclass(slots=True)
class Block:
    """A view with everything that belongs to it, in paper mm about the view's origin."""

    view: View
    scale: Scale
    canvas: Canvas

    @property
    def box(self) -> Box:
        """All that it covers."""
        return self.canvas.box


def draw(pad: Pad, facts: SheetFacts) -> Drawing:
    """The pad's drawing: a buildable pad and the facts of its sheet, on one page.

    Raises SheetError where no standard scale leaves room.
    """
    shown = measures(pad, facts)
    sheet = fill_sheet(facts)
    for scale in SCALES:
        if pad.body_diameter_mm * scale.factor > sheet.area.width or pad.overall_height_mm * scale.factor > sheet.area.height:
            continue
        try:
            details = _details(pad, shown, scale)
            section = _section(pad, shown, scale, details)
        except NoRoomError:
            continue
        for half in (False, True):
            placed = _arranged(pad, sheet, section, details, half=half)
            if placed:
                return _finished(sheet, scale, placed)
    raise SheetError("The pad is too large or too slender to be drawn on this paper at a standard scale.")


def _details(pad: Pad, shown: dict[str, Measure], scale: Scale) -> tuple[Detail, ...]:
    found = (slot_detail(pad, shown, scale), corner_detail(pad, shown, scale))
    return tuple(detail for detail in found if detail)


def _section(pad: Pad, shown: dict[str, Measure], scale: Scale, details: tuple[Detail, ...]) -> Block:
    """The main view with its dimensions, the marks of its details and its name."""
    view, canvas = section_canvas(pad, shown, scale)
    for detail in details:
        centre = (detail.centre[0] * scale.factor, detail.centre[1] * scale.factor)
        place_letter(canvas, detail.letter, centre=centre, radius=detail.window_mm * scale.factor, angles_deg=_LETTER_ANGLES)
    canvas.add_text(Text((0, canvas.box.top + 3), "A–A", STYLE.large_mm, "centre"))
    if pad.has_stem:
        low, x = canvas.box.bottom - 2, 0.0
        tail = low - 8
        canvas.add_text(
            Text((x + 2, tail), "B", STYLE.large_mm), *arrow_line((x, tail), (x, low), 90, Layer.THIN)
        )
    return Block(view, scale, canvas)


def _top(pad: Pad, scale: Scale) -> Block:
    """The top view with the ends of the cutting plane, arrows in the direction of sight, and its letters (ISO 128-3)."""
    k = scale.factor
    view = top_view(pad, over_mm=STYLE.centre_over_mm / k)
    reach = pad.body_diameter_mm * k / 2
    canvas = Canvas(solids=[Box(-reach, -reach, reach, reach)])
    over = reach + STYLE.centre_over_mm
    canvas.lines += [((-over, 0), (over, 0)), ((0, -over), (0, over))]
    for way in (-1, 1):
        end = way * (over + 5)
        plane = Line((way * (over + 1), 0), (end, 0), Layer.CUT)
        arrow = arrow_line((end, -7), (end, -0.3), 90, Layer.THIN)
        canvas.add_text(Text((end + way * 1.2, -7), "A", STYLE.large_mm, "left" if way > 0 else "right"), plane, *arrow)
    return Block(view, scale, canvas)


def _arranged(
    pad: Pad, sheet: Sheet, section: Block, details: tuple[Detail, ...], *, half: bool
) -> list[tuple[Block, Point]] | None:
    """All views with their places, or None where the sheet is too small."""
    scale, gap, area = section.scale, STYLE.view_gap_mm, sheet.area
    top, side = _top(pad, scale), _side(pad, scale, half=half)
    main, plan = section.box, top.box
    left, right = max(-main.left, -plan.left), max(main.right, plan.right)
    side_x = left + max(main.right, 0) + gap - side.box.left
    need = max(side_x + side.box.right, left + right)
    rows = main.height + gap + plan.height
    if need > area.width or rows > area.height:
        return None
    x = area.left + left
    third = sheet.facts.projection == "third"
    spare = area.height - rows
    lower_is_main = third
    if lower_is_main:
        main_y = area.bottom - main.bottom
        plan_y = main_y + main.top + gap - plan.bottom
        cell = Box(x + plan.right + gap, main_y + main.top + gap, area.right, area.top)
    else:
        main_y = area.top - main.top
        plan_y = main_y + main.bottom - gap - plan.top
        cell = Box(x + plan.right + gap, area.bottom, area.right, main_y + main.bottom - gap)
    placed = [(section, (x, main_y)), (side, (area.left + side_x, main_y)), (top, (x, plan_y))]
    extra = _packed(_extras(pad, scale, details), cell)
    if extra is None:
        return None
    shift = ((area.width - need) / 2, (-spare / 2 if not lower_is_main else spare / 2) * 0)
    return [(block, (at[0] + shift[0] * 0, at[1] + shift[1])) for block, at in placed] + extra


def _side(pad: Pad, scale: Scale, *, half: bool) -> Block:
    k = scale.factor
    view = side_view(pad, over_mm=STYLE.centre_over_mm / k, half=half)
    box = view.box
    over = STYLE.centre_over_mm
    canvas = Canvas(solids=[Box(box.left * k, box.bottom * k, box.right * k, box.top * k)])
    canvas.lines.append(((0, box.bottom * k - over), (0, box.top * k + over)))
    return Block(view, scale, canvas)


def _extras(pad: Pad, scale: Scale, details: tuple[Detail, ...]) -> Iterator[list[Block]]:
    """Details, and the underside where there is a stem, at ever smaller scales."""
    blocks = [Block(detail.view, detail.scale, detail.canvas) for detail in details]
    if not pad.has_stem:
        yield blocks
        return
    for smaller in SCALES:
        if smaller.factor <= scale.factor and pad.body_diameter_mm * smaller.factor >= 12:
            yield [*blocks, _underside(pad, smaller, main=scale)]


def _underside(pad: Pad, scale: Scale, *, main: Scale) -> Block:
    k = scale.factor
    view = underside_view(pad, over_mm=STYLE.centre_over_mm / k)
    reach = pad.body_diameter_mm * k / 2
    over = reach + STYLE.centre_over_mm
    canvas = Canvas(solids=[Box(-reach, -reach, reach, reach)], lines=[((-over, 0), (over, 0)), ((0, -over), (0, over))])
    name = "B" if scale == main else f"B ({scale.words})"
    canvas.add_text(Text((0, over + 1.5), name, STYLE.large_mm, "centre"))
    return Block(view, scale, canvas)


def _packed(choices: Iterator[list[Block]], cell: Box) -> list[tuple[Block, Point]] | None:
    """The first choice of blocks that fits a rectangle, in rows from its top."""
    for blocks in choices:
        placed = _rows(blocks, cell)
        if placed is not None:
            return placed
    return None


def _rows(blocks: list[Block], cell: Box) -> list[tuple[Block, Point]] | None:
    placed: list[tuple[Block, Point]] = []
    x, y, row_height, gap = cell.left, cell.top, 0.0, STYLE.view_gap_mm / 2
    for block in blocks:
        box = block.box
        if x + box.width > cell.right and x > cell.left:
            x, y, row_height = cell.left, y - row_height - gap, 0.0
        if x + box.width > cell.right or y - box.height < cell.bottom:
            return None
        placed.append((block, (x - box.left, y - box.top)))
        x, row_height = x + box.width + gap, max(row_height, box.height)
    return placed


def _finished(sheet: Sheet, scale: Scale, placed: list[tuple[Block, Point]]) -> Drawing:
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
