"""An error as a page: what a person in a browser sees where a program is given the same as data, with a way back."""

import logging
from dataclasses import dataclass
from typing import Any
from urllib.parse import parse_qsl

from starlette.datastructures import Headers
from starlette.responses import HTMLResponse, Response
from starlette.types import Scope

from geometry.cautions import ONE_LINE
from server.field_views import LinkView
from server.forms import read_form
from server.links import pad_address
from server.templating import render

_MOST_FIELDS = 200
_DATA = ("/api/", "/openapi", "/healthz")
"""What only programs ask for is answered as data, whoever looks at it."""
_ASK_AGAIN = {408, 429, 500, 503}
_errors = logging.getLogger("seamrest.errors")


@dataclass(frozen=True, slots=True)
class TroublePage:
    """What did not work, field by field where it is about fields, and where to go from here."""

    heading: str
    words: str
    fields: tuple[str, ...]
    ask_again: str
    """When asking again may help; empty where it does not."""
    back: LinkView
    status: int
    caution_line: str = ONE_LINE


def wants_a_page(scope: Scope) -> bool:
    """Whether somebody sits before a browser's window and waits for a page, not for a piece of one or for data."""
    headers = Headers(scope=scope)
    is_piece = headers.get("hx-request") == "true"
    return "text/html" in headers.get("accept", "") and not is_piece and not scope["path"].startswith(_DATA)


def for_reader(scope: Scope, problem: dict[str, Any], as_data: Response) -> Response:
    """The answer to an error: ``as_data``, or where a person reads it the same in words."""
    answer = as_data
    if wants_a_page(scope):
        headers = {name: text for name, text in as_data.headers.items() if name in {"retry-after", "allow"}}
        try:
            text = render("trouble.html", _page(scope, problem, headers.get("retry-after", "")))
            answer = HTMLResponse(text, as_data.status_code, headers)
        except Exception:
            # Whatever made the page fail: the reader still gets what programs get.
            _errors.exception("the page about an error failed")
    answer.headers.add_vary_header("Accept")
    return answer


def _page(scope: Scope, problem: dict[str, Any], wait_s: str) -> TroublePage:
    status = int(problem["status"])
    fields = tuple(dict.fromkeys(str(error["message"]) for error in problem.get("errors", ())))
    again = f"Ask again in {wait_s} s." if wait_s else "Load the page again in a moment."
    return TroublePage(
        heading=str(problem["title"]),
        words="" if fields == (problem["detail"],) else str(problem["detail"]),
        fields=fields,
        ask_again=again if status in _ASK_AGAIN and again not in str(problem["detail"]) else "",
        back=_back(scope),
        status=status,
    )


def _back(scope: Scope) -> LinkView:
    """The sheet with what the address holds of a design; the first page where it holds nothing."""
    try:
        pairs = parse_qsl(scope.get("query_string", b"").decode("utf-8", "replace"), max_num_fields=_MOST_FIELDS)
    except ValueError:
        pairs = []
    reading = read_form(pairs)
    if not reading.typed:
        return LinkView("To the first page", "/")
    return LinkView("Back to the working sheet", pad_address(reading.typed, units=reading.units))
