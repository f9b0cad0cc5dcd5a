"""How fast files come out of the pool: ``python -m tests.bench.bench_workers``."""

import asyncio
import os
import tempfile
import time
from pathlib import Path
from statistics import median, quantiles

from geometry.model_label import MODEL_FORMATS, ModelFormat
from server.model_cache import ModelCache
from server.workers import KernelPool
from tests.geometry.pads import LABEL, ORDINARY

DESIGNS = 50
GOAL_SHARE = 0.85


async def timed_ms(pool: KernelPool, model_format: ModelFormat, web_mm: float) -> float:
    """From request to file."""
    started = time.perf_counter()
    await pool.model(ORDINARY.with_(web_mm=web_mm), LABEL, model_format)
    return 1000 * (time.perf_counter() - started)


async def fifty_at_once(pool: KernelPool, kernel_ms: float) -> dict[str, str]:
    """How much of what the cores could do at best the pool reaches; a failure of any request is an error."""
    started = time.perf_counter()
    times = await asyncio.gather(*(timed_ms(pool, "step", 30 + i / 10) for i in range(DESIGNS)))
    per_second = DESIGNS / (time.perf_counter() - started)
    at_best = (os.cpu_count() or 1) * 1000 / kernel_ms
    return {
        f"{DESIGNS} different designs at once, no failure": f"{per_second:.0f}/s",
        "cores ÷ time in the kernel": f"{at_best:.0f}/s",
        f"share of that (goal {GOAL_SHARE})": f"{per_second / at_best:.2f}",
        "99 of 100 of them within": f"{quantiles(times, n=100, method='inclusive')[-1]:.0f} ms",
    }


def memory_mb(pid: int) -> int:
    """Resident memory of a process; pages shared with the server of forks are counted in each."""
    line = next(text for text in Path(f"/proc/{pid}/status").read_text().splitlines() if text.startswith("VmRSS"))
    return int(line.split()[1]) // 1024


def descendants(pid: int) -> list[int]:
    """Every process below one."""
    lists = Path(f"/proc/{pid}/task").glob("*/children")
    children = [int(child) for each in lists for child in each.read_text().split()]
    return children + [other for child in children for other in descendants(child)]


async def measured() -> dict[str, str]:
    """The pool from its start to fifty requests at once."""
    with tempfile.TemporaryDirectory() as folder:
        pool = KernelPool(workers=os.cpu_count() or 1, cache=ModelCache(Path(folder)))
        pool.start()
        found = {"first file after the pool's start": f"{await timed_ms(pool, 'step', 22):.0f} ms"}
        kernel: dict[str, float] = {}
        for model_format in MODEL_FORMATS:
            kernel[model_format] = median([await timed_ms(pool, model_format, 22.1 + i / 100) for i in range(20)])
            warm = median([await timed_ms(pool, model_format, 22.1 + i / 100) for i in range(20)])
            found[f"{model_format.upper()} built by a worker, kept by the cache"] = (
                f"{kernel[model_format]:.1f} ms, {warm:.1f} ms"
            )
        found |= await fifty_at_once(pool, kernel["step"])
        pool.stop()
    return found


def figures() -> dict[str, str]:
    """Each figure with its value, ready to print."""
    return asyncio.run(measured())


if __name__ == "__main__":
    for name, value in figures().items():
        print(f"{name:62} {value:>10}")
