"""The numbers of one bound in words, from which every “because” is made."""

from collections.abc import Callable

from geometry.design import Design
from geometry.ledger import Bound
from geometry.rules import Numbers

Phrase = Callable[["Told"], str]
"""What follows “because” for one bound."""
_WET = {"dry": "dry", "room": "in room air", "soaked": "soaked"}


class Told:
    """The numbers of one bound, in words."""

    def __init__(self, design: Design, bound: Bound, size_mm: float) -> None:
        self.design, self.bound, self.size_mm = design, bound, size_mm
        self.numbers: Numbers = bound.numbers

    def mm(self, symbol: str) -> str:
        """A length of the bound's formula."""
        return length(self.numbers[symbol])

    def measured(self, symbol: str, uncertainty: str = "u") -> str:
        """A measured length with its uncertainty."""
        return f"{self.mm(symbol)} ± {self.mm(uncertainty)}"

    def hot(self) -> str:
        """How much the size grows at the hottest and wettest."""
        c = self.design.conditions
        by = c.measurements.service
        growth = self.size_mm * c.g_hot
        verb = "grows" if growth >= 0 else "shrinks"
        return (
            f"{c.material.short_name} {verb} {length(abs(growth))} by {by.temperature_high_c:g} °C {_WET[by.wetness]}"
        )

    def cold(self) -> str:
        """How much it shrinks at the coldest."""
        c = self.design.conditions
        shrinkage = -self.size_mm * c.g_cold
        verb = "shrinks" if shrinkage >= 0 else "grows"
        low = f"{c.measurements.service.temperature_low_c:g}".replace("-", "−")
        return f"{c.material.short_name} {verb} {length(abs(shrinkage))} by {low} °C"


def length(value_mm: float) -> str:
    """A length inside a sentence, to a hundredth.

    >>> length(67.0), length(-0.234)
    ('67', '−0.23')
    """
    return f"{value_mm:.2f}".rstrip("0").rstrip(".").replace("-", "−")
