"""Where a round face and a rectangular one meet."""

import itertools
from collections.abc import Iterator
from math import asin, sqrt


def disc_in_rectangle_mm2(
    *, diameter_mm: float, width_mm: float, length_mm: float, corner_radius_mm: float = 0.0
) -> float:
    """Area that a disc and a rectangle about the same middle share; the rectangle's corners may be round.

    Four times the quarter ∫ min(y, √(R² − x²)) dx from 0 to min(a, R), with y the rectangle's outline, a half its width
    and R half the disc's diameter, taken piece by piece between the points where one outline crosses the other.

    Parameters
    ----------
    diameter_mm : float
        Diameter of the disc, [mm]
    width_mm : float
        One side of the rectangle, [mm]
    length_mm : float
        Its other side, [mm]
    corner_radius_mm : float
        Radius of its corners, at most half the smaller side, [mm]

    Returns
    -------
    float
        The shared area, [mm²]

    Notes
    -----
    Exact; elementary integration, no source needed.

    Examples
    --------
    A disc that lies within the rectangle, a rectangle within the disc, and the same with its corners rounded by 5 mm:

    >>> round(disc_in_rectangle_mm2(diameter_mm=20, width_mm=30, length_mm=40), 3)
    314.159
    >>> round(disc_in_rectangle_mm2(diameter_mm=50, width_mm=30, length_mm=40), 9)
    1200.0
    >>> round(disc_in_rectangle_mm2(diameter_mm=50, width_mm=30, length_mm=40, corner_radius_mm=5), 3)
    1178.54
    """
    radius, half_x, half_y = diameter_mm / 2, width_mm / 2, length_mm / 2
    end = min(half_x, radius)
    if end <= 0 or half_y <= 0:
        return 0.0
    corner = min(corner_radius_mm, half_x, half_y)
    knots = sorted({0.0, end, *(x for x in _changes(radius, half_x, half_y, corner) if 0 < x < end)})
    pieces = (_piece(a, b, radius, (half_x, half_y, corner)) for a, b in itertools.pairwise(knots))
    return 4 * sum(pieces)


def _changes(radius: float, half_x: float, half_y: float, corner: float) -> Iterator[float]:
    """Where the lower of the two outlines may become another: ends of the flat, and crossings with the circle."""
    centre_x, centre_y = half_x - corner, half_y - corner
    yield centre_x
    if half_y < radius:
        yield sqrt(radius**2 - half_y**2)
    apart = sqrt(centre_x**2 + centre_y**2)
    if corner <= 0 or apart <= 0 or not abs(radius - corner) <= apart <= radius + corner:
        return
    along = (radius**2 - corner**2 + apart**2) / (2 * apart)
    across = sqrt(max(0.0, radius**2 - along**2))
    for side in (-1, 1):
        yield (along * centre_x + side * across * centre_y) / apart


def _piece(a: float, b: float, radius: float, rectangle: tuple[float, float, float]) -> float:
    """Area under the lower outline from a to b, where neither crosses the other."""
    half_x, half_y, corner = rectangle
    middle = (a + b) / 2
    over = middle - (half_x - corner)
    circle = sqrt(max(0.0, radius**2 - middle**2))
    straight = half_y if over <= 0 else half_y - corner + sqrt(max(0.0, corner**2 - over**2))
    if circle <= straight:
        return _under_circle(b, radius) - _under_circle(a, radius)
    if over <= 0:
        return half_y * (b - a)
    start = half_x - corner
    rounding = _under_circle(b - start, corner) - _under_circle(a - start, corner)
    return (half_y - corner) * (b - a) + rounding


def _under_circle(x: float, radius: float) -> float:
    """Area under a quarter circle from 0 to x, [mm²]."""
    share = min(1.0, x / radius)
    return (x * sqrt(max(0.0, radius**2 - x**2)) + radius**2 * asin(share)) / 2
