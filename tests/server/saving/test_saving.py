"""Saving through HTTP: what is saved stays as saved, two who edit both keep their work, and nothing is overwritten."""

import re

import pytest
from httpx import AsyncClient
from sqlalchemy import select, update

from geometry import ENGINE_VERSION
from server.store.tables import ALL_TABLES, revisions
from tests.documents import van
from tests.server.saving.asking import FAILING, NO_PAD, at, inputs, links_of, page, save, send, words_of
from tests.server.saving.conftest import client_of, opened

pytestmark = pytest.mark.anyio


async def test_a_saved_design_has_a_page_with_its_verdict_and_its_letter(asking: AsyncClient) -> None:
    owner = await save(asking, title="Our van")
    assert re.fullmatch(r"/saved/[A-Za-z0-9_-]{22}/A", owner)
    words = words_of(await page(asking, owner))
    assert "Our van revision A" in words
    assert "estimates pass" in words


@pytest.mark.parametrize("ending", ["json", "svg", "pdf", "dxf", "document.json"])
async def test_a_file_of_a_saved_design_is_as_the_working_sheet_gave_it(asking: AsyncClient, ending: str) -> None:
    """Oracle: the same file at the unsaved address."""
    owner = await save(asking)
    unsaved = (await asking.get(inputs().replace("/pad?", f"/pad.{ending}?"))).content
    found = await asking.get(f"{owner}.{ending}")
    assert found.status_code == 200
    if ending == "document.json":
        assert found.json() == {"version": 1} | van()
    else:
        assert found.content == unsaved


async def test_the_name_a_design_is_saved_under_stands_on_its_papers(asking: AsyncClient) -> None:
    owner = await save(asking, van(), title="Shop jack, bolt head")
    assert (await asking.get(f"{owner}.document.json")).json()["title"] == "Shop jack, bolt head"
    assert "Shop jack, bolt head" in (await asking.get(f"{owner}.svg")).text


