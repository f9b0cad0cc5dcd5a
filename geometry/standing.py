"""How the part that was made stands: what the readings of the new part and those in service say, taken together."""

from collections import deque
from dataclasses import dataclass

from geometry.as_made import AsMade, judge_as_made
from geometry.design import Design
from geometry.document.as_made import ReadingSet
from geometry.making.wording import Sentence
from geometry.service_life import ServiceRecord, service_record
from geometry.worn import Worn, judge_worn

DO_NOT_USE = "DO NOT USE THIS PART"
"""The words that mark every page and sheet of a part that failed, when it was new or in service."""
MADE_WRONG = "Its readings fail an estimate, or it cannot be what was drawn."
WORN_OUT = "A reading in service is beyond its limit, or it is white or cracked: discard the pad."


@dataclass(frozen=True, slots=True, kw_only=True)
class PartStanding:
    """What is known of the part itself."""

    mark: str
    """The words to mark page and paper with; empty where the part did not fail."""
    words: str
    """The outcome in a sentence, or why the part is marked."""
    reasons: tuple[Sentence, ...]


def sets_of(design: Design) -> tuple[ReadingSet, ...]:
    """The sets of readings of the new part, in the order in which they were taken."""
    m = design.measurements
    return (m.as_made, m.as_made_2, m.as_made_3)


def made_of(design: Design) -> AsMade | None:
    """What the readings of the new part say; None where there are none."""
    sets = sets_of(design)
    return judge_as_made(design.pad, design.conditions, sets) if any(taken.given() for taken in sets) else None


_LATEST: deque[tuple[Design, tuple[ServiceRecord, bool]]] = deque(maxlen=1)
"""The record that was worked out last: the sheets of one packet ask for the same one after the other."""


def record_of(design: Design) -> tuple[ServiceRecord, bool]:
    """The record of the part as measured where it was, else of the pad as drawn, and which of the two."""
    for known, record in tuple(_LATEST):
        if known is design:
            return record
    found = _record_of(design)
    _LATEST.append((design, found))
    return found


def _record_of(design: Design) -> tuple[ServiceRecord, bool]:
    made = made_of(design)
    is_failed = made is not None and made.must_not_be_used
    if made is not None and made.pad is not design.pad and any(j.is_taken for j in made.judged):
        return service_record(made.pad, design.conditions, made.spread, is_failed=is_failed), True
    return service_record(design.pad, design.conditions, is_failed=is_failed), False


def worn_of(design: Design) -> Worn:
    """What the readings in service say."""
    return judge_worn(design.measurements.wear.entries(), record_of(design)[0], design.conditions.material)


def part_standing(design: Design) -> PartStanding | None:
    """How the part stands; None where nothing was read of it."""
    made = made_of(design)
    worn = worn_of(design) if design.measurements.wear.log else None
    if made is not None and made.must_not_be_used:
        return PartStanding(mark=DO_NOT_USE, words=MADE_WRONG, reasons=made.reasons)
    if worn is not None and worn.must_not_be_used:
        return PartStanding(mark=DO_NOT_USE, words=WORN_OUT, reasons=worn.reasons)
    said = [part.words for part in (made, worn) if part is not None]
    reasons = (*(made.reasons if made else ()), *(worn.reasons if worn else ()))
    return PartStanding(mark="", words=" ".join(said), reasons=reasons) if said else None
