"""The guide at its address: measuring, materials, checks, making, lifting and words on one page."""

from functools import lru_cache

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, Response

from server.documents import query_pairs
from server.forms import Units, read_form
from server.guide_view import guide_page
from server.links import static_url
from server.templating import render

router = APIRouter(include_in_schema=False)
_FILES = ("paper.css", "sheet.css", "calculation.css", "guide.css", "guide.js")


@router.get("/guide")
async def guide(request: Request) -> Response:
    """The guide: how to measure, make and lift, what each check means, and the words used; of its address only units matter."""
    pairs = [pair for pair in query_pairs(request) if pair[0] == "units"]
    return HTMLResponse(await run_in_threadpool(guide_text, read_form(pairs).units))


def guide_text(units: Units) -> str:
    """The page; rendered once, and again where one of its files has changed and so has another address."""
    return _rendered(units, tuple(static_url(name) for name in _FILES))


@lru_cache(maxsize=4)
def _rendered(units: Units, _files: tuple[str, ...]) -> str:
    return render("guide.html", guide_page(units))
