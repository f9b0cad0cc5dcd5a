"""A judged pad in words: its dimensions with their reasons, its checks with their bars, its load, its cautions."""

import re
from collections.abc import Mapping, Set
from dataclasses import dataclass

from geometry import formulas
from geometry.calculation.why import why
from geometry.cautions import Caution, SignalWord
from geometry.conditions import Conditions
from geometry.design import Design
from geometry.errors import Limit, NoPadFitsError
from geometry.ledger import Bound, Entry
from geometry.making.deciding import deciding_sizes
from geometry.making.own_words import car_words
from geometry.units import inch_to_mm, mm_to_inch
from server import shown
from server.field_views import LinkView, field_id, link_to, title_of
from server.fixing import cost_of_fixing
from server.links import pad_address

_SAME_SIZE_MM = 1e-7
SIGNAL_WORDS: tuple[SignalWord, ...] = ("DANGER", "WARNING", "CAUTION", "NOTICE")


@dataclass(frozen=True, slots=True)
class BoundView:
    """One limit of a dimension with its reason."""

    side: str
    """``at least`` or ``at most``."""
    value: str
    reason: str
    formula: str
    substituted: str
    source: str
    is_aim: bool
    is_deciding: bool
    is_broken: bool


@dataclass(frozen=True, slots=True)
class DimensionView:
    """One dimension of the pad."""

    name: str
    key: str
    title: str
    value: str
    tolerance: str
    reason: str
    notes: tuple[str, ...]
    bounds: tuple[BoundView, ...]
    is_fixed: bool
    cost: str
    """What fixing it costs; empty where it is not fixed."""
    fix_text: str
    """What to type to keep it as it is."""
    let_go: str
    """The address without it; empty where it is not fixed."""
    is_further: bool
    """Whether a phone folds it away: others decide, nobody fixed it, and there is nothing to note of it."""

    @property
    def field(self) -> str:
        """The id of its box among the sizes that are fixed."""
        return field_id(self.key)


@dataclass(frozen=True, slots=True)
class CautionGroup:
    """What is said under one signal word."""

    signal: str
    sentences: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LimitView:
    """One side of a conflict, and the measurement that moves it most."""

    side: str
    value: str
    reason: str
    measure: LinkView


@dataclass(frozen=True, slots=True)
class ConflictView:
    """Why no pad fits."""

    headline: str
    lower: LimitView
    upper: LimitView


def dimensions_of(design: Design, typed: Mapping[str, str], units: str) -> tuple[DimensionView, ...]:
    """Every dimension of the pad, from its foot up."""
    jobs = design.measurements
    first = {name for name, _ in deciding_sizes(jobs.foot, jobs.head, design.pad)}
    return tuple(_dimension(design, entry, typed, units, first) for entry in design.ledger.values())


def _dimension(design: Design, entry: Entry, typed: Mapping[str, str], units: str, first: Set[str]) -> DimensionView:
    key = f"fixed.{entry.dimension}"
    absent = entry.value_mm == 0
    deciding = entry.deciding
    notes = list(entry.notes)
    notes += [_unmet("Not met", b) for b in entry.broken]
    notes += [_unmet("An aim that is given up", b) for b in entry.given_up]
    reason = _reason(design, entry, units)
    # Why a size is none may be all that there is to say of it.
    told = tuple(words for note in notes if (words := shown.words_in(note, units)) != reason)
    return DimensionView(
        name=entry.dimension,
        key=key,
        title=title_of(key),
        value="none" if absent else shown.length(entry.value_mm, units),
        tolerance="" if absent else f"± {shown.length(entry.tolerance_mm, units)}",
        reason=reason,
        notes=told,
        bounds=tuple(_bound(b, deciding, entry, units) for b in _tightest_first(entry)),
        is_fixed=entry.is_fixed,
        cost=cost_of_fixing(design, key, units) if entry.is_fixed else "",
        fix_text=_fix_text(entry.value_mm, units),
        let_go=_without(key, typed, units) if entry.is_fixed else "",
        is_further=not (entry.dimension in first or entry.is_fixed or told),
    )


def _unmet(what: str, bound: Bound) -> str:
    """A requirement that the size does not keep: its reason is quoted, for here it is not so."""
    side = "at least" if bound.rule.side == "lower" else "at most"
    return f"{what}: “{bound.reason}” That would ask for {side} {shown.length_with_unit(bound.value, 'mm')}."


def _fix_text(value_mm: float, units: str) -> str:
    """What to type to keep a size exactly; in inches only where thousandths give the very same size."""
    if units == "in" and abs(inch_to_mm(float(f"{mm_to_inch(value_mm):.5f}")) - value_mm) < _SAME_SIZE_MM:
        return f"{shown.plain(mm_to_inch(value_mm), 5)} in"
    return f"{shown.plain(value_mm, 4)} mm"


