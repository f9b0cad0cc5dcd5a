"""The checks: values worked by hand, verdicts, and how they move with the load."""

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.checks import governing_first, judge
from geometry.conditions import conditions_of
from geometry.measurements import read_measurements
from geometry.pad import Pad
from geometry.rules import CHECK_RULES, Check
from tests.documents import ordinary_documents, van
from tests.geometry.sized import a_pad_for

PAD = Pad(
    seat_diameter_mm=67.2,
    seat_length_mm=13.0,
    seat_corner_radius_mm=5.0,
    stem_diameter_mm=0.0,
    stem_length_mm=0.0,
    body_diameter_mm=80.0,
    slot_width_mm=5.0,
    slot_depth_mm=16.5,
    web_mm=20.0,
    slot_corner_radius_mm=0.5,
    slot_mouth_chamfer_mm=1.0,
    edge_chamfer_mm=1.0,
)
"""A pad that no sizing chose: checks judge what they are given."""


def judged(pad: Pad = PAD, **changes: Any) -> dict[str, Check]:
    return {c.code: c for c in judge(conditions_of(read_measurements(van(**changes))), pad)}


def test_every_check_of_the_notes_is_there() -> None:
    of_a_slot_on_a_cup = {code for code, rule in CHECK_RULES.items() if rule.kind in {"", "cup", "slot"}}
    assert len(of_a_slot_on_a_cup) == 40
    assert set(judged()) == of_a_slot_on_a_cup


def test_slot_floor_bearing_by_hand() -> None:
    """F = 0.6·1600·9.80665 = 9414.4 N, F_d = 11297.3 N, t_b = 2.2, L = √(80² − 5²) − 2 = 77.84 mm, so p = 65.97 MPa."""
    check = judged()["slot_floor_bearing"]
    assert check.value == pytest.approx(65.97, abs=0.01)
    assert check.limit == pytest.approx(2.57 * 2 * 24.9 / 1.5, rel=1e-6)
    assert check.verdict == "pass"


@pytest.mark.parametrize(
    ("changes", "recess_mm", "depth_mm", "stress_mpa"),
    [
        ({"jack__stem_hole_diameter_mm": 20}, 0, 0, 6.697),
        ({"jack__floor_boss_diameter_mm": 18, "jack__floor_boss_height_mm": 5}, 22, 6, 15.03),
        ({"jack__stem_hole_diameter_mm": 20}, 22, 6, 15.03),
    ],
)
def test_the_web_over_the_wider_hollow_by_hand(
    changes: dict[str, Any], recess_mm: float, depth_mm: float, stress_mpa: float
) -> None:
    """P = 11297.3·D/77.84; 6·P·(1.4·ln 2 + 1 − 0.6/16)/(4π·t²), t = 20 mm over a hole of 20 mm, 14 mm over a recess of 22."""
    pad = PAD.with_(seat_recess_diameter_mm=recess_mm, seat_recess_depth_mm=depth_mm)
    assert judged(pad, **changes)["web_bending"].value == pytest.approx(stress_mpa, rel=3e-4)


def test_seam_buckling_by_hand() -> None:
    """b = 20 − 16.5 + 1 = 4.5 mm, t = 1.1 mm: π²·210000/(12·0.91)·(1.1/4.5)² = 11341 MPa, so yield 140 caps it."""
    check = judged()["seam_buckling"]
    assert check.finding is not None
    assert check.finding.also[0][1] == pytest.approx(11341, abs=1)
    assert check.limit == 140


def test_entry_height_by_hand() -> None:
    """190 − 105 + 12 − 0.1 − 4 − (36.5 + 0.2 + 0.2 + 0.2)·1.0028 = 55.70 mm, the last 0.2 for the floor's parallelism."""
    assert judged()["entry_height"].value == pytest.approx(55.70, abs=0.005)


def test_a_seat_too_big_for_the_cup_fails_in_words() -> None:
    check = judged(PAD.with_(seat_diameter_mm=68.0))["seat_fit_tight"]
    assert check.verdict == "fail"
    assert check.utilisation == math.inf
    assert "too big for the cup" in check.words


def test_while_the_yield_is_assumed_a_small_excess_is_advice() -> None:
    """p = 65.97 MPa: against a given yield of 60 MPa it fails; against an assumed 140 at 1.2 times it is advice."""
    assert judged(seam__yield_mpa=60)["seam_crush"].verdict == "fail"
    assert judged(car__gross_mass_kg=4200)["seam_crush"].verdict == "advice"
    assert judged(car__gross_mass_kg=6000)["seam_crush"].verdict == "fail"


