"""The part of a flat head that stands out beyond the seat, and what the load on it does to its root."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class LipLoad:
    """What a pressed lip passes on to the body over the seat, for each millimetre around the seat."""

    shear_n_per_mm: float = 0.0
    moment_n: float = 0.0
    """Moment per length: N·mm for each mm."""


def lip_load(*, pressure_mpa: float, seat_radius_mm: float, inner_radius_mm: float, outer_radius_mm: float) -> LipLoad:
    r"""Shear and moment at the seat's edge under a ring of pressure outside it.

    .. math::

        V = \frac{p}{2b}(a^2 - c^2), \qquad M = \frac{p}{b}\left[\frac{a^3 - c^3}{3} - \frac{b\,(a^2 - c^2)}{2}\right]

    Parameters
    ----------
    pressure_mpa : float
        Pressure on the ring p, [MPa]
    seat_radius_mm : float
        Radius of the seat b, where the lip is held, [mm]
    inner_radius_mm : float
        Where the pressure begins; c is this or b, whichever is larger, [mm]
    outer_radius_mm : float
        Where the pressure ends a, [mm]

    Returns
    -------
    load : LipLoad
        V, [N/mm], and M, [N]; both 0 where nothing presses beyond the seat

    Notes
    -----
    Equilibrium of a narrow wedge that is held at the seat alone. The help of the hoops beside the wedge is left out, so
    both come out large; a face that covers only part of the ring loads its own wedges no more than this.

    Examples
    --------
    A ring from 30 to 40 mm under 2 MPa: V = 2·700/60, M = 2/30·(37000/3 − 30·700/2):

    >>> load = lip_load(pressure_mpa=2, seat_radius_mm=30, inner_radius_mm=0, outer_radius_mm=40)
    >>> round(load.shear_n_per_mm, 3), round(load.moment_n, 3)
    (23.333, 122.222)

    References
    ----------
    Statics; derived for this project.
    """
    start = max(seat_radius_mm, inner_radius_mm)
    if outer_radius_mm <= start or seat_radius_mm <= 0:
        return LipLoad()
    squares, cubes = outer_radius_mm**2 - start**2, outer_radius_mm**3 - start**3
    moment = cubes / 3 - seat_radius_mm * squares / 2
    return LipLoad(pressure_mpa * squares / (2 * seat_radius_mm), pressure_mpa * moment / seat_radius_mm)
