"""The checks with what a part's dimensions may really be off, in place of the general tolerances."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.checks import judge
from geometry.conditions import conditions_of
from geometry.fits import linear_tolerance_mm
from geometry.measurements import read_measurements
from geometry.pad import DIMENSIONS
from geometry.rules import Check
from geometry.spread import AS_DRAWN, Spread, general_tolerance_mm
from tests.documents import van
from tests.geometry.pads import STEMMED

CONDITIONS = conditions_of(read_measurements(van(jack__stem_hole_diameter_mm=20, jack__stem_hole_depth_mm=20)))


def judged(spread: Spread) -> dict[str, Check]:
    return {c.code: c for c in judge(CONDITIONS, STEMMED, spread)}


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


@settings(deadline=None)
@given(st.lists(st.tuples(st.sampled_from(DIMENSIONS), st.floats(0, 2)), max_size=6))
def test_a_wider_spread_never_helps(changes: list[tuple[str, float]]) -> None:
    """Oracle: the worst case of a larger set is never milder."""
    base = dict.fromkeys(DIMENSIONS, 0.1)
    wider = base | {name: 0.1 + extra for name, extra in changes}
    narrow, wide = judged(Spread(base)), judged(Spread(wider))
    assert all(wide[code].utilisation >= check.utilisation - 1e-9 for code, check in narrow.items())


def test_class_c_is_wider_than_class_m_for_every_dimension() -> None:
    """Oracle: ISO 2768-1, Tables 1 and 2."""
    for name in DIMENSIONS:
        assert general_tolerance_mm(STEMMED, name, "c") >= general_tolerance_mm(STEMMED, name, "m")
