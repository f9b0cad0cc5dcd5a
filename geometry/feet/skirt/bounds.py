"""What a skirt asks of itself, of the seat inside it and of the body that it hangs from."""

from math import pi, sqrt

from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.feet.skirt.wall import least_wall_mm, push_n_per_mm, root_strength_mpa
from geometry.fits import linear_tolerance_mm
from geometry.provenance import derived, practice
from geometry.rules import Numbers

MOST_PLAY_SHARE = 0.10
LEAST_GROOVE_MM = 2.0
EDGE_BREAK_MM = 0.5
_FIT = derived("Worst case of measurement, growth and turning tolerance (ISO 2768-1 m)")
_AROUND = "jack.plate_diameter_mm"
_WALL = "max(6, sqrt(V_s * (3 * V_s + sqrt(9 * V_s**2 + (31.2 * sigma_s * skirt_l)**2)) / 2) / sigma_s)"
_ROOT = derived(
    "The skirt's wall as a clamped plate that takes the side load at its end, bending and shear by von Mises"
)
_SIDE = ("service.ground", "car.lift_needed_mm", "make.material")


def _skirt(d: Draft) -> Numbers:
    c = d.c
    return {
        "around": c.foot.bore_mm,
        "free": c.foot.free_edge_mm,
        "hole": c.foot.hole_diameter_mm,
        "u": c.u,
        "g_hot": c.g_hot,
        "g_cold": c.g_cold,
        "tol": d.tol,
        "tol_s": linear_tolerance_mm(d.seat_length_mm),
        "seat": d.seat_diameter_mm,
        "seat_length": d.seat_length_mm,
        "r": d.seat_corner_radius_mm,
        "F_d": c.design_force_n,
        "sigma_allow": c.allowable_mpa,
    }


@bound(
    "seat_diameter_mm",
    "lower",
    "The seat's flat face is wide enough that the load does not press it in.",
    formula="sqrt(4 * F_d / (pi * sigma_allow) + hole**2) + 1.0",
    source=derived("The mean pressure of the seat face at the stress allowed, and 0.5 mm of broken edge all round"),
    needs=(_AROUND, "car.gross_mass_kg", "make.material"),
    numbers=_skirt,
    must=False,
)
def _seat_is_not_pressed_in(d: Draft) -> float:
    flat = sqrt(4 * d.c.design_force_n / (pi * d.c.allowable_mpa) + d.c.foot.hole_diameter_mm**2)
    return flat + 2 * EDGE_BREAK_MM


@bound(
    "seat_diameter_mm",
    "upper",
    "The seat ends 2 mm within the plate's edge: its burr carries nothing, and a tool can cut the groove up to the skirt.",
    formula="around - u - 4.0 - tol",
    source=practice("Face-grooving tools from 1 mm; 2 mm leaves room to finish both walls"),
    needs=(_AROUND, "make.measured_with"),
    numbers=_skirt,
)
def _seat_leaves_a_groove(d: Draft) -> float:
    return d.c.foot.bore_mm - d.c.u - 2 * LEAST_GROOVE_MM - d.tol


@bound(
    "seat_corner_radius_mm",
    "lower",
    "The seat's edge is broken, so that it neither cuts nor chips.",
    formula="0.50",
    source=practice("Broken edges of turned plastics"),
    needs=(_AROUND,),
)
def _edge_is_broken(d: Draft) -> float:
    return EDGE_BREAK_MM


@bound(
    "seat_corner_radius_mm",
    "upper",
    "Half of the seat face's width stays flat.",
    formula="(seat - hole) / 4",
    source=derived("No corner has to be cleared inside a skirt: all of the face is there to carry"),
    needs=(_AROUND,),
    numbers=_skirt,
)
def _face_remains(d: Draft) -> float:
    return (d.seat_diameter_mm - d.c.foot.hole_diameter_mm) / 4


@bound(
    "seat_length_mm",
    "lower",
    "The seat is longer than its corner radius.",
    formula="r + 1",
    source=derived("1 mm of cylinder above the broken edge"),
    needs=(_AROUND,),
    numbers=_skirt,
)
def _seat_is_a_step(d: Draft) -> float:
    return d.seat_corner_radius_mm + 1.0


@bound(
    "seat_length_mm",
    "lower",
    "The groove around the seat is 2 mm deep: a burred edge and grit lie free in it.",
    formula="2.0",
    source=practice("Depth of a run-out groove at an inner corner"),
    needs=(_AROUND,),
)
def _groove_takes_the_burr(d: Draft) -> float:
    return LEAST_GROOVE_MM


@bound(
    "skirt_bore_mm",
    "lower",
    "The skirt goes on when it is cold and at its narrowest, over the largest that it has to go around.",
    formula="(around + u + 0.3) / (1 + g_cold) + tol",
    source=_FIT,
    needs=(_AROUND, "make.measured_with", "service.temperature_low_c"),
    numbers=_skirt,
)
def _skirt_goes_on(d: Draft) -> float:
    return (d.c.foot.bore_mm + d.c.u + 0.3) / (1 + d.c.g_cold) + d.tol


