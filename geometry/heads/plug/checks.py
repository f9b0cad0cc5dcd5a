"""Checks of a plug: how it lies in its hole, what the rim presses on the shoulder, and what keeps the car on it."""

from math import sqrt

from geometry.case import Case
from geometry.heads.plug.bounds import most_play_mm
from geometry.heads.plug.height import LEAST_HOLD_MM
from geometry.heads.plug.loading import sides_mm
from geometry.provenance import derived
from geometry.rules import Finding, Pointless, check
from geometry.spread import WORST_FIT
from geometry.told import mm

LEAST_PLAY_MM = 0.5
LEAST_ABOVE_MM = 0.5
KNOWN_RIM_MM = 8.0
_HOLE = ("pocket.hole_width_mm", "pocket.hole_length_mm", "make.measured_with", "service.temperature_high_c")


@check(
    "plug_shoulder_bearing",
    "The hole's rim on the shoulder",
    formula="F_d / A",
    limit_formula="sigma_allow",
    unit="MPa",
    source=derived("Mean pressure where a round shoulder and the flat rim around the hole meet"),
    needs=(
        "pocket.hole_width_mm",
        "pocket.hole_length_mm",
        "pocket.rim_width_mm",
        "car.gross_mass_kg",
        "make.material",
    ),
    place="slot_floor",
)
def _plug_shoulder_bearing(k: Case) -> Finding:
    s, sigma = k.plug, k.c.allowable_mpa
    return Finding(
        s.pressure_mpa,
        sigma,
        lambda: (
            f"The hole's rim presses {s.pressure_mpa:.1f} MPa on {s.area_mm2 / 100:.1f} cm² of the shoulder;"
            f" {k.c.material.short_name} stands {sigma:.1f} MPa."
            if s.area_mm2 > 0
            else "Nothing is left of the shoulder under the rim: the hole takes all of it."
        ),
        {"F_d": k.c.design_force_n, "A": s.area_mm2, "sigma_allow": sigma},
    )


@check(
    "plug_fit_tight",
    "The plug goes into its hole",
    formula="w_h - u - (plug_w + tol) * (1 + g_hot)",
    limit_formula="0.5",
    unit="mm",
    sense="at_least",
    source=WORST_FIT,
    needs=_HOLE,
    place="wall_top",
)
def _plug_fit_tight(k: Case) -> Finding:
    play = k.plug.tight_play_mm
    ways = sides_mm(k.pad, k.c.pocket)
    hole, plug, name = min(ways, key=lambda way: way[0] - (way[1] + k.tolerance_mm(way[2])) * (1 + k.c.g_hot))
    return Finding(
        play,
        LEAST_PLAY_MM,
        lambda: (
            f"Hot and at its largest the plug leaves {mm(play, '.2f')} in its hole; {mm(LEAST_PLAY_MM)} is needed."
            if play >= 0
            else f"Hot and at its largest the plug may be {mm(-play, '.2f')} too big for its hole."
        ),
        {"w_h": hole, "u": k.c.u, "plug_w": plug, "tol": k.tolerance_mm(name), "g_hot": k.c.g_hot},
    )


@check(
    "plug_fit_loose",
    "The plug's play in its hole",
    formula="w_h + u - (plug_w - tol) * (1 + g_cold)",
    limit_formula="max(3, 0.15 * w_h)",
    unit="mm",
    source=WORST_FIT,
    needs=("pocket.hole_width_mm", "pocket.hole_length_mm", "make.measured_with", "service.temperature_low_c"),
    place="wall_top",
)
def _plug_fit_loose(k: Case) -> Finding:
    hole = k.c.pocket
    ways = (
        (hole.hole_width_mm, k.pad.plug_width_mm, k.tolerance_mm("plug_width_mm")),
        (hole.hole_length_mm, k.pad.plug_length_mm, k.tolerance_mm("plug_length_mm")),
    )
    plays = [(side + k.c.u - (plug - tol) * (1 + k.c.g_cold), side, plug, tol) for side, plug, tol in ways]
    play, side, plug, tol = max(plays, key=lambda way: way[0] / most_play_mm(way[1]))
    most = most_play_mm(side)
    return Finding(
        play,
        most,
        lambda: (
            f"Cold and at its smallest the plug plays {mm(play, '.1f')} in its hole; up to {mm(most, '.1f')} will do."
        ),
        {"w_h": side, "u": k.c.u, "plug_w": plug, "tol": tol, "g_cold": k.c.g_cold},
    )


