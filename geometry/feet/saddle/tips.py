"""Where a pad stands on the tips of teeth: how much of each carries, and what the tooth under the load takes.

The web between them is judged as over a ring: what three or more evenly spaced teeth add to a ring goes around as cos nθ and
dies out towards the middle as rⁿ⁻², so that a disc's bending there is the same.
"""

from math import inf


def carried_width_mm(*, seat_flat_mm: float, over_teeth_mm: float, tip_width_mm: float) -> float:
    """How much of a tip, from its inside outwards, lies under the flat of the seat, [mm]; 0 or less where none does."""
    return min(tip_width_mm, (seat_flat_mm - over_teeth_mm) / 2 + tip_width_mm)


def tooth_factor(*, eccentricity_mm: float, ring_radius_mm: float, teeth: int) -> float:
    r"""Load on the most loaded of evenly spaced teeth over the mean of all.

    .. math:: k = 1 + 2e/R \;(e \le R/2), \qquad k = n\,\frac{R + e}{2R}

    Parameters
    ----------
    eccentricity_mm : float
        Distance of the load from the middle e, [mm]
    ring_radius_mm : float
        Radius of the ring of tips R, [mm]
    teeth : int
        How many there are n, three or more, [-]

    Returns
    -------
    factor : float
        Infinite where the load leaves the ring, [-]

    Notes
    -----
    The first branch is exact for equal springs on a circle, one of them under the load. Beyond R/2 a tooth opposite may lift;
    the second branch is what moments leave for one tooth whatever the others do, and so lies above.

    Examples
    --------
    >>> tooth_factor(eccentricity_mm=10, ring_radius_mm=40, teeth=4)
    1.5

    References
    ----------
    Statics; derived for this project (tests/geometry/feet/test_saddle_tips.py).
    """
    if ring_radius_mm <= 0 or eccentricity_mm >= ring_radius_mm:
        return inf
    if eccentricity_mm <= ring_radius_mm / 2:
        return 1 + 2 * eccentricity_mm / ring_radius_mm
    return max(2.0, teeth * (ring_radius_mm + eccentricity_mm) / (2 * ring_radius_mm))
