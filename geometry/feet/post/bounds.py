"""What a bore asks of the pad's seat and of the stem that goes into it."""

from math import pi, sqrt

from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.feet.post.places import cross_hole_mm, cross_hole_place_mm, pin_of
from geometry.provenance import derived, practice, recomputed
from geometry.rules import Numbers

LEAST_SHARE_OF_BORE = 0.90
LEAST_FACE_MM = 2.0
"""Ring of rim, on each side of the bore, that must be left to stand on."""
CORNER_MM = 0.5
OVER_THE_RIM_MM = 3.0
"""How much wider than the rim the seat may be: 1 mm for the stem's play and the round corner on each side."""
BAR_AND_LIP_MM = 6.0
LENGTH_SHARES = (0.5, 1.5)
"""Least and most of a stem's length, by its thickness."""
_FIT = derived("Worst case of measurement, growth and turning tolerance (ISO 2768-1 m)")


def bore_numbers(d: Draft) -> Numbers:
    """The bore, the pin and the stem so far, as the formulas of a post name them."""
    c, bore = d.c, pin_of(d)
    return {
        "bore": c.foot.bore_mm,
        "bore_depth": c.foot.hole_depth_mm or 0.0,
        "rim_b": c.foot.contact_diameter_mm,
        "u": c.u,
        "g_hot": c.g_hot,
        "g_cold": c.g_cold,
        "tol": d.tol,
        "r": d.seat_corner_radius_mm,
        "c_e": d.edge_chamfer_mm,
        "seat": d.seat_diameter_mm,
        "stem": d.stem_diameter_mm,
        "stock": max(c.stock_mm),
        "above": d.above_mm,
        "H": c.side_force_n,
        "sigma_allow": c.allowable_mpa,
        "cross": cross_hole_mm(d),
        "cross_x": cross_hole_place_mm(d),
        "pin": bore.pin_diameter_mm if bore else 0.0,
    }


@bound(
    "seat_diameter_mm",
    "lower",
    "At least 2 mm of flat seat face stands on the bore's rim on each side of the bore, even cold.",
    formula="(bore + u + 4) / (1 + g_cold) + 1.4 + tol",
    source=derived("Least face worth standing on; 0.5 mm of corner with its tolerance of 0.2 mm on each side"),
    needs=("jack.bore_rim_diameter_mm", "jack.post_bore_mm", "make.measured_with"),
    numbers=bore_numbers,
)
def _seat_stands_on_the_rim(d: Draft) -> float:
    return (d.c.foot.bore_mm + d.c.u + 2 * LEAST_FACE_MM) / (1 + d.c.g_cold) + 1.4 + d.tol


@bound(
    "seat_diameter_mm",
    "upper",
    "The seat covers the bore's rim wherever its play lets the stem stand; wider, it would only look steadier than it is.",
    formula="rim_b + u + 3",
    source=derived("1 mm for the stem's play and 0.5 mm for the round corner on each side: the rim alone carries"),
    needs=("jack.bore_rim_diameter_mm", "make.measured_with"),
    numbers=bore_numbers,
)
def _seat_covers_the_rim(d: Draft) -> float:
    return d.c.foot.contact_diameter_mm + d.c.u + OVER_THE_RIM_MM


@bound(
    "seat_diameter_mm",
    "upper",
    "Around the seat the largest bar to hand still gives a lip of 2 mm, and 1 mm to turn off all round.",
    formula="stock - 6",
    source=derived("The least lip and the allowance for turning, on the diameter"),
    needs=("make.stock_diameters_mm",),
    numbers=bore_numbers,
)
def _seat_comes_out_of_the_bar(d: Draft) -> float | None:
    return max(d.c.stock_mm) - BAR_AND_LIP_MM if d.c.rod_is_cut else None


@bound(
    "seat_corner_radius_mm",
    "lower",
    "The seat's edge is broken so that it neither chips nor digs into the bore's rim.",
    formula="0.5",
    source=practice("A broken edge"),
    needs=("jack.bore_rim_diameter_mm",),
)
def _corner_is_broken(d: Draft) -> float:
    return CORNER_MM


@bound(
    "seat_corner_radius_mm",
    "upper",
    "Inside the round corner 2 mm of flat seat face stay on each side of the bore.",
    formula="(seat - bore - 4) / 2",
    source=derived("Least face worth standing on"),
    needs=("jack.bore_rim_diameter_mm", "jack.post_bore_mm"),
    numbers=bore_numbers,
)
def _face_stays_inside_the_corner(d: Draft) -> float:
    return (d.seat_diameter_mm - d.c.foot.bore_mm - 2 * LEAST_FACE_MM) / 2


@bound(
    "seat_length_mm",
    "lower",
    "The seat is a low step, longer than its corner radius.",
    formula="r + 1",
    source=derived("1 mm of cylinder above the corner to measure across"),
    needs=("jack.bore_rim_diameter_mm",),
    numbers=bore_numbers,
)
def _seat_is_a_step(d: Draft) -> float:
    return d.seat_corner_radius_mm + 1


@bound(
    "stem_diameter_mm",
    "lower",
    "The stem fills at least nine tenths of the bore, even cold, so that it guides the pad.",
    formula="(0.90 * bore + u) / (1 + g_cold) + tol",
    source=_FIT,
    needs=("jack.post_bore_mm", "make.measured_with", "service.temperature_low_c"),
    numbers=bore_numbers,
)
def _stem_fills_the_bore(d: Draft) -> float:
    return (LEAST_SHARE_OF_BORE * d.c.foot.bore_mm + d.c.u) / (1 + d.c.g_cold) + d.tol


