"""Theoretical turned finish: a feed of 0.2 mm with a nose of 0.8 mm, as machinecalcs.com and vibromera.eu print it.

Rz 6.25 μm was read three times, Ra as 1.56 or 1.60 μm. The exact height and the second pair were computed for
this project.
"""

import pytest

from geometry.finish import exact_roughness_height_um, roughness_average_um, roughness_height_um


def test_rz_is_6_25() -> None:
    """Oracle: the published value."""
    assert roughness_height_um(feed_mm_rev=0.2, nose_radius_mm=0.8) == pytest.approx(6.25, abs=0.005)


def test_ra_is_1_56() -> None:
    """Oracle: the published value; the pages that print 1.60 divide by 31.2."""
    found = roughness_average_um(feed_mm_rev=0.2, nose_radius_mm=0.8)
    assert found == pytest.approx(1.56, abs=0.005)
    assert found * 32 / 31.2 == pytest.approx(1.60, abs=0.005)


def test_half_the_feed_and_half_the_nose_halve_the_ridges() -> None:
    """Oracle: 3.13 and 0.78 μm, computed by hand."""
    assert roughness_height_um(feed_mm_rev=0.1, nose_radius_mm=0.4) == pytest.approx(3.13, abs=0.006)
    assert roughness_average_um(feed_mm_rev=0.1, nose_radius_mm=0.4) == pytest.approx(0.78, abs=0.006)


def test_the_exact_height_is_6_27() -> None:
    """Oracle: where two circles of 0.8 mm radius, 0.2 mm apart, cross, computed by hand."""
    assert exact_roughness_height_um(feed_mm_rev=0.2, nose_radius_mm=0.8) == pytest.approx(6.27, abs=0.005)
