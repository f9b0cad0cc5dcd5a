"""A pad on the tips of teeth: what the tooth under the load takes, against statics."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog

from geometry.feet.saddle.tips import carried_width_mm, tooth_factor

TEETH = st.integers(3, 24)


def _ring(teeth: int, turned: float) -> np.ndarray:
    angles = turned + 2 * np.pi * np.arange(teeth) / teeth
    return np.array([np.cos(angles), np.sin(angles)])


def _springs(teeth: int, turned: float, offset: float) -> np.ndarray:
    """Loads of equal springs on a circle of radius 1 under a rigid body that a load of 1 presses off the middle, along x."""
    x, y = _ring(teeth, turned)
    shape = np.array([np.ones(teeth), x, y])
    return np.asarray(shape.T @ np.linalg.solve(shape @ shape.T, [1.0, offset, 0.0]))


@given(TEETH, st.floats(0, 0.5))
def test_the_tooth_under_the_load_takes_what_equal_springs_give_it(teeth: int, offset: float) -> None:
    """Oracle: least energy of equal springs, solved as a linear system."""
    factor = tooth_factor(eccentricity_mm=40 * offset, ring_radius_mm=40, teeth=teeth)
    assert factor == pytest.approx(teeth * _springs(teeth, 0.0, offset)[0], rel=1e-9)


@given(TEETH, st.floats(0, 2 * math.pi), st.floats(0, 0.5))
def test_no_tooth_takes_more_however_the_pad_is_turned(teeth: int, turned: float, offset: float) -> None:
    factor = tooth_factor(eccentricity_mm=40 * offset, ring_radius_mm=40, teeth=teeth)
    assert teeth * _springs(teeth, turned, offset).max() <= factor * (1 + 1e-9)


@settings(max_examples=60, deadline=None)
@given(st.integers(3, 12), st.floats(0.51, 0.7))
def test_further_out_no_loads_that_only_push_and_balance_press_harder(teeth: int, offset: float) -> None:
    """Oracle: scipy's linear programme for the greatest load on one tooth that equilibrium without tension allows."""
    x, y = _ring(teeth, 0.0)
    cost = np.zeros(teeth)
    cost[0] = -1.0
    found = linprog(cost, A_eq=np.array([np.ones(teeth), x, y]), b_eq=[1.0, offset, 0.0])
    if found.success:
        factor = tooth_factor(eccentricity_mm=40 * offset, ring_radius_mm=40, teeth=teeth)
        assert teeth * -found.fun <= factor * (1 + 1e-9)


@given(TEETH, st.floats(0, 39), st.floats(0, 39))
def test_a_load_further_out_never_presses_less(teeth: int, one: float, other: float) -> None:
    near, far = sorted((one, other))
    assert tooth_factor(eccentricity_mm=near, ring_radius_mm=40, teeth=teeth) <= tooth_factor(
        eccentricity_mm=far, ring_radius_mm=40, teeth=teeth
    )


def test_a_load_off_the_ring_is_carried_by_nothing() -> None:
    assert tooth_factor(eccentricity_mm=40, ring_radius_mm=40, teeth=6) == math.inf
    assert tooth_factor(eccentricity_mm=0, ring_radius_mm=0, teeth=6) == math.inf


def test_of_a_tip_only_what_lies_under_the_flat_carries() -> None:
    """Over 100 mm, tips 10 wide from radius 40 to 50; a flat of 94 reaches radius 47: 7 mm carry."""
    assert carried_width_mm(seat_flat_mm=94, over_teeth_mm=100, tip_width_mm=10) == 7
    assert carried_width_mm(seat_flat_mm=120, over_teeth_mm=100, tip_width_mm=10) == 10
    assert carried_width_mm(seat_flat_mm=78, over_teeth_mm=100, tip_width_mm=10) == -1
