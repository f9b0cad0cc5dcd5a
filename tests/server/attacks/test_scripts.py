"""Script in every text that somebody may write: it is shown as it was written, and never runs."""

import io
import json
import re
import subprocess
import zipfile
from pathlib import Path
from typing import Any
from urllib.parse import urlencode

import pytest
from ezdxf.filemanagement import read as read_dxf
from httpx import AsyncClient

from server.fields import FIELDS
from server.links import pad_address, typed_of_document
from tests.documents import van
from tests.server.attacks.walking import (
    BROKEN_OUT,
    PAYLOAD,
    SHORT_PAYLOAD,
    addresses,
    filled,
    what_would_run,
    what_would_run_in_xml,
)
from tests.server.saving.asking import at, links_of, save, send

pytestmark = pytest.mark.anyio

READS = [path for path in addresses(method="GET") if "{" not in path]
TEXTS = [key for key, field in FIELDS.items() if field.kind == "text"]
WORKING = typed_of_document(van())
ATTACKS = {
    "every text": WORKING | dict.fromkeys([k for k in TEXTS if k in {"title", "own.sheet", "shop.currency"}], PAYLOAD),
    "every text and its units": {**WORKING, "title": PAYLOAD, "units": PAYLOAD, "confirm": PAYLOAD},
    "every field": dict.fromkeys(FIELDS, SHORT_PAYLOAD),
    "unknown fields": {**WORKING, PAYLOAD: PAYLOAD, f"jack.{SHORT_PAYLOAD}": "1"},
    "a script as an address": {**WORKING, "title": "javascript:alert(1)", "units": "javascript:alert(1)"},
}


def test_the_walk_finds_the_pages_and_the_texts() -> None:
    assert {"/", "/pad", "/pad.svg", "/save", "/mine"} <= set(READS)
    assert {"title", "own.sheet"} <= set(TEXTS)


@pytest.mark.parametrize("attack", ATTACKS)
@pytest.mark.parametrize("path", READS)
async def test_what_an_address_says_never_runs_in_its_answer(asking: AsyncClient, path: str, attack: str) -> None:
    """Oracle: the answer read as a browser would read it, by its own media type."""
    answer = await asking.get(f"{path}?{urlencode(ATTACKS[attack])}", follow_redirects=True)
    kind = answer.headers["content-type"].partition(";")[0]
    assert answer.status_code < 500 or path.endswith((".step", ".stl", ".3mf", ".glb", ".zip"))
    if kind == "text/html":
        assert what_would_run(answer.text) == []
    elif kind == "image/svg+xml":
        assert what_would_run_in_xml(answer.content) == []
    elif kind.endswith("json"):
        json.loads(answer.text)
    elif kind == "text/javascript":
        assert answer.text == (await asking.get(path)).text
    elif kind == "image/png":
        assert answer.content.startswith(b"\x89PNG\r\n")
    else:
        assert kind in {"application/pdf", "image/vnd.dxf"}


async def test_the_oracle_sees_what_runs() -> None:
    """Each of the ways that are looked for, written out; else the tests above would prove nothing."""
    padding = "<p></p>" * 6
    for bad in (
        "<script>x</script>",
        "<script src=https://x></script>",
        "<b onclick=x>",
        f"<b {BROKEN_OUT}>",
        "<a href=' javascript:x'>",
        "<p style=x>",
    ):
        assert len(what_would_run(padding + bad)) == 1, bad
    assert what_would_run(padding + '<script src="/static/a.js"></script><a href="/pad">') == []
    for inner in ("<script/>", '<a href="javascript:x"/>', '<b onload="x"/>', "<foreignObject/>"):
        assert len(what_would_run_in_xml(f"<svg>{inner}</svg>".encode())) == 1, inner


async def test_a_title_is_shown_letter_by_letter(asking: AsyncClient) -> None:
    page = (await asking.get(pad_address({**WORKING, "title": PAYLOAD}))).text
    assert BROKEN_OUT in page
    assert "{{7*7}}" in page
    assert ">49<" not in page


