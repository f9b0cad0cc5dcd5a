"""Where the retaining pin's hole goes through the stem, and how wide it must be for the pin never to carry."""

from math import pi

from geometry.draft import Draft
from geometry.feet.post.fields import PostFacts
from geometry.fits import linear_tolerance_mm
from geometry.rules import Numbers
from geometry.seat import seat_area_mm2
from geometry.units import inch_to_mm

OFF_THE_MIDDLE_MM = 0.3
"""How far the cross-hole may be drilled off the stem's axis, beside the pin."""
_COARSEST_FINE_MM, _COARSEST_MIDDLE_MM = inch_to_mm(0.005), inch_to_mm(0.025)
"""What rounding to a makeable step may add to the hole's place and to its diameter."""
_TOLERANCES_MM = (0.1, 0.2, 0.3, 0.5)


def pin_of(d: Draft) -> PostFacts | None:
    """The bore, where a pin goes through it; None for every other foot and where there is no pin."""
    foot = d.c.foot
    return foot if isinstance(foot, PostFacts) and foot.pin_diameter_mm > 0 else None


def cross_hole_place_mm(d: Draft) -> float:
    """From the seat face to the cross-hole's middle, [mm]; while it is not chosen yet, the furthest that it will be."""
    fixed = d.c.measurements.fixed.cross_hole_distance_mm
    bore = pin_of(d)
    return d.cross_hole_distance_mm or fixed or (bore.pin_distance_mm + _COARSEST_FINE_MM if bore else 0.0)


def cross_hole_mm(d: Draft) -> float:
    """Diameter of the cross-hole, [mm]; while it is not chosen yet, the largest that it will be."""
    fixed = d.c.measurements.fixed.cross_hole_diameter_mm
    return d.cross_hole_diameter_mm or fixed or _largest_mm(d)


def _largest_mm(d: Draft) -> float:
    """The least hole with what rounding may add to it; the tolerance belongs to the size that comes out."""
    size = 0.0
    for tolerance in _TOLERANCES_MM if pin_of(d) else ():
        size = least_cross_hole_mm(d, tolerance_mm=tolerance) + _COARSEST_MIDDLE_MM
        if linear_tolerance_mm(size) <= tolerance:
            break
    return size


def least_cross_hole_mm(d: Draft, *, tolerance_mm: float) -> float:
    """Diameter, [mm], at which the pin still goes through, and carries nothing, with everything against it."""
    n = {**pin_numbers(d), "tol": tolerance_mm}
    above = n["cross_x"] + n["tol_x"] - (n["pin_x"] - n["pin"] / 2 - 1.5 * n["u"] - n["sink"] - 0.1) / (1 + n["g_hot"])
    below = (n["pin_x"] + n["pin"] / 2 + 1.5 * n["u"] + 0.1) / (1 + n["g_cold"]) - n["pin_x"] + n["tol_x"]
    beside = (n["pin"] / 2 + (n["u"] + n["play"]) / 2 + 0.1) / (1 + n["g_cold"]) + OFF_THE_MIDDLE_MM
    return tolerance_mm + 2 * max(above, below, beside)


LEAST_CROSS_HOLE = (
    "tol + 2 * max(cross_x + tol_x - (pin_x - pin / 2 - 1.5 * u - sink - 0.1) / (1 + g_hot),"
    " (pin_x + pin / 2 + 1.5 * u + 0.1) / (1 + g_cold) - pin_x + tol_x,"
    " (pin / 2 + (u + play) / 2 + 0.1) / (1 + g_cold) + 0.3)"
)
"""The same as text."""


def pin_numbers(d: Draft) -> Numbers:
    """The pin and its hole, as the formulas name them."""
    c, bore = d.c, pin_of(d)
    place = cross_hole_place_mm(d)
    return {
        "pin": bore.pin_diameter_mm if bore else 0.0,
        "pin_x": bore.pin_distance_mm if bore else 0.0,
        "cross_x": place,
        "tol_x": linear_tolerance_mm(place),
        "u": c.u,
        "g_hot": c.g_hot,
        "g_cold": c.g_cold,
        "tol": d.tol,
        "sink": sink_at_most_mm(d),
        "play": max(0.0, d.worst_seat_play_mm),
        "stem": d.stem_diameter_mm,
    }


def sink_at_most_mm(d: Draft) -> float:
    """How far the stem sinks, [mm], for the tallest pad that there can be on this seat: web and body come later."""
    flat = min(d.seat_flat_diameter_mm, d.c.foot.contact_diameter_mm)
    area = seat_area_mm2(seat_flat_diameter_mm=flat, hole_diameter_mm=d.c.foot.bore_mm)
    pressure = min(d.c.design_force_n / area, d.c.allowable_mpa) if area > 0 else d.c.allowable_mpa
    return 1.1 * pressure * d.seat_diameter_mm / d.c.modulus_mpa


def sag_mm(*, force_n: float, bore_mm: float, web_mm: float, modulus_mpa: float) -> float:
    r"""How far the web sags into the bore.

    .. math:: w_0 = \frac{3 P a^2 (3 + \nu)(1 - \nu)}{4 \pi E t^3}

    Parameters
    ----------
    force_n : float
        Load in the middle, [N]
    bore_mm : float
        Diameter of the simply supporting ring, twice a, [mm]
    web_mm : float
        Thickness of the disc t, [mm]
    modulus_mpa : float
        Modulus for the time the load stays, [MPa]

    Returns
    -------
    sag_mm : float
        Deflection of the middle, [mm]

    Notes
    -----
    ν = 0.4. A load in one point sags more than the same load spread over a patch; shear of a thick disc is left out.

    Examples
    --------
    >>> round(sag_mm(force_n=3000, bore_mm=30, web_mm=20, modulus_mpa=2000), 4)
    0.0205

    References
    ----------
    Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, art. 19 (from memory, recomputed).
    """
    return 3 * force_n * (bore_mm / 2) ** 2 * 3.4 * 0.6 / (4 * pi * modulus_mpa * web_mm**3)
