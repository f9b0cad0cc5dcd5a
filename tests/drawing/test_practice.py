"""Habits of drawing practice that a machinist looks for; oracles are rules of standards, from memory, and plain geometry."""

import json
from dataclasses import replace
from datetime import date
from math import hypot
from pathlib import Path

import pytest

from geometry.design import design_pad
from geometry.drawing import SheetFacts, draw
from geometry.drawing.facts import Paper, Projection, Units
from geometry.drawing.lettering import text_width_mm
from geometry.drawing.measures import measures
from geometry.drawing.model import Arc, Area, Arrow, Drawing, Layer, Line
from geometry.drawing.notes import note_words
from geometry.drawing.windows import detail_view
from geometry.measurements import read_measurements
from geometry.pad import Pad
from geometry.sheet_facts import sheet_facts
from tests.drawing.faults import crossed_leaders, words_of
from tests.drawing.pads import DEEP, HUGE, KNOWN, LONG_STEM, TINY, TYPICAL, drawn, facts, laid_out
from tests.geometry.pads import EVERY_KIND

SAMPLES = Path(__file__).parents[2] / "sample_data"


def sheet_of(name: str, units: Units | None = None) -> tuple[Pad, SheetFacts]:
    """A sample's pad with the facts of its sheet."""
    design = design_pad(read_measurements(json.loads((SAMPLES / f"{name}.json").read_text(encoding="utf-8"))))
    return design.pad, sheet_facts(design, issued=date(2026, 11, 25), units=units)


def all_words(drawing: Drawing) -> str:
    """Every word of a sheet in one line."""
    return " ".join(" ".join(text.words for text in words_of(drawing)).replace("\u00a0", " ").split())


@pytest.mark.parametrize("name", KNOWN)
def test_no_leader_crosses_a_dimension_line(name: str) -> None:
    """Where the words of the mouth's chamfer are longer than half the body, it is told in the top view."""
    assert crossed_leaders(drawn(KNOWN[name])) == []


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


def test_a_stem_has_its_overall_length_for_reference_and_its_end_and_root_where_they_are() -> None:
    """35 below the seat face and 36.5 above it; where no leader finds room, the notes say both."""
    words = all_words(drawn(LONG_STEM))
    assert "(71.5)" in words
    ends = {text.words for text in drawn(LONG_STEM).texts}
    assert {"0.5 × 45°", "R0.2 to R0.4"} <= ends
    assert "stem end" not in words
    assert "stem end 0.5 × 45° as a lead-in; stem root R0.2 to R0.4" in " ".join(
        note_words(facts(), LONG_STEM)
    ).replace("\u00a0", " ")
    assert "R0.2 to R0.4" not in all_words(drawn(TYPICAL))


def test_the_part_is_marked_on_its_side_where_a_leader_or_a_note_says() -> None:
    for pad in KNOWN.values():
        words = all_words(drawn(pad))
        assert words.count("Mark drawing number and") == pad.has_side_to_mark
        assert ("on the cylindrical side, at most 0.3 deep" in words) == pad.has_side_to_mark


def test_a_part_whose_side_is_too_low_to_mark_gets_a_tag() -> None:
    """A cushion of 8 mm over its lip with chamfers of 1.5: 5 mm of side are left."""
    low = EVERY_KIND["cushion"].with_(web_mm=EVERY_KIND["cushion"].seat_length_mm + 8, edge_chamfer_mm=1.5)
    words = all_words(drawn(low))
    assert "on a tag or its bag: the side is too low to mark" in words
    assert "cylindrical" not in words


def test_a_printed_pads_sheet_speaks_of_a_print() -> None:
    words = all_words(laid_out(*sheet_of("choir_minibus_printed")))
    assert "printed, foot on the bed, axis upright, layers square to the axis, 100 % infill" in words
    assert "slot floor and seat face (datum A) dressed to Ra 6.3 µm" in words
    assert "machined" not in words
    # No face has a sign of texture; the two that carry are dressed, and the note says how fine.
    assert words.count("Ra ") == 1


def test_a_machined_pads_surfaces_carry_their_signs() -> None:
    """Seat face, slot floor, and what has no sign of its own at the title block."""
    words = [text.words for text in words_of(laid_out(*sheet_of("mobile_library_van")))]
    assert sorted(w for w in words if w.startswith("Ra ")) == ["Ra 3.2", "Ra 3.2", "Ra 6.3"]


