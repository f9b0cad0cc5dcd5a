"""What the database alone takes among many designs and among few, without web or drawings: ``python -m tests.bench.bench_store``.

Designs are small stand-ins, so that 100 000 of them are copied in a minute; ids and indexes are as always. Both databases are
asked in turns, so that whatever else the machine does falls on both.
"""

import random
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from statistics import median, quantiles

from server.store.database import Database
from server.store.designs import entries, kept_endings, newest_number, revision
from server.store.exchange import add_remark, proposals_for, readings_of, remarks_on
from server.store.links import open_link
from tests.bench.filling import REAL, fill
from tests.server.saving.keeping import saved

FEW, MANY = 100, 100_000
TIMES = 600
GOAL = 1.2
Ask = Callable[[Database, str], None]


def page(database: Database, secret: str) -> None:
    """Everything that a saved design's page reads."""
    with database.reading() as connection:
        access = open_link(connection, secret)
        found = revision(connection, access.design.id, newest_number(connection, access.design.id))
        entries(connection, access.design.id)
        for beside in (remarks_on, readings_of, proposals_for, kept_endings):
            beside(connection, found.id)


def remark(database: Database, secret: str) -> None:
    """Something small that is kept."""
    with database.reading() as connection:
        found = revision(connection, open_link(connection, secret).design.id, 1)
    add_remark(database, found.id, kind="owner", name="Ada", words="The bar is here.")


ASKED: dict[str, Ask] = {"what a page reads": page, "a remark kept": remark}


def stores(folder: Path, designs: int) -> list[tuple[Database, list[str]]]:
    """A database of few and one of many designs, each with the secrets of its owners."""
    real = folder / "real.sqlite3"
    database = Database(str(real))
    for number in range(REAL):
        _, secret = saved(database, f"design {number}")
        remark(database, secret)
    database.close()
    files = {number: folder / f"{number}.sqlite3" for number in (FEW, designs)}
    secrets = {number: fill(file, real, number) for number, file in files.items()}
    return [(Database(str(file)), secrets[number]) for number, file in files.items()]


def compared(name: str, both: list[tuple[Database, list[str]]]) -> dict[str, str]:
    """One thing asked of both in turns: by the clock, and by the processor's time, which other work on the machine leaves alone."""
    clock: list[list[float]] = [[], []]
    processor: list[list[float]] = [[], []]
    for _ in range(TIMES):
        for place in random.sample((0, 1), 2):
            database, secrets = both[place]
            secret = random.choice(secrets)  # noqa: S311  chance is not secret here
            began, used = time.perf_counter(), time.thread_time()
            ASKED[name](database, secret)
            processor[place].append(1000 * (time.thread_time() - used))
            clock[place].append(1000 * (time.perf_counter() - began))
    return _words(f"{name}, by the clock", clock) | _words(f"{name}, processor time", processor)


def _words(what: str, taken: list[list[float]]) -> dict[str, str]:
    middle = [median(times) for times in taken]
    late = [quantiles(times, n=100, method="inclusive")[-1] for times in taken]
    words = f"p50 {middle[0]:.2f} and {middle[1]:.2f} ms, p99 {late[0]:.2f} and {late[1]:.2f} ms"
    ratio = f"{middle[1] / middle[0]:.2f}, {late[1] / late[0]:.2f}"
    return {f"{what}, few and many": words, f"{what}: p50 and p99 of many against few (goal {GOAL})": ratio}


def figures(designs: int = MANY) -> dict[str, str]:
    """Each figure with its value, ready to print."""
    found: dict[str, str] = {}
    with tempfile.TemporaryDirectory() as folder:
        both = stores(Path(folder), designs)
        for name in ASKED:
            found |= compared(name, both)
        for database, _ in both:
            database.close()
    return found


if __name__ == "__main__":
    for name, value in figures(int(sys.argv[1]) if sys.argv[1:] else MANY).items():
        print(f"{name:88} {value:>40}")
