"""How the sizes of one sheet are written, each with its limits: lengths, diameters, radii, chamfers, exact and auxiliary sizes."""

from dataclasses import dataclass, replace
from math import copysign

from geometry.drawing.facts import Unit, Units
from geometry.drawing.figures import (
    converted_mm,
    converted_tolerance_mm,
    is_round,
    length_words,
    plain,
    shown_in,
    tolerance_words,
)
from geometry.drawing.model import Measure
from geometry.fits import linear_tolerance_mm, radius_tolerance_mm
from geometry.units import inch_to_mm, mm_to_inch

GENERAL = "ISO 2768-m"
_EACH: tuple[Unit, Unit] = ("mm", "in")
_LEAST_GENERAL_MM = 0.5
"""Below 0.5 mm ISO 2768-1 asks for the tolerance at the dimension."""
_FOLLOWS = {
    "top_height_mm": "follows from web and slot depth",
    "overall_height_mm": "follows from the lengths that make it up",
}


@dataclass(frozen=True, slots=True)
class SizeWriter:
    """How sizes are written on one sheet."""

    units: Units
    job: Unit

    def words(self, nominal_mm: float, tolerance_mm: float, *, individual: bool) -> str:
        """A size as written, with its own tolerance or without: ``0.5 ±0.1``, ``0.5 ±0.1 [0.020 ±0.0036]``."""
        if self.units == "in_fraction" and not individual:
            return length_words(nominal_mm, self.units)
        return shown_in(
            self.units, *(self._one(nominal_mm, tolerance_mm, unit, individual=individual) for unit in _EACH)
        )

    def _one(self, nominal_mm: float, tolerance_mm: float, unit: Unit, *, individual: bool) -> str:
        """A size as written in one unit; beside the ruling unit's figures it lets nothing pass that they stop."""
        if self.units == "dual" and unit != self.job:
            nominal_mm, tolerance_mm = self._rounded(nominal_mm, tolerance_mm, self.job)
        size, spread = self._rounded(nominal_mm, tolerance_mm, unit)
        written = length_words(size, "in_fraction" if self.units == "in_fraction" else unit)
        return f"{written} ±{tolerance_words(spread, unit)}" if individual else written

    def _rounded(self, nominal_mm: float, tolerance_mm: float, unit: Unit) -> tuple[float, float]:
        """Size and plus-and-minus as far as the figures of one unit say them, mm."""
        is_native = unit == self.job and is_round(nominal_mm, unit)
        if is_native and unit == "mm":
            return nominal_mm, tolerance_mm
        # Beside a metric figure an inch is taken as far as it is written, and of its fractions a sixteenth is written whole.
        is_whole = is_native and (
            self.units != "dual" or length_words(nominal_mm, unit) == f"{mm_to_inch(nominal_mm):.4f}"
        )
        size = nominal_mm if is_whole else converted_mm(nominal_mm, unit)
        return size, converted_tolerance_mm(tolerance_mm, unit, lost_mm=abs(size - nominal_mm))

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
        """A chamfer of 45° on some edges; where a note tells which, they need no count."""
        tolerance = radius_tolerance_mm(value)
        # Beside their angle there is room for one unit: the ruling one where the sheet has both, inches in brackets as elsewhere.
        writer = replace(self, units=self.job) if self.units == "dual" else self
        left, right = ("[", "]") if writer.units == "in" and self.units == "dual" else ("", "")
        prefix = f"{f'{count}× ' if count else ''}{left}"
        return writer._measure(name, value, tolerance_mm=tolerance, prefix=prefix, suffix=f"{right} × 45°")

    def auxiliary(self, name: str, value: float, *, of: tuple[float, ...]) -> Measure:
        """A size that is the sum of others stands in parentheses (ISO 129-1) and has the sum of their tolerances."""
        tolerance = sum(linear_tolerance_mm(abs(part)) for part in of)
        shown = self._measure(name, value, tolerance_mm=tolerance, prefix="(", suffix=")")
        if self.units != "in_fraction":
            shown = replace(shown, words=f"({shown_in(self.units, *(self._sum(of, unit) for unit in _EACH))})")
        return replace(shown, prefix="(", suffix=")", tolerance=_FOLLOWS[name], auxiliary=True)

    def _sum(self, of: tuple[float, ...], unit: Unit) -> str:
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
        suffix += f" ±{plain(tolerance_mm)}" if written else ""
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
