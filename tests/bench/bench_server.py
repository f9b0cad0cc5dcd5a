"""A whole server as its users meet it: its start, downloads, fifty at once, and memory: ``python -m tests.bench.bench_server``."""

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

from server.links import address_of_document, ready_sample
from tests.bench.bench_workers import DESIGNS, descendants, memory_mb

ROOT = Path(__file__).resolve().parents[2]
STARTS = 5
ROUNDS = 12
FILES = {
    "working sheet": "/pad",
    "JSON": "/pad.json",
    "SVG": "/pad.svg",
    "PDF": "/pad.pdf",
    "packet": "/pad/packet.pdf",
    "STEP": "/pad.step",
    "ZIP": "/pad.zip",
}


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


def pad_address(number: int, path: str) -> str:
    """A design that no other number has, and that is fit to make: no file of it asks to be confirmed."""
    document = ready_sample().document
    seam = document["seam"] | {"height_mm": document["seam"]["height_mm"] + number / 50}
    return address_of_document(document | {"seam": seam}).replace("/pad", path, 1)


async def download_ms(client: httpx.AsyncClient, number: int, path: str) -> float:
    """From request to the last byte; whatever is not the file is an error."""
    began = time.perf_counter()
    (await client.get(pad_address(number, path))).raise_for_status()
    return 1000 * (time.perf_counter() - began)


async def downloads(address: str) -> dict[str, str]:
    """Each file of designs never asked for, and again; then fifty further designs at once."""
    found = {}
    async with httpx.AsyncClient(base_url=address, timeout=120) as client:
        for path in ("/pad.step", "/pad/packet.pdf"):
            found[f"{path[5:].upper()}, the server's first"] = f"{await download_ms(client, 0, path):.0f} ms"
        for place, (name, path) in enumerate(FILES.items()):
            numbers = range(1 + place * ROUNDS, 1 + (place + 1) * ROUNDS)
            first, again = [
                median([await download_ms(client, number, path) for number in numbers]) for _ in ("first", "again")
            ]
            found[f"{name}, first time, again"] = f"{first:.0f} ms, {again:.0f} ms"
        for place, path in enumerate(("/pad.step", "/pad.pdf")):
            found |= await fifty_at_once(client, path, 1 + len(FILES) * ROUNDS + place * DESIGNS)
    return found


async def fifty_at_once(client: httpx.AsyncClient, path: str, first: int) -> dict[str, str]:
    """Different designs all at the same moment; any failure is an error."""
    began = time.perf_counter()
    times = await asyncio.gather(*(download_ms(client, first + i, path) for i in range(DESIGNS)))
    per_second = DESIGNS / (time.perf_counter() - began)
    name = path[5:].upper()
    return {
        f"{DESIGNS} different designs at once as {name}, no failure": f"{per_second:.0f}/s",
        f"99 of 100 of these {name} within": f"{quantiles(times, n=100, method='inclusive')[-1]:.0f} ms",
    }


def figures() -> dict[str, str]:
    """Each figure with its value, ready to print."""
    found = {"start to first page (goal 1.5 s)": f"{median(start_s() for _ in range(STARTS)):.2f} s"}
    with tempfile.TemporaryDirectory() as folder, running(folder) as (process, address):
        found |= asyncio.run(downloads(address))
        found["memory of the web process after all this (goal 150 MB)"] = f"{memory_mb(process.pid)} MB"
        largest = max(memory_mb(pid) for pid in descendants(process.pid))
        found["memory of the largest other process (goal 600 MB)"] = f"{largest} MB"
    return found


if __name__ == "__main__":
    for name, value in figures().items():
        print(f"{name:62} {value:>10}")
