"""Which symbol a measurement of a car's face or of a hole in its body has."""

from collections.abc import Mapping
from types import MappingProxyType

from geometry.calculation.foot_symbols import Known
from geometry.conditions import Conditions
from geometry.heads.cushion.fields import CushionFacts
from geometry.heads.plug.fields import PlugFacts

HEADS_U_KEYS = frozenset(
    (
        "rail.clear_beside_mm",
        "pocket.hole_width_mm",
        "pocket.hole_length_mm",
        "pocket.corner_radius_mm",
        "pocket.hole_depth_mm",
    )
)
"""What of them may be off by as much as is measured on the car."""
HEADS_GROUND_KEYS = frozenset(
    ("rail.face_height_mm", "rail.face_height_flat_mm", "pocket.rim_height_mm", "pocket.rim_height_flat_mm")
)
"""Heights above the ground."""


def head_symbols(c: Conditions) -> Mapping[str, Known]:
    """The symbols of a face's or a hole's own measurements, by key; empty for a seam."""
    head = c.head
    if isinstance(head, CushionFacts):
        own: dict[str, Known] = {
            "face_width_mm": ("w_f", head.face_width_mm),
            "face_length_mm": ("l_f", head.face_length_mm),
            "face_height_mm": ("edge", head.edge_height_mm),
            "face_height_flat_mm": ("edge_flat", head.edge_height_flat_mm),
            "clear_beside_mm": ("clear_b", head.clear_beside_mm),
        }
    elif isinstance(head, PlugFacts):
        own = {
            "hole_width_mm": ("w_h", head.hole_width_mm),
            "hole_length_mm": ("l_h", head.hole_length_mm),
            "corner_radius_mm": ("r_h", head.corner_radius_mm),
            "hole_depth_mm": ("d_h", head.hole_depth_mm),
            "rim_width_mm": ("w_r", head.rim_width_mm),
            "rim_height_mm": ("edge", head.edge_height_mm),
            "rim_height_flat_mm": ("edge_flat", head.edge_height_flat_mm),
        }
    else:
        return MappingProxyType({})
    own["roll_in_obstacle_mm"] = ("roll_in", head.roll_in_obstacle_mm)
    return MappingProxyType({f"{head.group}.{name}": known for name, known in own.items()})
