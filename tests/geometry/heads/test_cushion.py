"""The flat cushion: worked by hand, over its whole domain on every foot, and how it moves with load and face."""

import math
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from geometry.buildable import require_buildable
from geometry.comparison import compare_materials
from geometry.design import Design
from geometry.elastomer import shape_factor, stiffening
from geometry.errors import BadMeasurementsError
from geometry.formulas import evaluate
from geometry.materials import MATERIALS
from geometry.measurements import read_measurements
from tests.documents import designed
from tests.geometry.heads.documents import F_D, check, designed_or_none, designs_of, documents_of, on_a_rail

_SETTINGS = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))


@_SETTINGS
@given(documents_of("cushion"))
def test_any_document_gives_a_pad_or_says_why_not(document: dict[str, Any]) -> None:
    """Every must is respected, the pad is one body, nothing of a slot or a plug is on it, and every check answers."""
    design = designed_or_none(document)
    if design is None:
        return
    require_buildable(design.pad)
    assert not design.pad.has_slot
    assert not design.pad.has_plug
    assert not [bound for entry in design.ledger.values() for bound in entry.broken]
    assert all(c.words for c in design.checks)
    assert {c.rule.kind for c in design.checks} >= {"cushion", "face"}


@_SETTINGS
@given(designs_of("cushion"))
def test_every_formula_as_printed_gives_what_the_check_and_the_bound_say(design: Design) -> None:
    for c in design.checks:
        if c.finding and c.rule.kind in {"cushion", "face"}:
            value, limit = (evaluate(text, c.finding.numbers) for text in c.formulas)
            assert value == pytest.approx(c.finding.value, rel=1e-6, abs=1e-6), c.code
            assert limit == pytest.approx(c.finding.limit, rel=1e-6, abs=1e-6), c.code
    for bound in (b for entry in design.ledger.values() for b in entry.bounds if b.rule.kind in {"cushion", "face"}):
        assert evaluate(bound.rule.formula, bound.numbers) == pytest.approx(bound.value, rel=1e-6), bound.reason


@_SETTINGS
@given(designs_of("cushion"))
def test_the_bounds_on_the_lip_are_those_that_its_checks_judge_by(design: Design) -> None:
    """Oracle: a web sized for shear and bending of the lip, and for the rim beside it, fails none of them."""
    assert check(design, "face_rim_clear").verdict != "fail"
    assert check(design, "face_lip_shear").verdict != "fail"
    assert check(design, "face_lip_bending").verdict != "fail"


@_SETTINGS
@given(st.sampled_from(["pom_c", "pa66", "pur_95", "hdpe"]), st.integers(900, 2200), st.floats(1.05, 1.5))
def test_more_load_never_passes_what_failed(material: str, mass: int, more: float) -> None:
    """Oracle: pressure and strain are proportional to the load on a pad of the same size."""
    sizes = {"web_mm": 24, "body_diameter_mm": 92}
    light, heavy = (
        designed(on_a_rail(car__gross_mass_kg=m, make__material=material, fixed=sizes)) for m in (mass, mass * more)
    )
    for code in ("cushion_bearing", "cushion_strain", "face_lip_bending", "face_lip_shear"):
        before, after = check(light, code), check(heavy, code)
        assert after.utilisation >= before.utilisation - 1e-9, code
        assert not (before.verdict == "fail" and after.verdict == "pass"), code


def test_the_pressure_on_a_wide_face_is_load_over_disc() -> None:
    """Oracle: by hand, the top of a 92 mm body with 1 mm chamfers is 90 mm across."""
    design = designed(on_a_rail(rail__face_width_mm=150, fixed={"body_diameter_mm": 92}))
    found = check(design, "cushion_bearing")
    assert found.value == pytest.approx(F_D / (math.pi / 4 * 90**2), rel=1e-9)
    assert check(design, "cushion_marking").verdict == "not_applicable"
    assert check(design, "cushion_clear").verdict == "not_applicable"


def aim_mm(material: str, *, mass_kg: float = 1600, **rail: float) -> float:
    """The body that the top's aim at its pressure asks for."""
    changes = {"rail__face_width_mm": 150.0} | {f"rail__{name}": value for name, value in rail.items()}
    design = designed(on_a_rail(make__material=material, car__gross_mass_kg=mass_kg, fixed={"web_mm": 24.0}, **changes))
    return next(b.value for b in design.ledger["body_diameter_mm"].lower if "not to press too hard" in b.reason)


@pytest.mark.parametrize(("material", "allowable"), [("pom_c", 30 * 0.83), ("hdpe", 9 * 0.779)])
def test_the_top_is_wide_enough_for_four_fifths_of_the_strength(material: str, allowable: float) -> None:
    """Oracle: by hand, a disc of π D²/4 under F_d, and its two broken edges of 1 mm; strengths softened by 17 K."""
    wanted = math.sqrt(4 * F_D / (math.pi * 0.8 * allowable)) + 2
    assert aim_mm(material) == pytest.approx(wanted, rel=1e-6)


def test_a_top_of_polyurethane_is_wide_enough_with_what_its_shape_gives() -> None:
    """Oracle: scipy's root of F_d/(π D²/4) = 0.8 · 4 · 0.83 (1 + 2S²), S = D/(4 · 24)."""

    def spare(d: float) -> float:
        return F_D / (math.pi / 4 * d**2) - 0.8 * 4 * 0.83 * (1 + 2 * (d / (4 * 24)) ** 2)

    assert aim_mm("pur_95") == pytest.approx(brentq(spare, 10, 90) + 2, rel=1e-6)


def test_no_top_is_asked_to_be_wider_than_the_cars_face_reaches() -> None:
    """Oracle: by hand, the diagonal of a face of 30 by 40 mm under a car that no top would do for, and 2 mm of edges."""
    assert aim_mm("hdpe", mass_kg=6000, face_width_mm=30, face_length_mm=40) == pytest.approx(52, rel=1e-6)


