"""Figures in words for paper: forces, masses, heights and sizes in the reader's units."""

from collections.abc import Mapping
from types import MappingProxyType

from geometry.drawing.facts import SheetFacts
from geometry.drawing.facts import Units as SheetUnits
from geometry.drawing.figures import NEARLY, length_words, limit_shown
from geometry.making.gauge_limits import second_slot_gauge
from geometry.making.own_words import JACKS
from geometry.making.wording import Units
from geometry.pad import Pad
from geometry.rules import Check
from geometry.told import told
from geometry.units import STANDARD_GRAVITY, LowerLimit, UpperLimit, kg_to_pound, mm_to_inch

VERDICTS = {
    "pass": "passes",
    "fail": "FAILS",
    "advice": "advice",
    "not_checked": "not checked",
    "not_applicable": "does not apply",
}


_SMALL_MM = 2.0
"""Below this a gap or a play is told in tenths of a thousandth of an inch."""
_UNIT: Mapping[SheetUnits, str] = MappingProxyType({"mm": "mm", "in": "in", "in_fraction": "in", "dual": "mm [in]"})


def shop_units(facts: SheetFacts) -> Units:
    """The unit of sentences: inches where the drawing is in inches alone, in decimals or in 64ths."""
    return "in" if facts.units in {"in", "in_fraction"} else "mm"


def load_words(force_n: float, units: Units) -> str:
    """A force to two digits: enough to see how heavy the case is, too few to be read as a rating.

    >>> load_words(9743, "mm"), load_words(9743, "in")
    ('about 9.7 kN (the weight of about 990 kg)', 'about 9.7 kN, 2200 lbf (the weight of about 2200 lb)')
    """
    kilonewtons, mass_kg = force_n / 1000, force_n / STANDARD_GRAVITY
    if units == "in":
        pounds = _two_digits(kg_to_pound(mass_kg))
        return f"about {_two_digits(kilonewtons)} kN, {pounds} lbf (the weight of about {pounds} lb)"
    return f"about {_two_digits(kilonewtons)} kN (the weight of about {_two_digits(mass_kg)} kg)"


def _two_digits(number: float) -> str:
    """A number rounded to its first two digits, without a power of ten."""
    return f"{float(f'{number:.2g}'):g}"


def plate_words(rated_load_kg: float, units: Units) -> str:
    """The jack's rated load as its plate has it in kg, pounds in brackets for who reads inches.

    >>> plate_words(2250, "mm"), plate_words(2250, "in")
    ('2250 kg', '2250 kg (4960 lb)')
    """
    plate = mass_words(rated_load_kg, "mm", digits=0)
    return f"{plate} ({mass_words(rated_load_kg, 'in', digits=0)})" if units == "in" else plate


def mass_words(mass_kg: float, units: Units, *, digits: int = 3) -> str:
    """A mass with its unit.

    >>> mass_words(0.1874, "mm"), mass_words(2000, "in", digits=0)
    ('0.187 kg', '4409 lb')
    """
    return f"{kg_to_pound(mass_kg):.{digits}f} lb" if units == "in" else f"{mass_kg:.{digits}f} kg"


def height_words(height_mm: float, units: Units) -> str:
    """A height above the ground, which nobody measures finer than to a millimetre, or to a sixteenth of an inch.

    >>> height_words(332.2, "mm"), height_words(332.2, "in")
    ('332 mm', '13.08 in')
    """
    return f"{height_mm:.0f} mm" if units == "mm" else f"{mm_to_inch(height_mm):.2f} in"


def verdict_of(check: Check) -> str:
    """The verdict of one check with what it uses of its limit.

    The infinite use of a limit that cannot be met is told by the verdict alone.
    """
    words = VERDICTS[check.verdict]
    has_share = check.finding is not None and 0 < check.utilisation < 100
    return f"{words}, {check.utilisation:.2f} of its limit" if has_share else words


def check_words(check: Check, units: SheetUnits) -> str:
    """The sentence of a check with its lengths as the drawing has them; where this shows both units, in mm."""
    if units not in {"in", "in_fraction"}:
        return check.words
    return told(check.marked, lambda length_mm, figures: f"{_inch_figures(length_mm, figures, units)} in")


