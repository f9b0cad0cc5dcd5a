"""A file that is no database, and a database server that goes away while it is in use: said in words, over when it is over."""

import os
from collections.abc import AsyncIterator, Iterator
from pathlib import Path

import psycopg
import pytest
from httpx import ASGITransport, AsyncClient

from server.app import create_app
from server.settings import Settings
from tests.server.faults.test_storage import assert_said_in_words
from tests.server.saving import postgres
from tests.server.saving.asking import inputs, page, save, send

pytestmark = pytest.mark.anyio


async def test_a_file_that_is_no_database_is_left_as_it_is(tmp_path: Path) -> None:
    file = tmp_path / "designs.sqlite3"
    file.write_bytes(b"not a database at all, but somebody's own" * 100)
    before = file.read_bytes()
    app = create_app(Settings(database=str(file)))
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test") as client:
        assert_said_in_words(await send(client, "/saved", inputs=inputs()), file)
        assert (await client.get(inputs())).status_code == 200
    assert file.read_bytes() == before


@pytest.fixture(scope="module")
def folder() -> Iterator[Path]:
    """The folder in which a database server of our own listens."""
    with postgres.running() as found:
        yield Path(found)


@pytest.fixture
def way(folder: Path, tmp_path: Path) -> Path:
    """A way to that folder that can be taken away."""
    link = tmp_path / "way"
    link.symlink_to(folder)
    return link


@pytest.fixture
async def asking(folder: Path, way: Path) -> AsyncIterator[AsyncClient]:
    with postgres.fresh(str(folder), "gone") as setting:
        app = create_app(Settings(database=setting.replace(str(folder), str(way)), drawing_date="2026-02-03"))
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test") as client:
        yield client
    app.state.store.close()


def cut_off(folder: Path, way: Path) -> None:
    """Nobody can connect any more, and whoever was connected is so no longer."""
    way.unlink()
    with psycopg.connect(host=str(folder), user="postgres", dbname="postgres", autocommit=True) as connection:
        connection.execute("SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = 'gone'")


async def test_a_database_server_that_goes_away_is_said_in_words_and_used_again_when_it_is_back(
    asking: AsyncClient, folder: Path, way: Path
) -> None:
    owner = await save(asking, title="before")
    cut_off(folder, way)
    for answer in (
        await send(asking, "/saved", inputs=inputs()),
        await send(asking, f"{owner}/remarks", words="Hello"),
        await asking.get(owner),
    ):
        assert_said_in_words(answer, way)
    assert (await asking.get(inputs())).status_code == 200
    os.symlink(folder, way)
    assert (await send(asking, f"{owner}/remarks", words="Back again")).status_code == 303
    assert "Back again" in await page(asking, owner)
