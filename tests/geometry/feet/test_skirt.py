"""Saddles and plates: every pad for them fits as promised, says so in words of its own jack, and is refused with a reason."""

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from geometry import formulas
from geometry.checks import judge
from geometry.conditions import conditions_of
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.measurements import read_measurements
from geometry.pad import Pad
from geometry.rules import Check
from tests.documents import designed, van
from tests.geometry.feet.post_documents import HEADS
from tests.geometry.feet.round_documents import SKIRTED, WAYS, documents, standing
from tests.geometry.sized import a_pad_for, sized_or_none

_SETTINGS = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
PROMISED = {"skirt_fit_tight", "skirt_fit_loose", "skirt_overlap", "skirt_clear", "skirt_root"} | {
    *("seat_fit_tight", "seat_fit_loose", "lip_gap", "corner_clear", "stem_clear"),
}
"""Checks that a sized pad passes, because its bounds ask for more."""


def judged(document: dict[str, Any], pad: Pad) -> dict[str, Check]:
    return {c.code: c for c in judge(conditions_of(read_measurements(document)), pad)}


@_SETTINGS
@given(documents(usual=False))
def test_any_saddle_or_plate_has_a_pad_or_a_reason(document: dict[str, Any]) -> None:
    made = sized_or_none(document)
    if made is not None:
        assert not [name for name, entry in made.ledger.items() if entry.broken]
        assert all(c.words for c in judged(document, made.pad).values())


@_SETTINGS
@given(documents(usual=True))
def test_the_fits_of_a_sized_pad_pass_their_checks(document: dict[str, Any]) -> None:
    made = a_pad_for(document)
    failed = {code for code, c in judged(document, made.pad).items() if c.verdict == "fail"}
    assert not failed & PROMISED
    assert not [name for name, entry in made.ledger.items() if entry.broken]


@_SETTINGS
@given(documents(usual=True))
def test_bounds_and_checks_compute_what_their_formulas_say(document: dict[str, Any]) -> None:
    """Oracle: the formula as printed, evaluated with its own numbers."""
    made = a_pad_for(document)
    for entry in made.ledger.values():
        for bound in entry.bounds:
            worked_out = formulas.evaluate(bound.rule.formula, bound.numbers)
            assert worked_out == pytest.approx(bound.value, rel=1e-9, abs=1e-9), bound.rule.formula
    for check in judged(document, made.pad).values():
        if check.finding:
            for text, value in zip(check.formulas, (check.finding.value, check.finding.limit), strict=True):
                assert formulas.evaluate(text, check.finding.numbers) == pytest.approx(value, rel=1e-9, abs=1e-9)


@_SETTINGS
@given(documents(usual=True))
def test_no_word_of_a_cup_reaches_a_saddle_or_a_plate(document: dict[str, Any]) -> None:
    made = a_pad_for(document)
    checks = judged(document, made.pad).values()
    bounds = [b for entry in made.ledger.values() for b in entry.bounds]
    told = [words for c in checks for words in (c.title, c.words)] + [b.reason for b in bounds]
    told += [note for entry in made.ledger.values() for note in entry.notes]
    assert not [words for words in told if "cup" in words.lower()]
    needs = [key for c in checks for key in c.needs] + [key for b in bounds for key in b.needs]
    asked = {key for key in needs if key.startswith("jack.")}
    known = {f"jack.{name}" for name in type(made.ledger["web_mm"].lower[0].draft.c.measurements.jack).model_fields}
    assert asked <= known


@_SETTINGS
@given(documents(usual=True), st.floats(1.0, 3.0))
def test_more_load_never_passes_what_failed(document: dict[str, Any], factor: float) -> None:
    """Of the foot; the pad stays the same."""
    made = a_pad_for(document)
    car = document["car"]
    heavier = {key: car[key] * factor for key in ("gross_mass_kg", "load_kg") if key in car}
    heavy = document | {"car": car | heavier}
    light = judged(document, made.pad)
    for code, after in judged(heavy, made.pad).items():
        if after.rule.kind in {"skirt", "saddle", "plate"}:
            assert after.utilisation >= light[code].utilisation - 1e-9, code


