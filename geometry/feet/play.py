"""How far the pad can move in or on the jack: the play of whatever locates it."""

from collections.abc import Mapping
from types import MappingProxyType

from geometry.conditions import Conditions
from geometry.feet.facts import Locates

LOCATING: Mapping[Locates, str] = MappingProxyType(
    {"seat": "seat_diameter_mm", "skirt": "skirt_bore_mm", "stem": "stem_diameter_mm"}
)
"""The dimension of the pad that keeps it in its place."""


def play_mm(c: Conditions, *, size_mm: float, tolerance_mm: float) -> float:
    """Largest play of what locates the pad, on the diameter, [mm]: a seat or stem in the cold, a skirt in the heat."""
    if c.foot.locates == "skirt":
        return (size_mm + tolerance_mm) * (1 + c.g_hot) - c.foot.bore_mm + c.u
    return c.foot.bore_mm + c.u - (size_mm - tolerance_mm) * (1 + c.g_cold)
