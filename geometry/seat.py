"""How the seat face presses on the cup's floor, and how the web bends over a hole or a hollow in it."""

from math import inf, log, pi, sqrt


def seat_area_mm2(*, seat_flat_diameter_mm: float, hole_diameter_mm: float) -> float:
    r"""Area of the seat face that presses on the cup's floor.

    .. math:: A = \pi/4\,(d^2 - d_0^2)

    Parameters
    ----------
    seat_flat_diameter_mm : float
        Flat circle of the seat face, [mm]
    hole_diameter_mm : float
        Hole in the cup's floor, 0 for none, [mm]

    Returns
    -------
    area_mm2 : float
        Negative or zero where the hole swallows the face, [mm²]

    Examples
    --------
    >>> round(seat_area_mm2(seat_flat_diameter_mm=57.2, hole_diameter_mm=0), 1)
    2569.7

    References
    ----------
    Plain geometry.
    """
    return pi / 4 * (seat_flat_diameter_mm * abs(seat_flat_diameter_mm) - hole_diameter_mm**2)


def squash_mm(
    *, force_n: float, area_mm2: float, allowable_mpa: float, cup_depth_mm: float, modulus_mpa: float
) -> float:
    r"""How far the seat is squashed under load, which brings the lip nearer to the rim.

    .. math:: s = \min(F_d/A, \sigma) \cdot 1.1\,h / E

    Parameters
    ----------
    force_n : float
        Design load, [N]
    area_mm2 : float
        Seat area, [mm²]
    allowable_mpa : float
        Allowable stress, [MPa]
    cup_depth_mm : float
        Height of the squashed column, [mm]
    modulus_mpa : float
        Modulus for the time the load stays, [MPa]

    Returns
    -------
    squash_mm : float
        Shortening, [mm]

    Notes
    -----
    Where there is no area the stress is taken at its allowable: the bearing check then fails in words.

    Examples
    --------
    >>> round(squash_mm(force_n=11300, area_mm2=2569.7, allowable_mpa=24.9, cup_depth_mm=12, modulus_mpa=2075), 4)
    0.028

    References
    ----------
    Hooke's law; derived for this project.
    """
    stress_mpa = min(force_n / area_mm2, allowable_mpa) if area_mm2 > 0 else allowable_mpa
    return stress_mpa * 1.1 * cup_depth_mm / modulus_mpa


def seat_edge_factor(*, eccentricity_mm: float, radius_mm: float) -> float:
    r"""Highest pressure over the mean under a round face whose load stands off centre.

    .. math:: k = 1 + 4e/R \;(e \le R/4), \qquad k = 2\left(\frac{0.75 R}{R - e}\right)^{1.5}

    Parameters
    ----------
    eccentricity_mm : float
        Distance of the load from the middle, [mm]
    radius_mm : float
        Radius of the face, [mm]

    Returns
    -------
    factor : float
        Edge pressure over mean pressure, infinite where the load leaves the face, [-]

    Notes
    -----
    The first branch is exact for a solid disc; beyond e = R/4 part of the face lifts, and the second branch, which meets
    the first at 2, lies 0 to 3.5 % above the integration of a face that only pushes, up to e = R/2.

    Examples
    --------
    >>> seat_edge_factor(eccentricity_mm=5, radius_mm=20)
    2.0

    References
    ----------
    Kern of a circular section, strength-of-materials texts (from memory, recomputed); second branch derived
    (tests/validation/test_own_no_tension_disc.py).
    """
    if radius_mm <= 0 or eccentricity_mm >= radius_mm:
        return inf
    if eccentricity_mm <= radius_mm / 4:
        return 1 + 4 * eccentricity_mm / radius_mm
    return float(2 * (0.75 * radius_mm / (radius_mm - eccentricity_mm)) ** 1.5)


def disc_bending_mpa(*, force_n: float, support_radius_mm: float, patch_radius_mm: float, thickness_mm: float) -> float:
    r"""Bending stress in the middle of a disc that bridges the stem hole.

    .. math::

        M = \frac{P}{4\pi}\left[(1+\nu)\ln\frac{a}{c} + 1 - (1-\nu)\frac{c^2}{4a^2}\right], \qquad \sigma = 6M/t^2

    Parameters
    ----------
    force_n : float
        Load on the middle patch, [N]
    support_radius_mm : float
        Radius of the simply supporting ring, [mm]
    patch_radius_mm : float
        Radius of the loaded patch, [mm]
    thickness_mm : float
        Thickness of the disc, [mm]

    Returns
    -------
    stress_mpa : float
        Largest bending stress, [MPa]

    Notes
    -----
    ν = 0.4. Thin-plate theory; solid finite elements come to 0.64 to 1.06 of it over all thicknesses of web.

    Examples
    --------
    >>> round(disc_bending_mpa(force_n=1000, support_radius_mm=10, patch_radius_mm=5, thickness_mm=20), 3)
    2.307

    References
    ----------
    Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, art. 19 (from memory, recomputed to ten digits).
    """
    return 6 * _disc_moment(support_radius_mm, patch_radius_mm) * force_n / thickness_mm**2


def disc_thickness_mm(*, force_n: float, support_radius_mm: float, patch_radius_mm: float, stress_mpa: float) -> float:
    r"""Thickness at which the disc over the stem hole just reaches a stress.

    .. math:: t = \sqrt{6M/\sigma}

    Parameters
    ----------
    force_n : float
        Load on the middle patch, [N]
    support_radius_mm : float
        Radius of the simply supporting ring, [mm]
    patch_radius_mm : float
        Radius of the loaded patch, [mm]
    stress_mpa : float
        Allowable stress, [MPa]

    Returns
    -------
    thickness_mm : float
        Needed thickness, [mm]

    Examples
    --------
    >>> round(disc_thickness_mm(force_n=1000, support_radius_mm=10, patch_radius_mm=5, stress_mpa=2.307), 1)
    20.0

    References
    ----------
    As for the stress in the disc.
    """
    return sqrt(6 * _disc_moment(support_radius_mm, patch_radius_mm) * force_n / stress_mpa)


def _disc_moment(a: float, c: float, nu: float = 0.4) -> float:
    """Moment per length in the middle, per newton of load."""
    return ((1 + nu) * log(a / c) + 1 - (1 - nu) * c**2 / (4 * a**2)) / (4 * pi)
