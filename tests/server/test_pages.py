"""The working sheet over HTTP: states, statuses, and that it is one page under one strict policy."""

import re
from html.parser import HTMLParser
from itertools import pairwise

import pytest
from httpx import AsyncClient, Response

from server.links import SAMPLES, address_of_document, pad_address
from tests.server.asking import FAILING, FITTING, NO_PAD

pytestmark = pytest.mark.anyio
VAN, UNFIT, CONFLICT = (address_of_document(d) for d in (FITTING, FAILING, NO_PAD))
HALF, WRONG = "/pad?jack.cup_bore_mm=68", "/pad?jack.cup_bore_mm=4&jack.cup_depth_mm=abc"


class Reader(HTMLParser):
    """Collects what a page consists of."""

    def __init__(self) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))

    def all(self, tag: str) -> list[dict[str, str | None]]:
        """The attributes of every element of one kind."""
        return [attributes for name, attributes in self.tags if name == tag]


def read(answer: Response) -> Reader:
    reader = Reader()
    reader.feed(answer.text)
    return reader


@pytest.mark.parametrize(
    ("address", "status", "words"),
    [
        ("/", 200, "8 measurements make a first pad."),
        ("/pad", 200, "8 measurements make a first pad."),
        (HALF, 200, "7 measurements are still to be taken."),
        (WRONG, 422, "2 answers cannot be right."),
        (VAN, 200, "estimates pass"),
        (UNFIT, 200, "Do not make"),
        (CONFLICT, 422, "No pad fits"),
    ],
)
async def test_each_state_has_its_status_and_its_words(
    client: AsyncClient, address: str, status: int, words: str
) -> None:
    answer = await client.get(address)
    assert answer.status_code == status
    assert words in answer.text
    assert answer.headers["content-type"] == "text/html; charset=utf-8"


@pytest.mark.parametrize("address", ["/", HALF, WRONG, VAN, UNFIT, CONFLICT])
async def test_no_page_holds_what_the_content_policy_refuses(client: AsyncClient, address: str) -> None:
    """Oracle: script-src and style-src 'self' refuse inline scripts, styles and handlers."""
    page = read(await client.get(address))
    assert page.all("style") == []
    assert all(attributes.get("src") for attributes in page.all("script"))
    named = {name for _, attributes in page.tags for name in attributes}
    assert not {n for n in named if n == "style" or n.startswith(("on", "hx-on"))}


@pytest.mark.parametrize("address", ["/", HALF, WRONG, VAN, UNFIT, CONFLICT])
async def test_ids_are_unique_and_every_label_and_link_meets_one(client: AsyncClient, address: str) -> None:
    page = read(await client.get(address))
    ids = [a["id"] for _, a in page.tags if a.get("id")]
    assert len(ids) == len(set(ids)), {i for i in ids if ids.count(i) > 1}
    inside = {str(a["href"])[1:] for a in page.all("a") if str(a.get("href", "")).startswith("#")}
    meant = {a["for"] for a in page.all("label") if a.get("for")} | inside
    described = {one for _, a in page.tags for one in str(a.get("aria-describedby") or "").split()}
    assert (meant | described) - set(ids) == set()


@pytest.mark.parametrize("address", ["/", HALF, WRONG, VAN, UNFIT, CONFLICT])
async def test_every_page_has_one_main_heading_and_misses_no_level(client: AsyncClient, address: str) -> None:
    levels = [int(tag[1]) for tag, _ in read(await client.get(address)).tags if re.fullmatch(r"h[1-6]", tag)]
    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


async def test_what_was_typed_comes_back_as_it_was_typed(client: AsyncClient) -> None:
    """Oracle: the texts themselves, one of them hostile."""
    typed = {
        "title": '<b>"van" & co</b>',
        "seam.thickness_mm": '1/8"',
        "jack.cup_depth_mm": "abc",
        "seam.bow_mm": "0,3",
    }
    page = read(await client.get(pad_address(typed)))
    values = {a["name"]: a["value"] for a in page.all("input") if a.get("value")}
    assert values == typed


