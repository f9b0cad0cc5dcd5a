"""What a cup asks of the pad's seat, stem and web."""

from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.geometrical import FLOOR_PARALLELISM, LIP_RUN_OUT
from geometry.provenance import derived
from geometry.rules import Numbers

LEAST_STEM_DIAMETER_MM = 6.0
LEAST_STEM_LENGTH_MM = 5.0
LEAST_SHARE_OF_BORE = 0.90
_FIT = derived(
    "Worst case of measurement, growth and turning tolerance (ISO 2768-1 m, and what the drawing's frames allow)"
)


def _cup(d: Draft) -> Numbers:
    c = d.c
    return {
        "cup_bore": c.foot.bore_mm,
        "cup_depth": c.foot.depth_mm,
        "cup_corner": c.foot.corner_radius_mm,
        "u": c.u,
        "g_hot": c.g_hot,
        "g_cold": c.g_cold,
        "tol": d.tol,
        "tol_par": FLOOR_PARALLELISM.value_mm,
        "tol_run": LIP_RUN_OUT.value_mm,
        "seat": d.seat_diameter_mm,
        "hole": c.foot.hole_diameter_mm,
    }


@bound(
    "seat_diameter_mm",
    "lower",
    "The seat fills at least nine tenths of the cup, even cold, so that it cannot rock.",
    formula="(0.90 * cup_bore + u) / (1 + g_cold) + tol",
    source=_FIT,
    needs=("jack.cup_bore_mm", "make.measured_with", "service.temperature_low_c"),
    numbers=_cup,
)
def _seat_fills_the_cup(d: Draft) -> float:
    return (LEAST_SHARE_OF_BORE * d.c.foot.bore_mm + d.c.u) / (1 + d.c.g_cold) + d.tol


@bound(
    "seat_diameter_mm",
    "upper",
    "The seat still drops into the cup when it is hot and wet, the cup at its smallest and the seat at its largest.",
    formula="(cup_bore - u) / (1 + g_hot) - 0.20 - tol",
    source=_FIT,
    needs=("jack.cup_bore_mm", "make.measured_with", "service.temperature_high_c", "service.wetness"),
    numbers=_cup,
)
def _seat_drops_into_the_cup(d: Draft) -> float:
    return (d.c.foot.bore_mm - d.c.u) / (1 + d.c.g_hot) - 0.20 - d.tol


@bound(
    "seat_corner_radius_mm",
    "lower",
    "The pad's corner is rounder than the cup's, so that the pad stands on the floor and not on the radius.",
    formula="cup_corner + u + tol",
    source=derived("A corner that rides on the radius around it makes a ring contact instead of a face"),
    needs=("jack.cup_corner_radius_mm", "make.measured_with"),
    numbers=_cup,
)
def _corner_clears_the_cup(d: Draft) -> float:
    return d.c.foot.corner_radius_mm + d.c.u + d.tol


@bound(
    "seat_corner_radius_mm",
    "upper",
    "Enough flat face stays to carry the load around the stem hole.",
    formula="min(seat / 4, (seat - hole - 6) / 2)",
    source=derived("At least half the seat stays flat, and 3 mm of face on each side of the hole"),
    needs=("jack.cup_bore_mm", "jack.stem_hole_diameter_mm"),
    numbers=_cup,
)
def _face_remains(d: Draft) -> float:
    return min(d.seat_diameter_mm / 4, (d.seat_diameter_mm - d.c.foot.hole_diameter_mm - 6) / 2)


@bound(
    "seat_length_mm",
    "lower",
    "The seat is longer than its corner radius.",
    formula="r + 1",
    source=derived("1 mm of cylinder above the corner locates the pad"),
    needs=("jack.cup_corner_radius_mm",),
    numbers=lambda d: {"r": d.seat_corner_radius_mm},
)
def _seat_is_a_cylinder(d: Draft) -> float:
    return d.seat_corner_radius_mm + 1


