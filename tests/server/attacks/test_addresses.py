"""Addresses that try to reach other files, to add headers of their own, or to guess what is saved."""

import asyncio
import itertools
import re
import statistics
import time
from pathlib import Path
from urllib.parse import unquote

import pytest
from fastapi import FastAPI
from httpx import AsyncClient, Response
from starlette.types import Message

from server.links import pad_address, static_url, typed_of_document
from server.security import CONTENT_POLICY, HEADERS
from tests.documents import van
from tests.server.attacks.walking import addresses, filled
from tests.server.saving.asking import links_of, save, send

pytestmark = pytest.mark.anyio

METHODS = ("GET", "POST")
ROUTES = [(method, path) for method in METHODS for path in addresses(method=method)]
POSTS = list(addresses(method="POST"))
NAME_OF_A_FILE = re.compile(r'(inline|attachment); filename="[A-Za-z0-9][A-Za-z0-9.-]{0,120}"')
ODD_NAMES = ['a"b', "a\r\nX-Evil: 1", "a%0d%0aX-Evil: 1", "ä⌀", "../../x", "a;b", "\u202egpj", "a" * 80, "\\", "CON"]
OUTSIDE = ("app.py", "def create_app", "root:", "[project]", "SQLite format")


async def exactly(app: FastAPI, raw_path: bytes) -> tuple[int, bytes]:
    """The answer to a path as it stands on the wire; clients put dots and slashes in order before they send them."""
    sent: list[Message] = []
    asked: list[bool] = []

    async def receive() -> Message:
        if asked:
            # The client stays until it has its answer.
            await asyncio.sleep(60)
        asked.append(True)
        return {"type": "http.request", "body": b"", "more_body": False}

    async def send_back(message: Message) -> None:
        sent.append(message)

    path = unquote(raw_path.decode("latin-1"))
    scope = {"type": "http", "asgi": {"version": "3.0"}, "http_version": "1.1", "method": "GET", "scheme": "http"}
    more = {"path": path, "raw_path": raw_path, "query_string": b"", "headers": [(b"host", b"pads.test")]}
    await app({**scope, **more, "client": ("192.0.2.1", 1), "server": ("pads.test", 80)}, receive, send_back)
    return sent[0]["status"], b"".join(m.get("body", b"") for m in sent)


@pytest.mark.parametrize("start", [b"/static/", b"/static/vendor/", b"/saved/", b"/problems/", b"/"])
@pytest.mark.parametrize("step", [b"../", b"..%2f", b"%2e%2e/", b"%2e%2e%2f", b"..\\", b"..%5c", b"%252e%252e/", b"/"])
@pytest.mark.parametrize("wanted", [b"server/app.py", b"pyproject.toml", b"etc/passwd"])
async def test_no_path_leads_out_of_its_folder(app: FastAPI, start: bytes, step: bytes, wanted: bytes) -> None:
    for depth in (1, 2, 3, 8):
        status, body = await exactly(app, start + step * depth + wanted)
        assert status == 404
        assert not [words for words in OUTSIDE if words.encode() in body and words not in wanted.decode()]


async def test_the_wire_reaches_a_file_that_is_there(app: FastAPI) -> None:
    """Else the test above would pass with an application that answers nothing."""
    status, body = await exactly(app, static_url("paper.css").encode())
    assert (status, len(body) > 100) == (200, True)


@pytest.mark.parametrize(
    "name", ["%00", "a%00.css", "a" * 300, "a/" * 3000 + "a", "%ff%fe", "%f0%9f%98%80", "~root/x", "%0a"]
)
async def test_a_name_that_no_file_can_have_is_not_found(asking: AsyncClient, name: str) -> None:
    assert (await asking.get(f"/static/{name}")).status_code == 404


def titled(title: str, ending: str) -> str:
    """The address of a file of the van's pad under a title."""
    return pad_address({**typed_of_document(van()), "title": title}, ending)


@pytest.fixture(scope="module")
async def plain_headers(asking: AsyncClient) -> dict[str, set[str]]:
    """The names of the headers of each file of a design with a plain title."""
    return {ending: set((await asking.get(titled("plain", ending))).headers) for ending in (".svg", ".dxf", ".pdf")}


