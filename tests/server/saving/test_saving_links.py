"""Who may do what with which link, what the links keep to themselves, and what is refused."""

import logging
import re

import pytest
from httpx import AsyncClient, Response
from sqlalchemy import select

from server.store.keys import KINDS
from server.store.tables import ALL_TABLES
from tests.server.saving.asking import FAILING, at, inputs, links_of, page, save, send, words_of
from tests.server.saving.conftest import client_of, opened

pytestmark = pytest.mark.anyio

DEEDS: dict[str, tuple[str, dict[str, str], str]] = {
    "remarks": ("/A/remarks", {"words": "The bar is 110."}, "friend"),
    "readings": ("/A/readings", {"as_made.web_mm": "18.5"}, "friend"),
    "proposals": ("/A/proposals", {"inputs": inputs(make__material="pa66")}, "friend"),
    "title": ("/title", {"title": "Renamed"}, "owner"),
    "links": ("/links", {"kind": "view", "deed": "end"}, "owner"),
}
"""What is sent to where, and the least link that may."""


async def everything(setting: str) -> list[object]:
    with opened(setting) as database, database.reading() as connection:
        return [tuple(row) for table in ALL_TABLES for row in connection.execute(select(table))]


def secret_of(address: str) -> str:
    return address.split("/")[2]


@pytest.mark.parametrize("deed", DEEDS)
async def test_each_link_may_do_its_own_and_no_more(asking: AsyncClient, setting: str, deed: str) -> None:
    """Oracle: of view, friend and owner, exactly those from the named one on are let through; the others change nothing."""
    tail, fields, least = DEEDS[deed]
    owner = await save(asking)
    links = await links_of(asking, owner)
    for kind in KINDS:
        before = await everything(setting)
        answer = await send(asking, f"/saved/{secret_of(links[kind])}{tail}", **fields)
        may = KINDS.index(kind) >= KINDS.index(least)
        assert answer.status_code == (303 if may else 403), (kind, answer.text)
        assert (await everything(setting) != before) == may


async def test_no_page_with_a_secret_link_is_packed(asking: AsyncClient) -> None:
    """Oracle: what is squeezed together with a visitor's own words can be guessed by its size."""
    owner = await save(asking)
    pages = [
        f"{link}{tail}" for link in (await links_of(asking, owner)).values() for tail in ("", "/route", "/inspection")
    ]
    pages += [f"{owner}/change", f"{owner}/readings", "/mine", inputs().replace("/pad", "/save", 1)]
    for address in pages:
        answer = await asking.get(address, headers={"Accept-Encoding": "gzip"}, follow_redirects=True)
        assert answer.status_code == 200, address
        assert len(answer.content) > 2048, address
        assert "content-encoding" not in answer.headers, address
    assert (await asking.get("/guide", headers={"Accept-Encoding": "gzip"})).headers["content-encoding"] == "gzip"


async def test_a_view_link_reads_all_and_offers_nothing_to_send(asking: AsyncClient) -> None:
    view = (await links_of(asking, await save(asking)))["view"]
    text = await page(asking, view)
    assert 'method="post"' not in text
    assert "Try with what I have" not in text
    assert (await asking.get(f"{view}.pdf")).content.startswith(b"%PDF-")
    assert (await asking.get(f"{view}/try")).status_code == 403


async def test_a_view_link_cannot_save_a_revision_or_a_proposal(asking: AsyncClient) -> None:
    view = (await links_of(asking, await save(asking)))["view"]
    answer = await send(asking, "/saved", inputs=inputs(seam__height_mm=22), to=view)
    assert answer.status_code == 403
    assert "Ask the owner" in answer.text


async def test_a_friends_link_saves_a_proposal_and_no_revision(asking: AsyncClient) -> None:
    owner = await save(asking)
    friend = (await links_of(asking, owner))["friend"]
    answer = await send(asking, "/saved", inputs=inputs(seam__height_mm=22), to=f"http://pads.test{friend}", name="Ada")
    assert answer.headers["location"] == f"{friend}?said=proposal"
    assert (await asking.get(at(owner, "B"))).status_code == 404
    assert "Ada" in words_of(await page(asking, owner))


