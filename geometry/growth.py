"""How far heat and water make a pad larger than it was machined, and cold smaller; each as a ratio of every length."""

from typing import Final, Literal

from geometry.materials import Material

Wetness = Literal["dry", "room", "soaked"]

MADE_AT_C: Final = 20.0
"""Dimensions are those at this temperature (ISO 1, from memory)."""


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

    >>> from geometry.materials import MATERIALS
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

    >>> from geometry.materials import MATERIALS
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

    >>> from geometry.materials import MATERIALS
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
    >>> from geometry.materials import MATERIALS
    >>> water_percent(MATERIALS["pet_p"], wetness="soaked")
    0.5

    References
    ----------
    PET-P: data sheet (Scribd 502740848); the others beside their values in the table.
    """
    if wetness == "dry":
        return 0.0
    return (material.water_room_percent if wetness == "room" else material.water_soaked_percent).value
