"""Packet and lifting card of a saved design: as saved, whatever becomes of the engine, and marked where the part failed."""

import re
import subprocess
from pathlib import Path

import pytest
from httpx import AsyncClient, Response
from sqlalchemy import delete, update

from geometry.document.as_made import READABLE
from geometry.standing import DO_NOT_USE
from server.store.tables import files, revisions
from tests.documents import van
from tests.server.saving.asking import FAILING, inputs, links_of, page, save, send, words_of
from tests.server.saving.conftest import client_of, opened
from tests.server.saving.test_saving_files import exported, upload

pytestmark = pytest.mark.anyio
TOO_BIG = {"as_made.seat_diameter_mm": "68.4"}
"""Larger than the cup of 68 mm."""


def text_of(answer: Response, folder: Path) -> str:
    """The words of a PDF, as poppler finds them."""
    assert answer.status_code == 200, answer.text
    file = folder / "sheet.pdf"
    file.write_bytes(answer.content)
    found = subprocess.run(["pdftotext", file, "-"], capture_output=True, text=True, check=True).stdout
    return " ".join(found.split())


def by_an_older_engine(setting: str) -> None:
    with opened(setting) as database, database.writing() as connection:
        connection.execute(update(revisions).values(engine_version="0.1"))


def nothing_is_kept(setting: str) -> None:
    with opened(setting) as database, database.writing() as connection:
        connection.execute(delete(files))


@pytest.mark.parametrize("name", ["card", "packet"])
async def test_a_sheet_of_a_saved_design_is_as_the_working_sheet_gave_it(asking: AsyncClient, name: str) -> None:
    """Oracle: the same sheet at the unsaved address."""
    owner = await save(asking)
    unsaved = await asking.get(inputs().replace("/pad?", f"/pad/{name}.pdf?"))
    found = await asking.get(f"{owner}.{name}.pdf")
    assert found.content == unsaved.content
    assert re.search(rf'filename="lifting-pad-[0-9a-f]{{12}}-rev-a-{name}\.pdf"', found.headers["content-disposition"])
    assert f"{owner}.{name}.pdf" in await page(asking, owner)


async def test_sheets_are_kept_and_not_made_again_by_another_engine(
    asking: AsyncClient, setting: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Oracle: byte for byte the same with the engine out of order and the revision said to be of another one."""
    owner = await save(asking)
    before = [(await asking.get(f"{owner}.{name}.pdf")).content for name in ("card", "packet")]
    by_an_older_engine(setting)

    def broken(*_: object, **__: object) -> None:
        raise AssertionError("something was worked out again")

    for name in ("server.drawn.drawers.sheet", "server.working_out.design_pad"):
        monkeypatch.setattr(name, broken)
    async with client_of(setting) as other:
        assert [(await other.get(f"{owner}.{name}.pdf")).content for name in ("card", "packet")] == before


async def test_sheets_come_in_the_readers_units_while_the_engine_is_here(
    asking: AsyncClient, setting: str, tmp_path: Path
) -> None:
    """Oracle: the cup of 68 mm is 2.677 in; once the engine is gone the card is as it was saved."""
    owner = await save(asking)
    assert "bore 2.677 in" in text_of(await asking.get(f"{owner}.card.pdf?units=in"), tmp_path)
    by_an_older_engine(setting)
    assert "bore 68 mm" in text_of(await asking.get(f"{owner}.card.pdf?units=in"), tmp_path)


@pytest.mark.parametrize("engine", ["todays", "older"])
async def test_the_card_of_a_failed_part_carries_the_mark_and_no_steps(
    asking: AsyncClient, setting: str, tmp_path: Path, engine: str
) -> None:
    owner = await save(asking)
    assert DO_NOT_USE not in text_of(await asking.get(f"{owner}.card.pdf"), tmp_path)
    await send(asking, f"{owner}/readings", **TOO_BIG)
    if engine == "older":
        by_an_older_engine(setting)
    for link in (await links_of(asking, owner)).values():
        answer = await asking.get(f"{link}.card.pdf")
        words = text_of(answer, tmp_path)
        assert DO_NOT_USE in words
        assert "Do not lift with this pad" in words
        assert "Wipe the cup" not in words
        assert "card-DO-NOT-USE.pdf" in answer.headers["content-disposition"]
        assert DO_NOT_USE in words_of(await page(asking, link))


async def test_the_packet_of_a_failed_part_carries_the_mark_or_is_not_given_out(
    asking: AsyncClient, setting: str, tmp_path: Path
) -> None:
    owner = await save(asking)
    await send(asking, f"{owner}/readings", **TOO_BIG)
    assert DO_NOT_USE in text_of(await asking.get(f"{owner}.packet.pdf"), tmp_path)
    by_an_older_engine(setting)
    refused = await asking.get(f"{owner}.packet.pdf")
    assert refused.status_code == 409
    assert "say that it must not be used" in words_of(refused.text)
    assert ".packet.pdf" not in await page(asking, owner)


async def test_only_readings_that_settle_it_clear_a_part_that_failed(asking: AsyncClient) -> None:
    """Oracle: one reading more leaves the part open; all sizes read as drawn clear it; a bad one marks it again."""
    owner = await save(asking)
    sizes = (await asking.get(f"{owner}.json")).json()["pad"]
    as_drawn = {f"as_made.{name}": str(size) for name, size in sizes.items() if name in READABLE and size}
    marked = []
    for readings in (TOO_BIG, {"as_made.web_mm": str(sizes["web_mm"])}, as_drawn, TOO_BIG):
        await send(asking, f"{owner}/readings", **readings)
        marked.append(f"{DO_NOT_USE}. Its readings" in words_of(await page(asking, owner)))
    assert marked == [True, True, False, True]


async def test_readings_that_were_saved_with_the_measurements_mark_page_and_card(
    asking: AsyncClient, tmp_path: Path
) -> None:
    owner = await save(asking, van() | {"as_made": {"seat_diameter_mm": [68.4]}})
    assert DO_NOT_USE in words_of(await page(asking, owner))
    assert DO_NOT_USE in text_of(await asking.get(f"{owner}.card.pdf"), tmp_path)


async def test_what_was_not_kept_is_made_while_its_engine_is_here_and_else_refused_in_words(
    asking: AsyncClient, setting: str, tmp_path: Path
) -> None:
    """A design from a file has no sheets kept with it."""
    answer = await upload(asking, "/mine/import", await exported(asking, await save(asking)))
    new = "/saved/" + answer.text.split('href="/saved/')[1].split('"')[0]
    nothing_is_kept(setting)
    assert "bore 68 mm" in text_of(await asking.get(f"{new}.card.pdf"), tmp_path)
    by_an_older_engine(setting)
    assert "bore 68 mm" in text_of(await asking.get(f"{new}.card.pdf"), tmp_path), "what somebody asked for is kept"
    nothing_is_kept(setting)
    for name in ("card", "packet"):
        refused = await asking.get(f"{new}.{name}.pdf")
        assert refused.status_code == 404
        assert "were not kept with this revision" in words_of(refused.text)
    text = await page(asking, new)
    assert ".card.pdf" not in text
    assert "were not kept with this revision" in words_of(text)


async def test_the_card_of_a_pad_that_is_not_fit_says_so(asking: AsyncClient, tmp_path: Path) -> None:
    answer = await asking.get(f"{await save(asking, FAILING)}.card.pdf")
    assert "NOT FIT TO MAKE" in text_of(answer, tmp_path)
    assert "NOT-FIT" in answer.headers["content-disposition"]
