"""The pad to turn in the hand, on a page of its own at the design's address, and the picture that stands before it."""

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, RedirectResponse, Response

from geometry.design import Design, design_pad
from server import links
from server.documents import query_pairs, read_whole_form
from server.downloads import MEDIA_TYPES
from server.drawn import drawers
from server.forms import FormReading, read_form
from server.openapi import file_responses, form_parameters
from server.outcome import outcome_of
from server.templating import render
from server.turn_view import PICTURE_WORDS, pad_words, turn_page

router = APIRouter()


@router.get("/pad/turn", include_in_schema=False)
async def page(request: Request) -> Response:
    """The view; where there is no pad yet, the working sheet says why."""
    reading = read_form(query_pairs(request))
    design = (await run_in_threadpool(outcome_of, reading)).design
    if design is None:
        return RedirectResponse(links.pad_address(reading.typed, units=reading.units), 303)
    drawn = await _picture(design, reading)
    context = turn_page(design, reading, drawn, no_models=request.app.state.kernel.missing)
    return HTMLResponse(await run_in_threadpool(render, "turn.html", context))


@router.get(
    "/pad/turn.svg",
    tags=["addresses"],
    summary="The pad as it is held in the hand, as SVG",
    response_class=Response,
    responses=file_responses(MEDIA_TYPES["svg"], is_model=False),
    openapi_extra={"parameters": form_parameters()},
)
async def picture(request: Request) -> Response:
    """The pad as it is held in the hand, as SVG."""
    reading, measurements = read_whole_form(query_pairs(request))
    design = await run_in_threadpool(design_pad, measurements)
    return Response(await _picture(design, reading), media_type=MEDIA_TYPES["svg"])


async def _picture(design: Design, reading: FormReading) -> str:
    words = " ".join(pad_words(design.pad, reading.units, foot=reading.foot))
    return await drawers.isometric(design.pad, title=PICTURE_WORDS, description=words)
