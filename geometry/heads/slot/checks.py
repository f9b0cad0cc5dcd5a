"""Checks of the slot's floor and walls, of the fit of the seam, and of what the slot clears."""

from math import sqrt

from geometry import formulas
from geometry.bearing import DESIGN_FACTOR_ON_YIELD, floor_factor
from geometry.case import Case
from geometry.heads.over_rim import GAP, LEAST_RIM_GAP_MM, gap_over_rim
from geometry.heads.slot.bounds import LIP_STRESS_SHARE, MARKING_MOST
from geometry.provenance import derived, found, memory
from geometry.rules import Finding, Pointless, check
from geometry.walls import lip_bending_mpa, wall_bending_mpa

LEAST_SIDE_PLAY_MM = 0.3
LEAST_SILL_GAP_MM = 2.0
FROST_C = -10.0
FROST_RADIUS_MM = 0.5
_FIT = derived(
    "Worst case of measurement, growth and tolerance (ISO 2768-1 m; of a part that was measured, what the reading may be off)"
)
OVER_A_RECESS = {"web": "web_f"}
"""Over a recess in the seat face the floor is thinner than the web."""
_SHEAR = derived("Shear yield σ/√3 (von Mises) on the two planes beside the edge")


@check(
    "slot_floor_bearing",
    "Slot floor under the seam's edge",
    formula="F_d / (t_b * L)",
    limit_formula="min(2.57, max(1, 0.8 + 0.4 * web / t_b)) * 2 * sigma_allow / 1.5",
    unit="MPa",
    source=found(
        "Prandtl's strip punch, constraint factor 2.57 (ASME J. Eng. Ind. 92(2):469, 1970) for a thick floor; the fall to"
        " plain yield for a thin one is derived"
    ),
    needs=("car.gross_mass_kg", "seam.edge_thickness_mm", "seam.straight_length_mm", "make.material"),
    place="slot_floor",
)
def _slot_floor_bearing(k: Case) -> Finding:
    s = k.slot
    return Finding(
        s.pressure_mpa,
        s.strength_mpa,
        lambda: (
            f"The seam's edge presses {s.pressure_mpa:.0f} MPa into the slot's floor;"
            f" {k.c.material.short_name} stands {s.strength_mpa:.0f} MPa there."
        ),
        {
            "F_d": k.c.design_force_n,
            "t_b": k.c.seam.edge_thickness_mm,
            "L": s.length_mm,
            "web": k.pad.web_mm,
            "web_f": k.pad.floor_thickness_mm,
            "sigma_allow": k.c.allowable_mpa,
        },
        limit_formula=_over_a_recess(k, "min(2.57, max(1, 0.8 + 0.4 * web / t_b)) * 2 * sigma_allow / 1.5"),
    )


def _over_a_recess(k: Case, formula: str) -> str | None:
    """A formula as it reads where the floor is hollow below; None where it stands as the check has it."""
    return formulas.renamed(formula, OVER_A_RECESS) if k.pad.has_recess else None


@check(
    "slot_floor_marking",
    "Lasting mark on the slot's floor",
    formula="F_d / (t_b * L)",
    limit_formula="min(2, max(1, 0.8 + 0.4 * web / t_b)) * sigma_allow",
    unit="MPa",
    source=derived("The allowable stress raised by the support of a thick floor, at most twice"),
    needs=("car.gross_mass_kg", "seam.edge_thickness_mm", "seam.straight_length_mm", "make.material"),
    place="slot_floor",
    advice=True,
)
def _slot_floor_marking(k: Case) -> Finding:
    s, t_b = k.slot, k.c.seam.edge_thickness_mm
    limit = floor_factor(web_mm=k.pad.floor_thickness_mm, edge_thickness_mm=t_b, most=MARKING_MOST) * k.c.allowable_mpa
    return Finding(
        s.pressure_mpa,
        limit,
        lambda: (
            f"At {s.pressure_mpa:.0f} MPa the seam's edge leaves no lasting mark (up to {limit:.0f} MPa)."
            if s.pressure_mpa <= limit
            else f"At {s.pressure_mpa:.0f} MPa the seam's edge leaves a lasting mark on the floor (from {limit:.0f} MPa):"
            " inspect it before each use and replace the pad sooner."
        ),
        {
            "F_d": k.c.design_force_n,
            "t_b": t_b,
            "L": s.length_mm,
            "web": k.pad.web_mm,
            "sigma_allow": k.c.allowable_mpa,
            "web_f": k.pad.floor_thickness_mm,
        },
        limit_formula=_over_a_recess(k, "min(2, max(1, 0.8 + 0.4 * web / t_b)) * sigma_allow"),
    )


