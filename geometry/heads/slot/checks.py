"""Checks of the fit of the seam, of what the slot clears, and of what may stand or slide in it."""

from geometry.case import Case
from geometry.heads.over_rim import GAP, LEAST_RIM_GAP_MM, gap_over_rim
from geometry.letters import upper_first
from geometry.provenance import derived, memory
from geometry.rules import Finding, Pointless, check
from geometry.spread import WORST_FIT
from geometry.told import mm

LEAST_SIDE_PLAY_MM = 0.3
LEAST_SILL_GAP_MM = 2.0
FROST_C = -10.0
FROST_RADIUS_MM = 0.5


@check(
    "slot_fit_tight",
    "Seam goes into the slot",
    formula="(slot - tol) * (1 + g_cold) - t - u - bow",
    limit_formula="0.3",
    unit="mm",
    sense="at_least",
    source=WORST_FIT,
    needs=("seam.thickness_mm", "seam.bow_mm", "make.measured_with", "service.temperature_low_c"),
    place="slot_side",
)
def _slot_fit_tight(k: Case) -> Finding:
    gap = k.slot.tight_play_mm
    return Finding(
        gap,
        LEAST_SIDE_PLAY_MM,
        lambda: (
            f"Cold and at its narrowest the slot leaves the seam {mm(gap, '.2f')}; {mm(LEAST_SIDE_PLAY_MM)} is needed."
            if gap >= 0
            else f"Cold and at its narrowest the slot is {mm(-gap, '.2f')} too narrow for the seam."
        ),
        {
            "slot": k.pad.slot_width_mm,
            "tol": k.slot.width_tolerance_mm,
            "g_cold": k.c.g_cold,
            "t": k.c.seam.thickness_mm,
            "u": k.c.u,
            "bow": k.c.seam.bow_mm,
        },
    )


@check(
    "slot_fit_loose",
    "Seam stands upright in the slot",
    formula="(slot + tol) * (1 + g_hot) - t + u - bow",
    limit_formula="max(2.5, t)",
    unit="mm",
    source=WORST_FIT,
    needs=("seam.thickness_mm", "seam.bow_mm", "make.measured_with", "service.temperature_high_c"),
    place="slot_side",
)
def _slot_fit_loose(k: Case) -> Finding:
    seam, width, tol = k.c.seam, k.pad.slot_width_mm, k.slot.width_tolerance_mm
    play, limit = (width + tol) * (1 + k.c.g_hot) - seam.thickness_mm + k.c.u - seam.bow_mm, max(2.5, seam.thickness_mm)
    return Finding(
        play,
        limit,
        lambda: (
            f"Hot and at its widest the slot leaves the seam {mm(play, '.2f')} of side play; up to {mm(limit, '.1f')}"
            " keeps it upright."
        ),
        {
            "slot": width,
            "tol": tol,
            "g_hot": k.c.g_hot,
            "t": seam.thickness_mm,
            "u": k.c.u,
            "bow": seam.bow_mm,
        },
    )


@check(
    "sill_clear",
    "Sill clear of the walls",
    formula="clear - u - (slot_depth + tol + tol_par) * (1 + g_hot) - delta",
    limit_formula="2.0",
    unit="mm",
    sense="at_least",
    source=WORST_FIT,
    needs=("seam.height_mm", "seam.clear_outboard_mm", "seam.clear_inboard_mm", "make.measured_with"),
    place="wall_top",
)
def _sill_clear(k: Case) -> Finding:
    seam, s, depth = k.c.seam, k.slot, k.pad.slot_depth_mm
    deepest = (depth + s.depth_tolerance_mm + s.floor_parallelism_mm) * (1 + k.c.g_hot)
    gap = seam.least_clear_mm - k.c.u - deepest - s.indentation_mm
    return Finding(
        gap,
        LEAST_SILL_GAP_MM,
        lambda: (
            f"The slot is {mm(depth)} deep, so the sill clears the walls by {mm(gap, '.1f')}; {mm(LEAST_SILL_GAP_MM)} is needed."
            if gap >= 0
            else f"The slot is {mm(depth)} deep, so the walls would press into the sill by {mm(-gap, '.1f')}."
        ),
        {
            "clear": seam.least_clear_mm,
            "u": k.c.u,
            "slot_depth": depth,
            "tol": s.depth_tolerance_mm,
            "tol_par": s.floor_parallelism_mm,
            "g_hot": k.c.g_hot,
            "delta": s.indentation_mm,
        },
    )


