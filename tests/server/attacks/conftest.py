"""An application with a database of its own for a whole file of attacks."""

from collections.abc import AsyncIterator
from typing import Any

import pytest
from fastapi import FastAPI
from httpx import ASGITransport, AsyncClient

from server.app import create_app
from server.settings import Settings


@pytest.fixture(scope="module")
def app(tmp_path_factory: pytest.TempPathFactory) -> FastAPI:
    """The application; its model processes are not started."""
    file = tmp_path_factory.mktemp("kept") / "designs.sqlite3"
    # Attackers have many addresses; how little one alone may ask for is tested by itself.
    unlimited: dict[str, Any] = {"client_requests_per_minute": 0, "client_changes_per_minute": 0}
    return create_app(Settings(database=str(file), drawing_date="2026-02-03", kernel_workers=1, **unlimited))


@pytest.fixture(scope="module")
async def asking(app: FastAPI) -> AsyncIterator[AsyncClient]:
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test") as client:
        yield client
    app.state.store.close()
