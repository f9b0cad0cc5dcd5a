"""Timoshenko & Woinowsky-Krieger, *Theory of Plates and Shells*, art. 19 (simply supported circular plate), and Roark,
*Formulas for Stress and Strain*, Table 11.2 case 9a (ring load): values from memory, recomputed to six and more digits.

Moment per length in the middle for ν = 0.3 and radius 1. The program uses the patch load at ν = 0.4.
"""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.seat import _disc_moment, disc_bending_mpa, disc_thickness_mm


@pytest.mark.parametrize(("patch", "moment"), [(0.2, 0.245518), (0.5, 0.147803)])
def test_a_load_on_a_patch_bends_the_middle_by_the_textbook_moment(patch: float, moment: float) -> None:
    """Oracle: P = 1 on a patch of radius 0.2 and 0.5."""
    assert _disc_moment(1.0, patch, 0.3) == pytest.approx(moment, abs=5e-7)


def test_a_load_on_the_whole_disc_is_the_uniform_load_of_the_textbook() -> None:
    """Oracle: M = (3 + ν) q a²/16 = 0.20625 for q = 1."""
    assert _disc_moment(1.0, 1.0, 0.3) * pi == pytest.approx(0.20625, abs=1e-9)


@pytest.mark.parametrize(("ring", "moment"), [(0.3, 0.149897), (0.6, 0.070671)])
def test_a_patch_is_a_sum_of_rings(ring: float, moment: float) -> None:
    """Oracle: Roark's ring load; a patch that grows by a thin ring adds that ring's moment: d(c² M)/2c dc."""
    wider, narrower = ring + 1e-5, ring - 1e-5
    added = (wider**2 * _disc_moment(1.0, wider, 0.3) - narrower**2 * _disc_moment(1.0, narrower, 0.3)) / 2e-5
    assert added / (2 * ring) == pytest.approx(moment, abs=5e-7)


@given(st.floats(1, 5000), st.floats(2, 60), st.floats(0.05, 1), st.floats(1, 80))
def test_the_needed_thickness_reaches_the_stress(force: float, radius: float, share: float, stress: float) -> None:
    """Oracle: σ = 6M/t², there and back."""
    disc = {"force_n": force, "support_radius_mm": radius, "patch_radius_mm": share * radius}
    thickness = disc_thickness_mm(**disc, stress_mpa=stress)
    assert disc_bending_mpa(**disc, thickness_mm=thickness) == pytest.approx(stress, rel=1e-9)
