"""What the tests of the shop's pages ask with: documents with readings, and the words of a page."""

import re
from html import unescape
from typing import Any

from httpx import AsyncClient

from geometry.design import Design, design_pad
from geometry.document.as_made import READABLE
from geometry.measurements import read_measurements
from server.links import address_of_document, ready_sample

KINDS = ("route", "inspection", "record")


def _as_drawn() -> dict[str, Any]:
    pad = design_pad(read_measurements(ready_sample().document)).pad
    sizes = {f"as_made__{n}": [getattr(pad, n)] for n in READABLE if n != "top_height_mm" and getattr(pad, n) > 0}
    return sizes | {"as_made__instrument": "micrometer"}


READ: dict[str, Any] = _as_drawn()
"""Every size of the ready example as it is drawn."""
TOO_BIG = READ | {"as_made__seat_diameter_mm": [68.4]}
"""Larger than the cup of 68.0 mm."""


def with_(document: dict[str, Any], **changes: Any) -> dict[str, Any]:
    """The document with some answers changed; two underscores stand for the dot."""
    changed = {name: dict(v) if isinstance(v, dict) else v for name, v in document.items()}
    for key, value in changes.items():
        group, _, name = key.partition("__")
        changed.setdefault(group, {})[name] = value
    return changed


def design_of(document: dict[str, Any]) -> Design:
    return design_pad(read_measurements(document))


def words_of(html: str) -> str:
    """The text of a page, blanks run together."""
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", html)).split())


async def page(client: AsyncClient, document: dict[str, Any], kind: str, *, units: str = "mm") -> str:
    answer = await client.get(address_of_document(document, f"/{kind}", units=units))
    assert answer.status_code == 200, answer.text[:300]
    return answer.text
