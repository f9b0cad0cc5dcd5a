"""Checks of the seat, the stem and the lip in a cup."""

from math import inf

from geometry.case import Case
from geometry.provenance import derived
from geometry.rules import Finding, Pointless, check
from geometry.spread import WORST_FIT
from geometry.told import mm

LEAST_SEAT_CLEARANCE_MM = 0.1
MOST_PLAY_SHARE = 0.10
LEAST_STEM_CLEARANCE_MM = 0.5
LEAST_LIP_GAP_MM = 0.2


@check(
    "seat_fit_tight",
    "Seat drops into the cup",
    formula="cup_bore - u - (seat + tol) * (1 + g_hot)",
    limit_formula="0.1",
    unit="mm",
    sense="at_least",
    source=WORST_FIT,
    needs=("jack.cup_bore_mm", "make.measured_with", "service.temperature_high_c", "service.wetness"),
    place="seat_side",
)
def _seat_fit_tight(k: Case) -> Finding:
    c, seat, tol = k.c, k.pad.seat_diameter_mm, k.foot.seat_tolerance_mm
    gap = c.foot.bore_mm - c.u - (seat + tol) * (1 + c.g_hot)
    return Finding(
        gap,
        LEAST_SEAT_CLEARANCE_MM,
        lambda: (
            f"Hot and at its largest the seat leaves {mm(gap, '.2f')} in the cup; {mm(LEAST_SEAT_CLEARANCE_MM)} is needed."
            if gap >= 0
            else f"Hot and at its largest the seat is {mm(-gap, '.2f')} too big for the cup."
        ),
        {"cup_bore": c.foot.bore_mm, "u": c.u, "seat": seat, "tol": tol, "g_hot": c.g_hot},
    )


@check(
    "seat_fit_loose",
    "Seat rattles in the cup",
    formula="cup_bore + u - (seat - tol) * (1 + g_cold)",
    limit_formula="0.10 * cup_bore",
    unit="mm",
    source=WORST_FIT,
    needs=("jack.cup_bore_mm", "make.measured_with", "service.temperature_low_c"),
    place="seat_side",
)
def _seat_fit_loose(k: Case) -> Finding:
    c, limit = k.c, MOST_PLAY_SHARE * k.c.foot.bore_mm
    return Finding(
        k.foot.play_mm,
        limit,
        lambda: (
            f"Cold and at its smallest the seat has {mm(k.foot.play_mm, '.2f')} of play in the cup; up to"
            f" {mm(limit, '.1f')} will do."
        ),
        {
            "cup_bore": c.foot.bore_mm,
            "u": c.u,
            "seat": k.pad.seat_diameter_mm,
            "tol": k.foot.seat_tolerance_mm,
            "g_cold": c.g_cold,
        },
    )


@check(
    "stem_clear",
    "Stem free in its hole",
    formula="hole - u - (stem + tol) * (1 + g_hot) - play",
    limit_formula="0.5",
    unit="mm",
    sense="at_least",
    source=WORST_FIT,
    needs=("jack.stem_hole_diameter_mm", "jack.stem_hole_depth_mm", "make.measured_with"),
    place="stem",
)
def _stem_clear(k: Case) -> Finding | Pointless:
    c, pad = k.c, k.pad
    if not pad.has_stem:
        return Pointless("The pad has no stem.")
    tol, tol_l = k.tolerance_mm("stem_diameter_mm"), k.tolerance_mm("stem_length_mm")
    side = c.foot.hole_diameter_mm - c.u - (pad.stem_diameter_mm + tol) * (1 + c.g_hot) - k.foot.play_mm
    depth = c.foot.hole_depth_mm
    below = inf if depth is None else depth - c.u - (pad.stem_length_mm + tol_l) * (1 + c.g_hot)
    numbers = {
        "hole": c.foot.hole_diameter_mm,
        "u": c.u,
        "stem": pad.stem_diameter_mm,
        "tol": tol,
        "g_hot": c.g_hot,
        "play": k.foot.play_mm,
        "hole_depth": depth or 0.0,
        "length": pad.stem_length_mm,
    }
    if side <= below:
        return Finding(
            side,
            LEAST_STEM_CLEARANCE_MM,
            lambda: (
                f"The stem keeps {mm(side, '.2f')} from the hole's side at worst; {mm(LEAST_STEM_CLEARANCE_MM)} is needed."
            ),
            numbers,
        )
    return Finding(
        below,
        LEAST_STEM_CLEARANCE_MM,
        lambda: (
            f"The stem ends {mm(below, '.2f')} above the hole's bottom at worst; {mm(LEAST_STEM_CLEARANCE_MM)} is needed."
        ),
        numbers | {"tol": tol_l},
        formula="hole_depth - u - (length + tol) * (1 + g_hot)",
    )


