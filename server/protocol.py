"""What HTTP asks of every server and the framework leaves out."""

from starlette.types import ASGIApp, Message, Receive, Scope, Send


class HeadAsGet:
    """Answers HEAD with the status and the headers of GET, and without its body (RFC 9110, 9.3.2)."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on as GET, and leave the body out of the answer."""
        if scope["type"] != "http" or scope["method"] != "HEAD":
            await self.app(scope, receive, send)
            return

        async def without_body(message: Message) -> None:
            await send({**message, "body": b""} if message["type"] == "http.response.body" else message)

        await self.app({**scope, "method": "GET"}, receive, without_body)
