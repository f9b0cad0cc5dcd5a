"""How far the car leans at a lift, and how hard that pushes the pad's head sideways."""

import math
from typing import Literal

from geometry.provenance import Sourced, derived

Ground = Literal["rolls", "stuck"]
"""Whether the jack can roll after the sill as it swings: ``rolls`` on hard level ground, ``stuck`` where it cannot."""

LEAN_LEVER_MM = Sourced(
    1400.0,
    "mm",
    derived(
        "Distance from the lifting point to the far tyres that a car turns about, taken short so that the lean comes out large."
    ),
)
LEAST_SIDE_SHARE = Sourced(0.10, "1", derived("Side load that is always assumed, as a share of the design force."))
ROLLING_SIDE_SHARE = Sourced(
    0.03, "1", derived("Rolling resistance of the jack's wheels, added to the slope of the load.")
)
STUCK_SIDE_SHARE = Sourced(
    0.30, "1", derived("Side load where the jack cannot roll and the far tyres hold the car in place.")
)


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
