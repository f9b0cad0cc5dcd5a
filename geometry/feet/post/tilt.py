"""How far a pad tilts and sways on a bore's rim, and whether that bends its stem."""

from math import inf, pi

from geometry.case import Case
from geometry.feet.standing import EDGE_PEAK
from geometry.provenance import derived, recomputed
from geometry.rules import Finding, Pointless, check
from geometry.told import mm

_TILT = "1.1 * min(F_d / A * k_e, 1.5 * sigma_allow) * web / (E_hold * R)"
MOST_SWAY_SHARE = 0.05
_GAP = "(bore - u - (stem + tol) * (1 + g_hot))"


@check(
    "stem_tilt",
    "Stem bent as the seat gives way",
    formula=f"1.5 * E_hold * stem * max(0, {_TILT} * length - {_GAP}) / length**2",
    limit_formula="sigma_allow",
    unit="MPa",
    source=derived(
        "Share of the side load's couple that a stem without play would take: its end moved sideways, a cantilever; the whole"
        " web squashed as at the seat's loaded edge, over no more than the seat's radius, and the tightest fit"
    ),
    needs=("jack.post_bore_mm", "jack.bore_rim_diameter_mm", "car.gross_mass_kg", "make.material"),
    place="stem",
)
def _stem_tilt(k: Case) -> Finding | Pointless:
    c, pad, seat = k.c, k.pad, k.foot
    if not pad.has_stem:
        return Pointless("The pad has no stem.")
    tol, area = k.tolerance_mm("stem_diameter_mm"), max(0.0, seat.area_mm2)
    gap = c.foot.bore_mm - c.u - (pad.stem_diameter_mm + tol) * (1 + c.g_hot)
    most = EDGE_PEAK * c.allowable_mpa
    edge = min(c.design_force_n / area * seat.edge_factor, most) if area > 0 else most
    tilt = 1.1 * edge * pad.web_mm / (c.modulus_mpa * seat.flat_radius_mm) if seat.flat_radius_mm > 0 else inf
    moved = tilt * pad.stem_length_mm
    stress = 1.5 * c.modulus_mpa * pad.stem_diameter_mm * max(0.0, moved - gap) / pad.stem_length_mm**2
    return Finding(
        stress,
        c.allowable_mpa,
        lambda: (
            f"As the seat gives way the stem's end moves {mm(moved, '.2f')} sideways; the tightest fit leaves"
            f" {mm(gap, '.2f')}, so the"
            " stem takes nothing of the couple."
            if stress <= 0
            else f"As the seat gives way the stem's end is held back by {mm(moved - gap, '.2f')}: that bends it to"
            f" {stress:.1f} MPa;"
            f" {c.material.short_name} stands {c.allowable_mpa:.1f} MPa."
        ),
        {
            "F_d": c.design_force_n,
            "A": area,
            "k_e": seat.edge_factor,
            "sigma_allow": c.allowable_mpa,
            "web": pad.web_mm,
            "E_hold": c.modulus_mpa,
            "R": seat.flat_radius_mm,
            "length": pad.stem_length_mm,
            "stem": pad.stem_diameter_mm,
            "tol": tol,
            "bore": c.foot.bore_mm,
            "u": c.u,
            "g_hot": c.g_hot,
        },
    )


@check(
    "stem_sway",
    "Stem stiff enough to keep the pad in place",
    formula="11 * H * length**3 / (60 * E_hold * pi * stem**4 / 64)",
    limit_formula="0.05 * stem",
    unit="mm",
    source=recomputed(
        "End of a cantilever under a load that rises in a triangle to it: any mechanics text; a twentieth of the thickness is"
        " derived: rubber is no stem"
    ),
    needs=("jack.post_bore_mm", "service.ground", "car.gross_mass_kg", "make.material"),
    place="stem",
)
def _stem_sway(k: Case) -> Finding | Pointless:
    if not k.pad.has_stem:
        return Pointless("The pad has no stem.")
    stem, length, force = k.pad.stem_diameter_mm, k.pad.stem_length_mm, k.c.side_force_n
    sway, limit = (
        sway_mm(force_n=force, stem_mm=stem, length_mm=length, modulus_mpa=k.c.modulus_mpa),
        MOST_SWAY_SHARE * stem,
    )
    return Finding(
        sway,
        limit,
        lambda: (
            f"The side load bends the stem's end {mm(sway, '.2f')} aside at most; up to {mm(limit, '.1f')} it keeps the"
            " pad in place."
        ),
        {"H": force, "length": length, "E_hold": k.c.modulus_mpa, "stem": stem},
    )


def sway_mm(*, force_n: float, stem_mm: float, length_mm: float, modulus_mpa: float) -> float:
    r"""How far the end of a stem is bent aside by a side load that presses in a triangle to it.

    .. math:: \delta = \frac{11 H l^3}{60 E I}, \qquad I = \pi d^4/64

    Parameters
    ----------
    force_n : float
        Side load H, [N]
    stem_mm : float
        Diameter d, [mm]
    length_mm : float
        Length l, [mm]
    modulus_mpa : float
        Modulus for the time the load stays, [MPa]

    Returns
    -------
    sway_mm : float
        Infinite without a stem, [mm]

    Notes
    -----
    Bending alone; shear adds about a fifth to a stem one and a half times as long as thick.

    Examples
    --------
    >>> round(sway_mm(force_n=1500, stem_mm=30, length_mm=45, modulus_mpa=2000), 3)
    0.315

    References
    ----------
    Cantilever with a linearly increasing load, any mechanics text (recomputed in tests/geometry/feet/test_post_tilt.py).
    """
    if stem_mm <= 0:
        return inf
    return 11 * force_n * length_mm**3 / (60 * modulus_mpa * pi * stem_mm**4 / 64)
