"""What a pad can be made of: strength, stiffness and growth, each value with its source.

The table is ``materials.toml`` beside this file, read once. What heat, water and time make of its values is worked out in
:mod:`geometry.allowables` and :mod:`geometry.growth`.
"""

import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields
from pathlib import Path
from types import MappingProxyType
from typing import Any, Final, Literal, get_args

from geometry.errors import BadMeasurementsError, Problem
from geometry.provenance import Mark, Source, Sourced

Family = Literal["nylon", "acetal", "polyethylene", "polyester", "elastomer", "printed", "wood", "aluminium"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Published:
    """One published figure for comparison; no calculation uses it."""

    name: str
    condition: str
    """Temperature, moisture, standard or direction; empty where the source names none."""
    value: float
    highest: float | None = None
    """The upper end, where the source gives a range from ``value`` on."""
    unit: str
    source: Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """One material as the design uses it: every number that enters a calculation carries its source."""

    key: str
    name: str
    """Plain words for a table or a heading: "acetal copolymer (POM-C)"."""
    short_name: str
    """For use inside a sentence: "acetal"."""
    family: Family
    density_g_cm3: Sourced
    stress_minutes_mpa: Sourced
    """Allowed while the car is up for minutes; in a wall printed axis-up, times ``wall_stress_factor``."""
    stress_overnight_mpa: Sourced
    stress_stored_mpa: Sourced | None = None
    """None: not allowed to stand under load for long, whatever the stress."""
    modulus_minutes_mpa: Sourced
    """For an elastomer, the modulus at small strain before the shape term."""
    expansion_per_k: Sourced
    swell_per_percent: Sourced
    """Growth of every length, as a ratio, for each per cent of water taken up."""
    water_room_percent: Sourced
    water_soaked_percent: Sourced
    temperature_max_c: Sourced
    softening_per_k: Sourced
    wet_factor: Sourced
    """Share of strength and stiffness left when soaked."""
    assumed_friction: Sourced
    """Painted steel seam against the slot floor: a guess, used for ``slot_slide``."""
    layer_tension_factor: Sourced | None = None
    """Printed only: the stress allowed in tension across the layers over ``stress_minutes_mpa``."""
    strain_minutes: Sourced | None = None
    """Elastomers only: the greatest compression, as a ratio."""
    strain_overnight: Sourced | None = None
    extra: tuple[Published, ...] = ()
    slot_refusal: str | None = None
    """Why it is refused in a slotted head; None: it may be used."""
    cushion_refusal: str | None = None
    """Why it is refused as a flat cushion, too; None: it may be one."""
    slot_advice: str | None = None
    """Why it is a poor choice for a slotted head though it may be used."""
    notes: tuple[str, ...] = ()
    printed: bool = False

    @property
    def wall_stress_factor(self) -> float:
        """What bending of a slot wall may use of the allowable stress: 1 for solid stock, less across printed layers.

        A pad printed axis-up has its layers square to the walls' bending stress. Half the lowest tension strength
        across the layers (0.4 of that along them, times 0.8 for voids) is allowed, as half the yield is for solid
        stock.
        """
        return 1.0 if self.layer_tension_factor is None else self.layer_tension_factor.value

    def refusal_in(self, head: str) -> str | None:
        """Why it is refused in a kind of head; None: it may be used there."""
        if head == "plug" and self.family == "elastomer":
            return "A plug of it would fold over sideways and slip out of its hole."
        return {"slot": self.slot_refusal, "cushion": self.cushion_refusal}.get(head)

    def advice_in(self, head: str) -> str | None:
        """Why it is a poor choice for a kind of head though it may be used."""
        return self.slot_advice if head == "slot" else None

    def sourced(self) -> Mapping[str, Sourced]:
        """The properties that calculations use, by field name, in the order of the table; absent ones left out."""
        return {name: value for name in PROPERTIES if (value := getattr(self, name)) is not None}


PROPERTIES: Final = tuple(f.name for f in fields(Material) if "Sourced" in str(f.type))
"""The field names of the properties that calculations use."""


def _load(path: Path) -> Mapping[str, Material]:
    """Read the table once; a wrong key or unit in it stops the program at once."""
    with path.open("rb") as file:
        table = tomllib.load(file)
    return MappingProxyType({key: _material(key, entry) for key, entry in table.items()})


def _material(key: str, entry: dict[str, Any]) -> Material:
    """One table of the file as a material."""
    readers: dict[str, Callable[[Any], object]] = dict.fromkeys(PROPERTIES, _sourced)
    readers["notes"] = tuple
    readers["extra"] = lambda rows: tuple(_published(row) for row in rows)
    if entry["family"] not in get_args(Family):
        raise ValueError(f"{key}: unknown family {entry['family']!r}")
    made: dict[str, Any] = {name: readers.get(name, _as_is)(value) for name, value in entry.items()}
    return Material(key=key, **made)


def _as_is(value: object) -> object:
    """Texts and flags need no reading."""
    return value


def _sourced(row: dict[str, Any]) -> Sourced:
    """One property with its source."""
    return Sourced(float(row["value"]), row["unit"], Source(Mark(row["mark"]), row["source"]))


def _published(row: dict[str, Any]) -> Published:
    """One published figure with its source."""
    source = Source(Mark(row["mark"]), row["source"])
    return Published(**{name: value for name, value in row.items() if name not in ("mark", "source")}, source=source)


MATERIALS: Final = _load(Path(__file__).with_name("materials.toml"))
"""Every material by key, in the order of the table."""
SLOT_MATERIALS: Final = tuple(key for key, entry in MATERIALS.items() if entry.slot_refusal is None)
"""The keys that a slotted head may be made of."""


def material(key: str) -> Material:
    """Look a material up.

    Raises BadMeasurementsError for ``make.material`` when there is none of that name.

    >>> material("pom_c").name
    'acetal copolymer (POM-C)'
    """
    try:
        return MATERIALS[key]
    except KeyError:
        words = f"There is no material “{key}”; choose from {', '.join(MATERIALS)}."
        raise BadMeasurementsError((Problem("make.material", key, words),)) from None
