"""An error in a browser is a page in words with a way back; a program gets the same as data."""

from collections.abc import AsyncIterator

import pytest
from fastapi import FastAPI
from httpx import ASGITransport, AsyncClient, Response

from server import materials_page
from server.app import create_app
from server.links import pad_address
from server.problems import BUSY, AnsweredError
from server.settings import Settings

pytestmark = pytest.mark.anyio
BROWSER = {"Accept": "text/html,application/xhtml+xml,*/*;q=0.8"}
PROGRAMS = ({"Accept": "*/*"}, {"Accept": "application/json"}, {**BROWSER, "HX-Request": "true"})
TYPED = {"jack.cup_bore_mm": "68 mm", "title": "<b>van & 7</b>"}


@pytest.fixture
async def app() -> FastAPI:
    return create_app(Settings(client_requests_per_minute=3))


@pytest.fixture
async def asking(app: FastAPI) -> AsyncIterator[AsyncClient]:
    transport = ASGITransport(app, raise_app_exceptions=False)
    async with AsyncClient(transport=transport, base_url="http://seamrest.test") as client:
        yield client


def is_page(answer: Response, status: int, way: str = 'href="/"') -> bool:
    assert (answer.status_code, answer.headers["content-type"]) == (status, "text/html; charset=utf-8"), answer.text
    assert "script-src 'self'" in answer.headers["content-security-policy"]
    assert "Accept" in answer.headers["vary"]
    return way in answer.text and f"Answer {status}." in answer.text


async def test_nothing_at_an_address_is_a_page(asking: AsyncClient) -> None:
    assert is_page(await asking.get("/nothing", headers=BROWSER), 404)


async def test_a_method_that_is_not_taken_is_a_page_that_keeps_its_headers(asking: AsyncClient) -> None:
    answer = await asking.post("/guide", headers=BROWSER)
    assert is_page(answer, 405)
    assert answer.headers["allow"] == "GET"


async def test_too_many_requests_are_a_page_that_says_when_to_ask_again(asking: AsyncClient) -> None:
    for _ in range(3):
        await asking.get("/nothing")
    answer = await asking.get("/materials", headers=BROWSER)
    assert is_page(answer, 429)
    assert f"Ask again in {answer.headers['retry-after']} s." in answer.text


async def test_a_fault_of_ours_is_a_page_with_nothing_of_its_inside(
    asking: AsyncClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(*_: object) -> None:
        raise ZeroDivisionError("inside")

    monkeypatch.setattr(materials_page, "materials_page", fail)
    answer = await asking.get("/materials", headers=BROWSER)
    assert is_page(answer, 500)
    assert "inside" not in answer.text


async def test_a_file_that_is_not_ready_leads_back_to_the_sheet_that_it_was_asked_from(
    asking: AsyncClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    def busy(*_: object) -> None:
        raise AnsweredError(BUSY, "Nobody is free.")

    monkeypatch.setattr(materials_page, "materials_page", busy)
    answer = await asking.get(pad_address(TYPED).replace("/pad", "/materials"), headers=BROWSER)
    assert is_page(answer, 503, pad_address(TYPED).replace("&", "&amp;"))
    assert "<b>van" not in answer.text


async def test_a_field_that_cannot_be_is_named_on_the_page(asking: AsyncClient) -> None:
    answer = await asking.get("/pad.json?jack.cup_bore_mm=68&<x>=1", headers=BROWSER)
    assert is_page(answer, 422, "/pad?jack.cup_bore_mm=68")
    assert "“&lt;x&gt;” is not a field" in answer.text


@pytest.mark.parametrize("headers", PROGRAMS)
async def test_a_program_and_a_piece_of_a_page_get_data(asking: AsyncClient, headers: dict[str, str]) -> None:
    answer = await asking.get("/nothing", headers=headers)
    assert answer.headers["content-type"] == "application/problem+json"
    assert "Accept" in answer.headers["vary"]


async def test_what_only_programs_ask_for_stays_data_in_a_browser(asking: AsyncClient) -> None:
    answer = await asking.get("/api/nothing", headers=BROWSER)
    assert answer.headers["content-type"] == "application/problem+json"


async def test_the_icon_is_found_where_browsers_look_for_it(asking: AsyncClient) -> None:
    answer = await asking.get("/favicon.ico", follow_redirects=True)
    assert (answer.status_code, answer.headers["content-type"]) == (200, "image/svg+xml")
