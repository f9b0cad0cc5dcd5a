"""What a fresh owner of a car met on a phone, from the first size of one's own to the way back."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Site, until_asked

pytestmark = pytest.mark.browser
WEB = "#web_mm"


def test_inches_can_be_typed_on_a_phones_keyboard(phone: Page, site: Site) -> None:
    """A keyboard of digits alone has no slash, no mark of inches and no space."""
    box = phone.locator("#field-jack-cup_bore_mm")
    phone.goto(site.address + "/pad?units=in")
    expect(box).to_have_attribute("inputmode", "text")
    phone.goto(site.address + "/pad")
    expect(box).to_have_attribute("inputmode", "decimal")


def test_a_size_of_ones_own_is_typed_where_the_size_stands(phone: Page, site: Site) -> None:
    phone.goto(site.sample("mobile_library_van"))
    phone.locator(f"{WEB} .own-size summary").click()
    phone.locator("#own-web_mm").fill("24")
    phone.locator("#own-web_mm").press("Enter")
    until_asked(phone, "fixed.web_mm=24")
    expect(phone.locator(f"{WEB} .size strong")).to_have_text("24")


def test_a_size_of_ones_own_shares_a_line_with_fix(phone: Page, site: Site) -> None:
    """Oracle: boxes measured in the browser: one level for both, neither over the size or its name, each large enough."""
    phone.goto(site.sample("mobile_library_van"))
    phone.get_by_text("more sizes").click()
    for width in (320, 360, 390):
        phone.set_viewport_size({"width": width, "height": 844})
        for row in phone.locator(".dimension:has(.own-size)").all():
            change, fix = row.locator(".own-size summary").bounding_box(), row.locator(".deed button").bounding_box()
            assert change
            assert fix
            assert abs(change["y"] + change["height"] / 2 - fix["y"] - fix["height"] / 2) <= 2
            assert change["x"] + change["width"] <= fix["x"] + 1
            assert min(change["width"], change["height"], fix["width"], fix["height"]) >= 43.5
            size = row.locator(".size").evaluate(
                "e => { const r = document.createRange(); r.selectNodeContents(e);"
                " const b = r.getBoundingClientRect(); return [b.right, b.bottom]; }"
            )
            assert size[0] <= change["x"] or size[1] <= change["y"] + 1, width


def test_the_verdict_at_the_bottom_edge_is_never_cut(phone: Page, site: Site) -> None:
    """Oracle: what its words need against what they have, and that it leaves a phone most of its height."""
    for sample in ("mobile_library_van", "repair_cafe_people_carrier", "rowing_club_trailer_car_no_pad"):
        phone.goto(site.sample(sample))
        for width in (320, 390):
            phone.set_viewport_size({"width": width, "height": 640})
            words = phone.locator(".foot-verdict span").first
            assert words.evaluate("e => e.scrollHeight <= e.clientHeight + 1 && e.scrollWidth <= e.clientWidth + 1"), (
                width
            )
            assert phone.locator(".foot-verdict").evaluate("e => e.getBoundingClientRect().height") <= 100


def test_the_way_to_the_files_opens_them(phone: Page, site: Site) -> None:
    phone.goto(site.sample("mobile_library_van"))
    drawing = phone.locator("#files").get_by_role("link", name="PDF")
    expect(drawing).to_be_hidden()
    phone.locator(".outcome-ways").get_by_role("link", name="Files").click()
    expect(drawing).to_be_visible()
    phone.locator("#field-jack-cup_depth_mm").fill("12.5")
    until_asked(phone, "cup_depth_mm=12.5")
    expect(drawing).to_be_visible()


def test_a_long_reason_is_one_tap_away(phone: Page, site: Site) -> None:
    phone.goto(site.sample("mobile_library_van"))
    reason = phone.locator("#seat_length_mm .why-words")
    is_cut = "e => e.scrollHeight > e.clientHeight + 1"
    assert reason.evaluate(is_cut)
    reason.click()
    assert not reason.evaluate(is_cut)


def test_fixing_and_letting_go_keep_the_place(phone: Page, site: Site) -> None:
    """Oracle: the page is not loaded anew, and the size moves by less than its own line's height in the window."""
    phone.goto(site.sample("mobile_library_van"))
    phone.evaluate("window.isSame = true")
    phone.locator(f"{WEB} .deed button").click()
    until_asked(phone, "fixed.web_mm=19+mm")
    let_go = phone.locator(f"{WEB} .deed a")
    let_go.scroll_into_view_if_needed()
    before = let_go.bounding_box()
    let_go.click()
    expect(phone).not_to_have_url(re.compile("fixed"))
    after = phone.locator(f"{WEB} .deed").bounding_box()
    assert before
    assert after
    assert abs(before["y"] - after["y"]) < 100
    assert phone.evaluate("window.isSame")


