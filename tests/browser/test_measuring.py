"""Measuring in a garage: one hand for the phone, and nothing that shouts, jumps or hides."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, ViewportSize, expect

from tests.browser.conftest import DESKTOP, PHONE, Site, until_asked, window

pytestmark = pytest.mark.browser
BORE, DEPTH = "#field-jack-cup_bore_mm", "#field-jack-cup_depth_mm"
KEYBOARD_OPEN: ViewportSize = {"width": PHONE[0], "height": 470}
PRINTED = {
    "jack-cup_bore_mm": "68",
    "jack-cup_depth_mm": "12",
    "jack-rim_height_low_mm": "105",
    "jack-rated_load_kg": "2000",
    "seam-thickness_mm": "3.2",
    "seam-height_mm": "20",
    "seam-edge_height_mm": "190",
    "car-gross_mass_kg": "1600",
}
"""The eight numbers of the van, in the order in which the printed measuring sheet has them."""


@pytest.fixture
def still(browser: Browser) -> Iterator[Page]:
    """A phone without scripts."""
    yield from window(browser, PHONE, scripts=False)


def test_eight_numbers_are_typed_one_after_the_other_with_the_keyboards_own_key(phone: Page, site: Site) -> None:
    """Oracle: only that key and digits, from the first box to a pad; boxes without a number on the sheet are passed over."""
    phone.goto(site.address + "/")
    phone.get_by_role("link", name="Type in what you measured").click()
    for _ in range(20):
        focused = phone.evaluate("document.activeElement.id")
        phone.keyboard.type(PRINTED.get(focused.removeprefix("field-"), ""))
        phone.keyboard.press("Enter")
        if focused == "field-car-gross_mass_kg":
            break
    expect(phone.locator("#outcome .verdict")).to_contain_text("estimates pass")
    expect(phone.locator(".foot-verdict")).to_be_in_viewport()


def test_while_the_keyboard_is_open_the_picture_shows_what_is_measured(phone: Page, site: Site) -> None:
    """Oracle: the lit balloon lies within the picture, which is less than two fifths of what is left of the screen."""
    phone.goto(site.sample("mobile_library_van"))
    whole = phone.locator("#section-phone svg").get_attribute("viewBox")
    phone.locator(DEPTH).focus()
    phone.set_viewport_size(KEYBOARD_OPEN)
    expect(phone.locator("html")).to_have_attribute("data-live-keyboard", "")
    picture = phone.locator("#section-phone").bounding_box()
    balloon = phone.locator('#section-phone .balloon[data-field="jack.cup_depth_mm"] .balloon-ring').bounding_box()
    box = phone.locator(DEPTH).bounding_box()
    assert picture
    assert balloon
    assert box
    assert picture["y"] <= balloon["y"]
    assert balloon["y"] + balloon["height"] <= picture["y"] + picture["height"]
    assert balloon["height"] > 28
    assert picture["height"] < 0.4 * KEYBOARD_OPEN["height"]
    assert box["y"] >= picture["y"] + picture["height"]
    expect(phone.locator(".foot-verdict")).to_be_hidden()
    phone.locator(DEPTH).blur()
    phone.set_viewport_size({"width": PHONE[0], "height": PHONE[1]})
    expect(phone.locator("#section-phone svg")).to_have_attribute("viewBox", whole or "")


def test_on_a_phone_the_picture_stays_on_top_of_the_boxes(phone: Page, site: Site) -> None:
    phone.goto(site.sample("mobile_library_van"))
    phone.evaluate("window.scrollTo(0, 500)")
    top = phone.locator("#assembly").bounding_box()
    assert top
    assert abs(top["y"]) < 1


def test_half_a_number_does_not_shout_and_takes_nothing_away(page: Page, site: Site) -> None:
    """Oracle: “6” on the way to “69” cannot be a bore; the pad stays, and after a pause it is said."""
    page.goto(site.sample("mobile_library_van"))
    page.locator(BORE).fill("6")
    page.wait_for_timeout(700)
    expect(page.locator("#the-pad")).to_be_attached()
    expect(page.locator("#outcome .verdict")).to_contain_text("estimates pass")
    page.keyboard.type("9")
    until_asked(page, "cup_bore_mm=69")
    page.locator(BORE).fill("6")
    expect(page.locator(BORE + "-note")).to_contain_text("cannot be right")
    expect(page.locator(BORE)).to_have_value("6")


def test_leaving_the_box_says_at_once_what_cannot_be(page: Page, site: Site) -> None:
    page.goto(site.sample("mobile_library_van"))
    page.locator(BORE).fill("6")
    page.wait_for_timeout(500)
    page.locator(DEPTH).focus()
    expect(page.locator(BORE + "-note")).to_contain_text("cannot be right", timeout=900)


def test_how_to_measure_is_shown_pushes_the_next_box_and_closes(phone: Page, site: Site) -> None:
    """Oracle: the drawing has loaded, and the next question begins below the explanation."""
    phone.goto(site.address + "/pad")
    field = phone.locator('.field[data-field="jack.cup_corner_radius_mm"]')
    field.locator("summary").click()
    expect(field.locator(".how-picture")).to_have_js_property("complete", True)
    assert field.locator(".how-picture").evaluate("image => image.naturalWidth") == 200
    expect(field.locator(".cannot")).to_contain_text("I can't measure this")
    expect(field.locator(".cannot")).to_contain_text("Pad tipping in the cup")
    words = field.locator(".how-words").bounding_box()
    following = phone.locator('.field[data-field="jack.rim_diameter_mm"]').bounding_box()
    assert words
    assert following
    assert following["y"] >= words["y"] + words["height"]
    phone.keyboard.press("Escape")
    expect(field.locator(".how-words")).to_be_hidden()


def test_an_unusual_number_is_asked_about_and_the_pad_stays(page: Page, site: Site) -> None:
    page.goto(site.sample("mobile_library_van"))
    page.locator("#field-seam-thickness_mm").fill("12")
    expect(page.locator("#field-seam-thickness_mm-note")).to_contain_text("did you include the sill?")
    expect(page.locator("#the-pad")).to_be_attached()


def test_what_takes_longer_arrives_after_the_sheet_and_outlasts_an_update(page: Page, site: Site) -> None:
    """Oracle: the pieces of three further computations stand on the sheet, and still stand when a title is typed."""
    page.goto(site.sample("mobile_library_van"))
    expect(page.locator("#beside #other-materials")).to_be_attached(timeout=15000)
    expect(page.locator("#beside #the-curve")).to_be_attached()
    expect(page.locator("#beside #what-matters")).to_be_attached()
    page.locator("#field-title").fill("Another")
    until_asked(page, "title=Another")
    expect(page.locator("#beside #other-materials")).to_be_attached()


def test_where_something_fails_what_would_help_is_worked_out_and_one_tap_applies_it(page: Page, site: Site) -> None:
    """Oracle: the address that the first change leads to is a pad without failures."""
    page.goto(site.sample("repair_cafe_people_carrier"))
    first = page.locator("#help .remedies a").first
    expect(first).to_be_visible(timeout=15000)
    first.click()
    expect(page.locator("#outcome .verdict")).to_contain_text("estimates pass")


def test_without_scripts_the_same_is_a_page_of_its_own(still: Page, site: Site) -> None:
    still.goto(site.sample("rowing_club_trailer_car_no_pad"))
    still.locator("#help a").click()
    expect(still.locator(".remedies a").first).to_be_visible()
    still.goto(site.sample("mobile_library_van"))
    still.locator("#beside a").first.click()
    expect(still.get_by_role("heading", name="Materials side by side")).to_be_visible()


@pytest.mark.parametrize(("motion", "wanted"), [("no-preference", "0.15s"), ("reduce", "0s")])
def test_the_pads_outline_eases_unless_motion_is_not_wanted(
    browser: Browser, site: Site, motion: str, wanted: str
) -> None:
    """Oracle: the outline is the same element after an update, so that it can ease from one size to the next."""
    for opened in window(browser, (1440, 900)):
        opened.emulate_media(reduced_motion="reduce" if motion == "reduce" else "no-preference")
        opened.goto(site.sample("mobile_library_van"))
        outline = opened.locator("#section-wide .pad")
        outline.evaluate("path => { path.mark = path.getAttribute('d'); }")
        opened.locator(DEPTH).fill("14")
        until_asked(opened, "cup_depth_mm=14")
        expect(outline).to_have_js_property("mark", outline.evaluate("path => path.mark"))
        assert outline.evaluate("path => path.mark !== path.getAttribute('d')")
        assert outline.evaluate("path => getComputedStyle(path).transitionDuration") == wanted


def test_the_printed_measuring_sheet_has_its_boxes_and_no_buttons(page: Page, site: Site) -> None:
    """Oracle: eight heavy boxes for the eight numbers; on paper neither head nor links."""
    page.goto(site.address + "/measure")
    assert page.locator(".take.is-needed .take-box").count() == len(PRINTED)
    page.emulate_media(media="print")
    expect(page.locator(".head")).to_be_hidden()
    expect(page.locator(".measure-section svg")).to_be_visible()
    for paper in ("A4", "Letter"):
        pages = len(re.findall(rb"/Type\s*/Page\b", page.pdf(format=paper)))
        assert 1 <= pages <= 3, paper


def test_a_wide_detail_cuts_no_balloon_at_the_pictures_edge(phone: Page, site: Site) -> None:
    """Oracle: while an empty bore is asked for, every balloon at that height lies between the screen's edges."""
    phone.goto(site.address + "/pad")
    phone.locator(BORE).focus()
    phone.set_viewport_size(KEYBOARD_OPEN)
    expect(phone.locator("html")).to_have_attribute("data-live-keyboard", "")
    edges = phone.locator("#section-phone .balloon-ring").evaluate_all(
        "all => all.map(ring => ring.getBoundingClientRect()).flatMap(box => [box.left, box.right])"
    )
    assert len(edges) > 10
    assert min(edges) >= 0
    assert max(edges) <= PHONE[0]


