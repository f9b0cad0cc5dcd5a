"""The ways in which a pad wears: how each changes its dimensions, how far each is tried, and how it is read."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Literal

from geometry.conditions import Conditions
from geometry.feet.facts import Locates
from geometry.growth import MADE_AT_C, growth, water_percent
from geometry.pad import Pad

DEEPEST_GROOVE_MM = 1.0
HALVINGS = 16
"""How often the way to a limit is halved: to less than a thousandth of a millimetre."""
_LEAST_RECESS_MM = 0.01
"""What is left of a recess that has worn away: a pad with none would not be asked whether it clears the boss."""
Kind = Literal[
    "groove",
    "seat_worn",
    "seat_swollen",
    "skirt_worn",
    "skirt_closed",
    "stem_worn",
    "stem_swollen",
    "seat_short",
    "slot_wide",
    "slot_closed",
    "plug_worn",
    "plug_swollen",
]
WORN: frozenset[Kind] = frozenset(
    {"groove", "seat_worn", "skirt_worn", "stem_worn", "seat_short", "slot_wide", "plug_worn"}
)
"""What goes on with use, so that something must be left for the time until the next reading; the others are a fit."""


_HOW: Mapping[Kind, str] = {
    "groove": "Depth rod into the groove from the wall tops, in three places; the height less the deepest is the web over"
    " it.",
    "seat_worn": "Caliper, two directions, half way up the seat; write down the smaller.",
    "seat_swollen": "Caliper, two directions, half way up the seat, pad at room temperature; write down the larger.",
    "skirt_worn": "Caliper's inside jaws, two directions, near the skirt's end; write down the larger.",
    "skirt_closed": "Caliper's inside jaws, two directions, near the skirt's end, pad at room temperature; write down the"
    " smaller.",
    "stem_worn": "Caliper, two directions, near both ends of the stem; write down the smallest.",
    "stem_swollen": "Caliper, two directions, near both ends of the stem, pad at room temperature; write down the largest.",
    "plug_worn": "Caliper across the plug, half way up; write down the least.",
    "plug_swollen": "Caliper across the plug, half way up, pad at room temperature; write down the most.",
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


_PLACED: Mapping[Locates, tuple[tuple[Kind, Kind], tuple[str, str], str, Literal[-1, 1]]] = {
    "seat": (("seat_worn", "seat_swollen"), ("Seat worn thinner", "Seat swollen"), "seat_diameter_mm", -1),
    "skirt": (("skirt_worn", "skirt_closed"), ("Skirt widened", "Skirt closed up"), "skirt_bore_mm", 1),
    "stem": (("stem_worn", "stem_swollen"), ("Stem worn thinner", "Stem swollen"), "stem_diameter_mm", -1),
}
"""What keeps the pad in its place: how it wears and how it closes up, its dimension, and which way wear goes."""


def ways(pad: Pad, c: Conditions) -> tuple[Way, ...]:
    """Every kind of wear that a pad can have, and how far each is tried."""

    def way(kind: Kind, title: str, dimension: str, sign: Literal[-1, 1], most: float, beyond: str = _BEYOND) -> Way:
        return Way(kind=kind, title=title, dimension=dimension, sign=sign, most_mm=most, beyond=beyond)

    def both(
        names: tuple[Kind, Kind], titles: tuple[str, str], dimension: str, sign: Literal[-1, 1]
    ) -> tuple[Way, Way]:
        """What wears one way and closes up the other, each tried up to a tenth."""
        most = 0.1 * getattr(pad, dimension)
        other: Literal[-1, 1] = 1 if sign < 0 else -1
        return way(names[0], titles[0], dimension, sign, most), way(names[1], titles[1], dimension, other, most)

    seat = (
        *both(*_PLACED[c.foot.locates]),
        way("seat_short", "Seat face worn, seat shorter", "seat_length_mm", -1, 0.5 * pad.seat_length_mm),
    )
    if pad.has_plug:
        plug = both(("plug_worn", "plug_swollen"), ("Plug worn thinner", "Plug swollen"), "plug_width_mm", -1)
        return (way("groove", "Dent in the shoulder", "web_mm", -1, DEEPEST_GROOVE_MM), *seat, *plug)
    if not pad.has_slot:
        return (way("groove", "Dent in the top", "web_mm", -1, DEEPEST_GROOVE_MM), *seat)
    notch = "A deeper groove holds the seam's edge like a notch, whatever the estimates say."
    groove = min(DEEPEST_GROOVE_MM, c.seam.edge_thickness_mm)
    return (
        way("groove", "Groove in the slot's floor", "web_mm", -1, groove, notch),
        *seat,
        way("slot_wide", "Slot opened", "slot_width_mm", 1, pad.slot_width_mm),
        way("slot_closed", "Slot closed up", "slot_width_mm", -1, 0.9 * pad.slot_width_mm),
    )


def water_growth(c: Conditions) -> float:
    """How much larger than machined a pad may be read at 20 °C that has done nothing but take up the water of its case."""
    water = water_percent(c.material, wetness=c.measurements.service.wetness)
    return growth(c.material, temperature_c=MADE_AT_C, water_percent=water)


def furthest(
    least: Mapping[Kind, float], most: Mapping[Kind, float], passes: Callable[[Mapping[Kind, float]], bool]
) -> dict[Kind, float]:
    """The furthest between two states of wear that still passes, every kind going on by the same share of its way."""

    def at(share: float) -> dict[Kind, float]:
        return {kind: low + share * (most[kind] - low) for kind, low in least.items()}

    if passes(most):
        return dict(most)
    low, high = 0.0, 1.0
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if passes(at(middle)) else (low, middle)
    return at(low)


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
    if pad.has_skirt:
        worn["skirt_bore_mm"] = pad.skirt_bore_mm + worn_mm.get("skirt_worn", 0.0) - worn_mm.get("skirt_closed", 0.0)
    if pad.has_plug:
        by = worn_mm.get("plug_swollen", 0.0) - worn_mm.get("plug_worn", 0.0)
        worn["plug_width_mm"] = pad.plug_width_mm + by
        if pad.plug_is_round:
            worn |= {
                "plug_length_mm": pad.plug_length_mm + by,
                "plug_corner_radius_mm": pad.plug_corner_radius_mm + by / 2,
            }
    if pad.has_slot:
        worn["slot_depth_mm"] = pad.slot_depth_mm + groove
        worn["slot_width_mm"] = pad.slot_width_mm + worn_mm.get("slot_wide", 0.0) - worn_mm.get("slot_closed", 0.0)
    if pad.has_recess:
        worn["seat_recess_depth_mm"] = max(_LEAST_RECESS_MM, pad.seat_recess_depth_mm - short)
    if pad.has_stem:
        thicker = worn_mm.get("stem_swollen", 0.0) - worn_mm.get("stem_worn", 0.0)
        worn |= {"stem_length_mm": pad.stem_length_mm + short, "stem_diameter_mm": pad.stem_diameter_mm + thicker}
    if pad.has_cross_hole:
        worn["cross_hole_distance_mm"] = pad.cross_hole_distance_mm + short
    return pad.with_(**worn)