@check(
    "lip_shear",
    "Lip under the seam beyond the seat",
    formula="q / (2 * (web - seat_length))",
    limit_formula="sigma_allow / sqrt(3)",
    unit="MPa",
    source=_SHEAR,
    needs=("car.gross_mass_kg", "seam.edge_thickness_mm", "jack.cup_depth_mm", "make.material"),
    place="lip",
)
def _lip_shear(k: Case) -> Finding | Pointless:
    if k.slot.length_mm <= k.pad.seat_diameter_mm:
        return Pointless("The seam's edge is carried within the seat: nothing hangs over.")
    tau = k.slot.edge_force_n_per_mm / (2 * (k.pad.web_mm - k.pad.seat_length_mm))
    limit = k.c.allowable_mpa / sqrt(3)
    return Finding(
        tau,
        limit,
        lambda: (
            f"Beyond the seat the lip is sheared by {tau:.1f} MPa; {k.c.material.short_name} stands {limit:.1f} MPa."
        ),
        {
            "q": k.slot.edge_force_n_per_mm,
            "web": k.pad.web_mm,
            "seat_length": k.pad.seat_length_mm,
            "sigma_allow": k.c.allowable_mpa,
        },
    )


@check(
    "lip_bending",
    "Lip bent across the slot beyond the seat",
    formula="q / (web - seat_length) * (1.1 + 0.65 * slot / (web - seat_length))",
    limit_formula="2 * sigma_allow",
    unit="MPa",
    source=derived(
        "Own finite elements of the lip; 2σ stands for the yield, less the factor 1.5, times the plastic shape factor 1.5 of a"
        " rectangle"
    ),
    needs=("car.gross_mass_kg", "seam.edge_thickness_mm", "jack.cup_depth_mm", "seam.thickness_mm", "make.material"),
    place="lip",
)
def _lip_bending(k: Case) -> Finding | Pointless:
    if k.slot.length_mm <= k.pad.seat_diameter_mm:
        return Pointless("The seam's edge is carried within the seat: nothing hangs over.")
    stress = lip_bending_mpa(
        edge_force_n_per_mm=k.slot.edge_force_n_per_mm,
        lip_mm=k.pad.web_mm - k.pad.seat_length_mm,
        slot_width_mm=k.pad.slot_width_mm,
    )
    limit = LIP_STRESS_SHARE * k.c.allowable_mpa
    return Finding(
        stress,
        limit,
        lambda: (
            f"Beyond the seat the lip is bent from wall to wall and pulled by {stress:.1f} MPa on its underside;"
            f" {k.c.material.short_name} stands {limit:.1f} MPa there."
        ),
        {
            "q": k.slot.edge_force_n_per_mm,
            "web": k.pad.web_mm,
            "seat_length": k.pad.seat_length_mm,
            "slot": k.pad.slot_width_mm,
            "sigma_allow": k.c.allowable_mpa,
        },
    )


@check(
    "web_shear",
    "Seam punching through the web",
    formula="q / (2 * web)",
    limit_formula="sigma_allow / sqrt(3)",
    unit="MPa",
    source=_SHEAR,
    needs=("car.gross_mass_kg", "seam.edge_thickness_mm", "make.material"),
    place="web",
)
def _web_shear(k: Case) -> Finding:
    web, limit = k.pad.floor_thickness_mm, k.c.allowable_mpa / sqrt(3)
    tau = k.slot.edge_force_n_per_mm / (2 * web)
    return Finding(
        tau,
        limit,
        lambda: f"The seam's edge shears the web by {tau:.1f} MPa; {k.c.material.short_name} stands {limit:.1f} MPa.",
        {"q": k.slot.edge_force_n_per_mm, "web": k.pad.web_mm, "web_f": web, "sigma_allow": k.c.allowable_mpa},
        formula=_over_a_recess(k, "q / (2 * web)"),
    )


