"""The ledger chooses every size inside its own bounds, or names the two bounds that leave no room."""

from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.checks import judge
from geometry.conditions import conditions_of
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.measurements import read_measurements
from geometry.pad import DIMENSIONS
from geometry.rules import CHECK_RULES
from geometry.sizing import size
from tests.documents import documents, ordinary_documents, roomy_documents, sample, van
from tests.examples import examples
from tests.geometry.sized import a_pad_for, sized

SETTINGS = examples(100, many=3000)
PROMISED = {
    "seat_fit_tight",
    "seat_fit_loose",
    "slot_fit_tight",
    "slot_fit_loose",
    "stem_clear",
    "lip_gap",
    "corner_clear",
    "rim_clear",
    "entry_height",
    "lift_height",
    "stock",
    "cutter",
}
"""The geometric checks that the ledger's bounds promise to pass, whatever the load."""


@SETTINGS
@given(documents())
def test_every_valid_document_gives_a_pad_inside_its_ledger_or_names_a_conflict(document: dict[str, Any]) -> None:
    conditions = conditions_of(read_measurements(document))
    try:
        made = size(conditions)
    except NoPadFitsError as conflict:
        assert conflict.dimension in DIMENSIONS
        assert conflict.lower.field.partition(".")[0] in {"jack", "seam", "car", "service", "make"}
        assert f"{conflict.upper.value_mm:.2f}" in conflict.words
        return
    for entry in made.ledger.values():
        assert not entry.broken, (entry.dimension, entry.value_mm, [(b.value, b.reason) for b in entry.broken])


@SETTINGS
@given(roomy_documents())
def test_the_geometric_checks_of_a_sized_pad_pass(document: dict[str, Any]) -> None:
    conditions, made = conditions_of(read_measurements(document)), a_pad_for(document)
    failed = {c.code for c in judge(conditions, made.pad) if c.verdict == "fail"}
    assert not failed & PROMISED


@SETTINGS
@given(roomy_documents())
def test_walls_touch_the_sill_only_where_the_floor_is_overloaded_or_very_soft(document: dict[str, Any]) -> None:
    """The depth's bound leaves 3 mm and the check asks for 2: only an indentation beyond 1 mm can use that up."""
    conditions = conditions_of(read_measurements(document))
    made = a_pad_for(document)
    check = next(c for c in judge(conditions, made.pad) if c.code == "sill_clear")
    if check.verdict == "fail":
        assert check.finding is not None
        assert check.finding.numbers["delta"] > 0.99


@examples(60, many=1500)
@given(ordinary_documents(), st.floats(0.1, 3))
def test_a_thicker_seam_never_narrows_the_slot(document: dict[str, Any], more: float) -> None:
    thicker = document | {"seam": document["seam"] | {"thickness_mm": document["seam"]["thickness_mm"] + more}}
    before, after = a_pad_for(document), a_pad_for(thicker)
    assert after.pad.slot_width_mm >= before.pad.slot_width_mm


@examples(60, many=1500)
@given(ordinary_documents(), st.floats(1.05, 2))
def test_a_heavier_car_never_gets_a_smaller_body(document: dict[str, Any], factor: float) -> None:
    heavier = document | {"car": {"gross_mass_kg": document["car"]["gross_mass_kg"] * factor}}
    before, after = a_pad_for(document), a_pad_for(heavier)
    assert after.pad.body_diameter_mm >= before.pad.body_diameter_mm


@examples(60, many=1500)
@given(ordinary_documents(), st.floats(0, 30), st.floats(0, 40))
def test_a_wider_temperature_range_never_increases_the_seat(
    document: dict[str, Any], colder: float, hotter: float
) -> None:
    wider = document | {"service": {"temperature_low_c": -10 - colder, "temperature_high_c": 40 + hotter}}
    before, after = a_pad_for(document), a_pad_for(wider)
    assert after.pad.seat_diameter_mm <= before.pad.seat_diameter_mm


@examples(60, many=1500)
@given(ordinary_documents(), st.sampled_from(DIMENSIONS))
def test_fixing_a_dimension_where_the_ledger_put_it_changes_nothing(document: dict[str, Any], dimension: str) -> None:
    before = a_pad_for(document)
    value = getattr(before.pad, dimension)
    assume(value > 0)
    conditions = conditions_of(read_measurements(document | {"fixed": {dimension: value}}))
    after = size(conditions)
    assert after.pad == before.pad
    assert [c.verdict for c in judge(conditions, after.pad)] == [
        c.verdict for c in judge(conditions_of(read_measurements(document)), before.pad)
    ]


def test_a_fixed_value_outside_its_interval_is_kept_reported_and_judged() -> None:
    made = sized(van(fixed__seat_diameter_mm=69.0))
    entry = made.ledger["seat_diameter_mm"]
    assert made.pad.seat_diameter_mm == 69.0
    assert [b.rule.side for b in entry.broken] == ["upper"]
    checks = judge(conditions_of(read_measurements(van(fixed__seat_diameter_mm=69.0))), made.pad)
    assert "seat_fit_tight" in {c.code for c in checks if c.verdict == "fail"}