@check(
    "plug_corner_clear",
    "The plug's corners clear of the hole's",
    formula="sqrt(2) * play_h / 2 - (sqrt(2) - 1) * max(r_h + u - plug_r + tol, play_h / 2)",
    limit_formula="0",
    unit="mm",
    sense="at_least",
    source=derived(
        "Two arcs across a corner, the sides as near as they may come and the plug's corner at its sharpest"
    ),
    needs=("pocket.corner_radius_mm", "pocket.hole_width_mm", "make.measured_with"),
    place="wall_top",
)
def _plug_corner_clear(k: Case) -> Finding | Pointless:
    if k.c.pocket.is_round:
        return Pointless("A round hole has no corners.")
    half, play, tol = k.plug.tight_play_mm / 2, k.plug.tight_play_mm, _corner_tolerance_mm(k)
    sharper = k.c.pocket.corner_radius_mm + k.c.u - k.pad.plug_corner_radius_mm + tol
    gap = sqrt(2) * half - (sqrt(2) - 1) * max(sharper, half)
    return Finding(
        gap,
        0.0,
        lambda: (
            f"Across its corners the plug stays {mm(gap, '.2f')} clear of the hole's."
            if gap >= 0
            else f"Across its corners the plug may be {mm(-gap, '.2f')} too sharp for the hole's."
        ),
        {
            "play_h": play,
            "r_h": k.c.pocket.corner_radius_mm,
            "u": k.c.u,
            "plug_r": k.pad.plug_corner_radius_mm,
            "tol": tol,
        },
    )


def _corner_tolerance_mm(k: Case) -> float:
    """Of the corners' radius; ends that are half circles come with the width, half of its tolerance."""
    least = min(k.pad.plug_width_mm, k.pad.plug_length_mm)
    if least - 2 * k.pad.plug_corner_radius_mm < 1e-6:
        return k.tolerance_mm("plug_width_mm") / 2
    return k.tolerance_mm("plug_corner_radius_mm")


@check(
    "plug_clear_above",
    "The plug clear of what is above it",
    formula="d_h - u - (plug_h + tol) * (1 + g_hot) - delta",
    limit_formula="0.5",
    unit="mm",
    sense="at_least",
    source=WORST_FIT,
    needs=("pocket.hole_depth_mm", "make.measured_with", "service.temperature_high_c"),
    place="wall_top",
)
def _plug_clear_above(k: Case) -> Finding:
    tol, sinks = k.tolerance_mm("plug_height_mm"), k.plug.indentation_mm
    gap = k.c.pocket.hole_depth_mm - k.c.u - (k.pad.plug_height_mm + tol) * (1 + k.c.g_hot) - sinks
    return Finding(
        gap,
        LEAST_ABOVE_MM,
        lambda: (
            f"Under load the plug stays {mm(gap, '.1f')} below what is above it; {mm(LEAST_ABOVE_MM)} is needed, for"
            " the rim carries"
            " the car and not the plug."
            if gap >= 0
            else f"Under load the plug may meet what is above it: it is up to {mm(-gap, '.1f')} too tall."
        ),
        {
            "d_h": k.c.pocket.hole_depth_mm,
            "u": k.c.u,
            "plug_h": k.pad.plug_height_mm,
            "tol": tol,
            "g_hot": k.c.g_hot,
            "delta": sinks,
        },
    )


@check(
    "plug_reach",
    "The plug keeps the car on the shoulder",
    formula="(plug_h - tol) * (1 + g_cold) - c_e",
    limit_formula="4",
    unit="mm",
    sense="at_least",
    source=derived("Least plug worth calling one: 4 mm beyond its chamfer"),
    needs=("pocket.hole_depth_mm", "service.temperature_low_c"),
    place="wall_top",
)
def _plug_reach(k: Case) -> Finding:
    tol = k.tolerance_mm("plug_height_mm")
    reach = (k.pad.plug_height_mm - tol) * (1 + k.c.g_cold) - k.pad.edge_chamfer_mm
    return Finding(
        reach,
        LEAST_HOLD_MM,
        lambda: (
            f"Beyond its chamfer {mm(reach, '.1f')} of plug stand in the hole at least; {mm(LEAST_HOLD_MM)} keep the car from"
            " sliding off the shoulder."
        ),
        {"plug_h": k.pad.plug_height_mm, "tol": tol, "g_cold": k.c.g_cold, "c_e": k.pad.edge_chamfer_mm},
    )


@check(
    "plug_rim",
    "The car's own sheet around the hole",
    formula="w_r",
    limit_formula="8",
    unit="mm",
    sense="at_least",
    source=derived("A rim of 8 mm all round is likely to be a lifting point's; nothing is known of the sheet itself"),
    needs=("pocket.rim_width_mm",),
    place="slot_floor",
    advice=True,
)
def _plug_rim(k: Case) -> Finding:
    rim, told = k.c.pocket.rim_width_mm, "rim_width_mm" in k.c.measurements.face.model_fields_set
    return Finding(
        rim,
        KNOWN_RIM_MM,
        lambda: (
            f"The flat rim around the hole is {'' if told else 'taken as '}{mm(rim)} wide. What the car's sheet stands there is"
            " not known and not checked: use the hole only if the vehicle's manual names it as a lifting point."
        ),
        {"w_r": rim},
        verdict="advice",
    )
