"""Saved designs as one file that people keep: written from what is kept, and taken in by working everything out anew.

What a stranger's file claims is not shown as this program's own result: of each revision only the measurements, the words
and the readings are taken, and sized and judged here. Where that comes out differently, a remark says so.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime
from typing import Any

from sqlalchemy import Connection

from geometry import ENGINE_VERSION
from geometry.errors import BadMeasurementsError, NoPadFitsError, SeamrestError
from geometry.measurements import read_measurements
from server.difference import difference
from server.readings_views import judged_set
from server.saved_pages import UnusableError
from server.store.database import Database
from server.store.designs import MOST_REVISIONS, Kept, Revision, add_design, add_revision, entries, revision
from server.store.errors import StoreError
from server.store.exchange import (
    MOST_OF_EACH,
    add_together,
    proposals_for,
    readings_of,
    remarks_on,
)
from server.store.keys import Kind, letters_of
from server.store.links import add_links, open_link
from server.working_out import drawn_nothing, plain_words

FORMAT, VERSION = "seamrest saved designs", 1
MOST_TOGETHER = MOST_REVISIONS
"""Revisions in one file."""
MOST_BESIDE = 1000
"""Remarks, readings and proposals that are taken in from one file: each proposal is a design to be worked out, in some 10 ms."""
MOST_LINKS = 100
_TITLE, _WORDS, _NAME = 80, 2000, 60


@dataclass(frozen=True, slots=True)
class BroughtIn:
    """One design that was taken in, and what of it was not."""

    title: str
    owner: str
    """The new owner's secret; empty where nothing could be taken."""
    letters: str
    left_out: tuple[str, ...]


def written(database: Database, secrets: Sequence[str]) -> dict[str, Any]:
    """The designs behind some links, with everything that their holders can read.

    Raises UnusableError where it is too much for one file, else what opening a link raises.
    """
    found, seen = [], set()
    if len(secrets) > MOST_LINKS:
        many = (
            f"These are {len(secrets)} links; at most {MOST_LINKS} go into one file. Take the designs in several files."
        )
        raise UnusableError(many)
    with database.reading() as connection:
        for secret in secrets:
            access = open_link(connection, secret)
            if access.design.id not in seen:
                seen.add(access.design.id)
                found.append(_design(connection, access.design.id, access.design.title, access.design.note))
    if sum(len(design["revisions"]) for design in found) > MOST_TOGETHER:
        raise UnusableError(f"One file holds at most {MOST_TOGETHER} revisions. Take the designs in several files.")
    made_at = datetime.now(UTC).isoformat(timespec="seconds")
    return {"format": FORMAT, "version": VERSION, "made_at": made_at, "designs": found}


def _design(connection: Connection, design_id: str, title: str, note: str) -> dict[str, Any]:
    numbers = [entry.number for entry in reversed(entries(connection, design_id))]
    kept = [_revision(connection, revision(connection, design_id, number)) for number in numbers]
    return {"title": title, "note": note, "revisions": kept}


def _revision(connection: Connection, found: Revision) -> dict[str, Any]:
    def beside(things: Sequence[Any], *names: str) -> list[dict[str, Any]]:
        return [{n: getattr(thing, n) for n in names} | {"at": thing.created_at.isoformat()} for thing in things]

    return {
        "number": found.number,
        "letters": found.letters,
        "saved_at": found.created_at.isoformat(),
        "note": found.note,
        "engine_version": found.engine_version,
        "document": found.document,
        "design": found.design,
        "remarks": beside(remarks_on(connection, found.id), "kind", "name", "words"),
        "readings": beside(readings_of(connection, found.id), "name", "readings"),
        "proposals": beside(proposals_for(connection, found.id), "name", "words", "document"),
    }


def taken_in(database: Database, file: Mapping[str, Any], *, issued: date) -> tuple[BroughtIn, ...]:
    """Every design of a file, kept here as a new one.

    Raises UnusableError where it is no such file.
    """
    if file.get("format") != FORMAT or not isinstance(file.get("designs"), list):
        raise UnusableError(f"This is no file of saved designs: it does not say “{FORMAT}”.")
    if file.get("version") != VERSION:
        raise UnusableError(
            f"The file has version {str(file.get('version'))[:20]}; this program reads version {VERSION}."
        )
    groups = [design for design in file["designs"] if isinstance(design, dict)]
    count = sum(len(_list(design, "revisions")) for design in groups)
    if count > MOST_TOGETHER:
        raise UnusableError(f"The file holds {count} revisions; at most {MOST_TOGETHER} are taken in at once.")
    room = _Room(MOST_BESIDE)
    return tuple(_bring_in(database, design, issued, room) for design in groups)


class _Room:
    """How much of what stands beside revisions may still be taken in from a file."""

    def __init__(self, most: int) -> None:
        self.left, self._refused = most, 0

    def some_of(self, things: Sequence[dict[str, Any]], most: int = MOST_OF_EACH) -> Sequence[dict[str, Any]]:
        """The first of these for which there is room."""
        taken = things[: min(self.left, most)]
        self.left -= len(taken)
        self._refused += len(things) - len(taken)
        return taken

    def refused(self) -> Iterator[str]:
        """What found no room since this was last asked, in words."""
        if self._refused:
            yield (
                f"{self._refused} remarks, readings or proposals: of one file at most {MOST_BESIDE} are taken in, and"
                f" {MOST_OF_EACH} of each beside one revision."
            )
        self._refused = 0


