"""A whole server as its users meet it, from its start to fifty downloads at once: ``python -m tests.bench.bench_server``."""

import asyncio
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median, quantiles

import httpx

from server.links import address_of_document
from tests.bench.bench_workers import DESIGNS, descendants, memory_mb
from tests.documents import van

ROOT = Path(__file__).resolve().parents[2]
STARTS = 5
ROUNDS = 12
FILES = ("json", "svg", "pdf", "step", "zip")


@contextmanager
def running(folder: str) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """A server of its own with an empty cache."""
    environment = os.environ | {"SEAMREST_MODEL_CACHE_FOLDER": str(Path(folder, "models"))}
    process = subprocess.Popen(
        [sys.executable, "-m", "server", "--port", "0"],
        cwd=ROOT,
        env=environment,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
    )
    try:
        assert process.stdout is not None
        yield process, process.stdout.readline().split(" is at ")[1].strip()
    finally:
        process.terminate()
        process.communicate()


def start_s() -> float:
    """From the command to the first page, whole."""
    with tempfile.TemporaryDirectory() as folder:
        began = time.perf_counter()
        with running(folder) as (_, address):
            while True:
                try:
                    answer = httpx.get(f"{address}/")
                except httpx.ConnectError:
                    time.sleep(0.01)
                else:
                    answer.raise_for_status()
                    return time.perf_counter() - began


def pad_address(number: int, ending: str) -> str:
    """A design that no other number has."""
    return address_of_document(van(seam__height_mm=18 + number / 10), f".{ending}") + "&confirm=not-fit"


async def download_ms(client: httpx.AsyncClient, number: int, ending: str) -> float:
    """From request to the last byte; whatever is not the file is an error."""
    began = time.perf_counter()
    (await client.get(pad_address(number, ending))).raise_for_status()
    return 1000 * (time.perf_counter() - began)


async def downloads(address: str) -> dict[str, str]:
    """Each file of designs never asked for, and again; then fifty further designs at once."""
    found = {}
    async with httpx.AsyncClient(base_url=address, timeout=60) as client:
        await download_ms(client, 0, "step")
        for place, ending in enumerate(FILES):
            numbers = range(1 + place * ROUNDS, 1 + (place + 1) * ROUNDS)
            cold, warm = [
                median([await download_ms(client, number, ending) for number in numbers]) for _ in ("cold", "warm")
            ]
            found[f"download of {ending.upper()}, first time, again"] = f"{cold:.0f} ms, {warm:.0f} ms"
        first = 1 + len(FILES) * ROUNDS
        began = time.perf_counter()
        times = await asyncio.gather(*(download_ms(client, first + i, "step") for i in range(DESIGNS)))
        taken = time.perf_counter() - began
    found[f"{DESIGNS} different designs at once as STEP, no failure"] = f"{DESIGNS / taken:.0f}/s"
    found["99 of 100 of these downloads within"] = f"{quantiles(times, n=100, method='inclusive')[-1]:.0f} ms"
    return found


def figures() -> dict[str, str]:
    """Each figure with its value, ready to print."""
    found = {"start to first page (goal 1.5 s)": f"{median(start_s() for _ in range(STARTS)):.2f} s"}
    with tempfile.TemporaryDirectory() as folder, running(folder) as (process, address):
        found |= asyncio.run(downloads(address))
        found["memory of the web process after all this (goal 150 MB)"] = f"{memory_mb(process.pid)} MB"
        largest = max(memory_mb(pid) for pid in descendants(process.pid))
        found["memory of the largest model process (goal 600 MB)"] = f"{largest} MB"
    return found


if __name__ == "__main__":
    for name, value in figures().items():
        print(f"{name:62} {value:>10}")
