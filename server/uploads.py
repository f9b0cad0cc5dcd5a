"""How large a body may be: small everywhere, larger where a file of saved designs is taken in; a browser is told in words."""

from collections.abc import Mapping

from starlette.datastructures import Headers
from starlette.types import ASGIApp, Receive, Scope, Send

from server.saved_pages import Trouble, private_page
from server.security import BodyLimit

_MOST_READ_AWAY = 4
"""How many times the limit is read and thrown away: a browser that is still sending would not read the answer."""


class BodyLimits:
    """Refuses bodies that are too large for the address that they are sent to."""

    def __init__(self, app: ASGIApp, most_bytes: int, larger: Mapping[str, int]) -> None:
        self._most, self._larger = most_bytes, dict(larger)
        self._usual = BodyLimit(app, most_bytes)
        self._limits = {path: BodyLimit(app, most) for path, most in larger.items()}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, its body counted."""
        path = scope.get("path", "")
        most = self._larger.get(path, self._most)
        if scope["type"] == "http" and _is_from_a_form(headers := Headers(scope=scope)):
            said = headers.get("content-length", "")
            if said.isdecimal() and int(said) > most:
                await _read_away(receive, most * _MOST_READ_AWAY)
                words = _words(int(said), most, takes_designs=path in self._larger)
                await private_page("trouble.html", Trouble("Too large", words), 413)(scope, receive, send)
                return
        await self._limits.get(path, self._usual)(scope, receive, send)


def _is_from_a_form(headers: Headers) -> bool:
    """Whether somebody sits before a page that sent this; programs get the usual problem as data."""
    is_form = headers.get("content-type", "").startswith(("multipart/form-data", "application/x-www-form-urlencoded"))
    return is_form and "text/html" in headers.get("accept", "")


def _words(said_bytes: int, most_bytes: int, *, takes_designs: bool) -> str:
    sent = f"What was sent holds {size_words(said_bytes)}; at most {size_words(most_bytes)} is taken here. Nothing was changed."
    if takes_designs:
        return f"{sent} Take the designs in several files. Whoever runs this server can also raise SEAMREST_IMPORT_LIMIT_BYTES."
    return f"{sent} A measurement document is a few KiB; a file of saved designs is brought in under “My designs”."


def size_words(count_bytes: int) -> str:
    """A size as people read it; rounded up, so that too much never reads as just enough.

    >>> size_words(65536), size_words(16 * 2**20), size_words(16 * 2**20 + 1)
    ('64 KiB', '16 MiB', '16.1 MiB')
    """
    unit, name = (2**20, "MiB") if count_bytes >= 2**20 else (2**10, "KiB")
    tenths = -(-count_bytes * 10 // unit)
    return f"{tenths / 10:g} {name}"


async def _read_away(receive: Receive, most_bytes: int) -> None:
    """Read what still comes, and keep nothing of it."""
    come = 0
    while come <= most_bytes:
        message = await receive()
        come += len(message.get("body", b""))
        if message["type"] != "http.request" or not message.get("more_body", False):
            return
