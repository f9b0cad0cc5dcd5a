"""ISO 3:1973 preferred numbers, series R10 and R20, by renard 1.3.13, a general-purpose library.

The series of bars and cutters are from memory of what dealers list. Preferred numbers tell whether they are spaced like
a series of sizes: no gap that leaves a workshop without a neighbour, no two nearly alike.
"""

from itertools import pairwise

import pytest
from renard import R10, R20, find_nearest, series

from geometry.series import CUTTER_DIAMETERS_MM, STOCK_DIAMETERS_MM, System

R20_FROM_50_TO_100 = (50, 56, 63, 71, 80, 90, 100)
SYSTEMS: tuple[System, ...] = ("metric", "inch")


def test_the_library_gives_the_series_of_the_standard() -> None:
    """Oracle: R10 and R20 as printed in the standard."""
    assert [float(x) for x in series(R10)] == [1.00, 1.25, 1.60, 2.00, 2.50, 3.15, 4.00, 5.00, 6.30, 8.00]
    assert [float(x) * 10 for x in series(R20)][14:] == pytest.approx([50, 56, 63, 71, 80, 90], abs=1e-9)


@pytest.mark.parametrize("number", R20_FROM_50_TO_100)
def test_a_metric_bar_lies_near_every_preferred_number_from_50_to_100(number: int) -> None:
    """Oracle: R20; at most 5 % to the nearest bar, less than the 12 % of one step of the series."""
    nearest = min(STOCK_DIAMETERS_MM["metric"], key=lambda d: abs(d - number))
    assert abs(nearest - number) / number <= 0.05


@pytest.mark.parametrize("system", SYSTEMS)
def test_bars_are_never_further_apart_than_two_steps_of_r20(system: System) -> None:
    """Oracle: R20 grows by 10^(1/20); its rounded terms by up to 1.26 in two steps."""
    assert max(b / a for a, b in pairwise(STOCK_DIAMETERS_MM[system])) <= 1.26


@pytest.mark.parametrize("system", SYSTEMS)
def test_cutters_are_never_further_apart_than_two_steps_of_r10(system: System) -> None:
    """Oracle: R10 grows by 10^(1/10); its rounded terms by up to 1.6 in two steps."""
    assert max(b / a for a, b in pairwise(CUTTER_DIAMETERS_MM[system])) <= 1.6


def test_most_small_metric_cutters_are_preferred_numbers() -> None:
    """Oracle: R10 and R20; 3 and 6 stand for 3.15 and 6.3, 14 and 18 are of R20 only."""
    near = [d for d in CUTTER_DIAMETERS_MM["metric"] if abs(float(find_nearest(R20, d)) - d) / d <= 0.05]
    assert near == list(CUTTER_DIAMETERS_MM["metric"])
