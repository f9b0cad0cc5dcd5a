"""The difference page between revisions that different versions of the calculation made."""

import json
import re
from collections.abc import Callable
from typing import Any

import pytest
from httpx import AsyncClient
from sqlalchemy import select, update

from geometry import ENGINE_VERSION
from server.store.tables import proposals, revisions
from tests.server.saving.asking import inputs, links_of, page, save, send, words_of
from tests.server.saving.conftest import opened

pytestmark = pytest.mark.anyio


def left_by(setting: str, engine: str, change: Callable[[dict[str, Any]], None]) -> None:
    """Revision A as an older version of the calculation would have left it."""
    with opened(setting) as database, database.writing() as connection:
        asked = select(revisions.c.design).where(revisions.c.number == 1)
        design = json.loads(connection.execute(asked).scalar_one())
        change(design)
        design["engine_version"] = engine
        old = {"design": json.dumps(design), "engine_version": engine}
        connection.execute(update(revisions).where(revisions.c.number == 1).values(**old))


def older(design: dict[str, Any]) -> None:
    """A web 2 mm thicker, an estimate that is gone today, no corner radius, and not yet the last estimate of today."""
    design["pad"]["web_mm"] += 2
    del design["pad"]["seat_corner_radius_mm"]
    gone = dict(design["checks"].pop())
    design["checks"].append({**gone, "code": "gone", "title": "What nobody asks today", "verdict": "not_checked"})
    design["measurements"]["service"]["forgotten_answer"] = "blue"
    design["verdict"] = "As it was put then."


async def test_two_revisions_of_different_engines_show_what_differs_and_say_whose_they_are(
    asking: AsyncClient, setting: str
) -> None:
    """Oracle: the changes that were put into the older one by hand, from either side."""
    owner = await save(asking)
    web = (await asking.get(f"{owner}.json")).json()["pad"]["web_mm"]
    last = (await asking.get(f"{owner}.json")).json()["checks"][-1]["title"]
    await send(asking, "/saved", inputs=inputs(seam__height_mm=22), to=owner)
    newer = (await asking.get(f"{owner.removesuffix('/A')}/B.json")).json()["pad"]["web_mm"]
    left_by(setting, "0.1", older)
    there = words_of(await page(asking, f"{owner}/difference?with=B"))
    back = words_of(await page(asking, f"{owner.removesuffix('/A')}/B/difference?with=A"))
    assert f"Version 0.1 of the calculation made revision A, version {ENGINE_VERSION} the other." in there
    assert f"Version {ENGINE_VERSION} of the calculation made revision B, version 0.1 the other." in back
    assert f"{web + 2:g} mm {newer:g} mm" in there
    assert f"{newer:g} mm {web + 2:g} mm" in back
    assert re.search(r"Seat corner radius none [\d.]+ mm", there)
    assert "What nobody asks today not checked not asked" in there
    assert "What nobody asks today not asked not checked" in back
    assert f"{last} not asked" in there
    assert "service.forgotten_answer blue left out" in there
    assert "As it was put then." in there


async def test_an_engine_that_changed_is_said_even_where_nothing_else_did(asking: AsyncClient, setting: str) -> None:
    owner = await save(asking)
    left_by(setting, "0.1", lambda _: None)
    words = words_of(await page(asking, f"{owner}/difference?with=today"))
    assert f"Version 0.1 of the calculation made revision A, version {ENGINE_VERSION} the other." in words
    assert "Answers, sizes and estimates are the same." in words


async def test_one_engine_is_not_mentioned(asking: AsyncClient) -> None:
    owner = await save(asking)
    await send(asking, "/saved", inputs=inputs(seam__height_mm=22), to=owner)
    for other in ("B", "today"):
        assert "of the calculation made" not in words_of(await page(asking, f"{owner}/difference?with={other}"))


async def test_a_proposal_that_an_older_engine_worked_out_says_so(asking: AsyncClient, setting: str) -> None:
    owner = await save(asking)
    friend = (await links_of(asking, owner))["friend"]
    sent = await send(asking, f"{friend}/proposals", inputs=inputs(seam__height_mm=22), name="Ada")
    assert sent.status_code == 303, sent.text
    with opened(setting) as database, database.writing() as connection:
        connection.execute(update(proposals).values(engine_version="0.1"))
        which = connection.execute(select(proposals.c.id)).scalar_one()
    words = words_of(await page(asking, f"{owner}/difference?with={which}"))
    assert f"Version {ENGINE_VERSION} of the calculation made revision A, version 0.1 the other." in words
