"""What a plate that is gripped by its edge asks of the seat; in a ring or a recess the rules of a cup ask it."""

from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.feet.skirt.bounds import EDGE_BREAK_MM
from geometry.provenance import derived

LEAST_FACE_MM = 3.0


@bound(
    "seat_diameter_mm",
    "lower",
    "Around a hole in the plate 3 mm of seat face stay.",
    formula="hole + 7.0",
    source=derived("3 mm of face on each side, and its broken edge"),
    needs=("jack.plate_hole_diameter_mm", "jack.plate_diameter_mm"),
    numbers=lambda d: {"hole": d.c.foot.hole_diameter_mm},
)
def _face_remains_around_the_hole(d: Draft) -> float | None:
    if d.c.foot.locates != "skirt":
        return None
    return d.c.foot.hole_diameter_mm + 2 * (LEAST_FACE_MM + EDGE_BREAK_MM)
