"""A clock that jumps, back or forward: dates are what it said, nothing is lost, and nobody waits for longer."""

import re
import time
from collections.abc import AsyncIterator
from datetime import UTC, datetime, tzinfo
from pathlib import Path
from typing import Any

import pytest
from httpx import ASGITransport, AsyncClient

import server.settings
import server.store.designs
from server.app import create_app
from server.settings import Settings
from tests.server.asking import address
from tests.server.saving.asking import at, inputs, links_of, page, save, send

pytestmark = pytest.mark.anyio
MOMENTS = (datetime(2026, 2, 3, 9, 30, tzinfo=UTC), datetime(2024, 12, 31, 23, 59, tzinfo=UTC))
"""The second is what a clock says that has jumped back."""


class Jumped(datetime):
    """A clock that stands where it is put."""

    at = MOMENTS[0]

    @classmethod
    def now(cls, tz: tzinfo | None = None) -> Any:
        return cls.at.astimezone(tz)


@pytest.fixture
async def asking(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> AsyncIterator[AsyncClient]:
    for room in (server.store.designs, server.settings):
        monkeypatch.setattr(room, "datetime", Jumped)
    monkeypatch.setattr(Jumped, "at", MOMENTS[0])
    app = create_app(Settings(database=str(tmp_path / "designs.sqlite3"), kernel_workers=1))
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test") as client:
        yield client
    app.state.store.close()


@pytest.mark.parametrize("moments", [MOMENTS, MOMENTS[::-1]], ids=["back", "forward"])
async def test_revisions_keep_their_order_and_each_the_date_that_the_clock_said(
    asking: AsyncClient, monkeypatch: pytest.MonkeyPatch, moments: tuple[datetime, datetime]
) -> None:
    monkeypatch.setattr(Jumped, "at", moments[0])
    owner = await save(asking)
    monkeypatch.setattr(Jumped, "at", moments[1])
    answer = await send(asking, "/saved", inputs=inputs(seam__height_mm=22), to=owner)
    assert answer.headers["location"].partition("?")[0] == at(owner, "B")
    for letters, moment in zip("AB", moments, strict=True):
        said = f"saved {moment.day} {moment:%B %Y, %H:%M} UTC"
        assert said in await page(asking, at(owner, letters))
    newest = (await asking.get(owner.rpartition("/")[0])).headers["location"]
    assert newest == at(owner, "B")


async def test_a_link_taken_back_before_it_was_given_by_the_clock_is_taken_back(
    asking: AsyncClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    owner = await save(asking)
    view = (await links_of(asking, owner))["view"]
    monkeypatch.setattr(Jumped, "at", MOMENTS[1])
    await send(asking, f"{owner.rpartition('/')[0]}/links", kind="view", deed="end")
    assert (await asking.get(view)).status_code == 410


async def test_a_drawing_carries_the_day_that_the_clock_says_when_it_is_made(
    asking: AsyncClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Oracle: the day in the drawing, which holds no other text of that shape."""
    days = []
    for moment in MOMENTS:
        monkeypatch.setattr(Jumped, "at", moment)
        days.append(set(re.findall(r"20\d\d-\d\d-\d\d", (await asking.get(address(ending="dxf"))).text)))
    assert [f"{moment:%Y-%m-%d}" in found for moment, found in zip(MOMENTS, days, strict=True)] == [True, True]
    assert f"{MOMENTS[0]:%Y-%m-%d}" not in days[1]


@pytest.mark.parametrize("jump_s", [-1e8, 1e8], ids=["back", "forward"])
async def test_no_jump_of_the_clock_gives_or_takes_requests(jump_s: float, monkeypatch: pytest.MonkeyPatch) -> None:
    """Oracle: two a minute are one in thirty seconds; the wait that is said is never less than a second or more than that."""
    app = create_app(Settings(database=":memory:", client_requests_per_minute=2))
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test") as client:
        assert [(await client.get("/problems/busy")).status_code for _ in range(3)] == [200, 200, 429]
        true = time.time
        monkeypatch.setattr(time, "time", lambda: true() + jump_s)
        answer = await client.get("/problems/busy")
    assert answer.status_code == 429
    assert 1 <= int(answer.headers["retry-after"]) <= 30