def _without(key: str, typed: Mapping[str, str], units: str) -> str:
    """The address without one of its texts, at the list of sizes."""
    return pad_address({k: v for k, v in typed.items() if k != key}, units=units) + "#the-pad"


def _reason(design: Design, entry: Entry, units: str) -> str:
    """Why the size is what it is, in a sentence with its numbers."""
    if entry.is_fixed:
        return f"{shown.length(entry.value_mm, units)} because you fixed it."
    return shown.bare_lengths_in(why(design, entry), units, keep=design.conditions.material.short_name)


def _tightest_first(entry: Entry) -> list[Bound]:
    """The lower bounds from the highest down, then the upper ones from the lowest up."""
    return sorted(entry.lower, key=lambda b: -b.value) + sorted(entry.upper, key=lambda b: b.value)


def _bound(bound: Bound, deciding: Bound | None, entry: Entry, units: str) -> BoundView:
    return BoundView(
        side="at least" if bound.rule.side == "lower" else "at most",
        value=shown.length_with_unit(bound.value, units),
        reason=shown.words_in(bound.reason, units),
        formula=formulas.pretty(bound.rule.formula),
        substituted=bound.substituted,
        source=shown.source_words(bound.rule.source, units),
        is_aim=not bound.rule.must,
        is_deciding=bound is deciding and not entry.is_fixed,
        is_broken=not bound.allows(entry.value_mm),
    )


def load_rows(conditions: Conditions, units: str) -> tuple[tuple[str, str], ...]:
    """The load in numbers: what it is, and how much."""
    source = {
        "gross_mass": "Most that the lifting point can be loaded with, 0.60 of the greatest permitted mass",
        "stated": "Load as you stated it, not checked",
        "statics": "Greatest load while the car rises, from its own balance",
    }[conditions.measurements.car.load_source]
    rows = [
        (source, shown.force(conditions.force_n, units)),
        (
            "What the pad is judged for: a fifth more, for bumps and slips",
            shown.force(conditions.design_force_n, units),
        ),
        ("Push from the side at the same time", shown.force(conditions.side_force_n, units)),
        (
            f"Lean of the car once the {car_words(conditions).name} has risen"
            f" {shown.length_with_unit(conditions.lift_needed_mm, units)}",
            f"{shown.plain(conditions.lean_deg, 1)}°",
        ),
    ]
    if conditions.curve is not None:
        rows += [
            (f"The {wheel.wheel} wheel leaves the ground at", shown.length_with_unit(wheel.rise_mm, units, digits=0))
            for wheel in conditions.curve.wheels_leave
        ]
    return tuple(rows)


def caution_groups(cautions: tuple[Caution, ...], units: str = "mm") -> tuple[CautionGroup, ...]:
    """The cautions by signal word, the gravest first."""
    found = ((s, tuple(shown.words_in(c.text, units) for c in cautions if c.signal == s)) for s in SIGNAL_WORDS)
    return tuple(CautionGroup(signal, sentences) for signal, sentences in found if sentences)


def conflict_headline(error: NoPadFitsError, units: str) -> str:
    """That no pad fits, with the two numbers that leave no room."""
    return f"No pad fits: the {_no_room(error, units)}"


def conflict_words(error: NoPadFitsError, units: str) -> str:
    """Between which two requirements nothing fits, each with its reason."""
    reasons = (shown.words_in(limit.reason, units) for limit in (error.lower, error.upper))
    return "The {} At least: {} At most: {}".format(_no_room(error, units), *reasons)


def _no_room(error: NoPadFitsError, units: str) -> str:
    title = title_of(f"fixed.{error.dimension}").lower()
    low, high = (shown.length_with_unit(limit.value_mm, units) for limit in (error.lower, error.upper))
    # Where there is room, but no makeable size in it, the engine's sentence names the step.
    step = re.search(r" in steps of [\d.]+ mm", error.words)
    return f"{title} must be at least {low} and at most {high}{shown.words_in(step[0], units) if step else ''}."


def conflict_of(error: NoPadFitsError, units: str, on_sheet: Set[str]) -> ConflictView:
    """Why no pad fits, with both bounds and what to measure again."""
    return ConflictView(
        headline=conflict_headline(error, units),
        lower=_limit("at least", error.lower, units, on_sheet),
        upper=_limit("at most", error.upper, units, on_sheet),
    )


def _limit(side: str, limit: Limit, units: str, on_sheet: Set[str]) -> LimitView:
    return LimitView(
        side=side,
        value=shown.length_with_unit(limit.value_mm, units),
        reason=shown.words_in(limit.reason, units),
        measure=link_to(limit.field, on_sheet),
    )