def test_what_is_drawn_in_the_middle_has_a_symmetry_and_the_notes_give_it() -> None:
    """ISO 2768-2 class K (withdrawn; from memory): symmetry 0.6 up to 300 mm, squareness 0.4 up to 100 mm."""
    words = " ".join(note_words(facts(), TYPICAL)).replace("\u00a0", " ")
    assert "run-out 0.2; symmetry 0.6; squareness 0.4." in words
    wide = " ".join(note_words(facts(), HUGE)).replace("\u00a0", " ")
    assert "squareness 0.4, over 100 long 0.6." in wide


def test_nobody_is_named_where_nobody_signed_and_no_empty_box_is_left() -> None:
    words = all_words(laid_out(*sheet_of("mobile_library_van")))
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
    assert laid_out(*sheet_of(name)).scale.factor >= 0.5


def test_the_detail_of_a_slot_floor_is_hatched_as_the_section_is() -> None:
    """Where the plane runs in a second slot only what is under the floors is cut; in a deeper pocket, nothing beside it."""
    crossed, pocket = EVERY_KIND["crossed slots"], EVERY_KIND["offset slot with relief"]
    deep = pocket.with_(relief_depth_mm=pocket.slot_depth_mm + 3.0)
    for pad in (crossed, deep):
        at = (pad.slot_offset_mm + pad.slot_width_mm / 2, pad.web_mm)
        view = detail_view(pad, "X", centre=at, window_mm=0.9)
        cut = [point for shape in view.shapes if isinstance(shape, Area) for point in shape.points]
        wall = [s for s in view.shapes if isinstance(s, Line) and s.start[0] == s.end[0] == 0.0]
        assert len(wall) == 1
        assert bool(cut) == (pad is crossed)
        assert all(z < 1e-6 for _, z in cut)


def test_a_banner_is_not_cut_by_the_centring_mark() -> None:
    drawing = draw(TYPICAL, facts(fit_to_make=False, not_fit_words="Not so."))
    marks = [s for s in drawing.shapes if isinstance(s, Line) and s.start == (105.0, 297.0)]
    assert [mark.end[1] for mark in marks] == [drawing.frame.top]


def test_two_lines_of_a_chamfer_that_would_run_into_one_are_one() -> None:
    """ISO 128-2 (from memory): parallel lines stand 0.7 mm apart. 1 mm is that at 1:1 and not at 1:2."""
    for paper, circles in (("A4", 1), ("A3", 2)):
        drawing = drawn(HUGE, paper=paper)
        (top,) = (placed for placed in drawing.views if placed.view.name == "top")
        edge = HUGE.edge_chamfer_mm * top.scale.factor
        radii = {round(s.radius_mm, 6) for s in top.view.shapes if isinstance(s, Arc)}
        assert len(radii) == (1 if edge < 0.7 else 2) == circles


def test_the_mark_of_an_exact_size_stands_before_its_frame() -> None:
    drawing = draw(EVERY_KIND["offset slot"], facts(critical=("slot_offset_mm",)))
    text = next(d.text for d in drawing.dimensions if d.measure.exact)
    ups = {
        s.start[0]
        for s in drawing.shapes
        if isinstance(s, Line)
        and s.layer == Layer.DIMENSION
        and s.start[0] == s.end[0]
        and s.start[1] > text.box.bottom - 1
    }
    left = min(x for x in ups if text.box.left < x < text.box.right)
    assert left > text.box.left + text_width_mm("◆", text.height_mm)


@pytest.mark.parametrize(
    ("name", "units", "paper"),
    [
        ("kayak_club_estate_drain", "in", "letter"),
        ("kayak_club_estate_drain", "dual", "letter"),
        ("scout_hall_minivan_boss", "dual", "letter"),
        ("seed_library_estate_teeth_only", "dual", "A4"),
    ],
)
def test_a_slot_is_drawn_at_half_size_at_least_though_the_sheet_is_crowded(
    name: str, units: Units, paper: Paper
) -> None:
    """At 1:5 a slot of 4 mm is 0.8 mm wide on paper."""
    pad, sheet = sheet_of(name, units)
    projection: Projection = "third" if paper == "letter" else "first"
    assert laid_out(pad, replace(sheet, paper=paper, projection=projection)).scale.factor >= 0.5
