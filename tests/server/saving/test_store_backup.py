"""Backup and restore: everything, at one moment, between both kinds of database; a damaged one changes nothing."""

import gzip
import hashlib
import json
import os
import subprocess
import sys
import threading
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import select, text

from server.store.database import Database, engine_of, readable, writable
from server.store.designs import revision
from server.store.dump import FORMAT, VERSION, restore, save
from server.store.errors import BackupError, StoreUnavailableError
from server.store.exchange import add_proposal, add_readings, add_remark
from server.store.migrations import migrate
from server.store.tables import ALL_TABLES, designs, revisions
from tests.server.saving.keeping import access, kept, saved

ROOT = Path(__file__).resolve().parents[3]


def everything(database: Database) -> dict[str, list[tuple[Any, ...]]]:
    with database.reading() as connection:
        return {t.name: sorted(tuple(row) for row in connection.execute(select(t))) for t in ALL_TABLES}


def full(database: Database) -> str:
    """A database with something in every table; gives the owner's secret."""
    design_id, owner = saved(database, "ü ⌀ \N{WRENCH}")
    with database.reading() as connection:
        first = revision(connection, design_id, 1).id
    add_remark(database, first, kind="friend", name="Ada", words="two\nlines")
    add_readings(database, first, name="", taken={"set": {"web_mm": [18.5]}})
    add_proposal(database, first, kept("other"), name="", words="")
    return owner


@pytest.fixture
def other(other_setting: str) -> Any:
    opened = Database(other_setting)
    yield opened
    opened.close()


def test_a_backup_restored_into_the_other_kind_of_database_is_the_same_row_by_row(
    setting: str, database: Database, other_setting: str, other: Database, tmp_path: Path
) -> None:
    owner = full(database)
    count = save(setting, tmp_path / "all.backup")
    assert restore(other_setting, tmp_path / "all.backup") == count
    found = everything(other)
    assert found == everything(database)
    assert all(found.values())
    assert sum(map(len, found.values())) == count
    assert access(other, owner).kind == "owner"


def test_a_backup_comes_back_into_its_own_kind_of_database(database: Database, setting: str, tmp_path: Path) -> None:
    full(database)
    before = everything(database)
    save(setting, tmp_path / "all.backup")
    with database.writing() as connection:
        for table in reversed(ALL_TABLES):
            connection.execute(table.delete())
    restore(setting, tmp_path / "all.backup")
    assert everything(database) == before


def test_a_backup_made_while_others_write_is_of_one_moment(
    setting: str, database: Database, other_setting: str, other: Database, tmp_path: Path
) -> None:
    """Oracle: a writer adds a design with its revision, then its next: in no backup is there one without the other's parent."""
    is_over = threading.Event()

    def write() -> None:
        own = Database(setting)
        while not is_over.is_set():
            saved(own)
        own.close()

    saved(database)
    writer = threading.Thread(target=write)
    writer.start()
    try:
        save(setting, tmp_path / "all.backup")
    finally:
        is_over.set()
        writer.join(30)
    restore(other_setting, tmp_path / "all.backup")
    with other.reading() as connection:
        ids = set(connection.execute(select(designs.c.id)).scalars())
        assert ids == set(connection.execute(select(revisions.c.design_id)).scalars())


def test_a_backup_of_the_first_schema_is_restored_into_the_newest(
    setting: str, other_setting: str, other: Database, tmp_path: Path
) -> None:
    engine = engine_of(setting)
    with writable(engine) as connection:
        migrate(connection, until=1)
        connection.execute(text("INSERT INTO designs VALUES ('d1', 'Old van', '', '2025-01-02 03:04:05.000000')"))
    engine.dispose()
    save(setting, tmp_path / "old.backup")
    restore(other_setting, tmp_path / "old.backup")
    with other.reading() as connection:
        row = connection.execute(select(designs)).one()
    assert (row.title, row.created_at.isoformat()) == ("Old van", "2025-01-02T03:04:05+00:00")
    saved(other)


def test_a_database_that_holds_something_is_not_restored_over(setting: str, database: Database, tmp_path: Path) -> None:
    full(database)
    before = everything(database)
    save(setting, tmp_path / "all.backup")
    with pytest.raises(BackupError, match="not empty"):
        restore(setting, tmp_path / "all.backup")
    assert everything(database) == before


