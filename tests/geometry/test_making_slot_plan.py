"""The slot's passes: together they open exactly the slot, and none cuts beyond a wall or the floor."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.document.shop import Shop
from geometry.drawing.model import Layer, Line
from geometry.making.cutter import cutter_deflection_mm, cutting_force_n
from geometry.making.machine import Machine, machine_of
from geometry.making.slot_plan import (
    SlotPlan,
    cutter_for,
    slot_picture,
    slot_plan,
)
from tests.geometry.pads import ORDINARY
from tests.geometry.shops import job


def machine(**shop: object) -> Machine:
    _, conditions, _ = job()
    return machine_of(conditions, Shop.model_validate(shop))


def plan(width: float, depth: float, cutter: float, *, is_slender: bool = False) -> SlotPlan:
    pad = ORDINARY.with_(slot_width_mm=width, slot_depth_mm=depth)
    return slot_plan(pad, machine(), cutter_mm=cutter, tool="hss", is_slender=is_slender)


@st.composite
def plans(draw: st.DrawFn) -> SlotPlan:
    """Slots of 2 to 40 mm with any cutter that enters."""
    cutter = draw(st.floats(2, 25))
    width = cutter + draw(st.just(0.0) | st.floats(0, 20))
    return plan(width, draw(st.floats(2, 40)), cutter, is_slender=draw(st.booleans()))


@settings(deadline=None)
@given(plans())
def test_the_last_passes_open_exactly_the_slots_width(found: SlotPlan) -> None:
    """Oracle: cutter places and the cutter's width cover the slot from wall to wall without a gap, at full depth."""
    deep = sorted(
        (p.y_mm - found.cutter_mm / 2, p.y_mm + found.cutter_mm / 2)
        for p in found.passes
        if p.depth_mm == found.depth_mm
    )
    reached = deep[0][0]
    assert reached == pytest.approx(-found.width_mm / 2, abs=0.011)
    for left, right in deep:
        assert left <= reached + 1e-9 or left == deep[0][0]
        reached = max(reached, right)
    assert reached == pytest.approx(found.width_mm / 2, abs=0.011)


@settings(deadline=None)
@given(plans())
def test_no_pass_cuts_a_wall_or_the_floor(found: SlotPlan) -> None:
    """Oracle: every cutter place lies within the slot; roughing keeps its allowances."""
    for p in found.passes:
        assert abs(p.y_mm) + found.cutter_mm / 2 <= found.width_mm / 2 + 1e-9
        assert p.depth_mm <= found.depth_mm
        if p.job == "rough":
            assert abs(p.y_mm) + found.cutter_mm / 2 <= found.width_mm / 2 - found.side_allowance_mm + 1e-9
            assert p.depth_mm <= found.depth_mm - found.floor_allowance_mm + 1e-9


@settings(deadline=None)
@given(plans())
def test_full_width_passes_are_no_deeper_than_half_the_cutter(found: SlotPlan) -> None:
    """Oracle: common practice, no source."""
    assert all(p.cut_deep_mm <= found.cutter_mm / 2 + 1e-9 for p in found.of("rough"))


@settings(deadline=None)
@given(plans())
def test_side_passes_overlap(found: SlotPlan) -> None:
    """Oracle: no pass is wider than the cutter, none but the first at a level wider than 0.7 of it."""
    for p in found.of("rough") + found.of("floor"):
        assert p.cut_wide_mm <= found.cutter_mm * (1.0 if p.y_mm == 0 else 0.7) + 1e-9


def test_both_walls_are_finished_against_the_cutters_turning() -> None:
    """Oracle: a cutter that turns clockwise, seen from the spindle, cuts against its feed with the wall on its left."""
    walls = plan(9, 15, 6).of("wall")
    assert [(p.y_mm, p.direction, p.way) for p in walls] == [
        (1.5, "+x", "conventional"),
        (-1.5, "-x", "conventional"),
    ]


