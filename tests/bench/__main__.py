"""``python -m tests.bench``: every bench, each in a process of its own, as one table with the machine it ran on."""

import json
import os
import platform
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

BENCHES = {
    "bench_core": "Sizing and judging",
    "bench_solid": "The solid and its files",
    "bench_workers": "The model processes",
    "bench_screen": "The working sheet in a browser",
    "bench_server": "The whole server",
    "bench_store": "The database alone, with many saved designs",
    "bench_load": "Many saved designs, and many requests",
}
_PRINT = "import json; from tests.bench import {0}; print(json.dumps({0}.figures()))"


def machine() -> str:
    """What the figures were measured on."""
    memory_kb = int(re.findall(r"MemTotal:\s+(\d+)", Path("/proc/meminfo").read_text())[0])
    load = os.getloadavg()[0]
    return (
        f"{os.cpu_count()} processors ({platform.machine()}), {memory_kb / 2**20:.0f} GB of memory,"
        f" {platform.python_implementation()} {platform.python_version()}, {platform.system()};"
        f" {load:.1f} processes at work beside it when it began."
    )


def figures_of(bench: str) -> dict[str, str]:
    """One bench's figures: alone in its process, so that no bench pays for what another has loaded."""
    done = subprocess.run(
        [sys.executable, "-c", _PRINT.format(bench)], stdout=subprocess.PIPE, encoding="utf-8", check=True
    )
    found: dict[str, str] = json.loads(done.stdout.splitlines()[-1])
    return found


def lines() -> Iterator[str]:
    """The table in Markdown, as it is measured."""
    yield f"Measured on {machine()}"
    yield ""
    yield "| what | figure |"
    yield "|---|---:|"
    for bench, title in BENCHES.items():
        yield f"| **{title}** (`python -m tests.bench.{bench}`) | |"
        yield from (f"| {name} | {value} |" for name, value in figures_of(bench).items())


if __name__ == "__main__":
    for line in lines():
        print(line, flush=True)
