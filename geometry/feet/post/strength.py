"""Checks of what the load does to a post's stem and to its seat: side load, the bore's wall, the rim and the web over it."""

from math import inf, pi, sqrt

from geometry.case import Case
from geometry.provenance import derived, practice, recomputed
from geometry.rules import Finding, check
from geometry.told import mm

LEAST_RIM_MM = 1.5
THIN_RIM_MM = 3.0


@check(
    "post_side_load",
    "Side load on the stem",
    formula="sqrt((H * 2 * length / 3 / (pi * stem**3 / 32))**2 + 3 * (4 * H / (pi * stem**2))**2)",
    limit_formula="sigma_allow",
    unit="MPa",
    source=recomputed(
        "Cantilever and mean shear, von Mises, any mechanics text. Derived, erring towards too much stress: the rim is taken to"
        " give no friction, and the stem to press in a triangle that is highest at its end. The couple of the side load is the"
        " seat's, which its own check of tipping judges. The notch of the root is left out: leave the tool's radius there"
    ),
    needs=("jack.post_bore_mm", "service.ground", "car.gross_mass_kg", "make.material"),
    place="stem",
)
def _post_side_load(k: Case) -> Finding:
    stem, length, force, limit = k.pad.stem_diameter_mm, k.pad.stem_length_mm, k.c.side_force_n, k.c.allowable_mpa
    stress = stem_stress_mpa(force_n=force, stem_mm=stem, length_mm=length)
    return Finding(
        stress,
        limit,
        lambda: (
            f"With the play used up the side load of {force:.0f} N bends and shears the stem to {stress:.1f} MPa at the seat;"
            f" {k.c.material.short_name} stands {limit:.1f} MPa."
        ),
        {"H": force, "length": length, "stem": stem, "sigma_allow": limit},
    )


def stem_stress_mpa(*, force_n: float, stem_mm: float, length_mm: float) -> float:
    r"""Stress at the root of a stem that takes the side load alone.

    .. math:: \sigma = \sqrt{\left(\frac{32}{\pi d^3}\,H\,\frac{2l}{3}\right)^2 + 3\left(\frac{4H}{\pi d^2}\right)^2}

    Parameters
    ----------
    force_n : float
        Side load H, [N]
    stem_mm : float
        Diameter d, [mm]
    length_mm : float
        Length l, [mm]

    Returns
    -------
    stress_mpa : float
        Von Mises stress of bending and mean shear, infinite without a stem, [MPa]

    Notes
    -----
    The bore presses along the stem in a triangle, nothing at the seat and most at the end: the worst that a bore
    worn wide at its mouth can do. An even pressure would give three quarters of the bending.

    Examples
    --------
    >>> round(stem_stress_mpa(force_n=1500, stem_mm=30, length_mm=30), 2)
    11.9

    References
    ----------
    Cantilever and von Mises, any mechanics text; the share of the load derived.
    """
    if stem_mm <= 0:
        return inf
    bending = force_n * 2 * length_mm / 3 / (pi * stem_mm**3 / 32)
    return sqrt(bending**2 + 3 * (4 * force_n / (pi * stem_mm**2)) ** 2)


@check(
    "post_bearing",
    "Stem's side on the bore's wall",
    formula="2 * H / (stem * max(0, length - c_e))",
    limit_formula="sigma_allow",
    unit="MPa",
    source=derived(
        "Side load over the projected area, twice the mean for a pressure that rises in a triangle to one end"
    ),
    needs=("jack.post_bore_mm", "jack.post_bore_depth_mm", "service.ground", "make.material"),
    place="stem",
)
def _post_bearing(k: Case) -> Finding:
    stem, limit = k.pad.stem_diameter_mm, k.c.allowable_mpa
    across = stem * max(0.0, k.pad.stem_length_mm - k.pad.edge_chamfer_mm)
    pressure = 2 * k.c.side_force_n / across if across > 0 else inf
    return Finding(
        pressure,
        limit,
        lambda: (
            f"The side load presses the stem's side on the bore with up to {pressure:.1f} MPa;"
            f" {k.c.material.short_name} stands {limit:.1f} MPa."
        ),
        {
            "H": k.c.side_force_n,
            "stem": stem,
            "length": k.pad.stem_length_mm,
            "c_e": k.pad.edge_chamfer_mm,
            "sigma_allow": limit,
        },
    )