def _list(holder: Mapping[str, Any], name: str) -> list[dict[str, Any]]:
    """A list of objects; whatever is none of that is not there."""
    found = holder.get(name)
    return [item for item in found if isinstance(item, dict)] if isinstance(found, list) else []


def _text(holder: Mapping[str, Any], name: str, longest: int) -> str:
    found = holder.get(name)
    return plain_words(found, longest) if isinstance(found, str) else ""


def _bring_in(database: Database, design: Mapping[str, Any], issued: date, room: _Room) -> BroughtIn:
    title, left_out = _text(design, "title", _TITLE), []
    usable: list[tuple[int, Kept, dict[str, Any]]] = []
    for item in _list(design, "revisions"):
        number = item.get("number")
        if not isinstance(number, int) or not 1 <= number <= MOST_REVISIONS or number in {n for n, *_ in usable}:
            left_out.append(f"A revision without a number of its own: {str(number)[:20]}.")
            continue
        try:
            usable.append((number, kept_of_document(item.get("document"), number=number, issued=issued), item))
        except SeamrestError as error:
            left_out.append(f"Revision {letters_of(number)}: {error}")
    if not usable:
        return BroughtIn(title, "", "", tuple(left_out))
    with database.writing() as connection:
        design_id = add_design(connection, title=title, note=_text(design, "note", _WORDS))
        for number, kept, item in usable:
            add_revision(connection, design_id, kept, number=number, note=_text(item, "note", _WORDS))
        owner = add_links(connection, design_id)
    for number, kept, item in usable:
        with database.reading() as connection:
            found = revision(connection, design_id, number)
        left_out += _bring_beside(database, found, kept, item, issued, room)
    left_out += room.refused()
    return BroughtIn(title, owner, letters_of(max(number for number, *_ in usable)), tuple(left_out))


def kept_of_document(document: Any, *, number: int, issued: date) -> Kept:
    """A document worked out today, without its drawing, which is drawn when it is asked for.

    Raises BadMeasurementsError, NoPadFitsError, UnusableError.
    """
    if not isinstance(document, dict):
        raise UnusableError("it has no measurement document.")
    return drawn_nothing(read_measurements(document), letters=letters_of(number), issued=issued)


def _bring_beside(
    database: Database, found: Revision, kept: Kept, item: Mapping[str, Any], issued: date, room: _Room
) -> Iterator[str]:
    """Put beside a revision what stood beside it in the file; gives what could not be taken."""
    remarks = [_remark(remark) for remark in room.some_of(_list(item, "remarks"), MOST_OF_EACH - 1)]
    readings, proposals = [], []
    for sent in room.some_of(_list(item, "readings")):
        given = sent.get("readings", {})
        try:
            given = given if isinstance(given, dict) else {}
            judged = judged_set(found, given.get("set", {}), "mm")
            if "struck" in given:
                judged["struck"] = _text(given, "struck", _NAME)
            readings.append((_text(sent, "name", _NAME), judged))
        except (BadMeasurementsError, TypeError) as error:
            yield f"Readings beside {found.letters}: {error}"
    for sent in room.some_of(_list(item, "proposals")):
        try:
            copy = kept_of_document(sent.get("document"), number=found.number, issued=issued)
            proposals.append((_text(sent, "name", _NAME), _text(sent, "words", _WORDS), copy))
        except (BadMeasurementsError, NoPadFitsError, StoreError) as error:
            yield f"A proposal beside {found.letters}: {error}"
    words = _what_differs(item, kept)
    if words:
        remarks.append({"kind": "owner", "name": "Taken in from a file", "words": words})
    add_together(
        database,
        found.id,
        remarks_sent=[remark for remark in remarks if remark["words"]],
        readings_sent=readings,
        proposals_sent=proposals,
    )


def _remark(sent: Mapping[str, Any]) -> dict[str, str]:
    kind: Kind = "owner" if sent.get("kind") == "owner" else "friend"
    return {"kind": kind, "name": _text(sent, "name", _NAME), "words": _text(sent, "words", _WORDS)}


def _what_differs(item: Mapping[str, Any], kept: Kept) -> str:
    """In words, how the file's own result differs from today's; empty where it does not."""
    by, said = str(item.get("engine_version"))[:20], item.get("design")
    try:
        found = difference(said, kept.design, "mm") if isinstance(said, dict) else None
    except (KeyError, TypeError, ValueError, AttributeError):
        found = None
    if found is None:
        return f"The file held no result to compare with. Worked out here by version {ENGINE_VERSION}."
    if found.is_nothing:
        return ""
    return (
        f"In the file, worked out by version {by}, {len(found.sizes)} sizes and {len(found.estimates)} estimates were different."
        f" Worked out anew here by version {ENGINE_VERSION}."
    )
