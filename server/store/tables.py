"""The tables of the newest schema; ``migrations`` is how a database gets there."""

from datetime import UTC, datetime

from sqlalchemy import (
    Column,
    DateTime,
    Dialect,
    ForeignKey,
    Integer,
    LargeBinary,
    MetaData,
    Table,
    Text,
    TypeDecorator,
    UniqueConstraint,
)


class Moment(TypeDecorator[datetime]):
    """A moment that knows its zone: UTC, on databases that forget zones as on those that turn them."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Refuse moments without a zone, which would be read as another hour elsewhere."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError("a moment without a zone cannot be kept")
        utc = value.astimezone(UTC)
        return utc.replace(tzinfo=None) if dialect.name == "sqlite" else utc

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Every moment that is read is in UTC and says so."""
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


METADATA = MetaData()

designs = Table(
    "designs",
    METADATA,
    Column("id", Text, primary_key=True),
    Column("title", Text, nullable=False),
    Column("note", Text, nullable=False),
    Column("created_at", Moment, nullable=False),
)
links = Table(
    "links",
    METADATA,
    # sha256 of the secret in the address; the secret itself is kept nowhere.
    Column("hash", Text, primary_key=True),
    Column("design_id", Text, ForeignKey("designs.id"), nullable=False, index=True),
    Column("kind", Text, nullable=False),
    Column("number", Integer, nullable=False),
    Column("created_at", Moment, nullable=False),
    Column("taken_back_at", Moment),
)
revisions = Table(
    "revisions",
    METADATA,
    Column("id", Text, primary_key=True),
    Column("design_id", Text, ForeignKey("designs.id"), nullable=False),
    Column("number", Integer, nullable=False),
    Column("note", Text, nullable=False),
    # JSON as it was written on the day; read, never rewritten.
    Column("document", Text, nullable=False),
    Column("address", Text, nullable=False),
    Column("design", Text, nullable=False),
    Column("facts", Text, nullable=False),
    Column("verdict", Text, nullable=False),
    Column("engine_version", Text, nullable=False),
    Column("created_at", Moment, nullable=False),
    # Two who save at the same time cannot both get the next letter.
    UniqueConstraint("design_id", "number", name="one_revision_of_each_number"),
)
files = Table(
    "files",
    METADATA,
    Column("revision_id", Text, ForeignKey("revisions.id"), primary_key=True),
    Column("ending", Text, primary_key=True),
    Column("content", LargeBinary, nullable=False),
)
remarks = Table(
    "remarks",
    METADATA,
    Column("id", Text, primary_key=True),
    Column("revision_id", Text, ForeignKey("revisions.id"), nullable=False, index=True),
    Column("kind", Text, nullable=False),
    Column("name", Text, nullable=False),
    Column("words", Text, nullable=False),
    Column("created_at", Moment, nullable=False),
)
readings = Table(
    "readings",
    METADATA,
    Column("id", Text, primary_key=True),
    Column("revision_id", Text, ForeignKey("revisions.id"), nullable=False, index=True),
    Column("name", Text, nullable=False),
    Column("readings", Text, nullable=False),
    Column("created_at", Moment, nullable=False),
)
proposals = Table(
    "proposals",
    METADATA,
    Column("id", Text, primary_key=True),
    Column("revision_id", Text, ForeignKey("revisions.id"), nullable=False, index=True),
    Column("name", Text, nullable=False),
    Column("words", Text, nullable=False),
    Column("document", Text, nullable=False),
    Column("address", Text, nullable=False),
    Column("design", Text, nullable=False),
    Column("engine_version", Text, nullable=False),
    Column("created_at", Moment, nullable=False),
)

ALL_TABLES = tuple(METADATA.sorted_tables)
"""Every table, each after those that it refers to."""