@check(
    "rim_face",
    "Seat on the bore's rim all round",
    formula="(min((seat - tol) * (1 + g_cold) - 2 * r - 0.4 - max(0, play), rim_b - u) - bore - u) / 2",
    limit_formula="1.5",
    unit="mm",
    sense="at_least",
    source=derived(
        "Narrowest place of the face, the stem against one side of the bore; 0.4 mm for the corner's tolerance"
    ),
    needs=("jack.bore_rim_diameter_mm", "jack.post_bore_mm", "make.measured_with", "service.temperature_low_c"),
    place="seat",
)
def _rim_face(k: Case) -> Finding:
    c, pad, tol, play = k.c, k.pad, k.tolerance_mm("seat_diameter_mm"), max(0.0, k.foot.play_mm)
    rim = c.foot.contact_diameter_mm
    flat = (pad.seat_diameter_mm - tol) * (1 + c.g_cold) - 2 * pad.seat_corner_radius_mm - 0.4 - play
    width = (min(flat, rim - c.u) - c.foot.bore_mm - c.u) / 2
    return Finding(
        width,
        LEAST_RIM_MM,
        lambda: (
            f"At its narrowest place {mm(width, '.1f')} of the bore's rim carry the seat; {mm(LEAST_RIM_MM)} is needed."
            if width >= 0
            else "On one side of the bore the seat stands on nothing."
        ),
        {
            "seat": pad.seat_diameter_mm,
            "tol": tol,
            "g_cold": c.g_cold,
            "r": pad.seat_corner_radius_mm,
            "play": play,
            "rim_b": rim,
            "u": c.u,
            "bore": c.foot.bore_mm,
        },
    )


@check(
    "rim_thin",
    "A bore's rim that is wide enough",
    formula="(rim_b - bore) / 2",
    limit_formula="3",
    unit="mm",
    sense="at_least",
    source=practice("A narrow edge cuts into plastic as the pad works on it"),
    needs=("jack.bore_rim_diameter_mm", "jack.post_bore_mm"),
    place="seat",
    advice=True,
)
def _rim_thin(k: Case) -> Finding:
    width = (k.c.foot.contact_diameter_mm - k.c.foot.bore_mm) / 2
    return Finding(
        width,
        THIN_RIM_MM,
        lambda: (
            f"The bore's rim is {mm(width, '.1f')} wide: enough to stand on."
            if width >= THIN_RIM_MM
            else f"A bore's rim {mm(width, '.1f')} wide cuts into the seat as the pad works on it: look at the seat"
            " after each lift,"
            " and use no pad where the tube's edge is sharp or bent."
        ),
        {"rim_b": k.c.foot.contact_diameter_mm, "bore": k.c.foot.bore_mm},
    )


@check(
    "web_punching",
    "Web punched down into the bore",
    formula="P / (pi * bore * web)",
    limit_formula="sigma_allow / sqrt(3)",
    unit="MPa",
    source=derived("Shear yield σ/√3 (von Mises) on the cylinder above the bore's edge"),
    needs=("jack.post_bore_mm", "car.gross_mass_kg", "make.material"),
    place="web",
)
def _web_punching(k: Case) -> Finding:
    bore = k.c.foot.bore_mm
    force, limit = k.head.force_over_n(bore), k.c.allowable_mpa / sqrt(3)
    stress = force / (pi * bore * k.pad.web_mm)
    return Finding(
        stress,
        limit,
        lambda: (
            f"What stands over the bore shears the web at {stress:.1f} MPa around the bore's edge;"
            f" {k.c.material.short_name} stands {limit:.1f} MPa."
        ),
        {"P": force, "bore": bore, "web": k.pad.web_mm, "sigma_allow": k.c.allowable_mpa},
    )
