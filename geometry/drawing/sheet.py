"""Placing the views on the sheet: the largest standard scale at which everything finds room."""

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field, replace
from functools import lru_cache
from itertools import combinations, product
from math import inf

from geometry.drawing.blocks import (
    Block,
    isometric_block,
    rooted_block,
    section_block,
    side_block,
    top_block,
    underside_block,
    with_marking,
    with_seat_texture,
    with_sight,
)
from geometry.drawing.details import Detail, details_of
from geometry.drawing.errors import SheetError
from geometry.drawing.facts import SheetFacts
from geometry.drawing.frame import PAPER_MM, Sheet, fill_sheet, title_block
from geometry.drawing.free_space import FreeSpace
from geometry.drawing.main_view import Plan, lip_needs_detail
from geometry.drawing.measures import measures
from geometry.drawing.model import Box, Drawing, Measure, PlacedView, Point, shifted
from geometry.drawing.notes import Root, marking_words, note_words
from geometry.drawing.placing import NoRoomError
from geometry.drawing.scales import SCALES, Scale
from geometry.drawing.style import STYLE
from geometry.pad import Pad

_DETAILS = ((STYLE.detail_radii_mm[0], False), (STYLE.detail_radii_mm[1], False), (STYLE.detail_radii_mm[1], True))
"""Radius of the details' windows, and whether words are kept above them."""
_ALL_ROOTS: frozenset[Root] = frozenset({"stem root", "lead-in", "plug root"})
_LAST_READABLE = 0.5
_LEAST_PICTURE_MM = 12.0
_LEAST_UNDERSIDE_MM = 30.0
Placed = list[tuple[Block, Point]]


@lru_cache(maxsize=16)
def draw(pad: Pad, facts: SheetFacts) -> Drawing:
    """The pad's drawing: a buildable pad and the facts of its sheet, on one page.

    A sheet laid out a moment ago is kept: page, files and packet of a design ask for the same one.

    Raises SheetError where no standard scale leaves room.
    """
    shown = measures(pad, facts)
    sheets = _Sheets(pad, facts)
    for scale in SCALES:
        area = sheets.of(textured=True, marked=True, told=_ALL_ROOTS).area
        if pad.body_diameter_mm * scale.factor > area.width or pad.overall_height_mm * scale.factor > area.height:
            continue
        found = _at_scale(pad, shown, sheets, scale)
        if not found and scale.factor <= _LAST_READABLE:
            # Rather the views at the area's other end than a slot that is too small to be seen.
            sheets.at_right = True
            found = _at_scale(pad, shown, sheets, scale)
            sheets.at_right = False
        if found:
            return _finished(found[0], scale, found[1])
    raise SheetError("The pad is too large or too slender to be drawn on this paper at a standard scale.")


@dataclass(slots=True)
class _Sheets:
    """The empty sheet of a pad: what has a sign at the part is not said in its notes; what has not, is."""

    pad: Pad
    facts: SheetFacts
    made: dict[tuple[bool, bool, frozenset[Root]], Sheet] = field(default_factory=dict)
    at_right: bool = False
    """Whether the projected views may stand at the right end of the area too."""

    def of(self, *, textured: bool, marked: bool, told: frozenset[Root]) -> Sheet:
        """The sheet with or without a note on the seat's texture, on marking, and on the roots of stem and plug."""
        key = (textured or self.facts.as_printed, marked, told)
        if key not in self.made:
            words = note_words(self.facts, self.pad, marking=not marked, seat=not key[0], told=told)
            self.made[key] = fill_sheet(self.facts, words)
        return self.made[key]


def _at_scale(pad: Pad, shown: dict[str, Measure], sheets: _Sheets, scale: Scale) -> tuple[Sheet, Placed] | None:
    """All views at one main scale, else with words kept close to the section; None where something finds no room."""
    facts, area = sheets.facts, sheets.of(textured=True, marked=True, told=_ALL_ROOTS).area
    for lip_apart in (True, False) if lip_needs_detail(pad, scale) else (False,):
        for right_limit, (reach, narrow) in product((inf, _right_limit(pad, area, scale)), _DETAILS):
            try:
                details = details_of(pad, shown, scale, facts, reach_mm=reach, lip_apart=lip_apart, narrow=narrow)
                windows = tuple((detail.centre, detail.window_mm) for detail in details)
                plan = Plan(
                    facts.units,
                    windows,
                    right_limit,
                    lip_apart,
                    facts.as_printed,
                    facts.located_by,
                    facts.critical,
                    is_trial=True,
                )
                found = _about_section(pad, shown, sheets, scale, plan, details)
            except NoRoomError:
                break
            if found:
                # Where there is room, other orders of placing may leave fewer leaders crossing other lines.
                better = _about_section(pad, shown, sheets, scale, replace(plan, is_trial=False), details)
                sheet, placed = better or found
                return sheet, _with_picture(pad, scale, placed, sheet)
    return None


def _about_section(
    pad: Pad, shown: dict[str, Measure], sheets: _Sheets, scale: Scale, plan: Plan, details: tuple[Detail, ...]
) -> tuple[Sheet, Placed] | None:
    """The section and all views about it; raises NoRoomError where the section itself has no room."""
    plain = section_block(pad, shown, scale, plan, details)
    for rooted, sized in _more_or_less(pad, shown):
        section, told = rooted_block(pad, plain, sheets.facts.units) if rooted else (plain, frozenset[Root]())
        textured = False
        if not sheets.facts.as_printed:
            with suppress(NoRoomError):
                section, textured = with_seat_texture(pad, section), True
        found = _arranged(pad, sized, sheets, section, details, textured=textured, told=told)
        if found:
            return found
    return None


