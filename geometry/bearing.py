"""How the seam's edge presses on the slot's floor: the length that carries, the pressure that cuts in, and the dent."""

from math import log, pi, sqrt

PRANDTL = 2.57
"""(2 + π)/2: the mean pressure at which a rigid strip sinks into a thick Tresca solid, in yields."""
DESIGN_FACTOR_ON_YIELD = 1.5
PLASTIC_POISSON = 0.4


def loaded_length_mm(
    *,
    straight_length_mm: float,
    body_diameter_mm: float,
    slot_width_mm: float,
    edge_chamfer_mm: float,
    seat_flat_diameter_mm: float,
    top_height_mm: float,
) -> float:
    r"""Length of seam edge that carries.

    .. math:: L = \min(l, \sqrt{D^2 - w^2} - 2c, d + 1.4 h)

    Parameters
    ----------
    straight_length_mm : float
        Straight, unbroken edge, [mm]
    body_diameter_mm, slot_width_mm, edge_chamfer_mm : float
        Body, slot and edge break, [mm]
    seat_flat_diameter_mm : float
        Flat circle of the seat face, [mm]
    top_height_mm : float
        Seat face to wall top, [mm]

    Returns
    -------
    length_mm : float
        Loaded length, 0 where nothing is left, [mm]

    Notes
    -----
    The last term keeps the overhang beyond the seat stiff.

    Examples
    --------
    >>> round(loaded_length_mm(straight_length_mm=120, body_diameter_mm=74, slot_width_mm=8, edge_chamfer_mm=1,
    ...       seat_flat_diameter_mm=57.2, top_height_mm=34), 2)
    71.57

    References
    ----------
    Derived for this project.
    """
    chord_mm = sqrt(max(0.0, body_diameter_mm**2 - slot_width_mm**2)) - 2 * edge_chamfer_mm
    return max(0.0, min(straight_length_mm, chord_mm, seat_flat_diameter_mm + 1.4 * top_height_mm))


def floor_factor(*, web_mm: float, edge_thickness_mm: float, most: float = PRANDTL) -> float:
    r"""How far the material around a narrow edge supports it beyond plain yield.

    .. math:: c = \min(c_{max}, \max(1, 0.8 + 0.4\, w / t))

    Parameters
    ----------
    web_mm : float
        Thickness of the floor, [mm]
    edge_thickness_mm : float
        Width of the edge, [mm]
    most : float
        Upper end: 2.57 for cutting in (Prandtl), 2 for marking, [-]

    Returns
    -------
    factor : float
        In yields, [-]

    Notes
    -----
    A line between the ends of the finite-layer punch: uniaxial for a thin layer, Prandtl's limit for a thick one
    (full from a depth of about 4.4 widths, 8.7 half-widths).

    Examples
    --------
    >>> floor_factor(web_mm=22, edge_thickness_mm=2)
    2.57

    References
    ----------
    Prandtl 1920; constraint factor 2.57 quoted in ASME J. Eng. Ind. 92(2):469 (1970). The line between the ends is
    derived for this project from Hill's opposed-punch solution (from memory).
    """
    return min(most, max(1.0, 0.8 + 0.4 * web_mm / edge_thickness_mm))


def floor_strength_mpa(*, factor: float, allowable_mpa: float) -> float:
    r"""Pressure at which the seam's edge is taken to cut in, with its factor.

    .. math:: p_u = c \cdot 2\sigma / 1.5

    Parameters
    ----------
    factor : float
        Floor factor, [-]
    allowable_mpa : float
        Allowable compressive stress, [MPa]

    Returns
    -------
    strength_mpa : float
        Limiting pressure, [MPa]

    Notes
    -----
    2σ stands for the yield: the allowables are at most half of it. 1.5 is the factor against cutting in.

    Examples
    --------
    >>> round(floor_strength_mpa(factor=2.57, allowable_mpa=24.9), 2)
    85.32

    References
    ----------
    As for the floor factor.
    """
    return factor * 2 * allowable_mpa / DESIGN_FACTOR_ON_YIELD


def indentation_mm(*, pressure_mpa: float, edge_thickness_mm: float, web_mm: float, modulus_mpa: float) -> float:
    r"""How far the edge sinks into the floor while the load is on.

    .. math:: \delta = \frac{2(1-\nu^2)}{\pi} \frac{p\,t}{E} \ln(1 + 3.2\, w / t)

    Parameters
    ----------
    pressure_mpa : float
        Edge pressure, [MPa]
    edge_thickness_mm : float
        Width of the edge, [mm]
    web_mm : float
        Thickness of the floor, [mm]
    modulus_mpa : float
        Modulus for the time the load stays, [MPa]

    Returns
    -------
    depth_mm : float
        Indentation, [mm]

    Notes
    -----
    ν = 0.4. The settlement of a strip on a half space grows with the logarithm of the depth that is counted; 3.2 is
    fitted to plane finite elements of floors 2 to 20 edges thick: 0 to 9 % above them. Flow at the limiting pressure adds
    up to a tenth.

    Examples
    --------
    >>> round(indentation_mm(pressure_mpa=60, edge_thickness_mm=2.4, web_mm=20, modulus_mpa=2075), 3)
    0.123

    References
    ----------
    Flamant's strip on a half plane (from memory); fitted to own finite elements
    (tests/validation/test_own_fe_indentation.py).
    """
    shape = 2 * (1 - PLASTIC_POISSON**2) / pi
    return shape * pressure_mpa * edge_thickness_mm / modulus_mpa * log(1 + 3.2 * web_mm / edge_thickness_mm)
