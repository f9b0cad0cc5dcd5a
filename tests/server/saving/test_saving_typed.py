"""Under a saved design's link goes along what was typed on the pages of the shop, from each of them to each."""

import re
from html import unescape

import pytest
from httpx import AsyncClient

from tests.server.saving.asking import links_of, page, save, send, words_of
from tests.server.test_carried import DAY, LATER, TYPED, hidden, keys, ways

pytestmark = pytest.mark.anyio
KINDS = ("owner", "friend", "view")
PAGES = ("route", "inspection", "record")
TITLES = ("Route card", "Inspection sheet", "Record in service")


async def link_of(client: AsyncClient, kind: str) -> str:
    owner = await save(client)
    return {"owner": owner, **await links_of(client, owner)}[kind]


async def opened(client: AsyncClient, address: str, **typed: str) -> str:
    """A page with what was typed in its address; an inspection sheet may be led to the one that keeps."""
    answer = await client.get(address, params=typed, follow_redirects=True)
    assert answer.status_code == 200, answer.text
    return answer.text


@pytest.mark.parametrize("where", PAGES)
@pytest.mark.parametrize("kind", KINDS)
async def test_every_page_passes_on_what_was_typed_on_the_others(asking: AsyncClient, kind: str, where: str) -> None:
    """Oracle: what was typed; every way stays under the link, and in inches it means the same."""
    link = await link_of(asking, kind)
    found = ways(await opened(asking, f"{link}/{where}", **TYPED, **DAY, **LATER, units="mm"))
    for words in (*TITLES, "Back to revision A", "in"):
        assert found[words].startswith(link)
    for words in (*TITLES, "Back to revision A"):
        assert keys(found[words]).items() >= (TYPED | DAY | LATER).items()
    spelled = {"as_made.web_mm": "18.5 mm", "added.web": "18.4 mm", "units": "in"}
    assert keys(found["in"]).items() >= (TYPED | DAY | LATER | spelled).items()


@pytest.mark.parametrize("kind", KINDS)
async def test_the_revisions_own_page_passes_it_on_and_says_that_it_is_not_kept(asking: AsyncClient, kind: str) -> None:
    """Oracle: the ways to the pages of the shop, to other units of the drawing, to its page and back."""
    link = await link_of(asking, kind)
    text = await opened(asking, link, **TYPED, **DAY, **LATER)
    assert "nothing of it is kept here" in words_of(text)
    assert "nothing of it is kept here" not in words_of(await page(asking, link))
    for words in (*TITLES, "inch", "third angle", "Look at the drawing closely"):
        way = re.search(rf'<a href="([^"]+)"[^>]*>{words}</a>', text)
        assert way
        assert keys(way[1]).items() >= (TYPED | DAY | LATER).items()
    inches = re.search(r'<a href="([^"]+)"[^>]*>inch</a>', text)
    assert inches
    route = re.search(r'<a href="([^"]+)"[^>]*>Route card</a>', await page(asking, unescape(inches[1])))
    assert route
    assert keys(route[1]).items() >= {"as_made.web_mm": "18.5 mm", "units": "in"}.items()


async def test_what_is_as_the_revision_has_it_makes_no_address_longer(asking: AsyncClient) -> None:
    """Oracle: the form of the card sends every question that it asks; of these one is another than the revision's."""
    link = await link_of(asking, "friend")
    text = await opened(asking, f"{link}/route", **{"make.material": "", "shop.tool": "carbide", "shop.kerf_mm": ""})
    assert keys(ways(text)["Record in service"]) == {"shop.tool": "carbide", "units": "mm"}


@pytest.mark.parametrize(
    ("where", "form", "own"),
    [("route", 'class="on-screen shop-form"', "shop."), ("inspection", 'class="inspection"', "as_made.")],
)
async def test_a_form_sends_along_what_another_page_asks_for(
    asking: AsyncClient, where: str, form: str, own: str
) -> None:
    """Oracle: the same for the holder of a link to read."""
    link = await link_of(asking, "view")
    found = hidden(await opened(asking, f"{link}/{where}", **TYPED, **DAY, **LATER), form)
    others = {key: value for key, value in TYPED.items() if not key.startswith(own)}
    assert found.items() >= (others | DAY | LATER).items()
    assert not any(key.startswith(own) for key in found)


async def test_readings_that_are_not_sent_yet_stand_in_their_boxes(asking: AsyncClient) -> None:
    """Oracle: what was typed, with the reader's name; nothing of it is kept by looking at the page."""
    link = await link_of(asking, "friend")
    text = await opened(asking, f"{link}/readings", **{"as_made.web_mm": "18.5", "name": "Ada", "as_made.note": "dry"})
    for key, value in (("as_made.web_mm", "18.5"), ("as_made.note", "dry"), ("name", "Ada")):
        assert re.search(rf'name="{key}"[^>]*value="{value}"', text)
    assert "No readings yet." in words_of(await page(asking, link))


async def test_wrong_readings_come_back_with_all_that_was_typed_beside_them(asking: AsyncClient) -> None:
    """Oracle: beside the box its limits in mm and what to do; the answers of the other pages in every way and in the action."""
    link = await link_of(asking, "friend")
    others = {"shop.tool": "carbide"} | DAY | LATER
    action = re.search(r'method="post" action="([^"]+)"', await opened(asking, f"{link}/readings", **others))
    assert action
    sent = {"as_made.web_mm": "18500", "as_made.seat_diameter_mm": "67.2", "name": "Ada", "units": "mm"}
    answer = await send(asking, unescape(action[1]), **sent)
    assert answer.status_code == 422
    beside = re.search(r'<div class="reading has-problem.*?</div>', answer.text, re.S)
    assert beside
    assert 'value="18500"' in beside[0]
    assert "18500" in words_of(beside[0])
    assert "mm" in words_of(beside[0])
    assert '<a href="#field-as_made-web_mm">To its box: Web, as read</a>' in answer.text
    typed = {key: value for key, value in sent.items() if key != "units"}
    assert keys(ways(answer.text)["Route card"]).items() >= (others | typed).items()
    again = re.search(r'method="post" action="([^"]+)"', answer.text)
    assert again
    kept = await send(asking, unescape(again[1]), **{**sent, "as_made.web_mm": "19"})
    assert kept.status_code == 303
    assert keys(kept.headers["location"]) == others | {"said": "readings"}


async def test_answers_that_leave_no_pad_are_put_right_under_the_link_from_any_page(asking: AsyncClient) -> None:
    """Oracle: the record of a pad that no cutter can make leads to the questions, with everything that was typed."""
    link = await link_of(asking, "view")
    typed = {"make.cutter_diameters_mm": "20"} | DAY | LATER
    answer = await asking.get(f"{link}/record", params=typed)
    assert answer.status_code == 303
    assert answer.headers["location"].startswith(f"{link}/route?")
    text = (await asking.get(answer.headers["location"])).text
    assert 'value="20"' in text
    assert hidden(text, 'class="on-screen shop-form"').items() >= (DAY | LATER).items()


async def test_a_remark_does_not_lose_what_was_typed_on_the_shops_pages(asking: AsyncClient) -> None:
    link = await link_of(asking, "friend")
    action = re.search(r'action="([^"]+/remarks[^"]*)"', await opened(asking, link, **TYPED))
    assert action
    answer = await send(asking, unescape(action[1]), words="Starting on Monday.")
    assert keys(answer.headers["location"]) == TYPED | {"said": "remark"}
