"""The life of a process that does heavy work: it prepares, answers one job after another, and says when it is spent."""

import resource
import signal
from collections.abc import Callable
from dataclasses import dataclass
from multiprocessing.connection import Connection
from pathlib import Path
from traceback import format_exc
from typing import Any

from geometry.errors import KernelMissingError, SeamrestError

_SPENT_SHARE = 0.25
"""Libraries keep what they may want again: a process that has grown by this share of what it may take is replaced."""


@dataclass(frozen=True, slots=True)
class Answer:
    """What became of one job."""

    result: Any = None
    kind: str = ""
    """The name of the error that refused the job; empty where it was done."""
    words: str = ""
    trace: str = ""
    """Where an unforeseen exception came from, for the log; empty otherwise."""
    is_broken: bool = False
    """Whether the process must not be asked again: what state it is in is anybody's guess."""
    is_spent: bool = False
    """Whether the process has grown so much that a fresh one should follow it."""


def serve(
    line: Connection, do: Callable[[Any], Any], prepare: Callable[[], object] | None, thing: str, memory_mb: int
) -> None:
    """Answer jobs until the other end is gone or something unforeseen has happened."""
    # Ctrl-C reaches the whole group of processes; the web process alone decides what it means.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    hindrance = _hindrance(prepare)
    _limit_memory(memory_mb)
    start_mb = resident_mb()
    line.send(hindrance)
    is_broken = False
    while not is_broken:
        try:
            job = line.recv()
        except EOFError:
            return
        answer = _answer(do, job, thing, most_mb=start_mb + _SPENT_SHARE * memory_mb)
        line.send(answer)
        is_broken = answer.is_broken


def _hindrance(prepare: Callable[[], object] | None) -> str:
    """What keeps a process that is ready from its work, in words; empty where nothing does."""
    try:
        if prepare is not None:
            prepare()
    except KernelMissingError as error:
        return str(error)
    return ""


def _answer(do: Callable[[Any], Any], job: Any, thing: str, *, most_mb: float) -> Answer:
    try:
        result = do(job)
    except SeamrestError as error:
        return Answer(kind=type(error).__name__, words=str(error))
    except MemoryError:
        return Answer(words=f"The {thing} needs more memory than its process may take.", is_broken=True)
    except Exception as error:  # Libraries raise classes of their own, and their state after one is anybody's guess.
        words = f"Making the {thing} failed: {type(error).__name__} {error}"
        return Answer(words=words, trace=format_exc(), is_broken=True)
    return Answer(result, is_spent=resident_mb() > most_mb)


def resident_mb() -> float:
    """How much memory this process has in use, what it shares with others included."""
    return _statm(1) / 2**20


def _limit_memory(extra_mb: int) -> None:
    """Allow this process so much memory beyond what it has mapped already."""
    limit = _statm(0) + extra_mb * 2**20
    resource.setrlimit(resource.RLIMIT_AS, (limit, limit))


def _statm(field: int) -> int:
    """One figure of the system's account of this process, in bytes."""
    return int(Path("/proc/self/statm").read_text().split()[field]) * resource.getpagesize()
