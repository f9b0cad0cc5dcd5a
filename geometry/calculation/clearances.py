"""Clearances at both extremes: nominal, with everything against you, and by the root of the sum of squares."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from geometry import formulas
from geometry.calculation.book import Book
from geometry.case import Case
from geometry.feet.facts import Locates
from geometry.fits import linear_tolerance_mm, root_sum_square_mm


@dataclass(frozen=True, slots=True)
class Figure:
    """One clearance with the formula that it comes from."""

    formula: str
    substituted: str
    value: float

    @property
    def result(self) -> str:
        """The number as printed."""
        return formulas.shown(self.value)


@dataclass(frozen=True, slots=True)
class Clearance:
    """One fit at one extreme, all in mm."""

    title: str
    extreme: str
    nominal: Figure
    least: Figure
    """Everything against you: tight."""
    most: Figure
    """Everything against you: loose."""
    spread: Figure
    """Statistical deviation, plus and minus, of independent errors."""

    @property
    def heading(self) -> str:
        """The fit, and at which extreme."""
        return f"{self.title}, {'hot and wet' if self.extreme == 'hot' else 'cold and dry'}"

    @property
    def figures(self) -> tuple[tuple[str, Figure], ...]:
        """Every figure with what it is."""
        return (
            ("at nominal sizes", self.nominal),
            ("worst case, tight", self.least),
            ("worst case, loose", self.most),
            ("statistical spread, plus and minus", self.spread),
        )

    @property
    def statistical_words(self) -> str:
        """What is likely, beside the worst that can be."""
        least, most = self.statistical
        return f"Statistically, by the root of the sum of squares, {least} to {most} mm; the worst case decides."

    @property
    def statistical(self) -> tuple[str, str]:
        """Least and most by the root of the sum of squares, as printed."""
        return (
            formulas.shown(self.nominal.value - self.spread.value),
            formulas.shown(self.nominal.value + self.spread.value),
        )


@dataclass(frozen=True, slots=True)
class _Fit:
    title: str
    symbol: str
    dimension: str
    clearance: str
    """The clearance with ``S`` for the size and ``U`` for what the measurement may be off, towards loose."""


_SEAT = _Fit("Seat in the cup, on the diameter", "seat", "seat_diameter_mm", "cup_bore + U - (seat - T) * (1 + G)")
_SKIRT = _Fit(
    "Skirt around the plate's edge, on the diameter", "skirt", "skirt_bore_mm", "(skirt + T) * (1 + G) - around + U"
)
_SLOT = _Fit("Seam in the slot, across", "slot", "slot_width_mm", "(slot + T) * (1 + G) - t + U - bow")
_PLUG = _Fit("Plug in its hole, across", "plug_w", "plug_width_mm", "w_h + U - (plug_w - T) * (1 + G)")
_PLUG_LENGTH = _Fit("Plug in its hole, along", "plug_l", "plug_length_mm", "l_h + U - (plug_l - T) * (1 + G)")
_STEM = _Fit("Stem in its hole, on the diameter", "stem", "stem_diameter_mm", "hole + U - (stem - T) * (1 + G)")
_POST = _Fit("Stem in the bore, on the diameter", "stem", "stem_diameter_mm", "bore + U - (stem - T) * (1 + G)")
_OF_FOOT: Mapping[Locates, _Fit] = MappingProxyType({"seat": _SEAT, "skirt": _SKIRT, "stem": _POST})
"""The fit of what keeps the pad in its place."""
EXTREMES = (("hot", "g_hot"), ("cold", "g_cold"))


def clearances(book: Book, k: Case) -> tuple[Clearance, ...]:
    """Every fit of the pad at both extremes."""
    locates = k.c.foot.locates
    foot, has_more = _OF_FOOT[locates], k.pad.has_stem and locates != "stem"
    fits = (foot, *_of_head(k), *((_STEM,) if has_more else ()))
    return tuple(_at(book, k, fit, extreme, growth) for fit in fits for extreme, growth in EXTREMES)


def _of_head(k: Case) -> tuple[_Fit, ...]:
    """How a seam lies in its slot, or a plug in its hole; nothing lies in a cushion."""
    if k.pad.has_slot:
        return (_SLOT,)
    if k.c.head.kind == "plug":
        return (_PLUG,) if k.c.pocket.is_round else (_PLUG, _PLUG_LENGTH)
    return ()


def _at(book: Book, k: Case, fit: _Fit, extreme: str, growth: str) -> Clearance:
    tolerance = linear_tolerance_mm(getattr(k.pad, fit.dimension))
    nominal, least, most = (_figure(book, fit, text) for text in _cases(fit, growth))
    grown = tolerance * (1 + book.number(growth))
    spread = _figure(book, fit, f"sqrt(u**2 + (tol * (1 + {growth}))**2)", root_sum_square_mm(k.c.u, grown))
    return Clearance(k.c.said(fit.title), extreme, nominal, least, most, spread)


def _cases(fit: _Fit, growth: str) -> Iterator[str]:
    """The formulas of nominal, least and most clearance."""
    text = fit.clearance.replace("G", growth)
    yield text.replace(" + U", "").replace(f"({fit.symbol} - T)", fit.symbol).replace(f"({fit.symbol} + T)", fit.symbol)
    opposite = text.replace("+ U", "- u")
    swapped = opposite.replace("- T", "+ tol") if "- T" in opposite else opposite.replace("+ T", "- tol")
    yield swapped
    yield text.replace("U", "u").replace("T", "tol")


def _figure(book: Book, fit: _Fit, formula: str, value: float | None = None) -> Figure:
    numbers = {name: book.number(name, fit.dimension) for name in formulas.symbols(formula)}
    worked_out = formulas.evaluate(formula, numbers) if value is None else value
    return Figure(formula, formulas.substituted(formula, numbers), worked_out)
