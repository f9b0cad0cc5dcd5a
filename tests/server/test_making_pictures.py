"""Pictures of the route card: no words upon words, none upon a line, all inside the picture."""

import re
import xml.etree.ElementTree as ET
from itertools import combinations, pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.drawing.model import Area, Box, View
from geometry.making.card import Picture
from geometry.making.corner import facet_picture
from geometry.making.slot_plan import slot_picture
from geometry.making.wording import Units
from geometry.pad import Pad
from geometry.route import route_card
from server.making_pictures import LINE, MARGIN, TEXT, Frame, picture_svg, place_labels, words_width
from tests.geometry.shops import job, jobs

NUMBER = r"-?\d+(?:\.\d+)?"


def drawn(picture: Picture, units: Units = "mm") -> ET.Element:
    return ET.fromstring(picture_svg(picture, title="a <picture>", prefix="p", units=units))  # noqa: S314 - our own


def word_boxes(svg: ET.Element) -> list[Box]:
    """The rectangles of the words, y down."""
    found = [e for e in svg.iter() if e.tag.endswith("text")]
    return [
        Box(x, y - TEXT * 0.72, x + words_width(e.text or ""), y)
        for e in found
        for x, y in [(float(e.attrib["x"]), float(e.attrib["y"]))]
    ]


def line_ends(svg: ET.Element) -> list[tuple[float, float]]:
    """Every end of a line of the part, without the leaders."""
    paths = [e.attrib["d"] for e in svg.iter() if e.tag.endswith("path") and e.attrib["class"] != "shop-leader"]
    straight = [d for d in paths if "A" not in d]
    return [(float(x), float(y)) for d in straight for x, y in re.findall(rf"[ML]({NUMBER}) ({NUMBER})", d)]


def assert_clear(svg: ET.Element) -> None:
    boxes, (_, _, width, height) = word_boxes(svg), map(float, svg.attrib["viewBox"].split())
    assert not any(a.meets(b) for a, b in combinations(boxes, 2))
    assert all(b.left >= 0 and b.right <= width and b.bottom >= 0 and b.top <= height for b in boxes)
    right = max(x for x, _ in line_ends(svg))
    assert all(b.left > right for b in boxes) or not boxes


@given(st.floats(0.5, 12), st.integers(1, 12))
def test_the_facets_labels_never_overlap(radius_mm: float, facets: int) -> None:
    svg = drawn(facet_picture(radius_mm=radius_mm, facets=facets))
    assert len(word_boxes(svg)) == facets
    assert_clear(svg)


@given(jobs())
def test_the_slots_labels_never_overlap_and_stand_beside_the_slot(shop_job: tuple[Pad, Conditions, Shop]) -> None:
    pad, conditions, shop = shop_job
    plan = route_card(pad, conditions, shop).slot
    assume(plan is not None)
    assert plan
    assert_clear(drawn(slot_picture(plan), "in"))


def test_the_cusps_labels_stand_in_the_order_of_the_cuts() -> None:
    """Oracle: cut 1 is the lowest, at the seat's face."""
    picture = facet_picture(radius_mm=5, facets=6)
    placed = place_labels(picture.labels, Frame(40, picture.view.box.left, picture.view.box.top), "mm")
    assert [p.words[0] for p in placed] == ["6", "5", "4", "3", "2", "1"]
    levels = [p.at[1] for p in placed]
    assert all(b - a >= LINE - 1e-9 for a, b in pairwise(levels))
    assert levels[0] >= MARGIN


def test_a_picture_is_true_to_scale() -> None:
    """Oracle: across and down, a slot 5 wide and 16 deep is drawn 5 to 16."""
    pad, conditions, shop = job(make__cutter_diameters_mm=[5])
    plan = route_card(pad, conditions, shop).slot
    assert plan
    thick = [e.attrib["d"] for e in drawn(slot_picture(plan)).iter() if e.attrib.get("class") == "shop-thick"]
    ends = [tuple(map(float, p)) for d in thick for p in re.findall(rf"[ML]({NUMBER}) ({NUMBER})", d)]
    wide, deep = (max(e[i] for e in ends) - min(e[i] for e in ends) for i in (0, 1))
    assert wide / deep == pytest.approx(plan.width_mm / plan.depth_mm, rel=1e-3)


def test_what_cannot_be_drawn_is_refused_instead_of_left_out() -> None:
    picture = Picture(View("odd", (Area(((0, 0), (1, 0), (1, 1)), (0, 0, 0)),), Box(0, 0, 1, 1)))
    with pytest.raises(TypeError, match="Area"):
        drawn(picture)