@check(
    "lip_gap",
    "Lip off the cup's rim",
    formula="(seat_length - tol - tol_run) * (1 + g_cold) - cup_depth - u - squash",
    limit_formula="0.2",
    unit="mm",
    sense="at_least",
    source=WORST_FIT,
    needs=("jack.cup_depth_mm", "make.measured_with", "service.temperature_low_c", "car.gross_mass_kg"),
    place="lip",
)
def _lip_gap(k: Case) -> Finding:
    c, length = k.c, k.pad.seat_length_mm
    tol, run_out = k.tolerance_mm("seat_length_mm"), k.foot.lip_run_out_mm
    gap = (length - tol - run_out) * (1 + c.g_cold) - c.foot.depth_mm - c.u - k.foot.squash_mm
    return Finding(
        gap,
        LEAST_LIP_GAP_MM,
        lambda: (
            f"Under load the lip stays {mm(gap, '.2f')} above the cup's rim; {mm(LEAST_LIP_GAP_MM)} is needed."
            if gap >= 0
            else f"Under load the lip would press on the cup's rim: it is {mm(-gap, '.2f')} too low."
        ),
        {
            "seat_length": length,
            "tol": tol,
            "tol_run": run_out,
            "g_cold": c.g_cold,
            "cup_depth": c.foot.depth_mm,
            "u": c.u,
            "squash": k.foot.squash_mm,
        },
    )


@check(
    "corner_clear",
    "Pad's corner inside the cup's",
    formula="r - tol - cup_corner - u",
    limit_formula="0",
    unit="mm",
    sense="at_least",
    source=derived("A corner that rides on the radius around it makes a ring contact instead of a face"),
    needs=("jack.cup_corner_radius_mm", "make.measured_with"),
    place="seat_corner",
)
def _corner_clear(k: Case) -> Finding:
    c, r = k.c, k.pad.seat_corner_radius_mm
    tol = k.tolerance_mm("seat_corner_radius_mm")
    spare = r - tol - c.foot.corner_radius_mm - c.u
    return Finding(
        spare,
        0.0,
        lambda: (
            f"The pad's corner is at least {mm(spare, '.2f')} rounder than the cup's, so the pad stands on the floor."
            if spare >= 0
            else f"The pad's corner may be {mm(-spare, '.2f')} sharper than the cup's: it would ride on the radius."
        ),
        {"r": r, "tol": tol, "cup_corner": c.foot.corner_radius_mm, "u": c.u},
    )


@check(
    "arm_clear",
    "Body beside the jack's arm",
    formula="body",
    limit_formula="rim_d + 30",
    unit="mm",
    source=derived("15 mm beyond it on each side before an arm or lug is likely to be met"),
    needs=("jack.rim_diameter_mm",),
    place="lip",
    advice=True,
)
def _arm_clear(k: Case) -> Finding:
    body, rim = k.pad.body_diameter_mm, k.c.foot.rim_diameter_mm or 0.0
    return Finding(
        body,
        rim + 30,
        lambda: (
            f"The body of {mm(body)} stands over the rim of {mm(rim)} by little enough to clear the jack's arm."
            if body <= rim + 30
            else f"The body of {mm(body)} stands far over the rim of {mm(rim)}: measure the arm and its lugs below the rim."
        ),
        {"body": body, "rim_d": rim},
    )


@check(
    "cup_floor_flat",
    "Cup's floor clean and flat",
    formula="boss",
    limit_formula="0",
    unit="mm",
    source=derived("A point contact splits plastic that a face contact carries"),
    needs=("jack.floor_boss_height_mm",),
    place="seat",
    advice=True,
)
def _cup_floor_flat(k: Case) -> Finding:
    told, boss, recess = "floor_boss_height_mm" in k.c.measurements.jack.model_fields_set, k.c.foot.boss_height_mm, 0.0
    if boss > 0:
        recess = k.pad.seat_recess_depth_mm
    return Finding(
        boss,
        recess,
        lambda: (
            f"The recess, {mm(recess)} deep, takes the boss of {mm(boss)}; keep the floor around it free of grit and let water"
            " drain."
            if boss
            else "You found no boss on the cup's floor; keep it free of grit and let water drain."
            if told
            else "Look into the cup: a screw head, a rib or grit on its floor would carry the pad on one point; water must drain."
        ),
        {"boss": boss, "recess_depth": recess},
        verdict="pass" if told and boss <= recess else "advice",
        limit_formula="recess_depth" if boss else None,
    )
