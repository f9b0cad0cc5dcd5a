"""What a hole in the car's body asks of the shoulder around the plug, and of the body under it."""

from math import hypot, inf

from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.fits import linear_tolerance_mm
from geometry.heads.plug.bounds import plug_numbers
from geometry.heads.plug.fields import PlugFacts
from geometry.heads.plug.loading import shoulder_area_mm2
from geometry.provenance import derived

PRESSURE_AIM = 0.8
LEAST_OVER_MM = 2.0
_HALVINGS = 22


def _reach_mm(width_mm: float, length_mm: float, radius_mm: float) -> float:
    """Twice how far a rectangle with round corners stands off its middle."""
    return 2 * (radius_mm + hypot(width_mm / 2 - radius_mm, length_mm / 2 - radius_mm))


@bound(
    "body_diameter_mm",
    "lower",
    "The plug stands on a shoulder that is there all round it.",
    formula="2 * (plug_r + sqrt((plug_w / 2 - plug_r)**2 + (plug_l / 2 - plug_r)**2)) + 3 + 2 * c_e",
    source=derived("1.5 mm of flat shoulder beyond the plug's corners"),
    needs=("pocket.hole_width_mm", "pocket.hole_length_mm"),
    numbers=plug_numbers,
)
def _shoulder_is_all_round(d: Draft) -> float:
    return _reach_mm(d.plug_width_mm, d.plug_length_mm, d.plug_corner_radius_mm) + 3 + 2 * d.edge_chamfer_mm


def _loose_mm(d: Draft) -> float:
    """Largest play of the plug across the smaller side of the hole."""
    hole, plug = _least_hole_mm(d.c.pocket), min(d.plug_width_mm, d.plug_length_mm)
    return max(0.0, hole + d.c.u - (plug - linear_tolerance_mm(plug)) * (1 + d.c.g_cold))


def _least_hole_mm(hole: PlugFacts) -> float:
    return min(hole.hole_width_mm, hole.hole_length_mm)


@bound(
    "body_diameter_mm",
    "lower",
    "The rim stands on the shoulder on both sides of the hole even where the plug is against one of them.",
    formula="min(w_h, l_h) + play_h + 4 + 2 * c_e",
    source=derived("2 mm of shoulder under each side of the rim, the plug at its smallest and against the other side"),
    needs=("pocket.hole_width_mm", "pocket.hole_length_mm", "service.temperature_low_c"),
    numbers=lambda d: {**plug_numbers(d), "play_h": _loose_mm(d)},
)
def _rim_is_on_the_shoulder(d: Draft) -> float:
    return _least_hole_mm(d.c.pocket) + _loose_mm(d) + 2 * LEAST_OVER_MM + 2 * d.edge_chamfer_mm


@bound(
    "body_diameter_mm",
    "lower",
    "The shoulder stands under the hole's whole edge.",
    formula="2 * (r_h + sqrt((w_h / 2 - r_h)**2 + (l_h / 2 - r_h)**2)) + 4 + 2 * c_e",
    source=derived("2 mm of shoulder beyond the hole's corners"),
    needs=("pocket.hole_width_mm", "pocket.hole_length_mm", "pocket.corner_radius_mm"),
    numbers=plug_numbers,
    must=False,
)
def _whole_edge_is_carried(d: Draft) -> float:
    hole = d.c.pocket
    reach = _reach_mm(hole.hole_width_mm, hole.hole_length_mm, hole.corner_radius_mm)
    return reach + 2 * LEAST_OVER_MM + 2 * d.edge_chamfer_mm


def _wide_enough_mm(d: Draft) -> float:
    """The shoulder that brings the rim's pressure to the aim, as far as the rim goes and the lip beyond the seat is stiff."""
    hole = d.c.pocket
    stiff = d.seat_diameter_mm + max(0.0, d.web_mm - d.seat_length_mm)
    rim = _reach_mm(hole.hole_width_mm, hole.hole_length_mm, hole.corner_radius_mm) + 2 * hole.rim_width_mm
    low, high = 0.0, min(rim, stiff)
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        area = shoulder_area_mm2(hole, middle)
        pressure = d.c.design_force_n / area if area > 0 else inf
        low, high = (middle, high) if pressure > PRESSURE_AIM * d.c.allowable_mpa else (low, middle)
    return high


@bound(
    "body_diameter_mm",
    "lower",
    "The shoulder is wide enough for the hole's rim not to press too hard on it.",
    formula="D_p + 2 * c_e",
    source=derived(
        "Pressure at 0.8 of its limit, as far as the rim goes; the lip stands out by half its thickness at most"
    ),
    needs=("pocket.rim_width_mm", "pocket.hole_width_mm", "car.gross_mass_kg", "make.material"),
    numbers=lambda d: {"D_p": _wide_enough_mm(d), "c_e": d.edge_chamfer_mm},
    must=False,
)
def _shoulder_is_wide_enough(d: Draft) -> float:
    return _wide_enough_mm(d) + 2 * d.edge_chamfer_mm


@bound(
    "flats_width_mm",
    "lower",
    "Between the flats, too, plug and hole's rim have a shoulder to stand on.",
    formula="max(plug_w + 3, w_h + play_h + 4) + 2 * c_e",
    source=derived("1.5 mm beyond the plug, and 2 mm under each side of the rim, the plug against the other side"),
    needs=("make.body", "pocket.hole_width_mm"),
    numbers=lambda d: {**plug_numbers(d), "play_h": _loose_mm(d)},
)
def _flats_leave_a_shoulder(d: Draft) -> float | None:
    if d.c.measurements.make.body != "two_flats":
        return None
    least = max(d.plug_width_mm + 3, d.c.pocket.hole_width_mm + _loose_mm(d) + 2 * LEAST_OVER_MM)
    return least + 2 * d.edge_chamfer_mm
