"""Sizes that follow from the dimensions of a pad, be it finished or still being sized."""


class FollowingSizes:
    """What whoever has the dimensions of a pad can say of it, in mm."""

    __slots__ = ()

    seat_diameter_mm: float
    seat_corner_radius_mm: float
    seat_recess_depth_mm: float
    slot_width_mm: float
    slot_depth_mm: float
    slot_offset_mm: float
    relief_length_mm: float
    relief_depth_mm: float
    plug_height_mm: float
    web_mm: float

    @property
    def top_height_mm(self) -> float:
        """Seat face to the highest point: wall top, cushion's top or plug's top."""
        return self.web_mm + self.slot_depth_mm + self.plug_height_mm

    @property
    def seat_flat_diameter_mm(self) -> float:
        """The flat circle of the seat face that touches the cup's floor."""
        return self.seat_diameter_mm - 2 * self.seat_corner_radius_mm

    @property
    def slot_reach_mm(self) -> float:
        """Twice how far the slot's outer wall stands off the axis: its width where it runs through the middle."""
        return self.slot_width_mm + 2 * self.slot_offset_mm

    @property
    def floor_is_open(self) -> bool:
        """Whether the relief goes deeper than the slot."""
        return self.relief_depth_mm > self.slot_depth_mm

    @property
    def lost_length_mm(self) -> float:
        """Length of floor that is missing under the seam's edge: where a relief opens it."""
        return self.relief_length_mm if self.floor_is_open else 0.0

    @property
    def floor_thickness_mm(self) -> float:
        """Material under the slot's floor, cushion or shoulder where it is thinnest."""
        return self.web_mm - self.seat_recess_depth_mm
