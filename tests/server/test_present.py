"""The words of the working sheet: what its templates print is made here, and nowhere else."""

import re
from dataclasses import fields, is_dataclass
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.kinds import FACES, JACKS
from geometry.measurements import Measurements
from geometry.units import inch_to_mm
from server import shown
from server.choice_words import CHOICE_WORDS
from server.field_views import field_id, field_view, with_units_spelled_out
from server.fields import FIELDS, fields_of, is_asked
from server.forms import read_form
from server.links import typed_of_document
from server.outcome import outcome_of
from server.sheet_context import PadPage
from server.stand import stand_of
from tests.house.test_words import PROMISES
from tests.server.sheets import SAMPLES, page_of, sample_page


def words_of(view: Any) -> list[str]:
    """Every text in a context, however deep; the pictures are tested where they are drawn."""
    if isinstance(view, str):
        return [view]
    if isinstance(view, tuple):
        return [text for part in view for text in words_of(part)]
    if is_dataclass(view):
        return [text for f in fields(view) if f.name != "section" for text in words_of(getattr(view, f.name))]
    return []


def asked_on(page: PadPage) -> list[str]:
    """The key of every box on a sheet."""
    views = [
        page.job,
        *page.kinds,
        *page.jack,
        *page.seam,
        page.jack_mass,
        page.jack_up,
        page.car_mass,
        *page.more_jack.fields,
        *page.more_seam.fields,
    ]
    return [f.key for f in views] + [f.key for group in page.groups for f in group.fields]


def test_every_answer_of_every_choice_has_words() -> None:
    """Oracle: the document's own list of answers, those of the shop and of the finished part as well."""
    choices = [key for key, field in FIELDS.items() if field.kind == "choice"]
    assert {"make.process", "shop.slot_machine", "as_made_3.instrument"} <= set(choices)
    for key in choices:
        assert set(FIELDS[key].choices) <= set(CHOICE_WORDS[key]), key


def test_an_answer_of_the_shop_reads_the_same_wherever_it_is_asked() -> None:
    """Oracle: the choice that an address spells out, on the working sheet."""
    page = sample_page("mobile_library_van", shop__slot_machine="vertical_slide")
    asked = next(f for group in page.groups for f in group.fields if f.key == "shop.slot_machine")
    assert asked.chosen_words == "a vertical slide on the lathe"


@pytest.mark.parametrize("foot", JACKS)
@pytest.mark.parametrize("head", FACES)
def test_whatever_an_address_gives_has_exactly_one_box_on_the_sheet(foot: str, head: str) -> None:
    """Oracle: the document's own list of fields. A text without a box would be lost; one with two, refused as given twice.

    What another foot or head asks for is carried along unseen.
    """
    page = page_of({**dict.fromkeys(FIELDS, "?"), "foot": foot, "head": head})
    asked = asked_on(page)
    assert sorted(asked) == sorted(fields_of(foot, head))
    assert sorted([*asked, *(key for key, _ in page.hidden)]) == sorted(FIELDS)


def test_no_field_of_a_sample_is_asked_twice() -> None:
    asked = asked_on(sample_page("mobile_library_van", fixed__web_mm="18.5 mm"))
    assert len(asked) == len(set(asked))


@pytest.mark.parametrize("key", SAMPLES)
def test_no_forbidden_word_stands_on_the_sheet(key: str) -> None:
    """Oracle: the words that promise what an estimate cannot; “the jack's rated load” is its maker's figure."""
    found = [text for text in words_of(sample_page(key)) if PROMISES.search(text)]
    assert found == []


@pytest.mark.parametrize(
    ("typed", "state"),
    [
        ({}, "start"),
        ({"jack.cup_bore_mm": "68"}, "unfinished"),
        ({"jack.cup_bore_mm": "4"}, "refused"),
    ],
)
def test_a_sheet_without_a_pad_says_how_far_it_has_come(typed: dict[str, str], state: str) -> None:
    page = page_of(typed)
    assert page.state == state
    assert page.dimensions == ()
    assert page.verdict.headline


def test_each_sample_reaches_the_state_that_its_name_promises() -> None:
    states = {key: sample_page(key).state for key in SAMPLES}
    assert states["mobile_library_van"] == "fit"
    assert states["repair_cafe_people_carrier"] == "not_fit"
    assert states["rowing_club_trailer_car_no_pad"] == "no_pad"


def test_what_is_missing_links_to_a_field_of_the_sheet() -> None:
    """Oracle: eight numbers make a first pad."""
    page = page_of({"title": "van"})
    assert page.missing[0].href == "#field-jack-cup_bore_mm"
    assert len(page.missing) == 8


