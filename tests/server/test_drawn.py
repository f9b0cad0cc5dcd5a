"""Drawings come from processes of their own: the same bytes as anywhere, and trouble that costs one request."""

import os
import subprocess
import sys
from collections.abc import AsyncIterator
from datetime import date
from pathlib import Path

import pytest

from geometry.design import Design, design_pad
from geometry.drawing import SheetError, draw, to_dxf, to_pdf, to_svg
from geometry.drawing.facts import SheetFacts
from geometry.drawing.isometric_svg import isometric_svg
from geometry.drawing.table import dimension_table
from geometry.measurements import read_measurements
from geometry.packet import card_pdf, packet_pdf
from geometry.sheet_facts import sheet_facts
from server.drawn import Drawers, DrawingFailedError, do_work
from server.processes import BusyError, ProcessDiedError, ProcessTimeoutError, Task, Team
from server.settings import Settings
from tests.documents import van
from tests.server.misbehaving import draw_badly

pytestmark = pytest.mark.anyio
ROOT = Path(__file__).resolve().parents[2]
DESIGN: Design = design_pad(read_measurements(van()))
FACTS: SheetFacts = sheet_facts(DESIGN, issued=date(2026, 2, 3))


@pytest.fixture(scope="module")
async def drawers() -> AsyncIterator[Drawers]:
    """One process that draws."""
    started = Drawers()
    started.start(Settings(drawing_workers=1))
    yield started
    started.stop()


async def test_a_drawing_is_byte_for_byte_what_it_is_without_a_process(drawers: Drawers) -> None:
    files = await drawers.drawings(DESIGN.pad, FACTS, ("svg", "dxf", "pdf"))
    drawing = draw(DESIGN.pad, FACTS)
    assert files["svg"] == to_svg(drawing).encode()
    assert files["dxf"] == to_dxf(drawing).encode()
    assert files["pdf"] == to_pdf(drawing)


async def test_sheets_are_byte_for_byte_what_they_are_without_a_process(drawers: Drawers) -> None:
    assert await drawers.sheet("card.pdf", DESIGN, FACTS) == card_pdf(DESIGN, FACTS)
    assert await drawers.sheet("packet.pdf", DESIGN, FACTS) == packet_pdf(DESIGN, FACTS)


async def test_the_page_gets_picture_scale_and_sizes(drawers: Drawers) -> None:
    drawn, drawing = await drawers.drawn(DESIGN.pad, FACTS), draw(DESIGN.pad, FACTS)
    assert (drawn.scale, drawn.rows) == (drawing.scale.words, dimension_table(drawing))
    assert drawn.picture == to_svg(drawing)


async def test_the_picture_in_the_hand_is_what_it_is_without_a_process(drawers: Drawers) -> None:
    picture = await drawers.isometric(DESIGN.pad, title="a pad", description="<of words>")
    assert picture == isometric_svg(DESIGN.pad, title="a pad", description="<of words>")


async def test_a_pad_that_no_sheet_holds_is_refused_in_words(drawers: Drawers) -> None:
    """Four metres of web fit no scale on A4."""
    tall = DESIGN.pad.with_(web_mm=3900.0)
    with pytest.raises(SheetError, match="standard scale"):
        await drawers.drawings(tall, FACTS, ("svg",))
    assert await drawers.drawings(DESIGN.pad, FACTS, ("svg",))


async def test_an_unforeseen_exception_is_no_reason_to_come_again(drawers: Drawers) -> None:
    """There is no such sheet, so that its process raises a KeyError."""
    with pytest.raises(DrawingFailedError, match="KeyError"):
        await drawers.sheet("no such sheet", DESIGN, FACTS)
    assert await drawers.drawings(DESIGN.pad, FACTS, ("svg",))


def team(**options: float) -> Team[tuple[str, str], bytes]:
    """One process that misbehaves when told to."""
    chosen = {"size": 1, "line": 2, "timeout_s": 0.5, "memory_mb": 256} | options
    return Team(Task(thing="drawing", do=draw_badly), **chosen)  # type: ignore[arg-type]  # whole numbers where they must be


async def test_a_hang_a_crash_and_a_full_line_cost_one_drawing_each() -> None:
    drawing = team()
    drawing.start()
    try:
        drawing.submit(("well", "")).result(30)
        hangs = [drawing.submit(("hang", "")), drawing.submit(("crash", "")), drawing.submit(("well", "first"))]
        with pytest.raises(BusyError, match="3 drawings"):
            drawing.submit(("well", ""))
        with pytest.raises(ProcessTimeoutError, match=r"drawing was not ready after 0\.5 s"):
            hangs[0].result(30)
        with pytest.raises(ProcessDiedError, match="made this drawing died"):
            hangs[1].result(30)
        assert hangs[2].result(30).split()[1] == b"first"
    finally:
        drawing.stop()


async def test_a_process_that_has_grown_is_followed_by_a_fresh_one() -> None:
    """Each drawing leaves 30 MB behind; with 256 MB allowed, a process that has grown by 64 MB is spent."""
    drawing = team(timeout_s=20)
    drawing.start()
    try:
        pids = [drawing.submit(("leak", "")).result(30).split()[0] for _ in range(7)]
    finally:
        drawing.stop()
    assert len(set(pids)) in {3, 4}
    assert pids[0] == pids[1]
    for pid in set(pids):
        with pytest.raises(ProcessLookupError):
            os.kill(int(pid), 0)


def test_the_work_is_known_by_name() -> None:
    assert do_work(("isometric", (DESIGN.pad, "a", "b"))).startswith("<svg")


_WEB_SIDE = """
import asyncio, re, sys
from pathlib import Path
from httpx import ASGITransport, AsyncClient
from server.app import create_app
from server.links import ready_sample
from server.settings import Settings

async def ask():
    app = create_app(Settings(database=":memory:", kernel_workers=1, drawing_workers=1, model_cache_folder="none"))
    page = ready_sample().address
    async with app.router.lifespan_context(app), AsyncClient(
        transport=ASGITransport(app=app), base_url="http://pads.test"
    ) as client:
        for end in ("", ".svg", ".dxf", ".pdf", ".zip", "/drawing", "/drawing.png", "/packet.pdf", "/turn", "/calculation"):
            answer = await client.get(page.replace("/pad?", f"/pad{end}?"))
            assert answer.status_code == 200, (end, answer.text[:500])
        saved = await client.post("/saved", data={"inputs": page}, headers={"Sec-Fetch-Site": "same-origin"})
        assert saved.status_code == 303, saved.text[:500]
        picture = await client.get(saved.headers["location"].partition("?")[0] + ".png")
        assert picture.content[:4] == b"\\x89PNG", picture.text[:500]

if __name__ == "__main__":
    asyncio.run(ask())
    print(sorted({"typst", "ezdxf", "numpy", "scipy", "OCP", "server.sheets"} & set(sys.modules)))
    print(int(re.search(r"VmHWM:\\s+(\\d+) kB", Path("/proc/self/status").read_text())[1]) // 1024)
"""


def test_the_web_never_loads_what_draws_and_stays_small(tmp_path: Path) -> None:
    """Every kind of page and file is asked for: none of the heavy libraries is among the loaded modules afterwards, and the
    most memory that was ever in use is no more than 150 MB."""
    (tmp_path / "web.py").write_text(_WEB_SIDE)
    done = subprocess.run(
        [sys.executable, str(tmp_path / "web.py")],
        cwd=ROOT,
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    modules, most_mb = done.stdout.splitlines()
    assert modules == "[]"
    assert 20 < int(most_mb) <= 150
