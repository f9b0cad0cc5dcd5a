"""Saving: the design of a working sheet's address becomes a revision that never changes again."""

from contextlib import suppress
from dataclasses import dataclass, replace
from urllib.parse import urlsplit

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import RedirectResponse, Response

from geometry.cautions import ONE_LINE
from geometry.design import design_pad
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.measurements import Measurements
from server import links, saved_api
from server.carried import NOTHING, Carried
from server.difference import Difference, difference
from server.documents import query_pairs
from server.forms import FormReading, read_form
from server.saved_drawing import later_of
from server.saved_pages import (
    PRIVATE,
    NotAllowedError,
    UnusableError,
    fields_of,
    private_page,
    status_of,
    store_of,
)
from server.saved_parts import Way, eye_units
from server.store.database import Database
from server.store.designs import Kept, Revision, add_design, add_revision, newest_number, next_revision, revision
from server.store.errors import NewerRevisionError, NoSuchLinkError, NoSuchRevisionError, StoreError, TakenBackError
from server.store.exchange import add_proposal
from server.store.keys import letters_of, number_of
from server.store.links import Access, add_links, open_link
from server.working_out import changed_address, facts_of, plain_words, whole_reading, worked_out

router = APIRouter(default_response_class=Response)
LONGEST_TITLE, LONGEST_NOTE, LONGEST_NAME, LONGEST_REMARK = 80, 500, 60, 2000


@dataclass(frozen=True, slots=True)
class SavePage:
    """The form that saves."""

    inputs: str
    """The working sheet's address."""
    title: str
    verdict: str = ""
    trouble: str = ""
    """Why this cannot be saved; empty where it can."""
    to: str = ""
    to_problem: str = ""
    """What is wrong with the link that it is to belong to."""
    note: str = ""
    name: str = ""
    caution_line: str = ONE_LINE


@dataclass(frozen=True, slots=True)
class MeanwhilePage:
    """Two revisions made from the same one: what was saved first, and what was to be saved."""

    theirs: Way
    letters: str
    """What the second would be called."""
    difference: Difference
    one: str
    other: str
    inputs: str
    to: str
    note: str
    name: str
    caution_line: str = ONE_LINE


@router.get("/save", include_in_schema=False)
async def save_page(request: Request) -> Response:
    """What would be saved, and where to."""
    return await run_in_threadpool(_save_page, read_form(query_pairs(request)))


def _save_page(reading: FormReading) -> Response:
    page = SavePage(links.pad_address(reading.typed, units=reading.units), reading.typed.get("title", ""))
    try:
        _, measurements = whole_reading(page.inputs)
        design = design_pad(measurements)
    except (BadMeasurementsError, NoPadFitsError) as error:
        return private_page("save.html", _troubled(page, error), 422)
    return private_page("save.html", replace(page, verdict=design.verdict_words))


def _troubled(page: SavePage, error: BadMeasurementsError | NoPadFitsError) -> SavePage:
    words = "; ".join(p.message for p in error.problems) if isinstance(error, BadMeasurementsError) else str(error)
    return replace(page, trouble=words)


@router.post("/saved", **saved_api.SAVE)
async def save(request: Request) -> Response:
    """Save a new design, or, where a link is given, a revision or a proposal beside what the link leads to."""
    sent = await fields_of(request)
    page = SavePage(
        inputs=sent.get("inputs", ""),
        title=plain_words(sent.get("title", ""), LONGEST_TITLE),
        to=sent.get("to", "").strip()[:500],
        note=plain_words(sent.get("note", ""), LONGEST_NOTE),
        name=plain_words(sent.get("name", ""), LONGEST_NAME),
    )
    try:
        reading, measurements = whole_reading(_named(page))
        return await _saved(request, page, reading, measurements)
    except (BadMeasurementsError, NoPadFitsError) as error:
        return private_page("save.html", _troubled(page, error), 422)
    except OF_THE_LINK as error:
        verdict = (await run_in_threadpool(design_pad, measurements)).verdict_words
        asked = replace(page, verdict=verdict, to_problem=f"Nothing is saved yet. {error}")
        return private_page("save.html", asked, status_of(error)[0])


OF_THE_LINK = (UnusableError, NotAllowedError, NoSuchLinkError, NoSuchRevisionError, TakenBackError)
"""What can be wrong with a link that somebody typed; it is said beside its box, and nothing else that was typed is lost."""


def _named(page: SavePage) -> str:
    """The inputs of a new design with the name it is saved under, so that its papers carry it too."""
    name = " ".join(page.title.split())
    return changed_address(page.inputs, (("title", name),)) if name and not page.to else page.inputs


