"""Checks of how the stem goes into its bore: its fit, its length, and what is left below it."""

from geometry.case import Case
from geometry.feet.post.bounds import LEAST_SHARE_OF_BORE, LENGTH_SHARES
from geometry.provenance import practice
from geometry.rules import Finding, Pointless, check
from geometry.spread import WORST_FIT
from geometry.told import mm

LEAST_CLEARANCE_MM = 0.1
LEAST_BOTTOM_MM = 0.5
_NO_STEM = Pointless("The pad has no stem.")


@check(
    "post_fit_tight",
    "Stem goes into the bore",
    formula="bore - u - (stem + tol) * (1 + g_hot)",
    limit_formula="0.1",
    unit="mm",
    sense="at_least",
    source=WORST_FIT,
    needs=("jack.post_bore_mm", "make.measured_with", "service.temperature_high_c", "service.wetness"),
    place="stem",
)
def _post_fit_tight(k: Case) -> Finding | Pointless:
    c, stem = k.c, k.pad.stem_diameter_mm
    if not k.pad.has_stem:
        return _NO_STEM
    tol = k.tolerance_mm("stem_diameter_mm")
    gap = c.foot.bore_mm - c.u - (stem + tol) * (1 + c.g_hot)
    return Finding(
        gap,
        LEAST_CLEARANCE_MM,
        lambda: (
            f"Hot and at its largest the stem leaves {mm(gap, '.2f')} in the bore; {mm(LEAST_CLEARANCE_MM)} is needed."
            if gap >= 0
            else f"Hot and at its largest the stem is {mm(-gap, '.2f')} too thick for the bore."
        ),
        {"bore": c.foot.bore_mm, "u": c.u, "stem": stem, "tol": tol, "g_hot": c.g_hot},
    )


@check(
    "post_fit_loose",
    "Stem rattles in the bore",
    formula="bore + u - (stem - tol) * (1 + g_cold)",
    limit_formula="0.10 * bore",
    unit="mm",
    source=WORST_FIT,
    needs=("jack.post_bore_mm", "make.measured_with", "service.temperature_low_c"),
    place="stem",
)
def _post_fit_loose(k: Case) -> Finding:
    c, limit = k.c, (1 - LEAST_SHARE_OF_BORE) * k.c.foot.bore_mm
    return Finding(
        k.foot.play_mm,
        limit,
        lambda: (
            f"Cold and at its smallest the stem has {mm(k.foot.play_mm, '.2f')} of play in the bore; up to"
            f" {mm(limit, '.1f')} will do."
            " A bore that is worn oval has more than was measured: measure it in two directions."
        ),
        {
            "bore": c.foot.bore_mm,
            "u": c.u,
            "stem": k.pad.stem_diameter_mm,
            "tol": k.tolerance_mm("stem_diameter_mm"),
            "g_cold": c.g_cold,
        },
    )


@check(
    "post_bottom",
    "Stem off the bore's bottom",
    formula="bore_depth - u - (length + tol) * (1 + g_hot)",
    limit_formula="0.5",
    unit="mm",
    sense="at_least",
    source=WORST_FIT,
    needs=("jack.post_bore_depth_mm", "make.measured_with", "service.temperature_high_c"),
    place="stem",
)
def _post_bottom(k: Case) -> Finding | Pointless:
    c, depth, length = k.c, k.c.foot.hole_depth_mm, k.pad.stem_length_mm
    if depth is None:
        return Pointless("The bore goes through.")
    if not k.pad.has_stem:
        return _NO_STEM
    tol = k.tolerance_mm("stem_length_mm")
    gap = depth - c.u - (length + tol) * (1 + c.g_hot)
    return Finding(
        gap,
        LEAST_BOTTOM_MM,
        lambda: (
            f"The stem ends {mm(gap, '.2f')} above the bore's bottom at worst; {mm(LEAST_BOTTOM_MM)} is needed."
            if gap >= 0
            else f"The stem may be {mm(-gap, '.2f')} too long for the bore: it would stand on the bottom, the seat on nothing."
        ),
        {"bore_depth": depth, "u": c.u, "length": length, "tol": tol, "g_hot": c.g_hot},
    )


@check(
    "post_guided",
    "Stem guided by the bore",
    formula="(length - tol - c_e) * (1 + g_cold)",
    limit_formula="0.5 * stem",
    unit="mm",
    sense="at_least",
    source=practice("A spigot is guided over half of its diameter at least"),
    needs=("jack.post_bore_depth_mm", "jack.post_bore_mm"),
    place="stem",
)
def _post_guided(k: Case) -> Finding:
    pad, tol = k.pad, k.tolerance_mm("stem_length_mm")
    guided = guided_mm(length_mm=pad.stem_length_mm, chamfer_mm=pad.edge_chamfer_mm, tolerance_mm=tol, cold=k.c.g_cold)
    limit = LENGTH_SHARES[0] * pad.stem_diameter_mm
    return Finding(
        guided,
        limit,
        lambda: (
            f"The bore guides the stem over {mm(max(0.0, guided), '.1f')} at worst; half of its thickness,"
            f" {mm(limit, '.1f')}, is needed."
        ),
        {
            "length": pad.stem_length_mm,
            "tol": tol,
            "c_e": pad.edge_chamfer_mm,
            "g_cold": k.c.g_cold,
            "stem": pad.stem_diameter_mm,
        },
        verdict=None if pad.has_stem else "fail",
    )


def guided_mm(*, length_mm: float, chamfer_mm: float, tolerance_mm: float, cold: float) -> float:
    """Shortest length of stem beside the bore's wall, [mm]: its end's chamfer left out, as short as it may be, in the cold."""
    return (length_mm - tolerance_mm - chamfer_mm) * (1 + cold)
