"""Readings of a finished part: judged once when they are given, kept with their outcome, and shown as kept."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

from geometry import ENGINE_VERSION
from geometry.as_made import judge_as_made
from geometry.conditions import conditions_of
from geometry.design import Design
from geometry.document.as_made import READABLE, ReadingSet
from geometry.drawing.table import words_of
from geometry.errors import BadMeasurementsError, Problem
from geometry.measurements import read_measurements
from server import shown
from server.forms import FormReading
from server.making_views import Standing, as_made_standing, kept_standing
from server.store.designs import Revision
from server.store.exchange import Reading
from server.working_out import pad_of

GROUP = "as_made"
"""The group of the document that one set of readings is."""
_WORN = frozenset({"wear"})
_READ = frozenset({GROUP, "as_made_2", "as_made_3"}) | _WORN
"""The groups of a document that hold what was read off the part."""
_SETTLED = frozenset({"do_not_use", "usable", "as_drawn"})
"""Outcomes that say what may be done with a part."""


@dataclass(frozen=True, slots=True)
class ReadingView:
    """One set of readings as kept."""

    by: str
    outcome: str
    reasons: tuple[str, ...]
    rows: tuple[tuple[str, str, str], ...]
    """Dimension, what was read, and how it was judged."""
    beside: str
    id: str
    struck: bool
    """Whether the owner has struck it out: it is shown, and decides nothing."""
    out: frozenset[str]
    """The titles of the dimensions that lie outside their limits."""


def judged_readings(revision: Revision, form: FormReading, units: str) -> dict[str, Any]:
    """A set of readings from a form, judged against the revision as saved: what is kept of it.

    Raises BadMeasurementsError where a reading cannot be, or none is given.
    """
    problems = tuple(p for p in form.problems if p.field.startswith(f"{GROUP}."))
    if problems:
        raise BadMeasurementsError(problems)
    return judged_set(revision, form.document.get(GROUP, {}), units)


def judged_set(revision: Revision, given: Mapping[str, Any], units: str) -> dict[str, Any]:
    """A set of readings in mm, judged against the revision as saved: what is kept of it.

    Raises BadMeasurementsError where a reading cannot be, or none is given.
    """
    document = read_measurements({**revision.document, GROUP: given})
    taken = document.as_made
    if not taken.given():
        raise BadMeasurementsError((Problem(GROUP, None, "Give at least one reading."),))
    made = judge_as_made(pad_of(revision.design), conditions_of(document), (taken,))
    side: Literal["mm", "in"] = "in" if units == "in" else "mm"
    return {
        "set": taken.model_dump(mode="json", exclude_unset=True),
        "outcome": made.outcome,
        "words": made.words,
        "reasons": [sentence.shown(side) for sentence in (*made.reasons, *made.notes)],
        "verdicts": {j.dimension: j.verdict for j in made.judged if j.dimension in taken.given()},
        "judged": {j.dimension: j.words.shown(side) for j in made.judged if j.dimension in taken.given()},
        "engine_version": ENGINE_VERSION,
    }


def reading_view(reading: Reading, by: str, units: str, of: Collection[str]) -> ReadingView:
    """One set as it was kept, of a pad with the dimensions ``of``; nothing is judged again."""
    kept = reading.readings
    rows = [
        (words_of(name, of), _read(kept["set"][name], units), kept["judged"].get(name, ""))
        for name in _names(kept["set"])
    ]
    note = kept["set"].get("note", "")
    instrument = kept["set"].get("instrument", ReadingSet.model_fields["instrument"].default)
    return ReadingView(
        by,
        kept["words"],
        tuple(kept["reasons"]),
        tuple(rows),
        f"Read with a {instrument}. {note}".strip(),
        reading.id,
        "struck" in kept,
        frozenset(outside_in(kept, of)),
    )


def outside_in(kept: Mapping[str, Any], of: Collection[str]) -> tuple[str, ...]:
    """The titles of what was read outside its limits, on a pad with the dimensions ``of``."""
    # Sets of before their verdicts were kept say it in words alone.
    verdicts = kept.get("verdicts") or {n: "reject" for n, words in kept["judged"].items() if "outside" in words}
    return tuple(words_of(name, of) for name in _names(kept["set"]) if verdicts.get(name) == "reject")


def questions_in(kept: Mapping[str, Any], of: Collection[str]) -> tuple[str, ...]:
    """What to ask before a set is kept: of each reading that looks like a slip."""
    asked = (name for name, verdict in kept["verdicts"].items() if verdict == "asked")
    return tuple(f"{words_of(name, of)}: {kept['judged'][name]}" for name in asked)


def failed_standing(revision: Revision, kept: Sequence[Reading], units: str) -> Standing | None:
    """How a part stands that must not be used; None where it may be, or nothing is known.

    The newest readings that settle it decide: a set that leaves something open does not clear a part that failed.
    """
    for reading in reversed(kept):
        found = reading.readings
        if "struck" not in found and found["outcome"] in _SETTLED:
            standing = kept_standing(found["outcome"], found["words"], found["reasons"])
            # A part that was made right can be worn all the same.
            return standing if standing.is_failed else _standing_as_saved(revision, units, groups=_WORN)
    return _standing_as_saved(revision, units)


def _standing_as_saved(revision: Revision, units: str, *, groups: frozenset[str] = _READ) -> Standing | None:
    """The same for readings that were saved with the measurements, judged on the pad as saved."""
    if not any(revision.document.get(group) for group in groups):
        return None
    try:
        document = read_measurements({k: v for k, v in revision.document.items() if k not in _READ - groups})
        conditions, pad = conditions_of(document), pad_of(revision.design)
        part = Design(measurements=document, conditions=conditions, pad=pad, ledger={}, checks=(), cautions=())
        standing = as_made_standing(part, units)
    except BadMeasurementsError:
        return None
    return standing if standing is not None and standing.is_failed else None


def _names(taken: Mapping[str, Any]) -> list[str]:
    return [name for name in READABLE if taken.get(name)]


def _read(readings: list[float], units: str) -> str:
    return "; ".join(shown.length(reading, units) for reading in readings) + f" {units}"
