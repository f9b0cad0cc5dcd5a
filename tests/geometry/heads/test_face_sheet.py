"""The calculation sheet of cushions and plugs: every line follows from those above, every number of a check stands on one."""

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from geometry import formulas
from geometry.calculation.pictures import clearance_plots_of
from geometry.calculation.sheet import CalculationSheet, calculation_sheet
from geometry.calculation.why import why
from geometry.design import Design
from tests.documents import designed
from tests.geometry.heads.documents import designs_of, in_a_hole, in_an_oblong_hole, on_a_rail

_SETTINGS = settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
_DOCUMENTS = (on_a_rail(), on_a_rail(make__material="pur_95"), in_a_hole(), in_an_oblong_hole())


@_SETTINGS
@given(st.sampled_from(["cushion", "plug"]).flatmap(designs_of))
def test_any_pad_has_a_sheet_whose_lines_follow_from_those_above(design: Design) -> None:
    """Oracle: each formula evaluated with the numbers that stand in it gives the design's own value."""
    for line in calculation_sheet(design).book:
        if line.formula:
            assert formulas.evaluate(line.formula, line.numbers) == pytest.approx(line.value, rel=1e-6, abs=1e-6), line


@_SETTINGS
@given(st.sampled_from(["cushion", "plug"]).flatmap(designs_of))
def test_every_size_has_its_reason_in_words(design: Design) -> None:
    said = [part.why for part in calculation_sheet(design).ledger]
    assert all(words.endswith(".") for words in said)
    assert not [words for words in said if "seam" in words or "slot" in words]


@pytest.mark.parametrize("document", _DOCUMENTS)
def test_every_number_of_a_check_of_the_head_stands_on_a_line_above(document: dict[str, Any]) -> None:
    sheet = calculation_sheet(designed(document))
    for check in sheet.design.checks:
        if check.finding and check.rule.kind in {"cushion", "plug", "face"}:
            for name, value in check.finding.numbers.items():
                if name != "tol":
                    assert sheet.book.line_of(name, value) is not None, (check.code, name)


def _inputs(sheet: CalculationSheet) -> dict[str, str]:
    return {i.key: i.symbol for i in sheet.inputs}


def test_what_is_measured_on_the_car_has_its_symbol_and_its_uncertainty() -> None:
    on_rail, in_hole = (calculation_sheet(designed(document)) for document in (on_a_rail(), in_a_hole()))
    assert _inputs(on_rail)["rail.face_width_mm"] == "w_f"
    assert _inputs(in_hole)["pocket.hole_width_mm"] == "w_h"
    known = {i.key: i.uncertainty for i in in_hole.inputs}
    assert known["pocket.hole_width_mm"] == "± 0.1 mm"
    assert known["pocket.rim_height_mm"] == "± 2 mm"


@pytest.mark.parametrize(("document", "fits"), [(_DOCUMENTS[0], 1), (_DOCUMENTS[2], 2), (_DOCUMENTS[3], 3)])
def test_the_clearances_are_those_of_the_checks(document: dict[str, Any], fits: int) -> None:
    """Oracle: the checks of fit, which compute them on their own; a cushion has none but the seat's."""
    sheet = calculation_sheet(designed(document))
    assert len(sheet.clearances) == 2 * fits
    of_plug = [c for c in sheet.clearances if c.title.startswith("Plug")]
    checks = {c.code: c.value for c in sheet.design.checks}
    if of_plug:
        assert min(c.least.value for c in of_plug) == pytest.approx(checks["plug_fit_tight"])
        assert checks["plug_fit_loose"] in [pytest.approx(c.most.value) for c in of_plug]
    assert len(clearance_plots_of(sheet.design)) == (2 if of_plug else 1)


@pytest.mark.parametrize("document", [on_a_rail(), in_a_hole()], ids=["cushion", "plug"])
def test_no_reason_of_a_size_speaks_of_a_seam_that_is_not_there(document: dict[str, Any]) -> None:
    """Oracle: the words; a lip that a seam's edge loads is a slot's."""
    design = designed(document)
    reasons = [why(design, entry) for entry in design.ledger.values()]
    reasons += [bound.reason for entry in design.ledger.values() for bound in entry.bounds]
    assert any("a lip of 4 must stand above it" in words or "4 mm thick" in words for words in reasons)
    assert not [words for words in reasons if "seam" in words or "edge's 0" in words]
