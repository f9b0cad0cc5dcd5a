"""A client of the whole application, without a network; and one whose model processes run."""

from collections.abc import AsyncIterator

import pytest
from httpx import ASGITransport, AsyncClient

from server.app import create_app
from server.settings import Settings

SETTINGS = Settings(drawing_date="2026-02-03", kernel_workers=1)


@pytest.fixture(scope="session")
def anyio_backend() -> str:
    """The loop that the server runs on."""
    return "asyncio"


@pytest.fixture(scope="session")
async def client() -> AsyncIterator[AsyncClient]:
    """The application as a browser meets it, its model processes not started: whatever needs them fails."""
    app = create_app(SETTINGS)
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test") as asking:
        yield asking


@pytest.fixture(scope="session")
async def client_with_models() -> AsyncIterator[AsyncClient]:
    """The application with its model processes."""
    app = create_app(SETTINGS)
    transport = ASGITransport(app=app)
    async with (
        app.router.lifespan_context(app),
        AsyncClient(transport=transport, base_url="http://pads.test") as asking,
    ):
        yield asking
