"""A few processes that hold the modelling kernel, so that the web never loads it and outlives whatever it does."""

import asyncio
from collections.abc import Callable
from functools import partial

from geometry.buildable import require_buildable
from geometry.errors import ModelError
from geometry.model_label import ModelFormat, ModelLabel
from geometry.model_process import load_model_builder
from geometry.pad import Pad
from server.model_cache import ModelCache, cache_key
from server.once import Once
from server.processes import Task, Team

Job = tuple[Pad, ModelLabel, ModelFormat]
Build = Callable[[Pad, ModelLabel, ModelFormat], bytes]


def build_model(pad: Pad, label: ModelLabel, model_format: ModelFormat) -> bytes:
    """One model file, built in this process: what a worker does with a job."""
    return load_model_builder()(pad, label, model_format)


def _do(build: Build, job: Job) -> bytes:
    return build(*job)


class KernelPool:
    """Workers that turn pads into model files, and a short line of requests in front of them.

    Files that the cache knows are not built, and a file that several ask for at the same moment is built once.
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
        prepare = load_model_builder if build is build_model else None
        task: Task[Job, bytes] = Task(thing="model", do=partial(_do, build), prepare=prepare)
        self._team = Team(task, size=workers, line=line, timeout_s=timeout_s, memory_mb=memory_mb)
        self._once = Once(cache)

    def start(self) -> None:
        """Bring up the workers in the background; a request that comes before they are ready waits for them."""
        self._team.start()

    def stop(self) -> None:
        """End the workers; what they were at is given up."""
        self._team.stop()

    async def model(self, pad: Pad, label: ModelLabel, model_format: ModelFormat) -> bytes:
        """One model file.

        Raises BadMeasurementsError where the dimensions are no single body, ModelError or NoAnswerError.
        """
        require_buildable(pad)
        job = (pad, label, model_format)
        return await self._once.file(cache_key(*job), partial(self._built, job))

    @property
    def missing(self) -> str:
        """What keeps this machine from building any model, and what to install; empty as far as is known."""
        return self._team.missing

    async def _built(self, job: Job) -> bytes:
        if not self._team.is_running:
            raise ModelError("The model workers are not running.")
        return await asyncio.wrap_future(self._team.submit(job))
