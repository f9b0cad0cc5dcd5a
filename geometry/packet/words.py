"""Figures in words for paper: forces, masses and heights in the reader's units."""

from geometry.drawing.facts import SheetFacts
from geometry.making.wording import Units, length_shown
from geometry.rules import Check
from geometry.units import STANDARD_GRAVITY, kg_to_pound

VERDICTS = {
    "pass": "passes",
    "fail": "FAILS",
    "advice": "advice",
    "not_checked": "not checked",
    "not_applicable": "does not apply",
}


def shop_units(facts: SheetFacts) -> Units:
    """The unit of sentences: inches where the drawing is in inches alone, in decimals or in 64ths."""
    return "in" if facts.units in {"in", "in_fraction"} else "mm"


def force_words(force_n: float, units: Units) -> str:
    """A force, and the mass that weighs as much.

    >>> force_words(8461.16, "mm"), force_words(8461.16, "in")
    ('8.46 kN (the weight of 863 kg)', '8.46 kN (the weight of 1902 lb)')
    """
    return f"{force_n / 1000:.2f} kN (the weight of {mass_words(force_n / STANDARD_GRAVITY, units, digits=0)})"


def mass_words(mass_kg: float, units: Units, *, digits: int = 3) -> str:
    """A mass with its unit.

    >>> mass_words(0.1874, "mm"), mass_words(2000, "in", digits=0)
    ('0.187 kg', '4409 lb')
    """
    return f"{kg_to_pound(mass_kg):.{digits}f} lb" if units == "in" else f"{mass_kg:.{digits}f} kg"


def height_words(height_mm: float, units: Units) -> str:
    """A height above the ground, which nobody measures finer than to a millimetre or a sixteenth of an inch.

    >>> height_words(332.04, "mm"), height_words(332.04, "in")
    ('332 mm', '13.07 in')
    """
    return f"{height_mm:.0f} mm" if units == "mm" else length_shown(height_mm, "in")[:-4] + " in"


def verdict_of(check: Check) -> str:
    """The verdict of one check with what it uses of its limit.

    The infinite use of a limit that cannot be met is told by the verdict alone.
    """
    words = VERDICTS[check.verdict]
    has_share = check.finding is not None and 0 < check.utilisation < 100
    return f"{words}, {check.utilisation:.2f} of its limit" if has_share else words
