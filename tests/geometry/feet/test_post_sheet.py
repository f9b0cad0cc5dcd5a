"""The calculation, the cautions and the samples of a post."""

from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings

from geometry import formulas
from geometry.calculation.pictures import clearance_plots_of
from geometry.calculation.sheet import CalculationSheet, calculation_sheet
from geometry.calculation.why import why
from geometry.design import design_pad
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.measurements import read_measurements
from tests.documents import sample
from tests.geometry.feet.post_documents import posted, roomy_post_documents

SAMPLE = "canoe_store_bored_ram"


def sheet_of(document: dict[str, Any]) -> CalculationSheet:
    return calculation_sheet(design_pad(read_measurements(document)))


@pytest.mark.parametrize("document", [posted(), posted(pinned=False), sample(SAMPLE)], ids=["pin", "no pin", "sample"])
def test_every_line_of_the_sheet_comes_out_of_its_formula(document: dict[str, Any]) -> None:
    for line in sheet_of(document).book:
        if line.formula:
            assert formulas.evaluate(line.formula, line.numbers) == pytest.approx(line.value, rel=1e-6, abs=1e-9), line


def test_what_the_checks_of_a_post_use_stands_on_the_sheet() -> None:
    """Oracle: the numbers of each finding; a tolerance stands beside its dimension."""
    sheet = sheet_of(posted())
    for check in sheet.design.checks:
        if check.rule.kind == "post" and check.finding:
            for name in formulas.symbols(check.formulas[0]):
                value = check.finding.numbers[name]
                assert sheet.book.line_of(name, value) is not None, (check.code, name, value)


def test_no_meaning_on_the_sheet_of_a_post_is_that_of_a_cup() -> None:
    assert not [line.meaning for line in sheet_of(posted()).book if "cup" in line.meaning]


def test_the_worst_clearances_are_those_of_the_checks() -> None:
    """Oracle: the checks of fit, which compute them on their own."""
    sheet = sheet_of(posted())
    values = {c.code: c.value for c in sheet.design.checks}
    fits = {(c.title, c.extreme): c for c in sheet.clearances}
    assert fits["Stem in the bore, on the diameter", "hot"].least.value == pytest.approx(values["post_fit_tight"])
    assert fits["Stem in the bore, on the diameter", "cold"].most.value == pytest.approx(values["post_fit_loose"])


def test_the_plot_of_clearance_is_that_of_the_stem() -> None:
    """Oracle: the check of fit at the warmest, in room air."""
    design = design_pad(read_measurements(posted()))
    stem, _ = clearance_plots_of(design)
    room_air = next(s for s in stem.chart.series if s.words == "in room air")
    tight = next(c for c in design.checks if c.code == "post_fit_tight")
    assert room_air.points[-1][1] == pytest.approx(tight.value)
    assert "stem" in stem.chart.title


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(roomy_post_documents())
def test_every_size_of_a_post_says_why(document: dict[str, Any]) -> None:
    try:
        design = design_pad(read_measurements(document))
    except (NoPadFitsError, BadMeasurementsError):
        assume(False)
        raise
    for name in ("seat_diameter_mm", "stem_diameter_mm", "stem_length_mm", "cross_hole_diameter_mm"):
        if name in design.ledger:
            told = why(design, design.ledger[name])
            assert told.endswith(".")
            assert "cup" not in told
            assert "because" in told


def test_the_pin_is_said_to_carry_nothing() -> None:
    pinned, plain = (design_pad(read_measurements(posted(pinned=with_pin))).cautions for with_pin in (True, False))
    assert [c for c in pinned if "carries nothing" in c.text]
    assert not [c for c in plain if "The pin" in c.text]
    assert [c for c in plain if "worn oval" in c.text]


def test_the_sample_with_a_retaining_pin_passes_everything() -> None:
    design = design_pad(read_measurements(sample(SAMPLE)))
    assert design.pad.has_cross_hole
    assert not design.failures
    assert {c.verdict for c in design.checks if c.rule.kind == "post"} == {"pass"}
