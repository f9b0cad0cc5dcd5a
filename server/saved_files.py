"""The files of a saved revision: as kept, or drawn from what was saved in the units that the viewer wants; all in one archive."""

import asyncio
from dataclasses import replace
from datetime import date

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response

from geometry.model_label import MODEL_FORMATS, ModelFormat, file_stem
from server.bundle import Bundled, archive_name, bundle_bytes
from server.documents import query_pairs, split_confirmation
from server.downloads import DRAWING_FORMATS, MEDIA_TYPES, DrawingFormat
from server.drawn import drawers
from server.links import CONFIRM_KEY, CONFIRM_NOT_FIT, saved_address
from server.preview import preview_data
from server.problems import NOT_FIT, NOT_FOUND, AnsweredError, json_bytes
from server.saved_drawing import later_of
from server.saved_pages import PRIVATE, absolute, store_of
from server.saved_papers import PAPERS, paper, papers_for_archive
from server.saved_parts import Viewer
from server.store.database import Database
from server.store.designs import Revision, file_of
from server.store.links import Access, given_secrets
from server.working_out import facts_of, label_of, pad_of

_SHOWN_IN_PLACE = {"svg", "pdf", "png"}


async def file_of_revision(request: Request, access: Access, found: Revision, ending: str) -> Response:
    """One file of a revision by the end of its address.

    Raises AnsweredError, and what drawing and models raise.
    """
    if ending == "json":
        return _answer(json_bytes(found.design), "json", found)
    if ending == "document.json":
        return _answer(json_bytes(found.document), ending, found)
    if ending in PAPERS:
        return await paper(request, found, ending)
    if ending == "zip":
        return await _archive(request, access, found)
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
    wanted = facts_of(found, units=viewer.units, projection=viewer.projection)
    if request.query_params.get("code") == "yes":
        # Drawn for this reader and kept nowhere: the code holds the secret of a link.
        secret = await run_in_threadpool(_secret_for_paper, store_of(request), access)
        wanted = replace(
            wanted, saved_address=absolute(request, saved_address(secret, found.letters)) if secret else None
        )
    if wanted == facts_of(found):
        return (await _as_saved(request, found, (ending,)))[ending]
    return (await drawers.drawings(pad_of(found.design), wanted, [ending]))[ending]


async def _as_saved(request: Request, found: Revision, endings: tuple[DrawingFormat, ...]) -> dict[str, bytes]:
    """The drawing as it was saved: as kept, or drawn now, and then kept."""
    kept = await run_in_threadpool(_kept_files, store_of(request), found.id, endings)
    missing = [ending for ending in endings if ending not in kept]
    if missing:
        later_of(request).add(found)
        kept |= await drawers.drawings(pad_of(found.design), facts_of(found), missing)
    return kept


def _secret_for_paper(database: Database, access: Access) -> str:
    """The link that a sheet of paper may give away: the reader's own, of an owner the one for reading."""
    if not access.is_owner:
        return access.secret
    with database.reading() as connection:
        return given_secrets(connection, access).get("view", "")


def _kept_files(database: Database, revision_id: str, endings: tuple[str, ...]) -> dict[str, bytes]:
    with database.reading() as connection:
        found = {ending: file_of(connection, revision_id, ending) for ending in endings}
    return {ending: content for ending, content in found.items() if content is not None}


async def _model(request: Request, access: Access, found: Revision, model_format: ModelFormat) -> bytes:
    """A model of the pad as saved; of one that is not fit to make, only for somebody who says that they have seen it."""
    _seen_or_refused(request, access, found, model_format)
    return await _built(request, found, model_format)


def _seen_or_refused(request: Request, access: Access, found: Revision, ending: str) -> None:
    """Raises AnsweredError for a pad that is not fit to make, unless somebody says that they have seen it."""
    _, is_confirmed = split_confirmation(query_pairs(request))
    if not (found.design["fit_to_make"] or is_confirmed):
        confirm = saved_address(access.secret, found.letters, f".{ending}", **{CONFIRM_KEY: CONFIRM_NOT_FIT})
        verdict = found.design["verdict"]
        words = f"{verdict} To have the model nevertheless, ask for {confirm}"
        raise AnsweredError(NOT_FIT, words, verdict=verdict, confirm=confirm)


async def _built(request: Request, found: Revision, model_format: ModelFormat) -> bytes:
    built: bytes = await request.app.state.kernel.model(pad_of(found.design), label_of(found), model_format)
    return built


async def _archive(request: Request, access: Access, found: Revision) -> Response:
    """Every file as it was saved, in one: drawing, models, data, and the sheets as far as they can be had."""
    _seen_or_refused(request, access, found, "zip")
    drawings, sheets, models = await asyncio.gather(
        _as_saved(request, found, DRAWING_FORMATS),
        papers_for_archive(request, found),
        asyncio.gather(*(_built(request, found, model_format) for model_format in MODEL_FORMATS)),
    )
    label = label_of(found)
    issued = date.fromisoformat(facts_of(found).date)
    about = Bundled(design=found.design, label=label, issued=issued, mark=sheets.mark)
    built = {str(model_format): model for model_format, model in zip(MODEL_FORMATS, models, strict=True)}
    files = {**drawings, **sheets.files, **built}
    content = await run_in_threadpool(bundle_bytes, about, files)
    headers = PRIVATE | {"Content-Disposition": f'attachment; filename="{archive_name(label)}"'}
    return Response(content, headers=headers, media_type=MEDIA_TYPES["zip"])


def _answer(content: bytes, ending: str, found: Revision) -> Response:
    media_type = {**MEDIA_TYPES, "png": "image/png", "document.json": "application/json"}[ending]
    place = "inline" if ending in _SHOWN_IN_PLACE else "attachment"
    headers = {"Content-Disposition": f'{place}; filename="{file_stem(label_of(found))}.{ending}"'}
    return Response(content, headers=PRIVATE | headers, media_type=media_type)
