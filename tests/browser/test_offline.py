"""Without the network, in Chromium: what was seen stays readable, what is secret is not kept, and what is old goes."""

import time
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from server import offline
from server.links import ready_sample
from tests.browser.conftest import DESKTOP, Site, until_asked, window
from tests.browser.test_access import findings_in

pytestmark = pytest.mark.browser
IN_STORE = """async () => {
  const found = {};
  for (const name of await caches.keys()) {
    const addresses = (await (await caches.open(name)).keys()).map((request) => new URL(request.url));
    found[name] = addresses.map((address) => address.pathname + address.search);
  }
  return found;
}"""
SAMPLE = ready_sample().address
DRAWING = SAMPLE.replace("/pad", "/pad/drawing", 1)


@pytest.fixture
def kept(browser: Browser, site: Site) -> Iterator[Page]:
    """A window on the ready example, kept by the browser."""
    site.lane.delays.clear()
    for page in window(browser, DESKTOP, keeps=True):
        page.goto(site.address + SAMPLE)
        until_kept(page, SAMPLE)
        yield page


def store(page: Page) -> dict[str, list[str]]:
    """The addresses in each of the browser's stores."""
    found: dict[str, list[str]] = page.evaluate(IN_STORE)
    return found


def seen(page: Page) -> list[str]:
    """The pages of designs in store, the one longest unseen first."""
    return next(addresses for name, addresses in store(page).items() if "-seen-" in name)


def names(page: Page) -> list[str]:
    """The names of the browser's stores, none of which is opened: to open one that goes at that moment makes it anew."""
    found: list[str] = page.evaluate("caches.keys()")
    return found


def until(page: Page, is_so: Callable[[Any], bool], *, read: Callable[[Page], Any] = store) -> None:
    """Wait until the browser's stores, or what is read of them, are as they should be."""
    late = time.monotonic() + 20
    while not is_so(found := read(page)):
        assert time.monotonic() < late, found
        page.wait_for_timeout(100)


def until_kept(page: Page, address: str) -> None:
    """Wait until an address is in store."""
    path_and_query = page.evaluate(
        "(a) => { const url = new URL(a, location.origin); return url.pathname + url.search; }", address
    )
    until(page, lambda found: any(path_and_query in addresses for addresses in found.values()))


def without_network(page: Page) -> None:
    page.context.set_offline(True)


def test_a_working_sheet_that_was_seen_is_read_without_the_network(kept: Page, site: Site) -> None:
    verdict = kept.locator("#outcome .verdict").inner_text()
    without_network(kept)
    kept.reload()
    expect(kept.locator(".kept-line")).to_contain_text("This page was kept in this browser on")
    expect(kept.locator(".kept-line")).to_contain_text(str(kept.evaluate("new Date().getFullYear()")))
    assert kept.locator("#outcome .verdict").inner_text() == verdict
    assert kept.evaluate("getComputedStyle(document.querySelector('.head')).display") == "flex"


def test_what_every_design_shares_is_there_without_having_been_seen(kept: Page, site: Site) -> None:
    without_network(kept)
    shared = {"/guide": "Guide", "/measure?units=in": "Measuring sheet", "/materials#pom_c": "Materials"}
    for path, words in shared.items():
        kept.goto(site.address + path)
        expect(kept.locator(".kept-line")).to_be_visible()
        expect(kept.get_by_role("heading", level=1)).to_contain_text(words)


def test_a_drawing_that_was_seen_is_read_without_the_network(kept: Page, site: Site) -> None:
    kept.goto(site.address + DRAWING)
    expect(kept.locator(".kept-line")).to_have_count(0)
    until_kept(kept, DRAWING)
    without_network(kept)
    kept.reload()
    expect(kept.locator("#sheet-stage svg")).to_be_visible()
    expect(kept.locator(".kept-line")).to_be_visible()


def test_what_was_never_seen_says_what_needs_the_server_and_what_is_kept(kept: Page, site: Site) -> None:
    without_network(kept)
    kept.goto(f"{site.address}/pad?jack.cup_bore_mm=71")
    expect(kept.get_by_role("heading", level=1)).to_have_text("Without the network")
    expect(kept.locator("#needs-server li")).to_have_count(3)
    links = kept.locator("#kept-pages a")
    expect(links).to_have_count(4)
    assert SAMPLE in [link.get_attribute("href") for link in links.all()]
    expect(kept.locator("#kept-pages li").first).to_contain_text("kept on")


def test_with_the_network_the_page_is_the_servers(kept: Page, site: Site) -> None:
    without_network(kept)
    kept.reload()
    expect(kept.locator(".kept-line")).to_be_visible()
    kept.context.set_offline(False)
    kept.reload()
    expect(kept.locator("#outcome .verdict")).to_be_visible()
    expect(kept.locator(".kept-line")).to_have_count(0)


