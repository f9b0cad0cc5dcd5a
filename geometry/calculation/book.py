"""Lines of arithmetic that stand one below the other, each made of numbers that stand above it."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from math import isclose

from geometry import formulas
from geometry.provenance import Source
from geometry.rules import Numbers
from geometry.symbols import symbol_in


@dataclass(frozen=True, slots=True)
class Line:
    """One quantity: what it is, how it is worked out, and what comes out."""

    symbol: str
    where: str
    """The check or the dimension whose own meaning the symbol has here; empty for the common one."""
    meaning: str
    value: float
    unit: str
    formula: str
    """Empty where the number is given."""
    numbers: Numbers
    source: Source | None
    """None for plain arithmetic, and for a dimension of the pad, whose reasons are in the ledger."""
    remark: str
    """Which branch of a rule was taken, or where a given number comes from."""

    @property
    def substituted(self) -> str:
        """The formula with the numbers put in; empty where the number is given."""
        return formulas.substituted(self.formula, self.numbers) if self.formula else ""

    @property
    def result(self) -> str:
        """The number as printed."""
        return formulas.shown(self.value)

    @property
    def result_with_unit(self) -> str:
        """The number as printed, with its unit."""
        return f"{self.result} {self.unit}".replace(" °", "°").replace("°C", " °C").rstrip()


@dataclass(slots=True)
class Book:
    """The lines so far, in parts."""

    parts: dict[str, list[Line]] = field(default_factory=dict)
    said: Callable[[str], str] = str
    """Turns the meanings of symbols into the words of a pad's own foot and head."""
    _part: str = ""

    def open(self, part: str) -> None:
        """Put what follows into a part."""
        self._part = part
        self.parts.setdefault(part, [])

    def write(
        self,
        symbol: str,
        value: float | None = None,
        *,
        formula: str = "",
        source: Source | None = None,
        where: str = "",
        tolerance_of: str = "",
        remark: str = "",
    ) -> float:
        """Add a line: a given number, or a formula of numbers that stand above; ``value`` is the design's, where it has one."""
        numbers = (
            {name: self.number(name, tolerance_of or where) for name in formulas.symbols(formula)} if formula else {}
        )
        worked_out = formulas.evaluate(formula, numbers) if value is None else value
        known = symbol_in(where, symbol)
        line = Line(symbol, where, self.said(known.meaning), worked_out, known.unit, formula, numbers, source, remark)
        self.parts[self._part].append(line)
        return worked_out

    def number(self, symbol: str, where: str = "") -> float:
        """The latest number of a symbol, in the meaning that it has there."""
        lines = [line for line in self if line.symbol == symbol]
        own = [line for line in lines if line.where == where] or [line for line in lines if not line.where]
        if not own:
            raise KeyError(f"no line above gives {symbol}")
        return own[-1].value

    def line_of(self, symbol: str, value: float) -> Line | None:
        """The line that a number of a formula was taken from."""
        return next((line for line in self if line.symbol == symbol and same(line.value, value)), None)

    def __iter__(self) -> Iterator[Line]:
        """Every line, from the top."""
        return (line for part in self.parts.values() for line in part)


def same(a: float, b: float) -> bool:
    """Whether two numbers are one and the same but for binary dust."""
    return a == b or isclose(a, b, rel_tol=1e-9, abs_tol=1e-12)
