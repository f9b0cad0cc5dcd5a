"""The pages of the shop at a design's address: route card, inspection sheet, record in service, each with its data."""

from collections.abc import Callable

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, RedirectResponse, Response

from geometry.design import design_pad
from server.carried import AnotherDay, split_added
from server.documents import Pairs, query_pairs, read_whole_form
from server.forms import read_form
from server.making_case import Case, Kind, address, case_of
from server.making_data import DATA
from server.making_inspection import inspection_page
from server.making_record import record_page
from server.making_route import ask_again, route_page
from server.making_wear import KEY, place_of, with_added
from server.openapi import form_parameters
from server.problems import json_bytes
from server.templating import render

router = APIRouter()
_PAGES: dict[Kind, Callable[[Case], object]] = {
    "route": route_page,
    "inspection": inspection_page,
    "record": record_page,
}
_SUMMARIES: dict[Kind, str] = {
    "route": "How the pad of an address is made, operation by operation",
    "inspection": "Limits and instruments of the pad of an address, and what its readings say of the part as made",
    "record": "What to look for on the pad of an address in service, and when to discard it",
}


def _answer(kind: Kind, pairs: Pairs, query: str) -> Response:
    pairs, day = split_added(pairs)
    if kind == "record" and day.is_to_be_entered:
        return _with_another_day(pairs, day, query)
    reading = read_form(pairs)
    if any(not text.strip() for _, text in pairs) and not reading.problems:
        return RedirectResponse(address(reading, kind, day=day), 303)
    case = case_of(reading, day)
    page = _PAGES[kind](case) if case else ask_again(reading, day) if kind == "route" else None
    if page is None:
        # The working sheet says what is missing or wrong; nothing that was typed is left behind.
        return RedirectResponse(f"/pad?{query}", 303)
    return HTMLResponse(render(f"making/{kind}.html", page), 422 if reading.problems else 200)


def _with_another_day(pairs: Pairs, day: AnotherDay, query: str) -> Response:
    """The record's address with another day's readings in it, or the page that says what of them cannot be."""
    reading, problems = with_added(read_form(pairs), day.texts)
    if not problems:
        return RedirectResponse(place_of(reading).at_log(reading.typed[KEY]), 303)
    case = case_of(reading, day)
    if case is None:
        return RedirectResponse(f"/pad?{query}", 303)
    return HTMLResponse(render("making/record.html", record_page(case, problems)), 422)


def _add(kind: Kind) -> None:
    """The page and its data at their addresses."""

    async def page(request: Request) -> Response:
        return await run_in_threadpool(_answer, kind, query_pairs(request), request.url.query)

    async def data(request: Request) -> Response:
        _, measurements = read_whole_form(query_pairs(request))
        found = await run_in_threadpool(lambda: DATA[kind](design_pad(measurements)))
        return Response(json_bytes(found), media_type="application/json")

    router.add_api_route(f"/pad/{kind}", page, methods=["GET"], include_in_schema=False)
    router.add_api_route(
        f"/pad/{kind}.json",
        data,
        methods=["GET"],
        name=f"pad_{kind}_json",
        tags=["addresses"],
        summary=_SUMMARIES[kind],
        response_class=Response,
        openapi_extra={"parameters": form_parameters()},
    )


for _kind in _PAGES:
    _add(_kind)
