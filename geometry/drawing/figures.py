"""Sizes, tolerances and limits as figures on a sheet: mm, inches, fractions of one or both, rounded so that nothing bad passes."""

from collections.abc import Callable
from fractions import Fraction
from math import floor

from geometry.drawing.facts import FigureUnit, Unit, Units
from geometry.drawing.model import Measure
from geometry.units import LowerLimit, UpperLimit, in_unit, inch_to_mm, mm_to_inch

_PARTS, _SAME_INCH = 64, 0.0005
"""Steps of a fractional inch, and how near a size must be to one to be written so: half of the last decimal."""
NEARLY = 1e-6
"""Numbers nearer than this are the same."""
_CONVERTED_DIGITS = {"mm": 2, "in": 3}
"""Decimals of a converted size: a hundredth of a millimetre, a thousandth of an inch."""


def length_words(length_mm: float, units: Units) -> str:
    """A length as it stands on the sheet: ``67.2``, ``2.646``, ``67.2 [2.646]``, or ``2 29/64`` where it is that.

    >>> length_words(67.2, "mm"), length_words(67.2, "in"), length_words(67.2, "dual")
    ('67.2', '2.646', '67.2 [2.646]')
    >>> length_words(62.31, "in_fraction"), length_words(67.2, "in_fraction"), length_words(25.4, "in_fraction")
    ('2 29/64', '2.646', '1')
    """
    if units == "in_fraction" and (fraction := _fraction_words(length_mm)):
        return fraction
    return shown_in(units, plain(length_mm), _inch_words(length_mm))


def _inch_words(length_mm: float) -> str:
    """Three decimals, and four for a sixteenth that needs them: a part of the inch is not rounded away.

    >>> _inch_words(103.1875), _inch_words(67.2), _inch_words(3.175)
    ('4.0625', '2.646', '0.125')
    """
    inch = mm_to_inch(length_mm)
    is_sixteenth = abs(inch * 16 - round(inch * 16)) < NEARLY and abs(inch * 1000 - round(inch * 1000)) > NEARLY
    return f"{inch:.{4 if is_sixteenth else 3}f}"


def shown_in(units: Units, metric: str, inch: str) -> str:
    """One figure in either unit, or both, as a sheet has them.

    >>> shown_in("mm", "67.2", "2.646"), shown_in("dual", "67.2", "2.646"), shown_in("in_fraction", "67.2", "2.646")
    ('67.2', '67.2 [2.646]', '2.646')
    """
    return {"mm": metric, "dual": f"{metric} [{inch}]"}.get(units, inch)


def tolerance_words(tolerance_mm: float, unit: Unit) -> str:
    """A tolerance or the width of a zone; in inches rounded down to the last figure, so that it is no wider than the true one.

    >>> tolerance_words(0.3, "mm"), tolerance_words(0.3, "in"), tolerance_words(0.1, "in")
    ('0.3', '0.0118', '0.0039')
    """
    if unit == "mm":
        return plain(tolerance_mm)
    return f"{floor(mm_to_inch(tolerance_mm) * 10_000 + NEARLY) / 10_000:.4f}"


def in_figures(length_mm: float, unit: FigureUnit, *, words: Callable[[float, Unit], str]) -> str:
    """A length by one of the functions here, where it stands among figures that may be of another unit.

    >>> in_figures(0.3, "[in]", words=tolerance_words), in_figures(0.5, "mm", words=length_words)
    ('[0.0118]', '0.5')
    """
    return f"[{words(length_mm, 'in')}]" if unit == "[in]" else words(length_mm, unit)


def _fraction_words(length_mm: float) -> str:
    """Whole inches and 64ths in lowest terms; nothing where the size is no 64th."""
    length_in = mm_to_inch(length_mm)
    parts = round(length_in * _PARTS)
    if parts == 0 or abs(parts / _PARTS - length_in) > _SAME_INCH:
        return ""
    whole, rest = divmod(Fraction(parts, _PARTS), 1)
    return " ".join(str(part) for part in (whole, rest) if part)


def converted_mm(length_mm: float, unit: Unit) -> float:
    """A size of the other unit's job, rounded to a hundredth of a millimetre or a thousandth of an inch.

    >>> converted_mm(103.1875, "mm"), round(mm_to_inch(converted_mm(46.5, "in")), 6)
    (103.19, 1.831)
    """
    one = 1.0 if unit == "mm" else inch_to_mm(1.0)
    digits = _CONVERTED_DIGITS[unit]
    # 0.425 in are 10.795 mm, which no binary number is: nearly a half goes up.
    return round(length_mm / one + (NEARLY if unit == "mm" else 0.0), digits) * one


def converted_tolerance_mm(tolerance_mm: float, unit: Unit, *, lost_mm: float) -> float:
    """A plus-and-minus in the other unit that lets nothing pass that the true one stops: rounded down, less what rounding moved.

    >>> round(mm_to_inch(converted_tolerance_mm(0.1, "in", lost_mm=0.0)), 6)
    0.0039
    """
    step = 0.01 if unit == "mm" else inch_to_mm(0.0001)
    return max(0, floor((tolerance_mm - lost_mm) / step + NEARLY)) * step


def limit_words(measure: Measure, units: Units) -> tuple[str, str]:
    """Lower and upper limit of a size as figures; in inches both are rounded inwards, so that none is wider than the true one."""
    return limit_shown(LowerLimit(measure.lower_mm), units), limit_shown(UpperLimit(measure.upper_mm), units)


def limit_shown(limit_mm: LowerLimit | UpperLimit, units: Units) -> str:
    """One limit as figures, never a fraction; in inches rounded to the part's side.

    >>> limit_shown(LowerLimit(66.3), "in"), limit_shown(UpperLimit(67.3), "dual"), limit_shown(UpperLimit(67.3), "in_fraction")
    ('2.611', '67.3 [2.649]', '2.649')
    """
    return shown_in(units, plain(limit_mm), f"{in_unit(limit_mm, 'in', 3):.3f}")


def is_round(length_mm: float, unit: Unit) -> bool:
    """Whether a size is one of a unit's own: a thousandth of it, or a 64th of an inch."""
    steps = length_mm * 1000 if unit == "mm" else mm_to_inch(length_mm) * 1000
    parts = mm_to_inch(length_mm) * _PARTS
    return abs(steps - round(steps)) < NEARLY or (unit == "in" and abs(parts - round(parts)) < NEARLY)


def plain(value: float) -> str:
    """A number with as many of three decimals as it needs."""
    return f"{value:.3f}".rstrip("0").rstrip(".")
