"""What is typed on a page of the shop and not sent goes along on the ways from it, or the browser asks before it is lost."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Dialog, Page, expect

from tests.browser.conftest import DESKTOP, window
from tests.browser.sharing.saved import Links, link_on, save

pytestmark = pytest.mark.browser
WEB = "Web, as read"


@pytest.fixture
def reader(browser: Browser) -> Iterator[Page]:
    yield from window(browser, DESKTOP)


@pytest.fixture
def view(owner: Page, address: str) -> str:
    """The address of a link to read."""
    save(owner, address)
    return link_on(owner, "view")


def test_readings_that_were_not_sent_come_back_after_a_look_at_the_card(friend: Page, van: Links) -> None:
    """Oracle: what was typed, in its boxes; the card's answers go along as well, and nothing is asked on the way."""
    friend.on("dialog", lambda asked: pytest.fail(f"asked: {asked.type}"))
    friend.goto(f"{van.friend}/readings?units=mm")
    friend.get_by_label(WEB).fill("18.5")
    friend.get_by_label("Your name").fill("Ada")
    friend.get_by_role("link", name="Route card").click()
    friend.get_by_text("The shop", exact=True).click()
    friend.get_by_label("Tools", exact=True).select_option("carbide")
    friend.get_by_role("link", name="Inspection sheet").click()
    expect(friend.get_by_label(WEB)).to_have_value("18.5")
    expect(friend.get_by_label("Your name")).to_have_value("Ada")
    friend.get_by_role("link", name="Route card").click()
    friend.get_by_text("The shop", exact=True).click()
    expect(friend.get_by_label("Tools", exact=True)).to_have_value("carbide")


def test_readings_that_were_not_sent_mean_the_same_in_inches(friend: Page, van: Links) -> None:
    """Oracle: the unit that the number was typed in stands behind it; one that was typed with its unit stays."""
    friend.goto(f"{van.friend}/readings?units=mm")
    friend.get_by_label(WEB).fill("18.5")
    friend.get_by_label("Seat diameter, as read").fill("2.645 in")
    friend.get_by_role("link", name="in", exact=True).click()
    expect(friend.get_by_label(WEB)).to_have_value("18.5 mm")
    expect(friend.get_by_label("Seat diameter, as read")).to_have_value("2.645 in")


def test_another_day_that_was_not_entered_waits_on_its_page(reader: Page, view: str) -> None:
    """Oracle: the boxes of the record, after a look at the revision's own page and at the card."""
    reader.goto(f"{view}/record")
    reader.get_by_label("Web", exact=False).first.fill("18.4")
    reader.get_by_role("link", name="Back to revision A").click()
    reader.get_by_role("link", name="Route card").click()
    reader.get_by_role("link", name="Go on with the readings of another day").click()
    expect(reader.get_by_text("Not entered yet.")).to_be_visible()
    expect(reader.get_by_label("Web", exact=False).first).to_have_value("18.4")


def test_before_what_was_typed_is_lost_the_browser_asks(reader: Page, view: str) -> None:
    """Oracle: a way that can take nothing along, with something typed and with nothing."""
    asked: list[str] = []

    def stay(dialog: Dialog) -> None:
        asked.append(dialog.type)
        dialog.dismiss()

    reader.on("dialog", stay)
    reader.goto(f"{view}/record")
    reader.get_by_role("link", name="Seamrest").click()
    expect(reader).not_to_have_url(f"{view}/record")
    assert asked == []
    reader.goto(f"{view}/record")
    reader.get_by_label("Web", exact=False).first.fill("18.4")
    reader.get_by_role("link", name="Seamrest").click()
    expect(reader.get_by_label("Web", exact=False).first).to_have_value("18.4")
    assert asked == ["beforeunload"]


def test_without_scripts_the_page_says_what_is_lost(still: Page, van: Links) -> None:
    still.goto(f"{van.friend}/readings")
    expect(still.get_by_text("what is typed and not sent is lost")).to_be_visible()


def test_what_was_changed_after_the_copy_was_worked_out_is_seen_before_it_is_saved(owner: Page, address: str) -> None:
    """Oracle: pressing the button that saves works the copy out again first, with the note; the next press saves it."""
    mine = save(owner, address)
    owner.goto(f"{mine}/change?seam.height_mm=22")
    owner.get_by_label("Note").fill("Measured again")
    owner.locator("#field-seam-height_mm").fill("23")
    owner.get_by_role("button", name="Save it as the next revision").click()
    expect(owner.get_by_text("Nothing is sent yet")).to_be_visible()
    expect(owner.get_by_label("Note")).to_have_value("Measured again")
    expect(owner.locator("#came-of-it")).to_contain_text("23 mm")
    owner.get_by_role("button", name="Save it as the next revision").click()
    owner.wait_for_url("**/B?said=saved")
    expect(owner.locator("main")).to_contain_text("Measured again")


def test_words_are_not_lost_when_the_copy_is_worked_out_again(friend: Page, van: Links) -> None:
    friend.goto(f"{van.friend}/try?make.material=pa66")
    friend.get_by_label("Words to go with it").fill("I have nylon.")
    friend.get_by_label("Your name").fill("Ada")
    friend.get_by_role("button", name="Work it out again").click()
    friend.wait_for_url("**words=**")
    expect(friend.get_by_label("Words to go with it")).to_have_value("I have nylon.")
    expect(friend.get_by_label("Your name")).to_have_value("Ada")
