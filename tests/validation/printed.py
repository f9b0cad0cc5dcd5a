"""Reads printed arithmetic back as a person with a calculator would, and how far the printed digits leave it open.

A printed number stands for all numbers that round to it at five significant digits; intervals carry that doubt through.
"""

import ast
import math
import re
from collections.abc import Callable

Interval = tuple[float, float]
_SIGNS = {"√": "sqrt", "·": "*", "−": "-", "²": "**2", "³": "**3", "π": "pi", "∞": "inf", "^": "**"}
_MONOTONE: dict[str, Callable[[float], float]] = {
    "sqrt": lambda x: math.sqrt(max(0.0, x)),
    "ln": math.log,
    "atan": math.atan,
    "deg": math.degrees,
    "sin": math.sin,
}
"""Rising functions; the sine only of the lean of a car, far below a right angle."""


def doubt(value: float) -> float:
    """Half of the last digit that is printed of a number."""
    if not value or not math.isfinite(value):
        return 0.0
    return max(0.5 * 10.0 ** (math.floor(math.log10(abs(value))) - 4), 0.5e-9)


def read_back(text: str) -> Interval:
    """What a printed expression can mean.

    >>> low, high = read_back("9000 / (2 · 60)")
    >>> low < 75 < high
    True
    """
    plain = re.sub("|".join(map(re.escape, _SIGNS)), lambda found: _SIGNS[found[0]], text)
    return _read(ast.parse(plain, mode="eval").body)


def agrees(text: str, result: str) -> bool:
    """Whether a printed expression and a printed result can mean the same number."""
    low, high = read_back(text)
    least, most = read_back(result)
    slack = 1e-9 * max(abs(low), abs(high)) if math.isfinite(high) else 0.0
    return low - slack <= most and least <= high + slack


def _read(node: ast.expr) -> Interval:
    match node:
        case ast.Constant(value=int() | float() as number):
            return number - doubt(number), number + doubt(number)
        case ast.Name(id=name):
            return {"inf": (math.inf, math.inf), "pi": (math.pi, math.pi)}[name]
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            low, high = _read(operand)
            return -high, -low
        case ast.Call(func=ast.Name(id=name), args=args):
            return _call(name, [_read(a) for a in args])
        case ast.BinOp(left=left, op=ast.Pow(), right=ast.Constant(value=int() | float() as exponent)):
            return _power(_read(left), exponent)
        case ast.BinOp(left=left, op=op, right=right):
            return _operate(op, _read(left), _read(right))
    raise AssertionError(f"a printed line contains {ast.unparse(node)}, which nobody can redo")


def _call(name: str, args: list[Interval]) -> Interval:
    if name in {"min", "max"}:
        pick: Callable[..., float] = min if name == "min" else max
        return pick(a[0] for a in args), pick(a[1] for a in args)
    if name == "acos":
        return math.acos(min(1.0, args[0][1])), math.acos(max(-1.0, args[0][0]))
    rising = _MONOTONE[name]
    return rising(args[0][0]), rising(args[0][1])


def _power(base: Interval, exponent: float) -> Interval:
    is_whole = exponent == int(exponent)
    ends = [float(max(0.0, x) ** exponent) if not is_whole else float(x**exponent) for x in base]
    if exponent % 2 == 0 and base[0] < 0 < base[1]:
        return 0.0, max(ends)
    return min(ends), max(ends)


def _operate(op: ast.operator, a: Interval, b: Interval) -> Interval:
    match op:
        case ast.Add():
            return a[0] + b[0], a[1] + b[1]
        case ast.Sub():
            return a[0] - b[1], a[1] - b[0]
        case ast.Mult():
            ends = [0.0 if 0 in (x, y) else x * y for x in a for y in b]
            return min(ends), max(ends)
        case ast.Div() if not b[0] <= 0 <= b[1]:
            ends = [0.0 if math.isinf(y) else x / y for x in a for y in b]
            return min(ends), max(ends)
        case ast.Div():
            # The divisor may be next to nothing: of two positive numbers the quotient is then large, and never negative.
            least = a[0] / b[1] if a[0] > 0 and b[1] > 0 else -math.inf
            return (math.inf, math.inf) if b == (0, 0) else (least, math.inf)
    raise AssertionError(f"a printed line contains {op!r}, which nobody can redo")
