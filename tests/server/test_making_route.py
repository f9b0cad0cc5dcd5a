"""The route card at its address, and the shop's questions on it."""

import re
from typing import Any
from urllib.parse import parse_qsl, urlsplit

import pytest
from httpx import AsyncClient

from geometry.making.set_ups import set_up_heading
from geometry.route import route_card
from server.links import address_of_document
from tests.documents import sample
from tests.geometry.pads import EVERY_KIND
from tests.server.asking import FITTING
from tests.server.making_pages import design_of, page, with_, words_of

pytestmark = pytest.mark.anyio


async def test_the_card_prints_every_operation_with_its_steps_in_order(client: AsyncClient) -> None:
    """Oracle: the card that the geometry writes."""
    words, at = words_of(await page(client, FITTING, "route")), 0
    design = design_of(FITTING)
    for operation in route_card(design.pad, design.conditions, design.measurements.shop).operations:
        for sentence in (operation.title, operation.tool.shown(), *(step.shown() for step in operation.steps)):
            found = words.find(sentence, at)
            assert found >= 0, sentence
            at = found if sentence == operation.title else at


async def test_every_pass_of_the_card_is_printed_with_its_dial(client: AsyncClient) -> None:
    """Oracle: the passes of the geometry; the dial of the last pass of a diameter reads half of what came off."""
    text = await page(client, FITTING, "route")
    rows = re.findall(r"<tr>(?:<t[hd][^>]*>.*?</t[hd]>){7}</tr>", text)
    cells = {tuple(words_of(c) for c in re.findall(r"<t[hd][^>]*>.*?</t[hd]>", row)) for row in rows}
    assert ("pass 12", "cut finish", "from 109.2", "to 109", "deep 0.1", "dial by 0.1", "dial reads 5.5") in cells


@pytest.mark.parametrize(
    ("changes", "title"),
    [
        ({"shop__slot_machine": "vertical_slide"}, "Route card: lathe and vertical slide"),
        ({"shop__slot_machine": "none"}, "Route card: lathe and saw and file for the slot"),
        ({"make__process": "hand_tools"}, "Route card: saw and file, against the gauge sheet"),
        ({"make__process": "cnc"}, "Set-up sheet for CNC turning and milling"),
        ({"make__process": "printed", "make__material": "pa_cf"}, "Print sheet"),
    ],
    ids=["slide", "none", "hand", "cnc", "print"],
)
async def test_the_shop_chooses_the_card(client: AsyncClient, changes: dict[str, Any], title: str) -> None:
    words = words_of(await page(client, with_(FITTING, **changes), "route"))
    assert title in words
    assert ("dial then reads" in words or "dial reads" in words) == ("lathe and" in title)


async def test_hand_work_says_which_checks_still_pass_at_class_c(client: AsyncClient) -> None:
    """Oracle: the verdict of the geometry at class c."""
    document = with_(FITTING, make__process="hand_tools")
    design = design_of(document)
    verdict = route_card(design.pad, design.conditions, design.measurements.shop).by_hand
    words = words_of(await page(client, document, "route"))
    assert verdict is not None
    assert verdict.still_met
    assert all(check.rule.title in words for check in (*verdict.still_met, *verdict.newly_failing))
    assert "stem diameter" not in words


async def test_the_viewers_inches_and_the_machines_inches_are_shown(client: AsyncClient) -> None:
    """Oracle: the dial of an inch shop counts thousandths; a metric viewer sees its dials in inches all the same."""
    document = sample("allotment_estate_inch_shop")
    inches = words_of(await page(client, document, "route", units="in"))
    metric = words_of(await page(client, document, "route"))
    assert "diameter (in), dial (in)" in inches
    assert "ft/min" in inches
    assert "diameter (mm), dial (in)" in metric


async def test_the_shops_form_carries_every_other_answer(client: AsyncClient) -> None:
    """Oracle: the keys of the address that led to it; none is lost and none is asked twice."""
    document = with_(FITTING, shop__kerf_mm=2, as_made__web_mm=[18.5], fixed__slot_width_mm=5)
    text = await page(client, document, "route", units="in")
    form = text[text.index('action="/pad/route"') : text.index("</form>")]
    names = re.findall(r'name="([^"]+)"', form)
    wanted = {k for k, _ in parse_qsl(urlsplit(address_of_document(document)).query)} | {"units"}
    assert wanted <= set(names)
    assert len(names) == len(set(names))


