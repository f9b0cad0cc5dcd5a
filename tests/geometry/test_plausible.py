"""Notes about unusual numbers: they ask, and they never stand in the way."""

import re

import pytest
from hypothesis import given

from geometry.design import design_pad
from geometry.doubt import Doubt
from geometry.kinds import FACES, JACKS
from geometry.measurements import Measurements
from geometry.plausible import DOUBTS, doubts_of
from geometry.variants import bounds_of, field_of
from tests.documents import ordinary_documents, sample, understood

SAMPLES = (
    "mobile_library_van",
    "tool_library_hatchback_stem",
    "allotment_estate_inch_shop",
    "choir_minibus_printed",
    "brass_band_van_toothed_saddle",
    "seed_library_estate_teeth_only",
    "bell_ringers_wagon_plate_ring",
    "puppet_theatre_van_plate_edge",
    "canoe_store_bored_ram",
    "village_bakery_van_rail_cushion",
    "pottery_studio_city_car_pocket",
    "lifeguard_station_pickup_round_plug",
)


def flat(document: dict[str, object]) -> dict[str, float]:
    """A document's numbers by dotted key."""
    groups = {group: answers for group, answers in document.items() if isinstance(answers, dict)}
    return {
        f"{group}.{name}": value
        for group, answers in groups.items()
        for name, value in answers.items()
        if isinstance(value, int | float)
    }


@pytest.mark.parametrize("name", SAMPLES)
def test_ordinary_jobs_raise_no_doubt(name: str) -> None:
    """Oracle: the ready examples are meant to be ordinary."""
    assert doubts_of(flat(sample(name))) == {}


@pytest.mark.parametrize("doubt", DOUBTS, ids=lambda d: f"{d.field}: {d.words[:24]}")
def test_every_doubt_can_be_raised_by_a_number_that_can_exist(doubt: Doubt) -> None:
    """Oracle: the document's own bounds of the field, tried from end to end beside ordinary numbers."""
    low, high = bounds_of(doubt.field) or (0.0, 0.0)
    ordinary = {key: value for name in reversed(SAMPLES) for key, value in flat(sample(name)).items()}
    assert set(doubt.needs) <= ordinary.keys()
    tried = [low + (high - low) * step / 1000 for step in range(1001)] + [ordinary[key] for key in doubt.needs]
    assert any(doubt.is_odd({**ordinary, doubt.field: value}) for value in tried)


def test_a_doubt_names_the_number_that_it_is_about() -> None:
    assert "12 mm" in doubts_of({"seam.thickness_mm": 12.0})["seam.thickness_mm"]


def test_a_question_that_compares_is_silent_until_both_are_known() -> None:
    assert doubts_of({"jack.rim_diameter_mm": 70.0}) == {}
    assert "jack.rim_diameter_mm" in doubts_of({"jack.rim_diameter_mm": 70.0, "jack.cup_bore_mm": 68.0})


@pytest.mark.parametrize("foot", JACKS)
def test_what_must_be_measured_on_each_foot_can_be_doubted(foot: str) -> None:
    """Oracle: the fields of the foot's own document that cannot be left out."""
    required = {f"jack.{name}" for name, info in JACKS[foot].model_fields.items() if info.is_required()}
    assert len(required) > 2
    assert required <= {doubt.field for doubt in DOUBTS}


@pytest.mark.parametrize(("group", "head"), [("seam", "slot"), ("rail", "cushion"), ("pocket", "plug")])
def test_what_must_be_measured_for_each_head_can_be_doubted(group: str, head: str) -> None:
    """Oracle: the fields of the head's own document that cannot be left out."""
    required = {f"{group}.{name}" for name, info in FACES[head].model_fields.items() if info.is_required()}
    assert len(required) > 2
    assert required <= {doubt.field for doubt in DOUBTS}


@pytest.mark.parametrize(
    ("known", "field"),
    [
        ({"jack.between_teeth_mm": 76.0, "jack.over_teeth_mm": 80.0}, "jack.over_teeth_mm"),
        ({"jack.plate_diameter_mm": 80.0, "jack.ring_bore_mm": 77.0}, "jack.ring_bore_mm"),
        ({"jack.post_bore_mm": 32.0, "jack.bore_rim_diameter_mm": 37.0}, "jack.bore_rim_diameter_mm"),
        ({"jack.pin_diameter_mm": 8.0, "jack.pin_distance_mm": 6.0}, "jack.pin_distance_mm"),
        ({"jack.rim_height_low_mm": 120.0, "rail.face_height_mm": 118.0}, "rail.face_height_mm"),
        ({"pocket.hole_width_mm": 40.0, "pocket.hole_length_mm": 30.0}, "pocket.hole_length_mm"),
        ({"car.gross_mass_kg": 1250.0, "car.wheelbase_mm": 2750.0}, "car.gross_mass_kg"),
    ],
)
def test_two_numbers_that_do_not_go_together_are_doubted_at_the_second(known: dict[str, float], field: str) -> None:
    """Oracle: common practice, no source: walls of 2 mm, a hole beside its own edge, a car on the jack already."""
    assert doubts_of(known).keys() == {field}
    assert all(doubts_of({key: value}) == {} for key, value in known.items())


@pytest.mark.parametrize(("kg", "is_asked"), [(1250, True), (1400, False), (1600, False)])
def test_an_axles_mass_on_a_car_of_this_size_is_asked_about(kg: int, is_asked: bool) -> None:
    """Oracle: common practice, no source: one axle carries some 1250 kg where the whole of a mid-sized van is 1400 and more."""
    known = {"car.wheelbase_mm": 2750.0, "car.track_mm": 1520.0, "car.gross_mass_kg": float(kg)}
    assert ("not an axle's" in doubts_of(known).get("car.gross_mass_kg", "")) is is_asked


def test_an_axles_mass_is_designed_for_all_the_same() -> None:
    """Oracle: the question stands beside the box, and a pad comes back."""
    document = sample("mobile_library_van")
    document["car"]["gross_mass_kg"] = 1250
    assert "car.gross_mass_kg" in doubts_of(flat(document))
    assert design_pad(Measurements.model_validate(document)).fit_to_make


def test_an_unusual_job_is_designed_all_the_same() -> None:
    """Oracle: a design comes back, with the note beside it."""
    document = sample("mobile_library_van")
    document["seam"] |= {"thickness_mm": 9.0, "bare_thickness_mm": 6.0}
    assert "seam.thickness_mm" in doubts_of(flat(document))
    assert design_pad(Measurements.model_validate(document)).pad.slot_width_mm > 9


@given(ordinary_documents())
def test_notes_speak_only_of_fields_that_are_given(document: dict[str, object]) -> None:
    known = flat(understood(document).model_dump(exclude_unset=True))
    assert doubts_of(known).keys() <= known.keys()


def test_every_note_is_a_sentence_about_a_field_of_the_document() -> None:
    for doubt in DOUBTS:
        assert field_of(doubt.field).title
        assert re.fullmatch(r"[{A-Z].*[.?]", doubt.words)
