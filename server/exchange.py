"""What is sent from a saved design's page: remarks, readings, proposals, and what its owner changes about it."""

from collections.abc import Mapping
from dataclasses import dataclass

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import Response

from geometry.cautions import ONE_LINE
from geometry.design import design_pad
from geometry.document.as_made import READABLE
from geometry.drawing import SheetError
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.measurements import read_measurements
from geometry.variants import material_changes
from server import links
from server.difference import Difference, difference
from server.documents import query_pairs
from server.field_views import FieldView, field_view
from server.fields import FIELDS
from server.forms import FormReading, read_form
from server.readings_views import GROUP, judged_readings
from server.saved_pages import NotAllowedError, UnusableError, fields_of, private_page, store_of
from server.saved_parts import Way, eye_units
from server.saving import LONGEST_NAME, LONGEST_NOTE, LONGEST_REMARK, LONGEST_TITLE, gone_to
from server.sharing import opened
from server.store.database import Database
from server.store.designs import Revision, rename
from server.store.exchange import add_proposal, add_readings, add_remark
from server.store.keys import GIVEN_KINDS, KINDS, Kind
from server.store.links import Access, end, open_link, renew
from server.working_out import changed_address, facts_of, plain_words, reading_of_address, whole_reading, worked_out

router = APIRouter(include_in_schema=False)
AT_HAND = (
    "make.material",
    "make.process",
    "make.step",
    "make.stock_diameters_mm",
    "make.cutter_diameters_mm",
)
"""What a friend may have otherwise than was thought."""
_HOW_READ = ("instrument", "part_temperature_c", "sure", "note")


@dataclass(frozen=True, slots=True)
class TryPage:
    """A copy of a revision's job with another bar, cutter or material, worked out again."""

    title: str
    letters: str
    path: str
    back: Way
    fields: tuple[FieldView, ...]
    units: str
    trouble: str
    verdict: str
    difference: Difference | None
    inputs: str
    """The copy's address, to be sent back as a proposal."""
    caution_line: str = ONE_LINE


@dataclass(frozen=True, slots=True)
class ReadingsPage:
    """The form for readings of the finished part."""

    title: str
    letters: str
    path: str
    back: Way
    fields: tuple[FieldView, ...]
    units: str
    name: str
    trouble: str
    caution_line: str = ONE_LINE


def _opened(database: Database, secret: str, letters: str, *, need: Kind) -> tuple[Access, Revision]:
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


@router.post("/saved/{secret}/{letters}/remarks")
async def remark(request: Request, secret: str, letters: str) -> Response:
    """Put a remark beside a revision."""
    sent = await fields_of(request)
    words, name = plain_words(sent.get("words", ""), LONGEST_REMARK), plain_words(sent.get("name", ""), LONGEST_NAME)

    def keep() -> Response:
        access, found = _opened(store_of(request), secret, letters, need="friend")
        if not words:
            raise UnusableError("The remark is empty. Go back and write something.")
        add_remark(store_of(request), found.id, kind=access.kind, name=name, words=words)
        return gone_to(secret, letters, "remark")

    return await run_in_threadpool(keep)


@router.get("/saved/{secret}/{letters}/readings")
async def readings_form(request: Request, secret: str, letters: str) -> Response:
    """The form for readings of the finished part."""

    def page() -> Response:
        access, found = _opened(store_of(request), secret, letters, need="friend")
        form = read_form([("units", eye_units(facts_of(found)))])
        return private_page("readings.html", _readings_page(access, found, form, name="", trouble=""))

    return await run_in_threadpool(page)


def _readings_page(access: Access, found: Revision, form: FormReading, *, name: str, trouble: str) -> ReadingsPage:
    at = links.saved_address(access.secret, found.letters)
    asked = [n for n in READABLE if found.design["pad"].get(n, 0) > 0 or n == "top_height_mm"]
    return ReadingsPage(
        title=access.design.title or found.design["title"] or "Lifting pad",
        letters=found.letters,
        path=at,
        back=Way(f"Back to revision {found.letters}", at),
        fields=tuple(field_view(f"{GROUP}.{n}", form, {}) for n in (*asked, *_HOW_READ)),
        units=form.units,
        name=name,
        trouble=trouble,
    )


@router.post("/saved/{secret}/{letters}/readings")
async def readings(request: Request, secret: str, letters: str) -> Response:
    """Judge a set of readings against the revision as saved, and put both beside it."""
    sent = await fields_of(request)
    name = plain_words(sent.get("name", ""), LONGEST_NAME)
    pairs = [(k, plain_words(t, LONGEST_NOTE)) for k, t in sent.items() if k.startswith(f"{GROUP}.") or k == "units"]

    def keep() -> Response:
        access, found = _opened(store_of(request), secret, letters, need="friend")
        form = read_form(pairs)
        try:
            kept = judged_readings(found, form, form.units)
        except BadMeasurementsError as error:
            words = "; ".join(problem.message for problem in error.problems)
            return private_page("readings.html", _readings_page(access, found, form, name=name, trouble=words), 422)
        add_readings(store_of(request), found.id, name=name, taken=kept)
        return gone_to(secret, letters, "readings")

    return await run_in_threadpool(keep)


