"""Every dimension of every kind of pad, once, and nothing over anything else; oracle: the pad, and boxes computed apart."""

import pytest
from hypothesis import assume, given

from geometry.drawing import Drawing, SheetError, SheetFacts, dimension_table, draw
from geometry.drawing.measures import measures
from geometry.drawing.model import Layer, Line
from geometry.drawing.notes import note_words
from geometry.drawing.table import WORDS
from geometry.geometrical import tolerances_of
from geometry.pad import Pad
from tests.drawing.faults import faults, overlapping_views, words_of
from tests.drawing.pads import drawn, facts, sheets, shown_sizes
from tests.examples import examples
from tests.geometry.pads import EVERY_KIND, pads_of_any_kind


def sizes_of(drawing: Drawing) -> list[tuple[str, float]]:
    """What is dimensioned on a sheet; the corners of a pocket may stand in a note alone."""
    shown = [(d.measure.name, d.measure.nominal_mm) for d in drawing.dimensions]
    return sorted(size for size in shown if size[0] != "relief_corner_radius_mm")


@pytest.mark.parametrize("name", EVERY_KIND)
def test_every_dimension_of_every_kind_of_pad_is_shown_once(name: str) -> None:
    pad = EVERY_KIND[name]
    assert sizes_of(drawn(pad)) == sorted(shown_sizes(pad).items())


@pytest.mark.parametrize("units", ["mm", "dual"])
@pytest.mark.parametrize("name", EVERY_KIND)
def test_nothing_overlaps_on_the_sheet_of_any_kind_of_pad(name: str, units: str) -> None:
    drawing = drawn(EVERY_KIND[name], units=units)
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
    assert sizes_of(drawing) == sorted(shown_sizes(pad).items())


@examples(10, many=2000)
@given(pad=pads_of_any_kind(), sheet=sheets())
def test_the_sheet_of_any_pad_with_any_features_is_flawless(pad: Pad, sheet: SheetFacts) -> None:
    assert_flawless(pad, sheet_of(pad, sheet))


@examples(3, many=2000)
@given(pad=pads_of_any_kind())
def test_any_pad_finds_room_on_a_wide_sheet(pad: Pad) -> None:
    assert faults(drawn(pad, paper="A3")) == []


@pytest.mark.parametrize("units", ["mm", "dual"])
@pytest.mark.parametrize("name", EVERY_KIND)
def test_every_kind_of_pad_is_drawn_at_half_size_at_least(name: str, units: str) -> None:
    """At 1:5 a slot of 9 mm is 2 mm on paper, and most of the sheet is empty."""
    assert drawn(EVERY_KIND[name], units=units).scale.factor >= 0.5


@pytest.mark.parametrize("name", EVERY_KIND)
def test_linear_dimensions_measure_what_they_say(name: str) -> None:
    """Oracle: the distance of the measured points on paper over the scale."""
    for dimension in drawn(EVERY_KIND[name]).dimensions:
        if dimension.kind in {"across", "up"}:
            along = 0 if dimension.kind == "across" else 1
            measured = abs(dimension.end[along] - dimension.start[along]) / dimension.scale.factor
            assert measured == pytest.approx(dimension.measure.nominal_mm, abs=1e-6)


def test_every_dimension_has_a_name_in_words() -> None:
    assert all(name in WORDS for pad in EVERY_KIND.values() for name in shown_sizes(pad))


FRAMES = {
    "recess": ["symmetry", "parallelism", "run-out"],
    "offset slot": ["position", "parallelism", "run-out"],
    "crossed slots": ["symmetry", "parallelism", "run-out"],
    "cushion": ["parallelism", "run-out"],
    "plug": ["symmetry", "parallelism", "run-out"],
    "round plug": ["position", "parallelism", "run-out"],
}


@pytest.mark.parametrize("name", FRAMES)
def test_the_frames_of_a_sheet_are_those_of_its_pad(name: str) -> None:
    """ISO 1101 (from memory): what is in the middle is symmetrical, beside it or round has a position; CZ joins floors."""
    pad = EVERY_KIND[name]
    given = tolerances_of(pad)
    assert [t.characteristic for t in given] == FRAMES[name]
    values = [text.words for text in drawn(pad).texts if text.layer == Layer.TOLERANCE]
    zones = sorted(words for words in values if words.lstrip("⌀").removesuffix(" CZ").replace(".", "").isdigit())
    joined = {"slot_floor_parallelism_mm"} if pad.is_crossed else set()
    assert zones == sorted(
        f"{'⌀' if t.is_round else ''}{t.value_mm:g}{' CZ' if t.name in joined else ''}" for t in given
    )


