"""Everything in a database as one file, whatever kind of database, and back: lines of JSON, packed, with a seal at the end."""

import base64
import gzip
import hashlib
import json
import os
import zlib
from collections.abc import Iterable, Iterator, Mapping
from datetime import UTC, datetime
from itertools import groupby
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, MetaData, Table, func, insert, select

from server.store.database import engine_of, readable, writable
from server.store.errors import BackupError
from server.store.migrations import NEWEST, migrate, version_of

FORMAT, VERSION = "seamrest backup", 1
_AT_ONCE = 20
"""Rows that are held in memory together; one with a packet takes some 1.5 MB."""
_OWN = "schema_version"
_DAMAGED = "The backup is damaged or not whole: "

Line = dict[str, Any]


def save(setting: str, file: Path) -> int:
    """Write everything that a database holds at one moment, while others go on writing; returns how many rows.

    Raises BackupError where the file is there already or cannot be written, else what opening a database raises.
    """
    if file.exists():
        raise BackupError(f"{file} is there already; a backup never overwrites one.")
    unfinished = file.with_name(f".{file.name}.{os.getpid()}.unfinished")
    engine = engine_of(setting)
    try:
        with readable(engine) as connection:
            count = _write(connection, unfinished)
        # Only a whole backup ever has its name.
        unfinished.rename(file)
    except OSError as error:
        raise BackupError(f"{file} cannot be written: {error.strerror}.") from error
    finally:
        unfinished.unlink(missing_ok=True)
        engine.dispose()
    return count


def _write(connection: Connection, file: Path) -> int:
    seal, count = hashlib.sha256(), 0
    descriptor = os.open(file, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600)
    with os.fdopen(descriptor, "wb") as raw, gzip.GzipFile(fileobj=raw, mode="wb", mtime=0) as packed:
        for line in _lines(connection):
            text = json.dumps(line, separators=(",", ":")).encode() + b"\n"
            seal.update(text)
            packed.write(text)
            count += "row" in line
        packed.write(json.dumps({"rows": count, "sha256": seal.hexdigest()}).encode() + b"\n")
        packed.close()
        raw.flush()
        os.fsync(raw.fileno())
    return count


def _lines(connection: Connection) -> Iterator[Line]:
    schema = version_of(connection)
    if schema == 0:
        raise BackupError("The database is empty; there is nothing to save.")
    made_at = datetime.now(UTC).isoformat(timespec="seconds")
    yield {"format": FORMAT, "version": VERSION, "schema": schema, "made_at": made_at}
    for table in _tables(connection):
        rows = connection.execution_options(yield_per=_AT_ONCE).execute(select(table))
        for row in rows.mappings():
            yield {"table": table.name, "row": {name: _packed(value) for name, value in row.items()}}


def _tables(connection: Connection) -> list[Table]:
    """The tables as the database has them, each after those that it refers to."""
    found = MetaData()
    found.reflect(connection)
    return [table for table in found.sorted_tables if table.name != _OWN]


def _packed(value: object) -> object:
    """A value as JSON carries it from one kind of database to another."""
    if isinstance(value, datetime):
        return {"moment": (value if value.tzinfo else value.replace(tzinfo=UTC)).astimezone(UTC).isoformat()}
    if isinstance(value, bytes | memoryview):
        return {"bytes": base64.b64encode(bytes(value)).decode()}
    return value


def _unpacked(value: object, dialect: str) -> object:
    if isinstance(value, Mapping) and "moment" in value:
        moment = datetime.fromisoformat(value["moment"])
        return moment.replace(tzinfo=None) if dialect == "sqlite" else moment
    return base64.b64decode(value["bytes"]) if isinstance(value, Mapping) else value


def restore(setting: str, file: Path) -> int:
    """Put everything from a backup into an empty database, or nothing; returns how many rows.

    A backup of an earlier schema is brought to the newest on the way.

    Raises BackupError where the backup is damaged or the database is not empty, else what opening a database raises.
    """
    head = _checked(file)
    engine = engine_of(setting)
    try:
        with writable(engine) as connection:
            _require_room(connection, head["schema"])
            migrate(connection, until=head["schema"])
            count = _put(connection, _read(file))
            migrate(connection)
    finally:
        engine.dispose()
    return count


def _require_room(connection: Connection, schema: int) -> None:
    there = version_of(connection)
    if there == 0:
        return
    filled = [
        t.name for t in _tables(connection) if connection.execute(select(func.count()).select_from(t)).scalar_one()
    ]
    if filled or there != schema:
        what = f"has rows in {', '.join(filled)}" if filled else f"has schema {there}, the backup {schema}"
        raise BackupError(f"The database is not empty: it {what}. Name one that does not exist yet.")


def _put(connection: Connection, lines: Iterable[Line]) -> int:
    dialect, count = connection.dialect.name, 0
    tables = {table.name: table for table in _tables(connection)}
    for name, group in groupby((line for line in lines if "row" in line), key=lambda line: str(line["table"])):
        if name not in tables:
            raise BackupError(f"{_DAMAGED}it has a table “{name[:40]}” that its schema does not have.")
        for rows in _batches(group):
            values = [{key: _unpacked(value, dialect) for key, value in line["row"].items()} for line in rows]
            connection.execute(insert(tables[name]), values)
            count += len(values)
    return count


def _batches(lines: Iterable[Line]) -> Iterator[list[Line]]:
    batch: list[Line] = []
    for line in lines:
        batch.append(line)
        if len(batch) == _AT_ONCE:
            yield batch
            batch = []
    if batch:
        yield batch


def _read(file: Path) -> Iterator[Line]:
    with gzip.open(file, "rb") as packed:
        for text in packed:
            yield json.loads(text)


def _checked(file: Path) -> Line:
    """The head of a backup whose seal is whole; nothing of it is used before that is known."""
    seal, rows, last = hashlib.sha256(), 0, b""
    head: Line = {}
    try:
        with gzip.open(file, "rb") as packed:
            for text in packed:
                if last:
                    seal.update(last)
                    rows += b'"row"' in last[:80]
                last = text
                head = head or json.loads(text)
        foot = json.loads(last or b"{}")
    except OSError as error:
        raise BackupError(f"{file} cannot be read: {error.strerror or error}.") from error
    except (ValueError, EOFError, zlib.error) as error:
        raise BackupError(f"{_DAMAGED}{error}.") from error
    if not isinstance(head, dict) or head.get("format") != FORMAT or head.get("version") != VERSION:
        raise BackupError(f"{file} is no backup that this program can read.")
    if not isinstance(foot, dict) or (foot.get("sha256"), foot.get("rows")) != (seal.hexdigest(), rows):
        raise BackupError(f"{_DAMAGED}its seal does not fit what is in it.")
    if not isinstance(head.get("schema"), int):
        raise BackupError(f"{_DAMAGED}it does not say what schema it has.")
    if head["schema"] > NEWEST:
        raise BackupError(f"The backup has schema {head['schema']}; this program knows schemas up to {NEWEST}.")
    return head
