"""A server that is asked to stop finishes what it has begun, takes nothing new, and ends."""

import json
import signal
import socket
import time

import pytest

from tests.documents import van
from tests.server.test_start import answer_of, started


def line_to(where: str) -> socket.socket:
    """A connection of our own."""
    host, _, port = where.removeprefix("http://").partition(":")
    return socket.create_connection((host, int(port)), timeout=60)


def until_nothing_new_is_taken(where: str) -> None:
    """A busy machine takes its time to pass a signal on."""
    until = time.monotonic() + 60
    while time.monotonic() < until:
        try:
            line_to(where).close()
        except ConnectionError:
            return
        time.sleep(0.05)
    raise AssertionError("a new connection is taken after the signal")


@pytest.mark.parametrize("asked", [signal.SIGTERM, signal.SIGINT])
def test_what_was_begun_before_the_signal_is_answered_and_nothing_new_is_taken(asked: signal.Signals) -> None:
    """Oracle: a request of which half has come when the signal does; the other half comes after it."""
    body = json.dumps(van()).encode()
    head = (
        "POST /api/pad HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nExpect: 100-continue\r\n"
        f"Content-Length: {len(body)}\r\n\r\n"
    )
    with started("--port", "0", SEAMREST_KERNEL_WORKERS="1") as (process, where, _example):
        assert answer_of(f"{where}/healthz").status_code == 200
        with line_to(where) as line:
            line.sendall(head.encode() + body[:50])
            # The server asks for the rest once it has begun with the request (RFC 9110, 10.1.1).
            assert line.recv(65536) == b"HTTP/1.1 100 Continue\r\n\r\n"
            process.send_signal(asked)
            until_nothing_new_is_taken(where)
            assert process.poll() is None
            line.sendall(body[50:])
            come = b""
            while part := line.recv(65536):
                come += part
        process.communicate(timeout=60)
    assert come.startswith(b"HTTP/1.1 200")
    assert (
        json.loads(come.partition(b"\r\n\r\n")[2])["measurements"]["jack"]["cup_bore_mm"]
        == van()["jack"]["cup_bore_mm"]
    )
    assert process.returncode in {0, -asked}
