"""The cover: what this is, the job in one picture, the verdict, and the sizes that decide."""

from geometry.calculation.sheet import CalculationSheet
from geometry.design import Design
from geometry.drawing.facts import CRITICAL_MARK, SheetFacts
from geometry.drawing.facts import Units as SheetUnits
from geometry.drawing.figures import limit_words
from geometry.drawing.measures import measures
from geometry.drawing.table import words_of
from geometry.making.deciding import deciding_sizes
from geometry.making.own_words import way_of
from geometry.making.wording import Units
from geometry.packet.cover_picture import section_picture
from geometry.packet.paper import Data
from geometry.packet.words import check_words, load_words, mass_words, plate_words, shop_units, verdict_of
from geometry.rules import NOT_CHECKED, Check

ADVISING = "Nearer, but by their kind only advice, which fails no pad:"
"""What is said before checks that come nearer to their limits than the one that governs."""


def cover_data(design: Design, facts: SheetFacts, sheet: CalculationSheet) -> Data:
    """What the cover says."""
    units, c = shop_units(facts), design.conditions
    nearest = next((part.check for part in sheet.checks if part.is_governing), design.governing)
    return {
        "section": section_picture(design, facts),
        "section_alt": "The assembled job in section: jack, pad and car, each measurement with a number.",
        "verdict": design.verdict_words,
        "dangers": [c.text for c in design.cautions if c.signal == "DANGER"],
        "governing": governing_words(nearest, facts.units, is_failing=bool(design.failures)),
        "advice": advice_words(design),
        "not_checked": [
            f"{check.title}: {check_words(check, facts.units).removeprefix(NOT_CHECKED)}"
            for check in design.with_verdict("not_checked")
        ],
        "failures": [f"{check.title}: {check_words(check, facts.units)}" for check in design.failures],
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


def governing_words(check: Check, units: SheetUnits, *, is_failing: bool) -> str:
    """The check that decides, and whether it is the worst of those that fail or the nearest of those that pass."""
    which = "Worst" if is_failing else "Nearest its limit"
    return f"{which}: {check.title}: {verdict_of(check)}. {check_words(check, units)}"


def advice_words(design: Design) -> str:
    """Which checks that only advise use as much of their limit as what decides, or more; empty where none does."""
    advising = [
        c for c in design.checks if c.rule.is_advice and c.finding and c.utilisation >= design.governing.utilisation
    ]
    found = "; ".join(f"{c.title}: {verdict_of(c)}" for c in advising if c.utilisation > 0)
    return f"{ADVISING} {found}." if found and not design.failures else ""


def _loads(design: Design, units: Units) -> list[list[str]]:
    """The load of the estimates; of a pad that is not fit to make no load is printed that could be read as its own."""
    if not design.fit_to_make:
        return []
    used = load_words(design.conditions.design_force_n, units)
    return [["Load used in the estimates", f"{used}, estimated, not tested"]]


def _sizes(design: Design, facts: SheetFacts) -> list[list[str]]:
    """The deciding sizes with their limits, as the drawing writes them."""
    found, c = measures(design.pad, facts), design.conditions
    return [
        [
            words_of(name, found).partition(":")[0],
            found[name].words.removeprefix(f"{CRITICAL_MARK} "),
            " to ".join(limit_words(found[name], facts.units)),
            why,
        ]
        for name, why in deciding_sizes(way_of(c.foot), c.head.kind, design.pad)
    ]
