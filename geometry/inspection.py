"""The inspection sheet: every characteristic of the part with its limits, a fitting instrument, and the order of the first part."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from math import isfinite
from types import MappingProxyType

from geometry.checks import judge
from geometry.conditions import Conditions
from geometry.geometrical import (
    FLOOR_PARALLELISM,
    GEOMETRICAL_TOLERANCES,
    SLOT_SYMMETRY,
    GeometricalTolerance,
    tolerances_of,
)
from geometry.growth import water_percent
from geometry.making.how_measured import dimension_title, height_parts, how_measured, looks, measured_names
from geometry.making.instruments import EYE, INSTRUMENTS, Instrument
from geometry.making.strays import stray_lines
from geometry.making.wording import Sentence, said
from geometry.pad import DIMENSIONS, Pad
from geometry.provenance import practice
from geometry.spread import Spread, general_tolerance_mm
from geometry.units import LowerLimit, UpperLimit

FIVE_TO_ONE = 0.2
"""An instrument should be uncertain by no more than a fifth of the zone that it decides on."""
INSTRUMENT_SOURCE = practice("The instrument's uncertainty is a tenth of the tolerance zone, a fifth at most")
REFERENCE_C = 20.0
"""What the limits hold at, °C (ISO 1, from memory)."""
_ALLOWED_FOR = frozenset(zone.name for zone in GEOMETRICAL_TOLERANCES)
"""The zones that the checks allow for by their own names."""
MAKING = frozenset({"stock", "cutter", "cutter_reach"})
"""Checks that ask whether a part can be made; a part that exists has been."""
NOTICEABLE = 0.01
"""A check depends on a dimension where moving it by its tolerance changes what is used of the limit by a hundredth."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Characteristic:
    """One line of the inspection sheet."""

    number: int
    name: str
    """Its name in the pad, or a word of its own where it is only looked at."""
    title: str
    nominal_mm: float | None
    tolerance_mm: float | None
    instrument: Instrument
    is_fine_enough: bool
    """Whether the instrument is uncertain by no more than a fifth of the zone between the limits."""
    how: Sentence
    checks: tuple[str, ...]
    """Codes of the checks that move when it moves by its tolerance, most first."""
    is_reference: bool = False
    """Follows from others; measured as a help."""

    @property
    def lower_mm(self) -> LowerLimit | None:
        """Smallest size allowed."""
        return None if self._limits is None else self._limits[0]

    @property
    def upper_mm(self) -> UpperLimit | None:
        """Largest size allowed."""
        return None if self._limits is None else self._limits[1]

    @property
    def _limits(self) -> tuple[LowerLimit, UpperLimit] | None:
        """None for what is only looked at, or held to an indicator."""
        if self.nominal_mm is None or self.tolerance_mm is None:
            return None
        return limits_about(self.nominal_mm, self.tolerance_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class InspectionSheet:
    """All there is to measure and to look at, in the order of the first part."""

    characteristics: tuple[Characteristic, ...]
    notes: tuple[Sentence, ...]

    def named(self, name: str) -> Characteristic:
        """One characteristic."""
        return next(c for c in self.characteristics if c.name == name)


def limits_about(nominal_mm: float, tolerance_mm: float) -> tuple[LowerLimit, UpperLimit]:
    """The limits on both sides of a size, in mm; nothing is smaller than nothing.

    >>> limits_about(67.0, 0.3), limits_about(0.2, 0.3)
    ((66.7, 67.3), (0.0, 0.5))
    """
    return LowerLimit(max(0.0, nominal_mm - tolerance_mm)), UpperLimit(nominal_mm + tolerance_mm)


def tolerance_mm(pad: Pad, name: str) -> float:
    """Plus and minus of a dimension; of the height those of its parts together."""
    parts = height_parts(pad) if name == "top_height_mm" else (name,)
    return sum(general_tolerance_mm(pad, part) for part in parts)


def inspection_sheet(pad: Pad, conditions: Conditions) -> InspectionSheet:
    """Every characteristic of the finished pad, with limits as the drawing has them and the estimates that move with it."""
    moved = moving(pad, conditions)
    lines = tuple(
        replace(line, checks=moved.get(line.name, ()))
        for line in characteristics(pad, is_printed=conditions.process == "printed")
    )
    return InspectionSheet(characteristics=lines, notes=_notes(pad, conditions))


@lru_cache(maxsize=16)
def moving(pad: Pad, conditions: Conditions) -> Mapping[str, tuple[str, ...]]:
    """Sizes and geometrical tolerances of a pad that move an estimate, each with its checks: the drawing marks just these.

    What only follows from others is none of them.
    """
    sizes = {
        name: checks_moved_by(name, tolerance_mm(pad, name), pad, conditions)
        for name in measured_names(pad)
        if name in DIMENSIONS
    }
    zones = {zone.name: checks_moved_in(zone, pad, conditions) for zone in tolerances_of(pad)}
    return MappingProxyType({name: codes for name, codes in (sizes | zones).items() if codes})


def characteristics(pad: Pad, *, is_printed: bool = False) -> tuple[Characteristic, ...]:
    """All that is measured and then all that is looked at on a pad, numbered in the order of the first part."""
    lines = [_line(number, name, pad) for number, name in enumerate(measured_names(pad), start=1)]
    seen = [(key, words, EYE, said("Look and feel, in good light.")) for key, words in looks(pad)]
    for key, title, instrument, how in (*stray_lines(pad, is_printed=is_printed), *seen):
        lines.append(
            Characteristic(
                number=len(lines) + 1,
                name=key,
                title=title,
                nominal_mm=None,
                tolerance_mm=None,
                instrument=instrument,
                is_fine_enough=True,
                how=how,
                checks=(),
            )
        )
    return tuple(lines)


def instrument_for(name: str, tolerance_mm: float) -> Instrument:
    """The coarsest usual instrument that is uncertain by no more than a fifth of the zone, else the finest."""
    usual = INSTRUMENTS[name]
    return next((i for i in usual if is_fine_enough(i, tolerance_mm)), usual[-1])


def checks_moved_by(name: str, by_mm: float, pad: Pad, conditions: Conditions) -> tuple[str, ...]:
    """Codes of the checks of a finished part whose use of their limit moves noticeably with a dimension, most first."""
    before = {c.code: c.utilisation for c in judge(conditions, pad) if c.code not in MAKING}
    moved: dict[str, float] = {}
    for size in (getattr(pad, name) + by_mm, getattr(pad, name) - by_mm):
        if size <= 0:
            continue
        for check in judge(conditions, pad.with_(**{name: size})):
            if check.code in before and isfinite(before[check.code]):
                change = abs(check.utilisation - before[check.code])
                moved[check.code] = max(moved.get(check.code, 0.0), change)
    return _noticeable(moved)


def _noticeable(moved: Mapping[str, float]) -> tuple[str, ...]:
    """Codes of the checks whose use of their limit changes by a hundredth or more, most first."""
    return tuple(
        sorted((code for code, change in moved.items() if change >= NOTICEABLE), key=lambda code: -moved[code])
    )


def checks_moved_in(zone: GeometricalTolerance, pad: Pad, conditions: Conditions) -> tuple[str, ...]:
    """Codes of the checks whose use of their limit moves noticeably as a feature fills its zone, most first."""
    # A plug's place and a shoulder's level are allowed for under the names of the slot's.
    own = {"plug_place_mm": SLOT_SYMMETRY.name}.get(zone.name, zone.name)
    name = own if own in _ALLOWED_FOR else FLOOR_PARALLELISM.name
    true = {c.code: c.utilisation for c in judge(conditions, pad, Spread(MappingProxyType({name: 0.0})))}
    moved = {
        c.code: abs(c.utilisation - true[c.code])
        for c in judge(conditions, pad)
        if c.code not in MAKING and isfinite(c.utilisation) and isfinite(true[c.code])
    }
    return _noticeable(moved)


def is_fine_enough(instrument: Instrument, tolerance_mm: float) -> bool:
    """Whether an instrument can decide on a plus-and-minus tolerance."""
    return instrument.uncertainty_mm <= FIVE_TO_ONE * 2 * tolerance_mm


def _line(number: int, name: str, pad: Pad) -> Characteristic:
    tolerance = tolerance_mm(pad, name)
    instrument = instrument_for(name, tolerance)
    return Characteristic(
        number=number,
        name=name,
        title=dimension_title(name, pad),
        nominal_mm=getattr(pad, name),
        tolerance_mm=tolerance,
        instrument=instrument,
        is_fine_enough=is_fine_enough(instrument, tolerance),
        how=said(how_measured(name, pad)),
        checks=(),
        is_reference=name not in DIMENSIONS,
    )


def _notes(pad: Pad, c: Conditions) -> tuple[Sentence, ...]:
    per_k = c.material.expansion_per_k.value * pad.body_diameter_mm
    notes = [
        said(
            "Limits hold at 20 °C. Write down the part's temperature: readings are brought to 20 °C"
            " before they are judged."
        ),
        said("Ten degrees more make the body {growth} larger.", growth=10 * per_k),
        said("Measure a day after the last cut, and write down how many hours have passed."),
        said("A soft part gives under the jaws of a caliper: close them until they just drag."),
    ]
    swell = c.material.swell_per_percent.value * water_percent(c.material, wetness="room")
    if swell > 0:
        notes.append(
            said(
                "Limits are those of dry stock. Months in room air make the body {swell} larger: a part that"
                " was lying about is not"
                " wrong for that. Water is not allowed for in the readings.",
                swell=swell * pad.body_diameter_mm,
            )
        )
    notes.append(
        said("The first part is measured in this order before a second one is cut. What is not measured stays open.")
    )
    return tuple(notes)