@check(
    "wall_bending",
    "Side load on a slot wall",
    formula="K_t * 6 * H * slot_depth / (L * e**2)",
    limit_formula="2 * sigma_allow / 1.5 * f_z",
    unit="MPa",
    source=derived(
        "Cantilever, any mechanics text, with a fillet factor fitted to own finite elements of the slot; the peak at the root is"
        " judged like the pressure on the floor: 2σ stands for the yield, 1.5 is the factor"
    ),
    needs=("car.lift_needed_mm", "service.ground", "seam.height_mm", "seam.straight_length_mm", "make.material"),
    place="wall",
)
def _wall_bending(k: Case) -> Finding:
    s = k.slot
    stress = wall_bending_mpa(
        side_force_n=k.c.side_force_n,
        slot_depth_mm=k.pad.slot_depth_mm,
        loaded_length_mm=s.wall_length_mm,
        wall_mm=s.wall_mm,
        fillet_factor=s.fillet_factor,
    )
    limit = 2 * k.c.allowable_mpa / DESIGN_FACTOR_ON_YIELD * k.c.material.wall_stress_factor
    return Finding(
        stress,
        limit,
        lambda: (
            f"Pushed sideways at its top, a slot wall bends to {stress:.1f} MPa at its root; it stands {limit:.1f} MPa."
        ),
        {
            "K_t": s.fillet_factor,
            "H": k.c.side_force_n,
            "slot_depth": k.pad.slot_depth_mm,
            "L": s.length_mm,
            "L_w": s.wall_length_mm,
            "e": s.wall_mm,
            "sigma_allow": k.c.allowable_mpa,
            "f_z": k.c.material.wall_stress_factor,
        },
        formula="K_t * 6 * H * slot_depth / (L_w * e**2)" if s.wall_length_mm < s.length_mm else None,
    )


@check(
    "slot_fit_tight",
    "Seam goes into the slot",
    formula="(slot - tol) * (1 + g_cold) - t - u - bow",
    limit_formula="0.3",
    unit="mm",
    sense="at_least",
    source=_FIT,
    needs=("seam.thickness_mm", "seam.bow_mm", "make.measured_with", "service.temperature_low_c"),
    place="slot_side",
)
def _slot_fit_tight(k: Case) -> Finding:
    gap = k.slot.tight_play_mm
    return Finding(
        gap,
        LEAST_SIDE_PLAY_MM,
        lambda: (
            f"Cold and at its narrowest the slot leaves the seam {gap:.2f} mm; {LEAST_SIDE_PLAY_MM} mm is needed."
            if gap >= 0
            else f"Cold and at its narrowest the slot is {-gap:.2f} mm too narrow for the seam."
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
    source=_FIT,
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
            f"Hot and at its widest the slot leaves the seam {play:.2f} mm of side play; up to {limit:.1f} mm keeps it upright."
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
    source=_FIT,
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
            f"The slot is {depth:g} mm deep, so the sill clears the walls by {gap:.1f} mm; {LEAST_SILL_GAP_MM:g} mm is needed."
            if gap >= 0
            else f"The slot is {depth:g} mm deep, so the walls would press into the sill by {-gap:.1f} mm."
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
    source=_FIT,
    needs=("jack.cup_depth_mm", "make.measured_with", "service.temperature_low_c"),
    place="rim",
)
def _rim_clear(k: Case) -> Finding:
    gap, numbers = gap_over_rim(k)
    return Finding(
        gap,
        LEAST_RIM_GAP_MM,
        lambda: (
            f"Under load the seam's edge runs {gap:.1f} mm above the cup's rim; {LEAST_RIM_GAP_MM:g} mm is needed."
            if gap >= 0
            else f"Under load the seam's edge would meet the cup's rim: it lies {-gap:.1f} mm below it."
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
    return Finding(
        straight,
        body,
        lambda: (
            f"The seam is straight for {straight:g} mm, longer than the pad is wide."
            if straight >= body
            else f"The seam is straight for only {straight:g} mm and the pad is {body:g} mm wide: a notch or bend may stand in the"
            " slot. Look at it with the pad held up by hand first."
        ),
        {"straight": straight, "body": body},
    )


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
        return Pointless(f"It gets no colder than {low:g} °C.")
    if not (dry_nylon or chosen.family == "polyester" or chosen.printed):
        return Pointless(f"{chosen.short_name.capitalize()} stays tough in frost.")
    radius = k.pad.slot_corner_radius_mm
    return Finding(
        radius,
        FROST_RADIUS_MM,
        lambda: (
            f"In frost {chosen.short_name} is notch-brittle; the slot's corners are rounded to {radius:g} mm."
            if radius >= FROST_RADIUS_MM
            else f"At {low:g} °C {chosen.short_name} is notch-brittle, and a slot corner of {radius:g} mm is sharp:"
            f" {FROST_RADIUS_MM} mm would be better. Warm the pad before use."
        ),
        {"r_f": radius},
    )
