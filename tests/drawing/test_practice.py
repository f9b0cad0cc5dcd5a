"""Habits of drawing practice that a machinist looks for; oracles are rules of standards, from memory, and plain geometry."""

import json
from datetime import date
from math import hypot
from pathlib import Path

import pytest
from hypothesis import given

from geometry.design import design_pad
from geometry.drawing import SheetFacts, draw
from geometry.drawing.facts import Units
from geometry.drawing.measures import measures
from geometry.drawing.model import Arrow, Drawing, Layer, Line
from geometry.measurements import read_measurements
from geometry.pad import Pad
from geometry.sheet_facts import sheet_facts
from tests.drawing.faults import crossed_leaders, words_of
from tests.drawing.pads import DEEP, HUGE, KNOWN, LONG_STEM, TINY, TYPICAL, drawn, facts, pads, sheets
from tests.examples import examples

SAMPLES = Path(__file__).parents[2] / "sample_data"


def sheet_of(name: str, units: Units | None = None) -> tuple[Pad, SheetFacts]:
    """A sample's pad with the facts of its sheet."""
    design = design_pad(read_measurements(json.loads((SAMPLES / f"{name}.json").read_text(encoding="utf-8"))))
    return design.pad, sheet_facts(design, issued=date(2026, 11, 25), units=units)


def all_words(drawing: Drawing) -> str:
    """Every word of a sheet in one line."""
    return " ".join(" ".join(text.words for text in words_of(drawing)).replace("\u00a0", " ").split())


@pytest.mark.parametrize("name", KNOWN)
def test_few_leaders_cross_a_dimension_and_mostly_none(name: str) -> None:
    """Where the words of the mouth's chamfer are longer than half the body, its leader has no other way out."""
    assert len(crossed_leaders(drawn(KNOWN[name]))) <= (2 if name == "flat" else 0)


@examples(8, many=1000)
@given(pad=pads(), sheet=sheets())
def test_leaders_cross_few_lines_on_the_sheet_of_any_pad(pad: Pad, sheet: SheetFacts) -> None:
    assert len(crossed_leaders(draw(pad, sheet))) <= 3


def test_the_finder_of_crossed_leaders_sees_one() -> None:
    drawing = drawn(TINY)
    line = next(d.lines[0] for d in drawing.dimensions if d.measure.name == "body_diameter_mm")
    (ax, ay), (bx, by) = line.start, line.end
    across = Line(((ax + bx) / 2, ay - 1), ((ax + bx) / 2 + 0.5, by + 1), Layer.TOLERANCE)
    assert crossed_leaders(drawing, more=(across,))


@pytest.mark.parametrize("pad", [TYPICAL, LONG_STEM, DEEP])
def test_leaders_of_tolerance_frames_meet_their_surface_square_to_it(pad: Pad) -> None:
    """ISO 1101: floor and lip face are level, so the arrows on them point straight up or down."""
    heads = [s for s in drawn(pad).shapes if isinstance(s, Arrow) and s.layer == Layer.TOLERANCE]
    level = [head.direction_deg % 180 for head in heads if head.width_mm < 1 and head.direction_deg % 90 == 0]
    assert level.count(90.0) >= 2


@pytest.mark.parametrize("pad", KNOWN.values())
def test_arrows_of_radii_point_along_a_line_through_the_centre(pad: Pad) -> None:
    for dimension in drawn(pad).dimensions:
        if dimension.kind == "radius":
            (cx, cy), (tx, ty), (ex, ey) = dimension.start, dimension.end, dimension.lines[0].end
            assert abs((tx - cx) * (ey - cy) - (ty - cy) * (ex - cx)) < 1e-6 * hypot(ex - cx, ey - cy)


def test_a_lip_that_is_narrow_on_paper_has_a_detail_of_its_own() -> None:
    """At 1:2 the lip of the huge pad is 1.15 mm wide beside its chamfer; that of the tiny one at 2:1 is 4 mm."""
    assert "Z" in {placed.view.name for placed in drawn(HUGE).views}
    assert "Z" not in {placed.view.name for placed in drawn(TINY).views}


