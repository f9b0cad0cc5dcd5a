"""Balloons in a column beside the picture: never overlapping, their straight leaders never crossing, for any targets."""

from collections.abc import Sequence

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
    if not targets:
        return ()
    pitch = min(pitch, (high - low) / max(1, len(targets) - 1))
    places = spread([y for _, y in targets], pitch=pitch, low=low, high=high)
    tried = []
    for shift in _SHIFTS:
        moved = _moved(places, shift, low=low, high=high)
        for is_from_top in (True, False):
            given = without_crossings(targets, places=moved, x=x, is_from_top=is_from_top)
            tried.append((_cost(targets, given, x), given))
    return min(tried, key=lambda trial: trial[0])[1]


_SHIFTS = (0.0, -20.0, 20.0, -45.0, 45.0)
_CLEAR = 9.0
"""How far a leader should keep from the dots of the others."""


def _moved(places: Sequence[float], shift: float, *, low: float, high: float) -> tuple[float, ...]:
    """The whole column moved, as far as there is room."""
    allowed = max(low - places[0], min(shift, high - places[-1]))
    return tuple(place + allowed for place in places)


def _cost(targets: Sequence[Point], places: Sequence[float], x: float) -> float:
    """Length of all leaders, and much more for each that brushes the dot of another."""
    total = 0.0
    for (ax, ay), by in zip(targets, places, strict=True):
        dx, dy = x - ax, by - ay
        square = dx * dx + dy * dy
        total += square**0.5
        for px, py in targets:
            along = (px - ax) * dx + (py - ay) * dy
            if 0 < along < square:
                near = abs((px - ax) * dy - (py - ay) * dx) / square**0.5
                total += 120 * max(0.0, _CLEAR - near)
    return total


def without_crossings(
    targets: Sequence[Point], *, places: Sequence[float], x: float, is_from_top: bool = True
) -> tuple[float, ...]:
    """Which of the ascending ``places`` on the upright line at ``x`` each target gets; all targets lie on one side of it.

    The uppermost place takes the first target that a ray meets as it swings down from the vertical: every other target and
    every other place then lie below that leader, so that none can cross it. The same works from the bottom up. Page
    coordinates, y down.
    """
    left = set(range(len(targets)))
    given = [0.0] * len(targets)
    sense = 1 if is_from_top else -1
    for place in places[::sense]:

        def steepness(index: int, place: float = place) -> tuple[float, float, int]:
            away = abs(x - targets[index][0])
            return sense * (targets[index][1] - place) / away, away, index

        first = min(left, key=steepness)
        given[first] = place
        left.remove(first)
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
