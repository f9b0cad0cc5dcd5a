"""What every answer carries and every request must pass, as plain ASGI: headers, forged requests,
large bodies, a log that keeps secrets."""

import logging
import re
import time
from urllib.parse import unquote, urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from server.problems import FORGED, OURS, TOO_LARGE, AnsweredError, ProblemKind, problem_response

CONTENT_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; font-src 'self';"
    " form-action 'self'; frame-ancestors 'none'; base-uri 'none'"
)
HEADERS = {
    "Content-Security-Policy": CONTENT_POLICY,
    "X-Content-Type-Options": "nosniff",
    # With no-referrer, forms would send “Origin: null”, and the guard below could not tell our own from others.
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
}
"""On every answer, whatever it is."""
_SAFE_METHODS = {"GET", "HEAD", "OPTIONS"}
_SECRET = re.compile(r"[A-Za-z0-9_-]{20,}")
_log = logging.getLogger("seamrest.access")
_errors = logging.getLogger("seamrest.errors")


class AccessLog:
    """One line for each request: method, path, status and time; never a query or anything that could be a secret."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on and write its line afterwards."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        began, status = time.perf_counter(), 0

        async def watched(message: Message) -> None:
            nonlocal status
            status = message.get("status", status)
            await send(message)

        try:
            await self.app(scope, receive, watched)
        finally:
            taken_ms = 1000 * (time.perf_counter() - began)
            _log.info("%s %s %d %.1f ms", scope["method"], redacted(scope), status, taken_ms)


def redacted(scope: Scope) -> str:
    """The path as asked for, without its query; long unguessable parts are left out."""
    raw: bytes = scope.get("raw_path") or scope["path"].encode()
    path = raw.split(b"?")[0].decode("ascii", "backslashreplace")
    shown = path if path.startswith("/static/") else "/".join(map(_without_secret, path.split("/")))
    return re.sub(r"[^!-~…]", "?", shown)[:200]


def _without_secret(part: str) -> str:
    """A part of a path; one that could be a secret, however it is written, is left out."""
    return "…" if _SECRET.search(unquote(part)) else part


class SecurityHeaders:
    """Puts the headers on every answer, the answer to an unforeseen error included."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on; an error that nobody has answered becomes a problem with nothing of its inside."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        has_begun = False

        async def dressed(message: Message) -> None:
            nonlocal has_begun
            if message["type"] == "http.response.start":
                has_begun = True
                _dress(MutableHeaders(scope=message))
            await send(message)

        try:
            await self.app(scope, receive, dressed)
        except Exception:
            _errors.exception("%s %s failed", scope["method"], redacted(scope))
            if has_begun:
                raise
            await problem_response(scope, OURS, OURS.meaning)(scope, receive, dressed)


def _dress(headers: MutableHeaders) -> None:
    for name, value in HEADERS.items():
        headers[name] = value
    headers.setdefault("Cache-Control", "no-cache")
    if headers.get("content-type", "").startswith("text/html"):
        headers.add_vary_header("HX-Request")


class ForgeryGuard:
    """Refuses requests that change something and come from another site's page."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let through what reads, what our own pages send, and what no browser sends."""
        if scope["type"] == "http" and scope["method"] not in _SAFE_METHODS and is_foreign(Headers(scope=scope)):
            await _refuse(FORGED, scope, receive, send)
            return
        await self.app(scope, receive, send)


def is_foreign(headers: Headers) -> bool:
    """Whether a browser says that another site's page is asking; a client that says nothing is no browser."""
    site = headers.get("sec-fetch-site")
    if site is not None:
        return site not in {"same-origin", "none"}
    origin = headers.get("origin")
    if origin is None:
        return False
    try:
        return urlsplit(origin).netloc != headers.get("host", "")
    except ValueError:
        # What is no address is none of ours.
        return True


class BodyLimit:
    """Refuses bodies that are too large: by what they say of themselves, else as soon as too much has come.

    The framework's own limit answers in another shape, and from outside of everything that dresses an answer.
    """

    def __init__(self, app: ASGIApp, most_bytes: int) -> None:
        self.app, self.most_bytes = app, most_bytes

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, its body counted."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        said = Headers(scope=scope).get("content-length", "")
        if said.isdecimal() and int(said) > self.most_bytes:
            await _refuse(TOO_LARGE, scope, receive, send)
            return
        come = 0

        async def counted() -> Message:
            nonlocal come
            message = await receive()
            come += len(message.get("body", b""))
            if come > self.most_bytes:
                raise AnsweredError(TOO_LARGE, f"The body is larger than {self.most_bytes} bytes. {TOO_LARGE.meaning}")
            return message

        await self.app(scope, counted, send)


async def _refuse(kind: ProblemKind, scope: Scope, receive: Receive, send: Send) -> None:
    await problem_response(scope, kind, kind.meaning)(scope, receive, send)
