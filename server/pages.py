"""The pages that people read: the working sheet at its address, and the first page."""

from dataclasses import replace

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, RedirectResponse, Response

from geometry.design import design_pad
from geometry.errors import BadMeasurementsError, NoPadFitsError
from server import beside, links, measuring_sheet
from server.documents import query_pairs
from server.forms import FormReading, read_form
from server.present import Outcome, pad_page
from server.section_view import section_view
from server.templating import render

router = APIRouter(include_in_schema=False)
for _room in (beside, measuring_sheet):
    router.include_router(_room.router)
_STATUS = {"refused": 422, "no_pad": 422}
"""Of the other states none is an error, an unfinished form least of all."""


def outcome_of(reading: FormReading) -> Outcome:
    """What becomes of a reading: a design, a conflict, further problems, or neither yet."""
    if reading.measurements is None:
        return Outcome(reading)
    try:
        return Outcome(reading, design=design_pad(reading.measurements))
    except NoPadFitsError as error:
        return Outcome(reading, conflict=error)
    except BadMeasurementsError as error:
        return Outcome(replace(reading, problems=(*reading.problems, *error.problems), measurements=None))


def _sheet(reading: FormReading, *, has_welcome: bool = False) -> HTMLResponse:
    outcome = outcome_of(reading)
    page = pad_page(outcome, section_view(outcome), has_welcome=has_welcome)
    # The answer to an unfinished form changes with every keystroke; a stale one must not come back from a cache.
    headers = {"Cache-Control": "no-store"}
    return HTMLResponse(render("pad.html", page), _STATUS.get(outcome.state, 200), headers=headers)


@router.get("/")
async def first_page() -> Response:
    """What this is, the ready examples, and the empty sheet."""
    return await run_in_threadpool(_sheet, read_form(()), has_welcome=True)


@router.get("/pad")
async def working_sheet(request: Request) -> Response:
    """The working sheet; its address is the design, and fields left empty are left out of it."""
    pairs = query_pairs(request)
    reading = read_form(pairs)
    if any(not text.strip() for _, text in pairs) and not reading.problems:
        return RedirectResponse(links.pad_address(reading.typed, units=reading.units), 303)
    return await run_in_threadpool(_sheet, reading)
