"""The plug: worked by hand, over its whole domain on every foot, round and rectangular, metric and inch."""

import math
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from geometry.buildable import require_buildable
from geometry.checks import judge
from geometry.comparison import compare_materials
from geometry.design import Design
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.formulas import evaluate
from geometry.heads.plug.loading import plug_area_mm2, reach_mm
from geometry.measurements import read_measurements
from tests.documents import designed
from tests.geometry.heads.documents import (
    F_D,
    POCKET,
    check,
    designed_or_none,
    designs_of,
    documents_of,
    in_a_hole,
    in_an_oblong_hole,
)

_SETTINGS = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))


@_SETTINGS
@given(documents_of("plug"))
def test_any_document_gives_a_pad_or_says_why_not(document: dict[str, Any]) -> None:
    """Every must is respected, the pad is one body with a plug and no slot, and every check answers."""
    design = designed_or_none(document)
    if design is None:
        return
    require_buildable(design.pad)
    assert design.pad.has_plug
    assert not design.pad.has_slot
    assert not [bound for entry in design.ledger.values() for bound in entry.broken]
    assert all(c.words for c in design.checks)
    assert {c.rule.kind for c in design.checks} >= {"plug", "face"}


@_SETTINGS
@given(designs_of("plug"))
def test_a_sized_plug_passes_its_own_fits_and_its_lip(design: Design) -> None:
    """Oracle: the bounds keep more free than the checks ask for, and take the same worst case."""
    judged_by_size = ("plug_fit_tight", "plug_fit_loose", "plug_corner_clear", "plug_reach", "face_lip_shear")
    assert not [c.code for c in design.failures if c.code in (*judged_by_size, "face_lip_bending", "face_rim_clear")]


@_SETTINGS
@given(designs_of("plug"))
def test_the_plug_is_round_where_the_hole_is(design: Design) -> None:
    """Oracle: a round hole has one size; also on an inch machine, whose step does not halve."""
    assert design.pad.plug_is_round == (
        design.conditions.pocket.is_round
        or (
            math.isclose(design.pad.plug_width_mm, design.pad.plug_length_mm)
            and math.isclose(design.pad.plug_corner_radius_mm, design.pad.plug_width_mm / 2)
        )
    )


@_SETTINGS
@given(designs_of("plug"))
def test_every_formula_as_printed_gives_what_the_check_and_the_bound_say(design: Design) -> None:
    for c in design.checks:
        if c.finding and c.rule.kind == "plug" and math.isfinite(c.finding.value):
            value, limit = (evaluate(text, c.finding.numbers) for text in c.formulas)
            assert value == pytest.approx(c.finding.value, rel=1e-6, abs=1e-6), c.code
            assert limit == pytest.approx(c.finding.limit, rel=1e-6, abs=1e-6), c.code
    for bound in (b for entry in design.ledger.values() for b in entry.bounds if b.rule.kind == "plug"):
        assert evaluate(bound.rule.formula, bound.numbers) == pytest.approx(bound.value, rel=1e-6), bound.reason


@pytest.mark.parametrize("step", ["metric", "inch"])
@pytest.mark.parametrize("width", [22.0, 31.3, 40.0])
def test_a_round_plug_keeps_round_by_a_given_width_or_length(step: str, width: float) -> None:
    hole = {**POCKET, "hole_width_mm": width + 2.5}
    for name in ("plug_width_mm", "plug_length_mm"):
        pad = designed(in_a_hole(pocket=hole, make={"step": step}, fixed={name: width})).pad
        assert pad.plug_is_round
        assert pad.plug_width_mm == width


def test_a_round_plug_by_hand() -> None:
    """Oracle: α = 115e-6 over 20 K and 0.0025 · 0.2 give 0.0028; (40 − 0.1)/1.0028 − 1 − 0.3 = 38.489, down to 38.4."""
    pad = designed(in_a_hole()).pad
    assert pad.plug_width_mm == pad.plug_length_mm == 38.4
    assert pad.plug_corner_radius_mm == pytest.approx(19.2, abs=1e-9)
    assert pad.plug_height_mm == 15.0


