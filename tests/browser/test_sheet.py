"""The working sheet as a person meets it."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Site, until_asked

pytestmark = pytest.mark.browser
BORE = "#field-jack-cup_bore_mm"
WIDTHS = (320, 390, 700, 1024, 1100, 1180, 1300, 1440, 1920, 2560)
BESIDE = (1100, 1180, 1249, 1250, 1399, 1400, 1440, 2560)
"""Widths at which the questions stand beside the picture."""
EVERY_KIND = (
    "mobile_library_van",
    "allotment_estate_inch_shop",
    "puppet_theatre_van_plate_edge",
    "bell_ringers_wagon_plate_ring",
    "brass_band_van_toothed_saddle",
    "seed_library_estate_teeth_only",
    "canoe_store_bored_ram",
    "lifeguard_station_pickup_round_plug",
    "pottery_studio_city_car_pocket",
    "village_bakery_van_rail_cushion",
    "repair_cafe_people_carrier",
    "rowing_club_trailer_car_no_pad",
)
"""A sample of every foot and every head, one whose estimates fail, and one that no pad fits."""


@pytest.mark.parametrize(
    "sample", ["mobile_library_van", "repair_cafe_people_carrier", "rowing_club_trailer_car_no_pad"]
)
def test_no_width_scrolls_sideways(page: Page, site: Site, sample: str) -> None:
    page.goto(site.sample(sample))
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 900})
        assert page.evaluate("document.documentElement.scrollWidth") <= width


@pytest.mark.parametrize("sample", EVERY_KIND)
def test_each_question_stands_beside_its_balloon_and_in_nothings_way(page: Page, site: Site, sample: str) -> None:
    """Oracle: boxes measured in the browser: the middles of balloon and box differ by no more than 1 px, no two boxes meet, no
    words are cut, and box and “how?” are as large as a finger needs."""
    page.goto(site.sample(sample))
    for width in BESIDE:
        page.set_viewport_size({"width": width, "height": 900})
        off = page.evaluate(OFF_BALLOON)
        assert len(off) >= 9
        assert max(off) <= 1, (width, off)
        assert page.evaluate(CUT_OR_MET) == [], width
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        sizes = page.locator(".stand .field input, .stand .how summary").evaluate_all(
            "all => all.map(e => e.getBoundingClientRect()).map(r => Math.min(r.width, r.height))"
        )
        assert min(sizes) >= 43.5, width


OFF_BALLOON = """() => [...document.querySelectorAll('.stand .field')].map(field => {
  const middle = e => { const r = e.getBoundingClientRect(); return r.top + r.height / 2; };
  const ring = document.querySelector(`#section-wide .balloon[data-field="${field.dataset.field}"] .balloon-ring`);
  return Math.abs(middle(field.querySelector('input')) - middle(ring)); })"""


def test_a_long_note_keeps_to_its_line_until_its_field_is_in_use(page: Page, site: Site) -> None:
    """Where the picture is small a note has one line; all of it stands below the box in use, and below the verdict."""
    page.set_viewport_size({"width": 1100, "height": 900})
    page.goto(site.address + "/pad?jack.cup_bore_mm=4")
    note = page.locator(f"{BORE}-note")
    is_cut = "e => e.scrollWidth > e.clientWidth + 1 || e.scrollHeight > e.clientHeight + 1"
    assert note.evaluate("e => e.getBoundingClientRect().height") <= 20
    assert note.evaluate(is_cut)
    page.locator(BORE).focus()
    assert not note.evaluate(is_cut)
    expect(page.locator(".outcome .problems")).to_contain_text("Cup bore 4 mm cannot be right (at least 20 mm)")


def test_between_phone_and_desktop_the_first_boxes_and_the_jobs_name_are_in_sight(page: Page, site: Site) -> None:
    """Oracle: on a tablet held upright each column's first box stands above the window's edge, and the name is whole."""
    for sample in ("mobile_library_van", "repair_cafe_people_carrier", "rowing_club_trailer_car_no_pad"):
        page.goto(site.sample(sample))
        for width, height in ((768, 1024), (1024, 1024)):
            page.set_viewport_size({"width": width, "height": height})
            for box in (page.locator(BORE), page.locator("#field-seam-thickness_mm")):
                place = box.bounding_box()
                assert place
                assert place["y"] + place["height"] <= height - 200, (sample, width)
            assert page.locator("#field-title").evaluate("e => e.scrollWidth <= e.clientWidth")
            expect(page.locator("#section-phone .trouble")).to_have_count(
                page.locator("#section-wide .trouble").count()
            )


def test_a_long_name_of_the_job_can_be_read_whole(page: Page, site: Site) -> None:
    """Oracle: what the name needs against what its box has, for the longest that is taken; a short one moves nothing."""
    name = "Mobile library van of the northern district, left front point, the second jack 2"
    assert len(name) == 80
    for width in (1100, 1250, 1440):
        page.set_viewport_size({"width": width, "height": 800})
        page.goto(site.sample("mobile_library_van"))
        assert page.locator(".head").evaluate("e => e.clientHeight") <= 61
        page.locator("#field-title").fill(name)
        until_asked(page, "the+second+jack+2")
        for _ in range(2):
            assert page.locator("#field-title").evaluate("e => e.scrollWidth <= e.clientWidth"), width
            assert page.evaluate("document.documentElement.scrollWidth") <= width
            page.reload()


def test_what_the_chosen_jack_has_no_use_for_is_not_asked(page: Page, site: Site) -> None:
    page.goto(site.sample("puppet_theatre_van_plate_edge"))
    for width in (1100, 390):
        page.set_viewport_size({"width": width, "height": 900})
        expect(page.locator("#field-jack-free_edge_mm")).to_be_visible()
        expect(page.locator("#field-jack-ring_bore_mm")).to_have_count(0)
        expect(page.locator("#step-jack")).to_contain_text("Not on this jack: 3 bore of the ring or recess")


def test_no_words_beside_the_picture_are_cut_or_overlap(page: Page, site: Site) -> None:
    """Oracle: boxes measured in the browser: what each text needs against what it has, and every two against each other."""
    wrong = "/pad?jack.cup_bore_mm=4&jack.cup_depth_mm=abc&seam.thickness_mm=12&seam.height_mm=20"
    unfit, no_pad = site.sample("repair_cafe_people_carrier"), site.sample("rowing_club_trailer_car_no_pad")
    for address in (site.address + wrong, unfit, no_pad, no_pad + "&units=in"):
        page.goto(address)
        for width in (1100, 1180, 1249, 1250, 1399, 1440):
            page.set_viewport_size({"width": width, "height": 900})
            assert page.evaluate(CUT_OR_MET) == [], (address, width)


CUT_OR_MET = """() => { const words = [...document.querySelectorAll('.stand .note, .stand .mark-words')];
  const oneLine = e => getComputedStyle(e).textOverflow === 'ellipsis';
  const cut = words.filter(e => e.scrollHeight > e.clientHeight + 1 || !oneLine(e) && e.scrollWidth > e.clientWidth + 1);
  const selector = '.stand .field, .stand .field .title, .stand .mark-words, .stand .side-heading, #section-wide .balloon-ring';
  const boxes = [...document.querySelectorAll(selector)].filter(e => e.checkVisibility());
  const meet = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1
    && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1;
  const met = boxes.filter((a, i) => boxes.slice(i + 1).some(
    b => !a.contains(b) && meet(a.getBoundingClientRect(), b.getBoundingClientRect())));
  return [...cut, ...met].map(e => e.textContent.trim().replace(/\\s+/g, ' ').slice(0, 60)); }"""


def test_what_is_tapped_is_large_enough(page: Page, site: Site) -> None:
    """Oracle: 44 px by 44 px for whatever can be hit outside of the picture, everything opened and fetched."""
    unfit = site.sample("repair_cafe_people_carrier")
    for address in (unfit, site.address + "/pad?jack.cup_bore_mm=4", site.address + "/"):
        page.goto(address)
        expect(page.locator("[data-slow]:not([data-live-has])")).to_have_count(0, timeout=20000)
        for width in (390, 1100, 1440):
            page.set_viewport_size({"width": width, "height": 900})
            assert page.evaluate(TOO_SMALL) == [], (address, width)


TOO_SMALL = """() => { document.querySelectorAll('details').forEach(d => { d.open = true; });
  return [...document.querySelectorAll('a[href], input[type=text], select, button, summary, label.tick')]
    .filter(e => e.offsetParent && !e.closest('svg') && !e.matches('.skip'))
    .map(e => [e.getBoundingClientRect(), e.textContent.trim().slice(0, 40)])
    .filter(([r]) => r.height < 43.5 || r.width < 43.5).map(([r, words]) => `${words} ${r.width} x ${r.height}`); }"""


def test_a_balloon_leads_to_its_field_and_the_field_lights_it(page: Page, site: Site) -> None:
    page.goto(site.sample("mobile_library_van"))
    balloon = page.locator('#section-wide .balloon[data-field="seam.height_mm"]')
    balloon.locator(".balloon-number").click()
    expect(page.locator("#field-seam-height_mm")).to_be_focused()
    expect(balloon).to_have_attribute("data-live-lit", "")
    expect(page.locator('#section-wide g[data-field="seam.height_mm"]')).to_be_visible()
    page.locator(BORE).focus()
    expect(balloon).not_to_have_attribute("data-live-lit", "")


def test_a_light_outlasts_an_update(page: Page, site: Site) -> None:
    page.goto(site.sample("mobile_library_van"))
    page.locator(BORE).fill("68.5")
    until_asked(page, "cup_bore_mm=68.5")
    expect(page.locator('#section-wide .balloon[data-field="jack.cup_bore_mm"]')).to_have_attribute("data-live-lit", "")


def test_a_phone_walks_through_the_groups_one_at_a_time(phone: Page, site: Site) -> None:
    phone.goto(site.address + "/pad")
    expect(phone.locator("#step-jack")).to_be_visible()
    expect(phone.locator("#step-car")).to_be_hidden()
    phone.get_by_role("link", name="Next: the car").click()
    expect(phone.locator("#step-car")).to_be_visible()
    expect(phone.locator("#step-jack")).to_be_hidden()
    for words in ("Next: the load", "Next: where it is used", "Next: how it is made"):
        phone.get_by_role("link", name=words).click()
    expect(phone.locator("#field-make-material")).to_be_visible()
    phone.locator("#step-make .back").click()
    expect(phone.locator("#field-service-wetness")).to_be_visible()


def test_a_phone_stays_in_its_group_while_the_sheet_is_updated(phone: Page, site: Site) -> None:
    phone.goto(site.address + "/pad")
    phone.get_by_role("link", name="Next: the car").click()
    phone.locator("#field-seam-height_mm").fill("20")
    until_asked(phone, "seam.height_mm=20")
    expect(phone.locator("#field-seam-height_mm")).to_be_visible()
    expect(phone.locator("#step-jack")).to_be_hidden()


def test_a_phones_verdict_stands_at_the_bottom_edge_except_while_typing(phone: Page, site: Site) -> None:
    phone.goto(site.sample("mobile_library_van"))
    bar = phone.locator(".foot-verdict")
    expect(bar).to_be_in_viewport()
    phone.locator(BORE).focus()
    expect(bar).to_be_hidden()
    phone.locator(BORE).blur()
    bar.get_by_role("link").click()
    expect(phone.locator("#outcome .verdict")).to_be_in_viewport()


def test_a_missing_measurement_links_to_its_field_even_in_another_group(phone: Page, site: Site) -> None:
    phone.goto(site.address + "/pad?jack.cup_bore_mm=68")
    phone.locator(".missing").get_by_role("link", name="Seam height").click()
    expect(phone.locator("#field-seam-height_mm")).to_be_focused()


def test_the_model_of_a_failed_pad_asks_for_one_confirmation(page: Page, site: Site) -> None:
    """Oracle: the file that arrives says NOT-FIT in its name."""
    page.goto(site.sample("repair_cafe_people_carrier"))
    take = page.get_by_role("button", name="Take STL")
    take.click()
    assert page.evaluate("document.querySelector('.tick input').matches(':invalid')")
    page.get_by_label("I have seen that an estimate fails").check()
    with page.expect_download() as download:
        take.click()
    assert "NOT-FIT" in download.value.suggested_filename


def test_the_drawing_is_on_the_page(page: Page, site: Site) -> None:
    """Oracle: the picture has loaded with a size of its own."""
    page.goto(site.sample("mobile_library_van"))
    picture = page.locator("#the-drawing img")
    picture.scroll_into_view_if_needed()
    expect(picture).to_have_js_property("complete", True, timeout=30_000)
    assert picture.evaluate("image => image.naturalWidth") > 300


@pytest.mark.parametrize("width", [1100, 1180, 1440])
def test_updates_move_nothing(page: Page, site: Site, width: int) -> None:
    """Oracle: Chromium's own measure of layout shift while a cup is typed digit by digit stays at its least sign."""
    page.set_viewport_size({"width": width, "height": 900})
    page.goto(site.sample("mobile_library_van"))
    page.evaluate(
        """() => { window.shift = 0; new PerformanceObserver(list => list.getEntries().forEach(e => { window.shift += e.value; }))
             .observe({type: 'layout-shift', buffered: false}); }"""
    )
    for text in ("68.5", "69", "70.25"):
        page.locator(BORE).fill(text)
        until_asked(page, f"cup_bore_mm={text}")
    page.wait_for_timeout(200)
    assert page.evaluate("window.shift") < 0.02


