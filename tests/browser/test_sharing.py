"""One link to the friend, readings back: the whole exchange between browsers that know nothing of each other."""

import json
import re
import socket
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
import uvicorn
from playwright.sync_api import Browser, Page, expect

from server.app import create_app
from server.links import samples
from server.settings import Settings
from tests.browser.conftest import DESKTOP, PHONE, until_asked, window
from tests.browser.test_access import findings_in

pytestmark = pytest.mark.browser
expect.set_options(timeout=15_000)
VAN, FAILING = "mobile_library_van", "repair_cafe_people_carrier"
HEIGHT = "#field-seam-height_mm"


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """A running server with a database of its own."""
    file = tmp_path_factory.mktemp("kept") / "designs.sqlite3"
    app = create_app(Settings(database=str(file), kernel_workers=1))
    with socket.create_server(("127.0.0.1", 0)) as listening:
        server = uvicorn.Server(uvicorn.Config(app, log_level="error", lifespan="on"))
        thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]}, daemon=True)
        thread.start()
        until = time.monotonic() + 30
        while not server.started:
            assert time.monotonic() < until, "the server did not start"
            time.sleep(0.05)
        yield f"http://127.0.0.1:{listening.getsockname()[1]}"
        server.should_exit = True
        thread.join(15)


@dataclass(frozen=True)
class Links:
    """The addresses of one saved design, which tests only read."""

    owner: str
    friend: str


@pytest.fixture(scope="module")
def van(browser: Browser, address: str) -> Links:
    """One design for all tests that change nothing of it."""
    for page in window(browser, DESKTOP):
        return Links(save(page, address), link_on(page, "friend"))
    raise AssertionError("no window was opened")


@pytest.fixture
def owner(browser: Browser) -> Iterator[Page]:
    yield from window(browser, DESKTOP)


@pytest.fixture
def friend(browser: Browser) -> Iterator[Page]:
    yield from window(browser, PHONE)


@pytest.fixture
def third(browser: Browser) -> Iterator[Page]:
    yield from window(browser, DESKTOP)


@pytest.fixture
def late(browser: Browser) -> Iterator[Page]:
    """A window whose reader comes too late, which its browser reports as an error of the answer."""
    context = browser.new_context()
    yield context.new_page()
    context.close()


@pytest.fixture
def still(browser: Browser) -> Iterator[Page]:
    """A window without scripts."""
    yield from window(browser, DESKTOP, scripts=False)


def save_address(address: str, sample: str) -> str:
    return address + next(s.address for s in samples() if s.key == sample).replace("/pad?", "/save?")


def save(page: Page, address: str, sample: str = VAN) -> str:
    """Save an example as a new design; gives the owner's address."""
    page.goto(save_address(address, sample))
    page.get_by_role("button", name="Save", exact=True).click()
    page.wait_for_url("**/A?said=saved")
    return page.url.partition("?")[0]


def link_on(page: Page, kind: str) -> str:
    return page.locator(f"#link-{kind}").input_value()


def change_height(page: Page, owner_address: str, height: str) -> None:
    """From a saved design to its working sheet, another seam height there, and on to saving."""
    page.goto(owner_address)
    page.get_by_role("link", name="Change it on the working sheet").click()
    page.locator(HEIGHT).fill(height)
    until_asked(page, f"height_mm={height}")
    page.goto(page.url.replace("/pad?", "/save?"))


def test_the_whole_exchange_between_owner_and_friend(owner: Page, friend: Page, address: str) -> None:
    """Oracle: each sees on their own page what the other did on theirs, and revision A is the same at the end."""
    mine = save(owner, address)
    first = owner.request.get(f"{mine}.json").json()
    friend.goto(link_on(owner, "friend"))
    expect(friend.locator("#five tbody tr")).to_have_count(5)
    friend.get_by_role("link", name="Try with what I have").click()
    friend.get_by_label("Material").select_option("pa66")
    friend.get_by_role("button", name="Work it out again").click()
    expect(friend.locator("#came-of-it")).to_contain_text("nylon 66")
    friend.get_by_label("Words to go with it").fill("I have nylon here.")
    friend.get_by_label("Your name").fill("Ada")
    friend.get_by_role("button", name="Send it back as a proposal").click()
    expect(friend.locator("#proposals")).to_contain_text("I have nylon here.")
    friend.get_by_label("Remark", exact=True).fill("Starting on Monday.")
    friend.get_by_role("button", name="Add the remark").click()
    friend.get_by_role("link", name="Enter readings").click()
    friend.get_by_label("Web, as read").fill(str(first["pad"]["web_mm"]))
    friend.get_by_role("button", name="Judge and keep the readings").click()

    owner.reload()
    expect(owner.locator("#proposals")).to_contain_text("Ada")
    expect(owner.locator("#remarks")).to_contain_text("Starting on Monday.")
    expect(owner.locator("#readings")).to_contain_text("Read with a caliper")
    change_height(owner, mine, "22")
    expect(owner.locator("[data-from-here]")).to_contain_text("revision A")
    owner.get_by_label("Note").fill("Measured again")
    owner.get_by_role("button", name="Save", exact=True).click()
    owner.wait_for_url("**/B?said=saved")

    friend.reload()
    friend.get_by_role("link", name="A newer revision exists: B").click()
    expect(friend.locator("h1")).to_contain_text("revision B")
    friend.get_by_role("link", name="Compare with B").click()
    expect(friend.locator("main")).to_contain_text("20 mm")
    assert owner.request.get(f"{mine}.json").json() == first


