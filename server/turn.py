"""The pad to turn in the hand, on a page of its own at the design's address."""

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, RedirectResponse, Response

from geometry.design import design_pad
from geometry.errors import BadMeasurementsError, NoPadFitsError
from server import links
from server.documents import query_pairs
from server.forms import FormReading, read_form
from server.templating import render
from server.turn_view import turn_page

router = APIRouter(include_in_schema=False)


@router.get("/pad/turn")
async def page(request: Request) -> Response:
    """The view; where there is no pad yet, the working sheet says why."""
    return await run_in_threadpool(_page, read_form(query_pairs(request)), request.app.state.kernel.missing)


def _page(reading: FormReading, no_models: str) -> Response:
    if reading.measurements is not None:
        try:
            design = design_pad(reading.measurements)
        except (NoPadFitsError, BadMeasurementsError):
            pass
        else:
            return HTMLResponse(render("turn.html", turn_page(design, reading, no_models=no_models)))
    return RedirectResponse(links.pad_address(reading.typed, units=reading.units), 303)
