"""A few lines of a pad's route card for its working sheet: a whole card takes longer than a keystroke may."""

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, RedirectResponse, Response

from server import links
from server.documents import query_pairs
from server.forms import FormReading, read_form
from server.making_views import how_made
from server.outcome import outcome_of
from server.templating import render

router = APIRouter(include_in_schema=False)


@router.get("/pad/how-made")
async def how_made_piece(request: Request) -> Response:
    """The lines for the sheet that asks for them; anybody else is shown the way to the whole card."""
    reading = read_form(query_pairs(request))
    if request.headers.get("HX-Request") != "true":
        return RedirectResponse(links.pad_address(reading.typed, "/route", units=reading.units), 303)
    return await run_in_threadpool(_piece, reading)


def _piece(reading: FormReading) -> Response:
    design = outcome_of(reading).design
    if design is None:
        return Response(status_code=204)
    page = how_made(design, reading.units)
    return HTMLResponse(render("parts/how_made.html", page), headers={"Cache-Control": "no-store"})
