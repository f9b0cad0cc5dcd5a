"""The route card against facts of the trade that nobody publishes (common practice, no source).

0.005 in of infeed takes 0.010 in off the diameter; high-speed steel at 600 turns on a 3 in rod; roughing cuts of 0.020 in;
finishing 0.005 in deep at 0.002 in a turn; 0.005 in left in a slot; 320 grit at the end.
"""

from typing import Any

import pytest

from geometry.making.card import Operation
from geometry.making.machine import Machine, machine_of
from geometry.making.slot_plan import slot_plan
from geometry.units import inch_to_mm, mm_to_inch
from tests.geometry.shops import card, job


def inch_machine(**shop: Any) -> Machine:
    """A small lathe that has 600 turns, in an inch shop that cuts nylon."""
    speeds = {"spindle_speeds_rpm": (70, 200, 600, 1200)}
    _, conditions, own = job(make={"step": "inch", "material": "pa66"}, shop=speeds | shop)
    return machine_of(conditions, own)


def test_a_three_inch_nylon_rod_turns_at_600() -> None:
    """Oracle: 600 turns on 3 in."""
    assert inch_machine().turning(inch_to_mm(3)).rpm == 600


def test_five_thousandths_of_dial_take_ten_off_a_three_inch_rod() -> None:
    """Oracle: 3.000 in becomes 2.990 in on a dial that counts travel."""
    (only,) = inch_machine().diameter_passes(before_mm=inch_to_mm(3), after_mm=inch_to_mm(2.99), length_mm=25)
    assert mm_to_inch(only.dial_reading_mm) == pytest.approx(0.005, abs=1e-9)


def test_a_dial_that_counts_diameter_reads_the_ten() -> None:
    """Oracle: the same cut, read on the other kind of slide."""
    (only,) = inch_machine(slide="diameter").diameter_passes(
        before_mm=inch_to_mm(3), after_mm=inch_to_mm(2.99), length_mm=25
    )
    assert mm_to_inch(only.dial_reading_mm) == pytest.approx(0.010, abs=1e-9)


def test_roughing_is_twenty_thousandths_and_finishing_five() -> None:
    """Oracle: 0.065 in of infeed are three cuts of 0.020 in and one of 0.005 in."""
    passes = inch_machine().diameter_passes(before_mm=inch_to_mm(3), after_mm=inch_to_mm(2.87), length_mm=25)
    assert [mm_to_inch(p.infeed_mm) for p in passes] == pytest.approx([0.020, 0.020, 0.020, 0.005], abs=1e-9)


def test_the_finishing_pass_feeds_two_thousandths_a_turn() -> None:
    """Oracle: 1 in at 0.002 in a turn and 600 turns a minute takes 0.833 minutes."""
    machine = inch_machine()
    passes = machine.diameter_passes(before_mm=inch_to_mm(3), after_mm=inch_to_mm(2.99), length_mm=inch_to_mm(1))
    assert mm_to_inch(machine.finishing(inch_to_mm(3)).feed_mm_rev or 0) == pytest.approx(0.002, abs=1e-12)
    assert passes[-1].time_min == pytest.approx(1 / (0.002 * 600), rel=1e-9)


def test_a_slot_keeps_five_thousandths_for_its_last_passes() -> None:
    """Oracle: 0.005 in on each wall and on the floor."""
    pad, _, own = job(make={"step": "inch", "material": "pa66"})
    plan = slot_plan(
        pad.with_(slot_width_mm=inch_to_mm(0.3)),
        inch_machine(),
        cutter_mm=inch_to_mm(0.25),
        tool=own.tool,
        is_slender=False,
    )
    assert mm_to_inch(plan.side_allowance_mm) == pytest.approx(0.005, abs=1e-9)
    assert mm_to_inch(plan.floor_allowance_mm) == pytest.approx(0.005, abs=1e-9)


def test_the_pad_is_finished_with_320_grit() -> None:
    """Oracle: the grit."""
    last: Operation = next(o for o in card().operations if o.title == "Deburr and finish")
    assert "320 grit" in last.tool.shown()
