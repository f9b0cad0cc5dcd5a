"""What all pages about saved designs have in common: the database, private answers, absolute addresses, errors in words."""

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import parse_qsl

from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from geometry.cautions import ONE_LINE
from server.store.database import Database
from server.store.errors import (
    FullError,
    NewerRevisionError,
    NoSuchLinkError,
    NoSuchRevisionError,
    StoreError,
    TakenBackError,
)
from server.templating import render

PRIVATE = {"X-Robots-Tag": "noindex, nofollow, noarchive", "Cache-Control": "private, no-cache"}
"""On every answer about a saved design: it is for whoever has the link, and for no search engine."""
_MOST_FIELDS = 40


class NotAllowedError(StoreError):
    """The holder of a link asked for what that link does not allow."""


class WithheldError(StoreError):
    """What was asked for is not given out as things stand; the message says why and what there is instead."""


class UnusableError(StoreError):
    """What was sent cannot be used; the message says what to do."""


_STATUS: tuple[tuple[type[StoreError], int, str], ...] = (
    (NotAllowedError, 403, "Not with this link"),
    (WithheldError, 409, "Not given out"),
    (UnusableError, 422, "This cannot be used"),
    (NoSuchLinkError, 404, "There is nothing here"),
    (NoSuchRevisionError, 404, "There is nothing here"),
    (TakenBackError, 410, "This link was taken back"),
    (FullError, 409, "No more can be kept here"),
    (NewerRevisionError, 409, "There is a newer revision"),
    (StoreError, 503, "What is saved cannot be reached"),
)


@dataclass(frozen=True, slots=True)
class Trouble:
    """A page that says what did not work."""

    heading: str
    words: str
    caution_line: str = ONE_LINE


def store_of(request: Request) -> Database:
    """The database of this server."""
    found: Database = request.app.state.store
    return found


def private_page(template: str, page: object, status: int = 200) -> HTMLResponse:
    """A page that is for its reader alone."""
    return HTMLResponse(render(f"saved/{template}", page), status, headers=PRIVATE)


def absolute(request: Request, address: str) -> str:
    """A whole address, from the configured base or else from where the request came to."""
    base: str = request.app.state.settings.base_address or str(request.base_url).rstrip("/")
    return base + address


async def fields_of(request: Request) -> Mapping[str, str]:
    """The fields of a form that was sent; of a name that comes twice, the last."""
    kind = request.headers.get("content-type", "").partition(";")[0].strip().lower()
    if kind != "application/x-www-form-urlencoded":
        raise UnusableError("This address takes what the forms of its own pages send.")
    body = (await request.body()).decode("utf-8", "replace")
    try:
        return dict(parse_qsl(body, keep_blank_values=True, max_num_fields=_MOST_FIELDS))
    except ValueError:
        raise UnusableError(f"At most {_MOST_FIELDS} fields are read.") from None


def status_of(error: Exception) -> tuple[int, str]:
    """The status of an answer that says what did not work, and its heading."""
    return next((status, heading) for kind, status, heading in _STATUS if isinstance(error, kind))


async def answer_store_error(_: Request, error: Exception) -> Response:
    """A page that says in words what did not work."""
    status, heading = status_of(error)
    answer = private_page("trouble.html", Trouble(heading, str(error)), status)
    if status == 503:
        answer.headers["Retry-After"] = "60"
    return answer