@pytest.mark.parametrize(("fixed_mm", "says_so"), [(16.0, False), (10.0, True)])
def test_a_fixed_slot_is_opened_in_passes_only_where_no_cutter_is_as_wide(fixed_mm: float, says_so: bool) -> None:
    """Oracle: the cutters to hand, 5 and 16 mm; left free, the slot of this seam would be between them."""
    job = van(seam__thickness_mm=7.6, make__cutter_diameters_mm=[5, 16], fixed__slot_width_mm=fixed_mm)
    notes = sized(job).ledger["slot_width_mm"].notes
    assert any("side passes" in note for note in notes) == says_so


def test_the_seat_of_a_68_mm_cup_is_67_2_mm() -> None:
    """By hand: (68 − 0.1)/(1 + 115e-6·20 + 0.0025·0.2) − 0.20 − 0.3 = 67.21, down to 67.2."""
    assert sized(van()).pad.seat_diameter_mm == 67.2


def test_a_low_car_on_a_tall_jack_has_no_pad_and_both_bounds_are_named() -> None:
    with pytest.raises(NoPadFitsError) as caught:
        sized(sample("rowing_club_trailer_car_no_pad"))
    assert caught.value.dimension == "web_mm"
    assert caught.value.upper.field == "seam.edge_height_mm"
    assert caught.value.lower.value_mm > caught.value.upper.value_mm
    assert caught.value.so_far["seat_diameter_mm"] > 60


def test_a_slot_is_made_shallower_where_that_lets_the_jack_roll_in() -> None:
    """137 − 105 + 12 − 0.1 − 4 − 5 = 34.9 mm, less 0.6 of tolerances, are less than a web of 19.13 mm and a slot of 16."""
    made = sized(van(seam__edge_height_mm=137))
    assert made.pad.slot_depth_mm < 16
    assert any("Lowered from 16 " in note for note in made.ledger["slot_depth_mm"].notes)


def test_a_slot_is_made_no_shallower_than_one_that_guides() -> None:
    """Oracle: 1 mm of wall below a mouth chamfer of 1 mm; the car half a millimetre lower has no pad, and the web says so."""
    assert sized(van(seam__edge_height_mm=124.5)).pad.slot_depth_mm == 2.0
    with pytest.raises(NoPadFitsError) as caught:
        sized(van(seam__edge_height_mm=124))
    assert caught.value.dimension == "web_mm"


def test_a_hole_too_small_for_a_stem_gives_none_and_says_so() -> None:
    made = sized(van(jack__stem_hole_diameter_mm=8))
    assert made.pad.stem_length_mm == 0
    assert "No stem" in made.ledger["stem_diameter_mm"].notes[0]


@pytest.mark.parametrize(
    "fixed", [{"stem_diameter_mm": 0}, {"stem_length_mm": 0}, {"seat_diameter_mm": 60, "stem_length_mm": 0}]
)
def test_a_stem_of_nothing_is_no_stem(fixed: dict[str, float]) -> None:
    for hole in ({}, {"jack__stem_hole_diameter_mm": 30}):
        assert not sized(van(fixed=fixed, **hole)).pad.has_stem


def test_a_stem_without_a_hole_is_kept_and_fails() -> None:
    document = van(fixed={"stem_diameter_mm": 12})
    pad = sized(document).pad
    assert (pad.stem_diameter_mm, pad.stem_length_mm) == (12, 5)
    checks = judge(conditions_of(read_measurements(document)), pad)
    assert "stem_clear" in {c.code for c in checks if c.verdict == "fail"}


@SETTINGS
@given(
    roomy_documents(),
    st.dictionaries(st.sampled_from(DIMENSIONS), st.floats(3, 110).map(lambda x: round(x, 1)), max_size=4),
)
def test_whatever_is_fixed_gives_a_pad_a_conflict_or_a_refusal_in_words(
    document: dict[str, Any], fixed: dict[str, float]
) -> None:
    fixed = {name: min(value, 9.0) if "chamfer" in name or "corner" in name else value for name, value in fixed.items()}
    try:
        conditions = conditions_of(read_measurements(document | {"fixed": fixed}))
        made = size(conditions)
    except (NoPadFitsError, BadMeasurementsError) as error:
        assert len(str(error)) > 20
        return
    assert {name: getattr(made.pad, name) for name in fixed} == fixed
    assert len(judge(conditions, made.pad)) == sum(rule.applies(conditions.rooms) for rule in CHECK_RULES.values())


def test_an_inch_shop_gets_inch_sizes() -> None:
    """0.005 in steps on the seat, 0.025 on lengths, 1/32 on the body; 25.4 mm to the inch."""
    pad = sized(van(make__step="inch")).pad
    for value, step in ((pad.seat_diameter_mm, 0.005), (pad.web_mm, 0.025), (pad.body_diameter_mm, 1 / 32)):
        assert value / 25.4 / step == pytest.approx(round(value / 25.4 / step), abs=1e-6)


def test_the_ordinary_three_inch_nylon_pad_comes_out_as_the_trade_makes_it() -> None:
    """Common practice, no source: on 3 in bar, a 3/8 in slot, about 1.5 in tall is ordinary."""
    pad = sized(
        van(
            seam__thickness_mm=6.5,
            car={"load_source": "stated", "load_kg": 500},
            make__material="pa66",
            make__stock_diameters_mm=[76.2],
            make__cutter_diameters_mm=[9.525],
            jack__cup_bore_mm=63,
        )
    ).pad
    assert pad.body_diameter_mm <= 74.2
    assert pad.slot_width_mm == 9.525
    assert 25 <= pad.top_height_mm <= 45
