"""The cover: what this is, the job in one picture, the verdict, and the sizes that decide."""

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from geometry.calculation.sheet import CalculationSheet
from geometry.design import Design
from geometry.drawing import section
from geometry.drawing.facts import CRITICAL_MARK, SheetFacts
from geometry.drawing.lettering import FONT_FAMILY
from geometry.drawing.measures import length_words, measures
from geometry.drawing.table import words_of
from geometry.feet.facts import Locates
from geometry.making.own_words import jack_words
from geometry.making.wording import Units
from geometry.packet.paper import Data
from geometry.packet.words import load_words, mass_words, plate_words, shop_units, verdict_of

_OF_PLACE: Mapping[Locates, Mapping[str, str]] = MappingProxyType(
    {
        "seat": {"seat_diameter_mm": "{goes}", "seat_length_mm": "keeps {lip}"},
        "skirt": {"skirt_bore_mm": "{goes}", "skirt_length_mm": "keeps it from sliding off"},
        "stem": {"stem_diameter_mm": "{goes}", "stem_length_mm": "guides it, off the bore's bottom"},
    }
)
_OF_HEAD: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "slot": {
            "slot_width_mm": "takes the seam",
            "slot_depth_mm": "keeps the sill clear of the walls",
            "web_mm": "carries the seam's edge",
        },
        "cushion": {"body_diameter_mm": "carries the face", "web_mm": "passes the load on to the seat"},
        "plug": {
            "plug_width_mm": "goes into the hole",
            "plug_length_mm": "goes into the hole",
            "plug_height_mm": "keeps the car on the shoulder",
            "web_mm": "carries the hole's rim",
        },
    }
)
"""The sizes that decide, and what each decides."""
_WIDTH = 840
"""As wide as the page is then, letters of the balloons are 7 points high at the least."""


def cover_data(design: Design, facts: SheetFacts, sheet: CalculationSheet) -> Data:
    """What the cover says."""
    units, c = shop_units(facts), design.conditions
    governing = next((part.check for part in sheet.checks if part.is_governing), design.governing)
    return {
        "section": section_picture(design, facts),
        "section_alt": "The assembled job in section: jack, pad and car, each measurement with a number.",
        "verdict": design.verdict_words,
        "dangers": [c.text for c in design.cautions if c.signal == "DANGER"],
        "governing": f"{governing.title}: {verdict_of(governing)}. {governing.words}",
        "failures": [f"{check.title}: {check.words}" for check in design.failures],
        "sizes": _sizes(design, facts),
        "facts": [
            *_loads(design, units),
            ["Jack's rated load, by its plate", plate_words(c.foot.rated_load_kg, units)],
            ["Material", facts.material],
            ["Used", f"{facts.temperature.replace('-', '−')}; {facts.moisture}"],
            ["Mass of the pad", mass_words(design.mass_kg, units)],
        ],
        "assumed": [f"{i.title}: {i.remark}" for i in sheet.assumptions],
    }


def _loads(design: Design, units: Units) -> list[list[str]]:
    """The load of the estimates; of a pad that is not fit to make no load is printed that could be read as its own."""
    if not design.fit_to_make:
        return []
    used = load_words(design.conditions.design_force_n, units)
    return [["Load used in the estimates", f"{used}, estimated, not tested"]]


def _sizes(design: Design, facts: SheetFacts) -> list[list[str]]:
    """The deciding sizes with their limits, as the drawing writes them."""
    found = measures(design.pad, facts)
    return [
        [
            words_of(name, found).partition(":")[0],
            found[name].words.removeprefix(f"{CRITICAL_MARK} "),
            f"{length_words(found[name].lower_mm, facts.units)} to {length_words(found[name].upper_mm, facts.units)}",
            why,
        ]
        for name, why in critical_of(design).items()
        if name in found
    ]


def critical_of(design: Design) -> dict[str, str]:
    """The sizes that decide how this pad fits, stands and bears, and what each decides, in the words of its kinds."""
    foot, head, jack = design.conditions.foot, design.conditions.head, jack_words(design.conditions)
    lip = jack.free.removeprefix("its ").replace("lip stays", "the lip")
    said = {"goes": jack.goes.replace("drops", "goes", 1), "lip": lip}
    of_place = {name: why.format(**said) for name, why in _OF_PLACE[foot.locates].items()}
    return of_place | dict(_OF_HEAD[head.kind])


def section_picture(design: Design, facts: SheetFacts, *, width: int = _WIDTH, is_bare: bool = False) -> str:
    """The assembled section as a picture whose letters are those of the shipped font; bare, it has no balloons."""
    found = section.section_of_design(design.measurements, design.pad, design.checks)
    if is_bare:
        found = replace(found, pointers=(), troubles=())
    drawn = section.to_svg(found, units=shop_units(facts), width=width)
    return drawn.replace('font-family="sans-serif"', f'font-family="{FONT_FAMILY}"', 1)
