"""The files of a design: JSON, drawing, models, or all in one archive, each with a name, a media type and a header of its own."""

import asyncio
from collections.abc import Awaitable, Callable
from dataclasses import asdict, dataclass
from datetime import date
from typing import Any, Literal, get_args

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import Response

from geometry.design import Design, design_pad
from geometry.drawing.facts import SheetFacts
from geometry.model_label import MODEL_FORMATS, ModelFormat, file_stem
from geometry.sheet_facts import model_label, sheet_facts
from server.bundle import Bundled, archive_name, bundle_bytes
from server.documents import query_pairs, read_whole_form, split_confirmation
from server.drawn import drawers
from server.forms import Units
from server.links import pad_address
from server.model_cache import content_key
from server.once import Once
from server.openapi import file_responses, form_parameters
from server.problems import NOT_FIT, AnsweredError, json_bytes
from server.workers import KernelPool

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
    state = request.app.state
    issued = state.settings.drawing_day()
    making = _Making(state.kernel, state.archives, design, sheet_facts(design, issued=issued, units=units), issued)
    content = await (making.archive() if ending == "zip" else making.file(ending))
    place = "inline" if ending in _SHOWN_IN_PLACE else "attachment"
    name = archive_name(label) if ending == "zip" else f"{file_stem(label)}.{ending}"
    headers = {"Content-Disposition": f'{place}; filename="{name}"'}
    return Response(content, headers=headers, media_type=MEDIA_TYPES[ending])


@dataclass(frozen=True, slots=True)
class _Making:
    """Drawings come from the processes that draw, models from those that hold the kernel."""

    kernel: KernelPool
    archives: Once
    design: Design
    facts: SheetFacts
    issued: date

    async def file(self, ending: str) -> bytes:
        """One drawing or one model."""
        if ending in DRAWING_FORMATS:
            return (await drawers.drawings(self.design.pad, self.facts, [ending]))[ending]
        model_format: ModelFormat = next(f for f in MODEL_FORMATS if f == ending)
        return await self.kernel.model(self.design.pad, model_label(self.design), model_format)

    async def archive(self) -> bytes:
        """Everything at once: the archive as kept, or made now."""
        return await self.archives.file(await run_in_threadpool(self._archive_key), self._packed)

    def _archive_key(self) -> str:
        content = [self.design.to_dict(), self.design.understood, asdict(self.facts), self.issued.isoformat()]
        return content_key("zip", content)

    async def _packed(self) -> bytes:
        """The files made side by side as far as there are processes, then packed."""
        drawings, models = await asyncio.gather(
            drawers.drawings(self.design.pad, self.facts, DRAWING_FORMATS),
            asyncio.gather(*(self.file(model_format) for model_format in MODEL_FORMATS)),
        )
        files = {**drawings, **{str(form): model for form, model in zip(MODEL_FORMATS, models, strict=True)}}
        about = Bundled(design=self.design.to_dict(), label=model_label(self.design), issued=self.issued)
        return await run_in_threadpool(bundle_bytes, about, files)


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
