"""What bends a slot's walls, and the lip that joins them where the seam runs on beyond the seat."""

from math import acos, inf, sqrt

LIP_PULL = 1.1
LIP_SPAN = 0.65
"""Finite elements of the lip (tests/validation/test_own_fe_lip.py): tension on its underside, by load and by slot width."""


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
