"""What was read off the finished part: one set of readings, with what it was measured with and when."""

from collections.abc import Mapping
from typing import Any, Literal

from pydantic import field_validator

from geometry.quantity import Group, Number, ShortText, chosen, measured

INSTRUMENT_UNCERTAINTY_MM = {"micrometer": 0.02, "caliper": 0.05, "rule": 0.5}
"""Common practice, no source: what a careful hand reads off each instrument on a finished part."""
_MOST_READINGS = 8
_LARGEST_MM = 12_000.0
"""Far beyond any pad, so that a reading in the wrong unit can be asked about instead of being refused."""
Readings = tuple[Number, ...] | None


def _read(title: str, how: str) -> Any:
    help = f"One reading, or several with a semicolon between. {how}"
    return chosen(f"{title}, as read", default=None, kind="lengths", unit="mm", help=help)


class ReadingSet(Group):
    """Readings of one finished part, taken at one time with one instrument; what is not read stays open."""

    seat_diameter_mm: Readings = _read("Seat diameter", "Two directions, half way up the seat.")
    seat_length_mm: Readings = _read("Seat length", "Seat face to lip face.")
    seat_corner_radius_mm: Readings = _read("Seat corner radius", "With a radius gauge or the gauge sheet.")
    seat_recess_diameter_mm: Readings = _read("Seat recess diameter", "Two directions, near its floor.")
    seat_recess_depth_mm: Readings = _read("Seat recess depth", "Seat face to the recess's floor.")
    skirt_bore_mm: Readings = _read("Skirt inside diameter", "Two directions, near the skirt's end.")
    skirt_length_mm: Readings = _read("Skirt length", "Skirt's end to lip face.")
    stem_diameter_mm: Readings = _read("Stem diameter", "Two directions.")
    stem_length_mm: Readings = _read("Stem length", "Seat face to stem end.")
    cross_hole_diameter_mm: Readings = _read(
        "Cross-hole diameter", "The largest pin that goes through, from both sides."
    )
    cross_hole_distance_mm: Readings = _read(
        "Cross-hole axis, below the seat face", "Seat face to a pin in the hole, and half the pin added."
    )
    body_diameter_mm: Readings = _read("Body diameter", "Two directions.")
    flats_width_mm: Readings = _read("Width across flats", "Both ends of the flats, above and below.")
    slot_width_mm: Readings = _read("Slot width", "Both ends and the middle, near the floor.")
    slot_depth_mm: Readings = _read("Slot depth", "Both ends, with the depth rod.")
    slot_offset_mm: Readings = _read(
        "Slot off the middle", "Half the difference of the two distances from a slot wall to the body's side near it."
    )
    cross_slot_width_mm: Readings = _read("Second slot's width", "Both ends, near the floor.")
    relief_width_mm: Readings = _read("Relief width", "Across the slot, near the relief's floor.")
    relief_length_mm: Readings = _read("Relief length", "Along the slot, near the relief's floor.")
    relief_depth_mm: Readings = _read("Relief depth", "Wall tops to the relief's floor.")
    plug_length_mm: Readings = _read("Plug length", "Along, at both ends.")
    plug_width_mm: Readings = _read("Plug width or diameter", "Across; of a round plug two directions.")
    plug_height_mm: Readings = _read("Plug height", "Shoulder to plug top.")
    plug_corner_radius_mm: Readings = _read("Plug corner radius", "With a radius gauge.")
    web_mm: Readings = _read(
        "Web", "Seat face to where the car stands: slot floor, top, or the shoulder around a plug."
    )
    top_height_mm: Readings = _read(
        "Height, seat face to wall top or plug top", "With the slot's depth or the plug's height it gives the web."
    )
    slot_corner_radius_mm: Readings = _read("Slot floor radius", "With a radius gauge.")
    slot_mouth_chamfer_mm: Readings = _read("Slot mouth chamfer", "Its height.")
    edge_chamfer_mm: Readings = _read("Edge chamfer", "Its height.")
    instrument: Literal["caliper", "micrometer", "rule"] = chosen(
        "Read with",
        default="caliper",
        help="A caliper is taken to be right to 0.05 mm, a micrometer to 0.02 mm, a rule to 0.5 mm.",
    )
    uncertainty_mm: Number | None = measured(
        "Uncertainty of the readings",
        unit="mm",
        ge=0.001,
        le=2,
        default=None,
        help="How far a reading may be off.",
        assumed="0.05 mm with a caliper, 0.02 mm with a micrometer, 0.5 mm with a rule",
    )
    part_temperature_c: Number = measured(
        "Temperature of the part",
        unit="°C",
        ge=-20,
        le=60,
        default=20,
        kind="number",
        help="Sizes are brought to 20 °C before they are judged.",
        how="Leave the part in the room overnight and read the room's thermometer.",
        assumed="20 °C",
    )
    hours_since_cutting: Number | None = measured(
        "Hours since the last cut",
        unit="h",
        ge=0,
        le=100_000,
        default=None,
        kind="number",
        help="Plastic goes on moving for a day after it is cut.",
        assumed="not known",
    )
    sure: Literal["ask", "yes"] = chosen(
        "Readings that look like slips",
        default="ask",
        help="Ask about a reading that is more than 5 mm off or off by a factor 25.4, or take it as it is.",
    )
    note: ShortText = chosen("Note", default="", kind="text", help="Who measured, and when.")

    @field_validator("*")
    @classmethod
    def _usable(cls, readings: object) -> object:
        if isinstance(readings, tuple):
            if not 1 <= len(readings) <= _MOST_READINGS:
                raise ValueError(f"Give between 1 and {_MOST_READINGS} readings, not {len(readings)}.")
            wrong = [r for r in readings if not 0 < r <= _LARGEST_MM]
            if wrong:
                raise ValueError(f"A reading of {wrong[0]:g} mm cannot be right. Read it again.")
        return readings

    @property
    def uncertainty_used_mm(self) -> float:
        """Uncertainty of each reading, given or by instrument."""
        return INSTRUMENT_UNCERTAINTY_MM[self.instrument] if self.uncertainty_mm is None else self.uncertainty_mm

    def given(self) -> Mapping[str, tuple[float, ...]]:
        """What was read, by dimension, in the order of the part from its foot up."""
        found = ((name, getattr(self, name)) for name in READABLE)
        return {name: readings for name, readings in found if readings}


READABLE = tuple(name for name, info in ReadingSet.model_fields.items() if "as read" in (info.title or ""))
"""The dimensions that can be read off a part, by their names in the pad."""