@check(
    "rim_clear",
    "Seam's edge above the cup's rim",
    formula=GAP,
    limit_formula="1.0",
    unit="mm",
    sense="at_least",
    source=WORST_FIT,
    needs=("jack.cup_depth_mm", "make.measured_with", "service.temperature_low_c"),
    place="rim",
)
def _rim_clear(k: Case) -> Finding:
    gap, numbers = gap_over_rim(k)
    return Finding(
        gap,
        LEAST_RIM_GAP_MM,
        lambda: (
            f"Under load the seam's edge runs {mm(gap, '.1f')} above the cup's rim; {mm(LEAST_RIM_GAP_MM)} is needed."
            if gap >= 0
            else f"Under load the seam's edge would meet the cup's rim: it lies {mm(-gap, '.1f')} below it."
        ),
        numbers,
    )


@check(
    "slot_slide",
    "Seam sliding along the slot",
    formula="H / F_d",
    limit_formula="mu",
    unit="–",
    source=memory("Assumed friction of painted steel on plastic"),
    needs=("service.ground", "car.lift_needed_mm", "make.material"),
    place="slot_floor",
    advice=True,
)
def _slot_slide(k: Case) -> Finding:
    ratio, friction = k.c.side_force_n / k.c.design_force_n, k.c.material.assumed_friction.value
    return Finding(
        ratio,
        friction,
        lambda: (
            f"The slot is open at its ends; friction ({friction:.2f} assumed) keeps the seam from sliding along it"
            f" ({ratio:.2f} needed)."
            if ratio <= friction
            else f"The slot is open at its ends and friction ({friction:.2f} assumed) is less than the {ratio:.2f} needed:"
            " chock the wheels on both sides and set the park brake before the wheel leaves the ground."
        ),
        {"H": k.c.side_force_n, "F_d": k.c.design_force_n, "mu": friction},
    )


@check(
    "slot_end_foul",
    "Joggle or notch inside the slot",
    formula="straight",
    limit_formula="body",
    unit="mm",
    sense="at_least",
    source=derived("An unbroken edge at least as long as the pad is wide"),
    needs=("seam.straight_length_mm",),
    place="slot_floor",
    advice=True,
)
def _slot_end_foul(k: Case) -> Finding:
    straight, body = k.c.seam.straight_length_mm, k.pad.body_diameter_mm
    assumed = ", as is assumed where nobody measured it" if k.c.seam.straight_is_assumed else ""
    than = "longer than" if straight > body else "as long as"
    return Finding(
        straight,
        body,
        lambda: (
            f"The seam is straight for {mm(straight)}{assumed}: {than} the pad is wide."
            if straight >= body
            else f"The seam is straight for only {mm(straight)}{assumed}, and the pad is {mm(body)} wide: a notch or bend may"
            " stand in the slot. Look at it with the pad held up by hand first."
        ),
        {"straight": straight, "body": body},
    )


def _shown_c(temperature_c: float) -> str:
    """A temperature with the sign of a number below zero, which is no hyphen."""
    return f"{temperature_c:g} °C".replace("-", "−")


@check(
    "frost",
    "Hard frost",
    formula="r_f",
    limit_formula="0.5",
    unit="mm",
    sense="at_least",
    source=memory("Dry nylon, PET-P and printed parts turn notch-brittle in hard frost"),
    needs=("service.temperature_low_c", "service.wetness", "make.material"),
    place="slot_floor",
    advice=True,
)
def _frost(k: Case) -> Finding | Pointless:
    low, chosen = k.c.measurements.service.temperature_low_c, k.c.material
    dry_nylon = chosen.family == "nylon" and k.c.measurements.service.wetness == "dry"
    if low >= FROST_C:
        return Pointless(f"It gets no colder than {_shown_c(low)}.")
    if not (dry_nylon or chosen.family == "polyester" or chosen.printed):
        return Pointless(f"{upper_first(chosen.short_name)} stays tough in frost.")
    radius = k.pad.slot_corner_radius_mm
    return Finding(
        radius,
        FROST_RADIUS_MM,
        lambda: (
            f"In frost {chosen.short_name} is notch-brittle; the slot's corners are rounded to {mm(radius)}."
            if radius >= FROST_RADIUS_MM
            else f"At {_shown_c(low)} {chosen.short_name} is notch-brittle, and a slot corner of {mm(radius)} is sharp:"
            f" {mm(FROST_RADIUS_MM)} would be better. Warm the pad before use."
        ),
        {"r_f": radius},
    )
