"""What a design says on its drawing and in its model files."""

import re
from collections.abc import Mapping
from datetime import date
from types import MappingProxyType

from geometry import ENGINE_VERSION
from geometry.cautions import SignalWord
from geometry.design import Design
from geometry.drawing.facts import Paper, Projection, SheetFacts, Units
from geometry.drawing.geometrical import OTHER_ROUGHNESS_UM
from geometry.feet.facts import Locates
from geometry.inspection import moving
from geometry.letters import lower_first
from geometry.making.printing import SOLID_PERCENT, lies
from geometry.model_label import ModelLabel
from geometry.units import mm_to_inch

FIRST_REVISION = "A"
LOCATING_DIAMETER: Mapping[Locates, str] = MappingProxyType(
    {"seat": "seat_diameter_mm", "skirt": "skirt_bore_mm", "stem": "stem_diameter_mm"}
)
"""The diameter whose axis the jack gives to the pad."""
_GRAVEST_FIRST: tuple[SignalWord, ...] = ("DANGER", "WARNING", "CAUTION", "NOTICE")
_USED = {"dry": "used dry", "room": "used in room air", "soaked": "used wet"}
_MINUS = "\u2212"
_MM = re.compile(r"(\d+(?:\.\d+)?) mm")


def sheet_facts(
    design: Design,
    *,
    issued: date,
    units: Units | None = None,
    projection: Projection | None = None,
    paper: Paper | None = None,
    revision: str = FIRST_REVISION,
) -> SheetFacts:
    """The words and figures of a design's drawing; units, projection and paper follow the shop unless a viewer chooses."""
    measurements = design.measurements
    is_inch = measurements.make.step == "inch"
    shown_in = units or ("in" if is_inch else "mm")
    service = measurements.service
    return SheetFacts(
        title=measurements.title or "Lifting pad",
        design_id=design.design_id,
        revision=revision,
        date=issued.isoformat(),
        # A hardness is no hardness without its scale: they stay on one line.
        material=design.conditions.material.name.replace(" Shore ", "\u00a0Shore\u00a0"),
        mass_kg=design.mass_kg,
        design_load_n=design.conditions.design_force_n,
        moisture=f"sizes at 20 °C, {_made(design)}; {_USED[service.wetness]}",
        temperature=f"{service.temperature_low_c:g} to {service.temperature_high_c:g} °C".replace("-", _MINUS),
        creator="Seamrest",
        owner="",
        cautions=tuple(
            (c.signal, _in_units(c.brief, shown_in))
            for signal in _GRAVEST_FIRST
            for c in design.cautions
            if c.signal == signal and c.brief
        ),
        fit_to_make=design.fit_to_make,
        not_fit_words="" if design.fit_to_make else design.verdict_words,
        units=shown_in,
        job_units="in" if is_inch else "mm",
        as_printed=design.conditions.process == "printed",
        projection=projection or ("third" if is_inch else "first"),
        paper=paper or ("letter" if is_inch else "A4"),
        located_by=LOCATING_DIAMETER[design.conditions.foot.locates],
        critical=tuple(moving(design.pad, design.conditions)),
    )


def _in_units(words: str, units: Units) -> str:
    """A caution whose lengths in mm have inches beside them on a sheet that has no mm."""
    if units not in {"in", "in_fraction"}:
        return words
    return _MM.sub(lambda found: f"{found[0]} ({mm_to_inch(float(found[1])):.2f} in)", words)


def _made(design: Design) -> str:
    """What the sizes hold for: dry stock, or a print as it must lie and be for the estimates to speak of it."""
    if design.conditions.process != "printed":
        return "machined from dry stock"
    way = lies(design.pad)
    carries = "slot floor" if design.pad.has_slot else "shoulder" if design.pad.has_plug else "top"
    solid = f"layers square to the axis, {SOLID_PERCENT:g}\u00a0% infill"
    dressed = f"{carries} and seat face (datum A) dressed to Ra\u00a0{OTHER_ROUGHNESS_UM}\u00a0µm"
    return f"printed, {lower_first(way)}, {solid}; as printed, {dressed}"


def material_words(design: Design) -> str:
    """What it is made of; where somebody entered figures of a data sheet, that they are theirs."""
    name, own = design.conditions.material.name, design.measurements.own
    if not own.given():
        return name
    return f"{name}, values by the user{f' ({own.sheet})' if own.sheet else ''}"


def model_label(design: Design, *, revision: str = FIRST_REVISION) -> ModelLabel:
    """The name under which a design's model files travel."""
    return ModelLabel(
        design_id=design.design_id,
        title=design.measurements.title,
        revision=revision,
        material=material_words(design),
        fit_to_make=design.fit_to_make,
        engine_version=ENGINE_VERSION,
    )
