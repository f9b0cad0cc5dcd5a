"""Which measurement of another foot or head is drawn where a cup or a seam has its own."""

from collections.abc import Mapping
from types import MappingProxyType

from geometry.kinds import USUAL_FOOT, USUAL_HEAD

_FEET: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "saddle": {
            "cup_bore_mm": "between_teeth_mm",
            "cup_depth_mm": "tooth_height_mm",
            "cup_corner_radius_mm": "tooth_root_radius_mm",
            "rim_diameter_mm": "over_teeth_mm",
            "stem_hole_diameter_mm": "land_hole_diameter_mm",
            "stem_hole_depth_mm": "land_hole_depth_mm",
        },
        "plate": {
            "cup_bore_mm": "ring_bore_mm",
            "cup_depth_mm": "ring_height_mm",
            "cup_corner_radius_mm": "ring_corner_radius_mm",
            "rim_diameter_mm": "plate_diameter_mm",
            "stem_hole_diameter_mm": "plate_hole_diameter_mm",
            "stem_hole_depth_mm": "plate_hole_depth_mm",
        },
        "post": {
            "stem_hole_diameter_mm": "post_bore_mm",
            "stem_hole_depth_mm": "post_bore_depth_mm",
            "rim_diameter_mm": "bore_rim_diameter_mm",
        },
    }
)
_HEADS: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "cushion": {
            "edge_height_mm": "rail.face_height_mm",
            "height_mm": "rail.clear_beside_mm",
            "thickness_mm": "rail.face_width_mm",
        },
        "plug": {
            "edge_height_mm": "pocket.rim_height_mm",
            "height_mm": "pocket.hole_depth_mm",
            "thickness_mm": "pocket.hole_width_mm",
        },
    }
)


def own_key(foot: str, head: str, key: str) -> str:
    """The key that stands in the place of a cup's or a seam's; empty where this foot or head has nothing there.

    >>> own_key("post", "slot", "jack.rim_diameter_mm"), own_key("cup", "plug", "seam.height_mm")
    ('jack.bore_rim_diameter_mm', 'pocket.hole_depth_mm')
    >>> own_key("post", "slot", "jack.cup_bore_mm")
    ''
    """
    group, _, name = key.partition(".")
    if group == "jack":
        if foot == USUAL_FOOT or name == "rim_height_low_mm":
            return key
        own = _FEET[foot].get(name)
        return f"jack.{own}" if own else ""
    return key if head == USUAL_HEAD else _HEADS[head].get(name, "")