@bound(
    "stem_diameter_mm",
    "upper",
    "The stem still goes into the bore when it is hot and wet, the bore at its smallest and the stem at its largest.",
    formula="(bore - u) / (1 + g_hot) - 0.20 - tol",
    source=_FIT,
    needs=("jack.post_bore_mm", "make.measured_with", "service.temperature_high_c", "service.wetness"),
    numbers=bore_numbers,
)
def _stem_goes_in(d: Draft) -> float:
    return (d.c.foot.bore_mm - d.c.u) / (1 + d.c.g_hot) - 0.20 - d.tol


@bound(
    "stem_length_mm",
    "lower",
    "A stem that is guided over less than half of its thickness lets the pad stand askew.",
    formula="(0.5 * stem) / (1 + g_cold) + c_e + tol",
    source=practice("A spigot is guided over half of its diameter at least"),
    needs=("jack.post_bore_depth_mm", "jack.post_bore_mm"),
    numbers=bore_numbers,
)
def _stem_guides(d: Draft) -> float:
    return LENGTH_SHARES[0] * d.stem_diameter_mm / (1 + d.c.g_cold) + d.edge_chamfer_mm + d.tol


@bound(
    "stem_length_mm",
    "lower",
    "Below the pin's hole enough of the stem stays that the pin does not tear out.",
    formula="cross_x + cross / 2 + c_e + tol + max(pin, sqrt(3) * H / (1.7 * stem * sigma_allow))",
    source=derived(
        "Shear yield σ/√3 (von Mises) on two planes, each 0.85 of the stem across; the side load taken as a pull; at least the"
        " pin's own thickness"
    ),
    needs=("jack.pin_distance_mm", "jack.pin_diameter_mm", "make.material"),
    numbers=bore_numbers,
)
def _pin_does_not_tear_out(d: Draft) -> float | None:
    n = bore_numbers(d)
    if n["pin"] <= 0 or d.stem_diameter_mm <= 0:
        return None
    sheared = sqrt(3) * n["H"] / (1.7 * d.stem_diameter_mm * n["sigma_allow"])
    return n["cross_x"] + n["cross"] / 2 + n["c_e"] + d.tol + max(n["pin"], sheared)


@bound(
    "stem_length_mm",
    "upper",
    "The stem never stands on the bottom of its bore: the seat on the bore's rim carries.",
    formula="(bore_depth - u - 1.5) / (1 + g_hot) - tol",
    source=_FIT,
    needs=("jack.post_bore_depth_mm", "make.measured_with", "service.temperature_high_c"),
    numbers=bore_numbers,
)
def _stem_clears_the_bottom(d: Draft) -> float | None:
    if d.c.foot.hole_depth_mm is None:
        return None
    return (d.c.foot.hole_depth_mm - d.c.u - 1.5) / (1 + d.c.g_hot) - d.tol


@bound(
    "stem_length_mm",
    "upper",
    "A stem longer than one and a half times its thickness guides no better.",
    formula="1.5 * stem",
    source=practice("A spigot is engaged over one to one and a half diameters"),
    needs=("jack.post_bore_mm",),
    numbers=bore_numbers,
    must=False,
)
def _stem_is_stout(d: Draft) -> float:
    return LENGTH_SHARES[1] * d.stem_diameter_mm


@bound(
    "stem_length_mm",
    "upper",
    "The side load, pressing hardest at the stem's end, does not bend it too far at the seat.",
    formula="1.5 * pi * stem**3 / (32 * H) * sqrt(max(0, sigma_allow**2 - 3 * (4 * H / (pi * stem**2))**2))",
    source=recomputed("Cantilever with a triangular load: any mechanics text; von Mises with the mean shear"),
    needs=("jack.post_bore_mm", "car.gross_mass_kg", "make.material"),
    numbers=bore_numbers,
    must=False,
)
def _stem_is_not_bent(d: Draft) -> float | None:
    stem, force = d.stem_diameter_mm, d.c.side_force_n
    if stem <= 0:
        return None
    left = d.c.allowable_mpa**2 - 3 * (4 * force / (pi * stem**2)) ** 2
    return 1.5 * pi * stem**3 / (32 * force) * sqrt(max(0.0, left))


@bound(
    "web_mm",
    "lower",
    "What stands over the bore is not punched down into it.",
    formula="sqrt(3) * P / (pi * bore * sigma_allow)",
    source=derived("Shear yield σ/√3 (von Mises) on the cylinder above the bore's edge"),
    needs=("jack.post_bore_mm", "car.gross_mass_kg", "make.material"),
    numbers=lambda d: {**bore_numbers(d), "P": d.force_over_n(d.c.foot.bore_mm)},
)
def _web_is_not_punched(d: Draft) -> float | None:
    force = d.force_over_n(d.c.foot.bore_mm)
    return sqrt(3) * force / (pi * d.c.foot.bore_mm * d.c.allowable_mpa) if force > 0 else None


@bound(
    "web_mm",
    "upper",
    "No pad is offered that is taller than the bore's rim under it is wide.",
    formula="rim_b - above",
    source=derived("Top height no more than the diameter of what carries"),
    needs=("jack.bore_rim_diameter_mm", "seam.height_mm"),
    numbers=bore_numbers,
)
def _never_taller_than_the_rim(d: Draft) -> float:
    return d.c.foot.contact_diameter_mm - d.above_mm