def test_what_was_fixed_stands_at_the_verdict_and_is_let_go_there(phone: Page, site: Site) -> None:
    phone.goto(site.sample("mobile_library_van") + "&fixed.web_mm=24&fixed.slot_width_mm=6")
    fixed = phone.locator(".fixed-by-you")
    expect(fixed).to_contain_text("24")
    fixed.get_by_role("link", name="Let all go").click()
    expect(phone).not_to_have_url(re.compile("fixed"))
    expect(fixed).to_have_count(0)


def test_an_offer_keeps_the_place_and_shows_in_the_address(phone: Page, site: Site) -> None:
    phone.goto(site.sample("repair_cafe_people_carrier"))
    phone.evaluate("window.isSame = true")
    offer = phone.locator(".remedies a").first
    expect(offer).to_be_visible(timeout=20000)
    before = phone.url
    offer.click()
    expect(phone).not_to_have_url(before)
    assert phone.evaluate("window.isSame")
    assert phone.evaluate("window.scrollY") > 100


def test_going_back_shows_the_box_that_is_empty_again(phone: Page, site: Site) -> None:
    whole = site.sample("mobile_library_van")
    phone.goto(whole)
    mass = phone.locator("#field-car-gross_mass_kg")
    phone.goto(whole.replace("car.gross_mass_kg=", "title="))
    phone.get_by_role("link", name="Next: the car").click()
    mass.fill("1600")
    until_asked(phone, "car.gross_mass_kg=1600")
    mass.blur()
    phone.locator("#step-car .walk .next").click()
    expect(mass).to_be_hidden()
    phone.go_back()
    expect(mass).to_be_visible()


def test_the_verdict_leads_to_drawing_saving_and_files(phone: Page, site: Site) -> None:
    phone.goto(site.sample("mobile_library_van"))
    ways = phone.locator(".outcome-ways a")
    assert [a.split("?")[0] for a in ways.evaluate_all("all => all.map(a => a.getAttribute('href'))")] == [
        "#the-pad", "/pad/drawing", "/save", "#files",
    ]  # fmt: skip
    expect(phone.locator("#step-jack .enough")).to_have_text("Enough: see the pad")


def test_inch_steps_are_offered_to_one_who_reads_inches(phone: Page, site: Site) -> None:
    phone.goto(site.sample("mobile_library_van"))
    offer = phone.get_by_role("link", name="Size it in inch steps")
    expect(offer).to_have_count(0)
    phone.locator("#units").get_by_role("link", name="in").click()
    offer.click()
    until_asked(phone, "make.step=inch")
    expect(offer).to_have_count(0)


def test_on_a_phone_the_drawing_comes_before_the_buttons_that_move_it(phone: Page, site: Site) -> None:
    phone.goto(site.sample("mobile_library_van").replace("/pad?", "/pad/drawing?"))
    stage, buttons = phone.locator("#sheet-stage").bounding_box(), phone.locator("#looking").bounding_box()
    back = phone.get_by_role("link", name="Back to the working sheet").bounding_box()
    assert stage
    assert buttons
    assert back
    assert stage["y"] + stage["height"] <= buttons["y"]
    assert back["height"] >= 44


def test_what_takes_room_is_folded_on_a_phone_until_it_is_asked_for(phone: Page, site: Site) -> None:
    """Oracle: the page's height with tables and curve folded and opened; what was opened stays open while one types."""
    phone.goto(site.sample("mobile_library_van"))
    table = phone.locator("#other-materials")
    expect(table.get_by_text("Each material with its outcome")).to_be_visible(timeout=20_000)
    expect(table.locator("table")).to_be_hidden()
    folded = phone.evaluate("document.body.scrollHeight")
    assert folded < 8500
    expect(phone.locator("#the-load").get_by_text("What the pad is judged for")).to_be_visible()
    expect(phone.locator("#the-load").get_by_text("Push from the side")).to_be_hidden()
    table.get_by_text("Each material with its outcome").click()
    expect(table.locator("table")).to_be_visible()
    assert phone.evaluate("document.body.scrollHeight") > folded + 1000
    before = phone.locator("#beside").get_attribute("data-live-has") or ""
    phone.locator("#field-jack-cup_depth_mm").fill("12.5")
    expect(phone.locator("#beside")).not_to_have_attribute("data-live-has", before, timeout=20_000)
    expect(table.locator("table")).to_be_visible()


