"""Readings in service on the record's page: those that were entered, how they were judged, and a form for another day's."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from geometry.document.wear import DIMENSION_OF, log_text, read_log
from geometry.letters import upper_first
from geometry.making.wording import Units
from geometry.service_life import ServiceRecord
from geometry.worn import Verdict, Worn, WornDay, WornSize, title_of
from server import links, shown
from server.carried import ADDED, AS_READ, NO_DAY, AnotherDay
from server.field_views import LinkView
from server.fields import FIELDS
from server.forms import FormReading, read_form
from server.making_case import hidden_of
from server.making_views import in_units

KEY = "wear.log"
"""The log's own key."""
_ANY_DAY = "2000-01-01"
VERDICT_WORDS: Mapping[Verdict, str] = {
    "inside": "inside its limits",
    "near": "nearly at its limit",
    "beyond": "beyond its limit",
    "asked": "is this a slip?",
    "no_limit": "not judged",
}
WALLS = (("", "not looked at"), ("clean", "clean"), ("white", "white"), ("cracked", "cracked"))


@dataclass(frozen=True, slots=True)
class Place:
    """Where a record stands: at a design's address, or under the link to a saved one."""

    at_log: Callable[[str], str]
    """The address of this record with another log."""
    hidden: tuple[tuple[str, str], ...]
    """What its forms carry along."""
    day: tuple[tuple[str, str], ...]
    """The same of another day's readings, where a form does not ask for these."""
    kept: str
    """What becomes of the readings."""
    save: LinkView | None
    """Where the readings are kept; None where none are new, or their reader may keep none."""


def place_of(reading: FormReading, day: AnotherDay = NO_DAY) -> Place:
    """The place of a record whose readings stand in a design's address; another ``day`` that is not entered goes along."""
    carried = day.keys(reading.units, reading.units)
    return Place(
        lambda log: (
            links.pad_address(reading.typed | {KEY: log}, "/record", units=reading.units, view=carried) + "#dates"
        ),
        hidden_of(reading, frozenset()),
        tuple(carried.items()),
        "They stand in this page’s address, and so in the file and in the saved design that are made from it.",
        LinkView("Save the design with these readings", links.save_address(reading.typed, units=reading.units))
        if KEY in reading.typed
        else None,
    )


@dataclass(frozen=True, slots=True)
class BoxView:
    """One question about another day."""

    key: str
    id: str
    title: str
    unit: str
    text: str
    problem: str
    how: str


@dataclass(frozen=True, slots=True)
class AddView:
    """The form for another day's readings."""

    hidden: tuple[tuple[str, str], ...]
    typed: tuple[tuple[str, str], ...]
    """What of it another form has to carry along."""
    is_waiting: bool
    """Whether something is typed that nobody asked to enter."""
    day: BoxView
    sizes: tuple[BoxView, ...]
    wall: str
    walls: tuple[tuple[str, str], ...]
    cracks_at: str
    """Where the pad is looked at for them."""
    temperature: BoxView


@dataclass(frozen=True, slots=True)
class DayView:
    """What was read on one day."""

    day: str
    lines: tuple[tuple[str, str, str], ...]
    """What was read, its verdict in two words, and in full."""
    is_failed: bool
    take_out: str
    """The address without this day's entry."""


@dataclass(frozen=True, slots=True)
class WornView:
    """The log as judged."""

    words: str
    reasons: tuple[str, ...]
    days: tuple[DayView, ...]
    is_failed: bool
    problem: str
    """What cannot be read in the log as typed."""
    text: str


def worn_view(worn: Worn, reading: FormReading, record: ServiceRecord, place: Place) -> WornView:
    """The log in the viewer's unit; a log that cannot be read is shown as it was typed, with what is wrong."""
    problem = " ".join(p.message for p in reading.problems if p.field == KEY)
    text = reading.typed.get(KEY, "")
    entries = () if problem else read_log(text)
    cracks_at = upper_first(record.cracks_at)
    days = tuple(
        _day(day, reading.units, cracks_at, place.at_log(log_text(e for k, e in enumerate(entries) if k != number)))
        for number, day in enumerate(worn.days)
    )
    reasons = tuple(in_units(sentence, reading.units) for sentence in worn.reasons)
    return WornView(worn.words, reasons, days, worn.must_not_be_used, problem, text)


def _day(day: WornDay, units: Units, cracks_at: str, take_out: str) -> DayView:
    lines = [_line(size, units) for size in day.sizes]
    if day.wall:
        lines.append((cracks_at, day.wall, "Discard the pad at once." if day.is_wall_failed else ""))
    return DayView(
        day=day.day.isoformat(),
        lines=tuple(lines),
        is_failed=day.is_wall_failed or any(size.verdict == "beyond" for size in day.sizes),
        take_out=take_out,
    )