async def _saved(request: Request, page: SavePage, reading: FormReading, measurements: Measurements) -> Response:
    database, issued = store_of(request), request.app.state.settings.drawing_day()
    if not page.to:
        kept = await run_in_threadpool(worked_out, reading, measurements, number=1, issued=issued)
        title = page.title or measurements.title
        owner = await run_in_threadpool(new_design, database, kept, title=title, note=page.note)
        await _draw_later(request, owner, 1)
        return gone_to(owner, "A", "saved")
    secret, letters = link_parts(page.to)
    access, newest = await run_in_threadpool(_behind, database, secret)
    base = number_of(letters) or newest
    kept = await run_in_threadpool(worked_out, reading, measurements, number=base + 1, issued=issued)
    if access.is_owner:
        answer = await run_in_threadpool(_next, database, access, page, kept, base)
        await _draw_later(request, secret, base + 1)
        return answer
    if access.may_add:
        await run_in_threadpool(_propose, database, access, page, kept, base)
        return gone_to(secret, letters_of(base), "proposal")
    raise NotAllowedError("This link is for reading. Ask the owner of the design for a link that may send proposals.")


async def _draw_later(request: Request, secret: str, number: int) -> None:
    """Have a revision drawn that is kept now; whatever goes wrong here, it was saved, and the answer says so."""

    def look() -> Revision:
        with store_of(request).reading() as connection:
            return revision(connection, open_link(connection, secret).design.id, number)

    with suppress(StoreError):
        later_of(request).add(await run_in_threadpool(look))


def new_design(database: Database, kept: Kept, *, title: str, note: str) -> str:
    """Keep the first revision of a new design; returns its owner's secret."""
    with database.writing() as connection:
        design_id = add_design(connection, title=title)
        add_revision(connection, design_id, kept, number=1, note=note)
        return add_links(connection, design_id)


def link_parts(link: str) -> tuple[str, str]:
    """Secret and letters of a link as it was copied.

    >>> link_parts("https://pads.example/saved/s3cret/B?units=in")
    ('s3cret', 'B')
    """
    try:
        parts = [part for part in urlsplit(link).path.split("/") if part]
    except ValueError:
        parts = []
    if len(parts) < 2 or parts[0] != "saved":
        raise UnusableError("That is no link to a saved design. It looks like …/saved/…/A; copy it whole.")
    return parts[1], parts[2].partition(".")[0] if len(parts) > 2 else ""


def gone_to(secret: str, letters: str, said: str, carried: Carried = NOTHING) -> Response:
    """The way to a page after something was sent; what was typed beside it on other pages of the shop goes along."""
    at = carried.on(links.saved_address(secret, letters, said=said), "mm", has_units=False)
    return RedirectResponse(at, 303, headers=PRIVATE)


def _behind(database: Database, secret: str) -> tuple[Access, int]:
    with database.reading() as connection:
        access = open_link(connection, secret)
        return access, newest_number(connection, access.design.id)


def _next(database: Database, access: Access, page: SavePage, kept: Kept, base: int) -> Response:
    """Save the next revision; where somebody was quicker, show both and write nothing."""
    with database.reading() as connection:
        is_newest = newest_number(connection, access.design.id) == base
        same = is_newest and revision(connection, access.design.id, base).document == kept.document
    if same:
        return gone_to(access.secret, letters_of(base), "same")
    try:
        number = next_revision(database, access.design.id, kept, base=base, note=page.note)
    except NewerRevisionError as error:
        return _meanwhile(database, access, page, kept, error.newest)
    return gone_to(access.secret, letters_of(number), "saved")


def _meanwhile(database: Database, access: Access, page: SavePage, kept: Kept, newest: int) -> Response:
    with database.reading() as connection:
        theirs = revision(connection, access.design.id, newest)
    there = links.saved_address(access.secret, theirs.letters)
    found = difference(theirs.design, kept.design, eye_units(facts_of(theirs)))
    one, other = f"{theirs.letters}, saved meanwhile", "yours, not saved"
    letters = letters_of(newest + 1)
    way = Way(f"Revision {theirs.letters}", there)
    shown = MeanwhilePage(way, letters, found, one, other, page.inputs, there, page.note, page.name)
    return private_page("meanwhile.html", shown, 409)


def _propose(database: Database, access: Access, page: SavePage, kept: Kept, base: int) -> None:
    with database.reading() as connection:
        beside = revision(connection, access.design.id, base).id
    add_proposal(database, beside, kept, name=page.name, words=page.note)
