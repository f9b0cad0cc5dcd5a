"""Dated readings in service, as one text that lives in an address and in a file."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.document.wear import DIMENSION_OF, LONGEST_LOG, WearEntry, log_text, read_log
from geometry.errors import BadMeasurementsError
from geometry.measurements import read_measurements
from tests.documents import van

SIZES = st.integers(1, 9_999_999).map(lambda n: n / 10_000)
ENTRIES = st.builds(
    WearEntry,
    day=st.dates(date(2000, 1, 1), date(2199, 12, 31)),
    sizes_mm=st.dictionaries(st.sampled_from(sorted(DIMENSION_OF.values())), SIZES, min_size=1),
    wall=st.sampled_from(["", "clean", "white", "cracked"]),
    part_temperature_c=st.integers(0, 60).map(float),
)


@given(st.lists(ENTRIES, max_size=8))
def test_a_log_comes_back_from_its_text_as_it_was(entries: list[WearEntry]) -> None:
    """Oracle: the entries themselves, oldest first."""
    assert read_log(log_text(entries)) == tuple(sorted(entries, key=lambda e: e.day))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("2026-02-30 web 18", "is not a day"),
        ("2026-03-01", "is no entry"),
        ("2026-03-01 web", "is no entry"),
        ("2026-03-01 web 18 web 17", "twice"),
        ("2026-03-01 girth 18", "nothing that an entry reads"),
        ("2026-03-01 web -18", "is not a length"),
        ("2026-03-01 web 18000", "cannot be right"),
        ("2026-03-01 wall fine", "clean, white or cracked"),
        ("2026-03-01 web 18 at 90", "in a room"),
        ("2026-03-01 at 20", "reads nothing"),
    ],
)
def test_what_cannot_be_read_is_refused_in_words_beside_its_field(text: str, words: str) -> None:
    """Oracle: the words that tell what is wrong."""
    with pytest.raises(BadMeasurementsError) as caught:
        read_measurements(van() | {"wear": {"log": text}})
    assert [p.field for p in caught.value.problems] == ["wear.log"]
    assert words in caught.value.problems[0].message


def test_the_document_keeps_a_log_in_order_and_in_millimetres() -> None:
    """Oracle: 0.72 in is 18.288 mm."""
    document = van() | {"wear": {"log": "2026-03-01 WEB 0.72in wall Clean\n2026-01-05 seat 67,1 at 23"}}
    assert read_measurements(document).wear.log == "2026-01-05 seat 67.1 at 23; 2026-03-01 web 18.288 wall clean"


def test_a_log_has_an_end() -> None:
    """Oracle: the room that an address gives to one field."""
    full = "; ".join("2026-03-01 web 18.3 seat 67.1" for _ in range(LONGEST_LOG // 20))
    with pytest.raises(BadMeasurementsError):
        read_measurements(van() | {"wear": {"log": full}})
