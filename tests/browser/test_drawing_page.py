"""The drawing's page as a person meets it: looked at closely, layers put away, printed in true size."""

import re
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from server.links import pad_address, samples, typed_of_document
from tests.browser.conftest import DESKTOP, Site, window
from tests.browser.test_access import findings_in

pytestmark = pytest.mark.browser
SHEET = "#sheet-stage svg"
DOTS_PER_MM = 10


def address(site: Site, key: str = "mobile_library_van", **view: str) -> str:
    document = next(s.document for s in samples() if s.key == key)
    return site.address + pad_address(typed_of_document(document), "/drawing", view=view)


def seen(page: Page) -> list[float]:
    """The window on the sheet: left, top, width, height."""
    return [float(n) for n in (page.locator(SHEET).get_attribute("viewBox") or "").split()]


@pytest.fixture
def still(browser: Browser) -> Iterator[Page]:
    """A window without scripts."""
    yield from window(browser, DESKTOP, scripts=False)


def test_buttons_look_closer_and_back(page: Page, site: Site) -> None:
    page.goto(address(site))
    whole = seen(page)
    page.get_by_role("button", name="Larger").click()
    assert seen(page)[2] == pytest.approx(whole[2] / 1.4, rel=1e-3)
    page.get_by_role("button", name="To the right").click()
    assert seen(page)[0] > (whole[2] - seen(page)[2]) / 2
    expect(page.locator("#looking-now")).to_contain_text("1.4 times")
    page.get_by_role("button", name="Whole sheet").click()
    assert seen(page) == pytest.approx(whole)


def test_keys_do_the_same(page: Page, site: Site) -> None:
    page.goto(address(site))
    whole = seen(page)
    page.locator("#sheet-stage").focus()
    for key in ("+", "+", "ArrowDown"):
        page.keyboard.press(key)
    close = seen(page)
    assert close[2] == pytest.approx(whole[2] / 1.4**2, rel=1e-3)
    assert close[1] > (whole[3] - close[3]) / 2
    page.keyboard.press("0")
    assert seen(page) == pytest.approx(whole)


def test_a_drag_moves_the_sheet_with_the_hand_and_never_off_it(page: Page, site: Site) -> None:
    page.goto(address(site))
    for _ in range(3):
        page.get_by_role("button", name="Larger").click()
    before = seen(page)
    box = page.locator("#sheet-stage").bounding_box()
    assert box
    page.mouse.move(box["x"] + 300, box["y"] + 200)
    page.mouse.down()
    page.mouse.move(box["x"] + 200, box["y"] + 200, steps=4)
    page.mouse.up()
    assert seen(page)[0] - before[0] == pytest.approx(100 / box["width"] * before[2], rel=0.02)
    page.locator("#sheet-stage").focus()
    for _ in range(20):
        page.keyboard.press("ArrowLeft")
    assert seen(page)[0] == 0


def test_a_layer_is_put_away_and_taken_out_again_even_without_a_script(still: Page, site: Site) -> None:
    # A level line has no height, so what is asked is whether it is drawn, not whether it fills a box.
    still.goto(address(site))
    for layer in ("dimension", "tolerance", "hatch", "centre", "hidden", "note"):
        group = still.locator(f'{SHEET} g[data-layer="{layer}"]').first
        expect(group).to_have_css("display", "inline")
        still.locator(f"#layer-{layer}").uncheck()
        expect(group).to_have_css("display", "none")
        for kept in ("visible", "caution"):
            expect(still.locator(f'{SHEET} g[data-layer="{kept}"]').first).to_have_css("display", "inline")
        still.locator(f"#layer-{layer}").check()
        expect(group).to_have_css("display", "inline")


def test_without_a_script_the_sheet_stands_there_with_its_links_and_no_dead_buttons(still: Page, site: Site) -> None:
    still.goto(address(site))
    expect(still.locator(SHEET)).to_be_visible()
    expect(still.locator("#looking")).to_be_hidden()
    expect(still.get_by_role("link", name="Packet, PDF")).to_be_visible()


@pytest.mark.parametrize("paper", ["A4", "letter"])
def test_a_print_is_the_sheet_in_true_size_even_after_looking_closely(
    page: Page, site: Site, paper: str, tmp_path: Path
) -> None:
    """Oracle: the printed page as dots, ten to the millimetre: the frame runs from 20 mm left to 10 mm right."""
    page.goto(address(site, paper=paper))
    page.get_by_role("button", name="Larger").click()
    path = tmp_path / "print.pdf"
    page.pdf(path=path, prefer_css_page_size=True)
    command = ["pdftoppm", "-r", str(25.4 * DOTS_PER_MM), "-gray", str(path)]
    grey = subprocess.run(command, capture_output=True, check=True).stdout
    _, size, _, dots = grey.split(b"\n", 3)
    width, height = (int(n) for n in size.split())
    wanted = (210, 297) if paper == "A4" else (215.9, 279.4)
    assert (width / DOTS_PER_MM, height / DOTS_PER_MM) == pytest.approx(wanted, abs=0.4)
    assert len(dots) == width * height, "more than one page"
    row = dots[width * (height // 3) : width * (height // 3 + 1)]
    dark = [x for x, dot in enumerate(row) if dot < 128]
    assert dark[0] / DOTS_PER_MM == pytest.approx(20 - 0.35, abs=0.3)
    assert dark[-1] / DOTS_PER_MM == pytest.approx(wanted[0] - 10 + 0.35, abs=0.4)


def test_the_sheet_is_light_on_a_dark_page(browser: Browser, site: Site) -> None:
    for dark in window(browser, DESKTOP, dark=True):
        dark.goto(address(site))
        colours = dark.evaluate(
            "['html', '#sheet-stage'].map(s => getComputedStyle(document.querySelector(s)).backgroundColor)"
        )
        page_light, sheet_light = (sum(map(int, re.findall(r"\d+", colour)[:3])) for colour in colours)
        assert sheet_light == 3 * 255
        assert page_light < 150


def test_the_packet_is_saved_with_a_sign_while_it_is_made(page: Page, site: Site) -> None:
    page.goto(address(site))
    with page.expect_download() as waiting:
        page.get_by_role("link", name="Packet, PDF").click()
        expect(page.locator("#made-slowly")).not_to_be_empty()
    assert re.fullmatch(r"lifting-pad-[0-9a-f]{12}-rev-a-packet\.pdf", waiting.value.suggested_filename)
    expect(page.locator("#made-slowly")).to_contain_text("Done")


@pytest.mark.parametrize("key", ["mobile_library_van", "repair_cafe_people_carrier"])
def test_no_width_scrolls_sideways(page: Page, site: Site, key: str) -> None:
    page.goto(address(site, key))
    for width in (320, 390, 700, 1024, 1440, 2560):
        page.set_viewport_size({"width": width, "height": 900})
        assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_axe_finds_nothing(phone: Page, site: Site) -> None:
    phone.goto(address(site, "repair_cafe_people_carrier"))
    assert findings_in(phone, ("390", "1440", "dark")) == {}
