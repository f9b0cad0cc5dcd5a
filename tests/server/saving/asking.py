"""What the tests of saved designs send, and how they read the pages."""

import re
from collections.abc import Mapping
from html import unescape
from typing import Any

from httpx import AsyncClient, Response

from server.links import address_of_document
from tests.documents import sample, van

FAILING = sample("repair_cafe_people_carrier")
NO_PAD = sample("rowing_club_trailer_car_no_pad")


def inputs(document: Mapping[str, Any] | None = None, **changes: Any) -> str:
    """The working sheet's address of an ordinary van, or of another document."""
    return address_of_document(document or van(**changes))


async def send(client: AsyncClient, address: str, **fields: str) -> Response:
    """Send a form as a browser would from our own page."""
    return await client.post(address, data=fields, headers={"sec-fetch-site": "same-origin"})


async def save(client: AsyncClient, document: Mapping[str, Any] | None = None, **fields: str) -> str:
    """Save a new design; gives the owner's address of its first revision."""
    answer = await send(client, "/saved", inputs=inputs(document), **fields)
    assert answer.status_code == 303, answer.text
    return answer.headers["location"].partition("?")[0]


async def page(client: AsyncClient, address: str, status: int = 200) -> str:
    """The words of a page."""
    answer = await client.get(address)
    assert answer.status_code == status, answer.text
    return answer.text


async def links_of(client: AsyncClient, owner: str) -> dict[str, str]:
    """The addresses of the links that an owner's page shows, by kind."""
    found = re.findall(r'id="link-(\w+)"[^>]*value="([^"]+)"', await page(client, owner))
    return {kind: "/saved/" + unescape(link).partition("/saved/")[2] for kind, link in found}


def words_of(text: str) -> str:
    """A page as it reads: without tags, spaces closed up."""
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", text)).split())


def at(address: str, letters: str, tail: str = "") -> str:
    """The same link at another revision, or at a file of it."""
    return f"{address.rpartition('/')[0]}/{letters}{tail}"
