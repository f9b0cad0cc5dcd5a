"""The dimensions that make the part, each once: by function from the seat face, with limits from the general tolerances."""

from dataclasses import replace
from fractions import Fraction

from geometry.drawing.facts import CRITICAL_MARK, SheetFacts, Units
from geometry.drawing.model import Measure
from geometry.fits import linear_tolerance_mm, radius_tolerance_mm
from geometry.pad import Pad
from geometry.units import mm_to_inch

GENERAL = "ISO 2768-m"
_EACH: tuple[Units, Units] = ("mm", "in")
_PARTS, _SAME_INCH = 64, 0.0005
"""Steps of a fractional inch, and how near a size must be to one to be written so: half of the last decimal."""
_LEAST_GENERAL_MM = 0.5
"""Below 0.5 mm ISO 2768-1 asks for the tolerance at the dimension."""


def measures(pad: Pad, facts: SheetFacts) -> dict[str, Measure]:
    """Every dimension to be shown, by its name in the pad; what the pad does not have is left out."""
    units = facts.units
    shown = [
        _diameter("seat_diameter_mm", pad.seat_diameter_mm, units),
        _length("seat_length_mm", pad.seat_length_mm, units),
        _outer_radius("seat_corner_radius_mm", pad.seat_corner_radius_mm, units),
        _diameter("body_diameter_mm", pad.body_diameter_mm, units),
        _length("slot_width_mm", pad.slot_width_mm, units),
        _length("slot_depth_mm", pad.slot_depth_mm, units),
        _length("web_mm", pad.web_mm, units),
        _inner_radius("slot_corner_radius_mm", pad.slot_corner_radius_mm, units),
        _chamfer("slot_mouth_chamfer_mm", pad.slot_mouth_chamfer_mm, units),
        _chamfer("edge_chamfer_mm", pad.edge_chamfer_mm, units),
        _auxiliary("top_height_mm", pad.top_height_mm, units, of=(pad.web_mm, pad.slot_depth_mm)),
    ]
    if pad.has_stem:
        shown += [
            _diameter("stem_diameter_mm", pad.stem_diameter_mm, units),
            _length("stem_length_mm", pad.stem_length_mm, units),
        ]
    return {m.name: _marked(m) if m.name in facts.critical else m for m in shown if m.nominal_mm > 0}


def _marked(measure: Measure) -> Measure:
    """The measure with the mark of a size that an estimate depends on."""
    return replace(measure, words=f"{CRITICAL_MARK} {measure.words}", prefix=f"{CRITICAL_MARK} {measure.prefix}")


def length_words(length_mm: float, units: Units) -> str:
    """A length as it stands on the sheet: ``67.2``, ``2.646``, ``67.2 [2.646]``, or ``2 29/64`` where it is that.

    >>> length_words(67.2, "mm"), length_words(67.2, "in"), length_words(67.2, "dual")
    ('67.2', '2.646', '67.2 [2.646]')
    >>> length_words(62.31, "in_fraction"), length_words(67.2, "in_fraction"), length_words(25.4, "in_fraction")
    ('2 29/64', '2.646', '1')
    """
    metric, inch = _plain(length_mm), f"{mm_to_inch(length_mm):.3f}"
    if units == "in_fraction":
        return _fraction_words(length_mm) or inch
    return {"mm": metric, "in": inch, "dual": f"{metric} [{inch}]"}[units]


def _fraction_words(length_mm: float) -> str:
    """Whole inches and 64ths in lowest terms; nothing where the size is no 64th."""
    length_in = mm_to_inch(length_mm)
    parts = round(length_in * _PARTS)
    if parts == 0 or abs(parts / _PARTS - length_in) > _SAME_INCH:
        return ""
    whole, rest = divmod(Fraction(parts, _PARTS), 1)
    return " ".join(str(part) for part in (whole, rest) if part)


def _with_tolerance(length_mm: float, tolerance_mm: float, units: Units) -> str:
    """A length with its own tolerance: ``0.5 ±0.1``, ``0.5 ±0.1 [0.020 ±0.004]``."""
    metric, inch = (f"{length_words(length_mm, unit)} ±{length_words(tolerance_mm, unit)}" for unit in _EACH)
    if units == "in_fraction":
        return f"{length_words(length_mm, units)} ±{length_words(tolerance_mm, 'in')}"
    return {"mm": metric, "in": inch, "dual": f"{metric} [{inch}]"}[units]


def _plain(value: float) -> str:
    return f"{value:.3f}".rstrip("0").rstrip(".")


def _measure(
    name: str,
    nominal_mm: float,
    units: Units,
    *,
    tolerance_mm: float,
    prefix: str = "",
    suffix: str = "",
    individual: bool = False,
    auxiliary: bool = False,
) -> Measure:
    written = individual or nominal_mm < _LEAST_GENERAL_MM
    words = f"{prefix}{_with_tolerance(nominal_mm, tolerance_mm, units) if written else length_words(nominal_mm, units)}{suffix}"
    suffix += f" ±{_plain(tolerance_mm)}" if written else ""
    return Measure(
        name,
        words,
        prefix,
        suffix,
        nominal_mm,
        nominal_mm - tolerance_mm,
        nominal_mm + tolerance_mm,
        "at the dimension" if written else GENERAL,
        auxiliary,
    )


def _length(name: str, value: float, units: Units) -> Measure:
    return _measure(name, value, units, tolerance_mm=linear_tolerance_mm(value))


def _diameter(name: str, value: float, units: Units) -> Measure:
    return _measure(name, value, units, tolerance_mm=linear_tolerance_mm(value), prefix="⌀")


def _outer_radius(name: str, value: float, units: Units) -> Measure:
    return _measure(name, value, units, tolerance_mm=radius_tolerance_mm(value), prefix="R")


def _inner_radius(name: str, value: float, units: Units) -> Measure:
    """ISO 2768-1 Table 2 is for outer radii only, so an inner one carries its tolerance: that of a length."""
    return _measure(name, value, units, tolerance_mm=linear_tolerance_mm(value), prefix="R", individual=True)


def _chamfer(name: str, value: float, units: Units) -> Measure:
    tolerance = radius_tolerance_mm(value)
    return _measure(name, value, units, tolerance_mm=tolerance, prefix="2× ", suffix=" × 45°")


def _auxiliary(name: str, value: float, units: Units, *, of: tuple[float, ...]) -> Measure:
    """A size that follows from others stands in parentheses (ISO 129-1) and has the sum of their tolerances."""
    tolerance = sum(map(linear_tolerance_mm, of))
    shown = _measure(name, value, units, tolerance_mm=tolerance, prefix="(", suffix=")", auxiliary=True)
    return Measure(
        name, shown.words, "(", ")", value, shown.lower_mm, shown.upper_mm, "follows from web and slot depth", True
    )
