"""An end mill: which one cuts an open side, and how it is pushed aside: force of a chip, and the bend of a slender rod."""

from math import pi, sqrt

from geometry.making.cutting import ToolMaterial
from geometry.provenance import memory

RUN_MIN = 0.5
"""Setting the next run of a cutter: judged, not measured."""
USUAL_CUTTER_MM = 10.0
"""What is taken for sides and flats where no cutter is to hand: a common size."""
CORE_SHARE = 0.8
"""A fluted cutter bends like a plain rod of this share of its diameter."""
MODULUS_MPA: dict[ToolMaterial, float] = {"hss": 210_000.0, "carbide": 600_000.0}
CUTTING_STRESS_MPA = 150.0
FORCE_SOURCE = memory("About 150 N for each mm² of chip in plastics; stiffness of tool steel and carbide; core of 0.8")


def side_cutter_mm(cutters_mm: tuple[float, ...]) -> float:
    """The cutter for a side that lies open: the largest to hand.

    >>> side_cutter_mm((3, 6, 8, 12)), side_cutter_mm(())
    (12, 10.0)
    """
    return max(cutters_mm, default=USUAL_CUTTER_MM)


def cutting_force_n(*, deep_mm: float, wide_mm: float, cutter_diameter_mm: float, feed_mm_tooth: float) -> float:
    r"""Estimated force of one tooth of an end mill, square to its axis.

    .. math:: F = k_c\, a_p\, h, \quad h = f_z \text{ from half a diameter wide on, else } 2 f_z \sqrt{\frac{a_e}{d}\left(1 -
        \frac{a_e}{d}\right)}

    Parameters
    ----------
    deep_mm : float
        Depth of the cut along the cutter's axis a_p, [mm]
    wide_mm : float
        Width of the cut across it a_e, [mm]
    cutter_diameter_mm : float
        Cutter diameter d, [mm]
    feed_mm_tooth : float
        Feed per tooth f_z, [mm]

    Returns
    -------
    force_n : float
        Force F, [N]

    Notes
    -----
    k_c = 150 MPa, from memory for plastics; the thickest chip counts. An estimate to compare cutters by.

    Examples
    --------
    A full cut 3 mm deep at 0.05 mm per tooth: 150 · 3 · 0.05.

    >>> cutting_force_n(deep_mm=3, wide_mm=6, cutter_diameter_mm=6, feed_mm_tooth=0.05)
    22.5

    References
    ----------
    Chip thickness: plain geometry of a milling cut; the cutting stress is from memory.
    """
    share = min(1.0, wide_mm / cutter_diameter_mm)
    chip = feed_mm_tooth if share >= 0.5 else 2 * feed_mm_tooth * sqrt(share * (1 - share))
    return CUTTING_STRESS_MPA * deep_mm * chip


def cutter_deflection_mm(*, force_n: float, reach_mm: float, cutter_diameter_mm: float, modulus_mpa: float) -> float:
    r"""How far the end of a cutter bends aside.

    .. math:: \delta = \frac{F L^3}{3 E I}, \quad I = \frac{\pi (0.8 d)^4}{64}

    Parameters
    ----------
    force_n : float
        Force at its end F, [N]
    reach_mm : float
        Length out of the holder L, [mm]
    cutter_diameter_mm : float
        Cutter diameter d, [mm]
    modulus_mpa : float
        Stiffness of the cutter's material E, [MPa]

    Returns
    -------
    deflection_mm : float
        Movement of its end δ, [mm]

    Notes
    -----
    The whole force at the end is the worst place; holder and spindle give more. Flutes leave about 0.8 of the diameter to
    bend.

    Examples
    --------
    30 N on a 10 mm rod of steel (12.5 mm cutter) standing out 50 mm: 30 · 50³/(3 · 210 000 · π 10⁴/64).

    >>> round(cutter_deflection_mm(force_n=30, reach_mm=50, cutter_diameter_mm=12.5, modulus_mpa=210_000), 4)
    0.0121

    References
    ----------
    Cantilever with an end load, any mechanics text; the core of 0.8 from memory.
    """
    second_moment = pi * (CORE_SHARE * cutter_diameter_mm) ** 4 / 64
    return force_n * reach_mm**3 / (3 * modulus_mpa * second_moment)
