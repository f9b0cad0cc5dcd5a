"""The gauge of the jack's side and of the hole in the body, for every way to stand: as wide as what was measured."""

import pytest

from geometry.packet.gauge_outlines import gauges_of
from geometry.packet.gauge_shapes import Gauge
from tests.drawing.kinds_on_paper import FEET, design_of

MEASURED = {"cup": 84, "land": 76, "teeth": 100, "edge": 90, "ring": 80, "recess": 80, "post": 35}
"""What is measured across on each jack, mm, as the documents have it."""


def narrow_mm(gauge: Gauge) -> float:
    """Between the two upright sides that are nearest to the axis: of a tongue its width, of a bridge that between its legs."""
    upright = [piece.start[0] for piece in gauge.outline if piece.start[0] == piece.end[0]]
    return 2 * min(x for x in upright if x > 0)


@pytest.mark.parametrize("foot", FEET)
def test_the_first_gauge_is_that_of_the_jack(foot: str) -> None:
    """Oracle: the document."""
    assert narrow_mm(gauges_of(design_of(foot, "cushion"), "mm")[0]) == pytest.approx(MEASURED[foot], abs=1e-6)


def test_a_hole_in_the_body_has_a_gauge_for_each_way_across() -> None:
    """Oracle: the documents: a round hole of 24 mm, an oblong one of 40 by 56 mm."""
    of_round = [g for g in gauges_of(design_of("cup", "plug"), "mm") if g.key.startswith("hole")]
    oblong = [g for g in gauges_of(design_of("cup", "oblong"), "mm") if g.key.startswith("hole")]
    assert [narrow_mm(g) for g in of_round] == pytest.approx([24])
    assert [narrow_mm(g) for g in oblong] == pytest.approx([40, 56])
    assert not [g for g in gauges_of(design_of("cup", "cushion"), "mm") if g.key.startswith("hole")]
