"""Carvill, *Mechanical Engineer's Data Handbook*, p. 176 (§5.2.7): nylon and acetal, high-speed steel, 50 m/min.

The speed was read in the table; the turns per minute are computed from it.
"""

import pytest

from geometry.machining import cutting_speed_m_min, machine_speed_rpm, spindle_speed_rpm
from geometry.units import inch_to_mm


def test_nylon_on_a_three_inch_bar_turns_at_208_9() -> None:
    """Oracle: 50 m/min over π · 0.0762 m."""
    found = spindle_speed_rpm(cutting_speed_m_min=50, diameter_mm=inch_to_mm(3))
    assert found == pytest.approx(208.9, abs=0.05)


def test_the_set_speed_cuts_no_faster_than_the_table() -> None:
    """Oracle: the 50 m/min of the table; the list of speeds is a made-up lathe."""
    wanted = spindle_speed_rpm(cutting_speed_m_min=50, diameter_mm=inch_to_mm(3))
    speed = machine_speed_rpm(wanted_rpm=wanted, machine_speeds_rpm=(60, 110, 175, 270, 418))
    assert speed == 175
    assert cutting_speed_m_min(spindle_speed_rpm=175, diameter_mm=inch_to_mm(3)) < 50