@pytest.mark.parametrize("size", [PHONE, DESKTOP])
def test_the_first_pages_ways_follow_the_jack_and_car_that_are_chosen(
    browser: Browser, site: Site, size: tuple[int, int]
) -> None:
    """Oracle: the sheet names the chosen two in its own words; the first box is one that a cup has not."""
    for page in window(browser, size):
        page.goto(site.address + "/")
        page.get_by_role("link", name="Choose your jack and lifting point").click()
        page.locator("#field-foot").select_option("plate")
        until_asked(page, "foot=plate")
        page.locator("#field-head").select_option("cushion")
        until_asked(page, "head=cushion")
        expect(page.locator("#welcome-ways")).to_contain_text("now a flat plate; a plate or frame rail")
        page.get_by_role("link", name="Type in what you measured").click()
        first = page.locator("#step-jack .field input, #step-jack .field select").first
        expect(first).to_be_focused()
        assert "cup" not in (first.get_attribute("id") or "cup")
        page.get_by_role("link", name="Print the measuring sheet").click()
        expect(page.locator(".measure")).to_contain_text("This sheet is for a flat plate; a plate or frame rail")


def test_a_tap_on_a_box_of_the_measuring_sheet_leads_to_the_box_to_type_in(phone: Page, site: Site) -> None:
    """Oracle: that box has the focus on a phone, in a group and a step that were put away."""
    phone.goto(f"{site.address}/measure")
    phone.locator(".take", has_text="Seam height").locator(".take-box").first.click()
    expect(phone.locator("#field-seam-height_mm")).to_be_focused()
    expect(phone.locator("#field-seam-height_mm")).to_be_in_viewport()


def test_the_measuring_sheet_prints_at_the_press_of_a_button(page: Page, still: Page, site: Site) -> None:
    """Oracle: the browser's own printing is asked for, once; without scripts no dead button stands there."""
    page.add_init_script("window.printed = 0; window.print = () => { window.printed += 1; }")
    page.goto(f"{site.address}/measure")
    page.get_by_role("button", name="Print this sheet").click()
    assert page.evaluate("window.printed") == 1
    still.goto(f"{site.address}/measure")
    expect(still.get_by_role("button", name="Print this sheet")).to_be_hidden()
