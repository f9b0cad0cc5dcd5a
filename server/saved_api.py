"""How the addresses of saved designs are described to programs: what is sent, with examples, and every answer."""

from collections.abc import Mapping
from typing import Annotated, Any, get_args

from fastapi import Path

from geometry.drawing.facts import Projection
from geometry.drawing.facts import Units as SheetUnits
from server.links import CONFIRM_KEY, CONFIRM_NOT_FIT, ready_sample
from server.openapi import form_parameters

TAG = "saved designs"
_EXAMPLE_SECRET = "A" * 22
"""Nobody's: a real one is drawn by chance."""
Secret = Annotated[
    str, Path(description="The secret of one of the three links of a design.", examples=[_EXAMPLE_SECRET])
]
Letters = Annotated[str, Path(description="The letters of a revision, as on its drawing.", examples=["A"])]
FILE_EXAMPLES = (
    "A",
    "A.json",
    "A.document.json",
    "A.svg",
    "A.pdf",
    "A.dxf",
    "A.png",
    "A.packet.pdf",
    "A.card.pdf",
    "A.step",
    "A.stl",
    "A.3mf",
    "A.glb",
    "A.zip",
)
"""A revision's page and its files, by the end of their address."""
Name = Annotated[
    str,
    Path(
        description="The letters of a revision for its page; with an ending for one of its files.",
        openapi_examples={name: {"value": name} for name in FILE_EXAMPLES},
    ),
]
_HTML = {"text/html": {"schema": {"type": "string"}}}
_WORDS = {
    200: "A page",
    303: "Done; the Location header leads to the page that shows it",
    403: "The link does not allow this, or the request came from another site's page",
    404: "There is nothing at this address",
    409: "Somebody saved in the meantime, as much is kept as may be, or what was asked for is not given out",
    410: "The owner has taken the link back",
    413: "Too much was sent",
    422: "What was sent cannot be used; the page says why",
    429: "Too many requests in a minute",
    503: "What is saved cannot be reached at the moment",
}
Described = dict[str, Any]


def page_answers(*statuses: int) -> dict[int | str, dict[str, Any]]:
    """Answers that are pages in words."""
    return {s: {"description": _WORDS[s], **({} if s == 303 else {"content": _HTML})} for s in sorted(statuses)}


def _form(fields: Mapping[str, tuple[str, str]], required: tuple[str, ...]) -> dict[str, Any]:
    """A body as forms send it: each field with its meaning and an example."""
    schema = {
        "type": "object",
        "required": list(required),
        "properties": {n: {"type": "string", "description": words} for n, (words, _) in fields.items()},
    }
    example = {name: text for name, (_, text) in fields.items() if text}
    content = {"application/x-www-form-urlencoded": {"schema": schema, "example": example}}
    return {"requestBody": {"required": True, "content": content}}


def _file(words: str) -> dict[str, Any]:
    schema = {
        "type": "object",
        "required": ["file"],
        "properties": {"file": {"type": "string", "format": "binary", "description": words}},
    }
    return {"requestBody": {"required": True, "content": {"multipart/form-data": {"schema": schema}}}}


def _described(summary: str, *statuses: int, **extra: Any) -> Described:
    answers = page_answers(*statuses)
    if 422 not in answers:
        # Else the framework describes an answer of its own here, which is never given.
        answers["default"] = {"description": "Whatever else is wrong, in words", "content": _HTML}
    return {
        "tags": [TAG],
        "summary": summary,
        "status_code": 200 if 200 in answers else 303,
        "responses": answers,
        "openapi_extra": extra,
    }


def _choice(name: str, words: str, choices: tuple[str, ...]) -> dict[str, Any]:
    schema = {"type": "string", "enum": list(choices)}
    return {"name": name, "in": "query", "required": False, "description": words, "schema": schema}


_SENT = (303, 403, 404, 409, 410, 413, 422, 429, 503)
_READ = (200, 404, 410, 429, 503)
_NAME = ("Who sends it; may be left out.", "Ada")
_VIEWER = [
    _choice("units", "Units of the sizes; left out, as saved.", get_args(SheetUnits)),
    _choice("projection", "Projection of the drawing; left out, as saved.", get_args(Projection)),
]
_INPUTS = ready_sample().address

