"""The bar: mass, price, how many pads it gives; depths of passes on a dial."""

from math import pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.batch import bar_used_mm, pads_from_bar
from geometry.making.machine import machine_of
from geometry.making.stock import least_grip_mm, stock_plan
from geometry.measurements import read_measurements
from geometry.pad import Pad
from tests.documents import van
from tests.geometry.shops import job, jobs


def test_the_blank_weighs_its_volume_times_its_density() -> None:
    """Oracle: a cylinder of acetal, 1.41 g/cm³, by hand."""
    pad, conditions, shop = job()
    plan = stock_plan(pad, conditions, shop)
    assert plan.mass_kg == pytest.approx(pi / 4 * plan.bar_mm**2 * plan.blank_mm * 1.41e-6, rel=1e-9)


def test_a_metre_price_counts_the_saw_cut_too() -> None:
    """Oracle: 120 a metre times blank and kerf."""
    pad, conditions, _ = job()
    plan = stock_plan(pad, conditions, Shop(price_per_m=120, price_per_kg=5))
    assert plan.price == pytest.approx(0.120 * (plan.blank_mm + plan.kerf_mm), rel=1e-9)


def test_a_kilogram_price_is_that_of_the_piece() -> None:
    """Oracle: 9 a kilogram times its mass, saw cut included."""
    pad, conditions, _ = job()
    plan = stock_plan(pad, conditions, Shop(price_per_kg=9))
    assert plan.price == pytest.approx(9 * plan.mass_kg * (plan.blank_mm + plan.kerf_mm) / plan.blank_mm, rel=1e-9)


def test_without_a_price_none_is_made_up() -> None:
    """Oracle: nothing was given."""
    pad, conditions, shop = job()
    assert stock_plan(pad, conditions, shop).price is None


@settings(deadline=None)
@given(jobs(), st.floats(50, 6000))
def test_a_bar_gives_as_many_pads_as_fit(work: tuple[Pad, Conditions, Shop], length: float) -> None:
    """Oracle: one more would not fit; the last saw cut is not needed."""
    plan = stock_plan(*work)
    count = pads_from_bar(plan, length)
    assert count == 0 or bar_used_mm(plan, count) - plan.kerf_mm <= length
    assert bar_used_mm(plan, count + 1) - plan.kerf_mm > length


def test_the_bar_is_the_thinnest_that_leaves_two_millimetres() -> None:
    """Oracle: the shop's own three bars."""
    pad, conditions, shop = job(van(make={"stock_diameters_mm": [60, 115, 140]}))
    assert stock_plan(pad, conditions, shop).bar_mm == 115


def test_a_short_body_is_cut_off_the_bar_last() -> None:
    """Oracle: 10 mm of body less edges and clearance is less than 15 mm of grip."""
    pad, conditions, shop = job()
    short = pad.with_(web_mm=pad.seat_length_mm + 4, slot_depth_mm=6)
    assert stock_plan(short, conditions, shop).order == "foot_first"
    assert stock_plan(pad, conditions, shop).order == "top_first"


@settings(deadline=None)
@given(st.floats(5, 200))
def test_a_grip_is_never_under_a_centimetre(diameter: float) -> None:
    """Oracle: the stated least, and a share of the diameter."""
    assert least_grip_mm(diameter) == max(10.0, 0.15 * diameter)


@settings(deadline=None)
@given(
    total=st.floats(0.01, 60),
    cut=st.none() | st.floats(0.05, 6),
    slide=st.sampled_from(["radius", "diameter"]),
    step=st.sampled_from(["metric", "inch"]),
)
def test_dial_steps_after_the_first_are_whole_lines_where_cuts_allow_it(
    total: float, cut: float | None, slide: str, step: str
) -> None:
    """Oracle: 0.05 mm or 0.001 in a line; the first and the last cut take what is odd; nothing is lost."""
    _, conditions, _ = job(van(make={"step": step}))
    machine = machine_of(conditions, Shop(largest_cut_mm=cut, slide=slide))
    grid = machine.infeed_grid_mm
    depths = machine.depths_mm(total, grid_mm=grid)
    assert sum(depths) == pytest.approx(total, abs=1e-9)
    assert all(0 < d <= machine.roughing_mm + 1e-6 for d in depths)
    if machine.roughing_mm >= 2 * grid:
        assert all(abs(d / grid - round(d / grid)) < 1e-6 for d in depths[1:-1])


@pytest.mark.parametrize("typed", ["60; 100; 160", "60,100,160", "60 100 160"])
def test_speeds_may_be_typed_in_one_line(typed: str) -> None:
    """Oracle: three speeds."""
    assert Shop.model_validate({"spindle_speeds_rpm": typed}).lathe_speeds_used_rpm == (60, 100, 160)


@pytest.mark.parametrize("typed", ["sixty", "0", "60; -5", "1e9"])
def test_speeds_that_are_none_are_refused_beside_their_field(typed: str) -> None:
    """Oracle: the problem names the field."""
    from geometry.errors import BadMeasurementsError

    with pytest.raises(BadMeasurementsError) as caught:
        read_measurements(van(shop={"spindle_speeds_rpm": typed}))
    assert caught.value.problems[0].field == "shop.spindle_speeds_rpm"
