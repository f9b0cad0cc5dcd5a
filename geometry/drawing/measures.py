"""The dimensions that make the part, each once: by function from the seat face, with limits from the general tolerances."""

from dataclasses import dataclass, replace
from fractions import Fraction
from math import copysign, floor
from typing import Literal

from geometry.drawing.facts import CRITICAL_MARK, SheetFacts, Units
from geometry.drawing.model import Measure
from geometry.fits import linear_tolerance_mm, radius_tolerance_mm
from geometry.geometrical import SLOT_SYMMETRY
from geometry.pad import Pad
from geometry.units import LowerLimit, UpperLimit, in_unit, inch_to_mm, mm_to_inch

GENERAL = "ISO 2768-m"
_EACH: tuple[Units, Units] = ("mm", "in")
_PARTS, _SAME_INCH = 64, 0.0005
"""Steps of a fractional inch, and how near a size must be to one to be written so: half of the last decimal."""
_NEARLY = 1e-6
_CONVERTED_DIGITS = {"mm": 2, "in": 3}
"""Decimals of a converted size: a hundredth of a millimetre, a thousandth of an inch."""
_LEAST_GENERAL_MM = 0.5
"""Below 0.5 mm ISO 2768-1 asks for the tolerance at the dimension."""


def measures(pad: Pad, facts: SheetFacts) -> dict[str, Measure]:
    """Every dimension to be shown, by its name in the pad; what the pad does not have is left out."""
    writer = _Writer(facts.units, facts.job_units)
    shown = [*_of_foot(pad, writer), *_of_body(pad, writer), *(_of_slot(pad, writer) if pad.has_slot else ())]
    if pad.has_plug:
        shown += _of_plug(pad, writer)
    return {m.name: _marked(m) if m.name in facts.critical else m for m in shown if m.nominal_mm > 0}


def _of_foot(pad: Pad, writer: "_Writer") -> list[Measure]:
    found = [
        writer.diameter("seat_diameter_mm", pad.seat_diameter_mm),
        writer.length("seat_length_mm", pad.seat_length_mm),
        writer.outer_radius("seat_corner_radius_mm", pad.seat_corner_radius_mm),
        writer.diameter("seat_recess_diameter_mm", pad.seat_recess_diameter_mm if pad.has_recess else 0.0),
        writer.length("seat_recess_depth_mm", pad.seat_recess_depth_mm),
        writer.diameter("skirt_bore_mm", pad.skirt_bore_mm if pad.has_skirt else 0.0),
        writer.length("skirt_length_mm", pad.skirt_length_mm),
    ]
    if pad.has_stem:
        found += [
            writer.diameter("stem_diameter_mm", pad.stem_diameter_mm),
            writer.length("stem_length_mm", pad.stem_length_mm),
        ]
    if pad.has_cross_hole:
        found += [
            writer.diameter("cross_hole_diameter_mm", pad.cross_hole_diameter_mm, suffix=" through"),
            writer.length("cross_hole_distance_mm", pad.cross_hole_distance_mm),
        ]
    return found


def _of_body(pad: Pad, writer: "_Writer") -> list[Measure]:
    count = 3 if pad.has_plug else 2
    above = (pad.web_mm, *(part for part in (pad.slot_depth_mm, pad.plug_height_mm) if part))
    below = (
        (pad.stem_length_mm,) if pad.foot_depth_mm == pad.stem_length_mm else (pad.skirt_length_mm, -pad.seat_length_mm)
    )
    found = [
        writer.diameter("body_diameter_mm", pad.body_diameter_mm),
        writer.length("flats_width_mm", pad.flats_width_mm),
        writer.length("web_mm", pad.web_mm),
        writer.chamfer("edge_chamfer_mm", pad.edge_chamfer_mm, count=count),
    ]
    if len(above) > 1:
        found.append(writer.auxiliary("top_height_mm", pad.top_height_mm, of=above))
    if pad.foot_depth_mm > 0:
        found.append(writer.auxiliary("overall_height_mm", pad.overall_height_mm, of=(*above, *below)))
    return found