@pytest.fixture(scope="module")
async def attacked(asking: AsyncClient) -> dict[str, str]:
    """The three links of a design in which every text is an attack; a second revision, a remark, readings, a proposal."""
    owner = await save(asking, van(title=PAYLOAD, own={"sheet": PAYLOAD}), title=PAYLOAD, note=PAYLOAD, name=PAYLOAD)
    links = await links_of(asking, owner)
    secret = owner.split("/")[2]
    changed = WORKING | {"seam.height_mm": "22", "title": PAYLOAD}
    told = {"name": PAYLOAD, "words": PAYLOAD, "note": PAYLOAD, "title": PAYLOAD}
    sent = [
        await send(asking, f"{links['friend']}/remarks", **told),
        await send(
            asking,
            f"{links['friend']}/readings",
            **{"name": PAYLOAD, "as_made.slot_width_mm": "4.0", "as_made.note": PAYLOAD},
        ),
        await send(asking, f"{links['friend']}/proposals", inputs=pad_address(changed), **told),
        await send(asking, f"/saved/{secret}/title", **told),
        await send(asking, "/saved", inputs=pad_address(changed), to=owner, **told),
    ]
    assert [answer.status_code for answer in sent] == [303] * 5
    return links


@pytest.mark.parametrize("kind", ["owner", "friend", "view"])
@pytest.mark.parametrize("letters", ["A", "B"])
async def test_what_was_kept_never_runs_on_a_page(
    asking: AsyncClient, attacked: dict[str, str], kind: str, letters: str
) -> None:
    page = (await asking.get(at(attacked[kind], letters))).text
    assert what_would_run(page) == []
    assert page.count(f"&lt;b {BROKEN_OUT}") >= 2


@pytest.mark.parametrize(
    "tail", ["/try", "/readings", "/route", "/record", "/drawing", "/difference?with=B", "/difference?with=today"]
)
async def test_what_was_kept_never_runs_on_a_page_beside_it(
    asking: AsyncClient, attacked: dict[str, str], tail: str
) -> None:
    answer = await asking.get(attacked["friend"] + tail)
    assert answer.status_code == 200
    assert what_would_run(answer.text) == []


async def test_what_was_kept_never_runs_in_its_drawing(asking: AsyncClient, attacked: dict[str, str]) -> None:
    for query in ("", "?units=in", "?projection=third"):
        assert what_would_run_in_xml((await asking.get(f"{attacked['view']}.svg{query}")).content) == []


async def test_a_refusal_never_runs_what_was_refused(asking: AsyncClient, attacked: dict[str, str]) -> None:
    """Every form, with the attack where something else is expected; the answers are pages with a sentence."""
    owner = attacked["owner"]
    for path in addresses(method="POST"):
        if path.startswith("/api/"):
            continue
        where = filled(path, secret=owner.split("/")[2], letters="A")
        fields = dict.fromkeys(("inputs", "to", "links", "words", "kind", "deed", "as_made.slot_width_mm"), PAYLOAD)
        answer = await send(asking, where, **(fields | {"inputs": f"/pad?title={PAYLOAD}"}))
        if answer.headers.get("content-type", "").startswith("text/html"):
            assert what_would_run(answer.text) == []
        assert answer.status_code in {303, 403, 422}, (where, answer.text)


