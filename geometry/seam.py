"""What the car's own seam carries: a strip of sheet between the sill and the slot's floor."""

from math import inf, pi

STEEL_MODULUS_MPA = 210_000.0
STEEL_POISSON = 0.3
K_GUIDED = 1.0
"""Wide column held at both ends: the slot's walls guide the edge."""
K_FREE = 0.25
"""Wide column free to sway at its edge: no slot."""


def buckling_stress_mpa(*, sheet_mm: float, strip_mm: float, k: float) -> float:
    r"""Critical stress of a strip of sheet pressed on its edge.

    .. math:: \sigma_{cr} = K \frac{\pi^2 E}{12 (1 - \nu^2)} \left(\frac{t}{b}\right)^2

    Parameters
    ----------
    sheet_mm : float
        Thickness of one sheet, [mm]
    strip_mm : float
        Free height of the strip, [mm]
    k : float
        1 guided by the slot, 0.25 free to sway, [-]

    Returns
    -------
    stress_mpa : float
        Elastic critical stress, infinite for no free height, [MPa]

    Notes
    -----
    E = 210 000 MPa, ν = 0.3. Far above yield for short strips: the check caps it.

    Examples
    --------
    >>> round(buckling_stress_mpa(sheet_mm=0.8, strip_mm=12, k=1.0))
    844

    References
    ----------
    Timoshenko & Gere, Theory of Elastic Stability (wide column), recomputed.
    """
    if strip_mm <= 0:
        return inf
    return k * pi**2 * STEEL_MODULUS_MPA / (12 * (1 - STEEL_POISSON**2)) * (sheet_mm / strip_mm) ** 2


def bending_interaction(
    *,
    pressure_mpa: float,
    yield_mpa: float,
    side_force_n: float,
    strip_mm: float,
    loaded_length_mm: float,
    bare_thickness_mm: float,
) -> float:
    r"""Edge pressure and side load together on the strip between sill and slot.

    .. math:: \left(\frac{p}{f_y}\right)^2 + \frac{4 H b}{L t^2 f_y}

    Parameters
    ----------
    pressure_mpa : float
        Pressure on the edge, [MPa]
    yield_mpa : float
        Yield of the steel, [MPa]
    side_force_n : float
        Side load, [N]
    strip_mm : float
        Lever from the slot's mouth to the sill, [mm]
    loaded_length_mm : float
        Length that bends, [mm]
    bare_thickness_mm : float
        Steel, [mm]

    Returns
    -------
    utilisation : float
        1 at the plastic limit, [-]

    Examples
    --------
    >>> round(bending_interaction(pressure_mpa=60, yield_mpa=140, side_force_n=1000, strip_mm=4.5,
    ...       loaded_length_mm=70, bare_thickness_mm=2.4), 3)
    0.503

    References
    ----------
    Plastic interaction of axial force and bending in a rectangle, in the form of EN 1993-1-1 6.2.9.1 (from memory).
    """
    if loaded_length_mm <= 0:
        return inf
    lever_mm = max(0.0, strip_mm)
    bending = 4 * side_force_n * lever_mm / (loaded_length_mm * bare_thickness_mm**2 * yield_mpa)
    return (pressure_mpa / yield_mpa) ** 2 + bending