def test_flats_take_off_what_the_face_stands_on() -> None:
    """Oracle: a disc of 90 mm between two lines 76 mm apart, by its segments: R² acos(x/R) − x √(R² − x²) each."""
    sizes = {"body_diameter_mm": 92.0, "flats_width_mm": 78.0}
    document = on_a_rail(rail__face_width_mm=150, jack__cup_bore_mm=70, make={"body": "two_flats"}, fixed=sizes)
    segment = 45**2 * math.acos(38 / 45) - 38 * math.sqrt(45**2 - 38**2)
    area = math.pi * 45**2 - 2 * segment
    assert check(designed(document), "cushion_bearing").value == pytest.approx(F_D / area, rel=1e-9)


def test_the_words_tell_the_area_in_square_centimetres() -> None:
    """Oracle: by hand, a disc of 90 mm is 6362 mm²."""
    design = designed(on_a_rail(rail__face_width_mm=150, fixed={"body_diameter_mm": 92}))
    assert " on 64 cm² of the cushion;" in check(design, "cushion_bearing").words


def test_polyurethane_is_judged_by_its_strain() -> None:
    """Oracle: Gent & Lindley's E₀(1 + 2S²) by hand: E₀ = 40·(1 − 0.01·17) MPa at 40 °C, D = 90 mm, h = 24 mm."""
    document = on_a_rail(
        rail__face_width_mm=150, make__material="pur_95", fixed={"body_diameter_mm": 92, "web_mm": 24.0}
    )
    found = check(designed(document), "cushion_strain")
    shape = 90 / (4 * 24)
    modulus = 40 * (1 - 0.01 * (40 - 23)) * (1 + 2 * shape**2)
    assert found.value == pytest.approx(100 * F_D / (math.pi / 4 * 90**2) / modulus, rel=1e-9)
    assert found.limit == pytest.approx(10)
    assert check(designed(document), "cushion_bearing").verdict == "not_applicable"


def test_the_seat_of_polyurethane_is_as_stiff_as_its_shape_makes_it() -> None:
    """Oracle: by hand, σ(1 + 2S²) with 4·(1 − 0.01·17) MPa and S = (seat flat)/(4·24); the edge may take 1.5 times that."""
    design = designed(on_a_rail(make__material="pur_95", fixed={"web_mm": 24.0}))
    found = check(design, "cup_floor_bearing")
    shape = design.pad.seat_flat_diameter_mm / (4 * 24)
    plain = 4 * (1 - 0.01 * 17) * (1 + 2 * shape**2)
    assert found.limit in [pytest.approx(plain), pytest.approx(1.5 * plain)]
    assert found.finding is not None
    assert evaluate(found.formulas[1], found.finding.numbers) == pytest.approx(found.limit)


def test_a_disc_as_high_as_a_quarter_of_its_width_is_three_times_as_stiff_as_a_column() -> None:
    """Oracle: 1 + 2S² of Gent & Lindley at S = 1."""
    assert stiffening(shape_factor(loaded_width_mm=80, height_mm=20)) == pytest.approx(3)


@given(st.floats(10, 200), st.floats(10, 200), st.floats(5, 60))
def test_the_shape_factor_never_makes_a_rectangle_stiffer_than_it_is(
    width: float, length: float, height: float
) -> None:
    """Oracle: the definition, loaded area over free surface, of a rectangle: wl/(2h(w + l))."""
    true = width * length / (2 * height * (width + length))
    assert shape_factor(loaded_width_mm=min(width, length), height_mm=height) <= true + 1e-12


@pytest.mark.parametrize("key", ["rubber_60", "rubber_70"])
def test_rubber_that_cannot_be_turned_is_refused_with_its_reason(key: str) -> None:
    with pytest.raises(BadMeasurementsError, match="too soft to be turned"):
        read_measurements(on_a_rail(make__material=key))


def test_the_comparison_offers_polyurethane_for_a_cushion() -> None:
    rows = {row.material.key: row for row in compare_materials(read_measurements(on_a_rail()))}
    assert set(rows) == set(MATERIALS)
    assert rows["pur_95"].outcome in {"passes", "fails"}
    assert {key for key, row in rows.items() if row.outcome == "refused"} == {"rubber_60", "rubber_70"}


def test_a_face_set_further_off_than_the_pad_bears_fails() -> None:
    """Oracle: statics; a car that drags the jack sideways puts 0.3 h off the middle, and 5 mm are set by eye."""
    stuck = designed(on_a_rail(service__ground="stuck", jack__cup_bore_mm=52, fixed={"web_mm": 40.0}))
    found = check(stuck, "face_centring")
    assert found.value == pytest.approx(5 + stuck.pad.top_height_mm * 0.3 + _half_play(stuck), rel=1e-6)
    assert found.verdict == "fail"


def _half_play(design: Design) -> float:
    finding = check(design, "tipping").finding
    assert finding is not None
    return (finding.numbers["play"] + finding.numbers["tol_sym"]) / 2


def test_a_soft_top_gives_way_to_a_lean_that_a_hard_one_does_not() -> None:
    soft, hard = (check(designed(on_a_rail(make__material=key)), "face_lean") for key in ("pur_95", "aluminium"))
    assert (soft.limit or 0) > (hard.limit or 0) + 1


def test_what_the_words_of_shared_rules_say_is_about_a_face_and_not_about_a_seam() -> None:
    design = designed(on_a_rail())
    said = [c.title + c.words for c in design.checks] + [b.reason for e in design.ledger.values() for b in e.bounds]
    assert not [words for words in said if "seam" in words or "slot" in words or "sill" in words]
