"""What the section has no good place for stands at another view that shows its feature; oracle: the pad's own sizes."""

import re
from dataclasses import replace
from math import hypot

import pytest

from geometry.drawing import Drawing, draw
from geometry.drawing.facts import Paper, Units
from geometry.drawing.model import Arrow, Layer, Line, PlacedView, Point
from geometry.pad import Pad
from tests.drawing.faults import crossed_arrows, crossed_leaders, faults, overlapping_views
from tests.drawing.pads import TYPICAL, drawn, laid_out
from tests.drawing.test_leaders import NAMES, SHEETS, turned
from tests.drawing.test_practice import all_words, sheet_of
from tests.geometry.pads import EVERY_KIND

CANOE, TOOL, POTTERY = "canoe_store_bored_ram", "tool_library_hatchback_stem", "pottery_studio_city_car_pocket"
BELL = "bell_ringers_wagon_plate_ring"


def on_sheet(name: str, units: Units, paper: Paper) -> tuple[Pad, Drawing]:
    """A sample on a paper in some units."""
    pad, sheet = sheet_of(name)
    return pad, laid_out(pad, replace(sheet, paper=paper, units=units))


def view_of(drawing: Drawing, name: str) -> PlacedView:
    """The one view of a name."""
    (placed,) = (placed for placed in drawing.views if placed.view.name == name)
    return placed


def in_model(placed: PlacedView, point: Point) -> Point:
    """A point of the paper in a view's own millimetres."""
    return (point[0] - placed.at[0]) / placed.scale.factor, (point[1] - placed.at[1]) / placed.scale.factor


def tip_of(drawing: Drawing, name: str, view: str) -> Point:
    """Where the leader of a size ends in a view, in model mm."""
    (dimension,) = (d for d in drawing.dimensions if d.measure.name == name)
    return in_model(view_of(drawing, view), dimension.arrows[0].tip)


def test_the_hole_of_a_pin_is_told_where_it_is_seen_round() -> None:
    pad, drawing = on_sheet(CANOE, "in", "letter")
    y, z = tip_of(drawing, "cross_hole_diameter_mm", "side")
    assert hypot(y, z + pad.cross_hole_distance_mm) == pytest.approx(pad.cross_hole_diameter_mm / 2)


def test_the_run_out_at_the_side_view_meets_the_lips_face_from_below() -> None:
    pad, drawing = on_sheet(BELL, "in", "letter")
    side = view_of(drawing, "side")
    heads = [s for s in drawing.shapes if isinstance(s, Arrow) and s.layer is Layer.TOLERANCE and s.direction_deg == 90]
    tips = [in_model(side, head.tip) for head in heads]
    outer = pad.body_diameter_mm / 2 - pad.edge_chamfer_mm
    assert any(pad.seat_diameter_mm / 2 < abs(y) < outer and z == pytest.approx(pad.seat_length_mm) for y, z in tips)


def test_the_mouths_chamfer_is_told_at_the_slots_edge_in_the_top_view() -> None:
    pad, drawing = on_sheet(TOOL, "in", "letter")
    x, y = tip_of(drawing, "slot_mouth_chamfer_mm", "top")
    assert pad.slot_width_mm / 2 <= abs(x) <= pad.slot_width_mm / 2 + pad.slot_mouth_chamfer_mm
    assert hypot(x, y) < pad.body_diameter_mm / 2


def test_a_very_shallow_seats_run_out_is_told_in_the_detail_of_its_corner_which_shows_the_lip() -> None:
    pad, drawing = on_sheet(CANOE, "dual", "letter")
    detail = view_of(drawing, "Y")
    heads = [s for s in drawing.shapes if isinstance(s, Arrow) and s.layer is Layer.TOLERANCE and s.direction_deg == 90]
    (tip,) = [tip for head in heads if hypot(*(tip := in_model(detail, head.tip))) < detail.view.box.right]
    lip, face = pad.seat_length_mm / 2, -pad.seat_length_mm / 2
    assert tip[1] == pytest.approx(lip)
    assert tip[0] > 0
    assert min(hypot(tip[0], lip), hypot(0.0, face)) < detail.view.box.right
    (corner,) = (d for d in drawing.dimensions if d.measure.name == "seat_corner_radius_mm")
    x, z = in_model(detail, corner.arrows[0].tip)
    radius = pad.seat_corner_radius_mm
    assert hypot(x + radius, z - face - radius) == pytest.approx(radius)


def test_where_no_side_view_has_room_the_top_view_tells_both_chamfers() -> None:
    pad, sheet = sheet_of(CANOE)
    drawing = draw(pad, replace(sheet, paper="letter", units="dual", projection="third"))
    assert "side" not in {placed.view.name for placed in drawing.views}
    rim = pad.body_diameter_mm / 2
    assert rim - pad.edge_chamfer_mm <= hypot(*tip_of(drawing, "edge_chamfer_mm", "top")) <= rim
    x, _ = tip_of(drawing, "slot_mouth_chamfer_mm", "top")
    assert pad.slot_width_mm / 2 <= abs(x) <= pad.slot_width_mm / 2 + pad.slot_mouth_chamfer_mm


def test_the_seats_corner_is_met_at_the_side_view() -> None:
    pad, drawing = on_sheet(POTTERY, "dual", "A4")
    y, z = tip_of(drawing, "seat_corner_radius_mm", "side")
    radius = pad.seat_corner_radius_mm
    assert hypot(abs(y) - (pad.seat_diameter_mm / 2 - radius), z - radius) == pytest.approx(radius)