def test_the_keyboard_reaches_every_measurement_in_order(page: Page, site: Site) -> None:
    """Oracle: tabbing through the sheet meets the fields of the jack, then those of the car, each once."""
    page.goto(site.address + "/pad")
    page.locator("#field-title").focus()
    met: list[str] = []
    for _ in range(80):
        page.keyboard.press("Tab")
        name = page.evaluate("document.activeElement.name || ''")
        if name and name not in met:
            met.append(name)
        if name == "car.gross_mass_kg":
            break
    assert met[:3] == ["jack.cup_bore_mm", "jack.cup_depth_mm", "jack.cup_corner_radius_mm"]
    assert met.index("jack.rated_load_kg") < met.index("seam.thickness_mm") < met.index("car.gross_mass_kg")


@pytest.mark.parametrize("width", [1100, 1440])
def test_the_verdict_at_the_edge_never_hides_the_field_in_use(page: Page, site: Site, width: int) -> None:
    """Oracle: what lies at the middle of each focused box is the box itself (WCAG 2.2, 2.4.11)."""
    page.set_viewport_size({"width": width, "height": 720})
    page.goto(site.sample("mobile_library_van"))
    page.locator("#field-title").focus()
    for _ in range(60):
        page.keyboard.press("Tab")
        hidden = page.evaluate(
            """() => { const e = document.activeElement; if (!e.matches('input[type=text]')) return '';
                 const r = e.getBoundingClientRect();
                 return document.elementFromPoint(r.left + r.width / 2, r.top + r.height / 2) === e ? '' : e.name; }"""
        )
        assert hidden == ""


def test_a_printed_sheet_has_no_bars_and_buttons(page: Page, site: Site) -> None:
    page.goto(site.sample("mobile_library_van"))
    page.emulate_media(media="print")
    expect(page.locator(".units")).to_be_hidden()
    expect(page.locator("#web_mm .deed button")).to_be_hidden()
    expect(page.locator("#web_mm")).to_contain_text("19")
    in_sight = "all => all.filter(a => a.checkVisibility() && !a.closest('svg') && !a.querySelector('img')).map(a => a.textContent)"
    expect(page.locator("[data-slow]:not([data-live-has])")).to_have_count(0, timeout=20_000)
    assert page.locator("main a").evaluate_all(in_sight) == []
