"""One link to the friend, readings back: the whole exchange between browsers that know nothing of each other."""

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import until_asked
from tests.browser.sharing.saved import FAILING, VAN, Links, link_on, save, save_address

pytestmark = pytest.mark.browser
expect.set_options(timeout=15_000)
HEIGHT = "#field-seam-height_mm"


def change_height(page: Page, owner_address: str, height: str) -> None:
    """From a saved design to its working sheet, another seam height there, and on to saving."""
    page.goto(owner_address)
    page.get_by_role("link", name="Change it on the working sheet").click()
    page.locator(HEIGHT).fill(height)
    until_asked(page, f"height_mm={height}")
    page.goto(page.url.replace("/pad?", "/save?"))


def test_the_whole_exchange_between_owner_and_friend(owner: Page, friend: Page, address: str) -> None:
    """Oracle: each sees on their own page what the other did on theirs, and revision A is the same at the end."""
    mine = save(owner, address)
    first = owner.request.get(f"{mine}.json").json()
    friend.goto(link_on(owner, "friend"))
    expect(friend.locator("#five tbody tr")).to_have_count(5)
    friend.get_by_role("link", name="Try with what I have").click()
    friend.get_by_label("Material").select_option("pa66")
    friend.get_by_role("button", name="Work it out again").click()
    expect(friend.locator("#came-of-it")).to_contain_text("nylon 66")
    friend.get_by_label("Words to go with it").fill("I have nylon here.")
    friend.get_by_label("Your name").fill("Ada")
    friend.get_by_role("button", name="Send it back as a proposal").click()
    expect(friend.locator("#proposals")).to_contain_text("I have nylon here.")
    friend.get_by_label("Remark", exact=True).fill("Starting on Monday.")
    friend.get_by_role("button", name="Add the remark").click()
    friend.get_by_role("link", name="Enter readings").click()
    friend.get_by_label("Web, as read").fill(str(first["pad"]["web_mm"]))
    friend.get_by_role("button", name="Judge and keep the readings").click()

    owner.reload()
    expect(owner.locator("#proposals")).to_contain_text("Ada")
    expect(owner.locator("#remarks")).to_contain_text("Starting on Monday.")
    expect(owner.locator("#readings")).to_contain_text("Read with a caliper")
    change_height(owner, mine, "22")
    expect(owner.locator("[data-from-here]")).to_contain_text("revision A")
    owner.get_by_label("Note").fill("Measured again")
    owner.get_by_role("button", name="Save", exact=True).click()
    owner.wait_for_url("**/B?said=saved")

    friend.reload()
    friend.get_by_role("link", name="A newer revision exists: B").click()
    expect(friend.locator("h1")).to_contain_text("revision B")
    friend.get_by_role("link", name="Compare with B").click()
    expect(friend.locator("main")).to_contain_text("20 mm")
    assert owner.request.get(f"{mine}.json").json() == first


def test_of_two_who_change_the_same_revision_the_second_sees_both_and_loses_nothing(
    owner: Page, late: Page, address: str
) -> None:
    mine = save(owner, address)
    change_height(owner, mine, "22")
    change_height(late, mine, "24")
    owner.get_by_role("button", name="Save", exact=True).click()
    owner.wait_for_url("**/B?said=saved")
    late.get_by_role("button", name="Save", exact=True).click()
    expect(late.locator("h1")).to_have_text("Somebody saved a newer revision in the meantime")
    row = late.locator("tr", has_text="height").first
    expect(row).to_contain_text("22 mm")
    expect(row).to_contain_text("24 mm")
    late.get_by_role("button", name="Save yours after it, as revision C").click()
    late.wait_for_url("**/C?said=saved")
    expect(late.locator("#revisions li")).to_have_count(3)


def test_this_browser_remembers_what_it_opened_and_another_does_not(owner: Page, third: Page, address: str) -> None:
    save(owner, address)
    owner.goto(address + "/mine")
    expect(owner.locator("[data-mine] li")).to_have_count(1)
    expect(owner.locator("[data-mine]")).to_contain_text("yours")
    third.goto(address + "/mine")
    expect(third.locator("[data-mine-empty]")).to_be_visible()
    owner.get_by_role("button", name="Take off this list").click()
    owner.reload()
    expect(owner.locator("[data-mine] li")).to_have_count(0)


def test_everything_leaves_as_one_file_and_another_browser_brings_it_in(
    owner: Page, third: Page, address: str, tmp_path: Path
) -> None:
    save(owner, address)
    owner.goto(address + "/mine")
    with owner.expect_download() as taken:
        owner.get_by_role("button", name="Take the file").click()
    taken.value.save_as(tmp_path / "designs.json")
    assert len(json.loads((tmp_path / "designs.json").read_text())["designs"]) == 1
    third.goto(address + "/mine")
    third.get_by_label("File of saved designs").set_input_files(tmp_path / "designs.json")
    third.get_by_role("button", name="Bring it in").click()
    third.locator("[data-brought]").click()
    expect(third.locator("h1")).to_contain_text("revision A")
    third.goto(address + "/mine")
    expect(third.locator("[data-mine]")).to_contain_text("yours")