@_SETTINGS
@given(
    documents(usual=True, ways=SKIRTED),
    st.dictionaries(
        st.sampled_from(
            [
                *("seat_diameter_mm", "seat_length_mm", "seat_corner_radius_mm", "skirt_bore_mm", "skirt_length_mm"),
                *("stem_diameter_mm", "stem_length_mm", "body_diameter_mm", "web_mm"),
            ]
        ),
        st.floats(0, 160).map(lambda x: round(x, 1)),
        max_size=3,
    ),
)
def test_whatever_is_fixed_around_a_skirt_is_judged_or_refused_in_words(
    document: dict[str, Any], fixed: dict[str, float]
) -> None:
    made = sized_or_none(document | {"fixed": fixed})
    if made is not None:
        assert all(c.words for c in judged(document, made.pad).values())


@pytest.mark.parametrize("head", HEADS)
@pytest.mark.parametrize("way", WAYS)
def test_an_ordinary_saddle_or_plate_passes_with_every_head(way: str, head: str) -> None:
    kinds = {"", "cup", "saddle", "plate", "skirt"}
    checks = designed(standing(way, head)).checks
    assert not [c.code for c in checks if c.verdict == "fail" and c.rule.kind in kinds]


def test_a_skirt_around_an_ordinary_plate_by_hand() -> None:
    """Plate 90 ± 0.1, acetal cold −0.00345: (90.4)/(0.99655) + 0.3 = 91.01, up to 91.1; seat 90 − 0.1 − 4 − 0.3 = 85.6."""
    c = conditions_of(read_measurements(standing("edge")))
    pad = designed(standing("edge")).pad
    assert c.g_cold == pytest.approx(-0.0034, abs=1e-4)
    assert (pad.skirt_bore_mm, pad.seat_diameter_mm, pad.seat_length_mm) == (91.1, 85.6, 2.0)
    assert pad.skirt_length_mm == 10.0
    assert not pad.has_stem


def test_a_plate_whose_edge_is_hardly_free_has_a_shorter_skirt_and_at_last_no_pad() -> None:
    """Free 10: 2 + (10 − 0.1 − 2)/1.0028 − 0.2 − 0.1 = 9.58, down to 9.5. At 6 not even 4 of overlap are left."""
    assert designed(standing("edge", jack__free_edge_mm=10)).pad.skirt_length_mm == 9.5
    with pytest.raises(NoPadFitsError) as error:
        designed(standing("edge", jack__free_edge_mm=6))
    assert error.value.dimension == "skirt_length_mm"
    assert error.value.upper.field == "jack.free_edge_mm"


def test_on_teeth_the_skirt_ends_above_the_land() -> None:
    """Teeth 9 high: 2 + (9 − 0.1 − 2)/1.0028 − 0.2 − 0.1 = 8.58, down to 8.5; the height of the teeth is named."""
    design = designed(standing("teeth", jack__tooth_height_mm=9))
    assert design.pad.skirt_length_mm == 8.5
    deciding = design.ledger["skirt_length_mm"].deciding
    assert deciding is not None
    assert deciding.needs[0] == "jack.tooth_height_mm"


def test_a_stuck_jack_asks_for_a_thicker_skirt() -> None:
    rolls, stuck = (designed(standing("edge", "cushion", service__ground=g)).pad for g in ("rolls", "stuck"))
    walls = [(pad.body_diameter_mm - pad.skirt_bore_mm) / 2 for pad in (rolls, stuck)]
    assert walls[1] > walls[0] + 2


def test_flats_leave_the_skirt_its_wall() -> None:
    design = designed(standing("edge", make__body="two_flats"))
    assert design.pad.flats_width_mm > design.pad.skirt_bore_mm + 12
    assert next(c for c in design.checks if c.code == "skirt_root").verdict == "pass"


def test_narrow_tips_fail_as_they_would_cut_in() -> None:
    """Six tips 10 long of which 2.3 mm lie under the flat: 11 297 N / (6·10·2.3) = 82 MPa on acetal's 25."""
    checks = {c.code: c for c in designed(standing("teeth", jack__tip_length_mm=10, jack__tip_width_mm=5)).checks}
    assert checks["tip_bearing"].verdict == "fail"
    assert (checks["tip_bearing"].value or 0) > 82
    assert checks["cup_floor_bearing"].verdict == "not_applicable"


