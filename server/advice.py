"""Computed changes for what fails, at an address of their own: they take longer than a keystroke may."""

from dataclasses import dataclass

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, Response

from geometry.cautions import ONE_LINE
from geometry.letters import lower_first
from server import links
from server.advice_context import RemediesView
from server.advice_views import remedies_of
from server.documents import query_pairs
from server.forms import FormReading, read_form
from server.outcome import outcome_of
from server.templating import render

router = APIRouter(include_in_schema=False)


@dataclass(frozen=True, slots=True)
class ChangesPage:
    """The changes that would help, and the way back."""

    headline: str
    remedies: RemediesView
    back: str
    caution_line: str


@router.get("/pad/changes")
async def changes(request: Request) -> Response:
    """The changes as a page, or as the piece of the working sheet that asks for them; every answer varies with who asks."""
    is_piece = request.headers.get("HX-Request") == "true"
    return await run_in_threadpool(_answer, read_form(query_pairs(request)), is_piece=is_piece)


def _answer(reading: FormReading, *, is_piece: bool) -> HTMLResponse:
    remedies = _remedies(reading)
    page = ChangesPage(_headline(remedies), remedies, links.pad_address(reading.typed, units=reading.units), ONE_LINE)
    template = "partials/remedies.html" if is_piece else "changes.html"
    return HTMLResponse(render(template, page), headers={"Cache-Control": "no-store"})


def _headline(remedies: RemediesView) -> str:
    if not remedies.troubles:
        return remedies.words
    count, first = len(remedies.troubles), remedies.troubles[0]
    if first.is_advice:
        return (
            f"Advised: {lower_first(first.heading)}"
            if count == 1
            else f"{count} pieces of advice are past their limits"
        )
    return f"{first.heading} fails" if count == 1 else f"{count} things fail"


def _remedies(reading: FormReading) -> RemediesView:
    outcome = outcome_of(reading)
    return remedies_of(reading, outcome.design, outcome.conflict)
