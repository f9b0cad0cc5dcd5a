"""Checks of every foot: how the seat face presses on what it stands on, what it bridges, and whether the pad tips."""

from math import inf

from geometry import formulas
from geometry.case import Case
from geometry.elastomer import is_elastomer, shape_factor, stiffening
from geometry.provenance import derived, recomputed
from geometry.rules import Finding, Pointless, check
from geometry.seat import disc_bending_mpa
from geometry.told import mm

EDGE_PEAK = 1.5


@check(
    "cup_floor_bearing",
    "Seat face on the cup's floor",
    formula="F_d / A",
    limit_formula="sigma_allow",
    unit="MPa",
    source=recomputed(
        "Mean stress, and the edge of an eccentrically loaded disc (kern of a circle, strength-of-materials texts); the"
        " branch beyond the kern and the edge's 1.5 are derived"
    ),
    needs=(
        "jack.cup_bore_mm",
        "jack.cup_corner_radius_mm",
        "jack.stem_hole_diameter_mm",
        "car.gross_mass_kg",
        "make.material",
    ),
    place="seat",
)
def _cup_floor_bearing(k: Case) -> Finding | Pointless:
    cup, shape = k.foot, _seat_shape(k)
    sigma, stiffer = k.c.allowable_mpa * stiffening(shape), " * (1 + 2 * S**2)" if shape else ""
    if not k.c.foot.is_face:
        return Pointless("The seat stands on no whole face; what it stands on is judged part by part.")
    if cup.area_mm2 <= 0:
        return Finding(
            inf,
            sigma,
            lambda: "Nothing is left of the seat face: the cup's corner and the stem hole take all of it.",
            {"sigma_allow": sigma, "F_d": k.c.design_force_n, "A": 0.0},
            verdict="fail",
        )
    edge = cup.mean_mpa * cup.edge_factor
    numbers = {
        "F_d": k.c.design_force_n,
        "A": cup.area_mm2,
        "sigma_allow": k.c.allowable_mpa,
        "k_e": cup.edge_factor,
        "S": shape,
    }
    if edge / EDGE_PEAK <= cup.mean_mpa:
        return Finding(
            cup.mean_mpa,
            sigma,
            lambda: (
                f"The seat presses {cup.mean_mpa:.1f} MPa on the cup's floor; {k.c.material.short_name} stands {sigma:.1f} MPa."
            ),
            numbers,
            limit_formula=f"sigma_allow{stiffer}" if shape else None,
        )
    return Finding(
        edge,
        EDGE_PEAK * sigma,
        lambda: (
            f"Play, side load and a slot off the axis put the load {mm(cup.eccentricity_mm, '.1f')} off the seat's"
            " middle: its edge"
            f" presses {edge:.1f} MPa on the cup's floor; {k.c.material.short_name} stands {EDGE_PEAK * sigma:.1f} MPa there."
        ),
        numbers,
        formula="F_d / A * k_e",
        limit_formula=f"1.5 * sigma_allow{stiffer}",
    )


def _seat_shape(k: Case) -> float:
    """Shape factor of a rubbery pad over its seat face, which counts as it does at the top; 0 for any other material."""
    hollow = max(k.c.foot.hole_diameter_mm, k.pad.seat_recess_diameter_mm)
    width = 2 * k.foot.flat_radius_mm - hollow
    return shape_factor(loaded_width_mm=width, height_mm=k.pad.web_mm) if is_elastomer(k.c) and width > 0 else 0.0


_DISC = "6 * P * ((1 + nu) * ln(a / b) + 1 - (1 - nu) * b**2 / (4 * a**2)) / (4 * pi) / web**2"


@check(
    "web_bending",
    "Web over a hollow in the seat",
    formula=_DISC,
    limit_formula="sigma_allow",
    unit="MPa",
    source=recomputed(
        "Disc on a ring: Timoshenko & Woinowsky-Krieger, Plates and Shells, art. 19; finite elements give 0.64 to 1.06 of it"
    ),
    needs=("jack.stem_hole_diameter_mm", "jack.floor_boss_diameter_mm", "car.gross_mass_kg", "make.material"),
    place="web",
)
def _web_bending(k: Case) -> Finding | Pointless:
    hole, sigma = max(k.c.foot.hole_diameter_mm, k.pad.seat_recess_diameter_mm), k.c.allowable_mpa
    if hole <= 0:
        return Pointless("Under the web there is no hole and no recess to bridge.")
    bridged = k.head.force_over_n(hole)
    stress = disc_bending_mpa(
        force_n=bridged, support_radius_mm=hole / 2, patch_radius_mm=hole / 4, thickness_mm=k.pad.floor_thickness_mm
    )
    return Finding(
        stress,
        sigma,
        lambda: (
            f"Over the {'recess' if k.pad.has_recess else 'stem hole'} the web bends to {stress:.1f} MPa at most;"
            f" {k.c.material.short_name} stands {sigma:.1f} MPa."
            " Thin-plate theory, mostly above what finite elements give."
        ),
        {
            "P": bridged,
            "nu": 0.4,
            "a": hole / 2,
            "b": hole / 4,
            "web": k.pad.web_mm,
            "web_f": k.pad.floor_thickness_mm,
            "sigma_allow": sigma,
        },
        formula=formulas.renamed(_DISC, {"web": "web_f"}) if k.pad.has_recess else None,
    )


@check(
    "tipping",
    "Pad tipping in the cup",
    formula="(play + tol_sym) / 2 + H * h / F_d",
    limit_formula="R / 2",
    unit="mm",
    source=derived("The load's line stays inside the middle half of the seat's flat radius"),
    needs=("jack.cup_bore_mm", "jack.cup_corner_radius_mm", "service.ground", "car.lift_needed_mm"),
    place="seat",
)
def _tipping(k: Case) -> Finding:
    limit = k.foot.flat_radius_mm / 2
    return Finding(
        k.foot.eccentricity_mm,
        limit,
        lambda: (
            f"Play, side load and a slot off the axis put the load {mm(k.foot.eccentricity_mm, '.1f')} from the middle"
            " of the seat;"
            f" up to {mm(limit, '.1f')} the pad stays down in the cup."
        ),
        {
            "play": max(0.0, k.foot.play_mm),
            "tol_sym": k.foot.slot_symmetry_mm,
            "H": k.c.side_force_n,
            "h": k.pad.top_height_mm,
            "F_d": k.c.design_force_n,
            "R": k.foot.flat_radius_mm,
            "slot_off": k.pad.slot_offset_mm,
        },
        formula="slot_off + (play + tol_sym) / 2 + H * h / F_d" if k.pad.slot_offset_mm else None,
    )
