"""The pad to turn in the hand, as its page stands before any script runs."""

import json
import re
from html import unescape

import pytest
from httpx import AsyncClient

from server.links import static_file
from tests.server.asking import FAILING, FITTING, NO_PAD, address

pytestmark = pytest.mark.anyio


def page_address(document: dict[str, object], units: str = "mm") -> str:
    return address(document, units=units).replace("/pad.json", "/pad/turn")


def told(page: str, name: str) -> str:
    """What the page tells its script under one name."""
    found = re.search(rf'data-{name}="([^"]*)"', page)
    assert found, name
    return unescape(found[1])


async def test_the_page_has_a_picture_and_words_without_any_script(client: AsyncClient) -> None:
    answer = await client.get(page_address(FITTING))
    assert answer.status_code == 200
    assert 'class="iso-edge"' in answer.text
    pad = (await client.get(address(FITTING))).json()["pad"]
    across, long = f"{pad['seat_diameter_mm']:g}", f"{pad['seat_length_mm']:g}"
    assert f"The seat, {across} mm across and {long} mm long, stands in the cup" in answer.text


async def test_the_words_follow_the_viewers_unit(client: AsyncClient) -> None:
    assert "The seat, 2.646 in across" in (await client.get(page_address(FITTING, "in"))).text


async def test_nothing_on_the_page_needs_a_wider_content_policy(client: AsyncClient) -> None:
    """No script, style or handler stands in the page itself."""
    page = (await client.get(page_address(FITTING))).text
    assert not re.search(r"<script(?![^>]*\ssrc=)|<style|\sstyle=|\son[a-z]+=", page)


async def test_the_script_is_told_where_the_model_is_and_what_stands_around_it(client: AsyncClient) -> None:
    page = (await client.get(page_address(FITTING))).text
    assert told(page, "model") == address(FITTING, "stl")
    assert [body["name"] for body in json.loads(told(page, "bodies"))] == ["cup", "seam", "sill"]
    assert all(static_file(told(page, name).removeprefix("/static/")) for name in ("stage", "shapes"))


async def test_a_pad_that_is_not_fit_is_shown_and_marked_in_words(client: AsyncClient) -> None:
    page = (await client.get(page_address(FAILING))).text
    assert "A picture of a pad that is not fit to make." in page
    assert told(page, "model").endswith("&confirm=not-fit")
    assert "not fit to make" not in (await client.get(page_address(FITTING))).text


@pytest.mark.parametrize("query", ["", "?jack.cup_bore_mm=68"])
async def test_without_a_pad_the_working_sheet_says_why(client: AsyncClient, query: str) -> None:
    answer = await client.get(f"/pad/turn{query}")
    assert (answer.status_code, answer.headers["location"]) == (303, f"/pad{query}")


async def test_where_no_pad_fits_the_working_sheet_says_why(client: AsyncClient) -> None:
    answer = await client.get(page_address(NO_PAD))
    assert (answer.status_code, answer.headers["location"]) == (303, address(NO_PAD).replace("/pad.json", "/pad"))


async def test_the_picture_is_a_file_of_its_own_with_its_words(client: AsyncClient) -> None:
    answer = await client.get(address(FITTING, "turn.svg").replace("/pad.turn", "/pad/turn"))
    assert (answer.status_code, answer.headers["content-type"]) == (200, "image/svg+xml")
    assert answer.text.startswith("<svg")
    assert "The seat, 67.2 mm across" in answer.text
    assert "<style" not in answer.text


async def test_the_sheet_shows_the_picture_by_its_address_and_tells_the_script_the_same(client: AsyncClient) -> None:
    """The sheet must not wait for the picture; all else is as on the view's own page."""
    sheet, own = [
        (await client.get(where)).text for where in (page_address(FITTING).replace("/turn", ""), page_address(FITTING))
    ]
    source = re.search(r'<img class="isometric" src="([^"]*)" loading="lazy"', sheet)
    assert source
    assert unescape(source[1]) == page_address(FITTING).replace("/turn", "/turn.svg")
    assert [told(sheet, name) for name in ("model", "bodies", "stage")] == [
        told(own, name) for name in ("model", "bodies", "stage")
    ]


async def test_a_sheet_without_a_pad_has_nothing_to_turn(client: AsyncClient) -> None:
    assert 'id="turn"' not in (await client.get("/pad?jack.cup_bore_mm=68")).text