def cut(content: bytes) -> bytes:
    return content[: len(content) // 2]


def altered(content: bytes) -> bytes:
    return gzip.compress(gzip.decompress(content).replace(b"Van", b"Vun"))


def without_last_row(content: bytes) -> bytes:
    lines = gzip.decompress(content).splitlines(keepends=True)
    return gzip.compress(b"".join([*lines[:-2], lines[-1]]))


def miscounted(content: bytes) -> bytes:
    """All of it is there, and its seal as well; only how much there is said to be is wrong."""
    *lines, seal = gzip.decompress(content).splitlines(keepends=True)
    told = json.loads(seal)
    return gzip.compress(b"".join([*lines, json.dumps({**told, "rows": told["rows"] + 1}).encode() + b"\n"]))


def without_schema(_: bytes) -> bytes:
    """Sealed as it should be, but nobody can say what is in it."""
    head = json.dumps({"format": FORMAT, "version": VERSION}).encode() + b"\n"
    seal = json.dumps({"rows": 0, "sha256": hashlib.sha256(head).hexdigest()}).encode() + b"\n"
    return gzip.compress(head + seal)


@pytest.mark.parametrize(
    "damage",
    [
        cut,
        altered,
        without_last_row,
        miscounted,
        without_schema,
        lambda _: b"",
        lambda _: b"no backup",
        lambda _: gzip.compress(b"[]\n"),
    ],
)
def test_a_damaged_backup_changes_nothing(
    setting: str, database: Database, other_setting: str, tmp_path: Path, damage: Any
) -> None:
    full(database)
    save(setting, tmp_path / "all.backup")
    (tmp_path / "bad.backup").write_bytes(damage((tmp_path / "all.backup").read_bytes()))
    with pytest.raises(BackupError):
        restore(other_setting, tmp_path / "bad.backup")
    engine = engine_of(other_setting)
    with readable(engine) as connection:
        assert not engine.dialect.has_table(connection, "designs")
    engine.dispose()


def test_a_byte_that_came_out_wrong_is_told_wherever_it_lies(
    setting: str, database: Database, other_setting: str, tmp_path: Path
) -> None:
    """Beyond the ten bytes of its header a packed file is data and their sums alone (RFC 1952)."""
    full(database)
    save(setting, tmp_path / "all.backup")
    content = (tmp_path / "all.backup").read_bytes()
    for at in range(10, len(content), len(content) // 60):
        (tmp_path / "bad.backup").write_bytes(content[:at] + bytes([content[at] ^ 0x55]) + content[at + 1 :])
        with pytest.raises(BackupError):
            restore(other_setting, tmp_path / "bad.backup")


def test_a_backup_overwrites_nothing_and_is_for_its_owner_alone(
    setting: str, database: Database, tmp_path: Path
) -> None:
    full(database)
    save(setting, tmp_path / "all.backup")
    assert (tmp_path / "all.backup").stat().st_mode & 0o077 == 0
    with pytest.raises(BackupError, match="there already"):
        save(setting, tmp_path / "all.backup")
    with pytest.raises(BackupError, match="cannot be written"):
        save(setting, tmp_path / "no" / "such" / "folder.backup")
    assert [p.name for p in tmp_path.iterdir() if p.is_file()] == ["all.backup"]


def test_an_empty_or_absent_database_cannot_be_saved(setting: str, tmp_path: Path) -> None:
    with pytest.raises(BackupError, match="nothing to save"):
        save(setting, tmp_path / "all.backup")
    with pytest.raises(StoreUnavailableError):
        save("postgresql://nobody@/none?host=/nowhere", tmp_path / "all.backup")
    assert not list(tmp_path.glob("*backup*"))


def run(setting: str, *arguments: str) -> "subprocess.CompletedProcess[str]":
    command = [sys.executable, "-m", "server.backup", *arguments]
    environment = os.environ | {"SEAMREST_DATABASE": setting}
    return subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, text=True, check=False)


def test_the_commands_save_and_restore_and_say_what_they_did(
    setting: str, database: Database, other_setting: str, other: Database, tmp_path: Path
) -> None:
    full(database)
    file = str(tmp_path / "all.backup")
    done = run(setting, "save", file)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("Saved ")
    back = run(other_setting, "restore", file)
    assert (back.returncode, back.stdout) == (0, done.stdout.replace("Saved", "Restored"))
    assert everything(other) == everything(database)
    again = run(other_setting, "restore", file)
    assert (again.returncode, again.stdout) == (1, "")
    assert "not empty" in again.stderr
    assert run(setting, "forget", file).returncode == 2
