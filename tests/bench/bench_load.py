"""A server with many saved designs against one with few, and one that works for long: ``python -m tests.bench.bench_load``.

``python -m tests.bench.bench_load 10000`` takes another number than 100 000 designs for the large one. Both servers run
at the same time and are asked in turns, so that whatever else the machine does falls on both.
"""

import asyncio
import random
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Awaitable, Callable
from itertools import count
from pathlib import Path
from statistics import median, quantiles

import httpx

from tests.bench.bench_workers import memory_mb
from tests.bench.filling import client_of, fill, save_real_ones, serving
from tests.server.asking import address
from tests.server.saving.asking import inputs

FEW, MANY = 100, 100_000
ROUNDS, AT_ONCE = 30, 4
LONG = 10_000
GOAL = 1.2
Ask = Callable[[httpx.AsyncClient, str], Awaitable[httpx.Response]]
_numbers = count()


async def page(client: httpx.AsyncClient, secret: str) -> httpx.Response:
    """A saved design's page."""
    return await client.get(f"/saved/{secret}/A")


async def drawing(client: httpx.AsyncClient, secret: str) -> httpx.Response:
    """A drawing as kept."""
    return await client.get(f"/saved/{secret}/A.svg")


async def model(client: httpx.AsyncClient, secret: str) -> httpx.Response:
    """A model of a saved design; the first of each kind is built, the others are kept."""
    return await client.get(f"/saved/{secret}/A.step")


async def remark(client: httpx.AsyncClient, secret: str) -> httpx.Response:
    """Something small that is kept."""
    return await client.post(f"/saved/{secret}/A/remarks", data={"words": f"remark {next(_numbers)}"})


async def save(client: httpx.AsyncClient, _: str) -> httpx.Response:
    """A new design, worked out and drawn."""
    return await client.post("/saved", data={"inputs": inputs(title=f"new {next(_numbers)}")})


ASKED: dict[str, tuple[Ask, int]] = {
    "page of a saved design": (page, 40),
    "kept drawing": (drawing, 40),
    "model of a saved design": (model, 40),
    "remark kept": (remark, 40),
    "new design saved": (save, 4),
}
"""What is measured, and how often in each round."""


async def timed_ms(ask: Ask, client: httpx.AsyncClient, secret: str) -> float:
    """From request to the last byte; whatever is no answer is an error."""
    began = time.perf_counter()
    answer = await ask(client, secret)
    assert answer.status_code in {200, 303}, answer.text
    return 1000 * (time.perf_counter() - began)


async def block(ask: Ask, times: int, client: httpx.AsyncClient, secrets: list[str]) -> tuple[list[float], float]:
    """So many requests, a few at once, each for another design: their times, and how long all took together."""
    wanted = iter([random.choice(secrets) for _ in range(times)])  # noqa: S311  chance is not secret here
    found: list[float] = []

    async def one_after_the_other() -> None:
        for secret in wanted:
            found.append(await timed_ms(ask, client, secret))

    began = time.perf_counter()
    await asyncio.gather(*(one_after_the_other() for _ in range(AT_ONCE)))
    return found, time.perf_counter() - began


Store = tuple[httpx.AsyncClient, list[str]]


async def compared(name: str, few: Store, many: Store) -> dict[str, str]:
    """One thing asked of both in turns: how many a second, and how long each takes."""
    ask, times = ASKED[name]
    rounds = [[await block(ask, times, *store) for store in (few, many)] for _ in range(ROUNDS + 1)][1:]
    found, middle, late = {}, [], []
    for place, what in enumerate((f"{FEW} designs", "many designs")):
        taken = [ms for each in rounds for ms in each[place][0]]
        a_second = len(taken) / sum(each[place][1] for each in rounds)
        middle.append(median(taken))
        late.append(quantiles(taken, n=100, method="inclusive")[-1])
        found[f"{name}, {what}"] = f"{a_second:.0f}/s, p50 {middle[-1]:.1f} ms, p99 {late[-1]:.0f} ms"
    ratio = f"{middle[1] / middle[0]:.2f}, {late[1] / late[0]:.2f}"
    return found | {f"{name}: p50 and p99 of many against few (goal {GOAL})": ratio}


async def long_run(client: httpx.AsyncClient, pid: int, secrets: list[str]) -> dict[str, str]:
    """How the memory of the web process stands after many requests, against after the first fifth of them."""

    async def mixed(client: httpx.AsyncClient, secret: str) -> httpx.Response:
        number = next(_numbers)
        if number % 2:
            return await client.get(address(ending="json") + f"&title=n{number}")
        return await (page if number % 4 else drawing)(client, secret)

    await block(mixed, LONG // 5, client, secrets)
    before = memory_mb(pid)
    _, taken_s = await block(mixed, LONG - LONG // 5, client, secrets)
    words = f"{before} MB, {memory_mb(pid)} MB ({(LONG - LONG // 5) / taken_s:.0f}/s)"
    return {f"memory of the web process after {LONG // 5} and {LONG} requests (goal: flat)": words}


async def stopped(client: httpx.AsyncClient, process: "subprocess.Popen[str]") -> dict[str, str]:
    """Asked to stop while it is making something: what had begun is finished, then it ends."""
    asked = asyncio.create_task(client.get(address(ending="pdf") + "&title=last"))
    await asyncio.sleep(0.1)
    was_running = not asked.done()
    began = time.perf_counter()
    process.send_signal(signal.SIGTERM)
    answer = await asked
    code = await asyncio.to_thread(process.wait, 30)
    assert (answer.status_code, answer.content[:5]) == (200, b"%PDF-"), answer.status_code
    assert code in {0, -signal.SIGTERM}, code
    what = "finished" if was_running else "done before the signal"
    return {"stop while a drawing is made": f"{what}, ended after {time.perf_counter() - began:.2f} s"}


async def measured(folder: Path, designs: int) -> dict[str, str]:
    """Everything, one after the other."""
    began = time.perf_counter()
    real, files = folder / "real.sqlite3", [folder / "few.sqlite3", folder / "many.sqlite3"]
    await save_real_ones(real)
    secrets = [fill(files[0], real, FEW), fill(files[1], real, designs)]
    size_gb = files[1].stat().st_size / 1e9
    found = {"designs in the large database": f"{designs}, {size_gb:.1f} GB, {time.perf_counter() - began:.0f} s"}
    with serving(files[0]) as (_, few), serving(files[1]) as (process, many):
        async with client_of(few) as one, client_of(many) as other:
            for name in ASKED:
                found |= await compared(name, (one, secrets[0]), (other, secrets[1]))
            found |= await long_run(other, process.pid, secrets[1])
            found |= await stopped(other, process)
    return found


def figures(designs: int = MANY) -> dict[str, str]:
    """Each figure with its value, ready to print."""
    with tempfile.TemporaryDirectory() as folder:
        return asyncio.run(measured(Path(folder), designs))


if __name__ == "__main__":
    for name, value in figures(int(sys.argv[1]) if sys.argv[1:] else MANY).items():
        print(f"{name:80} {value:>40}")
