"""A slot that is more than one straight cut through the middle: off it, crossed by a second one, or with a pocket."""

from math import hypot

from geometry.bound_rules import bound
from geometry.case import Case
from geometry.draft import Draft
from geometry.provenance import derived
from geometry.rules import Finding, Numbers, Pointless, check
from geometry.told import mm

LEAST_RELIEF_GAP_MM = 0.5
RELIEF_WALL_MM = 6.0
FLOOR_UNDER_RELIEF_MM = 4.0
_FIT = derived("Worst case of measurement, growth and milling tolerance (ISO 2768-1 m)")
_PLACE = ("seam.local_length_mm", "seam.local_thickness_mm", "seam.local_drop_mm", "make.measured_with")


def _options(d: Draft) -> Numbers:
    seam = d.c.seam
    return {
        "off": seam.offset_mm,
        "t": seam.thickness_mm,
        "t_l": max(seam.local_thickness_mm, seam.thickness_mm),
        "drop": seam.local_drop_mm,
        "length_l": seam.local_length_mm,
        "bow": seam.bow_mm,
        "u": d.c.u,
        "g_cold": d.c.g_cold,
        "tol": d.tol,
        "slot": d.slot_width_mm,
        "slot_depth": d.slot_depth_mm,
        "c_m": d.slot_mouth_chamfer_mm,
        "c_e": d.edge_chamfer_mm,
        "slot_off": d.slot_offset_mm,
        "relief": d.relief_width_mm,
        "relief_l": d.relief_length_mm,
        "relief_d": d.relief_depth_mm,
        "seat_length": d.seat_length_mm,
    }


@bound(
    "slot_offset_mm",
    "lower",
    "The slot runs where the seam is, beside the jack's axis.",
    formula="off",
    source=derived("The pad stands centred in the cup, so the slot must be off its middle"),
    needs=("seam.offset_mm",),
    numbers=_options,
)
def _slot_runs_under_the_seam(d: Draft) -> float | None:
    return d.c.seam.offset_mm if d.c.seam.offset_mm > 0 else None


@bound(
    "cross_slot_width_mm",
    "lower",
    "The second slot takes the same seam as the first.",
    formula="slot",
    source=derived("One seam, one width"),
    needs=("make.slots", "seam.thickness_mm"),
    numbers=_options,
)
def _second_slot_is_as_wide(d: Draft) -> float | None:
    return d.slot_width_mm if d.c.measurements.make.slots == "crossed" else None


@bound(
    "relief_width_mm",
    "lower",
    "The pocket takes the seam at its thickest place.",
    formula="max((t_l + u + bow + 1.0) / (1 + g_cold) + tol, slot + 2 * c_m + 1)",
    source=_FIT,
    needs=_PLACE,
    numbers=_options,
)
def _pocket_takes_the_thickest(d: Draft) -> float | None:
    seam = d.c.seam
    if seam.local_length_mm <= 0:
        return None
    thickest = max(seam.local_thickness_mm, seam.thickness_mm)
    fit = (thickest + d.c.u + seam.bow_mm + 1.0) / (1 + d.c.g_cold) + d.tol
    return max(fit, d.slot_width_mm + 2 * d.slot_mouth_chamfer_mm + 1.0)


@bound(
    "relief_length_mm",
    "lower",
    "The pocket is longer than the place by 3 mm at each end, because nobody stands a jack to the millimetre.",
    formula="(length_l + u + 6) / (1 + g_cold) + tol",
    source=_FIT,
    needs=_PLACE,
    numbers=_options,
)
def _pocket_is_longer(d: Draft) -> float | None:
    length = d.c.seam.local_length_mm
    return (length + d.c.u + 6.0) / (1 + d.c.g_cold) + d.tol if length > 0 else None


@bound(
    "relief_depth_mm",
    "lower",
    "The pocket clears what hangs below the seam's edge.",
    formula="slot_depth + (drop + u + 1.0) / (1 + g_cold) + tol",
    source=_FIT,
    needs=_PLACE,
    numbers=_options,
)
def _pocket_clears_what_hangs(d: Draft) -> float | None:
    drop = d.c.seam.local_drop_mm
    if d.relief_width_mm <= 0 or drop <= 0:
        return None
    return d.slot_depth_mm + (drop + d.c.u + 1.0) / (1 + d.c.g_cold) + d.tol


@bound(
    "relief_depth_mm",
    "lower",
    "The pocket is as deep as the slot, and leaves the floor under the seam's edge whole.",
    formula="slot_depth",
    source=derived("A thick place needs room at its sides only"),
    needs=_PLACE,
    numbers=_options,
)
def _pocket_is_as_deep_as_the_slot(d: Draft) -> float | None:
    return d.slot_depth_mm if d.relief_width_mm > 0 else None


