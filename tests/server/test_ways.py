"""Whoever leaves a filled sheet for a page beside it finds the way back to the same sheet."""

import re
from html import unescape
from urllib.parse import parse_qsl, urlencode, urlsplit

import pytest
from httpx import AsyncClient
from hypothesis import given
from hypothesis import strategies as st

from server.forms import read_form
from server.ways import asked_beside, units_ways, ways_of

CASE = [("jack.cup_bore_mm", "68"), ("seam.thickness_mm", '1/8"'), ("title", "van & 7")]
STRANGE = ["https://elsewhere.example/", "//elsewhere.example", "javascript:alert(1)", "a=b", "x=1&" * 300]
pages = pytest.mark.parametrize("name", ["guide", "measure", "materials"])


async def way_to_sheet(client: AsyncClient, address: str) -> str:
    """Where the head of a page leads."""
    found = re.search(r'href="([^"]*)">To the working sheet', (await client.get(address)).text)
    assert found
    return unescape(found[1])


@pages
@pytest.mark.anyio
async def test_the_way_back_holds_every_answer_of_the_sheet(client: AsyncClient, name: str) -> None:
    """The oracle is the address's own query: read again it gives what was typed."""
    back = await way_to_sheet(client, getattr(ways_of(read_form(CASE), units="mm"), name))
    assert sorted(parse_qsl(urlsplit(back).query)) == sorted(CASE)


@pages
@pytest.mark.anyio
async def test_switching_the_units_on_the_way_keeps_what_was_meant(client: AsyncClient, name: str) -> None:
    """68 typed in millimetres is still 68 mm on a sheet in inches."""
    case = read_form(CASE)
    address = next(link.href for link in units_ways(case, f"/{name}") if link.words == "in")
    back = read_form(parse_qsl(urlsplit(await way_to_sheet(client, address)).query))
    assert (back.units, back.document) == ("in", case.document)


@pages
@pytest.mark.parametrize("back", STRANGE)
@pytest.mark.anyio
async def test_no_way_leads_elsewhere(client: AsyncClient, name: str, back: str) -> None:
    assert await way_to_sheet(client, f"/{name}?{urlencode({'back': back})}") == "/pad"


@given(st.text(max_size=40), st.sampled_from(["mm", "in"]))
def test_any_title_comes_back_as_it_was_typed(title: str, units: str) -> None:
    case = read_form([("title", title), ("units", units)])
    again, seen = asked_beside(parse_qsl(urlsplit(ways_of(case, units=case.units).guide).query))
    assert (again.typed, again.units, seen) == (case.typed, case.units, case.units)


@pytest.mark.anyio
async def test_a_case_too_long_for_an_address_is_left_behind_and_the_page_is_shown(client: AsyncClient) -> None:
    endless = read_form([(key, "é&" * 1000) for key in ("title", "own.sheet")])
    address = ways_of(endless, units="mm").guide
    assert address == "/guide"
    assert (await client.get(address)).status_code == 200
