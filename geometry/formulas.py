"""Formulas as text that people can read and a program can check.

A formula is written once, in plain arithmetic with the symbols of the engineering notes (``F_d / (t_b * L)``). From it
come the printed formula, the line with the numbers put in, and the value that a test compares with the code.
"""

import ast
import math
from collections.abc import Mapping
from functools import lru_cache

_FUNCTIONS = {
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


def shown(value: float) -> str:
    """A number as sheets print it: five significant digits, never in powers of ten.

    >>> shown(9238.3041), shown(0.0028), shown(67.2)
    ('9238.3', '0.0028', '67.2')
    """
    if not math.isfinite(value):
        return "∞" if value > 0 else "−∞"
    digits = 4 - (math.floor(math.log10(abs(value))) if value else 0)
    text = f"{value:.{max(0, min(digits, 9))}f}"
    return (text.rstrip("0").rstrip(".") if "." in text else text).replace("-", "−")


@lru_cache(maxsize=512)
def _tree(formula: str) -> ast.expr:
    return ast.parse(formula, mode="eval").body


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


def pretty(formula: str) -> str:
    """A formula as printed.

    >>> pretty("sqrt(3) * q / (2 * sigma_allow)")
    '√(3) · q / (2 · σ_allow)'
    """
    return _text(_tree(formula), None, 0)


def substituted(formula: str, numbers: Mapping[str, float]) -> str:
    """A formula with the numbers put in, as printed.

    >>> substituted("F_d / (t_b * L)", {"F_d": 9000, "t_b": 2, "L": 60})
    '9000 / (2 · 60)'
    """
    return _text(_tree(formula), numbers, 0)


def _text(node: ast.expr, numbers: Mapping[str, float] | None, outer: int) -> str:
    match node:
        case ast.Constant(value=int() | float() as number):
            return f"{number:.9g}"
        case ast.Name(id=name):
            return _name(name) if numbers is None or name == "pi" else _put_in(numbers[name], outer)
        case ast.UnaryOp(operand=operand):
            return f"−{_text(operand, numbers, 3)}"
        case ast.Call(func=ast.Name(id=name), args=args):
            inside = ", ".join(_text(a, numbers, 0) for a in args)
            return f"{'√' if name == 'sqrt' else name}({inside})"
        case ast.BinOp(left=left, op=op, right=right):
            sign, rank = _OPERATORS[type(op)]
            text = f"{_text(left, numbers, rank)}{sign}{_text(right, numbers, rank + 1)}"
            if isinstance(op, ast.Pow) and isinstance(right, ast.Constant) and right.value in {2, 3}:
                text = f"{_text(left, numbers, rank + 1)}{'²' if right.value == 2 else '³'}"
            return f"({text})" if rank < outer else text
    raise ValueError(f"a formula may not contain {ast.unparse(node)!r}")


def _put_in(value: float, outer: int) -> str:
    text = shown(value)
    return f"({text})" if text.startswith("−") and outer > 0 else text


def _name(name: str) -> str:
    head, _, tail = name.partition("_")
    head = _GREEK.get(head, head)
    return f"{head}_{tail}" if tail else head