def test_of_two_who_change_the_same_revision_the_second_sees_both_and_loses_nothing(
    owner: Page, late: Page, address: str
) -> None:
    mine = save(owner, address)
    change_height(owner, mine, "22")
    change_height(late, mine, "24")
    owner.get_by_role("button", name="Save", exact=True).click()
    owner.wait_for_url("**/B?said=saved")
    late.get_by_role("button", name="Save", exact=True).click()
    expect(late.locator("h1")).to_have_text("Somebody saved a newer revision in the meantime")
    row = late.locator("tr", has_text="height").first
    expect(row).to_contain_text("22 mm")
    expect(row).to_contain_text("24 mm")
    late.get_by_role("button", name="Save yours after it, as revision C").click()
    late.wait_for_url("**/C?said=saved")
    expect(late.locator("#revisions li")).to_have_count(3)


def test_in_the_dark_the_saved_drawing_is_dark_and_the_code_stays_light(friend: Page, van: Links) -> None:
    """Oracle: what the browser computes; a camera needs the code dark on light."""
    friend.emulate_media(color_scheme="dark")
    friend.goto(van.friend)
    drawing = friend.locator(".drawing img")
    assert "invert" in drawing.evaluate("image => getComputedStyle(image).filter")
    assert friend.locator(".code").evaluate("code => getComputedStyle(code).backgroundColor") == "rgb(255, 255, 255)"
    friend.emulate_media(color_scheme="light")
    assert drawing.evaluate("image => getComputedStyle(image).filter") == "none"


def test_on_a_phone_the_drawing_opens_large_and_the_code_stands_below_its_words(friend: Page, van: Links) -> None:
    """Oracle: the width of the window on the sheet after one press of the button; the places of words and code."""
    friend.set_viewport_size({"width": 390, "height": 844})
    friend.goto(van.friend)
    words, code = friend.locator(".share label").bounding_box(), friend.locator(".share .code").bounding_box()
    assert words
    assert code
    assert words["y"] < code["y"]
    friend.locator(".drawing a").click()
    sheet = friend.locator("#sheet-stage svg")
    whole = (sheet.get_attribute("viewBox") or "").split()
    friend.get_by_role("button", name="Larger").click()
    assert float((sheet.get_attribute("viewBox") or "").split()[2]) < float(whole[2])
    friend.get_by_role("link", name="Back to revision A").click()
    expect(friend.locator("#the-drawing")).to_be_visible()


def test_this_browser_remembers_what_it_opened_and_another_does_not(owner: Page, third: Page, address: str) -> None:
    save(owner, address)
    owner.goto(address + "/mine")
    expect(owner.locator("[data-mine] li")).to_have_count(1)
    expect(owner.locator("[data-mine]")).to_contain_text("yours")
    third.goto(address + "/mine")
    expect(third.locator("[data-mine-empty]")).to_be_visible()
    owner.get_by_role("button", name="Take off this list").click()
    owner.reload()
    expect(owner.locator("[data-mine] li")).to_have_count(0)


def test_on_a_phone_the_lines_of_opened_designs_stand_apart(owner: Page, van: Links, address: str) -> None:
    """Oracle: no button comes nearer to the next line's words than 8 px; each line says what its link may do."""
    owner.set_viewport_size({"width": 390, "height": 844})
    for link in (van.owner, van.friend):
        owner.goto(link)
    owner.goto(address + "/mine")
    lines = owner.locator("[data-mine] li")
    expect(lines.nth(0)).to_contain_text("to read and to add to")
    button, below = lines.nth(0).locator("button").bounding_box(), lines.nth(1).locator("a").bounding_box()
    assert button
    assert below
    assert below["y"] - button["y"] - button["height"] >= 8


