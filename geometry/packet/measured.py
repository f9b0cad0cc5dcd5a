"""Which jack and which lifting point a pad is for, by what was measured on them."""

from geometry.conditions import Conditions
from geometry.heads.cushion.fields import CushionFacts
from geometry.heads.plug.fields import PlugFacts
from geometry.letters import upper_first
from geometry.making.own_words import car_words, way_of
from geometry.making.wording import Units, length_shown


def jack_measures(c: Conditions, units: Units) -> str:
    """What the jack carries with, and its sizes, as they follow “the one with this”."""

    def size(length_mm: float) -> str:
        return length_shown(length_mm, units)

    foot = c.foot
    bore, depth = size(foot.bore_mm), size(foot.depth_mm)
    match way_of(foot):
        case "land":
            return f"saddle: {bore} between the teeth, which stand {depth} over the land"
        case "teeth":
            return f"saddle: {bore} over the teeth, which stand {size(foot.free_edge_mm)} high"
        case "edge":
            return f"plate: {bore} across"
        case "ring":
            return f"plate with a ring: {bore} inside the ring, {depth} high"
        case "recess":
            return f"plate with a recess: {bore} across, {depth} deep"
        case "post":
            deep = "" if foot.hole_depth_mm is None else f", {size(foot.hole_depth_mm)} deep"
            return f"bore: {bore} across{deep}, its rim {size(foot.contact_diameter_mm)} across"
    return f"cup: bore {bore}, {depth} deep"


def car_measures(c: Conditions, units: Units) -> tuple[str, str]:
    """What the car is lifted by, and its sizes."""

    def size(length_mm: float) -> str:
        return length_shown(length_mm, units)

    head = c.head
    if isinstance(head, CushionFacts):
        return "Face", f"{size(head.face_width_mm)} wide, {size(head.face_length_mm)} long"
    if isinstance(head, PlugFacts):
        across = "across" if head.is_round else f"wide, {size(head.hole_length_mm)} long"
        return "Hole", f"{size(head.hole_width_mm)} {across}, {size(head.hole_depth_mm)} deep"
    return upper_first(car_words(c).name), f"{size(c.seam.thickness_mm)} thick, {size(c.seam.height_mm)} high"
