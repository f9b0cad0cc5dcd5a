"""The statics against scipy: a linear programme for the greatest force, an energy minimum for its course.

The table of three lifting points (unit weight, wheelbase 2.7, track 1.55, s 0.725 m, centre of gravity at 0.42
of the wheelbase, four equal springs of 20 W per metre) was computed for this project with two solvers before
this program was written; jack heights there count from the level at which the springs are free.
"""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray
from scipy.optimize import linprog, minimize

from geometry.contact import Springs, segments
from geometry.lift import moment_bound_n, weight_n
from geometry.statics import Vehicle, _springs, lift_curve
from tests.geometry.test_statics import ANCHOR, vehicles

WEIGHT_N = 1000.0
STIFFNESS_N_PER_MM = 20 * WEIGHT_N / 1000
TABLE = [
    (450.0, 0.5167, (0.454, 0.517, 0.517)),
    (1350.0, 0.5167, (0.467, 0.517, 0.517)),
    (2250.0, 0.5040, (0.339, 0.504, 0.504)),
]


def greatest_force_by_linear_programme(car: Vehicle) -> float:
    """The greatest F with four wheels that only push and equilibrium of force and two moments."""
    xs, ys = [0.0, 0.0, car.wheelbase_mm, car.wheelbase_mm], [car.track_mm / 2, -car.track_mm / 2] * 2
    equilibrium = np.array(
        [[1.0] * 5, [*xs, car.point_behind_front_axle_mm], [*ys, car.point_from_centreline_mm]], dtype=float
    )
    weight = np.array([1.0, (1 - car.front_share) * car.wheelbase_mm, car.cg_offset_mm])
    found = linprog([0, 0, 0, 0, -1], A_eq=equilibrium, b_eq=weight, bounds=[(0, None)] * 5)
    assert found.success
    return float(-found.fun) * weight_n(car.mass_kg)


def force_by_energy(springs: Springs, rise_mm: float) -> float:
    """The force at a prescribed rise from the least complementary energy over all wheel loads in equilibrium.

    The loads are the only unknowns, in shares of the whole: a convex quadratic programme with no body and no
    contact in it.
    """
    total = sum(springs.static_loads_n)
    static = np.array(springs.static_loads_n) / total
    softness = total / np.array(springs.stiffness_n_per_mm)
    places = np.array(springs.places_mm) / 1000
    free = static * softness - rise_mm
    scale = float(softness.max())

    def energy(n: NDArray[np.float64]) -> float:
        return float(0.5 * softness @ n**2 - free @ n) / scale

    def slope(n: NDArray[np.float64]) -> NDArray[np.float64]:
        return np.asarray((softness * n - free) / scale, dtype=float)

    equilibrium = {"type": "eq", "fun": lambda n: (n - static) @ places, "jac": lambda _: places.T}
    bounds = [(0, None)] * len(static)
    options = {"ftol": 1e-15, "maxiter": 500}
    found = minimize(energy, static, jac=slope, method="SLSQP", bounds=bounds, constraints=equilibrium, options=options)
    return total * float(1 - found.x.sum())


def force_by_stepping(springs: Springs, rise_mm: float) -> float:
    """The force at a rise as this program finds it."""
    stretch = [s for s in segments(springs) if s.start_mm <= rise_mm][-1]
    return sum(springs.static_loads_n) - sum(stretch.load_n(i, rise_mm) for i in range(len(springs.places_mm)))


def table_springs(point_mm: float) -> Springs:
    """The car of the table: equal springs, axle loads 0.58 and 0.42 of the weight."""
    loads = tuple(WEIGHT_N * share / 2 for share in (0.58, 0.58, 0.42, 0.42))
    places = tuple((x - point_mm, y - 725.0) for x in (0.0, 2700.0) for y in (775.0, -775.0))
    return Springs(places, loads, (STIFFNESS_N_PER_MM,) * 4)


@given(car=vehicles())
@settings(max_examples=60, deadline=None)
def test_the_greatest_force_is_that_of_a_linear_programme(car: Vehicle) -> None:
    """Oracle: scipy.optimize.linprog (HiGHS)."""
    expected = greatest_force_by_linear_programme(car)
    assert lift_curve(car, lift_needed_mm=150).greatest_force_n == pytest.approx(expected, rel=1e-6)


