"""Balloons in a column beside the picture: never overlapping, their straight leaders never crossing, for any targets."""

from collections.abc import Sequence
from functools import lru_cache

from geometry.outline import Point

CLOSEST = 5.0
"""Two targets nearer than this would be one dot."""


def spread(wanted: Sequence[float], *, pitch: float, low: float, high: float) -> tuple[float, ...]:
    """Places at least ``pitch`` apart, in ascending order, as near as possible to the wanted ones.

    Least squares under the spacing, by pooling neighbours that would come too close.

    >>> spread([10, 12, 80], pitch=10, low=0, high=100)
    (6.0, 16.0, 80.0)
    """
    pools: list[list[float]] = []
    for index, place in enumerate(sorted(wanted)):
        pools.append([place - index * pitch])
        while len(pools) > 1 and _mean(pools[-2]) >= _mean(pools[-1]):
            last = pools.pop()
            pools[-1] += last
    bases = [_mean(pool) for pool in pools for _ in pool]
    last_base = high - (len(bases) - 1) * pitch
    return tuple(max(low, min(base, last_base)) + index * pitch for index, base in enumerate(bases))


def _mean(values: Sequence[float]) -> float:
    return sum(values) / len(values)


def placed_beside(targets: Sequence[Point], *, pitch: float, low: float, high: float, x: float) -> tuple[float, ...]:
    """Where on the upright line at ``x`` the leader of each target ends, between ``low`` and ``high``.

    Several arrangements without crossings are tried; the shortest whose leaders also keep off the other targets is taken.
    """
    return _placed_beside(tuple(targets), pitch, low, high, x)


@lru_cache(maxsize=256)
def _placed_beside(targets: tuple[Point, ...], pitch: float, low: float, high: float, x: float) -> tuple[float, ...]:
    """The same for what stays the same, as one of two columns does while a size is typed."""
    if not targets:
        return ()
    pitch = min(pitch, (high - low) / max(1, len(targets) - 1))
    places = spread([y for _, y in targets], pitch=pitch, low=low, high=high)
    found: list[tuple[float, tuple[float, ...]]] = []
    shifts = _SHIFTS if len(targets) <= _MANY else _SHIFTS[:1]
    for shift in sorted({max(low - places[0], min(shift, high - places[-1])) for shift in shifts}, key=abs):
        column = _Column(targets, tuple(place + shift for place in places), x)
        found += [column.improved(column.start(is_from_top=is_from_top)) for is_from_top in (True, False)]
        if min(found)[0] < _GOOD_ENOUGH * len(targets):
            break
    return min(found)[1]


def in_places(targets: Sequence[Point], *, places: Sequence[float], x: float) -> tuple[float, ...]:
    """Which of the ascending ``places`` at ``x`` each target gets: no crossings, and leaders as short and clear as can be."""
    return _in_places(tuple(targets), tuple(places), x)


@lru_cache(maxsize=256)
def _in_places(targets: tuple[Point, ...], places: tuple[float, ...], x: float) -> tuple[float, ...]:
    column = _Column(targets, places, x)
    return min(column.improved(column.start(is_from_top=is_from_top)) for is_from_top in (True, False))[1]


_SHIFTS = (0.0, -30.0, 30.0)
_CLEAR = 9.0
"""How far a leader should keep from the dots of the others."""
_PER_CLOSE = 25.0
"""How much detour one unit of that clearance is worth."""
_GENTLE = 40.0
"""A leader that climbs or falls so much costs as much as one unit of detour each."""
_MOST_PASSES = 4
_MANY = 7
"""A longer column leaves little room to be moved in, and each trial takes longer."""
_GOOD_ENOUGH = 40.0
"""A mean cost below this needs no further trial."""