@pytest.mark.parametrize(("obstacle", "lower"), [(None, 0), (-20, 20), (20, 0)])
def test_what_hangs_below_the_car_on_the_way_in_leaves_the_plug_less_room(obstacle: float | None, lower: float) -> None:
    """Oracle: by hand, 215 − 105 + 12 − 0.1 − 4 − 5, less the obstacle, grown by 0.0028, less a seat of 13.5 and 6 of body."""
    upper = designed(in_a_hole(pocket__roll_in_obstacle_mm=obstacle)).ledger["plug_height_mm"].upper
    found = next(b.value for b in upper if "as the jack rolls in" in b.reason)
    assert found == pytest.approx((112.9 - lower) / 1.0028 - 13.5 - 6, rel=1e-9)


@given(st.floats(10, 60), st.floats(10, 60), st.floats(0, 1))
def test_a_plugs_section_modulus_is_never_taken_larger_than_it_is(width: float, length: float, share: float) -> None:
    """Oracle: the second moment of the level cut added up in 2000 strips, about the axis that bends it most easily."""
    side, least = max(width, length), min(width, length)
    radius = share * least / 2
    pad = designed(in_a_hole()).pad.with_(plug_width_mm=width, plug_length_mm=length, plug_corner_radius_mm=radius)
    moment, n = 0.0, 2000
    for i in range(n):
        x = (i + 0.5) * least / 2 / n
        over = max(0.0, x - (least / 2 - radius))
        half = side / 2 - radius + math.sqrt(max(0.0, radius**2 - over**2))
        moment += 4 * half * x**2 * least / 2 / n
    assert plug_area_mm2(pad) * least / 8 <= moment / (least / 2) * 1.001


@_SETTINGS
@given(st.floats(12, 60), st.floats(12, 60), st.floats(0, 1), st.floats(0.2, 2), st.floats(-3, 3))
def test_the_corner_check_never_passes_a_plug_that_does_not_go_in(
    width: float, length: float, share: float, gap: float, rounder: float
) -> None:
    """Oracle: points of the plug's corner, each held against the hole's outline."""
    hole_radius = share * min(width, length) / 2
    plug = width - 2 * gap, length - 2 * gap
    plug_radius = min(max(0.0, hole_radius + rounder), min(plug) / 2)
    clear = math.sqrt(2) * gap - (math.sqrt(2) - 1) * max(hole_radius - plug_radius, gap)
    assume(clear >= 1e-9)
    for i in range(91):
        angle = math.radians(i)
        x = plug[0] / 2 - plug_radius + plug_radius * math.cos(angle)
        y = plug[1] / 2 - plug_radius + plug_radius * math.sin(angle)
        over = x - (width / 2 - hole_radius), y - (length / 2 - hole_radius)
        assert x <= width / 2
        assert y <= length / 2
        if min(over) > 0:
            assert math.hypot(*over) <= hole_radius + 1e-9


def test_a_hole_with_round_ends_gets_a_plug_with_round_ends() -> None:
    pad = designed(in_an_oblong_hole(pocket__corner_radius_mm=20)).pad
    assert pad.plug_corner_radius_mm == pytest.approx(pad.plug_width_mm / 2, abs=1e-9)
    assert not pad.plug_is_round
    assert check(designed(in_an_oblong_hole(pocket__corner_radius_mm=20)), "plug_corner_clear").verdict == "pass"


@pytest.mark.parametrize(("radius", "words"), [(8.0, "mm clear of the hole's"), (1.0, "mm too sharp for the hole's")])
def test_the_words_of_the_corners_say_on_which_side_of_their_limit_they_are(radius: float, words: str) -> None:
    found = check(designed(in_an_oblong_hole(fixed={"plug_corner_radius_mm": radius})), "plug_corner_clear")
    assert words in found.words
    assert found.verdict == ("pass" if "clear" in words else "fail")


