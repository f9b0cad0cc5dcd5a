"""Readings in service: each brought to 20 °C, judged against the limits of wear, and what they say of the pad."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Literal

from geometry.document.wear import WearEntry
from geometry.making.wording import Sentence, said
from geometry.materials import Material
from geometry.readings import size_at_20_c, slip_in
from geometry.service_life import CALIPER_MM, ServiceRecord, WearLimit
from geometry.wear_kinds import Kind

Verdict = Literal["inside", "near", "beyond", "asked", "no_limit"]
Outcome = Literal["unread", "in_use", "read_again", "discard"]
_KINDS: Mapping[str, tuple[Kind | None, Kind | None]] = {
    "web_mm": ("groove", None),
    "seat_diameter_mm": ("seat_worn", "seat_swollen"),
    "seat_length_mm": ("seat_short", None),
    "slot_width_mm": ("slot_closed", "slot_wide"),
    "skirt_bore_mm": ("skirt_closed", "skirt_worn"),
    "stem_diameter_mm": ("stem_worn", "stem_swollen"),
    "plug_width_mm": ("plug_worn", "plug_swollen"),
}
"""By dimension: the kinds of wear that end it below and above."""
_TITLES: Mapping[str, str] = {
    "web_mm": "Web over the groove",
    "seat_diameter_mm": "Seat diameter",
    "seat_length_mm": "Seat length",
    "slot_width_mm": "Slot width",
    "skirt_bore_mm": "Skirt inside diameter",
    "stem_diameter_mm": "Stem diameter",
    "plug_width_mm": "Plug width",
}
WORDS: Mapping[Outcome, str] = {
    "unread": "Nothing was read in service yet.",
    "in_use": "Every reading in service lies inside its limits. Not tested.",
    "read_again": "A reading in service looks like a slip. Read it again before the pad is used.",
    "discard": "Discard this pad.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class WornSize:
    """One reading of one day."""

    day: date
    dimension: str
    read_mm: float
    size_mm: float
    """At 20 °C."""
    lower_mm: float | None
    upper_mm: float | None
    verdict: Verdict
    words: Sentence
    title: str
    """What was read, in words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WornDay:
    """All that was read on one day."""

    day: date
    sizes: tuple[WornSize, ...]
    wall: str
    """How the foot of the walls looked; empty where nobody looked."""
    is_wall_failed: bool
    part_temperature_c: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Worn:
    """What the readings in service say of the pad."""

    days: tuple[WornDay, ...]
    outcome: Outcome
    reasons: tuple[Sentence, ...]

    @property
    def words(self) -> str:
        """The outcome in one sentence."""
        return WORDS[self.outcome]

    @property
    def must_not_be_used(self) -> bool:
        """Whether every page and sheet must say that this pad is not to be used."""
        return self.outcome == "discard"


def judge_worn(entries: tuple[WearEntry, ...], record: ServiceRecord, material: Material) -> Worn:
    """Judge a log against a record's limits; one reading beyond a limit ends the pad, whatever is read later.

    Plastic that has worn does not grow back: a later reading inside the limits contradicts the earlier one and does not
    undo it. An entry that was a slip is taken out of the log.
    """
    days = tuple(_day(entry, record, material) for entry in entries)
    sizes = [size for day in days for size in day.sizes]
    condemning = [size for size in sizes if size.verdict == "beyond"]
    walls = [day for day in days if day.is_wall_failed]
    asked = [size for size in sizes if size.verdict == "asked"]
    near = [size for size in sizes if size.verdict == "near"]
    outcome: Outcome = "discard" if condemning or walls else "read_again" if asked else "in_use" if days else "unread"
    reasons = (
        *(said(f"{day.day.isoformat()}: {_cracked(day.wall, record)}.") for day in walls),
        *(_reason(size) for size in (*condemning, *asked, *near)),
    )
    return Worn(days=days, outcome=outcome, reasons=reasons)


def title_of(dimension: str, record: ServiceRecord) -> str:
    """What is read in service, in the words of the pad."""
    if dimension == "web_mm" and not record.has_slot:
        return "Web under the dent"
    return _TITLES[dimension]


def _cracked(wall: str, record: ServiceRecord) -> str:
    return f"a wall was {wall} at its foot" if record.has_slot else f"the {record.cracks_at} was {wall}"


def _reason(size: WornSize) -> Sentence:
    words = f"{size.day.isoformat()}, {size.title.lower()}: {size.words.template}"
    return Sentence(words, size.words.lengths_mm)


def _day(entry: WearEntry, record: ServiceRecord, material: Material) -> WornDay:
    return WornDay(
        day=entry.day,
        sizes=tuple(_size(name, read, entry, record, material) for name, read in entry.sizes_mm.items()),
        wall=entry.wall,
        is_wall_failed=entry.wall in {"white", "cracked"},
        part_temperature_c=entry.part_temperature_c,
    )


def _size(name: str, read: float, entry: WearEntry, record: ServiceRecord, material: Material) -> WornSize:
    low, high = _limits(name, record)
    lower, upper = low.limit_mm if low else None, high.limit_mm if high else None
    size = size_at_20_c(reading_mm=read, part_temperature_c=entry.part_temperature_c, material=material)
    verdict, words = _judged(read, size, low, high)
    return WornSize(
        day=entry.day,
        dimension=name,
        read_mm=read,
        size_mm=size,
        lower_mm=lower,
        upper_mm=upper,
        verdict=verdict,
        words=words,
        title=title_of(name, record),
    )


def limits_of(record: ServiceRecord) -> dict[str, tuple[WearLimit | None, WearLimit | None]]:
    """What ends each dimension below and above, of those that a record limits at all, in the order of an entry."""
    found = {name: _limits(name, record) for name in _KINDS}
    return {name: ends for name, ends in found.items() if any(ends)}


def _limits(name: str, record: ServiceRecord) -> tuple[WearLimit | None, WearLimit | None]:
    known = {limit.kind: limit for limit in record.limits}
    below, above = _KINDS[name]
    return known.get(below) if below else None, known.get(above) if above else None


def _judged(read: float, size: float, low: WearLimit | None, high: WearLimit | None) -> tuple[Verdict, Sentence]:
    """The verdict on one size; limits already allow for what a caliper may be off."""
    new = next((limit.now_mm for limit in (low, high) if limit), None)
    if new is None:
        return "no_limit", said("{size}; there is no limit to judge it by.", size=size)
    question = slip_in(read, new)
    if question:
        return "asked", question
    ends = [(limit, sign * (size - limit.limit_mm)) for limit, sign in ((low, -1), (high, 1)) if limit]
    # Where two limits stand close together, a size may be beyond the one and near the other.
    limit, over = max(ends, key=lambda end: end[1])
    if over > 0:
        words = f"{{size}} is {'below' if limit is low else 'above'} the limit of {{limit}}. Discard the pad."
        return "beyond", said(words, size=size, limit=limit.limit_mm)
    if over > -CALIPER_MM:
        return "near", said(
            "{size} is within {off} of the limit of {limit}. Read it again soon.",
            size=size,
            off=CALIPER_MM,
            limit=limit.limit_mm,
        )
    return "inside", said("{size}, {worn} from new.", size=size, worn=abs(size - new))
