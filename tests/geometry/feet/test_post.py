"""A post: its seat on the bore's rim, its stem in the bore, over the whole domain and by hand."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry import formulas
from geometry.checks import judge
from geometry.conditions import conditions_of
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.feet.post.strength import stem_stress_mpa
from geometry.measurements import read_measurements
from geometry.pad import DIMENSIONS, Pad
from geometry.sizing import size
from tests.documents import designed
from tests.examples import examples
from tests.geometry.feet.post_documents import HEADS, post_documents, posted, roomy_post_documents
from tests.geometry.sized import a_pad_for, judged

_SETTINGS = examples(60, many=2000)
PROMISED = {"post_fit_tight", "post_fit_loose", "post_bottom", "post_guided", "stock", "entry_height"} | {
    *("pin_meets", "pin_free", "pin_tear_out"),
}
"""What the bounds promise to pass, whatever the load."""


@_SETTINGS
@given(post_documents())
def test_every_document_gives_a_pad_inside_its_ledger_or_names_a_conflict(document: dict[str, Any]) -> None:
    conditions = conditions_of(read_measurements(document))
    try:
        made = size(conditions)
    except NoPadFitsError as conflict:
        assert conflict.dimension in DIMENSIONS
        assert conflict.lower.field.partition(".")[0] in {"jack", "seam", "rail", "pocket", "car", "service", "make"}
        return
    for entry in made.ledger.values():
        assert not entry.broken, (entry.dimension, entry.value_mm, [(b.value, b.reason) for b in entry.broken])
    for check in judge(conditions, made.pad):
        assert check.words.endswith(".")
        assert "nan" not in check.words


@_SETTINGS
@given(roomy_post_documents())
def test_the_fits_of_a_sized_pad_pass_their_checks(document: dict[str, Any]) -> None:
    made = a_pad_for(document)
    failed = {c.code for c in judge(conditions_of(read_measurements(document)), made.pad) if c.verdict == "fail"}
    assert not failed & PROMISED


@_SETTINGS
@given(roomy_post_documents())
def test_bounds_and_checks_compute_what_their_formulas_say(document: dict[str, Any]) -> None:
    """Oracle: the formula as printed, evaluated with its own numbers."""
    made = a_pad_for(document)
    for entry in made.ledger.values():
        for bound in entry.bounds:
            assert formulas.evaluate(bound.rule.formula, bound.numbers) == pytest.approx(
                bound.value, rel=1e-9, abs=1e-9
            )
    for check in judge(conditions_of(read_measurements(document)), made.pad):
        if check.finding:
            for text, value in zip(check.formulas, (check.finding.value, check.finding.limit), strict=True):
                assert formulas.evaluate(text, check.finding.numbers) == pytest.approx(value, rel=1e-9, abs=1e-9)


@_SETTINGS
@given(roomy_post_documents())
def test_no_word_of_a_cup_reaches_a_post(document: dict[str, Any]) -> None:
    made = a_pad_for(document)
    checks = judge(conditions_of(read_measurements(document)), made.pad)
    told = [c.title for c in checks] + [c.words for c in checks]
    told += [b.reason for e in made.ledger.values() for b in e.bounds] + [
        n for e in made.ledger.values() for n in e.notes
    ]
    assert not [words for words in told if "cup" in words or "stem hole" in words or "saddle" in words.lower()]


@_SETTINGS
@given(roomy_post_documents(), st.floats(1.0, 3.0))
def test_more_load_never_passes_what_failed(document: dict[str, Any], factor: float) -> None:
    """Of the foot and of the whole; a head may lean the further the deeper its face is pressed."""
    made = a_pad_for(document)
    car = document["car"] | {"gross_mass_kg": document["car"]["gross_mass_kg"] * factor}
    light, heavy = (conditions_of(read_measurements(d)) for d in (document, document | {"car": car}))
    for before, after in zip(judge(light, made.pad), judge(heavy, made.pad), strict=True):
        if before.rule.kind in {"", "post"}:
            assert after.utilisation >= before.utilisation - 1e-9, before.code


@_SETTINGS
@given(
    roomy_post_documents(),
    st.dictionaries(st.sampled_from(DIMENSIONS[:10]), st.floats(0, 60).map(lambda x: round(x, 1)), max_size=4),
)
def test_whatever_is_fixed_at_the_foot_is_judged_or_refused_in_words(
    document: dict[str, Any], fixed: dict[str, float]
) -> None:
    try:
        conditions = conditions_of(read_measurements(document | {"fixed": fixed}))
        made = size(conditions)
    except (NoPadFitsError, BadMeasurementsError) as error:
        assert len(str(error)) > 20
        return
    assert all(c.words for c in judge(conditions, made.pad))


def test_the_stem_of_an_ordinary_bore_by_hand() -> None:
    """Acetal: (35 − 0.1)/1.0028 − 0.20 − 0.3 = 34.30, in steps of 0.1; the seat 62 + 0.1 + 3 = 65.1."""
    pad = designed(posted()).pad
    assert pad.stem_diameter_mm == 34.3
    assert pad.seat_diameter_mm == 65.1
    assert pad.seat_length_mm == 1.5


@pytest.mark.parametrize("head", HEADS)
def test_an_ordinary_post_passes_with_every_head(head: str) -> None:
    failed = [c.code for c in designed(posted(head)).checks if c.verdict == "fail" and c.rule.kind in {"", "post"}]
    assert not failed


def test_a_shallow_bore_that_guides_too_little_has_no_pad() -> None:
    with pytest.raises(NoPadFitsError) as error:
        designed(posted(pinned=False, jack__post_bore_depth_mm=12))
    assert error.value.dimension == "stem_length_mm"
    assert "askew" in error.value.words


def test_a_stem_without_a_pin_is_one_and_a_half_times_as_long_as_thick() -> None:
    """Common practice: a spigot is engaged over one to one and a half diameters; 1.5 · 34.3 = 51.45, down to 51."""
    assert designed(posted(pinned=False)).pad.stem_length_mm == 51.0


def test_a_stem_that_the_side_load_would_bend_is_shorter() -> None:
    stuck = designed(posted(pinned=False, service__ground="stuck", jack__post_bore_mm=26)).pad
    assert stuck.stem_length_mm < 1.5 * stuck.stem_diameter_mm - 1
    assert (
        judged(posted(pinned=False, service__ground="stuck", jack__post_bore_mm=26))["post_side_load"].verdict == "pass"
    )


def test_the_side_load_on_a_stem_by_hand() -> None:
    """1500 N, arm 20 mm, W = π 30³/32 = 2650.7 mm³: 11.32 MPa; shear 2.122 MPa; √(11.32² + 3 · 2.122²) = 11.90."""
    assert stem_stress_mpa(force_n=1500, stem_mm=30, length_mm=30) == pytest.approx(11.90, abs=0.01)
    assert stem_stress_mpa(force_n=1500, stem_mm=0, length_mm=30) == math.inf


def test_a_stem_too_thick_or_too_long_fails_in_words() -> None:
    checks = judged(posted(), stem_diameter_mm=35.0, stem_length_mm=80.0)
    assert checks["post_fit_tight"].verdict == "fail"
    assert "too thick" in checks["post_fit_tight"].words
    assert checks["post_bottom"].verdict == "fail"
    assert "stand on the bottom" in checks["post_bottom"].words


def test_a_pad_that_lost_its_stem_fails() -> None:
    checks = judged(posted(pinned=False), stem_diameter_mm=0.0, stem_length_mm=0.0)
    assert {checks[code].verdict for code in ("post_guided", "post_side_load", "post_bearing", "post_fit_loose")} == {
        "fail"
    }


def test_a_thin_rim_is_advised_against_and_a_thinner_one_carries_nothing() -> None:
    thin = judged(posted(pinned=False, jack__bore_rim_diameter_mm=40), web_mm=20.0)
    assert thin["rim_thin"].verdict == "advice"
    assert "cuts into the seat" in thin["rim_thin"].words
    assert judged(posted(), seat_diameter_mm=38.0)["rim_face"].verdict == "fail"


def test_the_rim_and_not_a_wider_seat_limits_how_tall_a_pad_may_be() -> None:
    entry = designed(posted()).ledger["web_mm"]
    above = designed(posted()).pad.slot_depth_mm
    limit = next(b for b in entry.upper if b.rule.kind == "post")
    assert limit.value == 62 - above


@given(st.floats(5, 100), st.floats(5, 100), st.floats(100, 20_000))
def test_a_longer_or_thinner_stem_is_never_stressed_less(stem: float, length: float, force: float) -> None:
    base = stem_stress_mpa(force_n=force, stem_mm=stem, length_mm=length)
    assert stem_stress_mpa(force_n=force, stem_mm=stem, length_mm=1.1 * length) >= base
    assert stem_stress_mpa(force_n=force, stem_mm=0.9 * stem, length_mm=length) >= base


def test_a_pad_from_nowhere_is_judged_and_never_raises() -> None:
    """Checks serve pads that no sizing chose."""
    odd = Pad(
        seat_diameter_mm=36.0,
        seat_length_mm=2.0,
        seat_corner_radius_mm=0.5,
        stem_diameter_mm=10.0,
        stem_length_mm=3.0,
        cross_hole_diameter_mm=12.0,
        cross_hole_distance_mm=9.0,
        body_diameter_mm=60.0,
        web_mm=12.0,
        edge_chamfer_mm=1.0,
    )
    conditions = conditions_of(read_measurements(posted("cushion")))
    checks = {c.code: c for c in judge(conditions, odd)}
    assert checks["pin_tear_out"].verdict == checks["stem_net_section"].verdict == "fail"
