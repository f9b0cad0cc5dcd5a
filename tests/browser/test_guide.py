"""The guide in Chromium: no sideways scroll, finding, and nobody kept out."""

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import DESKTOP, PHONE, Site, window
from tests.browser.test_access import RULES, findings, findings_in

pytestmark = pytest.mark.browser
GUIDE = "/guide"


def test_a_phone_never_scrolls_the_guide_sideways(phone: Page, site: Site) -> None:
    phone.goto(site.address + GUIDE)
    phone.evaluate("document.querySelectorAll('details').forEach(d => { d.open = true; })")
    assert phone.evaluate("document.documentElement.scrollWidth") <= PHONE[0]


def test_finding_shows_what_has_every_word_and_nothing_else(page: Page, site: Site) -> None:
    page.goto(site.address + GUIDE)
    page.get_by_role("searchbox").fill("lip RIM")
    expect(page.locator("#check-lip_gap")).to_be_visible()
    expect(page.locator("#check-frost")).to_be_hidden()
    left = page.locator("[data-find]:visible").all_inner_texts()
    expect(page.locator("#find-count")).to_have_text(f"{len(left)} of {page.locator('[data-find]').count()} entries")


def test_a_link_into_what_was_put_away_brings_it_back(page: Page, site: Site) -> None:
    page.goto(site.address + GUIDE)
    page.get_by_role("searchbox").fill("lip_gap")
    page.locator("#check-lip_gap").get_by_role("link", name="Cup depth").click()
    expect(page.locator("#field-jack-cup_depth_mm")).to_be_in_viewport()


def test_without_scripts_the_page_names_the_browsers_own_search(browser: Browser, site: Site) -> None:
    for opened in window(browser, DESKTOP, scripts=False):
        opened.goto(site.address + GUIDE)
        expect(opened.locator(".no-scripts")).to_be_visible()
        expect(opened.locator(".no-scripts")).to_have_text(
            "To find a word on this page, use the search of your browser."
        )
        expect(opened.locator("#find-words")).to_be_hidden()


def test_axe_finds_nothing_in_the_guide(phone: Page, site: Site) -> None:
    """The whole page by every rule but that of colours, which is slow; that one on a few entries of each kind."""
    phone.goto(site.address + GUIDE)
    assert findings(phone, RULES, without="color-contrast") == []
    assert phone.evaluate(LEAVE_FEW) > 10
    assert findings_in(phone, ("390", "dark", "dark 390")) == {}


LEAVE_FEW = """() => { let left = 0;
  document.querySelectorAll('[data-find-in]').forEach(group => [...group.querySelectorAll('[data-find]')].forEach(
    (entry, i) => { if (i < 4) left += 1; else entry.remove(); }));
  return left; }"""


@pytest.mark.full
def test_axe_finds_nothing_in_all_of_the_guide_in_any_light(phone: Page, site: Site) -> None:
    phone.goto(site.address + GUIDE)
    assert findings_in(phone, ("390", "1440", "dark")) == {}
