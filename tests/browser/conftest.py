"""A server of its own for the browser tests, and a real Chromium."""

import asyncio
import os
import re
import shutil
from collections.abc import Iterator
from dataclasses import dataclass, field

import pytest
from playwright.sync_api import Browser, Page, expect, sync_playwright
from starlette.types import ASGIApp, Receive, Scope, Send

from server.app import create_app
from server.links import samples
from server.settings import Settings
from tests.listening import listening

CHROMIUM = shutil.which("chromium") or "/usr/bin/chromium"
FLAGS = [
    "--no-sandbox",
    "--headless",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    # Of such a flag the last one counts, so what Playwright leaves out is left out here too; then the lists under the address
    # box, which nobody sees: each window would load two pages for them before its own.
    "--disable-features=AvoidUnnecessaryBeforeUnloadCheckSync,DestroyProfileOnBrowserClose,HttpsUpgrades,"
    "HttpsFirstBalancedModeAutoEnable,LensOverlay,MediaRouter,PaintHolding,ThirdPartyStoragePartitioning,"
    "AvoidCorsURLLoaderRestartOnRedirect,OptimizationHints,NetworkTimeServiceQuerying,AimEnabled,PreconnectToSearch,"
    "WebUIOmniboxPopup,WebUIOmniboxAimPopup",
]
PHONE, DESKTOP = (390, 844), (1440, 900)


@dataclass
class SlowLane:
    """Lets a test hold back answers: each entry is the delay in seconds of the next answer of the sheet."""

    app: ASGIApp
    delays: list[float] = field(default_factory=list)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Wait as long as was asked, then answer."""
        if scope["type"] == "http" and scope["path"] == "/pad" and self.delays:
            await asyncio.sleep(self.delays.pop(0))
        await self.app(scope, receive, send)


@dataclass(frozen=True)
class Site:
    """The running server."""

    address: str
    lane: SlowLane

    def sample(self, key: str) -> str:
        """The address of a ready example."""
        return self.address + next(s.address for s in samples() if s.key == key)


@pytest.fixture(scope="package")
def site() -> Iterator[Site]:
    lane = SlowLane(create_app(Settings(kernel_workers=1)))
    with listening(lane) as address:
        yield Site(address, lane)


@pytest.fixture(scope="package")
def browser() -> Iterator[Browser]:
    """One Chromium for all of these tests; closed after them, because its loop would stop other tests from running theirs."""
    if not shutil.which(CHROMIUM):
        # Where tests are required to run, a missing browser is a failure and no excuse.
        assert not os.environ.get("CI"), f"there is no Chromium at {CHROMIUM}"
        pytest.skip(f"there is no Chromium at {CHROMIUM}")
    with sync_playwright() as play:
        chromium = play.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        yield chromium
        chromium.close()


@pytest.fixture
def page(browser: Browser, site: Site) -> Iterator[Page]:
    """A desktop window; a test fails where the page reports an error of its own."""
    site.lane.delays.clear()
    yield from window(browser, DESKTOP)


@pytest.fixture
def phone(browser: Browser, site: Site) -> Iterator[Page]:
    """A telephone's window."""
    site.lane.delays.clear()
    yield from window(browser, PHONE)


def until_asked(page: Page, part: str) -> None:
    """Wait until the sheet's address holds what was typed; it changes within one page, so there is no loading to wait for."""
    expect(page).to_have_url(re.compile(re.escape(part) + "(?=[&#]|$)"), timeout=30_000)


def window(
    browser: Browser, size: tuple[int, int], *, scripts: bool = True, dark: bool = False, keeps: bool = False
) -> Iterator[Page]:
    """One window; what the content policy refuses and what scripts throw fails the test.

    Only one that ``keeps`` has pages kept for a place without the network: this asks the server more than its page does.
    """
    context = browser.new_context(
        viewport={"width": size[0], "height": size[1]},
        java_script_enabled=scripts,
        color_scheme="dark" if dark else "light",
        reduced_motion="reduce",
        service_workers="allow" if keeps else "block",
    )
    # Saving draws every paper of a design: on a busy machine that takes longer than a page may usually take.
    context.set_default_navigation_timeout(90_000)
    opened = context.new_page()
    complaints: list[str] = []
    opened.on("pageerror", lambda error: complaints.append(str(error)))
    opened.on("console", lambda line: complaints.append(line.text) if line.type == "error" else None)
    yield opened
    context.close()
    # A bad measurement is answered with 422, and a test of a failing server with 503; Chromium calls both a failed load.
    real = [c for c in complaints if not ("Failed to load resource" in c and ("422" in c or "503" in c))]
    # Without the network, what a page asks for besides itself fails to load.
    real = [c for c in real if not (keeps and "Failed to load resource: net::ERR_" in c)]
    assert not real, real
