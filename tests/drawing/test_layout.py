"""Nothing on any sheet overlaps; oracle: clipping and boxes computed apart from the layout, in tests/drawing/faults.py."""

from dataclasses import replace

import pytest
import segno
from fontTools.pens.boundsPen import BoundsPen  # type: ignore[import-untyped]
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]
from hypothesis import given

from geometry.drawing import SheetError, SheetFacts, dimension_table, draw
from geometry.drawing.facts import CRITICAL_MARK
from geometry.drawing.lettering import CAP_HEIGHT_UNITS, FONT_DIRECTORY, FONT_FILE
from geometry.drawing.model import Fill, Layer, Line
from geometry.drawing.scales import SCALES
from geometry.pad import Pad
from tests.drawing.faults import faults, overlapping_views, words_of
from tests.drawing.pads import CAUTIONS, HUGE, KNOWN, LONG_STEM, TYPICAL, drawn, facts, pads, sheets, shown_sizes
from tests.examples import examples


@pytest.mark.parametrize("name", KNOWN)
@pytest.mark.parametrize("units", ["mm", "in", "dual"])
def test_nothing_overlaps_on_sheets_of_well_known_proportions(name: str, units: str) -> None:
    assert faults(drawn(KNOWN[name], units=units)) == []


@examples(20, many=3000)
@given(pad=pads(), sheet=sheets())
def test_on_the_sheet_of_any_pad_nothing_overlaps_and_every_dimension_is_shown_once(
    pad: Pad, sheet: SheetFacts
) -> None:
    drawing = draw(pad, sheet)
    assert faults(drawing) == []
    assert overlapping_views(drawing) == []
    shown = sorted((d.measure.name, d.measure.nominal_mm) for d in drawing.dimensions)
    assert shown == sorted(shown_sizes(pad).items())


def test_the_fault_finder_sees_a_text_that_was_moved_onto_another() -> None:
    """A check that cannot fail would be worth nothing: one text is copied onto its neighbour's place."""
    drawing = drawn(TYPICAL)
    first, second = drawing.texts[0], drawing.texts[1]
    onto = replace(first, at=second.at)
    assert faults(replace(drawing, texts=(*drawing.texts, onto)))


def test_the_fault_finder_sees_a_line_through_a_text_and_a_text_outside_the_frame() -> None:
    drawing = drawn(TYPICAL)
    box = drawing.dimensions[0].text.box
    line = Line((box.left - 1, box.bottom), (box.right + 1, box.top), Layer.DIMENSION)
    assert any(words.startswith("line") for words in faults(replace(drawing, shapes=(*drawing.shapes, line))))
    outside = replace(drawing.texts[0], at=(-5.0, 100.0))
    assert any("outside" in words for words in faults(replace(drawing, texts=(*drawing.texts, outside))))


def test_letters_stay_inside_the_boxes_that_the_layout_reckons_with() -> None:
    """Oracle: the extents of each glyph in the font file, read with fontTools."""
    font = TTFont(FONT_DIRECTORY / FONT_FILE)
    glyphs, names = font.getGlyphSet(), font.getBestCmap()
    drawing = draw(LONG_STEM, facts(units="dual", critical=("web_mm",)))
    for text in words_of(drawing):
        low, high = (text.box.left, text.box.right) if text.turned else (text.box.bottom, text.box.top)
        baseline = text.at[0] if text.turned else text.at[1]
        below, above = (high - baseline, baseline - low) if text.turned else (baseline - low, high - baseline)
        for character in text.words.replace(" ", "").replace("\u00a0", ""):
            pen = BoundsPen(glyphs)
            glyphs[names[ord(character)]].draw(pen)
            size = text.height_mm / CAP_HEIGHT_UNITS
            assert -pen.bounds[1] * size <= below
            assert pen.bounds[3] * size <= above


def test_a_flat_wide_pad_with_a_stub_of_a_stem_finds_a_sheet_on_letter_paper() -> None:
    """Found by the long run: the lip's tolerance frame found no way out between the words below the lip."""
    pad = TYPICAL.with_(
        seat_diameter_mm=149.9,
        seat_length_mm=7.5,
        seat_corner_radius_mm=7.5,
        stem_diameter_mm=28.1,
        stem_length_mm=2.0,
        body_diameter_mm=153.9,
        slot_width_mm=2.0,
        slot_depth_mm=17.3,
        web_mm=57.8,
        slot_corner_radius_mm=0.0,
        slot_mouth_chamfer_mm=0.0,
        edge_chamfer_mm=1.9,
    )
    assert faults(drawn(pad, paper="letter", cautions=CAUTIONS * 2)) == []


def test_a_pad_too_slender_for_the_paper_is_refused_in_words() -> None:
    with pytest.raises(SheetError, match="standard scale"):
        draw(TYPICAL.with_(web_mm=3900.0), facts())


def test_the_scale_is_a_standard_one_and_is_written_in_the_title_block() -> None:
    drawing = drawn(HUGE)
    assert drawing.scale in SCALES
    assert drawing.scale.words in {text.words for text in drawing.texts}


