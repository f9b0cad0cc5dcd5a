"""The page of all materials: every property with its value, its unit, its source and how far it may be trusted."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from fastapi import APIRouter, Request
from starlette.responses import HTMLResponse, Response

from geometry.allowables import TESTED_AT_C
from geometry.cautions import ONE_LINE
from geometry.letters import upper_first
from geometry.materials import MATERIALS, Material, Published
from geometry.provenance import Mark, Sourced
from geometry.units import per_kelvin_to_per_fahrenheit
from server import shown
from server.documents import query_pairs
from server.forms import Units, read_form
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
    tested_at: str
    """The temperature that the table's stresses are for."""
    head: tuple[str, ...]
    materials: tuple[MaterialView, ...]
    marks: tuple[tuple[str, str], ...]
    caution_line: str


@router.get("/materials")
async def materials(request: Request) -> Response:
    """Every material that is known here, and why some are not offered; the address may hold the case to go back to."""
    case, units = asked_beside(query_pairs(request))
    return HTMLResponse(render("materials.html", materials_page(units, ways_of(case, units=units))))


def materials_page(units: Units = "mm", ways: Ways | None = None) -> MaterialsPage:
    """The context of the page for a reader of these units, with the ways to the sheet and to the guide."""
    known = MATERIALS["pa66"].sourced()
    head = tuple(f"{TITLES[key]}, {_unit(known[key].unit, known[key].value)}" for key in _OVERVIEW)
    return MaterialsPage(
        ways=ways or ways_of(read_form([]), units=units),
        tested_at=shown.with_customary(f"{TESTED_AT_C:g} °C", units),
        head=head,
        materials=tuple(_material(entry, units) for entry in MATERIALS.values()),
        marks=tuple((mark.value, mark.words) for mark in Mark),
        caution_line=ONE_LINE,
    )


def _material(entry: Material, units: Units) -> MaterialView:
    known = entry.sourced()
    use = entry.slot_refusal or entry.slot_advice or ""
    if entry.slot_refusal:
        use = f"Not offered for a slot. {use}"
    elif entry.slot_advice:
        use = f"Advised against. {use}"
    return MaterialView(
        id=f"material-{entry.key}",
        name=upper_first(entry.name),
        family=entry.family,
        use=use or "Offered for a slot.",
        properties=tuple(_property(TITLES[key], value, units) for key, value in known.items()),
        published=tuple(_published(figure, units) for figure in entry.extra),
        notes=tuple(shown.words_in(note, units) for note in entry.notes),
        overview=tuple(_cell(known[key], units) if key in known else "none" for key in _OVERVIEW),
    )


def _cell(value: Sourced, units: Units) -> str:
    """A figure under a head that names its unit; what stands beside it names its own."""
    return _quantity(value.value, None, value.unit, units).replace(f" {_unit(value.unit, value.value)}", "", 1)


def _property(title: str, value: Sourced, units: Units) -> PropertyView:
    words = _quantity(value.value, None, value.unit, units)
    return PropertyView(title, "", words, value.source.mark.value, value.source.mark.words, value.source.text)


def _published(figure: Published, units: Units) -> PropertyView:
    words = _quantity(figure.value, figure.highest, figure.unit, units)
    mark, condition = figure.source.mark, shown.words_in(figure.condition, units)
    return PropertyView(figure.name, condition, words, mark.value, mark.words, figure.source.text)


def _quantity(value: float, highest: float | None, unit: str, units: Units) -> str:
    """A value or a range with its unit in words, and the customary one beside it for a reader of inches."""
    values = [value] if highest is None else [value, highest]
    is_tiny = _is_tiny(value, unit)
    words = f"{_range(values, is_tiny=is_tiny)} {_unit(unit, value)}".rstrip()
    if units == "in" and unit == "1/K":
        return f"{words} ({_range(map(per_kelvin_to_per_fahrenheit, values), is_tiny=is_tiny)} per °F)"
    return shown.with_customary(words, units)


def _range(values: Iterable[float], *, is_tiny: bool) -> str:
    """Numbers for the eye; expansion is counted in millionths."""
    return " to ".join(shown.plain(v * _PER_MILLION, 1) if is_tiny else shown.plain(v, 4) for v in values)


def _unit(unit: str, value: float) -> str:
    if unit == "1/K":
        return "× 10⁻⁶ per K" if _is_tiny(value, unit) else "per K"
    return {"1": "", "1 per % of water": "per % of water"}.get(unit, unit)


def _is_tiny(value: float, unit: str) -> bool:
    return unit == "1/K" and value < 1e-3
