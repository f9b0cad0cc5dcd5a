"""Packet and lifting card of a saved design: as kept with the revision, or made from it while its own engine is here."""

from collections.abc import Mapping, Set
from contextlib import suppress
from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response

from geometry import ENGINE_VERSION
from geometry.drawing.facts import SheetFacts
from geometry.making.wording import Sentence
from geometry.model_label import file_stem
from geometry.standing import DO_NOT_USE, PartStanding
from server.downloads import MEDIA_TYPES
from server.drawn import drawers
from server.links import saved_address
from server.making_views import Standing
from server.readings_views import failed_standing
from server.saved_drawing import CARD, FAILED_CARD, PACKET, later_of
from server.saved_pages import PRIVATE, WithheldError, store_of
from server.saved_parts import FileView, Viewer, eye_units
from server.store.database import Database
from server.store.designs import Revision, file_of
from server.store.errors import NoSuchRevisionError
from server.store.exchange import readings_of
from server.store.links import Access
from server.working_out import design_as_saved, facts_of, label_of

PAPERS = (PACKET, CARD)
"""The sheets that a saved design gives out, by the end of their address."""
_NOT_KEPT = (
    "Packet and lifting card were not kept with this revision, and the version of the calculation that made it is no"
    " longer here. The drawing and its data are as saved."
)
_NO_PACKET = (
    "Readings of the finished part say that it must not be used. The packet of this revision was kept before that was"
    " known and does not say so; the lifting card does."
)


@dataclass(frozen=True, slots=True)
class Papers:
    """The sheets of a revision that can be had, and why others cannot."""

    files: tuple[FileView, ...]
    note: str


def papers_of(access: Access, found: Revision, viewer: Viewer, kept: Set[str], failed: Standing | None) -> Papers:
    """What a revision's page offers on paper."""
    is_here = found.engine_version == ENGINE_VERSION
    has_packet = is_here or (PACKET in kept and failed is None)
    card_words = f"one page for the garage wall{f', marked {DO_NOT_USE}' if failed else ''}"
    offered = (
        (PACKET, "Packet, PDF", "drawing, calculation, route card, inspection sheet and lifting card", has_packet),
        (CARD, "Lifting card, PDF", card_words, is_here or CARD in kept),
    )
    files = tuple(
        FileView(name, words, saved_address(access.secret, found.letters, f".{ending}", **viewer.keys()))
        for ending, name, words, is_there in offered
        if is_there
    )
    note = "" if len(files) == len(offered) else _NO_PACKET if files else _NOT_KEPT
    return Papers(files, note)


async def paper(request: Request, found: Revision, ending: str) -> Response:
    """One sheet of a revision; of a part whose readings fail only with the mark.

    Raises NoSuchRevisionError, WithheldError.
    """
    viewer = Viewer.of(request.query_params)
    wanted = facts_of(found, units=viewer.units, projection=viewer.projection)
    content, failed = await _sheet(request, found, ending, wanted)
    kind = ending.removesuffix(".pdf") + ("-DO-NOT-USE" if failed else "")
    name = f"{file_stem(label_of(found))}-{kind}.pdf"
    headers = PRIVATE | {"Content-Disposition": f'inline; filename="{name}"'}
    return Response(content, headers=headers, media_type=MEDIA_TYPES["pdf"])


@dataclass(frozen=True, slots=True)
class PaperFiles:
    """The sheets that go into an archive, and what is to be said first of a part whose readings fail."""

    files: Mapping[str, bytes]
    mark: str


async def papers_for_archive(request: Request, found: Revision) -> PaperFiles:
    """The sheets as saved, marked where the part failed; one that cannot be had is left out."""
    files, mark = {}, ""
    for ending in PAPERS:
        with suppress(NoSuchRevisionError, WithheldError):
            files[ending], failed = await _sheet(request, found, ending, facts_of(found))
            mark = f"{failed.mark}. {failed.words}" if failed else ""
    return PaperFiles(files, mark)


async def _sheet(request: Request, found: Revision, ending: str, wanted: SheetFacts) -> tuple[bytes, Standing | None]:
    failed, kept = await run_in_threadpool(_known, store_of(request), found, ending, eye_units(wanted))
    is_as_kept = failed is None and kept is not None and wanted == facts_of(found)
    design = None if is_as_kept else await run_in_threadpool(design_as_saved, found)
    content = await drawers.sheet(ending, design, wanted, failed=_marked(failed)) if design else kept
    if kept is None:
        later_of(request).add(found)
    if content is None:
        raise WithheldError(_NO_PACKET) if failed and ending == PACKET else NoSuchRevisionError(_NOT_KEPT)
    return content, failed


def _known(database: Database, found: Revision, ending: str, units: str) -> tuple[Standing | None, bytes | None]:
    """How the part stands, and the sheet that was kept for one that stands so."""
    with database.reading() as connection:
        failed = failed_standing(found, readings_of(connection, found.id), units)
        if failed is None:
            return None, file_of(connection, found.id, ending)
        return failed, file_of(connection, found.id, FAILED_CARD) if ending == CARD else None


def _marked(failed: Standing | None) -> PartStanding | None:
    """The same standing for paper; its reasons are whole sentences already."""
    if failed is None:
        return None
    reasons = tuple(Sentence(reason.replace("{", "{{").replace("}", "}}")) for reason in failed.reasons)
    return PartStanding(mark=failed.mark, words=failed.words, reasons=reasons)
