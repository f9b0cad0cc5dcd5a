"""Designs without accounts: measurement documents down and up, everything as one file, and back in."""

import json
import re
import time
from datetime import date
from typing import Any

import pytest
from httpx import AsyncClient, Response
from sqlalchemy import select

from geometry import ENGINE_VERSION
from server.collection import FORMAT, MOST_BESIDE, MOST_TOGETHER, taken_in
from server.store.database import Database
from server.store.exchange import MOST_OF_EACH
from server.store.keys import letters_of
from server.store.tables import ALL_TABLES
from tests.documents import van
from tests.server.saving.asking import FAILING, NO_PAD, at, inputs, links_of, page, save, send, words_of
from tests.server.saving.conftest import client_of, opened

pytestmark = pytest.mark.anyio


async def upload(client: AsyncClient, address: str, content: bytes | dict[str, Any]) -> Response:
    body = content if isinstance(content, bytes) else json.dumps(content).encode()
    return await client.post(
        address, files={"file": ("x.json", body, "application/json")}, headers={"sec-fetch-site": "same-origin"}
    )


@pytest.mark.parametrize(
    "document",
    [van(), FAILING, NO_PAD, van(make__stock_diameters_mm=[90, 110.5])],
    ids=["van", "failing", "no pad", "bars"],
)
async def test_a_measurement_document_comes_down_and_goes_up_to_the_same_sheet(
    asking: AsyncClient, document: dict[str, Any]
) -> None:
    address = inputs(document)
    down = await asking.get(address.replace("/pad?", "/pad.document.json?"))
    assert "attachment" in down.headers["content-disposition"]
    up = await upload(asking, "/pad/document", down.content)
    assert (up.status_code, up.headers["location"]) == (303, address)


async def test_an_unfinished_document_may_be_taken_and_brought_back(asking: AsyncClient) -> None:
    down = await asking.get("/pad.document.json?jack.cup_bore_mm=2+11/16+in&title=")
    assert down.json() == {"jack": {"cup_bore_mm": pytest.approx(68.2625)}}
    assert (await upload(asking, "/pad/document", down.content)).headers["location"] == "/pad?jack.cup_bore_mm=68.2625"


async def test_a_designs_own_data_opens_as_its_measurements(asking: AsyncClient) -> None:
    owner = await save(asking)
    answer = await upload(asking, "/pad/document", (await asking.get(f"{owner}.json")).content)
    assert answer.headers["location"].startswith("/pad?jack.cup_bore_mm=68&")


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "No file was chosen"),
        (b"no json", "cannot be read"),
        (b"[1]", "cannot be read"),
        (b'{"jack": {"colour": "red"}}', "jack.colour"),
        (b'{"recipe": "soup"}', "recipe"),
        (b"\xff\xfe{}", "not UTF-8"),
    ],
)
async def test_a_file_that_is_no_document_is_refused_in_words(asking: AsyncClient, content: bytes, words: str) -> None:
    answer = await upload(asking, "/pad/document", content)
    assert answer.status_code == 422
    assert words in words_of(answer.text)


async def test_a_document_that_is_too_large_is_refused(asking: AsyncClient) -> None:
    assert (await upload(asking, "/pad/document", b" " * 70_000)).status_code == 413


FROM_A_PAGE = {"accept": "text/html,application/xhtml+xml,*/*;q=0.8", "sec-fetch-site": "same-origin"}


@pytest.mark.parametrize(
    ("address", "size", "words"),
    [
        ("/pad/document", 70_000, "at most 64 KiB is taken here"),
        ("/mine/import", 17_000_000, "at most 16 MiB is taken here"),
    ],
)
async def test_a_browser_is_told_in_words_that_a_file_is_too_large_and_a_program_as_data(
    asking: AsyncClient, address: str, size: int, words: str
) -> None:
    files = {"file": ("x.json", b" " * size, "application/json")}
    page_of_it = await asking.post(address, files=files, headers=FROM_A_PAGE)
    assert page_of_it.status_code == 413
    assert words in words_of(page_of_it.text)
    assert "noindex" in page_of_it.headers["x-robots-tag"]
    data = await asking.post(address, files=files)
    assert (data.status_code, data.json()["type"]) == (413, "/problems/too-large")


async def test_a_form_that_says_too_much_gets_a_page_as_well(asking: AsyncClient) -> None:
    answer = await asking.post("/saved", data={"inputs": "x" * 70_000}, headers=FROM_A_PAGE)
    assert answer.status_code == 413
    assert "Nothing was changed" in words_of(answer.text)


