"""The dimensions of one pad: the one answer that checks, drawing, model and sheets share."""

from dataclasses import dataclass, fields
from typing import Self

from geometry.following_sizes import FollowingSizes


@dataclass(frozen=True, slots=True, kw_only=True)
class Pad(FollowingSizes):
    """One turned body with what is cut into it; z = 0 is the seat face, z points up to the car.

    Every dimension is at 20 °C, the part as machined from dry stock. Sections are in x and z, the slot runs along y. What
    a pad does not have is 0: a stem length of 0 means no stem, a slot width of 0 no slot.
    """

    seat_diameter_mm: float
    seat_length_mm: float
    seat_corner_radius_mm: float
    seat_recess_diameter_mm: float = 0.0
    """A round recess in the middle of the seat face, for a boss that stands on the jack's floor."""
    seat_recess_depth_mm: float = 0.0
    skirt_bore_mm: float = 0.0
    """Inside diameter of a skirt that hangs from the lip face, around teeth or a plate; as wide as the body outside."""
    skirt_length_mm: float = 0.0
    """How far the skirt hangs below the lip face."""
    stem_diameter_mm: float = 0.0
    stem_length_mm: float = 0.0
    cross_hole_diameter_mm: float = 0.0
    """A hole along x straight through the stem, for a pin that keeps it in."""
    cross_hole_distance_mm: float = 0.0
    """From the seat face down to the axis of the cross-hole."""
    body_diameter_mm: float
    flats_width_mm: float = 0.0
    """Across two flats that run along the slot, over the whole height of the body."""
    slot_width_mm: float = 0.0
    slot_depth_mm: float = 0.0
    slot_offset_mm: float = 0.0
    """From the axis to the middle of the slot, along x."""
    cross_slot_width_mm: float = 0.0
    """A second slot along x through the axis, as deep as the first and with its floor radius and mouth chamfer."""
    relief_width_mm: float = 0.0
    """A rectangular pocket across the middle of the slot: along x, centred on the slot."""
    relief_length_mm: float = 0.0
    """Along the slot, half on each side of the axis."""
    relief_depth_mm: float = 0.0
    """From the wall tops; deeper than the slot it also opens the floor."""
    plug_length_mm: float = 0.0
    """A plug on the middle of the shoulder that enters a hole of the body: along y."""
    plug_width_mm: float = 0.0
    """Along x; a round plug is as wide as it is long."""
    plug_height_mm: float = 0.0
    plug_corner_radius_mm: float = 0.0
    """Of the plug's upright corners; of a round plug half its width."""
    web_mm: float
    """Seat face to where the car stands: slot floor, cushion's top, or the shoulder around a plug."""
    slot_corner_radius_mm: float = 0.0
    slot_mouth_chamfer_mm: float = 0.0
    edge_chamfer_mm: float

    @property
    def body_top_mm(self) -> float:
        """Seat face to the top of the turned body: wall tops, cushion's top, or the shoulder around a plug."""
        return self.web_mm + self.slot_depth_mm

    @property
    def foot_depth_mm(self) -> float:
        """How far the lowest point lies below the seat face."""
        return max(self.stem_length_mm, self.skirt_length_mm - self.seat_length_mm if self.has_skirt else 0.0)

    @property
    def overall_height_mm(self) -> float:
        """Lowest point to highest."""
        return self.top_height_mm + self.foot_depth_mm

    @property
    def lost_wall_mm(self) -> float:
        """Length of wall that is missing beside the seam though the floor is there: at a crossing, or beside a closed relief."""
        return self.cross_slot_width_mm + (0.0 if self.floor_is_open else self.relief_length_mm)

    @property
    def relief_corner_radius_mm(self) -> float:
        """Of the relief's upright corners, which an end mill leaves round: 2 mm, less in a small one [own choice]."""
        return min(2.0, self.relief_width_mm / 4, self.relief_length_mm / 4)

    @property
    def foot_bottom_mm(self) -> float:
        """Level of the lower edge of the body's outside: the lip face, or the skirt's end."""
        return self.seat_length_mm - self.skirt_length_mm

    @property
    def plug_is_round(self) -> bool:
        """Whether the plug is turned with the body; only its corner radius tells it from a square one."""
        twice = 2 * self.plug_corner_radius_mm
        return self.has_plug and abs(self.plug_length_mm - twice) < 1e-6 and abs(self.plug_width_mm - twice) < 1e-6

    @property
    def has_side_to_mark(self) -> bool:
        """Whether the body's side is high enough between its chamfers for a number that can be read: 6 mm, judged."""
        return self.body_top_mm - self.foot_bottom_mm - 2 * self.edge_chamfer_mm >= 6.0

    @property
    def has_stem(self) -> bool:
        """Whether there is a stem."""
        return self.stem_length_mm > 0

    @property
    def has_skirt(self) -> bool:
        """Whether a skirt hangs from the lip face."""
        return self.skirt_length_mm > 0

    @property
    def has_slot(self) -> bool:
        """Whether there is a slot."""
        return self.slot_width_mm > 0

    @property
    def is_crossed(self) -> bool:
        """Whether a second slot crosses the first."""
        return self.cross_slot_width_mm > 0

    @property
    def has_relief(self) -> bool:
        """Whether a pocket opens the slot in its middle."""
        return self.relief_depth_mm > 0

    @property
    def opens_the_section(self) -> bool:
        """Whether a cut across the slot's middle lies in a second slot or in a pocket."""
        return self.is_crossed or self.has_relief

    @property
    def has_recess(self) -> bool:
        """Whether the seat face has a recess."""
        return self.seat_recess_depth_mm > 0

    @property
    def has_flats(self) -> bool:
        """Whether the body has two flats."""
        return self.flats_width_mm > 0

    @property
    def has_plug(self) -> bool:
        """Whether a plug stands on the shoulder."""
        return self.plug_height_mm > 0

    @property
    def has_cross_hole(self) -> bool:
        """Whether the stem has a hole for a pin."""
        return self.cross_hole_diameter_mm > 0

    @property
    def is_plain(self) -> bool:
        """Whether there is nothing but a slot in the middle of a round body, on a seat that may have a stem."""
        more = (self.has_recess, self.has_skirt, self.has_cross_hole, self.has_flats, self.is_crossed, self.has_relief)
        return self.has_slot and self.slot_offset_mm == 0 and not self.has_plug and not any(more)

    @property
    def present(self) -> tuple[str, ...]:
        """The names of the dimensions that this pad is made by, in the order of ``DIMENSIONS``."""
        return tuple(name for name in DIMENSIONS if getattr(self, name) or self._belongs(name))

    def _belongs(self, name: str) -> bool:
        """Whether a dimension of 0 is still one of this pad: a chamfer of its slot, say, or the length of a stem left out."""
        return name in _PLAIN or (self.has_slot and name in _SLOT)

    def with_(self, **changes: float) -> Self:
        """The same pad with some dimensions changed."""
        return type(self)(**{f.name: changes.get(f.name, getattr(self, f.name)) for f in fields(self)})

    def as_dict(self) -> dict[str, float]:
        """The dimensions that this pad is made by, and the two derived heights, by name, in mm."""
        return {name: getattr(self, name) for name in self.present} | {
            "top_height_mm": self.top_height_mm,
            "overall_height_mm": self.overall_height_mm,
        }


DIMENSIONS = tuple(f.name for f in fields(Pad))
"""The names of the free dimensions, in the order of the part from its foot up."""
_PLAIN = frozenset(
    {
        "seat_diameter_mm",
        "seat_length_mm",
        "seat_corner_radius_mm",
        "stem_diameter_mm",
        "stem_length_mm",
        "body_diameter_mm",
        "web_mm",
        "edge_chamfer_mm",
    }
)
_SLOT = frozenset({"slot_width_mm", "slot_depth_mm", "slot_corner_radius_mm", "slot_mouth_chamfer_mm"})
