"""A few processes that do heavy work for the web, and a short line of requests in front of them.

Each process is forked from a server of forks that has the heavy libraries loaded, so that a new one is ready at once. A
crash, a hang or a hunger for memory costs the one request that caused it.

::

    SeamrestError
    └── NoAnswerError               the work was not done; asked again, it may well be
        ├── BusyError               the line is full
        ├── ProcessDiedError        the process ended, or is ended, without an answer
        │   └── UnforeseenError     because of an exception that nobody foresaw
        └── ProcessTimeoutError     the answer did not come in time
"""

import logging
import threading
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import suppress
from dataclasses import dataclass
from multiprocessing import get_context
from multiprocessing.connection import Connection
from multiprocessing.context import ForkServerProcess
from queue import SimpleQueue
from typing import Any, Generic, TypeVar

from geometry.drawing.errors import SheetError
from geometry.errors import KernelMissingError, ModelError, SeamrestError
from server.process_life import Answer, serve

Job = TypeVar("Job")
Result = TypeVar("Result")

_READY_WITHIN_S = 30
_PRELOADED = ["geometry.exports", "server.sheets", "server.process_life"]
"""What the server of forks loads once for all processes; what a machine lacks of it is passed over."""
_REFUSALS: dict[str, type[SeamrestError]] = {c.__name__: c for c in (KernelMissingError, ModelError, SheetError)}
"""What a process may refuse on purpose, by the name that crosses the line."""
_log = logging.getLogger("seamrest.processes")
_forks = get_context("forkserver")


class NoAnswerError(SeamrestError):
    """A process of the server's own gave no answer."""


class BusyError(NoAnswerError):
    """Too much of this kind is being made already; ask again shortly."""


class ProcessDiedError(NoAnswerError):
    """The process ended without an answer."""


class UnforeseenError(ProcessDiedError):
    """The work raised what it never should, and its process was ended."""


