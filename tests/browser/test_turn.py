"""The pad in the hand, in a real browser that draws it by software."""

from collections.abc import Callable, Iterator
from functools import partial
from io import BytesIO

import numpy as np
import pytest
from numpy.typing import NDArray
from PIL import Image
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import CHROMIUM, DESKTOP, FLAGS, PHONE, Site, window
from tests.browser.test_access import RULES, findings

pytestmark = pytest.mark.browser
BY_SOFTWARE = ["--use-angle=swiftshader", "--enable-unsafe-swiftshader"]
Pixels = NDArray[np.uint8]
CANVAS, SAID = ".turn-canvas", ".turn-said"


@pytest.fixture(scope="module")
def drawing_browser(browser: Browser) -> Iterator[Browser]:
    """A Chromium that has WebGL without a graphics card."""
    flags = [flag for flag in FLAGS if flag != "--disable-gpu"]
    opened = browser.browser_type.launch(executable_path=CHROMIUM, args=[*flags, *BY_SOFTWARE])
    yield opened
    opened.close()


@pytest.fixture
def page(drawing_browser: Browser) -> Iterator[Page]:
    yield from window(drawing_browser, DESKTOP)


@pytest.fixture
def phone(drawing_browser: Browser) -> Iterator[Page]:
    yield from window(drawing_browser, PHONE)


@pytest.fixture
def dark(drawing_browser: Browser) -> Iterator[Page]:
    yield from window(drawing_browser, DESKTOP, dark=True)


@pytest.fixture
def without_webgl(browser: Browser) -> Iterator[Page]:
    yield from window(browser, DESKTOP)


@pytest.fixture
def without_scripts(browser: Browser) -> Iterator[Page]:
    yield from window(browser, DESKTOP, scripts=False)


@pytest.fixture(scope="module")
def taken(drawing_browser: Browser, site: Site) -> Iterator[Page]:
    """The van's pad, taken in the hand once for all tests that only turn and cut it."""
    for opened in window(drawing_browser, DESKTOP):
        take(opened, site)
        yield opened


@pytest.fixture
def held(taken: Page) -> Page:
    """The same, as it lay first, alone and whole."""
    taken.uncheck("[name=turn-others]")
    said_after(taken, lambda: taken.click("[data-deed=first]"))
    expect(taken.locator(SAID)).to_have_text("Seen from the front right, 35° from above. Not cut.")
    return taken


def said_after(page: Page, deed: Callable[[], None]) -> str:
    """Do something to the pad, and wait until what is seen is told; it is told after it was drawn."""
    page.evaluate(f"document.querySelector('{SAID}').textContent = ''")
    deed()
    expect(page.locator(SAID)).to_contain_text("Seen from")
    return page.inner_text(SAID)


def turn_address(site: Site, sample: str = "mobile_library_van") -> str:
    return site.sample(sample).replace("/pad?", "/pad/turn?")


def take(page: Page, site: Site, sample: str = "mobile_library_van") -> None:
    """Open the page and take the pad in the hand."""
    page.goto(turn_address(site, sample))
    begin(page)


def begin(page: Page) -> None:
    """Take the pad of the page that is open."""
    page.click("[data-turn-begin]")
    expect(page.locator(SAID)).to_contain_text("Seen from", timeout=30_000)


def picture(page: Page) -> Pixels:
    """What the canvas shows: rows of red, green and blue."""
    shown = Image.open(BytesIO(page.locator(CANVAS).screenshot())).convert("RGB")
    return np.asarray(shown, dtype=np.uint8)


