"""service.polymech.info, milling HDPE (read as milling-hdpe.md): 300 ft/min, 0.0018 in per tooth for a 1/4 in end mill.

The speed and the inch feeds were read; metric feeds, turns and table feed are computed from them.
"""

import pytest

from geometry.machining import spindle_speed_rpm, table_feed_mm_min
from geometry.series import CUTTER_DIAMETERS_MM
from geometry.units import inch_to_mm, mm_to_inch

QUARTER_INCH_MM = 6.35
SPEED_M_MIN = inch_to_mm(300 * 12) / 1000


def test_eighteen_ten_thousandths_per_tooth_is_0_04572_mm() -> None:
    """Oracle: 0.0018 in on the page, 0.0457 mm in its metric column."""
    assert inch_to_mm(0.0018) == pytest.approx(0.04572, abs=1e-9)


def test_a_quarter_inch_cutter_turns_at_4584() -> None:
    """Oracle: 12 · 300/(π · 0.25), the inch form of the formula."""
    found = spindle_speed_rpm(cutting_speed_m_min=SPEED_M_MIN, diameter_mm=QUARTER_INCH_MM)
    assert found == pytest.approx(4584, abs=0.5)


def test_with_two_teeth_the_table_moves_16_5_inches_a_minute() -> None:
    """Oracle: 4584 · 2 · 0.0018 in."""
    speed = spindle_speed_rpm(cutting_speed_m_min=SPEED_M_MIN, diameter_mm=QUARTER_INCH_MM)
    feed = table_feed_mm_min(spindle_speed_rpm=speed, teeth=2, feed_mm_tooth=inch_to_mm(0.0018))
    assert mm_to_inch(feed) == pytest.approx(16.5, abs=0.05)


def test_the_cutter_sizes_of_the_page_are_in_the_inch_series() -> None:
    """Oracle: 3.175, 6.35, 12.7, 15.875, 19.05 mm and one inch on the page."""
    sizes = {inch_to_mm(n / 8) for n in (1, 2, 4, 5, 6, 8)}
    assert sizes <= set(CUTTER_DIAMETERS_MM["inch"])
