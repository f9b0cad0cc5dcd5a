"""What other pages say of the making of a pad: the piece with the ways, and the mark of a failed part."""

import html
import re
from urllib.parse import parse_qsl, urlsplit

import pytest
from httpx import AsyncClient

from geometry.standing import DO_NOT_USE
from server.links import address_of_document
from server.making_views import as_made_standing, kept_standing, sheet_making
from tests.server.asking import FITTING
from tests.server.making_pages import READ, TOO_BIG, design_of, with_

pytestmark = pytest.mark.anyio


def test_the_standing_of_a_part_is_none_until_something_is_read() -> None:
    assert as_made_standing(design_of(FITTING)) is None


def test_a_failed_part_has_its_mark_and_its_reasons() -> None:
    standing = as_made_standing(design_of(with_(FITTING, **TOO_BIG)))
    assert standing is not None
    assert standing.is_failed
    assert standing.mark == DO_NOT_USE
    assert any("Seat" in reason for reason in standing.reasons)


def test_a_good_part_has_no_mark() -> None:
    standing = as_made_standing(design_of(with_(FITTING, **READ)))
    assert standing is not None
    assert not standing.is_failed
    assert kept_standing("usable", standing.words, ()).mark == ""


def test_how_it_is_made_leads_to_the_three_pages_of_the_same_design() -> None:
    """Oracle: the query of the working sheet."""
    typed = dict(parse_qsl(urlsplit(address_of_document(FITTING)).query))
    made = sheet_making(design_of(FITTING), typed, "mm")
    assert [urlsplit(way.href).path for way in made.pages] == ["/pad/route", "/pad/inspection", "/pad/record"]
    assert {urlsplit(way.href).query for way in made.pages} == {urlsplit(address_of_document(FITTING)).query}


async def test_a_working_sheet_carries_the_mark_of_a_failed_part_at_once(client: AsyncClient) -> None:
    page = await client.get(address_of_document(with_(FITTING, **TOO_BIG)))
    assert DO_NOT_USE in page.text


async def test_the_lines_of_the_card_are_written_only_for_a_sheet_that_asks(client: AsyncClient) -> None:
    """Oracle: as many operations as the route card's own page has; the sheet itself names where the lines are to be had."""
    sheet = await client.get(address_of_document(FITTING))
    place = re.search(r'data-slow="(/pad/how-made\?[^"]*)"', sheet.text)
    assert place
    assert "operations, estimated" not in sheet.text
    piece = await client.get(html.unescape(place[1]), headers={"HX-Request": "true"})
    card = await client.get(address_of_document(FITTING, "/route"))
    count = card.text.count('<li class="operation"')
    assert count > 8
    assert f"{count} operations, estimated" in piece.text


async def test_without_a_script_the_same_address_leads_to_the_whole_card(client: AsyncClient) -> None:
    answer = await client.get(address_of_document(FITTING, "/how-made"))
    assert answer.status_code == 303
    assert urlsplit(answer.headers["location"]) == urlsplit(address_of_document(FITTING, "/route"))


async def test_where_there_is_no_pad_there_are_no_lines(client: AsyncClient) -> None:
    answer = await client.get("/pad/how-made?jack.cup_bore_mm=68", headers={"HX-Request": "true"})
    assert (answer.status_code, answer.content) == (204, b"")