async def test_saved_files_are_kept_and_not_made_again(
    asking: AsyncClient, setting: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Oracle: with sizing, checking and drawing out of order, page, drawing and data are still there, byte for byte."""
    owner = await save(asking)
    before = {ending: (await asking.get(f"{owner}.{ending}")).content for ending in ("json", "svg", "pdf", "dxf")}

    def broken(*_: object, **__: object) -> None:
        raise AssertionError("something was worked out again")

    for name in ("server.working_out.design_pad", "server.drawn.drawers.drawings"):
        monkeypatch.setattr(name, broken)
    async with client_of(setting) as other:
        after = {ending: (await other.get(f"{owner}.{ending}")).content for ending in before}
        assert "estimates pass" in await page(other, owner)
    assert after == before


async def test_a_revision_that_another_engine_made_stays_and_the_page_says_what_is_different(
    asking: AsyncClient, setting: str
) -> None:
    """Oracle: a revision as an older engine might have left it, its web 2 mm thicker."""
    owner = await save(asking)
    with opened(setting) as database, database.writing() as connection:
        design = connection.execute(select(revisions.c.design)).scalar_one()
        web = re.search(r'"web_mm":([\d.]+)', design[design.index('"pad":') :])
        assert web
        old = design.replace(f'"web_mm":{web[1]}', f'"web_mm":{float(web[1]) + 2}')
        connection.execute(update(revisions).values(design=old, engine_version="0.1"))
    words = words_of(await page(asking, owner))
    assert f"Saved by version 0.1 of the calculation; today's is {ENGINE_VERSION}." in words
    assert "It would come out differently today: 1 sizes and 0 estimates." in words
    beside = words_of(await page(asking, f"{owner}/difference?with=today"))
    assert f"{float(web[1]) + 2:g} mm {float(web[1]):g} mm" in beside
    assert (await asking.get(f"{owner}.json")).json()["pad"]["web_mm"] == float(web[1]) + 2


async def test_an_engine_that_comes_to_the_same_is_not_mentioned(asking: AsyncClient, setting: str) -> None:
    owner = await save(asking)
    with opened(setting) as database, database.writing() as connection:
        connection.execute(update(revisions).values(engine_version="0.1"))
    assert "Saved by version" not in words_of(await page(asking, owner))


async def test_measurements_that_todays_program_no_longer_takes_leave_the_page_as_saved(
    asking: AsyncClient, setting: str
) -> None:
    owner = await save(asking)
    with opened(setting) as database, database.writing() as connection:
        connection.execute(update(revisions).values(document='{"jack":{"gone":1}}', engine_version="0.1"))
    words = words_of(await page(asking, owner))
    assert "Today's does not take these measurements" in words
    assert "estimates pass" in words


async def test_a_changed_copy_becomes_the_next_revision_and_the_first_stays(asking: AsyncClient) -> None:
    owner = await save(asking)
    first = (await asking.get(f"{owner}.json")).json()
    answer = await send(asking, "/saved", inputs=inputs(seam__height_mm=22), to=owner, note="Deeper seam")
    assert answer.status_code == 303
    assert answer.headers["location"] == at(owner, "B") + "?said=saved"
    assert (await asking.get(f"{owner}.json")).json() == first
    second = (await asking.get(at(owner, "B", ".json"))).json()
    assert second["measurements"]["seam"]["height_mm"] == 22
    assert b"rev-b" in (await asking.get(at(owner, "B", ".pdf"))).headers["content-disposition"].encode()


async def test_an_old_link_says_that_a_newer_revision_exists(asking: AsyncClient) -> None:
    owner = await save(asking)
    friend = (await links_of(asking, owner))["friend"]
    assert "newer revision" not in await page(asking, friend)
    await send(asking, "/saved", inputs=inputs(seam__height_mm=22), to=owner)
    words = await page(asking, friend)
    assert "A newer revision exists: B. This page shows A as it was saved." in words
    assert (await asking.get(friend.removesuffix("/A"))).headers["location"] == at(friend, "B")


async def test_two_revisions_stand_side_by_side_with_what_differs(asking: AsyncClient) -> None:
    """Oracle: the seam's height was changed from 20 to 22; nothing else was typed."""
    owner = await save(asking)
    await send(asking, "/saved", inputs=inputs(seam__height_mm=22), to=owner)
    words = words_of(await page(asking, f"{owner}/difference?with=B"))
    assert "20 mm 22 mm" in words
    assert "Slot depth" in words
    assert "Cup bore" not in words
    same = words_of(await page(asking, f"{owner}/difference?with=A"))
    assert "Answers, sizes and estimates are the same." in same


async def test_the_second_of_two_editors_gets_both_versions_and_overwrites_nothing(asking: AsyncClient) -> None:
    owner = await save(asking)
    await send(asking, "/saved", inputs=inputs(seam__height_mm=22), to=owner, note="first")
    answer = await send(asking, "/saved", inputs=inputs(seam__height_mm=24), to=owner, note="second")
    assert answer.status_code == 409
    words = words_of(answer.text)
    assert "Nothing of yours was saved yet, and nothing is lost" in words
    assert "22 mm 24 mm" in words
    assert (await asking.get(at(owner, "C"))).status_code == 404
    fields = dict(re.findall(r'<input type="hidden" name="(\w+)" value="([^"]*)"', answer.text))
    fields["inputs"] = fields["inputs"].replace("&amp;", "&")
    after = await send(asking, "/saved", **fields)
    assert after.headers["location"] == at(owner, "C") + "?said=saved"
    heights = [(await asking.get(at(owner, x, ".json"))).json()["measurements"]["seam"] for x in "ABC"]
    assert [h["height_mm"] for h in heights] == [20, 22, 24]


async def test_saving_what_is_already_saved_makes_no_revision(asking: AsyncClient) -> None:
    owner = await save(asking)
    answer = await send(asking, "/saved", inputs=inputs(), to=owner)
    assert answer.headers["location"] == f"{owner}?said=same"
    assert (await asking.get(at(owner, "B"))).status_code == 404


@pytest.mark.parametrize(
    ("address", "words"),
    [
        ("/pad?jack.cup_bore_mm=68", "still to be measured"),
        (inputs(NO_PAD), "must be at least"),
        ("/pad?jack.cup_bore_mm=abc", "abc"),
        ("", "still to be measured"),
    ],
)
async def test_what_is_no_pad_is_not_saved_and_the_reason_is_said(
    asking: AsyncClient, address: str, words: str
) -> None:
    for answer in (
        await send(asking, "/saved", inputs=address),
        await asking.get(address.replace("/pad", "/save") or "/save"),
    ):
        assert answer.status_code == 422
        assert words in words_of(answer.text)


async def test_a_pad_that_is_not_fit_is_saved_and_says_so(asking: AsyncClient) -> None:
    owner = await save(asking, FAILING)
    words = words_of(await page(asking, owner))
    assert "Do not make:" in words
    refused = await asking.get(f"{owner}.step")
    assert (refused.status_code, refused.json()["type"]) == (409, "/problems/not-fit")
    assert refused.json()["confirm"] == f"{owner}.step?confirm=not-fit"
    assert 'name="confirm" value="not-fit" required' in await page(asking, owner)


@pytest.mark.parametrize("link", ["https://elsewhere.test/", "nonsense", "/saved/short/A", "/saved/" + "A" * 22 + "/A"])
async def test_a_link_that_leads_nowhere_saves_nothing(asking: AsyncClient, setting: str, link: str) -> None:
    answer = await send(asking, "/saved", inputs=inputs(), to=link)
    assert answer.status_code in {404, 422}
    with opened(setting) as database, database.reading() as connection:
        assert connection.execute(select(revisions)).all() == []


async def test_nothing_that_is_read_changes_anything(asking: AsyncClient, setting: str) -> None:
    """Oracle: every row of every table, before and after asking for every address that reads."""
    owner = await save(asking)
    links = await links_of(asking, owner)
    await send(asking, "/saved", inputs=inputs(seam__height_mm=22), to=owner)

    def everything() -> list[object]:
        with opened(setting) as database, database.reading() as connection:
            return [tuple(row) for table in ALL_TABLES for row in connection.execute(select(table))]

    before = everything()
    for link in (owner, *links.values()):
        for tail in (
            "",
            ".json",
            ".svg?units=in",
            ".pdf",
            ".png",
            "/try",
            "/readings",
            "/route",
            "/inspection",
            "/record",
            "/drawing",
            "/difference?with=B",
            "/difference?with=today",
        ):
            await asking.get(link + tail)
        await asking.get(link.rpartition("/")[0])
        await asking.get(f"{link.rpartition('/')[0]}/links")
    await asking.get("/mine")
    await asking.get(inputs().replace("/pad", "/save"))
    assert everything() == before
    assert len(before) > 8


async def test_several_servers_on_one_database_are_one(setting: str) -> None:
    """Oracle: saved at one, read and followed by a revision at another, which the first then shows."""
    async with client_of(setting) as one, client_of(setting) as other:
        owner = await save(one)
        assert "revision A" in words_of(await page(other, owner))
        assert (await send(other, "/saved", inputs=inputs(seam__height_mm=22), to=owner)).status_code == 303
        assert "A newer revision exists: B" in await page(one, owner)
        late = await send(one, "/saved", inputs=inputs(seam__height_mm=24), to=owner)
        assert late.status_code == 409


async def test_a_database_that_is_gone_is_said_in_words(tmp_path: object) -> None:
    async with client_of("postgresql://nobody@/none?host=/nowhere") as client:
        answer = await send(client, "/saved", inputs=inputs())
        assert (answer.status_code, answer.headers["retry-after"]) == (503, "60")
        assert "cannot be reached at the moment" in answer.text
        assert "nowhere" not in answer.text
        assert (await client.get(inputs())).status_code == 200
