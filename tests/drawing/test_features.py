"""Every dimension of every kind of pad, once, and nothing over anything else; oracle: the pad, and boxes computed apart."""

import pytest

from geometry.drawing import draw
from geometry.drawing.table import WORDS
from geometry.pad import Pad
from tests.drawing.faults import faults, overlapping_views
from tests.drawing.pads import facts
from tests.geometry.pads import EVERY_KIND


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
