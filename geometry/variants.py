"""The same job with some answers changed: what comparison, computed changes and sensitivity are made of."""

from collections.abc import Mapping
from typing import Any

from geometry.document.make import Make
from geometry.materials import MATERIALS
from geometry.measurements import Measurements
from geometry.quantity import groups_in

Changes = Mapping[str, Any]
"""Dotted keys with their new values; None takes an answer back."""


def variant(measurements: Measurements, changes: Changes) -> Measurements:
    """The document with ``changes`` applied.

    Raises pydantic's ValidationError where the changed document cannot be.
    """
    document = measurements.model_dump(exclude_unset=True)
    for key, value in changes.items():
        *path, name = key.split(".")
        group = document
        for part in path:
            group = group.setdefault(part, {})
        if value is None:
            group.pop(name, None)
        else:
            group[name] = value
    return Measurements.model_validate(document)


def material_changes(measurements: Measurements, key: str) -> dict[str, Any]:
    """What changes in a document with the material: its process where one is printed, and own values, which go with a rod."""
    process = measurements.make.process
    chosen: dict[str, Any] = {"make.material": key}
    if MATERIALS[key].printed and process != "printed":
        chosen["make.process"] = "printed"
    elif not MATERIALS[key].printed and process == "printed":
        chosen["make.process"] = Make.model_fields["process"].default
    if measurements.own.given():
        chosen |= {f"own.{name}": None for name in measurements.own.model_fields_set}
    return chosen


def number_at(measurements: Measurements, key: str) -> float | None:
    """The number that a document gives for a dotted key, None where it gives none."""
    group_name, name = key.split(".")
    value = getattr(getattr(measurements, group_name), name, None)
    return float(value) if isinstance(value, int | float) and not isinstance(value, bool) else None


def bounds_of(key: str) -> tuple[float, float] | None:
    """What a numeric field may be, None for a field that is no number."""
    info = field_of(key)
    low = next((m.ge for m in info.metadata if hasattr(m, "ge")), None)
    high = next((m.le for m in info.metadata if hasattr(m, "le")), None)
    return (float(low), float(high)) if low is not None and high is not None else None


def field_of(key: str) -> Any:
    """The description of a field by its dotted key.

    Raises KeyError where no group of that name has such a field.
    """
    group_name, name = key.split(".")
    for group in groups_in(Measurements.model_fields[group_name].annotation):
        if name in group.model_fields:
            return group.model_fields[name]
    raise KeyError(key)