class ProcessTimeoutError(NoAnswerError):
    """The answer did not come in time, and its process was ended."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Task(Generic[Job, Result]):
    """What the processes of one team do; everything here travels to them, so functions stand in rooms of their own."""

    thing: str
    """What one job makes, for words: a model, a drawing."""
    do: Callable[[Job], Result]
    prepare: Callable[[], object] | None = None
    """Loads what is needed ahead of the first job; KernelMissingError says what this machine lacks."""


class Team(Generic[Job, Result]):
    """Processes of one task, and its line.

    ``line`` is how many requests may wait while every process is at work, ``timeout_s`` how long one may be at work, and
    ``memory_mb`` how much memory a process may take beyond what it starts with; one that still has a quarter of that after
    its answer is replaced by a fresh one.
    """

    def __init__(self, task: Task[Job, Result], *, size: int, line: int, timeout_s: float, memory_mb: int) -> None:
        self._task, self._size, self._line, self._timeout_s = task, size, line, timeout_s
        self._workers = [_Worker(task, memory_mb) for _ in range(size)]
        self._idle: SimpleQueue[_Worker] = SimpleQueue()
        self._threads: ThreadPoolExecutor | None = None
        self._asked = 0
        self._lock = threading.Lock()

    @property
    def is_running(self) -> bool:
        """Whether it was started, and not stopped since."""
        return self._threads is not None

    @property
    def missing(self) -> str:
        """What keeps this machine from doing the work, and what to install; empty as far as is known."""
        return next((worker.missing for worker in self._workers if worker.missing), "")

    def start(self) -> None:
        """Bring up the processes in the background; a request that comes before they are ready waits for them."""
        _forks.set_forkserver_preload(_PRELOADED)
        self._idle = SimpleQueue()
        self._threads = ThreadPoolExecutor(self._size, self._task.thing)
        for worker in self._workers:
            self._threads.submit(self._bring_up, worker)

    def stop(self) -> None:
        """End the processes; what they were at is given up."""
        if self._threads is None:
            return
        self._threads.shutdown(wait=False, cancel_futures=True)
        # Once so that no thread waits for an answer any more, and again for a process that such a thread brought back.
        for _ in range(2):
            for worker in self._workers:
                worker.close()
            self._threads.shutdown()
        self._threads = None

    def submit(self, job: Job) -> Future[Result]:
        """Put a job into the line; BusyError where that is full."""
        if self._threads is None:
            raise NoAnswerError(f"The processes for each {self._task.thing} are not running.")
        with self._lock:
            if self._asked >= self._size + self._line:
                words = f"{self._asked} {self._task.thing}s are being made already. Ask again in a few seconds."
                raise BusyError(words)
            self._asked += 1
        future = self._threads.submit(self._work, job)
        future.add_done_callback(self._leave)
        return future

    def _leave(self, _: Future[Result]) -> None:
        with self._lock:
            self._asked -= 1

    def _bring_up(self, worker: "_Worker") -> None:
        """Open a process ahead of its first job, which would otherwise open it (and tell what hinders it)."""
        with suppress(ProcessDiedError, EOFError, OSError):
            worker.open()
        self._idle.put(worker)

    def _work(self, job: Job) -> Result:
        """Have an idle process do the job; whatever comes of it, its place goes back to the idle ones."""
        worker = self._idle.get()
        try:
            result: Result = worker.do(job, self._timeout_s)
            return result
        finally:
            self._idle.put(worker)


class _Worker:
    """One process, used by one thread at a time; it is replaced as soon as it has gone wrong."""

    def __init__(self, task: Task[Any, Any], memory_mb: int) -> None:
        self._task, self._memory_mb = task, memory_mb
        self.missing = ""
        """What keeps this process from doing anything; empty where nothing does."""
        self._process: ForkServerProcess | None = None
        self._line: Connection | None = None

    def open(self) -> Connection:
        """The line to a living process: a new one where there is none."""
        if self._process is None or self._line is None or not self._process.is_alive():
            self.close()
            if self._line is not None:
                self._line.close()
            self._line, far_end = _forks.Pipe()
            task = self._task
            told = (far_end, task.do, task.prepare, task.thing, self._memory_mb)
            self._process = _forks.Process(target=serve, args=told, daemon=True)
            self._process.start()
            far_end.close()
            # A process that is only just coming up must not use up the time of its first job.
            if not self._line.poll(_READY_WITHIN_S):
                self.close()
                words = f"No process for a {task.thing} came up within {_READY_WITHIN_S} s. Ask again."
                raise ProcessDiedError(words)
            self.missing = self._line.recv()
        return self._line

    def close(self) -> None:
        """End the process at once."""
        if self._process is not None and self._process.pid is not None:
            self._process.kill()
            self._process.join()

    def do(self, job: Any, timeout_s: float) -> Any:
        """The answer to one job, or an exception that says what became of it."""
        try:
            answer = self._ask(job, timeout_s)
        except (EOFError, OSError) as error:
            self._replace()
            words = f"The process that made this {self._task.thing} died. Ask again; other requests are not touched."
            raise ProcessDiedError(words) from error
        self.missing = answer.words if answer.kind == "KernelMissingError" else ""
        if answer.is_broken:
            self._replace()
            if not answer.trace:
                raise ProcessDiedError(answer.words)
            _log.error("%s\n%s", answer.words, answer.trace)
            raise UnforeseenError(answer.words)
        if answer.is_spent:
            # Its memory is given back now; the next job brings up a fresh process, which takes a few hundredths of a second.
            self.close()
        if answer.kind:
            raise _REFUSALS.get(answer.kind, ModelError)(answer.words)
        return answer.result

    def _ask(self, job: Any, timeout_s: float) -> Answer:
        line = self.open()
        line.send(job)
        if not line.poll(timeout_s):
            self._replace()
            words = f"The {self._task.thing} was not ready after {timeout_s:g} s, and was given up."
            raise ProcessTimeoutError(words)
        answer: Answer = line.recv()
        return answer

    def _replace(self) -> None:
        """Have another process ready; if none comes up now, the next job tries again and tells why."""
        self.close()
        with suppress(ProcessDiedError, EOFError, OSError):
            self.open()
