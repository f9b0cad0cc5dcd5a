"""Checks of the plug's root: the side load that shears and bends it."""

from math import sqrt

from geometry.case import Case
from geometry.heads.plug.loading import plug_area_mm2
from geometry.provenance import Sourced, derived, memory
from geometry.rules import Finding, check

ROOT_FACTOR = Sourced(
    3.0,
    "1",
    memory("Peterson's chart of a shoulder fillet in bending, for a radius of about a hundredth of the width"),
)
"""At the sharp corner that a lathe tool or an end mill leaves between plug and shoulder."""
_NEEDS = ("pocket.hole_width_mm", "pocket.hole_length_mm", "car.lift_needed_mm", "service.ground", "make.material")


@check(
    "plug_shear",
    "The plug sheared off",
    formula="H / A_p",
    limit_formula="sigma_allow / sqrt(3)",
    unit="MPa",
    source=derived("Shear yield σ/√3 (von Mises), the side load spread over the plug's level cut"),
    needs=_NEEDS,
    place="wall_top",
)
def _plug_shear(k: Case) -> Finding:
    area, limit = plug_area_mm2(k.pad), k.c.allowable_mpa / sqrt(3)
    tau = k.c.side_force_n / area
    return Finding(
        tau,
        limit,
        lambda: (
            f"The side load shears the plug by {tau:.1f} MPa, friction under the rim left out; {k.c.material.short_name} stands"
            f" {limit:.1f} MPa."
        ),
        {"H": k.c.side_force_n, "A_p": area, "sigma_allow": k.c.allowable_mpa},
    )


@check(
    "plug_bending",
    "The plug bent at its root",
    formula="8 * K_t * H * plug_h / 2 / (A_p * min(plug_w, plug_l))",
    limit_formula="sigma_allow",
    unit="MPa",
    source=derived(
        "Cantilever, the side load spread over its height though a plain rim pushes at its foot; a section modulus of A·b/8 is a"
        " circle's, and less than any rectangle's with round corners; the root's factor of 3 is from memory (Peterson)"
    ),
    needs=_NEEDS,
    place="wall_top",
)
def _plug_bending(k: Case) -> Finding:
    area, sigma = plug_area_mm2(k.pad), k.c.allowable_mpa
    least = min(k.pad.plug_width_mm, k.pad.plug_length_mm)
    stress = 8 * ROOT_FACTOR.value * k.c.side_force_n * k.pad.plug_height_mm / 2 / (area * least)
    return Finding(
        stress,
        sigma,
        lambda: (
            f"The side load, spread over the plug's height, bends its root to {stress:.1f} MPa at most;"
            f" {k.c.material.short_name} stands {sigma:.1f} MPa."
        ),
        {
            "K_t": ROOT_FACTOR.value,
            "H": k.c.side_force_n,
            "plug_h": k.pad.plug_height_mm,
            "A_p": area,
            "plug_w": k.pad.plug_width_mm,
            "plug_l": k.pad.plug_length_mm,
            "sigma_allow": sigma,
        },
    )
