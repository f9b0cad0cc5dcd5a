"""The calculation sheet, the materials and the computed changes as pages and as data."""

import re
import xml.etree.ElementTree as ET
from collections.abc import AsyncIterator
from dataclasses import dataclass
from html import unescape
from typing import Any
from urllib.parse import parse_qsl

import pytest
from httpx import ASGITransport, AsyncClient

from geometry.calculation.sheet import calculation_sheet
from geometry.design import design_pad
from geometry.materials import MATERIALS
from geometry.measurements import read_measurements
from server import advice, calculation, materials_page
from server.advice_context import ComparisonView, CurveView, RemediesView, SensitivityView
from server.advice_views import changed, comparison_view, curve_view, remedies_of, sensitivity_of
from server.app import create_app
from server.forms import FormReading, read_form
from server.links import address_of_document, ready_sample
from server.settings import Settings
from server.templating import render
from tests.documents import sample, van

pytestmark = pytest.mark.anyio
READY = ready_sample().document
FAILING = sample("repair_cafe_people_carrier")
NO_PAD = sample("rowing_club_trailer_car_no_pad")


@pytest.fixture(scope="module")
async def pages() -> AsyncIterator[AsyncClient]:
    """The application with the pages of this room."""
    app = create_app(Settings(drawing_date="2026-02-03", kernel_workers=1))
    known = {getattr(route, "path", "") for route in app.routes}
    for room in (calculation, materials_page, advice):
        if not {getattr(route, "path", "") for route in room.router.routes} <= known:
            app.include_router(room.router)
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test") as asking:
        yield asking


def reading_of(document: dict[str, Any]) -> FormReading:
    return read_form(parse_qsl(address_of_document(document).partition("?")[2]))


def words_of(html: str) -> str:
    """The text of a page, blanks run together."""
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", html)).split())


async def test_the_sheet_of_an_address_shows_scope_load_ledger_checks_and_sources(pages: AsyncClient) -> None:
    answer = await pages.get(address_of_document(READY, "/calculation"))
    assert answer.status_code == 200
    headings = re.findall(r"<h2>(.*?)</h2>", answer.text)
    for wanted in ("Scope", "What was measured", "The load", "The ledger", "Fits", "Checks", "Sources", "Cautions"):
        assert wanted in headings


async def test_every_formula_on_the_page_is_well_formed(pages: AsyncClient) -> None:
    """Oracle: an XML parser."""
    answer = await pages.get(address_of_document(READY, "/calculation"))
    found = re.findall(r"<math.*?</math>", answer.text)
    assert len(found) > 200
    for piece in found:
        ET.fromstring(piece)  # noqa: S314 - our own page


async def test_the_page_prints_every_line_of_the_sheet(pages: AsyncClient) -> None:
    """Oracle: the sheet as data, asked for at its own address."""
    page = words_of((await pages.get(address_of_document(READY, "/calculation"))).text)
    data = (await pages.get(address_of_document(READY, "/calculation.json"))).json()
    for part in ("load", "material", "loading"):
        for line in data["lines"][part]:
            assert line["substituted"] in page
            assert line["result"] in page
    assert all(entry["why"] in page for entry in data["ledger"])


async def test_the_page_obeys_the_content_policy(pages: AsyncClient) -> None:
    """Oracle: the policy allows no style and no script in the page."""
    answer = await pages.get(address_of_document(READY, "/calculation"))
    assert "<style" not in answer.text
    assert " style=" not in answer.text
    assert "<script>" not in answer.text


async def test_every_source_mark_leads_to_the_list(pages: AsyncClient) -> None:
    answer = await pages.get(address_of_document(READY, "/calculation"))
    wanted = set(re.findall(r'href="#(source-\d+)"', answer.text))
    assert wanted
    assert wanted <= set(re.findall(r'id="(source-\d+)"', answer.text))


async def test_no_id_stands_twice_on_the_page(pages: AsyncClient) -> None:
    answer = await pages.get(address_of_document(READY, "/calculation"))
    ids = re.findall(r'\bid="([^"]+)"', answer.text)
    assert sorted(set(ids)) == sorted(ids)


async def test_what_is_typed_is_escaped(pages: AsyncClient) -> None:
    document = van(title="<b>van</b> & co")
    answer = await pages.get(address_of_document(document, "/calculation"))
    assert "<b>van" not in answer.text
    assert "&lt;b&gt;van" in answer.text


@pytest.mark.parametrize("document", [NO_PAD, {"jack": {"cup_bore_mm": 68}}], ids=["no pad", "unfinished"])
async def test_without_a_pad_the_sheet_leads_back_to_the_measurements(pages: AsyncClient, document: Any) -> None:
    answer = await pages.get(address_of_document(document, "/calculation"))
    assert answer.status_code == 303
    assert answer.headers["location"] == address_of_document(document)


async def test_without_a_pad_the_data_say_why(pages: AsyncClient) -> None:
    answer = await pages.get(address_of_document(NO_PAD, "/calculation.json"))
    assert (answer.status_code, answer.json()["type"]) == (422, "/problems/no-pad-fits")


