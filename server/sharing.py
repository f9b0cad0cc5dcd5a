"""Reading a saved design: its page, its files, its preview, and two revisions side by side. Nothing here changes anything."""

from dataclasses import dataclass, replace
from typing import Any

from fastapi import APIRouter, Request
from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.responses import RedirectResponse, Response

from geometry.cautions import ONE_LINE
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.model_label import MODEL_FORMATS, ModelFormat, file_stem
from server import saved_api
from server.difference import Difference, difference
from server.documents import query_pairs, split_confirmation
from server.downloads import DRAWING_FORMATS, MEDIA_TYPES, DrawingFormat
from server.drawn import drawers
from server.links import CONFIRM_KEY, CONFIRM_NOT_FIT, saved_address
from server.preview import code_picture, preview_data
from server.problems import NOT_FIT, NOT_FOUND, AnsweredError, json_bytes
from server.saved_api import Letters, Name, Secret
from server.saved_pages import PRIVATE, absolute, private_page, store_of
from server.saved_papers import PAPERS, paper
from server.saved_parts import Viewer, Way, eye_units
from server.saved_views import Beside, SavedPage, saved_page
from server.store.database import Database
from server.store.designs import Revision, entries, file_of, kept_endings, newest_number, revision
from server.store.errors import NoSuchRevisionError
from server.store.exchange import proposal, proposals_for, readings_of, remarks_on
from server.store.keys import GIVEN_KINDS, Kind, letters_of, number_of
from server.store.links import Access, given_secrets, open_link
from server.working_out import design_today, facts_of, label_of, pad_of

router = APIRouter(default_response_class=Response)
_SHOWN_IN_PLACE = {"svg", "pdf", "png"}
_LINK_WORDS: dict[Kind, str] = {
    "owner": "Yours alone. It saves revisions and takes links back; do not pass it on.",
    "friend": "For a friend with a lathe: reads, and may add remarks, readings and proposals.",
    "view": "For anybody else: reads only.",
}


@dataclass(frozen=True, slots=True)
class ShareView:
    """One link to pass on."""

    kind: Kind
    words: str
    address: str
    code: Markup
    """The same as a picture for a camera."""


@dataclass(frozen=True, slots=True)
class Meta:
    """What a page says to programs that show a preview of it."""

    title: str
    description: str
    address: str
    picture: str
    is_for_previews: bool
    """Whether it says so at all: an owner's link is nobody else's business."""


@dataclass(frozen=True, slots=True)
class DesignPage:
    """One revision for the holder of one link, with the links to pass on."""

    saved: SavedPage
    shares: tuple[ShareView, ...]
    missing: tuple[Kind, ...]
    """Kinds of links that the owner has taken back."""
    meta: Meta
    caution_line: str = ONE_LINE


@dataclass(frozen=True, slots=True)
class DifferencePage:
    """Two designs side by side."""

    title: str
    one: str
    other: str
    difference: Difference
    back: Way
    caution_line: str = ONE_LINE


def opened(database: Database, secret: str, letters: str) -> tuple[Access, Revision]:
    """The revision behind an address.

    Raises NoSuchLinkError, TakenBackError, NoSuchRevisionError.
    """
    with database.reading() as connection:
        access = open_link(connection, secret)
        number = number_of(letters)
        if number is None:
            raise NoSuchRevisionError(f"This design has no revision “{letters[:10]}”.")
        return access, revision(connection, access.design.id, number)


@router.get("/saved/{secret}", **saved_api.NEWEST)
async def newest(request: Request, secret: Secret) -> Response:
    """The way to the newest revision, at an address that names it."""

    def look() -> str:
        with store_of(request).reading() as connection:
            return letters_of(newest_number(connection, open_link(connection, secret).design.id))

    keys = Viewer.of(request.query_params).keys(said=request.query_params.get("said", ""))
    return RedirectResponse(saved_address(secret, await run_in_threadpool(look), "", **keys), 303, headers=PRIVATE)


@router.get("/saved/{secret}/{name}", **saved_api.REVISION)
async def revision_or_file(request: Request, secret: Secret, name: Name) -> Response:
    """The page of a revision, or one of its files."""
    letters, _, ending = name.partition(".")
    access, found = await run_in_threadpool(opened, store_of(request), secret, letters)
    if not ending:
        return await run_in_threadpool(_page, request, access, found)
    return await _file(request, access, found, ending)


def _page(request: Request, access: Access, found: Revision) -> Response:
    with store_of(request).reading() as connection:
        beside = Beside(
            entries(connection, access.design.id),
            remarks_on(connection, found.id),
            readings_of(connection, found.id),
            proposals_for(connection, found.id),
            kept_endings(connection, found.id),
        )
        given = given_secrets(connection, access) if access.is_owner else {}
    viewer = Viewer.of(request.query_params)
    saved = saved_page(access, found, beside, viewer, request.query_params.get("said", ""))
    # What is passed on comes first, and the owner's own last.
    secrets = {**given, access.kind: access.secret}
    shares = tuple(_share(request, kind, secret, found.letters) for kind, secret in secrets.items())
    missing = tuple(kind for kind in GIVEN_KINDS if access.is_owner and kind not in given)
    page = DesignPage(saved, shares, missing, _meta(request, saved, access))
    return private_page("design.html", page)


def _share(request: Request, kind: Kind, secret: str, letters: str) -> ShareView:
    address = absolute(request, saved_address(secret, letters))
    return ShareView(kind, _LINK_WORDS[kind], address, code_picture(address))


