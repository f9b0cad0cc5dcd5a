"""Changing a saved design on its own pages: without a script, without pasting a link, and without a secret where others read."""

import logging
import re
from html import unescape

import pytest
from httpx import AsyncClient

from tests.server.saving.asking import NO_PAD, at, inputs, links_of, page, save, send, words_of

pytestmark = pytest.mark.anyio


def sent_along(text: str) -> dict[str, str]:
    """The hidden fields of a page's forms."""
    found = re.findall(r'<input type="hidden" name="(\w+)" value="([^"]*)"', text)
    return {name: unescape(value) for name, value in found}


async def test_the_owner_changes_an_answer_and_saves_the_next_revision(asking: AsyncClient) -> None:
    """Oracle: the seam's height was changed from 20 to 22; the first revision stays."""
    owner = await save(asking)
    assert f'href="{owner}/change"' in await page(asking, owner)
    text = await page(asking, f"{owner}/change?seam.height_mm=22")
    assert "20 mm 22 mm" in words_of(text)
    answer = await send(asking, "/saved", **sent_along(text), note="Measured again")
    assert answer.headers["location"] == at(owner, "B") + "?said=saved"
    heights = [(await asking.get(at(owner, x, ".json"))).json()["measurements"]["seam"] for x in "AB"]
    assert [h["height_mm"] for h in heights] == [20, 22]


async def test_every_answer_of_the_copy_is_asked_for_as_it_was_given(asking: AsyncClient) -> None:
    """Oracle: sending the form as it stands changes nothing, so there is nothing to save."""
    owner = await save(asking)
    text = await page(asking, f"{owner}/change")
    boxes = dict(re.findall(r'<input id="field-[^"]+" name="([\w.]+)"[^>]* value="([^"]*)"', text))
    assert (boxes["seam.height_mm"], boxes["jack.cup_bore_mm"], boxes["jack.rated_load_kg"]) == ("20", "68", "2000")
    again = await asking.get(f"{owner}/change", params=boxes)
    assert "Answers, sizes and estimates are the same." in words_of(again.text)
    assert sent_along(again.text) == {}


async def test_a_copy_that_is_no_pad_says_why_and_cannot_be_saved(asking: AsyncClient) -> None:
    owner = await save(asking)
    for query, words in (("seam.height_mm=abc", "abc"), (inputs(NO_PAD).partition("?")[2], "must be at least")):
        text = await page(asking, f"{owner}/change?{query}")
        assert words in words_of(text)
        assert sent_along(text) == {}


async def test_only_the_owner_may_change_a_design(asking: AsyncClient) -> None:
    links = await links_of(asking, await save(asking))
    for kind in ("friend", "view"):
        assert (await asking.get(f"{links[kind]}/change")).status_code == 403
        assert "/change" not in await page(asking, links[kind])


async def test_two_who_change_here_meet_as_they_do_elsewhere(asking: AsyncClient) -> None:
    owner = await save(asking)
    texts = [await page(asking, f"{owner}/change?seam.height_mm={height}") for height in (22, 24)]
    answers = [await send(asking, "/saved", **sent_along(text)) for text in texts]
    assert [answer.status_code for answer in answers] == [303, 409]


async def test_the_owners_secret_stands_in_no_log_and_in_no_address_of_a_working_sheet(
    asking: AsyncClient, caplog: pytest.LogCaptureFixture
) -> None:
    """Oracle: every line that was logged, and every link of the page that leads out of the design's own pages."""
    caplog.set_level(logging.INFO)
    owner = await save(asking)
    secret = owner.split("/")[2]
    text = await page(asking, f"{owner}/change?seam.height_mm=22")
    await send(asking, "/saved", **sent_along(text))
    ours = [record.getMessage() for record in caplog.records if record.name.startswith("seamrest")]
    assert any("/saved/…/A/change" in line for line in ours)
    assert not [line for line in ours if secret in line]
    links = re.findall(r'(?:href|action)="([^"]+)"', text)
    assert not [link for link in links if secret in link and not link.startswith("/saved/")]
    assert secret not in sent_along(text)["inputs"]
