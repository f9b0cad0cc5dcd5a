"""How far a real part may be from its pad: general and geometrical tolerances, or what was measured."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from geometry.fits import Grade, linear_tolerance_mm, radius_tolerance_mm
from geometry.geometrical import SLOT_SYMMETRY, GeometricalTolerance
from geometry.pad import Pad
from geometry.provenance import derived

OUTER_CORNERS = frozenset(
    {"seat_corner_radius_mm", "plug_corner_radius_mm", "slot_mouth_chamfer_mm", "edge_chamfer_mm"}
)
"""Outer radii and chamfers, which have a table of their own; the radius in the slot is inside and has that of lengths."""


def general_tolerance_mm(pad: Pad, dimension: str, grade: Grade = "m") -> float:
    """Plus and minus of one dimension of a pad by ISO 2768-1, the table of lengths or that of radii and chamfers.

    A slot's offset is theoretically exact: half of the zone of its position.
    """
    if dimension == "slot_offset_mm":
        return SLOT_SYMMETRY.value_mm / 2
    tolerance = radius_tolerance_mm if dimension in OUTER_CORNERS else linear_tolerance_mm
    return tolerance(getattr(pad, dimension), grade)


@dataclass(frozen=True, slots=True)
class Spread:
    """Plus and minus of each dimension of a part, in mm; a part not made yet has the general tolerances."""

    known: Mapping[str, float] = field(default_factory=lambda: MappingProxyType({}))
    """What replaces the drawing's tolerance, by dimension or by name of a geometrical one: the uncertainty of a reading, or a
    coarser way of making."""

    def of(self, pad: Pad, dimension: str) -> float:
        """Plus and minus of one dimension."""
        return self.known[dimension] if dimension in self.known else general_tolerance_mm(pad, dimension)

    def zone_mm(self, tolerance: GeometricalTolerance) -> float:
        """Width of the zone that one feature may fill: the drawing's, unless it is known to fill another."""
        return self.known.get(tolerance.name, tolerance.value_mm)


AS_DRAWN = Spread()
"""The part as the drawing allows it: class m."""
WORST_FIT = derived(
    "Worst case of measurement, growth and tolerance (ISO 2768-1 m; of a part that was measured, what the reading may be off)"
)
"""What a check of a fit rests on, whatever goes into what."""
