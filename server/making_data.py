"""Route card, inspection and record as data: every length in mm, every sentence in words, every source with its mark."""

from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from enum import Enum
from math import isfinite
from typing import Any

from geometry import ENGINE_VERSION, SCHEMA_VERSION
from geometry.as_made import AsMade, judge_as_made
from geometry.design import Design
from geometry.inspection import inspection_sheet
from geometry.making.card import Picture
from geometry.making.sources import route_sources
from geometry.making.wording import Sentence
from geometry.provenance import Source
from geometry.route import route_card
from geometry.rules import Check
from geometry.standing import DO_NOT_USE, part_standing, record_of, sets_of
from geometry.worn import judge_worn
from server.making_case import Kind


def plain(thing: Any) -> Any:
    """Anything of the shop's rooms as what JSON can carry; what is infinite has no number, a picture no data."""
    match thing:
        case Sentence():
            return thing.shown()
        case Source():
            return {"text": thing.text, "mark": thing.mark.value}
        case Check():
            used = thing.utilisation
            return {
                "code": thing.code,
                "title": thing.title,
                "verdict": thing.verdict,
                "utilisation": used if isfinite(used) else None,
            }
        case Picture():
            return None
        case Enum():
            return thing.value
        case date():
            return thing.isoformat()
        case float():
            return thing if isfinite(thing) else None
        case Mapping():
            return {str(key): plain(value) for key, value in thing.items()}
        case tuple() | list():
            return [plain(part) for part in thing]
    if is_dataclass(thing) and not isinstance(thing, type):
        return {f.name: plain(getattr(thing, f.name)) for f in fields(thing) if f.name != "picture"}
    return thing


def _about(design: Design) -> dict[str, Any]:
    return {
        "schema_version": SCHEMA_VERSION,
        "engine_version": ENGINE_VERSION,
        "design_id": design.design_id,
        "verdict": design.verdict_words,
        "fit_to_make": design.fit_to_make,
    }


def route_data(design: Design) -> dict[str, Any]:
    """The route card."""
    card = route_card(design.pad, design.conditions, design.measurements.shop)
    data: dict[str, Any] = _about(design) | plain(card) | {"time_min": card.time_min}
    for number, (entry, operation) in enumerate(zip(data["operations"], card.operations, strict=True), start=1):
        entry |= {"number": number, "time_min": operation.time_min, "cutting_time_min": operation.cutting_time_min}
    found = route_sources(card, design.conditions, design.measurements.shop)
    data["sources"] = [{"words": words, "source": str(source)} for words, source in found]
    return data


def inspection_data(design: Design) -> dict[str, Any]:
    """The inspection sheet, and the part as made."""
    sheet = inspection_sheet(design.pad, design.conditions)
    lines = [plain(c) | {"lower_mm": c.lower_mm, "upper_mm": c.upper_mm} for c in sheet.characteristics]
    made = judge_as_made(design.pad, design.conditions, sets_of(design))
    return _about(design) | {"characteristics": lines, "notes": plain(sheet.notes), "as_made": as_made_data(made)}


def as_made_data(made: AsMade) -> dict[str, Any]:
    """What the readings say of the part."""
    return {
        "outcome": made.outcome,
        "words": made.words,
        "must_not_be_used": made.must_not_be_used,
        "mark": DO_NOT_USE if made.must_not_be_used else "",
        "reasons": plain(made.reasons),
        "notes": plain(made.notes),
        "judged": plain(made.judged),
        "unread": list(made.unread),
        "pad": made.pad.as_dict(),
        "spread_mm": plain(made.spread.known),
        "checks": plain(made.checks),
        "changed": plain(made.changed),
    }


def record_data(design: Design) -> dict[str, Any]:
    """The record in service."""
    record, is_measured = record_of(design)
    worn = judge_worn(design.measurements.wear.entries(), record, design.conditions.material)
    standing = part_standing(design)
    data: dict[str, Any] = _about(design) | plain(record) | {"is_measured": is_measured}
    return data | {
        "mark": standing.mark if standing else "",
        "in_service": plain(worn) | {"words": worn.words, "must_not_be_used": worn.must_not_be_used},
    }


DATA: Mapping[Kind, Callable[[Design], dict[str, Any]]] = {
    "route": route_data,
    "inspection": inspection_data,
    "record": record_data,
}
