"""The calculation of saddles and plates: every number stands on it, comes out of its formula and is told in their own words."""

from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings

from geometry import formulas
from geometry.calculation.pictures import clearance_plots_of
from geometry.calculation.sheet import CalculationSheet, calculation_sheet
from geometry.calculation.why import why
from geometry.errors import BadMeasurementsError, NoPadFitsError
from tests.documents import designed, sample
from tests.geometry.feet.round_documents import SKIRTED, WAYS, documents, standing

SAMPLES = (
    "brass_band_van_toothed_saddle",
    "seed_library_estate_teeth_only",
    "puppet_theatre_van_plate_edge",
    "bell_ringers_wagon_plate_ring",
)


def sheet_of(document: dict[str, Any]) -> CalculationSheet:
    return calculation_sheet(designed(document))


@pytest.mark.parametrize("way", WAYS)
def test_every_line_of_the_sheet_comes_out_of_its_formula(way: str) -> None:
    for line in sheet_of(standing(way)).book:
        if line.formula:
            assert formulas.evaluate(line.formula, line.numbers) == pytest.approx(line.value, rel=1e-6, abs=1e-9), line


@pytest.mark.parametrize("way", WAYS)
def test_what_the_checks_of_the_foot_use_stands_on_the_sheet(way: str) -> None:
    """Oracle: the numbers of each finding."""
    sheet = sheet_of(standing(way))
    judged = [c for c in sheet.design.checks if c.rule.kind in {"", "cup", "skirt", "saddle"} and c.finding]
    assert len(judged) >= 5
    for check in judged:
        for text in check.formulas:
            for name in formulas.symbols(text):
                value = check.finding.numbers[name] if check.finding else 0.0
                assert sheet.book.line_of(name, value) is not None, (check.code, name, value)


@pytest.mark.parametrize("way", WAYS)
def test_no_meaning_on_the_sheet_is_that_of_a_cup(way: str) -> None:
    sheet = sheet_of(standing(way))
    assert not [line.meaning for line in sheet.book if "cup" in line.meaning]
    assert not [note.meaning for part in sheet.checks for note in part.symbols if "cup" in note.meaning]


@pytest.mark.parametrize("way", SKIRTED)
def test_the_worst_clearances_are_those_of_the_checks(way: str) -> None:
    """Oracle: the checks of fit, which compute them on their own."""
    sheet = sheet_of(standing(way))
    values = {c.code: c.value for c in sheet.design.checks}
    fits = {(c.title.partition(" ")[0], c.extreme): c for c in sheet.clearances}
    assert fits["Skirt", "cold"].least.value == pytest.approx(values["skirt_fit_tight"])
    assert fits["Skirt", "hot"].most.value == pytest.approx(values["skirt_fit_loose"])


@pytest.mark.parametrize("way", SKIRTED)
def test_the_plot_of_clearance_is_that_of_the_skirt(way: str) -> None:
    """Oracle: the check of fit at the coldest, dry."""
    design = designed(standing(way))
    skirt = clearance_plots_of(design)[0]
    dry = next(s for s in skirt.chart.series if s.words.startswith("dry"))
    tight = next(c for c in design.checks if c.code == "skirt_fit_tight")
    assert dry.points[0][1] == pytest.approx(tight.value)
    assert "skirt" in skirt.chart.title


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(documents(usual=True))
def test_every_size_of_a_saddle_or_plate_says_why_in_its_own_words(document: dict[str, Any]) -> None:
    try:
        design = designed(document)
    except (NoPadFitsError, BadMeasurementsError):
        assume(False)
        raise
    for name, entry in design.ledger.items():
        told = why(design, entry)
        assert told.endswith("."), name
        assert "cup" not in told, told


@pytest.mark.parametrize("name", SAMPLES)
def test_the_examples_of_saddles_and_plates_pass(name: str) -> None:
    design = designed(sample(name))
    assert design.fit_to_make
    assert not design.failures
