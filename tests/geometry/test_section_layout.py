from itertools import combinations
from math import dist

import pytest
from hypothesis import given

from geometry.drawing.section import Known, Section, TroubleSpot, assembled_section
from geometry.drawing.section_layout import lay_out_detail
from geometry.drawing.section_page import RADIUS, Box, Page, Placed
from geometry.outline import Point
from geometry.rules import CHECK_RULES
from tests.examples import examples
from tests.geometry.section_cases import page_of, sections
from tests.geometry.test_section_columns import leaders_cross

_WIDTHS = pytest.mark.parametrize("width", [1080, 390, 320])


def _ball(placed: Placed) -> Box:
    x, y = placed.centre
    return Box(x - RADIUS, y - RADIUS, x + RADIUS, y + RADIUS)


def _overlap(a: Box, b: Box) -> bool:
    return a.left < b.right and b.left < a.right and a.top < b.bottom and b.top < a.bottom


def _boxes(placed: Placed) -> list[Box]:
    return [_ball(placed), placed.label_box] if placed.label else [_ball(placed)]


def _distance(point: Point, leader: tuple[Point, Point]) -> float:
    (ax, ay), (bx, by) = leader
    dx, dy = bx - ax, by - ay
    along = max(0.0, min(1.0, ((point[0] - ax) * dx + (point[1] - ay) * dy) / (dx * dx + dy * dy)))
    return dist(point, (ax + along * dx, ay + along * dy))


def _assert_nothing_overlaps(page: Page) -> None:
    for a, b in combinations(page.placed, 2):
        assert not any(_overlap(one, other) for one in _boxes(a) for other in _boxes(b)), (a.mark, b.mark)
        assert not _overlap(a.target, b.target)
        assert not leaders_cross(a.leader, b.leader), (a.mark, b.mark)
        assert _distance(b.centre, a.leader) > RADIUS
        assert _distance(a.centre, b.leader) > RADIUS


def _assert_all_inside(page: Page, section: Section) -> None:
    points = [
        page.frame.at(end) for shape in section.shapes for piece in shape.outline for end in (piece.start, piece.end)
    ]
    points += [end for placed in page.placed for end in placed.leader]
    for box in (box for placed in page.placed for box in _boxes(placed)):
        points += [(box.left, box.top), (box.right, box.bottom)]
    assert all(-1e-6 <= x <= page.width + 1e-6 and -1e-6 <= y <= page.height + 1e-6 for x, y in points)


def _assert_leaders_leave_the_columns_alone(page: Page) -> None:
    """A leader ends at the inner side of its own balloon, and every dot lies between the two columns."""
    left = max(p.centre[0] for p in page.placed if p.is_left) + RADIUS
    right = min(p.centre[0] for p in page.placed if not p.is_left) - RADIUS
    assert all(left < p.leader[0][0] < right for p in page.placed)
    assert all(p.leader[1] == pytest.approx((left if p.is_left else right, p.centre[1])) for p in page.placed)


@_WIDTHS
@examples(40, many=1500)
@given(section=sections())
def test_no_balloon_label_or_leader_meets_another_for_any_input(section: Section, width: int) -> None:
    """Oracle: boxes by their sides, leaders by exact orientation of their ends."""
    page = page_of(section, width=width)
    _assert_nothing_overlaps(page)
    _assert_leaders_leave_the_columns_alone(page)


@_WIDTHS
@examples(40, many=1500)
@given(section=sections())
def test_everything_lies_inside_the_picture_for_any_input(section: Section, width: int) -> None:
    _assert_all_inside(page_of(section, width=width), section)


@_WIDTHS
def test_trouble_everywhere_at_once_overlaps_nothing(width: int) -> None:
    """Every place that a check may name, all failing; those that are too many are counted in words."""
    places = sorted({rule.place for rule in CHECK_RULES.values()})
    spots = tuple(TroubleSpot(p, "Seat face on the cup's floor", 1.0, 2.0, "mm", "at_most") for p in places)
    section = assembled_section(Known(), None, spots)
    page = page_of(section, width=width)
    _assert_nothing_overlaps(page)
    _assert_all_inside(page, section)
    shown = [p for p in page.placed if p.spot]
    assert f"{len(places) - len(shown)} more are listed below." in page.notes


@examples(40, many=1000)
@given(section=sections())
def test_a_detail_shows_its_dimension_whole(section: Section) -> None:
    """Both ends of the dimension line lie inside the cut-out, above the caption."""
    for pointer in section.pointers:
        page = lay_out_detail(section.scene, pointer, units="mm", width=390, typed={})
        assert page.window is not None
        for x, y in map(page.frame.at, (pointer.span.start, pointer.span.end, pointer.at)):
            assert page.window.left <= x <= page.window.right
            assert page.window.top <= y <= page.window.bottom


@examples(40, many=1000)
@given(section=sections())
def test_the_ground_lies_at_the_same_height_of_every_picture(section: Section) -> None:
    """Otherwise the page would jump while a size is typed."""
    page = page_of(section)
    assert page.frame.at((0, section.scene.ground))[1] == pytest.approx(page.ground_y)
    assert page.ground_y == 522
