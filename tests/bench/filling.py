"""A database with as many saved designs as one likes: real ones, saved by the application, then copied by SQL."""

import asyncio
import os
import shutil
import sqlite3
import subprocess
import sys
from collections.abc import AsyncIterator, Iterator
from contextlib import asynccontextmanager, contextmanager
from pathlib import Path
from typing import Any

import httpx

from server.saved_drawing import ALL_KEPT
from server.store.keys import GIVEN_KINDS, derived_secret, hash_of, new_secret
from tests.bench.bench_server import ROOT
from tests.documents import van
from tests.server.saving.asking import save

REAL = 5
_DRAWN_WITHIN_S = 1200
_CUT_BYTES = 1024
"""Copies carry only the beginning of their drawings: whole ones would take 20 GB, and no page of many reads them."""
Row = dict[str, Any]


@contextmanager
def serving(file: Path) -> Iterator[tuple["subprocess.Popen[str]", str]]:
    """A server on a database of its own, without limits for one client."""
    none = {f"SEAMREST_CLIENT_{name}_PER_MINUTE": "0" for name in ("REQUESTS", "MODELS", "CHANGES")}
    own = {"SEAMREST_DATABASE": str(file), "SEAMREST_MODEL_CACHE_FOLDER": str(file.with_suffix(".models"))}
    # On a busy machine a drawing that is given up would have to be asked for again.
    own["SEAMREST_DRAWING_TIMEOUT_S"] = "300"
    process = subprocess.Popen(
        [sys.executable, "-m", "server", "--port", "0"],
        cwd=ROOT,
        env=os.environ | none | own,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
    )
    try:
        assert process.stdout is not None
        yield process, process.stdout.readline().split(" is at ")[1].strip()
    finally:
        process.terminate()
        process.communicate()


@asynccontextmanager
async def client_of(where: str) -> AsyncIterator[httpx.AsyncClient]:
    """A client that waits for a server that is still starting."""
    transport = httpx.AsyncHTTPTransport(retries=8)
    async with httpx.AsyncClient(base_url=where, timeout=120, transport=transport) as client:
        (await client.get("/healthz")).raise_for_status()
        yield client


async def save_real_ones(file: Path) -> None:
    """A few designs of different seams, through a server."""
    with serving(file) as (_, where):
        async with client_of(where) as client:
            for number in range(REAL):
                owner = await save(client, van(seam__height_mm=18 + number), title=f"Van {number}", note="for a test")
                answer = await client.post(f"{owner}/remarks", data={"words": "The bar is here.", "name": "Ada"})
                assert answer.status_code == 303, answer.text
            await _until_drawn(file)
    connection = sqlite3.connect(file)
    connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    connection.close()


async def _until_drawn(file: Path) -> None:
    """Saves are answered before anything is drawn; a copy needs the drawing beside it."""
    for _ in range(4 * _DRAWN_WITHIN_S):
        connection = sqlite3.connect(file)
        drawn = connection.execute("SELECT count(*) FROM files").fetchone()[0]
        connection.close()
        if drawn == REAL * len(ALL_KEPT):
            return
        await asyncio.sleep(0.25)
    raise AssertionError("the saved designs were not drawn")


def _rows(connection: sqlite3.Connection, table: str, where: str = "") -> list[Row]:
    # Table and condition are this room's own words.
    return [dict(row) for row in connection.execute(f"SELECT * FROM {table} {where}")]  # noqa: S608


def _insert(connection: sqlite3.Connection, table: str, rows: list[Row]) -> None:
    names = list(rows[0])
    marks = ", ".join(f":{name}" for name in names)
    connection.executemany(f"INSERT INTO {table} ({', '.join(names)}) VALUES ({marks})", rows)  # noqa: S608


def _copies(kinds: list[dict[str, list[Row]]], number: int, secret: str) -> Iterator[tuple[str, list[Row]]]:
    """All rows of one design again, under ids and links of its own."""
    one, design, revision = kinds[number % len(kinds)], new_secret(), new_secret()
    yield "designs", [row | {"id": design, "title": f"Copy {number}"} for row in one["designs"]]
    yield "revisions", [row | {"id": revision, "design_id": design} for row in one["revisions"]]
    yield "files", [row | {"revision_id": revision, "content": row["content"][:_CUT_BYTES]} for row in one["files"]]
    yield "remarks", [row | {"id": new_secret(), "revision_id": revision} for row in one["remarks"]]
    of_kind = {"owner": secret} | {kind: derived_secret(secret, kind, 1) for kind in GIVEN_KINDS}
    yield "links", [row | {"hash": hash_of(of_kind[row["kind"]]), "design_id": design} for row in one["links"]]


def fill(file: Path, real: Path, designs: int) -> list[str]:
    """A database of so many designs, all but a few of them copies of real ones; gives the owners' secrets of the copies."""
    shutil.copy(real, file)
    connection = sqlite3.connect(file)
    connection.row_factory = sqlite3.Row
    kinds = []
    for row in _rows(connection, "designs"):
        revisions = _rows(connection, "revisions", f"WHERE design_id = '{row['id']}'")
        beside = f"WHERE revision_id = '{revisions[0]['id']}'"
        more = {name: _rows(connection, name, beside) for name in ("files", "remarks")}
        links = _rows(connection, "links", f"WHERE design_id = '{row['id']}'")
        kinds.append({"designs": [row], "revisions": revisions, "links": links, **more})
    secrets = [new_secret() for _ in range(designs - REAL)]
    connection.execute("PRAGMA synchronous = OFF")
    for number, secret in enumerate(secrets):
        for table, rows in _copies(kinds, number, secret):
            _insert(connection, table, rows)
        if number % 5000 == 0:
            connection.commit()
    connection.commit()
    connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    connection.close()
    return secrets
