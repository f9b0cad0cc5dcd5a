"""The pages of the shop in a real browser: used, without scripts, on a phone, and printed on A4 and Letter."""

import re
import subprocess
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from server.links import address_of_document
from tests.browser.conftest import DESKTOP, PHONE, Site, window
from tests.browser.test_access import LOOKS, findings_in
from tests.documents import sample

pytestmark = pytest.mark.browser
KINDS = ("route", "inspection", "record")
VAN, STEM, FAILING = "mobile_library_van", "tool_library_hatchback_stem", "repair_cafe_people_carrier"
GOOD = {"seat_diameter_mm": [67.2], "web_mm": [19.0]}
BAD = {"seat_diameter_mm": [68.4], "web_mm": [19.0]}
SLIP = {"seat_diameter_mm": [2.646], "web_mm": [19.0]}
CASES: dict[str, tuple[dict[str, Any], str]] = {
    "card": (sample(VAN), "route"),
    "slide": (sample(STEM) | {"shop": {"slot_machine": "vertical_slide"}}, "route"),
    "hand": (sample(VAN) | {"make": {"process": "hand_tools"}}, "route"),
    "cnc": (sample(VAN) | {"make": {"process": "cnc"}}, "route"),
    "print": (sample("choir_minibus_printed"), "route"),
    "unfit": (sample(FAILING), "route"),
    "empty": (sample(VAN), "inspection"),
    "good": (sample(VAN) | {"as_made": GOOD}, "inspection"),
    "bad": (sample(VAN) | {"as_made": BAD}, "inspection"),
    "slip": (sample(VAN) | {"as_made": SLIP}, "inspection"),
    "record": (sample(VAN), "record"),
    "worn record": (
        sample(VAN) | {"wear": {"log": "2026-01-10 seat 67.1 wall clean; 2026-03-01 wall white"}},
        "record",
    ),
    "unfit record": (sample(FAILING), "record"),
}
OPERATIONS = """all => all.map(operation =>
  [...operation.querySelectorAll("h3, .steps li")].map(piece => piece.textContent))"""
SHEETS = {"A4": (595, 842), "Letter": (612, 792)}


CLOSELY = ("print", "bad", "slip", "record")
"""One of each kind of page, looked at in every light and on both papers; the others on a phone and on A4."""


def few(second: dict[str, Any], quick: str) -> list[Any]:
    """Every case with the looks or sheets that are asked of one page in turn; what adds little is left to the long run."""
    now = [pytest.param(case, tuple(second) if case in CLOSELY else (quick,), id=case) for case in CASES]
    rest = tuple(name for name in second if name != quick)
    return now + [
        pytest.param(case, rest, marks=pytest.mark.full, id=f"{case}, rest") for case in CASES if case not in CLOSELY
    ]


def address(site: Site, case: str) -> str:
    document, kind = CASES[case]
    return site.address + address_of_document(document, f"/{kind}")


@pytest.mark.parametrize(("case", "looks"), few(LOOKS, "390"))
def test_axe_finds_nothing_and_nothing_runs_over(phone: Page, site: Site, case: str, looks: tuple[str, ...]) -> None:
    phone.goto(address(site, case))
    phone.evaluate("document.querySelectorAll('details:not(.how)').forEach(d => { d.open = true; })")
    assert findings_in(phone, looks) == {}


def test_the_shop_is_one_line_until_it_is_opened_and_writes_another_card(page: Page, site: Site) -> None:
    page.goto(address(site, "card"))
    slot = page.get_by_label("Milling is done on")
    expect(slot).to_be_hidden()
    page.get_by_text("The shop", exact=True).click()
    slot.select_option("vertical_slide")
    page.get_by_role("button", name="Write the card for this shop").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("lathe and vertical slide")
    assert "shop.slot_machine=vertical_slide" in page.url
    assert "jack.cup_bore_mm=68" in page.url


@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no scripts"])
def test_readings_are_judged_beside_their_fields_and_live_in_the_address(
    browser: Browser, site: Site, scripts: bool
) -> None:
    for opened in window(browser, PHONE, scripts=scripts):
        opened.goto(address(site, "empty"))
        opened.locator("#field-as_made-web_mm").fill("19.0")
        opened.locator("#field-as_made-seat_diameter_mm").fill("67,2; 67,25")
        opened.locator("#field-as_made-seat_diameter_mm").press("Enter")
        expect(opened.get_by_text("inside its limits.").first).to_be_visible()
        assert "as_made.web_mm=19.0" in opened.url
        assert opened.locator("#field-as_made-seat_diameter_mm").input_value() == "67,2; 67,25"


