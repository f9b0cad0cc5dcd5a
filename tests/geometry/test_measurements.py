"""The measurement document: what it takes, what it refuses, and in which words."""

from typing import Any

import pytest
from hypothesis import given, settings

from geometry.conditions import conditions_of
from geometry.errors import BadMeasurementsError
from geometry.kinds import FACES, JACKS
from geometry.measurements import Measurements, read_measurements
from geometry.quantity import Group
from tests.documents import SAMPLES, documents, sample, van


def problems(document: dict[str, Any]) -> dict[str, str]:
    with pytest.raises(BadMeasurementsError) as caught:
        read_measurements(document)
    return {p.field: p.message for p in caught.value.problems}


def test_eight_numbers_make_a_document() -> None:
    read = read_measurements(van())
    assert sum(len(group) for group in van().values()) == 8
    assert read.make.material == "pom_c"
    assert read.service.hold == "minutes"


def test_every_missing_number_is_named() -> None:
    found = problems({"jack": {}, "seam": {}, "car": {}})
    assert set(found) == {
        "jack.cup_bore_mm",
        "jack.cup_depth_mm",
        "jack.rated_load_kg",
        "jack.rim_height_low_mm",
        "seam.thickness_mm",
        "seam.height_mm",
        "seam.edge_height_mm",
        "car.gross_mass_kg",
    }
    assert found["jack.cup_bore_mm"] == "Cup bore is still to be measured."


def test_a_number_that_cannot_be_is_named_with_its_bound() -> None:
    assert problems(van(seam__height_mm=400))["seam.height_mm"] == (
        "Seam height 400 mm cannot be right (at most 120 mm). Measure it again."
    )


@pytest.mark.parametrize("value", [float("nan"), float("inf"), "wide", None, [1], True, 10**400])
def test_what_is_no_number_is_refused(value: object) -> None:
    assert "jack.cup_bore_mm" in problems(van(jack__cup_bore_mm=value))


def test_an_unknown_key_is_refused_by_name() -> None:
    assert "jack.cup_boar_mm" in problems(van(jack__cup_boar_mm=68))


def test_a_corner_that_leaves_no_wall_is_refused() -> None:
    assert "cannot locate a pad" in problems(van(jack__cup_corner_radius_mm=11.5))["jack.cup_corner_radius_mm"]


def test_more_steel_than_seam_is_refused() -> None:
    assert "more than the whole seam" in problems(van(seam__bare_thickness_mm=4))["seam.bare_thickness_mm"]


def test_a_boss_without_its_width_is_still_to_measure() -> None:
    assert "still to be measured" in problems(van(jack__floor_boss_height_mm=2))["jack.floor_boss_diameter_mm"]


def test_a_boss_that_fills_the_floor_is_refused() -> None:
    boss = {"jack__floor_boss_height_mm": 2, "jack__floor_boss_diameter_mm": 60}
    assert "leaves no floor" in problems(van(**boss))["jack.floor_boss_diameter_mm"]


def test_a_floor_has_a_hole_or_a_boss() -> None:
    both = {"jack__floor_boss_height_mm": 2, "jack__floor_boss_diameter_mm": 20, "jack__stem_hole_diameter_mm": 20}
    assert "not both" in problems(van(**both))["jack.floor_boss_height_mm"]


def test_a_thick_place_has_a_length() -> None:
    assert "still to be measured" in problems(van(seam__local_thickness_mm=8))["seam.local_length_mm"]


def test_crossed_slots_leave_no_room_for_a_pocket() -> None:
    document = van(make__slots="crossed", seam__local_thickness_mm=8, seam__local_length_mm=20)
    assert "meet in the pad's middle" in problems(document)["make.slots"]


def test_statics_name_every_measurement_they_lack() -> None:
    found = problems(van(car={"load_source": "statics", "gross_mass_kg": 1600}))
    assert "car.wheelbase_mm" in found
    assert len(found) == 5


@pytest.mark.parametrize("key", ["pur_90", "rubber_60"])
def test_an_elastomer_is_refused_for_a_slot(key: str) -> None:
    assert "not offered for a slot" in problems(van(make__material=key))["make.material"]


def test_rod_is_not_printed() -> None:
    assert "turned from rod" in problems(van(make__process="printed"))["make.material"]


def test_a_print_that_creeps_is_refused_for_storage() -> None:
    document = van(make={"material": "pla", "process": "printed"}, service={"hold": "stored"})
    assert "creeps" in problems(document)["make.material"]


def test_defaults_are_those_of_the_notes() -> None:
    """Corner min(5, depth/2); bare steel the thickness less 1 mm, at least 0.7 mm a sheet."""
    read = read_measurements(van(jack__cup_depth_mm=8))
    assert read.jack.facts().corner_radius_mm == 4
    assert conditions_of(read).seam.bare_thickness_mm == pytest.approx(2.2)
    assert conditions_of(read_measurements(van(seam__thickness_mm=2.0))).seam.bare_thickness_mm == 1.4


@settings(max_examples=100, deadline=None)
@given(documents())
def test_what_is_understood_reads_back_the_same(document: dict[str, Any]) -> None:
    read = read_measurements(document)
    assert Measurements.model_validate_json(read.model_dump_json()) == read


@pytest.mark.parametrize("model", [*JACKS.values(), *FACES.values()], ids=lambda m: m.__name__)
def test_every_number_says_how_it_is_measured_and_in_what(model: type[Group]) -> None:
    for name, info in model.model_fields.items():
        extra = info.json_schema_extra
        assert isinstance(extra, dict)
        assert info.title, name
        if extra["kind"] == "choice":
            assert info.description, name
            continue
        assert extra["how"], name
        assert extra["kind"] in {"count", "length", "mass", "number", "angle"}
        assert info.is_required() or extra["assumed"], name


@pytest.mark.parametrize("path", sorted(SAMPLES.glob("*.json")), ids=lambda p: p.stem)
def test_every_sample_is_a_valid_document(path: Any) -> None:
    assert read_measurements(sample(path.stem)).title