def _of_slot(pad: Pad, writer: "_Writer") -> list[Measure]:
    sides = 4 if pad.is_crossed else 2
    is_one_round = 2 * pad.slot_corner_radius_mm >= pad.slot_width_mm
    is_twin = slots_are_alike(pad)
    return [
        writer.length("slot_width_mm", pad.slot_width_mm, count="2× " if is_twin else ""),
        writer.length("slot_depth_mm", pad.slot_depth_mm),
        writer.exact("slot_offset_mm", pad.slot_offset_mm, zone_mm=SLOT_SYMMETRY.value_mm),
        writer.inner_radius(
            "slot_corner_radius_mm", pad.slot_corner_radius_mm, count="" if is_one_round else f"{sides}× "
        ),
        writer.chamfer("slot_mouth_chamfer_mm", pad.slot_mouth_chamfer_mm, count=sides),
        writer.length("cross_slot_width_mm", 0.0 if is_twin else pad.cross_slot_width_mm),
        *(
            writer.length(name, getattr(pad, name) if pad.has_relief else 0.0)
            for name in ("relief_width_mm", "relief_length_mm", "relief_depth_mm")
        ),
        writer.greatest_radius(
            "relief_corner_radius_mm", pad.relief_corner_radius_mm if pad.has_relief else 0.0, count="4× "
        ),
    ]


def slots_are_alike(pad: Pad) -> bool:
    """Whether one size says the width of both slots of a crossing."""
    return pad.is_crossed and pad.cross_slot_width_mm == pad.slot_width_mm


def _of_plug(pad: Pad, writer: "_Writer") -> list[Measure]:
    height = writer.length("plug_height_mm", pad.plug_height_mm)
    if pad.plug_is_round:
        return [height, writer.diameter("plug_width_mm", pad.plug_width_mm)]
    return [
        height,
        writer.length("plug_length_mm", pad.plug_length_mm),
        writer.length("plug_width_mm", pad.plug_width_mm),
        writer.outer_radius("plug_corner_radius_mm", pad.plug_corner_radius_mm, count="4× "),
    ]


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


def tolerance_words(tolerance_mm: float, unit: Units) -> str:
    """A tolerance or the width of a zone; in inches rounded down to the last figure, so that it is no wider than the true one.

    >>> tolerance_words(0.3, "mm"), tolerance_words(0.3, "in"), tolerance_words(0.1, "in")
    ('0.3', '0.0118', '0.0039')
    """
    if unit == "mm":
        return _plain(tolerance_mm)
    return f"{floor(mm_to_inch(tolerance_mm) * 10_000 + _NEARLY) / 10_000:.4f}"


def _fraction_words(length_mm: float) -> str:
    """Whole inches and 64ths in lowest terms; nothing where the size is no 64th."""
    length_in = mm_to_inch(length_mm)
    parts = round(length_in * _PARTS)
    if parts == 0 or abs(parts / _PARTS - length_in) > _SAME_INCH:
        return ""
    whole, rest = divmod(Fraction(parts, _PARTS), 1)
    return " ".join(str(part) for part in (whole, rest) if part)


def converted_mm(length_mm: float, unit: Units) -> float:
    """A size of the other unit's job, rounded to a hundredth of a millimetre or a thousandth of an inch.

    >>> converted_mm(103.1875, "mm"), round(mm_to_inch(converted_mm(46.5, "in")), 6)
    (103.19, 1.831)
    """
    one = 1.0 if unit == "mm" else inch_to_mm(1.0)
    digits = _CONVERTED_DIGITS[unit]
    # 0.425 in are 10.795 mm, which no binary number is: nearly a half goes up.
    return round(length_mm / one + (_NEARLY if unit == "mm" else 0.0), digits) * one


