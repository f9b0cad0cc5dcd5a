"""The sheets of an address: each file's kind and name, the viewer's choices, and the drawing's page without a script."""

import re
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path

import pytest
from httpx import AsyncClient

from geometry.cautions import ONE_LINE
from geometry.design import Design
from geometry.drawing.facts import SheetFacts
from geometry.drawing.frame import NOT_FIT
from server.app import create_app
from server.drawn import drawers
from server.links import pad_address, typed_of_document
from server.packet import SHEETS
from tests.documents import van
from tests.server.asking import FAILING, FITTING, NO_PAD, fields_of, problem
from tests.server.conftest import SETTINGS
from tests.server.test_models import client_at

pytestmark = pytest.mark.anyio
FIRST = {"svg": b"<svg", "dxf": b"  0\nSECTION", "pdf": b"%PDF-", "png": b"\x89PNG"}
KINDS = {"svg": "image/svg+xml", "dxf": "image/vnd.dxf", "pdf": "application/pdf", "png": "image/png"}


def address(suffix: str, document: dict[str, object] | None = None, **view: str) -> str:
    return pad_address(typed_of_document(document or FITTING), suffix, view=view)


class Links(HTMLParser):
    """Every address that a page leads to."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag == "a":
            self.found += [value for name, value in attrs if name == "href" and value]


@pytest.mark.parametrize("name", SHEETS)
async def test_every_sheet_is_what_its_ending_says_and_carries_a_name(client: AsyncClient, name: str) -> None:
    answer = await client.get(address(f"/{name}"))
    ending = name.rpartition(".")[2]
    assert answer.status_code == 200
    assert answer.headers["content-type"] == KINDS[ending]
    assert answer.content.startswith(FIRST[ending])
    kind = name.partition(".")[0]
    assert re.search(
        rf'filename="lifting-pad-[0-9a-f]{{12}}-rev-a-{kind}\.{ending}"', answer.headers["content-disposition"]
    )


@pytest.mark.parametrize("name", ["packet.pdf", "card.pdf", "gauge.dxf", "drawing.svg"])
async def test_a_sheet_of_a_pad_that_is_not_fit_says_so_in_its_name(client: AsyncClient, name: str) -> None:
    answer = await client.get(address(f"/{name}", FAILING))
    assert "NOT-FIT" in answer.headers["content-disposition"]


@pytest.mark.parametrize(("key", "text"), [("paper", "A5"), ("projection", "second"), ("sizes", "cubits")])
async def test_a_choice_that_is_not_offered_is_refused_beside_its_key(client: AsyncClient, key: str, text: str) -> None:
    answer = await client.get(address("/drawing.svg") + f"&{key}={text}")
    assert fields_of(await problem(answer, status=422, kind="bad-measurements")) == {key}


async def test_a_choice_made_twice_is_refused(client: AsyncClient) -> None:
    answer = await client.get(address("/drawing.svg", paper="A4") + "&paper=letter")
    assert fields_of(await problem(answer, status=422, kind="bad-measurements")) == {"paper"}


async def test_a_sheet_of_an_unfinished_form_names_what_is_missing(client: AsyncClient) -> None:
    answer = await client.get("/pad/packet.pdf?jack.cup_bore_mm=68")
    assert "seam.thickness_mm" in fields_of(await problem(answer, status=422, kind="bad-measurements"))


async def test_the_papers_size_follows_the_choice(client: AsyncClient) -> None:
    widths = {}
    for paper in ("A4", "letter"):
        picture = (await client.get(address("/drawing.svg", paper=paper))).text
        found = re.search(r'<svg[^>]* width="([\d.]+)mm"', picture)
        assert found
        widths[paper] = float(found[1])
    assert widths == pytest.approx({"A4": 210.0, "letter": 215.9})


async def test_sizes_in_both_units_stand_beside_each_other(client: AsyncClient) -> None:
    """Oracle: 67.2 mm is 2.646 in."""
    picture = (await client.get(address("/drawing.svg", sizes="dual"))).text
    assert re.search(r"67\.2 \[2\.646\]", picture)


async def test_sizes_chosen_for_the_sheet_do_not_change_what_was_typed(client: AsyncClient) -> None:
    typed = typed_of_document(FITTING)
    in_mm = await client.get(pad_address(typed, "/drawing.dxf"))
    in_inches = await client.get(pad_address(typed, "/drawing.dxf", view={"sizes": "in"}))
    names = [answer.headers["content-disposition"] for answer in (in_mm, in_inches)]
    assert names[0] == names[1]
    assert in_mm.content != in_inches.content


async def test_the_page_shows_the_sheet_its_sizes_and_leads_to_every_file(client: AsyncClient) -> None:
    page = (await client.get(address("/drawing"))).text
    assert "<svg" in page
    found = Links(page).found
    for name in SHEETS:
        assert any(href.startswith(f"/pad/{name}?") for href in found), name
    rows = dict(re.findall(r'<tr data-name="(\w+)"><th scope="row">[^<]+</th><td>([^<]+)</td>', page))
    assert rows["seat_diameter_mm"].endswith("⌀67.2")
    assert ONE_LINE.replace("'", "&#39;") in page


async def test_the_pages_files_keep_the_viewers_choices(client: AsyncClient) -> None:
    page = (await client.get(address("/drawing", sizes="dual", projection="third", paper="letter"))).text
    files = [href for href in Links(page).found if re.match(r"/pad/\w+\.\w+\?", href)]
    assert len(files) == len(SHEETS)
    assert all("sizes=dual&projection=third&paper=letter" in href for href in files)


async def test_the_page_says_when_a_pad_is_not_fit_to_make(client: AsyncClient) -> None:
    assert f"{NOT_FIT}." in (await client.get(address("/drawing", FAILING))).text
    assert NOT_FIT not in (await client.get(address("/drawing"))).text


@pytest.mark.parametrize("document", [NO_PAD, {"jack": {"cup_bore_mm": 68}}])
async def test_where_there_is_no_pad_the_page_leads_to_the_working_sheet(
    client: AsyncClient, document: dict[str, object]
) -> None:
    answer = await client.get(address("/drawing", document, paper="A4"))
    assert answer.status_code == 303
    assert answer.headers["location"].startswith("/pad?")


async def test_what_was_typed_reaches_the_page_escaped(client: AsyncClient) -> None:
    page = (await client.get(address("/drawing", van(title='<b>"x"</b> & co')))).text
    assert "<b>" not in page
    assert "&lt;b&gt;" in page


async def test_the_same_address_gives_the_same_bytes(client: AsyncClient) -> None:
    for name in ("packet.pdf", "gauge.pdf", "gauge.dxf"):
        first, second = [(await client.get(address(f"/{name}"))).content for _ in range(2)]
        assert first == second


async def test_programs_are_told_of_every_sheet_and_of_the_viewers_keys(client: AsyncClient) -> None:
    paths = (await client.get("/openapi.json")).json()["paths"]
    for name in SHEETS:
        keys = {parameter["name"] for parameter in paths[f"/pad/{name}"]["get"]["parameters"]}
        assert {"sizes", "projection", "paper", "jack.cup_bore_mm"} <= keys


async def test_a_packet_that_was_asked_for_before_is_not_made_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Oracle: a maker of sheets that counts; a day, a unit or an answer that was only assumed before is another packet."""
    made: list[str] = []

    async def counted(name: str, design: Design, facts: SheetFacts) -> bytes:
        made.append(name)
        return b"%PDF-" + f"{len(made)}".encode()

    settings = replace(SETTINGS, model_cache_folder=str(tmp_path / "models"))
    monkeypatch.setattr(drawers, "sheet", counted)
    given = FITTING | {"seam": FITTING["seam"] | {"bow_mm": 0.3}}
    assert "bow_mm" not in FITTING["seam"]
    async with client_at(create_app(settings)) as asking:
        first = (await asking.get(address("/packet.pdf"))).content
    async with client_at(create_app(settings)) as asking:
        assert (await asking.get(address("/packet.pdf"))).content == first
        assert made == ["packet.pdf"]
        for other in (address("/packet.pdf", sizes="in"), address("/card.pdf"), address("/packet.pdf", given)):
            assert (await asking.get(other)).content != first
    assert made == ["packet.pdf", "packet.pdf", "card.pdf", "packet.pdf"]
