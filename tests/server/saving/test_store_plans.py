"""Whatever is asked of a saved design is found by an index, so that it takes as long among many designs as among few."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import event

from server.store.database import Database
from server.store.designs import entries, file_of, keep_files, kept_endings, newest_number, next_revision, revision
from server.store.exchange import (
    add_proposal,
    add_readings,
    add_remark,
    proposals_for,
    readings_of,
    remarks_on,
    strike_readings,
)
from server.store.links import given_secrets, open_link, renew
from tests.server.saving.keeping import access, kept, saved

Ask = Callable[[Database, str, str], Any]


def _read(*asks: Callable[..., Any]) -> Ask:
    def ask(database: Database, design_id: str, revision_id: str) -> None:
        with database.reading() as connection:
            for one in asks:
                one(connection, design_id, revision_id)

    return ask


def _strike(database: Database, _: str, revision_id: str) -> None:
    add_readings(database, revision_id, name="Ada", taken={"set": {}})
    with database.reading() as connection:
        (found,) = readings_of(connection, revision_id)
    strike_readings(database, revision_id, found.id)


ASKED: dict[str, Ask] = {
    "page": _read(
        lambda c, d, _: (newest_number(c, d), revision(c, d, 1), entries(c, d)),
        lambda c, _, r: (remarks_on(c, r), readings_of(c, r), proposals_for(c, r), kept_endings(c, r)),
    ),
    "file": _read(lambda c, _, r: file_of(c, r, "svg")),
    "remark": lambda database, _, r: add_remark(database, r, kind="friend", name="Ada", words="Hello"),
    "readings": _strike,
    "proposal": lambda database, _, r: add_proposal(database, r, kept("other"), name="Ada", words=""),
    "next revision": lambda database, d, _: next_revision(database, d, kept("next"), base=1, note=""),
    "papers": lambda database, _, r: keep_files(database, r, {"dxf": b"0"}),
}


@pytest.mark.parametrize("what", ASKED)
def test_no_table_is_read_from_end_to_end(tmp_path: Path, what: str) -> None:
    """Oracle: how SQLite says it goes about each statement (EXPLAIN QUERY PLAN); “SCAN” is every row, “SEARCH” an index."""
    database = Database(str(tmp_path / "designs.sqlite3"))
    design_id, secret = saved(database)
    with database.reading() as connection:
        revision_id = revision(connection, design_id, 1).id
    told: list[tuple[str, Any]] = []

    def note(_: Any, __: Any, statement: str, parameters: Any, *___: Any) -> None:
        told.append((statement, parameters))

    event.listen(database.engine, "before_cursor_execute", note)
    owner = access(database, secret)
    with database.reading() as connection:
        open_link(connection, secret)
        given_secrets(connection, owner)
    renew(database, owner, "friend")
    ASKED[what](database, design_id, revision_id)
    event.remove(database.engine, "before_cursor_execute", note)
    plans = []
    with database.reading() as connection:
        for statement, parameters in told:
            if statement.startswith(("SELECT", "UPDATE")):
                explained = connection.exec_driver_sql(f"EXPLAIN QUERY PLAN {statement}", parameters)
                plans += [row.detail for row in explained]
    database.close()
    assert len(plans) > 5
    assert [plan for plan in plans if "SCAN" in plan] == []
