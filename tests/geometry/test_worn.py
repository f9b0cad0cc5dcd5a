"""Readings in service against the limits of wear."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.design import design_pad
from geometry.document.wear import read_log
from geometry.measurements import read_measurements
from geometry.service_life import CALIPER_MM, service_record
from geometry.standing import record_of
from geometry.units import LowerLimit
from geometry.wear_kinds import Kind
from geometry.worn import Worn, judge_worn
from tests.documents import van
from tests.geometry.shops import job

PAD, CONDITIONS, _ = job()
RECORD = service_record(PAD, CONDITIONS)


def judged(log: str) -> Worn:
    return judge_worn(read_log(log), RECORD, CONDITIONS.material)


@given(st.floats(0.001, 2))
def test_a_reading_beyond_its_limit_ends_the_pad_and_one_inside_does_not(by: float) -> None:
    """Oracle: the limit of the record, on either side."""
    limit = RECORD.limit("groove").limit_mm
    assert judged(f"2026-03-01 web {limit - by:.4f}").outcome == "discard"
    assert judged(f"2026-03-01 web {limit + min(by, 0.9):.4f}").outcome == "in_use"


@pytest.mark.parametrize("wall", ["white", "cracked"])
def test_a_white_or_cracked_wall_ends_the_pad_whatever_it_measures(wall: str) -> None:
    """Oracle: the record's own words, at once."""
    worn = judged(f"2026-03-01 web {PAD.web_mm} wall {wall}")
    assert worn.must_not_be_used
    assert worn.reasons[0].shown() == f"2026-03-01: a wall was {wall} at its foot."


def test_a_later_reading_does_not_undo_an_earlier_one() -> None:
    """Oracle: worn plastic does not grow back."""
    limit = RECORD.limit("seat_worn").limit_mm
    worn = judged(f"2026-01-01 seat {limit - 0.2:.2f}; 2026-02-01 seat {PAD.seat_diameter_mm}")
    assert worn.outcome == "discard"
    assert [day.day for day in worn.days] == [date(2026, 1, 1), date(2026, 2, 1)]


def test_both_ends_of_seat_and_slot_are_judged() -> None:
    """Oracle: the limits of swelling and of opening, and on which side of them each reading is."""
    cases: tuple[tuple[str, Kind, float, str], ...] = (
        ("seat", "seat_swollen", 0.02, " is above the limit of "),
        ("seat", "seat_worn", -0.02, " is below the limit of "),
        ("slot", "slot_wide", 0.02, " is above the limit of "),
        ("slot", "slot_closed", -0.02, " is below the limit of "),
        ("length", "seat_short", -0.02, " is below the limit of "),
    )
    for size, kind, by, words in cases:
        worn = judged(f"2026-03-01 {size} {RECORD.limit(kind).limit_mm + by:.3f}")
        assert worn.outcome == "discard"
        assert words in worn.reasons[0].shown()


def test_a_reading_beyond_one_limit_ends_the_pad_however_near_it_is_to_the_other() -> None:
    """Oracle: two limits of a seat that leave less between them than a caliper may be off."""
    upper = RECORD.limit("seat_swollen").limit_mm
    close = [replace(x, limit_mm=LowerLimit(upper - 0.02)) if x.kind == "seat_worn" else x for x in RECORD.limits]
    record = replace(RECORD, limits=tuple(close))
    worn = judge_worn(read_log(f"2026-03-01 seat {upper + 0.01:.4f}"), record, CONDITIONS.material)
    assert worn.outcome == "discard"


@pytest.mark.parametrize(
    ("off_mm", "verdict"),
    [(0.002, "near"), (CALIPER_MM - 0.002, "near"), (CALIPER_MM + 0.002, "inside"), (-0.002, "beyond")],
)
def test_a_reading_near_its_limit_is_told_of(off_mm: float, verdict: str) -> None:
    """Oracle: what a caliper may be off, on both sides of it and of the limit."""
    worn = judged(f"2026-03-01 web {RECORD.limit('groove').limit_mm + off_mm:.4f}")
    assert worn.outcome == ("discard" if verdict == "beyond" else "in_use")
    assert [size.verdict for size in worn.days[0].sizes] == [verdict]
    assert ("Read it again soon" in " ".join(s.shown() for s in worn.reasons)) == (verdict == "near")


def test_a_warm_pad_is_judged_at_20_degrees() -> None:
    """Oracle: acetal, 115e-6 a kelvin: 67.65 mm at 40 °C is 67.495 mm, inside a limit that 67.65 mm is beyond."""
    limit = RECORD.limit("seat_swollen").limit_mm
    assert 67.495 < limit < 67.65
    assert judged("2026-03-01 seat 67.65").outcome == "discard"
    assert judged("2026-03-01 seat 67.65 at 40").outcome == "in_use"


def test_a_slip_is_asked_about_and_judged_neither_way() -> None:
    """Oracle: a web read in inches, a seat off by more than 5 mm."""
    assert judged(f"2026-03-01 web {PAD.web_mm / 25.4:.3f}").outcome == "read_again"
    assert judged("2026-03-01 seat 76.1").outcome == "read_again"


def test_where_a_part_has_no_limits_a_reading_is_kept_and_not_judged() -> None:
    """Oracle: a condemned part."""
    condemned = service_record(PAD, CONDITIONS, is_failed=True)
    worn = judge_worn(read_log("2026-03-01 web 18"), condemned, CONDITIONS.material)
    assert [size.verdict for size in worn.days[0].sizes] == ["no_limit"]


def test_designs_asked_for_in_turn_each_keep_their_own_record() -> None:
    """Oracle: the record worked out from each pad and its conditions alone, whichever design was asked for before."""
    designs = [design_pad(read_measurements(van(seam__thickness_mm=thick))) for thick in (3.2, 5.0)]
    for design in (*designs, *designs, designs[1]):
        alone = service_record(design.pad, design.conditions)
        found = record_of(design)[0]
        assert [limit.limit_mm for limit in found.limits] == [limit.limit_mm for limit in alone.limits]
        assert record_of(design)[0] is found
    first, second = (record_of(design)[0].limits for design in designs)
    assert [limit.limit_mm for limit in first] != [limit.limit_mm for limit in second]
