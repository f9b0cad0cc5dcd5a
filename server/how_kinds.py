"""The line drawings of what is measured on a toothed saddle, a plate, a bore for a post, a rail and a hole in the body."""

from collections.abc import Mapping
from types import MappingProxyType

Drawn = tuple[str, str]
"""The name of a drawing, and what it shows."""
_DOWN, _UP, _BESIDE = "jack.rim_height_low_mm", "jack.rim_height_high_mm", "seam.offset_mm"
_BESIDE_HEAD: Drawn = (
    "seam-beside-head",
    "The jack cannot stand centred under the seam: from the middle of its head to the seam is measured",
)

_SADDLE: Mapping[str, Drawn] = {
    "jack.stands_on": (
        "land-or-teeth",
        "Left, the pad stands on the land between the teeth; right, it stands on the teeth's tips with a skirt around them",
    ),
    "jack.between_teeth_mm": (
        "between-teeth",
        "A caliper's inside jaws between two opposite teeth of the saddle, near their roots",
    ),
    "jack.tooth_height_mm": (
        "tooth-height",
        "A straight edge over the tips of the teeth, and a rule standing on the land beside it",
    ),
    "jack.tooth_root_radius_mm": (
        "tooth-root-card",
        "A radius card held into the corner between the saddle's land and a tooth: it fits without a gap",
    ),
    "jack.over_teeth_mm": (
        "over-teeth",
        "A caliper's jaws closed on the outside of the teeth, right across the saddle",
    ),
    "jack.teeth": ("teeth-count", "The saddle seen from above: its teeth are counted once around"),
    "jack.tip_length_mm": (
        "tip-length",
        "The tip of one tooth seen from above: the length of its flat is measured around the ring",
    ),
    "jack.tip_width_mm": (
        "tip-width",
        "The tip of one tooth seen from above: the width of its flat from inside to outside, between jaws",
    ),
    "jack.land_hole_diameter_mm": ("land-hole", "A caliper's inside jaws in the hole of the saddle's land"),
    "jack.land_hole_depth_mm": (
        "land-hole-depth",
        "A depth rod let down into the hole, its foot on the saddle's land between the teeth",
    ),
}
_PLATE: Mapping[str, Drawn] = {
    "jack.located_by": (
        "located-by",
        "Left, a skirt around the edge of a bare plate; middle, a ring on the plate around the pad; right, a recess",
    ),
    "jack.plate_diameter_mm": ("plate-across", "A caliper's jaws closed on the edge of the plate, right across it"),
    "jack.free_edge_mm": (
        "plate-free-edge",
        "From the level of the plate's top, a rule beside its edge down to the first thing that stands out below it",
    ),
    "jack.ring_bore_mm": (
        "ring-bore",
        "A caliper's inside jaws in the ring or recess of the plate, near its floor, pushing outwards",
    ),
    "jack.ring_height_mm": (
        "ring-height",
        "A straight edge over the ring or recess of the plate, and a rule standing on the floor inside",
    ),
    "jack.ring_corner_radius_mm": (
        "ring-corner-card",
        "A radius card held into the corner inside the ring or recess of the plate: it fits without a gap",
    ),
    "jack.plate_hole_diameter_mm": ("plate-hole", "A caliper's inside jaws in the hole of the plate"),
    "jack.plate_hole_depth_mm": ("plate-hole-depth", "A depth rod let down into the hole, its foot on the plate"),
}
_POST: Mapping[str, Drawn] = {
    "jack.post_bore_mm": ("post-bore", "A caliper's inside jaws in the bore for the post, as deep as they reach"),
    "jack.post_bore_depth_mm": (
        "post-bore-depth",
        "A depth rod let down to the bottom of the bore, its foot on the rim",
    ),
    "jack.bore_rim_diameter_mm": (
        "bore-rim",
        "A rule laid across the rim of the bore: its flat is measured, the rounded edge left out",
    ),
    "jack.pin_diameter_mm": ("pin-across", "The retaining pin, pulled out of the tube, between a caliper's jaws"),
    "jack.pin_distance_mm": (
        "pin-below-rim",
        "The tube cut open: a rule from its rim down to the middle of the retaining pin's hole",
    ),
}
_RAIL: Mapping[str, Drawn] = {
    "rail.face_width_mm": (
        "face-width",
        "The rail seen from its end: a rule across its flat, the rounded edges left out",
    ),
    "rail.face_length_mm": (
        "face-length",
        "The face seen from below: its flat along the car, from a step at one end to a hole at the other",
    ),
    "rail.face_height_mm": (
        "face-height",
        "The car on its wheels on level ground; a rule from the ground up to the face that is lifted",
    ),
    "rail.face_height_flat_mm": ("face-height-flat", "The same with the tyre flat: the face stands lower"),
    "rail.clear_beside_mm": (
        "clear-beside",
        "The rail seen from its end, a pipe beside it: a rule from the level of the face up to the lowest thing there",
    ),
    "rail.roll_in_obstacle_mm": (
        "way-in-to-face",
        "Seen along the way in: something hangs lower than the face before the face is reached",
    ),
}
_POCKET: Mapping[str, Drawn] = {
    "pocket.shape": (
        "round-or-rectangular",
        "Two holes seen from below: left a round one, right a rectangular one with rounded corners",
    ),
    "pocket.hole_width_mm": (
        "pocket-width",
        "A caliper's inside jaws from below in the hole of the car's body, pushing outwards",
    ),
    "pocket.hole_length_mm": (
        "pocket-length",
        "The rectangular hole seen from below: a caliper's inside jaws at its two ends, along the car",
    ),
    "pocket.corner_radius_mm": (
        "pocket-corner",
        "A coin held into a corner of the rectangular hole, seen from below: it fits without a gap",
    ),
    "pocket.hole_depth_mm": (
        "pocket-depth",
        "A depth rod pushed up into the hole, its foot on the rim, up to the first thing inside",
    ),
    "pocket.rim_width_mm": (
        "pocket-rim",
        "The hole cut across: a rule along the flat of its rim, from the hole's edge to the first bend",
    ),
    "pocket.rim_height_mm": (
        "pocket-height",
        "The car on its wheels on level ground; a rule from the ground up to the rim of the hole",
    ),
    "pocket.rim_height_flat_mm": (
        "pocket-height-flat",
        "The same with the tyre flat: the rim of the hole stands lower",
    ),
    "pocket.roll_in_obstacle_mm": (
        "way-in-to-pocket",
        "Seen along the way in: something hangs lower than the rim of the hole before the hole is reached",
    ),
}
OF_KINDS: Mapping[str, Drawn] = MappingProxyType({**_SADDLE, **_PLATE, **_POST, **_RAIL, **_POCKET})
"""What only one kind of foot or head asks for."""
BY_FOOT: Mapping[str, Mapping[str, Drawn]] = MappingProxyType(
    {
        "saddle": {
            _DOWN: (
                "tips-height-down",
                "The jack fully down on the ground, a rule beside it up to the tips of the saddle's teeth",
            ),
            _UP: (
                "tips-height-up",
                "The jack pumped up with nothing on it, a rule beside it up to the tips of the saddle's teeth",
            ),
            _BESIDE: _BESIDE_HEAD,
        },
        "plate": {
            _DOWN: (
                "plate-height-down",
                "The jack fully down on the ground, a rule beside it up to the top of its plate, or of the ring on it",
            ),
            _UP: (
                "plate-height-up",
                "The jack pumped up with nothing on it, a rule beside it up to the top of its plate, or of the ring on it",
            ),
            _BESIDE: _BESIDE_HEAD,
        },
        "post": {
            _DOWN: (
                "bore-height-down",
                "The jack fully down on the ground, a rule beside it up to the rim around its bore",
            ),
            _UP: (
                "bore-height-up",
                "The jack pumped up with nothing on it, a rule beside it up to the rim around its bore",
            ),
            _BESIDE: _BESIDE_HEAD,
        },
    }
)
"""What is asked on every foot and is another thing on each; the cup's own drawings stand with the cup."""
