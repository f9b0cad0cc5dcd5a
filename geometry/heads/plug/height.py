"""How tall a plug is: clear of what is above it, tall enough to keep the car, and no taller than that needs."""

from geometry.body.bounds import ENTRY_CLEARANCE_MM
from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.heads.plug.bounds import plug_numbers
from geometry.provenance import derived

LEAST_HOLD_MM = 4.0
_WEB_WANTED_MM = 6.0


@bound(
    "plug_height_mm",
    "upper",
    "The plug never touches what is above it in the hole.",
    formula="(d_h - u - 2.0) / (1 + g_hot) - tol",
    source=derived("Worst case; 2 mm are kept for how far the rim sinks into the shoulder"),
    needs=("pocket.hole_depth_mm", "make.measured_with", "service.temperature_high_c"),
    numbers=plug_numbers,
)
def _clear_above(d: Draft) -> float:
    return (d.c.pocket.hole_depth_mm - d.c.u - 2.0) / (1 + d.c.g_hot) - d.tol


@bound(
    "plug_height_mm",
    "upper",
    "A plug that is taller than it needs to be only bends more and passes harder under the car.",
    formula="max(8 + c_e, 0.4 * min(plug_w, plug_l))",
    source=derived("Four tenths of the smaller side, or 8 mm beyond the chamfer"),
    needs=("pocket.hole_width_mm",),
    numbers=plug_numbers,
    must=False,
)
def _no_taller_than_needed(d: Draft) -> float:
    return max(8 + d.edge_chamfer_mm, 0.4 * min(d.plug_width_mm, d.plug_length_mm))


@bound(
    "plug_height_mm",
    "upper",
    "The plug leaves room for the web between jack and car as the jack rolls in.",
    formula="(edge - rim_low + cup_depth - u - 2 * u_g - 5 + obstacle) / (1 + g_hot) - seat_length - 6",
    source=derived("Worst case of heights above ground; 6 mm of body over the seat"),
    needs=("pocket.rim_height_mm", "jack.rim_height_low_mm", "make.ground_uncertainty_mm"),
    numbers=lambda d: {
        **plug_numbers(d),
        "edge": d.c.head.edge_height_mm,
        "rim_low": d.c.foot.rim_height_low_mm,
        "cup_depth": d.c.foot.depth_mm,
        "u_g": d.c.u_g,
        "obstacle": min(0.0, d.c.head.roll_in_obstacle_mm or 0.0),
    },
    must=False,
)
def _leaves_room_to_roll_in(d: Draft) -> float:
    c = d.c
    room = c.head.edge_height_mm - c.foot.rim_height_low_mm + c.foot.depth_mm - c.u - 2 * c.u_g - ENTRY_CLEARANCE_MM
    room += min(0.0, c.head.roll_in_obstacle_mm or 0.0)
    return room / (1 + c.g_hot) - d.seat_length_mm - _WEB_WANTED_MM


@bound(
    "plug_height_mm",
    "upper",
    "The plug leaves room for the web in a pad that is no taller than its seat is wide.",
    formula="seat - seat_length - 6",
    source=derived("Top height no more than the seat's diameter; 6 mm of body over the seat"),
    needs=("jack.cup_bore_mm",),
    numbers=plug_numbers,
    must=False,
)
def _leaves_room_for_the_web(d: Draft) -> float:
    return d.seat_diameter_mm - d.seat_length_mm - _WEB_WANTED_MM


@bound(
    "plug_height_mm",
    "lower",
    "At least 4 mm of plug beyond its chamfer stand in the hole, so that the car does not slide off the shoulder.",
    formula="(4 + c_e) / (1 + g_cold) + tol",
    source=derived("Least plug worth calling one"),
    needs=("pocket.hole_depth_mm",),
    numbers=plug_numbers,
)
def _keeps_the_car(d: Draft) -> float:
    return (LEAST_HOLD_MM + d.edge_chamfer_mm) / (1 + d.c.g_cold) + d.tol


@bound(
    "plug_height_mm",
    "lower",
    "A plug three tenths as tall as it is wide keeps a car that swings.",
    formula="0.3 * min(plug_w, plug_l)",
    source=derived("Three tenths of the smaller side"),
    needs=("pocket.hole_width_mm",),
    numbers=plug_numbers,
    must=False,
)
def _tall_enough_to_be_of_use(d: Draft) -> float:
    return 0.3 * min(d.plug_width_mm, d.plug_length_mm)
