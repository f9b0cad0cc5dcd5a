"""How much one client may ask for in a minute, and how long it may take to send a body.

Counts are kept in memory, for each server process by itself: several processes behind one address give several times as much.
"""

import asyncio
import time
from collections import OrderedDict
from collections.abc import Callable
from dataclasses import replace
from ipaddress import IPv6Address, IPv6Network, ip_address
from math import ceil

from starlette.datastructures import Headers
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from geometry.model_label import MODEL_FORMATS
from server.problems import KINDS, AnsweredError, ProblemKind, problem_response
from server.settings import Settings

TOO_MANY = ProblemKind(
    "too-many-requests",
    429,
    "Too many requests",
    "More was asked for from this address within a minute than one client may. The header Retry-After says when to ask again.",
    60,
)
TOO_SLOW = ProblemKind("too-slow", 408, "The request did not come in time", "The body was not sent within its time.")
KINDS.update({kind.name: kind for kind in (TOO_MANY, TOO_SLOW)})

_WINDOW_S = 60.0
_MOST_CLIENTS = 20_000
"""Clients that are remembered; the one longest unseen is forgotten first, so that many addresses cannot fill the memory."""
_MODEL_ENDINGS = tuple(f".{ending}" for ending in (*MODEL_FORMATS, "zip"))
_UNCOUNTED = ("/static/", "/healthz")
_READS = {"GET", "HEAD", "OPTIONS"}
_NETWORK_BITS = 64
"""An IPv6 customer has a whole network of this size, so that counting single addresses would count nothing (RFC 6177)."""


class Allowance:
    """So many a minute for each client: all at once or spread, in the way of a leaking bucket."""

    def __init__(self, per_minute: int, *, clock: Callable[[], float] = time.monotonic) -> None:
        self._per_minute, self._clock = per_minute, clock
        # When each client's bucket will be empty; a clock of the wall could jump, this one cannot.
        self._empty_at: OrderedDict[str, float] = OrderedDict()

    def wait_s(self, client: str) -> int:
        """0 where the client may ask, which is then counted; else in how many seconds it may."""
        if not self._per_minute:
            return 0
        now = self._clock()
        empty_at = max(self._empty_at.get(client, now), now) + _WINDOW_S / self._per_minute
        # A hair more than the window is dust of the additions, not a request too many.
        over_s = empty_at - now - _WINDOW_S
        if over_s > 1e-6:
            return max(1, ceil(over_s))
        self._empty_at[client] = empty_at
        self._empty_at.move_to_end(client)
        if len(self._empty_at) > _MOST_CLIENTS:
            self._empty_at.popitem(last=False)
        return 0


class RateLimits:
    """Answers 429 where a client asks for too much: of anything, of models, or of what is kept."""

    def __init__(self, app: ASGIApp, settings: Settings, clock: Callable[[], float] = time.monotonic) -> None:
        self.app, self._proxies = app, settings.trusted_proxies
        self._all = Allowance(settings.client_requests_per_minute, clock=clock)
        self._models = Allowance(settings.client_models_per_minute, clock=clock)
        self._changes = Allowance(settings.client_changes_per_minute, clock=clock)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Count the request, and pass it on where there is room for it."""
        wait_s = self._wait_s(scope) if scope["type"] == "http" else 0
        if wait_s:
            kind = replace(TOO_MANY, retry_after_s=wait_s)
            await problem_response(scope, kind, f"Ask again in {wait_s} s. {kind.meaning}")(scope, receive, send)
            return
        await self.app(scope, receive, send)

    def _wait_s(self, scope: Scope) -> int:
        path: str = scope["path"]
        if path.startswith(_UNCOUNTED):
            return 0
        client = client_of(scope, proxies=self._proxies)
        asked = [self._all]
        if path.endswith(_MODEL_ENDINGS):
            asked.append(self._models)
        if scope["method"] not in _READS and not path.startswith("/api/"):
            asked.append(self._changes)
        return next((wait for allowance in asked if (wait := allowance.wait_s(client))), 0)


def client_of(scope: Scope, *, proxies: int) -> str:
    """Who is asking, as far as one can know: the peer, or whom the outermost of ``proxies`` trusted ones saw.

    Each proxy adds to the end of ``X-Forwarded-For`` the address that it was asked from; whatever stands before those was
    written by the client itself, who may write anything.
    """
    peer = scope["client"][0] if scope.get("client") else ""
    if proxies:
        said = ",".join(Headers(scope=scope).getlist("x-forwarded-for")).split(",")
        seen = _network(said[-proxies].strip()) if len(said) >= proxies else ""
        if seen:
            return seen
    return _network(peer) or peer


def _network(text: str) -> str:
    """The address, or the network of an IPv6 address, that a text names; empty where it names none."""
    bare = text[1:].partition("]")[0] if text.startswith("[") else text
    # Some proxies add the port.
    bare = bare.partition(":")[0] if bare.count(":") == 1 else bare
    try:
        found = ip_address(bare.partition("%")[0])
    except ValueError:
        return ""
    if isinstance(found, IPv6Address):
        if found.ipv4_mapped is None:
            return str(IPv6Network((int(found), _NETWORK_BITS), strict=False))
        found = found.ipv4_mapped
    return str(found)


class BodyTime:
    """Gives a body so many seconds to arrive; one that is dripped in holds a place for no longer than that."""

    def __init__(self, app: ASGIApp, seconds: float) -> None:
        self.app, self._seconds = app, seconds

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, its body timed."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        until, is_whole = time.monotonic() + self._seconds, False

        async def timed() -> Message:
            nonlocal is_whole
            if is_whole:
                # What is waited for now is the end of the connection.
                return await receive()
            try:
                async with asyncio.timeout(max(0.0, until - time.monotonic())):
                    message = await receive()
            except TimeoutError:
                raise AnsweredError(TOO_SLOW, f"The body did not come within {self._seconds:g} s.") from None
            is_whole = not message.get("more_body", False)
            return message

        await self.app(scope, timed, send)
