"""Where the paper of the isometric picture is covered by a pad of any kind: found by looking, column by column."""

from collections.abc import Iterator
from functools import lru_cache
from math import pi, sqrt

import numpy as np

from geometry.drawing.inside import Numbers, Truths, inside
from geometry.drawing.model import Point
from geometry.pad import Pad

_TO_EYE = np.array([1.0, -1.0, 1.0]) / sqrt(3)
_RIGHT = np.array([1.0, 1.0, 0.0]) / sqrt(2)
_UP = np.array([-1.0, 1.0, 2.0]) / sqrt(6)
_COLUMNS = 120
_ROWS = 80
_LOOKS = 160
_HALVINGS = 9


@lru_cache(maxsize=64)
def covered(pad: Pad) -> tuple[tuple[Point, ...], ...]:
    """Closed outlines, side by side, that together are what covers the paper: runs of one column joined to those of the next."""
    return tuple(_closed(chain) for chain in _chains(pad) if len(chain) > 1)


def _chains(pad: Pad) -> Iterator[list[tuple[float, float, float]]]:
    """Runs that go on from column to column: (column, lower end, upper end)."""
    half = pad.body_diameter_mm / 2 * (1 - 1e-6)
    # Closer together towards the sides, where a round outline turns upright.
    columns = half * np.sin(np.linspace(-pi / 2, pi / 2, _COLUMNS))
    open_: list[list[tuple[float, float, float]]] = []
    for column, runs in zip(columns, _runs(pad, columns), strict=True):
        grown: list[list[tuple[float, float, float]]] = []
        for low, high in runs:
            left = next((chain for chain in open_ if _touches(chain[-1], low, high)), None)
            if left is not None:
                open_.remove(left)
            grown.append([*(left or []), (float(column), low, high)])
        yield from open_
        open_ = grown
    yield from open_


def _touches(last: tuple[float, float, float], low: float, high: float) -> bool:
    return min(last[2], high) > max(last[1], low)


def _closed(chain: list[tuple[float, float, float]]) -> tuple[Point, ...]:
    """Along the lower ends, and back along the upper ones."""
    return (*((x, low) for x, low, _ in chain), *((x, high) for x, _, high in reversed(chain)))


def _runs(pad: Pad, columns: Numbers) -> Iterator[list[tuple[float, float]]]:
    """Of each column, the stretches that are covered, their ends found by halving."""
    low = (-2 * pad.foot_depth_mm - pad.body_diameter_mm) / sqrt(6) - 1
    high = (2 * pad.top_height_mm + pad.body_diameter_mm) / sqrt(6) + 1
    levels = np.linspace(low, high, _ROWS)
    for column in columns:
        found = _covers(pad, np.full_like(levels, column), levels)
        turns = np.flatnonzero(found[1:] != found[:-1])
        ends = _refined(pad, float(column), levels[turns], levels[turns + 1], found[turns])
        yield [(float(a), float(b)) for a, b in zip(ends[::2], ends[1::2], strict=True)]


def _refined(pad: Pad, column: float, below: Numbers, above: Numbers, was: Truths) -> Numbers:
    for _ in range(_HALVINGS if len(below) else 0):
        middle = (below + above) / 2
        same = _covers(pad, np.full_like(middle, column), middle) == was
        below, above = np.where(same, middle, below), np.where(same, above, middle)
    return below


def _covers(pad: Pad, across: Numbers, up: Numbers) -> Truths:
    """Whether the sight line through each place on the paper meets the pad."""
    base = across[:, None] * _RIGHT + up[:, None] * _UP
    # A sight line can only meet what lies between the lowest and the highest point.
    first = (-pad.foot_depth_mm - base[:, 2]) / _TO_EYE[2]
    last = (pad.top_height_mm - base[:, 2]) / _TO_EYE[2]
    ways = first[:, None] + (last - first)[:, None] * np.linspace(0, 1, _LOOKS)
    looked = base[:, None, :] + ways[..., None] * _TO_EYE
    return np.asarray(inside(pad, looked[..., 0], looked[..., 1], looked[..., 2]).any(axis=1))
