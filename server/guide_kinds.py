"""Which foot and which head to choose, and where each of them is the wrong one; facts of the trade, no source."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of foot or head."""

    key: str
    title: str
    take: str
    """Where it is the right one, and what carries."""
    leave: str
    """Where it is the wrong one."""
    group: str
    """The id of its own questions in the guide."""
    picture: str
    shown: str
    """What the picture shows."""


FEET = (
    Kind(
        "cup",
        "A round cup",
        "The jack's head is a round hollow with a flat floor and a wall around it. The seat drops in and stands on the floor;"
        " the wall only locates it. A hole in the floor can take a stem.",
        "Not where the floor is domed, ribbed or torn, where a boss stands on it off the middle, or where the corner is so round"
        " that no straight wall is left. A cup with notches in its wall is a saddle with teeth.",
        "group-jack-cup",
        "foot-cup",
        "A pad in a cup, cut through the middle: its seat stands on the floor, its lip stays off the rim",
    ),
    Kind(
        "saddle",
        "A saddle with teeth or lugs",
        "Teeth or lugs stand in a ring around a flat land. The pad stands on the land between them, which is a face like a cup's"
        " floor. Where there is no land it stands on the tips, with a skirt around the teeth.",
        "Not on the tips where there is a land: teeth mark plastic and a narrow tip cuts into it. Not on teeth that are bent,"
        " sharp or of unequal height, for one of them then carries alone.",
        "group-jack-saddle",
        "foot-saddle",
        "A pad on a toothed saddle, seen from the side: its seat stands on the land between the teeth, its lip above their tips",
    ),
    Kind(
        "plate",
        "A flat plate",
        "The jack's head is a round, flat plate. In a ring on it or a recess in it the pad stands as in a shallow cup; around the"
        " edge of a bare plate hangs a skirt, which only keeps the pad in the middle.",
        "Not on a plate with corners that has neither ring nor recess. No skirt where a weld, an arm or a lug stands out just"
        " below the edge, for the skirt would stand on it; nor where the edge is so thin that a skirt slips off.",
        "group-jack-plate",
        "foot-plate",
        "A pad on a flat plate, cut through the middle: its seat stands on the plate, its skirt hangs around the edge",
    ),
    Kind(
        "post",
        "A bore that takes a post",
        "The jack's head is a tube or a boss with a bore. The pad's stem goes in as a post and takes the side load; the seat"
        " stands on the rim around the bore and takes the weight. A retaining pin keeps the stem in.",
        "Not in a bore that is worn oval, and not on a rim that is bent, sharp or hardly wide enough to stand on. Not where the"
        " stem would stand on the bottom. Never on the pin: it carries nothing.",
        "group-jack-post",
        "foot-post",
        "A pad in a bore, cut through the middle: its stem is in the bore with a pin across it, its seat on the rim",
    ),
)

HEADS = (
    Kind(
        "slot",
        "A slot for a welded seam",
        "The vehicle's manual names the seam under the sill. It stands upright in the slot, its edge on the slot's floor, and the"
        " sill stays clear of the walls.",
        "Not where the seam is folded, torn or rusted thin, and not where it is so low that the sill would lie on the walls. Not"
        " in rubber: the edge cuts it.",
        "group-seam",
        "head-slot",
        "A seam in the slot of a pad, cut across: its edge stands on the slot's floor, the sill is clear of the walls",
    ),
    Kind(
        "cushion",
        "A flat cushion for a plate or a rail",
        "The vehicle's manual names a reinforced plate or a frame rail with a level face. It lies flat on the pad's plain top; a"
        " cushion of polyurethane gives way a little and follows the car as it leans.",
        "Not under a seam, a floor sheet, a sump or anything with pipes on it. Not under a face that slopes or is oily or wet:"
        " nothing but friction keeps a car on a flat top. Not where something beside the face would be met first. Soft"
        " polyurethane is mostly too soft for a skirt or a post: take a harder plastic there.",
        "group-rail",
        "head-cushion",
        "A frame rail on the plain top of a pad, cut across: the rail's flat lies in the middle of the top",
    ),
    Kind(
        "plug",
        "A plug for a hole or pocket",
        "The vehicle's manual names a hole or pocket in the body as a place to lift by. The plug enters it and keeps the car from"
        " sliding off; the rim around the hole stands on the pad's shoulder and carries.",
        "Not in any hole that the manual does not name: many are drains, or were made for a tool, and their sheet folds. Not"
        " where the rim is torn or has hardly any flat, or where the plug would push at something above it.",
        "group-pocket",
        "head-plug",
        "The plug of a pad in a hole of the body, cut across: the hole's rim stands on the shoulder around the plug",
    ),
)
