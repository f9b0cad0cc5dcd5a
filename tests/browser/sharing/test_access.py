"""Saved designs in the dark, on a phone, for whoever uses other means than eyes and mouse."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import DESKTOP, PHONE
from tests.browser.sharing.saved import FAILING, VAN, Links, link_on, save, save_address
from tests.browser.test_access import findings_in

pytestmark = pytest.mark.browser
expect.set_options(timeout=15_000)


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