def colours(shown: Pixels) -> dict[tuple[int, ...], float]:
    """The share of each colour, coarse enough that shades of one face fall together."""
    found, counts = np.unique((shown // 32).reshape(-1, 3), axis=0, return_counts=True)
    pairs = zip(found, counts, strict=True)
    return {tuple(int(part) for part in colour): float(count) / counts.sum() for colour, count in pairs}


def drawn(shown: Pixels) -> NDArray[np.bool_]:
    """Which pixels are anything but the paper, whose colour is that of the corner; without the line below the canvas."""
    away = np.abs(shown[:-3].astype(int) - shown[2, 2].astype(int))
    return np.asarray(away.max(axis=2) > 16)


def drawn_share(shown: Pixels) -> float:
    return float(drawn(shown).mean())


def test_the_picture_is_there_before_and_without_any_script(without_scripts: Page, site: Site) -> None:
    without_scripts.goto(turn_address(site))
    box = without_scripts.locator(".turn-picture svg").bounding_box()
    assert box
    assert box["width"] > 300
    expect(without_scripts.locator(".turn-words")).to_contain_text("runs through the whole body")


def test_a_tap_puts_the_model_in_place_of_the_picture(page: Page, site: Site) -> None:
    """A tenth of the canvas at least is pad, and the paper is still seen around it."""
    take(page, site)
    assert 0.1 < drawn_share(picture(page)) < 0.9
    expect(page.locator(".turn-picture")).to_be_hidden()


def test_the_model_looks_like_the_picture(page: Page, site: Site) -> None:
    """Both are seen from the same side: the pad's outline is as wide for its height, within the eye's perspective."""
    page.goto(turn_address(site))
    box = page.locator(".turn-picture svg").bounding_box()
    assert box
    begin(page)
    rows, columns = np.nonzero(drawn(picture(page)))
    wide, high = np.ptp(columns), np.ptp(rows)
    assert wide / high == pytest.approx(box["width"] / box["height"], rel=0.1)


@pytest.mark.parametrize(
    ("button", "key"),
    [
        ("left", "ArrowLeft"),
        ("right", "ArrowRight"),
        ("towards", "ArrowDown"),
        ("away", "ArrowUp"),
        ("nearer", "+"),
        ("further", "-"),
        ("cut", "c"),
    ],
)
def test_every_button_changes_what_is_seen_and_its_key_does_the_same(held: Page, button: str, key: str) -> None:
    before = picture(held)
    said = said_after(held, lambda: held.click(f"[data-deed={button}]"))
    by_button = picture(held)
    held.click("[data-deed=first]")
    held.focus(CANVAS)
    # With the focus, the canvas wears an outline: the words tell whether the same was done.
    assert said_after(held, lambda: held.keyboard.press(key)) == said
    assert not np.array_equal(by_button, before)


def test_dragging_turns_it(held: Page) -> None:
    box = held.locator(CANVAS).bounding_box()
    assert box
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    held.mouse.move(x, y)
    held.mouse.down()
    held.mouse.move(x + 90, y - 40, steps=3)
    held.mouse.up()
    expect(held.locator(SAID)).to_have_text("Seen from the front, 15° from above. Not cut.")


def test_the_cut_follows_the_slider(held: Page) -> None:
    """The more is taken away, the less is left to see; nothing is left at the end."""
    shares = [drawn_share(picture(held))]
    slider = held.locator("[name=turn-share]")
    for percent in ("60", "85", "100"):
        said_after(held, partial(slider.fill, percent))
        shares.append(drawn_share(picture(held)))
    assert shares == sorted(shares, reverse=True)
    assert shares[0] > 1.3 * shares[2]
    assert shares[-1] < 0.01


def test_in_its_place_cup_and_car_come_in_and_show_hatching_where_they_are_cut(held: Page) -> None:
    """The car's sheet has a colour of its own, of which there is none before."""
    alone = colours(picture(held))
    held.check("[name=turn-others]")
    said_after(held, lambda: held.click("[data-deed=cut]"))
    together = colours(picture(held))
    new = {colour: share for colour, share in together.items() if share > 0.002 and alone.get(colour, 0) < 0.0005}
    assert any(blue > red for red, _, blue in new), new
    assert len(new) >= 2


def test_the_dark_page_has_a_dark_stage(dark: Page, site: Site) -> None:
    take(dark, site)
    image = picture(dark)
    assert image[2, 2].max() < 60
    assert drawn_share(image) > 0.1


def test_on_a_phone_nothing_runs_over_and_everything_can_be_tapped(phone: Page, site: Site) -> None:
    take(phone, site, "repair_cafe_people_carrier")
    assert phone.evaluate("document.documentElement.scrollWidth") <= PHONE[0]
    assert drawn_share(picture(phone)) > 0.1
    small = phone.evaluate(
        """() => [...document.querySelectorAll('.turn button, .turn label')].map(e => e.getBoundingClientRect())
             .filter(r => r.height < 43.5).length"""
    )
    assert small == 0


def test_a_pad_that_is_not_fit_is_marked_beside_its_model(page: Page, site: Site) -> None:
    take(page, site, "repair_cafe_people_carrier")
    expect(page.locator(".turn-unfit")).to_contain_text("not fit to make")
    assert drawn_share(picture(page)) > 0.1


def test_put_down_the_picture_is_back(page: Page, site: Site) -> None:
    take(page, site)
    page.click("[data-deed=down-with-it]")
    expect(page.locator(".turn-picture svg")).to_be_visible()
    expect(page.locator("[data-turn-begin]")).to_be_focused()
    assert page.locator(CANVAS).count() == 0


def test_a_browser_without_webgl_says_so_and_keeps_the_picture(without_webgl: Page, site: Site) -> None:
    without_webgl.add_init_script("HTMLCanvasElement.prototype.getContext = () => null")
    without_webgl.goto(turn_address(site))
    without_webgl.evaluate("console.error = () => {}")
    without_webgl.click("[data-turn-begin]")
    expect(without_webgl.locator(".turn-trouble")).to_contain_text("no WebGL", timeout=30_000)
    expect(without_webgl.locator(".turn-picture svg")).to_be_visible()


def test_a_model_that_does_not_come_is_said_in_the_servers_words(page: Page, site: Site) -> None:
    problem = '{"detail": "The server lacks libGL.so.1. Install it."}'
    page.route(
        "**/pad.stl**", lambda route: route.fulfill(status=503, body=problem, content_type="application/problem+json")
    )
    page.goto(turn_address(site))
    page.evaluate("window.addEventListener('error', event => event.preventDefault())")
    page.click("[data-turn-begin]")
    expect(page.locator(".turn-trouble")).to_have_text("The server lacks libGL.so.1. Install it.")
    expect(page.locator(".turn-picture svg")).to_be_visible()


def test_nothing_on_the_page_keeps_anybody_out(page: Page, site: Site) -> None:
    """Oracle: axe-core, before and after the pad is taken in the hand."""
    page.goto(turn_address(site))
    assert findings(page, RULES) == []
    begin(page)
    assert findings(page, RULES) == []
