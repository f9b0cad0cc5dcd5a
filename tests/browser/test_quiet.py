"""No page reports an error of its own: no exception, nothing refused, nothing that is not there."""

import pytest
from playwright.sync_api import Browser, ConsoleMessage, Page

from server.links import pad_address, samples
from tests.browser.conftest import DESKTOP, PHONE, Site, until_asked, window

pytestmark = pytest.mark.browser
PAGES = ("/", "/guide", "/measure", "/materials", "/mine", "/style", "/offline")
OF_A_DESIGN = (
    "",
    "/drawing",
    "/calculation",
    "/changes",
    "/beside",
    "/turn",
    "/two",
    "/route",
    "/inspection",
    "/record",
)
OF_THE_BROWSER = ("WebGL", "GPU", "Service Worker registration blocked")
"""What a browser without a screen, and with its store switched off for tests, says of itself."""
CASE = next(s.address for s in samples() if s.key == "mobile_library_van")
ADDRESSES = (
    *PAGES,
    *(CASE.replace("/pad", f"/pad{part}", 1) for part in OF_A_DESIGN),
    CASE.replace("/pad", "/save", 1),
)


def complaints_of(pages: list[Page], address: str) -> list[str]:
    """What the page's console has to complain of in several windows, once everything that it asks for has come."""
    found: list[str] = []

    def hear(message: ConsoleMessage) -> None:
        if message.type in {"error", "warning"} and not any(word in message.text for word in OF_THE_BROWSER):
            found.append(f"{message.text} {message.location['url']}")

    for page in pages:
        page.on("console", hear)
        page.on("pageerror", lambda error: found.append(str(error)))
        page.goto(address)
    for page in pages:
        page.wait_for_load_state("networkidle")
        page.locator("body").click(position={"x": 2, "y": 2})
        page.set_viewport_size({"width": 600, "height": 500})
    pages[-1].wait_for_timeout(50)
    return found


@pytest.mark.parametrize("address", ADDRESSES, ids=lambda address: address.partition("?")[0])
def test_a_page_has_nothing_to_complain_of(browser: Browser, site: Site, address: str) -> None:
    for small in window(browser, PHONE):
        for large in window(browser, DESKTOP):
            assert complaints_of([small, large], site.address + address) == []


def test_who_leaves_a_sheet_that_was_just_typed_into_comes_back_to_it(browser: Browser, site: Site) -> None:
    """The oracle is the box: it holds what was typed before."""
    for opened in window(browser, PHONE):
        opened.goto(site.address + pad_address({"jack.cup_depth_mm": "12"}))
        with opened.expect_response(lambda answer: "cup_bore_mm=68" in answer.url):
            opened.locator('[name="jack.cup_bore_mm"]').fill("68")
        until_asked(opened, "cup_bore_mm=68")
        for name in ("Guide", "Measuring sheet", "Materials"):
            opened.locator("#elsewhere").get_by_text(name).click()
            opened.get_by_text("To the working sheet").click()
            assert opened.locator('[name="jack.cup_bore_mm"]').input_value() == "68"
            assert opened.locator('[name="jack.cup_depth_mm"]').input_value() == "12"
