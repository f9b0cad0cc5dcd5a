"""What heat, water and time under load leave of a material's strength and stiffness.

The table's stresses are those of damp (conditioned) stock at 23 °C, each for the time that the load stays.
"""

from typing import Final, Literal

from geometry.growth import Wetness
from geometry.materials import Material
from geometry.provenance import Sourced

Hold = Literal["minutes", "overnight", "stored"]

TESTED_AT_C: Final = 23.0
"""Plastics are tested at this temperature (ISO 291, from memory)."""
LEAST_TEMPERATURE_FACTOR: Final = 0.3
"""The straight fall of strength with temperature is not followed below this; the limit temperature ends it first."""


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

    >>> from geometry.materials import MATERIALS
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

    >>> from geometry.materials import MATERIALS
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

    >>> from geometry.materials import MATERIALS
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


def _stress(material: Material, hold: Hold) -> Sourced | None:
    """The table's stress for a hold."""
    if hold == "minutes":
        return material.stress_minutes_mpa
    return material.stress_overnight_mpa if hold == "overnight" else material.stress_stored_mpa


def _left(material: Material, temperature_high_c: float, wetness: Wetness) -> float:
    """Share of strength and stiffness left by heat and water together."""
    dry = temperature_factor(material, temperature_high_c=temperature_high_c)
    return dry * material.wet_factor.value if wetness == "soaked" else dry
