"""Checks of the whole: heights between jack and car, the jack itself, the bar, and how the car leans."""

from geometry import lift
from geometry.body.bounds import ENTRY_CLEARANCE_MM, STOCK_ALLOWANCE_MM, WORST_HEIGHTS
from geometry.case import Case
from geometry.provenance import derived, found
from geometry.rules import Finding, Pointless, check
from geometry.told import mm

MOST_SLENDERNESS = 1.2


@check(
    "slenderness",
    "A pad, not a post",
    formula="h",
    limit_formula="min(1.2 * seat_flat, seat)",
    unit="mm",
    source=derived("Height no more than the seat is wide, and no more than 1.2 times its flat"),
    needs=("jack.cup_bore_mm", "jack.cup_corner_radius_mm"),
    place="body",
)
def _slenderness(k: Case) -> Finding:
    height, flat = k.pad.top_height_mm, k.pad.seat_flat_diameter_mm
    most = min(MOST_SLENDERNESS * flat, k.pad.seat_diameter_mm)
    return Finding(
        height,
        most,
        lambda: (
            f"The pad stands {mm(height)} tall on a flat of {mm(flat)}; up to {mm(most, '.1f')} it is a pad and not a post."
            " Never make up height with a second pad or a block."
        ),
        {"h": height, "seat_flat": flat, "seat": k.pad.seat_diameter_mm},
    )


def _entry(k: Case, edge_mm: float, flat: bool) -> Finding:
    c, s = k.c, k.head
    obstacle = min(0.0, c.head.roll_in_obstacle_mm or 0.0)
    room = edge_mm - c.foot.rim_height_low_mm + c.foot.depth_mm - c.u - 2 * c.u_g + obstacle
    tallest = k.pad.top_height_mm + s.web_tolerance_mm + s.depth_tolerance_mm + s.floor_parallelism_mm
    gap = room - tallest * (1 + c.g_hot)
    tyre = " with the tyre flat" if flat else ""
    return Finding(
        gap,
        ENTRY_CLEARANCE_MM,
        lambda: (
            f"Jack and pad pass {mm(gap, '.0f')} under the seam's edge{tyre} at worst; {mm(ENTRY_CLEARANCE_MM)} is wanted."
            if gap >= 0
            else f"Jack and pad may be {mm(-gap, '.0f')} too tall to pass under the seam's edge{tyre}."
        ),
        {
            "edge": edge_mm,
            "rim_low": c.foot.rim_height_low_mm,
            "cup_depth": c.foot.depth_mm,
            "u": c.u,
            "u_g": c.u_g,
            "obstacle": obstacle,
            "h": k.pad.top_height_mm,
            "tol_w": s.web_tolerance_mm,
            "tol_d": s.depth_tolerance_mm,
            "tol_par": s.floor_parallelism_mm,
            "g_hot": c.g_hot,
        },
    )


_ENTRY = "edge - rim_low + cup_depth - u - 2 * u_g + obstacle - (h + tol_w + tol_d + tol_par) * (1 + g_hot)"


@check(
    "entry_height",
    "Jack and pad roll in under the seam",
    formula=_ENTRY,
    limit_formula="5",
    unit="mm",
    sense="at_least",
    source=WORST_HEIGHTS,
    needs=("seam.edge_height_mm", "jack.rim_height_low_mm", "jack.cup_depth_mm", "seam.roll_in_obstacle_mm"),
    place="wall_top",
)
def _entry_height(k: Case) -> Finding:
    return _entry(k, k.c.head.edge_height_mm, flat=False)


@check(
    "entry_height_flat",
    "Roll in with a flat tyre",
    formula=_ENTRY,
    limit_formula="5",
    unit="mm",
    sense="at_least",
    source=WORST_HEIGHTS,
    needs=("seam.edge_height_flat_mm", "jack.rim_height_low_mm", "jack.cup_depth_mm"),
    place="wall_top",
    advice=True,
)
def _entry_height_flat(k: Case) -> Finding:
    return _entry(k, k.c.head.edge_height_flat_mm or 0.0, flat=True)


