"""Lengths and masses as people type them."""

import pytest
import scipy.constants
from hypothesis import given
from hypothesis import strategies as st

from geometry.errors import UnreadableError
from geometry.units import (
    LengthUnit,
    LowerLimit,
    UpperLimit,
    celsius_to_fahrenheit,
    in_unit,
    inch_to_mm,
    kg_to_pound,
    mm_to_inch,
    mpa_to_psi,
    parse_length_mm,
    parse_mass_kg,
    parse_number,
    per_kelvin_to_per_fahrenheit,
)


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
        ("2 290", 2290),
        ("2\u00a0290 mm", 2290),
        ("12\u202f290,5", 12290.5),
        ("1\u2009234 567 mm", 1234567),
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
    [
        "",
        "-1",
        "1e3",
        "1/0",
        "1,234 mm",
        "3 ft",
        "9" * 41,
        "٣",
        "nan",
        "inf",
        "9**9",
        "1 2",
        "2 29",
        "0 290",
        "2 290 1",
        "1/2/3",
        "12 mm mm",
    ],
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


@given(st.floats(0, 500), st.sampled_from(["mm", "in"]), st.integers(2, 3))
def test_no_limit_in_figures_lets_pass_what_the_true_one_stops(mm: float, unit: LengthUnit, digits: int) -> None:
    """Oracle: the figures turned back into mm, 25.4 to the inch; none is further off than one of the last decimal."""
    one = 25.4 if unit == "in" else 1.0
    low, high = (in_unit(limit, unit, digits) * one for limit in (LowerLimit(mm), UpperLimit(mm)))
    step = one / 10**digits
    assert mm - 1e-5 * step <= low < mm + 1.00001 * step
    assert mm - 1.00001 * step < high <= mm + 1e-5 * step
    assert abs(in_unit(mm, unit, digits) * one - mm) <= 0.50001 * step


@given(st.text(max_size=50))
def test_any_text_is_read_or_refused_in_words(text: str) -> None:
    try:
        assert parse_length_mm(text) >= 0
    except UnreadableError as error:
        assert str(error).endswith(".")


def test_a_pound_is_its_legal_mass() -> None:
    """0.45359237 kg exactly (international yard and pound agreement, 1959)."""
    assert kg_to_pound(0.45359237) == 1


@given(st.floats(0.001, 300_000))
def test_a_psi_is_that_of_a_public_library(stress_mpa: float) -> None:
    """Oracle: scipy.constants, pascals in a pound-force on a square inch."""
    assert mpa_to_psi(stress_mpa) == pytest.approx(stress_mpa * 1e6 / scipy.constants.psi, rel=1e-12)


@given(st.floats(-60, 300))
def test_a_degree_fahrenheit_is_that_of_a_public_library(temperature_c: float) -> None:
    """Oracle: scipy.constants, which converts temperatures by a way of its own, over kelvins."""
    expected = scipy.constants.convert_temperature(temperature_c, "Celsius", "Fahrenheit")
    assert celsius_to_fahrenheit(temperature_c) == pytest.approx(float(expected), abs=1e-9)


@given(st.floats(1e-7, 0.1), st.floats(-40, 100), st.floats(1, 100))
def test_a_rate_for_each_degree_gives_the_same_growth_in_either_degree(
    rate: float, start_c: float, rise_k: float
) -> None:
    """Oracle: a rate times its own rise is the same, whichever degrees the rise is counted in."""
    rise_f = celsius_to_fahrenheit(start_c + rise_k) - celsius_to_fahrenheit(start_c)
    assert per_kelvin_to_per_fahrenheit(rate) * rise_f == pytest.approx(rate * rise_k, rel=1e-9)
