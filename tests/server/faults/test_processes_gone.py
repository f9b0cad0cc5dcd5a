"""A model process that crashes, hangs or eats memory, as somebody sees it who asks for a file: words, and soon a file."""

import asyncio
import time
from collections.abc import AsyncIterator

import pytest
from fastapi import FastAPI
from httpx import ASGITransport, AsyncClient, Response

from server.app import create_app
from server.settings import Settings
from server.workers import KernelPool
from tests.documents import van
from tests.server.asking import address, problem
from tests.server.misbehaving import misbehave

pytestmark = pytest.mark.anyio
TRIES = 3


@pytest.fixture(scope="module")
async def app() -> AsyncIterator[FastAPI]:
    """An application whose one model process does what the title of a design says."""
    made = create_app(Settings(database=":memory:", model_cache_folder="none", kernel_workers=1))
    made.state.kernel = KernelPool(workers=1, build=misbehave, timeout_s=0.7, memory_mb=256)
    async with made.router.lifespan_context(made):
        yield made


@pytest.fixture(scope="module")
async def asking(app: FastAPI) -> AsyncIterator[AsyncClient]:
    async with AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test", timeout=60) as client:
        # The first process takes its time to come up; how long the next one takes is what is looked at here.
        await model(client, "first")
        yield client


async def model(client: AsyncClient, title: str) -> Response:
    return await client.get(address(van(title=title), ending="step"))


@pytest.mark.parametrize("deed", ["crash", "hang", "hunger", "raise"])
async def test_a_process_that_goes_wrong_is_said_in_words_and_the_next_model_is_there_in_a_second(
    asking: AsyncClient, deed: str
) -> None:
    """Oracle: the clock; the quickest of three tries, since the machine may be busy with other work."""
    times = []
    for number in range(TRIES):
        answer = await model(asking, deed)
        body = await problem(answer, status=503, kind="busy")
        assert int(answer.headers["retry-after"]) > 0
        assert len(body["detail"].split()) > 5
        began = time.monotonic()
        assert (await model(asking, f"good {number}")).status_code == 200
        times.append(time.monotonic() - began)
    assert min(times) < 1


async def test_pages_are_answered_while_a_model_hangs(asking: AsyncClient) -> None:
    """Oracle: the page is whole before the hang is over."""
    hang = asyncio.create_task(model(asking, "hang"))
    await asyncio.sleep(0.05)
    page = await asking.get(address(van(), ending="json"))
    assert (page.status_code, hang.done()) == (200, False)
    assert (await hang).status_code == 503
