"""What is measured so far, and the numbered balloons that ask for it: both made from the field list."""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from math import isfinite
from types import MappingProxyType
from typing import Any

from annotated_types import Ge, Le

from geometry.feet.cup.fields import CupJack
from geometry.heads.slot.fields import SlotSeam
from geometry.measurements import Measurements
from geometry.pad import DIMENSIONS
from geometry.quantity import Group

GROUPS: Mapping[str, type[Group]] = MappingProxyType({"jack": CupJack, "seam": SlotSeam})
"""The groups that the section shows, from the floor up."""


def _has_balloon(extra: object) -> bool:
    return isinstance(extra, dict) and bool(extra.get("balloon"))


TITLES: Mapping[str, str] = MappingProxyType(
    {
        f"{group}.{name}": info.title or name
        for group, model in GROUPS.items()
        for name, info in model.model_fields.items()
        if _has_balloon(info.json_schema_extra)
    }
)
"""Title of each measurement that has a balloon, by dotted key, from the floor up."""
BALLOONS: Mapping[str, int] = MappingProxyType({key: number for number, key in enumerate(TITLES, start=1)})
"""Number of each balloon by the dotted key of its field."""
OPTIONAL = frozenset(
    key for key in TITLES if not GROUPS[key.partition(".")[0]].model_fields[key.partition(".")[2]].is_required()
)
"""Measurements that may be left out."""


def element_id(key: str) -> str:
    """The dotted key of a field as it stands in the ids of a page.

    >>> element_id("jack.cup_bore_mm")
    'jack-cup_bore_mm'
    """
    return key.replace(".", "-")


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """What is measured so far; None is still to be measured, or left out on purpose where ``is_complete``."""

    cup_bore_mm: float | None = None
    cup_depth_mm: float | None = None
    cup_corner_radius_mm: float | None = None
    rim_diameter_mm: float | None = None
    stem_hole_diameter_mm: float | None = None
    stem_hole_depth_mm: float | None = None
    floor_boss_height_mm: float | None = None
    floor_boss_diameter_mm: float | None = None
    rim_height_low_mm: float | None = None
    thickness_mm: float | None = None
    sheets: int | None = None
    bare_thickness_mm: float | None = None
    height_mm: float | None = None
    edge_height_mm: float | None = None
    clear_outboard_mm: float | None = None
    clear_inboard_mm: float | None = None
    offset_mm: float | None = None
    local_thickness_mm: float | None = None
    local_drop_mm: float | None = None
    local_length_mm: float | None = None
    is_complete: bool = False
    """Whether all that is required is there, so that what is missing was left to its default."""

    def value_of(self, key: str) -> float | None:
        """The measurement with a dotted key."""
        value: float | None = getattr(self, key.partition(".")[2])
        return value


_NAMES = tuple(f.name for f in fields(Known) if f.name != "is_complete")


def known_of(measurements: Measurements) -> Known:
    """What a complete document says."""
    groups = (measurements.jack, measurements.face)
    told = {name: getattr(group, name) for group in groups for name in _NAMES if name in type(group).model_fields}
    return Known(**told, is_complete=True)


def known_of_partial(document: Mapping[str, Mapping[str, object]]) -> Known:
    """What an unfinished document says so far; a value that cannot be counts as not yet measured."""
    told: dict[str, Any] = {}
    for group, model in GROUPS.items():
        given = document.get(group, {})
        for name in _NAMES:
            value = possible(model, name, given.get(name)) if name in model.model_fields else None
            if value is not None:
                told[name] = value
    told = {name: value for name, value in told.items() if not _contradicts(name, value, told)}
    sheets = told.pop("sheets", None)
    return Known(**told, sheets=None if sheets is None else int(sheets))


def fixed_of_partial(document: Mapping[str, Mapping[str, object]]) -> dict[str, float]:
    """The pad's dimensions that an unfinished document fixes."""
    model = Measurements.model_fields["fixed"].annotation
    given = document.get("fixed", {})
    if not isinstance(model, type) or not issubclass(model, Group):
        return {}
    found = {name: possible(model, name, given.get(name)) for name in DIMENSIONS}
    return {name: value for name, value in found.items() if value is not None}


def possible(model: type[Group], name: str, value: object) -> float | None:
    """The number, where it is one and lies within the bounds of what can exist."""
    if isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value):
        return None
    for bound in model.model_fields[name].metadata:
        if isinstance(bound, Ge) and not float(value) >= float(str(bound.ge)):
            return None
        if isinstance(bound, Le) and not float(value) <= float(str(bound.le)):
            return None
    return value


def _contradicts(name: str, value: float, told: Mapping[str, float]) -> bool:
    """Whether a smaller feature does not fit into the larger one it belongs to; the document refuses it elsewhere."""
    bore, depth, thickness = told.get("cup_bore_mm"), told.get("cup_depth_mm"), told.get("thickness_mm")
    match name:
        case "cup_corner_radius_mm":
            return (depth is not None and value > depth - 1) or (bore is not None and value > bore / 2)
        case "rim_diameter_mm":
            return bore is not None and value < bore
        case "stem_hole_diameter_mm":
            return bore is not None and value > bore - 6
        case "floor_boss_height_mm":
            return "stem_hole_diameter_mm" in told
        case "floor_boss_diameter_mm":
            return bore is not None and value > bore - 12
        case "bare_thickness_mm":
            return thickness is not None and value > thickness
        case "local_thickness_mm":
            return thickness is not None and value < thickness
        case _:
            return False
