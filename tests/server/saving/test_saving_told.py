"""What an owner is told first, what is asked before it is done, and what can be put right."""

import re

import pytest
from httpx import AsyncClient

from geometry.standing import DO_NOT_USE
from tests.geometry.heads.documents import on_a_rail
from tests.server.saving.asking import inputs, links_of, page, save, send, words_of
from tests.server.saving.conftest import client_of
from tests.server.saving.test_saving_files import exported, upload
from tests.server.saving.test_saving_papers import TOO_BIG

pytestmark = pytest.mark.anyio
_FAILED = f"{DO_NOT_USE}. Its readings"
"""How the page of a part that must not be used begins to say so."""


async def pair(client: AsyncClient) -> tuple[str, str, float]:
    """An owner's and a friend's address, and the web as drawn."""
    owner = await save(client)
    web = (await client.get(f"{owner}.json")).json()["pad"]["web_mm"]
    return owner, (await links_of(client, owner))["friend"], web


async def wrong(client: AsyncClient, friend: str, web: float) -> None:
    """A web that is 1.5 mm too thin, which is no slip and lies outside ISO 2768-m."""
    answer = await send(client, f"{friend}/readings", **{"as_made.web_mm": f"{web - 1.5}"})
    assert answer.status_code == 303, words_of(answer.text)


async def test_what_came_stands_at_the_owners_top_and_what_is_outside_before_it(asking: AsyncClient) -> None:
    """Oracle: nothing of it before it came; afterwards above the verdict and the links, the failed size first."""
    owner, friend, web = await pair(asking)
    assert 'id="came"' not in await page(asking, owner)
    await wrong(asking, friend, web)
    await send(asking, f"{friend}/remarks", words="Look at the web.")
    text = await page(asking, owner)
    places = [text.index(s) for s in ('id="outside"', 'id="came"', '<p class="lead', 'id="links"')]
    assert places == sorted(places)
    assert "1 set of readings , 1 remark ." in words_of(text)
    assert text.count('<tr class="is-out">') == 1
    assert 'id="came"' not in await page(asking, friend)


async def test_a_reading_that_looks_like_a_slip_is_asked_about_before_it_is_kept(asking: AsyncClient) -> None:
    """Oracle: 9.91 typed for 99.1 comes back as typed with a question and is not kept until it is said to be right."""
    _, friend, web = await pair(asking)
    typed = {"as_made.body_diameter_mm": "9.91", "as_made.web_mm": f"{web}", "name": "Ada"}
    asked = await send(asking, f"{friend}/readings", **typed)
    assert asked.status_code == 422
    assert 'id="questions"' in asked.text
    for value in typed.values():
        assert f'value="{value}"' in asked.text
    assert "No readings yet" in await page(asking, friend)
    sure = await send(asking, f"{friend}/readings", **typed, **{"as_made.sure": "yes"})
    assert sure.status_code == 303
    assert "9.91 mm" in await page(asking, friend)


async def test_the_owner_strikes_a_set_out_and_it_stays_marked(asking: AsyncClient) -> None:
    """Oracle: the set is still read on the page, but neither top nor standing speaks of it; a friend may not."""
    owner, friend, web = await pair(asking)
    await wrong(asking, friend, web)
    which = re.search(r'name="strike" value="([^"]+)"', await page(asking, owner))
    assert which
    assert (await send(asking, f"{friend}/readings", strike=which[1])).status_code == 403
    assert (await send(asking, f"{owner}/readings", strike="none-such")).status_code == 404
    assert (await send(asking, f"{owner}/readings", strike=which[1])).headers["location"].endswith("said=struck")
    text = await page(asking, owner)
    assert "Struck out by the owner." in text
    assert f"{web - 1.5:g} mm" in text
    assert 'id="outside"' not in text
    assert "part-standing is-failed" not in text


async def struck_out(client: AsyncClient) -> str:
    """A design with a set that fails the part, struck out, and a second that does not."""
    owner, friend, web = await pair(client)
    await send(client, f"{friend}/readings", **TOO_BIG)
    text = await page(client, owner)
    which = re.search(r'name="strike" value="([^"]+)"', text)
    assert which
    assert _FAILED in words_of(text)
    await send(client, f"{owner}/readings", strike=which[1])
    await send(client, f"{friend}/readings", **{"as_made.web_mm": f"{web}"}, name="Grace")
    return owner


