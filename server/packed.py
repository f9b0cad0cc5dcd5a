"""Answers sent small. Only those that hold no secret: what is packed together with what a visitor typed can be guessed by its size.

Whatever carries secret links is sent as it is: pages of saved designs, and those that save.
"""

import gzip
from functools import lru_cache

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import Headers, MutableHeaders
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

_LEVEL, _LEVEL_FOR_GOOD = 2, 9
"""A sheet of 180 kB shrinks to a sixth in a millisecond; more pays only for files, which are packed once."""
_LEAST_BYTES, _MOST_BYTES = 1024, 4 * 2**20
_AT_ONCE_BYTES = 32 * 1024
"""Up to here packing takes less time than handing it to a thread."""
_KINDS = ("text/", "application/json", "application/problem+json", "application/javascript", "image/svg+xml")
_WITH_SECRETS = ("/saved", "/save", "/mine")
_STATIC = "/static/"


def accepts_packed(request: Request) -> bool:
    """Whether the browser unpacks gzip."""
    return _accepts(request.headers)


def _accepts(headers: Headers) -> bool:
    offers = (part.strip().lower() for part in headers.get("accept-encoding", "").split(","))
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


class Packing:
    """Packs pages, data, pictures and static files on their way out; models and paper are left as they are."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, and pack its answer where that is worth while and tells nobody a secret."""
        if scope["type"] != "http" or scope["path"].startswith(_WITH_SECRETS):
            await self.app(scope, receive, send)
            return
        await self.app(scope, receive, _Parcel(scope, send).take)


class _Parcel:
    """One answer: held back until it is whole where it is to be packed."""

    def __init__(self, scope: Scope, send: Send) -> None:
        self.path, self.send = scope["path"], send
        self.accepts = _accepts(Headers(scope=scope))
        self.start: Message | None = None
        self.body: list[bytes] = []

    async def take(self, message: Message) -> None:
        """Take one message of the answer."""
        if message["type"] == "http.response.start" and self.is_for_packing(message):
            self.start = message
        elif message["type"] == "http.response.body" and self.start:
            self.body.append(message.get("body", b""))
            if not message.get("more_body", False):
                await self.close(self.start, b"".join(self.body))
        else:
            if self.start:
                # What comes is no body that could be packed: it goes as it is.
                await self.send(self.start)
                self.start = None
            await self.send(message)

    def is_for_packing(self, start: Message) -> bool:
        """Whether an answer is to be packed; one that could be says that it varies, packed or not."""
        headers = MutableHeaders(scope=start)
        if not headers.get("content-type", "").startswith(_KINDS) or "content-encoding" in headers:
            return False
        headers.add_vary_header("Accept-Encoding")
        size = int(headers.get("content-length", 0))
        return self.accepts and start["status"] not in {204, 206, 304} and _LEAST_BYTES <= size <= _MOST_BYTES

    async def close(self, start: Message, body: bytes) -> None:
        """Send the whole of it, packed."""
        headers = MutableHeaders(scope=start)
        if self.path.startswith(_STATIC):
            packed = await run_in_threadpool(_packed_for_good, body)
        elif len(body) <= _AT_ONCE_BYTES:
            packed = gzip.compress(body, _LEVEL, mtime=0)
        else:
            packed = await run_in_threadpool(gzip.compress, body, _LEVEL, mtime=0)
        headers["Content-Encoding"], headers["Content-Length"] = "gzip", str(len(packed))
        # The tag and the offer of parts are those of the unpacked answer.
        for name in ("etag", "accept-ranges"):
            if name in headers:
                del headers[name]
        await self.send(start)
        await self.send({"type": "http.response.body", "body": packed})


@lru_cache(maxsize=128)
def _packed_for_good(body: bytes) -> bytes:
    """A static file, packed once; it is known by what it holds."""
    return gzip.compress(body, _LEVEL_FOR_GOOD, mtime=0)