def test_a_mass_that_cannot_be_is_refused_in_the_unit_that_it_was_typed_in() -> None:
    """Oracle: the least is 100 kg, 100 / 0.45359237 = 220.5 lb."""
    page = page_of({"jack.rated_load_kg": "2"}, "in")
    assert "2 lb cannot be right (at least 220.5 lb)" in page.jack_mass.problem
    assert page.problems[0].words == f"Jack's rated load {page.jack_mass.problem}"


def test_a_problem_stands_beside_its_field_and_with_its_title_in_the_summary() -> None:
    page = page_of({"jack.cup_bore_mm": "4"})
    assert page.problems[0].words == f"Cup bore {page.jack[0].problem}"
    assert page.problems[0].href == "#" + page.jack[0].id


def test_every_check_stands_on_the_sheet_once() -> None:
    """Oracle: the design's own list of checks."""
    design = outcome_of(read_form(list(typed_of_document(SAMPLES["mobile_library_van"].document).items()))).design
    assert design is not None
    codes = [c.code for group in sample_page("mobile_library_van").checks for c in group.checks]
    assert sorted(codes) == sorted(c.code for c in design.checks)


def test_failures_come_first_and_the_rest_by_how_much_of_the_limit_is_used() -> None:
    groups = sample_page("repair_cafe_people_carrier").checks
    assert {c.verdict for c in groups[0].checks} == {"fail"}
    near = next(g for g in groups if g.heading.startswith("Passes"))
    bars = [float(c.bar) for c in near.checks]
    assert bars == sorted(bars, reverse=True)


def test_only_what_goes_beyond_its_limit_has_a_bar_beyond_it() -> None:
    for group in sample_page("repair_cafe_people_carrier").checks:
        for check in group.checks:
            assert bool(check.bar_over) == (
                "times its limit" in check.verdict_words or "nothing is left" in check.verdict_words
            )


@given(used=st.floats(0, 1e6))
def test_a_share_never_says_that_a_limit_is_met_when_it_is_not(used: float) -> None:
    """Oracle: the number itself; 1.00 is said of the limit alone."""
    said = float(shown.share(used))
    assert (said <= 1) == (used <= 1)


@given(length_mm=st.floats(-5000, 5000))
def test_what_is_shown_in_inches_is_the_length_to_half_a_thou(length_mm: float) -> None:
    text = shown.length(length_mm, "in").replace("−", "-")
    assert inch_to_mm(float(text)) == pytest.approx(length_mm, abs=inch_to_mm(0.0005) + 1e-9)


@settings(max_examples=60)
@given(bore=st.floats(21, 199).map(lambda x: f"{x:.3f}"), sign=st.sampled_from(["", " mm", " in"]))
def test_switching_units_and_back_changes_no_measurement(bore: str, sign: str) -> None:
    """Oracle: the document read before, exactly."""
    typed = {"jack.cup_bore_mm": bore + sign, "jack.rated_load_kg": "2000", "make.cutter_diameters_mm": "4; 5"}
    before = read_form(list(typed.items())).document
    there = with_units_spelled_out(typed, "mm", "in")
    assert read_form([*there.items(), ("units", "in")]).document == before
    assert read_form(list(with_units_spelled_out(there, "in", "mm").items())).document == before


def test_the_stand_asks_for_what_the_balloons_point_at() -> None:
    """Oracle: the document's own mark on each field."""
    assert {*stand_of().jack, *stand_of().car} == {
        key for key, field in FIELDS.items() if field.balloon and is_asked(key, {})
    }


def test_every_balloon_has_a_row_of_its_own_with_room_for_a_box() -> None:
    """Oracle: 44 px of a picture some 600 px high are at least seven hundredths; the outboard side is the jack's side."""
    for key in SAMPLES:
        page = sample_page(key)
        heights = page.section.heights
        outboard = {page.outboard} & heights.keys()
        jack, car = ({field.key for field in fields} for fields in (page.jack, page.seam))
        for side in (jack | outboard, car - outboard):
            rows = sorted(heights[k] for k in side)
            assert all(b - a >= 7 for a, b in pairwise(rows)), (key, rows)
            assert rows[0] >= 0
            assert rows[-1] <= 100


def test_an_optional_field_says_what_is_taken_instead() -> None:
    reading = read_form(())
    sheets = field_view("seam.sheets", reading, {})
    assert sheets.assumed == "2 sheets"
    assert field_view("jack.cup_bore_mm", reading, {}).assumed == ""


