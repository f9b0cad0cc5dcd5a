"""How large a body may be: small everywhere, larger where a file of saved designs is taken in."""

from collections.abc import Mapping

from starlette.types import ASGIApp, Receive, Scope, Send

from server.security import BodyLimit


class BodyLimits:
    """Refuses bodies that are too large for the address that they are sent to."""

    def __init__(self, app: ASGIApp, most_bytes: int, larger: Mapping[str, int]) -> None:
        self._usual = BodyLimit(app, most_bytes)
        self._larger = {path: BodyLimit(app, most) for path, most in larger.items()}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, its body counted."""
        limit = self._larger.get(scope.get("path", ""), self._usual)
        await limit(scope, receive, send)
