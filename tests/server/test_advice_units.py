"""Advice in the reader's unit: what would help, other materials, and what to measure most carefully."""

import re
from typing import Any

import pytest
from httpx import AsyncClient
from hypothesis import given
from hypothesis import strategies as st

from geometry.design import design_pad
from geometry.measurements import read_measurements
from geometry.remedies import remedies_for_check
from geometry.sensitivity import sensitivities
from geometry.units import inch_to_mm
from server.advice_words import amount, remedy_words, sensitivity_words
from server.fields import FIELDS
from server.links import pad_address, typed_of_document
from tests.documents import sample, van

pytestmark = pytest.mark.anyio

UNFIT = [
    van(fixed__slot_depth_mm=19.0),
    van(fixed__body_diameter_mm=75.0, car__gross_mass_kg=3000),
    van(jack__rim_height_high_mm=320, fixed__web_mm=19.0),
    van(fixed__seat_length_mm=80),
    van(fixed__seat_diameter_mm=69.0),
    sample("rowing_club_trailer_car_no_pad"),
]


def sentences(html: str) -> str:
    """What a page says, without its formulas, which stand in mm."""
    return re.sub(r"<[^>]+>", "|", re.sub(r'<p class="sum">.*?</p>', "", html, flags=re.DOTALL))


@pytest.mark.parametrize("document", UNFIT, ids=["slot", "body", "web", "no room", "seat", "no pad"])
async def test_in_inches_no_advice_speaks_of_millimetres(client: AsyncClient, document: dict[str, Any]) -> None:
    """Oracle: no number before “mm”, and as many changes as in millimetres."""
    typed = typed_of_document(document)
    inch = (await client.get(pad_address(typed_of_document(document, units="in"), "/changes", units="in"))).text
    metric = (await client.get(pad_address(typed, "/changes"))).text
    assert re.findall(r"[^|]*\d mm\b[^|]*", sentences(inch)) == []
    assert re.search(r"\d in\b", sentences(inch))
    assert inch.count("<li>") == metric.count("<li>") > 0


@pytest.mark.parametrize("name", ["mobile_library_van", "repair_cafe_people_carrier"])
async def test_materials_and_influences_speak_inches_too(client: AsyncClient, name: str) -> None:
    typed = typed_of_document(sample(name), units="in")
    html = sentences((await client.get(pad_address(typed, "/beside", units="in"))).text)
    assert re.findall(r"[^|]*\d mm\b[^|]*", html) == []
    assert re.search(r"an error of [\d.]+ (in|lb|°) changes", html)


def test_a_change_names_the_sizes_before_and_after() -> None:
    """19 mm = 0.748 in, 17 mm = 0.669 in."""
    design = design_pad(read_measurements(van(fixed__slot_depth_mm=19.0)))
    found = remedies_for_check(design, next(c for c in design.failures if c.code == "sill_clear"))
    size = next(r for r in found if r.kind == "size")
    assert remedy_words(size, "mm") == f"Make the slot depth {size.after:g} mm instead of 19 mm."
    assert "instead of 0.748 in" in remedy_words(size, "in")


@pytest.mark.parametrize(
    ("document", "promise"),
    [
        (van(fixed__seat_diameter_mm=69.0), "this no longer fails."),
        (sample("rowing_club_trailer_car_no_pad"), "a pad fits."),
    ],
    ids=["one estimate", "no pad"],
)
async def test_a_change_promises_no_more_than_it_was_tried_for(
    client: AsyncClient, document: dict[str, Any], promise: str
) -> None:
    """Other estimates may still fail: the outcome after the change stands beside it."""
    html = sentences((await client.get(pad_address(typed_of_document(document), "/changes"))).text)
    assert promise in html
    assert "only if a new measurement gave" in html or "read right" not in html
    assert "works out" not in html


def test_a_material_and_a_size_let_go_are_named() -> None:
    design = design_pad(read_measurements(van(fixed__seat_diameter_mm=69.0)))
    words = {remedy_words(r, "in") for c in design.failures for r in remedies_for_check(design, c)}
    assert "Let the seat diameter go; it becomes 2.646 in." in words


def test_the_most_careful_measurement_is_named_in_inches() -> None:
    """0.5 mm = 0.020 in; the share of the limit is the same in any unit."""
    found = sensitivities(design_pad(read_measurements(van())))
    top = next(s for s in found if s.influences and FIELDS[s.influences[0].key].kind == "length")
    assert "an error of 0.02 in changes" in sensitivity_words(top, "in")
    assert sensitivity_words(top, "mm") == top.words


@given(st.floats(0.01, 2000))
def test_an_amount_in_inches_is_the_same_length(value_mm: float) -> None:
    """Oracle: the inch of 1959, to half a thousandth."""
    number, unit = amount("seam.height_mm", value_mm, "in").split()
    assert unit == "in"
    assert inch_to_mm(float(number)) == pytest.approx(value_mm, abs=inch_to_mm(0.00051))
