"""The route card's milling against service.polymech.info, milling of HDPE: 300 to 375 ft/min and feeds per tooth."""

import pytest

from geometry.making.cutting import tooth_feed_mm
from geometry.making.machine import machine_of
from geometry.units import inch_to_mm, mm_to_inch
from tests.geometry.shops import job


@pytest.mark.parametrize(
    ("cutter_in", "feed_in"),
    [(0.125, 0.0009), (0.25, 0.0018), (0.5, 0.0035), (0.625, 0.0045), (0.75, 0.0055), (1.0, 0.0070)],
)
def test_feeds_per_tooth_are_the_tables(cutter_in: float, feed_in: float) -> None:
    """Oracle: the published rows."""
    assert mm_to_inch(tooth_feed_mm(inch_to_mm(cutter_in))) == pytest.approx(feed_in, abs=1e-9)


def test_between_two_rows_the_feed_lies_between_them() -> None:
    """Oracle: 10 mm lies between 1/4 and 1/2 in: 0.0018 to 0.0035 in."""
    assert 0.0018 < mm_to_inch(tooth_feed_mm(10)) < 0.0035


def test_a_quarter_inch_cutter_at_300_feet_a_minute_feeds_16_and_a_half_inches() -> None:
    """Oracle: worked example: 4584 turns, two teeth, 16.5 in/min."""
    _, conditions, shop = job(make={"material": "hdpe"}, shop={"mill_speeds_rpm": (4584.0,)})
    cut = machine_of(conditions, shop).milling(inch_to_mm(0.25))
    assert cut.wanted_rpm == pytest.approx(4584, abs=1)
    assert mm_to_inch(cut.table_feed_mm_min or 0) == pytest.approx(16.5, abs=0.05)
