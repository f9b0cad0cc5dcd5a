"""The checks with what a part's dimensions may really be off, in place of the general tolerances."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.case import case_of
from geometry.checks import judge
from geometry.conditions import Conditions, conditions_of
from geometry.fits import linear_tolerance_mm
from geometry.geometrical import (
    FLOOR_PARALLELISM,
    GEOMETRICAL_TOLERANCES,
    LIP_RUN_OUT,
    SLOT_SYMMETRY,
    GeometricalTolerance,
)
from geometry.measurements import read_measurements
from geometry.pad import DIMENSIONS
from geometry.rules import Check
from geometry.spread import AS_DRAWN, Spread, general_tolerance_mm
from tests.documents import van
from tests.geometry.pads import STEMMED

CONDITIONS = conditions_of(read_measurements(van(jack__stem_hole_diameter_mm=20, jack__stem_hole_depth_mm=20)))
LIFTED = conditions_of(read_measurements(van(jack__rim_height_high_mm=400)))
TOLERANCES = (*DIMENSIONS, *(tolerance.name for tolerance in GEOMETRICAL_TOLERANCES))


def judged(spread: Spread, conditions: Conditions = CONDITIONS) -> dict[str, Check]:
    return {c.code: c for c in judge(conditions, STEMMED, spread)}


def value(checks: dict[str, Check], code: str) -> float:
    found = checks[code].value
    assert found is not None
    return found


def test_a_part_not_made_yet_has_the_general_tolerances() -> None:
    """Oracle: the class m tolerances given one by one change no answer."""
    known = {name: general_tolerance_mm(STEMMED, name) for name in DIMENSIONS}
    one_by_one, plain = judged(Spread(known)), judged(AS_DRAWN)
    assert {c: k.value for c, k in one_by_one.items()} == {c: k.value for c, k in plain.items()}


@pytest.mark.parametrize(
    ("dimension", "code", "growth"),
    [
        ("seat_diameter_mm", "seat_fit_tight", CONDITIONS.g_hot),
        ("slot_depth_mm", "sill_clear", CONDITIONS.g_hot),
        ("slot_width_mm", "slot_fit_tight", CONDITIONS.g_cold),
        ("web_mm", "rim_clear", CONDITIONS.g_cold),
        ("seat_length_mm", "lip_gap", CONDITIONS.g_cold),
        ("seat_corner_radius_mm", "corner_clear", 0.0),
    ],
)
def test_a_clearance_gains_exactly_what_the_tolerance_gives_back(dimension: str, code: str, growth: float) -> None:
    """Oracle: clearance = something − tol (1 + g); with 0.05 in place of tol it gains (tol − 0.05)(1 + g)."""
    exact = judged(Spread({dimension: 0.05}))
    gained = (general_tolerance_mm(STEMMED, dimension) - 0.05) * (1 + growth)
    assert value(exact, code) - value(judged(AS_DRAWN), code) == pytest.approx(gained, abs=1e-9)


@pytest.mark.parametrize("dimension", ["stem_diameter_mm", "stem_length_mm"])
def test_the_stem_uses_its_own_spread(dimension: str) -> None:
    """Oracle: in a hole 20 across and 20 deep a stem that may be 19 mm larger has no room."""
    assert value(judged(Spread({dimension: 19.0})), "stem_clear") < 0


def test_heights_use_the_spread_of_web_and_slot_depth() -> None:
    """Oracle: both act on the entry height, hot."""
    exact = judged(Spread({"web_mm": 0.0, "slot_depth_mm": 0.0}))
    gained = linear_tolerance_mm(STEMMED.web_mm) + linear_tolerance_mm(STEMMED.slot_depth_mm)
    found = value(exact, "entry_height") - value(judged(AS_DRAWN), "entry_height")
    assert found == pytest.approx(gained * (1 + CONDITIONS.g_hot), abs=1e-9)


HOT, COLD = 1 + CONDITIONS.g_hot, 1 + CONDITIONS.g_cold


@pytest.mark.parametrize(
    ("tolerance", "code", "factor"),
    [
        (SLOT_SYMMETRY, "tipping", -1 / 2),
        (FLOOR_PARALLELISM, "entry_height", HOT),
        (FLOOR_PARALLELISM, "sill_clear", HOT),
        (FLOOR_PARALLELISM, "rim_clear", COLD),
        (FLOOR_PARALLELISM, "lift_height", COLD),
        (LIP_RUN_OUT, "lip_gap", COLD),
    ],
)
def test_a_check_gains_what_a_geometrical_zone_gives_back(
    tolerance: GeometricalTolerance, code: str, factor: float
) -> None:
    """Oracle: a zone w against you takes w (1 + g) off a height, and half of it is how far a slot may be off the axis."""
    judged_with = {w: judged(Spread({tolerance.name: w}), LIFTED) for w in (0.0, tolerance.value_mm)}
    gained = value(judged_with[0.0], code) - value(judged_with[tolerance.value_mm], code)
    assert gained == pytest.approx(factor * tolerance.value_mm, abs=1e-9)


def test_sizes_that_were_read_leave_the_geometrical_tolerances_in_force() -> None:
    """Oracle: the same answers where the zones of the drawing are given one by one beside the readings."""
    read = dict.fromkeys(DIMENSIONS, 0.05)
    zones = {tolerance.name: tolerance.value_mm for tolerance in GEOMETRICAL_TOLERANCES}
    assert {c: k.value for c, k in judged(Spread(read)).items()} == {
        c: k.value for c, k in judged(Spread(read | zones)).items()
    }


def test_a_slot_off_the_axis_loads_the_edge_of_the_seat() -> None:
    """Oracle: the share k_e rises with the eccentricity, 4 / R for each mm while the whole face presses."""
    factors = [
        case_of(CONDITIONS, STEMMED, Spread({"seat_diameter_mm": 0.0, SLOT_SYMMETRY.name: w})).foot for w in (0.0, 0.6)
    ]
    assert factors[1].eccentricity_mm <= factors[1].flat_radius_mm / 4
    assert factors[1].edge_factor - factors[0].edge_factor == pytest.approx(0.3 * 4 / factors[0].flat_radius_mm)


@settings(deadline=None)
@given(st.lists(st.tuples(st.sampled_from(TOLERANCES), st.floats(0, 2)), max_size=6))
def test_a_wider_spread_never_helps(changes: list[tuple[str, float]]) -> None:
    """Oracle: the worst case of a larger set is never milder."""
    base = dict.fromkeys(TOLERANCES, 0.1)
    wider = base | {name: 0.1 + extra for name, extra in changes}
    narrow, wide = judged(Spread(base)), judged(Spread(wider))
    assert all(wide[code].utilisation >= check.utilisation - 1e-9 for code, check in narrow.items())


def test_class_c_is_wider_than_class_m_for_every_dimension() -> None:
    """Oracle: ISO 2768-1, Tables 1 and 2."""
    for name in DIMENSIONS:
        assert general_tolerance_mm(STEMMED, name, "c") >= general_tolerance_mm(STEMMED, name, "m")
