"""A saved design as a browser makes one, and its links."""

from dataclasses import dataclass

from playwright.sync_api import Page

from server.links import samples

VAN, FAILING = "mobile_library_van", "repair_cafe_people_carrier"


@dataclass(frozen=True)
class Links:
    """The addresses of one saved design, which tests only read."""

    owner: str
    friend: str


def save_address(address: str, sample: str) -> str:
    return address + next(s.address for s in samples() if s.key == sample).replace("/pad?", "/save?")


def save(page: Page, address: str, sample: str = VAN) -> str:
    """Save an example as a new design; gives the owner's address."""
    page.goto(save_address(address, sample))
    page.get_by_role("button", name="Save", exact=True).click()
    page.wait_for_url("**/A?said=saved")
    return page.url.partition("?")[0]


def link_on(page: Page, kind: str) -> str:
    return page.locator(f"#link-{kind}").input_value()
