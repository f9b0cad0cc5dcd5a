"""A rigid body on springs that only push, raised at one point: which springs push, as the rise grows.

All springs have the same static deflection δ, so a spring lets go where its corner of the body has risen by δ.
Between two changes everything is linear in the rise. The state is the least of a convex energy under the rise
of the one point, so at each change there is a way to go on, and the force at the point never falls.
"""

import math
from collections.abc import Iterable, Iterator
from itertools import combinations
from typing import NamedTuple

Plan = tuple[float, float]
"""Two distances in plan or two slopes: along x and along y."""

_MOST_CHANGES = 40
"""Far above the number that cars show (5 at most in a hundred thousand): more would be a mistake of this program."""
_STILL = 1e-9
"""A corner that rises by less than this share of the lifting point's rise does not move."""
_SINGULAR = 1e-10
"""Wheels that stand this nearly on one line with the lifting point do not hold the body against turning about it."""


class Springs(NamedTuple):
    """Springs under a body, as seen from its lifting point."""

    places_mm: tuple[Plan, ...]
    """Distance of each spring from the lifting point, in plan."""
    static_loads_n: tuple[float, ...]
    static_deflection_mm: float


class Segment(NamedTuple):
    """A stretch of rise over which the same springs push, and all is linear."""

    springs: Springs
    start_mm: float
    pushing: frozenset[int]
    slopes: Plan
    """The body's slopes along x and y at the start."""
    turning: Plan
    """Change of the slopes per mm of rise."""

    def corner_rise_mm(self, spring: int) -> float:
        """How far the body over a spring has risen at the start."""
        return self.start_mm + _dot(self.springs.places_mm[spring], self.slopes)

    def corner_rate(self, spring: int) -> float:
        """Rise of the body over a spring per mm of rise of the point."""
        return 1 + _dot(self.springs.places_mm[spring], self.turning)

    def slopes_at(self, rise_mm: float) -> Plan:
        """The body's slopes at a rise inside this segment."""
        step = rise_mm - self.start_mm
        return self.slopes[0] + step * self.turning[0], self.slopes[1] + step * self.turning[1]

    def load_n(self, spring: int, rise_mm: float) -> float:
        """What a spring carries at a rise inside this segment."""
        if spring not in self.pushing:
            return 0.0
        sunk = (
            1
            - (rise_mm + _dot(self.springs.places_mm[spring], self.slopes_at(rise_mm)))
            / self.springs.static_deflection_mm
        )
        return max(0.0, self.springs.static_loads_n[spring] * sunk)


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
        slopes = segment.slopes_at(rise_mm)
        touching = {i for i in everything if _on_edge(springs, i, rise_mm=rise_mm, slopes=slopes)}
        edge = frozenset(touching | {min(events, key=events.__getitem__)})
        segment = _next_segment(springs, rise_mm=rise_mm, slopes=slopes, firm=segment.pushing - edge, edge=edge)
    raise ArithmeticError(f"more than {_MOST_CHANGES} changes of contact: {springs}")


def _event_mm(segment: Segment, spring: int) -> float:
    """The rise at which a pushing spring leaves or a lifted one comes down; infinite if it does neither."""
    rate = segment.corner_rate(spring)
    moves = rate > _STILL if spring in segment.pushing else rate < -_STILL
    if not moves:
        return math.inf
    return segment.start_mm + max(0.0, (segment.springs.static_deflection_mm - segment.corner_rise_mm(spring)) / rate)


def _on_edge(springs: Springs, spring: int, *, rise_mm: float, slopes: Plan) -> bool:
    """Whether a spring just touches without load."""
    gap = rise_mm + _dot(springs.places_mm[spring], slopes) - springs.static_deflection_mm
    return abs(gap) <= _STILL * (rise_mm + springs.static_deflection_mm)


def _next_segment(
    springs: Springs, *, rise_mm: float, slopes: Plan, firm: frozenset[int], edge: frozenset[int]
) -> Segment:
    """Choose which of the springs that just touch go on pushing: those whose corner sinks; the others must rise.

    The energy is convex, so such a choice exists; the largest one is taken, which holds the body where it could
    turn freely.
    """
    for kept in _subsets(edge):
        turning = _turning(springs, firm | kept)
        if turning is None:
            continue
        segment = Segment(springs, rise_mm, firm | kept, slopes, turning)
        if all(segment.corner_rate(i) <= _STILL for i in kept) and all(
            segment.corner_rate(i) >= -_STILL for i in edge - kept
        ):
            return segment
    raise ArithmeticError(f"no way to go on at a rise of {rise_mm:g} mm: {springs}")


def _subsets(springs: Iterable[int]) -> Iterator[frozenset[int]]:
    """All subsets, the largest first."""
    ordered = sorted(springs)
    return (frozenset(c) for size in range(len(ordered), -1, -1) for c in combinations(ordered, size))


def _turning(springs: Springs, pushing: frozenset[int]) -> Plan | None:
    """Change of both slopes per mm of rise, from moments about the lifting point; None where nothing holds the body."""
    a = b = c = p = q = 0.0
    for i in pushing:
        (x, y), k = springs.places_mm[i], springs.static_loads_n[i]
        a, b, c, p, q = a + k * x * x, b + k * x * y, c + k * y * y, p - k * x, q - k * y
    det = a * c - b * b
    if det <= _SINGULAR * a * c:
        return None
    return (c * p - b * q) / det, (a * q - b * p) / det
