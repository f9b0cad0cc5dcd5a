"""Nobody is kept out: axe-core's rules for WCAG 2.2 AA on every state of the sheet."""

from collections.abc import Iterable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import PHONE, Site, window

pytestmark = pytest.mark.browser
AXE = next((Path(__file__).parent / "vendor").glob("axe-*.min.js")).read_text("utf-8")
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
DARK_RULES = ["color-contrast", "link-in-text-block"]
"""On dark paper only the colours are others."""
ERROR = "/pad?jack.cup_bore_mm=4&jack.cup_depth_mm=abc&seam.thickness_mm=3.2&seam.bare_thickness_mm=5"
TALL_DESKTOP = (1440, 1800)
"""So tall that the verdict stands in its place: what it covers while it sticks to the edge is no smaller for that."""
STATES = {
    "empty": "/",
    "half": "/pad?jack.cup_bore_mm=68&seam.thickness_mm=3.2",
    "error": ERROR,
    "sample": "mobile_library_van",
    "not_fit": "repair_cafe_people_carrier",
    "conflict": "rowing_club_trailer_car_no_pad",
    "doubt": "/pad?seam.thickness_mm=12&jack.cup_bore_mm=68",
    "a post under a rail": "/pad?foot=post&head=cushion&jack.post_bore_mm=32",
    "a plate under a hole": "/pad?foot=plate&head=plug",
    "measure": "/measure",
    "style": "/style",
}


NARROW_DESKTOP = (1100, 1800)
LOOKS = {
    "390": (PHONE, False),
    "1100": (NARROW_DESKTOP, False),
    "1440": (TALL_DESKTOP, False),
    "dark": (TALL_DESKTOP, True),
    "dark 390": (PHONE, True),
}


@pytest.mark.parametrize("state", STATES)
def test_axe_finds_nothing(browser: Browser, site: Site, state: str) -> None:
    address = STATES[state] if STATES[state].startswith("/") else site.sample(STATES[state]).removeprefix(site.address)
    for opened in window(browser, PHONE):
        opened.goto(site.address + address)
        # A playwright evaluation is not bound by the page's content policy, which stays as strict as it is.
        opened.evaluate("document.querySelectorAll('details').forEach(d => { if (!d.matches('.how')) d.open = true; })")
        expect(opened.locator("[data-slow]:not([data-live-has])")).to_have_count(0, timeout=20000)
        assert findings_in(opened, LOOKS) == {}


def findings_in(page: Page, looks: Iterable[str]) -> dict[str, list[str]]:
    """What axe has to say of one page in each of several looks, which it takes on without being loaded again."""
    found: dict[str, list[str]] = {}
    for look in looks:
        (width, height), dark = LOOKS[look]
        page.set_viewport_size({"width": width, "height": height})
        page.emulate_media(color_scheme="dark" if dark else "light")
        found[look] = findings(page, DARK_RULES if dark else RULES)
        if page.evaluate("document.documentElement.scrollWidth") > width:
            found[look].append(f"scrolls sideways at {width} px")
    return {look: said for look, said in found.items() if said}


def findings(page: Page, rules: list[str], *, without: str = "") -> list[str]:
    """What axe has to say, each with the element it is about; ``without`` names a rule that is left out."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE)
    left_out = {without: {"enabled": False}} if without else {}
    options = {"runOnly": rules, "rules": left_out}
    # What axe found in order is told for thousands of elements: to bring that out of the page takes longer than to find it.
    violations = page.evaluate("options => axe.run(document, options).then(result => result.violations)", options)
    return [
        f"{found['id']}: {found['help']}: {node['html'][:160]} {node.get('failureSummary', '')[:300]}"
        for found in violations
        for node in found["nodes"]
    ]
