"""Cutting speeds and feeds for each kind of material: what a sharp tool on a small machine is asked for."""

from bisect import bisect_left
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from geometry.materials import Family
from geometry.provenance import Source, derived, found, memory, practice
from geometry.units import inch_to_mm

ToolMaterial = Literal["hss", "carbide"]


@dataclass(frozen=True, slots=True)
class Speeds:
    """Greatest cutting speeds for one kind of material, [m/min]."""

    turning: float
    milling: float
    source: Source


_HSS_PLASTIC = derived(
    "High-speed steel, sharp: 100 to 150 m/min, between the 50 m/min of Carvill (Mechanical"
    " Engineer's Data Handbook, p. 176) and"
    " the 280 m/min of Curbell's turning guide; 600 turns on a 3 in rod, common practice without"
    " a source, is 144 m/min. Milling:"
    " 300 to 375 ft/min for HDPE (service.polymech.info)"
)
_CARBIDE_PLASTIC = found(
    "Carbide insert, 175 m/min in nylon and acetal, 160 in polyethylene: Carvill, Mechanical"
    " Engineer's Data Handbook, p. 176"
)
_METAL = memory("Aluminium alloy 6061, dry or with spirit")
_WOOD = memory("Hardwood on a metalworking lathe: as fast as it runs smoothly")
_POLYURETHANE = derived(
    "Turning: the lower end of 330 to 1650 ft/min for cast polyurethane (harknessindustries.com, guide to machining it);"
    " milling: 1300 turns, the upper end of the same guide, taken for a 20 mm cutter"
)

SPEEDS: Mapping[tuple[Family, ToolMaterial], Speeds] = {
    ("nylon", "hss"): Speeds(150, 100, _HSS_PLASTIC),
    ("acetal", "hss"): Speeds(150, 100, _HSS_PLASTIC),
    ("polyester", "hss"): Speeds(120, 90, _HSS_PLASTIC),
    ("polyethylene", "hss"): Speeds(120, 91.44, _HSS_PLASTIC),
    ("nylon", "carbide"): Speeds(175, 175, _CARBIDE_PLASTIC),
    ("acetal", "carbide"): Speeds(175, 175, _CARBIDE_PLASTIC),
    ("polyester", "carbide"): Speeds(175, 175, _CARBIDE_PLASTIC),
    ("polyethylene", "carbide"): Speeds(160, 160, _CARBIDE_PLASTIC),
    ("aluminium", "hss"): Speeds(75, 60, _METAL),
    ("aluminium", "carbide"): Speeds(200, 150, _METAL),
    ("wood", "hss"): Speeds(250, 150, _WOOD),
    ("wood", "carbide"): Speeds(300, 250, _WOOD),
    ("elastomer", "hss"): Speeds(100, 80, _POLYURETHANE),
    ("elastomer", "carbide"): Speeds(100, 80, _POLYURETHANE),
}
"""By kind of material and of tool; of elastomers only polyurethane of 90 Shore A and harder is cut, prints are not."""

ROUGH_FEED_MM_REV = 0.25
ROUGH_FEED_SOURCE = found("0.25 mm/rev: Carvill, Mechanical Engineer's Data Handbook, p. 176")
FINISH_FEED_MM_REV = inch_to_mm(0.002)
FINISH_FEED_SOURCE = practice("0.002 in/rev for the finishing cut")

_TOOTH_DIAMETERS_MM = tuple(inch_to_mm(eighths / 8) for eighths in (1, 2, 4, 5, 6, 8))
_TOOTH_FEEDS_MM = tuple(inch_to_mm(f) for f in (0.0009, 0.0018, 0.0035, 0.0045, 0.0055, 0.0070))
TOOTH_FEED_SOURCE = found("Feed per tooth for milling HDPE, 1/8 to 1 in end mills: service.polymech.info")


def tooth_feed_mm(cutter_diameter_mm: float) -> float:
    r"""Feed per tooth of an end mill in plastic.

    .. math:: f_z = f_1 + (f_2 - f_1)\frac{d - d_1}{d_2 - d_1}

    Parameters
    ----------
    cutter_diameter_mm : float
        Cutter diameter d, [mm]

    Returns
    -------
    feed_mm : float
        Feed per tooth f_z, [mm]

    Notes
    -----
    On a straight line between the published sizes; beyond their ends, that of the end size in proportion below and
    unchanged above.

    Examples
    --------
    >>> round(tooth_feed_mm(6.35), 4)
    0.0457

    References
    ----------
    service.polymech.info, milling HDPE.
    """
    sizes, feeds = _TOOTH_DIAMETERS_MM, _TOOTH_FEEDS_MM
    if cutter_diameter_mm <= sizes[0]:
        return feeds[0] * cutter_diameter_mm / sizes[0]
    if cutter_diameter_mm >= sizes[-1]:
        return feeds[-1]
    above = bisect_left(sizes, cutter_diameter_mm)
    (d1, d2), (f1, f2) = sizes[above - 1 : above + 1], feeds[above - 1 : above + 1]
    return f1 + (f2 - f1) * (cutter_diameter_mm - d1) / (d2 - d1)
