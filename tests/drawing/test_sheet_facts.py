"""What a design says on its sheet: marks, units, projection and paper."""

from datetime import date

import pytest

from geometry.checks import judge
from geometry.design import design_pad
from geometry.drawing import draw
from geometry.drawing.facts import CRITICAL_MARK
from geometry.drawing.measures import measures
from geometry.drawing.model import Arrow
from geometry.drawing.style import STYLE
from geometry.measurements import read_measurements
from geometry.sheet_facts import CRITICAL_SIZES, sheet_facts
from tests.documents import van
from tests.drawing.kinds_on_paper import EVERY, design_of, facts_of
from tests.geometry.feet.post_documents import posted
from tests.geometry.feet.round_documents import standing

DESIGN = design_pad(read_measurements(van()))
DAY = date(2026, 11, 25)
SLIPS = {
    "seat_diameter_mm": 1.05,
    "seat_length_mm": 0.7,
    "seat_corner_radius_mm": 0.2,
    "slot_width_mm": 0.4,
    "slot_depth_mm": 0.3,
    "web_mm": 0.6,
}


@pytest.mark.parametrize("name", CRITICAL_SIZES)
def test_a_gross_slip_in_a_marked_size_alone_fails_a_check(name: str) -> None:
    """Oracle: the checks themselves, which pass this pad as drawn."""
    assert DESIGN.fit_to_make
    slipped = DESIGN.pad.with_(**{name: getattr(DESIGN.pad, name) * SLIPS[name]})
    assert "fail" in {check.verdict for check in judge(DESIGN.conditions, slipped)}


PLACED = {
    "skirt": (standing("edge"), {"skirt_bore_mm": 0.98, "skirt_length_mm": 0.3}),
    "stem": (
        posted(),
        {
            "stem_diameter_mm": 1.02,
            "stem_length_mm": 0.2,
            "cross_hole_diameter_mm": 0.85,
            "cross_hole_distance_mm": 1.1,
        },
    ),
}


@pytest.mark.parametrize("place", PLACED)
def test_what_keeps_a_pad_in_its_place_is_marked_as_a_slip_in_it_fails_a_check(place: str) -> None:
    """Oracle: the checks themselves, which pass each pad as drawn."""
    document, slips = PLACED[place]
    design = design_pad(read_measurements(document))
    critical = sheet_facts(design, issued=DAY).critical
    assert design.fit_to_make
    assert set(critical) == set(CRITICAL_SIZES) | slips.keys()
    for name, slip in slips.items():
        slipped = design.pad.with_(**{name: getattr(design.pad, name) * slip})
        assert "fail" in {check.verdict for check in judge(design.conditions, slipped)}, name


LOCATED_BY = {
    "cup": "seat_diameter_mm",
    "ring": "seat_diameter_mm",
    "recess": "seat_diameter_mm",
    "land": "seat_diameter_mm",
    "edge": "skirt_bore_mm",
    "teeth": "skirt_bore_mm",
    "post": "stem_diameter_mm",
}


@pytest.mark.parametrize(("foot", "head"), EVERY)
def test_the_axis_datum_stands_at_the_diameter_that_goes_into_or_around_the_jack(foot: str, head: str) -> None:
    """ISO 5459 (from memory): in line with a diameter's dimension line the triangle means that diameter's axis.

    Oracle: the jack's own shape: what a bore takes in, or what hangs around an edge.
    """
    design = design_of(foot, head)
    drawing = draw(design.pad, facts_of(design))
    triangles = [s for s in drawing.shapes if isinstance(s, Arrow) and s.width_mm == STYLE.arrow_mm]
    (across,) = (arrow.tip for arrow in triangles if arrow.direction_deg % 180 == 0)
    letters = [
        text.words for text in drawing.texts if text.words in ("A", "B") and text.box.bottom < across[1] < text.box.top
    ]
    level = {d.measure.name: d.lines[0].start[1] for d in drawing.dimensions if d.measure.name in LOCATED_BY.values()}
    assert letters == ["B"]
    assert [name for name, y in level.items() if y == pytest.approx(across[1])] == [LOCATED_BY[foot]]


def test_exactly_the_deciding_sizes_are_marked_on_a_designs_drawing() -> None:
    found = measures(DESIGN.pad, sheet_facts(DESIGN, issued=DAY))
    assert {name for name, measure in found.items() if measure.words.startswith(CRITICAL_MARK)} == set(CRITICAL_SIZES)


def test_a_sheet_invents_no_owner_and_no_address() -> None:
    facts = sheet_facts(DESIGN, issued=DAY)
    assert (facts.owner, facts.saved_address) == ("", None)


def test_a_shop_in_inches_gets_third_angle_and_its_own_paper_unless_it_chooses() -> None:
    """ASME Y14.3 has third angle as its own, ISO 5456-2 allows both."""
    document = van()
    document["make"] = {**document.get("make", {}), "step": "inch"}
    design = design_pad(read_measurements(document))
    facts = sheet_facts(design, issued=DAY)
    assert (facts.units, facts.projection, facts.paper) == ("in", "third", "letter")
    chosen = sheet_facts(design, issued=DAY, units="in_fraction", projection="first", paper="tabloid")
    assert (chosen.units, chosen.projection, chosen.paper) == ("in_fraction", "first", "tabloid")