async def test_a_file_that_is_brought_in_never_runs(asking: AsyncClient, attacked: dict[str, str]) -> None:
    """Oracle: what was taken out is brought in again, with attacks in what a file alone can say."""
    taken = (await send(asking, "/mine/export", links=attacked["owner"])).json()
    revision: dict[str, Any] = taken["designs"][0]["revisions"][0]
    revision |= {"engine_version": PAYLOAD, "letters": PAYLOAD, "number": 1}
    revision["document"]["title"] = PAYLOAD
    broken = {"number": 3, "document": {PAYLOAD: PAYLOAD, "title": PAYLOAD}}
    taken["designs"][0] |= {"revisions": [revision, broken, {"number": PAYLOAD}]}
    page = (await asking.post("/mine/import", files={"file": (PAYLOAD, json.dumps(taken).encode())})).text
    assert what_would_run(page) == []
    owner = re.findall(r'href="(/saved/[^"]+)"', page)[0]
    assert what_would_run((await asking.get(owner)).text) == []


@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r", "\x85", "\u2028", "\x0b", "\x00"])
async def test_a_drawing_for_cad_takes_no_commands_from_a_title(asking: AsyncClient, line_end: str) -> None:
    """Oracle: a DXF is lines of codes and values; a title with line ends is refused, or adds no entity."""
    evil = line_end.join(["a", "  0", "CIRCLE", "  8", "0", " 10", "0.0", " 20", "0.0", " 40", "999.0"])
    plain, attacked = [await asking.get(pad_address({**WORKING, "title": t}, ".dxf")) for t in ("plain", evil)]
    if attacked.status_code == 422:
        assert attacked.json()["errors"][0]["field"] == "title"
        return
    one, other = (read_dxf(io.StringIO(answer.text, newline=None)) for answer in (plain, attacked))
    assert [e.dxftype() for e in one.modelspace()] == [e.dxftype() for e in other.modelspace()]
    assert not other.audit().errors


async def test_a_pdf_shows_commands_as_words_and_holds_no_action(asking: AsyncClient, tmp_path: Path) -> None:
    """Oracle: pdftotext and qpdf; the title is a command of the typesetter, of its mathematics, and a tag."""
    title = "#panic(1) $x$ *b* @y <z>"
    content = (await asking.get(pad_address({**WORKING, "title": title}, ".pdf"))).content
    words = subprocess.run(["pdftotext", "-", "-"], input=content, capture_output=True, check=True).stdout.decode()
    assert title in " ".join(words.split())
    file = tmp_path / "drawing.pdf"
    file.write_bytes(content)
    opened = subprocess.run(["qpdf", "--qdf", "--object-streams=disable", file, "-"], capture_output=True, check=True)
    assert b"/Page" in opened.stdout
    for action in (b"/JavaScript", b"/JS ", b"/OpenAction", b"/Launch", b"/URI ", b"/EmbeddedFile", b"/SubmitForm"):
        assert action not in opened.stdout


async def test_models_hold_no_word_that_a_title_could_use(client_with_models: AsyncClient) -> None:
    """Oracle: the shape of the formats: a STEP file has two sections, a 3MF file is a ZIP of well-formed XML."""
    evil = "');ENDSEC;DATA;#1=X('" + SHORT_PAYLOAD
    asked = pad_address({**WORKING, "title": evil}, ".zip")
    archive = zipfile.ZipFile(io.BytesIO((await client_with_models.get(asked)).content))
    files = {name.rpartition(".")[2]: archive.read(name) for name in archive.namelist()}
    assert {"step", "3mf", "svg"} <= files.keys()
    # A text stands between apostrophes (ISO 10303-21, 6.4.3); what is left are commands.
    commands = re.sub(r"'(?:[^']|'')*'", "''", files["step"].decode("ascii"))
    assert (commands.count("ENDSEC;"), commands.count("DATA;"), commands.count(BROKEN_OUT)) == (2, 1, 0)
    assert "'" not in commands.replace("''", "")
    assert what_would_run_in_xml(files["svg"]) == []
    model = zipfile.ZipFile(io.BytesIO(files["3mf"]))
    assert [what_would_run_in_xml(model.read(name)) for name in model.namelist()] == [[]] * len(model.namelist())
    assert not [n for n in (*archive.namelist(), *model.namelist()) if n.startswith("/") or ".." in n or "\\" in n]