def test_a_measurement_document_opens_on_the_working_sheet(
    third: Page, van: Links, address: str, tmp_path: Path
) -> None:
    (tmp_path / "m.json").write_bytes(third.request.get(f"{van.owner}.document.json").body())
    third.goto(address + "/mine")
    third.get_by_label("Measurement document").set_input_files(tmp_path / "m.json")
    third.get_by_role("button", name="Open it on the working sheet").click()
    expect(third.locator("#field-jack-cup_bore_mm")).to_have_value("68")


def test_a_file_that_is_too_large_is_answered_by_a_page_in_words(late: Page, address: str, tmp_path: Path) -> None:
    """The whole file is on its way before a browser reads the answer; a connection that is cut would show none."""
    (tmp_path / "large.json").write_bytes(b" " * 17_500_000)
    late.goto(address + "/mine")
    late.get_by_label("File of saved designs").set_input_files(tmp_path / "large.json")
    late.get_by_role("button", name="Bring it in").click()
    expect(late.locator("h1")).to_have_text("Too large")
    expect(late.locator(".lead")).to_contain_text("at most 16 MiB is taken here")


def test_without_scripts_one_saves_follows_with_a_revision_and_adds_a_remark(still: Page, address: str) -> None:
    """Oracle: no link is copied or pasted; the second revision is made by pages and buttons alone."""
    save(still, address)
    expect(still.get_by_role("button", name="Copy link")).to_have_count(0)
    still.get_by_role("link", name="Change it here").click()
    still.locator(HEIGHT).fill("22")
    still.get_by_role("button", name="Work it out again").click()
    expect(still.locator("#came-of-it")).to_contain_text("22 mm")
    still.get_by_label("Note").fill("Measured again")
    still.get_by_role("button", name="Save it as the next revision").click()
    still.wait_for_url("**/B?said=saved")
    expect(still.locator("h1")).to_contain_text("revision B")
    still.get_by_label("Remark", exact=True).fill("No script here.")
    still.get_by_role("button", name="Add the remark").click()
    expect(still.locator("#remarks")).to_contain_text("No script here.")
    still.goto(address + "/mine")
    expect(still.locator("noscript")).to_be_visible()


def test_the_link_is_copied_and_passed_on_by_the_devices_own_means(friend: Page, van: Links, address: str) -> None:
    """Oracle: the clipboard, and what the device's sharing was handed."""
    friend.context.grant_permissions(["clipboard-read", "clipboard-write"], origin=address)
    friend.add_init_script("navigator.share = async (what) => { window.shared = what; };")
    friend.goto(van.owner)
    friend.locator('[data-copy="link-friend"]').click()
    expect(friend.locator('[data-copy="link-friend"]')).to_have_text("Copied")
    assert friend.evaluate("navigator.clipboard.readText()") == van.friend
    friend.locator('[data-share="link-friend"]').click()
    assert friend.evaluate("window.shared.url") == van.friend
    expect(friend.locator('[data-share="link-owner"]')).to_have_count(0)


def test_enter_in_a_reading_goes_to_the_next_box_and_keeps_nothing(owner: Page, van: Links) -> None:
    owner.goto(van.owner)
    owner.get_by_role("link", name="Enter readings").click()
    boxes = owner.locator("form[data-step] input[type=text]")
    boxes.nth(0).fill("99")
    boxes.nth(0).press("Enter")
    expect(boxes.nth(1)).to_be_focused()
    expect(owner.locator("h1")).to_contain_text("Inspection sheet")


def test_the_model_of_a_pad_that_is_not_fit_asks_for_the_same_confirmation_here(
    owner: Page, friend: Page, address: str
) -> None:
    save(owner, address, FAILING)
    friend.goto(link_on(owner, "friend"))
    expect(friend.locator(".lead").first).to_contain_text("Do not make:")
    friend.get_by_role("button", name="Take STEP").click()
    assert friend.locator("[name=confirm]:invalid").count() == 1
    friend.get_by_label("I have seen that an estimate fails").check()
    with friend.expect_download() as taken:
        friend.get_by_role("button", name="Take STEP").click()
    assert re.fullmatch(r"lifting-pad-\w+-rev-a-NOT-FIT\.step", taken.value.suggested_filename)


def test_pressing_save_twice_saves_once(owner: Page, address: str) -> None:
    """Oracle: how many requests to save leave the browser."""
    sent: list[str] = []
    owner.on("request", lambda request: sent.append(request.url) if request.method == "POST" else None)
    owner.goto(save_address(address, VAN))
    owner.get_by_role("button", name="Save", exact=True).dblclick()
    owner.wait_for_url("**/A?said=saved")
    assert len(sent) == 1


def test_no_page_of_a_saved_design_asks_anybody_else(owner: Page, friend: Page, address: str) -> None:
    """Oracle: every request of both browsers through a whole visit."""
    asked: list[str] = []
    for page in (owner, friend):
        page.on("request", lambda request: asked.append(request.url))
    save(owner, address)
    friend.goto(link_on(owner, "friend"))
    friend.get_by_role("link", name="See every number").click()
    friend.wait_for_load_state("networkidle")
    assert len(asked) > 8
    assert {url for url in asked if not url.startswith(address)} == set()
