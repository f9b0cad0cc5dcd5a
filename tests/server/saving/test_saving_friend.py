"""The friend's page: what a machinist needs first, their units, trying with what they have, readings and proposals."""

import re
from html import unescape

import pytest
from httpx import AsyncClient

from geometry.design import design_pad
from geometry.fits import linear_tolerance_mm
from geometry.materials import MATERIALS
from geometry.measurements import read_measurements
from tests.documents import van
from tests.server.saving.asking import at, inputs, links_of, page, save, send, words_of

pytestmark = pytest.mark.anyio


async def friends(client: AsyncClient, document: dict[str, object] | None = None) -> str:
    return (await links_of(client, await save(client, document)))["friend"]


async def test_what_a_machinist_needs_comes_first(asking: AsyncClient) -> None:
    """Oracle: the order of the job: stock, material, its state, the sizes that decide, the drawing, files, the rest."""
    words = words_of(await page(asking, await friends(asking)))
    order = [
        "Stock",
        "Material",
        "Its state",
        "The five sizes that decide",
        "Drawing",
        "Files",
        "The part as made",
        "Remarks",
    ]
    places = [words.index(word) for word in order]
    assert places == sorted(places)
    assert "machined from dry stock" in words
    assert "ISO 2768-m" in words
    assert "acetal copolymer (POM-C)" in words


async def test_the_five_sizes_carry_the_limits_of_their_tolerances(asking: AsyncClient) -> None:
    """Oracle: sizes by the engine, limits by ISO 2768-1 Table 1 m."""
    pad = design_pad(read_measurements(van())).pad
    words = words_of(await page(asking, await friends(asking)))
    for value in (pad.seat_diameter_mm, pad.seat_length_mm, pad.slot_width_mm, pad.slot_depth_mm, pad.web_mm):
        tolerance = linear_tolerance_mm(value)
        shown = [f"{v:.3f}".rstrip("0").rstrip(".") for v in (value, value - tolerance, value + tolerance)]
        assert " ".join(shown) in words, shown


async def test_units_and_projection_are_the_viewers_and_do_not_change_what_was_saved(asking: AsyncClient) -> None:
    """Oracle: 16 mm is 0.630 in; the drawing in inches shows it, and the one as saved is the same before and after."""
    friend = await friends(asking)
    slot = (await asking.get(f"{friend}.json")).json()["pad"]["slot_depth_mm"]
    before = (await asking.get(f"{friend}.svg")).content
    inch = await page(asking, f"{friend}?units=in&projection=third")
    assert f"{slot / 25.4:.3f}" in inch
    assert 'href="' + friend + '.svg?units=in&amp;projection=third"' in inch
    other = await asking.get(f"{friend}.svg?units=in&projection=third")
    assert other.content != before
    assert (await asking.get(f"{friend}.svg?units=in")).content != other.content
    both = await page(asking, f"{friend}?units=dual")
    assert f"{slot:g} [{slot / 25.4:.3f}]" in both
    assert (await asking.get(f"{friend}.svg")).content == before


async def test_a_choice_that_is_none_shows_what_was_saved(asking: AsyncClient) -> None:
    friend = await friends(asking)
    assert (await asking.get(f"{friend}.svg?units=cubits")).content == (await asking.get(f"{friend}.svg")).content


async def test_trying_another_material_works_it_out_again_and_says_what_differs(asking: AsyncClient) -> None:
    """Oracle: the engine's own design with that material, against the page."""
    friend = await friends(asking)
    text = await page(asking, f"{friend}/try?make.material=pa66&make.stock_diameters_mm=90;+110")
    tried = design_pad(read_measurements(van(make__material="pa66", make__stock_diameters_mm=[90, 110])))
    words = words_of(text)
    assert tried.verdict_words in words
    assert f"Material acetal copolymer (POM-C) {tried.conditions.material.name}" in words.replace(
        "left out", "acetal copolymer (POM-C)"
    )
    assert "Send it back as a proposal" in words


