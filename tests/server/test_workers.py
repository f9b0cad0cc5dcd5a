"""The pool of kernel processes: files come out, and crashes, hangs, hunger and a full line cost one request each."""

import asyncio
import os
import subprocess
import sys
import time
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from functools import partial
from pathlib import Path
from typing import Any

import pytest

from geometry.errors import BadMeasurementsError, ModelError
from geometry.model_label import ModelLabel
from server import workers
from server.processes import BusyError, ProcessDiedError, ProcessTimeoutError
from server.workers import KernelPool
from tests.geometry.pads import LABEL, ORDINARY
from tests.server.misbehaving import counted, misbehave

pytestmark = pytest.mark.anyio


def titled(title: str) -> ModelLabel:
    """A label that asks for a certain misbehaviour."""
    return ModelLabel(design_id="k3f9", title=title, revision="", material="", fit_to_make=True, engine_version="0.1.0")


@asynccontextmanager
async def running(**options: Any) -> AsyncIterator[KernelPool]:
    """A started pool of one misbehaving worker, unless told otherwise."""
    pool = KernelPool(**{"workers": 1, "build": misbehave, "timeout_s": 5, "memory_mb": 256, **options})
    pool.start()
    try:
        yield pool
    finally:
        pool.stop()


async def ask(pool: KernelPool, title: str = "", *, web_mm: float = 22) -> bytes:
    """One answer of a misbehaving pool."""
    return await pool.model(ORDINARY.with_(web_mm=web_mm), titled(title), "step")


async def test_a_worker_builds_a_step_file() -> None:
    """The bytes of the file of ISO 10303-21."""
    async with running(build=workers.build_model, timeout_s=30, memory_mb=1024) as pool:
        assert (await pool.model(ORDINARY, LABEL, "step")).startswith(b"ISO-10303-21;")


async def recovery_s(pool: KernelPool, title: str) -> float:
    """The quickest of three times from an error's arrival to the next answer: the machine may be busy with other work."""
    times = []
    for _ in range(3):
        with pytest.raises((ProcessDiedError, ProcessTimeoutError)):
            await ask(pool, title)
        started = time.monotonic()
        await ask(pool)
        times.append(time.monotonic() - started)
    return min(times)


async def test_a_crash_costs_one_request_and_the_worker_is_back_in_a_second() -> None:
    """The process aborts as native code does; the next request is answered by another process."""
    async with running() as pool:
        before = await ask(pool)
        assert await recovery_s(pool, "crash") < 1
        assert before.split()[0] != (await ask(pool)).split()[0]


async def test_a_hang_is_ended_in_time_and_the_worker_is_back_in_a_second() -> None:
    """The job sleeps for a minute; half a second is allowed."""
    async with running(timeout_s=0.5) as pool:
        started = time.monotonic()
        with pytest.raises(ProcessTimeoutError, match=r"after 0\.5 s"):
            await ask(pool, "hang")
        assert time.monotonic() - started < 5
        assert await recovery_s(pool, "hang") < 1


async def test_hunger_for_memory_costs_one_request() -> None:
    """The job asks for 1 GB where 256 MB are allowed; the next one gets an answer."""
    async with running() as pool:
        with pytest.raises(ProcessDiedError, match="memory"):
            await ask(pool, "hunger")
        assert await ask(pool)


async def test_an_unforeseen_exception_replaces_the_process() -> None:
    """What the kernel's state is after it is unknown."""
    async with running() as pool:
        before = await ask(pool)
        with pytest.raises(ProcessDiedError, match="a class of the kernel's own"):
            await ask(pool, "raise")
        assert before != await ask(pool)


async def test_a_refusal_keeps_the_process() -> None:
    """A model error is an answer like any other, and its words arrive."""
    async with running() as pool:
        before = await ask(pool)
        with pytest.raises(ModelError, match="not this one"):
            await ask(pool, "refuse")
        assert before == await ask(pool)


async def test_a_process_that_died_at_rest_is_replaced_unnoticed() -> None:
    """Killed between two requests, as by a system short of memory."""
    async with running() as pool:
        pid = int((await ask(pool)).split()[0])
        os.kill(pid, 9)
        await asyncio.sleep(0.2)
        assert int((await ask(pool)).split()[0]) != pid


async def test_other_workers_go_on_while_one_hangs() -> None:
    """Two workers: five quick jobs are done before the hang is over."""
    async with running(workers=2, timeout_s=3) as pool:
        await asyncio.gather(ask(pool), ask(pool, web_mm=23))
        hang = asyncio.create_task(ask(pool, "hang"))
        await asyncio.gather(*(ask(pool, web_mm=22 + i) for i in range(5)))
        assert not hang.done()
        with pytest.raises(ProcessTimeoutError):
            await hang


async def test_a_full_line_says_so_at_once() -> None:
    """One at work, two in the line: the fourth is turned away, and the line is open again afterwards."""
    async with running(line=2, timeout_s=1) as pool:
        await ask(pool)
        waiting = [
            asyncio.create_task(ask(pool, title, web_mm=web)) for title, web in (("hang", 22), ("", 22), ("", 23))
        ]
        await asyncio.sleep(0.1)
        with pytest.raises(BusyError, match="3 models"):
            await ask(pool, web_mm=24)
        results = await asyncio.gather(*waiting, return_exceptions=True)
        assert [isinstance(result, bytes) for result in results] == [False, True, True]
        assert await ask(pool)


