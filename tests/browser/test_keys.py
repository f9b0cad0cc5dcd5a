"""The keyboard leads from number to number, loses no digit, and still reaches every explanation."""

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import PHONE, Site, until_asked, window
from tests.browser.test_measuring import PRINTED

pytestmark = pytest.mark.browser
BORE, DEPTH, CORNER = (f"#field-jack-cup_{name}_mm" for name in ("bore", "depth", "corner_radius"))
FOCUSED = "document.activeElement.name || document.activeElement.tagName"
NUMBERS = "all => all.map(n => parseInt(n.textContent.replace(/\\D+/g, '')))"


def met_by(page: Page, key: str, presses: int) -> list[str]:
    """What has the focus after each press of a key."""
    met = []
    for _ in range(presses):
        page.keyboard.press(key)
        met.append(page.evaluate(FOCUSED))
    return met


@pytest.mark.parametrize("key", ["Enter", "Tab"])
def test_on_a_wide_page_a_key_leads_to_the_next_number_and_no_digit_is_lost(page: Page, site: Site, key: str) -> None:
    """Oracle: eight numbers typed with digits and one key alone, as the printed sheet has them, make a pad."""
    page.goto(site.address + "/pad")
    page.locator(BORE).focus()
    for _ in range(30):
        focused = page.evaluate("document.activeElement.id")
        assert focused.startswith("field-") or "SUMMARY" in page.evaluate(FOCUSED), focused
        page.keyboard.type(PRINTED.get(focused.removeprefix("field-"), ""))
        if focused == "field-car-gross_mass_kg":
            break
        page.keyboard.press(key)
    expect(page.locator("#outcome .verdict")).to_contain_text("estimates pass")
    for name, text in PRINTED.items():
        expect(page.locator(f"#field-{name}")).to_have_value(text)


def test_the_boxes_come_in_the_order_of_their_balloons(page: Page, site: Site) -> None:
    """Oracle: the balloons' numbers beside the boxes, as Enter meets them; on the picture they stand otherwise."""
    page.goto(site.address + "/pad")
    numbers = page.locator("#step-jack .field .number, #step-car .field .number").evaluate_all(NUMBERS)
    assert numbers == sorted(numbers)
    page.locator(BORE).focus()
    order = [name for name in met_by(page, "Enter", len(numbers) + 1) if name.startswith(("jack.", "seam."))]
    boxes = page.locator("#step-jack .field.is-numbered input, #step-car .field.is-numbered input")
    asked = boxes.evaluate_all("all => all.map(box => box.name)")
    assert [name for name in order if name in asked] == asked[1:]


def test_tab_and_its_way_back_pass_over_what_explains(page: Page, site: Site) -> None:
    page.goto(site.address + "/pad")
    page.locator(BORE).focus()
    assert met_by(page, "Tab", 2) == ["jack.cup_depth_mm", "jack.cup_corner_radius_mm"]
    assert met_by(page, "Shift+Tab", 2) == ["jack.cup_depth_mm", "jack.cup_bore_mm"]


def test_a_question_mark_in_a_box_opens_and_closes_how_it_is_measured(page: Page, site: Site) -> None:
    """The keyboard's way to every explanation that Tab passes over; the box keeps the focus and its text."""
    page.goto(site.sample("mobile_library_van"))
    page.locator(DEPTH).focus()
    how = page.locator(".field[data-field='jack.cup_depth_mm'] .how-words")
    page.keyboard.press("?")
    expect(how).to_be_visible()
    expect(page.locator(DEPTH)).to_be_focused()
    expect(page.locator(DEPTH)).to_have_value("12")
    page.keyboard.press("?")
    expect(how).to_be_hidden()


def test_a_number_typed_while_its_explanation_is_read_goes_into_its_box(page: Page, site: Site) -> None:
    page.goto(site.sample("mobile_library_van"))
    page.locator(".field[data-field='jack.cup_depth_mm'] .how summary").click()
    page.keyboard.type("13")
    expect(page.locator(DEPTH)).to_have_value("13")
    until_asked(page, "jack.cup_depth_mm=13")


def test_the_keys_are_told_where_there_is_a_keyboard(browser: Browser, site: Site) -> None:
    """Oracle: the line is in sight on a desk and not on a phone, and lies beside nothing that it covers."""
    for size, is_told in (((1440, 1000), True), ((900, 900), True), (PHONE, False)):
        for opened in window(browser, size):
            opened.goto(site.sample("mobile_library_van"))
            expect(opened.locator(".keys")).to_be_visible(visible=is_told)


def test_between_phone_and_three_columns_the_picture_stays_in_sight(page: Page, site: Site) -> None:
    """Oracle: the lit balloon and the last box are both in the window, neither over the other."""
    page.goto(site.sample("mobile_library_van"))
    for width, height in ((768, 1024), (1000, 700)):
        page.set_viewport_size({"width": width, "height": height})
        box = page.locator("#field-car-gross_mass_kg")
        page.locator(BORE).focus()
        box.focus()
        picture, typed = page.locator("#assembly").bounding_box(), box.bounding_box()
        assert picture
        assert typed
        assert picture["y"] >= -1
        assert picture["y"] + picture["height"] <= typed["y"]
        assert typed["y"] + typed["height"] <= height
        assert picture["height"] < 0.6 * height


def test_see_the_pad_leads_on_to_the_sizes_while_the_verdict_is_in_sight(phone: Page, site: Site) -> None:
    phone.goto(site.sample("mobile_library_van"))
    bar = phone.locator(".foot-verdict")
    bar.get_by_text("See the pad").click()
    expect(phone.locator("#outcome .verdict")).to_be_in_viewport()
    expect(bar.get_by_text("See the pad")).to_be_hidden()
    bar.get_by_text("Its sizes").click()
    expect(phone.locator("#the-pad h2")).to_be_in_viewport()


def test_the_jack_raised_is_asked_after_its_rated_load_as_on_paper(phone: Page, site: Site) -> None:
    """Oracle: the printed sheet's own order of boxes, and what Enter meets after the rated load on a phone."""
    phone.goto(site.address + "/measure")
    printed = phone.locator("main").inner_text()
    assert printed.index("Jack's rated load") < printed.index("Rim height, jack up") < printed.index("Seam thickness")
    phone.goto(site.address + "/pad")
    phone.locator("#field-jack-rated_load_kg").focus()
    assert met_by(phone, "Enter", 1) == ["jack.rim_height_high_mm"]


def test_a_pinned_verdict_leaves_the_picture_whole(page: Page, site: Site) -> None:
    """Oracle: on usual screens the ground below the jack ends above the verdict at the window's edge."""
    page.goto(site.sample("mobile_library_van"))
    for width, height in ((1120, 800), (1440, 900)):
        page.set_viewport_size({"width": width, "height": height})
        page.evaluate("window.scrollTo(0, 0)")
        ground, bar = page.locator("#section-wide .ground").last.bounding_box(), page.locator("#outcome").bounding_box()
        assert ground
        assert bar
        assert bar["y"] + bar["height"] <= height + 1
        assert ground["y"] <= bar["y"] + 1, (width, height)
