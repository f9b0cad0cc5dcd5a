"""Where a round face and a rectangular one meet."""

from math import asin, sqrt


def disc_in_rectangle_mm2(*, diameter_mm: float, width_mm: float, length_mm: float) -> float:
    """Area that a disc and a rectangle about the same middle share.

    Four times the quarter ∫ min(b, √(R² − x²)) dx from 0 to min(a, R), with a and b half the rectangle's sides, R half the
    disc's diameter.

    Parameters
    ----------
    diameter_mm : float
        Diameter of the disc, [mm]
    width_mm : float
        One side of the rectangle, [mm]
    length_mm : float
        Its other side, [mm]

    Returns
    -------
    float
        The shared area, [mm²]

    Notes
    -----
    Exact; elementary integration, no source needed.

    Examples
    --------
    A disc that lies within the rectangle, and a rectangle within the disc:

    >>> round(disc_in_rectangle_mm2(diameter_mm=20, width_mm=30, length_mm=40), 3)
    314.159
    >>> disc_in_rectangle_mm2(diameter_mm=50, width_mm=30, length_mm=40)
    1200.0
    """
    radius, half_x, half_y = diameter_mm / 2, width_mm / 2, length_mm / 2
    if half_x**2 + half_y**2 <= radius**2:
        return 4 * half_x * half_y
    end = min(half_x, radius)
    flat = sqrt(max(0.0, radius**2 - half_y**2)) if half_y < radius else 0.0
    start = min(flat, end)
    return 4 * (half_y * start + _under_circle(end, radius) - _under_circle(start, radius))


def _under_circle(x: float, radius: float) -> float:
    """Area under a quarter circle from 0 to x, [mm²]."""
    share = min(1.0, x / radius)
    return (x * sqrt(max(0.0, radius**2 - x**2)) + radius**2 * asin(share)) / 2