async def exported(client: AsyncClient, *links: str) -> dict[str, Any]:
    answer = await send(client, "/mine/export", links="\n".join(f"http://pads.test{link}" for link in links))
    assert answer.status_code == 200, answer.text
    assert "attachment" in answer.headers["content-disposition"]
    found: dict[str, Any] = answer.json()
    return found


async def filled(client: AsyncClient) -> str:
    """A design with two revisions and something of everything beside the first."""
    owner = await save(client, title="Van")
    await send(client, "/saved", inputs=inputs(seam__height_mm=22), to=owner, note="deeper")
    await send(client, f"{owner}/remarks", words="Hello", name="Ada")
    await send(client, f"{owner}/readings", **{"as_made.web_mm": "18.5"})
    await send(client, f"{owner}/proposals", inputs=inputs(make__material="pa66"), words="nylon")
    return owner


async def test_everything_goes_into_one_file_and_comes_back_on_another_server(
    asking: AsyncClient, other_setting: str
) -> None:
    """Oracle: the same file again from the other server, but for moments and links."""
    owner, second = await filled(asking), await save(asking, FAILING)
    file = await exported(asking, owner, second, at(owner, "B"))
    async with client_of(other_setting) as other:
        answer = await upload(other, "/mine/import", file)
        assert answer.status_code == 200
        new = [f"/saved/{part.split(chr(34))[0]}" for part in answer.text.split('href="/saved/')[1:]]
        again = await exported(other, *new)

    def timeless(value: Any) -> Any:
        if isinstance(value, dict):
            return {k: timeless(v) for k, v in value.items() if k not in {"at", "saved_at", "made_at"}}
        return [timeless(v) for v in value] if isinstance(value, list) else value

    assert timeless(again) == timeless(file)
    assert [len(design["revisions"]) for design in file["designs"]] == [2, 1]
    beside = file["designs"][0]["revisions"][0]
    assert [len(beside[name]) for name in ("remarks", "readings", "proposals")] == [1, 1, 1]


async def test_an_imported_design_has_page_drawing_and_links_of_its_own(asking: AsyncClient) -> None:
    owner = await filled(asking)
    answer = await upload(asking, "/mine/import", await exported(asking, owner))
    new = "/saved/" + answer.text.split('href="/saved/')[1].split('"')[0]
    assert new.endswith("/B")
    assert new.split("/")[2] != owner.split("/")[2]
    assert "Van revision B" in words_of(await page(asking, new))
    assert (await asking.get(f"{new}.pdf")).content.startswith(b"%PDF-")
    assert set(await links_of(asking, new)) == {"owner", "friend", "view"}


async def test_what_a_file_claims_is_worked_out_anew_and_the_difference_is_said(asking: AsyncClient) -> None:
    """Oracle: a file that says of a failing pad that it passes; the page says what the engine says."""
    file = await exported(asking, await save(asking, FAILING))
    claimed = file["designs"][0]["revisions"][0]
    claimed["engine_version"] = "0.1"
    claimed["design"] |= {"verdict": "All good.", "fit_to_make": True, "pad": claimed["design"]["pad"] | {"web_mm": 99}}
    answer = await upload(asking, "/mine/import", file)
    new = "/saved/" + answer.text.split('href="/saved/')[1].split('"')[0]
    words = words_of(await page(asking, new))
    assert "Do not make:" in words
    assert "All good." not in words
    assert (
        f"worked out by version 0.1, 1 sizes and 0 estimates were different. Worked out anew here by version {ENGINE_VERSION}."
        in words
    )


async def test_a_revision_that_no_longer_fits_is_named_and_the_rest_is_taken(asking: AsyncClient) -> None:
    file = await exported(asking, await filled(asking))
    file["designs"][0]["revisions"][0]["document"] = NO_PAD
    answer = await upload(asking, "/mine/import", file)
    assert answer.status_code == 200
    assert "Left out. Revision A:" in words_of(answer.text)
    assert "up to revision B" in words_of(answer.text)


@pytest.mark.parametrize(
    "file",
    [
        {"recipes": []},
        {"format": "seamrest saved designs", "version": 2, "designs": []},
        {"format": "seamrest saved designs", "version": 1, "designs": 3},
        {"format": "seamrest saved designs", "version": 1, "designs": [{"revisions": [{"number": 1}]}]},
        {
            "format": "seamrest saved designs",
            "version": 1,
            "designs": [{"revisions": [{"number": 10**9, "document": van()}]}],
        },
        {"format": "seamrest saved designs", "version": 1, "designs": [{"revisions": [{}] * 201}]},
        {
            "format": "seamrest saved designs",
            "version": 1,
            "designs": [{"title": 3, "revisions": [{"number": 1, "document": {"jack": "x"}}]}],
        },
    ],
    ids=range(7),
)
async def test_a_file_with_nothing_usable_in_it_is_refused_and_keeps_nothing(
    asking: AsyncClient, setting: str, file: dict[str, Any]
) -> None:
    assert (await upload(asking, "/mine/import", file)).status_code == 422
    with opened(setting) as database, database.reading() as connection:
        assert not [t.name for t in ALL_TABLES if connection.execute(select(t)).first()]


