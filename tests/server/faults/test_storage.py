"""A disk that is full, a folder that takes nothing, a database that is locked or gone: said in words, and over when it is over."""

import os
import resource
import signal
import sqlite3
import subprocess
import sys
from collections.abc import AsyncIterator, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from httpx import ASGITransport, AsyncClient, Response

import server.store.database
from server.app import create_app
from server.settings import Settings
from tests.server.saving.asking import inputs, save, send

pytestmark = pytest.mark.anyio


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "kept" / "designs.sqlite3"


@pytest.fixture
async def asking(file: Path) -> AsyncIterator[AsyncClient]:
    app = create_app(Settings(database=str(file), drawing_date="2026-02-03", kernel_workers=1))
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test") as client:
        yield client
    app.state.store.close()


def assert_said_in_words(answer: Response, file: Path) -> None:
    """A page of ours with a sentence, when to come again, and nothing of the machine."""
    assert (answer.status_code, answer.headers["retry-after"]) == (503, "60"), answer.text
    assert "cannot be reached at the moment. Nothing was changed" in answer.text
    assert answer.headers["content-type"].startswith("text/html")
    assert not [word for word in (str(file), "sqlite", "Traceback", "Errno") if word in answer.text]


def counts(file: Path) -> dict[str, int]:
    """How many rows each table has, looked at by SQLite itself; the file must be sound."""
    connection = sqlite3.connect(file)
    try:
        assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        names = [n for (n,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        return {n: connection.execute(f"SELECT count(*) FROM {n}").fetchone()[0] for n in names}  # noqa: S608
    finally:
        connection.close()


async def everything_fails_in_words_and_reading_goes_on(asking: AsyncClient, owner: str, file: Path) -> None:
    """Each thing that is sent is refused in words; what was saved can be read, and the working sheet works."""
    for path, fields in (
        ("/saved", {"inputs": inputs()}),
        ("/saved", {"inputs": inputs(seam__height_mm=22), "to": owner}),
        (f"{owner}/remarks", {"words": "Hello"}),
        (f"{owner}/readings", {"as_made.slot_width_mm": "4.0"}),
        (f"/saved/{owner.split('/')[2]}/title", {"title": "Other"}),
        (f"/saved/{owner.split('/')[2]}/links", {"kind": "view", "deed": "renew"}),
    ):
        assert_said_in_words(await send(asking, path, **fields), file)
    assert (await asking.get(owner)).status_code == 200
    assert (await asking.get(inputs())).status_code == 200


async def test_a_locked_database_is_said_in_words_and_over_when_the_lock_is(
    asking: AsyncClient, file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(server.store.database, "_WAIT_MS", 50)
    owner = await save(asking)
    before = counts(file)
    other = sqlite3.connect(file, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    await everything_fails_in_words_and_reading_goes_on(asking, owner, file)
    other.rollback()
    other.close()
    assert counts(file) == before
    assert (await send(asking, "/saved", inputs=inputs(), title="after")).status_code == 303


@contextmanager
def no_file_may_grow_past(size: int) -> Iterator[None]:
    """A full disk, as this process sees it: writes beyond so many bytes fail."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    before = signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
        signal.signal(signal.SIGXFSZ, before)


async def test_a_full_disk_is_said_in_words_and_over_when_there_is_room(asking: AsyncClient, file: Path) -> None:
    owner = await save(asking)
    before = counts(file)
    wal = file.with_name(file.name + "-wal")
    with no_file_may_grow_past(wal.stat().st_size if wal.exists() else 0):
        await everything_fails_in_words_and_reading_goes_on(asking, owner, file)
    assert counts(file) == before
    assert (await send(asking, "/saved", inputs=inputs(), title="after")).status_code == 303
    assert counts(file)["designs"] == before["designs"] + 1


_REFUSED = """
import asyncio, os, sys
from pathlib import Path
from httpx import ASGITransport, AsyncClient
from server.app import create_app
from server.settings import Settings
from tests.server.faults.test_storage import assert_said_in_words
from tests.server.saving.asking import inputs, send

async def main(folder):
    file = folder / "kept" / "designs.sqlite3"
    app = create_app(Settings(database=str(file), drawing_date="2026-02-03"))
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test") as client:
        answer = await send(client, "/saved", inputs=inputs())
        print(answer.status_code, answer.headers["retry-after"], "cannot be opened" in answer.text)
        os.chmod(folder, 0o700)
        print((await send(client, "/saved", inputs=inputs())).status_code)

asyncio.run(main(Path(sys.argv[1])))
"""


def test_a_folder_that_takes_nothing_is_said_in_words_and_over_when_it_does(tmp_path: Path) -> None:
    """In a process without the rights of the administrator, whom no folder refuses; home and cache lie there too."""
    folder = tmp_path / "data"
    folder.mkdir(mode=0o700)
    folder.chmod(0o500)
    command = [sys.executable, "-c", _REFUSED]
    if os.geteuid() == 0:
        # Still its owner, who may start every process that the server starts, and whom a folder can refuse.
        command = ["setpriv", "--bounding-set=-dac_override,-dac_read_search", *command]
    here = Path(__file__).parents[3]
    environment = os.environ | {
        "HOME": str(folder),
        "XDG_CACHE_HOME": str(folder / "cache"),
        "PYTHONDONTWRITEBYTECODE": "1",
    }
    done = subprocess.run(
        [*command, str(folder)], cwd=here, env=environment, capture_output=True, text=True, check=False
    )
    assert done.stdout.splitlines() == ["503 60 True", "303"], done.stderr[-2000:]


async def test_a_database_that_is_gone_is_said_in_words_and_back_when_it_is(asking: AsyncClient, file: Path) -> None:
    """The folder is moved away, as when a disk is not mounted: nothing is made anew in its place unasked."""
    owner = await save(asking)
    asking_app = asking._transport.app  # type: ignore[attr-defined]  # the application behind the client
    asking_app.state.store.close()
    away = file.parent.rename(file.parent.with_name("away"))
    file.parent.write_text("a file stands where the folder was")
    answer = await send(asking, "/saved", inputs=inputs())
    assert (answer.status_code, answer.headers["retry-after"]) == (503, "60")
    assert (await asking.get(owner)).status_code == 503
    assert (await asking.get(inputs())).status_code == 200
    file.parent.unlink()
    away.rename(file.parent)
    assert (await asking.get(owner)).status_code == 200
    assert (await send(asking, "/saved", inputs=inputs(), title="after")).status_code == 303
