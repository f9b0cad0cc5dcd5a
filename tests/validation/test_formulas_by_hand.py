"""Every printed line of the calculation redone (own oracle): the formula with its numbers, and the text as a person reads it.

A printed number stands for all numbers that round to it at five significant digits; a small interval arithmetic carries
that doubt through the line, so the answer in the code must lie inside what the text can mean.
"""

import json
import math
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from geometry import formulas
from geometry.buildable import require_buildable
from geometry.checks import judge
from geometry.design import Design, design_pad
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.measurements import read_measurements
from geometry.pad import DIMENSIONS, Pad
from geometry.rules import Check
from tests.validation.documents import documents
from tests.validation.printed import doubt, read_back

SAMPLES = Path(__file__).parents[2] / "sample_data"
_SETTINGS = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))


def _agrees(text: str, value: float) -> bool:
    low, high = read_back(text)
    if math.isinf(value):
        return value in {low, high}
    slack = doubt(value) + 1e-9 * abs(value)
    return low - slack <= value <= high + slack


def _sides(check: Check) -> Iterator[tuple[str, str, float]]:
    """Value and limit of a check: (formula, printed side, number used by the code)."""
    assert check.finding is not None
    printed = re.split(" [≤≥<>] ", check.substituted)
    assert len(printed) == 2, check.substituted
    yield from zip(check.formulas, printed, (check.finding.value, check.finding.limit), strict=True)


def _computed(checks: tuple[Check, ...]) -> list[Check]:
    return [c for c in checks if c.finding is not None]


def _designed(document: dict[str, Any]) -> Design | None:
    try:
        return design_pad(read_measurements(document))
    except (BadMeasurementsError, NoPadFitsError):
        return None


def _worn(pad: Pad, shares: list[float]) -> Pad | None:
    """The pad with every dimension off by a share of itself; None where that is no body."""
    changed = Pad(**{name: getattr(pad, name) * share for name, share in zip(DIMENSIONS, shares, strict=True)})
    try:
        require_buildable(changed)
    except BadMeasurementsError:
        return None
    return changed


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [("9000 / (2 · 60)", 74.9, 75.1), ("√(3) · 2.5²", 10.82, 10.83), ("1 + (−0.25)", 0.7499, 0.7501)],
)
def test_the_reader_of_this_test_reads_as_a_person_would(text: str, low: float, high: float) -> None:
    """Oracle: done by hand."""
    found = read_back(text)
    assert low < found[0] <= found[1] < high


@_SETTINGS
@given(documents())
def test_every_formula_of_a_check_gives_the_number_that_the_check_used(document: dict[str, Any]) -> None:
    """Oracle: the formula evaluated with the numbers beside it, to nine digits."""
    design = _designed(document)
    for check in _computed(design.checks) if design else []:
        assert check.finding is not None
        for formula, _, value in _sides(check):
            found = formulas.evaluate(formula, check.finding.numbers)
            assert found == pytest.approx(value, rel=1e-9, abs=1e-9), (check.code, formula)


@_SETTINGS
@given(documents())
def test_every_printed_check_can_be_redone_from_its_text(document: dict[str, Any]) -> None:
    """Oracle: interval arithmetic on the printed line, each printed number good to five digits."""
    design = _designed(document)
    for check in _computed(design.checks) if design else []:
        for _, text, value in _sides(check):
            for part in text.split(" = "):
                assert _agrees(part, value), (check.code, text, value)


@_SETTINGS
@given(documents(), st.lists(st.floats(0.7, 1.4), min_size=len(DIMENSIONS), max_size=len(DIMENSIONS)))
def test_checks_of_a_pad_that_came_out_otherwise_can_be_redone(document: dict[str, Any], shares: list[float]) -> None:
    """Oracle: as above, on dimensions that the ledger would never choose."""
    design = _designed(document)
    pad = _worn(design.pad, shares) if design else None
    for check in _computed(judge(design.conditions, pad)) if design and pad else []:
        assert check.finding is not None
        for formula, text, value in _sides(check):
            found = formulas.evaluate(formula, check.finding.numbers)
            assert found == pytest.approx(value, rel=1e-9, abs=1e-9), (check.code, formula, check.finding.numbers)
            assert all(_agrees(part, value) for part in text.split(" = ")), (check.code, text, value)


@_SETTINGS
@given(documents())
def test_every_printed_bound_of_the_ledger_can_be_redone(document: dict[str, Any]) -> None:
    """Oracle: the formula evaluated, and interval arithmetic on its printed line."""
    design = _designed(document)
    for entry in design.ledger.values() if design else []:
        for bound in entry.bounds:
            found = formulas.evaluate(bound.rule.formula, bound.numbers)
            assert found == pytest.approx(bound.value, rel=1e-9, abs=1e-9), (entry.dimension, bound.rule.formula)
            assert _agrees(bound.substituted, bound.value), (entry.dimension, bound.substituted, bound.value)


@_SETTINGS
@given(documents())
def test_the_printed_sign_says_whether_the_limit_is_met(document: dict[str, Any]) -> None:
    """Oracle: the verdict. A check that judges for itself (the seam's steel, the cup's floor) is left out."""
    design = _designed(document)
    for check in _computed(design.checks) if design else []:
        assert check.finding is not None
        if check.finding.verdict is None:
            met = re.search(" [≤≥] ", check.substituted) is not None
            assert met == (check.verdict == "pass"), (check.code, check.substituted, check.verdict)


@pytest.mark.parametrize("path", sorted(SAMPLES.glob("*.json")), ids=lambda p: p.stem)
def test_the_sample_jobs_can_be_redone_line_by_line(path: Path) -> None:
    """Oracle: interval arithmetic on every printed line; no sample but the one without a pad may be passed over."""
    design = _designed(json.loads(path.read_text(encoding="utf-8")))
    assert (design is None) == ("no_pad" in path.stem)
    lines = [(text, value) for c in _computed(design.checks) for _, text, value in _sides(c)] if design else []
    assert len(lines) >= 40 or design is None
    for text, value in lines:
        assert all(_agrees(part, value) for part in text.split(" = ")), (text, value)
