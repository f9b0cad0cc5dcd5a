"""The one shape of every error that a program reads: RFC 9457 ``application/problem+json``.

Each kind has an address that says what it means; what differs from case to case stands in the answer.
"""

import json
from dataclasses import dataclass
from http import HTTPStatus
from typing import Any

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.types import Scope

from geometry.drawing import SheetError
from geometry.errors import (
    BadMeasurementsError,
    KernelMissingError,
    Limit,
    ModelError,
    NoPadFitsError,
    Problem,
    SeamrestError,
)
from server.processes import NoAnswerError
from server.trouble_page import for_reader

MEDIA_TYPE = "application/problem+json"
_LONGEST_VALUE = 200


@dataclass(frozen=True, slots=True)
class ProblemKind:
    """One kind of error: the end of its address, its status, and what it means in a sentence or two."""

    name: str
    status: int
    title: str
    meaning: str
    retry_after_s: int | None = None

    @property
    def address(self) -> str:
        """Where the kind is explained."""
        return f"/problems/{self.name}"


BAD_MEASUREMENTS = ProblemKind(
    "bad-measurements",
    422,
    "Some measurements cannot be",
    "A field is missing, unknown, unreadable or outside what can exist. “errors” names each field with its value and what to do.",
)
NO_PAD_FITS = ProblemKind(
    "no-pad-fits",
    422,
    "No pad fits these measurements",
    "Each measurement is possible, but two requirements on one dimension leave no room between them. “lower” and “upper”"
    " give both with their reasons and the measurement that moves them most.",
)
NO_DRAWING = ProblemKind(
    "no-drawing",
    422,
    "The part cannot be drawn on one sheet",
    "No standard scale leaves room for this part on its paper.",
)
NOT_FIT = ProblemKind(
    "not-fit",
    409,
    "An estimate of this design fails",
    "A model of a pad that fails an estimate is given out only where its reader says so: ask again with confirm=not-fit."
    " The file then says NOT-FIT in its name and its header.",
)
UNREADABLE = ProblemKind(
    "unreadable-document",
    422,
    "The document cannot be read",
    "The body must be one JSON object in UTF-8, without repeated names.",
)
NOT_JSON = ProblemKind(
    "not-json", 415, "The body is not said to be JSON", "Send the document with Content-Type: application/json."
)
TOO_LARGE = ProblemKind("too-large", 413, "The request is too large", "A full document is a few thousand bytes long.")
FORGED = ProblemKind(
    "foreign-origin",
    403,
    "The request came from another site",
    "Requests that change something are taken from our own pages only.",
)
BUSY = ProblemKind(
    "busy",
    503,
    "The file is not ready",
    "Too many models or drawings are being made, or this one did not end. Ask again.",
    5,
)
KERNEL_MISSING = ProblemKind(
    "kernel-missing", 503, "No models can be built here", "The server lacks a system library; the detail names it.", 600
)
NO_MODEL = ProblemKind(
    "no-model", 500, "The model could not be built", "The modelling kernel refused this shape; please report it."
)
NOT_FOUND = ProblemKind("not-found", 404, "There is nothing at this address", "Check the address.")
NOT_ALLOWED = ProblemKind("not-allowed", 405, "This address does not take that method", "See the Allow header.")
OURS = ProblemKind(
    "our-fault", 500, "Something went wrong here", "An error of this program, not of the request; please report it."
)

KINDS = {
    kind.name: kind
    for kind in (
        BAD_MEASUREMENTS,
        NO_PAD_FITS,
        NO_DRAWING,
        NOT_FIT,
        UNREADABLE,
        NOT_JSON,
        TOO_LARGE,
        FORGED,
        BUSY,
        KERNEL_MISSING,
        NO_MODEL,
        NOT_FOUND,
        NOT_ALLOWED,
        OURS,
    )
}
_BY_STATUS = {kind.status: kind for kind in (NOT_FOUND, NOT_ALLOWED, TOO_LARGE)}


class AnsweredError(SeamrestError):
    """A request that is answered by a problem of a known kind."""

    def __init__(self, kind: ProblemKind, detail: str, **more: object) -> None:
        self.kind, self.more = kind, more
        super().__init__(detail)


def problem_response(scope: Scope, kind: ProblemKind, detail: str, **more: object) -> Response:
    """One answer in the shape of RFC 9457, or a page where a browser asked; ``more`` are its extension members."""
    body = {"type": kind.address, "title": kind.title, "status": kind.status, "detail": detail, **more}
    headers = {} if kind.retry_after_s is None else {"Retry-After": str(kind.retry_after_s)}
    return for_reader(scope, body, Response(json_bytes(body), kind.status, headers, MEDIA_TYPE))


def json_bytes(body: object) -> bytes:
    """JSON that every reader takes: no NaN, and characters that are none are replaced."""
    return json.dumps(body, allow_nan=False, ensure_ascii=False, separators=(",", ":")).encode("utf-8", "replace")


async def answer_error(request: Request, error: Exception) -> Response:
    """The answer to any error that this program raises on purpose."""
    scope = request.scope
    match error:
        case AnsweredError():
            return problem_response(scope, error.kind, str(error), **error.more)
        case BadMeasurementsError():
            return bad_measurements(scope, error.problems)
        case NoPadFitsError():
            return _no_pad_fits(scope, error)
        case SheetError():
            return problem_response(scope, NO_DRAWING, str(error))
        case KernelMissingError():
            return problem_response(scope, KERNEL_MISSING, str(error))
        case NoAnswerError():
            return problem_response(scope, BUSY, str(error))
        case ModelError():
            return problem_response(scope, NO_MODEL, str(error))
        case _:
            return problem_response(scope, OURS, OURS.meaning)


async def answer_http_error(request: Request, error: Exception) -> Response:
    """The answer to an error of the protocol, such as an address that does not exist."""
    if not isinstance(error, HTTPException):
        raise error
    kind = _BY_STATUS.get(error.status_code)
    if kind is None:
        kind = ProblemKind("http", error.status_code, HTTPStatus(error.status_code).phrase, "")
    response = problem_response(request.scope, kind, kind.meaning or str(error.detail))
    response.headers.update(error.headers or {})
    return response


def bad_measurements(scope: Scope, problems: tuple[Problem, ...]) -> Response:
    """422 with every field that is wrong."""
    count = len(problems)
    detail = problems[0].message if count == 1 else f"{count} fields need another look."
    errors = [{"field": p.field, "value": _shown(p.value), "message": p.message} for p in problems]
    return problem_response(scope, BAD_MEASUREMENTS, detail, errors=errors)


def _no_pad_fits(scope: Scope, error: NoPadFitsError) -> Response:
    more: dict[str, Any] = {"dimension": error.dimension, "lower": _limit(error.lower), "upper": _limit(error.upper)}
    return problem_response(scope, NO_PAD_FITS, error.words, words=error.words, so_far=error.so_far, **more)


def _limit(limit: Limit) -> dict[str, object]:
    return {"value_mm": limit.value_mm, "reason": limit.reason, "field": limit.field}


def _shown(value: object) -> object:
    """A value that JSON can carry, not longer than it helps."""
    if value is None or isinstance(value, bool) or (isinstance(value, int | float) and abs(value) < 1e15):
        return value
    text = str(value)
    return text if len(text) <= _LONGEST_VALUE else text[:_LONGEST_VALUE] + "…"