class _Column:
    """One set of places, and what each leader would cost at each of them."""

    def __init__(self, targets: Sequence[Point], places: Sequence[float], x: float) -> None:
        self.targets, self.places, self.x = targets, places, x
        self.by_place = [[self.cost(index, y) for index in range(len(targets))] for y in places]

    def cost(self, index: int, y: float) -> float:
        """How far a leader climbs or falls, and much more where it brushes the dot of another."""
        ax, ay = self.targets[index]
        dx, dy = self.x - ax, y - ay
        square = dx * dx + dy * dy
        length: float = square**0.5
        total = dy * dy / _GENTLE
        for px, py in self.targets:
            along = (px - ax) * dx + (py - ay) * dy
            if 0 < along < square:
                near = abs((px - ax) * dy - (py - ay) * dx) / length
                if near < _CLEAR:
                    total += _PER_CLOSE * (_CLEAR - near)
        return total

    def total(self, order: Sequence[int]) -> float:
        """What an arrangement costs, the targets named from the top down."""
        return sum([row[index] for row, index in zip(self.by_place, order, strict=True)])

    def start(self, *, is_from_top: bool) -> list[int]:
        """An arrangement without crossings."""
        given = without_crossings(self.targets, places=self.places, x=self.x, is_from_top=is_from_top)
        return sorted(range(len(given)), key=given.__getitem__)

    def improved(self, order: list[int]) -> tuple[float, tuple[float, ...]]:
        """The arrangement after every move of one balloon that is cheaper and crosses nothing, with its cost."""
        cost = self.total(order)
        for _ in range(_MOST_PASSES):
            before = cost
            for source in range(len(order)):
                order, cost = self.moved(order, cost, source)
            if cost == before:
                break
        given = [0.0] * len(order)
        for slot, index in enumerate(order):
            given[index] = self.places[slot]
        return cost, tuple(given)

    def moved(self, order: list[int], cost: float, source: int) -> tuple[list[int], float]:
        """The arrangement with one balloon taken from its place to a better one, with its cost."""
        best, rows, before = order, self.by_place, cost
        for step in (1, -1):
            tried, running, slot = list(order), before, source
            while 0 <= slot + step < len(order):
                a, b = tried[slot], tried[slot + step]
                running += rows[slot][b] + rows[slot + step][a] - rows[slot][a] - rows[slot + step][b]
                tried[slot], tried[slot + step] = b, a
                slot += step
                if running < cost - 1e-6 and not self.has_crossing(tried):
                    best, cost = list(tried), running
        return best, cost

    def has_crossing(self, order: Sequence[int]) -> bool:
        """Whether any two leaders meet: where both run side by side, the upper must stay above the lower."""
        for lower, low_index in enumerate(order):
            for upper in range(lower):
                (ax, ay), (bx, by) = self.targets[order[upper]], self.targets[low_index]
                start = bx if abs(self.x - bx) < abs(self.x - ax) else ax
                high, low = self.places[upper], self.places[lower]
                level_a = high + (ay - high) * (start - self.x) / (ax - self.x)
                level_b = low + (by - low) * (start - self.x) / (bx - self.x)
                if level_a >= level_b - _APART:
                    return True
        return False


_APART = 0.5
"""Leaders nearer than this where the shorter one begins would seem to touch."""


def without_crossings(
    targets: Sequence[Point], *, places: Sequence[float], x: float, is_from_top: bool = True
) -> tuple[float, ...]:
    """Which of the ascending ``places`` on the upright line at ``x`` each target gets; all targets lie on one side of it.

    The uppermost place takes the first target that a ray meets as it swings down from the vertical: every other target and
    every other place then lie below that leader, so that none can cross it. The same works from the bottom up. Page
    coordinates, y down.
    """
    left = [(y, abs(x - across), index) for index, (across, y) in enumerate(targets)]
    given = [0.0] * len(targets)
    sense = 1 if is_from_top else -1
    for place in places[::sense]:
        first = min([(round(sense * (y - place) / away, 9), away, index, y) for y, away, index in left])
        _, away, index, y = first
        given[index] = place
        left.remove((y, away, index))
    return tuple(given)


def told_apart(points: Sequence[Point]) -> tuple[Point, ...]:
    """The points, those that would hide another one moved up until they are seen beside it."""
    kept: list[Point] = []
    for x, wanted in points:
        y = wanted
        while any(abs(x - a) < CLOSEST and abs(y - b) < CLOSEST for a, b in kept):
            y -= CLOSEST
        kept.append((x, y))
    return tuple(kept)
