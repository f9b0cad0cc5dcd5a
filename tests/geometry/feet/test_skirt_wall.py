"""The skirt's wall: against a clamped plate solved exactly, and against itself."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from geometry.feet.skirt.wall import (
    LEAST_WALL_MM,
    ROOT_FACTOR,
    least_wall_mm,
    push_n_per_mm,
    root_stress_mpa,
    spread_mm,
)
from tests.validation.test_peterson_fillet import chart_factor

STRONG = st.floats(5, 100)


def _root_moment(k: float, poisson: float) -> float:
    """Moment at the root of a plate strip of length 1 under an edge load cos(k y): Kirchhoff's plate, clamped and free."""
    if k < 1e-6:
        return 1.0

    def shapes(x: float) -> list[tuple[float, float, float, float]]:
        """Value and three derivatives of the two solutions that are clamped at 0."""
        c, s = math.cosh(k * x), math.sinh(k * x)
        return [
            (x * c - s / k, k * x * s, k * s + k**2 * x * c, 2 * k**2 * c + k**3 * x * s),
            (x * s, s + k * x * c, 2 * k * c + k**2 * x * s, 3 * k**2 * s + k**3 * x * c),
        ]

    moment = [u[2] - poisson * k**2 * u[0] for u in shapes(1.0)]
    shear = [u[3] - (2 - poisson) * k**2 * u[1] for u in shapes(1.0)]
    shares = np.linalg.solve(np.array([moment, shear]), np.array([0.0, -1.0]))
    return abs(float(sum(share * u[2] for share, u in zip(shares, shapes(0.0), strict=True))))


def _peak(spread: float, poisson: float) -> float:
    """Greatest root moment per width of a load of 1 that is spread evenly over part of the edge, length 1."""
    whole, _ = quad(lambda k: _root_moment(k, poisson) * np.sinc(k * spread / 2 / np.pi), 0, 60, limit=400)
    return float(whole) / math.pi


def test_the_plate_of_this_test_meets_the_handbook() -> None:
    """Roark's Formulas, cantilever plate of infinite length under a concentrated edge load, from memory: 0.509 for ν = 0.3."""
    assert _peak(0.0, 0.3) == pytest.approx(0.509, abs=0.001)


@pytest.mark.parametrize("spread", [0.0, 0.5, 1.0, 1.9, 3.0, 5.0, 9.0])
def test_the_wall_is_never_taken_to_bend_less_than_a_clamped_plate(spread: float) -> None:
    """Oracle: Kirchhoff's plate, ν = 0.4, the load spread over half the bore; bore and length in lengths of the skirt."""
    taken = 1 / spread_mm(bore_mm=2 * spread, length_mm=1.0)
    assert _peak(spread, 0.4) <= 1.01 * taken
    assert taken <= 1.4 * _peak(spread, 0.4)


@pytest.mark.parametrize("wall", [6.0, 8.0, 10.0, 14.0, 18.0])
def test_the_factor_of_the_root_is_that_of_a_shoulder_left_by_a_usual_tool(wall: float) -> None:
    """Oracle: Peterson's chart of a shouldered flat bar, a step of half the wall on each side, a nose of 0.4 mm."""
    chart = chart_factor(wall_mm=wall, slot_width_mm=wall, fillet_radius_mm=0.4)
    assert abs(ROOT_FACTOR / chart - 1) < 0.2


def test_a_skirt_by_hand() -> None:
    """w = 50 mm, 22.6 N/mm; bending 2.6·6·22.6·12/100 = 42.31, shear 2.26: √(42.31² + 3·2.26²) = 42.49 MPa."""
    assert root_stress_mpa(side_force_n=1130, bore_mm=100, length_mm=12, wall_mm=10) == pytest.approx(42.49, abs=0.01)


@given(st.floats(0, 30_000), st.floats(25, 200), st.floats(6, 60), STRONG)
def test_the_least_wall_just_reaches_the_strength(force: float, bore: float, length: float, strength: float) -> None:
    wall = least_wall_mm(side_force_n=force, bore_mm=bore, length_mm=length, strength_mpa=strength)
    stress = root_stress_mpa(side_force_n=force, bore_mm=bore, length_mm=length, wall_mm=wall)
    assert wall >= LEAST_WALL_MM
    assert stress == pytest.approx(strength, rel=1e-9) if wall > LEAST_WALL_MM else stress <= strength * (1 + 1e-9)


@given(st.floats(1, 30_000), st.floats(25, 200), st.floats(6, 60), st.floats(3, 30), st.floats(1.01, 3))
def test_more_side_load_or_less_wall_is_never_stressed_less(
    force: float, bore: float, length: float, wall: float, more: float
) -> None:
    now = root_stress_mpa(side_force_n=force, bore_mm=bore, length_mm=length, wall_mm=wall)
    assert root_stress_mpa(side_force_n=more * force, bore_mm=bore, length_mm=length, wall_mm=wall) > now
    assert root_stress_mpa(side_force_n=force, bore_mm=bore, length_mm=length, wall_mm=wall / more) > now
    longer = root_stress_mpa(side_force_n=force, bore_mm=bore, length_mm=more * length, wall_mm=wall)
    assert longer > now or 1.9 * more * length > bore / 2


def test_no_skirt_takes_no_load() -> None:
    assert push_n_per_mm(side_force_n=1000, bore_mm=0, length_mm=0) == math.inf
    assert root_stress_mpa(side_force_n=1000, bore_mm=0, length_mm=0, wall_mm=20) == math.inf
    assert root_stress_mpa(side_force_n=1000, bore_mm=90, length_mm=12, wall_mm=0) == math.inf
