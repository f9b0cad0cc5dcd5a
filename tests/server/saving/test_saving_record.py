"""Readings in service under a saved design's link: another day stays there, and whoever may keep it is led to where it is kept."""

import re
from html import unescape
from urllib.parse import parse_qsl, urlsplit

import pytest
from httpx import AsyncClient

from tests.documents import van
from tests.server.saving.asking import links_of, page, save, words_of

pytestmark = pytest.mark.anyio
FIRST = "2026-03-01 wall clean"
READ_ONCE = van() | {"wear": {"log": FIRST}}
KINDS = ("owner", "friend", "view")


async def link_of(client: AsyncClient, kind: str) -> str:
    """The address of a revision with one entry, for the holder of a link."""
    owner = await save(client, READ_ONCE)
    return {"owner": owner, **await links_of(client, owner)}[kind]


@pytest.mark.parametrize("kind", KINDS)
async def test_another_day_stays_under_the_link(asking: AsyncClient, kind: str) -> None:
    """Oracle: the forms' own actions and the address that the second day leads to; both days stand on its page."""
    link = await link_of(asking, kind)
    text = await page(asking, f"{link}/record")
    assert set(re.findall(r'<form[^>]* action="([^"]+)"', text)) == {f"{link}/record"}
    carried = dict(re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)"', text))
    assert "jack.cup_bore_mm" not in carried
    answer = await asking.get(
        f"{link}/record", params=carried | {"added.day": "2026-04-01", "added.wall": "clean", "added.web": ""}
    )
    assert answer.status_code == 303
    led = answer.headers["location"]
    assert led.startswith(f"{link}/record?")
    words = words_of(await page(asking, led))
    assert "2026-03-01" in words
    assert "2026-04-01" in words


async def test_a_day_that_cannot_be_read_is_asked_for_again_under_the_link(asking: AsyncClient) -> None:
    """Oracle: what was sent stands in its boxes, the way back is the revision's, and nothing became of it."""
    link = await link_of(asking, "friend")
    answer = await asking.get(f"{link}/record?added.web=18.4&units=mm")
    assert answer.status_code == 422
    assert f'<a class="way-back" href="{link}?added.web=18.4&amp;added.later=yes">' in answer.text
    assert 'name="added.web" type="text" inputmode="decimal" autocomplete="off" value="18.4"' in answer.text
    assert "Say on which day it was read." in words_of(answer.text)


async def test_an_entry_is_taken_out_under_the_link(asking: AsyncClient) -> None:
    """Oracle: without its only entry the log is empty, though the revision holds it."""
    link = await link_of(asking, "view")
    found = re.search(r'href="([^"]+)#dates">Take it out', await page(asking, f"{link}/record"))
    assert found
    address = unescape(found[1])
    assert address.startswith(f"{link}/record?")
    assert "Take it out" not in await page(asking, address)


async def test_a_log_that_cannot_be_read_is_put_right_under_the_link(asking: AsyncClient) -> None:
    """Oracle: the box with what was typed, in a form that sends it to the same page."""
    link = await link_of(asking, "friend")
    answer = await asking.get(f"{link}/record?wear.log=2026-03-01+web")
    assert answer.status_code == 422
    assert f'action="{link}/record"' in answer.text
    assert 'value="2026-03-01 web"' in answer.text


@pytest.mark.parametrize(
    ("kind", "where", "says"),
    [
        ("owner", "/change", "Save it as the next revision"),
        ("friend", "/try", "Send it back as a proposal"),
    ],
)
async def test_whoever_may_keep_another_day_is_led_to_where_it_is_kept(
    asking: AsyncClient, kind: str, where: str, says: str
) -> None:
    """Oracle: the form that the way leads to sends both days; before anything was added there is no such way."""
    link = await link_of(asking, kind)
    both = f"{FIRST}; 2026-04-01 wall clean"
    assert f'href="{link}{where}' not in await page(asking, f"{link}/record")
    text = (await asking.get(f"{link}/record", params={"wear.log": both})).text
    way = re.search(rf'href="({link}{where}\?[^"]+)"', text)
    assert way
    kept = await page(asking, unescape(way[1]))
    assert says in words_of(kept)
    inputs = re.search(r'name="inputs" value="([^"]+)"', kept)
    assert inputs
    assert dict(parse_qsl(urlsplit(unescape(inputs[1])).query))["wear.log"] == both


async def test_a_friends_other_bar_does_not_lose_the_days(asking: AsyncClient) -> None:
    """Oracle: what the form of the copy carries beside its questions."""
    link = await link_of(asking, "friend")
    log = f"{FIRST}; 2026-04-01 wall clean"
    text = (await asking.get(f"{link}/try", params={"wear.log": log})).text
    form = text[text.index("<form") : text.index("</form>")]
    assert f'<input type="hidden" name="wear.log" value="{log}">' in form


async def test_a_reader_is_told_that_another_day_is_not_kept(asking: AsyncClient) -> None:
    link = await link_of(asking, "view")
    text = await page(asking, f"{link}/record")
    assert "This link is for reading" in words_of(text[text.index('id="dates"') :])