async def test_odd_things_beside_a_revision_are_left_out_and_not_fatal(asking: AsyncClient) -> None:
    file = await exported(asking, await save(asking))
    file["designs"][0]["revisions"][0] |= {
        "note": 7,
        "design": {"pad": "round"},
        "remarks": [{"words": None}, "x", {"words": "kept", "kind": "queen", "name": []}],
        "readings": [{"readings": {"set": {"web_mm": ["thick"]}}}, {"readings": 3}, {}],
        "proposals": [{"document": 3}, {"document": {"jack": {}}}],
    }
    answer = await upload(asking, "/mine/import", file)
    assert answer.status_code == 200
    new = "/saved/" + answer.text.split('href="/saved/')[1].split('"')[0]
    words = words_of(await page(asking, new))
    assert "kept" in words
    assert "no result to compare with" in words
    assert "No readings yet" in words
    assert "No proposals yet" in words


async def test_one_file_cannot_ask_for_more_designs_than_are_worked_out_together(
    asking: AsyncClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Oracle: of four proposals and one remark three things find room, the remark first; the rest is named."""
    monkeypatch.setattr("server.collection.MOST_BESIDE", 3)
    file = await exported(asking, await save(asking))
    proposals = [{"document": van(seam__height_mm=height), "name": f"N{height}"} for height in (21, 22, 23, 24)]
    file["designs"][0]["revisions"][0] |= {"remarks": [{"words": "Hello"}], "proposals": proposals}
    answer = await upload(asking, "/mine/import", file)
    assert "Left out. 2 remarks, readings or proposals: of one file at most 3 are taken in" in words_of(answer.text)
    words = words_of(await page(asking, "/saved/" + answer.text.split('href="/saved/')[1].split('"')[0]))
    assert [name for name in ("Hello", "N21", "N22", "N23", "N24") if name in words] == ["Hello", "N21", "N22"]


@pytest.mark.full
def test_the_largest_work_that_a_file_can_ask_for_ends_within_a_minute(database: Database) -> None:
    """Oracle: 200 revisions with 200 proposals each; worked out without a limit they took several minutes."""
    proposals = [{"document": van()}] * MOST_OF_EACH
    made = [{"number": n, "document": van(), "proposals": proposals} for n in range(1, MOST_TOGETHER + 1)]
    file = {"format": FORMAT, "version": 1, "designs": [{"title": "Van", "revisions": made}]}
    began = time.monotonic()
    (found,) = taken_in(database, file, issued=date(2026, 2, 3))
    assert time.monotonic() - began < 60
    assert (len(found.left_out), found.letters) == (1, letters_of(MOST_TOGETHER))
    assert f"{MOST_OF_EACH * MOST_TOGETHER - MOST_BESIDE} remarks, readings or proposals" in found.left_out[0]


async def test_things_beside_a_revision_keep_their_order(asking: AsyncClient) -> None:
    file = await exported(asking, await save(asking))
    said = [f"word{number:02}" for number in range(40)]
    file["designs"][0]["revisions"][0]["remarks"] = [{"words": words} for words in said]
    answer = await upload(asking, "/mine/import", file)
    text = await page(asking, "/saved/" + answer.text.split('href="/saved/')[1].split('"')[0])
    assert re.findall(r"word\d\d", text) == said


async def test_larger_files_are_taken_where_designs_are_brought_in_and_nowhere_else(asking: AsyncClient) -> None:
    """Oracle: a file over the usual limit of 64 KiB and under the larger one."""
    file = await exported(asking, await filled(asking))
    assert len(json.dumps(file)) > 65536
    assert (await upload(asking, "/mine/import", file)).status_code == 200
    assert (await upload(asking, "/mine/import", b" " * 17_000_000)).status_code == 413


@pytest.mark.parametrize("links", ["", "nonsense", "http://pads.test/pad?x=1"])
async def test_an_export_without_a_link_is_refused_in_words(asking: AsyncClient, links: str) -> None:
    assert (await send(asking, "/mine/export", links=links)).status_code == 422


async def test_the_page_of_ones_own_designs_works_without_scripts_and_says_what_needs_them(asking: AsyncClient) -> None:
    text = await page(asking, "/mine")
    assert "<noscript>" in text
    for address in ("/mine/export", "/mine/import", "/pad/document"):
        assert f'method="post" action="{address}"' in text