def converted_tolerance_mm(tolerance_mm: float, unit: Units, *, lost_mm: float) -> float:
    """A plus-and-minus in the other unit that lets nothing pass that the true one stops: rounded down, less what rounding moved.

    >>> round(mm_to_inch(converted_tolerance_mm(0.1, "in", lost_mm=0.0)), 6)
    0.003
    """
    step = (1.0 if unit == "mm" else inch_to_mm(1.0)) / 10.0 ** _CONVERTED_DIGITS[unit]
    return max(0, floor((tolerance_mm - lost_mm) / step + _NEARLY)) * step


def limit_words(measure: Measure, units: Units) -> tuple[str, str]:
    """Lower and upper limit of a size as figures; in inches both are rounded inwards, so that none is wider than the true one."""
    return limit_shown(LowerLimit(measure.lower_mm), units), limit_shown(UpperLimit(measure.upper_mm), units)


def limit_shown(limit_mm: LowerLimit | UpperLimit, units: Units) -> str:
    """One limit as figures, never a fraction; in inches rounded to the part's side.

    >>> limit_shown(LowerLimit(66.3), "in"), limit_shown(UpperLimit(67.3), "dual"), limit_shown(UpperLimit(67.3), "in_fraction")
    ('2.611', '67.3 [2.649]', '2.649')
    """
    metric, inch = _plain(limit_mm), f"{in_unit(limit_mm, 'in', 3):.3f}"
    return {"mm": metric, "dual": f"{metric} [{inch}]"}.get(units, inch)


def _is_round(length_mm: float, unit: Units) -> bool:
    """Whether a size is one of a unit's own: a thousandth of it, or a 64th of an inch."""
    steps = length_mm * 1000 if unit == "mm" else mm_to_inch(length_mm) * 1000
    parts = mm_to_inch(length_mm) * _PARTS
    return abs(steps - round(steps)) < _NEARLY or (unit == "in" and abs(parts - round(parts)) < _NEARLY)


def _plain(value: float) -> str:
    return f"{value:.3f}".rstrip("0").rstrip(".")


