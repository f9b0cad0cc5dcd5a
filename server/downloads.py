"""The files of a design: JSON, drawing, models, or all in one archive, each with a name, a media type and a header of its own."""

import asyncio
from collections.abc import Awaitable, Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from datetime import date
from functools import partial
from typing import Any, Literal, TypeVar, get_args

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import Response

from geometry.design import Design, design_pad
from geometry.drawing import draw, to_dxf, to_pdf, to_svg
from geometry.model_label import MODEL_FORMATS, ModelFormat, file_stem
from geometry.sheet_facts import model_label, sheet_facts
from server.bundle import archive_name, bundle_bytes
from server.documents import query_pairs, read_whole_form, split_confirmation
from server.forms import Units
from server.links import pad_address
from server.openapi import file_responses, form_parameters
from server.problems import NOT_FIT, AnsweredError, json_bytes
from server.workers import KernelPool

T = TypeVar("T")
DrawingFormat = Literal["svg", "dxf", "pdf"]
DRAWING_FORMATS: tuple[DrawingFormat, ...] = get_args(DrawingFormat)
FORMATS: tuple[str, ...] = ("json", *MODEL_FORMATS, *DRAWING_FORMATS, "zip")
"""Every file of a design, by the ending of its address."""
MEDIA_TYPES = {
    "json": "application/json",
    "step": "model/step",
    "stl": "model/stl",
    "3mf": "model/3mf",
    "glb": "model/gltf-binary",
    "svg": "image/svg+xml",
    "dxf": "image/vnd.dxf",
    "pdf": "application/pdf",
    "zip": "application/zip",
}
HOLDS_A_MODEL = {*MODEL_FORMATS, "zip"}
"""What of a failed design is given out only to someone who has seen that it fails."""
_SHOWN_IN_PLACE = {"svg", "pdf"}
"""What a browser shows by itself; the rest is saved."""

router = APIRouter()

# The drawing library keeps settings and chance in global variables: one drawing at a time, in a thread of its own.
_drawer = ThreadPoolExecutor(1, "drawing")


async def in_drawing_thread(work: Callable[[], T]) -> T:
    """Run something that draws; one after the other."""
    return await asyncio.get_running_loop().run_in_executor(_drawer, work)


async def deliver(
    request: Request, design: Design, ending: str, *, units: Units | None, is_confirmed: bool, confirm_address: str
) -> Response:
    """One file of a design.

    Raises AnsweredError where a model of a failed design was not confirmed, else what drawing and models raise.
    """
    if ending == "json":
        return Response(json_bytes(design.to_dict()), media_type=MEDIA_TYPES["json"])
    label = model_label(design)
    if ending in HOLDS_A_MODEL and not design.fit_to_make and not is_confirmed:
        words = f"{design.verdict_words} To have the model nevertheless, ask for {confirm_address}"
        raise AnsweredError(NOT_FIT, words, verdict=design.verdict_words, confirm=confirm_address)
    making = _Making(request.app.state.kernel, design, units, request.app.state.settings.drawing_day())
    content = await (making.archive() if ending == "zip" else making.file(ending))
    place = "inline" if ending in _SHOWN_IN_PLACE else "attachment"
    name = archive_name(label) if ending == "zip" else f"{file_stem(label)}.{ending}"
    headers = {"Content-Disposition": f'{place}; filename="{name}"'}
    return Response(content, headers=headers, media_type=MEDIA_TYPES[ending])


@dataclass(frozen=True, slots=True)
class _Making:
    """Drawings come from a thread of this process, models from the processes that hold the kernel."""

    kernel: KernelPool
    design: Design
    units: Units | None
    issued: date

    async def file(self, ending: str) -> bytes:
        """One drawing or one model."""
        for drawing_format in DRAWING_FORMATS:
            if ending == drawing_format:
                draw_it = partial(drawing_bytes, self.design, drawing_format, units=self.units, issued=self.issued)
                return await in_drawing_thread(draw_it)
        model_format: ModelFormat = next(f for f in MODEL_FORMATS if f == ending)
        return await self.kernel.model(self.design.pad, model_label(self.design), model_format)

    async def archive(self) -> bytes:
        """Everything at once, made side by side as far as there are processes."""
        endings: tuple[str, ...] = (*DRAWING_FORMATS, *MODEL_FORMATS)
        contents = await asyncio.gather(*(self.file(ending) for ending in endings))
        files = dict(zip(endings, contents, strict=True))
        return await run_in_threadpool(bundle_bytes, self.design, files, issued=self.issued)


def drawing_bytes(design: Design, ending: DrawingFormat, *, units: Units | None, issued: date) -> bytes:
    """The drawing of a design in one format; without ``units``, those of the shop that makes it."""
    drawing = draw(design.pad, sheet_facts(design, issued=issued, units=units))
    if ending == "pdf":
        return to_pdf(drawing)
    return (to_svg(drawing) if ending == "svg" else to_dxf(drawing)).encode("utf-8")


def _describe(ending: str) -> dict[str, Any]:
    """How the address of one file is described to programs."""
    return {
        "name": f"pad_{ending}",
        "summary": f"The design of an address as {ending.upper()}",
        "response_class": Response,
        "responses": file_responses(MEDIA_TYPES[ending], is_model=ending in HOLDS_A_MODEL),
        "openapi_extra": {"parameters": form_parameters()},
        "tags": ["addresses"],
    }


def _file_of_address(ending: str) -> Callable[[Request], Awaitable[Response]]:
    async def answer(request: Request) -> Response:
        pairs, is_confirmed = split_confirmation(query_pairs(request))
        form, measurements = read_whole_form(pairs)
        design = await run_in_threadpool(design_pad, measurements)
        confirm_address = pad_address(form.typed, f".{ending}", units=form.units, confirmed=True)
        units = form.units if form.units_chosen else None
        return await deliver(
            request, design, ending, units=units, is_confirmed=is_confirmed, confirm_address=confirm_address
        )

    return answer


for _ending in FORMATS:
    router.add_api_route(f"/pad.{_ending}", _file_of_address(_ending), methods=["GET"], **_describe(_ending))
