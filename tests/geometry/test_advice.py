"""Comparison of materials, sensitivity, and computed changes."""

import re
from typing import Any

import pytest
from hypothesis import given, settings

from geometry.comparison import compare_materials
from geometry.design import Design, design_pad
from geometry.errors import NoPadFitsError
from geometry.materials import MATERIALS
from geometry.measurements import Measurements, read_measurements
from geometry.remedies import Remedy, remedies_for_check, remedies_for_conflict
from geometry.sensitivity import sensitivities
from geometry.variants import variant
from tests.documents import designed, ordinary_documents, sample, van


def conflict_of(measurements: Measurements) -> NoPadFitsError:
    with pytest.raises(NoPadFitsError) as caught:
        design_pad(measurements)
    return caught.value


def test_every_material_has_one_row_and_what_passes_comes_first() -> None:
    rows = compare_materials(read_measurements(sample("mobile_library_van")))
    assert sorted(r.material.key for r in rows) == sorted(MATERIALS)
    ranks = [["passes", "fails", "no_pad", "refused"].index(r.outcome) for r in rows]
    assert ranks == sorted(ranks)
    assert [r.is_chosen for r in rows].count(True) == 1


def test_a_row_shows_what_choosing_it_gives() -> None:
    measurements = read_measurements(sample("mobile_library_van"))
    for row in compare_materials(measurements):
        if row.design:
            assert design_pad(variant(measurements, row.changes)).pad == row.design.pad


def test_a_printed_row_changes_the_process_too() -> None:
    rows = compare_materials(read_measurements(van()))
    printed = next(r for r in rows if r.material.key == "pa_cf")
    assert printed.changes == {"make.material": "pa_cf", "make.process": "printed"}


def test_elastomers_are_refused_with_their_reason() -> None:
    rows = compare_materials(read_measurements(van()))
    refused = {r.material.key: r.words for r in rows if r.outcome == "refused"}
    assert set(refused) == {"pur_90", "pur_95", "rubber_60", "rubber_70"}
    assert all("sink" in words for words in refused.values())


def test_a_material_advised_against_never_leads() -> None:
    assert not compare_materials(read_measurements(van()))[0].is_advised_against


def test_own_values_go_with_their_rod() -> None:
    rows = compare_materials(read_measurements(van(own__stress_minutes_mpa=26.0)))
    other = next(r for r in rows if r.material.key == "pet_p")
    assert other.changes["own.stress_minutes_mpa"] is None


def test_own_values_are_used_and_marked_as_the_users() -> None:
    design = designed(van(own={"stress_minutes_mpa": 20.0, "sheet": "rod 7"}))
    assert design.conditions.allowable_mpa == pytest.approx(20 * 0.83)
    assert design.conditions.material.stress_minutes_mpa.source.mark.value == "U"


def test_the_seams_height_moves_the_sills_clearance_by_hand() -> None:
    """Clearance 3.360 mm, limit 2: half a millimetre less seam leaves 2/2.860 = 0.699."""
    found = next(s for s in sensitivities(designed(van())) if s.check.code == "sill_clear")
    assert found.influences[0].key in {"seam.height_mm", "seam.clear_inboard_mm", "seam.clear_outboard_mm"}
    assert found.influences[0].after == pytest.approx(2 / 2.860, abs=0.001)


def test_a_material_one_fifth_weaker_uses_a_quarter_more_of_its_stress() -> None:
    """1/0.8 = 1.25; the pad and its loads stay as they are."""
    design = designed(sample("mobile_library_van"))
    found = next(s for s in sensitivities(design) if s.check.code == "lip_shear")
    assert found.weaker_utilisation == pytest.approx(1.25 * found.check.utilisation, rel=1e-9)


def remedies_of(document: dict[str, Any]) -> list[tuple[str, Remedy, Design]]:
    design = designed(document)
    return [
        (check.code, remedy, design_pad(variant(design.measurements, remedy.changes)))
        for check in design.failures
        for remedy in remedies_for_check(design, check)
    ]


@pytest.mark.parametrize(
    "document",
    [
        sample("repair_cafe_people_carrier"),
        van(fixed__seat_diameter_mm=69.0),
        van(fixed__body_diameter_mm=75.0, car__gross_mass_kg=3000),
        van(fixed__slot_depth_mm=19.0),
        van(jack__rim_height_high_mm=320, fixed__web_mm=19.0),
    ],
    ids=["soft plastic", "seat too big", "body too small", "slot too deep", "web too low"],
)
def test_every_offered_change_was_tried_and_helps(document: dict[str, Any]) -> None:
    found = remedies_of(document)
    assert found
    for code, remedy, after in found:
        verdict = next(c.verdict for c in after.checks if c.code == code)
        assert verdict in {"pass", "advice", "not_applicable"}
        assert remedy.outcome == after.verdict_words


@settings(max_examples=25, deadline=None)
@given(ordinary_documents())
def test_no_change_ever_asks_for_less_load(document: dict[str, Any]) -> None:
    document["make"]["material"] = "uhmw_pe"
    try:
        found = remedies_of(document)
    except NoPadFitsError:
        return
    for _, remedy, _ in found:
        assert not {key for key in remedy.changes if key.startswith("car.") or key == "jack.rated_load_kg"}


def test_a_conflict_gets_changes_after_which_a_pad_fits() -> None:
    measurements = read_measurements(sample("rowing_club_trailer_car_no_pad"))
    found = remedies_for_conflict(measurements, conflict_of(measurements))
    assert {next(iter(r.changes)) for r in found} >= {"seam.edge_height_mm", "jack.rim_height_low_mm"}
    for remedy in found:
        assert design_pad(variant(measurements, remedy.changes)).pad


def test_a_fixed_value_that_leaves_no_room_may_be_let_go() -> None:
    measurements = read_measurements(van(fixed__seat_length_mm=80))
    found = remedies_for_conflict(measurements, conflict_of(measurements))
    assert {"fixed.seat_length_mm": None} in [r.changes for r in found]


def test_a_stated_load_below_the_cars_mass_is_warned_of() -> None:
    """0.60 · 1600 kg · g = 9.4 kN against 300 kg · g = 2.9 kN."""
    design = designed(van(car={"load_source": "stated", "load_kg": 300, "gross_mass_kg": 1600}))
    warning = next(c.text for c in design.cautions if "may put" in c.text)
    assert "2.9 kN" in warning
    assert "9.4 kN" in warning


@pytest.mark.parametrize(("load_kg", "is_warned"), [(959, True), (960, False), (1000, False)])
def test_a_stated_load_is_warned_of_up_to_what_the_cars_mass_brings(load_kg: float, is_warned: bool) -> None:
    """Oracle: 0.60 · 1600 kg = 960 kg."""
    design = designed(van(car={"load_source": "stated", "load_kg": load_kg, "gross_mass_kg": 1600}))
    assert any("may put" in c.text for c in design.cautions) == is_warned


def test_the_rim_must_rise_as_far_as_the_seam_less_what_the_pad_stands_out() -> None:
    """190 + 150 + 12 − 19.5 mm of web = 332.5 mm."""
    assert designed(van()).rim_height_needed_mm == pytest.approx(332.5)


def test_a_change_that_two_decimals_do_not_show_is_no_change() -> None:
    """Oracle: the printed figures before and after."""
    for name in ("lifeguard_station_pickup_round_plug", "puppet_theatre_van_plate_edge", "mobile_library_van"):
        for found in sensitivities(designed(sample(name))):
            told = re.search(r"changes ([\d.]+) to ([\d.]+)", found.words)
            assert told is None or told[1] != told[2]
            assert "inf" not in found.words.split()
