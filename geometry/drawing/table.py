"""The dimensions of a drawing as rows, for a table beside the picture."""

from collections.abc import Collection
from dataclasses import dataclass

from geometry.drawing.figures import limit_words
from geometry.drawing.model import Drawing

WORDS = {
    "seat_diameter_mm": "Seat diameter",
    "seat_length_mm": "Seat length",
    "seat_corner_radius_mm": "Seat corner radius",
    "seat_recess_diameter_mm": "Seat recess diameter",
    "seat_recess_depth_mm": "Seat recess depth",
    "skirt_bore_mm": "Skirt inside diameter",
    "skirt_length_mm": "Skirt length below the lip",
    "stem_diameter_mm": "Stem diameter",
    "stem_length_mm": "Stem length",
    "cross_hole_diameter_mm": "Cross-hole diameter",
    "cross_hole_distance_mm": "Cross-hole axis below seat face",
    "body_diameter_mm": "Body diameter",
    "flats_width_mm": "Across the flats",
    "slot_width_mm": "Slot width",
    "slot_depth_mm": "Slot depth",
    "slot_offset_mm": "Slot's middle off the axis",
    "cross_slot_width_mm": "Second slot width",
    "relief_width_mm": "Relief width, across the slot",
    "relief_length_mm": "Relief length, along the slot",
    "relief_depth_mm": "Relief depth below the wall tops",
    "relief_corner_radius_mm": "Relief's upright corners, at most",
    "plug_length_mm": "Plug length, along y",
    "plug_width_mm": "Plug width or diameter",
    "plug_height_mm": "Plug height above the shoulder",
    "plug_corner_radius_mm": "Plug corner radius",
    "web_mm": "Web: slot floor above seat face",
    "slot_corner_radius_mm": "Slot floor radius, both sides",
    "slot_mouth_chamfer_mm": "Slot mouth chamfer, both sides",
    "edge_chamfer_mm": "Edge chamfer of the body, both ends",
    "top_height_mm": "Height, seat face to wall top (follows from web and slot depth)",
    "overall_height_mm": "Overall height (follows from the lengths that make it up)",
}
"""What each dimension is called."""
_OTHERWISE = {
    "cushion": {
        "web_mm": "Web: top above seat face",
        "top_height_mm": "Height, seat face to top",
    },
    "plug": {
        "web_mm": "Web: shoulder above seat face",
        "top_height_mm": "Height, seat face to the plug's top (follows from web and plug height)",
    },
}
"""The same where there is no slot."""


def words_of(name: str, names: Collection[str]) -> str:
    """What a dimension is called on a part that has the dimensions ``names``."""
    head = "slot" if "slot_width_mm" in names else "plug" if "plug_width_mm" in names else "cushion"
    if name == "plug_width_mm":
        return "Plug width, along x" if "plug_length_mm" in names else "Plug diameter"
    return _OTHERWISE.get(head, {}).get(name, WORDS[name])


@dataclass(frozen=True, slots=True)
class Row:
    """One dimension: its name in the pad, in words, as written on the sheet, and its limits."""

    name: str
    words: str
    nominal: str
    lower: str
    upper: str
    tolerance: str
    """Where the limits come from."""


def dimension_table(drawing: Drawing) -> tuple[Row, ...]:
    """Every dimension on the sheet, in the order of the part from its foot up."""
    by_name = {dimension.measure.name: dimension.measure for dimension in drawing.dimensions}
    return tuple(
        Row(
            name,
            words_of(name, by_name),
            measure.words,
            *limit_words(measure, drawing.facts.units),
            measure.tolerance,
        )
        for name in WORDS
        if (measure := by_name.get(name))
    )