SAVE = _described(
    "Save a design",
    *_SENT,
    **_form(
        {
            "inputs": ("The address of a working sheet, which is the design.", _INPUTS),
            "title": ("What the design is called.", "Our van"),
            "note": ("What has changed and why.", "First one"),
            "to": (
                "Left out for a new design. An owner's link makes it the next revision, a friend's link a proposal.",
                "",
            ),
            "name": ("Who sends a proposal.", ""),
        },
        ("inputs",),
    ),
)
NEWEST = _described("The newest revision", 303, 404, 410, 429, 503)
REVISION = _described("The page of a revision, or one of its files", *_READ, 409, 422) | {
    "openapi_extra": {
        "parameters": [
            *_VIEWER,
            _choice("code", "A PDF of the drawing with a code that leads a camera to its page.", ("yes",)),
            _choice(CONFIRM_KEY, "Needed for the model of a pad that fails an estimate.", (CONFIRM_NOT_FIT,)),
        ]
    }
}
REVISION["responses"][200] = {
    "description": "The page, or the file in the media type of its ending",
    "content": _HTML | {"application/octet-stream": {"schema": {"type": "string", "format": "binary"}}},
}
DIFFERENCE = _described("Two designs side by side", *_READ) | {
    "openapi_extra": {
        "parameters": [
            {
                "name": "with",
                "in": "query",
                "required": True,
                "description": "The letters of another revision, the name of a proposal, or “today”.",
                "schema": {"type": "string"},
                "example": "today",
            }
        ]
    }
}
REMARK = _described("Add a remark", *_SENT, **_form({"words": ("The remark.", "Hello"), "name": _NAME}, ("words",)))
READINGS = _described(
    "Add readings of the finished part",
    *_SENT,
    **_form(
        {
            "as_made.web_mm": (
                "A reading, or several with semicolons between; so for each dimension that can be read.",
                "18.5; 18.45",
            ),
            "as_made.instrument": ("caliper, micrometer or rule.", "micrometer"),
            "units": ("What a bare number means: mm or in.", "mm"),
            "name": _NAME,
        },
        (),
    ),
)
PROPOSAL = _described(
    "Send a proposal",
    *_SENT,
    **_form(
        {
            "inputs": ("The address of a working sheet that differs from the revision.", f"{_INPUTS}&make.step=inch"),
            "words": ("What goes with it.", "With what I have"),
            "name": _NAME,
        },
        ("inputs",),
    ),
)
TITLE = _described(
    "Change name and note of a design",
    *_SENT,
    **_form({"title": ("What the design is called.", "Our van"), "note": ("A note.", "")}, ("title",)),
)
LINKS = _described(
    "Take a link back, or replace it",
    *_SENT,
    **_form({"kind": ("owner, friend or view.", "view"), "deed": ("end or renew.", "renew")}, ("kind", "deed")),
)
MINE = _described("What a browser remembers, and files to take and bring", 200, 429)
EXPORT = _described(
    "Everything behind some links as one file",
    200,
    *_SENT[1:],
    **_form({"links": ("Links, one on each line.", f"/saved/{_EXAMPLE_SECRET}/A")}, ("links",)),
)
EXPORT["responses"][200] = {
    "description": "The file",
    "content": {"application/json": {"schema": {"type": "object"}}},
}
IMPORT = _described("Take in a file of saved designs", 200, *_SENT[1:], **_file("A file that /mine/export gave."))
OPEN_DOCUMENT = _described(
    "The working sheet of a measurement document", 303, 403, 413, 422, 429, **_file("A measurement document, JSON.")
) | {"tags": ["documents"]}
DOCUMENT: Described = {
    "tags": ["addresses"],
    "summary": "The measurement document of an address, as far as it is filled in",
    "responses": {
        200: {"description": "The document", "content": {"application/json": {"schema": {"type": "object"}}}},
        422: {
            "description": "A field cannot be read or cannot be",
            "content": {"application/problem+json": {"schema": {"$ref": "#/components/schemas/Problem"}}},
        },
    },
    "openapi_extra": {"parameters": [p | {"required": False} for p in form_parameters() if p["name"] != CONFIRM_KEY]},
}
