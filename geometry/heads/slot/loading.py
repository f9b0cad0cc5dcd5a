"""What the load does to a slot, and to the seam that stands in it."""

from dataclasses import dataclass
from math import inf

from geometry.bearing import floor_factor, floor_strength_mpa, indentation_mm, loaded_length_mm
from geometry.conditions import Conditions
from geometry.heads.loading import HeadLoading, face_parallelism_mm, top_tolerance_mm
from geometry.pad import Pad
from geometry.spread import AS_DRAWN, Spread
from geometry.walls import fillet_factor, wall_thickness_mm


@dataclass(frozen=True, kw_only=True)
class SlotLoading(HeadLoading):
    """Pressures and movements in the slot, at nominal sizes; mm, MPa, N/mm."""

    width_tolerance_mm: float
    length_mm: float
    floor_factor: float
    strength_mpa: float
    edge_force_n_per_mm: float
    """Never more than the floor passes on: where bearing fails, bearing is named and not the web."""
    wall_mm: float
    wall_length_mm: float
    """Length of wall that takes the side load: the loaded length less a pocket or a crossing in the walls."""
    fillet_factor: float
    free_strip_mm: float
    """Height of seam between the sill and the parallel part of the slot."""
    tight_play_mm: float
    """Smallest play of the seam across the slot."""

    def force_over_n(self, diameter_mm: float) -> float:
        """What the edge brings along the slot over a hollow."""
        return self.edge_force_n_per_mm * min(diameter_mm, self.length_mm)


def slot_loading(c: Conditions, pad: Pad, spread: Spread = AS_DRAWN) -> SlotLoading:
    """What the load does to the slot of ``pad``."""
    seam, t_b = c.seam, c.seam.edge_thickness_mm
    whole = loaded_length_mm(
        straight_length_mm=seam.straight_length_mm,
        body_diameter_mm=pad.body_diameter_mm,
        slot_width_mm=pad.slot_reach_mm,
        edge_chamfer_mm=pad.edge_chamfer_mm,
        seat_flat_diameter_mm=pad.seat_flat_diameter_mm,
        top_height_mm=pad.top_height_mm,
    )
    length = max(0.0, whole - pad.lost_length_mm)
    pressure = c.design_force_n / (t_b * length) if length > 0 else inf
    factor = floor_factor(web_mm=pad.floor_thickness_mm, edge_thickness_mm=t_b)
    strength = floor_strength_mpa(factor=factor, allowable_mpa=c.allowable_mpa)
    wall = _wall_mm(pad)
    width_tolerance = spread.of(pad, "slot_width_mm")
    narrowest = (pad.slot_width_mm - width_tolerance) * (1 + c.g_cold)
    return SlotLoading(
        width_tolerance_mm=width_tolerance,
        depth_tolerance_mm=top_tolerance_mm(pad, spread),
        web_tolerance_mm=spread.of(pad, "web_mm"),
        floor_parallelism_mm=face_parallelism_mm(spread),
        length_mm=length,
        pressure_mpa=pressure,
        floor_factor=factor,
        strength_mpa=strength,
        edge_force_n_per_mm=min(pressure, strength) * t_b,
        indentation_mm=indentation_mm(
            pressure_mpa=min(pressure, strength),
            edge_thickness_mm=t_b,
            web_mm=pad.floor_thickness_mm,
            modulus_mpa=c.modulus_mpa,
        ),
        wall_mm=wall,
        wall_length_mm=max(0.0, length - pad.lost_wall_mm),
        fillet_factor=fillet_factor(
            wall_mm=wall, slot_depth_mm=pad.slot_depth_mm, fillet_radius_mm=pad.slot_corner_radius_mm
        ),
        free_strip_mm=seam.height_mm - pad.slot_depth_mm + pad.slot_mouth_chamfer_mm,
        tight_play_mm=narrowest - seam.thickness_mm - c.u - seam.bow_mm,
    )


def _wall_mm(pad: Pad) -> float:
    """Mean thickness of the thinner wall: the segment beyond the slot, or what a flat leaves of it."""
    segment = wall_thickness_mm(body_diameter_mm=pad.body_diameter_mm, slot_width_mm=pad.slot_reach_mm)
    return min(segment, (pad.flats_width_mm - pad.slot_reach_mm) / 2) if pad.has_flats else segment
