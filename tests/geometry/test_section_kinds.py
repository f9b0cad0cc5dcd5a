"""The section of every kind of foot and head: all that is asked has a balloon, and none gets into another's way."""

from itertools import product

import pytest
from hypothesis import given, settings

from geometry.drawing.section import Section, section_of_partial, to_svg
from geometry.drawing.section_known import asked_of
from geometry.kinds import FACES, JACKS
from tests.geometry.section_cases import page_of, sections_of_any_kind
from tests.geometry.test_section_layout import (
    _assert_all_inside,
    _assert_leaders_leave_the_columns_alone,
    _assert_nothing_overlaps,
)

KINDS = tuple(product(JACKS, FACES))


@pytest.mark.parametrize("width", [1080, 320])
@settings(max_examples=120)
@given(section=sections_of_any_kind())
def test_nothing_overlaps_and_all_is_inside_for_any_foot_and_head(section: Section, width: int) -> None:
    """Oracle: boxes by their sides, leaders by exact orientation of their ends."""
    page = page_of(section, width=width)
    _assert_nothing_overlaps(page)
    _assert_leaders_leave_the_columns_alone(page)
    _assert_all_inside(page, section)


@pytest.mark.parametrize(("foot", "head"), KINDS)
def test_every_field_with_a_balloon_is_pointed_at_on_paper(foot: str, head: str) -> None:
    """Oracle: the documents' own marks on their fields, numbered from the floor up."""
    section = section_of_partial({"foot": foot, "head": head}, asks_all=True)
    models = asked_of(foot, head).groups
    marked = [
        f"{group}.{name}"
        for group, model in models.items()
        for name, info in model.model_fields.items()
        if isinstance(info.json_schema_extra, dict) and info.json_schema_extra.get("balloon")
    ]
    assert [(p.field, p.number) for p in section.pointers] == [(key, n) for n, key in enumerate(marked, start=1)]


def test_a_balloon_points_at_nothing_that_the_chosen_answer_has_no_use_for() -> None:
    """A bare plate has no ring; with one, its edge carries no skirt. Numbers stay those of the printed sheet."""
    ring = {"jack.ring_bore_mm": 3, "jack.ring_height_mm": 4}
    for answer, shown, unseen in (("edge", {"jack.free_edge_mm": 2}, ring), ("ring", ring, {"jack.free_edge_mm": 2})):
        section = section_of_partial({"foot": "plate", "jack": {"located_by": answer}})
        numbers = {p.field: p.number for p in section.pointers}
        assert shown.items() <= numbers.items()
        assert not unseen.keys() & numbers.keys()


@pytest.mark.parametrize(("foot", "head"), [kind for kind in KINDS if kind != ("cup", "slot")])
def test_the_words_of_the_section_name_no_other_kind(foot: str, head: str) -> None:
    svg = to_svg(section_of_partial({"foot": foot, "head": head}))
    assert foot == "cup" or "cup" not in svg.lower().replace("cup-edge", "")
    assert head == "slot" or "seam" not in svg.lower()
