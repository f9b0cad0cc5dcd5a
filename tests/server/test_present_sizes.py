"""The sizes on the working sheet: fixing one, letting it go, what either costs, and the interval that has none."""

import re

import pytest

from geometry.errors import Limit, NoPadFitsError
from server.design_views import conflict_headline
from server.forms import read_form
from server.links import typed_of_document
from server.outcome import outcome_of
from tests.server.sheets import SAMPLES, page_of, sample_page


def test_a_fixed_size_that_cannot_be_is_still_there_to_be_changed() -> None:
    """Oracle: a web thinner than the seat is long leaves no body; its text must stay in a box on the sheet."""
    page = sample_page("mobile_library_van", fixed__web_mm="12")
    assert page.state == "refused"
    group = next(group for group in page.groups if group.name == "fixed")
    assert [(f.key, f.text) for f in group.fields] == [("fixed.web_mm", "12")]
    assert group.is_open
    assert group.fields[0].problem


def test_letting_go_of_a_size_takes_only_that_size_from_the_address() -> None:
    page = sample_page("mobile_library_van", fixed__web_mm="18.5", fixed__slot_width_mm="5")
    web = next(d for d in page.dimensions if d.name == "web_mm")
    assert web.is_fixed
    assert "fixed.web_mm" not in web.let_go
    assert "fixed.slot_width_mm=5" in web.let_go


def test_fixing_every_size_as_it_is_changes_no_size() -> None:
    """Oracle: the sizes before; what a button types must be read as the very same number."""
    before = sample_page("mobile_library_van")
    typed = {d.key.replace(".", "__"): d.fix_text for d in before.dimensions if d.tolerance}
    after = sample_page("mobile_library_van", **typed)
    assert [d.value for d in after.dimensions] == [d.value for d in before.dimensions]


def test_fixing_an_inch_size_keeps_it_to_the_last_digit() -> None:
    """Oracle: the size itself, to 1e-9 mm."""
    sample = SAMPLES["allotment_estate_inch_shop"]
    design = outcome_of(read_form(list(typed_of_document(sample.document).items()))).design
    assert design is not None
    page = page_of(typed_of_document(sample.document))
    for view in page.dimensions:
        if view.tolerance:
            read = read_form([(view.key, view.fix_text)]).document["fixed"][view.name]
            assert read == pytest.approx(design.ledger[view.name].value_mm, abs=1e-9)


def test_an_inch_size_is_fixed_in_inches_and_a_metric_one_in_millimetres() -> None:
    """Oracle: 0.730 in is what the inch shop's web is; a web of 18.5 mm is no whole number of thousandths."""
    inch = page_of(typed_of_document(SAMPLES["allotment_estate_inch_shop"].document, units="in"), "in")
    metric = page_of(typed_of_document(SAMPLES["mobile_library_van"].document, units="in"), "in")
    texts = [next(d for d in page.dimensions if d.name == "web_mm").fix_text for page in (inch, metric)]
    assert texts[0].endswith(" in")
    assert texts[1].endswith(" mm")


def test_an_interval_without_a_makeable_size_names_the_step() -> None:
    """Oracle: the engine's own sentence; without its step “at least 84 and at most 84.2” would read as room enough."""
    limits = Limit(84.0, "It must.", "jack.cup_bore_mm"), Limit(84.2, "It may.", "jack.cup_bore_mm")
    error = NoPadFitsError(
        dimension="web_mm", lower=limits[0], upper=limits[1], words="The web … at most 84.20 mm in steps of 0.5 mm. At"
    )
    assert conflict_headline(error, "mm").endswith("at least 84 mm and at most 84.2 mm in steps of 0.5 mm.")
    assert conflict_headline(error, "in").endswith("at most 3.315 in in steps of 0.02 in.")


def test_a_conflict_names_both_numbers_and_what_to_measure() -> None:
    conflict = sample_page("rowing_club_trailer_car_no_pad").conflict
    assert conflict is not None
    assert conflict.lower.value in conflict.headline
    assert conflict.upper.value in conflict.headline
    assert conflict.lower.measure.href.startswith("#field-")
    assert conflict.lower.measure.href != conflict.upper.measure.href


def test_every_size_gives_its_reason_with_its_numbers() -> None:
    """Oracle: the sentence opens with the size itself."""
    for d in sample_page("mobile_library_van").dimensions:
        assert d.reason.startswith("None" if d.value == "none" else f"{d.value} because")


def test_fixing_a_size_shows_its_price() -> None:
    """Oracle: a web far thicker than needed weighs more; a web as it is costs nothing."""
    thick = next(d for d in sample_page("mobile_library_van", fixed__web_mm="30").dimensions if d.name == "web_mm")
    same = next(d for d in sample_page("mobile_library_van", fixed__web_mm="19").dimensions if d.name == "web_mm")
    assert re.search(r"it weighs \d+ g instead of \d+ g", thick.cost)
    assert same.cost == "Let go, it would be 19. Fixing it costs nothing."


def test_fixing_a_size_so_that_something_fails_names_it() -> None:
    web = next(d for d in sample_page("mobile_library_van", fixed__slot_depth_mm="19").dimensions if d.is_fixed)
    assert "sill clear of the walls fails" in web.cost
