"""A few processes that hold the modelling kernel, so that the web never loads it and outlives whatever it does.

Each process is forked from a server of forks that has the kernel loaded, so that a new one is ready at once. A crash,
a hang or a hunger for memory costs the one request that caused it.

::

    ModelError
    ├── BusyError           the line is full
    ├── KernelDiedError     the process ended, or is ended, without an answer
    ├── KernelTimeoutError  the answer did not come in time
    └── KernelMissingError  (geometry.errors) nothing can be built on this machine until something is installed
"""

import asyncio
import resource
import signal
import threading
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import suppress
from dataclasses import dataclass
from multiprocessing import get_context
from multiprocessing.connection import Connection
from multiprocessing.context import ForkServerProcess
from pathlib import Path
from queue import SimpleQueue
from typing import Literal

from geometry.errors import KernelMissingError, ModelError, SeamrestError
from geometry.model_label import ModelFormat, ModelLabel
from geometry.model_process import load_model_builder
from geometry.pad import Pad, require_buildable
from server.model_cache import ModelCache, cache_key

Job = tuple[Pad, ModelLabel, ModelFormat]
Answer = tuple[Literal["file"], bytes] | tuple[Literal["refused", "kernel_missing", "broken"], str]
Build = Callable[[Pad, ModelLabel, ModelFormat], bytes]

_READY_WITHIN_S = 30
_forks = get_context("forkserver")


class BusyError(ModelError):
    """Too many models are being built already; ask again shortly."""


class KernelDiedError(ModelError):
    """The process that built this model ended without an answer."""


class KernelTimeoutError(ModelError):
    """The model was not ready in time, and its process was ended."""


def build_model(pad: Pad, label: ModelLabel, model_format: ModelFormat) -> bytes:
    """One model file, built in this process: what a worker does with a job."""
    return load_model_builder()(pad, label, model_format)


@dataclass(slots=True)
class _Shared:
    """A file on its way, and how many wait for it."""

    task: asyncio.Task[bytes]
    waiting: int = 0


class KernelPool:
    """Workers that turn pads into model files, and a short line of requests in front of them.

    ``line`` is how many requests may wait while every worker is at work, ``timeout_s`` how long one may be at work, and
    ``memory_mb`` how much memory a worker may take beyond what it starts with. Files that the cache knows are not built, and
    a file that several ask for at the same moment is built once.
    """

    def __init__(
        self,
        *,
        workers: int = 2,
        line: int = 64,
        timeout_s: float = 20,
        memory_mb: int = 1024,
        build: Build = build_model,
        cache: ModelCache | None = None,
    ) -> None:
        self._cache = cache
        self._size, self._line, self._timeout_s = workers, line, timeout_s
        self._workers = [_Worker(build, memory_mb) for _ in range(workers)]
        self._idle: SimpleQueue[_Worker] = SimpleQueue()
        self._threads: ThreadPoolExecutor | None = None
        self._shared: dict[str, _Shared] = {}
        self._asked = 0
        self._lock = threading.Lock()

    def start(self) -> None:
        """Bring up the workers in the background; a request that comes before they are ready waits for them."""
        _forks.set_forkserver_preload(["geometry.exports", "server.workers"])
        self._threads = ThreadPoolExecutor(self._size, "model")
        for worker in self._workers:
            self._threads.submit(self._bring_up, worker)

    def stop(self) -> None:
        """End the workers; what they were at is given up."""
        if self._threads is None:
            return
        self._threads.shutdown(wait=False, cancel_futures=True)
        # Once so that no thread waits for an answer any more, and again for a worker that such a thread brought back.
        for _ in range(2):
            for worker in self._workers:
                worker.close()
            self._threads.shutdown()
        self._threads = None

    async def model(self, pad: Pad, label: ModelLabel, model_format: ModelFormat) -> bytes:
        """One model file.

        Raises BadMeasurementsError where the dimensions are no single body, else one of the tree of this module.
        """
        require_buildable(pad)
        job = (pad, label, model_format)
        key = cache_key(*job)
        shared = self._shared.get(key)
        if shared is None:
            shared = self._shared[key] = _Shared(asyncio.create_task(self._kept_or_built(key, job)))
        shared.waiting += 1
        try:
            # One who turns away must not take the file from the others who wait for it.
            return await asyncio.shield(shared.task)
        finally:
            shared.waiting -= 1
            if not shared.waiting:
                self._close(key, shared)

    @property
    def missing(self) -> str:
        """What keeps this machine from building any model, and what to install; empty as far as is known."""
        return next((worker.missing for worker in self._workers if worker.missing), "")

    async def _kept_or_built(self, key: str, job: Job) -> bytes:
        if self._cache is not None:
            kept = await asyncio.to_thread(self._cache.get, key)
            if kept is not None:
                return kept
        return await asyncio.wrap_future(self._submit(job))

    def _close(self, key: str, shared: "_Shared") -> None:
        """Nobody waits any more: let nobody join, and take what has not begun out of the line."""
        if self._shared.get(key) is shared:
            del self._shared[key]
        shared.task.cancel()

    def _submit(self, job: Job) -> Future[bytes]:
        """Put a job into the line, if it is not full."""
        if self._threads is None:
            raise ModelError("The model workers are not running.")
        with self._lock:
            if self._asked >= self._size + self._line:
                raise BusyError(f"{self._asked} models are being built already. Ask again in a few seconds.")
            self._asked += 1
        future = self._threads.submit(self._work, job)
        future.add_done_callback(self._leave)
        return future

    def _leave(self, _: Future[bytes]) -> None:
        with self._lock:
            self._asked -= 1

    def _bring_up(self, worker: "_Worker") -> None:
        """Open a worker ahead of its first job, which would otherwise open it (and tell what hinders it)."""
        with suppress(KernelDiedError, EOFError, OSError):
            worker.open()
        self._idle.put(worker)

    def _work(self, job: Job) -> bytes:
        """Have an idle worker do the job; whatever comes of it, the worker goes back to the idle ones."""
        worker = self._idle.get()
        try:
            content = worker.do(job, self._timeout_s)
        finally:
            self._idle.put(worker)
        if self._cache is not None:
            self._cache.put(cache_key(*job), content)
        return content


