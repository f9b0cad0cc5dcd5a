"""What each dimension of a pad is measured with and how, in the order of the first part."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import inf


@dataclass(frozen=True, slots=True)
class Instrument:
    """Something to measure with."""

    name: str
    uncertainty_mm: float


CALIPER = Instrument("caliper", 0.05)
MICROMETER = Instrument("micrometer", 0.02)
DEPTH_ROD = Instrument("depth rod of the caliper", 0.05)
DEPTH_MICROMETER = Instrument("depth micrometer", 0.02)
INSIDE = Instrument("caliper's inside jaws", 0.05)
INSIDE_MICROMETER = Instrument("inside micrometer", 0.02)
PLATES = Instrument("gauge plates, or an inside micrometer", 0.02)
PINS = Instrument("gauge pins", 0.02)
PIN_AND_MICROMETER = Instrument("pin and depth micrometer", 0.03)
RADIUS_GAUGE = Instrument("radius gauge and lamp, or the gauge sheet", 0.1)
LENS = Instrument("lens with a scale, or the caliper's tips", 0.1)
EYE = Instrument("eye and finger nail", inf)

INSTRUMENTS: Mapping[str, tuple[Instrument, ...]] = {
    "seat_diameter_mm": (CALIPER, MICROMETER),
    "seat_length_mm": (DEPTH_ROD, DEPTH_MICROMETER),
    "seat_corner_radius_mm": (RADIUS_GAUGE,),
    "seat_recess_diameter_mm": (INSIDE, INSIDE_MICROMETER),
    "seat_recess_depth_mm": (DEPTH_ROD, DEPTH_MICROMETER),
    "skirt_bore_mm": (INSIDE, INSIDE_MICROMETER),
    "skirt_length_mm": (DEPTH_ROD, DEPTH_MICROMETER),
    "stem_diameter_mm": (CALIPER, MICROMETER),
    "stem_length_mm": (DEPTH_ROD, DEPTH_MICROMETER),
    "cross_hole_diameter_mm": (PINS,),
    "cross_hole_distance_mm": (INSIDE, PIN_AND_MICROMETER),
    "body_diameter_mm": (CALIPER, MICROMETER),
    "flats_width_mm": (CALIPER, MICROMETER),
    "slot_width_mm": (INSIDE, PLATES),
    "slot_offset_mm": (CALIPER, MICROMETER),
    "cross_slot_width_mm": (INSIDE, PLATES),
    "relief_width_mm": (INSIDE, PLATES),
    "relief_length_mm": (INSIDE, PLATES),
    "relief_depth_mm": (DEPTH_ROD, DEPTH_MICROMETER),
    "slot_depth_mm": (DEPTH_ROD, DEPTH_MICROMETER),
    "plug_length_mm": (CALIPER, MICROMETER),
    "plug_width_mm": (CALIPER, MICROMETER),
    "plug_height_mm": (DEPTH_ROD, DEPTH_MICROMETER),
    "plug_corner_radius_mm": (RADIUS_GAUGE,),
    "web_mm": (CALIPER, MICROMETER),
    "top_height_mm": (CALIPER, MICROMETER),
    "slot_corner_radius_mm": (RADIUS_GAUGE,),
    "slot_mouth_chamfer_mm": (LENS,),
    "edge_chamfer_mm": (LENS,),
}
"""Coarsest first: the first that is fine enough is named."""
HOW: Mapping[str, str] = {
    "seat_diameter_mm": "Two directions at right angles, half way up the seat.",
    "seat_length_mm": "From the lip's face to the seat face, in three places.",
    "seat_corner_radius_mm": "Against the light: the gauge touches in the middle, no ridge stands out.",
    "seat_recess_diameter_mm": "Two directions at right angles, near its floor.",
    "seat_recess_depth_mm": "From the seat face, the rod's foot across the recess, to its floor beside the middle.",
    "stem_diameter_mm": "Two directions at right angles.",
    "stem_length_mm": "From the seat face to the stem's end.",
    "cross_hole_diameter_mm": "From both sides: the largest pin that goes through is its size.",
    "cross_hole_distance_mm": "A pin in the hole: from the seat face to the pin, on both sides of the stem; half the pin is to be"
    " added.",
    "body_diameter_mm": "Two directions: along the slot and across it, across it lightly, below the floor.",
    "flats_width_mm": "Both ends of the flats, near the lip and near the top; across the slot lightly, below its floor.",
    "slot_width_mm": "Both ends and the middle, near the floor and near the mouth.",
    "cross_slot_width_mm": "Both ends, near the floor and near the mouth.",
    "relief_width_mm": "Across the slot, near the relief's floor, clear of its round corners.",
    "relief_length_mm": "Along the slot, near the relief's floor, clear of its round corners.",
    "relief_depth_mm": "From the wall tops to the relief's floor, beside the slot and in its middle.",
    "slot_depth_mm": "From the wall tops to the floor, at both ends.",
    "plug_length_mm": "Along, at both ends, half way up.",
    "plug_height_mm": "From the plug's top to the shoulder, in three places.",
    "plug_corner_radius_mm": "All four upright corners, against the light.",
    "web_mm": "Over a bar of known thickness laid in the slot, from the seat face; take the bar off. Or"
    " height less slot depth.",
    "top_height_mm": "From the seat face to each wall top.",
    "slot_corner_radius_mm": "In both corners: no scratch, no step.",
    "slot_mouth_chamfer_mm": "Both edges, all along.",
    "edge_chamfer_mm": "Both ends of the body.",
}
FIRST_OFF = (
    "top_height_mm",
    "seat_diameter_mm",
    "seat_length_mm",
    "seat_recess_diameter_mm",
    "seat_recess_depth_mm",
    "skirt_bore_mm",
    "skirt_length_mm",
    "stem_diameter_mm",
    "stem_length_mm",
    "cross_hole_diameter_mm",
    "cross_hole_distance_mm",
    "body_diameter_mm",
    "flats_width_mm",
    "seat_corner_radius_mm",
    "slot_width_mm",
    "slot_depth_mm",
    "slot_offset_mm",
    "cross_slot_width_mm",
    "relief_width_mm",
    "relief_length_mm",
    "relief_depth_mm",
    "plug_height_mm",
    "plug_length_mm",
    "plug_width_mm",
    "plug_corner_radius_mm",
    "web_mm",
    "slot_corner_radius_mm",
    "slot_mouth_chamfer_mm",
    "edge_chamfer_mm",
)
"""What other sizes are counted from comes first; what can be mended comes before what cannot, edges last."""
TITLES: Mapping[str, str] = {
    "top_height_mm": "Height, seat face to wall top",
    "flats_width_mm": "Width across flats",
    "slot_offset_mm": "Slot off the middle",
    "cross_slot_width_mm": "Second slot's width",
    "slot_corner_radius_mm": "Slot floor radius",
    "skirt_bore_mm": "Skirt inside diameter",
    "skirt_length_mm": "Skirt length, below the lip",
    "cross_hole_diameter_mm": "Cross-hole diameter",
    "cross_hole_distance_mm": "Cross-hole axis, below the seat face",
    "plug_length_mm": "Plug length, along",
}
"""Where the name in the pad does not say it."""
