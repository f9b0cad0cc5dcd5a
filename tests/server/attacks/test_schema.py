"""Requests made from the application's own description, and from what contradicts it: no answer is an error of ours."""

import asyncio
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import pytest
import schemathesis
from anyio.from_thread import BlockingPortal, start_blocking_portal
from fastapi import FastAPI
from hypothesis import HealthCheck, Phase, given, note, seed, settings
from hypothesis import strategies as st
from schemathesis import Case, GenerationMode
from schemathesis.core.result import Ok
from starlette.types import Message, Receive, Scope, Send

from server.app import create_app
from server.links import samples, typed_of_document
from server.settings import Settings

# One client sends everything, and waits for whatever is made: a full line and a used-up share are no faults.
_UNLIMITED: dict[str, Any] = {
    "client_requests_per_minute": 0,
    "client_models_per_minute": 0,
    "client_changes_per_minute": 0,
    "kernel_line": 1000,
    "kernel_timeout_s": 300,
    "drawing_timeout_s": 300,
}
_EXAMPLES = [typed_of_document(sample.document) for sample in samples()]


@dataclass(frozen=True, slots=True)
class _Served:
    """The application, and the one loop that it runs on."""

    app: FastAPI
    portal: BlockingPortal


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[_Served]:
    """The application with its processes, started once."""
    file = str(tmp_path_factory.mktemp("kept") / "designs.sqlite3")
    made = create_app(Settings(database=file, model_cache_folder="none", kernel_workers=2, **_UNLIMITED))
    with start_blocking_portal() as portal, portal.wrap_async_context_manager(made.router.lifespan_context(made)):
        yield _Served(made, portal)


async def _body_of(receive: Receive) -> bytes:
    body = b""
    while True:
        message = await receive()
        body += bytes(message.get("body", b""))
        if not message.get("more_body"):
            return body


async def _answered(app: FastAPI, scope: Scope, body: bytes) -> list[Message]:
    """What the application sends back to one request."""
    sent: list[Message] = []
    asked = iter([{"type": "http.request", "body": body, "more_body": False}])

    async def receive() -> Message:
        for message in asked:
            return message
        # The client stays until it has its answer.
        return await asyncio.Future()

    async def send_back(message: Message) -> None:
        sent.append(message)

    await app(scope, receive, send_back)
    return sent


def _operations(served: _Served) -> list[Any]:
    async def on_its_own_loop(scope: Scope, receive: Receive, send: Send) -> None:
        """The client has loops of its own, which end before the drawing that follows a save; and it would stop the processes."""
        if scope["type"] == "http":
            answering = served.portal.start_task_soon(_answered, served.app, scope, await _body_of(receive))
            for message in await asyncio.wrap_future(answering):
                await send(message)
            return
        while (await receive())["type"] == "lifespan.startup":
            await send({"type": "lifespan.startup.complete"})
        await send({"type": "lifespan.shutdown.complete"})

    schema = schemathesis.openapi.from_asgi("/openapi.json", on_its_own_loop)
    found = list(schema.get_all_operations())
    assert all(isinstance(operation, Ok) for operation in found)
    return [operation.ok() for operation in found if isinstance(operation, Ok)]


@st.composite
def _cases(draw: st.DrawFn, operation: Any) -> Case[Any]:
    """What the description allows or forbids; where an address holds a whole design, often an example with changes."""
    mode = draw(st.sampled_from([GenerationMode.POSITIVE, GenerationMode.NEGATIVE]))
    try:
        case: Case[Any] = draw(operation.as_strategy(generation_mode=mode))
    except schemathesis.errors.SchemathesisError:
        # Nothing contradicts the description of an address that takes nothing.
        case = draw(operation.as_strategy(generation_mode=GenerationMode.POSITIVE))
    asked = dict(case.query or {})
    if "jack.cup_bore_mm" in operation.query and draw(st.booleans()):
        changed = draw(st.sets(st.sampled_from(sorted(asked)), max_size=3)) if asked else set()
        case.query = draw(st.sampled_from(_EXAMPLES)) | {key: asked[key] for key in changed}
    return case


def _asked(operation: Any, statuses: Counter[int], *, most: int, round_: int) -> None:
    """Send so many requests to one address."""

    @seed(round_)
    @settings(
        max_examples=most,
        deadline=None,
        database=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    @given(_cases(operation))
    def ask(case: Case[Any]) -> None:
        # However busy the machine is: to be slow is no error here.
        answer = case.call(timeout=600)
        statuses[answer.status_code] += 1
        note(f"{case.formatted_path} {answer.status_code} {answer.content[:300]!r}")
        assert answer.status_code < 500

    ask()


# Threads of the application draw from chance while a case is made; hypothesis takes that for the case's own doing.
@pytest.mark.filterwarnings("ignore:Do not use the `random` module inside strategies")
@pytest.mark.parametrize("requests", [pytest.param(300, id="300"), pytest.param(10_000, marks=pytest.mark.full)])
def test_no_request_that_the_description_allows_or_forbids_is_an_error_of_ours(served: _Served, requests: int) -> None:
    """Oracle: every status is below 500; some designs are made, and some requests are refused for what they ask."""
    operations, statuses = _operations(served), Counter[int]()
    while statuses.total() < requests:
        before = statuses.total()
        for operation in operations:
            _asked(operation, statuses, most=-(-(requests - before) // len(operations)), round_=before)
        # Some addresses take so little that all there is to ask is soon asked.
        assert statuses.total() > before
    print(dict(statuses))
    assert {200, 404, 422} <= set(statuses)
    assert statuses[200] > requests // 30