def test_what_lacks_a_measurement_is_not_checked_and_names_it() -> None:
    checks = judged()
    for code, title in {
        "lift_height": "Rim height, jack up",
        "entry_height_flat": "tyre flat",
        "arm_clear": "Rim outside diameter",
        "saddle_pitch": "statics",
    }.items():
        assert checks[code].verdict == "not_checked"
        assert title in checks[code].words


def test_what_only_advises_is_this_and_nothing_else() -> None:
    """Oracle: a list apart from the rules; whatever joins it can no longer say that a pad is not to be made."""
    assert {code for code, rule in CHECK_RULES.items() if rule.is_advice} == {
        *("cup_floor_flat", "rim_thin", "arm_clear", "saddle_pitch", "entry_height_flat", "frost", "cutter_reach"),
        *("slot_floor_marking", "slot_slide", "slot_end_foul", "seam_lean"),
        *("cushion_marking", "cushion_slide", "face_lean", "plug_rim"),
    }


def test_a_seam_straight_for_less_than_the_pad_is_wide_is_to_be_looked_at() -> None:
    """Oracle: a pad 80 mm wide on a seam straight for 81 mm, and for a tenth less than its width."""
    whole, short = (judged(seam__straight_length_mm=straight)["slot_end_foul"] for straight in (81, 79.9))
    assert (whole.verdict, short.verdict) == ("pass", "advice")
    assert whole.words.startswith("The seam is straight for 81 mm: longer")
    assert short.words.startswith("The seam is straight for only 79.9 mm, and the pad is 80 mm wide")


def test_advice_never_fails() -> None:
    heavy = judged(car__gross_mass_kg=12000, service__ground="stuck", seam__straight_length_mm=30)
    assert all(c.verdict != "fail" for c in heavy.values() if c.rule.is_advice)
    assert (
        heavy["slot_floor_marking"].verdict == heavy["slot_slide"].verdict == heavy["slot_end_foul"].verdict == "advice"
    )


def test_a_stem_hole_that_swallows_the_seat_fails_in_words() -> None:
    check = judged(jack__stem_hole_diameter_mm=58)["cup_floor_bearing"]
    assert check.verdict == "fail"
    assert "Nothing is left" in check.words


def test_failures_come_first_and_then_what_uses_most() -> None:
    ordered = governing_first(tuple(judged(car__gross_mass_kg=6000).values()))
    verdicts = [c.verdict for c in ordered]
    assert verdicts[0] == "fail"
    assert verdicts == sorted(verdicts, key=lambda v: {"fail": 0, "pass": 1, "advice": 1, "not_checked": 2}.get(v, 3))


def test_dry_nylon_in_hard_frost_wants_rounded_corners() -> None:
    frosty: dict[str, Any] = {"service": {"temperature_low_c": -20, "wetness": "dry"}, "make": {"material": "pa66"}}
    assert judged(**frosty)["frost"].verdict == "pass"
    assert judged(PAD.with_(slot_corner_radius_mm=0.2), **frosty)["frost"].verdict == "advice"
    assert judged(service__temperature_low_c=-20)["frost"].verdict == "not_applicable"


def test_the_rise_at_which_the_seam_touches_both_walls_is_told() -> None:
    """Free lean 4.73° + 3° of saddle tilt = 7.73°; at 1/1400 rad per mm that is 189 mm."""
    assert "189 mm" in judged(PAD)["seam_lean"].words


@settings(max_examples=200, deadline=None)
@given(ordinary_documents(), st.floats(1.0, 3.0))
def test_more_load_never_lowers_a_utilisation_of_a_given_pad(document: dict[str, Any], factor: float) -> None:
    light = conditions_of(read_measurements(document))
    heavier = document | {"car": {"gross_mass_kg": document["car"]["gross_mass_kg"] * factor}}
    heavy = conditions_of(read_measurements(heavier))
    pad = a_pad_for(document).pad
    for before, after in zip(judge(light, pad), judge(heavy, pad), strict=True):
        assert after.utilisation >= before.utilisation - 1e-9, before.code


@settings(max_examples=200, deadline=None)
@given(ordinary_documents())
def test_every_check_speaks_in_whole_sentences(document: dict[str, Any]) -> None:
    conditions, pad = conditions_of(read_measurements(document)), a_pad_for(document).pad
    for check in judge(conditions, pad):
        assert check.words[0].isupper() or check.words[0].isdigit()
        assert check.words.endswith(".")
        assert "nan" not in check.words
