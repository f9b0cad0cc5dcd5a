"""A save is answered before anything is drawn; what is not drawn yet is drawn for whoever asks, and kept."""

import asyncio
from collections.abc import AsyncIterator
from typing import Any

import pytest
from httpx import ASGITransport, AsyncClient
from sqlalchemy import delete, select

from server.app import create_app
from server.drawn import drawers
from server.processes import NoAnswerError
from server.saved_drawing import ALL_KEPT, LaterDrawing
from server.settings import Settings
from server.store.tables import files
from tests.server.saving.asking import inputs, page, save, send
from tests.server.saving.conftest import opened

pytestmark = pytest.mark.anyio
SHEETS = ("svg", "pdf", "dxf", "packet.pdf", "card.pdf")


def endings_in(setting: str) -> list[str]:
    """The endings of all files that are kept, each as often as it is."""
    with opened(setting) as database, database.reading() as connection:
        return sorted(connection.execute(select(files.c.ending)).scalars())


class Gate:
    """A drawing process that is held up until it may go on."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.opens, self._drawings = asyncio.Event(), drawers.drawings
        monkeypatch.setattr(drawers, "drawings", self._held_up)

    async def _held_up(self, *told: Any) -> Any:
        await self.opens.wait()
        return await self._drawings(*told)


@pytest.fixture
async def later(setting: str) -> AsyncIterator[tuple[AsyncClient, LaterDrawing]]:
    """A client that does not wait for what follows an answer, and the line that follows."""
    app = create_app(Settings(database=setting, drawing_date="2026-02-03", kernel_workers=1))
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test") as client:
        yield client, app.state.later
    await app.state.later.stop()
    app.state.store.close()


async def test_a_save_is_answered_while_nothing_is_drawn_and_the_revision_can_be_used(
    later: tuple[AsyncClient, LaterDrawing], setting: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Oracle: the processes that draw are held up; page, data, a remark and the next revision come all the same."""
    client, line = later
    gate = Gate(monkeypatch)
    owner = await asyncio.wait_for(save(client), 20)
    assert "The five sizes that decide" in await page(client, owner)
    assert (await client.get(f"{owner}.json")).json()["fit_to_make"] is True
    assert (await send(client, f"{owner}/remarks", words="so soon")).status_code == 303
    answer = await send(client, "/saved", inputs=inputs(seam__height_mm=19), to=owner)
    assert answer.headers["location"].endswith("/B?said=saved")
    assert endings_in(setting) == []
    gate.opens.set()
    await line.settled()
    assert endings_in(setting) == sorted([*ALL_KEPT] * 2)


@pytest.mark.parametrize("ending", SHEETS)
async def test_who_asks_before_it_is_drawn_gets_what_is_kept_afterwards(
    later: tuple[AsyncClient, LaterDrawing], setting: str, monkeypatch: pytest.MonkeyPatch, ending: str
) -> None:
    """Oracle: the same file of the unsaved design; then the file in the database. The line is lost, as by a killed server."""
    client, line = later
    with monkeypatch.context() as lost:
        lost.setattr(LaterDrawing, "add", lambda *_: None)
        owner = await save(client)
    await line.settled()
    assert endings_in(setting) == []
    asked = await client.get(f"{owner}.{ending}")
    unsaved = await client.get(inputs().replace("/pad?", f"/pad/{ending}?" if "." in ending else f"/pad.{ending}?"))
    assert (asked.status_code, asked.content) == (200, unsaved.content)
    await line.settled()
    assert endings_in(setting) == sorted(ALL_KEPT)
    with opened(setting) as database, database.reading() as connection:
        kept = connection.execute(select(files.c.content).where(files.c.ending == ending)).scalar_one()
    assert kept == asked.content


async def test_a_drawing_that_fails_behind_a_save_is_made_by_who_asks_for_it(
    later: tuple[AsyncClient, LaterDrawing], setting: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    client, line = later

    async def busy(*_: Any) -> Any:
        raise NoAnswerError("too many wait")

    with monkeypatch.context() as full:
        full.setattr(drawers, "drawings", busy)
        owner = await save(client)
        await line.settled()
    assert endings_in(setting) == []
    assert (await client.get(f"{owner}.svg")).status_code == 200
    await line.settled()
    assert endings_in(setting) == sorted(ALL_KEPT)


async def test_files_that_another_process_kept_stay_as_they_are(
    later: tuple[AsyncClient, LaterDrawing], setting: str
) -> None:
    """One process kept the drawing as a picture and no more; what is added is the rest."""
    client, line = later
    owner = await save(client)
    await line.settled()
    with opened(setting) as database, database.writing() as connection:
        connection.execute(delete(files).where(files.c.ending != "svg"))
        connection.execute(files.update().values(content=b"<svg>theirs</svg>"))
    assert (await client.get(f"{owner}.pdf")).content.startswith(b"%PDF-")
    await line.settled()
    assert endings_in(setting) == sorted(ALL_KEPT)
    assert (await client.get(f"{owner}.svg")).content == b"<svg>theirs</svg>"


async def test_no_more_than_so_many_wait_to_be_drawn(
    later: tuple[AsyncClient, LaterDrawing], monkeypatch: pytest.MonkeyPatch, setting: str
) -> None:
    """Whoever saves a great deal cannot fill the memory, nor keep the processes from others for hours."""
    client, line = later
    gate = Gate(monkeypatch)
    monkeypatch.setattr("server.saved_drawing.MOST_WAITING", 2)
    for number in range(4):
        await save(client, title=f"job {number}")
    gate.opens.set()
    await line.settled()
    assert endings_in(setting) == sorted([*ALL_KEPT] * 2)


async def test_a_stopped_line_writes_nothing_more(
    later: tuple[AsyncClient, LaterDrawing], setting: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    client, line = later
    gate = Gate(monkeypatch)
    await save(client)
    await line.stop()
    gate.opens.set()
    await line.settled()
    assert endings_in(setting) == []