def _inch_figures(length_mm: float, figures: str, units: SheetUnits) -> str:
    """A length of a sentence in inches, no coarser than the sentence has it in mm; a size as the drawing has it.

    >>> _inch_figures(19.05, "19.05", "in_fraction"), _inch_figures(67.2, "67.2", "in"), _inch_figures(0.2, "0.2", "in")
    ('3/4', '2.646', '0.0079')
    >>> _inch_figures(0.4567, "0.46", "in"), _inch_figures(21.34, "21.3", "in"), _inch_figures(332.2, "332", "in")
    ('0.0180', '0.840', '13.08')
    """
    if abs(float(figures) - length_mm) < NEARLY and abs(length_mm) >= _SMALL_MM:
        return length_words(length_mm, units)
    decimals = len(figures.partition(".")[2]) + 2
    return f"{mm_to_inch(length_mm):.{4 if abs(length_mm) < _SMALL_MM and decimals > 2 else decimals}f}".replace(
        "-", "−"
    )


def sizes(units: SheetUnits, *lengths_mm: float) -> str:
    """Sizes of one thing with their unit, as the drawing has them; limits rounded to the part's side.

    >>> sizes("mm", 19, 4.5), sizes("in_fraction", 25.4), sizes("dual", 19), sizes("in", LowerLimit(66.3))
    ('19 × 4.5 mm', '1 in', '19 [0.748] mm [in]', '2.611 in')
    """

    def figures(length_mm: float) -> str:
        if isinstance(length_mm, LowerLimit | UpperLimit):
            return limit_shown(length_mm, units)
        return length_words(length_mm, units)

    return f"{' × '.join(map(figures, lengths_mm))} {_UNIT[units]}"


def pad_use(pad: Pad, way: str) -> str:
    """How the section of a pad is tried in a jack that takes it in this way, and at the car."""
    jack = JACKS[way]
    if pad.has_slot:
        car = (
            "Hold it over the seam at the lift point: the seam drops to the slot's floor without force, and the sill stays clear"
            " of both walls."
        )
    elif pad.has_plug:
        car = "Hold it under the lift point: the plug goes into its hole without force, and the shoulder meets the car all along."
    else:
        car = "Hold it under the lift point: its top meets the car all along, and nothing else touches."
    return f"Put it {jack.into}: its seat meets what it stands on and {jack.free}. {car}"


def section_notes(pad: Pad, units: SheetUnits) -> str:
    """What the section of a pad with more than a slot shows and what it leaves out."""
    notes = f" Shown across the two flats: {sizes(units, pad.flats_width_mm)}." if pad.has_flats else ""
    if pad.has_recess:
        recess = sizes(units, pad.seat_recess_diameter_mm), sizes(units, pad.seat_recess_depth_mm)
        notes += f" The recess in its seat, {recess[0]} across and {recess[1]} deep, clears the boss."
    if pad.has_cross_hole:
        hole, below = sizes(units, pad.cross_hole_diameter_mm), sizes(units, pad.cross_hole_distance_mm)
        notes += f" The cross-hole, {hole}, {below} below the seat face, runs along the card and is not cut out."
    if pad.is_crossed:
        width, depth = sizes(units, pad.cross_slot_width_mm), sizes(units, pad.slot_depth_mm)
        notes += f" The second slot, {width} wide and {depth} deep, runs along the cut and is not shown."
    if pad.has_relief:
        size = sizes(units, pad.relief_width_mm, pad.relief_length_mm)
        notes += f" Cut where the relief is: {size}, {sizes(units, pad.relief_depth_mm)} deep."
    if pad.has_plug and not pad.plug_is_round:
        notes += f" Cut across the plug, which is {sizes(units, pad.plug_length_mm)} long."
    return notes


def slot_notes(pad: Pad, units: SheetUnits, *, is_second: bool = False) -> str:
    """What else a slot gauge is tried in, and what it does not touch."""
    if pad.has_relief:
        return f" Over the relief, {sizes(units, pad.relief_length_mm)} long, it stands free."
    if not pad.is_crossed:
        return ""
    if second_slot_gauge(pad) == "slot_width_mm":
        return " Try it in both slots."
    return " Not for the first slot." if is_second else " Not for the second slot, which has gauges of its own."
