"""Typeset formulas: structure by MathML Core, and text that Typst can set."""

import xml.etree.ElementTree as ET

import pytest
import typst

from geometry import (
    design,  # noqa: F401 - importing it registers every rule
    formulas,
)
from geometry.bound_rules import BOUND_RULES
from geometry.mathml import mathml, mathml_equation, typst_math
from geometry.rules import CHECK_RULES

FORMULAS = sorted(
    {rule.formula for rule in BOUND_RULES} | {f for r in CHECK_RULES.values() for f in (r.formula, r.limit_formula)}
)
CORE = {"math", "mrow", "mi", "mn", "mo", "mfrac", "msqrt", "msub", "msup", "mtext"}
CHILDREN = {"mfrac": 2, "msub": 2, "msup": 2}
"""How many children MathML Core asks for."""


def inside(formula: str) -> str:
    """What stands between the tags of the whole."""
    return mathml(formula).removeprefix('<math displaystyle="true">').removesuffix("</math>")


@pytest.mark.parametrize(
    ("formula", "expected"),
    [
        ("sigma_allow", "<msub><mi>σ</mi><mi>allow</mi></msub>"),
        ("t_1", "<msub><mi>t</mi><mn>1</mn></msub>"),
        ("a / b", "<mfrac><mrow><mi>a</mi></mrow><mrow><mi>b</mi></mrow></mfrac>"),
        ("sqrt(3)", "<msqrt><mrow><mn>3</mn></mrow></msqrt>"),
        ("e**2", "<msup><mrow><mi>e</mi></mrow><mrow><mn>2</mn></mrow></msup>"),
        ("2 * pi", "<mn>2</mn><mo>·</mo><mi>π</mi>"),
        ("a - (b - c)", "<mi>a</mi><mo>−</mo><mrow><mo>(</mo><mi>b</mi><mo>−</mo><mi>c</mi><mo>)</mo></mrow>"),
        ("a - b - c", "<mi>a</mi><mo>−</mo><mi>b</mi><mo>−</mo><mi>c</mi>"),
        (
            "min(a, b)",
            "<mrow><mi>min</mi><mo>&#x2061;</mo><mrow><mo>(</mo><mi>a</mi><mo>,</mo><mi>b</mi><mo>)</mo></mrow></mrow>",
        ),
        ("-a", "<mrow><mo>−</mo><mi>a</mi></mrow>"),
    ],
)
def test_each_piece_has_its_element(formula: str, expected: str) -> None:
    """Oracle: MathML Core, written by hand."""
    assert inside(formula) == expected


@pytest.mark.parametrize("formula", FORMULAS)
def test_every_formula_is_well_formed_core(formula: str) -> None:
    """Oracle: an XML parser, the elements of MathML Core and how many children each must have."""
    root = ET.fromstring(mathml(formula))  # noqa: S314 - our own text
    for element in root.iter():
        assert element.tag in CORE
        assert len(element) == CHILDREN.get(element.tag, len(element))


@pytest.mark.parametrize("formula", FORMULAS)
def test_the_typeset_formula_holds_every_symbol_as_often_as_the_text(formula: str) -> None:
    """Oracle: the symbols of the plain text."""
    text = "".join(ET.fromstring(mathml(formula)).itertext())  # noqa: S314 - our own text
    for name in formulas.symbols(formula):
        assert formulas.pretty(name).replace("_", "") in text


def test_a_power_of_a_sum_keeps_its_parentheses() -> None:
    assert "<mo>(</mo><mi>a</mi><mo>+</mo><mi>b</mi><mo>)</mo>" in inside("(a + b)**2")


def test_nothing_but_arithmetic_is_typeset() -> None:
    with pytest.raises(ValueError, match="may not contain"):
        mathml("'<script>'")


def test_a_symbol_and_its_formula_make_an_equation() -> None:
    assert mathml_equation("F_d", "2").count("<mo>=</mo>") == 1


def test_typst_sets_every_formula() -> None:
    """Oracle: the Typst compiler."""
    source = "\n\n".join(f"$ {typst_math(f)} $" for f in FORMULAS)
    assert typst.compile(source.encode(), format="pdf").startswith(b"%PDF-")


def test_typst_quotes_words_and_keeps_single_letters() -> None:
    assert typst_math("cup_bore / e") == 'frac("cup"_"bore", e)'


def test_there_are_formulas_to_typeset() -> None:
    assert len(FORMULAS) > 50