def test_a_plug_too_wide_for_its_hole_fails_in_words() -> None:
    found = check(designed(in_an_oblong_hole(fixed={"plug_width_mm": 40.5})), "plug_fit_tight")
    assert found.verdict == "fail"
    assert "too big for its hole" in found.words


def test_a_square_plug_in_a_round_hole_is_judged_by_its_corners() -> None:
    """Oracle: a square of 30 mm with sharp corners is 42.4 mm across them."""
    design = designed(in_a_hole(fixed={"plug_width_mm": 30.0, "plug_corner_radius_mm": 0.5}))
    assert reach_mm(design.pad) == pytest.approx(1 + 29 * math.sqrt(2))
    assert check(design, "plug_fit_tight").verdict == "fail"


def test_a_shallow_pocket_has_no_pad_and_says_which_measurement() -> None:
    with pytest.raises(NoPadFitsError) as found:
        designed(in_a_hole(pocket__hole_depth_mm=6))
    assert found.value.dimension == "plug_height_mm"
    assert found.value.upper.field == "pocket.hole_depth_mm"


def test_a_lower_plug_is_made_where_a_tall_one_leaves_the_web_no_room() -> None:
    low = designed(in_a_hole(pocket__rim_height_mm=136))
    assert low.pad.plug_height_mm < designed(in_a_hole()).pad.plug_height_mm
    assert check(low, "entry_height").verdict == "pass"


@pytest.mark.parametrize("key", ["pur_90", "pur_95", "rubber_60", "rubber_70"])
def test_no_plug_is_made_of_rubber(key: str) -> None:
    with pytest.raises(BadMeasurementsError, match="slip out of its hole"):
        read_measurements(in_a_hole(make__material=key))
    rows = {row.material.key: row.outcome for row in compare_materials(read_measurements(in_a_hole()))}
    assert rows[key] == "refused"


@_SETTINGS
@given(st.integers(900, 2200), st.floats(1.05, 1.6), st.sampled_from(["pom_c", "pa66", "hdpe", "uhmw_pe"]))
def test_more_load_never_passes_what_failed(mass: int, more: float, material: str) -> None:
    pad = designed(in_a_hole()).pad
    light, heavy = (
        {c.code: c for c in judge(designed(in_a_hole(car__gross_mass_kg=m, make__material=material)).conditions, pad)}
        for m in (mass, mass * more)
    )
    for code, before in light.items():
        assert not (before.verdict == "fail" and heavy[code].verdict == "pass"), code


def test_what_the_words_of_shared_rules_say_is_about_a_hole_and_not_about_a_seam() -> None:
    for design in (designed(in_a_hole()), designed(in_an_oblong_hole())):
        said = [c.title + c.words for c in design.checks]
        said += [b.reason for e in design.ledger.values() for b in e.bounds]
        assert not [words for words in said if "seam" in words or "slot" in words or "sill" in words]


def test_the_side_load_on_a_round_plug_by_hand() -> None:
    """Oracle: π d²/4 and π d³/32 of a circle, half the plug's height as lever, 4 at the root, and H of the assumed lean."""
    design = designed(in_a_hole())
    side = F_D * (0.03 + math.sin(design.conditions.lift_needed_mm / 1400))
    shear, bending = check(design, "plug_shear"), check(design, "plug_bending")
    assert shear.value == pytest.approx(side / (math.pi / 4 * 38.4**2), rel=1e-9)
    assert bending.value == pytest.approx(4 * side * 15 / 2 / (math.pi * 38.4**3 / 32), rel=1e-9)


def test_between_printed_layers_a_plug_stands_less() -> None:
    """Oracle: the share that the table gives of a slot wall across the layers."""
    printed = designed(in_a_hole(make={"material": "pa_cf", "process": "printed"}))
    share, allowable = printed.conditions.material.wall_stress_factor, printed.conditions.allowable_mpa
    assert share < 1
    assert check(printed, "plug_shear").limit == pytest.approx(allowable / math.sqrt(3) * share)
    assert check(printed, "plug_bending").limit == pytest.approx(2 * allowable / 1.5 * share)
