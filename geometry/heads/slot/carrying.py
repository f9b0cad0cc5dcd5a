"""Checks of what the load does to the slot: to its floor, to the web and the lip under it, and to its walls."""

from math import sqrt

from geometry import formulas
from geometry.bearing import DESIGN_FACTOR_ON_YIELD, floor_factor
from geometry.case import Case
from geometry.heads.slot.around import LIP_STRESS_SHARE, MARKING_MOST
from geometry.provenance import derived, found
from geometry.rules import Finding, Pointless, check
from geometry.walls import lip_bending_mpa, wall_bending_mpa

_OVER_A_RECESS = {"web": "web_f"}
"""Over a recess in the seat face the floor is thinner than the web."""
_SHEAR = derived("Shear yield σ/√3 (von Mises) on the two planes beside the edge")
_FLOOR_STANDS = "min(2.57, max(1, 0.8 + 0.4 * web / t_b)) * 2 * sigma_allow / 1.5"
_FLOOR_KEEPS_ITS_SHAPE = "min(2, max(1, 0.8 + 0.4 * web / t_b)) * sigma_allow"
_WEB_SHEARED = "q / (2 * web)"
_NO_OVERHANG = Pointless("The seam's edge is carried within the seat: nothing hangs over.")


def _over_a_recess(k: Case, formula: str) -> str | None:
    """A formula as it reads where the floor is hollow below; None where it stands as the check has it."""
    return formulas.renamed(formula, _OVER_A_RECESS) if k.pad.has_recess else None


@check(
    "slot_floor_bearing",
    "Slot floor under the seam's edge",
    formula="F_d / (t_b * L)",
    limit_formula=_FLOOR_STANDS,
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
        limit_formula=_over_a_recess(k, _FLOOR_STANDS),
    )


@check(
    "slot_floor_marking",
    "Lasting mark on the slot's floor",
    formula="F_d / (t_b * L)",
    limit_formula=_FLOOR_KEEPS_ITS_SHAPE,
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
        limit_formula=_over_a_recess(k, _FLOOR_KEEPS_ITS_SHAPE),
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
        return _NO_OVERHANG
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
        return _NO_OVERHANG
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
    formula=_WEB_SHEARED,
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
        formula=_over_a_recess(k, _WEB_SHEARED),
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
