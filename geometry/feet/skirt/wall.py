"""The skirt's wall under the side load: a ring of plate clamped at the lip face and pushed at its end."""

from math import inf, isinf, sqrt

from geometry.bearing import DESIGN_FACTOR_ON_YIELD

SPREAD_SHARE = 0.5
"""Of the skirt's bore: the chord of a sixth of it, over which the edge inside is taken to push."""
LEAST_SPREAD_LENGTHS = 1.9
"""However narrow the push, the root never takes more than 0.53 of it for each mm, as if 1.9 lengths of wall bent."""
ROOT_FACTOR = 2.6
"""Peak over nominal stress in the corner that a nose of 0.4 mm leaves at the root of a wall of 6 to 18 mm, within a fifth."""
LEAST_WALL_MM = 6.0
"""A thinner wall is bent by the chuck as it is bored; own choice."""


def spread_mm(*, bore_mm: float, length_mm: float) -> float:
    r"""Width of skirt that bends under a side load.

    .. math:: w = \max(d/2,\ 1.9\,l)

    Parameters
    ----------
    bore_mm : float
        Inside diameter of the skirt d, [mm]
    length_mm : float
        Length of the skirt l, lip face to end, [mm]

    Returns
    -------
    width_mm : float
        Bending width, [mm]

    Notes
    -----
    The bore and what it hangs around are nearly the same round, so that they meet over a wide arc. The lever is taken to the
    skirt's end, though the push is spread over the overlap, and what the ring carries as a tube is left out: solid finite
    elements give 0.4 to 0.6 of the bending that follows (tests/validation/test_own_fe_skirt.py).

    Examples
    --------
    >>> spread_mm(bore_mm=100, length_mm=12), spread_mm(bore_mm=40, length_mm=20)
    (50.0, 38.0)

    References
    ----------
    Long cantilever plate under a load at its free edge, Jaramillo 1950 and Roark's Formulas (from memory: 0.509 of the load
    at the root for ν = 0.3), recomputed (tests/geometry/feet/test_skirt_wall.py: 0.531 for ν = 0.4).
    """
    return max(SPREAD_SHARE * bore_mm, LEAST_SPREAD_LENGTHS * length_mm)


def push_n_per_mm(*, side_force_n: float, bore_mm: float, length_mm: float) -> float:
    """The side load on each mm of the width that bends, [N/mm]; infinite where there is no skirt."""
    width = spread_mm(bore_mm=bore_mm, length_mm=length_mm)
    return side_force_n / width if width > 0 else inf


def root_stress_mpa(*, side_force_n: float, bore_mm: float, length_mm: float, wall_mm: float) -> float:
    r"""Peak stress at the root of a skirt that takes the whole side load.

    .. math:: \sigma = \sqrt{\left(K_t \frac{6 H l}{w t^2}\right)^2 + 3 \left(\frac{H}{w t}\right)^2}

    Parameters
    ----------
    side_force_n : float
        Side load H, [N]
    bore_mm, length_mm : float
        Of the skirt, [mm]
    wall_mm : float
        Thickness of its wall t, [mm]

    Returns
    -------
    stress_mpa : float
        Bending and shear by von Mises, as if both were greatest at one place, [MPa]

    Examples
    --------
    >>> round(root_stress_mpa(side_force_n=1130, bore_mm=100, length_mm=12, wall_mm=10), 1)
    42.5

    References
    ----------
    Cantilever and von Mises, any mechanics text; K_t = 2.6 as for a shoulder in a flat bar, Peterson's chart
    (tests/validation/test_peterson_fillet.py).
    """
    per_mm = push_n_per_mm(side_force_n=side_force_n, bore_mm=bore_mm, length_mm=length_mm)
    if wall_mm <= 0 or isinf(per_mm):
        return inf
    bending = ROOT_FACTOR * 6 * per_mm * length_mm / wall_mm**2
    return sqrt(bending**2 + 3 * (per_mm / wall_mm) ** 2)


def root_strength_mpa(*, allowable_mpa: float, wall_stress_factor: float) -> float:
    """What the peak at the root may reach, [MPa]: 2σ stands for the yield, 1.5 is the factor, as for a slot's wall."""
    return 2 * allowable_mpa / DESIGN_FACTOR_ON_YIELD * wall_stress_factor


def least_wall_mm(*, side_force_n: float, bore_mm: float, length_mm: float, strength_mpa: float) -> float:
    """Wall, [mm], at which the stress at the root just reaches ``strength_mpa``, and never less than can be bored."""
    per_mm = push_n_per_mm(side_force_n=side_force_n, bore_mm=bore_mm, length_mm=length_mm)
    bent = 12 * ROOT_FACTOR * strength_mpa * length_mm
    needed = sqrt(per_mm * (3 * per_mm + sqrt(9 * per_mm**2 + bent**2)) / 2) / strength_mpa
    return max(LEAST_WALL_MM, needed)
