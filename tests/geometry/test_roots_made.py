"""Roots of stems and plugs, the stem's lead-in and the whole height: the card says what the drawing and the inspection say."""

import re

import pytest

from geometry.drawing import notes
from geometry.inspection import tolerance_mm
from geometry.making.kit import LEAD_IN_MM, ROOT_LEAST_MM, ROOT_MOST_MM
from geometry.making.limits import height_tolerance_mm, parts_together_mm
from geometry.route import RouteCard, route_card
from tests.documents import sample
from tests.geometry.kinds_made import made, sentences
from tests.geometry.shops import card, job

_NOSE = "nose radius 0.2 mm to 0.4 mm"


def tools_of(made_card: RouteCard, title: str) -> str:
    return " ".join(t.shown() for o in made_card.operations if o.title.startswith(title) for t in o.tools)


def test_the_card_and_the_drawing_have_the_same_root_and_the_same_lead_in() -> None:
    """Oracle: the drawing's own figures."""
    assert (ROOT_LEAST_MM, ROOT_MOST_MM) == (notes.ROOT_LEAST_MM, notes.ROOT_MOST_MM)
    assert LEAD_IN_MM == notes.LEAD_IN_MM


@pytest.mark.parametrize(
    ("name", "title"), [("round plug", "Turn the plug"), ("stem with cross-hole", "Turn the stem")]
)
def test_the_tool_that_cuts_a_root_has_a_nose_of_its_own(name: str, title: str) -> None:
    """Oracle: the check of the root is drawn for R0.2: a sharper tool cuts a root that was not judged."""
    card_made = made(name)
    assert _NOSE in tools_of(card_made, title)
    assert "a sharper root starts a crack" in " ".join(w.shown() for w in sentences(card_made))


def test_a_neck_is_finished_with_a_tool_that_has_the_roots_nose() -> None:
    """Oracle: the round plug of the sample is finished behind the body with the left-hand tool."""
    found = card(sample("lifeguard_station_pickup_round_plug"))
    assert f"Left-hand knife tool, high-speed steel, ground sharp, {_NOSE}" in tools_of(found, "Turn the plug")


def test_a_milled_plug_gets_its_root_from_the_cutters_corners() -> None:
    """Oracle: an end mill that is square at its corners leaves a sharp root."""
    steps = [s.shown() for o in made("plug").operations if o.title == "Mill the plug's sides" for s in o.steps]
    assert steps[0] == "Round the cutter's corners to 0.2 mm with a stone, to 0.4 mm at most."


def test_a_pad_without_stem_and_plug_is_told_of_no_root() -> None:
    """Oracle: the ordinary slotted pad."""
    assert not re.search(r"root starts|nose radius 0\.2", " ".join(w.shown() for w in sentences(made("recess"))))


def test_a_stems_end_is_broken_as_the_drawing_has_it() -> None:
    """Oracle: the drawing's 0.5 × 45°."""
    found = card(sample("tool_library_hatchback_stem"))
    said = " ".join(s.shown() for o in found.operations for s in o.steps)
    assert "Break the stem's end 0.5 mm × 45°, its lead-in." in said
    assert "At the stem's root the tool's nose leaves a fillet of 0.2 mm to 0.4 mm" in said


def test_where_the_card_is_stricter_on_the_height_than_the_inspection_it_says_why() -> None:
    """Oracle: ISO 2768-1 m: ± 0.3 for a length of 35; ± 0.2 for web and slot each, as the inspection sheet adds up."""
    pad, conditions, shop = job(sample("mobile_library_van"))
    assert height_tolerance_mm(pad) == pytest.approx(0.3)
    assert parts_together_mm(pad) == pytest.approx(tolerance_mm(pad, "top_height_mm")) == pytest.approx(0.4)
    said = " ".join(s.shown() for o in route_card(pad, conditions, shop).operations for s in o.steps)
    assert "between 34.7 mm and 35.3 mm, the general tolerance" in said
    assert "the inspection sheet goes by its parts, which may be off by 0.4 mm together" in said


def test_signs_are_explained_that_the_table_has() -> None:
    """Oracle: a cutter as wide as the slot runs on the centre line alone."""
    for name in ("mobile_library_van", "kayak_club_estate_drain"):
        found = card(sample(name))
        assert found.slot is not None
        slot = next(o for o in found.operations if o.title == "Cut the slot")
        said = " ".join(s.shown() for s in slot.steps)
        assert ("+y" in said) == any(p.y_mm for p in found.slot.passes)


def test_a_foot_that_cannot_be_held_is_said_with_its_own_figure() -> None:
    """Oracle: the seat of 13.5 with a corner of 5; inside a skirt nobody would hold."""
    pad, _, _ = job(sample("mobile_library_van"))
    straight = pad.seat_length_mm - pad.seat_corner_radius_mm
    found = card(sample("mobile_library_van"))
    assert found.stock is not None
    assert f"Of the seat's side only {straight:g} mm is straight" in found.stock.why.shown()
    edge = card(sample("puppet_theatre_van_plate_edge"))
    assert edge.stock is not None
    assert "seat" not in edge.stock.why.shown()
