"""Grid references of a large sheet; oracle: ISO 5457:1999, 4.4, from memory (A3 has 8 × 6 fields, 50 mm long, no I and no O)."""

from collections.abc import Callable

import pytest

from geometry.drawing.frame import PAPER_MM
from geometry.drawing.grid import grid_references
from geometry.drawing.model import Box, Layer, Text
from geometry.drawing.style import STYLE
from tests.drawing.faults import faults, words_of
from tests.drawing.pads import TYPICAL, drawn


def test_an_a3_sheet_has_eight_columns_and_six_rows_named_on_all_four_sides() -> None:
    drawing = drawn(TYPICAL, paper="A3")
    named = [text for text in words_of(drawing) if text.layer is Layer.FRAME]
    sides: tuple[tuple[Callable[[Text], bool], str, int], ...] = (
        (lambda t: t.at[1] > drawing.frame.top, "12345678", 0),
        (lambda t: t.at[1] < drawing.frame.bottom, "12345678", 0),
        (lambda t: t.at[0] < drawing.frame.left, "FEDCBA", 1),
        (lambda t: t.at[0] > drawing.frame.right, "FEDCBA", 1),
    )
    for side, words, across in sides:
        there = sorted((text for text in named if side(text)), key=lambda text: text.at[across])
        assert "".join(text.words for text in there) == words
    assert not faults(drawing)


def test_fields_are_counted_from_the_middle_of_the_paper() -> None:
    width, height = PAPER_MM["A3"]
    frame = Box(20, 10, width - 10, height - 10)
    lines, _ = grid_references(frame, width, height)
    ticks = {
        line.start[0] for line in lines if line.start[0] == line.end[0] and frame.left < line.start[0] < frame.right
    }
    assert ticks == {width / 2 + 50 * i for i in (-3, -2, -1, 1, 2, 3)}
    assert len(lines) == 4 + 2 * 6 + 2 * 4


@pytest.mark.parametrize(
    ("width", "height", "columns", "rows"),
    [(1189, 841, 24, 16), (841, 594, 16, 12), (594, 420, 12, 8), (420, 297, 8, 6), (297, 210, 6, 4)],
)
def test_every_standard_format_has_the_standards_number_of_fields(
    width: float, height: float, columns: int, rows: int
) -> None:
    _, texts = grid_references(Box(20, 10, width - 10, height - 10), width, height)
    letters = "".join(text.words for text in texts if text.at[0] < 20 and text.words.isalpha())
    assert letters == "ABCDEFGHJKLMNPQR"[:rows]
    assert max(int(text.words) for text in texts if text.words.isdigit()) == columns
    assert {text.height_mm for text in texts} == {STYLE.large_mm}


@pytest.mark.parametrize("paper", ["A4", "letter", "tabloid"])
def test_smaller_and_inch_sheets_have_none(paper: str) -> None:
    assert not [text for text in words_of(drawn(TYPICAL, paper=paper)) if text.layer is Layer.FRAME]
