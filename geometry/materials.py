"""What a pad can be made of: strength, stiffness and growth, each value with its source.

The table is ``materials.toml`` beside this file. Stresses are those of damp (conditioned) stock at 23 °C;
the functions bring them to the heat and the wetness that the user states.
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
Hold = Literal["minutes", "overnight", "stored"]
Wetness = Literal["dry", "room", "soaked"]

MADE_AT_C: Final = 20.0
"""Dimensions are those at this temperature (ISO 1, from memory)."""
TESTED_AT_C: Final = 23.0
"""Plastics are tested at this temperature (ISO 291, from memory)."""
LEAST_TEMPERATURE_FACTOR: Final = 0.3
"""The straight fall of strength with temperature is not followed below this; the limit temperature ends it first."""


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

    @property
    def e0_mpa(self) -> Sourced | None:
        """An elastomer's modulus before the shape term 1 + 2S²; None for everything else."""
        return self.modulus_minutes_mpa if self.family == "elastomer" else None

    def sourced(self) -> Mapping[str, Sourced]:
        """The properties that calculations use, by field name, in the order of the table; absent ones left out."""
        return {name: value for name in PROPERTIES if (value := getattr(self, name)) is not None}


PROPERTIES: Final = tuple(f.name for f in fields(Material) if "Sourced" in str(f.type))
"""The field names of the properties that calculations use."""


def temperature_factor(material: Material, *, temperature_high_c: float) -> float:
    r"""Share of strength and stiffness left in the heat.

    .. math:: f_T = \max(0.3,\; 1 - k\,(T - 23)) \quad \text{above 23 °C, else } 1

    Parameters
    ----------
    material : Material
        Supplies the softening k, [1/K]
    temperature_high_c : float
        Highest temperature of the pad under load T, [°C]

    Returns
    -------
    factor : float
        f_T, [-]

    Notes
    -----
    A straight line from memory, unconfirmed; it ends at the material's limit temperature, which is a check of its own.
    Cold is not credited with more strength.

    Examples
    --------
    Acetal at 63 °C, 40 K above the test temperature:

    >>> round(temperature_factor(MATERIALS["pom_c"], temperature_high_c=63), 3)
    0.6

    References
    ----------
    Derived for this project; 23 °C is the test temperature of ISO 291 (from memory).
    """
    over = temperature_high_c - TESTED_AT_C
    return 1.0 if over <= 0 else max(LEAST_TEMPERATURE_FACTOR, 1.0 - material.softening_per_k.value * over)


def allowable_mpa(material: Material, *, hold: Hold, temperature_high_c: float, wetness: Wetness) -> float | None:
    r"""Stress that the design allows.

    .. math:: \sigma_{allow} = \sigma(hold)\, f_T\, f_w

    Parameters
    ----------
    material : Material
        Supplies the stress for each hold, the softening and the wet factor
    hold : str
        How long the load stands: ``minutes``, ``overnight`` or ``stored``
    temperature_high_c : float
        Highest temperature of the pad under load, [°C]
    wetness : str
        ``dry``, ``room`` or ``soaked``; only soaking lowers the stress, [-]

    Returns
    -------
    stress : float or None
        σ_allow, [MPa]; None where the material is not allowed that hold

    Notes
    -----
    The table's stresses are those of damp stock, so dry stock is not credited with more.

    Examples
    --------
    Nylon 66, soaked, left overnight at 23 °C: 14 × 0.65 MPa.

    >>> allowable_mpa(MATERIALS["pa66"], hold="overnight", temperature_high_c=23, wetness="soaked")
    9.1
    >>> allowable_mpa(MATERIALS["pla"], hold="stored", temperature_high_c=23, wetness="room") is None
    True

    References
    ----------
    Derived for this project; the source of each stress stands beside it in the table.
    """
    stress = _stress(material, hold)
    return None if stress is None else stress.value * _left(material, temperature_high_c, wetness)


def holding_modulus_mpa(material: Material, *, hold: Hold, temperature_high_c: float, wetness: Wetness) -> float | None:
    r"""Stiffness that is left at the end of the hold, creep included.

    .. math:: E_{hold} = E_{min}\, \frac{\sigma(hold)}{\sigma(minutes)}\, f_T\, f_w

    Parameters
    ----------
    material : Material
        Supplies the modulus for minutes and the stress for each hold
    hold : str
        How long the load stands: ``minutes``, ``overnight`` or ``stored``
    temperature_high_c : float
        Highest temperature of the pad under load, [°C]
    wetness : str
        ``dry``, ``room`` or ``soaked``, [-]

    Returns
    -------
    modulus : float or None
        E_hold, [MPa]; None where the material is not allowed that hold

    Notes
    -----
    The stresses were lowered for longer holds by the ratio of creep moduli, so their ratio stands for it.

    Examples
    --------
    Acetal stored under load: 2500 × 13/30 MPa, beside a published creep modulus of 1300 MPa at 1000 h.

    >>> round(holding_modulus_mpa(MATERIALS["pom_c"], hold="stored", temperature_high_c=23, wetness="room"))
    1083

    References
    ----------
    Derived for this project; creep anchor: data sheet for a POM-C moulding grade (happylibnet 2094609).
    """
    stress = _stress(material, hold)
    if stress is None:
        return None
    creep = stress.value / material.stress_minutes_mpa.value
    return material.modulus_minutes_mpa.value * creep * _left(material, temperature_high_c, wetness)


