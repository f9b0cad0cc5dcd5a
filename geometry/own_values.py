"""The user's own figures from a data sheet, in place of the table's."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Any, Final

from geometry.errors import BadMeasurementsError, Problem
from geometry.materials import Material
from geometry.provenance import Mark, Source, Sourced


@dataclass(frozen=True, slots=True)
class OwnRange:
    """What an own value may be, in the table's unit."""

    low: float
    high: float
    unit: str


OWN_RANGES: Final = MappingProxyType(
    {
        "density_g_cm3": OwnRange(0.3, 20, "g/cm³"),
        "stress_minutes_mpa": OwnRange(0.1, 500, "MPa"),
        "stress_overnight_mpa": OwnRange(0.1, 500, "MPa"),
        "stress_stored_mpa": OwnRange(0.1, 500, "MPa"),
        "modulus_minutes_mpa": OwnRange(1, 250_000, "MPa"),
        "expansion_per_k": OwnRange(0, 500e-6, "1/K"),
        "swell_per_percent": OwnRange(0, 0.01, "1 per % of water"),
        "water_room_percent": OwnRange(0, 40, "% of mass"),
        "water_soaked_percent": OwnRange(0, 40, "% of mass"),
        "temperature_max_c": OwnRange(30, 200, "°C"),
        "softening_per_k": OwnRange(0, 0.05, "1/K"),
        "wet_factor": OwnRange(0.1, 1, "1"),
        "assumed_friction": OwnRange(0.02, 1, "1"),
        "layer_tension_factor": OwnRange(0.05, 1, "1"),
        "strain_minutes": OwnRange(0.01, 0.25, "1"),
        "strain_overnight": OwnRange(0.01, 0.25, "1"),
    }
)
"""What an own value may be, by property: as far as any material goes, so that a slip of the unit is caught."""
_NEVER_RISING: Final = (
    ("stress_minutes_mpa", "stress_overnight_mpa", "longer under load never allows more stress"),
    ("stress_overnight_mpa", "stress_stored_mpa", "longer under load never allows more stress"),
    ("water_soaked_percent", "water_room_percent", "room air never gives more water than soaking"),
    ("strain_minutes", "strain_overnight", "longer under load never allows more strain"),
)
_OWN_SOURCE: Final = Source(Mark.OWN, "Entered by the user")


def with_own_values(material: Material, values: Mapping[str, float], *, field: str = "make.own_values") -> Material:
    """The same material with some properties replaced by the user's own, marked as such; ``field`` prefixes problems.

    Raises BadMeasurementsError for a property that does not exist or is not offered, a value outside what any material
    shows, or values that contradict each other.

    >>> from geometry.materials import MATERIALS
    >>> own = with_own_values(MATERIALS["pom_c"], {"stress_minutes_mpa": 28.0})
    >>> str(own.stress_minutes_mpa.source), own.stress_overnight_mpa.value
    ('Entered by the user [U: your own value]', 17.0)
    """
    present = material.sourced()
    problems = [
        Problem(f"{field}.{key}", value, words)
        for key, value in values.items()
        if (words := _fault(material, present, key, value))
    ]
    if problems:
        raise BadMeasurementsError(tuple(problems))
    own = {key: Sourced(float(value), present[key].unit, _OWN_SOURCE) for key, value in values.items()}
    changes: dict[str, Any] = dict(own)
    changed = replace(material, **changes)
    contradictions = tuple(_contradictions(changed, own, field))
    if contradictions:
        raise BadMeasurementsError(contradictions)
    return changed


def _fault(material: Material, present: Mapping[str, Sourced], key: str, value: float) -> str | None:
    """What is wrong with one own value by itself."""
    if key not in OWN_RANGES:
        return f"There is no property “{key}”; choose from {', '.join(OWN_RANGES)}."
    if key not in present:
        return f"{key} is not offered for {material.short_name}, whatever its value; leave it out."
    allowed = OWN_RANGES[key]
    if not (math.isfinite(value) and allowed.low <= value <= allowed.high):
        return (
            f"{value:g} {allowed.unit} is outside {allowed.low:g} to {allowed.high:g} {allowed.unit};"
            " check the unit on the data sheet."
        )
    return None


def _contradictions(material: Material, own: Mapping[str, Sourced], field: str) -> list[Problem]:
    """Own values that contradict another value of the same material."""
    present = material.sourced()
    return [
        Problem(
            f"{field}.{upper if upper in own else lower}",
            present[upper if upper in own else lower].value,
            f"{lower} {present[lower].value:g} is more than {upper} {present[upper].value:g}, but {why};"
            " give both values.",
        )
        for upper, lower, why in _NEVER_RISING
        if {upper, lower} & own.keys()
        and {upper, lower} <= present.keys()
        and present[lower].value > present[upper].value
    ]
