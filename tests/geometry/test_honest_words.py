"""Sentences about sizes and estimates that must not read better, or surer, than the pad is."""

from typing import Any

import pytest

from geometry.design import Design, design_pad
from geometry.errors import BadMeasurementsError
from geometry.measurements import read_measurements
from tests.documents import sample, van


def designed(**changes: Any) -> Design:
    return design_pad(read_measurements(van(**changes)))


def check_words(design: Design, code: str) -> str:
    return next(check.words for check in design.checks if check.code == code)


def test_a_straight_length_is_assumed_until_it_is_measured() -> None:
    assert "as is assumed where nobody measured it" in check_words(designed(), "slot_end_foul")
    assert "assumed" not in check_words(designed(seam__straight_length_mm=120.0), "slot_end_foul")


def test_a_verdict_says_that_advice_is_past_its_limit() -> None:
    """Oracle: the checks themselves, counted."""
    design = design_pad(read_measurements(sample("kayak_club_estate_drain")))
    advice = design.with_verdict("advice")
    past = sum(check.utilisation > 1 for check in advice)
    assert 1 < past < len(advice)
    assert f"; {len(advice)} pieces of advice, {past} of them past their limits;" in design.verdict_words


def test_a_verdict_whose_advice_keeps_within_its_limit_does_not_speak_of_it() -> None:
    assert "past" not in design_pad(read_measurements(sample("mobile_library_van"))).verdict_words


def test_a_number_of_many_digits_is_told_by_its_length() -> None:
    with pytest.raises(BadMeasurementsError) as caught:
        read_measurements(van(jack__cup_bore_mm=1.10141e23))
    assert [problem.message for problem in caught.value.problems] == [
        "Cup bore of 24 digits cannot be right (at most 200 mm). Measure it again."
    ]
