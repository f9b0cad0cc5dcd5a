"""How a database of any earlier schema becomes one of the newest: numbered steps, each run once, never edited later."""

from collections.abc import Callable, Mapping

from sqlalchemy import (
    Column,
    Connection,
    DateTime,
    ForeignKey,
    Integer,
    LargeBinary,
    MetaData,
    Table,
    Text,
    UniqueConstraint,
    insert,
    inspect,
    select,
    text,
    update,
)

from server.store.errors import SchemaError

_VERSION = Table("schema_version", MetaData(), Column("number", Integer, nullable=False))
_LOCK = 0x5EA11E57
"""Any number of our own: processes that start together on one PostgreSQL migrate one after the other."""


def _moment() -> DateTime:
    return DateTime(timezone=True)


def _designs_and_revisions(connection: Connection) -> None:
    """1: designs, their links, revisions and files."""
    schema = MetaData()
    Table(
        "designs",
        schema,
        Column("id", Text, primary_key=True),
        Column("title", Text, nullable=False),
        Column("note", Text, nullable=False),
        Column("created_at", _moment(), nullable=False),
    )
    Table(
        "links",
        schema,
        Column("hash", Text, primary_key=True),
        Column("design_id", Text, ForeignKey("designs.id"), nullable=False, index=True),
        Column("kind", Text, nullable=False),
        Column("number", Integer, nullable=False),
        Column("created_at", _moment(), nullable=False),
        Column("taken_back_at", _moment()),
    )
    Table(
        "revisions",
        schema,
        Column("id", Text, primary_key=True),
        Column("design_id", Text, ForeignKey("designs.id"), nullable=False),
        Column("number", Integer, nullable=False),
        Column("note", Text, nullable=False),
        Column("document", Text, nullable=False),
        Column("address", Text, nullable=False),
        Column("design", Text, nullable=False),
        Column("facts", Text, nullable=False),
        Column("verdict", Text, nullable=False),
        Column("engine_version", Text, nullable=False),
        Column("created_at", _moment(), nullable=False),
        UniqueConstraint("design_id", "number", name="one_revision_of_each_number"),
    )
    Table(
        "files",
        schema,
        Column("revision_id", Text, ForeignKey("revisions.id"), primary_key=True),
        Column("ending", Text, primary_key=True),
        Column("content", LargeBinary, nullable=False),
    )
    schema.create_all(connection, checkfirst=False)


def _what_others_add(connection: Connection) -> None:
    """2: what others say of a revision: remarks, readings, proposals."""
    schema = MetaData()
    Table("revisions", schema, Column("id", Text, primary_key=True))
    common = ("id", "revision_id", "name", "created_at")
    for name, texts in (
        ("remarks", ("kind", "words")),
        ("readings", ("readings",)),
        ("proposals", ("words", "document", "address", "design", "engine_version")),
    ):
        made = {key: Column(key, Text, nullable=False) for key in (*common, *texts)}
        made["id"] = Column("id", Text, primary_key=True)
        made["revision_id"] = Column("revision_id", Text, ForeignKey("revisions.id"), nullable=False, index=True)
        made["created_at"] = Column("created_at", _moment(), nullable=False)
        Table(name, schema, *made.values()).create(connection)


MIGRATIONS: Mapping[int, Callable[[Connection], None]] = {1: _designs_and_revisions, 2: _what_others_add}
NEWEST = max(MIGRATIONS)


def version_of(connection: Connection) -> int:
    """The schema that a database has; 0 for an empty one.

    Raises SchemaError where it holds tables that are not ours.
    """
    tables = inspect(connection).get_table_names()
    if _VERSION.name not in tables:
        if tables:
            raise SchemaError(f"The database holds tables of something else, such as “{tables[0]}”. Name another one.")
        return 0
    number: int = connection.execute(select(_VERSION.c.number)).scalar_one()
    return number


def migrate(connection: Connection, *, until: int = NEWEST) -> None:
    """Run the steps that a database still lacks, all in the transaction of the connection.

    Raises SchemaError for a database of a newer program.
    """
    if connection.dialect.name == "postgresql":
        connection.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": _LOCK})
    found = version_of(connection)
    if found > NEWEST:
        raise SchemaError(
            f"The database has schema {found}; this program knows schemas up to {NEWEST}. Use the newer program."
        )
    for number in range(found + 1, until + 1):
        MIGRATIONS[number](connection)
    if found == 0:
        _VERSION.create(connection)
        connection.execute(insert(_VERSION).values(number=until))
    elif until > found:
        connection.execute(update(_VERSION).values(number=until))
