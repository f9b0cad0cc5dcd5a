"""The three pages of the shop, asked for through HTTP: what all of them must do."""

import re
from math import ceil, floor
from typing import Any

import pytest
from httpx import AsyncClient

from geometry.service_life import service_record
from geometry.standing import DO_NOT_USE
from server.links import address_of_document, samples, static_url
from tests.documents import sample, van
from tests.server.asking import FAILING, FITTING, NO_PAD
from tests.server.making_pages import KINDS, READ, TOO_BIG, design_of, page, with_, words_of

pytestmark = pytest.mark.anyio


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("name", [s.key for s in samples() if s.key != "rowing_club_trailer_car_no_pad"])
async def test_every_example_has_the_pages_of_the_shop(client: AsyncClient, name: str, kind: str) -> None:
    text = await page(client, sample(name), kind)
    assert design_of(sample(name)).design_id in text
    assert "Never get under a car held by a jack" in words_of(text)


@pytest.mark.parametrize("kind", KINDS)
async def test_a_design_that_fails_is_marked_on_every_sheet(client: AsyncClient, kind: str) -> None:
    text = await page(client, FAILING, kind)
    head = re.search(r'<div class="paper-head"[^>]*>(.*?)</div>', text, re.DOTALL)
    assert head
    assert "NOT FIT TO MAKE" in head[1]
    assert design_of(FAILING).verdict_words in words_of(text)


@pytest.mark.parametrize("kind", KINDS)
async def test_no_page_of_a_fit_design_says_that_it_is_not(client: AsyncClient, kind: str) -> None:
    assert "NOT FIT" not in await page(client, FITTING, kind)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("document", [NO_PAD, {"jack": {"cup_bore_mm": 68}}], ids=["no pad", "unfinished"])
async def test_without_a_pad_the_working_sheet_says_why(client: AsyncClient, document: Any, kind: str) -> None:
    answer = await client.get(address_of_document(document, f"/{kind}"))
    assert (answer.status_code, answer.headers["location"]) == (303, address_of_document(document))


@pytest.mark.parametrize("kind", KINDS)
async def test_the_pages_obey_the_content_policy_and_need_no_script(client: AsyncClient, kind: str) -> None:
    text = await page(client, with_(FITTING, **READ), kind)
    assert "<style" not in text
    assert " style=" not in text
    # The one script is a file of our own; what it does is said beside the buttons to those who have none.
    assert re.findall(r"<script[^>]*>.*?</script>", text, re.S) == [
        f'<script defer src="{static_url("typed.js")}"></script>'
    ]
    assert ("what is typed and not sent is lost" in text) is ("data-typed" in text)


@pytest.mark.parametrize("kind", KINDS)
async def test_no_id_stands_twice(client: AsyncClient, kind: str) -> None:
    ids = re.findall(r'\bid="([^"]+)"', await page(client, with_(FITTING, **READ), kind))
    assert sorted(set(ids)) == sorted(ids)


@pytest.mark.parametrize("kind", KINDS)
async def test_what_is_typed_is_escaped(client: AsyncClient, kind: str) -> None:
    document = van(title="<b>van</b>", shop__currency="<i>", shop__price_per_m=3, as_made__note="<u>me")
    text = await page(client, document, kind)
    assert "&lt;b&gt;van" in text
    assert not re.search(r"<(b|i|u)>", text)


@pytest.mark.parametrize("kind", KINDS)
async def test_a_failed_part_marks_every_page_and_sheet(client: AsyncClient, kind: str) -> None:
    text = await page(client, with_(FITTING, **TOO_BIG), kind)
    head = re.search(r'<div class="paper-head"[^>]*>(.*?)</div>', text, re.DOTALL)
    assert head
    assert DO_NOT_USE in head[1]
    assert text.count(DO_NOT_USE) >= 2


@pytest.mark.parametrize("kind", KINDS)
async def test_data_stand_beside_every_page(client: AsyncClient, kind: str) -> None:
    answer = await client.get(address_of_document(FITTING, f"/{kind}.json"))
    assert answer.headers["content-type"] == "application/json"
    assert answer.json()["design_id"] == design_of(FITTING).design_id


async def test_the_record_prints_every_limit_and_what_to_look_for(client: AsyncClient) -> None:
    """Oracle: the record of the geometry, its limits rounded to the pad's side."""
    words, design = words_of(await page(client, FITTING, "record")), design_of(FITTING)
    record = service_record(design.pad, design.conditions)
    for limit in record.limits:
        assert limit.title in words
        hundredths = (floor if limit.direction == "up" else ceil)(round(100 * limit.limit_mm, 6))
        assert f"{hundredths / 100:g} mm" in words
    assert all(look.what in words for look in record.looks)


async def test_each_thing_to_look_for_has_a_drawing_of_its_own(client: AsyncClient) -> None:
    found = re.findall(r'<svg [^>]*class="sketch".*?</svg>', await page(client, FITTING, "record"), re.DOTALL)
    paths = [tuple(re.findall(r' d="([^"]+)"', sketch)) for sketch in found]
    assert len(paths) == 7
    assert len(set(paths)) == 7


async def test_the_limits_are_those_of_the_part_where_it_was_measured(client: AsyncClient) -> None:
    """Oracle: a part whose web was read 0.1 mm thick starts from that web."""
    words = words_of(await page(client, with_(FITTING, **READ | {"as_made__web_mm": [18.6]}), "record"))
    assert "for the part as measured" in words
    assert "18.6 mm" in words


@pytest.mark.parametrize("document", [FAILING, with_(FITTING, **TOO_BIG)], ids=["pad", "part"])
async def test_what_must_not_be_used_has_no_limits_of_wear(client: AsyncClient, document: dict[str, Any]) -> None:
    text = await page(client, document, "record")
    assert "Do not use it at all" in text
    assert 'id="wear"' not in text
