"""Signs about the section and words at the other views: each stands where it speaks of its own feature and of no other.

Oracles are rules of ISO 129-1, ISO 1101, ISO 5459 and ISO 128-2, from memory, and plain geometry.
"""

from math import hypot

import pytest

from geometry.drawing import Drawing, draw
from geometry.drawing.blocks import side_block, top_block, with_marking
from geometry.drawing.facts import Units
from geometry.drawing.measures import measures
from geometry.drawing.model import Arc, Arrow, Curve, Layer, Line, PlacedView
from geometry.drawing.notes import marking_words
from geometry.drawing.scales import SCALES
from geometry.geometrical import SEAT_FACE
from tests.drawing.faults import words_of
from tests.drawing.pads import facts
from tests.drawing.test_practice import all_words, sheet_of
from tests.geometry.pads import EVERY_KIND

WITH_SKIRT = ("puppet_theatre_van_plate_edge", "seed_library_estate_teeth_only")


def view_of(drawing: Drawing, name: str) -> PlacedView:
    return next(placed for placed in drawing.views if placed.view.name == name)


def lines_on(drawing: Drawing, layer: Layer) -> list[Line]:
    return [shape for shape in drawing.shapes if isinstance(shape, Line) and shape.layer == layer]


@pytest.mark.parametrize("units", ["mm", "dual"])
def test_the_frame_of_an_exact_size_stands_off_its_dimension_line(units: Units) -> None:
    """ISO 128-2: parallel lines are 0.7 mm apart at least."""
    drawing = draw(EVERY_KIND["offset slot"], facts(units=units))
    dimension = next(d for d in drawing.dimensions if d.measure.exact)
    level, text = dimension.lines[0].start[1], dimension.words_box
    sides = [
        line.start[1]
        for line in lines_on(drawing, Layer.DIMENSION)
        if line.start[1] == line.end[1] and text.left - 1 < line.start[0] < text.right + 1
        if text.bottom - 0.1 < line.start[1] < text.top + 0.1
    ]
    assert len(sides) == 2
    assert min(sides) - level >= 0.7


@pytest.mark.parametrize("name", WITH_SKIRT)
def test_the_datum_of_a_seat_within_a_skirt_stands_on_the_seat_face_itself(name: str) -> None:
    """Beside the part its line ran across a depth's arrows, a millimetre from that of the groove (ISO 5459: on the feature)."""
    pad, sheet = sheet_of(name)
    drawing = draw(pad, sheet)
    section = view_of(drawing, "section")
    written = [text for text in words_of(drawing) if text.words == SEAT_FACE and text.layer == Layer.TOLERANCE]
    letters = [text.moved((-section.at[0], -section.at[1])).at for text in written]
    half, depth = (size * section.scale.factor for size in (pad.seat_flat_diameter_mm / 2, pad.skirt_length_mm))
    # The other is in the frame of the floor's parallelism, in a detail.
    assert len(letters) == 2
    assert sum(abs(x) < half and -20 - depth < y < 0 for x, y in letters) == 1


@pytest.mark.parametrize("factor", [0.5, 1.0])
@pytest.mark.parametrize("half", [False, True])
def test_the_words_on_marking_a_pad_with_flats_point_at_what_is_left_of_its_cylinder(
    factor: float, *, half: bool
) -> None:
    """The flats are as far apart as the jack allows: figures on them would be cut away or rub."""
    pad, _ = sheet_of("scout_hall_minivan_boss")
    scale = next(scale for scale in SCALES if scale.factor == factor)
    radius, flat = pad.body_diameter_mm * factor / 2, pad.flats_width_mm * factor / 2
    reach = (radius**2 - flat**2) ** 0.5

    side = with_marking(pad, side_block(pad, scale, half=half), marking_words("mm"))
    (dot,) = (s for s in side.canvas.shapes if isinstance(s, Arc))
    assert reach < dot.centre[0] < radius
    assert pad.foot_bottom_mm * factor < dot.centre[1] < pad.body_top_mm * factor

    plain = top_block(pad, measures(pad, facts()), scale, moved=frozenset())
    top = with_marking(pad, plain, marking_words("mm"))
    (arrow,) = (s for s in top.canvas.shapes if isinstance(s, Arrow) and s not in plain.canvas.shapes)
    assert hypot(*arrow.tip) == pytest.approx(radius)
    assert abs(arrow.tip[0]) < flat


def test_edges_of_flats_are_said_to_have_no_chamfer() -> None:
    flat, sheet = sheet_of("scout_hall_minivan_boss")
    round_, other = sheet_of("mobile_library_van")
    assert "body's round edges only, top and bottom" in all_words(draw(flat, sheet))
    assert "body's edges, top and bottom" in all_words(draw(round_, other))


def test_a_chamfer_that_is_small_on_paper_still_cuts_the_corner_of_the_side_view() -> None:
    """Its two edges would run into one line (ISO 128-2: 0.7 mm apart), so the inner one is left out."""
    pad, sheet = sheet_of("mobile_library_van")
    drawing = draw(pad, sheet)
    side = view_of(drawing, "side")
    edge, radius, top = pad.edge_chamfer_mm, pad.body_diameter_mm / 2, pad.body_top_mm
    assert 0 < edge * side.scale.factor < 0.7
    points = {
        (round(x, 6), round(y, 6))
        for shape in side.view.shapes
        if isinstance(shape, Line | Curve)
        for x, y in (shape.points if isinstance(shape, Curve) else (shape.start, shape.end))
    }
    assert (round(radius - edge, 6), round(pad.foot_bottom_mm, 6)) in points
    assert (round(radius, 6), round(pad.foot_bottom_mm + edge, 6)) in points
    assert (round(radius, 6), round(top, 6)) not in points
    level = [s for s in side.view.shapes if isinstance(s, Line) and s.start[1] == s.end[1] == top - edge]
    assert not level


def test_a_root_and_the_texture_of_the_seat_are_on_leaders_that_do_not_cross() -> None:
    """On the tool library's sheet they did: whichever was placed second had no other way."""
    drawing = draw(*sheet_of("tool_library_hatchback_stem"))
    words = all_words(drawing)
    assert "R0.2 to R0.4" in words
    assert "seat face (datum A)" not in words