@pytest.mark.parametrize("kind", ["friend", "view"])
async def test_a_link_that_was_taken_back_says_so_everywhere(asking: AsyncClient, kind: str) -> None:
    owner = await save(asking)
    link = (await links_of(asking, owner))[kind]
    await send(asking, f"/saved/{secret_of(owner)}/links", kind=kind, deed="end")
    for tail in ("", ".json", ".pdf", ".png", "/try"):
        answer = await asking.get(link + tail)
        assert answer.status_code == 410
        assert "taken this link back" in answer.text
    assert kind not in await links_of(asking, owner)
    await send(asking, f"/saved/{secret_of(owner)}/links", kind=kind, deed="renew")
    assert (await links_of(asking, owner))[kind] != link


async def test_replacing_the_owners_link_leads_to_the_new_one_and_ends_the_old_three(asking: AsyncClient) -> None:
    owner = await save(asking)
    before = await links_of(asking, owner)
    answer = await send(asking, f"/saved/{secret_of(owner)}/links", kind="owner", deed="renew")
    new = answer.headers["location"].partition("?")[0]
    assert [(await asking.get(link)).status_code for link in before.values()] == [410, 410, 410]
    landed = await asking.get(answer.headers["location"], follow_redirects=True)
    assert "The old ones open nothing any more" in landed.text
    assert secret_of(new) not in {secret_of(link) for link in before.values()}


@pytest.mark.parametrize(
    "fields", [{}, {"kind": "owner", "deed": "end"}, {"kind": "view"}, {"kind": "all", "deed": "end"}]
)
async def test_an_unclear_wish_about_links_changes_none(asking: AsyncClient, fields: dict[str, str]) -> None:
    owner = await save(asking)
    before = await links_of(asking, owner)
    assert (await send(asking, f"/saved/{secret_of(owner)}/links", **fields)).status_code == 422
    assert await links_of(asking, owner) == before


@pytest.mark.parametrize(
    "said", [{"sec-fetch-site": "cross-site"}, {"origin": "https://elsewhere.test"}, {"origin": "null"}]
)
async def test_a_forged_form_changes_nothing(asking: AsyncClient, setting: str, said: dict[str, str]) -> None:
    """Oracle: every address that changes something, sent as another site's page would; every row is as before."""
    owner = await save(asking)
    before = await everything(setting)
    sent = [(f"/saved/{secret_of(owner)}{tail}", fields) for tail, fields, _ in DEEDS.values()]
    for address, fields in [
        *sent,
        ("/saved", {"inputs": inputs()}),
        ("/mine/export", {"links": owner}),
        ("/mine/import", {}),
    ]:
        answer = await asking.post(address, data=fields, headers=said)
        assert (answer.status_code, answer.json()["type"]) == (403, "/problems/foreign-origin")
    assert await everything(setting) == before


async def test_no_secret_reaches_the_log(asking: AsyncClient, caplog: pytest.LogCaptureFixture) -> None:
    """Oracle: the log of every kind of request, with addresses well and badly formed, against all three secrets."""
    with caplog.at_level(logging.DEBUG):
        owner = await save(asking)
        links = await links_of(asking, owner)
        for link in links.values():
            secret = secret_of(link)
            for address in (
                link,
                f"{link}.svg",
                f"/saved/{secret}",
                f"/saved/{secret}.svg",
                f"/saved/%{ord(secret[0]):02X}{secret[1:]}/A",
                f"/saved/{secret}/I",
                f"/{secret}",
                f"/saved/A/{secret}",
                f"/saved/{secret}/A/difference?with={secret}",
            ):
                await asking.get(address)
            await send(asking, f"/saved/{secret}/A/remarks", words="Hello")
            await send(asking, "/saved", inputs=inputs(seam__height_mm=22), to=link)
    ours = "\n".join(r.getMessage() for r in caplog.records if not r.name.startswith(("httpx", "httpcore")))
    assert len(ours.splitlines()) > 30
    assert not [link for link in links.values() if secret_of(link) in ours or secret_of(link)[1:] in ours]


