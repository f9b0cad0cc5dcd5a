"""The record in service for paper: what to look for, drawn; how far the pad may wear; and lines for dated readings."""

from dataclasses import replace

from geometry.design import Design
from geometry.drawing.facts import Paper, SheetFacts
from geometry.making.looks import Look, sketch_svg, sketch_words
from geometry.making.sources import record_sources
from geometry.making.wording import Units, length_shown
from geometry.packet.paper import Data
from geometry.packet.words import shop_units
from geometry.service_life import ServiceRecord
from geometry.standing import record_of, worn_of
from geometry.wear_kinds import water_growth
from geometry.worn import WornDay, limits_of, title_of

EMPTY_LINES, ON_LETTER = 7, 3
"""As many as the page has room for where nothing was read yet, on A4 and on letter paper, which is shorter."""
LEAST_EMPTY_LINES = 2
_WATER = "The values allow for the water that it may take up."
LINES_OF_A_PAGE = 20
"""Where readings leave no room, the lines stand on a page of their own."""


def record_data(design: Design, facts: SheetFacts, *, is_failed: bool = False) -> Data:
    """What the record says, and what was read in service so far; ``is_failed`` where readings elsewhere condemn the part.

    Of what must not be used it tells nothing that one would do with it.
    """
    units = shop_units(facts)
    record, is_measured = record_of(design)
    may_be_used = design.fit_to_make and not is_failed
    record = record if may_be_used else replace(record, limits=())
    worn = worn_of(design)
    return {
        "unit": "in" if units == "in" else "mm",
        "basis": _basis(record, is_measured=is_measured),
        "looks": [drawn_look(look) for look in record.looks] if may_be_used else [],
        "limits": limit_rows(record, units),
        "water": _WATER if water_growth(design.conditions) > 0 else "",
        "discard": discard_words(record, units) if may_be_used else [],
        "worn": worn.words if worn.days else "",
        "days": [_day(day, units) for day in worn.days],
        "cracks": "walls" if record.has_slot else "cracks",
        "columns": [
            "date",
            *(title_of(name, record).lower() for name in limits_of(record)),
            "no crack, no white line",
            "by, and remarks",
        ],
        "empty": _empty_lines(len(worn.days), facts.paper) if record.limits else 0,
        "sources": [[words, str(source)] for words, source in record_sources(has_slot=record.has_slot)]
        if may_be_used
        else [],
    }


def _empty_lines(days: int, paper: Paper) -> int:
    """How many lines there are for more readings; each day that was read takes the room of two, and their heading of two."""
    left = (EMPTY_LINES if paper == "A4" else ON_LETTER) - (2 * days + 2 if days else 0)
    return left if left >= LEAST_EMPTY_LINES else LINES_OF_A_PAGE


def drawn_look(look: Look, *, with_words: bool = True) -> Data:
    """One thing to look for with its sketch."""
    return {
        "svg": sketch_svg(look, with_words=with_words),
        "alt": sketch_words(look),
        "what": look.what,
        "then": look.then,
    }


def limit_rows(record: ServiceRecord, units: Units) -> list[list[str]]:
    """What is measured in service: title, size when new, the reading to discard at, and how it is read."""
    rows = []
    for limit in record.limits:
        side = "above" if limit.direction == "up" else "below"
        title = f"{limit.title} (web)" if limit.dimension == "web_mm" else limit.title
        at = f"{side} {length_shown(limit.limit_mm, units)}"
        rows.append([title, length_shown(limit.now_mm, units), at, limit.how.shown(units)])
    return rows


def discard_words(record: ServiceRecord, units: Units) -> list[str]:
    """When the pad is thrown away whatever it measures; the limits of wear stand in a table of their own."""
    titles = tuple(f"{limit.title}:" for limit in record.limits)
    return [s.shown(units) for s in record.discard_when if not s.template.startswith(titles)]


def _basis(record: ServiceRecord, *, is_measured: bool) -> str:
    if not record.limits:
        return "There are no looks and no limits of wear for what must not be used at all."
    if is_measured:
        return "Limits are computed for the part as measured, and for what was not read as drawn."
    return "Limits are computed for the pad as drawn."


def _day(day: WornDay, units: Units) -> list[str]:
    read = "; ".join(f"{size.title} {length_shown(size.read_mm, units)}" for size in day.sizes)
    told = "; ".join(size.words.shown(units) for size in day.sizes)
    return [day.day.isoformat(), read, day.wall, told]
