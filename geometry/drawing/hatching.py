"""Where the lines of a hatching begin: so that none lies on an edge of the part that runs as they do."""

from collections.abc import Sequence
from itertools import product
from math import hypot, sqrt

from geometry.drawing.model import Point
from geometry.drawing.style import STYLE

_LEAST_EDGE_MM = 2.5
"""A shorter edge is lost beside its corners anyway, or is a piece of a window's rim."""
_SHARES = 12
_NEARLY_MM = 0.01


def hatching_through(corners: Sequence[Point], bulges: Sequence[float]) -> Point:
    """A point that a line of a region's hatching at 45° goes through: edges along it keep off its lines as far as can be.

    The region by its corners in paper mm, and the bulges of its edges as in ``Area``.
    """
    following = (*corners[1:], corners[0])
    levels = [
        (ay - ax) / sqrt(2)
        for (ax, ay), (bx, by), bulge in zip(corners, following, bulges, strict=True)
        if not bulge and abs((by - ay) - (bx - ax)) < _NEARLY_MM and hypot(bx - ax, by - ay) > _LEAST_EDGE_MM
    ]
    step = STYLE.hatch_step_mm
    shifts = [step * share / _SHARES for share in range(_SHARES)]
    near = dict.fromkeys(shifts, 0.0)
    for shift, level in product(shifts, levels):
        off = (level - shift) % step
        near[shift] = min(near[shift] or step, off, step - off)
    best = max(shifts, key=lambda shift: near[shift])
    return -best / sqrt(2), best / sqrt(2)
