"""Toray Amilan technical page tec_001: 7.5 MPa at 0.5 % strain, a modulus of 1500 MPa (nylon at 2.5 % water)."""

import pytest

from geometry.materials import MATERIALS
from geometry.seat import squash_mm


def test_a_seat_under_the_published_stress_is_squashed_by_the_published_strain() -> None:
    """Oracle: 0.5 % of a column 1.1 times the cup's depth of 12 mm."""
    found = squash_mm(force_n=7.5 * 2000, area_mm2=2000, allowable_mpa=25, cup_depth_mm=12, modulus_mpa=7.5 / 0.005)
    assert found == pytest.approx(0.005 * 1.1 * 12, rel=1e-9)


def test_the_nylon_in_the_table_is_no_stiffer_than_the_published_one() -> None:
    """Oracle: 1500 MPa."""
    assert MATERIALS["pa66"].modulus_minutes_mpa.value <= 7.5 / 0.005
