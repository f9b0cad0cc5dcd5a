"""Both databases for every test that keeps something, and applications on them."""

from collections.abc import AsyncIterator, Iterable, Iterator
from contextlib import ExitStack, asynccontextmanager, contextmanager
from itertools import count
from pathlib import Path
from typing import Any

import pytest
from fastapi import FastAPI
from httpx import ASGITransport, AsyncClient, Request, Response

from geometry.design import Design
from geometry.drawing.facts import SheetFacts
from geometry.pad import Pad
from geometry.standing import PartStanding
from server.app import create_app
from server.drawn import drawers
from server.saved_drawing import LaterDrawing
from server.settings import Settings
from server.store.database import Database
from server.workers import KernelPool
from tests.server.saving import postgres

_numbers = count(1)


@pytest.fixture(scope="session")
def postgres_folder() -> Iterator[str]:
    with postgres.running() as folder:
        yield folder


@pytest.fixture(autouse=True)
def drawn_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """The same design is drawn once for all tests: each drawing takes a second, and equal ones are equal byte by byte."""
    monkeypatch.setattr(drawers, "drawings", _remembered)
    monkeypatch.setattr(drawers, "sheet", _remembered_sheet)


_drawings, _sheet = drawers.drawings, drawers.sheet
_sheets: dict[Any, bytes] = {}
_known: dict[Any, dict[str, bytes]] = {}


async def _remembered(pad: Pad, facts: SheetFacts, endings: Iterable[str]) -> dict[str, bytes]:
    key = (pad, facts, tuple(endings))
    if key not in _known:
        _known[key] = await _drawings(pad, facts, key[2])
    return _known[key]


async def _remembered_sheet(
    name: str, design: Design, facts: SheetFacts, *, failed: PartStanding | None = None
) -> bytes:
    key = (name, design.measurements.model_dump_json(exclude_unset=True), facts, str(failed))
    if key not in _sheets:
        _sheets[key] = await _sheet(name, design, facts, failed=failed)
    return _sheets[key]


@pytest.fixture(params=["sqlite", "postgresql"])
def setting(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[str]:
    """The setting of an empty database, of each kind in turn."""
    with ExitStack() as stack:
        if request.param == "sqlite":
            yield str(tmp_path / "kept" / "designs.sqlite3")
        else:
            folder = request.getfixturevalue("postgres_folder")
            yield stack.enter_context(postgres.fresh(folder, f"test{next(_numbers)}"))


@pytest.fixture
def other_setting(request: pytest.FixtureRequest, setting: str, tmp_path: Path) -> Iterator[str]:
    """The setting of an empty database of the other kind."""
    if setting.startswith("postgresql"):
        yield str(tmp_path / "other" / "designs.sqlite3")
    else:
        with postgres.fresh(request.getfixturevalue("postgres_folder"), f"test{next(_numbers)}") as other:
            yield other


@pytest.fixture
def database(setting: str) -> Iterator[Database]:
    opened = Database(setting)
    yield opened
    opened.close()


@pytest.fixture
async def asking(setting: str) -> AsyncIterator[AsyncClient]:
    """A client of an application on the database."""
    async with client_of(setting) as client:
        yield client


@asynccontextmanager
async def client_of(
    setting: str, *, base_address: str = "", kernel: KernelPool | None = None
) -> AsyncIterator[AsyncClient]:
    """A client of an application of its own on a database, as if another process ran it; it builds models with ``kernel``."""
    chosen = Settings(database=setting, drawing_date="2026-02-03", kernel_workers=1, base_address=base_address)
    app = create_app(chosen)
    app.state.kernel = kernel or app.state.kernel
    async with AsyncClient(transport=_Drawn(app), base_url="http://pads.test") as client:
        yield client
    app.state.store.close()


class _Drawn(ASGITransport):
    """What is drawn after an answer is there before the next request, as it mostly is where people ask."""

    def __init__(self, app: FastAPI) -> None:
        super().__init__(app=app)
        self._later: LaterDrawing = app.state.later

    async def handle_async_request(self, request: Request) -> Response:
        """The answer, once everything that follows it is done."""
        answer = await super().handle_async_request(request)
        await self._later.settled()
        return answer


@contextmanager
def opened(setting: str) -> Iterator[Database]:
    """The database behind the applications' backs."""
    database = Database(setting)
    try:
        yield database
    finally:
        database.close()
