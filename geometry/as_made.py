"""The part as made: readings brought to 20 °C, judged against their limits, and every check run again on them."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from geometry.buildable import require_buildable
from geometry.checks import judge
from geometry.conditions import Conditions
from geometry.document.as_made import READABLE, ReadingSet
from geometry.errors import BadMeasurementsError
from geometry.inspection import MAKING, REFERENCE_C
from geometry.letters import upper_first
from geometry.making.bench import REST_HOURS
from geometry.making.how_measured import dimension_title, height_parts, measured_names
from geometry.making.wording import Sentence, said, said_of_marked
from geometry.pad import DIMENSIONS, Pad
from geometry.readings import Judged, Verdict, judge_readings, size_at_20_c
from geometry.rules import Check
from geometry.spread import Spread

_REMEDY = " Change it or let it go."
Outcome = Literal["open", "as_drawn", "usable", "do_not_use"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Changed:
    """One check before and after the part was measured."""

    drawn: Check
    made: Check

    @property
    def code(self) -> str:
        """The check's fixed name."""
        return self.made.code

    @property
    def is_worse(self) -> bool:
        """Whether the part uses more of the limit than the drawing allows for."""
        return self.made.utilisation > self.drawn.utilisation


@dataclass(frozen=True, slots=True, kw_only=True)
class AsMade:
    """The outcome for one part."""

    judged: tuple[Judged, ...]
    pad: Pad
    """The part as measured; what was not read is as drawn."""
    spread: Spread
    checks: tuple[Check, ...]
    changed: tuple[Changed, ...]
    """The checks whose use of their limit moved, the most used first."""
    outcome: Outcome
    reasons: tuple[Sentence, ...]
    notes: tuple[Sentence, ...]

    def with_verdict(self, verdict: Verdict) -> tuple[Judged, ...]:
        """The dimensions with one verdict."""
        return tuple(j for j in self.judged if j.verdict == verdict)

    @property
    def unread(self) -> tuple[str, ...]:
        """Dimensions that stay open."""
        return tuple(j.dimension for j in self.judged if j.verdict == "open")

    @property
    def words(self) -> str:
        """The outcome in a sentence; what is out of its limits is named first, even where much is not measured yet."""
        outside = ", ".join(j.title.lower() for j in self.with_verdict("reject"))
        if self.outcome == "open" and outside:
            return f"Not as drawn: {outside} outside its limits. Not all of the part is measured yet."
        return _OUTCOME[self.outcome]

    @property
    def must_not_be_used(self) -> bool:
        """Whether owner's page and lifting card must say that this part is not to be used."""
        return self.outcome == "do_not_use"


_OUTCOME: Mapping[Outcome, str] = {
    "open": "Not all of the part is measured: it is not known whether it is as drawn.",
    "as_drawn": "Measured as drawn: every reading lies inside its limits. Not tested.",
    "usable": "Not quite as drawn. The estimates pass for the part as measured, with the changed margins"
    " below. Not tested.",
    "do_not_use": "Do not use this part.",
}


def judge_as_made(pad: Pad, conditions: Conditions, sets: tuple[ReadingSet, ...]) -> AsMade:
    """Judge the readings of one part, later sets over earlier ones, and run every check on what was measured."""
    judged = judge_sizes(pad, conditions, sets)
    made, spread = _part(pad, judged)
    drawn = _of_a_part(judge(conditions, pad))
    try:
        require_buildable(made)
        checks = _of_a_part(judge(conditions, made, spread))
        impossible: tuple[Sentence, ...] = ()
    except BadMeasurementsError as error:
        made, checks = pad, drawn
        impossible = tuple(Sentence(_plain(p.message.removesuffix(_REMEDY))) for p in error.problems)
    changed = _changed(drawn, checks)
    outcome, reasons = _outcome(pad, tuple(judged.values()), checks, impossible, _contradiction(pad, judged))
    return AsMade(
        judged=tuple(judged.values()),
        pad=made,
        spread=spread,
        checks=checks,
        changed=changed,
        outcome=outcome,
        reasons=reasons,
        notes=_notes(pad, conditions, sets),
    )


def judge_sizes(pad: Pad, conditions: Conditions, sets: tuple[ReadingSet, ...]) -> dict[str, Judged]:
    """Every dimension that can be measured on the part, judged by itself, in the order of the part from its foot up."""
    there = measured_names(pad)
    return {name: judge_readings(name, pad, conditions, sets) for name in READABLE if name in there}


def _of_a_part(checks: tuple[Check, ...]) -> tuple[Check, ...]:
    return tuple(c for c in checks if c.code not in MAKING)


def _part(pad: Pad, judged: Mapping[str, Judged]) -> tuple[Pad, Spread]:
    """The part as measured, and how far it may be off; a height with what stands on the web stands in for an unread web."""
    taken = {n: j for n, j in judged.items() if j.is_taken}
    sizes = {n: j.size_mm for n, j in taken.items() if n in DIMENSIONS}
    known = {n: j.spread_mm for n, j in taken.items() if n in DIMENSIONS}
    height, above = taken.get("top_height_mm"), [taken.get(name) for name in height_parts(pad)[1:]]
    if "web_mm" not in sizes and height and all(above):
        sizes["web_mm"] = height.size_mm - sum(j.size_mm for j in above if j)
        known["web_mm"] = height.spread_mm + sum(j.spread_mm for j in above if j)
    if pad.plug_is_round and "plug_width_mm" in sizes:
        across = sizes["plug_width_mm"]
        sizes |= {"plug_length_mm": across, "plug_corner_radius_mm": across / 2}
        known |= {"plug_length_mm": known["plug_width_mm"], "plug_corner_radius_mm": known["plug_width_mm"] / 2}
    return pad.with_(**sizes), Spread(known)


