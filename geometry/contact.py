"""A rigid body on springs that only push, raised at one point: which springs push, as the rise grows.

A spring carries N = max(0, N₀ − k z) and lets go where its corner of the body has risen by z = N₀/k. Between two
changes everything is linear in the rise, so the rise is followed exactly from one change to the next. The state is the
least of a convex energy under the rise of the one point: at each change there is a way to go on, and the force at the
point never falls.
"""

import math
from collections.abc import Iterable, Iterator
from itertools import combinations
from typing import NamedTuple

Plan = tuple[float, float]
"""Two distances in plan or two slopes: along x and along y."""

_MOST_CHANGES = 40
"""Far above what is seen (two for a car, ten for six springs anywhere): more would be a mistake of this program."""
_STILL = 1e-9
"""A corner that rises by less than this share of the lifting point's rise does not move."""
_SINGULAR = 1e-10
"""Springs that stand this nearly on one line with the lifting point do not keep the body from turning about it."""


class Springs(NamedTuple):
    """Springs under a body at rest, as seen from its lifting point."""

    places_mm: tuple[Plan, ...]
    """Distance of each spring from the lifting point, in plan."""
    static_loads_n: tuple[float, ...]
    stiffness_n_per_mm: tuple[float, ...]

    def lets_go_mm(self, spring: int) -> float:
        """Rise of its corner at which a spring carries nothing any more."""
        return self.static_loads_n[spring] / self.stiffness_n_per_mm[spring]


class Segment(NamedTuple):
    """A stretch of rise over which the same springs push, and all is linear."""

    springs: Springs
    start_mm: float
    pushing: frozenset[int]
    slopes: Plan
    """The body's slopes along x and y at the start."""
    turning: Plan
    """Change of the slopes per mm of rise."""

    def slopes_at(self, rise_mm: float) -> Plan:
        """The body's slopes at a rise inside this segment."""
        step = rise_mm - self.start_mm
        return self.slopes[0] + step * self.turning[0], self.slopes[1] + step * self.turning[1]

    def corner_rise_mm(self, spring: int, rise_mm: float) -> float:
        """How far the body over a spring has risen."""
        return rise_mm + _dot(self.springs.places_mm[spring], self.slopes_at(rise_mm))

    def corner_rate(self, spring: int) -> float:
        """Rise of the body over a spring per mm of rise of the point."""
        return 1 + _dot(self.springs.places_mm[spring], self.turning)

    def load_n(self, spring: int, rise_mm: float) -> float:
        """What a spring carries at a rise inside this segment."""
        if spring not in self.pushing:
            return 0.0
        gap = self.springs.lets_go_mm(spring) - self.corner_rise_mm(spring, rise_mm)
        return max(0.0, self.springs.stiffness_n_per_mm[spring] * gap)


def _dot(a: Plan, b: Plan) -> float:
    """Rise at a place from the two slopes."""
    return a[0] * b[0] + a[1] * b[1]


def segments(springs: Springs) -> Iterator[Segment]:
    """Follow the rise from one change of contact to the next, until nothing changes any more."""
    everything = frozenset(range(len(springs.places_mm)))
    segment = _next_segment(springs, rise_mm=0.0, slopes=(0.0, 0.0), firm=everything, edge=frozenset())
    for _ in range(_MOST_CHANGES):
        yield segment
        events = {spring: rise for spring in everything if (rise := _event_mm(segment, spring)) < math.inf}
        if not events:
            return
        rise_mm = min(events.values())
        edge = frozenset(i for i, rise in events.items() if rise == rise_mm)
        slopes = segment.slopes_at(rise_mm)
        segment = _next_segment(springs, rise_mm=rise_mm, slopes=slopes, firm=segment.pushing - edge, edge=edge)
    raise ArithmeticError(f"more than {_MOST_CHANGES} changes of contact: {springs}")


def _event_mm(segment: Segment, spring: int) -> float:
    """The rise at which a pushing spring leaves or a lifted one comes down; infinite if it does neither."""
    rate, start_mm = segment.corner_rate(spring), segment.start_mm
    moves = rate > _STILL if spring in segment.pushing else rate < -_STILL
    if not moves:
        return math.inf
    return start_mm + max(0.0, (segment.springs.lets_go_mm(spring) - segment.corner_rise_mm(spring, start_mm)) / rate)


def _next_segment(
    springs: Springs, *, rise_mm: float, slopes: Plan, firm: frozenset[int], edge: frozenset[int]
) -> Segment:
    """Choose which of the springs that change go on pushing: those whose corner sinks; the others must rise.

    The energy is convex, so such a choice exists; the largest one is taken, which keeps the body where it could turn
    freely. Springs that change a hair later follow in a step of their own.
    """
    for kept in _subsets(edge):
        turning = _turning(springs, firm | kept)
        if turning is None:
            continue
        segment = Segment(springs, rise_mm, firm | kept, slopes, turning)
        sinking = all(segment.corner_rate(i) <= _STILL for i in kept)
        if sinking and all(segment.corner_rate(i) >= -_STILL for i in edge - kept):
            return segment
    raise ArithmeticError(f"no way to go on at a rise of {rise_mm:g} mm: {springs}")


def _subsets(springs: Iterable[int]) -> Iterator[frozenset[int]]:
    """All subsets, the largest first."""
    ordered = sorted(springs)
    return (frozenset(c) for size in range(len(ordered), -1, -1) for c in combinations(ordered, size))


def _turning(springs: Springs, pushing: frozenset[int]) -> Plan | None:
    """Change of both slopes per mm of rise, from moments about the lifting point; None where nothing stops it."""
    a = b = c = p = q = 0.0
    for i in pushing:
        (x, y), k = springs.places_mm[i], springs.stiffness_n_per_mm[i]
        a, b, c, p, q = a + k * x * x, b + k * x * y, c + k * y * y, p - k * x, q - k * y
    det = a * c - b * b
    if det <= _SINGULAR * a * c:
        return None
    return (c * p - b * q) / det, (a * q - b * p) / det
