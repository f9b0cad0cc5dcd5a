"""What is kept: written once, found again, never by half; the same on SQLite and on PostgreSQL."""

import os
import signal
import subprocess
import sys
import threading
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path

import pytest
from sqlalchemy import select, text
from sqlalchemy.exc import IntegrityError

from server.store import designs
from server.store.database import Database, default_file
from server.store.designs import add_design, add_revision, as_json, entries, file_of, next_revision, revision
from server.store.errors import FullError, NewerRevisionError, NoSuchRevisionError, StoreUnavailableError
from server.store.exchange import add_proposal, add_readings, add_remark, proposals_for, readings_of, remarks_on
from server.store.keys import letters_of, number_of
from server.store.tables import designs as designs_table
from tests.server.saving.keeping import kept, saved

ROOT = Path(__file__).resolve().parents[3]


def test_a_revision_is_read_as_it_was_written(database: Database) -> None:
    """Oracle: the same words back, with signs that databases stumble over, and bytes that are no text."""
    odd = {"title": "Grüße ⌀ \u0000 \U0001f527"}
    with database.writing() as connection:
        design_id = add_design(connection, title="Van")
        add_revision(connection, design_id, kept(document=odd), number=1, note="")
    with database.reading() as connection:
        found = revision(connection, design_id, 1)
        assert (found.document, found.design, found.letters) == (odd, kept().design, "A")
        assert file_of(connection, found.id, "pdf") == b"%PDF-\x00\xff"
        assert file_of(connection, found.id, "dxf") is None


def test_moments_are_in_utc_and_say_so(database: Database) -> None:
    before = datetime.now(UTC)
    design_id, _ = saved(database)
    with database.reading() as connection:
        moment = revision(connection, design_id, 1).created_at
    assert moment.utcoffset() == timedelta(0)
    assert before <= moment <= datetime.now(UTC)


def test_a_moment_of_another_zone_is_turned_and_one_without_is_refused(database: Database) -> None:
    """Oracle: half past one in the morning at +05:30 is eight in the evening before in UTC."""
    there = datetime(2026, 3, 1, 1, 30, tzinfo=timezone(timedelta(hours=5, minutes=30)))
    with database.writing() as connection:
        connection.execute(designs_table.insert().values(id="d", title="", note="", created_at=there))
        found = connection.execute(select(designs_table.c.created_at)).scalar_one()
    assert found.isoformat() == "2026-02-28T20:00:00+00:00"
    with pytest.raises(Exception, match="without a zone"), database.writing() as connection:
        connection.execute(designs_table.insert().values(id="e", title="", note="", created_at=datetime(2026, 1, 1)))


def test_a_second_revision_follows_the_first_and_leaves_it_alone(database: Database) -> None:
    design_id, _ = saved(database, "first")
    assert next_revision(database, design_id, kept("second"), base=1, note="wider slot") == 2
    with database.reading() as connection:
        assert [(e.letters, e.verdict, e.note) for e in entries(connection, design_id)] == [
            ("B", "second", "wider slot"),
            ("A", "first", ""),
        ]
        assert revision(connection, design_id, 1).design["verdict"] == "first"


def test_a_revision_from_an_older_one_is_not_written(database: Database) -> None:
    design_id, _ = saved(database)
    next_revision(database, design_id, kept("B"), base=1, note="")
    with pytest.raises(NewerRevisionError) as told:
        next_revision(database, design_id, kept("other B"), base=1, note="")
    assert told.value.newest == 2
    with database.reading() as connection:
        assert [e.verdict for e in entries(connection, design_id)] == ["B", "as saved"]


def test_of_many_who_save_at_once_one_gets_the_letter_and_the_others_are_told(setting: str, database: Database) -> None:
    """Oracle: eight writers with connections of their own; one success, seven refusals, two revisions."""
    design_id, _ = saved(database)
    told: list[str] = []
    together = threading.Barrier(8)

    def save(words: str) -> None:
        own = Database(setting)
        together.wait()
        try:
            next_revision(own, design_id, kept(words), base=1, note="")
            told.append("saved")
        except NewerRevisionError:
            told.append("newer")
        own.close()

    writers = [threading.Thread(target=save, args=(str(i),)) for i in range(8)]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join(60)
    assert sorted(told) == ["newer"] * 7 + ["saved"]
    with database.reading() as connection:
        assert len(entries(connection, design_id)) == 2


def test_processes_that_open_a_new_database_at_once_all_find_it_ready(setting: str) -> None:
    databases = [Database(setting) for _ in range(6)]
    failures: list[BaseException] = []

    def use(database: Database) -> None:
        try:
            saved(database)
        except BaseException as error:  # the test reports whatever it was
            failures.append(error)

    threads = [threading.Thread(target=use, args=(d,)) for d in databases]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(60)
    assert failures == []
    with databases[0].reading() as connection:
        assert len(connection.execute(select(designs_table)).all()) == 6
    for database in databases:
        database.close()


def test_a_design_by_halves_is_not_kept(database: Database) -> None:
    def twice_the_same_letter() -> None:
        with database.writing() as connection:
            design_id = add_design(connection, title="Half")
            add_revision(connection, design_id, kept(), number=1, note="")
            add_revision(connection, design_id, kept(), number=1, note="")

    with pytest.raises(IntegrityError):
        twice_the_same_letter()
    with database.reading() as connection:
        assert connection.execute(select(designs_table)).all() == []


