"""Dimensions that somebody gives instead of having them sized."""

from typing import Any

from geometry.quantity import Group, Number, measured


def _fixable(title: str, *, ge: float, le: float) -> Any:
    return measured(
        title, unit="mm", ge=ge, le=le, default=None, help="Fixed by you; the other sizes are chosen around it."
    )


class Fixed(Group):
    """Dimensions that are given instead of sized."""

    seat_diameter_mm: Number | None = _fixable("Seat diameter", ge=10, le=250)
    seat_length_mm: Number | None = _fixable("Seat length", ge=1, le=120)
    seat_corner_radius_mm: Number | None = _fixable("Seat corner radius", ge=0.1, le=60)
    seat_recess_diameter_mm: Number | None = _fixable("Seat recess diameter", ge=0, le=200)
    seat_recess_depth_mm: Number | None = _fixable("Seat recess depth", ge=0, le=60)
    skirt_bore_mm: Number | None = _fixable("Skirt, inside diameter", ge=0, le=300)
    skirt_length_mm: Number | None = _fixable("Skirt length", ge=0, le=60)
    stem_diameter_mm: Number | None = _fixable("Stem diameter", ge=0, le=150)
    stem_length_mm: Number | None = _fixable("Stem length", ge=0, le=150)
    cross_hole_diameter_mm: Number | None = _fixable("Cross-hole diameter", ge=0, le=40)
    cross_hole_distance_mm: Number | None = _fixable("Cross-hole below the seat face", ge=0, le=150)
    body_diameter_mm: Number | None = _fixable("Body diameter", ge=15, le=400)
    flats_width_mm: Number | None = _fixable("Width across flats", ge=0, le=400)
    slot_width_mm: Number | None = _fixable("Slot width", ge=1, le=60)
    slot_depth_mm: Number | None = _fixable("Slot depth", ge=1, le=120)
    slot_offset_mm: Number | None = _fixable("Slot off the middle", ge=0, le=60)
    cross_slot_width_mm: Number | None = _fixable("Second slot's width", ge=0, le=60)
    relief_width_mm: Number | None = _fixable("Relief width", ge=0, le=100)
    relief_length_mm: Number | None = _fixable("Relief length", ge=0, le=200)
    relief_depth_mm: Number | None = _fixable("Relief depth", ge=0, le=120)
    plug_length_mm: Number | None = _fixable("Plug length", ge=5, le=200)
    plug_width_mm: Number | None = _fixable("Plug width", ge=5, le=200)
    plug_height_mm: Number | None = _fixable("Plug height", ge=2, le=100)
    plug_corner_radius_mm: Number | None = _fixable("Plug corner radius", ge=0, le=100)
    web_mm: Number | None = _fixable("Web", ge=3, le=300)
    slot_corner_radius_mm: Number | None = _fixable("Slot floor radius", ge=0.1, le=20)
    slot_mouth_chamfer_mm: Number | None = _fixable("Slot mouth chamfer", ge=0, le=10)
    edge_chamfer_mm: Number | None = _fixable("Edge chamfer", ge=0, le=10)

    def given(self) -> dict[str, float]:
        """The dimensions that are fixed, by name."""
        return {name: value for name, value in vars(self).items() if value is not None}