async def test_the_data_are_those_of_the_sheet(pages: AsyncClient) -> None:
    data = (await pages.get(address_of_document(READY, "/calculation.json"))).json()
    sheet = calculation_sheet(design_pad(read_measurements(READY)))
    assert data["design_id"] == sheet.design.design_id
    assert len(data["checks"]) == len(sheet.checks)


async def test_materials_shows_every_property_of_every_material_with_its_source(pages: AsyncClient) -> None:
    """Oracle: the table of materials itself."""
    answer = await pages.get("/materials")
    page = words_of(answer.text)
    assert answer.status_code == 200
    for entry in MATERIALS.values():
        for value in (*(v.source for v in entry.sourced().values()), *(p.source for p in entry.extra)):
            assert " ".join(value.text.split()) in page
        for words in (*entry.notes, *filter(None, (entry.slot_refusal, entry.slot_advice))):
            assert " ".join(words.split()) in page


def test_every_property_that_is_computed_with_has_a_title() -> None:
    assert set(materials_page.TITLES) == {name for entry in MATERIALS.values() for name in entry.sourced()}


async def test_changes_are_links_that_were_tried(pages: AsyncClient) -> None:
    """Oracle: the design at the address that a change leads to no longer fails the check."""
    answer = await pages.get(address_of_document(FAILING, "/changes"))
    troubles = answer.text.split('<div class="trouble-words"')[1:]
    failures = design_pad(read_measurements(FAILING)).failures
    assert len(troubles) == len(failures)
    for check, trouble in zip(failures, troubles, strict=True):
        found = [unescape(link) for link in re.findall(r'<li><a href="(/pad\?[^"]+)"', trouble)]
        assert 1 <= len(found) <= 3
        for link in found:
            body = (await pages.get(link.replace("/pad?", "/pad.json?"))).json()
            assert next(c["verdict"] for c in body["checks"] if c["code"] == check.code) != "fail"


async def test_a_conflict_gets_changes_too(pages: AsyncClient) -> None:
    answer = await pages.get(address_of_document(NO_PAD, "/changes"))
    found = [unescape(link) for link in re.findall(r'<li><a href="(/pad\?[^"]+)"', answer.text)]
    assert found
    for link in found:
        assert (await pages.get(link.replace("/pad?", "/pad.json?"))).status_code == 200


async def test_the_sheet_asks_for_a_piece_and_a_reader_gets_a_page(pages: AsyncClient) -> None:
    address = address_of_document(FAILING, "/changes")
    whole = await pages.get(address)
    piece = await pages.get(address, headers={"HX-Request": "true"})
    assert whole.text.startswith("<!doctype html>")
    assert piece.text.lstrip().startswith("<section")
    assert "HX-Request" in whole.headers["vary"]


@pytest.mark.parametrize(
    ("document", "words"), [(READY, "Nothing fails."), ({"jack": {"cup_bore_mm": 68}}, "There is no pad yet")]
)
async def test_where_nothing_fails_it_is_said(pages: AsyncClient, document: Any, words: str) -> None:
    assert words in (await pages.get(address_of_document(document, "/changes"))).text


@dataclass(frozen=True)
class Advice:
    """What a page must hold for the pieces of advice."""

    comparison: ComparisonView
    sensitivity: SensitivityView
    remedies: RemediesView
    curve: CurveView | None


def advice_of(document: dict[str, Any]) -> Advice:
    reading = reading_of(document)
    design = design_pad(read_measurements(document))
    assert reading.measurements is not None
    return Advice(
        comparison_view(reading.measurements, reading),
        sensitivity_of(design),
        remedies_of(reading, design, None),
        curve_view(design, reading.units),
    )


@pytest.mark.parametrize("piece", ["comparison", "sensitivity", "remedies", "curve"])
def test_each_piece_of_advice_renders_alone(piece: str) -> None:
    html = render(f"partials/{piece}.html", advice_of(READY))
    assert html.count("<section") == html.count("</section>") == 1


def test_choosing_a_row_of_the_comparison_gives_that_material() -> None:
    """Oracle: the address read again."""
    rows = advice_of(READY).comparison.rows
    assert sum(row.is_chosen for row in rows) == 1
    for row in rows:
        if row.choose is not None:
            found = read_form(parse_qsl(row.choose.href.partition("?")[2]))
            assert found.measurements is not None
            assert found.measurements.material_used().name == row.name


def test_a_car_without_statics_has_no_curve_piece() -> None:
    assert render("partials/curve.html", advice_of(van())).strip() == ""


def test_a_change_replaces_what_was_typed_and_a_change_to_nothing_takes_it_back() -> None:
    typed = {"make.material": "pa66", "fixed.web_mm": "30", "seam.thickness_mm": "3.2"}
    found = changed(typed, {"make.material": "pet_p", "fixed.web_mm": None, "fixed.slot_depth_mm": 16.5}, "in")
    assert found == {"make.material": "pet_p", "fixed.slot_depth_mm": "16.5 mm", "seam.thickness_mm": "3.2"}
