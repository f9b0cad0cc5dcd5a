"""The guide at its address: measuring, materials, checks, making, lifting and words on one page."""

from dataclasses import replace
from functools import lru_cache
from typing import Any

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, Response

from server.documents import query_pairs
from server.forms import FormReading, Units
from server.guide_context import GuidePage
from server.guide_view import guide_page
from server.links import static_url
from server.templating import render
from server.ways import asked_beside, units_ways, ways_of

router = APIRouter(include_in_schema=False)
_FILES = (
    *(
        f"{name}.css"
        for name in ("paper", "question", "sheet", "result", "section", "on-paper", "calculation", "guide")
    ),
    "guide.js",
)


@router.get("/guide")
async def guide(request: Request) -> Response:
    """The guide: how to measure, make and lift, what each check means, and the words used; its address may hold a case."""
    case, units = asked_beside(query_pairs(request))
    return HTMLResponse(await run_in_threadpool(guide_text, units, case))


def guide_text(units: Units, case: FormReading | None = None) -> str:
    """The page, with the way back to ``case``; all else is worked out once, and again where one of its files has changed."""
    page = _page(units, tuple(static_url(name) for name in _FILES))
    return render("guide.html", replace(page, **_ways(case, units)) if case else page)


def _ways(case: FormReading, units: Units) -> dict[str, Any]:
    return {"ways": ways_of(case, units=units), "units_links": units_ways(case, "/guide")}


@lru_cache(maxsize=4)
def _page(units: Units, _files: tuple[str, ...]) -> GuidePage:
    return guide_page(units)
