"""Two ways side by side: what differs is listed, what is wrong is said at its box, and either may be gone on with."""

import re
from html import unescape

import pytest
from httpx import AsyncClient

from server.links import address_of_document
from tests.documents import sample, van

pytestmark = pytest.mark.anyio
ONE = address_of_document(van(title="Van")).partition("?")[2]


async def page(client: AsyncClient, more: str = "") -> str:
    answer = await client.get(f"/pad/two?{ONE}{more}")
    assert answer.status_code == 200
    return unescape(answer.text)


async def test_without_a_change_both_are_the_same(client: AsyncClient) -> None:
    assert "Answers, sizes and estimates are the same." in await page(client)


async def test_a_changed_material_differs_in_answers_and_estimates(client: AsyncClient) -> None:
    text = await page(client, "&other.make.material=uhmw_pe")
    assert "ultra-high molecular weight polyethylene" in text
    assert "Do not make" in text
    assert re.search(r"Slot floor under the seam.s edge</th><td>passes", text)


async def test_the_other_way_can_be_gone_on_with(client: AsyncClient) -> None:
    text = await page(client, "&other.fixed.body_diameter_mm=90&other.jack.cup_bore_mm=72")
    links = re.findall(r'href="(/pad\?[^"]+)"', text)
    assert any("cup_bore_mm=72" in link and "body_diameter_mm=90" in link for link in links)
    assert any("cup_bore_mm=68" in link for link in links)


async def test_a_single_stroke_leaves_an_answer_out(client: AsyncClient) -> None:
    answer = await client.get("/pad/two?" + ONE + "&fixed.body_diameter_mm=90&other.fixed.body_diameter_mm=-")
    assert "<td>90 mm</td><td>left out</td>" in answer.text


async def test_what_cannot_be_is_said_at_its_box_and_stays_typed(client: AsyncClient) -> None:
    text = await page(client, "&other.jack.cup_bore_mm=banana")
    assert 'value="banana"' in text
    assert 'id="other.jack.cup_bore_mm-problem"' in text
    assert "same in both" not in text.partition("</form>")[2]


async def test_no_id_stands_twice_on_the_page(client: AsyncClient) -> None:
    ids = re.findall(r'\bid="([^"]+)"', await page(client, "&other.make.material=uhmw_pe"))
    assert len(ids) == len(set(ids))


async def test_a_way_without_a_pad_says_why(client: AsyncClient) -> None:
    query = address_of_document(sample("rowing_club_trailer_car_no_pad")).partition("?")[2]
    answer = await client.get(f"/pad/two?{query}")
    assert "No pad fits." in answer.text


async def test_inches_are_those_of_the_viewer(client: AsyncClient) -> None:
    query = address_of_document(van(), units="in").partition("?")[2]
    answer = await client.get(f"/pad/two?{query}&other.fixed.body_diameter_mm=3.5")
    assert "<td>3.5 in</td>" in answer.text
