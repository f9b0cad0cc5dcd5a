"""Readings in service on the record's page, in its address and in its data."""

import re
from html import unescape
from urllib.parse import parse_qsl, urlsplit

import pytest
from httpx import AsyncClient

from geometry.document.wear import read_log
from geometry.standing import DO_NOT_USE
from server.links import address_of_document
from tests.server.asking import FITTING
from tests.server.making_pages import KINDS, READ, TOO_BIG, page, with_, words_of

pytestmark = pytest.mark.anyio
WORN = "2026-03-01 wall white"


async def test_another_day_joins_the_log_of_the_address_and_is_judged(client: AsyncClient) -> None:
    """Oracle: the document of the address that the form leads to."""
    start = address_of_document(FITTING, "/record")
    sent = f"{start}&added.day=2026-03-01&added.web={READ['as_made__web_mm'][0]}&added.seat=67.2;67.1&added.wall=clean&added.at="
    answer = await client.get(sent)
    assert answer.status_code == 303
    led = answer.headers["location"]
    words = words_of((await client.get(led)).text)
    assert "2026-03-01" in words
    assert "Every reading in service lies inside its limits." in words
    log = dict(parse_qsl(urlsplit(led).query))["wear.log"]
    assert [sorted(e.sizes_mm.values()) for e in read_log(log)] == [
        sorted((READ["as_made__web_mm"][0], seat)) for seat in (67.1, 67.2)
    ]


async def test_a_day_in_inches_is_kept_in_millimetres(client: AsyncClient) -> None:
    """Oracle: 0.725 in is 18.415 mm."""
    start = address_of_document(FITTING, "/record", units="in")
    led = (await client.get(f"{start}&added.day=2026-03-01&added.web=.725")).headers["location"]
    assert dict(parse_qsl(urlsplit(led).query))["wear.log"] == "2026-03-01 web 18.415"


@pytest.mark.parametrize(
    ("sent", "said"),
    [
        ("added.web=18", "Say on which day it was read."),
        ("added.day=yesterday&added.web=18", "is not a day such as 2026-03-01"),
        ("added.day=2026-03-01&added.web=deep", "is not a length"),
        ("added.day=2026-03-01&added.web=18&added.at=warm", "is not a number"),
        ("added.day=2026-03-01", "is no entry"),
    ],
)
async def test_a_day_that_cannot_be_read_is_asked_for_again_and_nothing_typed_is_lost(
    client: AsyncClient, sent: str, said: str
) -> None:
    """Oracle: what was sent."""
    answer = await client.get(f"{address_of_document(FITTING, '/record')}&{sent}")
    assert answer.status_code == 422
    assert said in words_of(answer.text)
    for _, text in parse_qsl(sent):
        assert f'value="{text}"' in answer.text


async def test_a_log_that_cannot_be_read_is_shown_to_be_put_right(client: AsyncClient) -> None:
    answer = await client.get(address_of_document(FITTING, "/record") + "&wear.log=2026-03-01+web")
    assert answer.status_code == 422
    assert 'name="wear.log" type="text"' in answer.text
    assert 'value="2026-03-01 web"' in answer.text
    assert "The readings are left out until it is put right." in words_of(answer.text)


async def test_an_entry_can_be_taken_out(client: AsyncClient) -> None:
    """Oracle: the entry that stays."""
    document = with_(FITTING, wear__log="2026-01-01 web 18.6; 2026-02-01 web 18.5")
    text = await page(client, document, "record")
    taken = [
        dict(parse_qsl(urlsplit(unescape(a)).query))["wear.log"]
        for a in re.findall(r'href="(/pad/record[^"]+)#dates"', text)
    ]
    assert taken == ["2026-02-01 web 18.5", "2026-01-01 web 18.6"]


@pytest.mark.parametrize("kind", KINDS)
async def test_a_pad_worn_beyond_its_limits_marks_every_page(client: AsyncClient, kind: str) -> None:
    """Oracle: the mark of a part that must not be used."""
    text = await page(client, with_(FITTING, wear__log=WORN), kind)
    assert DO_NOT_USE in words_of(text)
    assert "a wall was white at its foot" in words_of(text)


async def test_the_owners_page_and_the_data_say_that_the_pad_is_worn(client: AsyncClient) -> None:
    """Oracle: the same mark."""
    document = with_(FITTING, wear__log=WORN)
    assert DO_NOT_USE in words_of((await client.get(address_of_document(document))).text)
    data = (await client.get(address_of_document(document, "/record.json"))).json()
    assert (data["mark"], data["in_service"]["outcome"]) == (DO_NOT_USE, "discard")
    assert data["in_service"]["days"][0] | {"sizes": []} == {
        "day": "2026-03-01",
        "sizes": [],
        "wall": "white",
        "is_wall_failed": True,
        "part_temperature_c": 20.0,
    }


async def test_the_data_of_a_failed_part_has_no_limits_of_wear(client: AsyncClient) -> None:
    """Oracle: six for the pad as drawn."""
    good = (await client.get(address_of_document(FITTING, "/record.json"))).json()
    bad = (await client.get(address_of_document(with_(FITTING, **TOO_BIG), "/record.json"))).json()
    assert (len(good["limits"]), bad["limits"], bad["mark"]) == (6, [], DO_NOT_USE)


@pytest.mark.parametrize(
    ("sent", "box", "said"),
    [
        ("added.day=2026-03-01&added.at=warm", "added-at", "is not a number"),
        ("added.day=2026-03-01&added.at=80", "added-at", "80 °C is outside 0 to"),
        ("added.day=2026-03-01&added.at=20;+2026-03-02+wall+white", "added-at", "more than one answer"),
        ("added.at=20&added.day=yesterday", "added-day", "is not a day such as 2026-03-01"),
        ("added.at=20", "added-day", "Say on which day it was read."),
    ],
)
async def test_what_is_wrong_with_a_day_stands_beside_the_box_that_holds_it(
    client: AsyncClient, sent: str, box: str, said: str
) -> None:
    """Oracle: the one note that is a problem, by the id of its box."""
    answer = await client.get(f"{address_of_document(FITTING, '/record')}&added.web=18.4&{sent}")
    assert answer.status_code == 422
    found = re.findall(r'<p class="quiet" id="([^"]+)-note"><strong>(.*?)</strong>', answer.text)
    assert [name for name, _ in found] == [box]
    assert said in unescape(found[0][1])
