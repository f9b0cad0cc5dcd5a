"""Formulas typeset: MathML for the page and Typst for paper, both from the one text that the program evaluates."""

import ast
from collections.abc import Mapping, Sequence
from functools import lru_cache
from html import escape
from typing import Protocol

from geometry import formulas

_LONG_NAMES = {"atan": "arctan", "acos": "arccos"}
_SUM, _PRODUCT, _SIGN, _POWER, _WHOLE = 1, 2, 3, 4, 5
"""How tightly a piece binds; one that binds less than its place asks for is put in parentheses."""
_INFIX: Mapping[type[ast.operator], tuple[str, int]] = {
    ast.Add: ("+", _SUM),
    ast.Sub: ("−", _SUM),
    ast.Mult: ("·", _PRODUCT),
}


class Pen(Protocol):
    """One language of typeset formulas: each piece made of pieces that are typeset already."""

    def number(self, text: str) -> str:
        """A number, digits and sign."""

    def symbol(self, head: str, tail: str) -> str:
        """A symbol and what stands below it."""

    def fraction(self, above: str, below: str) -> str:
        """One over the other."""

    def root(self, inside: str) -> str:
        """A square root."""

    def power(self, base: str, exponent: str) -> str:
        """A power."""

    def call(self, name: str, arguments: Sequence[str]) -> str:
        """A named function."""

    def joined(self, left: str, sign: str, right: str) -> str:
        """Two pieces with a sign between them."""

    def negative(self, inside: str) -> str:
        """A minus in front."""

    def grouped(self, inside: str) -> str:
        """Parentheses around."""


class MathMLPen:
    """Presentation MathML Core."""

    def number(self, text: str) -> str:
        """Digits in one element; a minus is an operator."""
        if text.startswith("−"):
            return f"<mrow><mo>−</mo>{self.number(text[1:])}</mrow>"
        return f"<mi>{text}</mi>" if text == "∞" else f"<mn>{escape(text)}</mn>"

    def symbol(self, head: str, tail: str) -> str:
        """A single letter is slanted by itself, a word upright."""
        name = f"<mi>{escape(head)}</mi>"
        if not tail:
            return name
        below = f"<mn>{tail}</mn>" if tail.isdigit() else f"<mi>{escape(tail)}</mi>"
        return f"<msub>{name}{below}</msub>"

    def fraction(self, above: str, below: str) -> str:
        """A bar between two rows."""
        return f"<mfrac><mrow>{above}</mrow><mrow>{below}</mrow></mfrac>"

    def root(self, inside: str) -> str:
        """A radical over a row."""
        return f"<msqrt><mrow>{inside}</mrow></msqrt>"

    def power(self, base: str, exponent: str) -> str:
        """A raised exponent."""
        return f"<msup><mrow>{base}</mrow><mrow>{exponent}</mrow></msup>"

    def call(self, name: str, arguments: Sequence[str]) -> str:
        """The name, the invisible sign of application, and the arguments."""
        inside = "<mo>,</mo>".join(arguments)
        return f"<mrow><mi>{escape(name)}</mi><mo>&#x2061;</mo>{self.grouped(inside)}</mrow>"

    def joined(self, left: str, sign: str, right: str) -> str:
        """The sign is an operator, so that the reader's font spaces it."""
        return f"{left}<mo>{sign}</mo>{right}"

    def negative(self, inside: str) -> str:
        """A minus that stands close to what follows."""
        return f"<mrow><mo>−</mo>{inside}</mrow>"

    def grouped(self, inside: str) -> str:
        """Parentheses that grow with what they hold."""
        return f"<mrow><mo>(</mo>{inside}<mo>)</mo></mrow>"