async def test_empty_answers_are_left_out_of_the_address(client: AsyncClient) -> None:
    answer = await client.get(address_of_document(FITTING, "/route") + "&shop.kerf_mm=&shop.tool=carbide")
    assert answer.status_code == 303
    assert "kerf" not in answer.headers["location"]
    assert "shop.tool=carbide" in answer.headers["location"]
    assert answer.headers["location"].startswith("/pad/route?")


async def test_a_bad_answer_of_the_shop_is_kept_and_said_beside_its_field(client: AsyncClient) -> None:
    answer = await client.get(address_of_document(FITTING, "/route") + "&shop.kerf_mm=a+finger")
    text = answer.text
    assert answer.status_code == 422
    assert 'value="a finger"' in text
    assert 'aria-invalid="true"' in text
    assert "Turn the body" in text


async def test_a_material_that_cannot_be_printed_is_said_in_the_shops_form(client: AsyncClient) -> None:
    answer = await client.get(address_of_document(with_(FITTING, make__process="printed"), "/route"))
    assert answer.status_code == 422
    assert "turned from rod, not printed" in words_of(answer.text)
    assert "There is no card until it is put right" in words_of(answer.text)
    assert 'class="operation"' not in answer.text


async def test_the_data_of_the_card_hold_what_the_geometry_wrote(client: AsyncClient) -> None:
    data = (await client.get(address_of_document(FITTING, "/route.json"))).json()
    design = design_of(FITTING)
    card = route_card(design.pad, design.conditions, design.measurements.shop)
    assert data["time_min"] == pytest.approx(card.time_min, rel=1e-9)
    assert [o["title"] for o in data["operations"]] == [o.title for o in card.operations]
    assert data["operations"][2]["passes"][-1]["after_mm"] == pytest.approx(design.pad.body_diameter_mm, abs=1e-9)
    assert all(entry["source"] for entry in data["sources"])


async def test_every_picture_of_the_card_says_what_it_shows(client: AsyncClient) -> None:
    """Oracle: the title of its operation: pocket and second slot have pictures of their own."""
    for name, words in (
        ("kayak_club_estate_drain", "The pocket in section"),
        ("orchard_pickup_crossed_slots", "The second slot"),
    ):
        text = await page(client, sample(name), "route")
        titles = re.findall(r"<title id=\"operation-\d+-title\">(.*?)</title>", text)
        assert any(title.startswith(words) for title in titles)
        assert len(set(titles)) == len(titles)


async def test_an_inch_shop_reads_the_length_of_its_bar_in_inches(client: AsyncClient) -> None:
    """Oracle: 1000 mm is 39.37 in."""
    words = words_of(await page(client, sample("allotment_estate_inch_shop"), "route", units="in"))
    assert "A bar of 39.4 in gives" in words


async def test_the_third_set_up_is_named_for_what_is_cut_in_it(client: AsyncClient) -> None:
    """Oracle: a pad with a slot."""
    assert "Third set-up, for the slot" in words_of(await page(client, FITTING, "route"))


def test_a_pad_without_anything_to_mill_has_its_hole_in_the_third_set_up() -> None:
    """Oracle: two clampings on the lathe go before it, three where something is milled as well."""
    assert set_up_heading(4, EVERY_KIND["cushion"], "lathe_and_mill") == "Third set-up, for the cross-hole"
    assert set_up_heading(4, EVERY_KIND["flats"], "lathe_and_mill") == "Fourth set-up, for the cross-hole"
    assert set_up_heading(3, EVERY_KIND["plug"], "lathe_and_mill") == "Third set-up, for the plug"


async def test_a_list_at_the_top_leads_to_every_operation(client: AsyncClient) -> None:
    """Oracle: the headings of the card itself, in their order; the list stands before the bar."""
    text = await page(client, FITTING, "route")
    nav = text[text.index('<nav class="to-operation') : text.index("</nav>", text.index('<nav class="to-operation'))]
    ways = re.findall(r'href="#([^"]+)">(.*?)</a>', nav, re.S)
    operations = re.findall(r'<li class="operation" id="([^"]+)">.*?<h3>(.*?)</h3>', text, re.S)
    assert [(place, words_of(words)) for place, words in ways] == [
        (place, words_of(words)) for place, words in operations
    ]
    assert len(ways) > 8
    assert text.index(nav) < text.index('id="stock"')
