"""Leaders, shelves and frames keep clear of other lines; oracle: tests/drawing/faults.py, which knows nothing of the placing."""

from dataclasses import replace
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.drawing import SheetFacts, draw
from geometry.drawing.canvas import Canvas
from geometry.drawing.facts import Paper, Units
from geometry.drawing.meeting import cost_among, is_met, length_within, rival
from geometry.drawing.model import Box, Layer, Line
from geometry.pad import Pad
from tests.drawing.faults import crossed_leaders, faults, lines_beside_others
from tests.drawing.pads import TINY, TYPICAL, drawn, laid_out, pads, sheets
from tests.drawing.test_practice import SAMPLES, sheet_of
from tests.examples import examples

POOL = 24
"""How a crowded sheet is laid out is told by many sheets: one of a pad that nobody would make may be worse than any rule.

The first two dozen that are tried are the simplest pad two dozen times, so that two tries are the least."""
NAMES = sorted(path.stem for path in SAMPLES.glob("*.json") if "no_pad" not in path.stem)
SHEETS: tuple[tuple[Paper, Units], ...] = (
    ("A4", "mm"),
    ("A4", "dual"),
    ("letter", "in"),
    ("A3", "mm"),
    ("tabloid", "dual"),
)


def turned(number: int, name: str) -> tuple[Pad, SheetFacts]:
    """Each sample on a paper and in units of its turn, so that in every run each of them is tried."""
    pad, sheet = sheet_of(name)
    paper, units = SHEETS[number % len(SHEETS)]
    return pad, replace(sheet, paper=paper, units=units)


@pytest.mark.parametrize(("number", "name"), list(enumerate(NAMES)))
def test_no_leader_shelf_or_frame_of_a_sample_runs_along_a_line_of_something_else(number: int, name: str) -> None:
    """A run-out's leader once lay on the extension line of the stem's end, and read as the run-out of that."""
    assert lines_beside_others(laid_out(*turned(number, name))) == []


@pytest.mark.full
@pytest.mark.parametrize(("name", "at"), list(product(NAMES, range(len(SHEETS)))))
def test_the_same_on_every_paper_and_in_all_units(name: str, at: int) -> None:
    assert lines_beside_others(draw(*turned(at, name))) == []


@examples(2, many=10, shrinks=False)
@given(jobs=st.lists(st.tuples(pads(), sheets()), min_size=POOL, max_size=POOL))
def test_on_the_sheets_of_any_two_dozen_pads_hardly_any_leader_is_in_the_way_and_none_goes_through_words(
    jobs: list[tuple[Pad, SheetFacts]],
) -> None:
    """Of 300 such sheets one had a leader across a dimension line, and one a leader or frame close beside another's line."""
    drawings = [draw(pad, sheet) for pad, sheet in jobs]
    for finder in (crossed_leaders, lines_beside_others):
        found = [len(finder(drawing)) for drawing in drawings]
        assert max(found) <= 3
        assert sum(found) <= POOL / 4
    assert [fault for drawing in drawings for fault in faults(drawing) if "through" in fault] == []


def test_the_finder_of_lines_beside_others_sees_one_half_a_millimetre_off() -> None:
    drawing = drawn(TINY)
    line = next(d.lines[0] for d in drawing.dimensions if d.measure.name == "body_diameter_mm")
    (ax, ay), (bx, by) = line.start, line.end
    near, far = (Line((ax, ay + off), (bx, by + off), Layer.TOLERANCE) for off in (0.5, 1.5))
    assert lines_beside_others(drawing, more=(near,))
    assert lines_beside_others(drawing, more=(far,)) == lines_beside_others(drawing)


def test_a_leader_pays_for_crossing_a_line_and_more_for_running_along_it() -> None:
    level = rival(((0.0, 0.0), (20.0, 0.0)), across=3.0, beside=4.0)
    assert cost_among(((5.0, -5.0), (6.0, 5.0)), [level]) == (3.0, 0.0)
    assert cost_among(((5.0, 1.0), (15.0, 1.0)), [level]) == (0.0, 4.0)
    assert cost_among(((5.0, 2.0), (15.0, 2.0)), [level]) == (0.0, 0.0)
    assert cost_among(((25.0, 0.0), (35.0, 0.0)), [level]) == (0.0, 0.0)


def test_how_much_of_a_line_lies_in_a_box() -> None:
    box = Box(0.0, 0.0, 10.0, 10.0)
    assert length_within(box, (-5.0, 5.0), (20.0, 5.0)) == pytest.approx(10.0)
    assert length_within(box, (5.0, 5.0), (8.0, 9.0)) == pytest.approx(5.0)
    assert length_within(box, (-1.0, 0.0), (-1.0, 10.0)) == 0.0


def test_a_leader_had_better_go_round_the_part_than_through_it() -> None:
    canvas = Canvas(part=[Box(0.0, 0.0, 40.0, 10.0)])
    words = Box(50.0, 4.0, 60.0, 7.0)
    through = canvas.trouble_of_leader(words, [Line((0.0, 5.0), (50.0, 5.0), Layer.TOLERANCE)], is_sign=True)
    away = canvas.trouble_of_leader(words, [Line((40.0, 5.0), (50.0, 5.0), Layer.TOLERANCE)], is_sign=True)
    assert through > 3 > away == 0


def test_a_narrow_groove_and_the_corner_in_it_share_one_detail() -> None:
    """Three lines within 1.5 mm could not be told apart: the run-out's arrow between two extension lines."""
    views = {placed.view.name for placed in laid_out(*sheet_of("puppet_theatre_van_plate_edge")).views}
    assert "Z" in views
    assert "Y" not in views


@pytest.mark.parametrize("units", ["mm", "in", "dual"])
def test_a_pad_of_common_size_is_drawn_at_half_size_at_least_in_all_units(units: Units) -> None:
    for name in ("canoe_store_bored_ram", "kayak_club_estate_drain", "seed_library_estate_teeth_only"):
        pad, sheet = sheet_of(name)
        paper: Paper = "letter" if units == "in" else "A4"
        assert laid_out(pad, replace(sheet, units=units, paper=paper)).scale.factor >= 0.5
    assert draw(TYPICAL, drawn(TYPICAL, units=units).facts).scale.factor >= 0.5


def test_a_shelf_had_better_not_begin_on_a_line_of_a_dimension() -> None:
    """A chamfer's note once began at the end of the diameter's line, and read as the rest of it."""
    level = rival(((0.0, 0.0), (20.0, 0.0)), across=3.0, beside=4.0)
    assert is_met((20.3, 0.3), [level], 0.7, beyond=1.0)
    assert not is_met((21.5, 0.0), [level], 0.7, beyond=1.0)
    assert not is_met((10.0, 1.0), [level], 0.7, beyond=1.0)
