"""The estimates on the sheet: each kind with its nearest limit, each gap with the way to its box, each failure with its cause."""

from typing import Any
from urllib.parse import parse_qsl, urlsplit

import pytest

from geometry.design import design_pad
from server import check_views
from server.advice_views import comparison_view, remedies_of
from server.check_views import CheckView
from server.forms import read_form
from server.links import typed_of_document
from server.outcome import Outcome
from server.present import pad_page
from server.section_view import section_view
from server.sheet_context import PadPage
from tests.documents import designed, sample, van


def sheet(document: dict[str, Any]) -> PadPage:
    outcome = Outcome(read_form(list(typed_of_document(document).items())), design=designed(document))
    return pad_page(outcome, section_view(outcome))


def checks(page: PadPage) -> dict[str, CheckView]:
    return {check.code: check for group in page.checks for check in group.checks}


def test_the_nearest_of_the_advice_is_told_beside_the_nearest_of_the_rest() -> None:
    """Oracle: the checks themselves: of the advice, none uses more of its limit than the one that is named."""
    design = designed(sample("mobile_library_van"))
    most = max((c for c in design.checks if c.rule.is_advice), key=lambda c: c.utilisation)
    assert most.utilisation > design.governing.utilisation
    assert f"Of the advice: {most.title[0].lower()}{most.title[1:]}, " in check_views.governing_words(design)


def test_advice_past_its_limit_is_told_at_the_verdict_though_all_estimates_pass() -> None:
    design = designed(sample("lifeguard_station_pickup_round_plug"))
    assert design.fit_to_make
    assert "Advice past its limit: " in check_views.governing_words(design)
    assert "2.62 times it." in check_views.governing_words(design)


def test_folded_advice_says_how_near_its_limit_it_comes() -> None:
    design = designed(sample("mobile_library_van"))
    passing = max(c.utilisation for c in design.with_verdict("pass") if c.rule.is_advice)
    headings = [group.heading for group in check_views.check_groups(design, frozenset())]
    assert any(heading.endswith(f"the nearest at {passing:.2f} of its limit") for heading in headings)


@pytest.mark.parametrize(
    ("code", "box"),
    [
        ("lift_height", "#field-jack-rim_height_high_mm"),
        ("arm_clear", "#field-jack-rim_diameter_mm"),
        ("entry_height_flat", "#field-seam-edge_height_flat_mm"),
        ("saddle_pitch", "#field-car-load_source"),
    ],
)
def test_what_is_not_checked_leads_to_the_box_that_it_waits_for(code: str, box: str) -> None:
    found = checks(sheet(van()))[code]
    assert found.verdict == "not_checked"
    assert found.missing
    assert found.missing.href == box


def test_a_failure_that_a_fixed_size_causes_rests_on_that_size() -> None:
    """Oracle: the same job with the size let go, in which that check passes."""
    found = checks(sheet(van(fixed__web_mm=15)))
    failing = {code: check for code, check in found.items() if check.verdict == "fail"}
    freed = {c.code for c in designed(van()).with_verdict("pass")}
    assert failing
    assert failing.keys() <= freed
    for check in failing.values():
        assert ("web, which you fixed", "#field-fixed-web_mm") in [(need.words, need.href) for need in check.needs]


def test_the_way_to_changes_stands_where_something_is_past_its_limit() -> None:
    """Oracle: one pad that fails, one whose advice is past its limit, one without either."""
    assert sheet(sample("repair_cafe_people_carrier")).changes_way == "#help"
    assert sheet(sample("kayak_club_estate_drain")).changes_way.startswith("/pad/changes?")
    assert sheet(sample("mobile_library_van")).changes_way == ""


def test_changes_for_advice_are_tried_and_make_nothing_fail() -> None:
    """Oracle: each offered change, designed anew: nothing fails, and no more advice is past its limit than before, but one less."""
    document = sample("kayak_club_estate_drain")
    typed = typed_of_document(document)
    found = remedies_of(read_form(list(typed.items())), designed(document), None)
    assert [trouble.is_advice for trouble in found.troubles] == [True, True, True]
    offered = [remedy.apply.href for trouble in found.troubles for remedy in trouble.remedies]
    assert offered
    for address in offered:
        changed = read_form(parse_qsl(urlsplit(address).query)).measurements
        assert changed
        tried = design_pad(changed)
        assert tried.fit_to_make
        assert sum(check.utilisation > 1 for check in tried.with_verdict("advice")) < 3


