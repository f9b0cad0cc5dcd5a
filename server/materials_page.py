"""The page of all materials: every property with its value, its unit, its source and how far it may be trusted."""

from collections.abc import Mapping
from dataclasses import dataclass

from fastapi import APIRouter, Request
from starlette.responses import HTMLResponse, Response

from geometry.cautions import ONE_LINE
from geometry.materials import MATERIALS, Material, Published
from geometry.provenance import Mark, Sourced
from server import shown
from server.documents import query_pairs
from server.forms import read_form
from server.templating import render
from server.ways import Ways, asked_beside, ways_of

router = APIRouter(include_in_schema=False)

TITLES: Mapping[str, str] = {
    "density_g_cm3": "density",
    "stress_minutes_mpa": "stress allowed for minutes",
    "stress_overnight_mpa": "stress allowed overnight",
    "stress_stored_mpa": "stress allowed in storage",
    "modulus_minutes_mpa": "modulus for minutes",
    "expansion_per_k": "thermal expansion",
    "swell_per_percent": "growth for each per cent of water",
    "water_room_percent": "water taken up in room air",
    "water_soaked_percent": "water taken up when soaked",
    "temperature_max_c": "greatest temperature",
    "softening_per_k": "softening with temperature",
    "wet_factor": "share left when soaked",
    "assumed_friction": "assumed friction of painted steel",
    "layer_tension_factor": "tension across the layers, as a share",
    "strain_minutes": "compression allowed for minutes",
    "strain_overnight": "compression allowed overnight",
}
"""The properties that calculations use, in words."""
_OVERVIEW = (
    "stress_minutes_mpa",
    "stress_overnight_mpa",
    "modulus_minutes_mpa",
    "expansion_per_k",
    "water_room_percent",
    "water_soaked_percent",
    "temperature_max_c",
)
_PER_MILLION = 1e6


@dataclass(frozen=True, slots=True)
class PropertyView:
    """One property or one published figure."""

    title: str
    condition: str
    value: str
    mark: str
    mark_words: str
    source: str


@dataclass(frozen=True, slots=True)
class MaterialView:
    """One material."""

    id: str
    name: str
    family: str
    use: str
    """Whether and how it may be used with a slot."""
    properties: tuple[PropertyView, ...]
    published: tuple[PropertyView, ...]
    notes: tuple[str, ...]
    overview: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class MaterialsPage:
    """All materials."""

    ways: Ways
    head: tuple[str, ...]
    materials: tuple[MaterialView, ...]
    marks: tuple[tuple[str, str], ...]
    caution_line: str


@router.get("/materials")
async def materials(request: Request) -> Response:
    """Every material that is known here, and why some are not offered; the address may hold the case to go back to."""
    case, units = asked_beside(query_pairs(request))
    return HTMLResponse(render("materials.html", materials_page(ways_of(case, units=units))))


def materials_page(ways: Ways | None = None) -> MaterialsPage:
    """The context of the page, with the ways to the sheet and to the guide."""
    known = MATERIALS["pa66"].sourced()
    head = tuple(f"{TITLES[key]}, {_unit(known[key].unit, known[key].value)}" for key in _OVERVIEW)
    return MaterialsPage(
        ways=ways or ways_of(read_form([]), units="mm"),
        head=head,
        materials=tuple(_material(entry) for entry in MATERIALS.values()),
        marks=tuple((mark.value, mark.words) for mark in Mark),
        caution_line=ONE_LINE,
    )


def _material(entry: Material) -> MaterialView:
    known = entry.sourced()
    use = entry.slot_refusal or entry.slot_advice or ""
    if entry.slot_refusal:
        use = f"Not offered for a slot. {use}"
    elif entry.slot_advice:
        use = f"Advised against. {use}"
    return MaterialView(
        id=f"material-{entry.key}",
        name=entry.name[0].upper() + entry.name[1:],
        family=entry.family,
        use=use or "Offered for a slot.",
        properties=tuple(_property(TITLES[key], value) for key, value in known.items()),
        published=tuple(_published(figure) for figure in entry.extra),
        notes=entry.notes,
        overview=tuple(_figure(known[key].value, known[key].unit) if key in known else "none" for key in _OVERVIEW),
    )


def _property(title: str, value: Sourced) -> PropertyView:
    words = _quantity(value.value, None, value.unit)
    return PropertyView(title, "", words, value.source.mark.value, value.source.mark.words, value.source.text)


def _published(figure: Published) -> PropertyView:
    words = _quantity(figure.value, figure.highest, figure.unit)
    mark = figure.source.mark
    return PropertyView(figure.name, figure.condition, words, mark.value, mark.words, figure.source.text)


def _quantity(value: float, highest: float | None, unit: str) -> str:
    """A value or a range with its unit in words."""
    low = _figure(value, unit)
    number = low if highest is None else f"{low} to {_figure(highest, unit)}"
    return f"{number} {_unit(unit, value)}".rstrip()


def _figure(value: float, unit: str) -> str:
    """A number for the eye; expansion is counted in millionths."""
    return shown.plain(value * _PER_MILLION, 1) if _is_tiny(value, unit) else shown.plain(value, 4)


def _unit(unit: str, value: float) -> str:
    if unit == "1/K":
        return "× 10⁻⁶ per K" if _is_tiny(value, unit) else "per K"
    return {"1": "", "1 per % of water": "per % of water"}.get(unit, unit)


def _is_tiny(value: float, unit: str) -> bool:
    return unit == "1/K" and value < 1e-3