def test_on_a_phone_what_is_wrong_is_never_folded(phone: Page, site: Site) -> None:
    """Oracle: verdict, each failed check, what is advised and every caution can be seen with nothing opened, at 320 px too."""
    phone.goto(site.sample("repair_cafe_people_carrier"))
    for width in (390, 320):
        phone.set_viewport_size({"width": width, "height": 700})
        expect(phone.locator("#outcome .verdict")).to_contain_text("Do not make")
        for seen in ("#estimates .check.is-fail h4", "#estimates .check.is-advice h4", "#cautions li"):
            assert phone.locator(seen).count() > 0
            assert all(piece.is_visible() for piece in phone.locator(seen).all()), seen
        assert phone.evaluate("document.documentElement.scrollWidth") <= width


def test_see_the_pad_leads_from_the_bottom_edge_to_the_outcome_and_on_to_the_sizes(phone: Page, site: Site) -> None:
    phone.goto(site.sample("mobile_library_van"))
    expect(phone.locator("#the-pad h2")).not_to_be_in_viewport()
    phone.locator(".foot-verdict").get_by_text("See the pad").click()
    expect(phone.locator("#outcome .verdict")).to_be_in_viewport()
    phone.locator(".outcome-ways").get_by_role("link", name="The pad's sizes").click()
    expect(phone.locator("#the-pad h2")).to_be_in_viewport()


def test_the_sheet_leads_to_another_way_of_doing_the_job(phone: Page, site: Site) -> None:
    phone.goto(site.sample("mobile_library_van"))
    phone.locator("#another-way a").click(timeout=20_000)
    expect(phone.locator("#changes")).to_be_visible()
    assert "/pad/two?" in phone.url


def test_a_failing_pads_sheet_folds_what_repeats_and_opens_it_on_a_tap(phone: Page, site: Site) -> None:
    """Oracle: the page's height was 11 469 px with all of it; the sizes that decide, by name, stay in sight."""
    phone.goto(site.sample("repair_cafe_people_carrier"))
    helps = phone.locator("#help .trouble-words")
    expect(helps.first).to_be_visible(timeout=20_000)
    assert phone.evaluate("document.body.scrollHeight") < 9700
    for name in ("seat_diameter_mm", "seat_length_mm", "slot_width_mm", "slot_depth_mm", "web_mm"):
        expect(phone.locator(f"#{name}")).to_be_visible()
    further = phone.locator("#seat_corner_radius_mm")
    expect(further).to_be_hidden()
    phone.get_by_text("7 more sizes").click()
    expect(further).to_be_visible()
    expect(helps.first.locator("li").nth(1)).to_be_hidden()
    helps.first.get_by_text("more changes").click()
    expect(helps.first.locator("li").nth(1)).to_be_visible()
    expect(phone.locator("#the-drawing img")).to_be_hidden()
    phone.locator(".outcome-ways").get_by_role("link", name="The pad's sizes").click()
    phone.locator("#field-jack-cup_depth_mm").fill("10.5")
    until_asked(phone, "cup_depth_mm=10.5")
    expect(further).to_be_visible()


def test_a_size_that_is_fixed_or_not_met_is_never_folded(phone: Page, site: Site) -> None:
    """Oracle: the slot's floor radius follows from others and is folded; fixed at what breaks a bound it says so in sight."""
    phone.goto(site.sample("mobile_library_van"))
    expect(phone.locator("#edge_chamfer_mm")).to_be_hidden()
    phone.goto(site.sample("mobile_library_van") + "&fixed.edge_chamfer_mm=2&fixed.body_diameter_mm=80")
    expect(phone.locator("#edge_chamfer_mm")).to_be_visible()
    expect(phone.locator("#body_diameter_mm .dimension-note").first).to_be_visible()


def test_what_a_phone_folds_stands_open_on_a_wide_page_and_in_its_order(page: Page, site: Site) -> None:
    """Oracle: the sizes in the order of the pad's ledger, from the foot up."""
    page.goto(site.sample("repair_cafe_people_carrier"))
    sizes = page.locator(".dimensions > .dimension")
    names = [sizes.nth(n).get_attribute("id") for n in range(3)]
    assert names == ["seat_diameter_mm", "seat_length_mm", "seat_corner_radius_mm"]
    assert all(size.is_visible() for size in sizes.all())
    expect(page.get_by_text("7 more sizes")).to_be_hidden()
    expect(page.locator("#the-drawing img")).to_be_visible()
