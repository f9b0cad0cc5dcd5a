"""The shop's pages under a link: each leads back to its revision, and the inspection sheet says what becomes of its readings."""

import re
from html import unescape

import pytest
from httpx import AsyncClient

from geometry.fits import linear_tolerance_mm
from geometry.standing import DO_NOT_USE
from tests.documents import van
from tests.server.saving.asking import links_of, page, save, send, words_of
from tests.server.saving.test_saving_papers import TOO_BIG

pytestmark = pytest.mark.anyio
SHEETS = {"route": "Route card", "inspection": "Inspection sheet", "record": "Record in service"}


async def to_sheet(client: AsyncClient, link: str, sheet: str) -> str:
    """The address behind the way to a sheet on a revision's page."""
    found = re.search(rf'<a href="([^"]+)"[^>]*>{SHEETS[sheet]}</a>', await page(client, link))
    assert found
    return unescape(found[1])


@pytest.mark.parametrize("sheet", SHEETS)
@pytest.mark.parametrize("kind", ["owner", "friend", "view"])
async def test_every_sheet_of_the_shop_leads_back_to_its_revision(asking: AsyncClient, kind: str, sheet: str) -> None:
    """Oracle: the address of the page that it was reached from stands among its ways, whoever's link it is."""
    owner = await save(asking)
    link = {"owner": owner, **await links_of(asking, owner)}[kind]
    text = await page(asking, await to_sheet(asking, link, sheet))
    assert f'<a class="way-back" href="{link}">Back to revision A</a>' in text
    assert SHEETS[sheet] in words_of(text[text.index("<h1") : text.index("</h1>")])
    others = set(re.findall(r'href="(/saved/[^"?]+)', text))
    assert all(address.startswith(link) for address in others)


@pytest.mark.parametrize(("kind", "says"), [("friend", "judged and kept beside revision A"), ("view", "not kept")])
async def test_the_inspection_sheet_says_at_its_top_whether_readings_are_kept(
    asking: AsyncClient, kind: str, says: str
) -> None:
    """Oracle: the words stand before the first box, and a reading sent from the form is kept or is not."""
    owner = await save(asking)
    link = (await links_of(asking, owner))[kind]
    text = await page(asking, await to_sheet(asking, link, "inspection"))
    assert says in words_of(text[: text.index("<input")])
    form = re.search(r'<form class="inspection"[^>]*>', text)
    assert form
    action = re.search(r'action="([^"]+)"', form[0])
    assert action
    if 'method="post"' in form[0]:
        await send(asking, action[1], **{"as_made.web_mm": "18.5"})
    else:
        judged = await asking.get(action[1], params={"as_made.web_mm": "18.5"})
        assert 'value="18.5"' in judged.text
    assert ("No readings yet" in await page(asking, owner)) is (kind == "view")


async def test_an_inspection_sheet_that_stands_in_its_address_says_so(asking: AsyncClient) -> None:
    text = await page(asking, (await page_address(asking)).replace("/pad?", "/pad/inspection?", 1))
    assert "in this page's address and nowhere else" in words_of(text[: text.index('name="as_made.')])


async def page_address(client: AsyncClient) -> str:
    """The address of the working sheet of a saved design."""
    found = re.search(r'href="(/pad\?[^"]+)" data-change', await page(client, await save(client)))
    assert found
    return unescape(found[1])


async def test_limits_stand_beside_the_boxes_in_the_order_of_the_unsaved_sheet(asking: AsyncClient) -> None:
    """Oracle: ISO 2768-1 m for the web; the boxes of the sheet in an address, one after the other."""
    owner = await save(asking)
    web = (await asking.get(f"{owner}.json")).json()["pad"]["web_mm"]
    text = await page(asking, f"{owner}/readings")
    row = next(r for r in re.findall(r"<tr class.*?</tr>", text, re.S) if 'name="as_made.web_mm"' in r)
    around = [f"{web + sign * linear_tolerance_mm(web):.3f}".rstrip("0").rstrip(".") for sign in (-1, 1)]
    assert f"{around[0]} to {around[1]} mm" in words_of(row)
    unsaved = await page(asking, (await page_address(asking)).replace("/pad?", "/pad/inspection?", 1))
    boxes = [re.findall(r'<td class="line-read">.*?name="(as_made\.[^"]+)"', t, re.S) for t in (text, unsaved)]
    assert boxes[0] == boxes[1]
    assert len(boxes[0]) > 8


async def test_how_long_after_the_last_cut_is_asked_and_then_not_called_unknown(asking: AsyncClient) -> None:
    owner = await save(asking)
    web = (await asking.get(f"{owner}.json")).json()["pad"]["web_mm"]
    assert 'name="as_made.hours_since_cutting"' in await page(asking, f"{owner}/readings")
    await send(asking, f"{owner}/readings", **{"as_made.web_mm": f"{web}"})
    unknown = words_of(await page(asking, owner))
    assert "an unknown time after the last cut" in unknown
    other = await save(asking)
    await send(asking, f"{other}/readings", **{"as_made.web_mm": f"{web}", "as_made.hours_since_cutting": "26"})
    assert "an unknown time after the last cut" not in words_of(await page(asking, other))


async def test_after_readings_are_kept_one_step_leads_to_what_they_say(asking: AsyncClient) -> None:
    """Oracle: the words at the top hold a way whose place is on the page, below the readings' heading."""
    owner = await save(asking)
    answer = await send(asking, f"{owner}/readings", **{"as_made.web_mm": "18.5"})
    text = await page(asking, answer.headers["location"])
    said = re.search(r'<p class="said" role="status">.*?<a href="#([^"]+)">', text)
    assert said
    assert text.index(f'id="{said[1]}"') < text.index("Read with a caliper")


