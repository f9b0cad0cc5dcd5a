"""What stays readable without the network: a worker for the browser, what it keeps from the start, and a page that says so."""

import hashlib
import json
from dataclasses import dataclass
from functools import lru_cache

from fastapi import APIRouter
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, Response

from geometry.cautions import ONE_LINE
from server.guide import guide_text
from server.links import STATIC, static_url
from server.materials_page import materials_page
from server.measuring_sheet import measuring_page
from server.templating import render

router = APIRouter(include_in_schema=False)
PAGES = ("/guide", "/measure", "/materials", "/offline")
"""Kept from the start, and again whenever they are seen."""
SEEN = ("/", "/pad", "/pad/drawing", "/pad/calculation", "/pad/route", "/pad/inspection", "/pad/record")
"""Kept as they are seen: pages of designs that live in their address. None of a saved design: its address is a secret."""
MOST_SEEN = 30
"""Of these; those longest unseen go first."""
_WORKER = STATIC / "offline" / "worker.js"
_ENDINGS = {".css", ".js", ".svg"}
_NOT_FROM_THE_START = ("turn-", "vendor/three")
"""What turns a model, asked for by a page's script: half a megabyte, and without the model of no use."""
_NEEDS_SERVER = (
    "Sizing a pad, and every estimate: what you type into a kept sheet is not worked out.",
    "Files: drawings to take away, models, the packet, the cards.",
    "Saving, and every saved design: their links are secret, so nothing of them is kept here.",
)
_HOW_KEPT = (
    f"The guide, the measuring sheet and the materials, and the last {MOST_SEEN} working sheets, drawings, calculations and shop"
    " pages seen. They are kept where the address begins with https or is this machine's own, and in this browser alone."
)
_AS_SEEN = (
    "A kept page shows what was worked out on its day."
    " Before a pad is made, measure again and look at the design with the server."
)


@dataclass(frozen=True, slots=True)
class OfflinePage:
    """What the page says; its list of pages is the browser's own."""

    needs_server: tuple[str, ...] = _NEEDS_SERVER
    how_kept: str = _HOW_KEPT
    as_seen: str = _AS_SEEN
    caution_line: str = ONE_LINE


@router.get("/offline")
async def offline() -> Response:
    """What needs the server, and which pages this browser keeps."""
    return HTMLResponse(render("offline.html", OfflinePage()))


@router.get("/offline.js")
async def worker() -> Response:
    """The program that keeps pages in the browser; asked for anew each time, and another as soon as a file or a page is."""
    text = await run_in_threadpool(worker_text)
    headers = {"Cache-Control": "no-cache", "Service-Worker-Allowed": "/"}
    return Response(text, media_type="text/javascript", headers=headers)


def worker_text() -> str:
    """The worker with what it is to keep; of the pages it holds the hash alone, so that old ones are dropped."""
    return _written(kept_files(), _WORKER.read_text("utf-8"))


def kept_files() -> tuple[str, ...]:
    """The addresses of all static files that pages name."""
    names = sorted(str(path.relative_to(STATIC)) for path in STATIC.rglob("*") if path.suffix in _ENDINGS)
    return tuple(static_url(name) for name in names if not name.startswith(_NOT_FROM_THE_START) and _is_for_pages(name))


def _is_for_pages(name: str) -> bool:
    return name != "offline/worker.js" and not name.endswith(".entry.js")


@lru_cache(maxsize=2)
def _written(files: tuple[str, ...], program: str) -> str:
    texts = [*files, program, guide_text("mm"), render("measure.html", measuring_page("mm"))]
    texts += [render("materials.html", materials_page()), render("offline.html", OfflinePage())]
    version = hashlib.sha256("\n".join(texts).encode()).hexdigest()[:12]
    kept = {"version": version, "files": files, "pages": PAGES, "seen": SEEN, "most_seen": MOST_SEEN}
    return f"'use strict';\n\nconst KEPT = {json.dumps(kept)};\n{program}"