@bound(
    "skirt_bore_mm",
    "upper",
    "Hot and at its widest the skirt plays by no more than a tenth, so that the pad stays in the middle.",
    formula="(1.10 * around - u) / (1 + g_hot) - tol",
    source=_FIT,
    needs=(_AROUND, "make.measured_with", "service.temperature_high_c", "service.wetness"),
    numbers=_skirt,
)
def _skirt_keeps_the_middle(d: Draft) -> float:
    return ((1 + MOST_PLAY_SHARE) * d.c.foot.bore_mm - d.c.u) / (1 + d.c.g_hot) - d.tol


@bound(
    "skirt_length_mm",
    "lower",
    "The skirt reaches 4 mm over the plate's edge, or it locates nothing.",
    formula="seat_length + 4.0 / (1 + g_cold) + tol + tol_s",
    source=derived("Least overlap worth making"),
    needs=("jack.free_edge_mm", "service.temperature_low_c"),
    numbers=_skirt,
)
def _skirt_reaches_over(d: Draft) -> float:
    return d.seat_length_mm + 4.0 / (1 + d.c.g_cold) + d.tol + linear_tolerance_mm(d.seat_length_mm)


@bound(
    "skirt_length_mm",
    "upper",
    "The skirt hangs free: it ends 2 mm short of the first thing that stands out below the plate's edge.",
    formula="seat_length + (free - u - 2.0) / (1 + g_hot) - tol - tol_s",
    source=_FIT,
    needs=("jack.free_edge_mm", "make.measured_with", "service.temperature_high_c"),
    numbers=_skirt,
)
def _skirt_hangs_free(d: Draft) -> float:
    free = (d.c.foot.free_edge_mm - d.c.u - 2.0) / (1 + d.c.g_hot)
    return d.seat_length_mm + free - d.tol - linear_tolerance_mm(d.seat_length_mm)


@bound(
    "skirt_length_mm",
    "upper",
    "8 mm over the plate's edge are enough: a longer skirt only bends more.",
    formula="seat_length + 8",
    source=derived("Overlap that locates; the moment at the root grows with it"),
    needs=("jack.free_edge_mm",),
    numbers=_skirt,
    must=False,
)
def _skirt_is_no_sleeve(d: Draft) -> float:
    return d.seat_length_mm + 8


def _has_skirt(d: Draft) -> bool:
    """Whether there is one: somebody may have fixed it away, which the checks then tell."""
    return min(d.skirt_bore_mm, d.skirt_length_mm) > 0


def _wall_mm(d: Draft) -> float:
    """The wall that the skirt needs under the side load."""
    return least_wall_mm(
        side_force_n=d.c.side_force_n,
        bore_mm=d.skirt_bore_mm,
        length_mm=d.skirt_length_mm,
        strength_mpa=_strength_mpa(d),
    )


def _strength_mpa(d: Draft) -> float:
    return root_strength_mpa(allowable_mpa=d.c.allowable_mpa, wall_stress_factor=d.c.material.wall_stress_factor)


def _wall(d: Draft) -> Numbers:
    return {
        "skirt": d.skirt_bore_mm,
        "skirt_l": d.skirt_length_mm,
        "seat_length": d.seat_length_mm,
        "V_s": push_n_per_mm(side_force_n=d.c.side_force_n, bore_mm=d.skirt_bore_mm, length_mm=d.skirt_length_mm),
        "sigma_s": _strength_mpa(d),
    }


@bound(
    "body_diameter_mm",
    "lower",
    "The skirt's wall takes the side load at its root, and is thick enough to be bored.",
    formula=f"skirt + 2 * {_WALL}",
    source=_ROOT,
    needs=(_AROUND, *_SIDE),
    numbers=_wall,
)
def _skirt_is_stout(d: Draft) -> float | None:
    return d.skirt_bore_mm + 2 * _wall_mm(d) if _has_skirt(d) else None


@bound(
    "flats_width_mm",
    "lower",
    "The flats leave the skirt's wall as thick as the side load needs it.",
    formula=f"skirt + 2 * {_WALL}",
    source=_ROOT,
    needs=("make.body", _AROUND, *_SIDE),
    numbers=_wall,
)
def _flats_leave_the_skirt(d: Draft) -> float | None:
    has_flats = d.c.measurements.make.body == "two_flats"
    return d.skirt_bore_mm + 2 * _wall_mm(d) if has_flats and _has_skirt(d) else None


@bound(
    "web_mm",
    "lower",
    "Above the skirt's root the body is as thick as its wall must be.",
    formula=f"seat_length + {_WALL}",
    source=derived("What bends the wall at its root bends the body that it hangs from"),
    needs=(_AROUND, *_SIDE),
    numbers=_wall,
)
def _body_holds_the_skirt(d: Draft) -> float | None:
    return d.seat_length_mm + _wall_mm(d) if _has_skirt(d) else None
