"""Sentences about sizes and estimates that must not read better, or surer, than the pad is."""

from math import isinf
from typing import Any

import pytest

from geometry.calculation.why import why
from geometry.design import Design, design_pad
from geometry.errors import BadMeasurementsError
from geometry.measurements import read_measurements
from geometry.sensitivity import sensitivities
from tests.documents import sample, van


def designed(**changes: Any) -> Design:
    return design_pad(read_measurements(van(**changes)))


def reason(design: Design, dimension: str) -> str:
    return why(design, design.ledger[dimension])


def check_words(design: Design, code: str) -> str:
    return next(check.words for check in design.checks if check.code == code)


def test_a_body_that_cannot_keep_the_seam_from_marking_does_not_promise_it() -> None:
    """Oracle: the check of the very same pad, which says that a lasting mark stays."""
    heavy = designed(car__gross_mass_kg=2600)
    assert "leaves a lasting mark" in check_words(heavy, "slot_floor_marking")
    words = reason(heavy, "body_diameter_mm")
    assert "as much as the lip can carry" in words
    assert "must be carried" not in words


def test_a_body_that_the_seam_ends_on_says_whether_its_length_was_measured() -> None:
    short = designed(car__gross_mass_kg=2600, seam__straight_length_mm=70)
    assert "70 of the seam's edge is as much as is straight;" in reason(short, "body_diameter_mm")


def test_a_body_wide_enough_to_stay_below_a_mark_says_by_how_much() -> None:
    light = designed(car__gross_mass_kg=1200, make__material="pom_c")
    assert "must be carried to stay a fifth below what leaves a lasting mark" in reason(light, "body_diameter_mm")


@pytest.mark.parametrize(
    ("dimension", "field", "value"),
    [
        ("seat_corner_radius_mm", "jack__cup_corner_radius_mm", 5.0),
        ("slot_width_mm", "seam__bow_mm", 0.3),
    ],
)
def test_a_number_that_nobody_measured_is_called_assumed(dimension: str, field: str, value: float) -> None:
    """Oracle: the same number, given: the sentence is the same but for that one word."""
    left_out, given = designed(), designed(**{field: value})
    assert "(assumed)" in reason(left_out, dimension)
    assert reason(given, dimension) == reason(left_out, dimension).replace(" (assumed)", "")


def test_room_beside_the_seam_is_assumed_where_its_narrower_side_is() -> None:
    measured = designed(seam__clear_inboard_mm=30.0, seam__clear_outboard_mm=None)
    assert "20 ± 0.1 (assumed) is free" in reason(measured, "slot_depth_mm")
    assert "(assumed) is free" not in reason(designed(seam__clear_inboard_mm=18.0), "slot_depth_mm")


def test_a_straight_length_is_assumed_until_it_is_measured() -> None:
    assert "as is assumed where nobody measured it" in check_words(designed(), "slot_end_foul")
    assert "assumed" not in check_words(designed(seam__straight_length_mm=120.0), "slot_end_foul")


def test_the_seams_steel_is_assumed_to_yield_until_somebody_knows() -> None:
    assert "its steel is assumed to yield at 140 MPa" in check_words(designed(), "seam_crush")
    assert "its steel yields at 180 MPa" in check_words(designed(seam__yield_mpa=180), "seam_crush")


def test_a_verdict_says_that_advice_is_past_its_limit() -> None:
    """Oracle: the checks themselves, counted."""
    design = design_pad(read_measurements(sample("kayak_club_estate_drain")))
    advice = design.with_verdict("advice")
    past = sum(check.utilisation > 1 for check in advice)
    assert 1 < past < len(advice)
    assert f"; {len(advice)} pieces of advice, {past} of them past their limits;" in design.verdict_words


def test_a_verdict_whose_advice_keeps_within_its_limit_does_not_speak_of_it() -> None:
    assert "past" not in design_pad(read_measurements(sample("mobile_library_van"))).verdict_words


def test_an_error_that_leaves_nothing_is_told_in_words() -> None:
    """Oracle: half a millimetre is more than the play of this skirt, so that it would not go on at all."""
    found = sensitivities(design_pad(read_measurements(sample("puppet_theatre_van_plate_edge"))))
    words = [s.words for s in found if any(isinf(i.after) for i in s.influences)]
    assert words
    assert all(" to nothing left. " in each and "inf" not in each for each in words)


def test_a_number_of_many_digits_is_told_by_its_length() -> None:
    with pytest.raises(BadMeasurementsError) as caught:
        read_measurements(van(jack__cup_bore_mm=1.10141e23))
    assert [problem.message for problem in caught.value.problems] == [
        "Cup bore of 24 digits cannot be right (at most 200 mm). Measure it again."
    ]
