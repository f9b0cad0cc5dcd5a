"""Whether the pad stays upright in the cup, and the seam in the slot."""

from math import atan, degrees


def load_eccentricity_mm(*, play_mm: float, side_force_n: float, top_height_mm: float, design_force_n: float) -> float:
    r"""How far from the middle of the seat the load arrives.

    .. math:: e = j/2 + H h / F_d

    Parameters
    ----------
    play_mm : float
        Worst play of the seat in the cup, on the diameter, [mm]
    side_force_n : float
        Side load, at the top of the walls, [N]
    top_height_mm : float
        Seat face to wall top, [mm]
    design_force_n : float
        Design load, [N]

    Returns
    -------
    eccentricity_mm : float
        Distance from the middle, [mm]

    Examples
    --------
    >>> load_eccentricity_mm(play_mm=1, side_force_n=1000, top_height_mm=34, design_force_n=10000)
    3.9

    References
    ----------
    Statics; derived for this project.
    """
    return play_mm / 2 + side_force_n * top_height_mm / design_force_n


def free_lean_deg(*, side_play_mm: float, guided_depth_mm: float) -> float:
    r"""How far the seam can lean in the slot before it touches both walls.

    .. math:: \theta = \arctan(j / d)

    Parameters
    ----------
    side_play_mm : float
        Smallest play of the seam in the slot, [mm]
    guided_depth_mm : float
        Depth of parallel wall, [mm]

    Returns
    -------
    lean_deg : float
        Angle, [°]

    Examples
    --------
    >>> round(free_lean_deg(side_play_mm=1.0, guided_depth_mm=15.5), 2)
    3.69

    References
    ----------
    Plain geometry; derived for this project.
    """
    return degrees(atan(max(0.0, side_play_mm) / guided_depth_mm)) if guided_depth_mm > 0 else 90.0


def pitched_edge_pressure_mpa(*, pressure_mpa: float, loaded_length_mm: float, seat_flat_radius_mm: float) -> float:
    r"""Edge pressure where the car pitches further than the saddle follows.

    .. math:: p' = \min\left\{\frac{p L}{1.5 (L/2 - R)},\ 3p\right\}

    Parameters
    ----------
    pressure_mpa : float
        Even edge pressure, [MPa]
    loaded_length_mm : float
        Loaded length, [mm]
    seat_flat_radius_mm : float
        Radius of the flat seat face, [mm]

    Returns
    -------
    pressure_mpa : float
        Pressure at the more loaded end, [MPa]

    Notes
    -----
    The resultant moves to the rim of the seat; the pressure under it is a triangle, over two thirds of the length at
    least: from a seat of 5/18 of the length on, its rim is taken to be no further out.

    Examples
    --------
    >>> pitched_edge_pressure_mpa(pressure_mpa=30, loaded_length_mm=72, seat_flat_radius_mm=28.6)
    90
    >>> pitched_edge_pressure_mpa(pressure_mpa=30, loaded_length_mm=72, seat_flat_radius_mm=15)
    68.57142857142857

    References
    ----------
    Statics of a no-tension strip; derived for this project.
    """
    lever_mm = 1.5 * (loaded_length_mm / 2 - seat_flat_radius_mm)
    most = 3 * pressure_mpa
    return min(most, pressure_mpa * loaded_length_mm / lever_mm) if lever_mm > 0 else most
