"""How the seam's edge presses on the slot's floor, and what stands under and beside that floor."""

from math import acos, inf, log, pi, sqrt

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


def wall_thickness_mm(*, body_diameter_mm: float, slot_width_mm: float) -> float:
    r"""Mean thickness of a slot wall: the circular segment spread over its chord.

    .. math:: e = \frac{R^2 \arccos(w/2R) - (w/2)\sqrt{R^2 - w^2/4}}{2\sqrt{R^2 - w^2/4}}

    Parameters
    ----------
    body_diameter_mm : float
        Body, [mm]
    slot_width_mm : float
        Slot, [mm]

    Returns
    -------
    thickness_mm : float
        Mean wall thickness, [mm]

    Examples
    --------
    >>> round(wall_thickness_mm(body_diameter_mm=74, slot_width_mm=8), 2)
    25.22

    References
    ----------
    Plain geometry.
    """
    r, half = body_diameter_mm / 2, slot_width_mm / 2
    if half >= r:
        return 0.0
    half_chord = sqrt(r * r - half * half)
    return (r * r * acos(half / r) - half * half_chord) / (2 * half_chord)


def fillet_factor(*, wall_mm: float, slot_depth_mm: float, fillet_radius_mm: float) -> float:
    r"""Peak stress at the root of a slot wall that is pushed at its top, over the bending stress of a beam.

    .. math:: K_t = \sqrt{e/r}\left(0.75 + \frac{1}{12}\left(\frac{e}{d}\right)^2\right)

    Parameters
    ----------
    wall_mm : float
        Mean thickness of the wall e, [mm]
    slot_depth_mm : float
        Lever d, [mm]
    fillet_radius_mm : float
        Radius between wall and floor r, [mm]

    Returns
    -------
    factor : float
        Peak stress over 6Hd/(Le²), infinite for a sharp corner, [-]

    Notes
    -----
    Fitted to plane finite elements of 160 sections (walls 15 to 50 mm, slots 3 to 12 wide and 5 to 28 deep, radii 0.1 to
    0.5): 5 % below to 27 % above them. A slot wall is thicker than the slot is deep, so it is no slender beam and no
    stepped bar: the chart of a stepped bar in bending lies 2 to 5 times too low for it, and the slot's width hardly
    matters.

    Examples
    --------
    >>> round(fillet_factor(wall_mm=32, slot_depth_mm=12.5, fillet_radius_mm=0.5), 2)
    10.37

    References
    ----------
    Derived: own finite elements (tests/validation/test_own_fe_wall_root.py), whose tool meets the Peterson/Pilkey chart
    of a stepped bar to 6.5 % (tests/validation/test_peterson_fillet.py).
    """
    if fillet_radius_mm <= 0 or slot_depth_mm <= 0:
        return inf
    return sqrt(wall_mm / fillet_radius_mm) * (0.75 + (wall_mm / slot_depth_mm) ** 2 / 12)


def wall_bending_mpa(
    *, side_force_n: float, slot_depth_mm: float, loaded_length_mm: float, wall_mm: float, fillet_factor: float
) -> float:
    r"""Bending stress at the root of a slot wall that takes the side load at its top.

    .. math:: \sigma = K_t \frac{6 H d}{L e^2}

    Parameters
    ----------
    side_force_n : float
        Side load, [N]
    slot_depth_mm : float
        Lever, [mm]
    loaded_length_mm : float
        Length that bends, [mm]
    wall_mm : float
        Mean wall thickness, [mm]
    fillet_factor : float
        Stress concentration at the root, [-]

    Returns
    -------
    stress_mpa : float
        Peak stress, [MPa]

    Examples
    --------
    >>> round(wall_bending_mpa(side_force_n=1600, slot_depth_mm=16.5, loaded_length_mm=71.6, wall_mm=25.2, fillet_factor=3.0), 1)
    10.5

    References
    ----------
    Cantilever, any mechanics text, with the fillet factor of this room.
    """
    if loaded_length_mm <= 0 or wall_mm <= 0:
        return inf
    return fillet_factor * 6 * side_force_n * slot_depth_mm / (loaded_length_mm * wall_mm**2)


LIP_PULL = 1.1
LIP_SPAN = 0.65
"""Finite elements of the lip (tests/validation/test_own_fe_lip.py): tension on its underside, by load and by slot width."""


def lip_bending_mpa(*, edge_force_n_per_mm: float, lip_mm: float, slot_width_mm: float) -> float:
    r"""Tension across the slot on the underside of the lip, where the seam runs on beyond the seat.

    .. math:: \sigma = \frac{q}{h}\left(1.1 + 0.65 \frac{w}{h}\right)

    Parameters
    ----------
    edge_force_n_per_mm : float
        Load per length of edge q, [N/mm]
    lip_mm : float
        Thickness of the lip h, [mm]
    slot_width_mm : float
        Slot w, the span that the lip bridges from wall to wall, [mm]

    Returns
    -------
    stress_mpa : float
        Greatest tension, [MPa]

    Notes
    -----
    Fitted to solid finite elements of lips of 4 to 9 mm, slots of 3 to 10 mm, bodies of 90 to 120 mm: within a tenth for
    deep slots and long overhangs, 12 % below for shallow slots, up to 50 % above for short overhangs.

    Examples
    --------
    >>> round(lip_bending_mpa(edge_force_n_per_mm=100, lip_mm=5.5, slot_width_mm=5), 1)
    30.7

    References
    ----------
    Derived: own finite elements (tests/validation/test_own_fe_lip.py).
    """
    return edge_force_n_per_mm / lip_mm * (LIP_PULL + LIP_SPAN * slot_width_mm / lip_mm)


def lip_thickness_mm(*, edge_force_n_per_mm: float, slot_width_mm: float, stress_mpa: float) -> float:
    r"""Thickness at which the tension under the lip just reaches a stress.

    .. math:: h = \frac{1.1 q + \sqrt{(1.1 q)^2 + 2.6\,\sigma q w}}{2\sigma}

    Parameters
    ----------
    edge_force_n_per_mm : float
        Load per length of edge q, [N/mm]
    slot_width_mm : float
        Slot w, [mm]
    stress_mpa : float
        Stress that the lip may see σ, [MPa]

    Returns
    -------
    thickness_mm : float
        Needed thickness, [mm]

    Examples
    --------
    >>> round(lip_thickness_mm(edge_force_n_per_mm=100, slot_width_mm=5, stress_mpa=30.744), 2)
    5.5

    References
    ----------
    The tension of this room, solved for the thickness.
    """
    pull = LIP_PULL * edge_force_n_per_mm
    span = 4 * LIP_SPAN * stress_mpa * edge_force_n_per_mm * slot_width_mm
    return (pull + sqrt(pull**2 + span)) / (2 * stress_mpa)