def test_everything_leaves_as_one_file_and_another_browser_brings_it_in(
    owner: Page, third: Page, address: str, tmp_path: Path
) -> None:
    save(owner, address)
    owner.goto(address + "/mine")
    with owner.expect_download() as taken:
        owner.get_by_role("button", name="Take the file").click()
    taken.value.save_as(tmp_path / "designs.json")
    assert len(json.loads((tmp_path / "designs.json").read_text())["designs"]) == 1
    third.goto(address + "/mine")
    third.get_by_label("File of saved designs").set_input_files(tmp_path / "designs.json")
    third.get_by_role("button", name="Bring it in").click()
    third.locator("[data-brought]").click()
    expect(third.locator("h1")).to_contain_text("revision A")
    third.goto(address + "/mine")
    expect(third.locator("[data-mine]")).to_contain_text("yours")


def test_a_measurement_document_opens_on_the_working_sheet(
    third: Page, van: Links, address: str, tmp_path: Path
) -> None:
    (tmp_path / "m.json").write_bytes(third.request.get(f"{van.owner}.document.json").body())
    third.goto(address + "/mine")
    third.get_by_label("Measurement document").set_input_files(tmp_path / "m.json")
    third.get_by_role("button", name="Open it on the working sheet").click()
    expect(third.locator("#field-jack-cup_bore_mm")).to_have_value("68")


def test_a_file_that_is_too_large_is_answered_by_a_page_in_words(late: Page, address: str, tmp_path: Path) -> None:
    """The whole file is on its way before a browser reads the answer; a connection that is cut would show none."""
    (tmp_path / "large.json").write_bytes(b" " * 17_500_000)
    late.goto(address + "/mine")
    late.get_by_label("File of saved designs").set_input_files(tmp_path / "large.json")
    late.get_by_role("button", name="Bring it in").click()
    expect(late.locator("h1")).to_have_text("Too large")
    expect(late.locator(".lead")).to_contain_text("at most 16 MiB is taken here")


def test_without_scripts_one_saves_follows_with_a_revision_and_adds_a_remark(still: Page, address: str) -> None:
    """Oracle: no link is copied or pasted; the second revision is made by pages and buttons alone."""
    save(still, address)
    expect(still.get_by_role("button", name="Copy link")).to_have_count(0)
    still.get_by_role("link", name="Change it here").click()
    still.locator(HEIGHT).fill("22")
    still.get_by_role("button", name="Work it out again").click()
    expect(still.locator("#came-of-it")).to_contain_text("22 mm")
    still.get_by_label("Note").fill("Measured again")
    still.get_by_role("button", name="Save it as the next revision").click()
    still.wait_for_url("**/B?said=saved")
    expect(still.locator("h1")).to_contain_text("revision B")
    still.get_by_label("Remark", exact=True).fill("No script here.")
    still.get_by_role("button", name="Add the remark").click()
    expect(still.locator("#remarks")).to_contain_text("No script here.")
    still.goto(address + "/mine")
    expect(still.locator("noscript")).to_be_visible()


def test_the_link_is_copied_and_passed_on_by_the_devices_own_means(friend: Page, van: Links, address: str) -> None:
    """Oracle: the clipboard, and what the device's sharing was handed."""
    friend.context.grant_permissions(["clipboard-read", "clipboard-write"], origin=address)
    friend.add_init_script("navigator.share = async (what) => { window.shared = what; };")
    friend.goto(van.owner)
    friend.locator('[data-copy="link-friend"]').click()
    expect(friend.locator('[data-copy="link-friend"]')).to_have_text("Copied")
    assert friend.evaluate("navigator.clipboard.readText()") == van.friend
    friend.locator('[data-share="link-friend"]').click()
    assert friend.evaluate("window.shared.url") == van.friend
    expect(friend.locator('[data-share="link-owner"]')).to_have_count(0)


def test_enter_in_a_reading_goes_to_the_next_box_and_keeps_nothing(owner: Page, van: Links) -> None:
    owner.goto(van.owner)
    owner.get_by_role("link", name="Enter readings").click()
    boxes = owner.locator("form[data-step] input[type=text]")
    boxes.nth(0).fill("99")
    boxes.nth(0).press("Enter")
    expect(boxes.nth(1)).to_be_focused()
    expect(owner.locator("h1")).to_contain_text("Inspection sheet")


