"""The load, the growth and what the material allows, as lines."""

from itertools import pairwise

from geometry import lift, side_load
from geometry.allowables import TESTED_AT_C, temperature_factor
from geometry.calculation.book import Book
from geometry.conditions import Conditions, vehicle_of
from geometry.growth import water_percent
from geometry.provenance import Source, Sourced, derived, found, memory
from geometry.statics import LiftCurve, LiftPoint

_WEIGHT = found("ISO 80000-3, conventional value of g = 9.80665 m/s²")
_STATICS = derived(
    "Rigid car on four wheel springs that only push; confirmed by an energy minimum and a linear programme"
)
_ROLLING = derived("Side load: a share that is always assumed, and rolling resistance added to the slope of the load")
_TEST = memory("Plastics are tested at 23 °C (ISO 291)")
_LEAST_LEFT = memory("Straight fall of strength with temperature, not followed below 0.3")


def write_load(book: Book, c: Conditions) -> None:
    """From the mass to the forces that the pad is judged by."""
    book.open("load")
    car = c.measurements.car
    if car.load_source == "stated":
        remark = "stated, not computed, and not checked"
        book.write("F", c.force_n, formula="m_s * 9.80665", source=_WEIGHT, remark=remark)
    else:
        book.write("W", lift.weight_n(car.gross_mass_kg or 0.0), formula="m * 9.80665", source=_WEIGHT)
        if c.curve is None:
            book.write("F", c.force_n, formula="0.60 * W", source=lift.SHARE_OF_GROSS_MASS.source)
        else:
            _write_statics(book, c, c.curve)
    book.write("F_d", c.design_force_n, formula="1.2 * F", source=lift.DESIGN_FACTOR.source)
    _write_lean(book, c)
    _write_side_load(book, c)
    depth = " + cup_depth" if c.foot.depth_mm > 0 else ""
    book.write("rim_needed", formula=f"edge + lift{depth} - web", remark="at nominal sizes, unloaded")


def _write_statics(book: Book, c: Conditions, curve: LiftCurve) -> None:
    """The standing wheel loads, the plateau, and the bound of moments that checks it."""
    book.write("x_cg", formula="(1 - f_front) * base")
    book.write("delta_s", formula="9806.65 / (2 * pi * f_ride)**2", source=_STATICS)
    for name, axle, side in (
        ("N_1", "f_front", "+"),
        ("N_2", "f_front", "-"),
        ("N_3", "(1 - f_front)", "+"),
        ("N_4", "(1 - f_front)", "-"),
    ):
        book.write(name, formula=f"W * {axle} * (1 / 2 {side} e_cg / track)", source=_STATICS)
    remark = f"read off the curve, which no longer rises from {curve.plateau_rise_mm:.0f} mm on"
    book.write("F", c.force_n, source=_STATICS, remark=remark)
    vehicle = vehicle_of(c.measurements.car)
    terms = ["(track / 2 + e_cg) / (track / 2 + s_j)"]
    terms += ["x_cg / x_j"] if vehicle.point_behind_front_axle_mm > 0 else []
    terms += ["(base - x_cg) / (base - x_j)"] if vehicle.point_behind_front_axle_mm < vehicle.wheelbase_mm else []
    least = f"min({', '.join(terms)})" if len(terms) > 1 else terms[0]
    bound = moment_bound(c)
    source = derived("Moments about the far wheels and about each axle; wheels push only")
    book.write(
        "F_M", bound, formula=f"W * {least}", source=source, remark="independent of the curve: F must not exceed it"
    )


def moment_bound(c: Conditions) -> float:
    """The greatest force that moments allow, whatever the springs, N."""
    vehicle = vehicle_of(c.measurements.car)
    return lift.moment_bound_n(
        mass_kg=vehicle.mass_kg,
        wheelbase_mm=vehicle.wheelbase_mm,
        track_mm=vehicle.track_mm,
        cg_behind_front_axle_mm=(1 - vehicle.front_share) * vehicle.wheelbase_mm,
        cg_offset_mm=vehicle.cg_offset_mm,
        point_behind_front_axle_mm=vehicle.point_behind_front_axle_mm,
        point_from_centreline_mm=vehicle.point_from_centreline_mm,
    )


def rows_around(curve: LiftCurve, rise_mm: float) -> tuple[LiftPoint, LiftPoint | None]:
    """The row of the curve at a rise, or the two rows around it."""
    exact = next((p for p in curve.points if p.rise_mm == rise_mm), None)
    if exact:
        return exact, None
    return next((a, b) for a, b in pairwise(curve.points) if a.rise_mm < rise_mm < b.rise_mm)


