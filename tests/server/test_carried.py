"""On every way between the pages of the shop goes along what was typed on them; here at a design's own address."""

import re
from html import unescape
from urllib.parse import parse_qsl, urlsplit

import pytest
from httpx import AsyncClient

from server.links import address_of_document
from tests.server.asking import FITTING
from tests.server.making_pages import KINDS, words_of

pytestmark = pytest.mark.anyio
TYPED = {"shop.tool": "carbide", "as_made.web_mm": "18.5", "wear.log": "2026-01-01 wall clean"}
DAY = {"added.web": "18.4", "added.wall": "white"}
LATER = {"added.later": "yes"}


def keys(address: str) -> dict[str, str]:
    """The keys of an address as they stand in a page."""
    return dict(parse_qsl(urlsplit(unescape(address)).query, keep_blank_values=True))


FITTING_PAIRS = keys(address_of_document(FITTING))


def ways(text: str) -> dict[str, str]:
    """The ways at the top of a page by their words: to the other pages, and to the same in other units."""
    top = text[text.index("<header") : text.index("<main")]
    return {words.strip(): href for href, words in re.findall(r'<a [^>]*?href="([^"]+)"[^>]*>([^<]+)</a>', top)}


def hidden(text: str, form: str) -> dict[str, str]:
    """What a form carries along unseen."""
    found = text[text.index(form) :]
    pairs = re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)"', found[: found.index("</form>")])
    return {key: unescape(value) for key, value in pairs}


@pytest.mark.parametrize("kind", KINDS)
async def test_every_page_passes_on_what_was_typed_on_the_others(client: AsyncClient, kind: str) -> None:
    """Oracle: what was typed; of another day each way also says that nobody has entered it yet."""
    answer = await client.get(f"/pad/{kind}", params=FITTING_PAIRS | TYPED | DAY | LATER)
    assert answer.status_code == 200
    found = ways(answer.text)
    for words in ("Route card", "Inspection sheet", "Record in service"):
        assert keys(found[words]).items() >= (TYPED | DAY | LATER).items()
    assert keys(found["Working sheet"]).items() >= TYPED.items()
    spelled = {"as_made.web_mm": "18.5 mm", "added.web": "18.4 mm", "units": "in"}
    assert keys(found["in"]).items() >= (TYPED | DAY | LATER | spelled).items()


@pytest.mark.parametrize(
    ("kind", "form"), [("route", 'class="on-screen shop-form"'), ("inspection", 'class="inspection"')]
)
async def test_a_form_sends_along_what_another_page_asks_for(client: AsyncClient, kind: str, form: str) -> None:
    """Oracle: what was typed on the other pages; the answers to this form's own questions are not hidden in it."""
    text = (await client.get(f"/pad/{kind}", params=FITTING_PAIRS | TYPED | DAY | LATER)).text
    own = {"route": "shop.", "inspection": "as_made."}[kind]
    others = {key: value for key, value in TYPED.items() if not key.startswith(own)}
    found = hidden(text, form)
    assert found.items() >= (others | DAY | LATER).items()
    assert not any(key.startswith(own) for key in found)


async def test_a_day_that_waits_stands_in_its_boxes_and_is_not_entered(client: AsyncClient) -> None:
    """Oracle: what was typed; the log of the address holds nothing of it, and the form enters it when it is sent."""
    answer = await client.get("/pad/record", params=FITTING_PAIRS | DAY | LATER)
    assert answer.status_code == 200
    assert "Not entered yet." in words_of(answer.text)
    assert 'name="added.web" type="text" inputmode="decimal" autocomplete="off" value="18.4"' in answer.text
    assert '<option value="white" selected>' in answer.text
    assert "2026" not in keys(ways(answer.text)["Route card"]).get("wear.log", "")
    sent = hidden(answer.text, 'class="on-screen add-day"') | DAY | {"added.day": "2026-04-01"}
    assert "added.later" not in sent
    entered = await client.get("/pad/record", params=sent)
    assert keys(entered.headers["location"])["wear.log"] == "2026-04-01 web 18.4 wall white"


async def test_the_other_pages_lead_to_a_day_that_waits(client: AsyncClient) -> None:
    for kind, is_told in (("route", True), ("inspection", True), ("record", False)):
        text = (await client.get(f"/pad/{kind}", params=FITTING_PAIRS | DAY | LATER)).text
        assert ("they are typed and not entered" in text) is is_told


async def test_a_wrong_day_is_not_lost_on_the_ways_from_its_page(client: AsyncClient) -> None:
    """Oracle: what was sent, in other units and on the other pages."""
    answer = await client.get("/pad/record", params=FITTING_PAIRS | DAY)
    assert answer.status_code == 422
    found = ways(answer.text)
    assert keys(found["Inspection sheet"]).items() >= (DAY | LATER).items()
    assert keys(found["in"]).items() >= (DAY | LATER | {"added.web": "18.4 mm"}).items()


async def test_a_log_that_cannot_be_read_is_put_right_without_losing_the_day(client: AsyncClient) -> None:
    """Oracle: the form that puts the log right is the only one; it sends the day along."""
    text = (await client.get("/pad/record", params=FITTING_PAIRS | DAY | LATER | {"wear.log": "2026-03-01 web"})).text
    assert hidden(text, 'id="dates"').items() >= (DAY | LATER).items()
    assert 'value="2026-03-01 web"' in text


async def test_an_empty_answer_is_left_out_of_the_address_and_the_day_is_not(client: AsyncClient) -> None:
    answer = await client.get("/pad/route", params=FITTING_PAIRS | {"shop.tool": ""} | DAY | LATER)
    assert answer.status_code == 303
    assert keys(answer.headers["location"]) == FITTING_PAIRS | DAY | LATER
