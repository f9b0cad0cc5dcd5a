"""What the browser keeps for a place without the network, as far as the server decides it."""

import json
import re
from pathlib import Path
from typing import Any

import pytest
from httpx import AsyncClient

from geometry.cautions import ONE_LINE
from server import links, offline
from server.security import CONTENT_POLICY
from tests.server.attacks.walking import addresses

pytestmark = pytest.mark.anyio
SECRET = ("/saved", "/save", "/mine")
MODELS = (".step", ".stl", ".3mf", ".glb", ".zip")


def told(program: str) -> dict[str, Any]:
    """What stands in front of the worker."""
    found: dict[str, Any] = json.loads(re.search(r"^const KEPT = (.*);$", program, re.MULTILINE)[1])  # type: ignore[index]
    return found


async def test_the_worker_may_serve_every_page_and_is_asked_for_anew(client: AsyncClient) -> None:
    """Oracle: Service Workers (W3C), 7.1: the header names the widest scope, and the default is the script's own folder."""
    answer = await client.get("/offline.js")
    assert answer.headers["service-worker-allowed"] == "/"
    assert answer.headers["cache-control"] == "no-cache"
    assert answer.headers["content-type"] == "text/javascript; charset=utf-8"
    assert answer.headers["content-security-policy"] == CONTENT_POLICY


async def test_everything_that_is_kept_from_the_start_is_there(client: AsyncClient) -> None:
    """One that is missing would leave the browser without any: it takes all or none."""
    kept = told((await client.get("/offline.js")).text)
    found = [*kept["files"], *kept["pages"]]
    assert {"/guide", "/measure", "/materials", "/offline", links.static_url("paper.css")} <= set(found)
    assert {(await client.get(address)).status_code for address in found} == {200}


async def test_every_file_of_a_page_that_is_kept_is_kept_with_it(client: AsyncClient) -> None:
    kept = told((await client.get("/offline.js")).text)
    for address in (
        *kept["pages"],
        *(links.ready_sample().address.replace("/pad", page, 1) for page in offline.SEEN[1:]),
    ):
        needed = re.findall(r'(?:src|href)="(/static/[^"]+)"', (await client.get(address)).text)
        assert needed
        assert set(needed) <= set(kept["files"]), address


async def test_nothing_secret_and_no_file_is_among_what_is_kept(client: AsyncClient) -> None:
    kept = told((await client.get("/offline.js")).text)
    found = [*kept["files"], *kept["pages"], *kept["seen"]]
    assert not [address for address in found if address.startswith(SECRET) or address.endswith(MODELS)]
    assert set(kept["pages"] + kept["seen"]) <= set(addresses(method="GET"))


async def test_a_changed_static_file_makes_another_worker(
    client: AsyncClient, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A browser compares the worker byte by byte, and what an older one kept is dropped by the version's name."""
    first = told((await client.get("/offline.js")).text)
    others = (*offline.kept_files()[1:], "/static/another.css")
    monkeypatch.setattr(offline, "kept_files", lambda: others)
    second = told((await client.get("/offline.js")).text)
    assert first["version"] != second["version"]


async def test_the_page_says_what_needs_the_server(client: AsyncClient) -> None:
    page = (await client.get("/offline")).text
    needs = page[page.index("What needs the server") : page.index("Kept in this browser")]
    for words in ("Sizing", "Files", "Saving"):
        assert words in needs
    assert f"the last {offline.MOST_SEEN} " in page


@pytest.mark.parametrize("path", [path for path in addresses(method="GET") if "{" not in path and "." not in path])
async def test_every_page_has_the_icon_and_the_caution(client: AsyncClient, path: str) -> None:
    """Of the pages of designs, those of the ready example."""
    query = links.ready_sample().address.partition("?")[2]
    answer = await client.get(f"{path}?{query}", follow_redirects=True)
    if answer.headers["content-type"].startswith("text/html"):
        assert f'<link rel="icon" href="{links.static_url("icon.svg")}"' in answer.text
        assert ONE_LINE.replace("'", "&#39;") in answer.text
