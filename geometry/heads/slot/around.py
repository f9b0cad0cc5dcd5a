"""What a seam asks of the web under its slot and of the body around it."""

from math import sqrt

from geometry.bearing import floor_factor
from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.heads.slot.bounds import slot_numbers
from geometry.provenance import derived
from geometry.walls import lip_thickness_mm

MARKING_MOST = 2.0
"""Upper end of the floor factor where a lasting mark is judged."""
MARKING_AIM = 0.8
LIP_STRESS_SHARE = 2.0
"""Tension under the lip over the allowable stress: yield 2σ, less the factor 1.5, times a rectangle's plastic shape factor 1.5."""


@bound(
    "web_mm",
    "lower",
    "The seam's edge does not punch through the web.",
    formula="sqrt(3) * q / (2 * sigma_allow)",
    source=derived("Shear yield σ/√3 (von Mises) on both sides of the edge"),
    needs=("car.gross_mass_kg", "seam.thickness_mm", "make.material"),
    numbers=slot_numbers,
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
    numbers=lambda d: {**slot_numbers(d), "seat_length": d.seat_length_mm},
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
    numbers=slot_numbers,
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
