"""Requests that once were an error of the program and are now answered in words."""

import time

import pytest
from httpx import AsyncClient

from geometry.errors import BadMeasurementsError
from server.documents import parse_json
from server.links import typed_of_document
from server.saved_pages import UnusableError
from server.saving import link_parts
from server.working_out import reading_of_address
from tests.documents import van
from tests.server.asking import address

pytestmark = pytest.mark.anyio


async def test_a_truth_value_in_an_uploaded_document_is_read_as_typed(client: AsyncClient) -> None:
    files = {"file": ("measurements.json", b'{"jack": {"cup_bore_mm": true}}', "application/json")}
    answer = await client.post("/pad/document", files=files)
    assert answer.status_code < 500
    assert typed_of_document({"jack": {"cup_bore_mm": True}}) == {"jack.cup_bore_mm": "True"}


@pytest.mark.parametrize("title", ["名 Vän 🚗", "משאית שמאל", "سيارة يسار", "left \u202eright"])
async def test_a_title_in_any_letters_is_still_drawn(client: AsyncClient, title: str) -> None:
    for ending in ("pdf", "svg", "dxf"):
        answer = await client.get(address(van(title=title), ending))
        assert answer.status_code == 200, ending


@pytest.mark.parametrize("link", ["http://[", "https://[::1", "", "////", "no link at all"])
def test_what_is_no_link_is_refused_in_words(link: str) -> None:
    with pytest.raises(UnusableError, match="no link"):
        link_parts(link)


@pytest.mark.parametrize("text", ["http://[", "&".join(f"a{i}=1" for i in range(500))])
def test_what_is_no_address_is_refused_in_words(text: str) -> None:
    with pytest.raises(BadMeasurementsError, match="address"):
        reading_of_address(text)


def test_a_name_given_twice_among_very_many_is_found_without_delay() -> None:
    """A scan of every name for every name took 8 s for this text; each name is counted once now."""
    text = "{" + ", ".join(f'"a{i}": 1' for i in range(15_000)) + ', "a7": 2}'
    started = time.process_time()
    with pytest.raises(Exception, match="twice"):
        parse_json(text.encode())
    assert time.process_time() - started < 2