async def test_every_answer_is_private_and_for_no_search_engine(asking: AsyncClient) -> None:
    owner = await save(asking)
    answers: list[Response] = [
        await asking.get(owner + tail)
        for tail in ("", ".json", ".svg", ".pdf", ".png", "/try", "/readings", "/route", "/record", "/drawing")
    ]
    answers += [
        await asking.get(a)
        for a in ("/mine", inputs().replace("/pad", "/save"), f"/saved/{'A' * 22}", owner.rpartition("/")[0])
    ]
    answers.append(await send(asking, "/saved", inputs=inputs(), to=owner))
    for answer in answers:
        assert answer.headers["x-robots-tag"] == "noindex, nofollow, noarchive"
        assert answer.headers["cache-control"] == "private, no-cache"
        assert answer.headers["referrer-policy"] == "same-origin"
        if answer.headers.get("content-type", "").startswith("text/html"):
            assert '<meta name="robots" content="noindex, nofollow, noarchive">' in answer.text


async def test_a_page_asks_nobody_else_for_anything(asking: AsyncClient) -> None:
    """Oracle: every address in the page's text is one of ours; no inline script, style or handler."""
    text = await page(asking, await save(asking))
    assert set(re.findall(r'(?:src|href|action)="(https?://[^/"]+)', text)) <= {"http://pads.test"}
    assert not re.search(r"<style|\sstyle=|\son[a-z]+=|javascript:|<script(?![^>]*\ssrc=)", text)


async def test_previews_have_absolute_addresses_from_the_configured_base_and_none_on_the_owners_page(
    setting: str,
) -> None:
    async with client_of(setting, base_address="https://pads.example") as asking:
        owner = await save(asking, title="Van")
        friend = (await links_of(asking, owner))["friend"]
        text = await page(asking, friend)
        assert f'<meta property="og:image" content="https://pads.example{friend}.png">' in text
        assert f'<meta property="og:url" content="https://pads.example{friend}">' in text
        assert f'value="https://pads.example{friend}"' in text
        assert "og:" not in await page(asking, owner)


async def test_the_preview_is_a_picture_of_1200_by_630(asking: AsyncClient) -> None:
    """Oracle: the width and height in a PNG's own header (bytes 16 to 24)."""
    answer = await asking.get(f"{await save(asking)}.png")
    assert answer.headers["content-type"] == "image/png"
    assert answer.content[:8] == b"\x89PNG\r\n\x1a\n"
    assert (int.from_bytes(answer.content[16:20]), int.from_bytes(answer.content[20:24])) == (1200, 630)


async def test_what_people_write_is_shown_as_they_wrote_it_and_does_nothing(asking: AsyncClient) -> None:
    owner = await save(asking, title="<script>alert(1)</script>")
    words = '"><img src=x onerror=alert(1)> \u202e & \x00 line\r\ntwo'
    await send(asking, f"{owner}/remarks", words=words, name="<b>Ada</b>")
    text = await page(asking, owner)
    assert "<img src=x" not in text
    assert "<script>alert" not in text
    assert "&lt;b&gt;Ada&lt;/b&gt;" in text
    assert "\u202e" not in text
    assert "&amp;  line\ntwo" in text


async def test_an_empty_remark_and_one_without_a_form_are_refused_in_words(asking: AsyncClient) -> None:
    owner = await save(asking)
    empty = await send(asking, f"{owner}/remarks", words="  \n ")
    assert (empty.status_code, "The remark is empty" in empty.text) == (422, True)
    strange = await asking.post(f"{owner}/remarks", json={"words": "x"})
    assert strange.status_code == 422


async def test_title_and_note_change_and_the_revision_does_not(asking: AsyncClient) -> None:
    owner = await save(asking, title="Van")
    before = (await asking.get(f"{owner}.json")).content
    await send(asking, f"/saved/{secret_of(owner)}/title", title="The choir's van", note="left front only")
    words = words_of(await page(asking, owner))
    assert "The choir's van revision A" in words
    assert "left front only" in words
    assert (await asking.get(f"{owner}.json")).content == before


async def test_a_pad_that_is_not_fit_says_so_to_the_friend_too(asking: AsyncClient) -> None:
    friend = (await links_of(asking, await save(asking, FAILING)))["friend"]
    words = words_of(await page(asking, friend))
    assert "Do not make:" in words
    assert "I have seen that an estimate fails, and I will not lift with this pad." in words
    assert (await asking.get(f"{friend}.step?confirm=yes")).status_code == 422
