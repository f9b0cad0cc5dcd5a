"""A saved revision's drawing on a page of its own, to look at closely: a sheet of paper is small on a phone."""

from dataclasses import dataclass

from fastapi import APIRouter, Request
from markupsafe import Markup
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, Response

from geometry.cautions import ONE_LINE
from geometry.drawing.frame import NOT_FIT
from server.drawn import drawers
from server.packet_views import LAYERS
from server.saved_api import Letters, Secret
from server.saved_pages import PRIVATE, store_of
from server.saved_parts import FileView, Viewer, Way, files_of
from server.sharing import opened
from server.templating import render
from server.working_out import facts_of, pad_of

router = APIRouter(default_response_class=Response, include_in_schema=False)


@dataclass(frozen=True, slots=True)
class LookingPage:
    """The sheet, what of it can be put out of sight, and its files."""

    title: str
    verdict: str
    unfit: str
    """Words over the picture of a pad that is not fit to make; empty otherwise."""
    back: Way
    picture: Markup
    paper: str
    """``a4`` or ``letter``: the stylesheet prints each at its own size."""
    layers: tuple[tuple[str, str], ...]
    files: tuple[FileView, ...]
    caution_line: str = ONE_LINE


@router.get("/saved/{secret}/{letters}/drawing")
async def saved_drawing(request: Request, secret: Secret, letters: Letters) -> Response:
    """The drawing of a revision as saved, or in the units and the projection that its viewer chose."""
    access, found = await run_in_threadpool(opened, store_of(request), secret, letters)
    viewer = Viewer.of(request.query_params)
    facts = facts_of(found, units=viewer.units, projection=viewer.projection)
    drawn = await drawers.drawn(pad_of(found.design), facts)
    page = LookingPage(
        title=f"{access.design.title or found.design['title'] or 'Lifting pad'}, revision {found.letters}",
        verdict=found.design["verdict"],
        unfit="" if facts.fit_to_make else NOT_FIT,
        back=Way(f"Back to revision {found.letters}", viewer.at(secret, found.letters)),
        picture=Markup(drawn.picture),  # noqa: S704 - our own drawing; what was typed is escaped by the library that writes it
        paper=facts.paper.lower(),
        layers=LAYERS,
        files=files_of(access, found.letters, viewer)[:3],
    )
    return HTMLResponse(render("saved/drawing.html", page), headers=PRIVATE)