async def test_a_printed_material_brings_its_process_along_and_a_rod_takes_it_back(asking: AsyncClient) -> None:
    friend = await friends(asking)
    printed = next(key for key, material in MATERIALS.items() if material.printed)
    words = words_of(await page(asking, f"{friend}/try?make.material={printed}&make.process="))
    assert "Send it back as a proposal" in words
    owner = await save(asking, van(make__material=printed, make__process="printed"))
    back = words_of(
        await page(asking, f"{(await links_of(asking, owner))['friend']}/try?make.material=&make.process=printed")
    )
    assert "Send it back as a proposal" in back


@pytest.mark.parametrize(
    ("changes", "words"), [("make.stock_diameters_mm=wide", "wide"), ("make.cutter_diameters_mm=0.01", "0.01")]
)
async def test_what_cannot_be_tried_is_said_and_cannot_be_sent(asking: AsyncClient, changes: str, words: str) -> None:
    text = words_of(await page(asking, f"{await friends(asking)}/try?{changes}"))
    assert words in text
    assert "Send it back" not in text


async def test_a_proposal_stands_beside_the_revision_and_changes_nothing_of_it(asking: AsyncClient) -> None:
    owner = await save(asking)
    friend = (await links_of(asking, owner))["friend"]
    before = [(await asking.get(f"{owner}.{e}")).content for e in ("json", "svg", "pdf")]
    tried = await page(asking, f"{friend}/try?make.material=pa66")
    copy = unescape(re.search(r'name="inputs" value="([^"]+)"', tried)[1])  # type: ignore[index]
    answer = await send(asking, f"{friend}/proposals", inputs=copy, name="Ada", words="I have nylon")
    assert answer.headers["location"] == f"{friend}?said=proposal"
    text = await page(asking, owner)
    assert "I have nylon" in words_of(text)
    compare = unescape(re.search(r'href="([^"]*difference\?with=[A-Za-z0-9_-]{22})"', text)[1])  # type: ignore[index]
    assert "proposal by Ada" in words_of(await page(asking, compare))
    assert [(await asking.get(f"{owner}.{e}")).content for e in ("json", "svg", "pdf")] == before
    assert (await asking.get(at(owner, "B"))).status_code == 404


async def test_a_proposal_that_changes_nothing_or_fits_nothing_is_refused_in_words(asking: AsyncClient) -> None:
    friend = await friends(asking)
    same = await send(asking, f"{friend}/proposals", inputs=inputs())
    assert (same.status_code, "Nothing is different" in same.text) == (422, True)
    none = await send(asking, f"{friend}/proposals", inputs="/pad?jack.cup_bore_mm=68")
    assert (none.status_code, "cannot be worked out" in none.text) == (422, True)


async def test_a_remark_is_kept_with_its_name_and_its_lines(asking: AsyncClient) -> None:
    owner = await save(asking)
    friend = (await links_of(asking, owner))["friend"]
    await send(asking, f"{friend}/remarks", words="First cut on Monday.\nSlot with a 10 mm cutter.", name="Ada")
    text = await page(asking, owner)
    assert "First cut on Monday.\nSlot with a 10 mm cutter." in text
    assert re.search(r"Ada, \d+ \w+ \d{4}, \d\d:\d\d UTC", text)


async def test_readings_are_judged_once_and_kept_beside_the_revision(asking: AsyncClient) -> None:
    """Oracle: a web read 0.1 under its nominal size lies inside ISO 2768-m, one read 3 mm under it does not."""
    owner = await save(asking)
    friend = (await links_of(asking, owner))["friend"]
    web = (await asking.get(f"{owner}.json")).json()["pad"]["web_mm"]
    await send(asking, f"{friend}/readings", **{"as_made.web_mm": f"{web - 0.05}; {web}", "name": "Ada"})
    good = words_of(await page(asking, owner))
    assert f"{web - 0.05:g}; {web:g} mm" in good
    assert "it is not known whether it is as drawn" in good
    await send(asking, f"{friend}/readings", **{"as_made.web_mm": f"{web - 3}", "as_made.instrument": "micrometer"})
    bad = words_of(await page(asking, owner))
    assert "Read with a micrometer." in bad
    assert f"{web - 3:g} mm" in bad
    assert bad.count("Read with a") == 2


