"""The pages around the working sheet: the measuring sheet, the pieces beside a pad, the page of parts, and how they are sent."""

import gzip
import html
import re

import pytest
from httpx import AsyncClient

from geometry.kinds import JACKS
from server.fields import FIELDS
from server.how_to import picture_for
from server.left_out import LeftOut
from server.links import STATIC, address_of_document, static_file
from server.measuring_sheet import measuring_page
from server.packed import html_answer
from tests.server.asking import FITTING, NO_PAD

pytestmark = pytest.mark.anyio
VAN, CONFLICT = (address_of_document(d) for d in (FITTING, NO_PAD))
SKETCHED = [key for key in FIELDS if picture_for(key, "cup")]
DRAWN = {p.address: p for key in SKETCHED for foot in JACKS if (p := picture_for(key, foot))}
"""Every drawing by its address, on whatever foot it is shown."""


async def test_the_measuring_sheet_asks_in_the_order_and_with_the_names_of_the_working_sheet(
    client: AsyncClient,
) -> None:
    """Oracle: the titles beside the boxes of jack and car on the working sheet, in the order in which they stand there."""
    sheet = (await client.get("/pad")).text
    asked = re.findall(
        r'data-field="(?:jack|seam|car)\.[^"]*">\s*<label[^>]*>.*?<span class="title">([^<]*)</span>', sheet, re.S
    )
    printed = re.findall(
        r'<div class="take-words"><h3>([^<]*?)(?: <span[^>]*>needed</span>)?</h3>', (await client.get("/measure")).text
    )
    assert printed == asked[: len(printed)]
    assert len(printed) == 30


async def test_every_box_of_the_measuring_sheet_leads_to_its_box_on_the_working_sheet(client: AsyncClient) -> None:
    """Oracle: the working sheet at that address has a box of that name, or the choice that asks for it."""
    carried = "/measure?back=foot%3Dsaddle%26head%3Dplug%26jack.rated_load_kg%3D2000"
    boxes = re.findall(r'<a class="take-box" href="([^"#]*)#([^"]*)"', (await client.get(carried)).text)
    (address,) = {html.unescape(address) for address, _ in boxes}
    sheet = (await client.get(address)).text
    assert len(boxes) > 20
    assert all(f'id="{box}"' in sheet for _, box in boxes)
    assert 'name="jack.rated_load_kg"' in sheet
    assert 'value="2000"' in sheet


async def test_the_ready_pads_are_folded_away_below_three_ways_to_begin(client: AsyncClient) -> None:
    """Oracle: three numbered ways whose places are on the page, and a fold without ``open``."""
    first = (await client.get("/")).text
    ways = re.findall(r'href="([^"]*)"', first[first.index('id="welcome-ways"') : first.index("</ol>")])
    assert [way.partition("?")[0] for way in ways] == ["#kinds", "/measure", "#field-jack-cup_bore_mm"]
    assert 'id="kinds"' in first
    assert '<details class="ready">' in first


async def test_the_measuring_sheet_marks_the_eight_numbers_of_a_first_pad() -> None:
    """Oracle: what an empty working sheet calls still to be measured."""
    needed = [f.key for part in measuring_page("mm").parts for f in part.fields if f.is_required]
    assert len(needed) == 8


async def test_the_measuring_sheet_speaks_in_the_viewers_unit(client: AsyncClient) -> None:
    answer = await client.get("/measure?units=in")
    assert '<span class="take-unit">in</span>' in answer.text
    assert not re.search(r"\d mm\b", answer.text)


@pytest.mark.parametrize("address", ["/", VAN])
async def test_the_measuring_sheet_is_linked(client: AsyncClient, address: str) -> None:
    assert re.search(r'href="/measure["?]', (await client.get(address)).text)


@pytest.mark.parametrize("address", DRAWN)
async def test_every_drawing_of_how_to_measure_is_there_with_a_title_of_its_own(
    client: AsyncClient, address: str
) -> None:
    """Oracle: the file's title is the text that stands in for it."""
    answer = await client.get(address)
    assert answer.status_code == 200
    assert answer.headers["content-type"] == "image/svg+xml"
    title = re.search(r"<title>(.*?)</title>", answer.text)
    assert title
    assert title[1] == DRAWN[address].words


def test_no_drawing_lies_about_unused() -> None:
    shown = {static_file(address.removeprefix("/static/")) for address in DRAWN}
    assert shown == set((STATIC / "how").glob("*.svg"))


def test_whatever_is_measured_with_an_instrument_has_a_drawing() -> None:
    """Oracle: every length of jack and car with a balloon, and every length that only one kind of foot or head asks for."""
    lengths = {key for key, field in FIELDS.items() if field.kind == "length"}
    of_kinds = {key for key in lengths if key.startswith(("jack.", "rail.", "pocket."))}
    assert {key for key, field in FIELDS.items() if field.balloon} | of_kinds <= set(SKETCHED)


