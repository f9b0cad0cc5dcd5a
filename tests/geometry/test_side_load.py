"""Lean and side load."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.side_load import assumed_lean_rad, side_force_n

FORCES = st.floats(100, 1e5)


def test_without_statics_a_car_lifted_by_140_mm_leans_a_tenth() -> None:
    """Oracle: 140/1400."""
    assert assumed_lean_rad(140) == pytest.approx(0.1, abs=1e-12)


@pytest.mark.parametrize(("lean_rad", "share"), [(0.0, 0.10), (0.07, 0.10), (0.1, 0.129833), (0.2, 0.228669)])
def test_a_rolling_jack_is_pushed_sideways_by_the_lean(lean_rad: float, share: float) -> None:
    """Oracle: max(0.10, 0.03 + sin φ) by hand: sin 0.1 = 0.099833, sin 0.2 = 0.198669."""
    assert side_force_n(design_force_n=1000, lean_rad=lean_rad, ground="rolls") == pytest.approx(1000 * share, abs=1e-3)


@given(force=FORCES, lean=st.floats(-0.5, 0.5))
def test_a_jack_that_cannot_roll_never_sees_a_smaller_side_load(force: float, lean: float) -> None:
    """Oracle: friction only adds to what the lean does by itself."""
    stuck = side_force_n(design_force_n=force, lean_rad=lean, ground="stuck")
    assert stuck >= side_force_n(design_force_n=force, lean_rad=lean, ground="rolls")
    assert stuck >= 0.30 * force


def test_a_lean_to_either_side_pushes_alike() -> None:
    """Oracle: the size of the lean counts, 0.03 + sin 0.2 = 0.228669."""
    found = side_force_n(design_force_n=1000, lean_rad=-0.2, ground="rolls")
    assert found == pytest.approx(228.669, abs=1e-3)


@given(force=FORCES, lean=st.floats(0, 0.4), more=st.floats(0, 0.1))
def test_more_lean_never_lessens_the_side_load(force: float, lean: float, more: float) -> None:
    """Oracle: the sine rises over this range."""
    small = side_force_n(design_force_n=force, lean_rad=lean, ground="rolls")
    assert side_force_n(design_force_n=force, lean_rad=lean + more, ground="rolls") >= small