def test_field_ids_are_those_that_balloons_link_to() -> None:
    page = page_of({})
    for view in (*page.jack, *page.seam):
        assert f'href="{field_id(view.key)}"'.replace('"', '"#', 1) in page.section.wide
        assert f'href="#{view.id}"' in page.section.phone


def test_models_know_every_group_of_the_document() -> None:
    assert {key.partition(".")[0] for key in FIELDS if "." in key} <= set(Measurements.model_fields)


def test_leaving_a_measurement_out_says_what_is_taken_and_what_is_then_not_checked() -> None:
    """Oracle: the design's own list of what is not checked without the jack's greatest height."""
    view = field_view("jack.rim_height_high_mm", read_form(()), {})
    assert view.left_out is not None
    assert view.left_out.unchecked == ("Jack reaches the wanted lift",)
    without = {k: v for k, v in typed_of_document(SAMPLES["mobile_library_van"].document).items() if k != view.key}
    groups = {g.heading: g for g in page_of(without).checks}
    missed = groups["Not checked, because a measurement is missing"]
    assert "Jack reaches the wanted lift" in {c.title for c in missed.checks}


def test_what_is_taken_instead_is_a_number_once_the_other_answers_say_so() -> None:
    """Oracle: with 12 mm of depth the corner is taken as min(5, 12 / 2) = 5 mm."""
    typed = typed_of_document(SAMPLES["mobile_library_van"].document)
    typed.pop("jack.cup_corner_radius_mm")
    corner = next(f for f in page_of(typed).jack if f.key == "jack.cup_corner_radius_mm")
    assert corner.left_out_words == "left out: 5 mm is taken"


@pytest.mark.parametrize(
    "key", [k for k in FIELDS if k.startswith(("jack.", "seam.")) and not FIELDS[k].required and is_asked(k, {})]
)
def test_every_measurement_that_may_be_left_out_says_what_that_costs(key: str) -> None:
    view = field_view(key, read_form(()), {})
    assert view.left_out is not None
    assert view.assumed
    assert view.left_out.unchecked or view.left_out.guessed


def test_an_unusual_number_is_asked_about_beside_its_field_and_stops_nothing() -> None:
    page = sample_page("mobile_library_van", seam__thickness_mm="9", seam__bare_thickness_mm="6")
    thickness = next(f for f in page.seam if f.key == "seam.thickness_mm")
    assert "did you include the sill?" in thickness.doubt
    assert page.doubts[0].href == "#" + thickness.id
    assert page.state in {"fit", "not_fit"}


@pytest.mark.parametrize("key", SAMPLES)
def test_in_inches_no_sentence_speaks_of_millimetres(key: str) -> None:
    """Oracle: no number before “mm” but in formulas, echoes of what was typed, and names of files."""
    page = page_of(typed_of_document(SAMPLES[key].document, units="in"), "in")
    views = [*page.jack, *page.seam, *page.more_jack.fields, *page.more_seam.fields]
    words = [w for f in views for w in (f.how, f.help, f.assumed, f.problem, f.doubt, f.left_out_words)]
    words += [c.words for g in page.checks for c in g.checks] + [w for g in page.cautions for w in g.sentences]
    words += [w for d in page.dimensions for w in (d.reason, d.cost, *d.notes, *(b.reason for b in d.bounds))]
    words += [page.verdict.headline, page.pad_line, *(w for row in page.load for w in row)]
    assert [w for w in words if re.search(r"\d mm\b", w)] == []


@given(st.floats(0.01, 3000).map(lambda x: round(x, 2)))
def test_a_length_in_a_sentence_is_the_same_length_in_inches(value_mm: float) -> None:
    """Oracle: the inch of 1959, to half a thousandth."""
    words = shown.words_in(f"It is {value_mm:g} mm deep at 40 MPa and 96 N/mm.", "in")
    found = re.fullmatch(r"It is ([\d.]+) in deep at 40 MPa \(5800 psi\) and 96 N/mm\.", words)
    assert found
    assert abs(inch_to_mm(float(found[1])) - float(f"{value_mm:g}")) <= inch_to_mm(0.00051)


@pytest.mark.parametrize(("units", "rated"), [("mm", "2000 kg"), ("in", "4410 lb")])
def test_the_rated_load_of_a_jack_is_said_as_its_owner_knows_it(units: str, rated: str) -> None:
    """Oracle: the two tonnes that were typed; 4409 lb by the international pound, to the three digits of 19.6 kN."""
    typed = typed_of_document(SAMPLES["mobile_library_van"].document)
    page = page_of(dict(with_units_spelled_out(typed, "mm", units)), units)
    words = next(c.words for group in page.checks for c in group.checks if c.code == "jack_rating")
    assert f"19.6 kN ({rated})" in words
