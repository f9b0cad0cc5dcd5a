"""What a seam asks of the slot and of the body around it."""

from math import sqrt

from geometry.bearing import floor_factor
from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.geometrical import FLOOR_PARALLELISM
from geometry.provenance import derived, memory
from geometry.rules import Numbers
from geometry.walls import lip_thickness_mm

MARKING_MOST = 2.0
"""Upper end of the floor factor where a lasting mark is judged."""
MARKING_AIM = 0.8
LIP_STRESS_SHARE = 2.0
"""Tension under the lip over the allowable stress: yield 2σ, less the factor 1.5, times a rectangle's plastic shape factor 1.5."""
_FIT = derived(
    "Worst case of measurement, growth and milling tolerance (ISO 2768-1 m, and what the drawing's frames allow)"
)


def _slot(d: Draft) -> Numbers:
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
    numbers=_slot,
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
    numbers=_slot,
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
    numbers=_slot,
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
    numbers=_slot,
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
    numbers=_slot,
)
def _walls_clear_the_sill(d: Draft) -> float:
    return (d.c.seam.least_clear_mm - d.c.u - 3.0) / (1 + d.c.g_hot) - d.tol - FLOOR_PARALLELISM.value_mm


@bound(
    "web_mm",
    "lower",
    "The seam's edge does not punch through the web.",
    formula="sqrt(3) * q / (2 * sigma_allow)",
    source=derived("Shear yield σ/√3 (von Mises) on both sides of the edge"),
    needs=("car.gross_mass_kg", "seam.thickness_mm", "make.material"),
    numbers=_slot,
)
def _web_is_not_punched(d: Draft) -> float:
    return sqrt(3) * d.edge_force_n_per_mm / (2 * d.c.allowable_mpa)


@bound(
    "web_mm",
    "lower",
    "The lip under the overhanging seam does not shear off.",
    formula="seat_length + max(4, sqrt(3) * q / (2 * sigma_allow))",
    source=derived("Shear yield σ/√3 (von Mises) on both sides of the edge; 4 mm at least"),
    needs=("jack.cup_depth_mm", "seam.thickness_mm", "car.gross_mass_kg", "make.material"),
    numbers=lambda d: {
        "seat_length": d.seat_length_mm,
        "q": d.edge_force_n_per_mm,
        "sigma_allow": d.c.allowable_mpa,
    },
)
def _lip_is_thick(d: Draft) -> float:
    return d.seat_length_mm + max(4.0, sqrt(3) * d.edge_force_n_per_mm / (2 * d.c.allowable_mpa))


@bound(
    "web_mm",
    "lower",
    "The lip under the overhanging seam is not bent through between the slot's walls.",
    formula="seat_length + (1.1 * q + sqrt((1.1 * q)**2 + 5.2 * sigma_allow * q * slot)) / (4 * sigma_allow)",
    source=derived("Own finite elements of the lip, up to 2σ on its underside"),
    needs=("jack.cup_depth_mm", "seam.thickness_mm", "car.gross_mass_kg", "make.material"),
    numbers=lambda d: {**_slot(d), "seat_length": d.seat_length_mm},
)
def _lip_is_not_bent_through(d: Draft) -> float | None:
    if d.loaded_length_mm <= d.seat_diameter_mm or d.edge_force_n_per_mm <= 0:
        return None
    return d.seat_length_mm + lip_thickness_mm(
        edge_force_n_per_mm=d.edge_force_n_per_mm,
        slot_width_mm=d.slot_width_mm,
        stress_mpa=LIP_STRESS_SHARE * d.c.allowable_mpa,
    )


@bound(
    "body_diameter_mm",
    "lower",
    "A wall of 12 mm stands on each side of the slot.",
    formula="slot + 24",
    source=derived("Least walls that can be clamped and cut without closing in"),
    needs=("seam.thickness_mm",),
    numbers=_slot,
)
def _walls_are_stout(d: Draft) -> float:
    return d.slot_width_mm + 24


def _marking_length(d: Draft) -> float:
    """Loaded length that keeps the seam's edge from marking the floor, as far as the seam and the seat allow."""
    return min(unmarked_length_mm(d), d.c.seam.straight_length_mm, d.stiff_length_mm)


def unmarked_length_mm(d: Draft) -> float:
    """Loaded length on which the seam's edge would leave no mark, whether or not there is so much of it."""
    t_b = d.c.seam.edge_thickness_mm
    factor = floor_factor(web_mm=d.floor_thickness_mm, edge_thickness_mm=t_b, most=MARKING_MOST)
    return d.c.design_force_n / (MARKING_AIM * factor * d.c.allowable_mpa * t_b) + d.lost_length_mm


@bound(
    "body_diameter_mm",
    "lower",
    "The seam's edge is carried over enough length to stay a fifth below what leaves a lasting mark, or over as much as seam"
    " and lip allow.",
    formula="sqrt((L_m + 2 * c_e)**2 + slot**2)",
    source=derived("Marking at 0.8 of its limit, as far as the seam is straight and the overhang stiff"),
    needs=("car.gross_mass_kg", "seam.thickness_mm", "make.material", "seam.straight_length_mm"),
    numbers=lambda d: {"L_m": _marking_length(d), "c_e": d.edge_chamfer_mm, "slot": d.slot_width_mm},
    must=False,
)
def _edge_leaves_no_mark(d: Draft) -> float | None:
    if d.slot_offset_mm > 0:
        return None
    return sqrt((_marking_length(d) + 2 * d.edge_chamfer_mm) ** 2 + d.slot_width_mm**2)


@bound(
    "body_diameter_mm",
    "lower",
    "Beside the middle, too, the seam's edge is carried over enough length to stay a fifth below what leaves a lasting mark, or"
    " over as much as seam and lip allow.",
    formula="sqrt((L_m + 2 * c_e)**2 + (slot + 2 * slot_off)**2)",
    source=derived("Marking at 0.8 of its limit on the shorter chord of a slot off the middle"),
    needs=("car.gross_mass_kg", "seam.thickness_mm", "make.material", "seam.offset_mm"),
    numbers=lambda d: {
        "L_m": _marking_length(d),
        "c_e": d.edge_chamfer_mm,
        "slot": d.slot_width_mm,
        "slot_off": d.slot_offset_mm,
    },
    must=False,
)
def _edge_leaves_no_mark_beside(d: Draft) -> float | None:
    if d.slot_offset_mm <= 0:
        return None
    return sqrt((_marking_length(d) + 2 * d.edge_chamfer_mm) ** 2 + d.slot_reach_mm**2)


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
    numbers=lambda d: {**_slot(d), "tol_slot": d.slot_tolerance_mm},
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
