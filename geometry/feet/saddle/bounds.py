"""What the teeth of a saddle ask of the seat that stands on their tips; between them the rules of a cup ask it."""

from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.feet.saddle.fields import SaddleFacts
from geometry.feet.skirt.bounds import EDGE_BREAK_MM
from geometry.provenance import derived

LEAST_REACH_MM = 1.0


@bound(
    "seat_diameter_mm",
    "lower",
    "The seat's flat reaches at least 1 mm over the tips: on less the teeth cut in like chisels.",
    formula="around - 2 * tip_w + 3.0",
    source=derived("1 mm of tip under the flat all round, and the seat's broken edge"),
    needs=("jack.tip_width_mm", "jack.over_teeth_mm"),
    numbers=lambda d: {"around": d.c.foot.bore_mm, "tip_w": _tip_width_mm(d)},
)
def _seat_reaches_over_the_tips(d: Draft) -> float | None:
    if d.c.foot.locates != "skirt":
        return None
    return d.c.foot.bore_mm - 2 * _tip_width_mm(d) + 2 * (LEAST_REACH_MM + EDGE_BREAK_MM)


def _tip_width_mm(d: Draft) -> float:
    foot = d.c.foot
    return foot.tip_width_mm if isinstance(foot, SaddleFacts) else 0.0
