"""The pages that people read: the working sheet at its address, and the first page."""

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import RedirectResponse, Response

from server import beside, links, measuring_sheet, style_page
from server.documents import query_pairs
from server.forms import FormReading, read_form
from server.outcome import outcome_of
from server.packed import accepts_packed, html_answer
from server.present import pad_page
from server.section_view import section_view
from server.templating import render

router = APIRouter(include_in_schema=False)
for _room in (beside, measuring_sheet, style_page):
    router.include_router(_room.router)
_STATUS = {"refused": 422, "no_pad": 422}
"""Of the other states none is an error, an unfinished form least of all."""


async def _sheet(request: Request, reading: FormReading, *, has_welcome: bool = False) -> Response:
    no_models, packed = request.app.state.kernel.missing, accepts_packed(request)
    return await run_in_threadpool(_made, reading, no_models=no_models, packed=packed, has_welcome=has_welcome)


def _made(reading: FormReading, *, no_models: str, packed: bool, has_welcome: bool) -> Response:
    outcome = outcome_of(reading)
    page = pad_page(outcome, section_view(outcome), has_welcome=has_welcome, no_models=no_models)
    return html_answer(render("pad.html", page), _STATUS.get(outcome.state, 200), packed=packed)


@router.get("/")
async def first_page(request: Request) -> Response:
    """What this is, the ready examples, and the empty sheet."""
    return await _sheet(request, read_form(()), has_welcome=True)


@router.get("/pad")
async def working_sheet(request: Request) -> Response:
    """The working sheet; its address is the design, and fields left empty are left out of it."""
    pairs = query_pairs(request)
    reading = read_form(pairs)
    if any(not text.strip() for _, text in pairs) and not reading.problems:
        return RedirectResponse(links.pad_address(reading.typed, units=reading.units), 303)
    return await _sheet(request, reading)
