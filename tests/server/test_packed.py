"""Answers sent small: the same bytes once unpacked, and never where a secret is in them."""

import gzip
import time

import pytest
from httpx import AsyncClient

from server.links import address_of_document, static_url
from tests.server.asking import FITTING

pytestmark = pytest.mark.anyio
PAD = address_of_document(FITTING)
AS_IT_IS, SMALL = {"Accept-Encoding": "identity"}, {"Accept-Encoding": "gzip, br"}


@pytest.mark.parametrize(
    "address",
    [
        static_url("sheet.css"),
        static_url("sheet.js"),
        static_url("vendor/htmx-4.0.1.min.js"),
        static_url("vendor/three-0.187.0.min.js"),
        "/guide",
        "/materials",
        "/measure",
        "/style",
        "/openapi.json",
        PAD.replace("/pad?", "/pad.json?"),
        PAD.replace("/pad?", "/pad.svg?"),
        PAD.replace("/pad?", "/pad/calculation?"),
        PAD.replace("/pad?", "/pad/beside?"),
    ],
    ids=lambda address: address.partition("?")[0],
)
async def test_what_is_packed_is_the_same_once_unpacked(client: AsyncClient, address: str) -> None:
    """Oracle: the answer to somebody who does not unpack, byte for byte; half its size at most."""
    plain, packed = [await client.get(address, headers=headers) for headers in (AS_IT_IS, SMALL)]
    assert "content-encoding" not in plain.headers
    assert packed.headers["content-encoding"] == "gzip"
    assert packed.content == plain.content
    assert int(packed.headers["content-length"]) < len(plain.content) / 2
    for answer in (plain, packed):
        assert "accept-encoding" in answer.headers["vary"].lower()
        assert answer.headers["cache-control"] == plain.headers["cache-control"]


async def test_a_static_file_is_packed_once(client: AsyncClient) -> None:
    """Oracle: 570 kB take tens of milliseconds to pack at the highest level, and none to be found again."""
    address = static_url("vendor/three-0.187.0.min.js")
    first = await client.get(address, headers=SMALL)
    began = time.process_time()
    gzip.compress(first.content, 9)
    packing_s = time.process_time() - began
    began = time.process_time()
    again = await client.get(address, headers=SMALL)
    assert time.process_time() - began < packing_s
    assert again.content == first.content


@pytest.mark.parametrize("ending", ["pdf", "dxf"])
async def test_paper_and_models_are_sent_as_they_are(client: AsyncClient, ending: str) -> None:
    answer = await client.get(PAD.replace("/pad?", f"/pad.{ending}?"), headers=SMALL)
    assert answer.status_code == 200
    assert "content-encoding" not in answer.headers


async def test_a_part_of_a_file_and_a_short_answer_are_not_packed(client: AsyncClient) -> None:
    address = static_url("sheet.css")
    part = await client.get(address, headers={**SMALL, "Range": "bytes=0-1999"})
    assert (part.status_code, len(part.content)) == (206, 2000)
    assert "content-encoding" not in part.headers
    assert "content-encoding" not in (await client.get("/healthz", headers=SMALL)).headers


async def test_a_request_for_the_headers_tells_of_the_packed_answer(client: AsyncClient) -> None:
    """Oracle: the headers of the whole answer (RFC 9110, 9.3.2)."""
    address = static_url("sheet.css")
    head, whole = await client.head(address, headers=SMALL), await client.get(address, headers=SMALL)
    assert head.content == b""
    assert head.headers["content-length"] == whole.headers["content-length"]
    assert head.headers["content-encoding"] == "gzip"