def test_a_side_view_that_stands_apart_has_an_arrow_and_a_letter() -> None:
    """ISO 128-3 (from memory): reference arrows; the letter stands at the arrow and above the view."""
    _, drawing = on_sheet(POTTERY, "dual", "A4")
    side, section = view_of(drawing, "side"), view_of(drawing, "section")
    assert side.at[1] != section.at[1]
    letters = [text for text in drawing.texts if text.words == "D"]
    assert len(letters) == 2
    box = side.view.box
    assert any(
        abs(text.at[0] - (side.at[0] + (box.left + box.right) / 2 * side.scale.factor)) < 0.01 for text in letters
    )
    arrows = [s for s in drawing.shapes if isinstance(s, Arrow) and s.layer is Layer.THIN and s.direction_deg == 180]
    (arrow,) = arrows
    low, high = (section.at[1] + z * section.scale.factor for z in (section.view.box.bottom, section.view.box.top))
    assert low < arrow.tip[1] < high
    assert arrow.tip[0] > section.at[0] + section.view.box.right * section.scale.factor


def test_a_side_view_in_projection_has_no_letter() -> None:
    _, drawing = on_sheet(CANOE, "in", "letter")
    assert view_of(drawing, "side").at[1] == view_of(drawing, "section").at[1]
    assert "D" not in {text.words for text in drawing.texts}


def assert_told_just_once(name: str, at: int) -> None:
    """On a leader at the section or the side view, or in the notes: roots, lead-in, the seat's texture beside the top's."""
    pad, sheet = turned(at, name)
    words = all_words(laid_out(pad, sheet))
    assert len(re.findall(r"R0\.\d+ to R0", words)) == pad.has_stem + pad.has_plug
    assert len(re.findall(r"(?<!× )\b0\.(?:5|020) × 45°", words)) == pad.has_stem
    assert len(re.findall(r"Ra 3\.2|\(datum A\) 3\.2", words)) == (0 if sheet.as_printed else 2)


@pytest.mark.parametrize(("number", "name"), list(enumerate(NAMES)))
def test_what_a_leader_may_tell_is_told_just_once(number: int, name: str) -> None:
    assert_told_just_once(name, number)


@pytest.mark.full
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("at", range(len(SHEETS)))
def test_it_is_on_every_paper_and_in_all_units(name: str, at: int) -> None:
    assert_told_just_once(name, at)


@pytest.mark.parametrize(("number", "name"), list(enumerate(NAMES)))
def test_no_leader_of_a_sample_crosses_a_dimension_line_and_nothing_its_arrow(number: int, name: str) -> None:
    assert crossed_leaders(laid_out(*turned(number, name))) == []


@pytest.mark.full
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("at", range(len(SHEETS)))
def test_none_does_on_any_paper_or_in_any_units(name: str, at: int) -> None:
    drawing = draw(*turned(at, name))
    assert crossed_leaders(drawing) == []
    assert crossed_arrows(drawing) == []


def test_a_details_letter_keeps_off_the_axis_of_a_slot_that_is_off_centre() -> None:
    """The letter X once stood on that axis, which runs on above the slot."""
    pad = EVERY_KIND["skirt"].with_(
        seat_diameter_mm=25.1,
        seat_length_mm=10.01,
        seat_corner_radius_mm=2.91,
        skirt_bore_mm=27.05,
        skirt_length_mm=2.23,
        stem_diameter_mm=7.83,
        stem_length_mm=1.95,
        body_diameter_mm=47.11,
        flats_width_mm=44.01,
        slot_width_mm=30.93,
        slot_depth_mm=3.2,
        slot_offset_mm=1.95,
        web_mm=17.43,
        slot_corner_radius_mm=1.62,
        slot_mouth_chamfer_mm=1.0,
        edge_chamfer_mm=1.0,
    )
    assert faults(drawn(pad, units="in", projection="third")) == []


def test_a_section_between_flats_is_no_wider_than_it_is_drawn() -> None:
    """Its side view once stood where the round body would have been, and was taken to lie over the section."""
    pad = EVERY_KIND["skirt"].with_(
        seat_diameter_mm=15.0,
        seat_length_mm=7.03,
        seat_corner_radius_mm=0.0,
        skirt_bore_mm=17.27,
        skirt_length_mm=4.56,
        stem_diameter_mm=3.9,
        stem_length_mm=4.43,
        body_diameter_mm=42.69,
        flats_width_mm=22.42,
        slot_width_mm=0.0,
        slot_depth_mm=0.0,
        slot_corner_radius_mm=0.0,
        slot_mouth_chamfer_mm=0.0,
        web_mm=10.13,
        edge_chamfer_mm=1.0,
    )
    drawing = drawn(pad, paper="tabloid")
    box = view_of(drawing, "section").view.box
    assert box.right - box.left == pad.flats_width_mm
    assert overlapping_views(drawing) == []


def test_words_at_half_a_side_view_stay_right_of_its_axis() -> None:
    for at, name in ((2, CANOE), (1, POTTERY), (1, CANOE)):
        drawing = laid_out(*turned(at, name))
        side = view_of(drawing, "side")
        if side.view.box.left == 0:
            strokes = [s for s in side.view.shapes if isinstance(s, Line) and s.layer is Layer.THIN]
            assert strokes
            assert faults(drawing) == []


def test_a_plain_pad_on_a_plain_sheet_keeps_its_sizes_at_the_section() -> None:
    drawing = drawn(TYPICAL)
    section, side = view_of(drawing, "section"), view_of(drawing, "side")
    (corner,) = (d for d in drawing.dimensions if d.measure.name == "seat_corner_radius_mm")
    x, _ = in_model(section, corner.arrows[0].tip)
    assert abs(x) <= TYPICAL.seat_diameter_mm / 2
    assert abs(in_model(side, corner.arrows[0].tip)[0]) > TYPICAL.body_diameter_mm / 2