def test_nothing_refers_to_what_is_not_there(database: Database) -> None:
    with pytest.raises(IntegrityError), database.writing() as connection:
        add_revision(connection, "nowhere", kept(), number=1, note="")


def test_remarks_readings_and_proposals_stand_beside_their_revision(database: Database) -> None:
    design_id, _ = saved(database)
    with database.reading() as connection:
        before = revision(connection, design_id, 1)
    add_remark(database, before.id, kind="friend", name="Ada", words="The bar is 110.")
    add_readings(database, before.id, name="Ada", taken={"web_mm": [18.4]})
    add_proposal(database, before.id, kept("other bar"), name="Ada", words="110 bar")
    with database.reading() as connection:
        assert [(r.kind, r.name, r.words) for r in remarks_on(connection, before.id)] == [
            ("friend", "Ada", "The bar is 110.")
        ]
        assert [r.readings for r in readings_of(connection, before.id)] == [{"web_mm": [18.4]}]
        assert [(p.words, p.design["verdict"]) for p in proposals_for(connection, before.id)] == [
            ("110 bar", "other bar")
        ]
        assert revision(connection, design_id, 1) == before


def test_what_many_may_add_has_an_end(database: Database, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("server.store.exchange.MOST_OF_EACH", 2)
    monkeypatch.setattr(designs, "MOST_REVISIONS", 1)
    design_id, _ = saved(database)
    with database.reading() as connection:
        revision_id = revision(connection, design_id, 1).id
    for _ in range(2):
        add_remark(database, revision_id, kind="friend", name="", words="again")
    with pytest.raises(FullError, match="2 remarks"):
        add_remark(database, revision_id, kind="friend", name="", words="again")
    with pytest.raises(FullError, match="at most 1 revisions"):
        next_revision(database, design_id, kept(), base=1, note="")


def test_a_revision_that_is_not_there_is_named(database: Database) -> None:
    design_id, _ = saved(database)
    with database.reading() as connection, pytest.raises(NoSuchRevisionError, match="no revision C"):
        revision(connection, design_id, 3)


def test_a_save_that_was_acknowledged_outlives_a_kill(tmp_path: Path) -> None:
    """Oracle: a process prints the id after saving and is killed at once, mid-work; another opens the file."""
    file = tmp_path / "designs.sqlite3"
    program = (
        "import sys; from server.store.database import Database; from tests.server.saving.keeping import saved\n"
        "d = Database(sys.argv[1])\n"
        "while True: print(saved(d)[0], flush=True)"
    )
    process = subprocess.Popen([sys.executable, "-c", program, str(file)], cwd=ROOT, stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None
    told = [process.stdout.readline().strip() for _ in range(5)]
    os.kill(process.pid, signal.SIGKILL)
    told += process.communicate()[0].split()
    with Database(str(file)).reading() as connection:
        assert set(told) <= set(connection.execute(select(designs_table.c.id)).scalars())
        assert connection.execute(text("PRAGMA integrity_check")).scalar_one() == "ok"


def test_sqlite_waits_keeps_references_and_writes_through(tmp_path: Path) -> None:
    """Oracle: SQLite's own numbers: FULL is 2."""
    opened = Database(str(tmp_path / "designs.sqlite3"))
    with opened.reading() as connection:
        found = {
            name: connection.execute(text(f"PRAGMA {name}")).scalar_one()
            for name in ("journal_mode", "synchronous", "foreign_keys", "busy_timeout")
        }
    assert found == {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1, "busy_timeout": 10000}
    assert (tmp_path / "designs.sqlite3").stat().st_mode & 0o077 == 0
    opened.close()


def test_without_a_setting_designs_are_kept_in_the_users_data_folder(monkeypatch: pytest.MonkeyPatch) -> None:
    """Oracle: the XDG base directory specification; a relative path there is to be ignored."""
    monkeypatch.setenv("HOME", "/home/ada")
    monkeypatch.setenv("XDG_DATA_HOME", "/data")
    assert default_file() == Path("/data/seamrest/seamrest.sqlite3")
    monkeypatch.setenv("XDG_DATA_HOME", "data")
    assert default_file() == Path("/home/ada/.local/share/seamrest/seamrest.sqlite3")


@pytest.mark.parametrize(
    "wrong",
    ["/dev/null/designs.sqlite3", "mysql://host/name", "postgresql://nobody@/none?host=/nowhere", "postgresql://["],
)
def test_a_database_that_cannot_be_is_said_in_words(wrong: str) -> None:
    with pytest.raises(StoreUnavailableError) as told, Database(wrong).reading():
        pass
    assert "nobody@" not in str(told.value)


def test_json_keeps_its_order_and_is_plain_text() -> None:
    assert as_json({"b": 1.0, "a": "ü\0"}) == '{"b":1.0,"a":"\\u00fc\\u0000"}'


def test_letters_and_numbers_of_revisions_belong_together() -> None:
    """Oracle: every number has letters of its own, without I, O, Q, S, X, Z, and finds back from them."""
    seen = [letters_of(number) for number in range(1, 8421)]
    assert len(set(seen)) == len(seen)
    assert not set("".join(seen)) & set("IOQSXZ")
    assert [number_of(letters) for letters in seen] == list(range(1, 8421))
