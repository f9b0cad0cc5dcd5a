"""Saved designs: revisions that are written once and never again, and what their owner says about them."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import Connection, Row, func, insert, select, update
from sqlalchemy.exc import IntegrityError

from server.store.database import Database
from server.store.errors import FullError, NewerRevisionError, NoSuchRevisionError
from server.store.keys import letters_of, new_secret
from server.store.tables import designs, files, revisions

MOST_REVISIONS = 200
"""Of one design; a page lists them all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """Everything about one worked-out design that a revision keeps, as it was on the day."""

    document: Mapping[str, Any]
    """The measurements that were given, in mm and kg."""
    address: str
    """The working sheet's address, with the texts as typed."""
    design: Mapping[str, Any]
    facts: Mapping[str, Any]
    """What the drawing says beside the sizes."""
    engine_version: str
    files: Mapping[str, bytes] = field(default_factory=dict)
    """The drawing, by ending."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SavedDesign:
    """One saved design, whatever its revisions."""

    id: str
    title: str
    note: str
    created_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One line in the list of revisions."""

    number: int
    note: str
    verdict: str
    created_at: datetime

    @property
    def letters(self) -> str:
        """How the revision is called on its drawing."""
        return letters_of(self.number)


@dataclass(frozen=True, slots=True, kw_only=True)
class Revision:
    """One revision as saved; its files are read one at a time."""

    id: str
    design_id: str
    number: int
    note: str
    document: Mapping[str, Any]
    address: str
    design: Mapping[str, Any]
    facts: Mapping[str, Any]
    verdict: str
    engine_version: str
    created_at: datetime

    @property
    def letters(self) -> str:
        """How it is called on its drawing."""
        return letters_of(self.number)


def now() -> datetime:
    """This moment, in UTC."""
    return datetime.now(UTC)


def as_json(value: object) -> str:
    """JSON as it is kept: in the order in which it was written, and in characters that every database holds."""
    return json.dumps(value, ensure_ascii=True, allow_nan=False, separators=(",", ":"))


def add_design(connection: Connection, *, title: str, note: str = "") -> str:
    """A design without revisions; returns its id, which stands in no address."""
    design_id = new_secret()
    connection.execute(insert(designs).values(id=design_id, title=title, note=note, created_at=now()))
    return design_id


def add_revision(connection: Connection, design_id: str, kept: Kept, *, number: int, note: str) -> str:
    """Write one revision, with the files that are drawn already; returns its id."""
    revision_id = new_secret()
    connection.execute(
        insert(revisions).values(
            id=revision_id,
            design_id=design_id,
            number=number,
            note=note,
            document=as_json(kept.document),
            address=kept.address,
            design=as_json(kept.design),
            facts=as_json(kept.facts),
            verdict=kept.design["verdict"],
            engine_version=kept.engine_version,
            created_at=now(),
        )
    )
    _insert_files(connection, revision_id, kept.files)
    return revision_id


def _insert_files(connection: Connection, revision_id: str, content: Mapping[str, bytes]) -> None:
    if content:
        rows = [{"revision_id": revision_id, "ending": e, "content": c} for e, c in content.items()]
        connection.execute(insert(files), rows)


def keep_files(database: Database, revision_id: str, content: Mapping[str, bytes]) -> None:
    """Put files beside a revision, all of them or none; one that is there already stays as it is."""
    try:
        with database.writing() as connection:
            there = kept_endings(connection, revision_id)
            _insert_files(connection, revision_id, {e: c for e, c in content.items() if e not in there})
    except IntegrityError:
        # Another process drew the same between our looking and our writing: what it wrote stays.
        return


def next_revision(database: Database, design_id: str, kept: Kept, *, base: int, note: str) -> int:
    """Save a revision that was made from revision ``base``; returns its number.

    Raises NewerRevisionError where ``base`` is no longer the newest: then nothing is written.
    """
    try:
        with database.writing() as connection:
            newest = newest_number(connection, design_id)
            if newest != base:
                raise NewerRevisionError(newest)
            if newest >= MOST_REVISIONS:
                raise FullError(f"A design has at most {MOST_REVISIONS} revisions. Save this one as a new design.")
            add_revision(connection, design_id, kept, number=newest + 1, note=note)
    except IntegrityError:
        # Another process took the same number between our looking and our writing.
        with database.reading() as connection:
            raise NewerRevisionError(newest_number(connection, design_id)) from None
    return newest + 1


def newest_number(connection: Connection, design_id: str) -> int:
    """The number of the newest revision; 0 where there is none."""
    asked = select(func.max(revisions.c.number)).where(revisions.c.design_id == design_id)
    return connection.execute(asked).scalar_one() or 0


def entries(connection: Connection, design_id: str) -> Sequence[Entry]:
    """All revisions, the newest first."""
    r = revisions.c
    asked = select(r.number, r.note, r.verdict, r.created_at).where(r.design_id == design_id).order_by(r.number.desc())
    return [Entry(**row._asdict()) for row in connection.execute(asked)]


def revision(connection: Connection, design_id: str, number: int) -> Revision:
    """One revision as saved.

    Raises NoSuchRevisionError.
    """
    asked = select(revisions).where(revisions.c.design_id == design_id, revisions.c.number == number)
    row = connection.execute(asked).one_or_none()
    if row is None:
        raise NoSuchRevisionError(f"This design has no revision {letters_of(number)}.")
    return _revision(row)


def _revision(row: Row[Any]) -> Revision:
    known = row._asdict()
    return Revision(**known | {name: json.loads(known[name]) for name in ("document", "design", "facts")})


def file_of(connection: Connection, revision_id: str, ending: str) -> bytes | None:
    """A file that was kept with a revision."""
    asked = select(files.c.content).where(files.c.revision_id == revision_id, files.c.ending == ending)
    content: bytes | None = connection.execute(asked).scalar_one_or_none()
    return content


def kept_endings(connection: Connection, revision_id: str) -> frozenset[str]:
    """Which files were kept with a revision."""
    return frozenset(connection.execute(select(files.c.ending).where(files.c.revision_id == revision_id)).scalars())


def saved_design(connection: Connection, design_id: str) -> SavedDesign:
    """What its owner calls a design."""
    return SavedDesign(**connection.execute(select(designs).where(designs.c.id == design_id)).one()._asdict())


def rename(database: Database, design_id: str, *, title: str, note: str) -> None:
    """Change what the owner calls a design; its revisions stay as they are."""
    with database.writing() as connection:
        connection.execute(update(designs).where(designs.c.id == design_id).values(title=title, note=note))