def test_a_slip_is_asked_about_and_enter_does_not_answer_for_you(page: Page, site: Site) -> None:
    page.goto(address(site, "slip"))
    expect(page.get_by_text("is this a slip?").first).to_be_visible()
    page.locator("#field-as_made-slot_depth_mm").fill("16")
    page.locator("#field-as_made-slot_depth_mm").press("Enter")
    expect(page.get_by_text("is this a slip?").first).to_be_visible()
    assert "as_made.sure" not in page.url
    page.get_by_role("button", name="take these readings as they are").first.click()
    expect(page.locator(".outcome-words")).to_contain_text("DO NOT USE THIS PART")
    assert "as_made.sure=yes" in page.url
    assert "as_made.slot_depth_mm=16" in page.url


def test_a_reading_that_is_no_number_stays_in_its_box(page: Page, site: Site) -> None:
    page.goto(address(site, "good"))
    page.locator("#field-as_made-slot_depth_mm").fill("16,5x")
    page.get_by_role("button", name="Judge the readings").last.click()
    assert page.locator("#field-as_made-slot_depth_mm").input_value() == "16,5x"
    page.get_by_role("link", name="Slot depth, as read").click()
    expect(page.get_by_text("inside its limits.").first).to_be_visible()


@pytest.mark.parametrize(("case", "sheets"), few(SHEETS, "A4"))
def test_every_printed_page_says_what_it_is_and_carries_the_caution(
    page: Page, site: Site, tmp_path: Path, case: str, sheets: tuple[str, ...]
) -> None:
    """Oracle: the text of the PDF, page by page, read by another program."""
    page.goto(address(site, case))
    marks = {"unfit": "NOT FIT TO MAKE", "unfit record": "NOT FIT TO MAKE", "print": "NOT FIT TO MAKE"}
    mark = marks.get(case, "DO NOT USE THIS PART" if case == "bad" else "design ")
    for sheet in sheets:
        pages, size = printed(page, sheet, tmp_path)
        assert size == pytest.approx(SHEETS[sheet], abs=1)
        for number, text in enumerate(pages, start=1):
            words = " ".join(text.split())
            assert "Never get under a car held by a jack" in words, number
            assert mark in words, number
            assert re.search(rf"\b{number} ?/ ?{len(pages)}\b", words)


@pytest.mark.parametrize("case", ["card", "slide", "hand"])
def test_an_operation_is_never_torn_apart(page: Page, site: Site, tmp_path: Path, case: str) -> None:
    """Oracle: the first words and the last figures of an operation stand on one page of the PDF."""
    page.goto(address(site, case))
    words = [letters(text) for text in printed(page, "A4", tmp_path)[0]]
    operations = page.locator(".operation").evaluate_all(OPERATIONS)
    assert len(operations) > 8
    for title, *steps in operations:
        first = [w for w in words if letters(title) in w]
        assert any(all(letters(step) in w for step in steps) for w in first), title


def test_the_empty_sheet_is_printed_with_boxes(browser: Browser, site: Site) -> None:
    for opened in window(browser, DESKTOP):
        opened.goto(address(site, "empty"))
        opened.emulate_media(media="print")
        boxes = opened.locator(".reading input").all()
        shown = [box for box in boxes if box.is_visible()]
        assert len(shown) == 11
        assert all(box.evaluate("e => getComputedStyle(e).borderTopWidth") != "0px" for box in shown)
        expect(opened.locator(".shop-pages")).to_be_hidden()


def letters(text: str) -> str:
    """The words without what a line's end may do to them."""
    return re.sub(r"[\s-]+", "", text)


def printed(page: Page, sheet: str, folder: Path) -> tuple[list[str], tuple[int, int]]:
    """The words of every printed page, and the size of a sheet in points."""
    path = folder / "sheet.pdf"
    page.pdf(path=path, format=sheet, print_background=True)
    text = subprocess.run(["pdftotext", "-raw", path, "-"], capture_output=True, text=True, check=True).stdout
    about = subprocess.run(["pdfinfo", path], capture_output=True, text=True, check=True).stdout
    match = re.search(r"Page size:\s+([\d.]+) x ([\d.]+)", about)
    assert match
    return text.split("\f")[:-1], (round(float(match[1])), round(float(match[2])))