def _changed(drawn: tuple[Check, ...], made: tuple[Check, ...]) -> tuple[Changed, ...]:
    pairs = (Changed(drawn=d, made=m) for d, m in zip(drawn, made, strict=True))
    moved = [p for p in pairs if p.drawn.verdict != p.made.verdict or p.drawn.value != p.made.value]
    return tuple(sorted(moved, key=lambda p: (p.made.verdict != "fail", -p.made.utilisation)))


def _outcome(
    pad: Pad,
    judged: tuple[Judged, ...],
    checks: tuple[Check, ...],
    impossible: tuple[Sentence, ...],
    contradiction: tuple[Sentence, ...],
) -> tuple[Outcome, tuple[Sentence, ...]]:
    """What may be done with the part, and why."""
    taken = [j for j in judged if j.is_taken]
    failing = tuple(said_of_marked(f"{c.title}: {c.marked}") for c in checks if c.verdict == "fail")
    off = tuple(
        Sentence(f"{j.title}: {j.words.template}", j.words.lengths_mm)
        for j in judged
        if j.verdict in {"reject", "doubtful", "asked"}
    )
    if impossible:
        return "do_not_use", (*impossible, *off)
    if failing and taken:
        return "do_not_use", (*failing, *off)
    unread = [j for j in judged if j.verdict == "open" and not _is_known(j.dimension, pad, judged)]
    if not taken or unread or contradiction or any(j.verdict == "asked" for j in judged):
        names = ", ".join(j.title.lower() for j in unread)
        still = (said(f"Not read yet: {names}."),) if names else ()
        return "open", (*contradiction, *off, *still)
    return ("usable", off) if off else ("as_drawn", ())


def _is_known(name: str, pad: Pad, judged: tuple[Judged, ...]) -> bool:
    """Whether an unread dimension follows from others that were read: web and height each from all the rest of the height."""
    whole = {*height_parts(pad), "top_height_mm"}
    read = {j.dimension for j in judged if j.is_taken}
    return name in {"web_mm", "top_height_mm"} and whole - {name} <= read


def _notes(pad: Pad, c: Conditions, sets: tuple[ReadingSet, ...]) -> tuple[Sentence, ...]:
    """What is to be kept in mind with these readings: of each set by itself, and from the first to the last."""
    given = ((number, taken) for number, taken in enumerate(sets, start=1) if taken.given())
    return (*(note for number, taken in given for note in _notes_of(number, taken, pad, c)), *_moved(pad, c, sets))


def _notes_of(number: int, taken: ReadingSet, pad: Pad, c: Conditions) -> Iterator[Sentence]:
    """How long after the last cut a set was read, and how warm."""
    hours = taken.hours_since_cutting
    if hours is None or hours < REST_HOURS:
        rested = "an unknown time" if hours is None else f"{hours:g} hours"
        yield said(
            f"Set {number} was read {rested} after the last cut: the part may still move. Read it again after a day."
        )
    off_c = taken.part_temperature_c - REFERENCE_C
    if off_c:
        moved = c.material.expansion_per_k.value * off_c * pad.body_diameter_mm
        yield said(
            f"Set {number} was read at {taken.part_temperature_c:g} °C: the body was {{moved}}"
            f" {'larger' if off_c > 0 else 'smaller'} than at 20 °C, and every size is corrected for it.",
            moved=abs(moved),
        )


def _contradiction(pad: Pad, judged: Mapping[str, Judged]) -> tuple[Sentence, ...]:
    """The height and its parts where they do not add up within their uncertainties."""
    parts = height_parts(pad)
    read = [j for name in (*parts, "top_height_mm") if (j := judged.get(name)) and j.is_taken]
    if len(read) <= len(parts):
        return ()
    *below, height = read
    gap = height.size_mm - sum(j.size_mm for j in below)
    if abs(gap) <= sum(j.spread_mm for j in read):
        return ()
    names = " and ".join(dimension_title(name).lower() for name in parts)
    said_so = f"{upper_first(names)} miss the height by {{gap}}: one of the three is misread. Read them again."
    return (said(said_so, gap=abs(gap)),)


def _moved(pad: Pad, c: Conditions, sets: tuple[ReadingSet, ...]) -> list[Sentence]:
    """How far the part moved between its first and its last set."""
    moved = []
    for name in READABLE:
        means = [
            size_at_20_c(reading_mm=sum(read) / len(read), part_temperature_c=s.part_temperature_c, material=c.material)
            for s in sets
            if (read := s.given().get(name))
        ]
        if len(means) > 1:
            moved.append(
                said(
                    f"{dimension_title(name, pad)} moved by {{by}} from the first set to the last.",
                    by=means[-1] - means[0],
                )
            )
    return moved


def _plain(words: str) -> str:
    """Words without open places."""
    return words.replace("{", "{{").replace("}", "}}")