@bound(
    "web_mm",
    "lower",
    "Under an open pocket 4 mm of floor stay above the seat's lip.",
    formula="seat_length + relief_d - slot_depth + 4",
    source=derived("The pocket carries nothing; it must only not cut the body in two"),
    needs=("seam.local_drop_mm", "jack.cup_depth_mm"),
    numbers=_options,
)
def _floor_stays_under_the_pocket(d: Draft) -> float | None:
    if d.relief_depth_mm <= 0:
        return None
    return d.seat_length_mm + d.relief_depth_mm - d.slot_depth_mm + FLOOR_UNDER_RELIEF_MM


@bound(
    "body_diameter_mm",
    "lower",
    "A wall of 12 mm stands on the thin side of a slot off the middle.",
    formula="slot + 24 + 2 * slot_off",
    source=derived("Least walls that can be clamped and cut without closing in"),
    needs=("seam.offset_mm", "seam.thickness_mm"),
    numbers=_options,
)
def _thin_wall_is_stout(d: Draft) -> float | None:
    return d.slot_reach_mm + 24 if d.slot_offset_mm > 0 else None


@bound(
    "body_diameter_mm",
    "lower",
    "The pocket keeps 6 mm of wall around it.",
    formula="2 * (sqrt((slot_off + relief / 2)**2 + (relief_l / 2)**2) + c_e + 6)",
    source=derived("Least wall around a pocket that carries nothing"),
    needs=("seam.local_length_mm", "seam.local_thickness_mm"),
    numbers=_options,
)
def _wall_stays_around_the_pocket(d: Draft) -> float | None:
    if d.relief_width_mm <= 0:
        return None
    corner = hypot(d.slot_offset_mm + d.relief_width_mm / 2, d.relief_length_mm / 2)
    return 2 * (corner + d.edge_chamfer_mm + RELIEF_WALL_MM)


@check(
    "relief_clear",
    "Thick place free in its pocket",
    formula="(relief - tol) * (1 + g_cold) - t_l - u - bow",
    limit_formula="0.5",
    unit="mm",
    sense="at_least",
    source=_FIT,
    needs=_PLACE,
    place="slot_side",
)
def _relief_clear(k: Case) -> Finding | Pointless:
    c, pad, seam = k.c, k.pad, k.c.seam
    if seam.local_length_mm <= 0:
        return Pointless("The seam is the same all along the pad.")
    grown = 1 + c.g_cold
    tols = {n: k.tolerance_mm(f"relief_{n}_mm") for n in ("width", "length", "depth")}
    thickest = max(seam.local_thickness_mm, seam.thickness_mm)
    over = (pad.relief_depth_mm - tols["depth"] - pad.slot_depth_mm) * grown - seam.local_drop_mm - c.u
    gaps = {
        "width": (pad.relief_width_mm - tols["width"]) * grown - thickest - c.u - seam.bow_mm,
        "length": (pad.relief_length_mm - tols["length"]) * grown - seam.local_length_mm - c.u,
        "depth": over if seam.local_drop_mm > 0 else float("inf"),
    }
    where = min(gaps, key=lambda name: gaps[name])
    formulas = {
        "width": "(relief - tol) * (1 + g_cold) - t_l - u - bow",
        "length": "(relief_l - tol) * (1 + g_cold) - length_l - u",
        "depth": "(relief_d - tol - slot_depth) * (1 + g_cold) - drop - u",
    }
    sides = {"width": "Across", "length": "Along", "depth": "Below"}
    return Finding(
        gaps[where],
        LEAST_RELIEF_GAP_MM,
        lambda: (
            f"{sides[where]} the thick place the pocket leaves {mm(gaps[where], '.2f')} at worst;"
            f" {mm(LEAST_RELIEF_GAP_MM)} is needed."
        ),
        {
            "relief": pad.relief_width_mm,
            "relief_l": pad.relief_length_mm,
            "relief_d": pad.relief_depth_mm,
            "slot_depth": pad.slot_depth_mm,
            "tol": tols[where],
            "g_cold": c.g_cold,
            "t_l": thickest,
            "length_l": seam.local_length_mm,
            "drop": seam.local_drop_mm,
            "u": c.u,
            "bow": seam.bow_mm,
        },
        formula=formulas[where],
    )


@check(
    "slot_offset_fit",
    "Slot where the seam is",
    formula="max(slot_off - off, off - slot_off)",
    limit_formula="1",
    unit="mm",
    source=derived("A millimetre is what a person sees when standing a jack"),
    needs=("seam.offset_mm",),
    place="slot_side",
)
def _slot_offset_fit(k: Case) -> Finding | Pointless:
    wanted, cut = k.c.seam.offset_mm, k.pad.slot_offset_mm
    if wanted == 0 and cut == 0:
        return Pointless("The slot runs through the pad's middle.")
    # No finer than anybody measures.
    slot, seam = round(cut, 3), round(wanted, 3)
    return Finding(
        abs(cut - wanted),
        1.0,
        lambda: f"The slot is {mm(slot)} off the pad's middle; the seam passes {mm(seam)} beside the jack's axis.",
        {"slot_off": cut, "off": wanted},
    )