async def test_a_request_that_nobody_waits_for_leaves_the_line() -> None:
    """Cancelled before a worker took it: its place is free again."""
    async with running(line=1, timeout_s=1) as pool:
        await ask(pool)
        hang = asyncio.create_task(ask(pool, "hang"))
        await asyncio.sleep(0.1)
        waiting = asyncio.create_task(ask(pool))
        await asyncio.sleep(0.1)
        waiting.cancel()
        await asyncio.sleep(0.1)
        assert await ask(pool, web_mm=23)
        with pytest.raises(ProcessTimeoutError):
            await hang


async def test_what_several_ask_for_at_the_same_moment_is_built_once(tmp_path: Path) -> None:
    """Twenty equal requests and one other: each building appends a line to a file that the test reads."""
    tally = tmp_path / "built"
    async with running(build=partial(counted, str(tally)), workers=2) as pool:
        answers = await asyncio.gather(*(ask(pool) for _ in range(20)), ask(pool, web_mm=23))
    assert sorted(tally.read_text().split()) == ["22", "23"]
    assert len(set(answers[:20])) == 1


async def test_one_who_turns_away_does_not_take_the_file_from_the_others() -> None:
    """Of three who wait for the same file behind another, the first gives up."""
    async with running(timeout_s=1) as pool:
        hang = asyncio.create_task(ask(pool, "hang"))
        waiting = [asyncio.create_task(ask(pool)) for _ in range(3)]
        await asyncio.sleep(0.1)
        waiting[0].cancel()
        results = await asyncio.gather(*waiting, return_exceptions=True)
        assert [isinstance(result, bytes) for result in results] == [False, True, True]
        with pytest.raises(ProcessTimeoutError):
            await hang


async def test_a_failure_reaches_everyone_who_asked_and_is_not_remembered() -> None:
    async with running() as pool:
        failures = await asyncio.gather(*(ask(pool, "refuse") for _ in range(3)), return_exceptions=True)
        assert [str(failure) for failure in failures] == ["not this one"] * 3
        with pytest.raises(ModelError, match="not this one"):
            await ask(pool, "refuse")


async def test_each_request_gets_its_own_answer() -> None:
    """Thirty different pads at once over two workers."""
    async with running(workers=2) as pool:
        answers = await asyncio.gather(
            *(pool.model(ORDINARY.with_(web_mm=20 + i), titled(""), "step") for i in range(30))
        )
        assert [float(answer.split()[1]) for answer in answers] == [20 + i for i in range(30)]


async def test_an_impossible_pad_is_refused_before_the_line() -> None:
    """A pool that was never started can still refuse it."""
    with pytest.raises(BadMeasurementsError):
        await KernelPool().model(ORDINARY.with_(web_mm=1), LABEL, "step")


async def test_a_pool_that_is_not_running_says_so() -> None:
    """Before start and after stop."""
    pool = KernelPool(workers=1, build=misbehave)
    with pytest.raises(ModelError, match="not running"):
        await ask(pool)
    pool.start()
    pool.stop()
    with pytest.raises(ModelError, match="not running"):
        await ask(pool)


async def test_stopping_leaves_no_process_behind_even_while_one_hangs() -> None:
    """The worker's process is gone when stop returns."""
    pool = KernelPool(workers=1, build=misbehave)
    pool.start()
    pid = int((await ask(pool)).split()[0])
    hang = asyncio.create_task(ask(pool, "hang"))
    await asyncio.sleep(0.1)
    pool.stop()
    with pytest.raises(ProcessDiedError):
        await hang
    with pytest.raises(ProcessLookupError):
        os.kill(pid, 0)


_WEB_SIDE = """
import asyncio, sys
from server.workers import KernelPool
from tests.geometry.pads import LABEL, ORDINARY

async def main():
    pool = KernelPool(workers=1)
    pool.start()
    try:
        print(len(await pool.model(ORDINARY, LABEL, "step")))
    except Exception as error:
        print(type(error).__name__, error)
    pool.stop()
    print(sorted(name for name in sys.modules if name.split(".")[0] in ("OCP", "cadquery", "vtkmodules", "numpy")))

if __name__ == "__main__":
    asyncio.run(main())
"""


def web_side(tmp_path: Path, **environment: str) -> list[str]:
    """What a process prints that uses the pool as the web does."""
    script = tmp_path / "web.py"
    script.write_text(_WEB_SIDE)
    root = Path(workers.__file__).parent.parent
    path = os.pathsep.join([*environment.values(), str(root)])
    done = subprocess.run(
        [sys.executable, "-W", "error", str(script)],
        env=os.environ | {"PYTHONPATH": path},
        capture_output=True,
        text=True,
        check=True,
        timeout=60,
    )
    return done.stdout.splitlines()


def test_the_process_that_uses_the_pool_never_loads_the_kernel(tmp_path: Path) -> None:
    """A STEP file comes out, and neither the kernel nor what comes with it is among the loaded modules."""
    size, modules = web_side(tmp_path)
    assert int(size) > 10_000
    assert modules == "[]"


def test_a_missing_system_library_is_named_with_what_to_install(tmp_path: Path) -> None:
    """A stand-in for the kernel's bindings fails as they do on a bare system."""
    stand_in = tmp_path / "OCP"
    stand_in.mkdir()
    (stand_in / "__init__.py").write_text(
        "raise ImportError('libGL.so.1: cannot open shared object file: No such file or directory')"
    )
    answer, _ = web_side(tmp_path, first=str(tmp_path))
    assert answer.startswith("KernelMissingError ")
    assert "apt-get install libgl1" in answer
