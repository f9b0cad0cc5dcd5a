"""What is typed before the page's scripts have come, or kept by the browser from an earlier visit, is answered as well."""

import pytest
from playwright.sync_api import Page, Route, expect

from tests.browser.conftest import Site, until_asked

pytestmark = pytest.mark.browser
DEPTH, MATERIAL, TITLE = "#field-jack-cup_depth_mm", "#field-make-material", "#field-title"
SEAT = "#seat_length_mm .size strong"
SCRIPTS = {"the sheet's own": "**/sheet.*.js", "the library that asks": "**/htmx*.js"}


def hold(page: Page, pattern: str) -> list[Route]:
    """Let nothing through that the pattern names; what was asked for is in the list, to be let go."""
    held: list[Route] = []

    def keep(route: Route) -> None:
        held.append(route)

    page.route(pattern, keep)
    return held


def let_go(held: list[Route]) -> None:
    assert held, "nothing was held back"
    for route in held:
        route.continue_()


def seat_length(page: Page, address: str) -> str:
    """What the server says of a design that is opened at an address."""
    answer = page.request.get(address.replace("/pad?", "/pad.json?"))
    return f"{answer.json()['pad']['seat_length_mm']:g}"


@pytest.mark.parametrize("late", SCRIPTS)
def test_what_was_typed_before_the_scripts_came_is_answered(page: Page, site: Site, late: str) -> None:
    """Oracle: the address, the box in which the text still stands, and the seat of the same design opened by itself."""
    held = hold(page, SCRIPTS[late])
    page.goto(site.sample("mobile_library_van"), wait_until="commit")
    page.locator(DEPTH).fill("14")
    expect(page.locator(".foot")).to_be_attached()
    assert "cup_depth_mm=14" not in page.url
    let_go(held)
    until_asked(page, "cup_depth_mm=14")
    expect(page.locator(SEAT)).to_have_text(seat_length(page, page.url))
    expect(page.locator(DEPTH)).to_have_value("14")
    expect(page.locator(DEPTH)).to_be_focused()


def test_so_are_a_choice_and_the_name_of_the_job(page: Page, site: Site) -> None:
    """Oracle: the address, and the material in the line that says how it is made."""
    held = hold(page, SCRIPTS["the library that asks"])
    page.goto(site.sample("mobile_library_van"), wait_until="commit")
    page.locator("#group-make > summary").click()
    page.locator(MATERIAL).select_option("pa66")
    page.locator(TITLE).fill("Early bird")
    let_go(held)
    until_asked(page, "title=Early+bird")
    assert "make.material=pa66" in page.url
    expect(page.locator("#group-make .group-line")).to_contain_text("nylon 66")


def test_a_page_on_which_nothing_was_typed_asks_nothing(page: Page, site: Site) -> None:
    """Oracle: every request that leaves the browser while the sheet comes to rest."""
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    for address in ("/", "/pad?title=two%0Alines&jack.cup_bore_mm=%2068%20", site.sample("mobile_library_van")):
        asked.clear()
        page.goto(address if address.startswith("http") else site.address + address)
        page.wait_for_load_state("networkidle")
        assert [url for url in asked if url.partition("?")[0] in {f"{site.address}/pad", f"{site.address}/"}] == [
            page.url
        ]


def test_a_choice_that_the_browser_put_back_is_answered(page: Page, site: Site) -> None:
    """Oracle: left before an answer came, the choice is made again by Chromium, and the address follows it."""
    page.goto(site.sample("mobile_library_van"))
    expect(page.locator("html.live")).to_be_attached()
    page.locator("#group-make > summary").click()
    hold(page, "**/pad?*make.material=pa66*")
    with page.expect_request("**/pad?*make.material=pa66*"):
        page.locator(MATERIAL).select_option("pa66")
    leave(page, site)
    expect(page.locator(MATERIAL)).to_have_value("pa66")
    until_asked(page, "make.material=pa66")
    expect(page.locator("#group-make .group-line")).to_contain_text("nylon 66")


def leave(page: Page, site: Site) -> None:
    """Away from the sheet and back to it; only then may what was held back pass."""
    page.goto(site.address + "/materials")
    page.unroute_all()
    page.go_back(wait_until="commit")


def test_a_page_that_the_browser_kept_whole_is_answered(page: Page, site: Site) -> None:
    """Oracle: as above. What a browser does when it shows such a page again is done by hand: it keeps none under test."""
    page.goto(site.address + "/pad?jack.cup_bore_mm=68")
    page.locator(DEPTH).evaluate("(box) => { box.value = '14'; }")
    page.evaluate("window.dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }))")
    until_asked(page, "cup_depth_mm=14")
    expect(page.locator("#outcome .missing")).not_to_contain_text("Cup depth")
