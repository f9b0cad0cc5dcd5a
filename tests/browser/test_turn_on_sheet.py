"""The pad in the hand on the working sheet: it opens on a tap, and stays while the numbers change."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import DESKTOP, PHONE, Site, window
from tests.browser.test_turn import CANVAS, begin, drawing_browser, drawn_share, picture

__all__ = ["drawing_browser"]
pytestmark = pytest.mark.browser
BEGIN, PICTURE = "[data-turn-begin]", ".turn-picture img"


@pytest.fixture
def page(drawing_browser: Browser) -> Iterator[Page]:
    yield from window(drawing_browser, DESKTOP)


@pytest.fixture
def phone(drawing_browser: Browser) -> Iterator[Page]:
    yield from window(drawing_browser, PHONE)


@pytest.fixture
def without_scripts(browser: Browser) -> Iterator[Page]:
    yield from window(browser, DESKTOP, scripts=False)


def test_the_picture_needs_no_script(without_scripts: Page, site: Site) -> None:
    """The browser has loaded a picture of some width from its own address."""
    without_scripts.goto(site.sample("mobile_library_van"))
    shown = without_scripts.locator(PICTURE)
    shown.scroll_into_view_if_needed()
    expect(shown).to_be_visible()
    box = shown.bounding_box()
    assert box
    assert box["width"] > 200
    answer = without_scripts.request.get(f"{site.address}{shown.get_attribute('src')}")
    assert (answer.status, answer.headers["content-type"]) == (200, "image/svg+xml")


def test_a_tap_opens_the_view_on_the_sheet_itself(page: Page, site: Site) -> None:
    page.goto(site.sample("mobile_library_van"))
    begin(page)
    assert "/pad?" in page.url
    assert 0.1 < drawn_share(picture(page)) < 0.95


def test_the_view_stays_while_a_number_changes_and_the_model_follows(page: Page, site: Site) -> None:
    """The address of the model is another one, the canvas is the same element, and it is asked for anew."""
    page.goto(site.sample("mobile_library_van"))
    begin(page)
    page.evaluate(f"document.querySelector('{CANVAS}').dataset.same = 'yes'")
    before = page.get_attribute("#turn", "data-model")
    with page.expect_response("**/pad.stl**", timeout=30_000) as model:
        page.fill("input[name='seam.height_mm']", "21")
    assert model.value.status == 200
    assert page.get_attribute("#turn", "data-model") != before
    assert page.get_attribute(CANVAS, "data-same") == "yes"


def test_a_pad_that_comes_to_be_while_one_types_can_be_taken(page: Page, site: Site) -> None:
    """The sheet is opened without the seam's height, so that nothing of the view is in the page at first."""
    whole = site.sample("mobile_library_van")
    page.goto("&".join(part for part in whole.split("&") if not part.startswith("seam.height_mm=")))
    expect(page.locator(".turn")).to_have_count(0)
    page.fill("input[name='seam.height_mm']", "20")
    expect(page.locator(BEGIN)).to_be_visible(timeout=30_000)
    # The link stands there a moment before the script has come that takes it up; until then it leads to a page.
    expect(page.locator("html")).to_have_attribute("data-live-turn", "", timeout=30_000)
    begin(page)
    assert "/pad?" in page.url


def test_on_a_phone_the_view_runs_over_nothing(phone: Page, site: Site) -> None:
    phone.goto(site.sample("mobile_library_van"))
    begin(phone)
    assert phone.evaluate("document.documentElement.scrollWidth") <= PHONE[0]
    assert drawn_share(picture(phone)) > 0.1