def test_an_offset_is_theoretically_exact_in_a_frame_and_its_limits_are_half_the_position_zone() -> None:
    """ISO 1101 (from memory): a framed size has no tolerance of its own. 14 mm, and 0.6 mm of zone about it."""
    drawing = drawn(EVERY_KIND["offset slot"])
    row = next(row for row in dimension_table(drawing) if row.name == "slot_offset_mm")
    assert (row.nominal, row.lower, row.upper) == ("14", "13.7", "14.3")
    box = next(d.words_box for d in drawing.dimensions if d.measure.name == "slot_offset_mm")
    level = [s for s in drawing.shapes if isinstance(s, Line) and s.start[1] == s.end[1] and s.layer == Layer.DIMENSION]
    about = [
        s for s in level if min(s.start[0], s.end[0]) < box.left + 0.01 and max(s.start[0], s.end[0]) > box.right - 0.01
    ]
    assert {round(s.start[1], 6) for s in about} >= {round(box.bottom, 6), round(box.top, 6)}


def words_on(name: str, **changes: object) -> str:
    """Every word of a sheet in one line."""
    texts = words_of(drawn(EVERY_KIND[name], **changes))
    return " ".join(" ".join(text.words for text in texts).replace("\u00a0", " ").split())


def test_a_pockets_corners_have_the_radius_that_an_end_mill_may_leave_at_most() -> None:
    """Oracle: the radius with which views, model and route card make them; the general note is for corners not shown."""
    pad = EVERY_KIND["offset slot with relief"]
    corner = measures(pad, facts())["relief_corner_radius_mm"]
    assert (corner.words, corner.lower_mm, corner.upper_mm) == ("4× R2 max", 0.0, pad.relief_corner_radius_mm)
    words = words_on("offset slot with relief")
    assert "Pocket centred across on the slot, along on the pad." in words
    assert words.count("R2 max") == 1
    assert "Pocket centred across on the slot, along on the pad, corners R2\u00a0max." in " ".join(
        note_words(facts(), pad)
    )
    assert "inner corners not shown R0.4 max" in words


def test_the_corners_of_a_pocket_are_pointed_at_where_there_is_room() -> None:
    (corner,) = (
        d
        for d in drawn(EVERY_KIND["offset slot with relief"], paper="A3").dimensions
        if d.measure.name == "relief_corner_radius_mm"
    )
    assert corner.kind == "radius"


def test_two_slots_of_one_width_have_one_size_and_stand_square_to_each_other() -> None:
    """ISO 129-1 (from memory): equal features are counted; 14 and 14 wide, and one of another width has its own size."""
    pad = EVERY_KIND["crossed slots"]
    alike = pad.with_(cross_slot_width_mm=pad.slot_width_mm)
    other = pad.with_(cross_slot_width_mm=pad.slot_width_mm + 1)
    assert measures(alike, facts())["slot_width_mm"].words == f"2× {pad.slot_width_mm:g}"
    assert "cross_slot_width_mm" not in measures(alike, facts())
    assert measures(other, facts())["slot_width_mm"].words == f"{pad.slot_width_mm:g}"
    assert "cross_slot_width_mm" in measures(other, facts())
    words = words_on("crossed slots")
    assert "Slots at right angles through the axis; CZ: both floors in one zone." in words
    assert "2×" in [text.words for text in drawn(pad).texts if text.layer == Layer.TOLERANCE]


def test_a_slot_beside_the_axis_tells_which_side_is_the_seams() -> None:
    """Oracle: the section, in which the offset goes to the right."""
    assert "Arrow of any size to the seam's side (right in A–A) anywhere on top, at most 0.3 deep." in words_on(
        "offset slot"
    )
    assert "seam's side" not in words_on("crossed slots")


def test_a_cross_hole_goes_through_and_has_centre_lines_in_both_views() -> None:
    """ISO 128-2 (from memory): a hole has a centre line along it, and a cross where it is seen round."""
    name = next(n for n, pad in EVERY_KIND.items() if pad.has_cross_hole)
    pad, drawing = EVERY_KIND[name], drawn(EVERY_KIND[name])
    assert measures(pad, facts())["cross_hole_diameter_mm"].words.endswith(" through")
    for placed in drawing.views:
        if placed.view.name in {"section", "side"}:
            level = {
                s.start[1]
                for s in placed.view.shapes
                if isinstance(s, Line) and s.layer == Layer.CENTRE and s.start[1] == s.end[1]
            }
            assert level == {-pad.cross_hole_distance_mm}


def test_a_pockets_width_stands_on_the_face_clear_of_slot_and_flats_or_outside() -> None:
    """Between flats there may be no room for it beside the pocket: its words once stood on the edge of one."""
    for kind in EVERY_KIND.values():
        if not kind.has_relief:
            continue
        for flats in (0.0, kind.body_diameter_mm * 0.7):
            pad = kind.with_(flats_width_mm=flats)
            drawing = drawn(pad)
            assert faults(drawing) == []
            (top,) = (placed for placed in drawing.views if placed.view.name == "top")
            (width,) = (d for d in drawing.dimensions if d.measure.name == "relief_width_mm")
            across = (pad.flats_width_mm or pad.body_diameter_mm) / 2 * top.scale.factor
            box = width.words_box
            is_on_face = box.bottom > top.at[1] - pad.body_diameter_mm / 2 * top.scale.factor
            assert not is_on_face or max(abs(box.left - top.at[0]), abs(box.right - top.at[0])) < across
