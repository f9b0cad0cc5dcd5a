"""A reader of inches finds °F and psi beside °C and MPa, on every page that shows them in words."""

import re
from collections.abc import Iterator

import pytest
import scipy.constants
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation.sheet import calculation_sheet
from geometry.design import design_pad
from server import shown
from server.calculation_context import CalculationPage
from server.calculation_views import calculation_page
from server.forms import Units, read_form
from server.guide_context import GuidePage
from server.guide_view import guide_page
from server.links import typed_of_document
from server.materials_page import MaterialsPage, materials_page
from tests.documents import designed, sample, van

ALONE = re.compile(r"\d[ \u00a0](?:°C|MPa)(?! \(|, −?\d)(?![\w²/·])")
"""A temperature or a stress with nothing beside it."""
BESIDE = re.compile(r"°F|psi|ksi")


def materials_words(page: MaterialsPage) -> Iterator[str]:
    """All that the page says of its own; sources are quoted as they are."""
    yield page.tested_at
    for material in page.materials:
        yield from (material.use, *material.notes, *material.overview)
        yield from (words for p in (*material.properties, *material.published) for words in (p.condition, p.value))


def guide_words(page: GuidePage) -> Iterator[str]:
    for group in (*page.measuring, *page.choosing, *page.making_fields):
        yield from (words for f in group.fields for words in (f.how, f.why, f.without, f.can_be))
    yield from (check.example for group in page.checks for check in group.checks)
    for family in page.families:
        for material in family.materials:
            yield from (*(figure for _, figure in material.figures), *material.notes)
    yield from (caution.text for signal in page.cautions for caution in signal.cautions)


def calculation_words(page: CalculationPage) -> Iterator[str]:
    """Inputs, results and sentences; formulas and the numbers put in stay in SI units."""
    yield from (i.words for i in page.inputs)
    yield from (line.result for part in page.parts for line in part.lines)
    yield from (d.value for d in page.doubtful)
    for check in page.checks:
        yield from (check.words, *(side.result for side in check.sides), *check.also)
        yield check.margin.replace(" °C", " K")
        yield from (s.number for s in check.symbols)
    yield from (s.number for entry in page.ledger for s in entry.symbols)


def calculation_of(name: str, units: Units) -> CalculationPage:
    reading = read_form([*typed_of_document(sample(name), units=units).items(), ("units", units)])
    assert reading.measurements is not None
    return calculation_page(calculation_sheet(design_pad(reading.measurements)), reading)


PAGES = {
    "materials": lambda units: materials_words(materials_page(units)),
    "guide": lambda units: guide_words(guide_page(units)),
    "calculation": lambda units: calculation_words(calculation_of("mobile_library_van", units)),
    "calculation with statics": lambda units: calculation_words(calculation_of("repair_cafe_people_carrier", units)),
}


@pytest.mark.parametrize("name", PAGES)
def test_in_inches_no_temperature_and_no_stress_stands_alone(name: str) -> None:
    """Oracle: the unit that follows each number; there are some of both."""
    words = list(PAGES[name]("in"))
    assert [text for text in words if ALONE.search(text)] == []
    assert {found for text in words for found in BESIDE.findall(text)} == {"°F", "psi", "ksi"}


@pytest.mark.parametrize("name", PAGES)
def test_in_millimetres_nothing_stands_beside(name: str) -> None:
    assert [text for text in PAGES[name]("mm") if BESIDE.search(text)] == []


def test_in_brackets_no_second_pair_is_opened() -> None:
    words = shown.with_customary("It marks (from 50 MPa on), and at 80 °C it bends.", "in")
    assert words == "It marks (from 50 MPa, 7250 psi on), and at 80 °C (176 °F) it bends."


@given(st.integers(-60, 300), st.integers(-60, 300))
def test_both_ends_of_a_range_are_told_to_the_nearest_degree(low_c: int, high_c: int) -> None:
    """Oracle: scipy.constants, to half a degree."""
    words = shown.with_customary(f"from {low_c} to {high_c} °C".replace("-", "−"), "in")
    found = re.search(r"\((−?\d+) to (−?\d+) °F\)$", words)
    assert found
    for text, value_c in zip(found.groups(), (low_c, high_c), strict=True):
        exact = float(scipy.constants.convert_temperature(value_c, "Celsius", "Fahrenheit"))
        assert abs(float(text.replace("−", "-")) - exact) <= 0.5 + 1e-9


@given(st.floats(0.01, 250_000).map(lambda x: float(f"{x:.4g}")))
def test_a_stress_is_told_to_three_digits(stress_mpa: float) -> None:
    """Oracle: scipy.constants; three digits are wrong by half a per cent at most, and no less than a thousandth is told."""
    words = shown.with_customary(f"at {stress_mpa:f} MPa it stands", "in")
    found = re.fullmatch(r"at [\d.]+ MPa \(([\d.]+) (psi|ksi)\) it stands", words)
    assert found
    psi = float(found[1]) * (1000 if found[2] == "ksi" else 1)
    assert psi == pytest.approx(stress_mpa * 1e6 / scipy.constants.psi, rel=0.005, abs=0.0005)


@pytest.mark.parametrize(
    "words",
    ["96 N/mm at 3 MPa/s", "up to 210 000 MPa", "2e-05 MPa", "20 K warmer", "σ = F / A", "a pad of 40 °"],
    ids=["rates", "grouped", "powers of ten", "kelvins", "formulas", "angles"],
)
def test_what_cannot_be_told_by_itself_is_left_as_it_is(words: str) -> None:
    assert shown.with_customary(words, "in") == words


def test_the_least_margin_to_a_greatest_temperature_is_no_temperature() -> None:
    """A margin of 10 °C is 18 °F, never 50 °F: it is left in °C."""
    reading = read_form([*typed_of_document(van(), units="in").items(), ("units", "in")])
    assert reading.measurements is not None
    page = calculation_page(calculation_sheet(design_pad(reading.measurements)), reading)
    margin = next(check.margin for check in page.checks if check.code == "temperature")
    assert margin.endswith("°C")


def test_the_sentences_of_checks_on_sheet_and_calculation_are_in_inches() -> None:
    """Oracle: 25.4 mm to the inch for the pad's own depth of slot; no length in mm is left in any sentence."""
    design = designed(sample("repair_cafe_people_carrier"))
    words = {check.code: shown.check_words(check, "in") for check in design.checks}
    assert f"The slot is {design.pad.slot_depth_mm / 25.4:.3f} in deep" in words["sill_clear"]
    assert not [text for text in words.values() if re.search(r"\d mm(?![²/])", text)]
    assert all(shown.check_words(check, "mm") == check.words for check in design.checks)
