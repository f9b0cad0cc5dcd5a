"""The ways in which a pad wears: how each changes its dimensions, how far each is tried, and how it is read."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from geometry.conditions import Conditions
from geometry.pad import Pad

DEEPEST_GROOVE_MM = 1.0
_LEAST_RECESS_MM = 0.01
"""What is left of a recess that has worn away: a pad with none would not be asked whether it clears the boss."""
Kind = Literal["groove", "seat_worn", "seat_swollen", "slot_wide", "slot_closed", "seat_short"]
WORN: frozenset[Kind] = frozenset({"groove", "seat_worn", "seat_short", "slot_wide"})
"""What goes on with use, so that something must be left for the time until the next reading; the others are a fit."""


_HOW: Mapping[Kind, str] = {
    "groove": "Depth rod into the groove from the wall tops, in three places; the height less the deepest is the web over"
    " it.",
    "seat_worn": "Caliper, two directions, half way up the seat; write down the smaller.",
    "seat_swollen": "Caliper, two directions, half way up the seat, pad at room temperature; write down the larger.",
    "seat_short": "Depth rod from the lip's face to the seat face, in three places; write down the shortest.",
    "slot_wide": "Caliper's inside jaws near the mouth, both ends; write down the wider.",
    "slot_closed": "Caliper's inside jaws near the mouth, both ends; write down the narrower.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One kind of wear: how it changes the pad, and how far it is tried."""

    kind: Kind
    title: str
    dimension: str
    sign: Literal[-1, 1]
    most_mm: float
    beyond: str
    """Why it ends at the most, where no estimate fails before."""


_BEYOND = "No estimate fails before that; by then it is no longer the part that was drawn."


def ways(pad: Pad, c: Conditions) -> tuple[Way, ...]:
    """Every kind of wear that a pad can have, and how far each is tried."""

    def way(kind: Kind, title: str, dimension: str, sign: Literal[-1, 1], most: float, beyond: str = _BEYOND) -> Way:
        return Way(kind=kind, title=title, dimension=dimension, sign=sign, most_mm=most, beyond=beyond)

    seat = (
        way("seat_worn", "Seat worn thinner", "seat_diameter_mm", -1, 0.1 * pad.seat_diameter_mm),
        way("seat_swollen", "Seat swollen", "seat_diameter_mm", 1, 0.1 * pad.seat_diameter_mm),
        way("seat_short", "Seat face worn, seat shorter", "seat_length_mm", -1, 0.5 * pad.seat_length_mm),
    )
    if not pad.has_slot:
        place = "shoulder" if pad.has_plug else "top"
        return (way("groove", f"Dent in the {place}", "web_mm", -1, DEEPEST_GROOVE_MM), *seat)
    notch = "A deeper groove holds the seam's edge like a notch, whatever the estimates say."
    groove = min(DEEPEST_GROOVE_MM, c.seam.edge_thickness_mm)
    return (
        way("groove", "Groove in the slot's floor", "web_mm", -1, groove, notch),
        *seat,
        way("slot_wide", "Slot opened", "slot_width_mm", 1, pad.slot_width_mm),
        way("slot_closed", "Slot closed up", "slot_width_mm", -1, 0.9 * pad.slot_width_mm),
    )


def how_read(kind: Kind, pad: Pad) -> str:
    """How a kind of wear is read off the pad."""
    if kind == "groove" and not pad.has_slot:
        return "Caliper from the seat face to the bottom of the deepest dent, by the jaws' tips; write down the least."
    return _HOW[kind]


def worn_pad(pad: Pad, worn_mm: Mapping[Kind, float]) -> Pad:
    """The pad after some wear of each kind; the seat face takes web and height with it, comes nearer to the floor of a recess
    and lets a stem stand out further."""
    groove, short = worn_mm.get("groove", 0.0), worn_mm.get("seat_short", 0.0)
    worn = {
        "web_mm": pad.web_mm - groove - short,
        "seat_length_mm": pad.seat_length_mm - short,
        "seat_diameter_mm": pad.seat_diameter_mm - worn_mm.get("seat_worn", 0.0) + worn_mm.get("seat_swollen", 0.0),
    }
    if pad.has_slot:
        worn["slot_depth_mm"] = pad.slot_depth_mm + groove
        worn["slot_width_mm"] = pad.slot_width_mm + worn_mm.get("slot_wide", 0.0) - worn_mm.get("slot_closed", 0.0)
    if pad.has_recess:
        worn["seat_recess_depth_mm"] = max(_LEAST_RECESS_MM, pad.seat_recess_depth_mm - short)
    if pad.has_stem:
        worn["stem_length_mm"] = pad.stem_length_mm + short
    if pad.has_cross_hole:
        worn["cross_hole_distance_mm"] = pad.cross_hole_distance_mm + short
    return pad.with_(**worn)
