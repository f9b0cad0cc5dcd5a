"""Timoshenko & Gere, *Theory of Elastic Stability*, ch. 9, and EN 1993-1-5 Tables 4.1 and 4.2: buckling factors of plates.

From memory; the factors are recomputed here from the characteristic equations. The program takes a seam for a wide
column: K = 1 guided, 0.25 free to sway.
"""

from itertools import pairwise
from math import cos, cosh, inf, pi, sin, sqrt, tan, tanh

import numpy as np
import pytest
from scipy.optimize import brentq

from geometry.seam import K_FREE, K_GUIDED, buckling_stress_mpa


def _ss_free(k: float, lam: float, nu: float) -> float:
    alpha, beta = sqrt(lam**2 + lam * sqrt(k) * pi), sqrt(lam * sqrt(k) * pi - lam**2)
    g, h = alpha**2 - nu * lam**2, beta**2 + nu * lam**2
    return beta * g**2 * tanh(alpha) * cos(beta) - alpha * h**2 * sin(beta)


def _clamped_free(k: float, lam: float, nu: float) -> float:
    alpha, beta = sqrt(lam**2 + lam * sqrt(k) * pi), sqrt(lam * sqrt(k) * pi - lam**2)
    g, h = alpha**2 - nu * lam**2, beta**2 + nu * lam**2
    twist = (alpha**2 * h**2 - beta**2 * g**2) / (alpha * beta) * tanh(alpha) * sin(beta)
    return 2 * g * h / cosh(alpha) + (g * g + h * h) * cos(beta) - twist


def plate_factor(a_over_b: float, nu: float, *, clamped: bool) -> float:
    """K of a plate pressed along its length a, one long edge held, the other free: the least over its half waves."""
    equation, best = (_clamped_free if clamped else _ss_free), inf
    for waves in (1, 2, 3):
        lam = waves * pi / a_over_b
        tried = (waves / a_over_b) ** 2 + np.geomspace(1e-6, 8, 1500)
        for low, high in pairwise(tried):
            if equation(low, lam, nu) * equation(high, lam, nu) < 0:
                best = min(best, brentq(lambda k, lam=lam: equation(k, lam, nu), low, high))
                break
    return best


@pytest.mark.parametrize(
    ("a_over_b", "nu", "clamped", "factor"),
    [
        (0.5, 0.25, False, 4.40),
        (1, 0.25, False, 1.434),
        (2, 0.25, False, 0.698),
        (3, 0.25, False, 0.563),
        (5, 0.25, False, 0.494),
        (60, 0.3, False, 0.425),
        (1, 0.25, True, 1.698),
        (1.6, 0.25, True, 1.330),
        (1.64, 0.3, True, 1.28),
        (2, 0.25, True, 1.386),
    ],
)
def test_stress_with_the_factor_of_the_textbook_is_the_recomputed_one(
    a_over_b: float, nu: float, clamped: bool, factor: float
) -> None:
    """Oracle: Timoshenko's K (0.698 at a/b 2; 1.33 the least with a clamped edge; 0.425 and 1.28 for ν = 0.3)."""
    recomputed = plate_factor(a_over_b, nu, clamped=clamped)
    printed = buckling_stress_mpa(sheet_mm=0.8, strip_mm=12, k=factor)
    assert printed == pytest.approx(buckling_stress_mpa(sheet_mm=0.8, strip_mm=12, k=recomputed), rel=0.003)


@pytest.mark.parametrize(("k", "stress"), [(0.25, 211), (1, 844), (2.046, 1726), (4, 3374)])
def test_a_strip_of_12_mm_and_0_8_mm_buckles_where_the_wide_column_does(k: float, stress: float) -> None:
    """Oracle: Euler with the plate's modulus E/(1 − ν²): free, pinned, fixed and pinned, fixed."""
    assert buckling_stress_mpa(sheet_mm=0.8, strip_mm=12, k=k) == pytest.approx(stress, abs=0.6)


def test_the_factor_of_a_column_fixed_below_and_guided_above_is_2_046() -> None:
    """Oracle: the first root of tan x = x is 4.4934; K = (x/π)²."""
    root = brentq(lambda x: tan(x) - x, 4.3, 4.7)
    assert (root / pi) ** 2 == pytest.approx(2.046, abs=5e-4)


def test_the_factors_in_use_are_the_two_least_of_a_column() -> None:
    """Oracle: fixed and free 1/4, pinned and pinned 1; every support that a sill or a slot may add only raises them."""
    assert (K_FREE, K_GUIDED) == (0.25, 1.0)
    assert plate_factor(60, 0.3, clamped=False) > K_FREE
    assert (brentq(lambda x: tan(x) - x, 4.3, 4.7) / pi) ** 2 > K_GUIDED
