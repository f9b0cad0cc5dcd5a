"""What is measured so far, and the numbered balloons that ask for it: both made from the field list."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, fields
from functools import cache
from math import isfinite
from types import MappingProxyType
from typing import Any

from annotated_types import Ge, Le

from geometry.drawing.section_places import own_key
from geometry.kinds import FACES, USUAL_FOOT, USUAL_HEAD, face_group, jack_model, kinds_in
from geometry.measurements import Measurements
from geometry.pad import DIMENSIONS
from geometry.quantity import Group


def _has_balloon(extra: object) -> bool:
    return isinstance(extra, dict) and bool(extra.get("balloon"))


@dataclass(frozen=True, slots=True)
class Asked:
    """What the section asks for where a pad has this foot and this head."""

    groups: Mapping[str, type[Group]]
    """The groups that the section shows, from the floor up."""
    titles: Mapping[str, str]
    """Title of each measurement that has a balloon, by dotted key, from the floor up."""
    balloons: Mapping[str, int]
    """Number of each balloon by the dotted key of its field."""
    optional: frozenset[str]
    """Measurements that may be left out."""


@cache
def asked_of(foot: str = USUAL_FOOT, head: str = USUAL_HEAD) -> Asked:
    """The balloons of a foot and a head; of the usual ones where there is no such kind."""
    groups: dict[str, type[Group]] = {"jack": jack_model(foot), face_group(head): FACES.get(head, FACES[USUAL_HEAD])}
    marked = {
        f"{group}.{name}": info
        for group, model in groups.items()
        for name, info in model.model_fields.items()
        if _has_balloon(info.json_schema_extra)
    }
    return Asked(
        groups=MappingProxyType(groups),
        titles=MappingProxyType({key: info.title or key for key, info in marked.items()}),
        balloons=MappingProxyType({key: number for number, key in enumerate(marked, start=1)}),
        optional=frozenset(key for key, info in marked.items() if not info.is_required()),
    )


GROUPS = asked_of().groups
BALLOONS = asked_of().balloons
"""Those of a cup and a slot."""


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
    foot: str = USUAL_FOOT
    head: str = USUAL_HEAD
    asks_all: bool = False
    """Whether it also asks for what the choices made so far have no use for, as a sheet does that is printed before."""
    own: Mapping[str, float | str | None] = field(default_factory=dict)
    """Every measurement and choice of this foot and head by its own dotted key; the names above are those that a cup's and a
    seam's have, filled with what another kind has in their place."""

    def value_of(self, key: str) -> float | None:
        """The measurement with a dotted key."""
        value = self.own.get(key, getattr(self, key.partition(".")[2], None))
        return value if isinstance(value, int | float) else None

    @property
    def asked(self) -> Asked:
        """What the section asks for."""
        return asked_of(self.foot, self.head)

    def asks_for(self, key: str) -> bool:
        """Whether the choices made so far have a use for the measurement with a dotted key."""
        group, _, name = key.partition(".")
        model = self.asked.groups[group]
        answers = {choice: self.own.get(f"{group}.{choice}") for choice in model.only_where(name)}
        return self.asks_all or model.asks_for(name, answers)

    @property
    def needed_of_foot(self) -> frozenset[str]:
        """What must be known for the jack's head to be drawn firmly."""
        of_a_cup = frozenset({"jack.cup_bore_mm", "jack.cup_depth_mm"})
        own = {
            "saddle": ("jack.between_teeth_mm", "jack.tooth_height_mm"),
            "plate": ("jack.plate_diameter_mm",),
            "post": ("jack.post_bore_mm", "jack.bore_rim_diameter_mm"),
        }
        return frozenset(own[self.foot]) if self.foot in own else of_a_cup

    @property
    def is_in_a_bore(self) -> bool:
        """Whether the seat drops into something, and does not stand on top of it."""
        choice = {"plate": ("located_by", "edge"), "saddle": ("stands_on", "teeth")}.get(self.foot)
        if choice is None:
            return self.foot == USUAL_FOOT
        given = self.own.get(f"jack.{choice[0]}") or FEET_DEFAULTS[choice[0]]
        return given != choice[1]


FEET_DEFAULTS: Mapping[str, str] = MappingProxyType({"located_by": "edge", "stands_on": "land"})
"""The usual answers of the choices that decide how the seat stands."""
_NAMES = tuple(f.name for f in fields(Known) if f.name not in {"is_complete", "foot", "head", "own", "asks_all"})


def known_of(measurements: Measurements) -> Known:
    """What a complete document says."""
    foot, head = measurements.foot, measurements.head
    groups = {"jack": measurements.jack, face_group(head): measurements.face}
    own = {f"{group}.{name}": getattr(part, name) for group, part in groups.items() for name in type(part).model_fields}
    return Known(**dict(_in_usual_names(foot, head, own)), foot=foot, head=head, own=own, is_complete=True)


def _in_usual_names(foot: str, head: str, own: Mapping[str, Any]) -> Iterator[tuple[str, Any]]:
    """The measurements by the names that a cup's and a seam's have; what is not asked of this kind is absent."""
    usual = asked_of()
    for name in _NAMES:
        group = "jack" if name in usual.groups["jack"].model_fields else "seam"
        value = own.get(own_key(foot, head, f"{group}.{name}"))
        if value is not None:
            yield name, value


def known_of_partial(document: Mapping[str, Any], *, asks_all: bool = False) -> Known:
    """What an unfinished document says so far; a value that cannot be counts as not yet measured."""
    foot, head = kinds_in(document)
    own: dict[str, Any] = {}
    for group, model in asked_of(foot, head).groups.items():
        given = document.get(group) or {}
        for name in model.model_fields:
            value = given.get(name)
            is_choice = name in FEET_DEFAULTS or f"{group}.{name}" == "pocket.shape"
            own[f"{group}.{name}"] = value if is_choice else possible(model, name, value)
    told = dict(_in_usual_names(foot, head, own))
    told = {name: value for name, value in told.items() if not _contradicts(name, value, told)}
    sheets = told.pop("sheets", None)
    is_usual = (foot, head) == (USUAL_FOOT, USUAL_HEAD)
    return Known(
        **told,
        sheets=None if sheets is None else int(sheets),
        foot=foot,
        head=head,
        asks_all=asks_all,
        # Of a cup and a seam the names above leave out what contradicts itself.
        own={} if is_usual else own,
    )


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