@bound(
    "seat_length_mm",
    "lower",
    "The lip stays off the rim, even cold and squashed under the load: the cup's floor carries, not its rim.",
    formula="(cup_depth + u + 0.5 + squash) / (1 + g_cold) + tol + tol_run",
    source=_FIT,
    needs=("jack.cup_depth_mm", "make.measured_with", "service.temperature_low_c"),
    numbers=lambda d: {**_cup(d), "squash": d.squash_mm},
)
def _lip_stays_off_the_rim(d: Draft) -> float:
    return (d.c.foot.depth_mm + d.c.u + 0.5 + d.squash_mm) / (1 + d.c.g_cold) + d.tol + LIP_RUN_OUT.value_mm


@bound(
    "stem_diameter_mm",
    "lower",
    "A thinner stem breaks off in the hand.",
    formula="6",
    source=derived("Least stem worth making"),
    needs=("jack.stem_hole_diameter_mm",),
)
def _stem_is_no_twig(d: Draft) -> float | None:
    return LEAST_STEM_DIAMETER_MM if d.c.foot.hole_diameter_mm > 0 else None


@bound(
    "stem_diameter_mm",
    "upper",
    "The stem never touches the hole's side before the seat touches the cup's, hot and wet.",
    formula="(hole - u) / (1 + g_hot) - tol - play - 1.0",
    source=_FIT,
    needs=("jack.stem_hole_diameter_mm", "make.measured_with", "service.temperature_high_c"),
    numbers=lambda d: {**_cup(d), "play": d.worst_seat_play_mm},
)
def _stem_clears_the_hole(d: Draft) -> float | None:
    if d.c.foot.hole_diameter_mm <= 0:
        return None
    return (d.c.foot.hole_diameter_mm - d.c.u) / (1 + d.c.g_hot) - d.tol - d.worst_seat_play_mm - 1.0


@bound(
    "stem_length_mm",
    "lower",
    "A shorter stem retains nothing.",
    formula="5",
    source=derived("Least stem worth making"),
    needs=("jack.stem_hole_diameter_mm",),
)
def _stem_retains(d: Draft) -> float | None:
    return LEAST_STEM_LENGTH_MM if d.stem_diameter_mm > 0 else None


@bound(
    "stem_length_mm",
    "upper",
    "The stem never stands on the bottom of its hole: the seat face carries.",
    formula="(hole_depth - u - 1.5) / (1 + g_hot) - tol",
    source=_FIT,
    needs=("jack.stem_hole_depth_mm", "make.measured_with", "service.temperature_high_c"),
    numbers=lambda d: {**_cup(d), "hole_depth": d.c.foot.hole_depth_mm or 0.0},
)
def _stem_clears_the_bottom(d: Draft) -> float | None:
    if d.stem_diameter_mm <= 0 or d.c.foot.hole_depth_mm is None:
        return None
    return (d.c.foot.hole_depth_mm - d.c.u - 1.5) / (1 + d.c.g_hot) - d.tol


@bound(
    "stem_length_mm",
    "upper",
    "A stem longer than it is thick only breaks sooner.",
    formula="stem",
    source=derived("Proportion of a stem that only retains"),
    needs=("jack.stem_hole_diameter_mm",),
    numbers=lambda d: {"stem": d.stem_diameter_mm},
)
def _stem_is_stout(d: Draft) -> float | None:
    return d.stem_diameter_mm if d.stem_diameter_mm > 0 else None


@bound(
    "web_mm",
    "lower",
    "The seam runs on past the pad: its edge stays above the cup's rim.",
    formula="(cup_depth + u + 2.0) / (1 + g_cold) + tol + tol_par",
    source=_FIT,
    needs=("jack.cup_depth_mm", "make.measured_with", "service.temperature_low_c"),
    numbers=_cup,
)
def _edge_stays_above_the_rim(d: Draft) -> float:
    return (d.c.foot.depth_mm + d.c.u + 2.0) / (1 + d.c.g_cold) + d.tol + FLOOR_PARALLELISM.value_mm
