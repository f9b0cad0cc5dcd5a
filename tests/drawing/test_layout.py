"""Nothing on any sheet overlaps; oracle: clipping and boxes computed apart from the layout, in tests/drawing/faults.py."""

import pytest
from hypothesis import HealthCheck, given, settings

from geometry.drawing import SheetFacts, draw
from geometry.pad import Pad
from tests.drawing.faults import faults, overlapping_views
from tests.drawing.pads import KNOWN, facts, pads, sheets

RELAXED = settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@pytest.mark.parametrize("name", KNOWN)
@pytest.mark.parametrize("units", ["mm", "in", "dual"])
def test_nothing_overlaps_on_sheets_of_well_known_proportions(name: str, units: str) -> None:
    assert faults(draw(KNOWN[name], facts(units=units))) == []


@RELAXED
@given(pad=pads(), sheet=sheets())
def test_nothing_overlaps_on_the_sheet_of_any_pad(pad: Pad, sheet: SheetFacts) -> None:
    drawing = draw(pad, sheet)
    assert faults(drawing) == []
    assert overlapping_views(drawing) == []
