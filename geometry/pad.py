"""The dimensions of one pad: the one answer that checks, drawing, model and sheets share."""

from dataclasses import dataclass, fields
from typing import Self

from geometry.errors import BadMeasurementsError, Problem

FUSED_MM = 0.5
"""Two diameters closer than this would leave a fin instead of a shoulder."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pad:
    """One turned and slotted body; z = 0 is the seat face on the cup's floor, z points up to the car.

    Every dimension is at 20 °C, the part as machined from dry stock. A stem length of 0 means no stem.
    """

    seat_diameter_mm: float
    seat_length_mm: float
    seat_corner_radius_mm: float
    stem_diameter_mm: float
    stem_length_mm: float
    body_diameter_mm: float
    slot_width_mm: float
    slot_depth_mm: float
    web_mm: float
    slot_corner_radius_mm: float
    slot_mouth_chamfer_mm: float
    edge_chamfer_mm: float

    @property
    def top_height_mm(self) -> float:
        """Seat face to wall top."""
        return self.web_mm + self.slot_depth_mm

    @property
    def overall_height_mm(self) -> float:
        """Stem end to wall top."""
        return self.top_height_mm + self.stem_length_mm

    @property
    def seat_flat_diameter_mm(self) -> float:
        """The flat circle of the seat face that touches the cup's floor."""
        return self.seat_diameter_mm - 2 * self.seat_corner_radius_mm

    @property
    def has_stem(self) -> bool:
        """Whether there is a stem."""
        return self.stem_length_mm > 0

    def with_(self, **changes: float) -> Self:
        """The same pad with some dimensions changed."""
        return type(self)(**{f.name: changes.get(f.name, getattr(self, f.name)) for f in fields(self)})

    def as_dict(self) -> dict[str, float]:
        """All dimensions by name, the two derived ones included, in mm."""
        return {f.name: getattr(self, f.name) for f in fields(self)} | {
            "top_height_mm": self.top_height_mm,
            "overall_height_mm": self.overall_height_mm,
        }


DIMENSIONS = tuple(f.name for f in fields(Pad))
"""The names of the free dimensions, in the order of the part from its foot up."""


def require_buildable(pad: Pad) -> None:
    """Refuse a combination of dimensions that is no single solid body of this shape.

    Raises BadMeasurementsError naming the dimension (as ``fixed.…``) and what it would have to be.
    """
    problems = tuple(
        Problem(f"fixed.{name}", getattr(pad, name), f"{words} Change it or let it go.")
        for name, broken, words in _obstacles(pad)
        if broken
    )
    if problems:
        raise BadMeasurementsError(problems)


def _obstacles(pad: Pad) -> tuple[tuple[str, bool, str], ...]:
    """Each way in which dimensions contradict each other: (dimension, is it so, words)."""
    wall = (pad.body_diameter_mm - pad.slot_width_mm) / 2
    breaks = pad.edge_chamfer_mm + pad.slot_mouth_chamfer_mm
    stem_room = pad.seat_flat_diameter_mm - FUSED_MM
    return (
        (
            "seat_corner_radius_mm",
            pad.seat_corner_radius_mm > min(pad.seat_length_mm, (pad.seat_diameter_mm - FUSED_MM) / 2),
            f"A corner radius of {pad.seat_corner_radius_mm:g} mm does not fit on a seat {pad.seat_diameter_mm:g} mm across"
            f" and {pad.seat_length_mm:g} mm long.",
        ),
        (
            "body_diameter_mm",
            pad.body_diameter_mm < pad.seat_diameter_mm + max(FUSED_MM, 2 * pad.edge_chamfer_mm),
            f"A body of {pad.body_diameter_mm:g} mm leaves no lip around a seat of {pad.seat_diameter_mm:g} mm.",
        ),
        (
            "stem_diameter_mm",
            pad.has_stem and pad.stem_diameter_mm > stem_room,
            f"A stem of {pad.stem_diameter_mm:g} mm leaves no seat face: at most {stem_room:g} mm fits.",
        ),
        (
            "slot_width_mm",
            wall < breaks + FUSED_MM,
            f"A slot of {pad.slot_width_mm:g} mm leaves no walls in a body of {pad.body_diameter_mm:g} mm.",
        ),
        (
            "slot_corner_radius_mm",
            pad.slot_corner_radius_mm > min(pad.slot_width_mm / 2, pad.slot_depth_mm - pad.slot_mouth_chamfer_mm),
            f"A floor radius of {pad.slot_corner_radius_mm:g} mm does not fit in a slot {pad.slot_width_mm:g} mm wide"
            f" and {pad.slot_depth_mm:g} mm deep.",
        ),
        (
            "slot_mouth_chamfer_mm",
            pad.slot_mouth_chamfer_mm >= pad.slot_depth_mm,
            f"A mouth chamfer of {pad.slot_mouth_chamfer_mm:g} mm is not less than the slot depth {pad.slot_depth_mm:g} mm.",
        ),
        (
            "web_mm",
            pad.web_mm <= pad.seat_length_mm
            or pad.web_mm < pad.seat_length_mm + pad.edge_chamfer_mm
            or pad.top_height_mm < pad.seat_length_mm + 2 * pad.edge_chamfer_mm + FUSED_MM,
            f"A web of {pad.web_mm:g} mm leaves no body above a seat {pad.seat_length_mm:g} mm long.",
        ),
    )
