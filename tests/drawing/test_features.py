"""Every dimension of every kind of pad, once, and nothing over anything else; oracle: the pad, and boxes computed apart."""

import pytest
from hypothesis import HealthCheck, assume, given, settings

from geometry.drawing import Drawing, SheetError, SheetFacts, draw
from geometry.drawing.table import WORDS
from geometry.pad import Pad
from tests.drawing.faults import faults, overlapping_views
from tests.drawing.pads import facts, sheets
from tests.geometry.pads import EVERY_KIND, pads_of_any_kind

FEW = settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])
THOUSANDS = settings(FEW, max_examples=2000)


def expected(pad: Pad) -> dict[str, float]:
    """What the pad has, without what says the same again: a round plug's length, heights that add nothing up."""
    is_own = {
        "overall_height_mm": pad.foot_depth_mm > 0,
        "top_height_mm": pad.has_slot or pad.has_plug,
        "plug_length_mm": not pad.plug_is_round,
        "plug_corner_radius_mm": not pad.plug_is_round,
    }
    return {name: value for name, value in pad.as_dict().items() if value > 0 and is_own.get(name, True)}


@pytest.mark.parametrize("name", EVERY_KIND)
def test_every_dimension_of_every_kind_of_pad_is_shown_once(name: str) -> None:
    pad = EVERY_KIND[name]
    shown = sorted((d.measure.name, d.measure.nominal_mm) for d in draw(pad, facts()).dimensions)
    assert shown == sorted(expected(pad).items())


@pytest.mark.parametrize("units", ["mm", "dual"])
@pytest.mark.parametrize("name", EVERY_KIND)
def test_nothing_overlaps_on_the_sheet_of_any_kind_of_pad(name: str, units: str) -> None:
    drawing = draw(EVERY_KIND[name], facts(units=units))
    assert faults(drawing) == []
    assert overlapping_views(drawing) == []


def sheet_of(pad: Pad, sheet: SheetFacts) -> Drawing:
    """The drawing of a pad on a sheet that it finds room on: a narrow sheet may refuse what has long words at short lengths."""
    try:
        return draw(pad, sheet)
    except SheetError:
        assume(False)
        raise


def assert_flawless(pad: Pad, drawing: Drawing) -> None:
    """Nothing over anything else, no dimension missing and none doubled."""
    assert faults(drawing) == []
    assert overlapping_views(drawing) == []
    shown = sorted((d.measure.name, d.measure.nominal_mm) for d in drawing.dimensions)
    assert shown == sorted(expected(pad).items())


@FEW
@given(pad=pads_of_any_kind(), sheet=sheets())
def test_the_sheet_of_any_pad_with_any_features_is_flawless(pad: Pad, sheet: SheetFacts) -> None:
    assert_flawless(pad, sheet_of(pad, sheet))


@pytest.mark.full
@THOUSANDS
@given(pad=pads_of_any_kind(), sheet=sheets())
def test_thousands_of_sheets_of_pads_with_any_features_are_flawless(pad: Pad, sheet: SheetFacts) -> None:
    assert_flawless(pad, sheet_of(pad, sheet))


@pytest.mark.full
@THOUSANDS
@given(pad=pads_of_any_kind())
def test_any_pad_finds_room_on_a_wide_sheet(pad: Pad) -> None:
    assert faults(draw(pad, facts(paper="A3"))) == []


@pytest.mark.parametrize("units", ["mm", "dual"])
@pytest.mark.parametrize("name", EVERY_KIND)
def test_every_kind_of_pad_is_drawn_at_half_size_at_least(name: str, units: str) -> None:
    """At 1:5 a slot of 9 mm is 2 mm on paper, and most of the sheet is empty."""
    assert draw(EVERY_KIND[name], facts(units=units)).scale.factor >= 0.5


@pytest.mark.parametrize("name", EVERY_KIND)
def test_linear_dimensions_measure_what_they_say(name: str) -> None:
    """Oracle: the distance of the measured points on paper over the scale."""
    for dimension in draw(EVERY_KIND[name], facts()).dimensions:
        if dimension.kind in {"across", "up"}:
            along = 0 if dimension.kind == "across" else 1
            measured = abs(dimension.end[along] - dimension.start[along]) / dimension.scale.factor
            assert measured == pytest.approx(dimension.measure.nominal_mm, abs=1e-6)


def test_every_dimension_has_a_name_in_words() -> None:
    assert all(name in WORDS for pad in EVERY_KIND.values() for name in expected(pad))
