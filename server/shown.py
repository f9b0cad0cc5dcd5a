"""Numbers for the eye: millimetres become the viewer's unit, and everything is rounded, here and nowhere else."""

import re
from math import isfinite

from geometry.provenance import Mark, Source
from geometry.rules import Check
from geometry.told import told
from geometry.units import STANDARD_GRAVITY, celsius_to_fahrenheit, in_unit, kg_to_pound, mpa_to_psi

_MINUS = "−"
FULL_BAR = 1.5
"""A bar shows up to one and a half times the limit; what is more is said in words."""
LIMIT_AT = 100.0
"""Where a bar's limit is marked, in the units of its picture."""


def plain(value: float, digits: int) -> str:
    """A number with at most ``digits`` decimals, none of them idle, and a true minus sign.

    >>> plain(18.5, 2), plain(67.0, 1), plain(-2.927, 2), plain(-0.001, 2)
    ('18.5', '67', '−2.93', '0')
    """
    text = f"{value:.{digits}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text.replace("-", _MINUS)


def length(value_mm: float, units: str, *, digits: int = 2) -> str:
    """A length without its unit: hundredths of a millimetre, or thousandths of an inch; a limit is rounded to the part's side.

    >>> length(67.2, "mm"), length(67.2, "in")
    ('67.2', '2.646')
    """
    return plain(in_unit(value_mm, "in", 3), 3) if units == "in" else plain(in_unit(value_mm, "mm", digits), digits)


def length_with_unit(value_mm: float, units: str, *, digits: int = 2) -> str:
    """A length with its unit.

    >>> length_with_unit(67.2, "mm"), length_with_unit(25.4, "in")
    ('67.2 mm', '1 in')
    """
    return f"{length(value_mm, units, digits=digits)} {units}"


def force(force_n: float, units: str) -> str:
    """A force in kilonewtons, and the mass that weighs as much.

    >>> force(8461.16, "mm"), force(8461.16, "in")
    ('8.46 kN, the weight of 863 kg', '8.46 kN, the weight of 1902 lb')
    """
    mass_kg = force_n / STANDARD_GRAVITY
    weight = f"{plain(kg_to_pound(mass_kg), 0)} lb" if units == "in" else f"{plain(mass_kg, 0)} kg"
    return f"{plain(force_n / 1000, 2)} kN, the weight of {weight}"


_FORCE_IN_WORDS = re.compile(r"(?<![\w.])(\d+(?:\.\d+)?) kN(?![\w²/·])")


def weights_in(words: str, units: str) -> str:
    """A sentence of the engine with the mass that weighs as much beside each force in kilonewtons, no finer than the force.

    >>> weights_in("The jack takes 8.5 kN; 19.6 kN is its rated load.", "mm")
    'The jack takes 8.5 kN (870 kg); 19.6 kN (2000 kg) is its rated load.'
    """
    if " kN" not in words:
        return words
    return _FORCE_IN_WORDS.sub(lambda found: f"{found[0]} ({_weight(found[1], units)})", words)


def _weight(force_kn: str, units: str) -> str:
    mass_kg = float(force_kn) * 1000 / STANDARD_GRAVITY
    mass_shown = kg_to_pound(mass_kg) if units == "in" else mass_kg
    digits = len(force_kn.replace(".", "").lstrip("0"))
    unit = "lb" if units == "in" else "kg"
    return f"{float(f'{mass_shown:.{max(digits, 1)}g}'):.0f} {unit}"


def mass(mass_kg: float, units: str) -> str:
    """The mass of a pad.

    >>> mass(0.3396, "mm"), mass(0.3396, "in")
    ('340 g', '0.75 lb')
    """
    return f"{plain(kg_to_pound(mass_kg), 2)} lb" if units == "in" else f"{plain(mass_kg * 1000, 0)} g"


def share(utilisation: float) -> str:
    """How much of its limit a check uses, rounded so that nothing that passes looks like the limit, nor the reverse.

    >>> share(0.654), share(0.9996), share(1.0004), share(3.76), share(float("inf"))
    ('0.65', '0.99', '1.01', '3.76', 'nothing left')
    """
    if 0.995 <= utilisation < 1:
        return "0.99"
    if 1 < utilisation < 1.005:
        return "1.01"
    return f"{utilisation:.2f}" if isfinite(utilisation) else "nothing left"


def bar_width(utilisation: float) -> str:
    """The length of a check's bar, in the units of its picture, where the limit stands at 100.

    >>> bar_width(0.654), bar_width(3.8), bar_width(float("inf"))
    ('65.4', '150.0', '150.0')
    """
    return f"{min(max(utilisation, 0.0), FULL_BAR) * LIMIT_AT:.1f}"


def unit_of_field(unit: str, kind: str, units: str) -> str:
    """The unit that a bare number in a field is read in.

    >>> unit_of_field("kg", "mass", "in"), unit_of_field("mm", "length", "mm")
    ('lb', 'mm')
    """
    if units == "in" and kind in {"length", "lengths"}:
        return "in"
    return "lb" if units == "in" and kind == "mass" else unit


