"""A file that several ask for at the same moment is made once, and one that is kept is not made at all."""

import asyncio
from collections.abc import Awaitable, Callable
from dataclasses import dataclass

from server.model_cache import ModelCache

Make = Callable[[], Awaitable[bytes]]


@dataclass(slots=True)
class _Shared:
    """A file on its way, and how many wait for it."""

    task: asyncio.Task[bytes]
    waiting: int = 0


class Once:
    """Files by their keys: from the cache where it has them, else made, once for all who wait."""

    def __init__(self, cache: ModelCache | None = None) -> None:
        self._cache = cache
        self._shared: dict[str, _Shared] = {}

    async def file(self, key: str, make: Make) -> bytes:
        """The file of a key; what ``make`` raises reaches everyone who waits, and is not remembered."""
        shared = self._shared.get(key)
        if shared is None:
            shared = self._shared[key] = _Shared(asyncio.create_task(self._kept_or_made(key, make)))
        shared.waiting += 1
        try:
            # One who turns away must not take the file from the others who wait for it.
            return await asyncio.shield(shared.task)
        finally:
            shared.waiting -= 1
            if not shared.waiting:
                self._close(key, shared)

    async def _kept_or_made(self, key: str, make: Make) -> bytes:
        if self._cache is None:
            return await make()
        kept = await asyncio.to_thread(self._cache.get, key)
        if kept is not None:
            return kept
        content = await make()
        await asyncio.to_thread(self._cache.put, key, content)
        return content

    def _close(self, key: str, shared: _Shared) -> None:
        """Nobody waits any more: let nobody join, and take what has not begun out of the line."""
        if self._shared.get(key) is shared:
            del self._shared[key]
        shared.task.cancel()
