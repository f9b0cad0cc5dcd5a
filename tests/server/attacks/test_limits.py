"""One client's share: how much it may ask for in a minute, and how long it may take."""

import asyncio
import socket
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager
from typing import Any

import pytest
from httpx import ASGITransport, AsyncClient
from hypothesis import given
from hypothesis import strategies as st

from server.app import create_app
from server.limits import Allowance, client_of
from server.settings import Settings
from tests.documents import van
from tests.server.asking import address, problem
from tests.server.test_start import answer_of, started

pytestmark = pytest.mark.anyio


@asynccontextmanager
async def asking(peer: str = "192.0.2.1", **settings: Any) -> AsyncIterator[AsyncClient]:
    app = create_app(Settings(kernel_workers=1, database=":memory:", **settings))
    transport = ASGITransport(app=app, client=(peer, 1))
    async with AsyncClient(transport=transport, base_url="http://pads.test") as client:
        yield client


def at(moment: list[float]) -> Callable[[], float]:
    """A clock that stands where it is put."""
    return lambda: moment[0]


def test_as_many_as_allowed_pass_at_once_and_one_more_waits_its_share() -> None:
    """Oracle: 60 a minute are one a second."""
    moment = [1000.0]
    allowance = Allowance(60, clock=at(moment))
    assert [allowance.wait_s("a") for _ in range(62)] == [0] * 60 + [1, 1]
    moment[0] += 1
    assert [allowance.wait_s("a") for _ in range(2)] == [0, 1]


@given(st.integers(1, 200), st.lists(st.floats(0, 90), max_size=300))
def test_no_pattern_of_asking_gets_more_than_twice_the_allowance_in_a_minute(most: int, waits: list[float]) -> None:
    """Oracle: counting; a full burst and a minute's refill are the most that a bucket can give in a minute."""
    moment = [0.0]
    allowance, taken = Allowance(most, clock=at(moment)), []
    for wait in waits:
        moment[0] += wait / most
        taken += [moment[0]] if allowance.wait_s("a") == 0 else []
    for began in taken:
        assert sum(began <= t < began + 60 for t in taken) <= 2 * most + 1


def test_after_the_wait_that_is_said_the_client_may_ask_again() -> None:
    moment = [5.0]
    allowance = Allowance(7, clock=at(moment))
    for _ in range(50):
        wait_s = allowance.wait_s("a")
        moment[0] += wait_s
        assert not wait_s or allowance.wait_s("a") == 0


def test_clients_do_not_share_and_many_of_them_do_not_fill_the_memory() -> None:
    allowance = Allowance(1, clock=at([0.0]))
    assert [allowance.wait_s(str(n)) for n in range(30_000)] == [0] * 30_000
    assert len(allowance._empty_at) <= 20_000
    assert allowance.wait_s("29999") > 0


async def test_a_client_that_asks_too_much_is_told_when_to_come_again() -> None:
    async with asking(client_requests_per_minute=3) as client:
        answers = [await client.get("/materials") for _ in range(4)]
        assert [answer.status_code for answer in answers] == [200, 200, 200, 429]
        body = await problem(answers[3], status=429, kind="too-many-requests")
        assert (body["detail"][:16], answers[3].headers["retry-after"]) == ("Ask again in 20 ", "20")
        assert "content-security-policy" in answers[3].headers
        # Whether the server lives may always be asked, and the parts of a page that was let through always come.
        assert (await client.get("/healthz")).status_code == 200
        assert (await client.get("/static/nothing.css")).status_code == 404


async def test_models_and_what_is_kept_have_shares_of_their_own() -> None:
    async with asking(client_models_per_minute=1, client_changes_per_minute=1) as client:
        for path in ("/pad.step", "/api/pad.stl", "/saved/x/A.3mf", "/pad.zip"):
            answers = [await client.get(path)]
        assert answers[-1].status_code == 429
        assert [(await client.post("/saved", data={})).status_code for _ in range(2)] == [422, 429]
        assert (await client.post("/api/pad", json=van())).status_code == 200
        assert (await client.get(address(ending="json"))).status_code == 200


async def test_the_kinds_of_answer_are_explained_at_their_addresses() -> None:
    async with asking() as client:
        for name, status in (("too-many-requests", 429), ("too-slow", 408)):
            assert f"(status {status})" in (await client.get(f"/problems/{name}")).text


