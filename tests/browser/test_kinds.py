"""Another jack and another lifting point: the sheet asks for what is measured there, and loses nothing on the way."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from geometry.kinds import FACES, JACKS
from tests.browser.conftest import DESKTOP, Site, until_asked, window
from tests.browser.test_sheet import CUT_OR_MET, OFF_BALLOON

pytestmark = pytest.mark.browser
FOOT, HEAD = "#field-foot", "#field-head"
BORE, POST = "#field-jack-cup_bore_mm", "#field-jack-post_bore_mm"


@pytest.fixture
def still(browser: Browser, site: Site) -> Iterator[Page]:
    """A window without scripts."""
    yield from window(browser, DESKTOP, scripts=False)


def test_another_foot_asks_its_own_questions_and_the_way_back_finds_what_was_typed(page: Page, site: Site) -> None:
    page.goto(site.sample("mobile_library_van"))
    bore = page.locator(BORE).input_value()
    page.locator("#kinds > summary").click()
    page.locator(FOOT).select_option("post")
    until_asked(page, "foot=post")
    expect(page.locator(POST)).to_be_visible()
    expect(page.locator(BORE)).not_to_be_visible()
    page.locator(POST).fill("32")
    until_asked(page, "post_bore_mm=32")
    page.locator(FOOT).select_option("")
    expect(page.locator(BORE)).to_be_visible()
    expect(page.locator(BORE)).to_have_value(bore)
    page.locator(FOOT).select_option("post")
    expect(page.locator(POST)).to_have_value("32")


def test_another_head_changes_the_picture_and_its_balloons(page: Page, site: Site) -> None:
    page.goto(site.sample("mobile_library_van"))
    page.locator("#kinds > summary").click()
    page.locator(HEAD).select_option("cushion")
    until_asked(page, "head=cushion")
    balloon = page.locator('#section-wide a[href="#field-rail-face_width_mm"]')
    balloon.locator(".target").click()
    expect(page.locator("#field-rail-face_width_mm")).to_be_focused()
    expect(page.locator("#section-wide")).not_to_contain_text("Seam")


@pytest.mark.parametrize("foot", JACKS)
def test_every_empty_sheet_has_its_questions_in_line(page: Page, site: Site, foot: str) -> None:
    """Oracle: boxes measured in the browser, every note below its box: “still to measure”, or what is taken instead."""
    for head in FACES:
        page.goto(f"{site.address}/pad?foot={foot}&head={head}")
        for width in (1100, 1180, 1300):
            page.set_viewport_size({"width": width, "height": 900})
            assert page.evaluate(CUT_OR_MET) == [], (head, width)
            assert max(page.evaluate(OFF_BALLOON)) <= 1, (head, width)


def test_what_was_typed_for_a_ring_is_kept_where_there_is_none(page: Page, site: Site) -> None:
    ring, kept = page.locator("#field-jack-ring_bore_mm"), page.locator("#group-unused")
    page.goto(site.sample("bell_ringers_wagon_plate_ring"))
    bore = ring.input_value()
    page.locator("#field-jack-located_by").select_option("")
    expect(kept).to_contain_text("Bore of the ring or recess")
    expect(page.locator("#step-jack #field-jack-ring_bore_mm")).to_have_count(0)
    assert f"ring_bore_mm={bore}" in page.url
    page.locator("#field-jack-located_by").select_option("recess")
    expect(kept).to_have_count(0)
    expect(ring).to_have_value(bore)


def test_without_scripts_the_choice_is_sent_with_the_form(still: Page, site: Site) -> None:
    still.goto(site.sample("mobile_library_van"))
    still.locator("#kinds > summary").click()
    still.locator(FOOT).select_option("plate")
    still.get_by_role("button", name="Work out the pad").click()
    expect(still.locator("#field-jack-plate_diameter_mm")).to_be_visible()
    assert "foot=plate" in still.url
    assert "cup_bore_mm" in still.url


def test_no_answer_about_jack_and_car_is_cut(page: Page, site: Site) -> None:
    """Oracle: the longest answer's own width, set in the choice's own type, and the room between the choice's edges."""
    page.goto(site.address + "/pad?foot=plate&head=cushion")
    for width in (390, 768, 1120, 1440):
        page.set_viewport_size({"width": width, "height": 900})
        cut = page.locator("#kinds select").evaluate_all(
            """all => all.flatMap(select => {
                 const pen = document.createElement('canvas').getContext('2d');
                 pen.font = getComputedStyle(select).font;
                 const room = select.clientWidth - 12 - 24;
                 return [...select.options].filter(o => pen.measureText(o.text).width > room).map(o => o.text);
               })"""
        )
        assert cut == [], width
