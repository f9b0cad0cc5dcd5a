"""The numbers of one bound in words, from which every “because” is made."""

from collections.abc import Callable

from geometry.calculation.inputs import is_assumed
from geometry.design import Design
from geometry.heads.slot.around import unmarked_length_mm
from geometry.ledger import Bound
from geometry.rules import Numbers

Phrase = Callable[["Told"], str]
"""What follows “because” for one bound."""
_SAME_LENGTH_MM = 1e-6
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
        """A measured length with its uncertainty; what nobody measured says so."""
        return f"{self.mm(symbol)} ± {self.mm(uncertainty)}{self._assumed(symbol)}"

    def given(self, symbol: str) -> str:
        """A length that was given without an uncertainty; one that nobody gave says so."""
        return f"{self.mm(symbol)}{self._assumed(symbol)}"

    def _assumed(self, symbol: str) -> str:
        nobody_gave = (is_assumed(behind, self.design.conditions) for behind in self._behind(symbol))
        return " (assumed)" if all(nobody_gave) else ""

    def _behind(self, symbol: str) -> set[str]:
        """The measured symbols that a length is: itself, or the least of several."""
        if symbol != "clear":
            return {symbol}
        seam = self.design.conditions.seam
        sides = {"clear_out": seam.clear_outboard_mm, "clear_in": seam.clear_inboard_mm}
        return {side for side, free_mm in sides.items() if free_mm == min(sides.values())}

    def carried_edge(self) -> str:
        """How much of the seam's edge is carried, so that it leaves no lasting mark or as little of one as can be."""
        carried, wanted = self.numbers["L_m"], unmarked_length_mm(self.bound.draft)
        told = f"{length(carried)} of the seam's edge"
        if carried >= wanted - _SAME_LENGTH_MM:
            return f"{told} must be carried to stay a fifth below what leaves a lasting mark"
        seam = self.design.conditions.seam
        limit = "the lip can carry"
        if carried >= seam.straight_length_mm - _SAME_LENGTH_MM:
            limit = f"is straight{self._assumed('straight')}"
        return f"{told} is as much as {limit}; to stay a fifth below what leaves a lasting mark it would take {length(wanted)}"

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
