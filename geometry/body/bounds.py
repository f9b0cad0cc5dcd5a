"""What jack and car together, and the stock, ask of web and body."""

from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.geometrical import FLOOR_PARALLELISM
from geometry.provenance import derived, recomputed
from geometry.rules import Numbers
from geometry.seat import disc_thickness_mm

ENTRY_CLEARANCE_MM = 5.0
LEAST_WEB_MM = 10.0
STOCK_ALLOWANCE_MM = 2.0
WORST_HEIGHTS = derived("Worst case of heights above ground, growth and tolerance")


def _heights(d: Draft) -> Numbers:
    foot, head = d.c.foot, d.c.head
    return {
        "cup_depth": foot.depth_mm,
        "rim_low": foot.rim_height_low_mm,
        "rim_high": foot.rim_height_high_mm or 0.0,
        "edge": head.edge_height_mm,
        "edge_flat": head.edge_height_flat_mm or 0.0,
        "obstacle": min(0.0, head.roll_in_obstacle_mm or 0.0),
        "lift": d.c.lift_needed_mm,
        "u": d.c.u,
        "u_g": d.c.u_g,
        "g_hot": d.c.g_hot,
        "g_cold": d.c.g_cold,
        "tol": d.tol,
        "tol_d": d.above_tolerance_mm,
        "tol_par": FLOOR_PARALLELISM.value_mm,
        "above": d.above_mm,
        "seat_flat": d.seat_flat_diameter_mm,
        "seat": d.seat_diameter_mm,
    }


@bound(
    "web_mm",
    "lower",
    "Less than 10 mm under what carries the car is no web.",
    formula="10",
    source=derived("Least web worth making"),
    needs=("seam.thickness_mm",),
)
def _web_is_a_web(d: Draft) -> float:
    return LEAST_WEB_MM


@bound(
    "web_mm",
    "lower",
    "The web bridges the stem hole without bending through.",
    formula="sqrt(6 * P * ((1 + nu) * ln(a / b) + 1 - (1 - nu) * b**2 / (4 * a**2)) / (4 * pi) / sigma_allow)",
    source=recomputed("Disc on a ring: Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, art. 19"),
    needs=("jack.stem_hole_diameter_mm", "car.gross_mass_kg", "make.material"),
    numbers=lambda d: {
        "P": _bridged_force_n(d),
        "a": d.c.foot.hole_diameter_mm / 2,
        "b": d.c.foot.hole_diameter_mm / 4,
        "nu": 0.4,
        "sigma_allow": d.c.allowable_mpa,
    },
)
def _web_bridges_the_hole(d: Draft) -> float | None:
    hole = d.c.foot.hole_diameter_mm
    if hole <= 0 or d.force_over_n(hole) <= 0:
        return None
    return disc_thickness_mm(
        force_n=_bridged_force_n(d),
        support_radius_mm=hole / 2,
        patch_radius_mm=hole / 4,
        stress_mpa=d.c.allowable_mpa,
    )


def _bridged_force_n(d: Draft) -> float:
    """The part of the load that stands over the hole."""
    return d.force_over_n(d.c.foot.hole_diameter_mm)


@bound(
    "web_mm",
    "lower",
    "The pad is tall enough for this jack to lift the car as far as wanted.",
    formula="(lift + edge - rim_high + cup_depth + u + 2 * u_g) / (1 + g_cold) + tol + tol_par",
    source=WORST_HEIGHTS,
    needs=("jack.rim_height_high_mm", "seam.edge_height_mm", "car.lift_needed_mm", "make.ground_uncertainty_mm"),
    numbers=_heights,
)
def _tall_enough_to_lift(d: Draft) -> float | None:
    foot, c = d.c.foot, d.c
    if foot.rim_height_high_mm is None:
        return None
    reach = c.lift_needed_mm + c.head.edge_height_mm - foot.rim_height_high_mm + foot.depth_mm
    return (reach + c.u + 2 * c.u_g) / (1 + c.g_cold) + d.tol + FLOOR_PARALLELISM.value_mm


def _entry_mm(d: Draft, edge_mm: float) -> float:
    """The web that still passes under an edge at ``edge_mm`` as the jack rolls in."""
    foot, c = d.c.foot, d.c
    room = edge_mm - foot.rim_height_low_mm + foot.depth_mm - c.u - 2 * c.u_g - ENTRY_CLEARANCE_MM
    room += min(0.0, c.head.roll_in_obstacle_mm or 0.0)
    tolerances = d.tol + d.above_tolerance_mm + FLOOR_PARALLELISM.value_mm
    return room / (1 + c.g_hot) - tolerances - d.above_mm


@bound(
    "web_mm",
    "upper",
    "The walls pass under the seam's edge as the jack rolls in.",
    formula="(edge - rim_low + cup_depth - u - 2 * u_g - 5 + obstacle) / (1 + g_hot) - tol - tol_d - tol_par - above",
    source=WORST_HEIGHTS,
    needs=("seam.edge_height_mm", "jack.rim_height_low_mm", "seam.roll_in_obstacle_mm", "make.ground_uncertainty_mm"),
    numbers=_heights,
)
def _passes_under(d: Draft) -> float:
    return _entry_mm(d, d.c.head.edge_height_mm)


@bound(
    "web_mm",
    "upper",
    "The walls pass under the seam's edge even with the tyre flat.",
    formula="(edge_flat - rim_low + cup_depth - u - 2 * u_g - 5 + obstacle) / (1 + g_hot) - tol - tol_d - tol_par - above",
    source=WORST_HEIGHTS,
    needs=("seam.edge_height_flat_mm", "jack.rim_height_low_mm", "make.ground_uncertainty_mm"),
    numbers=_heights,
    must=False,
)
def _passes_under_flat(d: Draft) -> float | None:
    flat = d.c.head.edge_height_flat_mm
    return None if flat is None else _entry_mm(d, flat)


@bound(
    "web_mm",
    "upper",
    "No pad is offered that is taller than its seat is wide: one pad in one piece, never a post and never two stacked.",
    formula="seat - above",
    source=derived("Top height no more than the seat's diameter"),
    needs=("jack.cup_bore_mm", "seam.height_mm"),
    numbers=_heights,
)
def _never_taller_than_wide(d: Draft) -> float:
    return d.seat_diameter_mm - d.above_mm


@bound(
    "web_mm",
    "upper",
    "The pad stays lower than it is wide: a pad, not a post.",
    formula="seat_flat - above",
    source=derived("Height no more than the flat of the seat"),
    needs=("jack.cup_bore_mm", "seam.height_mm"),
    numbers=_heights,
    must=False,
)
def _no_post(d: Draft) -> float:
    return d.seat_flat_diameter_mm - d.above_mm


@bound(
    "body_diameter_mm",
    "upper",
    "The body comes out of the largest bar to hand with 1 mm to turn off all round.",
    formula="stock - 2",
    source=derived("Allowance for turning on the diameter"),
    needs=("make.stock_diameters_mm",),
    numbers=lambda d: {"stock": max(d.c.stock_mm)},
)
def _comes_out_of_the_bar(d: Draft) -> float | None:
    return max(d.c.stock_mm) - STOCK_ALLOWANCE_MM if d.c.rod_is_cut else None


@bound(
    "body_diameter_mm",
    "lower",
    "The body stands over the seat as a lip all round.",
    formula="seat + 4",
    source=derived("2 mm of lip on each side"),
    needs=("jack.cup_bore_mm",),
    numbers=lambda d: {"seat": d.seat_diameter_mm},
)
def _body_has_a_lip(d: Draft) -> float:
    return d.seat_diameter_mm + 4
