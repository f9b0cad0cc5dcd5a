"""A server with a database of its own, a design saved on it, and windows that know nothing of each other."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from server.app import create_app
from server.settings import Settings
from tests.browser.conftest import DESKTOP, PHONE, window
from tests.browser.sharing.saved import Links, link_on, save
from tests.listening import listening


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """A running server with a database of its own."""
    file = tmp_path_factory.mktemp("kept") / "designs.sqlite3"
    app = create_app(Settings(database=str(file), kernel_workers=1))
    with listening(app) as where:
        yield where


@pytest.fixture(scope="module")
def van(browser: Browser, address: str) -> Links:
    """One design for all tests that change nothing of it."""
    for page in window(browser, DESKTOP):
        return Links(save(page, address), link_on(page, "friend"))
    raise AssertionError("no window was opened")


@pytest.fixture
def owner(browser: Browser) -> Iterator[Page]:
    yield from window(browser, DESKTOP)


@pytest.fixture
def friend(browser: Browser) -> Iterator[Page]:
    yield from window(browser, PHONE)


@pytest.fixture
def third(browser: Browser) -> Iterator[Page]:
    yield from window(browser, DESKTOP)


@pytest.fixture
def late(browser: Browser) -> Iterator[Page]:
    """A window whose reader comes too late, which its browser reports as an error of the answer."""
    context = browser.new_context()
    yield context.new_page()
    context.close()


@pytest.fixture
def still(browser: Browser) -> Iterator[Page]:
    """A window without scripts."""
    yield from window(browser, DESKTOP, scripts=False)