def _write_lean(book: Book, c: Conditions) -> None:
    if c.curve is None:
        book.write("phi", formula="lift / 1400", source=side_load.LEAN_LEVER_MM.source, remark="assumed: no statics")
        book.write("lean", c.lean_deg, formula="deg(phi)")
        return
    before, after = rows_around(c.curve, c.lift_needed_mm)
    if after is None:
        book.write("lean", c.lean_deg, source=_STATICS, remark="the row of the curve at the wanted lift")
        book.write("pitch", c.pitch_deg, source=_STATICS, remark="the row of the curve at the wanted lift")
    else:
        for name, value in (("z_1", before.rise_mm), ("z_2", after.rise_mm)):
            book.write(name, value, source=_STATICS, remark="from the curve")
        for name, low, high in (
            ("roll", before.roll_deg, after.roll_deg),
            ("pitch", before.pitch_deg, after.pitch_deg),
        ):
            book.write(f"{name}_1", low, source=_STATICS, remark="from the curve")
            book.write(f"{name}_2", high, source=_STATICS, remark="from the curve")
        for symbol, name, value in (("lean", "roll", c.lean_deg), ("pitch", "pitch", c.pitch_deg or 0.0)):
            between = f"{name}_1 + (lift - z_1) / (z_2 - z_1) * ({name}_2 - {name}_1)"
            formula = f"max({between}, -({between}))"
            book.write(symbol, value, formula=formula, remark="straight between two rows, without its sign")
    book.write("phi", formula="lean * pi / 180")


def _write_side_load(book: Book, c: Conditions) -> None:
    if c.measurements.service.ground == "stuck":
        formula, source = "F_d * max(0.30, 0.03 + sin(phi))", side_load.STUCK_SIDE_SHARE.source
        book.write("H", c.side_force_n, formula=formula, source=source, remark="the jack cannot roll")
    else:
        formula = "F_d * max(0.10, 0.03 + sin(phi))"
        book.write("H", c.side_force_n, formula=formula, source=_ROLLING, remark="the jack rolls")


def write_material(book: Book, c: Conditions) -> None:
    """Growth at both extremes, and what is left of strength and stiffness."""
    book.open("material")
    service, chosen = c.measurements.service, c.material
    water = water_percent(chosen, wetness=service.wetness)
    taken = {"room": chosen.water_room_percent.source, "soaked": chosen.water_soaked_percent.source}
    _write_tabled(book, "alpha", chosen.expansion_per_k)
    _write_tabled(book, "s_w", chosen.swell_per_percent)
    book.write("w_u", water, source=taken.get(service.wetness), remark=f"used {_WET[service.wetness]}")
    source = derived("Linear growth with temperature and water, from the part as machined dry at 20 °C")
    book.write("g_hot", c.g_hot, formula="alpha * (T_high - 20) + s_w * w_u", source=source)
    book.write("g_cold", c.g_cold, formula="alpha * (T_low - 20)", source=source, remark="dry as machined")
    _write_left(book, c)
    _write_strength(book, c)
    _write_tabled(book, "T_max", chosen.temperature_max_c)
    _write_tabled(book, "mu", chosen.assumed_friction)
    layers = chosen.layer_tension_factor
    book.write("f_z", chosen.wall_stress_factor, source=layers.source if layers else None, remark=_layers(layers))
    book.write("nu", 0.4, source=memory("Poisson's ratio of engineering plastics"))


_WET = {"dry": "dry", "room": "in room air", "soaked": "soaked with water"}


def _layers(factor: Sourced | None) -> str:
    return "across the layers of a print" if factor else "solid stock, no layers"


def _write_tabled(book: Book, symbol: str, value: Sourced) -> None:
    book.write(symbol, value.value, source=value.source)


def _write_left(book: Book, c: Conditions) -> None:
    """The shares left by heat and by water."""
    hot, chosen = c.measurements.service.temperature_high_c, c.material
    _write_tabled(book, "k_T", chosen.softening_per_k)
    factor = temperature_factor(chosen, temperature_high_c=hot)
    if hot <= TESTED_AT_C:
        book.write("f_T", factor, source=_TEST, remark="no hotter than the 23 °C of the tests")
    else:
        book.write("f_T", factor, formula="max(0.3, 1 - k_T * (T_high - 23))", source=_LEAST_LEFT)
    if c.measurements.service.wetness == "soaked":
        book.write("f_w", chosen.wet_factor.value, source=chosen.wet_factor.source, remark="soaked")
    else:
        book.write("f_w", 1.0, remark="not soaked: the table's stresses are those of damp stock")


def _write_strength(book: Book, c: Conditions) -> None:
    """Stress and modulus for the time the load stays."""
    chosen, hold = c.material, c.measurements.service.hold
    held: dict[str, Sourced | None] = {
        "minutes": chosen.stress_minutes_mpa,
        "overnight": chosen.stress_overnight_mpa,
        "stored": chosen.stress_stored_mpa,
    }
    stress = held[hold] or chosen.stress_minutes_mpa
    _write_tabled(book, "sigma_min", chosen.stress_minutes_mpa)
    book.write("sigma_hold", stress.value, source=stress.source, remark=f"load for {hold}")
    rule = derived("Stress of the table, lowered for heat and water")
    book.write("sigma_allow", c.allowable_mpa, formula="sigma_hold * f_T * f_w", source=rule)
    _write_tabled(book, "E_min", chosen.modulus_minutes_mpa)
    formula = "E_min * sigma_hold / sigma_min * f_T * f_w"
    creep: Source = derived("The stresses were lowered for longer holds by the ratio of creep moduli")
    book.write("E_hold", c.modulus_mpa, formula=formula, source=creep)