def _more_or_less(pad: Pad, shown: dict[str, Measure]) -> Iterator[tuple[bool, dict[str, Measure]]]:
    """Roots on leaders or in a note, and the pocket's corners at the pocket too or only in a note."""
    fewer = {name: measure for name, measure in shown.items() if name != "relief_corner_radius_mm"}
    for rooted in (True, False) if pad.has_stem or pad.has_plug else (True,):
        yield rooted, shown
        if len(fewer) < len(shown):
            yield rooted, fewer


def _arranged(
    pad: Pad,
    shown: dict[str, Measure],
    sheets: _Sheets,
    section: Block,
    details: tuple[Detail, ...],
    *,
    textured: bool,
    told: frozenset[Root],
) -> tuple[Sheet, Placed] | None:
    """The views about the section: rather without the underside than without the side view, rather half than none."""
    windows = [Block(detail.view, detail.scale, detail.canvas) for detail in details]
    marking = marking_words(sheets.facts.units)
    undersides = [(below, with_sight(section) if below else section) for below in _undersides(pad, section.scale)]
    for half, marked in _WAYS:
        if (half is None and section.scale.factor >= 1) or (marked and not pad.has_side_to_mark):
            continue
        side = None if half is None else side_block(pad, section.scale, half=half)
        try:
            top = top_block(pad, shown, section.scale)
            side = with_marking(pad, side, marking) if side and marked == "side" else side
            top = with_marking(pad, top, marking) if marked == "top" else top
        except NoRoomError:
            continue
        sheet = sheets.of(textured=textured, marked=bool(marked), told=told)
        for below, main in undersides:
            for projected in _projected(sheet, main, side, top, at_right=sheets.at_right):
                placed = _with_extras(projected, [*below, *windows], sheet)
                if placed:
                    return sheet, placed
    return None


_WAYS: tuple[tuple[bool | None, str], ...] = (
    *((half, marked) for half, marked in product((False, True), ("side", "top"))),
    (False, ""),
    (True, ""),
    (None, "top"),
    (None, ""),
)
"""The side view whole, half or not at all, and the view that carries the words about marking."""


def _undersides(pad: Pad, scale: Scale) -> Iterator[list[Block]]:
    """View C where there is something to see: at the main scale, or one step smaller where that is still a picture, or none."""
    if pad.has_stem or pad.has_recess or pad.has_skirt:
        yield [underside_block(pad, scale, main=scale)]
        smaller = next((other for other in SCALES if other < scale), scale)
        if smaller < scale and pad.body_diameter_mm * smaller.factor >= _LEAST_UNDERSIDE_MM:
            yield [underside_block(pad, smaller, main=scale)]
    yield []


def _right_limit(pad: Pad, area: Box, scale: Scale) -> float:
    """How far right of the axis words may go, so that a half side view still fits beside them."""
    radius = pad.body_diameter_mm * scale.factor / 2
    left = radius + STYLE.first_row_mm + 2 * STYLE.row_pitch_mm + STYLE.text_gap_mm + 1.1 * STYLE.text_mm
    return area.width - left - STYLE.view_gap_mm - radius - STYLE.centre_over_mm / 2


def _projected(sheet: Sheet, section: Block, side: Block | None, top: Block, *, at_right: bool) -> Iterator[Placed]:
    """Section, side and top view in projection (ISO 5456-2), a little to the right too; nothing where the sheet is too small."""
    area, gap = sheet.area, STYLE.view_gap_mm
    main, plan = section.box, top.box
    beside = side.box if side else Box(0, main.bottom, 0, main.top)
    upper, lower = max(main.top, beside.top), min(main.bottom, beside.bottom)
    left = max(-main.left, -plan.left)
    side_x = left + main.right + gap - beside.left
    width = max(side_x + beside.right if side else left + main.right, left + plan.right)
    height = upper - main.bottom + gap + plan.height
    if width > area.width or height > area.height:
        return
    spread = min((area.height - height) / 3, gap)
    most = area.right - width + left
    across = (area.left + left, min(area.left + left + 9, most), *((most,) if at_right else ()))
    for x, third in product(across, (1.0, 0.0)):
        # In first angle the top view stands below the section, in third angle above it; seen from the right and seen from the
        # left the pad looks the same, so the side view may stay on the right.
        if sheet.facts.projection == "first":
            y = area.top - third * spread - upper
            plan_y = y + main.bottom - gap - third * spread - plan.top
        else:
            plan_y = area.top - third * spread - plan.top
            y = plan_y + plan.bottom - gap - third * spread - main.top
        placed = [(section, (x, y)), (top, (x, plan_y))]
        if side:
            placed.insert(1, (side, (x - left + side_x, y)))
        boxes = [block.box.moved(at) for block, at in placed]
        inside = y + lower >= area.bottom and y + upper <= area.top
        # A view's corner may be empty: the narrow centring marks ask for what is really there.
        free = not any(box.meets(sheet.kept_free[0]) for box in boxes) and not any(
            block.canvas.touches(mark.moved((-at[0], -at[1]))) for block, at in placed for mark in sheet.kept_free[1:]
        )
        if inside and free and not any(a.meets(b) for a, b in combinations(boxes, 2)):
            yield placed


def _with_extras(main: Placed, extras: list[Block], sheet: Sheet) -> Placed | None:
    """The projected views with the others, each in the first free place from the top right."""
    placed, space = list(main), FreeSpace(sheet.area)
    for box in sheet.kept_free:
        space.take(box)
    for block, at in placed:
        space.take_canvas(block.canvas, at, STYLE.view_gap_mm / 2)
    for block in extras:
        place = space.place_for(block.box.grown(STYLE.view_gap_mm / 4))
        if place is None:
            return None
        placed.append((block, place))
        space.take(block.box.moved(place).grown(STYLE.view_gap_mm / 2))
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