def test_first_angle_puts_the_top_view_below_the_section_and_third_angle_above_it() -> None:
    heights = {}
    for projection in ("first", "third"):
        views = {placed.view.name: placed.at[1] for placed in drawn(TYPICAL, projection=projection).views}
        heights[projection] = views["top"] - views["section"]
    assert heights["first"] < 0 < heights["third"]


def test_an_underside_is_drawn_only_where_there_is_a_stem() -> None:
    assert "underside" in {placed.view.name for placed in drawn(LONG_STEM).views}
    assert "underside" not in {placed.view.name for placed in drawn(TYPICAL).views}


def test_the_square_code_is_that_of_the_saved_address_and_absent_without_one() -> None:
    """Oracle: the matrix that segno makes of the same address, read back from the dark rectangles."""
    address = "https://pads.example.org/d/ae839f3d7a4b"
    code = next(shape for shape in drawn(TYPICAL, saved_address=address).shapes if isinstance(shape, Fill))
    rows = [list(row) for row in segno.make(address, error="m", micro=False).matrix]
    left, top = min(box.left for box in code.boxes), max(box.top for box in code.boxes)
    module = (max(box.right for box in code.boxes) - left) / len(rows)
    dark = [
        (left + (j + 0.5) * module, top - (i + 0.5) * module)
        for i, row in enumerate(rows)
        for j, bit in enumerate(row)
        if bit
    ]
    assert sum(box.width * box.height for box in code.boxes) == pytest.approx(len(dark) * module**2)
    assert all(any(b.left < x < b.right and b.bottom < y < b.top for b in code.boxes) for x, y in dark)
    assert not any(isinstance(shape, Fill) for shape in drawn(TYPICAL).shapes)


def test_sizes_that_an_estimate_depends_on_carry_a_mark_that_the_notes_explain() -> None:
    drawing = draw(TYPICAL, facts(critical=("web_mm",)))
    words = [dimension.text.words for dimension in drawing.dimensions]
    assert [w for w in words if w.startswith(CRITICAL_MARK)] == [f"{CRITICAL_MARK} 20"]
    assert any(text.words.startswith(CRITICAL_MARK) for text in drawing.texts)


def test_a_date_that_is_no_day_is_refused() -> None:
    with pytest.raises(SheetError, match="not a day"):
        facts(date="25 November")


@pytest.mark.parametrize(("units", "words"), [("mm", "⌀67.2"), ("in", "⌀2.646"), ("dual", "⌀67.2 [2.646]")])
def test_sizes_are_written_in_the_units_of_the_shop(units: str, words: str) -> None:
    """67.2/25.4 = 2.6457."""
    assert words in {dimension.text.words for dimension in drawn(TYPICAL, units=units).dimensions}


def test_the_table_has_each_dimension_with_its_limits_by_the_general_tolerances() -> None:
    """ISO 2768-1 m: 67.2 ±0.3; an inner radius carries its own ±0.1."""
    rows = {row.name: row for row in dimension_table(drawn(TYPICAL))}
    assert (rows["seat_diameter_mm"].lower, rows["seat_diameter_mm"].upper) == ("66.9", "67.5")
    assert rows["seat_diameter_mm"].tolerance == "ISO 2768-m"
    assert (rows["slot_corner_radius_mm"].lower, rows["slot_corner_radius_mm"].tolerance) == ("0.4", "at the dimension")
    assert len(rows) == 11


@pytest.mark.parametrize(
    ("nominal_mm", "words"), [(62.31, "⌀2 29/64"), (63.5, "⌀2 1/2"), (50.8, "⌀2"), (67.2, "⌀2.646"), (62.33, "⌀2.454")]
)
def test_a_fraction_stands_only_where_the_size_is_a_64th_of_an_inch(nominal_mm: float, words: str) -> None:
    """2 29/64 in = 62.309 mm; 62.33 mm is 0.0008 in off it, more than the last decimal shows."""
    pad = TYPICAL.with_(seat_diameter_mm=nominal_mm)
    assert words in {dimension.text.words for dimension in drawn(pad, units="in_fraction").dimensions}


def test_limits_of_a_sheet_in_fractions_are_decimals_as_instruments_show_them() -> None:
    """2.500 in ±0.3 mm is 2.4882 to 2.5118 in, no wider in three decimals; the note of general tolerances has decimals too."""
    drawing = draw(TYPICAL.with_(seat_diameter_mm=63.5), facts(units="in_fraction"))
    row = next(row for row in dimension_table(drawing) if row.name == "seat_diameter_mm")
    assert (row.nominal, row.lower, row.upper) == ("⌀2 1/2", "2.489", "2.511")
    assert any("±0.0118" in text.words for text in drawing.texts)


@pytest.mark.parametrize(("paper", "size"), [("A3", (420.0, 297.0)), ("tabloid", (431.8, 279.4))])
def test_wide_papers_have_their_standard_size_and_room_for_the_largest_pad(
    paper: str, size: tuple[float, float]
) -> None:
    """ISO 216; ANSI B is 17 × 11 in."""
    drawing = drawn(HUGE, paper=paper)
    assert (drawing.width_mm, drawing.height_mm) == size
    assert faults(drawing) == []
