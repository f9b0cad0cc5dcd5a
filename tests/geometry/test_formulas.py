"""A formula is written once: printed, with numbers put in, and evaluated."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

import geometry.sizing  # noqa: F401 - registers every bound
from geometry.bound_rules import BOUND_RULES, BoundRule
from geometry.formulas import evaluate, pretty, shown, substituted, symbols
from geometry.habits import HABITS
from geometry.rules import CHECK_RULES, CheckRule


def test_brackets_stay_where_they_matter() -> None:
    assert pretty("a - (b - c)") == "a − (b − c)"
    assert pretty("(a - b) - c") == "a − b − c"
    assert pretty("(a + b) / (c * d)") == "(a + b) / (c · d)"
    assert pretty("(a + b)**2") == "(a + b)²"


def test_negative_numbers_are_put_in_brackets() -> None:
    assert substituted("1 + g", {"g": -0.5}) == "1 + (−0.5)"


def test_division_by_zero_is_infinite_and_no_crash() -> None:
    assert evaluate("F / A", {"F": 1, "A": 0}) == math.inf


def test_a_formula_may_hold_arithmetic_only() -> None:
    with pytest.raises(ValueError, match="may not contain"):
        evaluate("[1][0]", {})


@given(st.floats(1e-6, 1e9))
def test_a_shown_number_is_right_to_five_digits(value: float) -> None:
    assert float(shown(value)) == pytest.approx(value, rel=5.1e-5, abs=5e-10)


@pytest.mark.parametrize("rule", BOUND_RULES, ids=lambda r: f"{r.dimension}-{r.side}-{r.reason[:20]}")
def test_every_bound_is_printable_and_about_a_sized_dimension(rule: BoundRule) -> None:
    assert rule.dimension in HABITS
    assert pretty(rule.formula)


@pytest.mark.parametrize("rule", CHECK_RULES.values(), ids=lambda r: r.code)
def test_every_check_prints_its_formula_and_names_its_source(rule: CheckRule) -> None:
    assert pretty(rule.formula)
    assert len(rule.source.text) > 10
    assert symbols(rule.formula)
