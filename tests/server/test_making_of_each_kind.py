"""Route card, inspection sheet and record as pages, for pads that share neither foot nor head."""

import re

import pytest
from httpx import AsyncClient

from tests.drawing.kinds_on_paper import document_of, foreign_words
from tests.server.making_pages import KINDS, page, words_of

pytestmark = pytest.mark.anyio
_OF_TOOLS = re.compile(r"teeth of the end mill|measure the slot that the saw leaves", re.IGNORECASE)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize(("foot", "head"), [("post", "plug"), ("edge", "cushion"), ("teeth", "slot")])
async def test_no_page_of_the_shop_speaks_of_another_kind(client: AsyncClient, foot: str, head: str, kind: str) -> None:
    """Oracle: the words that belong to each kind."""
    words = words_of(await page(client, document_of(foot, head), kind))
    assert foreign_words(foot, head, _OF_TOOLS.sub("", words)) == []
