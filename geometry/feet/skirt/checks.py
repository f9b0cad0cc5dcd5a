"""Checks of a skirt: that it goes on, plays little, hangs free, and stands the side load."""

from geometry.case import Case
from geometry.feet.skirt.bounds import MOST_PLAY_SHARE
from geometry.feet.skirt.wall import push_n_per_mm, root_strength_mpa, root_stress_mpa
from geometry.provenance import derived
from geometry.rules import Finding, check
from geometry.spread import WORST_FIT
from geometry.told import mm

LEAST_CLEARANCE_MM = 0.2
LEAST_OVERLAP_MM = 3.0
LEAST_FREE_MM = 1.0
_AROUND = "jack.plate_diameter_mm"


@check(
    "skirt_fit_tight",
    "Skirt goes on over the plate's edge",
    formula="(skirt - tol) * (1 + g_cold) - around - u",
    limit_formula="0.2",
    unit="mm",
    sense="at_least",
    source=WORST_FIT,
    needs=(_AROUND, "make.measured_with", "service.temperature_low_c"),
    place="rim",
)
def _skirt_fit_tight(k: Case) -> Finding:
    c, skirt, tol = k.c, k.pad.skirt_bore_mm, k.tolerance_mm("skirt_bore_mm")
    gap = (skirt - tol) * (1 + c.g_cold) - c.foot.bore_mm - c.u
    return Finding(
        gap,
        LEAST_CLEARANCE_MM,
        lambda: (
            f"Cold and at its narrowest the skirt leaves {mm(gap, '.2f')} around the plate's edge;"
            f" {mm(LEAST_CLEARANCE_MM)} is needed."
            if gap >= 0
            else f"Cold and at its narrowest the skirt is {mm(-gap, '.2f')} too narrow to go over the plate's edge."
        ),
        {"skirt": skirt, "tol": tol, "g_cold": c.g_cold, "around": c.foot.bore_mm, "u": c.u},
    )


@check(
    "skirt_fit_loose",
    "Skirt plays around the plate's edge",
    formula="(skirt + tol) * (1 + g_hot) - around + u",
    limit_formula="0.10 * around",
    unit="mm",
    source=WORST_FIT,
    needs=(_AROUND, "make.measured_with", "service.temperature_high_c", "service.wetness"),
    place="rim",
)
def _skirt_fit_loose(k: Case) -> Finding:
    c, limit = k.c, MOST_PLAY_SHARE * k.c.foot.bore_mm
    return Finding(
        k.foot.play_mm,
        limit,
        lambda: (
            f"Hot and at its widest the skirt has {mm(k.foot.play_mm, '.2f')} of play around the plate's edge; up to"
            f" {mm(limit, '.1f')}"
            " will do."
        ),
        {
            "skirt": k.pad.skirt_bore_mm,
            "tol": k.tolerance_mm("skirt_bore_mm"),
            "g_hot": c.g_hot,
            "around": c.foot.bore_mm,
            "u": c.u,
        },
    )


@check(
    "skirt_overlap",
    "Skirt reaches over the plate's edge",
    formula="(skirt_l - tol - seat_length - tol_s) * (1 + g_cold)",
    limit_formula="3.0",
    unit="mm",
    sense="at_least",
    source=derived("A skirt that reaches less over an edge than a broken edge and grit take up locates nothing"),
    needs=("jack.free_edge_mm", "service.temperature_low_c"),
    place="rim",
)
def _skirt_overlap(k: Case) -> Finding:
    over = _hang_mm(k, -1) * (1 + k.c.g_cold)
    return Finding(
        over,
        LEAST_OVERLAP_MM,
        lambda: (
            f"The skirt reaches {mm(over, '.1f')} over the plate's edge at worst; {mm(LEAST_OVERLAP_MM)} is needed."
            if over >= 0
            else "The skirt does not reach over the plate's edge at all."
        ),
        {**_lengths(k), "g_cold": k.c.g_cold},
    )


@check(
    "skirt_clear",
    "Skirt hangs free",
    formula="free - u - (skirt_l + tol - seat_length + tol_s) * (1 + g_hot)",
    limit_formula="1.0",
    unit="mm",
    sense="at_least",
    source=WORST_FIT,
    needs=("jack.free_edge_mm", "make.measured_with", "service.temperature_high_c"),
    place="rim",
)
def _skirt_clear(k: Case) -> Finding:
    c = k.c
    gap = c.foot.free_edge_mm - c.u - _hang_mm(k, 1) * (1 + c.g_hot)
    return Finding(
        gap,
        LEAST_FREE_MM,
        lambda: (
            f"The skirt ends {mm(gap, '.1f')} above what stands out below the plate's edge at worst;"
            f" {mm(LEAST_FREE_MM)} is needed."
            if gap >= 0
            else f"The skirt may be {mm(-gap, '.1f')} too long: it would stand on what is below the plate's edge, and not"
            " the seat on its face."
        ),
        {**_lengths(k), "free": c.foot.free_edge_mm, "u": c.u, "g_hot": c.g_hot},
    )


def _hang_mm(k: Case, sign: int) -> float:
    """How far the skirt hangs below the seat face, with both tolerances added or taken off."""
    tolerances = k.tolerance_mm("skirt_length_mm") + k.tolerance_mm("seat_length_mm")
    return k.pad.skirt_length_mm - k.pad.seat_length_mm + sign * tolerances


def _lengths(k: Case) -> dict[str, float]:
    return {
        "skirt_l": k.pad.skirt_length_mm,
        "tol": k.tolerance_mm("skirt_length_mm"),
        "seat_length": k.pad.seat_length_mm,
        "tol_s": k.tolerance_mm("seat_length_mm"),
    }


@check(
    "skirt_root",
    "Side load on the skirt",
    formula="sqrt((2.6 * 6 * V_s * skirt_l / t_s**2)**2 + 3 * (V_s / t_s)**2)",
    limit_formula="2 * sigma_allow / 1.5 * f_z",
    unit="MPa",
    source=derived(
        "Clamped plate pushed at its end (Jaramillo 1950; Roark's Formulas; recomputed), von Mises; 2.6 for the root's corner"
        " (Peterson's shoulder in a flat bar); no friction under the seat is counted on"
    ),
    needs=(_AROUND, "service.ground", "car.lift_needed_mm", "make.material"),
    place="rim",
)
def _skirt_root(k: Case) -> Finding:
    c, pad = k.c, k.pad
    wall = (
        (min(pad.flats_width_mm, pad.body_diameter_mm) if pad.has_flats else pad.body_diameter_mm) - pad.skirt_bore_mm
    ) / 2
    stress = root_stress_mpa(
        side_force_n=c.side_force_n, bore_mm=pad.skirt_bore_mm, length_mm=pad.skirt_length_mm, wall_mm=wall
    )
    limit = root_strength_mpa(allowable_mpa=c.allowable_mpa, wall_stress_factor=c.material.wall_stress_factor)
    return Finding(
        stress,
        limit,
        lambda: (
            f"Should the skirt alone take the side load, its root sees {stress:.1f} MPa; {c.material.short_name} stands"
            f" {limit:.1f} MPa there."
        ),
        {
            "V_s": push_n_per_mm(side_force_n=c.side_force_n, bore_mm=pad.skirt_bore_mm, length_mm=pad.skirt_length_mm),
            "skirt_l": pad.skirt_length_mm,
            "t_s": wall,
            "sigma_allow": c.allowable_mpa,
            "f_z": c.material.wall_stress_factor,
        },
    )
