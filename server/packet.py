"""The sheets of an address: the drawing on a page of its own and in four forms, the packet, the lifting card, the gauges."""

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import asdict, dataclass

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import HTMLResponse, RedirectResponse, Response

from geometry.design import Design, design_pad
from geometry.drawing.facts import SheetFacts
from geometry.model_label import file_stem
from geometry.sheet_facts import model_label
from server import links
from server.documents import query_pairs, read_whole_form
from server.downloads import MEDIA_TYPES
from server.drawn import drawers
from server.forms import read_form
from server.model_cache import content_key
from server.openapi import file_responses, form_parameters
from server.outcome import outcome_of
from server.packet_views import drawing_page
from server.templating import render
from server.viewing import CHOICES, facts_of_view, split_view

router = APIRouter()
_PNG = "image/png"


@dataclass(frozen=True, slots=True)
class _Sheet:
    """One file: what it is, and in which format of the drawing, where it is the drawing."""

    media_type: str
    words: str
    drawing: str = ""
    """The drawing's format; empty for a sheet of another kind."""
    is_shown: bool = True
    """Whether a browser shows it by itself."""


SHEETS: Mapping[str, _Sheet] = {
    "drawing.svg": _Sheet(MEDIA_TYPES["svg"], "The drawing as its viewer wants it, as SVG", "svg"),
    "drawing.dxf": _Sheet(MEDIA_TYPES["dxf"], "The drawing as its viewer wants it, as DXF", "dxf", False),
    "drawing.pdf": _Sheet(MEDIA_TYPES["pdf"], "The drawing as its viewer wants it, as PDF in true size", "pdf"),
    "drawing.png": _Sheet(_PNG, "The drawing as its viewer wants it, as PNG", "png"),
    "packet.pdf": _Sheet(MEDIA_TYPES["pdf"], "Everything about the design on paper, as PDF"),
    "card.pdf": _Sheet(MEDIA_TYPES["pdf"], "One page for the garage wall, as PDF"),
    "gauge.pdf": _Sheet(MEDIA_TYPES["pdf"], "Gauges to cut from card, in true size, as PDF"),
    "gauge.svg": _Sheet(MEDIA_TYPES["svg"], "The gauges side by side, as SVG"),
    "gauge.dxf": _Sheet(MEDIA_TYPES["dxf"], "The gauges for a cutter, as DXF", is_shown=False),
}
"""Every sheet by the end of its address after ``/pad/``."""


@router.get("/pad/drawing", include_in_schema=False)
async def page(request: Request) -> Response:
    """The drawing to look at and to print; where there is no pad yet, the working sheet says why."""
    pairs, view = split_view(query_pairs(request))
    reading, issued = read_form(pairs), request.app.state.settings.drawing_day()
    design = (await run_in_threadpool(outcome_of, reading)).design
    if design is None:
        return RedirectResponse(links.pad_address(reading.typed, units=reading.units), 303)
    facts = facts_of_view(design, reading, view, issued=issued)
    drawn = await drawers.drawn(design.pad, facts)
    return HTMLResponse(render("drawing/page.html", drawing_page(design, reading, view, facts, drawn)))


async def _file(request: Request, name: str, sheet: _Sheet) -> Response:
    pairs, view = split_view(query_pairs(request))
    reading, measurements = read_whole_form(pairs)
    design = await run_in_threadpool(design_pad, measurements)
    facts = facts_of_view(design, reading, view, issued=request.app.state.settings.drawing_day())
    if sheet.drawing:
        content = (await drawers.drawings(design.pad, facts, [sheet.drawing]))[sheet.drawing]
    else:
        content = await _kept_or_made(request, name, design, facts)
    kind, _, ending = name.partition(".")
    place = "inline" if sheet.is_shown else "attachment"
    headers = {"Content-Disposition": f'{place}; filename="{file_stem(model_label(design))}-{kind}.{ending}"'}
    return Response(content, headers=headers, media_type=sheet.media_type)


async def _kept_or_made(request: Request, name: str, design: Design, facts: SheetFacts) -> bytes:
    """A sheet that takes a second to set, as it was kept from the last time that anybody asked for the very same."""
    key = await run_in_threadpool(_key, name, design, facts)
    content: bytes = await request.app.state.archives.file(key, lambda: drawers.sheet(name, design, facts))
    return content


def _key(name: str, design: Design, facts: SheetFacts) -> str:
    """What the content of a sheet depends on; sheets tell an answer that was given from the same one that was assumed."""
    given = design.measurements.model_dump(mode="json", exclude_unset=True)
    return content_key(name, [given, design.understood, asdict(facts)])


def _view_parameters() -> list[dict[str, object]]:
    """The viewer's keys, for programs."""
    told = {
        "sizes": "Sizes on the sheets: mm, inches, or both. Left out: those of units, else of the shop.",
        "projection": "First or third angle (ISO 5456-2). Left out: third for an inch shop, else first.",
        "paper": "A4 or US letter. Left out: that of the shop.",
    }
    return [
        {
            "name": key,
            "in": "query",
            "required": False,
            "description": told[key],
            "schema": {"type": "string", "enum": list(CHOICES[key])},
        }
        for key in CHOICES
    ]


def _add(name: str, sheet: _Sheet) -> None:
    """One file at its address."""

    async def answer(request: Request) -> Response:
        return await _file(request, name, sheet)

    answer.__doc__ = f"{sheet.words}."
    _answer: Callable[[Request], Awaitable[Response]] = answer
    router.add_api_route(
        f"/pad/{name}",
        _answer,
        methods=["GET"],
        name=f"pad_{name.replace('.', '_')}",
        tags=["addresses"],
        summary=sheet.words,
        response_class=Response,
        responses=file_responses(sheet.media_type, is_model=False),
        openapi_extra={"parameters": [*form_parameters(), *_view_parameters()]},
    )


for _name, _sheet in SHEETS.items():
    _add(_name, _sheet)
