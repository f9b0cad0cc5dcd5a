"""Two flats along the slot: something to hold the pad by, and less body beside the seam."""

from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.provenance import derived

LEAST_FLAT_MM = 4.0
"""Taken off the diameter: less shows no flat worth holding."""


def _least_width_mm(d: Draft) -> float:
    return max(d.slot_reach_mm + 24, d.seat_diameter_mm + 4)


@bound(
    "flats_width_mm",
    "lower",
    "Between the flats a wall of 12 mm stays on each side of the slot, and a lip over the seat.",
    formula="max(slot + 2 * slot_off + 24, seat + 4)",
    source=derived("The least walls and the least lip of a round body"),
    needs=("make.body", "seam.thickness_mm", "jack.cup_bore_mm"),
    numbers=lambda d: {"slot": d.slot_width_mm, "slot_off": d.slot_offset_mm, "seat": d.seat_diameter_mm},
)
def _flats_leave_walls_and_lip(d: Draft) -> float | None:
    return _least_width_mm(d) if d.c.measurements.make.body == "two_flats" else None


@bound(
    "body_diameter_mm",
    "lower",
    "The flats are wide enough to be held by.",
    formula="flats + 4",
    source=derived("2 mm off each side: a flat that a vice can grip"),
    needs=("make.body",),
    numbers=lambda d: {"flats": d.flats_width_mm},
)
def _flats_can_be_held(d: Draft) -> float | None:
    return d.flats_width_mm + LEAST_FLAT_MM if d.flats_width_mm > 0 else None
