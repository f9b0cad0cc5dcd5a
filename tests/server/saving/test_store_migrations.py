"""A database of any earlier schema becomes one of the newest, with everything in it; a newer one is left alone."""

from typing import Any

import pytest
from sqlalchemy import Connection, inspect, text

from server.store.database import Database, engine_of, writable
from server.store.designs import revision, saved_design
from server.store.errors import SchemaError
from server.store.exchange import add_remark, remarks_on
from server.store.migrations import MIGRATIONS, NEWEST, migrate, version_of
from server.store.tables import ALL_TABLES, METADATA
from tests.server.saving.keeping import access, saved


def shape(connection: Connection) -> dict[str, Any]:
    """Tables, columns, keys and indexes as the database has them."""
    found = inspect(connection)
    return {
        table: (
            {(c["name"], str(c["type"]), c["nullable"]) for c in found.get_columns(table)},
            found.get_pk_constraint(table)["constrained_columns"],
            {(tuple(k["constrained_columns"]), k["referred_table"]) for k in found.get_foreign_keys(table)},
            {(tuple(i["column_names"]), i["unique"]) for i in found.get_indexes(table)},
            {(u["name"], tuple(u["column_names"])) for u in found.get_unique_constraints(table)},
        )
        for table in found.get_table_names()
        if table != "schema_version"
    }


def test_the_steps_lead_to_the_tables_that_the_program_knows(setting: str, other_setting: str, tmp_path: Any) -> None:
    """Oracle: the tables of the program, made at once in an empty database of the same kind."""
    migrated = engine_of(setting)
    with writable(migrated) as connection:
        migrate(connection)
        by_steps = shape(connection)
        for table in reversed(ALL_TABLES):
            table.drop(connection)
        METADATA.create_all(connection)
        assert shape(connection) == by_steps
    migrated.dispose()
    assert set(by_steps) == {table.name for table in ALL_TABLES}


def test_a_database_of_the_first_schema_keeps_what_is_in_it(setting: str) -> None:
    """Oracle: rows written by hand into schema 1 are read by today's program."""
    engine = engine_of(setting)
    with writable(engine) as connection:
        migrate(connection, until=1)
        for words in (
            "INSERT INTO designs VALUES ('d1', 'Old van', 'kept', '2025-01-02 03:04:05.000000')",
            """INSERT INTO revisions (id, design_id, number, note, document, address, design, facts, verdict, engine_version,
               created_at) VALUES ('r1', 'd1', 1, '', '{"title":"x"}', '/pad', '{"verdict":"old"}', '{}', 'old', '0',
               '2025-01-02 03:04:05.000000')""",
        ):
            connection.execute(text(words))
    engine.dispose()
    database = Database(setting)
    with database.reading() as connection:
        assert version_of(connection) == NEWEST
        assert saved_design(connection, "d1").title == "Old van"
        assert revision(connection, "d1", 1).design == {"verdict": "old"}
    add_remark(database, "r1", kind="friend", name="", words="still here")
    with database.reading() as connection:
        assert len(remarks_on(connection, "r1")) == 1
    database.close()


@pytest.mark.parametrize("version", sorted(MIGRATIONS))
def test_each_schema_is_brought_to_the_newest(setting: str, version: int) -> None:
    engine = engine_of(setting)
    with writable(engine) as connection:
        migrate(connection, until=version)
        assert version_of(connection) == version
    engine.dispose()
    database = Database(setting)
    saved(database)
    with database.reading() as connection:
        assert version_of(connection) == NEWEST
    database.close()


def test_a_newest_database_is_not_touched_again(setting: str) -> None:
    first = Database(setting)
    _, owner = saved(first)
    first.close()
    second = Database(setting)
    assert access(second, owner).design.title == "Van"
    second.close()


def test_a_step_that_fails_leaves_the_database_as_it_was(setting: str, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(connection: Connection) -> None:
        connection.execute(text("CREATE TABLE half (id TEXT)"))
        raise RuntimeError("power cut")

    monkeypatch.setattr("server.store.migrations.MIGRATIONS", {1: MIGRATIONS[1], 2: broken})
    with pytest.raises(RuntimeError, match="power cut"), Database(setting).reading():
        pass
    monkeypatch.undo()
    engine = engine_of(setting)
    with writable(engine) as connection:
        assert inspect(connection).get_table_names() == []
    engine.dispose()


def test_a_database_of_a_newer_program_is_refused_in_words(setting: str) -> None:
    engine = engine_of(setting)
    with writable(engine) as connection:
        migrate(connection)
        connection.execute(text("UPDATE schema_version SET number = 99"))
    engine.dispose()
    with pytest.raises(SchemaError, match="schema 99"), Database(setting).reading():
        pass


def test_a_database_of_something_else_is_left_alone(setting: str) -> None:
    engine = engine_of(setting)
    with writable(engine) as connection:
        connection.execute(text("CREATE TABLE recipes (id TEXT)"))
    engine.dispose()
    with pytest.raises(SchemaError, match="recipes"), Database(setting).reading():
        pass