@check(
    "lift_height",
    "Jack reaches the wanted lift",
    formula="rim_high - u_g - cup_depth - u + (web - tol - tol_par) * (1 + g_cold) - edge - u_g",
    limit_formula="lift",
    unit="mm",
    sense="at_least",
    source=WORST_HEIGHTS,
    needs=("jack.rim_height_high_mm", "seam.edge_height_mm", "car.lift_needed_mm"),
    place="body",
)
def _lift_height(k: Case) -> Finding:
    c, s, high = k.c, k.head, k.c.foot.rim_height_high_mm or 0.0
    web = (k.pad.web_mm - s.web_tolerance_mm - s.floor_parallelism_mm) * (1 + c.g_cold)
    reached = high - c.foot.depth_mm + web - c.head.edge_height_mm - c.u - 2 * c.u_g
    return Finding(
        reached,
        c.lift_needed_mm,
        lambda: (
            f"With this pad the jack lifts the seam {mm(reached, '.0f')} at worst; {mm(c.lift_needed_mm)} is wanted."
        ),
        {
            "rim_high": high,
            "u_g": c.u_g,
            "cup_depth": c.foot.depth_mm,
            "u": c.u,
            "web": k.pad.web_mm,
            "tol": s.web_tolerance_mm,
            "tol_par": s.floor_parallelism_mm,
            "g_cold": c.g_cold,
            "edge": c.head.edge_height_mm,
            "lift": c.lift_needed_mm,
        },
    )


@check(
    "jack_rating",
    "The jack's rated load",
    formula="F",
    limit_formula="m_r * 9.80665",
    unit="N",
    source=found("29 CFR 1910.244(a)(1)(i): the jack's rating must suffice to lift and sustain the load"),
    needs=("jack.rated_load_kg", "car.gross_mass_kg"),
    place="cup",
)
def _jack_rating(k: Case) -> Finding:
    limit = lift.weight_n(k.c.foot.rated_load_kg)
    return Finding(
        k.c.force_n,
        limit,
        lambda: (
            f"The sill may load the jack with {k.c.force_n / 1000:.1f} kN; the jack's rated load is {limit / 1000:.1f} kN."
            if k.c.force_n <= limit
            else f"The sill may load the jack with {k.c.force_n / 1000:.1f} kN, more than the jack's rated load of"
            f" {limit / 1000:.1f} kN: this jack is too small."
        ),
        {"F": k.c.force_n, "m_r": k.c.foot.rated_load_kg},
    )


@check(
    "temperature",
    "Heat",
    formula="T_high",
    limit_formula="T_max",
    unit="°C",
    source=derived("Continuous service temperature in air, chosen inside published ranges"),
    needs=("service.temperature_high_c", "make.material"),
    place="body",
)
def _temperature(k: Case) -> Finding:
    high, most = k.c.measurements.service.temperature_high_c, k.c.material.temperature_max_c.value
    return Finding(
        high,
        most,
        lambda: f"It gets as hot as {high:g} °C; {k.c.material.short_name} keeps its shape up to {most:g} °C.",
        {"T_high": high, "T_max": most},
    )


@check(
    "stock",
    "A bar to turn it from",
    formula="body + 2",
    limit_formula="stock",
    unit="mm",
    source=derived("1 mm to turn off all round"),
    needs=("make.stock_diameters_mm",),
    place="body",
)
def _stock(k: Case) -> Finding | Pointless:
    if not k.c.rod_is_cut:
        return Pointless("A printed pad needs no bar.")
    needed = k.pad.body_diameter_mm + STOCK_ALLOWANCE_MM
    bar = next((d for d in k.c.stock_mm if d >= needed), max(k.c.stock_mm))
    return Finding(
        needed,
        bar,
        lambda: (
            f"The body comes out of a {mm(bar)} bar."
            if needed <= bar
            else f"A bar of at least {mm(needed)} is needed; the largest to hand is {mm(bar)}."
        ),
        {"body": k.pad.body_diameter_mm, "stock": bar},
        utilisation=_yes_or_no(needed, bar),
    )


def _yes_or_no(needed_mm: float, there_mm: float) -> float:
    """No share of a limit where the question is only whether a tool or a bar is there; the ratio where it is not."""
    return 0.0 if needed_mm <= there_mm else needed_mm / there_mm
