"""Speeds, times, dial readings and series."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.dials import dial_infeed_mm, diameter_after_mm, pass_depths_mm
from geometry.machining import (
    cutting_speed_m_min,
    machine_speed_rpm,
    milling_time_min,
    pass_time_min,
    spindle_speed_rpm,
    table_feed_mm_min,
)
from geometry.provenance import Mark
from geometry.series import CUTTER_DIAMETERS_MM, SERIES_SOURCE, STOCK_DIAMETERS_MM
from geometry.units import inch_to_mm, mm_to_inch

DIAMETERS = st.floats(3, 200)
SPEEDS = st.floats(5, 600)


def feet_per_minute(speed_m_min: float) -> float:
    """A cutting speed as inch machines state it."""
    return mm_to_inch(speed_m_min * 1000) / 12


def test_600_turns_on_a_three_inch_bar_cut_at_471_feet_a_minute() -> None:
    """Oracle: common practice, no source, for the 600 turns; π · 3 · 600/12 by hand."""
    speed = cutting_speed_m_min(spindle_speed_rpm=600, diameter_mm=inch_to_mm(3))
    assert feet_per_minute(speed) == pytest.approx(471.2, abs=0.05)
    assert speed == pytest.approx(143.6, abs=0.05)


def test_920_feet_a_minute_on_a_three_inch_bar_is_1171_turns() -> None:
    """Oracle: 12 · 920/(3 π) by hand."""
    speed_m_min = inch_to_mm(920 * 12) / 1000
    found = spindle_speed_rpm(cutting_speed_m_min=speed_m_min, diameter_mm=inch_to_mm(3))
    assert found == pytest.approx(1171, abs=0.5)


@given(speed=SPEEDS, diameter=DIAMETERS)
def test_speed_to_turns_and_back_is_the_same_speed(speed: float, diameter: float) -> None:
    """Oracle: the two formulas are inverses."""
    turns = spindle_speed_rpm(cutting_speed_m_min=speed, diameter_mm=diameter)
    assert cutting_speed_m_min(spindle_speed_rpm=turns, diameter_mm=diameter) == pytest.approx(speed, rel=1e-12)


@given(wanted=st.floats(1, 5000), speeds=st.lists(st.floats(10, 5000), min_size=1, max_size=20))
def test_the_set_speed_is_the_fastest_that_is_not_too_fast(wanted: float, speeds: list[float]) -> None:
    """Oracle: every other speed of the machine is slower than the set one or faster than wanted."""
    found = machine_speed_rpm(wanted_rpm=wanted, machine_speeds_rpm=speeds)
    if found is None:
        assert min(speeds) > wanted
    else:
        assert found in speeds
        assert found <= wanted
        assert all(speed <= found or speed > wanted for speed in speeds)


def test_a_pass_of_50_mm_at_a_quarter_millimetre_and_200_turns_takes_a_minute() -> None:
    """Oracle: 50/(0.25 · 200) by hand."""
    assert pass_time_min(length_mm=50, feed_mm_rev=0.25, spindle_speed_rpm=200) == pytest.approx(1.0, abs=1e-12)


def test_a_milling_pass_runs_out_by_the_whole_cutter() -> None:
    """Oracle: (70 + 6)/(1000 · 2 · 0.05) by hand."""
    feed = table_feed_mm_min(spindle_speed_rpm=1000, teeth=2, feed_mm_tooth=0.05)
    time = milling_time_min(length_mm=70, cutter_diameter_mm=6, table_feed_mm_min=feed)
    assert (feed, time) == pytest.approx((100.0, 0.76), abs=1e-12)


def test_five_thousandths_of_infeed_take_ten_off_the_diameter() -> None:
    """Oracle: common practice, no source: 3.000 in becomes 2.990 in."""
    found = diameter_after_mm(diameter_mm=inch_to_mm(3), infeed_mm=inch_to_mm(0.005))
    assert mm_to_inch(found) == pytest.approx(2.990, abs=1e-9)


@given(diameter=DIAMETERS, share=st.floats(0.1, 1))
def test_a_dial_that_counts_travel_reads_what_the_tool_moves(diameter: float, share: float) -> None:
    """Oracle: moving the tool by the reading gives the wanted diameter."""
    wanted = diameter * share
    infeed = dial_infeed_mm(diameter_mm=diameter, wanted_diameter_mm=wanted, slide="radius")
    assert diameter_after_mm(diameter_mm=diameter, infeed_mm=infeed) == pytest.approx(wanted, abs=1e-10)


@given(diameter=DIAMETERS, share=st.floats(0.1, 1))
def test_a_dial_that_counts_diameter_reads_twice_as_much(diameter: float, share: float) -> None:
    """Oracle: an infeed takes twice itself off the diameter."""
    by_slide = [
        dial_infeed_mm(diameter_mm=diameter, wanted_diameter_mm=diameter * share, slide=slide)
        for slide in ("radius", "diameter")
    ]
    assert by_slide[1] == pytest.approx(2 * by_slide[0], rel=1e-12)


@given(total=st.floats(0.01, 80), deepest=st.floats(0.1, 6), finishing=st.floats(0.01, 0.5))
def test_the_passes_add_up_and_none_is_too_deep(total: float, deepest: float, finishing: float) -> None:
    """Oracle: the sum; one pass fewer would be too deep."""
    depths = pass_depths_mm(total_mm=total, greatest_depth_mm=deepest, finishing_depth_mm=finishing)
    assert sum(depths) == pytest.approx(total, rel=1e-9)
    roughing = depths[:-1]
    assert depths[-1] <= finishing
    assert all(0 < depth <= deepest * (1 + 1e-8) for depth in roughing)
    assert len(roughing) <= 1 or sum(roughing) > deepest * (len(roughing) - 1)


def test_roughing_and_finishing_a_three_inch_bar_in_thousandths() -> None:
    """Oracle: common practice, no source: roughing 0.020 in, finishing 0.005 in; 0.045 in is two and one."""
    depths = pass_depths_mm(
        total_mm=inch_to_mm(0.045), greatest_depth_mm=inch_to_mm(0.020), finishing_depth_mm=inch_to_mm(0.005)
    )
    assert [mm_to_inch(depth) for depth in depths] == pytest.approx([0.020, 0.020, 0.005], abs=1e-9)


def test_a_whole_number_of_cuts_gets_no_cut_more_by_rounding() -> None:
    """Oracle: 4.9 − 0.1 is 24 cuts of 0.2; in binary numbers it is a hair more."""
    assert (4.9 - 0.1) / 0.2 > 24
    assert len(pass_depths_mm(total_mm=4.9, greatest_depth_mm=0.2, finishing_depth_mm=0.1)) == 25


def test_inch_bars_rise_by_eighths_then_quarters_then_halves() -> None:
    """Oracle: the steps that dealers list, from memory: 1/8 in to 2 in, 1/4 in to 4 in, 1/2 in to 6 in."""
    inches = [mm_to_inch(d) for d in STOCK_DIAMETERS_MM["inch"]]
    assert (inches[0], inches[-1]) == pytest.approx((0.75, 6.0), abs=1e-12)
    for low, high in pairwise(inches):
        step = 0.125 if high <= 2 else 0.25 if high <= 4 else 0.5
        assert high - low == pytest.approx(step, abs=1e-9)


def test_metric_bars_run_from_20_to_150() -> None:
    """Oracle: the list that dealers publish, from memory; it lists no 35, 55, 85 or 95."""
    bars = STOCK_DIAMETERS_MM["metric"]
    assert (bars[0], bars[-1], len(bars)) == (20, 150, 21)
    assert not {35, 55, 85, 95} & set(bars)


@pytest.mark.parametrize("series", [STOCK_DIAMETERS_MM, CUTTER_DIAMETERS_MM])
def test_every_series_rises(series: dict[str, tuple[float, ...]]) -> None:
    """Oracle: those who choose from a series take the first that fits."""
    assert all(list(sizes) == sorted(set(sizes)) for sizes in series.values())


def test_inch_cutters_are_exact() -> None:
    """Oracle: 3/8 in is 9.525 mm and 3/16 in is 4.7625 mm."""
    assert {9.525, 4.7625} <= set(CUTTER_DIAMETERS_MM["inch"])


def test_the_series_say_that_they_are_from_memory() -> None:
    """Oracle: no dealer's list was read for all sizes."""
    assert SERIES_SOURCE.mark is Mark.MEMORY
