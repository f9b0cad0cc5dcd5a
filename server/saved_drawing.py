"""Drawing and sheets of a saved revision, made after its saving was answered and kept beside it; whoever asks sooner is served."""

import asyncio
import logging

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request

from geometry import ENGINE_VERSION
from geometry.errors import SeamrestError
from geometry.making.wording import said
from geometry.standing import DO_NOT_USE, MADE_WRONG, PartStanding
from server.downloads import DrawingFormat
from server.drawn import drawers
from server.store.database import Database
from server.store.designs import Revision, keep_files, kept_endings
from server.working_out import design_as_saved, facts_of

DRAWN: tuple[DrawingFormat, ...] = ("svg", "pdf", "dxf")
"""The files of a drawing that are kept with a revision."""
PACKET, CARD, FAILED_CARD = "packet.pdf", "card.pdf", "card-do-not-use.pdf"
"""The sheets that are kept with a revision: whatever is read off the part later, its card can carry the mark."""
ALL_KEPT = frozenset((*DRAWN, PACKET, CARD, FAILED_CARD))
MOST_WAITING = 64
"""Revisions that wait to be drawn; those beyond are drawn when somebody asks for a file of theirs."""
_FAILED = PartStanding(
    mark=DO_NOT_USE,
    words=MADE_WRONG,
    reasons=(said("Its readings stand on the page of this design, with what they mean."),),
)
_log = logging.getLogger("seamrest.drawing")


def later_of(request: Request) -> "LaterDrawing":
    """The line of this server."""
    found: LaterDrawing = request.app.state.later
    return found


class LaterDrawing:
    """Draws what revisions lack, one piece after the other, so that people who wait for a drawing find processes free.

    What is waiting here is lost with the server, and nothing else is: the revision itself was written before, and the first
    who asks for a file of it has it drawn, and puts the revision in line again.
    """

    def __init__(self, database: Database) -> None:
        self._database = database
        self._line: dict[str, Revision] = {}
        self._task: asyncio.Task[None] | None = None

    def add(self, found: Revision) -> None:
        """Put a revision in line, unless an older program made it, whose drawing nobody can make any more as it was."""
        if found.engine_version != ENGINE_VERSION or len(self._line) >= MOST_WAITING:
            return
        self._line.setdefault(found.id, found)
        if self._task is None or self._task.done():
            self._task = asyncio.create_task(self._work())

    async def settled(self) -> None:
        """Wait until nothing is in line."""
        if self._task is not None:
            await asyncio.wait([self._task])

    async def stop(self) -> None:
        """Give up what is in line."""
        if self._task is not None:
            self._task.cancel()
            await self.settled()

    async def _work(self) -> None:
        while self._line:
            found = next(iter(self._line.values()))
            try:
                await self._draw(found)
            except SeamrestError as error:
                # It is drawn when somebody asks for it, and they are told what is wrong.
                _log.warning("A saved revision is not drawn yet: %s", type(error).__name__)
            finally:
                del self._line[found.id]

    async def _draw(self, found: Revision) -> None:
        if await run_in_threadpool(self._has_all, found):
            return
        design = await run_in_threadpool(design_as_saved, found)
        if design is None:
            return
        facts = facts_of(found)
        content = {
            **await drawers.drawings(design.pad, facts, DRAWN),
            PACKET: await drawers.sheet(PACKET, design, facts),
            CARD: await drawers.sheet(CARD, design, facts),
            FAILED_CARD: await drawers.sheet(CARD, design, facts, failed=_FAILED),
        }
        await run_in_threadpool(keep_files, self._database, found.id, content)

    def _has_all(self, found: Revision) -> bool:
        with self._database.reading() as connection:
            return kept_endings(connection, found.id) >= ALL_KEPT
