"""Reading a saved design: its page, and two revisions side by side. Nothing here changes anything."""

from dataclasses import dataclass
from typing import Any

from fastapi import APIRouter, Request
from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.responses import RedirectResponse, Response

from geometry import ENGINE_VERSION
from geometry.cautions import ONE_LINE
from geometry.errors import BadMeasurementsError, NoPadFitsError
from server import saved_api
from server.difference import Difference, difference
from server.links import saved_address
from server.preview import code_picture
from server.saved_api import Letters, Name, Secret
from server.saved_context import SavedPage
from server.saved_files import file_of_revision
from server.saved_pages import PRIVATE, absolute, private_page, store_of
from server.saved_parts import Viewer, Way, eye_units
from server.saved_views import Beside, saved_page
from server.store.database import Database
from server.store.designs import Revision, entries, kept_endings, newest_number, revision
from server.store.errors import NoSuchRevisionError
from server.store.exchange import proposal, proposals_for, readings_of, remarks_on
from server.store.keys import GIVEN_KINDS, Kind, letters_of, number_of
from server.store.links import Access, given_secrets, open_link
from server.working_out import design_today, facts_of

router = APIRouter(default_response_class=Response)
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
class RemarkAsked:
    """A remark as typed, and why it is not kept."""

    words: str = ""
    name: str = ""
    problem: str = ""


NO_REMARK = RemarkAsked()


@dataclass(frozen=True, slots=True)
class DesignPage:
    """One revision for the holder of one link, with the links to pass on."""

    saved: SavedPage
    shares: tuple[ShareView, ...]
    missing: tuple[Kind, ...]
    """Kinds of links that the owner has taken back."""
    meta: Meta
    remark: RemarkAsked
    caution_line: str = ONE_LINE


@dataclass(frozen=True, slots=True)
class DifferencePage:
    """Two designs side by side."""

    title: str
    one: str
    other: str
    engines: str
    """Which versions of the calculation made the two, where these differ; empty where it was the same."""
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

    viewer, said = Viewer.of(request.query_params), request.query_params.get("said", "")
    at = viewer.at(secret, await run_in_threadpool(look), said=said)
    return RedirectResponse(at, 303, headers=PRIVATE)


@router.get("/saved/{secret}/{name}", **saved_api.REVISION)
async def revision_or_file(request: Request, secret: Secret, name: Name) -> Response:
    """The page of a revision, or one of its files."""
    letters, _, ending = name.partition(".")
    access, found = await run_in_threadpool(opened, store_of(request), secret, letters)
    if not ending:
        return await run_in_threadpool(design_page, request, access, found)
    return await file_of_revision(request, access, found, ending)


def design_page(request: Request, access: Access, found: Revision, remark: RemarkAsked = NO_REMARK) -> Response:
    """The page of a revision, with a remark that is asked for again where it could not be kept."""
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
    page = DesignPage(saved, shares, missing, _meta(request, saved, access), remark)
    return private_page("design.html", page, 422 if remark.problem else 200)


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


@router.get("/saved/{secret}/{letters}/difference", **saved_api.DIFFERENCE)
async def side_by_side(request: Request, secret: Secret, letters: Letters) -> Response:
    """A revision beside another one, a proposal, or what today's program makes of its measurements."""
    other = request.query_params.get("with", "")
    return await run_in_threadpool(_side_by_side, store_of(request), secret, letters, other)


def _side_by_side(database: Database, secret: str, letters: str, wanted: str) -> Response:
    access, found = opened(database, secret, letters)
    words, design, engine = _other(database, access, found, wanted)
    one = f"revision {found.letters}"
    page = DifferencePage(
        title=access.design.title or found.design["title"] or "Lifting pad",
        one=one,
        other=words,
        engines=""
        if engine == found.engine_version
        else f"Version {found.engine_version} of the calculation made {one}, version {engine} the other."
        " What differs without another answer comes from that.",
        difference=difference(found.design, design, eye_units(facts_of(found))),
        back=Way(f"Back to revision {found.letters}", saved_address(secret, found.letters)),
    )
    return private_page("difference.html", page)


def _other(database: Database, access: Access, found: Revision, wanted: str) -> tuple[str, Any, str]:
    """What stands on the other side: its name, its design document, and the version of the calculation that made it."""
    if wanted == "today":
        try:
            today = design_today(found)
        except (BadMeasurementsError, NoPadFitsError) as error:
            raise NoSuchRevisionError(f"Today's program has no pad to compare with: {error}") from None
        return "worked out today", today.to_dict() if today else found.design, ENGINE_VERSION
    with database.reading() as connection:
        number = number_of(wanted)
        if number is not None:
            other = revision(connection, access.design.id, number)
            return f"revision {wanted}", other.design, other.engine_version
        sent = proposal(connection, found.id, wanted)
        return f"proposal by {sent.name or 'somebody'}", sent.design, sent.engine_version
