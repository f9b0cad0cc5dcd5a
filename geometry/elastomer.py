"""How rubber and polyurethane give way: stiffer the wider and flatter they are."""

from geometry.allowables import holding_modulus_mpa
from geometry.conditions import Conditions


def shape_factor(*, loaded_width_mm: float, height_mm: float) -> float:
    r"""Loaded area over the free surface around it, of a disc.

    .. math:: S = \frac{D}{4h}

    Parameters
    ----------
    loaded_width_mm : float
        Diameter of the widest disc that lies within the loaded area D, [mm]
    height_mm : float
        Height of the material h, [mm]

    Returns
    -------
    factor : float
        S, [-]

    Notes
    -----
    Of any convex loaded area, area over circumference is at least a quarter of the widest disc inside, so S comes out
    small and the material soft.

    Examples
    --------
    >>> shape_factor(loaded_width_mm=80, height_mm=20)
    1.0

    References
    ----------
    Definition of the shape factor of Gent & Lindley (1959), as read in a public summary.
    """
    return loaded_width_mm / (4 * height_mm)


def stiffening(factor: float) -> float:
    r"""How many times stiffer than a slim column a block is that cannot spread on its faces.

    .. math:: E_a / E_0 = 1 + 2 S^2

    Parameters
    ----------
    factor : float
        Shape factor S, [-]

    Returns
    -------
    ratio : float
        E_a/E₀, [-]

    Notes
    -----
    For discs and squares; 2 is that of unfilled material. The material's resistance to a change of volume, which stops the
    growth at large S, is left out: a pad has S of about 1. Faces that slip, wet or oily ones, give more way than this.

    Examples
    --------
    >>> stiffening(1.0)
    3.0

    References
    ----------
    Gent & Lindley (1959), as read in a public summary.
    """
    return 1 + 2 * factor**2


def small_strain_modulus_mpa(c: Conditions) -> float:
    """Modulus at small strain in this case's heat and water, before shape adds to it, [MPa]; creep is in the allowed strain."""
    service = c.measurements.service
    modulus = holding_modulus_mpa(
        c.material, hold="minutes", temperature_high_c=service.temperature_high_c, wetness=service.wetness
    )
    return c.modulus_mpa if modulus is None else modulus


def is_elastomer(c: Conditions) -> bool:
    """Whether the pad is judged by how far it gives way and not by its strength."""
    return c.material.strain_minutes is not None


def allowed_strain(c: Conditions) -> float:
    """Greatest compression for the time that the load stays, as a ratio."""
    chosen, hold = c.material, c.measurements.service.hold
    allowed = chosen.strain_minutes if hold == "minutes" else chosen.strain_overnight
    return allowed.value if allowed else 0.0
