"""How the addresses are described to programs: parameters and examples from the document's own fields."""

from typing import Any

from fastapi import FastAPI
from fastapi.openapi.utils import get_openapi

from geometry.measurements import Measurements
from server.fields import FIELDS, FormField
from server.links import CONFIRM_KEY, CONFIRM_NOT_FIT, samples, typed_of_document
from server.problems import (
    BAD_MEASUREMENTS,
    BUSY,
    MEDIA_TYPE,
    NO_PAD_FITS,
    NOT_FIT,
    NOT_JSON,
    TOO_LARGE,
    UNREADABLE,
    ProblemKind,
)

_SCHEMAS = "#/components/schemas/"
_TEXT = {"type": "string"}
_UNITS = {
    "name": "units",
    "in": "query",
    "required": False,
    "description": "What a bare number means, and the drawing's units: mm and kg, or in and lb. A unit that is typed wins.",
    "schema": {"type": "string", "enum": ["mm", "in"]},
}
_CONFIRM = {
    "name": CONFIRM_KEY,
    "in": "query",
    "required": False,
    "description": "Needed for the model of a design that fails an estimate.",
    "schema": {"type": "string", "enum": [CONFIRM_NOT_FIT]},
}


def form_parameters() -> list[dict[str, Any]]:
    """Every key that a design's address may hold, each with the example that a newcomer is shown."""
    example = typed_of_document(samples()[0].document)
    return [*(_parameter(field, example.get(field.key)) for field in FIELDS.values()), _UNITS, _CONFIRM]


def body_parameters() -> list[dict[str, Any]]:
    """The keys that may stand in the address beside a document in the body."""
    return [_UNITS, _CONFIRM]


def _parameter(field: FormField, example: str | None) -> dict[str, Any]:
    said = (field.help, field.how, f"Left out: {field.assumed}." if field.assumed else "")
    schema = _TEXT | ({"enum": list(field.choices)} if field.choices else {})
    return {
        "name": field.key,
        "in": "query",
        "required": field.required,
        "description": " ".join(text for text in (f"{field.title}.", *said) if text),
        "schema": schema,
        **({"example": example} if example else {}),
    }


def document_body() -> dict[str, Any]:
    """A request body that holds a document, with the worked examples."""
    examples = {s.key: {"summary": s.title, "value": s.document} for s in samples()}
    schema = {"$ref": f"{_SCHEMAS}{Measurements.__name__}"}
    return {"required": True, "content": {"application/json": {"schema": schema, "examples": examples}}}


def file_responses(media_type: str, *, is_model: bool, has_body: bool = False) -> dict[int | str, dict[str, Any]]:
    """The answers of an address that gives out one file."""
    content = {"type": "object"} if media_type == "application/json" else {"type": "string", "format": "binary"}
    kinds = [BAD_MEASUREMENTS, NO_PAD_FITS, TOO_LARGE]
    kinds += [NOT_FIT, BUSY] if is_model else []
    kinds += [NOT_JSON, UNREADABLE] if has_body else []
    answers: dict[int | str, dict[str, Any]] = {
        200: {"description": "The file", "content": {media_type: {"schema": content}}}
    }
    for status in sorted({kind.status for kind in kinds}):
        answers[status] = _problems([kind for kind in kinds if kind.status == status])
    return answers


def plain_responses(media_type: str, *kinds: ProblemKind) -> dict[int | str, dict[str, Any]]:
    """The answers of an address that gives out something small."""
    schema = _TEXT if media_type.startswith("text/") else {"type": "object"}
    answers: dict[int | str, dict[str, Any]] = {
        200: {"description": "The answer", "content": {media_type: {"schema": schema}}}
    }
    return answers | {kind.status: _problems([kind]) for kind in kinds}


def _problems(kinds: list[ProblemKind]) -> dict[str, Any]:
    words = " ".join(f"{kind.address}: {kind.title}." for kind in kinds)
    return {"description": words, "content": {MEDIA_TYPE: {"schema": {"$ref": f"{_SCHEMAS}Problem"}}}}


def document_schema() -> dict[str, Any]:
    """The JSON schema of the measurement document, with a worked example."""
    schema = Measurements.model_json_schema()
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **schema,
        "examples": [s.document for s in samples()],
    }


def describe(app: FastAPI) -> dict[str, Any]:
    """The OpenAPI description of the whole server, made once."""
    if not app.openapi_schema:
        found = get_openapi(
            title=app.title, version=app.version, summary=app.summary, description=app.description, routes=app.routes
        )
        document = Measurements.model_json_schema(ref_template=_SCHEMAS + "{model}")
        schemas = found.setdefault("components", {}).setdefault("schemas", {})
        schemas |= document.pop("$defs")
        schemas |= {Measurements.__name__: document, "Problem": _PROBLEM}
        app.openapi_schema = found
    return app.openapi_schema


_PROBLEM = {
    "type": "object",
    "title": "Problem",
    "description": "One error, in the shape of RFC 9457.",
    "required": ["type", "title", "status", "detail"],
    "properties": {
        "type": {"type": "string", "format": "uri-reference"},
        "title": _TEXT,
        "status": {"type": "integer"},
        "detail": _TEXT,
        "errors": {
            "type": "array",
            "items": {
                "type": "object",
                "required": ["field", "value", "message"],
                "properties": {"field": _TEXT, "value": {}, "message": _TEXT},
            },
        },
    },
}
