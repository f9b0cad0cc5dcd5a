"""Which symbol a measurement of a saddle, a plate or a bore has: the same one may be a bore here and a hole there."""

from collections.abc import Mapping
from types import MappingProxyType

from geometry.conditions import Conditions
from geometry.feet.plate.fields import PlateFacts
from geometry.feet.post.fields import PostFacts
from geometry.feet.saddle.fields import SaddleFacts

Known = tuple[str, float | None]
"""A symbol, and its number where there is one."""

FEET_U_KEYS = frozenset(
    f"jack.{name}_mm"
    for name in (
        *("between_teeth", "tooth_height", "tooth_root_radius", "over_teeth", "land_hole_diameter", "land_hole_depth"),
        *("plate_diameter", "free_edge", "ring_bore", "ring_height", "ring_corner_radius"),
        *("plate_hole_diameter", "plate_hole_depth"),
        *("post_bore", "post_bore_depth", "bore_rim_diameter", "pin_diameter", "pin_distance"),
    )
)
"""What of them may be off by as much as is measured on the jack."""


def foot_symbols(c: Conditions) -> Mapping[str, Known]:
    """The symbols of the own measurements of a saddle, a plate or a bore, by key; empty for a cup."""
    foot = c.foot
    if isinstance(foot, SaddleFacts):
        found = _on_teeth(foot) if foot.on_teeth else _on_land(foot)
    elif isinstance(foot, PlateFacts):
        found = _by_edge(foot) if foot.locates == "skirt" else _in_ring(foot)
    elif isinstance(foot, PostFacts):
        found = _in_bore(foot)
    else:
        found = {}
    return MappingProxyType({f"jack.{name}": known for name, known in found.items()})


def _on_land(foot: SaddleFacts) -> dict[str, Known]:
    return {
        "between_teeth_mm": ("cup_bore", foot.bore_mm),
        "tooth_height_mm": ("cup_depth", foot.depth_mm),
        "tooth_root_radius_mm": ("cup_corner", foot.corner_radius_mm),
        "over_teeth_mm": ("rim_d", foot.rim_diameter_mm),
        "land_hole_diameter_mm": ("hole", foot.hole_diameter_mm),
        "land_hole_depth_mm": ("hole_depth", foot.hole_depth_mm),
    }


def _on_teeth(foot: SaddleFacts) -> dict[str, Known]:
    return {
        "between_teeth_mm": ("hole", foot.hole_diameter_mm),
        "tooth_height_mm": ("free", foot.free_edge_mm),
        "over_teeth_mm": ("around", foot.bore_mm),
        "teeth": ("n_t", float(foot.teeth)),
        "tip_length_mm": ("tip_l", foot.tip_length_mm),
        "tip_width_mm": ("tip_w", foot.tip_width_mm),
    }


def _in_ring(foot: PlateFacts) -> dict[str, Known]:
    return {
        "plate_diameter_mm": ("rim_d", foot.plate_diameter_mm),
        "ring_bore_mm": ("cup_bore", foot.bore_mm),
        "ring_height_mm": ("cup_depth", foot.depth_mm),
        "ring_corner_radius_mm": ("cup_corner", foot.corner_radius_mm),
        "plate_hole_diameter_mm": ("hole", foot.hole_diameter_mm),
        "plate_hole_depth_mm": ("hole_depth", foot.hole_depth_mm),
    }


def _by_edge(foot: PlateFacts) -> dict[str, Known]:
    return {
        "plate_diameter_mm": ("around", foot.bore_mm),
        "free_edge_mm": ("free", foot.free_edge_mm),
        "plate_hole_diameter_mm": ("hole", foot.hole_diameter_mm),
        "plate_hole_depth_mm": ("hole_depth", foot.hole_depth_mm),
    }


def _in_bore(foot: PostFacts) -> dict[str, Known]:
    return {
        "post_bore_mm": ("bore", foot.bore_mm),
        "post_bore_depth_mm": ("bore_depth", foot.hole_depth_mm),
        "bore_rim_diameter_mm": ("rim_b", foot.contact_diameter_mm),
        "pin_diameter_mm": ("pin", foot.pin_diameter_mm or None),
        "pin_distance_mm": ("pin_x", foot.pin_distance_mm or None),
    }
