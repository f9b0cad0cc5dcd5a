"""What other pages say of the making of a pad: the piece with the ways, and the mark of a failed part."""

from urllib.parse import parse_qsl, urlsplit

import pytest

from geometry.standing import DO_NOT_USE
from server import templating
from server.links import address_of_document
from server.making_views import as_made_standing, how_made, kept_standing
from tests.server.asking import FITTING
from tests.server.making_pages import READ, TOO_BIG, design_of, with_

pytestmark = pytest.mark.anyio


def test_the_standing_of_a_part_is_none_until_something_is_read() -> None:
    assert as_made_standing(design_of(FITTING)) is None


def test_a_failed_part_has_its_mark_and_its_reasons() -> None:
    standing = as_made_standing(design_of(with_(FITTING, **TOO_BIG)))
    assert standing is not None
    assert standing.is_failed
    assert standing.mark == DO_NOT_USE
    assert any("Seat" in reason for reason in standing.reasons)


def test_a_good_part_has_no_mark() -> None:
    standing = as_made_standing(design_of(with_(FITTING, **READ)))
    assert standing is not None
    assert not standing.is_failed
    assert kept_standing("usable", standing.words, ()).mark == ""


def test_how_it_is_made_leads_to_the_three_pages_of_the_same_design() -> None:
    """Oracle: the query of the working sheet."""
    typed = dict(parse_qsl(urlsplit(address_of_document(FITTING)).query))
    made = how_made(design_of(FITTING), typed, "mm")
    assert [urlsplit(way.href).path for way in made.pages] == ["/pad/route", "/pad/inspection", "/pad/record"]
    assert {urlsplit(way.href).query for way in made.pages} == {urlsplit(address_of_document(FITTING)).query}


def test_the_piece_for_the_working_sheet_carries_the_mark_of_a_failed_part() -> None:
    design = design_of(with_(FITTING, **TOO_BIG))
    context = how_made(design, {}, "mm")
    text = render_piece(context)
    assert DO_NOT_USE in text
    assert "15 operations" in text


def render_piece(context: object) -> str:
    """The piece as a page includes it."""
    source = '{% with making = page %}{% include "making/partials/how_made.html" %}{% endwith %}'
    return templating._ENVIRONMENT.from_string(source).render(page=context)
