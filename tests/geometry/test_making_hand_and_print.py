"""Hand work judged at class c, and prints: filament, mass, and where they are not advisable."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.checks import judge
from geometry.document.shop import Shop
from geometry.drawing.measures import measures
from geometry.fits import linear_tolerance_mm
from geometry.making.gauge_limits import gauge_table
from geometry.making.hand import SLOT
from geometry.making.hand_verdict import hand_verdict
from geometry.making.print_steps import print_steps
from geometry.making.printing import filament_length_mm, print_plan, printed_sizes, solid_share
from geometry.pad import Pad
from geometry.volume import volume_mm3
from tests.documents import van
from tests.drawing.pads import facts
from tests.geometry.pads import EVERY_KIND, ORDINARY, pads_of_any_kind
from tests.geometry.shops import job


def test_class_c_is_judged_with_class_c() -> None:
    """Oracle: the slot's play at worst: 0.1 mm more each way for a slot of 3 to 6 mm, 0.3 instead of 0.1 by ISO 2768-1."""
    pad, conditions, _ = job()
    verdict = hand_verdict(pad, conditions, SLOT)
    tight = {c.code: c for c in verdict.checks}["slot_fit_tight"].value
    drawn = {c.code: c for c in judge(conditions, pad)}["slot_fit_tight"].value
    assert tight is not None
    assert drawn is not None
    lost = linear_tolerance_mm(pad.slot_width_mm, "c") - linear_tolerance_mm(pad.slot_width_mm)
    assert drawn - tight == pytest.approx(lost * (1 + conditions.g_cold), abs=1e-9)


def test_a_filed_slot_says_what_it_still_meets() -> None:
    """Oracle: this slot has play to spare, so that nothing fails newly and the fits are among what is met."""
    pad, conditions, _ = job()
    verdict = hand_verdict(pad, conditions, SLOT)
    assert verdict.is_enough
    assert {"slot_fit_tight", "slot_fit_loose", "sill_clear"} <= {c.code for c in verdict.still_met}


def test_a_seat_filed_to_class_c_no_longer_drops_in() -> None:
    """Oracle: sized to class m with nothing to spare, 0.5 mm more is too much."""
    pad, conditions, _ = job()
    verdict = hand_verdict(pad, conditions)
    assert "seat_fit_tight" in {c.code for c in verdict.newly_failing}
    assert "too coarse" in verdict.words


def test_the_slots_gauge_goes_at_its_least_and_stops_at_its_most() -> None:
    """Oracle: 9 ± 0.2; a gap gauge is the other way round."""
    table = gauge_table(ORDINARY, "slot_width_mm", "seat_diameter_mm", "stem_diameter_mm")
    rows = {row[0]: row[1:] for row in table.rows}
    assert set(rows) == {"Slot gauge", "Gap gauge for the seat diameter"}
    assert rows["Slot gauge"] == pytest.approx((8.8, 9.2))
    assert rows["Gap gauge for the seat diameter"] == pytest.approx((67.5, 66.9))


@given(st.floats(1, 1e6), st.floats(1, 4))
def test_filament_wound_back_has_the_same_volume(volume: float, diameter: float) -> None:
    """Oracle: length times section."""
    length = filament_length_mm(volume_mm3=volume, filament_diameter_mm=diameter)
    assert length * 3.141592653589793 / 4 * diameter**2 == pytest.approx(volume, rel=1e-9)


@given(st.floats(0.2, 20), st.floats(0, 100))
def test_a_print_is_never_more_than_solid_nor_less_than_its_infill(wall: float, infill: float) -> None:
    """Oracle: shell and infill together."""
    share = solid_share(ORDINARY, wall_mm=wall, infill_percent=infill)
    assert infill / 100 - 1e-12 <= share <= 1 + 1e-12


def printed(material: str, **service: float) -> tuple[str, bool]:
    pad, conditions, shop = job(van(make={"material": material, "process": "printed"}, service=service))
    plan = print_plan(pad, conditions, shop, judge(conditions, pad))
    return plan.words, plan.is_advisable


def test_a_solid_print_weighs_what_the_pad_weighs() -> None:
    """Oracle: volume times density of the table."""
    pad, conditions, shop = job(van(make={"material": "petg", "process": "printed"}))
    plan = print_plan(pad, conditions, shop, judge(conditions, pad))
    assert plan.mass_kg == pytest.approx(volume_mm3(pad) * conditions.material.density_g_cm3.value * 1e-6, rel=1e-9)
    assert plan.wall_strength_share < 1


def test_pla_in_a_warm_boot_is_plainly_not_advisable() -> None:
    """Oracle: 50 °C limit against 45 °C expected."""
    words, advisable = printed("pla", temperature_high_c=45)
    assert not advisable
    assert words.startswith("Printing this pad is not advisable.")
    assert "50 °C" in words


def test_a_hollow_print_is_not_advisable() -> None:
    """Oracle: the estimates are for a solid print."""
    pad, conditions, _ = job(van(make={"material": "petg", "process": "printed"}))
    plan = print_plan(pad, conditions, Shop(infill_percent=40), judge(conditions, pad))
    assert not plan.is_advisable
    assert not plan.is_solid
    assert plan.volume_mm3 < volume_mm3(pad)


def steps_of(pad: Pad) -> str:
    """All that a print of the pad is told, in the shop of the van."""
    _, conditions, shop = job(van(make={"material": "petg", "process": "printed"}))
    return " ".join(step.shown() for step in print_steps(pad, print_plan(pad, conditions, shop, ())))


@given(pads_of_any_kind())
@settings(max_examples=100, deadline=None)
def test_a_print_is_told_of_what_the_pad_has_and_of_nothing_else(pad: Pad) -> None:
    """Oracle: the pad's own features."""
    words = steps_of(pad)
    for word, is_there in (
        ("slot", pad.has_slot),
        ("recess", pad.has_recess),
        ("relief", pad.has_relief),
        ("cross-hole", pad.has_cross_hole),
        ("stem", pad.has_stem),
        ("plug", pad.has_plug),
    ):
        assert (word in words) == is_there


@given(pads_of_any_kind())
@settings(max_examples=100, deadline=None)
def test_the_print_sheet_lists_each_size_that_is_there_once_and_none_of_nothing(pad: Pad) -> None:
    """Oracle: the drawing's own dimensions. A pocket's upright corners have a greatest radius, and are looked at, not measured."""
    left = printed_sizes(pad)
    assert 0 not in left.values()
    drawn = {name for name, measure in measures(pad, facts()).items() if not measure.auxiliary}
    assert set(left) - {"overall_height_mm"} == drawn - {"relief_corner_radius_mm"}


@pytest.mark.parametrize(
    ("kind", "words"),
    [
        ("recess", "under the seat's round corner of 4.5 mm"),
        ("skirt", "Top on the bed, axis upright, skirt up: no supports"),
        ("plug", "Foot on the bed, axis upright, plug on top"),
        ("stem with cross-hole", "Top on the bed, axis upright, stem up"),
    ],
)
def test_supports_stand_wherever_something_hangs_over_the_bed(kind: str, words: str) -> None:
    """Oracle: the sides of the pad that lean out by more than 45°: lip, and the lower part of a round corner."""
    assert words in steps_of(EVERY_KIND[kind])
