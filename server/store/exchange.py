"""What others add beside a revision: remarks, readings of the finished part, proposals. The revision itself never changes."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import Connection, Table, func, insert, select, update

from server.store.database import Database
from server.store.designs import Kept, as_json, now
from server.store.errors import FullError, NoSuchRevisionError
from server.store.keys import Kind, new_secret
from server.store.tables import proposals, readings, remarks

MOST_OF_EACH = 200
"""Remarks, readings or proposals beside one revision: anybody with the link may add to them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Remark:
    """Some words beside a revision."""

    kind: Kind
    name: str
    words: str
    created_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One set of readings of a finished part."""

    id: str
    """Names it in forms, and opens nothing."""
    name: str
    readings: Mapping[str, Any]
    created_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposal:
    """The same job with another bar, cutter or material, worked out and sent back."""

    id: str
    name: str
    words: str
    document: Mapping[str, Any]
    address: str
    design: Mapping[str, Any]
    engine_version: str
    created_at: datetime


def add_remark(database: Database, revision_id: str, *, kind: Kind, name: str, words: str) -> None:
    """Put a remark beside a revision.

    Raises FullError.
    """
    _add(database, remarks, revision_id, {"kind": kind, "name": name, "words": words})


def add_readings(database: Database, revision_id: str, *, name: str, taken: Mapping[str, Any]) -> None:
    """Put a set of readings beside a revision.

    Raises FullError.
    """
    _add(database, readings, revision_id, {"name": name, "readings": as_json(taken)})


def add_proposal(database: Database, revision_id: str, kept: Kept, *, name: str, words: str) -> str:
    """Put a proposal beside a revision; returns its id, which names it in addresses but opens nothing.

    Raises FullError.
    """
    return _add(database, proposals, revision_id, _proposal_row(kept, name=name, words=words))


def _proposal_row(kept: Kept, *, name: str, words: str) -> dict[str, str]:
    return {
        "name": name,
        "words": words,
        "document": as_json(kept.document),
        "address": kept.address,
        "design": as_json(kept.design),
        "engine_version": kept.engine_version,
    }


def add_together(
    database: Database,
    revision_id: str,
    *,
    remarks_sent: Sequence[Mapping[str, str]] = (),
    readings_sent: Sequence[tuple[str, Mapping[str, Any]]] = (),
    proposals_sent: Sequence[tuple[str, str, Kept]] = (),
) -> None:
    """Put many things beside a revision to which nobody else has the link yet, all of them or none.

    Remarks are (kind, name, words) by name, readings (name, what was taken), proposals (name, words, what was worked out).
    """
    tables: tuple[tuple[Table, list[Mapping[str, str]]], ...] = (
        (remarks, [dict(sent) for sent in remarks_sent]),
        (readings, [{"name": name, "readings": as_json(taken)} for name, taken in readings_sent]),
        (proposals, [_proposal_row(kept, name=name, words=words) for name, words, kept in proposals_sent]),
    )
    begun = now()
    with database.writing() as connection:
        for table, rows in tables:
            # Told apart by a microsecond each, so that they keep their order.
            told = [
                {
                    **row,
                    "id": new_secret(),
                    "revision_id": revision_id,
                    "created_at": begun + timedelta(microseconds=number),
                }
                for number, row in enumerate(rows)
            ]
            if told:
                connection.execute(insert(table), told)


def _add(database: Database, table: Table, revision_id: str, values: Mapping[str, str]) -> str:
    with database.writing() as connection:
        asked = select(func.count()).select_from(table).where(table.c.revision_id == revision_id)
        if connection.execute(asked).scalar_one() >= MOST_OF_EACH:
            raise FullError(
                f"There are {MOST_OF_EACH} {table.name} beside this revision, which is as many as are kept."
            )
        new_id = new_secret()
        connection.execute(insert(table).values(id=new_id, revision_id=revision_id, created_at=now(), **values))
    return new_id


def remarks_on(connection: Connection, revision_id: str) -> Sequence[Remark]:
    """The remarks beside a revision, the oldest first."""
    rows = connection.execute(_of(remarks, revision_id))
    return [Remark(kind=r.kind, name=r.name, words=r.words, created_at=r.created_at) for r in rows]


def readings_of(connection: Connection, revision_id: str) -> Sequence[Reading]:
    """The sets of readings beside a revision, the oldest first."""
    rows = connection.execute(_of(readings, revision_id))
    return [Reading(id=r.id, name=r.name, readings=json.loads(r.readings), created_at=r.created_at) for r in rows]


def strike_readings(database: Database, revision_id: str, reading_id: str) -> None:
    """Mark a set of readings as struck out; what was read stays as it was sent.

    Raises NoSuchRevisionError.
    """
    with database.writing() as connection:
        row = connection.execute(_of(readings, revision_id).where(readings.c.id == reading_id)).one_or_none()
        if row is None:
            raise NoSuchRevisionError("There is no such set of readings beside this revision.")
        marked = {"struck": now().isoformat(), **json.loads(row.readings)}
        connection.execute(update(readings).where(readings.c.id == reading_id).values(readings=as_json(marked)))


def proposals_for(connection: Connection, revision_id: str) -> Sequence[Proposal]:
    """The proposals beside a revision, the oldest first."""
    return [_proposal(row._asdict()) for row in connection.execute(_of(proposals, revision_id))]


def proposal(connection: Connection, revision_id: str, proposal_id: str) -> Proposal:
    """One proposal beside a revision.

    Raises NoSuchRevisionError.
    """
    row = connection.execute(_of(proposals, revision_id).where(proposals.c.id == proposal_id)).one_or_none()
    if row is None:
        raise NoSuchRevisionError("There is no such proposal beside this revision.")
    return _proposal(row._asdict())


def _of(table: Table, revision_id: str) -> Any:
    # Two of the same microsecond keep some order, and always the same one.
    return select(table).where(table.c.revision_id == revision_id).order_by(table.c.created_at, table.c.id)


def _proposal(row: dict[str, Any]) -> Proposal:
    known = {name: value for name, value in row.items() if name != "revision_id"}
    return Proposal(**known | {name: json.loads(known[name]) for name in ("document", "design")})
