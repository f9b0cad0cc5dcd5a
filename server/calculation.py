"""The calculation sheet of an address: as a page that can be printed, and as data."""

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, RedirectResponse, Response

from geometry.calculation.as_data import sheet_data
from geometry.calculation.sheet import calculation_sheet
from geometry.design import design_pad
from server import links
from server.calculation_views import calculation_page
from server.documents import query_pairs, read_whole_form
from server.forms import FormReading, read_form
from server.openapi import form_parameters
from server.outcome import outcome_of
from server.problems import json_bytes
from server.templating import render

router = APIRouter()


@router.get("/pad/calculation", include_in_schema=False)
async def page(request: Request) -> Response:
    """The sheet; where there is no pad yet, the working sheet says why."""
    return await run_in_threadpool(_page, read_form(query_pairs(request)))


def _page(reading: FormReading) -> Response:
    design = outcome_of(reading).design
    if design is None:
        return RedirectResponse(links.pad_address(reading.typed, units=reading.units), 303)
    return HTMLResponse(render("calculation.html", calculation_page(calculation_sheet(design), reading)))


@router.get(
    "/pad/calculation.json",
    tags=["addresses"],
    summary="The calculation of an address, line by line",
    response_class=Response,
    openapi_extra={"parameters": form_parameters()},
)
async def data(request: Request) -> Response:
    """Every number of the design with its formula, the numbers put in and its source."""
    _, measurements = read_whole_form(query_pairs(request))
    sheet = await run_in_threadpool(lambda: calculation_sheet(design_pad(measurements)))
    return Response(json_bytes(sheet_data(sheet)), media_type="application/json")
