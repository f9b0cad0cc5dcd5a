"""What a design says on its sheet: marks, units, projection and paper."""

import json
from datetime import date
from types import MappingProxyType

import pytest
from hypothesis import given

from geometry.checks import judge
from geometry.conditions import Conditions
from geometry.design import design_pad
from geometry.document.shop import Shop
from geometry.drawing import SheetFacts
from geometry.drawing.facts import CRITICAL_MARK
from geometry.drawing.measures import measures
from geometry.drawing.model import Arrow, Layer
from geometry.drawing.style import STYLE
from geometry.geometrical import SLOT_SYMMETRY
from geometry.inspection import NOTICEABLE, checks_moved_in, inspection_sheet, moving
from geometry.measurements import read_measurements
from geometry.pad import Pad
from geometry.sheet_facts import sheet_facts
from geometry.spread import Spread
from tests.documents import van
from tests.drawing.kinds_on_paper import EVERY, design_of, facts_of
from tests.drawing.pads import facts, laid_out
from tests.drawing.test_practice import SAMPLES
from tests.examples import examples
from tests.geometry.shops import jobs


def marks(pad: Pad, conditions: Conditions) -> SheetFacts:
    """A sheet that marks what moves an estimate."""
    return facts(critical=tuple(moving(pad, conditions)))


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


@pytest.mark.parametrize("name", SLIPS)
def test_a_gross_slip_in_a_marked_size_alone_fails_a_check(name: str) -> None:
    """Oracle: the checks themselves, which pass this pad as drawn."""
    assert DESIGN.fit_to_make
    slipped = DESIGN.pad.with_(**{name: getattr(DESIGN.pad, name) * SLIPS[name]})
    assert "fail" in {check.verdict for check in judge(DESIGN.conditions, slipped)}


LOCATED_BY = {
    "cup": "seat_diameter_mm",
    "ring": "seat_diameter_mm",
    "recess": "seat_diameter_mm",
    "land": "seat_diameter_mm",
    "edge": "skirt_bore_mm",
    "teeth": "skirt_bore_mm",
    "post": "stem_diameter_mm",
}


LONGEST_STEM_MM = 15.0


@pytest.mark.parametrize(("foot", "head"), EVERY)
def test_the_axis_datum_stands_at_the_diameter_that_goes_into_or_around_the_jack(foot: str, head: str) -> None:
    """ISO 5459 (from memory): in line with a diameter's dimension line the triangle means that diameter's axis.

    Oracle: the jack's own shape: what a bore takes in, or what hangs around an edge.
    """
    design = design_of(foot, head)
    drawing = laid_out(design.pad, facts_of(design))
    triangles = [s for s in drawing.shapes if isinstance(s, Arrow) and s.width_mm == STYLE.arrow_mm]
    (across,) = (arrow.tip for arrow in triangles if arrow.direction_deg % 180 == 0)
    # Elsewhere at that level the frame of a tolerance may name a datum too.
    beside = [text for text in drawing.texts if abs(text.at[0] - across[0]) < LONGEST_STEM_MM]
    letters = [text.words for text in beside if text.words in ("A", "B") and text.box.bottom < across[1] < text.box.top]
    level = {d.measure.name: d.lines[0].start[1] for d in drawing.dimensions if d.measure.name in LOCATED_BY.values()}
    assert letters == ["B"]
    assert [name for name, y in level.items() if y == pytest.approx(across[1])] == [LOCATED_BY[foot]]


@examples(20, many=300)
@given(jobs())
def test_the_drawing_marks_just_what_moves_an_estimate_on_the_inspection_sheet(
    work: tuple[Pad, Conditions, Shop],
) -> None:
    """Oracle: the inspection sheet's own column; what only follows from others is in neither."""
    pad, conditions, _ = work
    lines = inspection_sheet(pad, conditions).characteristics
    marked = {name for name, m in measures(pad, marks(pad, conditions)).items() if m.words.startswith(CRITICAL_MARK)}
    assert marked == {line.name for line in lines if line.checks and line.nominal_mm is not None}


@pytest.mark.parametrize(("foot", "head"), EVERY)
def test_frames_are_marked_before_the_frame_where_the_inspection_sheet_says_that_they_move_an_estimate(
    foot: str, head: str
) -> None:
    """ISO 1101 (from memory): a sign inside the frame would be a modifier of the zone."""
    design = design_of(foot, head)
    lines = inspection_sheet(design.pad, design.conditions).characteristics
    moving = [line for line in lines if line.checks and line.nominal_mm is None]
    texts = [text for text in laid_out(design.pad, facts_of(design)).texts if text.layer == Layer.TOLERANCE]
    assert sum(text.words.startswith(CRITICAL_MARK) for text in texts) == len(moving)
    assert not any(CRITICAL_MARK in text.words and any(c.isdigit() for c in text.words) for text in texts)


def test_a_zone_moves_an_estimate_where_a_part_without_its_stray_would_use_less_of_the_limit() -> None:
    """Oracle: the check of tipping, of the part as drawn and of one whose slot is exactly in the middle."""
    true = Spread(MappingProxyType({SLOT_SYMMETRY.name: 0.0}))
    used = [
        next(c.utilisation for c in judge(DESIGN.conditions, DESIGN.pad, spread) if c.code == "tipping")
        for spread in (Spread(), true)
    ]
    assert used[0] > used[1] + NOTICEABLE
    assert "tipping" in checks_moved_in(SLOT_SYMMETRY, DESIGN.pad, DESIGN.conditions)


def test_cautions_stand_on_the_sheet_gravest_first() -> None:
    """ANSI Z535.4 (from memory): danger, warning, caution, notice."""
    design = design_of("cup", "plug")
    order = ["DANGER", "WARNING", "CAUTION", "NOTICE"]
    signals = [order.index(signal) for signal, _ in facts_of(design).cautions]
    assert signals == sorted(signals)


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


def test_a_sheet_in_inches_has_inches_beside_the_millimetres_of_a_caution() -> None:
    """1 mm is 0.04 in."""
    design = design_pad(
        read_measurements(json.loads((SAMPLES / "seed_library_estate_teeth_only.json").read_text(encoding="utf-8")))
    )
    inch = " ".join(words for _, words in sheet_facts(design, issued=DAY, units="in").cautions)
    assert "deeper than 1 mm (0.04 in)" in inch
    for units in ("mm", "dual"):
        assert "in)" not in " ".join(words for _, words in sheet_facts(design, issued=DAY, units=units).cautions)
