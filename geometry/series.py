"""The bars and end mills that shops sell, smallest first."""

from fractions import Fraction
from typing import Literal

from geometry.provenance import memory
from geometry.units import inch_to_mm

System = Literal["metric", "inch"]

SERIES_SOURCE = memory("Diameters that dealers in bar and in end mills commonly list.")


def _eighths_mm(*eighths: int) -> tuple[float, ...]:
    """Eighths of an inch in mm."""
    return tuple(inch_to_mm(n / 8) for n in eighths)


STOCK_DIAMETERS_MM: dict[System, tuple[float, ...]] = {
    "metric": tuple(
        float(d) for d in (20, 25, 30, 36, 40, 45, 50, 56, 60, 65, 70, 75, 80, 90, 100, 110, 120, 125, 130, 140, 150)
    ),
    "inch": _eighths_mm(*range(6, 17), *range(18, 33, 2), *range(36, 49, 4)),
}
"""Bars: 20 to 150 mm; from 3/4 in by 1/8 in to 2 in, by 1/4 in to 4 in, by 1/2 in to 6 in: ``SERIES_SOURCE``."""

CUTTER_DIAMETERS_MM: dict[System, tuple[float, ...]] = {
    "metric": tuple(float(d) for d in (3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 25)),
    "inch": tuple(
        inch_to_mm(float(Fraction(size)))
        for size in ("1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2", "5/8", "3/4", "1")
    ),
}
"""End mills. See ``SERIES_SOURCE``."""