def test_what_was_typed_is_kept_under_its_own_address(kept: Page, site: Site) -> None:
    box = kept.locator('[name="jack.cup_bore_mm"]')
    box.fill("69")
    until_asked(kept, "jack.cup_bore_mm=69")
    until_kept(kept, kept.url)
    without_network(kept)
    kept.reload()
    expect(kept.locator(".kept-line")).to_be_visible()
    expect(kept.locator('[name="jack.cup_bore_mm"]')).to_have_value("69")


def test_no_secret_no_file_and_nothing_sent_is_ever_kept(kept: Page, site: Site) -> None:
    kept.goto(site.address + SAMPLE.replace("/pad", "/save", 1))
    kept.locator("main form button[type=submit]").first.click()
    kept.wait_for_url("**/saved/**")
    kept.goto(f"{site.address}/mine")
    kept.evaluate("async (a) => { await (await fetch(a)).blob(); }", SAMPLE.replace("/pad", "/pad.svg", 1))
    kept.goto(f"{site.address}/measure")
    paths = [address.partition("?")[0] for found in store(kept).values() for address in found]
    assert "/measure" in paths
    assert not [path for path in paths if path.startswith(("/save", "/mine"))]
    assert not [path for path in paths if path.startswith("/pad.")]


def test_only_the_last_pages_seen_are_kept(kept: Page, site: Site, monkeypatch: pytest.MonkeyPatch) -> None:
    """With three for thirty, so that it does not take long."""
    monkeypatch.setattr(offline, "MOST_SEEN", 3)
    fewer = offline.kept_files()[:-1]
    monkeypatch.setattr(offline, "kept_files", lambda: fewer)
    renewed(kept)
    addresses = [f"/pad?jack.cup_bore_mm={bore}" for bore in (60, 61, 62, 63)]
    for address in [*addresses, addresses[1]]:
        kept.goto(site.address + address)
        until_kept(kept, address)
    until(kept, lambda _: seen(kept) == [addresses[2], addresses[3], addresses[1]])


def renewed(page: Page) -> None:
    """Have the browser ask for the worker again, and wait until only the new one's stores are left."""
    before = set(names(page))
    page.evaluate("navigator.serviceWorker.getRegistration().then((found) => { found.update(); })")
    until(page, lambda found: "-files-" in "".join(found) and not before & set(found), read=names)


def test_changed_files_drop_what_was_kept_before(kept: Page, site: Site, monkeypatch: pytest.MonkeyPatch) -> None:
    before = names(kept)
    fewer = offline.kept_files()[:-1]
    monkeypatch.setattr(offline, "kept_files", lambda: fewer)
    renewed(kept)
    assert not set(names(kept)) & set(before)
    # The page that is open is kept anew, with the addresses that files have now.
    until_kept(kept, SAMPLE)


def test_pages_of_designs_can_be_forgotten_and_the_guide_stays(kept: Page, site: Site) -> None:
    kept.goto(f"{site.address}/offline")
    kept.get_by_role("button", name="Forget the pages of designs").click()
    expect(kept.locator("#kept-none")).to_have_text("Pages of designs are forgotten.")
    expect(kept.locator("#kept-pages a")).to_have_count(3)
    without_network(kept)
    kept.goto(site.address + SAMPLE)
    expect(kept.get_by_role("heading", level=1)).to_have_text("Without the network")


def test_without_scripts_nothing_is_promised(browser: Browser, site: Site) -> None:
    for page in window(browser, DESKTOP, scripts=False, keeps=True):
        page.goto(f"{site.address}/offline")
        expect(page.locator("#kept-none")).to_be_visible()
        expect(page.locator("noscript p")).to_be_visible()
        expect(page.locator("#kept-forget")).to_be_hidden()


def test_the_page_keeps_nobody_out_and_never_scrolls_sideways(kept: Page, site: Site) -> None:
    kept.goto(f"{site.address}/offline")
    expect(kept.locator("#kept-pages a")).to_have_count(4)
    assert findings_in(kept, ("390", "1440", "dark")) == {}


def test_a_page_beside_a_sheet_is_kept_for_every_sheet_and_not_with_the_way_back_to_one(kept: Page, site: Site) -> None:
    """Oracle: the store's own addresses, and the words of what it holds."""
    kept.goto(site.address + "/guide?units=in&back=jack.cup_bore_mm%3D77.25")
    until_kept(kept, "/guide?units=in")
    assert not [address for addresses in store(kept).values() for address in addresses if "back=" in address]
    text = kept.evaluate("async () => (await caches.match('/guide?units=in', {ignoreVary: true})).text()")
    assert "Can be 0.787 in" in text
    assert "77.25" not in text