def test_the_model_of_a_pad_that_is_not_fit_asks_for_the_same_confirmation_here(
    owner: Page, friend: Page, address: str
) -> None:
    save(owner, address, FAILING)
    friend.goto(link_on(owner, "friend"))
    expect(friend.locator(".lead").first).to_contain_text("Do not make:")
    friend.get_by_role("button", name="Take STEP").click()
    assert friend.locator("[name=confirm]:invalid").count() == 1
    friend.get_by_label("I have seen that an estimate fails").check()
    with friend.expect_download() as taken:
        friend.get_by_role("button", name="Take STEP").click()
    assert re.fullmatch(r"lifting-pad-\w+-rev-a-NOT-FIT\.step", taken.value.suggested_filename)


def test_pressing_save_twice_saves_once(owner: Page, address: str) -> None:
    """Oracle: how many requests to save leave the browser."""
    sent: list[str] = []
    owner.on("request", lambda request: sent.append(request.url) if request.method == "POST" else None)
    owner.goto(save_address(address, VAN))
    owner.get_by_role("button", name="Save", exact=True).dblclick()
    owner.wait_for_url("**/A?said=saved")
    assert len(sent) == 1


def test_no_page_asks_anybody_else_and_no_secret_stands_in_a_referrer_for_others(
    owner: Page, friend: Page, address: str
) -> None:
    """Oracle: every request of both browsers through a whole visit."""
    asked: list[str] = []
    for page in (owner, friend):
        page.on("request", lambda request: asked.append(request.url))
    save(owner, address)
    friend.goto(link_on(owner, "friend"))
    friend.get_by_role("link", name="See every number").click()
    friend.wait_for_load_state("networkidle")
    assert len(asked) > 8
    assert {url for url in asked if not url.startswith(address)} == set()


def pages_of(page: Page, address: str) -> dict[str, str]:
    """Every kind of page, by a name for it."""
    mine = save(page, address)
    friend, view = link_on(page, "friend"), link_on(page, "view")
    page.request.post(
        f"{friend}/remarks", form={"words": "A remark with averylongwordthatdoesnotbreak" * 3, "name": "Ada"}
    )
    page.request.post(f"{friend}/readings", form={"as_made.web_mm": "18.5; 18.45"})
    other = (
        save_address(address, VAN)
        .partition(address)[2]
        .replace("/save?", "/pad?")
        .replace("height_mm=20", "height_mm=22")
    )
    page.request.post(f"{friend}/proposals", form={"inputs": other, "name": "Ada"})
    return {
        "save": save_address(address, VAN),
        "save nothing": f"{address}/save",
        "owner": mine,
        "friend": friend,
        "view": f"{view}?units=dual",
        "try": f"{friend}/try?make.material=pa66",
        "change": f"{mine}/change?seam.height_mm=22",
        "change, not yet": f"{mine}/change?seam.height_mm=abc",
        "readings": f"{friend}/readings",
        "route": f"{friend}/route",
        "inspection": f"{view}/inspection",
        "record": f"{friend}/record",
        "drawing": f"{view}/drawing",
        "difference": f"{mine}/difference?with=A",
        "not fit": save(page, address, FAILING),
        "mine": f"{address}/mine",
        "nowhere": f"{address}/saved/{'A' * 22}",
    }


def test_nobody_is_kept_out_and_no_page_scrolls_sideways(late: Page, address: str) -> None:
    """Oracle: axe-core's rules for WCAG 2.2 AA, and the page's width, on every kind of page."""
    wrong: dict[str, dict[str, list[str]]] = {}
    for name, where in pages_of(late, address).items():
        late.goto(where)
        wrong[name] = findings_in(late, ("390", "1440", "dark"))
    assert {name: found for name, found in wrong.items() if found} == {}


def test_what_is_tapped_is_large_enough(friend: Page, van: Links) -> None:
    """Oracle: 44 px for buttons, boxes and links that stand alone; links inside sentences are exempt (WCAG 2.2, 2.5.8)."""
    friend.goto(van.friend)
    for width, height in (PHONE, DESKTOP):
        friend.set_viewport_size({"width": width, "height": height})
        small = friend.evaluate(
            """() => [...document.querySelectorAll(
                     'button, input:not([type=hidden]), textarea, .choose a, .file-list a, .revisions a, .name')]
                 .filter(e => e.offsetParent).map(e => [e.getBoundingClientRect(), e.outerHTML.slice(0, 60)])
                 .filter(([r]) => r.height < 43.5).map(([r, words]) => `${words} ${r.width} x ${r.height}`)"""
        )
        assert small == []