class _Worker:
    """One process with the kernel, used by one thread at a time; it is replaced as soon as it has gone wrong."""

    def __init__(self, build: Build, memory_mb: int) -> None:
        self._build, self._memory_mb = build, memory_mb
        self.missing = ""
        """What keeps this process from building anything; empty where nothing does."""
        self._process: ForkServerProcess | None = None
        self._line: Connection | None = None

    def open(self) -> Connection:
        """The line to a living process: a new one where there is none."""
        if self._process is None or self._line is None or not self._process.is_alive():
            self.close()
            if self._line is not None:
                self._line.close()
            self._line, far_end = _forks.Pipe()
            self._process = _forks.Process(target=_serve, args=(far_end, self._build, self._memory_mb), daemon=True)
            self._process.start()
            far_end.close()
            # A process that is only just coming up must not use up the time of its first job.
            if not self._line.poll(_READY_WITHIN_S):
                self.close()
                raise KernelDiedError(f"No process for models came up within {_READY_WITHIN_S} s. Ask again.")
            self.missing = self._line.recv()
        return self._line

    def close(self) -> None:
        """End the process at once."""
        if self._process is not None and self._process.pid is not None:
            self._process.kill()
            self._process.join()

    def do(self, job: Job, timeout_s: float) -> bytes:
        """The answer to one job, or an exception that says what became of it."""
        try:
            answer = self._ask(job, timeout_s)
        except (EOFError, OSError) as error:
            self._replace()
            raise KernelDiedError(
                "The process that built this model died. Ask again; other requests are not touched."
            ) from error
        kind, content = answer
        self.missing = str(content) if kind == "kernel_missing" else ""
        if isinstance(content, bytes):
            return content
        if kind == "broken":
            self._replace()
            raise KernelDiedError(content)
        raise (KernelMissingError if kind == "kernel_missing" else ModelError)(content)

    def _ask(self, job: Job, timeout_s: float) -> Answer:
        line = self.open()
        line.send(job)
        if not line.poll(timeout_s):
            self._replace()
            raise KernelTimeoutError(f"The model was not ready after {timeout_s:g} s, and was given up.")
        answer: Answer = line.recv()
        return answer

    def _replace(self) -> None:
        """Have another process ready; if none comes up now, the next job tries again and tells why."""
        self.close()
        with suppress(KernelDiedError, EOFError, OSError):
            self.open()


def _serve(line: Connection, build: Build, memory_mb: int) -> None:
    """Answer jobs until the other end is gone or something unforeseen has happened: the life of a worker."""
    # Ctrl-C reaches the whole group of processes; the web process alone decides what it means.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    _limit_memory(memory_mb)
    line.send(_hindrance(build))
    kind = ""
    while kind != "broken":
        try:
            job: Job = line.recv()
        except EOFError:
            return
        answer = _answer(build, job)
        line.send(answer)
        kind = answer[0]


def _hindrance(build: Build) -> str:
    """What keeps a process that is ready from building models, in words; empty where nothing does."""
    if build is not build_model:
        return ""
    try:
        load_model_builder()
    except KernelMissingError as error:
        return str(error)
    return ""


def _answer(build: Build, job: Job) -> Answer:
    try:
        return "file", build(*job)
    except KernelMissingError as error:
        return "kernel_missing", str(error)
    except SeamrestError as error:
        return "refused", str(error)
    except MemoryError:
        return "broken", "The model needs more memory than a worker may take."
    except Exception as error:  # The kernel raises classes of its own, and its state after one is anybody's guess.
        return "broken", f"The modelling kernel failed: {type(error).__name__} {error}"


def _limit_memory(extra_mb: int) -> None:
    """Allow this process so much memory beyond what it has mapped already."""
    mapped = int(Path("/proc/self/statm").read_text().split()[0]) * resource.getpagesize()
    limit = mapped + extra_mb * 2**20
    resource.setrlimit(resource.RLIMIT_AS, (limit, limit))