async def test_the_top_of_the_page_says_what_the_part_is(asking: AsyncClient) -> None:
    """Oracle: a reader who knows nothing of it meets the words before the verdict; each kind has its own."""
    text = await page(asking, await save(asking))
    top = words_of(text[: text.index('<p class="lead')])
    assert "goes between a jack and a car" in top
    assert "stands in the cup and takes the welded seam under the sill in its slot" in top
    assert "turned and milled from acetal" in top


async def test_the_route_card_under_a_link_takes_the_answers_of_another_shop(asking: AsyncClient) -> None:
    """Oracle: the revision's own address has no such answer; the form of the card sends to the card under the link."""
    owner = await save(asking)
    friend = (await links_of(asking, owner))["friend"]
    text = await page(asking, f"{friend}/route?shop.tool=carbide&units=in")
    assert f'action="{friend}/route"' in text
    assert '<option value="carbide" selected>' in text
    assert f'href="{friend}/route?shop.tool=carbide&amp;units=mm"' in text
    bare = await page(asking, f"{friend}/route?shop.tool=")
    assert '<option value="carbide" selected>' not in bare


@pytest.mark.parametrize("units", ["mm", "in"])
async def test_a_card_in_other_units_is_of_the_same_pad(asking: AsyncClient, units: str) -> None:
    """Oracle: the design's own mark, which follows from every size."""
    owner = await save(asking, van())
    mark = (await asking.get(f"{owner}.json")).json()["design_id"]
    assert f"design {mark}," in words_of(await page(asking, f"{owner}/route?units={units}"))


async def test_the_one_inspection_sheet_that_keeps_is_found_at_either_address(asking: AsyncClient) -> None:
    """Oracle: what an owner's link asks for as an inspection sheet is answered with the way to the one that keeps."""
    owner = await save(asking)
    assert (await asking.get(f"{owner}/inspection")).headers["location"] == f"{owner}/readings?units=mm"


async def test_the_drawing_can_be_looked_at_closely_as_saved_and_as_its_viewer_wants_it(asking: AsyncClient) -> None:
    """Oracle: in third angle and inches it is another sheet than the saved one, and the way back keeps the choice."""
    link = (await links_of(asking, await save(asking)))["view"]
    shown = await page(asking, f"{link}?units=in&projection=third")
    way = re.search(r'<p class="drawing"><a href="([^"]+)">', shown)
    assert way
    close = await page(asking, unescape(way[1]))
    plain = await page(asking, f"{link}/drawing")
    assert f'<a href="{link}?units=in&amp;projection=third">Back to revision A</a>' in close
    sheets = [re.findall(r'id="sheet-stage">(<svg.*?</svg>)', text, re.S) for text in (plain, close)]
    assert [len(found) for found in sheets] == [1, 1]
    assert sheets[0] != sheets[1]


@pytest.mark.parametrize("sheet", SHEETS)
async def test_a_part_whose_kept_readings_fail_is_marked_on_the_shops_pages_too(
    asking: AsyncClient, sheet: str
) -> None:
    """Oracle: the mark of the revision's own page, at the head of each page; struck out, it stands on none."""
    owner = await save(asking)
    link = (await links_of(asking, owner))["view"]
    address = await to_sheet(asking, link, sheet)
    assert DO_NOT_USE not in await page(asking, address)
    await send(asking, f"{owner}/readings", **TOO_BIG)
    assert DO_NOT_USE in words_of(await page(asking, address)).partition("Judge the readings")[0]
    which = re.search(r'name="strike" value="([^"]+)"', await page(asking, owner))
    assert which
    await send(asking, f"{owner}/readings", strike=which[1])
    assert DO_NOT_USE not in await page(asking, address)


@pytest.mark.parametrize(
    ("answer", "says"),
    [
        ({"make.cutter_diameters_mm": "abc"}, "“abc” is not a length"),
        ({"make.process": "printed"}, "is turned from rod, not printed"),
        ({"make.stock_diameters_mm": "60; 10000"}, "outside 1 to 400 mm"),
        ({"shop.kerf_mm": "wide"}, "“wide” is not a length"),
    ],
)
async def test_a_wrong_answer_of_the_shop_is_put_right_under_the_link(
    asking: AsyncClient, answer: dict[str, str], says: str
) -> None:
    """Oracle: beside its field stands what is wrong, what was typed stands in its box, and every way is the link's."""
    link = (await links_of(asking, await save(asking)))["friend"]
    got = await asking.get(f"{link}/route", params={**answer, "shop.tool": "carbide", "units": "mm"})
    assert got.status_code == 422
    beside = re.findall(r' has-problem" data-field=.*?<p class="note"[^>]*>(.*?)</p>', got.text, re.S)
    assert len(beside) == 1
    assert says in words_of(beside[0])
    key, text = next(iter(answer.items()))
    assert f'value="{text}"' in got.text
    assert f'name="{key}"' in got.text
    assert '<option value="carbide" selected>' in got.text
    assert f'action="{link}/route"' in got.text
    assert f'<a class="way-back" href="{link}?' in got.text
    assert 'href="/pad?' not in got.text


async def test_answers_of_the_shop_that_leave_no_pad_are_put_right_under_the_link(asking: AsyncClient) -> None:
    """Oracle: both bounds by their numbers: a cutter of 20 mm, and a slot that is no wider than 6.48 mm."""
    link = (await links_of(asking, await save(asking)))["view"]
    got = await asking.get(f"{link}/route", params={"make.cutter_diameters_mm": "20", "units": "mm"})
    assert got.status_code == 422
    words = words_of(got.text)
    assert "at least 20" in words
    assert "at most 6.48" in words
    assert 'value="20"' in got.text
    assert f'action="{link}/route"' in got.text