@pytest.mark.parametrize("name", ODD_NAMES)
async def test_no_title_reaches_the_name_of_a_file_or_adds_a_header(
    asking: AsyncClient, plain_headers: dict[str, set[str]], name: str
) -> None:
    """Oracle: a file's name is plain, and its headers are those of the same file of another design.

    A refusal reads differently for people and for programs, and says so by one header more.
    """
    for ending, plain in plain_headers.items():
        odd = await asking.get(titled(name, ending))
        assert odd.headers.keys() - plain <= (set() if odd.status_code == 200 else {"vary"})
        assert "x-evil" not in odd.headers
        if odd.status_code == 200:
            assert NAME_OF_A_FILE.fullmatch(odd.headers["content-disposition"])


@pytest.mark.parametrize("name", ODD_NAMES)
async def test_no_title_of_a_saved_design_reaches_the_name_of_its_files(asking: AsyncClient, name: str) -> None:
    title = "" if "\n" in name else name
    owner = await save(asking, van(title=title), title=name, note=name)
    for ending in (".svg", ".json", ".document.json"):
        answer = await asking.get(owner + ending)
        assert NAME_OF_A_FILE.fullmatch(answer.headers["content-disposition"])
    assert (await asking.get(f"{owner}.svg%0d%0aX-Evil:%201")).status_code == 404


@pytest.mark.parametrize("said", ["%0d%0aX-Evil:%201", "saved%0d%0aSet-Cookie:%20a=b", "//elsewhere.test", "%00"])
async def test_no_redirection_carries_a_header_or_leads_elsewhere(asking: AsyncClient, said: str) -> None:
    owner = await save(asking)
    for asked in (f"{owner.rpartition('/')[0]}?said={said}&units={said}", f"/pad/calculation?title={said}"):
        answer = await asking.get(asked)
        assert answer.status_code == 303
        assert answer.headers["location"].startswith(("/saved/", "/pad?"))
        assert not {"x-evil", "set-cookie"} & set(answer.headers.keys())


async def test_saving_to_a_strangers_link_leads_to_our_own_pages_alone(asking: AsyncClient) -> None:
    owner = await save(asking)
    to = f"https://elsewhere.test{owner}"
    answer = await send(asking, "/saved", inputs=pad_address(typed_of_document(van(seam__height_mm=23))), to=to)
    assert answer.headers["location"].startswith(owner.rpartition("/")[0])


async def _guesses(client: AsyncClient, link: str) -> dict[str, Response]:
    """One letter of a real secret changed, a letter case turned, one too short and one too long, and one of chance."""
    secret = link.split("/")[2]
    other = "B" if secret[5] != "B" else "C"
    wrong = (secret[:5] + other + secret[6:], secret.swapcase(), secret[:-1], secret + "A", "A" * 22, "..", "%00")
    return {guess: await client.get(f"/saved/{guess}/A") for guess in wrong}


async def test_every_wrong_guess_gets_the_same_answer(asking: AsyncClient) -> None:
    """Oracle: status, headers and body are equal, so that nothing tells a near guess from a far one."""
    answers = await _guesses(asking, await save(asking))
    first = answers["A" * 22]
    assert first.status_code == 404
    for guess, answer in answers.items():
        if guess != "..":
            assert (answer.status_code, answer.text, answer.headers) == (404, first.text, first.headers), guess


async def test_the_ids_inside_open_nothing(asking: AsyncClient, app: FastAPI) -> None:
    """Ids of designs, revisions and proposals, and hashes of links, all have 22 letters or more; none is a secret."""
    from sqlalchemy import select

    from server.store.tables import designs, links, revisions

    await save(asking)
    with app.state.store.reading() as connection:
        found = [
            *connection.execute(select(designs.c.id)).scalars(),
            *connection.execute(select(revisions.c.id)).scalars(),
            *(text[:22] for text in connection.execute(select(links.c.hash)).scalars()),
        ]
    assert len(found) >= 5
    for one in found:
        assert (await asking.get(f"/saved/{one}/A")).status_code == 404


async def test_one_designs_link_opens_no_other_designs_things(asking: AsyncClient) -> None:
    """A proposal beside one design, asked for through the link of another."""
    mine, theirs = await save(asking), await save(asking)
    friend = (await links_of(asking, theirs))["friend"]
    changed = pad_address(typed_of_document(van(seam__height_mm=22)))
    assert (await send(asking, f"{friend}/proposals", inputs=changed)).status_code == 303
    proposal = re.findall(r"with=([\w-]{22})", (await asking.get(theirs)).text)[0]
    assert (await asking.get(f"{theirs}/difference?with={proposal}")).status_code == 200
    assert (await asking.get(f"{mine}/difference?with={proposal}")).status_code == 404


