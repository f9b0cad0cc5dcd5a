"""A pad while it is being sized: dimensions that are still moving, and what they carry so far."""

from dataclasses import dataclass

from geometry.bearing import floor_factor, floor_strength_mpa, loaded_length_mm
from geometry.case import head_loading
from geometry.conditions import Conditions
from geometry.feet.play import LOCATING, play_mm
from geometry.fits import linear_tolerance_mm
from geometry.following_sizes import FollowingSizes
from geometry.pad import DIMENSIONS, Pad
from geometry.seat import seat_area_mm2, squash_mm

STANDARD_CHAMFER_MM = 1.0


@dataclass
class Draft(FollowingSizes):
    """The dimensions in mm; 0 until chosen. ``tol`` is the tolerance of the dimension that is being sized.

    It is copied for every dimension of the ledger, which without slots takes a third of the time.
    """

    c: Conditions
    tol: float = 0.0
    seat_diameter_mm: float = 0.0
    seat_length_mm: float = 0.0
    seat_corner_radius_mm: float = 0.0
    seat_recess_diameter_mm: float = 0.0
    seat_recess_depth_mm: float = 0.0
    skirt_bore_mm: float = 0.0
    skirt_length_mm: float = 0.0
    stem_diameter_mm: float = 0.0
    stem_length_mm: float = 0.0
    cross_hole_diameter_mm: float = 0.0
    cross_hole_distance_mm: float = 0.0
    body_diameter_mm: float = 0.0
    flats_width_mm: float = 0.0
    slot_width_mm: float = 0.0
    slot_depth_mm: float = 0.0
    slot_offset_mm: float = 0.0
    cross_slot_width_mm: float = 0.0
    relief_width_mm: float = 0.0
    relief_length_mm: float = 0.0
    relief_depth_mm: float = 0.0
    plug_length_mm: float = 0.0
    plug_width_mm: float = 0.0
    plug_height_mm: float = 0.0
    plug_corner_radius_mm: float = 0.0
    web_mm: float = 0.0
    slot_corner_radius_mm: float = 0.0
    slot_mouth_chamfer_mm: float = 0.0
    edge_chamfer_mm: float = STANDARD_CHAMFER_MM
    edge_force_n_per_mm: float = 0.0
    """Load per length on the web and the lip, never more than the slot's floor passes on: q of the notes."""

    @property
    def above_mm(self) -> float:
        """Height of the pad above the face that carries: its slot's walls or its plug."""
        return self.slot_depth_mm + self.plug_height_mm

    @property
    def above_tolerance_mm(self) -> float:
        """General tolerance of that height; 0 where nothing stands above the face."""
        return linear_tolerance_mm(self.above_mm) if self.above_mm > 0 else 0.0

    @property
    def stiff_length_mm(self) -> float:
        """The longest loaded length whose overhang is still stiff."""
        return self.seat_flat_diameter_mm + 1.4 * self.top_height_mm

    @property
    def loaded_length_mm(self) -> float:
        """Length of seam edge that carries; 0 where no seam does."""
        if self.c.head.kind != "slot":
            return 0.0
        whole = loaded_length_mm(
            straight_length_mm=self.c.seam.straight_length_mm,
            body_diameter_mm=self.body_diameter_mm,
            slot_width_mm=self.slot_reach_mm,
            edge_chamfer_mm=self.edge_chamfer_mm,
            seat_flat_diameter_mm=self.seat_flat_diameter_mm,
            top_height_mm=self.top_height_mm,
        )
        return max(0.0, whole - self.lost_length_mm)

    @property
    def hollow_diameter_mm(self) -> float:
        """Middle of the seat face that stands on nothing."""
        return max(self.c.foot.hole_diameter_mm, self.seat_recess_diameter_mm)

    @property
    def squash_mm(self) -> float:
        """How far the seat is squashed under the design load."""
        flat = min(self.seat_flat_diameter_mm, self.c.foot.contact_diameter_mm)
        area = seat_area_mm2(seat_flat_diameter_mm=flat, hole_diameter_mm=self.hollow_diameter_mm)
        return squash_mm(
            force_n=self.c.design_force_n,
            area_mm2=area,
            allowable_mpa=self.c.allowable_mpa,
            cup_depth_mm=self.c.foot.depth_mm,
            modulus_mpa=self.c.modulus_mpa,
        )

    @property
    def worst_seat_play_mm(self) -> float:
        """Largest play of what locates the pad on the jack, on the diameter."""
        size = getattr(self, LOCATING[self.c.foot.locates])
        return play_mm(self.c, size_mm=size, tolerance_mm=linear_tolerance_mm(size))

    @property
    def slot_tolerance_mm(self) -> float:
        """General tolerance of the slot's width."""
        return linear_tolerance_mm(self.slot_width_mm)

    def load_the_edge(self) -> None:
        """Bring the load per length up to date with the sizes; only a seam's edge has one."""
        if self.c.head.kind != "slot":
            return
        t_b = self.c.seam.edge_thickness_mm
        strength = floor_strength_mpa(
            factor=floor_factor(web_mm=self.floor_thickness_mm, edge_thickness_mm=t_b),
            allowable_mpa=self.c.allowable_mpa,
        )
        length = self.loaded_length_mm
        self.edge_force_n_per_mm = min(self.c.design_force_n / length, strength * t_b) if length > 0 else strength * t_b

    def force_over_n(self, diameter_mm: float) -> float:
        """The part of the design load, [N], that stands over a round hollow in the middle of the seat."""
        if self.c.head.kind == "slot":
            return self.edge_force_n_per_mm * min(diameter_mm, self.loaded_length_mm)
        if self.body_diameter_mm <= 0:
            return 0.0
        return head_loading(self.c, self.pad()).force_over_n(diameter_mm)

    def pad(self) -> Pad:
        """The dimensions as they stand, frozen."""
        return Pad(**{name: getattr(self, name) for name in DIMENSIONS})
