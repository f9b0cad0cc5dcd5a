"""Checks of a pad that stands on the tips of a saddle's teeth."""

from math import inf

from geometry.case import Case
from geometry.feet.saddle.fields import SaddleFacts
from geometry.feet.saddle.tips import carried_width_mm, tooth_factor
from geometry.provenance import derived
from geometry.rules import Finding, Pointless, check
from geometry.told import mm

_ONE_TOOTH = "F_d / (n_t * tip_l * reach) * (1 + 2 * e_F / R_t)"


@check(
    "tip_bearing",
    "Teeth's tips under the seat",
    formula=_ONE_TOOTH,
    limit_formula="sigma_allow",
    unit="MPa",
    source=derived(
        "Equal springs on a circle: the tooth under the load takes most; no support beside a narrow tip is counted on"
    ),
    needs=(
        "jack.teeth",
        "jack.tip_length_mm",
        "jack.tip_width_mm",
        "jack.over_teeth_mm",
        "car.gross_mass_kg",
        "make.material",
    ),
    place="seat",
)
def _tip_bearing(k: Case) -> Finding | Pointless:
    foot, sigma = k.c.foot, k.c.allowable_mpa
    if not isinstance(foot, SaddleFacts) or not foot.on_teeth:
        return Pointless("The pad stands on the land between the teeth, not on their tips.")
    over, width = foot.bore_mm, foot.tip_width_mm
    reach = carried_width_mm(seat_flat_mm=k.pad.seat_flat_diameter_mm, over_teeth_mm=over, tip_width_mm=width)
    ring, offset = over / 2 - width + reach / 2, k.foot.eccentricity_mm
    area = foot.teeth * foot.tip_length_mm * reach
    factor = tooth_factor(eccentricity_mm=offset, ring_radius_mm=ring, teeth=foot.teeth)
    stress = k.c.design_force_n / area * factor if area > 0 else inf
    return Finding(
        stress,
        sigma,
        lambda: (
            f"The tooth under the load presses {stress:.1f} MPa into the seat with {mm(reach, '.1f')} of its tip;"
            f" {k.c.material.short_name} stands {sigma:.1f} MPa. Tips mark plastic even so: turn the pad to its old marks."
            if area > 0
            else "The seat ends inside the teeth's tips: nothing carries it."
        ),
        {
            "F_d": k.c.design_force_n,
            "n_t": float(foot.teeth),
            "tip_l": foot.tip_length_mm,
            "reach": reach,
            "e_F": offset,
            "R_t": ring,
            "sigma_allow": sigma,
        },
        formula=None if offset <= ring / 2 else "F_d / (n_t * tip_l * reach) * max(2, n_t * (R_t + e_F) / (2 * R_t))",
    )