def test_a_number_that_nobody_measured_is_not_asked_to_be_read_again() -> None:
    document = sample("kayak_club_estate_drain")
    found = remedies_of(read_form(list(typed_of_document(document).items())), designed(document), None)
    words = [remedy.apply.words for trouble in found.troubles for remedy in trouble.remedies]
    assert any(each.startswith("Measure the straight length: 120 mm is assumed") for each in words)
    assert any(each.startswith("Was the seam thickness read right?") for each in words)


def test_a_given_up_aim_is_quoted_and_not_told_as_fulfilled() -> None:
    page = sheet(van(fixed__body_diameter_mm=73))
    notes = [note for d in page.dimensions if d.name == "body_diameter_mm" for note in d.notes]
    assert notes
    for note in notes:
        assert note.startswith(("Not met: “", "An aim that is given up: “"))
        assert "That would ask for at least " in note or "That would ask for at most " in note


def test_a_pad_is_as_tall_in_the_table_of_materials_as_on_its_sheet() -> None:
    """Oracle: the line of the sheet that says how tall it is; a skirt hangs below the seat and belongs to the height."""
    document = sample("puppet_theatre_van_plate_edge")
    reading, page = read_form(list(typed_of_document(document).items())), sheet(document)
    assert reading.measurements
    chosen = next(row for row in comparison_view(reading.measurements, reading).rows if row.is_chosen)
    assert f" {chosen.height} tall," in page.pad_line


def test_what_fixing_costs_is_not_called_nearest_its_limit_where_it_is_past_it() -> None:
    page = sheet(van(fixed__web_mm=15))
    (cost,) = [d.cost for d in page.dimensions if d.name == "web_mm"]
    assert "; farthest past its limit is " in cost
    assert " times it; free it would be 0." in cost


def test_what_an_estimate_rests_on_says_what_was_assumed() -> None:
    """Oracle: the same job with the radius measured at the value that was taken for it."""
    assumed, measured = (
        checks(sheet(document))["corner_clear"] for document in (van(), van(jack__cup_corner_radius_mm=5))
    )
    assert "Cup corner radius (assumed)" in [need.words for need in assumed.needs]
    assert "Cup corner radius" in [need.words for need in measured.needs]


@pytest.mark.parametrize(
    ("changes", "code", "words"),
    [
        ({}, "boss_clear", "Nothing stands on the cup's floor. Assumed: the floor is flat."),
        ({"jack.floor_boss_height_mm": 0.0}, "boss_clear", "Nothing stands on the cup's floor."),
        ({}, "stem_clear", "The pad has no stem. Assumed: no hole."),
        (
            {},
            "slot_offset_fit",
            "The slot runs through the pad's middle. Assumed: the jack stands centred under the seam.",
        ),
        ({"seam.offset_mm": 0.0}, "slot_offset_fit", "The slot runs through the pad's middle."),
    ],
)
def test_what_is_not_there_because_nobody_said_anything_of_it_is_called_assumed(
    changes: dict[str, float], code: str, words: str
) -> None:
    """Oracle: whether the document holds the measurement."""
    document = van()
    for key, value in changes.items():
        group, _, name = key.partition(".")
        document[group] = {**document[group], name: value}
    assert checks(sheet(document))[code].words == words


def test_what_another_answer_would_ask_for_is_not_called_assumed() -> None:
    """Oracle: a pad that stands between teeth asks for no tip, and a round hole has no corner to measure."""
    between = checks(sheet(sample("brass_band_van_toothed_saddle")))
    assert "Assumed" not in between["tip_bearing"].words
    plugged = checks(sheet(sample("lifeguard_station_pickup_round_plug")))
    assert "Assumed" not in plugged["plug_corner_clear"].words


def test_that_an_estimate_was_not_made_is_told_once_with_the_way_to_its_box() -> None:
    """Oracle: the title of the field that the example leaves empty; “not checked” stands in the verdict alone."""
    check = checks(sheet(sample("mobile_library_van")))["entry_height_flat"]
    assert check.verdict_words == "not checked"
    assert check.missing
    assert check.words == "Seam edge above ground, tyre flat is not measured."