@dataclass(frozen=True, slots=True)
class _Writer:
    """How sizes are written on one sheet."""

    units: Units
    job: Literal["mm", "in"]

    def words(self, nominal_mm: float, tolerance_mm: float, *, individual: bool) -> str:
        """A size as written, with its own tolerance or without: ``0.5 ±0.1``, ``0.5 ±0.1 [0.020 ±0.004]``."""
        if self.units == "in_fraction" and not individual:
            return length_words(nominal_mm, self.units)
        metric, inch = (self._one(nominal_mm, tolerance_mm, unit, individual=individual) for unit in _EACH)
        return {"mm": metric, "dual": f"{metric} [{inch}]"}.get(self.units, inch)

    def _one(self, nominal_mm: float, tolerance_mm: float, unit: Units, *, individual: bool) -> str:
        """A size as written in one unit; beside the ruling unit's figures it lets nothing pass that they stop."""
        if self.units == "dual" and unit != self.job:
            nominal_mm, tolerance_mm = self._rounded(nominal_mm, tolerance_mm, self.job)
        size, spread = self._rounded(nominal_mm, tolerance_mm, unit)
        written = length_words(size, "in_fraction" if self.units == "in_fraction" else unit)
        return f"{written} ±{length_words(spread, unit)}" if individual else written

    def _rounded(self, nominal_mm: float, tolerance_mm: float, unit: Units) -> tuple[float, float]:
        """Size and plus-and-minus as far as the figures of one unit say them, mm."""
        is_native = unit == self.job and _is_round(nominal_mm, unit)
        size = nominal_mm if is_native else converted_mm(nominal_mm, unit)
        lost = abs(size - nominal_mm)
        if unit == "mm" and is_native:
            return size, tolerance_mm
        if self.units == "dual" and unit == "in":
            # As far as it is written: a sixteenth has four decimals.
            size = converted_mm(nominal_mm, unit)
            lost = abs(size - nominal_mm)
        return size, converted_tolerance_mm(tolerance_mm, unit, lost_mm=lost)

    def length(self, name: str, value: float, *, count: str = "") -> Measure:
        """A length."""
        return self._measure(name, value, tolerance_mm=linear_tolerance_mm(value), prefix=count)

    def exact(self, name: str, value: float, *, zone_mm: float) -> Measure:
        """A theoretically exact length: what it locates may be half of a zone off it."""
        shown = self._measure(name, value, tolerance_mm=zone_mm / 2, individual=None)
        return replace(shown, tolerance="the frame of its position", exact=True)

    def diameter(self, name: str, value: float, *, suffix: str = "") -> Measure:
        """A diameter."""
        return self._measure(name, value, tolerance_mm=linear_tolerance_mm(value), prefix="⌀", suffix=suffix)

    def outer_radius(self, name: str, value: float, *, count: str = "") -> Measure:
        """An outer radius, which has a table of its own."""
        return self._measure(name, value, tolerance_mm=radius_tolerance_mm(value), prefix=f"{count}R")

    def inner_radius(self, name: str, value: float, *, count: str = "") -> Measure:
        """ISO 2768-1 Table 2 is for outer radii only, so an inner one carries its tolerance: that of a length."""
        tolerance = linear_tolerance_mm(value)
        return self._measure(name, value, tolerance_mm=tolerance, prefix=f"{count}R", individual=True)

    def greatest_radius(self, name: str, value: float, *, count: str) -> Measure:
        """An inner radius that a cutter may leave smaller but not larger."""
        shown = self._measure(name, value, tolerance_mm=value, prefix=f"{count}R", suffix=" max", individual=None)
        return replace(shown, lower_mm=0.0, upper_mm=value, tolerance="at the dimension")

    def chamfer(self, name: str, value: float, *, count: int) -> Measure:
        """A chamfer of 45° on some edges."""
        tolerance = radius_tolerance_mm(value)
        # Beside their angle there is room for one unit: the ruling one where the sheet has both.
        writer = replace(self, units=self.job) if self.units == "dual" else self
        return writer._measure(name, value, tolerance_mm=tolerance, prefix=f"{count}× ", suffix=" × 45°")

    def auxiliary(self, name: str, value: float, *, of: tuple[float, ...]) -> Measure:
        """A size that is the sum of others stands in parentheses (ISO 129-1) and has the sum of their tolerances."""
        tolerance = sum(linear_tolerance_mm(abs(part)) for part in of)
        shown = self._measure(name, value, tolerance_mm=tolerance, prefix="(", suffix=")")
        if self.units != "in_fraction":
            metric, inch = (self._sum(of, unit) for unit in _EACH)
            shown = replace(shown, words=f"({ {'mm': metric, 'dual': f'{metric} [{inch}]'}.get(self.units, inch) })")
        return replace(shown, prefix="(", suffix=")", tolerance=_FOLLOWS[name], auxiliary=True)

    def _sum(self, of: tuple[float, ...], unit: Units) -> str:
        """What the written parts add up to, those below zero taken off: a chain of converted sizes closes on the sheet."""
        written = sum(copysign(float(self._one(abs(part), 0.0, unit, individual=False)), part) for part in of)
        return length_words(written if unit == "mm" else inch_to_mm(written), unit)

    def _measure(
        self,
        name: str,
        nominal_mm: float,
        *,
        tolerance_mm: float,
        prefix: str = "",
        suffix: str = "",
        individual: bool | None = False,
    ) -> Measure:
        """A measure; ``individual`` says whether it carries its tolerance, None that it never does."""
        written = individual is not None and (individual or nominal_mm < _LEAST_GENERAL_MM)
        words = f"{prefix}{self.words(nominal_mm, tolerance_mm, individual=written)}{suffix}"
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
        )


_FOLLOWS = {
    "top_height_mm": "follows from web and slot depth",
    "overall_height_mm": "follows from the lengths that make it up",
}
