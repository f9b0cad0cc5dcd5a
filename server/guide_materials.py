"""The guide's entries for the materials: figures and notes of the table, and which family comes first and last in what."""

from collections.abc import Callable, Mapping

from geometry.materials import MATERIALS, Family, Material
from server.forms import Units
from server.guide_context import FamilyPart, MaterialPart
from server.guide_words import FAMILIES
from server.materials_page import MaterialView, materials_page

_QUALITIES: Mapping[str, Callable[[Material], float]] = {
    "carrying for minutes": lambda m: m.stress_minutes_mpa.value,
    "carrying overnight, which tells how it ages": lambda m: m.stress_overnight_mpa.value,
    "stiffness": lambda m: m.modulus_minutes_mpa.value,
    "heat it bears": lambda m: m.temperature_max_c.value,
    "keeping its size when soaked": lambda m: -m.swell_per_percent.value * m.water_soaked_percent.value,
    "keeping its size as it warms": lambda m: -m.expansion_per_k.value,
}
"""What a material can be good at, each as a figure of the table that is better when greater."""


def families(units: Units) -> tuple[FamilyPart, ...]:
    """Every material of the table, by family."""
    page = materials_page(units)
    return tuple(
        FamilyPart(
            id=f"family-{family}",
            heading=FAMILIES[family],
            good_at=_listed(family, best=True),
            bad_at=_listed(family, best=False),
            materials=tuple(_material(entry, page.head) for entry in page.materials if entry.family == family),
        )
        for family in FAMILIES
    )


def _material(entry: MaterialView, head: tuple[str, ...]) -> MaterialPart:
    figures = tuple(zip(head, entry.overview, strict=True))
    return MaterialPart(entry.id, entry.name, entry.use, figures, entry.notes, f"/materials#{entry.id}")


def _listed(family: Family, *, best: bool) -> str:
    """The qualities in which a family is among the first two, or the last two; empty for what no slot is made of."""
    ranked = {name: _ranking(quality) for name, quality in _QUALITIES.items()}
    if not all(family in ranking for ranking in ranked.values()):
        return ""
    found = []
    for name, ranking in ranked.items():
        marks = sorted(set(ranking.values()), reverse=best)
        if ranking[family] in marks[:2]:
            found.append(name)
    return "; ".join(found)


def _ranking(quality: Callable[[Material], float]) -> dict[Family, float]:
    """The best figure of each family that a slotted pad may be made of."""
    offered = [m for m in MATERIALS.values() if m.slot_refusal is None]
    return {m.family: max(quality(other) for other in offered if other.family == m.family) for m in offered}
