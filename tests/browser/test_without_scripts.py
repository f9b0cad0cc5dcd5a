"""The working sheet in a browser that runs no scripts: all of it works, by sending the form."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import DESKTOP, Site, window

pytestmark = pytest.mark.browser


@pytest.fixture
def still(browser: Browser) -> Iterator[Page]:
    """A window without scripts."""
    yield from window(browser, DESKTOP, scripts=False)


def test_everything_works_without_scripts(still: Page, site: Site) -> None:
    still.goto(site.address + "/pad")
    typed = {
        "jack-cup_bore_mm": "68",
        "jack-cup_depth_mm": "12",
        "jack-rated_load_kg": "2 t",
        "jack-rim_height_low_mm": "105",
        "seam-thickness_mm": '1/8"',
        "seam-height_mm": "20",
        "seam-edge_height_mm": "190",
        "car-gross_mass_kg": "1600",
    }
    for name, text in typed.items():
        still.locator(f"#field-{name}").fill(text)
    still.get_by_role("button", name="Work out the pad").click()
    expect(still.locator("#outcome .verdict")).to_contain_text("estimates pass")
    expect(still.locator("#field-seam-thickness_mm")).to_have_value('1/8"')
    assert "=&" not in still.url
    still.locator("#web_mm .deed button").click()
    expect(still.locator("#web_mm")).to_contain_text("because you fixed it")
    still.get_by_role("link", name="in", exact=True).click()
    expect(still.locator("#field-jack-cup_bore_mm")).to_have_value("68 mm")


def test_without_scripts_a_summary_on_top_leads_to_what_is_wrong(still: Page, site: Site) -> None:
    still.goto(site.address + "/pad?jack.cup_bore_mm=4&jack.cup_depth_mm=abc")
    expect(still.locator("#field-jack-cup_bore_mm-note")).to_contain_text("cannot be right (at least 20 mm)")
    expect(still.locator("#field-jack-cup_depth_mm")).to_have_value("abc")
    still.locator("noscript").get_by_role("link").first.click()
    expect(still.locator("#field-jack-cup_bore_mm")).to_be_focused()
