"""Checks of the plug's root: the side load that shears and bends it."""

from math import sqrt

from geometry.case import Case
from geometry.heads.plug.loading import plug_area_mm2
from geometry.provenance import Sourced, derived, memory
from geometry.rules import Finding, check

ROOT_FACTOR = Sourced(
    4.0,
    "1",
    memory(
        "Peterson's chart of a shoulder fillet in bending, as 0.91 (r/d)^−0.286 where the shoulder is twice as wide: 4.1 for a"
        " root of 0.2 mm on a plug of 38 mm, less on a thinner one"
    ),
)
"""At the small radius that a lathe tool or an end mill leaves between plug and shoulder."""
_NEEDS = ("pocket.hole_width_mm", "pocket.hole_length_mm", "car.lift_needed_mm", "service.ground", "make.material")


@check(
    "plug_shear",
    "The plug sheared off",
    formula="H / A_p",
    limit_formula="sigma_allow / sqrt(3) * f_z",
    unit="MPa",
    source=derived(
        "Shear yield σ/√3 (von Mises), the side load spread over the plug's level cut; less between printed layers"
    ),
    needs=_NEEDS,
    place="wall_top",
)
def _plug_shear(k: Case) -> Finding:
    area, layers = plug_area_mm2(k.pad), k.c.material.wall_stress_factor
    limit = k.c.allowable_mpa / sqrt(3) * layers
    tau = k.c.side_force_n / area
    return Finding(
        tau,
        limit,
        lambda: (
            f"The side load shears the plug by {tau:.1f} MPa, friction under the rim left out; {k.c.material.short_name} stands"
            f" {limit:.1f} MPa."
        ),
        {"H": k.c.side_force_n, "A_p": area, "sigma_allow": k.c.allowable_mpa, "f_z": layers},
    )


@check(
    "plug_bending",
    "The plug bent at its root",
    formula="8 * K_t * H * plug_h / 2 / (A_p * min(plug_w, plug_l))",
    limit_formula="2 * sigma_allow / 1.5 * f_z",
    unit="MPa",
    source=derived(
        "Cantilever, the side load spread over its height though a plain rim pushes at its foot; a section modulus of A·b/8 is a"
        " circle's, and less than any rectangle's with round corners; the root's factor of 4 is from memory (Peterson),"
        " and its peak may reach what that of any root may"
    ),
    needs=_NEEDS,
    place="wall_top",
)
def _plug_bending(k: Case) -> Finding:
    area, layers = plug_area_mm2(k.pad), k.c.material.wall_stress_factor
    limit = 2 * k.c.allowable_mpa / 1.5 * layers
    least = min(k.pad.plug_width_mm, k.pad.plug_length_mm)
    stress = 8 * ROOT_FACTOR.value * k.c.side_force_n * k.pad.plug_height_mm / 2 / (area * least)
    return Finding(
        stress,
        limit,
        lambda: (
            f"The side load, spread over the plug's height, bends its root to {stress:.1f} MPa at most;"
            f" {k.c.material.short_name} stands {limit:.1f} MPa there."
        ),
        {
            "K_t": ROOT_FACTOR.value,
            "H": k.c.side_force_n,
            "plug_h": k.pad.plug_height_mm,
            "A_p": area,
            "plug_w": k.pad.plug_width_mm,
            "plug_l": k.pad.plug_length_mm,
            "sigma_allow": k.c.allowable_mpa,
            "f_z": layers,
        },
    )
