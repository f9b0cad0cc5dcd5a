"""Designs without accounts: the page of links that this browser has opened, and files that depend on no server."""

import json
from dataclasses import dataclass
from typing import Any

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.datastructures import UploadFile
from starlette.exceptions import HTTPException
from starlette.responses import RedirectResponse, Response

from geometry.cautions import ONE_LINE
from geometry.errors import BadMeasurementsError
from server import links, saved_api
from server.collection import BroughtIn, taken_in, written
from server.documents import parse_json, query_pairs
from server.fields import FIELDS, group_models
from server.forms import read_form
from server.problems import AnsweredError, json_bytes
from server.saved_pages import PRIVATE, UnusableError, fields_of, private_page, status_of, store_of
from server.saving import OF_THE_LINK, link_parts
from server.store.database import Database
from server.store.links import open_link

router = APIRouter(default_response_class=Response)


@dataclass(frozen=True, slots=True)
class MinePage:
    """The page of links that this browser has opened; which they are, only the browser knows."""

    links: str = ""
    """Links from which nothing could be taken, as typed."""
    problem: str = ""
    file_problem: str = ""
    """Why a file of saved designs was not taken in."""
    document_problem: str = ""
    """Why a measurement document was not opened."""
    caution_line: str = ONE_LINE


@dataclass(frozen=True, slots=True)
class BroughtPage:
    """What came of taking in a file."""

    designs: tuple[tuple[BroughtIn, str], ...]
    """Each design with the address of its owner."""
    caution_line: str = ONE_LINE


@router.get("/mine", **saved_api.MINE)
async def mine() -> Response:
    """What this browser remembers, and files to take and to bring."""
    return private_page("mine.html", MinePage())


@router.post("/mine/export", **saved_api.EXPORT)
async def take(request: Request) -> Response:
    """Everything behind some links, as one file."""
    sent = await fields_of(request)
    typed = sent.get("links", "")
    lines = [line.strip() for line in typed.splitlines() if line.strip()]
    try:
        if not lines:
            raise UnusableError("There is no link to take anything from. Put one on each line.")
        secrets = await run_in_threadpool(lambda: [_secret_of(store_of(request), line) for line in lines])
        content = await run_in_threadpool(lambda: json_bytes(written(store_of(request), secrets)))
    except OF_THE_LINK as error:
        return private_page("mine.html", MinePage(typed, str(error)), status_of(error)[0])
    headers = PRIVATE | {"Content-Disposition": 'attachment; filename="seamrest-designs.json"'}
    return Response(content, headers=headers, media_type="application/json")


def _secret_of(database: Database, line: str) -> str:
    """The secret of a link that opens something; which line is wrong is said with what is wrong with it."""
    try:
        secret = link_parts(line)[0]
        with database.reading() as connection:
            open_link(connection, secret)
    except OF_THE_LINK as error:
        raise UnusableError(f"“{line[:120]}”: {error}") from None
    return secret


@router.post("/mine/import", **saved_api.IMPORT)
async def bring(request: Request) -> Response:
    """Take in a file of saved designs; each becomes a new design with new links."""
    issued = request.app.state.settings.drawing_day()
    try:
        file = await _uploaded_json(request)
        found = await run_in_threadpool(lambda: taken_in(store_of(request), file, issued=issued))
    except UnusableError as error:
        return private_page("mine.html", MinePage(file_problem=str(error)), 422)
    ways = tuple((d, links.saved_address(d.owner, d.letters) if d.owner else "") for d in found)
    return private_page("brought.html", BroughtPage(ways), 200 if any(d.owner for d in found) else 422)


@router.get("/pad.document.json", **saved_api.DOCUMENT)
async def document(request: Request) -> Response:
    """The measurement document of an address, as far as it is filled in, to be opened anywhere."""
    reading = read_form([pair for pair in query_pairs(request) if pair[1].strip()])
    if reading.problems:
        raise BadMeasurementsError(reading.problems)
    content = json.dumps(reading.document, ensure_ascii=False, indent=1).encode()
    headers = {"Content-Disposition": 'attachment; filename="measurements.json"'}
    return Response(content, headers=headers, media_type="application/json")


@router.post("/pad/document", **saved_api.OPEN_DOCUMENT)
async def open_document(request: Request) -> Response:
    """The working sheet of a measurement document that is sent as a file; nothing of it is kept."""
    try:
        return RedirectResponse(links.address_of_document(_document_in(await _uploaded_json(request))), 303)
    except UnusableError as error:
        return private_page("mine.html", MinePage(document_problem=str(error)), 422)


def _document_in(found: dict[str, Any]) -> dict[str, Any]:
    """The measurement document that a file holds.

    Raises UnusableError where it holds something else.
    """
    # A design's own JSON holds its measurements, with all that was taken for granted.
    whole = _without_usual(found["measurements"]) if isinstance(found.get("measurements"), dict) else found
    strangers = _strangers(whole)
    if strangers:
        raise UnusableError(
            f"This is no measurement document: it has a field “{strangers[0][:80]}”, which is not known."
        )
    return whole


def _without_usual(document: dict[str, Any]) -> dict[str, Any]:
    """A document without the answers that are the usual ones."""

    def part(prefix: str, values: dict[str, Any]) -> dict[str, Any]:
        return {k: v for k, v in values.items() if f"{prefix}{k}" not in FIELDS or FIELDS[f"{prefix}{k}"].default != v}

    whole = {name: part(f"{name}.", v) if isinstance(v, dict) else v for name, v in document.items()}
    return part("", whole)


def _strangers(document: dict[str, Any]) -> list[str]:
    """Fields of a document that are none of ours; its version is not asked for and does no harm."""
    groups, found = group_models(), []
    for name, value in document.items():
        if name in groups and isinstance(value, dict):
            found += [f"{name}.{part}" for part in value if f"{name}.{part}" not in FIELDS]
        elif name not in FIELDS and name != "version":
            found.append(name)
    return found


async def _uploaded_json(request: Request) -> dict[str, Any]:
    """The one JSON file of a form.

    Raises UnusableError where there is none.
    """
    if not request.headers.get("content-type", "").startswith("multipart/form-data"):
        raise UnusableError("This address takes a file that a form of its own page sends.")
    try:
        async with request.form(max_files=1, max_fields=5) as form:
            file = form.get("file")
            content = await file.read() if isinstance(file, UploadFile) else b""
    except HTTPException as error:
        raise UnusableError(f"The file did not come through: {error.detail}") from None
    if not content:
        raise UnusableError("No file was chosen, or it is empty. Choose one.")
    try:
        # A file of saved designs may be large, and others wait for this loop.
        return await run_in_threadpool(parse_json, content)
    except AnsweredError as error:
        raise UnusableError(f"The file cannot be read. {error}") from None
