"""Exact conversion factors, and lengths and masses as people write them.

The only room that knows that an inch is 25.4 mm, and what a psi and a degree Fahrenheit are.
"""

import re
from fractions import Fraction
from functools import lru_cache
from math import ceil, floor
from typing import Literal

from geometry.errors import UnreadableError

MM_PER_INCH = Fraction(254, 10)
KG_PER_POUND = Fraction(45359237, 100_000_000)
"""Exact, by the international yard and pound agreement of 1959."""
STANDARD_GRAVITY = 9.80665
"""m/s², exact by convention (ISO 80000-3)."""
_MPA_PER_PSI = KG_PER_POUND * Fraction(980665, 100_000) / MM_PER_INCH**2
"""The weight of a pound on a square inch, in N/mm²: exact, by the three above."""
_FAHRENHEIT_PER_KELVIN = Fraction(9, 5)
_FAHRENHEIT_AT_ZERO_CELSIUS = 32

LengthUnit = Literal["mm", "in"]
MassUnit = Literal["kg", "lb"]

_MM_PER = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "in": MM_PER_INCH,
    "inch": MM_PER_INCH,
    "inches": MM_PER_INCH,
    '"': MM_PER_INCH,
    "thou": MM_PER_INCH / 1000,
    "mil": MM_PER_INCH / 1000,
}
_KG_PER = {
    "kg": Fraction(1),
    "t": Fraction(1000),
    "lb": KG_PER_POUND,
    "lbs": KG_PER_POUND,
}
_POUNDS_PER_TON = {"short": 2000, "long": 2240}
"""Exact, by the customary units of the United States and of Britain; from memory. “ton” alone does not say which."""
_TONS = {"ton", "tons"}
_VULGAR = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_LONGEST_TEXT = 40
_DUST = 1e-6
"""Of the last decimal: what binary numbers make more or less of a round figure."""
_NUMBER = re.compile(
    r"""(?P<sign>[-−])?
        (?:(?P<whole>\d+)[ -]+(?P<n1>\d+)/(?P<d1>\d+)    # 1 1/2 or 1-1/2
         |(?P<n2>\d+)/(?P<d2>\d+)                        # 3/8
         |(?P<decimal>[1-9]\d{0,2}(?:[ \u00a0\u2009\u202f]\d{3})+(?:[.,]\d*)?    # 2 290: a space before thousands
            |\d+(?:[.,]\d*)?|[.,]\d+))                   # 38.1 or 1,5
        \s*(?P<unit>[a-z"]*)""",
    re.VERBOSE | re.ASCII,
)


@lru_cache(maxsize=1024)
def parse_length_mm(text: str, default_unit: LengthUnit = "mm") -> float:
    """Read a length as typed; a bare number is in ``default_unit``. Returns mm.

    >>> parse_length_mm('1-1/2"'), parse_length_mm("1½ in"), parse_length_mm("20 thou"), parse_length_mm("1,5 mm")
    (38.1, 38.1, 0.508, 1.5)
    """
    return float(_parse(text, _MM_PER, default_unit, "a length such as 38.1 mm, 1-1/2 in or 20 thou"))


@lru_cache(maxsize=1024)
def parse_mass_kg(text: str, default_unit: MassUnit = "kg") -> float:
    """Read a mass as typed; a bare number is in ``default_unit``. Returns kg.

    >>> parse_mass_kg("2 lb"), parse_mass_kg("2 290")
    (0.90718474, 2290.0)
    """
    return float(_parse(text, _KG_PER, default_unit, "a mass such as 1600 kg, 1.6 t or 3500 lb"))


def parse_number(text: str) -> float:
    """Read a plain number as typed, with a point or a comma.

    >>> parse_number("0,6"), parse_number("-10")
    (0.6, -10.0)
    """
    return float(_parse(text, {}, "", "a number such as 12.5", signed=True))


