"""What a pull and the side load do to the stem at the retaining pin's hole."""

from math import inf, pi, sqrt

from geometry.case import Case
from geometry.feet.post.pin import NO_PIN, pinned, pinned_numbers
from geometry.provenance import derived, recomputed
from geometry.rules import Finding, Pointless, check
from geometry.told import mm


@check(
    "pin_bearing",
    "Pin on the wall of its hole",
    formula="H / (pin * stem)",
    limit_formula="sigma_allow",
    unit="MPa",
    source=derived(
        "Mean pressure of a pin in a hole; the pull is taken as large as the side load, far more than the pad weighs"
    ),
    needs=("jack.pin_diameter_mm", "jack.post_bore_mm", "make.material"),
    place="stem",
)
def _pin_bearing(k: Case) -> Finding | Pointless:
    bore = pinned(k)
    if bore is None:
        return NO_PIN
    n = pinned_numbers(k, bore)
    across = n["pin"] * n["stem"]
    pressure = n["H"] / across if across > 0 else inf
    return Finding(
        pressure,
        n["sigma_allow"],
        lambda: (
            f"Pulled out with as much as the side load, {n['H']:.0f} N, the stem presses {pressure:.1f} MPa on the pin;"
            f" {k.c.material.short_name} stands {n['sigma_allow']:.1f} MPa. The pad's own weight is nothing beside that."
        ),
        n,
    )


@check(
    "pin_tear_out",
    "Pin tearing out of the stem",
    formula="H / (2 * max(0, length - cross_x - cross / 2 - c_e) * sqrt(max(0, stem**2 - cross**2)))",
    limit_formula="sigma_allow / sqrt(3)",
    unit="MPa",
    source=derived("Shear yield σ/√3 (von Mises) on two planes beside the pin; the side load taken as the pull"),
    needs=("jack.pin_diameter_mm", "jack.pin_distance_mm", "jack.post_bore_mm", "make.material"),
    place="stem",
)
def _pin_tear_out(k: Case) -> Finding | Pointless:
    bore = pinned(k)
    if bore is None:
        return NO_PIN
    n = pinned_numbers(k, bore)
    left = n["length"] - n["cross_x"] - n["cross"] / 2 - n["c_e"]
    sheared = 2 * left * sqrt(max(0.0, n["stem"] ** 2 - n["cross"] ** 2))
    stress, limit = (n["H"] / sheared if sheared > 0 and left > 0 else inf), n["sigma_allow"] / sqrt(3)
    return Finding(
        stress,
        limit,
        lambda: (
            f"Pulled out with as much as the side load, the {mm(left, '.1f')} of stem below the pin's hole shear at"
            f" {stress:.1f} MPa;"
            f" {k.c.material.short_name} stands {limit:.1f} MPa."
            if left > 0
            else "Nothing of the stem is left below the pin's hole."
        ),
        n,
        verdict=None if left > 0 else "fail",
    )


@check(
    "stem_net_section",
    "Stem at the pin's hole",
    formula="sqrt((H * (2 * length / 3 - cross_x + cross_x**3 / (3 * length**2))"
    " / max(0, pi * stem**3 / 32 - cross * stem**2 / 6))**2 + 3 * (H / max(0, pi * stem**2 / 4 - cross * stem))**2)",
    limit_formula="sigma_allow",
    unit="MPa",
    source=recomputed(
        "Net section of a round bar with a hole across (strength-of-materials texts), von Mises; bent by a side load that presses"
        " in a triangle to the stem's end, sheared by all of it. A pull as large gives less. The hole's own notch is left out"
    ),
    needs=("jack.pin_diameter_mm", "jack.pin_distance_mm", "jack.post_bore_mm", "service.ground", "make.material"),
    place="stem",
)
def _stem_net_section(k: Case) -> Finding | Pointless:
    pad = k.pad
    if not (pad.has_cross_hole and pad.has_stem):
        return Pointless("No hole goes through the stem.")
    stem, hole, length, place = (
        pad.stem_diameter_mm,
        pad.cross_hole_diameter_mm,
        pad.stem_length_mm,
        pad.cross_hole_distance_mm,
    )
    modulus, area = net_modulus_mm3(stem_mm=stem, hole_mm=hole), net_area_mm2(stem_mm=stem, hole_mm=hole)
    force, limit = k.c.side_force_n, k.c.allowable_mpa
    moment = force * (2 * length / 3 - place + place**3 / (3 * length**2))
    stress = sqrt((moment / modulus) ** 2 + 3 * (force / area) ** 2) if modulus > 0 and area > 0 else inf
    return Finding(
        stress,
        limit,
        lambda: (
            f"Beside the pin's hole the side load bends and shears the stem to {stress:.1f} MPa;"
            f" {k.c.material.short_name} stands {limit:.1f} MPa."
        ),
        {"H": force, "length": length, "cross_x": place, "stem": stem, "cross": hole, "sigma_allow": limit},
        verdict="fail" if stress == inf else None,
    )


def net_modulus_mm3(*, stem_mm: float, hole_mm: float) -> float:
    r"""Section modulus of a round bar with a hole across, bent towards the hole's mouths.

    .. math:: W = \pi d^3/32 - d_0 d^2/6

    Parameters
    ----------
    stem_mm : float
        Diameter of the bar d, [mm]
    hole_mm : float
        Diameter of the hole, [mm]

    Returns
    -------
    modulus_mm3 : float
        Zero or negative where the hole takes all, [mm³]

    Notes
    -----
    The hole is taken as a slot with straight ends, which takes away more than there is: 2 % of the modulus too much where
    the hole is a quarter of the bar, 40 % where it is half of it; on the safe side.

    Examples
    --------
    >>> round(net_modulus_mm3(stem_mm=30, hole_mm=8), 1)
    1450.7

    References
    ----------
    Plain geometry; the form of strength-of-materials handbooks for a shaft with a hole across (from memory, recomputed).
    """
    return pi * stem_mm**3 / 32 - hole_mm * stem_mm**2 / 6


def net_area_mm2(*, stem_mm: float, hole_mm: float) -> float:
    r"""Area of a round bar where a hole goes across, [mm²]; a little less than there is, as for its modulus.

    .. math:: A = \pi d^2/4 - d_0 d

    Parameters
    ----------
    stem_mm : float
        Diameter of the bar, [mm]
    hole_mm : float
        Diameter of the hole across it, [mm]

    Returns
    -------
    float
        Area that is left, [mm²]

    Notes
    -----
    The hole is taken as a strip as long as the bar is thick, which is longer than the hole.

    Examples
    --------
    >>> round(net_area_mm2(stem_mm=30, hole_mm=8), 1)
    466.9

    References
    ----------
    Derived: areas of a circle and of a rectangle.
    """
    return pi * stem_mm**2 / 4 - hole_mm * stem_mm
