"""The working sheet as its user feels it, updates and keystrokes in Chromium: ``python -m tests.bench.bench_screen``.

The update is asked in turns with a page of the same frame and nothing in it, made by the same server, so that whatever
else the machine does falls on both. A keystroke counts from the browser's own event to the first frame after the section
has changed.
"""

import tempfile
import time
from itertools import count
from statistics import median, quantiles
from urllib.parse import parse_qsl, urlsplit

from httpx import Client
from playwright.sync_api import Page, sync_playwright
from starlette.responses import HTMLResponse, Response

from server.app import create_app
from server.forms import read_form
from server.links import address_of_document, ready_sample
from server.outcome import outcome_of
from server.section_view import section_view
from server.settings import Settings
from server.templating import render
from tests.bench.bench_server import running
from tests.browser.conftest import CHROMIUM, DESKTOP, FLAGS, PHONE
from tests.listening import listening

ROUNDS, KEYS = 200, 40
_PATIENCE = 100
_numbers = count(1)
_WATCH = """() => {
  window.drawn = [];
  const section = () => document.querySelector("#sheet .assembly").innerHTML;
  let typed = 0, before = section();
  document.addEventListener("input", () => { typed = performance.now(); before = section(); }, true);
  new MutationObserver(() => {
    if (!typed || section() === before) return;
    const began = typed;
    typed = 0;
    requestAnimationFrame(() => setTimeout(() => window.drawn.push(performance.now() - began)));
  }).observe(document.getElementById("sheet"), { subtree: true, childList: true, attributes: true, characterData: true });
}"""


def _address(height_mm: float) -> str:
    """The ready example with another height of its seam, which nobody has asked for."""
    document = ready_sample().document
    return address_of_document(document | {"seam": document["seam"] | {"height_mm": height_mm}})


def _fresh_address() -> str:
    return _address(ready_sample().document["seam"]["height_mm"] + next(_numbers) / 500)


def _asked_ms(client: Client, address: str) -> float:
    began = time.perf_counter()
    client.get(address).raise_for_status()
    return 1000 * (time.perf_counter() - began)


def _updates_ms() -> list[tuple[float, float]]:
    """The empty page and the sheet of a new height, asked in turn."""
    with tempfile.TemporaryDirectory() as folder:
        app = create_app(Settings(database=f"{folder}/designs.sqlite3", client_requests_per_minute=0))

        @app.get("/empty")
        def empty() -> Response:
            return HTMLResponse(render("base.html", None))

        with listening(app) as address, Client(base_url=address) as client:
            found = [(_asked_ms(client, "/empty"), _asked_ms(client, _fresh_address())) for _ in range(ROUNDS)]
    return found[ROUNDS // 10 :]


def update() -> dict[str, str]:
    """The whole answer to a change, over HTTP, against a page of the same frame with nothing in it."""
    rounds = _updates_ms()
    nothing, sheet = (median(each) for each in zip(*rounds, strict=True))
    ratio = median(whole / bare for bare, whole in rounds)
    return {
        "an empty page of the same frame; an update of the sheet": f"{nothing:.1f} ms; {sheet:.1f} ms",
        "median ratio of the two, asked in turn (goal 3)": f"{ratio:.1f}",
    }


def section() -> dict[str, str]:
    """What of an update is the section: from the address to its drawing."""
    times = []
    for _ in range(ROUNDS):
        pairs = parse_qsl(urlsplit(_fresh_address()).query)
        began = time.perf_counter()
        section_view(outcome_of(read_form(pairs)))
        times.append(1000 * (time.perf_counter() - began))
    return {"sized, judged and its section drawn, from the address (goal 10 ms)": f"{median(times):.1f} ms"}


def _typed_ms(page: Page, address: str) -> list[float]:
    """Each keystroke's time until the section is drawn anew."""
    page.goto(address + _address(20.0))
    page.wait_for_load_state("networkidle")
    page.evaluate(_WATCH)
    box = page.locator("#field-jack-cup_bore_mm")
    box.click()
    box.fill("68.")
    page.wait_for_timeout(1000)
    page.evaluate("window.drawn = []")
    for number in range(KEYS):
        box.press("Backspace" if number % 2 else str(1 + number // 2 % 9))
        for _ in range(_PATIENCE):
            if page.evaluate("window.drawn.length") > number:
                break
            page.wait_for_timeout(50)
        else:
            raise TimeoutError(f"Keystroke {number + 1} changed nothing.")
    times: list[float] = page.evaluate("window.drawn")
    return times[KEYS // 10 :]


def keystrokes() -> dict[str, str]:
    """A digit typed behind the cup's bore and taken away again, over and over."""
    found = {}
    with tempfile.TemporaryDirectory() as folder, running(folder) as (_, address), sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        for name, (width, height) in {"desktop": DESKTOP, "phone": PHONE}.items():
            page = browser.new_page(viewport={"width": width, "height": height})
            times = _typed_ms(page, address)
            late = quantiles(times, n=20, method="inclusive")[-1]
            found[f"keystroke to redrawn section, {name} (goal 100 ms)"] = (
                f"{median(times):.0f} ms, 19 of 20 in {late:.0f} ms"
            )
            page.close()
        browser.close()
    return found


def figures() -> dict[str, str]:
    """Each figure with its value, ready to print."""
    return update() | section() | keystrokes()


if __name__ == "__main__":
    for name, value in figures().items():
        print(f"{name:70} {value:>30}")