async def test_a_struck_set_stays_struck_through_a_file_and_back(asking: AsyncClient, other_setting: str) -> None:
    """Oracle: the page of the design that was exported, in a database of the other kind; a second round gives the same."""
    owner = await struck_out(asking)
    file = await exported(asking, owner)
    kept = [sent["readings"] for sent in file["designs"][0]["revisions"][0]["readings"]]
    assert ["struck" in one for one in kept] == [True, False]
    async with client_of(other_setting) as other:
        new = "/saved/" + (await upload(other, "/mine/import", file)).text.split('href="/saved/')[1].split('"')[0]
        text = await page(other, new)
        assert text.count("Struck out by the owner.") == 1
        assert "68.4 mm" in text
        assert 'id="outside"' not in text
        assert _FAILED not in words_of(text)
        # The set that stands can still be struck, the one that was struck not again.
        assert text.count('name="strike"') == 1
        again = await exported(other, new)
    found = [sent["readings"] for sent in again["designs"][0]["revisions"][0]["readings"]]
    assert [one.get("struck") for one in found] == [one.get("struck") for one in kept]


async def test_a_set_that_was_not_struck_marks_the_part_after_a_file_as_before(asking: AsyncClient) -> None:
    """The same file without its mark of striking: what failed the part then fails it here."""
    owner = await struck_out(asking)
    file = await exported(asking, owner)
    sets = file["designs"][0]["revisions"][0]["readings"]
    del sets[0]["readings"]["struck"], sets[1]
    answer = await upload(asking, "/mine/import", file)
    new = "/saved/" + answer.text.split('href="/saved/')[1].split('"')[0]
    text = await page(asking, new)
    assert "Struck out" not in text
    assert 'id="outside"' in text
    assert _FAILED in words_of(text)


async def test_a_later_set_puts_an_earlier_one_right(asking: AsyncClient) -> None:
    owner, friend, web = await pair(asking)
    await wrong(asking, friend, web)
    await send(asking, f"{friend}/readings", **{"as_made.web_mm": f"{web}"})
    assert 'id="outside"' not in await page(asking, owner)


async def test_the_friends_link_comes_first_and_the_owners_last_without_a_code(asking: AsyncClient) -> None:
    text = await page(asking, await save(asking))
    assert re.findall(r'<input id="link-(\w+)"', text)[0] == "friend"
    assert re.findall(r'<input id="link-(\w+)"', text)[-1] == "owner"
    assert "The owner link as a code" not in text
    assert "The friend link as a code" in text


async def test_every_button_that_ends_a_link_stands_behind_a_question(asking: AsyncClient) -> None:
    text = await page(asking, await save(asking))
    behind = "".join(re.findall(r'<details class="ask-first">.*?</details>', text, re.S))
    assert text.count('name="deed"') == behind.count('name="deed"') == 5


@pytest.mark.parametrize(
    ("deed", "words"), [("end", "The friend link is taken back"), ("renew", "There is a new friend link")]
)
async def test_what_became_of_a_link_is_said(asking: AsyncClient, deed: str, words: str) -> None:
    owner = await save(asking)
    answer = await send(asking, f"{owner.rpartition('/')[0]}/links", kind="friend", deed=deed)
    landed = await asking.get(answer.headers["location"], follow_redirects=True)
    assert words in landed.text


async def test_who_saves_first_is_not_asked_for_a_link_that_is_not_there(asking: AsyncClient) -> None:
    text = await page(asking, inputs().replace("/pad?", "/save?"))
    folded = re.search(r"<details[^>]*data-belongs>.*?</details>", text, re.S)
    assert folded
    assert 'id="to"' in folded[0]
    assert 'id="name"' in folded[0]


async def test_a_reading_is_called_as_on_the_drawing_of_its_own_kind_of_pad(asking: AsyncClient) -> None:
    """Oracle: the drawing's table of a pad without a slot."""
    owner = await save(asking, on_a_rail())
    web = (await asking.get(f"{owner}.json")).json()["pad"]["web_mm"]
    await wrong(asking, (await links_of(asking, owner))["friend"], web)
    text = words_of(await page(asking, owner))
    assert text.count("Web: top above seat face") >= 2
    assert "slot floor" not in text