async def test_readings_in_inches_are_read_as_inches(asking: AsyncClient) -> None:
    friend = await friends(asking)
    web = (await asking.get(f"{friend}.json")).json()["pad"]["web_mm"]
    await send(asking, f"{friend}/readings", **{"as_made.web_mm": f"{web / 25.4:.4f}", "units": "in"})
    assert f"{web:g} mm" in words_of(await page(asking, friend))


@pytest.mark.parametrize(
    "fields", [{}, {"as_made.web_mm": "thick"}, {"as_made.web_mm": "-3"}, {"as_made.nothing": "3"}]
)
async def test_readings_that_are_none_are_refused_in_words_and_keep_the_name(
    asking: AsyncClient, fields: dict[str, str]
) -> None:
    friend = await friends(asking)
    answer = await send(asking, f"{friend}/readings", name="Ada", **fields)
    assert answer.status_code == 422
    assert 'role="alert"' in answer.text
    assert 'value="Ada"' in answer.text
    assert "No readings yet" in await page(asking, friend)


async def test_the_link_is_there_as_text_and_as_a_code(asking: AsyncClient) -> None:
    friend = await friends(asking)
    text = await page(asking, friend)
    assert f'value="http://pads.test{friend}"' in text
    assert text.count("<svg") == 1
    assert not re.search(r"<svg[^>]*(style|class)=", text)


async def test_a_drawing_with_a_code_is_made_for_its_reader_and_not_kept(asking: AsyncClient) -> None:
    """Oracle: the same drawing for the same reader, another for another reader, and the one as saved unchanged."""
    owner = await save(asking)
    links = await links_of(asking, owner)
    plain = (await asking.get(f"{owner}.svg")).content
    coded = {kind: (await asking.get(f"{link}.svg?code=yes")).content for kind, link in links.items()}
    assert len(coded["friend"]) > len(plain)
    assert coded["owner"] == coded["view"] != coded["friend"]
    assert (await asking.get(f"{owner}.svg")).content == plain


async def test_inches_in_64ths_are_a_choice_of_the_viewer_and_its_sentences_speak_inches(asking: AsyncClient) -> None:
    """Oracle: the seat's length of 13 mm is 0.512 in, and no sentence of that page names a bar in mm."""
    view = (await links_of(asking, await save(asking)))["view"]
    text = await page(asking, f"{view}?units=in_fraction")
    assert re.search(r'units=in_fraction" aria-current="true">inch, 64ths<', text)
    stock = re.search(r"<dt>Stock</dt><dd>([^<]+)</dd>", text)
    assert stock
    assert stock[1].endswith(" in")


async def test_who_reads_in_inches_tries_and_measures_in_inches(asking: AsyncClient) -> None:
    """Oracle: a bar typed as a bare 5 is 127 mm; the other answers, saved in mm, stay what they are."""
    friend = (await links_of(asking, await save(asking)))["friend"]
    text = await page(asking, f"{friend}?units=in_fraction")
    assert f'href="{friend}/try?units=in"' in text
    assert f'href="{friend}/readings?units=in"' in text
    tried = await page(asking, f"{friend}/try?units=in&make.stock_diameters_mm=5")
    inputs_sent = unescape(re.findall(r'name="inputs" value="([^"]+)"', tried)[0])
    document = (await asking.get(inputs_sent.replace("/pad?", "/pad.document.json?"))).json()
    assert document["make"]["stock_diameters_mm"] == [127]
    assert document["jack"] == van()["jack"]
    assert '<span class="unit">in</span>' in await page(asking, f"{friend}/readings?units=in")
