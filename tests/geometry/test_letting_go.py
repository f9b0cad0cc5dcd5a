"""What a fixed size would be if it were let go: one answer wherever it is said."""

import re
from typing import Any

import pytest
from hypothesis import given, settings

from geometry.calculation.told import length
from geometry.calculation.why import why
from geometry.design import Design, let_go
from geometry.errors import NoPadFitsError
from server.fixing import cost_of_fixing
from tests.documents import designed, ordinary_documents, sample, van


@pytest.mark.parametrize(
    ("name", "value"), [("web_mm", 30.0), ("slot_depth_mm", 12.0), ("body_diameter_mm", 120.0), ("slot_width_mm", 6.0)]
)
def test_the_sheet_and_the_page_say_the_same_free_size(name: str, value: float) -> None:
    """Oracle: the pad of the same job without that size."""
    design = designed(van(**{f"fixed__{name}": value}))
    free = getattr(designed(van()).pad, name)
    assert f"let go, it would be {length(free)}." in why(design, design.ledger[name])
    assert f"Let go, it would be {length(free)}." in cost_of_fixing(design, f"fixed.{name}", "mm")
    assert design.to_dict()["ledger"][name]["free_value"] == free


@settings(max_examples=25, deadline=None)
@given(ordinary_documents())
def test_letting_go_is_designing_without_it(document: dict[str, Any]) -> None:
    """Oracle: a fixed web that is 5 thicker than the free one; both say the free one, whatever the web moved besides."""
    try:
        free = designed(document)
        fixed = designed({**document, "fixed": {"web_mm": free.pad.web_mm + 5}})
    except NoPadFitsError:
        return
    found = let_go(fixed, "web_mm")
    assert isinstance(found, Design)
    assert found.pad == free.pad
    said = re.search(r"it would be ([\d.]+)\.$", why(fixed, fixed.ledger["web_mm"]))
    assert said
    assert said[1] == length(free.pad.web_mm)


def test_a_size_without_which_no_pad_fits_says_so() -> None:
    """Oracle: the ready example for which no pad fits; a given web is judged and not sized, so that there is a pad."""
    design = designed({**sample("rowing_club_trailer_car_no_pad"), "fixed": {"web_mm": 20.0}})
    assert isinstance(let_go(design, "web_mm"), NoPadFitsError)
    assert why(design, design.ledger["web_mm"]).endswith("let go, no pad would fit.")
    assert cost_of_fixing(design, "fixed.web_mm", "mm") == "Let go, it would leave no pad that fits."