def growth(material: Material, *, temperature_c: float, water_percent: float) -> float:
    r"""Growth of every length over the part as machined, as a ratio.

    .. math:: g = \alpha\,(T - 20) + s\,\Delta w

    Parameters
    ----------
    material : Material
        Supplies the expansion α, [1/K], and the swelling s, [1 per % of water]
    temperature_c : float
        Temperature of the pad T, [°C]
    water_percent : float
        Water taken up since machining Δw, [% of mass]

    Returns
    -------
    ratio : float
        g, [-]; negative when the part has shrunk

    Notes
    -----
    The same in every direction; rod is slightly anisotropic, wood and prints strongly so (their values are those of the
    direction that moves most). Water takes months to reach the middle of a pad; the end state is meant.

    Examples
    --------
    A seat of ⌀68 mm in UHMW polyethylene, 40 K warmer, grows by 0.54 mm:

    >>> round(68 * growth(MATERIALS["uhmw_pe"], temperature_c=60, water_percent=0), 2)
    0.54

    References
    ----------
    Linear thermal expansion: textbook definition; swelling slope inside 0.22 to 0.50 % per 1 %: Intech Power, note on
    moisture.
    """
    return (
        material.expansion_per_k.value * (temperature_c - MADE_AT_C) + material.swell_per_percent.value * water_percent
    )


def hot_growth(material: Material, *, temperature_high_c: float, wetness: Wetness) -> float:
    r"""Growth at the warmest and wettest that the pad will meet.

    .. math:: g_{hot} = \alpha\,(T_{high} - 20) + s\,\Delta w(wetness)

    Parameters
    ----------
    material : Material
        Supplies expansion, swelling and the water for each wetness
    temperature_high_c : float
        Highest temperature T_high, [°C]
    wetness : str
        ``dry``, ``room`` or ``soaked``, [-]

    Returns
    -------
    ratio : float
        g_hot, [-]

    Examples
    --------
    Nylon 66 at 40 °C in room air: 90e-6 × 20 + 0.0030 × 2.5.

    >>> round(hot_growth(MATERIALS["pa66"], temperature_high_c=40, wetness="room"), 6)
    0.0093

    References
    ----------
    See ``growth``.
    """
    return growth(material, temperature_c=temperature_high_c, water_percent=water_percent(material, wetness=wetness))


def cold_growth(material: Material, *, temperature_low_c: float) -> float:
    r"""Growth (as a rule shrinkage) at the coldest that the pad will meet, dry as machined.

    .. math:: g_{cold} = \alpha\,(T_{low} - 20)

    Parameters
    ----------
    material : Material
        Supplies the expansion
    temperature_low_c : float
        Lowest temperature T_low, [°C]

    Returns
    -------
    ratio : float
        g_cold, [-]

    Notes
    -----
    Stock that had taken up room moisture before machining can shrink by a further s Δw(room) as it dries.

    Examples
    --------
    Acetal at −10 °C: 115e-6 × (−30).

    >>> round(cold_growth(MATERIALS["pom_c"], temperature_low_c=-10), 6)
    -0.00345

    References
    ----------
    See ``growth``.
    """
    return growth(material, temperature_c=temperature_low_c, water_percent=0.0)


def water_percent(material: Material, *, wetness: Wetness) -> float:
    r"""Water taken up since machining from dry stock.

    .. math:: \Delta w = 0,\; \Delta w_{room} \text{ or } \Delta w_{soaked}

    Parameters
    ----------
    material : Material
        Supplies the water in room air and soaked
    wetness : str
        ``dry``, ``room`` or ``soaked``, [-]

    Returns
    -------
    water : float
        Δw, [% of mass]

    Examples
    --------
    >>> water_percent(MATERIALS["pet_p"], wetness="soaked")
    0.5

    References
    ----------
    PET-P: data sheet (Scribd 502740848); the others beside their values in the table.
    """
    if wetness == "dry":
        return 0.0
    return (material.water_room_percent if wetness == "room" else material.water_soaked_percent).value


def _stress(material: Material, hold: Hold) -> Sourced | None:
    """The table's stress for a hold."""
    if hold == "minutes":
        return material.stress_minutes_mpa
    return material.stress_overnight_mpa if hold == "overnight" else material.stress_stored_mpa


def _left(material: Material, temperature_high_c: float, wetness: Wetness) -> float:
    """Share of strength and stiffness left by heat and water together."""
    dry = temperature_factor(material, temperature_high_c=temperature_high_c)
    return dry * material.wet_factor.value if wetness == "soaked" else dry


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