@pytest.mark.parametrize("key", ["jack.rim_height_low_mm", "jack.rim_height_high_mm"])
def test_how_high_the_jacks_head_stands_is_drawn_anew_for_each_kind_of_head(key: str) -> None:
    """What is measured to is a rim, teeth, a plate or a bore: no two feet share a drawing of it."""
    assert len({p.words for foot in JACKS if (p := picture_for(key, foot))}) == len(JACKS)


async def test_the_pieces_beside_a_pad_are_a_page_and_a_piece(client: AsyncClient) -> None:
    address = VAN.replace("/pad", "/pad/beside", 1)
    page, piece = await client.get(address), await client.get(address, headers={"HX-Request": "true"})
    for answer in (page, piece):
        assert "Materials side by side" in answer.text
        assert "How the load grows as the car rises" in answer.text
    assert "<html" in page.text
    assert "<html" not in piece.text


async def test_without_a_pad_there_is_nothing_beside_it(client: AsyncClient) -> None:
    address = CONFLICT.replace("/pad", "/pad/beside", 1)
    page, piece = await client.get(address), await client.get(address, headers={"HX-Request": "true"})
    assert page.headers["location"] == CONFLICT
    assert (piece.status_code, piece.content) == (204, b"")


async def test_the_page_of_parts_shows_each_state_of_a_question_once(client: AsyncClient) -> None:
    text = (await client.get("/style")).text
    for state in ("is-open", "has-problem", "has-doubt", "is-choice", "is-long"):
        assert len(re.findall(rf'class="field[^"]*\b{state}\b', text)) == 1, state
    for verdict in ("is-fit", "is-not_fit", "is-no_pad"):
        assert text.count(f'<div class="{verdict}">') == 1
    for signal in ("DANGER", "WARNING", "CAUTION"):
        assert text.count(f'<span class="signal">{signal}</span>') == 1


async def test_the_working_sheet_is_sent_small_to_whoever_can_read_that(client: AsyncClient) -> None:
    """Oracle: what arrives is the same page, byte for byte, in less than a third."""
    plain = await client.get(VAN, headers={"Accept-Encoding": "identity"})
    assert "content-encoding" not in plain.headers
    packed = await client.get(VAN, headers={"Accept-Encoding": "gzip"})
    assert packed.headers["content-encoding"] == "gzip"
    assert "accept-encoding" in packed.headers["vary"].lower()
    assert packed.text == plain.text
    assert int(packed.headers["content-length"]) < len(plain.content) / 3


async def test_whoever_refuses_gzip_gets_the_page_as_it_is(client: AsyncClient) -> None:
    answer = await client.get(VAN, headers={"Accept-Encoding": "gzip;q=0, br"})
    assert "content-encoding" not in answer.headers


def test_packing_is_the_same_every_time() -> None:
    """Oracle: unpacked by Python's own gzip; no clock in the bytes."""
    page = "seam " * 1000
    first, second = (html_answer(page, 200, packed=True).body for _ in range(2))
    assert first == second
    assert gzip.decompress(bytes(first)).decode() == page


async def test_what_is_not_checked_without_a_measurement_is_said_once(client: AsyncClient) -> None:
    """Oracle: one check alone hangs on the arm, and the field's own words name it already."""
    text = " ".join((await client.get("/pad")).text.split())
    words = re.findall(r"I can't measure this.</strong> (Leave the box empty[^<]*)", text)
    arm = [w for w in words if "clears the arm" in w]
    assert arm == ["Leave the box empty; whether the body clears the arm is then not checked."]


def test_what_the_words_of_a_field_do_not_say_is_listed() -> None:
    """Oracle: two checks cannot both be the one that the words name."""
    words = LeftOut(("A", "B"), ("C",)).words("nothing; whether A is then not checked", "")
    assert words.endswith(" Not checked then: A; B. Resting on that guess then: C.")
    assert LeftOut((), ()).words("half the depth", "5 mm") == ": 5 mm is taken (half the depth)."


async def test_sizes_are_said_to_be_in_inches(client: AsyncClient) -> None:
    text = (await client.get(address_of_document(FITTING, units="in"))).text
    assert "Sizes in inches at 20 °C" in text


async def test_a_cold_day_is_told_with_the_sign_of_a_number_below_zero(client: AsyncClient) -> None:
    document = FITTING | {"service": {"temperature_low_c": -5, "temperature_high_c": 40}}
    sheet = (await client.get(address_of_document(document))).text
    assert "−5 to 40 °C, " in sheet
    assert "-5 to 40" not in sheet
