"""Settings reach what they set: sizes of bodies and caches, memory of processes, the length of a line."""

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from functools import partial
from pathlib import Path
from typing import Any

import pytest
from httpx import ASGITransport, AsyncClient

import server.app
from server.app import create_app
from server.settings import Settings
from server.workers import KernelPool
from tests.documents import van
from tests.server.asking import address, problem
from tests.server.misbehaving import misbehave

pytestmark = pytest.mark.anyio
_JSON = {"content-type": "application/json"}


@asynccontextmanager
async def started_with(**settings: Any) -> AsyncIterator[AsyncClient]:
    """The application with its processes."""
    app = create_app(Settings(database=":memory:", model_cache_folder="none", kernel_workers=1, **settings))
    transport = ASGITransport(app=app)
    async with (
        app.router.lifespan_context(app),
        AsyncClient(transport=transport, base_url="http://pads.test", timeout=60) as client,
    ):
        yield client


async def test_bodies_are_as_large_as_the_settings_allow() -> None:
    """Oracle: of both limits, just that many bytes are read and one more is not."""
    app = create_app(Settings(database=":memory:", body_limit_bytes=300, import_limit_bytes=500))
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test") as client:
        for path, most in (("/api/pad", 300), ("/pad/document", 300), ("/mine/import", 500)):
            read, refused = [await client.post(path, content=b" " * size, headers=_JSON) for size in (most, most + 1)]
            assert read.status_code == 422
            await problem(refused, status=413, kind="too-large")


@pytest.mark.parametrize(("memory_mb", "status"), [(256, 503), (3000, 200)])
async def test_a_model_takes_no_more_memory_than_the_setting_allows(
    monkeypatch: pytest.MonkeyPatch, memory_mb: int, status: int
) -> None:
    """Oracle: a builder that asks for 1 GB."""
    monkeypatch.setattr(server.app, "KernelPool", partial(KernelPool, build=misbehave))
    async with started_with(kernel_memory_mb=memory_mb) as client:
        answer = await client.get(address(van(title="hunger"), "step"))
    assert answer.status_code == status


async def test_a_drawing_takes_no_more_memory_than_the_setting_allows() -> None:
    """Oracle: with 1 MB nothing can be drawn, and that is said; the usual setting draws it."""
    async with started_with(drawing_memory_mb=1) as client:
        answer = await client.get(address(van(title="little"), "pdf"))
    assert answer.status_code in {500, 503}
    assert answer.headers["content-type"] == "application/problem+json"
    async with started_with() as client:
        assert (await client.get(address(van(title="enough"), "pdf"))).status_code == 200


async def test_the_line_for_drawings_is_as_long_as_the_setting_says() -> None:
    """Oracle: one process and no line: of three at once, one is drawn and two are told to come again."""
    async with started_with(drawing_workers=1, drawing_line=0) as client:
        asked = [client.get(address(van(title=f"at once {n}"), "svg")) for n in range(3)]
        answers = await asyncio.gather(*asked)
    assert sorted(answer.status_code for answer in answers) == [200, 503, 503]
    assert {answer.headers.get("retry-after") for answer in answers} == {None, "5"}


def test_the_cache_grows_as_large_as_the_setting_says(tmp_path: Path) -> None:
    app = create_app(Settings(database=":memory:", model_cache_folder=str(tmp_path), model_cache_mb=1))
    cache = app.state.archives._cache
    for number in range(8):
        cache.put(f"{number:064x}", b"x" * 300_000)
    kept = sum(path.stat().st_size for path in tmp_path.rglob("*") if path.is_file())
    assert 300_000 <= kept <= 2**20
