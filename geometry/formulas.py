"""Formulas as text that people can read and a program can check.

A formula is written once, in plain arithmetic with the symbols of the engineering notes (``F_d / (t_b * L)``). From it
come the printed formula, the line with the numbers put in, and the value that a test compares with the code.
"""

import ast
import math
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

_FUNCTIONS: Mapping[str, Callable[..., float]] = {
    "sqrt": math.sqrt,
    "ln": math.log,
    "atan": math.atan,
    "sin": math.sin,
    "acos": math.acos,
    "min": min,
    "max": max,
    "deg": math.degrees,
}
_GREEK = {
    "sigma": "σ",
    "alpha": "α",
    "delta": "δ",
    "pi": "π",
    "tau": "τ",
    "nu": "ν",
    "mu": "μ",
    "theta": "θ",
    "phi": "φ",
}
_OPERATORS: dict[type[ast.operator], tuple[str, int]] = {
    ast.Add: (" + ", 1),
    ast.Sub: (" − ", 1),
    ast.Mult: (" · ", 2),
    ast.Div: (" / ", 2),
    ast.Pow: ("^", 4),
}
_POWERS: Mapping[object, str] = {2: "²", 3: "³"}

_LEAST_PLAIN, _MOST_PLAIN = 1e-4, 99_999
"""Between these the language's own five digits need no power of ten."""


@lru_cache(maxsize=4096)
def shown(value: float) -> str:
    """A number as sheets print it: five significant digits, never in powers of ten.

    >>> shown(9238.3041), shown(0.0028), shown(67.2)
    ('9238.3', '0.0028', '67.2')
    """
    if _LEAST_PLAIN <= abs(value) < _MOST_PLAIN:
        return f"{value:.5g}".replace("-", "−")
    if not math.isfinite(value):
        return "∞" if value > 0 else "−∞"
    digits = 4 - (math.floor(math.log10(abs(value))) if value else 0)
    text = f"{value:.{max(0, min(digits, 9))}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text.replace("-", "−")


@lru_cache(maxsize=512)
def _tree(formula: str) -> ast.expr:
    return ast.parse(formula, mode="eval").body


def renamed(formula: str, names: Mapping[str, str]) -> str:
    """A formula with some of its symbols replaced by other ones, or by sums in parentheses.

    >>> renamed("q / (2 * web)", {"web": "web_f"})
    'q / (2 * web_f)'
    """
    return re.sub(r"[A-Za-z_]\w*", lambda found: names.get(found[0], found[0]), formula)


def evaluate(formula: str, numbers: Mapping[str, float]) -> float:
    """The value of a formula with ``numbers`` put in for its symbols.

    >>> evaluate("F_d / (t_b * L)", {"F_d": 9000, "t_b": 2, "L": 60})
    75.0
    """
    return _value(_tree(formula), numbers)


def _value(node: ast.expr, numbers: Mapping[str, float]) -> float:
    match node:
        case ast.Constant(value=int() | float() as number):
            return float(number)
        case ast.Name(id="pi"):
            return math.pi
        case ast.Name(id=name):
            return numbers[name]
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return -_value(operand, numbers)
        case ast.Call(func=ast.Name(id=name), args=args):
            return float(_FUNCTIONS[name](*(_value(a, numbers) for a in args)))
        case ast.BinOp(left=left, op=op, right=right):
            return _operate(op, _value(left, numbers), _value(right, numbers))
    raise ValueError(f"a formula may not contain {ast.unparse(node)!r}")


def _operate(op: ast.operator, a: float, b: float) -> float:
    match op:
        case ast.Add():
            return a + b
        case ast.Sub():
            return a - b
        case ast.Mult():
            return a * b
        case ast.Div():
            return a / b if b else math.copysign(math.inf, a)
        case ast.Pow():
            return float(a**b)
    raise ValueError(f"a formula may not contain the operator {op!r}")


def symbols(formula: str) -> tuple[str, ...]:
    """The symbols of a formula in the order in which they are read.

    >>> symbols("F_d / (t_b * L)")
    ('F_d', 't_b', 'L')
    """
    names = [n.id for n in ast.walk(_tree(formula)) if isinstance(n, ast.Name)]
    functions = {
        n.func.id for n in ast.walk(_tree(formula)) if isinstance(n, ast.Call) and isinstance(n.func, ast.Name)
    }
    return tuple(dict.fromkeys(n for n in names if n not in functions and n != "pi"))


@dataclass(frozen=True, slots=True)
class _Place:
    """Where a symbol stands in a formula, and how tightly its neighbours bind."""

    name: str
    outer: int


@lru_cache(maxsize=512)
def pretty(formula: str) -> str:
    """A formula as printed.

    >>> pretty("sqrt(3) * q / (2 * sigma_allow)")
    '√(3) · q / (2 · σ_allow)'
    """
    return "".join(part if isinstance(part, str) else symbol_text(part.name) for part in _parts(formula))


def substituted(formula: str, numbers: Mapping[str, float]) -> str:
    """A formula with the numbers put in, as printed.

    >>> substituted("F_d / (t_b * L)", {"F_d": 9000, "t_b": 2, "L": 60})
    '9000 / (2 · 60)'
    """
    form, places = _form(formula)
    return form.format(*[_put_in(numbers[place.name], place.outer) for place in places])


@lru_cache(maxsize=512)
def _form(formula: str) -> tuple[str, tuple[_Place, ...]]:
    """A formula as printed, with gaps for its numbers, and the symbol of each gap."""
    parts = _parts(formula)
    form = "".join(part if isinstance(part, str) else "{}" for part in parts)
    return form, tuple(part for part in parts if not isinstance(part, str))


@lru_cache(maxsize=512)
def _parts(formula: str) -> tuple[str | _Place, ...]:
    """A formula taken apart once: its printed signs, and the places of its symbols."""
    return tuple(_walk(_tree(formula), 0))


def _walk(node: ast.expr, outer: int) -> Iterator[str | _Place]:
    match node:
        case ast.Constant(value=int() | float() as number):
            yield f"{number:.9g}"
        case ast.Name(id="pi"):
            yield "π"
        case ast.Name(id=name):
            yield _Place(name, outer)
        case ast.UnaryOp(operand=operand):
            yield "−"
            yield from _walk(operand, 3)
        case ast.Call(func=ast.Name(id=name), args=args):
            yield f"{'√' if name == 'sqrt' else name}("
            for i, argument in enumerate(args):
                yield ", " if i else ""
                yield from _walk(argument, 0)
            yield ")"
        case ast.BinOp(left=left, op=op, right=right):
            sign, rank = _OPERATORS[type(op)]
            power = _POWERS.get(right.value) if isinstance(op, ast.Pow) and isinstance(right, ast.Constant) else None
            yield "(" if rank < outer else ""
            yield from _walk(left, rank + 1 if power else rank)
            yield power or sign
            yield from () if power else _walk(right, rank + 1)
            yield ")" if rank < outer else ""
        case _:
            raise ValueError(f"a formula may not contain {ast.unparse(node)!r}")


def _put_in(value: float, outer: int) -> str:
    text = shown(value)
    return f"({text})" if text.startswith("−") and outer > 0 else text


def symbol_text(name: str) -> str:
    """A symbol as printed.

    >>> symbol_text("sigma_allow")
    'σ_allow'
    """
    head, _, tail = name.partition("_")
    head = _GREEK.get(head, head)
    return f"{head}_{tail}" if tail else head