async def test_0_is_no_limit() -> None:
    async with asking(client_requests_per_minute=0) as client:
        assert {(await client.get("/problems/busy")).status_code for _ in range(50)} == {200}


def scope_of(peer: str, *forwarded: str) -> dict[str, Any]:
    headers = [(b"x-forwarded-for", text.encode()) for text in forwarded]
    return {"type": "http", "client": (peer, 1), "headers": headers}


@pytest.mark.parametrize(
    ("proxies", "forwarded", "client"),
    [
        (0, ["198.51.100.7"], "192.0.2.1"),
        (1, ["198.51.100.7"], "198.51.100.7"),
        (1, ["1.1.1.1, 198.51.100.7"], "198.51.100.7"),
        (1, ["1.1.1.1", "198.51.100.7"], "198.51.100.7"),
        (2, ["1.1.1.1, 198.51.100.7, 203.0.113.9"], "198.51.100.7"),
        (2, ["198.51.100.7"], "192.0.2.1"),
        (1, [], "192.0.2.1"),
        (1, ["nonsense"], "192.0.2.1"),
        (1, [""], "192.0.2.1"),
        (1, ["198.51.100.7:4711"], "198.51.100.7"),
        (1, ["[2001:db8::1]:4711"], "2001:db8::/64"),
        (1, ["2001:db8::1%eth0"], "2001:db8::/64"),
        (1, ["::ffff:198.51.100.7"], "198.51.100.7"),
    ],
)
def test_only_what_our_own_proxies_wrote_is_believed(proxies: int, forwarded: list[str], client: str) -> None:
    assert client_of(scope_of("192.0.2.1", *forwarded), proxies=proxies) == client


@given(st.integers(1, 3), st.text(st.characters(codec="latin-1"), max_size=60))
def test_nothing_that_a_client_writes_before_the_proxies_changes_who_it_is(proxies: int, lie: str) -> None:
    true = ", ".join(f"203.0.113.{n}" for n in range(proxies))
    scope = scope_of("192.0.2.1")
    scope["headers"] = [(b"x-forwarded-for", f"{lie}, {true}".encode("latin-1"))]
    assert client_of(scope, proxies=proxies) == "203.0.113.0"


async def test_behind_a_proxy_each_client_has_its_own_share_and_cannot_get_another() -> None:
    async with asking(client_requests_per_minute=1, trusted_proxies=1) as client:

        async def status(forwarded: str) -> int:
            return (await client.get("/problems/busy", headers={"x-forwarded-for": forwarded})).status_code

        asked = ["198.51.100.1", "198.51.100.2", "198.51.100.1", "9.9.9.9, 198.51.100.1"]
        assert [await status(one) for one in asked] == [200, 200, 429, 429]


async def test_addresses_of_one_network_of_the_new_kind_count_as_one() -> None:
    async with asking(client_requests_per_minute=1, trusted_proxies=1) as client:
        asked = ["2001:db8:0:1::1", "2001:db8:0:1:ffff::2", "2001:db8:0:2::1"]
        answers = [await client.get("/problems/busy", headers={"x-forwarded-for": one}) for one in asked]
        assert [answer.status_code for answer in answers] == [200, 429, 200]


async def test_a_body_that_is_dripped_in_is_given_up() -> None:
    async def dripping() -> AsyncIterator[bytes]:
        while True:
            yield b" "
            await asyncio.sleep(0.05)

    async with asking(body_timeout_s=0.3) as client:
        answer = await client.post("/api/pad", content=dripping(), headers={"content-type": "application/json"})
        await problem(answer, status=408, kind="too-slow")


def test_a_body_that_never_comes_frees_its_connection() -> None:
    """Oracle: a socket of our own that promises a body and sends half of it; the server answers and hangs up."""
    with started("--port", "0", SEAMREST_BODY_TIMEOUT_S="0.5", SEAMREST_KERNEL_WORKERS="1") as (_, where, _example):
        assert answer_of(f"{where}/healthz").status_code == 200
        host, _, port = where.removeprefix("http://").partition(":")
        with socket.create_connection((host, int(port)), timeout=60) as line:
            line.sendall(
                b"POST /api/pad HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{"
            )
            come = b""
            while part := line.recv(4096):
                come += part
        assert come.startswith(b"HTTP/1.1 408")
        assert answer_of(f"{where}/healthz").status_code == 200
