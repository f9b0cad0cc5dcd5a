"""Theoretical turned finish: a feed of 0.2 mm with a nose of 0.8 mm, as machinecalcs.com and vibromera.eu print it.

Ra was read as 1.56 or 1.60 μm; the second value was computed for this project.
"""

import pytest

from geometry.finish import roughness_average_um


def test_ra_is_1_56() -> None:
    """Oracle: the published value; the pages that print 1.60 divide by 31.2."""
    found = roughness_average_um(feed_mm_rev=0.2, nose_radius_mm=0.8)
    assert found == pytest.approx(1.56, abs=0.005)
    assert found * 32 / 31.2 == pytest.approx(1.60, abs=0.005)


def test_half_the_feed_and_half_the_nose_halve_the_roughness() -> None:
    """Oracle: 0.78 μm, computed by hand."""
    assert roughness_average_um(feed_mm_rev=0.1, nose_radius_mm=0.4) == pytest.approx(0.78, abs=0.006)
