"""The server is killed while it saves: what it acknowledged is there, and it starts clean."""

import asyncio
import os
import signal
import sqlite3
from dataclasses import dataclass, field
from itertools import count
from pathlib import Path

import httpx
import pytest

from server.saved_drawing import ALL_KEPT
from tests.server.saving.asking import inputs
from tests.server.test_start import answer_of, started

pytestmark = pytest.mark.anyio

_LIMITS = {"SEAMREST_CLIENT_CHANGES_PER_MINUTE": "0", "SEAMREST_CLIENT_REQUESTS_PER_MINUTE": "0"}
# A machine busy with other work draws slowly, which is not what is looked at here.
_LIMITS |= {"SEAMREST_DRAWING_TIMEOUT_S": "300"}
_AT_ONCE = 4
_LOOKED_AT = 12
_TABLES = ("designs", "revisions", "files", "links", "remarks")


@dataclass(slots=True)
class _Told:
    """What the server acknowledged, and how many heard nothing any more."""

    designs: dict[str, list[str]] = field(default_factory=dict)
    """The owner's address of each design, with the words of the remarks beside it."""
    unanswered: int = 0


async def _save_until_killed(where: str, pid: int, *, designs: int, remarks: int) -> _Told:
    """Save from several clients at once, each design with remarks beside it; kill the server after so many designs."""
    told, numbers = _Told(), count()

    async def go_on(client: httpx.AsyncClient) -> None:
        while True:
            title = f"job {next(numbers)}"
            answer = await client.post("/saved", data={"inputs": inputs(title=title), "title": title})
            assert answer.status_code == 303, answer.text
            owner = answer.headers["location"].partition("?")[0]
            told.designs[owner] = []
            for number in range(remarks):
                words = f"remark {number} on {title}"
                assert (await client.post(f"{owner}/remarks", data={"words": words})).status_code == 303
                told.designs[owner].append(words)
            if len(told.designs) >= designs:
                os.kill(pid, signal.SIGKILL)

    async def until_nobody_answers(client: httpx.AsyncClient) -> None:
        try:
            await go_on(client)
        except httpx.TransportError:
            told.unanswered += 1

    async with httpx.AsyncClient(base_url=where, timeout=120) as client:
        await asyncio.gather(*(until_nobody_answers(client) for _ in range(_AT_ONCE)))
    return told


async def _all_of_it_is_there(where: str, told: _Told) -> None:
    """Each address answers with its measurements, and its page shows each remark; of some the drawing and the packet are made."""
    every = max(1, len(told.designs) // _LOOKED_AT)
    async with httpx.AsyncClient(base_url=where, timeout=120) as client:
        for number, (owner, remarks) in enumerate(told.designs.items()):
            measured, page = await client.get(f"{owner}.document.json"), await client.get(owner)
            assert measured.json()["title"] in page.text
            if number % every == 0:
                drawing, packet = await client.get(f"{owner}.svg"), await client.get(f"{owner}.packet.pdf")
                assert (drawing.status_code, drawing.content[:4]) == (200, b"<svg")
                assert (packet.status_code, packet.content[:5]) == (200, b"%PDF-")
            assert [words for words in remarks if words not in page.text] == []
        assert (await client.post("/saved", data={"inputs": inputs()})).status_code == 303


def _nothing_is_half_written(file: Path) -> dict[str, int]:
    """Oracle: SQLite's own look at the file; each design has one revision and three links, and all of its files or none."""
    connection = sqlite3.connect(file)
    try:
        assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        assert connection.execute("PRAGMA foreign_key_check").fetchall() == []
        kept = {t: connection.execute(f"SELECT count(*) FROM {t}").fetchone()[0] for t in _TABLES}  # noqa: S608
        found = connection.execute("SELECT revision_id, ending FROM files").fetchall()
    finally:
        connection.close()
    assert (kept["revisions"], kept["links"]) == (kept["designs"], 3 * kept["designs"])
    assert len(set(found)) == kept["files"]
    drawn = {r: frozenset(e for other, e in found if other == r) for r, _ in found}
    assert set(drawn.values()) <= {ALL_KEPT}
    return kept


@pytest.mark.parametrize(
    ("designs", "remarks"),
    [pytest.param(4, 24, id="4 designs"), pytest.param(1000, 1, id="1000 designs", marks=pytest.mark.full)],
)
async def test_a_killed_server_loses_nothing_that_it_acknowledged(tmp_path: Path, designs: int, remarks: int) -> None:
    """Oracle: what was told before SIGKILL, against what a server that starts anew answers, and against the file."""
    file = tmp_path / "designs.sqlite3"
    setting = {"SEAMREST_DATABASE": str(file), "SEAMREST_KERNEL_WORKERS": "1", **_LIMITS}
    with started("--port", "0", **setting) as (process, where, _):
        assert (await asyncio.to_thread(answer_of, f"{where}/healthz")).status_code == 200
        told = await _save_until_killed(where, process.pid, designs=designs, remarks=remarks)
        # A busy machine takes its time over what a killed process was writing.
        assert await asyncio.to_thread(process.wait, 120) == -signal.SIGKILL
    # It was killed with drawings on their way: some revisions have none.
    before = _nothing_is_half_written(file)
    assert before["files"] < before["revisions"] * len(ALL_KEPT)
    # The load was real: everybody was in the middle of something, and did not hear of it.
    assert (len(told.designs) >= designs, told.unanswered) == (True, _AT_ONCE)
    with started("--port", "0", **setting) as (process, where, _):
        assert (await asyncio.to_thread(answer_of, f"{where}/healthz")).status_code == 200
        await _all_of_it_is_there(where, told)
        process.terminate()
        assert await asyncio.to_thread(process.wait, 60) in {0, -signal.SIGTERM}
    kept = _nothing_is_half_written(file)
    assert kept["files"] > 0
    assert kept["designs"] > len(told.designs)
    assert kept["remarks"] >= sum(map(len, told.designs.values()))
