"""The line drawings that show how each thing is measured."""

from collections.abc import Mapping
from dataclasses import dataclass

from server.how_kinds import BY_FOOT, OF_KINDS, Drawn
from server.links import static_url


@dataclass(frozen=True, slots=True)
class HowPicture:
    """One drawing, and what it shows."""

    address: str
    words: str


_PICTURES: Mapping[str, Drawn] = {
    "jack.cup_bore_mm": (
        "bore-inside-jaws",
        "A caliper's inside jaws near the cup's floor, pushing outwards against the wall",
    ),
    "jack.cup_depth_mm": (
        "depth-with-rule",
        "A straight edge over the cup's rim, and a rule standing on the floor beside it",
    ),
    "jack.cup_corner_radius_mm": (
        "corner-by-coin",
        "A coin held into the corner between the cup's wall and its floor: it fits without a gap",
    ),
    "jack.rim_diameter_mm": ("rim-outside-jaws", "A caliper's jaws closed on the outside of the rim"),
    "jack.stem_hole_diameter_mm": ("hole-inside-jaws", "A caliper's inside jaws in the hole of the cup's floor"),
    "jack.stem_hole_depth_mm": ("hole-depth-rod", "A depth rod let down into the hole, its foot on the cup's floor"),
    "jack.floor_boss_height_mm": (
        "boss-height",
        "A bolt head in the middle of the cup's floor; a rule beside it shows how far it stands up",
    ),
    "jack.floor_boss_diameter_mm": (
        "boss-width",
        "A caliper's jaws closed on the bolt head in the cup, over its widest way and its washer",
    ),
    "jack.rim_height_low_mm": (
        "rim-height-down",
        "The jack fully down on the ground, a rule beside it up to the top of its rim",
    ),
    "jack.rim_height_high_mm": (
        "rim-height-up",
        "The jack pumped up with nothing on it, a rule beside it up to the top of its rim",
    ),
    "jack.rated_load_kg": ("plate", "A plate with figures: the one in kilograms is copied"),
    "car.gross_mass_kg": (
        "vehicle-plate",
        "A plate with four figures in kilograms: that of the car alone is copied; those of car and trailer, of the front axle and"
        " of the rear axle are crossed out",
    ),
    "seam.thickness_mm": (
        "caliper-on-seam",
        "A caliper closed on the seam from below, paint and sealer between its jaws",
    ),
    "seam.bare_thickness_mm": ("steel-only", "The seam cut across: two sheets of steel, paint and sealer outside them"),
    "seam.sheets": (
        "sheets-by-torch",
        "A torch held at the seam's edge from below: its sheets show as lines side by side",
    ),
    "seam.edge_thickness_mm": (
        "lowest-sheet",
        "The seam cut across: of its two sheets one stands lower, and its thickness is measured across",
    ),
    "seam.height_mm": ("seam-height", "A rule beside the seam, from the sill's underside down to the seam's edge"),
    "seam.straight_length_mm": (
        "straight-length",
        "A straight edge along the seam seen from the side; the part without notch or bend is measured",
    ),
    "seam.bow_mm": (
        "bow-by-straight-edge",
        "The seam's edge seen from below, bowed; a straight edge beside it, and the widest gap between them",
    ),
    "seam.edge_height_mm": (
        "edge-height",
        "The car on its wheels on level ground; a rule from the ground up to the seam's edge",
    ),
    "seam.edge_height_flat_mm": ("edge-height-flat", "The same with the tyre flat: the seam's edge stands lower"),
    "seam.clear_outboard_mm": (
        "clear-outboard",
        "A rule from the level of the seam's edge up to the lowest thing outboard of the seam",
    ),
    "seam.clear_inboard_mm": (
        "clear-inboard",
        "A rule from the level of the seam's edge up to the lowest thing inboard of the seam",
    ),
    "seam.offset_mm": (
        "seam-beside",
        "The cup cannot stand centred under the seam: from the cup's middle to the seam is measured",
    ),
    "seam.local_thickness_mm": (
        "thick-place",
        "The seam seen from below: a doubler makes it thicker for a short way; its thickness is measured across",
    ),
    "seam.local_drop_mm": (
        "hangs-below",
        "The seam from the side: a drain lip hangs below its edge; a straight edge lies along the edge, and the drop is"
        " measured",
    ),
    "seam.local_length_mm": ("place-length", "The same place along the seam, from where it starts to where it ends"),
    "seam.roll_in_obstacle_mm": (
        "way-in",
        "Seen along the way in: something hangs lower than the seam's edge before the seam is reached",
    ),
}


def picture_for(key: str, foot: str) -> HowPicture | None:
    """The drawing for a field on a jack with this foot; None where words are enough."""
    drawn = BY_FOOT.get(foot, {}).get(key) or OF_KINDS.get(key) or _PICTURES.get(key)
    return HowPicture(static_url(f"how/{drawn[0]}.svg"), drawn[1]) if drawn else None
