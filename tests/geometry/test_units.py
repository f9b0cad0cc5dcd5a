"""Lengths and masses as people type them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.errors import UnreadableError
from geometry.units import inch_to_mm, kg_to_pound, mm_to_inch, parse_length_mm, parse_mass_kg, parse_number


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("1 1/2 in", 38.1),
        ('1-1/2"', 38.1),
        ("1½ in", 38.1),
        ('3/8"', 9.525),
        ("20 thou", 0.508),
        ('0.385"', 9.779),
        ("38.1mm", 38.1),
        ("1,5 mm", 1.5),
        ("6.8 cm", 68.0),
        (" 12. ", 12.0),
        (".5", 0.5),
        ("0,125", 0.125),
    ],
)
def test_a_length_is_read_as_it_was_meant(text: str, mm: float) -> None:
    """The inch is 25.4 mm exactly (international yard and pound agreement, 1959)."""
    assert parse_length_mm(text) == mm


@pytest.mark.parametrize(
    "text",
    ["", "-1", "1e3", "1/0", "1,234 mm", "3 ft", "9" * 41, "٣", "nan", "inf", "9**9", "1 2", "1/2/3", "12 mm mm"],
)
def test_what_could_be_misread_is_refused(text: str) -> None:
    with pytest.raises(UnreadableError):
        parse_length_mm(text)


def test_a_bare_number_is_in_the_viewers_unit() -> None:
    assert parse_length_mm("1.5", "in") == 38.1
    assert parse_mass_kg("2", "lb") == 0.90718474


def test_a_written_unit_wins_over_the_viewers() -> None:
    assert parse_length_mm("12 mm", "in") == 12
    assert parse_mass_kg("1.6 t", "lb") == 1600


def test_numbers_may_be_negative_and_masses_may_not() -> None:
    assert parse_number("−10") == -10
    with pytest.raises(UnreadableError):
        parse_mass_kg("-5")


@given(st.floats(1e-3, 1e4))
def test_inch_and_back_is_the_same_length(mm: float) -> None:
    assert inch_to_mm(mm_to_inch(mm)) == pytest.approx(mm, rel=1e-12)


@given(st.text(max_size=50))
def test_any_text_is_read_or_refused_in_words(text: str) -> None:
    try:
        assert parse_length_mm(text) >= 0
    except UnreadableError as error:
        assert str(error).endswith(".")


def test_a_pound_is_its_legal_mass() -> None:
    """0.45359237 kg exactly (international yard and pound agreement, 1959)."""
    assert kg_to_pound(0.45359237) == 1