def test_the_slots_floor_radius_counts_both_corners_unless_it_is_one_round() -> None:
    assert measures(TYPICAL, facts())["slot_corner_radius_mm"].words == "2× R0.5 ±0.1"
    assert measures(TYPICAL.with_(slot_corner_radius_mm=4.0), facts())["slot_corner_radius_mm"].words == "R4 ±0.1"


def test_a_stem_has_its_overall_length_for_reference_and_its_end_and_root_in_the_notes() -> None:
    """35 below the seat face and 36.5 above it."""
    words = all_words(drawn(LONG_STEM))
    assert "(71.5)" in words
    assert "stem end 0.5 × 45° as a lead-in, stem root R0.2 to R0.4" in words
    assert "stem end" not in all_words(drawn(TYPICAL))


def test_the_part_is_marked_where_a_leader_or_a_note_says() -> None:
    for pad in KNOWN.values():
        words = all_words(drawn(pad))
        assert words.count("Mark drawing number") == 1
        assert "at most 0.3 deep, not in the slot" in words


def test_a_printed_pads_sheet_speaks_of_a_print() -> None:
    words = all_words(draw(*sheet_of("choir_minibus_printed")))
    assert "printed, foot on the bed, axis upright, layers square to the axis, 100 % infill" in words
    assert "slot floor and seat face dressed" in words
    assert "machined" not in words
    assert "Ra " not in words


def test_a_machined_pads_surfaces_carry_their_signs() -> None:
    """Seat face, slot floor, and what has no sign of its own at the title block."""
    words = [text.words for text in words_of(draw(*sheet_of("mobile_library_van")))]
    assert sorted(w for w in words if w.startswith("Ra ")) == ["Ra 3.2", "Ra 3.2", "Ra 6.3"]


def test_converted_sizes_have_no_more_figures_than_their_tolerance_needs_and_the_sheet_says_so() -> None:
    """4 1/16 in is 103.1875 mm: ±0.3 needs no thousandths. 1 mm is 0.0394 in: ±0.008 in does not either."""
    drawing = draw(*sheet_of("allotment_estate_inch_shop", "mm"))
    assert "⌀103.2" in {d.text.words for d in drawing.dimensions}
    assert "Sizes in mm, converted from inches." in all_words(drawing)
    inch = draw(*sheet_of("allotment_estate_inch_shop"))
    assert "2× 0.040 × 45°" in {d.text.words for d in inch.dimensions}
    assert "converted" not in all_words(inch)


def test_a_size_of_the_jobs_own_unit_is_written_as_it_is() -> None:
    assert measures(TYPICAL.with_(web_mm=20.02), facts())["web_mm"].words == "20.02"
    assert measures(TYPICAL.with_(web_mm=20.02), facts(job_units="in"))["web_mm"].words == "20"


def test_nobody_is_named_where_nobody_signed_and_no_empty_box_is_left() -> None:
    words = all_words(draw(*sheet_of("mobile_library_van")))
    assert "Created by Approved by" in words.replace("Legal owner ", "")
    assert "Saved design" not in words
    assert "−10 to 40 °C" in words


def test_centring_marks_come_ten_millimetres_into_the_frame() -> None:
    """ISO 5457, from memory."""
    drawing = drawn(TYPICAL)
    ends = {line.end for line in drawing.shapes if isinstance(line, Line) and 0.0 in line.start}
    assert (105.0, drawing.frame.bottom + 10) in ends
    assert (drawing.frame.left + 10, 148.5) in ends


def test_a_dual_sheet_on_letter_paper_keeps_a_scale_at_which_the_slot_can_be_seen() -> None:
    """The tool library's slot is 4 mm: 2 mm on paper at 1:2."""
    pad, sheet = sheet_of("tool_library_hatchback_stem", "dual")
    assert (
        draw(
            pad, facts(**{"units": "dual", "paper": "letter", "projection": "third", "cautions": sheet.cautions})
        ).scale.factor
        >= 0.5
    )


@pytest.mark.parametrize("name", sorted(path.stem for path in SAMPLES.glob("*.json") if "no_pad" not in path.stem))
def test_a_sample_is_drawn_at_half_size_at_least(name: str) -> None:
    """The slot of the drain's sample, off the axis and with a relief, once left no room for a length beside a letter."""
    assert draw(*sheet_of(name)).scale.factor >= 0.5