def _line(size: WornSize, units: Units) -> tuple[str, str, str]:
    read = f"{size.title} {shown.length_with_unit(size.read_mm, units)}"
    return read, VERDICT_WORDS[size.verdict], in_units(size.words, units)


def add_view(
    reading: FormReading, added: Mapping[str, str], problems: Mapping[str, str], record: ServiceRecord, place: Place
) -> AddView:
    """The form, with what was typed into it and what of that cannot be."""
    how = _how(record, reading.units)

    def box(name: str, title: str, unit: str, words: str = "") -> BoxView:
        return BoxView(
            f"{ADDED}{name}", f"added-{name}", title, unit, added.get(name, ""), problems.get(name, ""), words
        )

    return AddView(
        hidden=place.hidden,
        typed=place.day,
        is_waiting=bool(added) and not problems,
        day=box("day", "Day", ""),
        sizes=tuple(
            box(word, title_of(name, record), reading.units, how.get(name, ""))
            for word, name in DIMENSION_OF.items()
            if name in how or not how or word in added
        ),
        wall=added.get("wall", ""),
        walls=WALLS,
        cracks_at=upper_first(record.cracks_at),
        temperature=box("at", "Temperature of the pad", "°C", "20 °C where it is left out."),
    )


def _how(record: ServiceRecord, units: Units) -> dict[str, str]:
    """How each size is read, by its dimension; of a seat or slot that can go either way, as for its wear."""
    return {limit.dimension: limit.how.shown(units) for limit in reversed(record.limits)}


def with_added(reading: FormReading, added: Mapping[str, str]) -> tuple[FormReading, dict[str, str]]:
    """The reading with another day in its log, and what of that day cannot be, by what it reads."""
    sizes, problems = _sizes(added, reading.units)
    day = added.get("day", "").strip()
    problems |= _wrong_beside_sizes(day, added.get("at", "").strip())
    if problems:
        return reading, problems
    # Of several readings the smallest and the largest count: wear ends a pad at the one, swelling at the other.
    ends = [{word: end(values) for word, values in sizes.items()} for end in (min, max)]
    entries = [_entry_text(day, end, added) for end in (ends[:1] if ends[0] == ends[1] else ends)]
    log = "; ".join(part for part in (reading.typed.get(KEY, ""), *entries) if part.strip())
    whole = read_form([*(reading.typed | {KEY: log}).items(), ("units", reading.units)])
    wrong = " ".join(p.message for p in whole.problems if p.field == KEY)
    return (reading, {"day": wrong}) if wrong else (_tidy(whole), {})


def _wrong_beside_sizes(day: str, at: str) -> dict[str, str]:
    """What of the day and of the temperature cannot be, each tried in an entry that is right otherwise."""
    problems = {} if day else {"day": "Say on which day it was read."}
    for name, text, entry in (("day", day, f"{day} wall clean"), ("at", at, f"{_ANY_DAY} wall clean at {at}")):
        try:
            is_one = not text or len(read_log(entry)) == 1
        except ValueError as error:
            problems[name] = str(error)
        else:
            problems |= {} if is_one else {name: f"“{text[:40]}” is more than one answer. Give one."}
    return problems


def _tidy(reading: FormReading) -> FormReading:
    """The reading with its log in order, as the document writes it."""
    return replace(reading, typed=reading.typed | {KEY: log_text(read_log(reading.typed[KEY]))})


def _entry_text(day: str, sizes: Mapping[str, float], added: Mapping[str, str]) -> str:
    words = [day, *(f"{word} {size:.4f}" for word, size in sizes.items())]
    words += [f"{name} {text}" for name in ("wall", "at") if (text := added.get(name, "").strip())]
    return " ".join(words)


def _sizes(added: Mapping[str, str], units: Units) -> tuple[dict[str, list[float]], dict[str, str]]:
    """The sizes of another day in mm, and what cannot be read of them."""
    pairs = [(f"{AS_READ}{DIMENSION_OF[word]}", added[word]) for word in DIMENSION_OF if added.get(word, "").strip()]
    read = read_form([*pairs, ("units", units)])
    given = read.document.get(AS_READ.removesuffix("."), {})
    of = {name: word for word, name in DIMENSION_OF.items()}
    problems = {
        of[name]: problem.message
        for problem in read.problems
        if problem.field in FIELDS and (name := re.sub(r"^as_made\.", "", problem.field)) in of
    }
    return {of[name]: values for name, values in given.items()}, problems