def _parse(
    text: str, factors: dict[str, Fraction], default_unit: str, wanted: str, *, signed: bool = False
) -> Fraction:
    """Read ``text`` exactly; refuse everything that could be misread."""
    shown = text if len(text) <= _LONGEST_TEXT else text[:_LONGEST_TEXT] + "…"
    if len(text) > _LONGEST_TEXT:
        raise UnreadableError(f"“{shown}” is too long to be {wanted}.")
    plain = (
        re.sub("|".join(_VULGAR), lambda m: f" {_VULGAR[m[0]]}", text.lower())
        .strip()
        .replace("″", '"')
        .replace("”", '"')
    )
    match = _NUMBER.fullmatch(plain)
    if not match or (match["sign"] and not signed):
        raise UnreadableError(f"“{shown}” is not {wanted}.")
    if re.fullmatch(r"[1-9]\d{0,2},\d{3}", match["decimal"] or ""):
        plain_number = match["decimal"].replace(",", "")
        raise UnreadableError(
            f"“{shown}” could mean {plain_number} or {match['decimal'].replace(',', '.')}; write it without the comma."
        )
    unit = match["unit"] or default_unit
    if unit in _TONS and factors is _KG_PER:
        raise UnreadableError(_which_ton(shown, match))
    if unit and unit not in factors:
        raise UnreadableError(f"“{unit}” in “{shown}” is not a unit known here; write {wanted}.")
    try:
        value = _fraction(match)
    except ZeroDivisionError:
        raise UnreadableError(f"“{shown}” divides by zero.") from None
    return value * factors.get(unit, Fraction(1)) * (-1 if match["sign"] else 1)


def _which_ton(shown: str, match: re.Match[str]) -> str:
    """What a number of tons is in pounds, for whoever wrote it to choose."""
    try:
        short, long = (f"{float(_fraction(match) * pounds):g}" for pounds in _POUNDS_PER_TON.values())
    except ZeroDivisionError:
        return f"“{shown}” divides by zero."
    return (
        f"“{shown}” can be short tons, {short} lb, as on a jack sold in the United States, or long tons, {long} lb."
        " Write it in lb, in kg, or in t for tonnes of 1000 kg."
    )


def _fraction(match: re.Match[str]) -> Fraction:
    """The number in a match, exact."""
    if match["whole"]:
        return Fraction(match["whole"]) + Fraction(int(match["n1"]), int(match["d1"]))
    if match["n2"]:
        return Fraction(int(match["n2"]), int(match["d2"]))
    return Fraction("".join(match["decimal"].split()).replace(",", ".").removesuffix("."))


def mm_to_inch(length_mm: float) -> float:
    """A length in inches.

    >>> round(mm_to_inch(76.2), 12)
    3.0
    """
    return float(Fraction(length_mm) / MM_PER_INCH)


class LowerLimit(float):
    """The least length that a part may have, in mm: in figures it is never written smaller than it is."""

    __slots__ = ()


class UpperLimit(float):
    """The greatest length that a part may have, in mm: in figures it is never written larger than it is."""

    __slots__ = ()


class Zone(UpperLimit):
    """The width of the zone that a feature may fill, in mm: in inches it is written to one figure more than a size."""

    __slots__ = ()


def in_unit(length_mm: float, unit: LengthUnit, digits: int) -> float:
    """A length in a unit, to so many decimals: the nearest, of a limit the nearest on the part's own side.

    So no limit in figures lets anything pass that the true one stops.

    >>> [in_unit(limit, "in", 3) for limit in (66.3, LowerLimit(66.3), 67.3, UpperLimit(67.3))]
    [2.61, 2.611, 2.65, 2.649]
    """
    number, step = mm_to_inch(length_mm) if unit == "in" else float(length_mm), 10.0**-digits
    if isinstance(length_mm, LowerLimit):
        number = ceil(number / step - _DUST) * step
    elif isinstance(length_mm, UpperLimit):
        number = floor(number / step + _DUST) * step
    return round(number, digits)


def inch_to_mm(length_in: float) -> float:
    """A length in millimetres.

    >>> inch_to_mm(0.375)
    9.525
    """
    return float(Fraction(length_in) * MM_PER_INCH)


def kg_to_pound(mass_kg: float) -> float:
    """A mass in pounds.

    >>> round(kg_to_pound(1), 6)
    2.204623
    """
    return float(Fraction(mass_kg) / KG_PER_POUND)


def mpa_to_psi(stress_mpa: float) -> float:
    """A stress in pounds-force on a square inch.

    >>> round(mpa_to_psi(1), 4)
    145.0377
    """
    return float(Fraction(stress_mpa) / _MPA_PER_PSI)


def celsius_to_fahrenheit(temperature_c: float) -> float:
    """A temperature in degrees Fahrenheit.

    >>> celsius_to_fahrenheit(40), celsius_to_fahrenheit(-40)
    (104.0, -40.0)
    """
    return float(Fraction(temperature_c) * _FAHRENHEIT_PER_KELVIN + _FAHRENHEIT_AT_ZERO_CELSIUS)


def per_kelvin_to_per_fahrenheit(rate_per_k: float) -> float:
    """A rate for each degree Fahrenheit, which is a smaller step than a kelvin.

    >>> per_kelvin_to_per_fahrenheit(90e-6)
    5e-05
    """
    return float(Fraction(rate_per_k) / _FAHRENHEIT_PER_KELVIN)
