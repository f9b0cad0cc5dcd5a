"""The force at the lifting point: from a mass alone, by closed moments, and with what is added for bumps and side load.

The rigid car on its four springs is in :mod:`geometry.statics`.
"""

import math
from typing import Literal

from geometry.provenance import Sourced, derived
from geometry.units import STANDARD_GRAVITY

Ground = Literal["rolls", "stuck"]
"""Whether the jack can roll after the sill as it swings: ``rolls`` on hard level ground, ``stuck`` where it cannot."""

SHARE_OF_GROSS_MASS = Sourced(
    0.60,
    "1",
    derived(
        "With both wheels of a side in the air a single point carries (t/2 + e)/(t/2 + s) of the car. With the seam"
        " no further in than 0.85 of half the track and the centre of gravity 2 % of the track off the middle this is"
        " 0.56; rounded up."
    ),
)
DESIGN_FACTOR = Sourced(
    1.2, "1", derived("An allowance for a bump while lowering and for a seam that slips into its seat.")
)
LEAN_LEVER_MM = Sourced(
    1400.0,
    "mm",
    derived(
        "Distance from the seam to the far tyres that a car turns about, taken short so that the lean comes out large."
    ),
)
LEAST_SIDE_SHARE = Sourced(0.10, "1", derived("Side load that is always assumed, as a share of the design force."))
ROLLING_SIDE_SHARE = Sourced(
    0.03, "1", derived("Rolling resistance of the jack's wheels, added to the slope of the load.")
)
STUCK_SIDE_SHARE = Sourced(
    0.30, "1", derived("Side load where the jack cannot roll and the far tyres hold the car in place.")
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


def assumed_lean_rad(lift_mm: float) -> float:
    r"""Lean of the car at a lift, where its statics are not known.

    .. math:: \varphi = z / 1400

    Parameters
    ----------
    lift_mm : float
        Rise of the seam z, [mm]

    Returns
    -------
    lean_rad : float
        Assumed lean φ, [rad]

    Notes
    -----
    Derived, see ``LEAN_LEVER_MM``: the car turns about its far tyres, which sink a little.

    Examples
    --------
    >>> assumed_lean_rad(140)
    0.1

    References
    ----------
    Derived for this project.
    """
    return lift_mm / LEAN_LEVER_MM.value


def side_force_n(*, design_force_n: float, lean_rad: float, ground: Ground) -> float:
    r"""Side load on the pad's head.

    .. math:: H = F_d \max(0.10,\ 0.03 + \sin|\varphi|), \quad H \ge 0.30\, F_d \text{ where the jack cannot roll}

    Parameters
    ----------
    design_force_n : float
        Design force F_d, [N]
    lean_rad : float
        Lean of the car φ, [rad]
    ground : str
        ``rolls`` or ``stuck``, [-]

    Returns
    -------
    side_force_n : float
        Side load H, [N]

    Notes
    -----
    Derived. The seam swings about the far tyres: a rise of 300 mm moves it about 30 mm sideways. A jack that
    cannot follow is pushed; its side load is never taken smaller than that of a rolling jack at the same lean.

    Examples
    --------
    >>> side_force_n(design_force_n=10000, lean_rad=0.0, ground="rolls")
    1000.0
    >>> side_force_n(design_force_n=10000, lean_rad=0.1, ground="stuck")
    3000.0

    References
    ----------
    Derived for this project. That the jack must be able to roll slightly: productsafety.gov.au, page on jacks.
    """
    share = max(LEAST_SIDE_SHARE.value, ROLLING_SIDE_SHARE.value + math.sin(abs(lean_rad)))
    if ground == "stuck":
        share = max(STUCK_SIDE_SHARE.value, share)
    return design_force_n * share