_NUMBER = r"\d+(?:\.\d+)?"
_LENGTH_IN_WORDS = re.compile(
    rf"(?<![\w.])(?<!\d[-−])([-−]?{_NUMBER})(?=(?:(?:;| to| and| or) {_NUMBER})* mm(?![\w²/·]))(?P<unit> mm)?"
)
"""A length in a sentence, or one of several that share their unit."""
_BARE_NUMBER = re.compile(r"(?<![\w.])(\d+(?:\.\d+)?)(?![\d.]*\d)(?! ?(?:N\b|MPa|°C|%|°|kg|lb))(?!\w)")


def words_in(words: str, units: str) -> str:
    """A sentence of the engine for a reader of inches: millimetres become inches, and °F and psi stand beside °C and MPa.

    >>> words_in("The slot is 16.5 mm deep; at 40 MPa and 96 N/mm it stands.", "in")
    'The slot is 0.65 in deep; at 40 MPa (5800 psi) and 96 N/mm it stands.'
    >>> words_in("Lowered from 16.5 to 16 mm.", "in")
    'Lowered from 0.65 to 0.63 in.'
    """
    if units != "in":
        return words
    return with_customary(_LENGTH_IN_WORDS.sub(_in_inches, words), units)


def check_words(check: Check, units: str) -> str:
    """The sentence of a check for its reader: in inches every length is told from its own value, °F and psi beside °C and MPa."""
    if units != "in":
        return check.words
    return with_customary(told(check.marked, lambda length_mm, _: length_with_unit(length_mm, units)), units)


def _in_inches(found: re.Match[str]) -> str:
    text = length(float(found[1].replace(_MINUS, "-")), "in")
    return f"{text} in" if found["unit"] else text


_SIGNED = rf"[-−]?{_NUMBER}"
_IN_SI = re.compile(
    rf"(?<![\w.+\-−])(?<!\d )({_SIGNED}(?:(?:–| to | and | or ){_SIGNED})*)[ \u00a0](°C|MPa)(?![\w²/·])"
)
"""Temperatures or stresses in a sentence that share their unit."""
_KSI_FROM_PSI = 100_000
"""Strengths are told in psi, so that they can be compared; moduli would be long, and are told in ksi (1000 psi)."""


def with_customary(words: str, units: str) -> str:
    """Words in which °F stands beside every temperature in °C, and psi or ksi beside every stress in MPa.

    >>> with_customary("−10 to 40 °C; 24.9 MPa; 2500 MPa", "in")
    '−10 to 40 °C (14 to 104 °F); 24.9 MPa (3610 psi); 2500 MPa (363 ksi)'
    """
    return _IN_SI.sub(_customary, words) if units == "in" else words


def _customary(found: re.Match[str]) -> str:
    values = [float(number.replace(_MINUS, "-")) for number in re.findall(_SIGNED, found[1])]
    if found[2] == "°C":
        texts, unit = [plain(celsius_to_fahrenheit(value), 0) for value in values], "°F"
    else:
        psi = [mpa_to_psi(value) for value in values]
        unit = "ksi" if max(map(abs, psi)) >= _KSI_FROM_PSI else "psi"
        texts = [_three_digits(value / 1000 if unit == "ksi" else value) for value in psi]
    put_in = iter(texts)
    beside = f"{re.sub(_SIGNED, lambda _: next(put_in), found[1])} {unit}"
    before = found.string[: found.start()]
    is_in_brackets = before.count("(") > before.count(")")
    return f"{found[0]}, {beside}" if is_in_brackets else f"{found[0]} ({beside})"


def _three_digits(value: float) -> str:
    return plain(float(f"{value:.3g}"), 3)


_MASS_IN_WORDS = re.compile(rf"(?<![\w.])({_NUMBER}) kg(?![\w²/·])")


def quantities_in(words: str, units: str) -> str:
    """A sentence about an answer with its lengths and its masses in the viewer's unit, °F and psi beside °C and MPa.

    >>> quantities_in("Jack's rated load 0.907185 kg cannot be right (at least 100 kg).", "in")
    "Jack's rated load 2 lb cannot be right (at least 220.5 lb)."
    """
    if units != "in":
        return words
    return _MASS_IN_WORDS.sub(lambda m: f"{plain(kg_to_pound(float(m[1])), 1)} lb", words_in(words, units))


def source_words(source: Source, units: str) -> str:
    """A source with its mark; our own reasoning speaks the viewer's unit, a published text stays as it is.

    >>> source_words(Source(Mark.DERIVED, "2 mm of lip"), "in")
    '0.079 in of lip [D: derived for this project]'
    """
    return words_in(str(source), units) if source.mark is Mark.DERIVED else str(source)


def bare_lengths_in(words: str, units: str, *, keep: str) -> str:
    """A sentence whose bare numbers are lengths, in the viewer's unit; ``keep`` is a name that may hold a number.

    >>> bare_lengths_in("67.2 because nylon 66 grows 0.19 by 40 °C: at most 67.210", "in", keep="nylon 66")
    '2.646 because nylon 66 grows 0.007 by 40 °C (104 °F): at most 2.646'
    """
    if units != "in":
        return words
    parts = words.split(keep) if keep else [words]
    inches = keep.join(_BARE_NUMBER.sub(lambda m: length(float(m[1]), units), part) for part in parts)
    return with_customary(inches, units)


_COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")


def counted(number: int) -> str:
    """A count in a word, as it stands in a sentence; in digits above twelve.

    >>> counted(5), counted(13)
    ('five', '13')
    """
    return _COUNTS[number] if number < len(_COUNTS) else str(number)
