"""Drawings and sheets for paper, made in processes of their own: the web's side of the line."""

import asyncio
import os
from collections.abc import Iterable
from dataclasses import dataclass
from importlib import import_module
from typing import Any

from geometry.design import Design
from geometry.drawing.facts import SheetFacts
from geometry.drawing.table import Row
from geometry.errors import SeamrestError
from geometry.pad import Pad
from geometry.standing import PartStanding
from server.processes import Task, Team, UnforeseenError
from server.settings import Settings

_ROOM = "server.sheets"
Job = tuple[str, tuple[Any, ...]]


@dataclass(frozen=True, slots=True)
class DrawnSheet:
    """A drawing as its page shows it."""

    picture: str
    """The sheet as SVG."""
    scale: str
    """The main views' scale in words."""
    rows: tuple[Row, ...]
    """Every dimension on the sheet."""


class DrawingFailedError(SeamrestError):
    """A drawing raised what nobody foresaw: an error of this program."""


def load_sheets() -> None:
    """Load what draws and sets into this process, and keep it from starting a thread for every core of a large machine."""
    os.environ.setdefault("RAYON_NUM_THREADS", "2")
    import_module(_ROOM)


def do_work(job: Job) -> Any:
    """One piece of work, done in this process."""
    name, told = job
    return import_module(_ROOM).WORK[name](*told)


class Drawers:
    """The drawing processes of this server, which come up with the server or, where nobody started it, when first asked."""

    def __init__(self) -> None:
        self._team: Team[Job, Any] | None = None

    def start(self, settings: Settings) -> None:
        """Bring up the processes in the background, in place of any that are up."""
        self.stop()
        self._team = Team(
            Task(thing="drawing", do=do_work, prepare=load_sheets),
            size=settings.drawing_workers,
            line=settings.drawing_line,
            timeout_s=settings.drawing_timeout_s,
            memory_mb=settings.drawing_memory_mb,
        )
        self._team.start()

    def stop(self) -> None:
        """End the processes; what they were at is given up."""
        if self._team is not None:
            self._team.stop()
        self._team = None

    async def drawings(self, pad: Pad, facts: SheetFacts, endings: Iterable[str]) -> dict[str, bytes]:
        """The drawing as files by their endings; SheetError where no scale leaves room."""
        files: dict[str, bytes] = await self._ask("drawings", pad, facts, tuple(endings))
        return files

    async def drawn(self, pad: Pad, facts: SheetFacts) -> DrawnSheet:
        """The drawing for its page; SheetError where no scale leaves room."""
        sheet: DrawnSheet = await self._ask("drawn", pad, facts)
        return sheet

    async def sheet(self, name: str, design: Design, facts: SheetFacts, *, failed: PartStanding | None = None) -> bytes:
        """Packet, card or gauges of a design; SheetError where the drawing in it finds no room.

        ``failed`` marks packet and card of a part whose readings stand elsewhere than in the design's own document.
        """
        content: bytes = await self._ask("sheet", name, design.measurements, facts, failed)
        return content

    async def preview(self, pad: Pad, data: dict[str, Any]) -> bytes:
        """The picture that others see under a link, as PNG."""
        content: bytes = await self._ask("preview", pad, data)
        return content

    async def isometric(self, pad: Pad, *, title: str, description: str) -> str:
        """The pad as it is held in the hand, as SVG."""
        picture: str = await self._ask("isometric", pad, title, description)
        return picture

    async def _ask(self, name: str, *told: Any) -> Any:
        """Have a process do a piece of work. Raises NoAnswerError."""
        if self._team is None:
            self.start(Settings(drawing_workers=1))
        assert self._team is not None  # noqa: S101  start has just made it
        try:
            return await asyncio.wrap_future(self._team.submit((name, told)))
        except UnforeseenError as error:
            # The same drawing would fail again: nobody is told to come back.
            raise DrawingFailedError(str(error)) from error


drawers = Drawers()
"""Those of this process: drawings are equal whoever asks, so applications in one process share them."""
