"""What a seam asks of the slot: how wide, how deep and how round it is."""

from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.geometrical import FLOOR_PARALLELISM
from geometry.provenance import derived, memory
from geometry.rules import Numbers

_FIT = derived(
    "Worst case of measurement, growth and milling tolerance (ISO 2768-1 m, and what the drawing's frames allow)"
)


def slot_numbers(d: Draft) -> Numbers:
    """The seam, the slot so far and what the web carries, as the formulas of a slot name them."""
    seam = d.c.seam
    return {
        "t": seam.thickness_mm,
        "bow": seam.bow_mm,
        "height": seam.height_mm,
        "clear": seam.least_clear_mm,
        "u": d.c.u,
        "g_hot": d.c.g_hot,
        "g_cold": d.c.g_cold,
        "tol": d.tol,
        "tol_par": FLOOR_PARALLELISM.value_mm,
        "slot": d.slot_width_mm,
        "c_m": d.slot_mouth_chamfer_mm,
        "sigma_allow": d.c.allowable_mpa,
        "q": d.edge_force_n_per_mm,
    }


@bound(
    "slot_width_mm",
    "lower",
    "The seam goes in at its thickest and most bowed, the slot at its narrowest and coldest.",
    formula="(t + u + bow + 0.6) / (1 + g_cold) + tol",
    source=_FIT,
    needs=("seam.thickness_mm", "seam.bow_mm", "make.measured_with", "service.temperature_low_c"),
    numbers=slot_numbers,
)
def _seam_goes_in(d: Draft) -> float:
    seam = d.c.seam
    return (seam.thickness_mm + d.c.u + seam.bow_mm + 0.6) / (1 + d.c.g_cold) + d.tol


@bound(
    "slot_width_mm",
    "upper",
    "The slot still keeps the seam upright at its widest and hottest.",
    formula="(t - u + bow + max(2.5, t)) / (1 + g_hot) - tol",
    source=_FIT,
    needs=("seam.thickness_mm", "seam.bow_mm", "make.measured_with", "service.temperature_high_c"),
    numbers=slot_numbers,
)
def _seam_is_held_upright(d: Draft) -> float:
    t = d.c.seam.thickness_mm
    return (t - d.c.u + d.c.seam.bow_mm + max(2.5, t)) / (1 + d.c.g_hot) - d.tol


@bound(
    "slot_depth_mm",
    "lower",
    "Half the seam's height is held at its sides.",
    formula="0.5 * height",
    source=derived("Side support that raises the buckling factor of the seam"),
    needs=("seam.height_mm",),
    numbers=slot_numbers,
    must=False,
)
def _half_the_seam_is_held(d: Draft) -> float:
    return 0.5 * d.c.seam.height_mm


@bound(
    "slot_depth_mm",
    "lower",
    "Below the mouth chamfer at least 1 mm of wall guides the seam.",
    formula="1.0 + c_m",
    source=derived("Least slot worth calling one"),
    needs=("seam.height_mm",),
    numbers=slot_numbers,
)
def _some_wall_guides(d: Draft) -> float:
    return 1.0 + d.slot_mouth_chamfer_mm


@bound(
    "slot_depth_mm",
    "upper",
    "The walls' tops stay 3 mm clear of the sill and of whatever hangs beside the seam, hot and wet.",
    formula="(clear - u - 3.0) / (1 + g_hot) - tol - tol_par",
    source=_FIT,
    needs=("seam.height_mm", "seam.clear_inboard_mm", "seam.clear_outboard_mm", "make.measured_with"),
    numbers=slot_numbers,
)
def _walls_clear_the_sill(d: Draft) -> float:
    return (d.c.seam.least_clear_mm - d.c.u - 3.0) / (1 + d.c.g_hot) - d.tol - FLOOR_PARALLELISM.value_mm


@bound(
    "slot_corner_radius_mm",
    "lower",
    "A radius between wall and floor keeps the wall's root from cracking.",
    formula="0.3",
    source=memory("Notch sensitivity of plastics in frost"),
    needs=("seam.thickness_mm",),
    must=False,
)
def _root_is_rounded(d: Draft) -> float:
    return 0.3


@bound(
    "slot_corner_radius_mm",
    "lower",
    "No end mill leaves a sharper corner.",
    formula="0.1",
    source=derived("Corner of an ordinary sharp end mill"),
    needs=("seam.thickness_mm",),
)
def _no_sharper_corner(d: Draft) -> float:
    return 0.1


@bound(
    "slot_corner_radius_mm",
    "upper",
    "The seam's edge stands flat on the floor and not on the corner radius.",
    formula="((slot - tol_slot) * (1 + g_cold) - t - u - bow) / 2",
    source=_FIT,
    needs=("seam.thickness_mm", "seam.bow_mm", "make.measured_with"),
    numbers=lambda d: {**slot_numbers(d), "tol_slot": d.slot_tolerance_mm},
)
def _edge_stands_flat(d: Draft) -> float:
    narrowest = (d.slot_width_mm - d.slot_tolerance_mm) * (1 + d.c.g_cold)
    return (narrowest - d.c.seam.thickness_mm - d.c.u - d.c.seam.bow_mm) / 2


@bound(
    "slot_corner_radius_mm",
    "upper",
    "Half a millimetre is enough for the wall's root.",
    formula="0.5",
    source=derived("A larger radius only lifts the seam's edge off the floor's sides"),
    needs=("seam.thickness_mm",),
    must=False,
)
def _root_is_not_rounder_than_needed(d: Draft) -> float:
    return 0.5