async def test_texts_cannot_become_markup(client: AsyncClient) -> None:
    answer = await client.get(pad_address({"title": "<script>x</script>", "jack.cup_bore_mm": "<img src=x>"}))
    assert "<script>x" not in answer.text
    assert "<img src=x" not in answer.text


async def test_a_form_sent_with_empty_boxes_gets_the_short_address(client: AsyncClient) -> None:
    answer = await client.get("/pad?jack.cup_bore_mm=68&jack.cup_depth_mm=&units=mm&seam.sheets=")
    assert answer.status_code == 303
    assert answer.headers["location"] == HALF


async def test_an_unknown_key_is_refused_in_words(client: AsyncClient) -> None:
    answer = await client.get("/pad?jack.cup_boer_mm=68&jack.cup_depth_mm=")
    assert answer.status_code == 422
    assert "“jack.cup_boer_mm” is not a field of this form" in answer.text


async def test_a_size_that_cannot_be_made_is_refused_beside_its_box(client: AsyncClient) -> None:
    answer = await client.get(VAN + "&fixed.web_mm=12")
    assert answer.status_code == 422
    page = read(answer)
    (box,) = (a for a in page.all("input") if a.get("name") == "fixed.web_mm")
    assert (box["value"], box.get("aria-invalid")) == ("12", "true")


async def test_no_box_is_of_the_kind_that_swallows_text(client: AsyncClient) -> None:
    """Oracle: number boxes drop what is not a number before anybody can read it."""
    asked = [a for a in read(await client.get(UNFIT)).all("input") if not str(a.get("name")).startswith("turn-")]
    assert {a.get("type") for a in asked} <= {"text", "hidden", "checkbox"}


async def test_a_page_is_never_kept_by_a_cache(client: AsyncClient) -> None:
    assert (await client.get(VAN)).headers["cache-control"] == "no-store"


async def test_every_static_file_of_a_page_is_there(client: AsyncClient) -> None:
    page = read(await client.get(VAN))
    found = [a["src"] for a in page.all("script")] + [a["href"] for a in page.all("link")]
    assert len(found) == len(set(found)) >= 7
    for address in found:
        assert (await client.get(str(address))).status_code == 200


async def test_the_ready_samples_are_linked_from_the_first_page_and_open(client: AsyncClient) -> None:
    page = read(await client.get("/"))
    samples = [str(a["href"]) for a in page.all("a") if str(a.get("href", "")).startswith("/pad?title=")]
    assert len(samples) == len(list(SAMPLES.glob("*.json")))
    for address in samples:
        assert (await client.get(address)).status_code in {200, 422}


async def test_switching_units_keeps_the_design(client: AsyncClient) -> None:
    """Oracle: the sizes in millimetres, read from the page's data sibling before and after."""
    page = read(await client.get(VAN))
    inch = next(str(a["href"]) for a in page.all("a") if "units=in" in str(a.get("href", "")))
    before, after = [(await client.get(a.replace("/pad?", "/pad.json?"))).json()["pad"] for a in (VAN, inch)]
    assert after == before


@pytest.mark.parametrize("address", [VAN, UNFIT])
async def test_the_files_of_a_page_are_linked_from_it(client: AsyncClient, address: str) -> None:
    page = read(await client.get(address))
    links = [str(a.get("href", "")) for a in page.all("a")] + [str(a.get("formaction", "")) for a in page.all("button")]
    for ending in ("pdf", "dxf", "svg", "json", "step", "stl", "3mf"):
        assert any(link.startswith(f"/pad.{ending}") for link in links), ending


async def test_a_model_that_is_not_fit_is_linked_only_behind_its_confirmation(client: AsyncClient) -> None:
    page = read(await client.get(UNFIT))
    assert not [a for a in page.all("a") if re.match(r"/pad\.(step|stl|3mf)", str(a.get("href", "")))]
    (tick,) = (a for a in page.all("input") if a.get("name") == "confirm")
    assert tick["type"] == "checkbox"
    assert tick["value"] == "not-fit"
    assert "required" in tick
