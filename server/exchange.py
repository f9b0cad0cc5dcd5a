"""What is sent from a saved design's page: remarks, readings, and what its owner changes about it."""

from dataclasses import replace

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import Response

from geometry.errors import BadMeasurementsError
from geometry.making.how_measured import measured_names
from server import saved_api
from server.carried import AS_READ, carried_in
from server.documents import query_pairs
from server.forms import Units, read_form
from server.readings_views import GROUP, judged_readings, questions_in
from server.saved_api import Letters, Secret
from server.saved_pages import NotAllowedError, UnusableError, fields_of, private_page, store_of
from server.saved_parts import eye_units
from server.saved_readings import readings_page
from server.saving import LONGEST_NAME, LONGEST_NOTE, LONGEST_REMARK, LONGEST_TITLE, gone_to
from server.sharing import RemarkAsked, design_page, opened
from server.store.database import Database
from server.store.designs import Revision, rename
from server.store.exchange import add_readings, add_remark, strike_readings
from server.store.keys import GIVEN_KINDS, KINDS, Kind
from server.store.links import Access, end, open_link, renew
from server.working_out import facts_of, pad_of, plain_words

router = APIRouter(default_response_class=Response)


def opened_for(database: Database, secret: str, letters: str, *, need: Kind) -> tuple[Access, Revision]:
    """The revision behind an address whose holder may do what ``need`` may.

    Raises NotAllowedError beside what opening raises.
    """
    access, found = opened(database, secret, letters)
    _require(access, need)
    return access, found


def _require(access: Access, need: Kind) -> None:
    if KINDS.index(access.kind) < KINDS.index(need):
        words = "This link is for reading. Ask the owner of the design for one that may add to it."
        raise NotAllowedError(words if need == "friend" else "Only the owner's link may do that.")


@router.post("/saved/{secret}/{letters}/remarks", **saved_api.REMARK)
async def remark(request: Request, secret: Secret, letters: Letters) -> Response:
    """Put a remark beside a revision."""
    sent = await fields_of(request)
    words, name = plain_words(sent.get("words", ""), LONGEST_REMARK), plain_words(sent.get("name", ""), LONGEST_NAME)
    carried = carried_in(query_pairs(request))

    def keep() -> Response:
        access, found = opened_for(store_of(request), secret, letters, need="friend")
        if not words:
            empty = RemarkAsked(words, name, "The remark is empty, so nothing is kept. Write something, then add it.")
            return design_page(request, access, found, empty)
        add_remark(store_of(request), found.id, kind=access.kind, name=name, words=words)
        return gone_to(secret, letters, "remark", carried)

    return await run_in_threadpool(keep)


@router.get("/saved/{secret}/{letters}/readings", include_in_schema=False)
async def readings_form(request: Request, secret: Secret, letters: Letters) -> Response:
    """The inspection sheet, whose readings are kept."""

    def page() -> Response:
        access, found = opened_for(store_of(request), secret, letters, need="friend")
        wanted = request.query_params.get("units", "")
        units: Units = "in" if (wanted or eye_units(facts_of(found))) == "in" else "mm"
        carried = carried_in(query_pairs(request), units)
        typed = [(key, text) for key, text in carried.own.items() if key.startswith(AS_READ)]
        form = read_form([*typed, ("units", units)])
        return private_page("readings.html", readings_page(access, found, form, carried))

    return await run_in_threadpool(page)


@router.post("/saved/{secret}/{letters}/readings", **saved_api.READINGS)
async def readings(request: Request, secret: Secret, letters: Letters) -> Response:
    """Judge a set of readings against the revision as saved, and put both beside it; or strike one out that is there."""
    sent = await fields_of(request)
    name, struck = plain_words(sent.get("name", ""), LONGEST_NAME), sent.get("strike", "")
    # Nothing is cut: half a number would be another one. What is too long is refused beside its box.
    pairs = [(k, plain_words(t, len(t))) for k, t in sent.items() if k.startswith(f"{GROUP}.") or k == "units"]

    def keep() -> Response:
        access, found = opened_for(store_of(request), secret, letters, need="owner" if struck else "friend")
        if struck:
            strike_readings(store_of(request), found.id, struck)
            return gone_to(secret, letters, "struck")
        form = read_form(pairs)
        carried = replace(carried_in(query_pairs(request), form.units), name=name)
        try:
            kept = judged_readings(found, form, form.units)
        except BadMeasurementsError as error:
            words = "; ".join(problem.message for problem in error.problems)
            return private_page("readings.html", readings_page(access, found, form, carried, trouble=words), 422)
        if asked := questions_in(kept, measured_names(pad_of(found.design))):
            page = readings_page(access, found, form, carried, questions=asked)
            return private_page("readings.html", page, 422)
        add_readings(store_of(request), found.id, name=name, taken=kept)
        return gone_to(secret, letters, "readings", replace(carried, name=""))

    return await run_in_threadpool(keep)


@router.post("/saved/{secret}/title", **saved_api.TITLE)
async def title(request: Request, secret: Secret) -> Response:
    """Change what the owner calls the design; its revisions stay as they are."""
    sent = await fields_of(request)
    named, note = plain_words(sent.get("title", ""), LONGEST_TITLE), plain_words(sent.get("note", ""), LONGEST_NOTE)

    def change() -> Response:
        access = _owner(store_of(request), secret)
        rename(store_of(request), access.design.id, title=named, note=note)
        return gone_to(secret, "", "renamed")

    return await run_in_threadpool(change)


@router.post("/saved/{secret}/links", **saved_api.LINKS)
async def change_links(request: Request, secret: Secret) -> Response:
    """Take a link back, or take it back and give a new one."""
    sent = await fields_of(request)
    kind = next((k for k in KINDS if k == sent.get("kind")), None)
    is_end = sent.get("deed") == "end"

    def change() -> Response:
        access = _owner(store_of(request), secret)
        if kind is None or (is_end and kind not in GIVEN_KINDS) or sent.get("deed") not in {"end", "renew"}:
            raise UnusableError("It is not clear which link is meant. Use the buttons of the page.")
        if is_end:
            end(store_of(request), access, kind)
            return gone_to(secret, "", f"ended-{kind}")
        return gone_to(renew(store_of(request), access, kind), "", f"renewed-{kind}")

    return await run_in_threadpool(change)


def _owner(database: Database, secret: str) -> Access:
    with database.reading() as connection:
        access = open_link(connection, secret)
    _require(access, "owner")
    return access
