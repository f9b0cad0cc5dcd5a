"""Where the views stand on a sheet: in projection about the section, the others where there is room."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import product

from geometry.drawing.block import Block
from geometry.drawing.blocks import (
    isometric_block,
    named,
    with_sight,
)
from geometry.drawing.details import Detail
from geometry.drawing.facts import SheetFacts
from geometry.drawing.frame import Sheet, fill_sheet
from geometry.drawing.free_space import FreeSpace
from geometry.drawing.main_signs import wanted_signs
from geometry.drawing.model import Box, Point
from geometry.drawing.notes import OnLeader, note_words
from geometry.drawing.other_views import WAYS, Leeway, OtherViews
from geometry.drawing.placing import NoRoomError
from geometry.drawing.scales import Scale
from geometry.drawing.style import STYLE
from geometry.pad import Pad

_LEAST_PICTURE_MM = 12.0
_PICTURE_SHARES = (1.0, 0.8, 0.65, 0.5, 0.4, 0.3, 0.2, 0.1)
"""Of the main scale, as large as there is room for."""
_ALL_ON_LEADERS: frozenset[OnLeader] = frozenset(
    {"stem root", "lead-in", "plug root", "pocket corners", "seat texture"}
)
Placed = list[tuple[Block, Point]]
"""Views and where their origins stand on the sheet."""


@dataclass(slots=True)
class Sheets:
    """The empty sheet of a pad: what has a sign at the part is not said in its notes; what has not, is."""

    pad: Pad
    facts: SheetFacts
    made: dict[tuple[bool, frozenset[OnLeader]], Sheet] = field(default_factory=dict)

    @property
    def largest(self) -> Box:
        """The drawing area where as little as can be stands in notes."""
        return self.of(marked=True, told=_ALL_ON_LEADERS).area

    def of(self, *, marked: bool, told: frozenset[OnLeader]) -> Sheet:
        """The sheet with notes on what is not told on leaders, and on marking where no view tells it."""
        key = (marked, told)
        if key not in self.made:
            words = note_words(self.facts, self.pad, marking=not marked, told=told)
            self.made[key] = fill_sheet(self.facts, words)
        return self.made[key]


def arranged(
    others: OtherViews,
    sheets: Sheets,
    section: Block,
    details: tuple[Detail, ...],
    *,
    told: frozenset[OnLeader],
    leeway: Leeway,
) -> tuple[Sheet, Placed] | None:
    """The views about the section: with the underside of what has one wherever a side view leaves room for it, rather a half one.

    What the section does not tell on leaders, of all that is wanted, stands at the side view or else in the notes.
    """
    rest = wanted_signs(others.pad, is_printed=sheets.facts.as_printed) - told
    windows = [Block(detail.view, detail.scale, detail.canvas) for detail in details]
    *seen_below, bare = [(below, with_sight(section, "C") if below else section) for below in others.undersides]
    beside = [way for way in WAYS if way.half is not None]
    for way, (below, main) in (*product(beside, seen_below), *product(WAYS, (bare,))):
        views = others.beside(way, section.canvas.moved, rest if way.half is not None else frozenset())
        if (
            views is None
            or (way.half is None and section.scale.factor >= 1)
            or (way.marked and not others.pad.has_side_to_mark)
        ):
            continue
        side, top, at_others = views
        sheet = sheets.of(marked=bool(way.marked), told=told | at_others)
        apart = [named(side, "D")] if side and way.apart else []
        try:
            seen = with_sight(main, "D", aside=True) if apart else main
        except NoRoomError:
            continue
        for projected in _projected(sheet, seen, None if apart else side, top, leeway):
            placed = _with_extras(projected, [*apart, *below, *windows], sheet)
            if placed:
                return sheet, placed
    return None


def right_limit_of(pad: Pad, area: Box, scale: Scale) -> float:
    """How far right of the axis words may go, so that a half side view still fits beside them."""
    radius = pad.body_diameter_mm * scale.factor / 2
    left = radius + STYLE.first_row_mm + 2 * STYLE.row_pitch_mm + STYLE.text_gap_mm + 1.1 * STYLE.text_mm
    return area.width - left - STYLE.view_gap_mm - radius - STYLE.centre_over_mm / 2


def _projected(sheet: Sheet, section: Block, side: Block | None, top: Block, leeway: Leeway) -> Iterator[Placed]:
    """Section, side and top view in projection (ISO 5456-2), a little to the right too; nothing where the sheet is too small."""
    if side is None:
        yield from _with_side_at(sheet, section, None, top, leeway, 0.0)
        return
    gap = STYLE.view_gap_mm
    # Rather wholly beside the section, else with words of either above or below words of the other.
    wholly = section.box.right - side.box.left + gap
    yield from _with_side_at(sheet, section, side, top, leeway, wholly)
    least = (section.view.box.right - side.view.box.left) * section.scale.factor + gap
    if max(-section.box.left, -top.box.left) + least + side.box.right <= sheet.area.width:
        closer = section.apart_from(side, gap, upwards=False)
        if closer < wholly:
            yield from _with_side_at(sheet, section, side, top, leeway, closer)


def _with_side_at(
    sheet: Sheet, section: Block, side: Block | None, top: Block, leeway: Leeway, aside: float
) -> Iterator[Placed]:
    """The same with the side view's origin so far right of the section's."""
    area, gap = sheet.area, STYLE.view_gap_mm
    main, plan = section.box, top.box
    beside = side.box if side else Box(0, main.bottom, 0, main.top)
    left = max(-main.left, -plan.left)
    width = left + max(main.right, plan.right, aside + beside.right)
    if width > area.width:
        return
    # In first angle the top view stands below the section, in third angle above it; seen from the right and seen from the left
    # the pad looks the same, so the side view may stay on the right.
    is_first = sheet.facts.projection == "first"
    lower, upper = (top, section) if is_first else (section, top)
    apart = lower.apart_from(upper, gap / 2, upwards=True) if leeway.crowded else lower.box.top - upper.box.bottom + gap
    up = -apart if is_first else apart
    height = max(main.top, beside.top, up + plan.top) - min(main.bottom, beside.bottom, up + plan.bottom)
    if height > area.height:
        return
    foot, *marks = sheet.kept_free
    spread = min((area.height - height) / 3, gap)
    most = area.right - width + left
    # A little aside something may be clear of a centring mark.
    places = [min(area.left + left + further, most) for further in (0, 9, 4, 14)]
    across = dict.fromkeys((*places, most) if leeway.at_right else places)
    for x, third in product(across, (1.0, 0.0)):
        further = up + (-third if is_first else third) * spread
        y = area.top - third * spread - max(main.top, beside.top, further + plan.top)
        placed = [(section, (x, y)), (top, (x, y + further))]
        if side:
            placed.insert(1, (side, (x + aside, y)))
        boxes = [block.box.moved(at) for block, at in placed]
        if min(box.bottom for box in boxes) < area.bottom or (side and boxes[1].meets(boxes[2])):
            continue
        # A view's corner may be empty: the narrow centring marks ask for what is really there.
        if not any(box.meets(foot) for box in boxes) and not any(
            block.touches(mark.moved((-at[0], -at[1]))) for block, at in placed for mark in marks
        ):
            yield placed


def _with_extras(main: Placed, extras: list[Block], sheet: Sheet) -> Placed | None:
    """The projected views with the others, each in the first free place from the top right."""
    placed, space = list(main), FreeSpace(sheet.area)
    for box in sheet.kept_free:
        space.take(box)
    for block, at in placed:
        space.take_all(block.edges, at, STYLE.view_gap_mm / 2)
    for block in extras:
        place = space.place_for(block.box.grown(STYLE.view_gap_mm / 4))
        if place is None:
            return None
        placed.append((block, place))
        space.take(block.box.moved(place).grown(STYLE.view_gap_mm / 2))
    return placed


def with_picture(pad: Pad, scale: Scale, placed: Placed, sheet: Sheet) -> Placed:
    """The views with an isometric picture as large as there is room for, if there is."""
    for share in _PICTURE_SHARES:
        # Nothing is measured in it, so it needs no standard scale and none is written beside it.
        smaller = Scale(scale.factor * share, "")
        if pad.body_diameter_mm * smaller.factor < _LEAST_PICTURE_MM:
            break
        more = _with_extras(placed, [isometric_block(pad, smaller)], sheet)
        if more:
            return more
    return placed
