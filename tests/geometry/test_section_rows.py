"""The section with its balloons in even rows beside the questions."""

from itertools import combinations, pairwise

from hypothesis import given, settings

from geometry.drawing.section import Section
from geometry.drawing.section_layout import lay_out
from geometry.drawing.section_page import RADIUS, Page
from geometry.drawing.section_rows import FIELD, MARK, hundredths, in_even_rows, unplaced
from tests.geometry.section_cases import document, section_of, sections
from tests.geometry.test_section_columns import leaders_cross


def rows_of(section: Section) -> Page:
    page = lay_out(
        section.scene, section.pointers, section.troubles, units="mm", width=638, typed={}, lit=None, heights=unplaced
    )
    return in_even_rows(page, page.frame.at((0, section.scene.top))[1])


@settings(deadline=None)
@given(sections())
def test_no_leader_crosses_another_for_any_input(section: Section) -> None:
    """Oracle: exact orientation of the four ends of every two leaders."""
    for a, b in combinations(rows_of(section).placed, 2):
        assert not leaders_cross(a.leader, b.leader), (a.mark, b.mark)


@settings(deadline=None)
@given(sections())
def test_every_question_has_room_for_its_box_and_every_mark_for_its_words(section: Section) -> None:
    """Oracle: 44 px of a box and a line of 16 px below it; 40 px of a mark's two lines. The page is never too low for them."""
    page = rows_of(section)
    for is_left in (True, False):
        column = sorted((item for item in page.placed if item.is_left == is_left), key=lambda item: item.centre[1])
        for upper, lower in pairwise(column):
            least = 60 if upper.pointer else 40
            assert lower.centre[1] - upper.centre[1] >= least, (upper.mark, lower.mark)
        assert all(30 <= item.centre[1] <= page.ground_y - RADIUS for item in column)


@settings(deadline=None)
@given(sections())
def test_every_balloon_stands_on_the_side_of_what_it_points_at(section: Section) -> None:
    """Oracle: the picture's middle; the car's outboard side is left like the jack, all else of the car right."""
    page = rows_of(section)
    for item in page.placed:
        assert (item.centre[0] < page.width / 2) == item.is_left == (item.leader[1][0] < page.width / 2)
        if item.pointer:
            key = item.pointer.field
            assert item.is_left == (key.startswith("jack.") or key == "seam.clear_outboard_mm")


@settings(deadline=None)
@given(sections())
def test_what_a_finger_hits_lies_around_its_balloon_and_belongs_to_no_other(section: Section) -> None:
    placed = rows_of(section).placed
    for item in placed:
        assert item.target.left < item.centre[0] < item.target.right
        assert abs((item.target.top + item.target.bottom) / 2 - item.centre[1]) < 1e-6
    for a, b in combinations(placed, 2):
        if a.is_left == b.is_left:
            assert min(a.target.bottom, b.target.bottom) <= max(a.target.top, b.target.top)


def test_two_marks_leave_the_questions_their_two_lines_of_notes() -> None:
    """Oracle: the sample with two failures, whose page grows instead of squeezing its rows."""
    page = rows_of(section_of(document("repair_cafe_people_carrier")))
    right = sorted((item for item in page.placed if not item.is_left), key=lambda item: item.centre[1])
    assert sum(item.spot is not None for item in right) == 2
    for upper, lower in pairwise(right):
        assert lower.centre[1] - upper.centre[1] >= (FIELD if upper.pointer else MARK) - 1e-9


def test_every_balloon_and_mark_has_its_own_hundredth() -> None:
    page = rows_of(section_of(document("repair_cafe_people_carrier")))
    at = hundredths(page)
    assert len(at) == len(page.placed)
    assert all(abs(100 * item.centre[1] / page.height - at[item.mark]) < 0.01 for item in page.placed)