def _meta(request: Request, saved: SavedPage, access: Access) -> Meta:
    return Meta(
        title=f"{saved.title}, lifting pad, revision {saved.letters}",
        description=f"{saved.verdict} {saved.needs[0][1]}, {saved.needs[1][1]}.",
        address=absolute(request, saved.path),
        picture=absolute(request, f"{saved.path}.png"),
        is_for_previews=not access.is_owner,
    )


async def _file(request: Request, access: Access, found: Revision, ending: str) -> Response:
    """One file of a revision: as saved, or drawn from what was saved in the units that the viewer wants."""
    if ending == "json":
        return _answer(json_bytes(found.design), "json", found)
    if ending == "document.json":
        return _answer(json_bytes(found.document), ending, found)
    if ending in PAPERS:
        return await paper(request, found, ending)
    if ending == "png":
        return _answer(await drawers.preview(pad_of(found.design), preview_data(found)), ending, found)
    for drawing_format in DRAWING_FORMATS:
        if ending == drawing_format:
            return _answer(await _drawing(request, access, found, drawing_format), ending, found)
    for model_format in MODEL_FORMATS:
        if ending == model_format:
            return _answer(await _model(request, access, found, model_format), ending, found)
    raise AnsweredError(NOT_FOUND, NOT_FOUND.meaning)


async def _drawing(request: Request, access: Access, found: Revision, ending: DrawingFormat) -> bytes:
    viewer = Viewer.of(request.query_params)
    as_saved = facts_of(found)
    wanted = facts_of(found, units=viewer.units, projection=viewer.projection)
    if request.query_params.get("code") == "yes":
        # Drawn for this reader and kept nowhere: the code holds the secret of a link.
        secret = await run_in_threadpool(_secret_for_paper, store_of(request), access)
        wanted = replace(
            wanted, saved_address=absolute(request, saved_address(secret, found.letters)) if secret else None
        )
    if wanted == as_saved:
        kept = await run_in_threadpool(_kept_file, store_of(request), found.id, ending)
        if kept is not None:
            return kept
    return (await drawers.drawings(pad_of(found.design), wanted, [ending]))[ending]


def _secret_for_paper(database: Database, access: Access) -> str:
    """The link that a sheet of paper may give away: the reader's own, of an owner the one for reading."""
    if not access.is_owner:
        return access.secret
    with database.reading() as connection:
        return given_secrets(connection, access).get("view", "")


def _kept_file(database: Database, revision_id: str, ending: str) -> bytes | None:
    with database.reading() as connection:
        return file_of(connection, revision_id, ending)


async def _model(request: Request, access: Access, found: Revision, model_format: ModelFormat) -> bytes:
    """A model of the pad as saved; of one that is not fit to make, only for somebody who says that they have seen it."""
    _, is_confirmed = split_confirmation(query_pairs(request))
    if not (found.design["fit_to_make"] or is_confirmed):
        confirm = saved_address(access.secret, found.letters, f".{model_format}", **{CONFIRM_KEY: CONFIRM_NOT_FIT})
        verdict = found.design["verdict"]
        words = f"{verdict} To have the model nevertheless, ask for {confirm}"
        raise AnsweredError(NOT_FIT, words, verdict=verdict, confirm=confirm)
    built: bytes = await request.app.state.kernel.model(pad_of(found.design), label_of(found), model_format)
    return built


def _answer(content: bytes, ending: str, found: Revision) -> Response:
    media_type = {**MEDIA_TYPES, "png": "image/png", "document.json": "application/json"}[ending]
    place = "inline" if ending in _SHOWN_IN_PLACE else "attachment"
    headers = {"Content-Disposition": f'{place}; filename="{file_stem(label_of(found))}.{ending}"'}
    return Response(content, headers=PRIVATE | headers, media_type=media_type)


@router.get("/saved/{secret}/{letters}/difference", **saved_api.DIFFERENCE)
async def side_by_side(request: Request, secret: Secret, letters: Letters) -> Response:
    """A revision beside another one, a proposal, or what today's program makes of its measurements."""
    other = request.query_params.get("with", "")
    return await run_in_threadpool(_side_by_side, store_of(request), secret, letters, other)


def _side_by_side(database: Database, secret: str, letters: str, wanted: str) -> Response:
    access, found = opened(database, secret, letters)
    words, design = _other(database, access, found, wanted)
    page = DifferencePage(
        title=access.design.title or found.design["title"] or "Lifting pad",
        one=f"revision {found.letters}",
        other=words,
        difference=difference(found.design, design, eye_units(facts_of(found))),
        back=Way(f"Back to revision {found.letters}", saved_address(secret, found.letters)),
    )
    return private_page("difference.html", page)


def _other(database: Database, access: Access, found: Revision, wanted: str) -> tuple[str, Any]:
    """What stands on the other side: its name and its design document."""
    if wanted == "today":
        try:
            today = design_today(found)
        except (BadMeasurementsError, NoPadFitsError) as error:
            raise NoSuchRevisionError(f"Today's program has no pad to compare with: {error}") from None
        return "worked out today", today.to_dict() if today else found.design
    with database.reading() as connection:
        number = number_of(wanted)
        if number is not None:
            return f"revision {wanted}", revision(connection, access.design.id, number).design
        sent = proposal(connection, found.id, wanted)
        return f"proposal by {sent.name or 'somebody'}", sent.design
