"""Nothing that is typed is lost, whatever the server does meanwhile."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Site, until_asked

pytestmark = pytest.mark.browser
BORE, DEPTH = "#field-jack-cup_bore_mm", "#field-jack-cup_depth_mm"


@pytest.mark.parametrize("delay_s", [0.6, 1.2], ids=["lands between two keystrokes", "is overtaken"])
def test_a_slow_answer_eats_no_keystroke(page: Page, site: Site, delay_s: float) -> None:
    """Oracle: the text in the box is what was typed, and the place of the cursor its end."""
    page.goto(site.address + "/pad")
    site.lane.delays[:] = [delay_s, 0.0]
    page.locator(BORE).press_sequentially("12", delay=20)
    page.wait_for_timeout(700)
    page.locator(BORE).press_sequentially(".5", delay=20)
    page.wait_for_timeout(1500)
    expect(page.locator(BORE)).to_have_value("12.5")
    expect(page.locator(BORE)).to_be_focused()
    assert page.locator(BORE).evaluate("box => box.selectionStart") == 4


def test_a_field_that_was_left_keeps_its_text_when_an_older_answer_arrives(page: Page, site: Site) -> None:
    """Oracle: both boxes hold what was typed, though the first answer was computed before the last keystrokes."""
    page.goto(site.address + "/pad")
    # The answer to "6" arrives after "68" was typed and before the sheet asks again.
    site.lane.delays[:] = [0.45, 0.0]
    page.locator(BORE).press_sequentially("6", delay=20)
    page.wait_for_timeout(500)
    page.locator(BORE).press_sequentially("8", delay=20)
    page.locator(DEPTH).focus()
    page.wait_for_timeout(1600)
    expect(page.locator(BORE)).to_have_value("68")
    expect(page.locator(DEPTH)).to_be_focused()
    assert "jack.cup_bore_mm=68" in page.url


def test_answers_out_of_order_leave_the_last_word_to_the_last_keystroke(page: Page, site: Site) -> None:
    """Oracle: the address and the note belong to the later text; the earlier answer takes longer and comes last."""
    page.goto(site.address + "/pad")
    site.lane.delays[:] = [1.5, 0.0]
    page.locator(BORE).press_sequentially("2 i", delay=20)
    page.wait_for_timeout(500)
    page.locator(BORE).press_sequentially("n", delay=20)
    page.wait_for_timeout(2000)
    expect(page.locator(BORE + "-note")).to_contain_text("2 in = 50.80 mm")
    assert "jack.cup_bore_mm=2+in" in page.url


def test_typing_the_last_measurement_brings_the_pad_without_a_reload(page: Page, site: Site) -> None:
    """Oracle: a mark set on the window is still there when the verdict appears."""
    page.goto(site.sample("mobile_library_van"))
    page.evaluate("window.mark = 1")
    page.locator(DEPTH).fill("")
    expect(page.locator("#outcome .verdict")).to_contain_text("still to be taken")
    page.locator(DEPTH).fill("12")
    expect(page.locator("#outcome .verdict")).to_contain_text("estimates pass")
    assert page.evaluate("window.mark") == 1


def test_back_undoes_an_answer_and_forward_brings_it_again(page: Page, site: Site) -> None:
    page.goto(site.address + "/pad")
    page.locator(BORE).press_sequentially("68", delay=20)
    until_asked(page, "/pad?jack.cup_bore_mm=68")
    page.locator(DEPTH).press_sequentially("12", delay=20)
    until_asked(page, "cup_depth_mm=12")
    page.go_back()
    expect(page.locator(DEPTH)).to_have_value("")
    expect(page.locator(BORE)).to_have_value("68")
    page.go_forward()
    expect(page.locator(DEPTH)).to_have_value("12")


def test_an_opened_explanation_stays_open_while_one_types(page: Page, site: Site) -> None:
    page.goto(site.sample("mobile_library_van"))
    page.locator("#web_mm summary").first.click()
    page.locator(DEPTH).fill("12.5")
    until_asked(page, "cup_depth_mm=12.5")
    expect(page.locator("#web_mm details").first).to_have_attribute("open", "")


def test_the_outcome_is_announced_once_it_has_settled(page: Page, site: Site) -> None:
    """Oracle: the live region is empty on arrival and holds the verdict's own words after a change."""
    page.goto(site.sample("mobile_library_van"))
    expect(page.locator("#announcement")).to_be_empty()
    page.locator(DEPTH).fill("")
    expect(page.locator("#announcement")).to_have_text("One measurement is still to be taken.")
    assert page.locator("[role=status], [aria-live]:not([role=alert])").count() == 1


def test_fixing_a_size_keeps_what_is_still_being_typed(page: Page, site: Site) -> None:
    """Oracle: the address holds the fixed size and the text typed a moment before."""
    page.goto(site.sample("mobile_library_van"))
    page.locator("#field-title").fill("Another van")
    page.locator("#web_mm .deed button").click()
    expect(page.locator("#web_mm")).to_contain_text("because you fixed it")
    assert "fixed.web_mm=19+mm" in page.url
    assert "title=Another+van" in page.url
    page.locator("#web_mm .deed a").click()
    expect(page.locator("#web_mm .deed button")).to_be_visible()
    assert "fixed" not in page.url


def test_a_server_that_fails_takes_nothing_away(page: Page, site: Site) -> None:
    """Oracle: the sheet and its text stay; the page says that there was no answer, until there is one."""
    page.goto(site.sample("mobile_library_van"))
    page.route("**/pad?*", lambda route: route.fulfill(status=503, content_type="application/problem+json", body="{}"))
    page.locator(DEPTH).fill("13")
    expect(page.get_by_role("alert")).to_contain_text("What you typed is kept")
    expect(page.locator(DEPTH)).to_have_value("13")
    expect(page.locator("#the-pad")).to_be_attached()
    page.unroute("**/pad?*")
    page.locator(DEPTH).fill("12.5")
    expect(page.get_by_role("alert")).to_be_hidden()
    until_asked(page, "cup_depth_mm=12.5")