class TypstPen:
    """Typst's own math language, without its dollars."""

    def number(self, text: str) -> str:
        """Digits as they are."""
        return text

    def symbol(self, head: str, tail: str) -> str:
        """Words are quoted, so that they are neither letters in a row nor names of Typst."""
        name = head if len(head) == 1 else _quoted(head)
        return f"{name}_{tail if len(tail) == 1 else _quoted(tail)}" if tail else name

    def fraction(self, above: str, below: str) -> str:
        """A bar between."""
        return f"frac({above}, {below})"

    def root(self, inside: str) -> str:
        """A radical."""
        return f"sqrt({inside})"

    def power(self, base: str, exponent: str) -> str:
        """A raised exponent; its parentheses are not printed."""
        return f"{base}^({exponent})"

    def call(self, name: str, arguments: Sequence[str]) -> str:
        """An upright name and its arguments."""
        return f"op({_quoted(name)}) ({', '.join(arguments)})"

    def joined(self, left: str, sign: str, right: str) -> str:
        """Blanks keep Typst from reading two pieces as one."""
        return f"{left} {'dot' if sign == '·' else sign} {right}"

    def negative(self, inside: str) -> str:
        """A minus in front."""
        return f"−{inside}"

    def grouped(self, inside: str) -> str:
        """Parentheses that are printed."""
        return f"({inside})"


def _quoted(words: str) -> str:
    return '"' + words.replace("\\", "\\\\").replace('"', '\\"') + '"'


_MATHML, _TYPST = MathMLPen(), TypstPen()
_OPEN = '<math displaystyle="true">'


@lru_cache(maxsize=512)
def mathml(formula: str) -> str:
    """A formula as a MathML element.

    >>> mathml("F_d / 2")
    '<math displaystyle="true"><mfrac><mrow><msub><mi>F</mi><mi>d</mi></msub></mrow><mrow><mn>2</mn></mrow></mfrac></math>'
    """
    return f"{_OPEN}{_set(_tree(formula), _MATHML)}</math>"


@lru_cache(maxsize=512)
def mathml_equation(symbol: str, formula: str, sign: str = "=") -> str:
    """A symbol, a sign and its formula as one MathML element.

    >>> mathml_equation("a", "2")
    '<math displaystyle="true"><mi>a</mi><mo>=</mo><mn>2</mn></math>'
    """
    left, right = _set(_tree(symbol), _MATHML), _set(_tree(formula), _MATHML)
    return f"{_OPEN}{left}<mo>{escape(sign)}</mo>{right}</math>"


def typst_math(formula: str) -> str:
    """A formula in Typst's math language, to stand between dollars.

    >>> typst_math("sqrt(3) * q / (2 * sigma_allow)")
    'frac(sqrt(3) dot q, 2 dot σ_"allow")'
    """
    return _set(_tree(formula), _TYPST)


def _tree(formula: str) -> ast.expr:
    return ast.parse(formula, mode="eval").body


def _set(node: ast.expr, pen: Pen, place: int = 0) -> str:
    """One piece, in parentheses where it binds less than ``place`` asks for."""
    text, binds = _piece(node, pen)
    return pen.grouped(text) if binds < place else text


def _piece(node: ast.expr, pen: Pen) -> tuple[str, int]:
    """One piece and how tightly it binds."""
    match node:
        case ast.Constant(value=int() | float() as number):
            return pen.number(f"{number:.9g}"), _WHOLE
        case ast.Name(id=name):
            head, _, tail = formulas.pretty(name).partition("_")
            return pen.symbol(head, tail), _WHOLE
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return pen.negative(_set(operand, pen, _SIGN)), _SIGN
        case ast.Call(func=ast.Name(id="sqrt"), args=[inside]):
            return pen.root(_set(inside, pen)), _WHOLE
        case ast.Call(func=ast.Name(id=name), args=arguments):
            return pen.call(_LONG_NAMES.get(name, name), [_set(a, pen) for a in arguments]), _WHOLE
        case ast.BinOp(op=ast.Div()):
            return pen.fraction(_set(node.left, pen), _set(node.right, pen)), _PRODUCT
        case ast.BinOp(op=ast.Pow()):
            return pen.power(_set(node.left, pen, _WHOLE), _set(node.right, pen)), _POWER
        case ast.BinOp(op=op) if type(op) in _INFIX:
            sign, binds = _INFIX[type(op)]
            # What follows a minus must bind more, or a − (b + c) would lose its parentheses.
            least = binds + 1 if isinstance(op, ast.Sub) else binds
            return pen.joined(_set(node.left, pen, binds), sign, _set(node.right, pen, least)), binds
    raise ValueError(f"a formula may not contain {ast.unparse(node)!r}")
