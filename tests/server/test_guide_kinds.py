"""What the guide says of feet and heads that go together is what comes of designing them."""

from collections.abc import Mapping
from typing import Any

import pytest

from geometry.design import Design, design_pad
from geometry.errors import NoPadFitsError
from geometry.kinds import FACES, JACKS
from geometry.measurements import read_measurements
from server.guide_cautions import example_documents
from server.guide_view import guide_page
from server.links import ready_sample, samples

_MADE = ready_sample().document["make"]
FEET = {s.key: (s.document["foot"], s.document["jack"]) for s in samples() if s.document.get("foot", "cup") != "cup"}
FEET["cup"] = ("cup", ready_sample().document["jack"])
HEADS: Mapping[str, Mapping[str, Any]] = {d.get("head", "slot"): d for _, d in example_documents()}
"""One example of each head, whatever it is made of."""


def designed(foot: str, head: str, material: str) -> Design:
    """The example of a head on the jack of another example."""
    kind, jack = FEET[foot]
    return design_pad(
        read_measurements({**HEADS[head], "foot": kind, "jack": jack, "make": {**_MADE, "material": material}})
    )


def test_the_examples_have_every_foot_and_every_head() -> None:
    assert {kind for kind, _ in FEET.values()} == set(JACKS)
    assert set(HEADS) == set(FACES)


@pytest.mark.parametrize("head", HEADS)
@pytest.mark.parametrize("foot", FEET)
def test_every_foot_goes_with_every_head(foot: str, head: str) -> None:
    """The guide's own sentence; of acetal, as the worked example is."""
    assert not [check.code for check in designed(foot, head, "pom_c").checks if check.verdict == "fail"]


def _comes_out(foot: str) -> bool:
    """Whether a cushion of soft polyurethane passes on this jack."""
    try:
        return all(check.verdict != "fail" for check in designed(foot, "cushion", "pur_95").checks)
    except NoPadFitsError:
        return False


def test_soft_polyurethane_is_mostly_too_soft_for_a_skirt_or_a_post() -> None:
    """The guide says so beside the heads; where a wall, a ring or teeth locate the seat, such a cushion comes out."""
    locates = {foot: designed(foot, "cushion", "pom_c").conditions.foot.locates for foot in FEET}
    by_seat = [_comes_out(foot) for foot, what in locates.items() if what == "seat"]
    by_other = [_comes_out(foot) for foot, what in locates.items() if what != "seat"]
    assert all(by_seat)
    assert sum(by_other) < len(by_other) / 2
    assert "mostly too soft for a skirt or a post" in guide_page("mm").heads[1].leave
