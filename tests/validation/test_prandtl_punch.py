"""Prandtl's strip punch: "constraint factor (2.57)", and 2.75 with an elastic base for a large block, quoted in the abstract
of ASME J. Eng. Ind. 92(2):469 (1970). The field itself: Prandtl 1920; Hill, *Mathematical Theory of Plasticity*, for the
finite depth (from memory: full from 8.7 half-widths on, plain yield at a depth of one half-width).
"""

from math import pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.bearing import PRANDTL, floor_factor, floor_strength_mpa


def test_the_constant_is_that_of_the_paper_and_of_the_slip_line_field() -> None:
    """Oracle: (2 + π) k with k = Y/2, 2.571 to three decimals; the paper prints 2.57."""
    assert PRANDTL == 2.57
    assert pytest.approx((2 + pi) / 2, abs=0.002) == PRANDTL


def test_tresca_is_the_lower_of_the_two_yield_rules() -> None:
    """Oracle: von Mises, k = Y/√3, gives 2.968."""
    assert (2 + pi) / sqrt(3) == pytest.approx(2.968, abs=5e-4)
    assert (2 + pi) / sqrt(3) > PRANDTL


@given(st.floats(0.4, 10), st.floats(4.43, 40))
def test_a_floor_deeper_than_8_7_half_widths_has_the_full_factor(edge: float, depths: float) -> None:
    """Oracle: Hill's opposed punches."""
    assert floor_factor(web_mm=depths * edge, edge_thickness_mm=edge) == PRANDTL


@given(st.floats(0.4, 10), st.floats(0.01, 0.5))
def test_a_floor_of_one_half_width_or_less_has_plain_yield(edge: float, depths: float) -> None:
    """Oracle: Hill's opposed punches, 2k at a depth of one half-width."""
    assert floor_factor(web_mm=depths * edge, edge_thickness_mm=edge) == pytest.approx(1.0, abs=1e-12)


def test_the_pressure_allowed_stays_below_the_paper_s_constraint_by_the_design_factor() -> None:
    """Oracle: 2.57 Y with Y = 2σ, over 1.5; far below the 2.75 Y of a large block."""
    allowed = floor_strength_mpa(factor=PRANDTL, allowable_mpa=10)
    assert allowed == pytest.approx(2.57 * 20 / 1.5, rel=1e-12)
    assert allowed < 2.75 * 20
