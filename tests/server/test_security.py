"""What every answer carries, which requests are refused, and what the log keeps to itself."""

import logging
import re
from collections.abc import AsyncIterator

import pytest
from httpx import ASGITransport, AsyncClient

from server.app import create_app
from server.links import ready_sample
from server.security import HEADERS
from tests.documents import van
from tests.server.asking import FAILING, NO_PAD, address, problem
from tests.server.conftest import SETTINGS

pytestmark = pytest.mark.anyio


@pytest.mark.parametrize(
    "asked",
    [
        "/",
        "/pad",
        ready_sample().address,
        "/pad.json",
        address(van(), "svg"),
        address(FAILING, "stl"),
        address(NO_PAD),
        "/openapi.json",
        "/nothing/here",
        "/static/nothing.css",
        "/api/pad",
        "/pad.json?title=" + "x" * 20_000,
    ],
    ids=range(12),
)
async def test_every_answer_carries_every_header(client: AsyncClient, asked: str) -> None:
    answer = await client.get(asked)
    assert {name: answer.headers.get(name) for name in HEADERS} == HEADERS
    assert "cache-control" in answer.headers


def test_the_content_policy_lets_nothing_inline_and_nothing_foreign_through() -> None:
    """Oracle: the house's policy, word for word."""
    assert HEADERS["Content-Security-Policy"] == (
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self';"
        " font-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'"
    )
    assert HEADERS["X-Content-Type-Options"] == "nosniff"
    assert HEADERS["Referrer-Policy"] == "same-origin"


@pytest.mark.parametrize("asked", [ready_sample().address, "/", "/pad?jack.cup_bore_mm=2"])
async def test_a_page_needs_nothing_that_the_content_policy_refuses(client: AsyncClient, asked: str) -> None:
    answer = await client.get(asked, follow_redirects=True)
    assert answer.headers["content-type"].startswith("text/html")
    assert not re.search(r"<style|\sstyle=|\son[a-z]+=|javascript:|<script(?![^>]*\ssrc=)", answer.text)
    assert "HX-Request" in answer.headers["vary"]


async def test_the_drawing_needs_no_style_block(client: AsyncClient) -> None:
    assert not re.search(r"<style|\sstyle=|<script", (await client.get(address(van(), "svg"))).text)


@pytest.mark.parametrize(
    "said",
    [
        {"sec-fetch-site": "cross-site"},
        {"sec-fetch-site": "same-site"},
        {"sec-fetch-site": "cross-site", "origin": "http://pads.test"},
        {"origin": "https://elsewhere.test"},
        {"origin": "null"},
        {"origin": "http://pads.test:8080"},
    ],
)
async def test_a_post_from_another_sites_page_is_refused(client: AsyncClient, said: dict[str, str]) -> None:
    await problem(await client.post("/api/pad", json=van(), headers=said), status=403, kind="foreign-origin")


@pytest.mark.parametrize(
    "said", [{}, {"sec-fetch-site": "same-origin"}, {"sec-fetch-site": "none"}, {"origin": "http://pads.test"}]
)
async def test_a_post_from_our_own_page_or_from_no_browser_is_taken(client: AsyncClient, said: dict[str, str]) -> None:
    assert (await client.post("/api/pad", json=van(), headers=said)).status_code == 200


async def test_reading_from_another_sites_link_is_free(client: AsyncClient) -> None:
    assert (await client.get(address(), headers={"sec-fetch-site": "cross-site"})).status_code == 200


async def test_a_body_that_says_it_is_too_large_is_refused_unread(client: AsyncClient) -> None:
    body = b" " * (SETTINGS.body_limit_bytes + 1)
    answer = await client.post("/api/pad", content=body, headers={"content-type": "application/json"})
    await problem(answer, status=413, kind="too-large")


async def test_a_body_that_does_not_say_its_size_is_refused_as_soon_as_too_much_has_come(client: AsyncClient) -> None:
    sent = 0

    async def endless() -> AsyncIterator[bytes]:
        nonlocal sent
        while sent < 100 * SETTINGS.body_limit_bytes:
            sent += 8192
            yield b" " * 8192

    answer = await client.post("/api/pad", content=endless(), headers={"content-type": "application/json"})
    await problem(answer, status=413, kind="too-large")
    assert sent <= SETTINGS.body_limit_bytes + 8192


async def test_a_body_of_just_the_limit_is_read(client: AsyncClient) -> None:
    body = b"{}".ljust(SETTINGS.body_limit_bytes)
    answer = await client.post("/api/pad", content=body, headers={"content-type": "application/json"})
    await problem(answer, status=422, kind="bad-measurements")


async def test_an_unforeseen_error_is_answered_with_nothing_of_its_inside(caplog: pytest.LogCaptureFixture) -> None:
    app = create_app(SETTINGS)

    async def broken() -> None:
        raise RuntimeError("the secret is 42")

    app.add_api_route("/broken", broken)
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test") as client:
        answer = await client.get("/broken")
    await problem(answer, status=500, kind="our-fault")
    assert "42" not in answer.text
    assert {name: answer.headers.get(name) for name in HEADERS} == HEADERS
    assert "the secret is 42" in caplog.text


async def test_the_log_names_path_and_status_and_neither_query_nor_secret(
    client: AsyncClient, caplog: pytest.LogCaptureFixture
) -> None:
    unguessable = "pV3xq0Zt9Kd_7Yw-2LmN8a"
    with caplog.at_level(logging.INFO, "seamrest.access"):
        await client.get(f"/pad.json?title={unguessable}")
        await client.get(f"/edit/{unguessable}/more")
        await client.get("/a%0d%0ab")
    lines = [record.getMessage() for record in caplog.records if record.name == "seamrest.access"]
    assert [re.sub(r" [\d.]+ ms$", "", line) for line in lines] == [
        "GET /pad.json 422",
        "GET /edit/…/more 404",
        "GET /a%0d%0ab 404",
    ]


async def test_a_method_that_an_address_does_not_take_is_said_with_those_that_it_takes(client: AsyncClient) -> None:
    answer = await client.delete("/pad.json")
    await problem(answer, status=405, kind="not-allowed")
    assert answer.headers["allow"] == "GET"


@pytest.mark.parametrize("asked", ["/pad.json", "/healthz", "/static/nothing.css", address(van(), "pdf")], ids=range(4))
async def test_head_is_answered_like_get_without_the_body(client: AsyncClient, asked: str) -> None:
    """Oracle: RFC 9110 section 9.3.2."""
    whole, head = await client.get(asked), await client.head(asked)
    assert (head.status_code, head.headers, head.content) == (whole.status_code, whole.headers, b"")
