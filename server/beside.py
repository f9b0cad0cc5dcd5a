"""What is computed from many designs of one job: the load's curve, all materials, what to measure most carefully."""

from dataclasses import dataclass

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, RedirectResponse, Response

from geometry.cautions import ONE_LINE
from server import links
from server.advice_context import ComparisonView, CurveView, SensitivityView
from server.advice_views import comparison_view, curve_view, sensitivity_of
from server.documents import query_pairs
from server.forms import FormReading, read_form
from server.outcome import outcome_of
from server.templating import render

router = APIRouter(include_in_schema=False)


@dataclass(frozen=True, slots=True)
class BesidePage:
    """Curve, materials and influences of one design, and the way back to it."""

    curve: CurveView | None
    comparison: ComparisonView
    sensitivity: SensitivityView
    back: str
    verdict: str
    caution_line: str


@router.get("/pad/beside")
async def beside(request: Request) -> Response:
    """The three as a page, or as the piece of the working sheet that asks for them; every answer varies with who asks."""
    is_piece = request.headers.get("HX-Request") == "true"
    return await run_in_threadpool(_answer, read_form(query_pairs(request)), is_piece=is_piece)


def _answer(reading: FormReading, *, is_piece: bool) -> Response:
    back = links.pad_address(reading.typed, units=reading.units)
    design = outcome_of(reading).design
    if design is None:
        # The working sheet says what is missing, or why nothing fits.
        return Response(status_code=204) if is_piece else RedirectResponse(back, 303)
    page = BesidePage(
        curve_view(design, reading.units),
        comparison_view(design.measurements, reading),
        sensitivity_of(design, reading.units),
        back,
        design.verdict_words,
        ONE_LINE,
    )
    template = "parts/beside_pieces.html" if is_piece else "beside.html"
    return HTMLResponse(render(template, page), headers={"Cache-Control": "no-store"})