@given(car=vehicles(), rise_mm=st.floats(1, 450))
@settings(max_examples=60, deadline=None)
def test_the_force_at_any_rise_is_that_of_an_energy_minimum(car: Vehicle, rise_mm: float) -> None:
    """Oracle: scipy.optimize.minimize (SLSQP) on the energy of the springs."""
    expected = force_by_energy(_springs(car), rise_mm)
    found = lift_curve(car, lift_needed_mm=150).at(rise_mm).force_n
    assert found == pytest.approx(expected, abs=1e-6 * weight_n(car.mass_kg))


@pytest.mark.parametrize("rise_mm", [20.0, 58.3, 132.0, 200.0, 300.0])
def test_the_anchor_car_follows_an_energy_minimum(rise_mm: float) -> None:
    """Oracle: scipy.optimize.minimize (SLSQP) on the energy of the springs."""
    expected = force_by_energy(_springs(ANCHOR), rise_mm)
    assert lift_curve(ANCHOR, lift_needed_mm=150).at(rise_mm).force_n == pytest.approx(expected, abs=0.01)


@pytest.mark.parametrize(("point_mm", "share", "_springs_column"), TABLE)
def test_the_table_of_three_points_by_moments(point_mm: float, share: float, _springs_column: object) -> None:
    """Oracle: the column of the linear programme, to its four printed digits."""
    bound = moment_bound_n(
        mass_kg=1000,
        wheelbase_mm=2700,
        track_mm=1550,
        cg_behind_front_axle_mm=0.42 * 2700,
        cg_offset_mm=0,
        point_behind_front_axle_mm=point_mm,
        point_from_centreline_mm=725,
    )
    assert bound / weight_n(1000) == pytest.approx(share, abs=5e-5)


@pytest.mark.parametrize(("point_mm", "_share", "column"), TABLE)
def test_the_table_of_three_points_by_springs(
    point_mm: float, _share: float, column: tuple[float, float, float]
) -> None:
    """Oracle: the columns at jack heights of 0, 50 and 100 mm above the level of free springs, to three digits."""
    springs = table_springs(point_mm)
    front, rear = (-load / STIFFNESS_N_PER_MM for load in (0.29 * WEIGHT_N, 0.21 * WEIGHT_N))
    at_rest_mm = front + (rear - front) * point_mm / 2700
    found = [force_by_stepping(springs, height_mm - at_rest_mm) / WEIGHT_N for height_mm in (0.0, 50.0, 100.0)]
    assert found == pytest.approx(column, abs=6e-4)


def places() -> st.SearchStrategy[tuple[float, float]]:
    """Anywhere around the lifting point."""
    return st.tuples(st.floats(-2000, 2000), st.floats(-2000, 2000))


@given(
    springs=st.lists(st.tuples(places(), st.floats(1, 1000), st.floats(1, 50)), min_size=4, max_size=6),
    rise_mm=st.floats(0, 200),
)
@settings(max_examples=150, deadline=None)
def test_any_springs_follow_an_energy_minimum(
    springs: list[tuple[tuple[float, float], float, float]], rise_mm: float
) -> None:
    """Oracle: scipy.optimize.minimize; six springs anywhere also come down again, which a car's four do not."""
    spots, loads, stiffness = zip(*springs, strict=True)
    spread = np.linalg.svd(np.array(spots), compute_uv=False)
    bearing = Springs(spots, loads, stiffness)
    if spread[1] < 300 or not _can_be_raised(bearing):
        return
    assert force_by_stepping(bearing, rise_mm) == pytest.approx(
        force_by_energy(bearing, rise_mm), abs=1e-5 * sum(loads)
    )


def _can_be_raised(springs: Springs) -> bool:
    """Whether the resultant of the static loads is clear of the lifting point, so that springs always carry."""
    moments = np.array(springs.static_loads_n) @ np.array(springs.places_mm)
    return bool(np.hypot(*moments) > 100 * sum(springs.static_loads_n))


def test_a_spring_that_left_can_come_down_again() -> None:
    """Oracle: the energy minimum in the middle of every stretch; the arrangement was found by search."""
    places = ((-1400.0, 1100.0), (-1400.0, 800.0), (-1900.0, -1000.0), (-1500.0, 300.0), (-800.0, 1900.0))
    springs = Springs(places, (20.0, 60.0, 50.0, 40.0, 90.0), (0.2, 0.6, 0.5, 0.4, 0.9))
    stretches = list(segments(springs))
    assert [sorted(b.pushing - a.pushing) for a, b in pairwise(stretches)] == [[], [], [2], [], []]
    for a, b in pairwise(stretches):
        middle = (a.start_mm + b.start_mm) / 2
        assert force_by_stepping(springs, middle) == pytest.approx(force_by_energy(springs, middle), abs=1e-4)
