"""The inspection sheet at its address: limits, readings beside their fields, and the part as made."""

import re
from typing import Any

import pytest
from httpx import AsyncClient

from geometry.as_made import judge_as_made
from geometry.inspection import inspection_sheet
from geometry.standing import DO_NOT_USE
from server.links import address_of_document
from tests.server.asking import FITTING, problem
from tests.server.making_pages import READ, TOO_BIG, design_of, page, with_, words_of

pytestmark = pytest.mark.anyio


async def test_a_misspelt_key_is_not_lost_on_the_way_to_the_working_sheet(client: AsyncClient) -> None:
    answer = await client.get(address_of_document(FITTING, "/inspection") + "&as_made.webb_mm=3")
    assert answer.status_code == 303
    assert "as_made.webb_mm=3" in answer.headers["location"]


async def test_every_limit_stands_on_the_inspection_sheet_in_order(client: AsyncClient) -> None:
    """Oracle: the sheet of the geometry."""
    words, at = words_of(await page(client, FITTING, "inspection")), 0
    design = design_of(FITTING)
    for line in inspection_sheet(design.pad, design.conditions).characteristics:
        at = words.index(line.title, at)
        if line.lower_mm is not None and line.upper_mm is not None:
            at = words.index(f"{line.lower_mm:g} to {line.upper_mm:g} mm", at)


async def test_what_is_not_read_stays_open(client: AsyncClient) -> None:
    text = await page(client, FITTING, "inspection")
    sizes, looks = text.count('class="open-words"'), text.count("open: tick it on paper")
    assert (sizes, looks) == (11, 9)
    assert "The part as made" not in text


@pytest.mark.parametrize(
    ("changes", "outcome"),
    [
        (READ, "as_drawn"),
        (READ | {"as_made__edge_chamfer_mm": [1.5]}, "usable"),
        (TOO_BIG, "do_not_use"),
        ({"as_made__web_mm": [18.5]}, "open"),
    ],
    ids=["as drawn", "usable", "too big", "half"],
)
async def test_the_outcome_is_said_in_words_with_its_reasons(
    client: AsyncClient, changes: dict[str, Any], outcome: str
) -> None:
    """Oracle: the part as made, judged by the geometry."""
    document = with_(FITTING, **changes)
    text, design = await page(client, document, "inspection"), design_of(document)
    made = judge_as_made(design.pad, design.conditions, (design.measurements.as_made,))
    assert made.outcome == outcome
    words = words_of(text)
    assert (DO_NOT_USE if outcome == "do_not_use" else made.words) in words
    assert all(reason.shown() in words for reason in made.reasons)


async def test_a_moved_margin_stands_before_and_after(client: AsyncClient) -> None:
    """Oracle: a web read 1 mm thin bends the lip more; the limit's share grows."""
    document = with_(FITTING, **READ | {"as_made__web_mm": [17.5]})
    text = await page(client, document, "inspection")
    row = re.search(r'<tr><th scope="row">Lip bent across the slot beyond the seat</th>(.*?)</tr>', text)
    assert row
    before, after = (float(x) for x in re.findall(r"passes, ([\d.]+) of", row[1]))
    assert after > before


async def test_a_reading_in_the_wrong_unit_is_asked_about_beside_its_field(client: AsyncClient) -> None:
    text = await page(client, with_(FITTING, as_made__seat_diameter_mm=[2.646]), "inspection")
    row = text[text.index('id="field-as_made-seat_diameter_mm"') :][:900]
    assert "read in inches and entered as millimetres?" in row
    assert 'name="as_made.sure" value="yes"' in row
    assert 'value="2.646"' in text


async def test_a_slip_that_is_none_is_taken_as_it_is(client: AsyncClient) -> None:
    text = await page(client, with_(FITTING, as_made__seat_diameter_mm=[60.0], as_made__sure="yes"), "inspection")
    assert "is this a slip?" not in text
    assert "outside its limits" in text
    assert text.count('name="as_made.sure"') == 1


async def test_the_enter_key_judges_and_takes_no_slip_for_granted(client: AsyncClient) -> None:
    """Oracle: HTML's implicit submission presses the first submit button of a form in tree order."""
    text = await page(client, with_(FITTING, as_made__seat_diameter_mm=[2.646]), "inspection")
    form = text[text.index('action="/pad/inspection"') :]
    first = re.search(r"<button[^>]*>", form)
    assert first
    assert "name=" not in first[0]


WEB = READ["as_made__web_mm"]
"""As drawn."""


async def test_a_reading_that_is_no_length_keeps_its_text_and_the_rest_is_judged(client: AsyncClient) -> None:
    answer = await client.get(
        address_of_document(with_(FITTING, as_made__web_mm=WEB), "/inspection") + "&as_made.slot_depth_mm=deep"
    )
    assert answer.status_code == 422
    assert 'value="deep"' in answer.text
    assert "inside its limits" in answer.text
    assert 'href="#field-as_made-slot_depth_mm"' in answer.text


async def test_a_later_set_counts_and_both_are_kept(client: AsyncClient) -> None:
    document = with_(FITTING, as_made__web_mm=[17.0], as_made_2__web_mm=WEB)
    text = await page(client, document, "inspection")
    assert 'value="17"' in text
    assert f'value="{WEB[0]:g}"' in text
    assert "Judged by the second readings: inside its limits." in words_of(text)


async def test_readings_in_inches_are_judged_in_inches(client: AsyncClient) -> None:
    """Oracle: 67.2 mm is 2.6457 in; with units of inches a bare number is one."""
    whole = address_of_document(FITTING, "/inspection").replace("?", "?units=in&as_made.seat_diameter_mm=2.6457&")
    spelled = re.sub(r"_mm=([\d.]+)(?=&|$)", lambda m: m[0] if "2.6457" in m[0] else f"{m[0]}+mm", whole)
    words = words_of((await client.get(spelled)).text)
    assert "inside its limits" in words
    assert "is this a slip?" not in words


async def test_the_data_of_a_part_say_that_it_must_not_be_used(client: AsyncClient) -> None:
    made = (await client.get(address_of_document(with_(FITTING, **TOO_BIG), "/inspection.json"))).json()["as_made"]
    assert (made["outcome"], made["mark"]) == ("do_not_use", DO_NOT_USE)
    assert made["pad"]["seat_diameter_mm"] == pytest.approx(68.4, abs=1e-9)


async def test_data_of_bad_readings_name_the_field(client: AsyncClient) -> None:
    answer = await client.get(address_of_document(FITTING, "/inspection.json") + "&as_made.web_mm=thick")
    body = await problem(answer, status=422, kind="bad-measurements")
    assert [error["field"] for error in body["errors"]] == ["as_made.web_mm"]
