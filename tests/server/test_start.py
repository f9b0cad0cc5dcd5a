"""``python -m server``: it starts, says where it is, answers, and stops when asked."""

import os
import re
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import httpx
import pytest

from server.links import ready_sample

ROOT = Path(__file__).resolve().parents[2]


@contextmanager
def started(*arguments: str, **environment: str) -> Iterator[tuple["subprocess.Popen[str]", str, str]]:
    """A server in a process of its own: the process, its address and the example that it offers.

    Its log goes where pytest's own does: a pipe that nobody reads is full after some thousand lines, and the server then waits.
    """
    command = [sys.executable, "-m", "server", *arguments]
    clean = {name: value for name, value in os.environ.items() if not name.startswith("SEAMREST_")}
    process = subprocess.Popen(command, cwd=ROOT, env=clean | environment, stdout=subprocess.PIPE, text=True)
    try:
        assert process.stdout is not None
        first, second = process.stdout.readline(), process.stdout.readline()
        yield process, first.split(" is at ")[1].strip(), second.split("example: ")[1].strip()
    finally:
        if process.poll() is None:
            process.kill()
        process.communicate()


def answer_of(address: str) -> httpx.Response:
    """The answer of a server that may still be starting."""
    for _ in range(100):
        try:
            return httpx.get(address, timeout=60, follow_redirects=True)
        except httpx.ConnectError:
            time.sleep(0.1)
    raise AssertionError(f"nothing answers at {address}")


@pytest.mark.parametrize("asked", [signal.SIGTERM, signal.SIGINT])
def test_it_says_its_address_answers_there_and_stops_when_asked(
    asked: signal.Signals, capfd: pytest.CaptureFixture[str]
) -> None:
    with started("--port", "0", SEAMREST_KERNEL_WORKERS="1") as (process, address, example):
        assert re.fullmatch(r"http://127\.0\.0\.1:\d+", address)
        assert example == address + ready_sample().address
        assert answer_of(f"{address}/healthz").status_code == 200
        answer = answer_of(example.replace("/pad?", "/pad.json?"))
        assert answer.json()["title"] == ready_sample().title
        assert "server" not in answer.headers
        assert answer_of(example.replace("/pad?", "/pad.dxf?")).status_code == 200
        began = time.monotonic()
        process.send_signal(asked)
        process.wait(timeout=60)
        took_s = time.monotonic() - began
    log = capfd.readouterr().err
    assert took_s < 30, "it waits for something on a machine that may be busy, but not for half a minute"
    assert process.returncode in {0, -asked}
    assert re.findall(r"seamrest.access (.*) [\d.]+ ms", log) == [
        "GET /healthz 200",
        "GET /pad.json 200",
        "GET /pad.dxf 200",
    ]
    assert "ezdxf" not in log
    assert "cup_bore" not in log
    assert "Traceback" not in log


def test_an_answer_does_not_wait_for_the_network_to_say_that_it_has_the_first_part() -> None:
    """Oracle: on one connection the quickest of ten small answers takes less than the 40 ms of a delayed acknowledgement."""
    with (
        started("--port", "0", SEAMREST_KERNEL_WORKERS="1") as (_process, address, _example),
        httpx.Client(base_url=address) as asking,
    ):
        asking.get("/healthz")
        times = []
        for _ in range(10):
            began = time.perf_counter()
            assert asking.get("/problems/busy").status_code == 200
            times.append(time.perf_counter() - began)
    assert min(times) < 0.035


def test_a_wrong_setting_stops_it_at_once_with_the_name_of_the_setting() -> None:
    command = [sys.executable, "-m", "server"]
    wrong = os.environ | {"SEAMREST_PORT": "many"}
    done = subprocess.run(command, cwd=ROOT, env=wrong, capture_output=True, text=True, check=False)
    assert done.returncode == 2
    assert done.stderr.strip() == "SEAMREST_PORT is “many”; it must be a whole number."


def test_a_port_in_use_is_said_in_words() -> None:
    with started("--port", "0") as (_, address, _example):
        port = address.rpartition(":")[2]
        command = [sys.executable, "-m", "server", "--port", port]
        done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert done.stderr.startswith(f"Cannot listen on 127.0.0.1 port {port}: ")


def test_a_database_that_is_none_is_said_in_words(tmp_path: Path) -> None:
    (tmp_path / "text.sqlite3").write_text("this is no database, only a text that is long enough to be looked at" * 20)
    command = [sys.executable, "-m", "server", "--port", "0"]
    wrong = os.environ | {"SEAMREST_DATABASE": str(tmp_path / "text.sqlite3")}
    done = subprocess.run(command, cwd=ROOT, env=wrong, capture_output=True, text=True, check=False, timeout=60)
    assert done.returncode == 1
    assert done.stderr.strip() == (
        "What is saved cannot be reached at the moment. Nothing was changed; try again in a minute."
    )
