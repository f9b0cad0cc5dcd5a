"""Pages sent small. Only pages that hold no secret: what is packed together with what a visitor typed can be guessed by its size.

Pages of saved designs carry secret links and are sent as they are.
"""

import gzip

from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

_LEVEL = 2
"""A sheet of 160 kB shrinks to a sixth in about two milliseconds; higher levels gain little and take longer."""
_LEAST_BYTES = 1024


def accepts_packed(request: Request) -> bool:
    """Whether the browser unpacks gzip."""
    offers = (part.strip().lower() for part in request.headers.get("accept-encoding", "").split(","))
    return any(
        offer == "gzip" or (offer.startswith("gzip;") and "q=0" not in offer.replace("q=0.", "")) for offer in offers
    )


def html_answer(page: str, status: int, *, packed: bool) -> Response:
    """A page that nobody keeps: the answer to an unfinished form changes with every keystroke."""
    headers = {"Cache-Control": "no-store", "Vary": "Accept-Encoding"}
    body = page.encode()
    if not packed or len(body) < _LEAST_BYTES:
        return HTMLResponse(body, status, headers=headers)
    headers["Content-Encoding"] = "gzip"
    return HTMLResponse(gzip.compress(body, _LEVEL, mtime=0), status, headers=headers)
