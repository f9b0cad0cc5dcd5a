"""The force at the lifting point: from a mass alone, by closed moments, and with what is added for bumps.

The rigid car on its four springs is in :mod:`geometry.statics`, what pushes sideways in :mod:`geometry.side_load`.
"""

from geometry.provenance import Sourced, derived
from geometry.units import STANDARD_GRAVITY

SHARE_OF_GROSS_MASS = Sourced(
    0.60,
    "1",
    derived(
        "With both wheels of a side in the air a single point carries (t/2 + e)/(t/2 + s) of the car. With that point"
        " no further in than 0.85 of half the track and the centre of gravity 2 % of the track off the middle this is"
        " 0.56; rounded up."
    ),
)
DESIGN_FACTOR = Sourced(
    1.2, "1", derived("An allowance for a bump while lowering and for a car that slips into its seat.")
)


def weight_n(mass_kg: float) -> float:
    r"""Weight of a mass under standard gravity.

    .. math:: W = m g

    Parameters
    ----------
    mass_kg : float
        Mass, [kg]

    Returns
    -------
    force_n : float
        Weight, [N]

    Notes
    -----
    The one place where a mass becomes a force.

    Examples
    --------
    >>> weight_n(1000)
    9806.65

    References
    ----------
    ISO 80000-3, conventional value of g = 9.80665 m/s².
    """
    return mass_kg * STANDARD_GRAVITY


def bound_from_gross_mass_n(gross_mass_kg: float) -> float:
    r"""Force at a single lifting point where no more than the greatest permitted mass of the car is known.

    .. math:: F = 0.60\, m g

    Parameters
    ----------
    gross_mass_kg : float
        Greatest permitted mass, from the vehicle's plate, [kg]

    Returns
    -------
    force_n : float
        Estimated greatest force at the point, [N]

    Notes
    -----
    Derived, see ``SHARE_OF_GROSS_MASS``. Passed only by a car whose seam lies far in from the wheels or whose
    centre of gravity is well off the middle; :func:`moment_bound_n` tells.

    Examples
    --------
    >>> round(bound_from_gross_mass_n(2000), 1)
    11768.0

    References
    ----------
    ASME PALD-2009 5-2.2(a) sets the least rating of the jacks of its Part 5 at 50 % of the vehicle's gross mass.
    """
    return SHARE_OF_GROSS_MASS.value * weight_n(gross_mass_kg)


def moment_bound_n(
    *,
    mass_kg: float,
    wheelbase_mm: float,
    track_mm: float,
    cg_behind_front_axle_mm: float,
    cg_offset_mm: float,
    point_behind_front_axle_mm: float,
    point_from_centreline_mm: float,
) -> float:
    r"""Greatest force that one lifting point can carry, whatever the springs.

    .. math:: F \le W \min\left\{\frac{t/2+e}{t/2+s},\ \frac{x_{cg}}{x_j},\ \frac{L-x_{cg}}{L-x_j}\right\}

    Parameters
    ----------
    mass_kg : float
        Mass of the car m, [kg]
    wheelbase_mm : float
        Wheelbase L, [mm]
    track_mm : float
        Track t, [mm]
    cg_behind_front_axle_mm : float
        Centre of gravity behind the front axle x_cg, [mm]
    cg_offset_mm : float
        Centre of gravity off the centre line, towards the jacked side, e, [mm]
    point_behind_front_axle_mm : float
        Lifting point behind the front axle x_j, [mm]
    point_from_centreline_mm : float
        Lifting point from the centre line s, [mm]

    Returns
    -------
    force_n : float
        The bound, [N]

    Notes
    -----
    Moments about the line of the far wheels and about each axle; wheels push only. A point on or outside an
    axle has no bound from moments about the other one. Holds for s ≥ e (the point not inboard of the centre of
    gravity). Reached when two wheels are off the ground.

    Examples
    --------
    Three lifting points of one car of unit weight (L 2.7, t 1.55, s 0.725 m, x_cg = 0.42 L):

    >>> car = {"mass_kg": 1 / 9.80665, "wheelbase_mm": 2700, "track_mm": 1550, "cg_offset_mm": 0}
    >>> point = {"cg_behind_front_axle_mm": 0.42 * 2700, "point_from_centreline_mm": 725}
    >>> for x in (450, 1350, 2250):
    ...     round(moment_bound_n(**car, **point, point_behind_front_axle_mm=x), 4)
    0.5167
    0.5167
    0.504

    References
    ----------
    Derived; agrees with a linear programme and with a spring-contact energy minimum.
    """
    far_side = (track_mm / 2 + cg_offset_mm) / (track_mm / 2 + point_from_centreline_mm)
    about_axles = [
        (cg, point)
        for cg, point in (
            (cg_behind_front_axle_mm, point_behind_front_axle_mm),
            (wheelbase_mm - cg_behind_front_axle_mm, wheelbase_mm - point_behind_front_axle_mm),
        )
        if point > 0
    ]
    return weight_n(mass_kg) * min(far_side, *(cg / point for cg, point in about_axles))


def design_force_n(force_n: float) -> float:
    r"""Force that the pad is judged by.

    .. math:: F_d = 1.2\, F

    Parameters
    ----------
    force_n : float
        Estimated greatest force at the lifting point F, [N]

    Returns
    -------
    design_force_n : float
        Design force F_d, [N]

    Notes
    -----
    Derived, see ``DESIGN_FACTOR``. The 1.5 of rules for lifting accessories (2006/42/EC Annex I 4.1.2.3) is a
    coefficient for a proof test and is not used here.

    Examples
    --------
    >>> design_force_n(10000)
    12000.0

    References
    ----------
    Derived for this project.
    """
    return DESIGN_FACTOR.value * force_n
