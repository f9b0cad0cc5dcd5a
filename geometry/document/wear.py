"""What was read off the pad in service: one text of dated entries, so that they live in an address as well as in a file."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Annotated, Literal, get_args

from pydantic import AfterValidator, StringConstraints

from geometry.errors import UnreadableError
from geometry.quantity import Group, chosen
from geometry.units import parse_length_mm, parse_number

LONGEST_LOG = 1000
"""Characters: about thirty entries of two readings, or fifteen of all."""
DIMENSION_OF: Mapping[str, str] = {
    "web": "web_mm",
    "seat": "seat_diameter_mm",
    "length": "seat_length_mm",
    "slot": "slot_width_mm",
    "skirt": "skirt_bore_mm",
    "stem": "stem_diameter_mm",
    "plug": "plug_width_mm",
}
"""What an entry can read, by its word: the name of the dimension in the pad."""
FULL = "Print the record, and take the oldest entries out."
"""What to do when there is no room for another entry."""
Wall = Literal["", "clean", "white", "cracked"]
"""How the foot of the slot's walls looks; empty where nobody looked."""
_LARGEST_MM = 1000.0
_WARMEST_C = 60.0
_FIRST_YEAR, _LAST_YEAR = 2000, 2199
_ROOM_C = 20.0


@dataclass(frozen=True, slots=True, kw_only=True)
class WearEntry:
    """What was read on one day."""

    day: date
    sizes_mm: Mapping[str, float]
    """By the name of the dimension in the pad, as read."""
    wall: Wall = ""
    part_temperature_c: float = _ROOM_C


def read_log(text: str) -> tuple[WearEntry, ...]:
    """The entries of a log, oldest first.

    Raises ValueError where one of them cannot be.

    >>> [entry.sizes_mm for entry in read_log("2026-03-01 web 18.3 wall clean; 2026-02-01 web 18.4 seat 2.64in at 15")]
    [{'web_mm': 18.4, 'seat_diameter_mm': 67.056}, {'web_mm': 18.3}]
    """
    parts = [part.strip() for part in re.split(r"[;\n]", text) if part.strip()]
    return tuple(sorted((_entry(part) for part in parts), key=lambda entry: entry.day))


def log_text(entries: Iterable[WearEntry]) -> str:
    """Entries as the text that gives them again, oldest first.

    >>> log_text(read_log("2026-03-01 wall clean web 18.30"))
    '2026-03-01 web 18.3 wall clean'
    """
    return "; ".join(_text(entry) for entry in sorted(entries, key=lambda entry: entry.day))


def _text(entry: WearEntry) -> str:
    words = [entry.day.isoformat()]
    words += [
        f"{word} {_figure(entry.sizes_mm[name])}" for word, name in DIMENSION_OF.items() if name in entry.sizes_mm
    ]
    words += [f"wall {entry.wall}"] if entry.wall else []
    words += [f"at {_figure(entry.part_temperature_c)}"] if entry.part_temperature_c != _ROOM_C else []
    return " ".join(words)


def _figure(value: float) -> str:
    return f"{value:.4f}".rstrip("0").rstrip(".")


def _entry(part: str) -> WearEntry:
    first, *rest = part.split()
    if len(rest) % 2 or not rest:
        raise ValueError(f"“{part[:60]}” is no entry: a day, then a word and its reading, such as {_EXAMPLE}.")
    pairs = list(zip(rest[::2], rest[1::2], strict=True))
    named = [word.lower() for word, _ in pairs]
    if len(set(named)) < len(named):
        raise ValueError(f"“{part[:60]}” reads the same thing twice; make an entry of its own for each.")
    sizes = {
        DIMENSION_OF[word]: _length(part, text)
        for word, (_, text) in zip(named, pairs, strict=True)
        if word in DIMENSION_OF
    }
    others = {word: text for word, (_, text) in zip(named, pairs, strict=True) if word not in DIMENSION_OF}
    wall = _wall(others.pop("wall", ""))
    temperature = _temperature(others.pop("at", ""))
    if others:
        raise ValueError(
            f"“{next(iter(others))[:40]}” is nothing that an entry reads; write {', '.join(DIMENSION_OF)}, wall or at."
        )
    if not sizes and not wall:
        raise ValueError(f"“{part[:60]}” reads nothing; give a size or how the walls look.")
    return WearEntry(day=_day(first), sizes_mm=sizes, wall=wall, part_temperature_c=temperature)


_EXAMPLE = "“2026-03-01 web 18.3 seat 67.1 wall clean”"


def _day(text: str) -> date:
    try:
        day = date.fromisoformat(text) if len(text) == len("2026-03-01") else None
    except ValueError:
        day = None
    if day is None or not _FIRST_YEAR <= day.year <= _LAST_YEAR:
        raise ValueError(f"“{text[:40]}” is not a day such as 2026-03-01.")
    return day


def _length(part: str, text: str) -> float:
    try:
        length = parse_length_mm(text)
    except UnreadableError as error:
        raise ValueError(f"“{part[:60]}”: {error}") from None
    if not 0 < length <= _LARGEST_MM:
        raise ValueError(f"A reading of {length:g} mm cannot be right. Read it again.")
    return length


def _wall(text: str) -> Wall:
    found: Wall | None = next((w for w in get_args(Wall) if w == text.lower()), None)
    if found is None:
        raise ValueError(f"The walls are clean, white or cracked, not “{text[:40]}”.")
    return found


def _temperature(text: str) -> float:
    if not text:
        return _ROOM_C
    try:
        value = parse_number(text)
    except UnreadableError as error:
        raise ValueError(str(error)) from None
    if not 0 <= value <= _WARMEST_C:
        raise ValueError(f"Read the pad in a room: {value:g} °C is outside 0 to {_WARMEST_C:g} °C.")
    return value


def _tidy(text: str) -> str:
    tidy = log_text(read_log(text))
    if len(tidy) > LONGEST_LOG:
        raise ValueError(f"The log holds {len(tidy)} characters and has room for {LONGEST_LOG}. {FULL}")
    return tidy


LogText = Annotated[str, StringConstraints(strip_whitespace=True, max_length=LONGEST_LOG), AfterValidator(_tidy)]


class WearLog(Group):
    """Dated readings of one pad in service; the design's number does not follow them."""

    log: LogText = chosen(
        "Readings in service",
        default="",
        kind="text",
        help="Dated entries with a semicolon between, lengths in mm: a day, then web (over the groove), seat (diameter),"
        " length (of the seat), slot, skirt, stem or plug (width), each with its reading, wall with clean, white or cracked,"
        f" and at with the pad's temperature where it is not 20 °C. Such as {_EXAMPLE}.",
    )

    def entries(self) -> tuple[WearEntry, ...]:
        """What was read, oldest first."""
        return read_log(self.log)
