"""Own oracle: a round face that cannot pull, under a load off its middle, pressures integrated over the circle.

Before anything was adjusted: exact up to e = R/4; beyond, 2 (0.75 R/(R − e))² lies above the integration by 4 % at 0.3 R,
14 % at 0.4 R, 26 % at 0.5 R (where tipping fails) and 68 % at 0.7 R. The exponent 1.5 instead of 2 would stay within
0 to +3.5 % up to 0.5 R, and within +10 % up to 0.9 R: the program uses it since.
"""

from math import pi

import numpy as np
import pytest
from scipy.optimize import brentq

from geometry.seat import seat_edge_factor


def _pressed(start: float) -> tuple[float, float]:
    """Force and lever of a pressure that grows from 0 at ``start`` to 1 at the edge of a circle of radius 1."""
    x = start + (1 - start) * (np.arange(20_000) + 0.5) / 20_000
    slices = (x - start) / (1 - start) * 2 * np.sqrt(1 - x * x) * (1 - start) / 20_000
    return float(slices.sum()), float((slices * x).sum() / slices.sum())


def edge_factor_by_integration(e: float) -> float:
    """Edge pressure over mean pressure for a load at ``e`` radii, more than a quarter."""
    start = brentq(lambda x: _pressed(x)[1] - e, -1 + 1e-9, 1 - 1e-6)
    return pi / _pressed(start)[0]


@pytest.mark.parametrize("e", [0.0, 0.1, 0.2, 0.25])
def test_inside_the_kern_the_pressure_is_a_plane(e: float) -> None:
    """Oracle: 1/A + M R/I with A = π, I = π/4."""
    assert seat_edge_factor(eccentricity_mm=e, radius_mm=1) == pytest.approx(1 + e * 4, rel=1e-12)


@pytest.mark.parametrize("e", [0.2505, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7])
def test_beyond_the_kern_the_factor_is_never_too_low(e: float) -> None:
    """Oracle: the integration."""
    assert seat_edge_factor(eccentricity_mm=e, radius_mm=1) >= 0.999 * edge_factor_by_integration(e)


@pytest.mark.parametrize("e", [0.2505, 0.3, 0.35, 0.4, 0.45, 0.5])
def test_beyond_the_kern_the_factor_meets_the_integration(e: float) -> None:
    """Oracle: the integration, to 3.5 %, as far as the tipping check lets the load move."""
    found = seat_edge_factor(eccentricity_mm=e, radius_mm=1)
    assert found == pytest.approx(edge_factor_by_integration(e), rel=0.035)
