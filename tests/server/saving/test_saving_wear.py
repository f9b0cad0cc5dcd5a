"""Readings in service of a saved design: kept with the revision, and a worn pad marked whatever else was read of it."""

from pathlib import Path

import pytest
from httpx import AsyncClient

from geometry.design import design_pad
from geometry.document.as_made import READABLE
from geometry.measurements import read_measurements
from geometry.standing import DO_NOT_USE
from tests.documents import van
from tests.server.saving.asking import page, save, send, words_of
from tests.server.saving.test_saving_papers import text_of

pytestmark = pytest.mark.anyio
WORN = van() | {"wear": {"log": "2026-03-01 wall cracked"}}
GOOD = van() | {"wear": {"log": "2026-03-01 wall clean"}}


async def test_readings_in_service_are_kept_with_the_revision(asking: AsyncClient) -> None:
    """Oracle: the log of the document that was saved."""
    owner = await save(asking, GOOD)
    document = (await asking.get(f"{owner}.document.json")).json()
    assert document["wear"] == {"log": "2026-03-01 wall clean"}
    assert DO_NOT_USE not in words_of(await page(asking, owner))


async def test_a_worn_pad_marks_the_owners_page_and_the_card(asking: AsyncClient, tmp_path: Path) -> None:
    """Oracle: a wall that is cracked at its foot."""
    owner = await save(asking, WORN)
    words = words_of(await page(asking, owner))
    assert DO_NOT_USE in words
    assert "a wall was cracked at its foot" in words
    assert DO_NOT_USE in text_of(await asking.get(f"{owner}.card.pdf"), tmp_path)


async def test_good_readings_of_the_new_part_do_not_clear_a_worn_one(asking: AsyncClient) -> None:
    """Oracle: every size as drawn, and yet a crack."""
    owner = await save(asking, WORN)
    pad = design_pad(read_measurements(van())).pad
    read = {f"as_made.{name}": str(size) for name in READABLE if (size := getattr(pad, name)) > 0}
    await send(asking, f"{owner}/readings", **read)
    words = words_of(await page(asking, owner))
    assert "Measured as drawn" in words
    assert DO_NOT_USE in words
