"""The interface for programs: a document in the body, its design or one of its files as the answer."""

from collections.abc import Awaitable, Callable
from typing import Any

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import PlainTextResponse, Response

from geometry import ENGINE_VERSION
from geometry.design import design_pad
from server.documents import chosen_units, query_pairs, read_document, split_confirmation
from server.downloads import FORMATS, HOLDS_A_MODEL, MEDIA_TYPES, deliver
from server.links import CONFIRM_KEY, CONFIRM_NOT_FIT
from server.openapi import body_parameters, document_body, document_schema, file_responses, plain_responses
from server.problems import BAD_MEASUREMENTS, KINDS, NOT_FOUND, AnsweredError, json_bytes

router = APIRouter()
_SCHEMA_TYPE = "application/schema+json"


@router.get(
    "/api/schema",
    tags=["documents"],
    summary="The JSON schema of the measurement document",
    response_class=Response,
    responses=plain_responses(_SCHEMA_TYPE),
)
async def schema() -> Response:
    """Every field with its title, unit, bounds, help and how to measure it."""
    return Response(json_bytes(document_schema()), media_type=_SCHEMA_TYPE)


@router.get("/healthz", tags=["server"], summary="Whether the server answers")
async def health() -> dict[str, str]:
    """Says that the server answers, and with which engine; it asks nothing of the model processes."""
    return {"status": "answers", "engine_version": ENGINE_VERSION}


@router.get(
    "/problems/{name}",
    tags=["server"],
    summary="What a kind of problem means",
    response_class=PlainTextResponse,
    responses=plain_responses("text/plain", NOT_FOUND, BAD_MEASUREMENTS),
)
async def problem(name: str) -> PlainTextResponse:
    """Explains one kind of problem in words."""
    if name not in KINDS:
        raise AnsweredError(NOT_FOUND, f"There is no kind of problem of that name; there are {', '.join(KINDS)}.")
    kind = KINDS[name]
    return PlainTextResponse(f"{kind.title} (status {kind.status})\n\n{kind.meaning}\n")


def _describe(ending: str) -> dict[str, Any]:
    """How the address of one file is described to programs."""
    return {
        "name": f"api_pad_{ending}",
        "summary": f"The design of a document as {ending.upper()}",
        "response_class": Response,
        "responses": file_responses(MEDIA_TYPES[ending], is_model=ending in HOLDS_A_MODEL, has_body=True),
        "openapi_extra": {"requestBody": document_body(), "parameters": body_parameters()},
        "tags": ["documents"],
    }


def _file_of_document(ending: str, path: str) -> Callable[[Request], Awaitable[Response]]:
    async def answer(request: Request) -> Response:
        pairs, is_confirmed = split_confirmation(query_pairs(request))
        units = chosen_units(pairs)
        measurements = await read_document(request)
        design = await run_in_threadpool(design_pad, measurements)
        return await deliver(
            request,
            design,
            ending,
            units=units,
            is_confirmed=is_confirmed,
            confirm_address=f"{path}?{CONFIRM_KEY}={CONFIRM_NOT_FIT}",
        )

    return answer


for _ending in FORMATS:
    _path = "/api/pad" if _ending == "json" else f"/api/pad.{_ending}"
    router.add_api_route(_path, _file_of_document(_ending, _path), methods=["POST"], **_describe(_ending))
