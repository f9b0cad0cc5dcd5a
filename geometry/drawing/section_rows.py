"""The section with its balloons in even rows, for a page that asks its questions beside them.

Rows keep their places while a size is typed, and stand at whole hundredths of the picture's height, which a page without
styles of its own can follow.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil, floor

from geometry.drawing.section_columns import in_places
from geometry.drawing.section_page import RADIUS, Box, Page, Placed, Room
from geometry.outline import Point

FIELD, MARK, HEADING = 76.0, 46.0, 48.0
"""Room from a balloon to the next one below it, in page units: a question has a box and two lines of notes; a mark's two lines
of words stand beside it. A question of the car that stands left has room for the jack's heading below it."""
_HEADROOM, _FOOTROOM = 72.0, 62.0
"""Room above the topmost thing, and between the last balloon and the ground."""
_CUT = 50.0
"""The picture's height changes in steps, so that it mostly keeps it while a size is typed."""
_COARSE = 4
"""Columns start at every fourth hundredth, so that questions keep their places, too."""
_TRIES = 5
_TARGET = 22.0
"""Half of what a finger may hit."""


def unplaced(targets: Sequence[Point], x: float, room: Room) -> Sequence[float]:
    """Balloons anywhere in their column: rows are found later."""
    return [room.top + 44.0 * index for index in range(len(targets))]


def in_even_rows(page: Page, top: float) -> Page:
    """The same page with its balloons in rows near what they point at, without what is empty above the topmost shape.

    ``top`` is the level of that shape. Each balloon stays on the side of what it points at, so that no leader passes the
    centre line, and none from the left can meet one from the right.
    """
    own = page.placed
    sides = [[i for i, item in enumerate(own) if item.is_left == left] for left in (True, False)]
    need = max((_HEADROOM + _span([own[i] for i in side]) + _FOOTROOM for side in sides if side), default=0.0)
    cut = floor(min(top - _HEADROOM, page.ground_y - need) / _CUT) * _CUT
    placed = [_raised(item, cut) for item in own]
    height, ground = page.height - cut, page.ground_y - cut
    for side in sides:
        _stand_in_rows(placed, side, height=height, ground=ground)
    frame = replace(page.frame, y0=page.frame.y0 - cut)
    return replace(page, frame=frame, height=height, ground_y=ground, placed=tuple(placed))


def _span(items: Sequence[Placed]) -> float:
    """Room that a column needs from its first balloon to its last, in whichever order; its last may be either."""
    rooms = sorted(_room_below(item) for item in items)
    return sum(rooms[1:])


def _room_below(item: Placed) -> float:
    if item.pointer is None:
        return MARK
    return FIELD + HEADING if item.is_left and not item.pointer.field.startswith("jack.") else FIELD


def _raised(item: Placed, by: float) -> Placed:
    (ax, ay), (bx, by_) = item.leader
    return replace(item, centre=(item.centre[0], item.centre[1] - by), leader=((ax, ay - by), (bx, by_ - by)))


@dataclass(frozen=True, slots=True)
class _Rows:
    """Where a column's rows may stand."""

    hundredth: float
    first: float
    last: float

    def places(self, rooms: Sequence[float], middle: float) -> list[float]:
        """Levels of the rows with these rooms below each, centred on a level as far as there is space."""
        steps = [ceil(room / self.hundredth) for room in rooms[:-1]]
        most = floor((self.last - self.first) / self.hundredth)
        while steps and sum(steps) > most:
            steps[steps.index(max(steps))] -= 1
        total = sum(steps) * self.hundredth
        start = max(self.first, min(middle - total / 2, self.last - total))
        row = round(start / self.hundredth / _COARSE) * _COARSE
        row = max(0, min(row, floor(self.last / self.hundredth) - sum(steps)))
        return [self.hundredth * (row + sum(steps[:index])) for index in range(len(rooms))]


def _stand_in_rows(placed: list[Placed], side: Sequence[int], *, height: float, ground: float) -> None:
    """Give the items of one column their rows: the room below each depends on what it is, so on their order."""
    if not side:
        return
    items = [placed[i] for i in side]
    targets, near = [item.leader[0] for item in items], items[0].leader[1][0]
    rows = _Rows(height / 100, _HEADROOM, ground - _FOOTROOM)
    middle = sum(y for _, y in targets) / len(targets)
    order = sorted(range(len(items)), key=lambda n: targets[n][1])
    for attempt in range(_TRIES):
        # Where the order never settles, equal rows do for any order.
        even = attempt == _TRIES - 1
        rooms = [FIELD + HEADING if even else _room_below(items[n]) for n in order]
        levels = in_places(targets, places=rows.places(rooms, middle), x=near)
        found = sorted(range(len(items)), key=levels.__getitem__)
        if found == order:
            break
        order = found
    for i, item, y in zip(side, items, levels, strict=True):
        placed[i] = _moved(item, y)


def _moved(item: Placed, y: float) -> Placed:
    """The item at another level of its column, with all that belongs to it."""
    x = item.centre[0]
    ball = Box(x - RADIUS, y - RADIUS, x + RADIUS, y + RADIUS)
    target = Box(x - _TARGET, y - _TARGET, x + _TARGET, y + _TARGET)
    leader = (item.leader[0], (item.leader[1][0], y))
    return replace(item, centre=(x, y), leader=leader, label_box=ball, target=target)


def hundredths(page: Page) -> dict[str, int]:
    """At which hundredth of the picture's height each balloon or mark stands, by its number or letter."""
    return {item.mark: round(100 * item.centre[1] / page.height) for item in page.placed}
