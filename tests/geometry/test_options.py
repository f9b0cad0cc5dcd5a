"""Pads with more than a cup and a plain slot ask for: a boss, a slot off the middle or crossed, a pocket, flats."""

from collections.abc import Mapping
from math import pi
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from geometry.design import Design
from geometry.errors import BadMeasurementsError, NoPadFitsError
from tests.documents import designed, ordinary_documents, van


def verdicts(design: Design) -> dict[str, str]:
    return {check.code: check.verdict for check in design.checks}


def numbers_of(design: Design, code: str) -> Mapping[str, float]:
    """What stands in the formulas of one check."""
    finding = next(check for check in design.checks if check.code == code).finding
    assert finding
    return finding.numbers


@st.composite
def with_options(draw: st.DrawFn) -> dict[str, Any]:
    """Ordinary jacks and cars, with any option that goes with them."""
    document = draw(ordinary_documents())
    jack, seam, make = document["jack"], document["seam"], document["make"]
    if draw(st.booleans()) and "stem_hole_diameter_mm" not in jack:
        jack["floor_boss_height_mm"] = draw(st.floats(1, 8).map(lambda x: round(x, 1)))
        jack["floor_boss_diameter_mm"] = draw(st.floats(5, jack["cup_bore_mm"] / 2).map(lambda x: round(x, 1)))
    if draw(st.booleans()):
        make["slots"] = "crossed"
    else:
        seam["offset_mm"] = draw(st.sampled_from([0, 0, 2, 5.5]))
        if draw(st.booleans()):
            seam["local_length_mm"] = draw(st.floats(5, 30).map(lambda x: round(x, 1)))
            seam["local_thickness_mm"] = round(seam["thickness_mm"] + draw(st.floats(0, 6)), 1)
            seam["local_drop_mm"] = draw(st.sampled_from([0, 0, 3, 7.5]))
    make["body"] = draw(st.sampled_from(["round", "two_flats"]))
    return document


@settings(max_examples=150, deadline=None)
@given(with_options())
def test_what_is_sized_clears_what_it_was_sized_for(document: dict[str, Any]) -> None:
    """Bound and check of one clearance are two formulas; a pad from the first never fails the second."""
    try:
        design = designed(document)
    except NoPadFitsError:
        assume(False)
    found = verdicts(design)
    for code in ("boss_clear", "relief_clear", "slot_offset_fit", "slot_fit_tight", "lip_gap"):
        assert found[code] != "fail", code


@settings(max_examples=100, deadline=None)
@given(with_options())
def test_no_pad_is_offered_that_is_taller_than_its_seat_is_wide(document: dict[str, Any]) -> None:
    try:
        pad = designed(document).pad
    except (NoPadFitsError, BadMeasurementsError):
        assume(False)
    assert pad.top_height_mm <= pad.seat_diameter_mm + 1e-9


def test_a_post_is_refused_with_both_numbers() -> None:
    """A low jack under a high car: the web would have to make up the height."""
    with pytest.raises(NoPadFitsError) as conflict:
        designed(van(jack__rim_height_high_mm=330, seam__edge_height_mm=260))
    assert "never two stacked" in conflict.value.words
    assert conflict.value.dimension == "web_mm"


def test_the_seat_carries_around_the_recess() -> None:
    """By hand: the ring between the flat circle and the recess."""
    design = designed(van(jack__floor_boss_height_mm=5, jack__floor_boss_diameter_mm=22))
    pad = design.pad
    ring = pi / 4 * (pad.seat_flat_diameter_mm**2 - pad.seat_recess_diameter_mm**2)
    bearing = next(c for c in design.checks if c.code == "cup_floor_bearing")
    assert bearing.finding
    assert bearing.finding.numbers["A"] == pytest.approx(ring)


def test_the_advice_on_the_floor_knows_the_boss() -> None:
    design = designed(van(jack__floor_boss_height_mm=5, jack__floor_boss_diameter_mm=22))
    floor = next(c for c in design.checks if c.code == "cup_floor_flat")
    assert floor.verdict == "pass"
    assert "takes the boss of 5 mm" in floor.words
    assert floor.value == 5


def test_a_boss_that_the_recess_does_not_clear_fails() -> None:
    fixed = {"seat_recess_diameter_mm": 22.5, "seat_recess_depth_mm": 6}
    design = designed(van(jack__floor_boss_height_mm=5, jack__floor_boss_diameter_mm=22, fixed=fixed))
    assert verdicts(design)["boss_clear"] == "fail"


def test_a_crossing_has_floor_and_no_walls() -> None:
    """By hand: the floor bears as long as in a plain slot; the side load has less wall by the second slot's width."""
    plain, crossed = (designed(van(make__slots=slots, fixed__body_diameter_mm=80)) for slots in ("one", "crossed"))
    length = numbers_of(plain, "slot_floor_bearing")["L"]
    assert numbers_of(crossed, "slot_floor_bearing")["L"] == length
    assert numbers_of(crossed, "wall_bending")["L_w"] == pytest.approx(length - crossed.pad.cross_slot_width_mm)


def test_a_slot_off_the_middle_loads_the_seat_off_its_middle() -> None:
    plain, beside = (designed(van(seam__offset_mm=x, fixed__body_diameter_mm=90)) for x in (0, 4))
    tipping = [next(c for c in d.checks if c.code == "tipping") for d in (plain, beside)]
    raised = beside.pad.top_height_mm - plain.pad.top_height_mm
    assert tipping[1].value is not None
    assert tipping[0].value is not None
    assert tipping[1].value - tipping[0].value == pytest.approx(4 + raised * 0.137142857, abs=0.3)


def test_a_seam_far_beside_the_jack_tips_the_pad() -> None:
    assert verdicts(designed(van(seam__offset_mm=14)))["tipping"] == "fail"


def test_only_an_open_pocket_takes_length_from_the_floor() -> None:
    local = {"seam__local_length_mm": 20}
    thick = designed(van(**local, seam__local_thickness_mm=7)).pad
    hanging = designed(van(**local, seam__local_drop_mm=4)).pad
    assert thick.lost_length_mm == 0
    assert hanging.lost_length_mm == hanging.relief_length_mm >= 20


def test_flats_leave_walls_and_a_lip() -> None:
    pad = designed(van(make__body="two_flats")).pad
    assert pad.flats_width_mm >= max(pad.slot_width_mm + 24, pad.seat_diameter_mm + 4)
    assert pad.flats_width_mm <= pad.body_diameter_mm - 4


def test_half_a_feature_is_refused() -> None:
    with pytest.raises(BadMeasurementsError, match="A relief has no relief length"):
        designed(van(fixed__relief_width_mm=20))


def test_a_feature_of_another_kind_is_refused() -> None:
    with pytest.raises(BadMeasurementsError, match="has no plug height"):
        designed(van(fixed__plug_height_mm=20))