@router.get("/saved/{secret}/{letters}/try")
async def try_it(request: Request, secret: str, letters: str) -> Response:
    """The copy, with what was changed in it so far; the revision itself stays as it is."""
    changes = {key: text for key, text in query_pairs(request) if key in AT_HAND}

    def page() -> Response:
        access, found = _opened(store_of(request), secret, letters, need="friend")
        return private_page("try.html", _try_page(access, found, changes))

    return await run_in_threadpool(page)


def _try_page(access: Access, found: Revision, changes: Mapping[str, str]) -> TryPage:
    inputs = changed_address(found.address, tuple(_that_go_together(found, changes).items()))
    reading = reading_of_address(inputs)
    trouble, verdict, differs = "", "", None
    try:
        _, measurements = whole_reading(inputs)
        design = design_pad(measurements)
        verdict = design.verdict_words
        differs = difference(found.design, design.to_dict(), eye_units(facts_of(found)))
    except BadMeasurementsError as error:
        trouble = "; ".join(problem.message for problem in error.problems)
    except NoPadFitsError as error:
        trouble = str(error)
    at = links.saved_address(access.secret, found.letters)
    return TryPage(
        title=access.design.title or found.design["title"] or "Lifting pad",
        letters=found.letters,
        path=at,
        back=Way(f"Back to revision {found.letters}", at),
        fields=tuple(field_view(key, reading, {}) for key in AT_HAND),
        units=reading.units,
        trouble=trouble,
        verdict=verdict,
        difference=differs,
        inputs=inputs,
    )


def _that_go_together(found: Revision, changes: Mapping[str, str]) -> dict[str, str]:
    """The changes, and with another material what goes with it: its process, and the old rod's own figures."""
    typed = reading_of_address(found.address).typed
    # The usual answer of a choice is sent as nothing.
    usual = str(FIELDS["make.material"].default)
    material = (changes.get("make.material") or usual) if "make.material" in changes else ""
    was = found.document.get("make", {}).get("material", usual)
    # What is not printed and what is exclude each other; a process that was chosen by hand stays.
    is_by_hand = changes.get("make.process", "") != typed.get("make.process", "") and "make.process" in changes
    if not material or material == was:
        return dict(changes)
    try:
        follow = material_changes(read_measurements(found.document), material)
    except (KeyError, BadMeasurementsError):
        return dict(changes)
    added = {k: "" if v is None else str(v) for k, v in follow.items() if k != "make.process" or not is_by_hand}
    return {**changes, **added}


@router.post("/saved/{secret}/{letters}/proposals")
async def propose(request: Request, secret: str, letters: str) -> Response:
    """Put a copy, worked out again, beside the revision it was made from."""
    sent = await fields_of(request)
    name, words = plain_words(sent.get("name", ""), LONGEST_NAME), plain_words(sent.get("words", ""), LONGEST_REMARK)
    database, issued = store_of(request), request.app.state.settings.drawing_day()
    _, found = await run_in_threadpool(lambda: _opened(database, secret, letters, need="friend"))
    try:
        reading, measurements = whole_reading(sent.get("inputs", ""))
        _, kept = await worked_out(reading, measurements, number=found.number, issued=issued, with_files=False)
    except (BadMeasurementsError, NoPadFitsError, SheetError) as error:
        raise UnusableError(f"This cannot be worked out, so it was not sent: {error}") from None
    if kept.document == found.document:
        raise UnusableError("Nothing is different from the revision. Change the material, a bar or a cutter first.")
    await run_in_threadpool(lambda: add_proposal(database, found.id, kept, name=name, words=words))
    return gone_to(secret, letters, "proposal")


@router.post("/saved/{secret}/title")
async def title(request: Request, secret: str) -> Response:
    """Change what the owner calls the design; its revisions stay as they are."""
    sent = await fields_of(request)
    named, note = plain_words(sent.get("title", ""), LONGEST_TITLE), plain_words(sent.get("note", ""), LONGEST_NOTE)

    def change() -> Response:
        access = _owner(store_of(request), secret)
        rename(store_of(request), access.design.id, title=named, note=note)
        return gone_to(secret, "", "renamed")

    return await run_in_threadpool(change)


@router.post("/saved/{secret}/links")
async def change_links(request: Request, secret: str) -> Response:
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
            return gone_to(secret, "", "links")
        return gone_to(renew(store_of(request), access, kind), "", "links")

    return await run_in_threadpool(change)


def _owner(database: Database, secret: str) -> Access:
    with database.reading() as connection:
        access = open_link(connection, secret)
    _require(access, "owner")
    return access
