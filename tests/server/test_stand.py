"""What is asked of a jack and a car: what the chosen answers have a use for, and nothing typed is lost."""

from urllib.parse import parse_qsl

from server.fields import FIELDS
from server.forms import read_form
from server.links import samples
from server.outcome import outcome_of
from server.present import pad_page
from server.section_view import section_view
from server.sheet_context import PadPage
from server.stand import stand_for

BARE_PLATE = "puppet_theatre_van_plate_edge"
RING = "jack.ring_bore_mm"


def page_of(sample: str, **changes: str) -> PadPage:
    address = next(s.address for s in samples() if s.key == sample)
    typed = dict(parse_qsl(address.partition("?")[2])) | {key.replace("__", "."): text for key, text in changes.items()}
    outcome = outcome_of(read_form(list(typed.items())))
    return pad_page(outcome, section_view(outcome))


def test_a_bare_plate_is_not_asked_for_a_ring_and_says_which_numbers_it_leaves_out() -> None:
    page = page_of(BARE_PLATE)
    asked = {field.key for field in (*page.jack, *page.more_jack.fields)}
    assert not asked & {RING, "jack.ring_height_mm", "jack.ring_corner_radius_mm"}
    assert page.not_here == (
        "Not on this jack: 3 bore of the ring or recess; 4 height of the ring, or depth of the recess."
    )
    assert RING not in page.section.heights


def test_what_was_typed_for_another_answer_stands_where_it_can_be_emptied() -> None:
    page = page_of(BARE_PLATE, jack__ring_bore_mm="60")
    kept = next(group for group in page.groups if group.name == "unused")
    assert [(field.key, field.text) for field in kept.fields] == [(RING, "60")]
    assert page.state == "fit"


def test_a_contradiction_in_what_is_not_used_is_told_at_its_own_box() -> None:
    """A ring larger than its plate cannot be, wherever the pad is located."""
    page = page_of(BARE_PLATE, jack__ring_bore_mm="150")
    kept = next(group for group in page.groups if group.name == "unused")
    assert kept.is_open
    assert page.problems[0].href == f"#{kept.fields[0].id}"


def test_readings_of_the_part_are_not_called_unused() -> None:
    page = page_of(BARE_PLATE, as_made__web_mm="19")
    assert [group.name for group in page.groups][-1] == "others"


def test_every_question_that_is_needed_is_asked() -> None:
    """Oracle: what the reading itself says is still missing, for each way of standing on a jack and of taking a car."""
    for typed in (
        {"foot": "plate"},
        {"foot": "plate", "jack.located_by": "ring"},
        {"foot": "saddle"},
        {"foot": "saddle", "jack.stands_on": "teeth"},
        {"head": "plug"},
        {"head": "plug", "pocket.shape": "rectangular"},
    ):
        reading = read_form(list(typed.items()))
        missing = {key for key in reading.missing if FIELDS[key].group in {"jack", "pocket"}}
        assert missing
        assert missing <= {*stand_for(reading).keys, "jack.rated_load_kg"}


def test_a_problem_names_its_field_as_this_jack_does() -> None:
    page = page_of(BARE_PLATE, jack__rim_height_low_mm="9000")
    assert page.problems[0].words.startswith("Height of the jack's head, jack down 9000 mm cannot be right")