def test_tips_too_narrow_for_any_seat_to_reach_have_no_pad() -> None:
    with pytest.raises(NoPadFitsError) as error:
        designed(standing("teeth", jack__tip_width_mm=3))
    assert error.value.dimension == "seat_diameter_mm"
    assert error.value.lower.field == "jack.tip_width_mm"


def test_tips_that_do_not_go_around_the_saddle_are_refused() -> None:
    """Circumference over 100 mm: 314 mm; 6 tips of 60 mm are 360. From 76 to 100 there are 12 mm of tooth."""
    for name, value in (("tip_length_mm", 60), ("tip_width_mm", 14)):
        document = standing("teeth")
        document["jack"][name] = value
        with pytest.raises(BadMeasurementsError) as error:
            read_measurements(document)
        assert [p.field for p in error.value.problems] == [f"jack.{name}"]


def test_a_skirt_made_too_long_too_narrow_or_not_at_all_fails_in_words() -> None:
    document = standing("edge", jack__free_edge_mm=12)
    pad = designed(document).pad
    assert "too long" in judged(document, pad.with_(skirt_length_mm=16.0))["skirt_clear"].words
    assert "too narrow" in judged(document, pad.with_(skirt_bore_mm=89.0))["skirt_fit_tight"].words
    none = judged(document, pad.with_(skirt_bore_mm=0.0, skirt_length_mm=0.0))
    assert {none[code].verdict for code in ("skirt_overlap", "skirt_root", "skirt_fit_tight")} == {"fail"}


def test_the_words_of_a_skirts_fit_say_on_which_side_of_nothing_it_is() -> None:
    """Oracle: the play itself, and its sign."""
    document = standing("edge")
    pad = designed(document).pad
    for bore in (pad.skirt_bore_mm, pad.skirt_bore_mm - 2.0):
        found = judged(document, pad.with_(skirt_bore_mm=bore))["skirt_fit_tight"]
        assert (
            f"leaves {found.value:.2f} mm" in found.words
            or f"is {-(found.value or 0):.2f} mm too narrow" in found.words
        )


def test_teeth_and_skirts_are_told_of_before_the_lift() -> None:
    said = {way: " ".join(c.text for c in designed(standing(way)).cautions) for way in WAYS}
    assert "The teeth mark the pad." in said["teeth"]
    assert "between the teeth until it stands on the land" in said["land"]
    assert {way for way in WAYS if "The skirt only keeps the pad in the middle." in said[way]} == set(SKIRTED)


@pytest.mark.parametrize("way", SKIRTED)
def test_a_hole_under_a_skirt_is_not_said_to_want_a_stem(way: str) -> None:
    document = standing(way)
    if way == "edge":
        document["jack"]["plate_hole_diameter_mm"] = 6
    design = designed(document)
    assert "stem" not in " ".join(c.text for c in design.cautions)
    assert design.ledger["stem_diameter_mm"].notes == ("None: the skirt keeps the pad in its place.",)
    assert design.ledger["stem_length_mm"].notes == ("None, as there is no stem.",)


def test_a_skirt_on_a_cup_and_a_stem_beside_a_skirt_are_refused() -> None:
    with pytest.raises(BadMeasurementsError, match="has no skirt bore"):
        designed(van(fixed__skirt_bore_mm=80, fixed__skirt_length_mm=12))
    with pytest.raises(BadMeasurementsError, match="has no stem diameter"):
        designed(standing("edge", fixed__stem_diameter_mm=12))


@pytest.mark.parametrize("way", WAYS)
def test_the_rim_of_a_hole_in_the_car_is_never_called_part_of_the_jack(way: str) -> None:
    told = [words for c in designed(standing(way, "plug")).checks for words in (c.title, c.words)]
    assert "friction under the rim left out" in " ".join(told)
    assert not [
        words for words in told if "tips carries" in words or "top carries" in words or "recess carries" in words
    ]
