"""A piece of bar: what it weighs and what it costs."""

from math import pi

from geometry.conditions import Conditions
from geometry.document.shop import Shop

_KG_PER_MM3_G_CM3 = 1e-6


def bar_mass_kg(bar_mm: float, length_mm: float, conditions: Conditions) -> float:
    r"""Mass of a piece of bar.

    .. math:: m = \rho \frac{\pi D^2}{4} l

    Parameters
    ----------
    bar_mm : float
        Diameter of the bar D, [mm]
    length_mm : float
        Its length l, [mm]
    conditions : Conditions
        Supplies the density ρ, [g/cm³]

    Returns
    -------
    mass_kg : float
        Mass m, [kg]

    Examples
    --------
    >>> from geometry.conditions import conditions_of
    >>> from geometry.measurements import read_measurements
    >>> acetal = conditions_of(read_measurements({
    ...     "jack": {"cup_bore_mm": 68, "cup_depth_mm": 12, "rated_load_kg": 2000, "rim_height_low_mm": 105},
    ...     "seam": {"thickness_mm": 3.2, "height_mm": 20, "edge_height_mm": 190}, "car": {"gross_mass_kg": 1600}}))
    >>> round(bar_mass_kg(80, 1000, acetal), 2)
    7.09

    References
    ----------
    Plain geometry.
    """
    return pi / 4 * bar_mm**2 * length_mm * conditions.material.density_g_cm3.value * _KG_PER_MM3_G_CM3


def price_of(bar_mm: float, length_mm: float, conditions: Conditions, shop: Shop) -> float | None:
    """Price of a piece of bar in the user's money; None where no price is given."""
    if shop.price_per_m is not None:
        return shop.price_per_m * length_mm / 1000
    if shop.price_per_kg is not None:
        return shop.price_per_kg * bar_mass_kg(bar_mm, length_mm, conditions)
    return None