def test_a_slot_of_its_cutters_width_needs_no_side_pass() -> None:
    """Oracle: 15 − 0.1 in steps of half of 9 is four passes; then the floor."""
    found = plan(9, 15, 9)
    assert (len(found.of("rough")), len(found.of("floor")), len(found.of("wall"))) == (4, 1, 0)


@pytest.mark.parametrize(
    ("width", "cutters", "chosen"),
    [(9, (3, 6, 9), 9), (9, (3, 6, 8, 10), 8), (6.1, (3, 6), 3), (6.1, (6,), 6), (5, (6, 8), None)],
)
def test_the_cutter_is_the_slots_own_or_the_largest_that_leaves_a_finishing_cut(
    width: float, cutters: tuple[float, ...], chosen: float | None
) -> None:
    """Oracle: 0.1 mm to finish on each wall, by hand; where nothing leaves that much, the largest that enters."""
    assert cutter_for(slot_width_mm=width, cutters_mm=cutters, finishing_mm=0.1) == chosen


@settings(deadline=None)
@given(force=st.floats(1, 500), reach=st.floats(5, 80), cutter=st.floats(2, 25))
def test_twice_the_reach_bends_eight_times_as_far(force: float, reach: float, cutter: float) -> None:
    """Oracle: the cube of the length."""
    bent = [
        cutter_deflection_mm(force_n=force, reach_mm=length, cutter_diameter_mm=cutter, modulus_mpa=210_000)
        for length in (reach, 2 * reach)
    ]
    assert bent[1] == pytest.approx(8 * bent[0], rel=1e-9)


@settings(deadline=None)
@given(st.floats(0.01, 1))
def test_a_wider_cut_never_pushes_less(share: float) -> None:
    """Oracle: the chip is thickest at half a diameter and no thicker beyond."""
    forces = [
        cutting_force_n(deep_mm=5, wide_mm=10 * s, cutter_diameter_mm=10, feed_mm_tooth=0.05) for s in (share, 1.0)
    ]
    assert forces[0] <= forces[1] + 1e-9


def test_the_picture_shows_walls_levels_and_every_place_of_the_cutter() -> None:
    """Oracle: walls and floor thick; one line for each level and four for each place thin; a label for each place."""
    found = plan(9, 15, 6)
    lines = [s for s in slot_picture(found).view.shapes if isinstance(s, Line)]
    places = {p.y_mm for p in found.passes}
    levels = {p.depth_mm for p in found.of("rough")}
    assert sum(line.layer is Layer.VISIBLE for line in lines) == 3
    assert sum(line.layer is Layer.THIN for line in lines) == 4 * len(places) + len(levels)
    assert len(slot_picture(found).labels) == len(places)


@pytest.mark.parametrize(("depth", "levels"), [(16.5, (2.3, 4.65, 7.0, 9.35, 11.7, 14.05, 16.4)), (2.0, (1.9,))])
def test_every_level_of_a_metric_slot_is_a_line_of_the_dial(depth: float, levels: tuple[float, ...]) -> None:
    """Oracle: a 5 mm cutter, 2.5 mm at most, lines of 0.05 mm, the odd part first, 0.1 mm left for the floor."""
    assert [p.depth_mm for p in plan(5.0, depth, 5.0).of("rough")] == pytest.approx(levels)


@settings(deadline=None)
@given(plans())
def test_no_level_is_deeper_than_the_cutter_may_cut_and_together_they_reach_the_floor(found: SlotPlan) -> None:
    """Oracle: half the cutter; the depths that each level cuts add up to what roughing leaves."""
    levels = list(dict.fromkeys(p.depth_mm for p in found.of("rough")))
    steps = [b - a for a, b in pairwise([0.0, *levels])]
    assert all(0 < step <= 0.5 * found.cutter_mm + 1e-9 for step in steps)
    assert levels[-1] == pytest.approx(found.depth_mm - found.floor_allowance_mm)