async def test_a_near_guess_takes_as_long_as_a_far_one(asking: AsyncClient) -> None:
    """Oracle: medians of 60 requests, in turns, differ by less than half; what is looked up is a hash, not the secret."""
    secret = (await save(asking)).split("/")[2]
    near, far = secret[:-2] + ("AA" if secret[-2:] != "AA" else "BB"), "zz" + secret[2:][::-1]
    times: dict[str, list[float]] = {near: [], far: []}
    for _, guess in itertools.product(range(60), times):
        began = time.perf_counter()
        assert (await asking.get(f"/saved/{guess}/A")).status_code == 404
        times[guess].append(time.perf_counter() - began)
    one, other = (statistics.median(t) for t in times.values())
    assert max(one, other) < 1.5 * min(one, other)


def test_the_walk_sees_every_address() -> None:
    """Oracle: addresses of each part of the program, and each method; the source of the walk is the application itself."""
    assert {("GET", "/pad"), ("POST", "/saved"), ("POST", "/mine/import"), ("GET", "/static/{path:path}")} <= set(
        ROUTES
    )
    declared = sum(
        len(re.findall(r"@router\.(?:get|post|put|delete|patch)\(", path.read_text()))
        for path in (Path(__file__).parents[3] / "server").rglob("*.py")
    )
    assert len(ROUTES) >= declared


def test_what_changes_something_is_never_asked_for_by_a_link() -> None:
    """No address that a link can name saves anything: methods other than GET are POST alone."""
    others = [(method, path) for method in ("PUT", "PATCH", "DELETE") for path in addresses(method=method)]
    assert others == []


@pytest.mark.parametrize(("method", "path"), ROUTES)
async def test_every_address_carries_the_strict_policy(asking: AsyncClient, method: str, path: str) -> None:
    for secret in ("A" * 22, "x"):
        answer = await asking.request(method, filled(path, secret=secret, name="A.svg"))
        assert {name: answer.headers.get(name) for name in HEADERS} == HEADERS
        assert answer.headers["content-security-policy"] == CONTENT_POLICY
        assert "set-cookie" not in answer.headers
        assert "access-control-allow-origin" not in answer.headers


@pytest.mark.parametrize("path", POSTS)
@pytest.mark.parametrize(
    "said",
    [
        {"sec-fetch-site": "cross-site"},
        {"sec-fetch-site": "same-site"},
        {"sec-fetch-site": "", "origin": "http://pads.test"},
        {"origin": "https://elsewhere.test"},
        {"origin": "null"},
        {"origin": "http://pads.test.elsewhere.test"},
        {"origin": "http://pads.test@elsewhere.test"},
        {"origin": "http://["},
        {"origin": ""},
    ],
    ids=str,
)
async def test_no_other_sites_page_can_send_a_form(asking: AsyncClient, path: str, said: dict[str, str]) -> None:
    for kind in (
        "application/x-www-form-urlencoded",
        "multipart/form-data; boundary=b",
        "text/plain",
        "application/json",
    ):
        answer = await asking.post(filled(path), content=b"words=x", headers={**said, "content-type": kind})
        assert (answer.status_code, answer.json()["type"]) == (403, "/problems/foreign-origin")


@pytest.mark.parametrize("path", POSTS)
async def test_a_form_of_our_own_page_is_not_taken_for_a_forged_one(asking: AsyncClient, path: str) -> None:
    """Else the test above would pass with a server that refuses everything."""
    for said in ({"sec-fetch-site": "same-origin"}, {"origin": "http://pads.test"}):
        answer = await asking.post(filled(path), content=b"", headers=said)
        assert answer.headers["content-type"] != "application/problem+json" or answer.json()["status"] != 403


@pytest.mark.parametrize(
    "host", ['x"><script>alert(1)</script>', "[", "a b", "", "x\xff", "x/../y", "elsewhere.test:0:0"]
)
async def test_an_odd_host_runs_nothing_and_breaks_nothing(asking: AsyncClient, host: str) -> None:
    from tests.server.attacks.walking import what_would_run

    owner = await save(asking)
    for asked in (owner, "/", "/pad"):
        answer = await asking.get(asked, headers=[(b"host", host.encode("latin-1"))], follow_redirects=False)
        assert answer.status_code < 400
        if answer.status_code == 200:
            assert what_would_run(answer.text) == []
