"""A judged pad in words: its dimensions with their reasons, its checks with their bars, its load, its cautions."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import isfinite

from geometry import formulas
from geometry.cautions import Caution, SignalWord
from geometry.conditions import Conditions
from geometry.design import Design
from geometry.errors import Limit, NoPadFitsError
from geometry.rules import Check
from geometry.sizing import Bound, Entry
from server import shown
from server.field_views import field_id, title_of
from server.fields import FIELDS
from server.links import pad_address

SIGNAL_WORDS: tuple[SignalWord, ...] = ("DANGER", "WARNING", "CAUTION", "NOTICE")
_NEAR = 0.5
"""Checks that use less than half of their limit are folded away."""


@dataclass(frozen=True, slots=True)
class LinkView:
    """Words that lead somewhere."""

    words: str
    href: str


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
    free_words: str
    """What it would be if it were let go; empty where it is not fixed."""
    fix_text: str
    """What to type to keep it as it is."""
    let_go: str
    """The address without it."""


@dataclass(frozen=True, slots=True)
class CheckView:
    """One check with its verdict in words and as a bar."""

    code: str
    title: str
    words: str
    verdict: str
    verdict_words: str
    bar: str
    """Length of the bar; empty where there is nothing to draw."""
    bar_over: str
    """Length of its part beyond the limit; empty where there is none."""
    formula: str
    substituted: str
    source: str
    also: tuple[str, ...]
    needs: tuple[LinkView, ...]


@dataclass(frozen=True, slots=True)
class CheckGroup:
    """Checks under one heading; a folded group opens on demand."""

    heading: str
    checks: tuple[CheckView, ...]
    is_folded: bool


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
    return tuple(_dimension(entry, typed, units) for entry in design.ledger.values())


def _dimension(entry: Entry, typed: Mapping[str, str], units: str) -> DimensionView:
    key = f"fixed.{entry.dimension}"
    absent = entry.value_mm == 0
    deciding = entry.deciding
    notes = list(entry.notes)
    notes += [f"Outside its bounds: {b.reason}" for b in entry.broken]
    notes += [f"Given up: {b.reason}" for b in entry.given_up]
    free = entry.free_value_mm
    would = f"Let go, it would be {shown.length_with_unit(free, units)}." if free is not None else ""
    return DimensionView(
        name=entry.dimension,
        key=key,
        title=title_of(key),
        value="none" if absent else shown.length(entry.value_mm, units),
        tolerance="" if absent else f"± {shown.length(entry.tolerance_mm, units)}",
        reason=_reason(entry, deciding, absent=absent),
        notes=tuple(notes),
        bounds=tuple(_bound(b, deciding, entry, units) for b in entry.bounds),
        is_fixed=entry.is_fixed,
        free_words=would if entry.is_fixed else "",
        fix_text=f"{shown.plain(entry.value_mm, 4)} mm",
        let_go=pad_address({k: v for k, v in typed.items() if k != key}, units=units) + "#the-pad",
    )


def _reason(entry: Entry, deciding: Bound | None, *, absent: bool) -> str:
    if entry.is_fixed:
        return "Fixed by you."
    if absent:
        return "No stem: the cup has no hole that takes one."
    return deciding.reason if deciding else "The usual size; it breaks the edge so that it neither cuts nor chips."


def _bound(bound: Bound, deciding: Bound | None, entry: Entry, units: str) -> BoundView:
    return BoundView(
        side="at least" if bound.rule.side == "lower" else "at most",
        value=shown.length_with_unit(bound.value, units),
        reason=bound.reason,
        formula=formulas.pretty(bound.rule.formula),
        substituted=bound.substituted,
        source=str(bound.rule.source),
        is_aim=not bound.rule.must,
        is_deciding=bound is deciding and not entry.is_fixed,
        is_broken=not bound.allows(entry.value_mm),
    )


def check_groups(design: Design) -> tuple[CheckGroup, ...]:
    """The checks, governing first: what fails, what is advised, what is near its limit, then the rest, folded."""
    passing = [c for c in design.with_verdict("pass") if not c.rule.is_advice]
    near = [c for c in passing if c.utilisation >= _NEAR] or passing[:3]
    far = passing[len(near) :]
    advisory = [c for c in design.with_verdict("pass") if c.rule.is_advice]
    groups = (
        ("Fails", design.failures, False),
        ("Advice, which does not stand in the way", design.with_verdict("advice"), False),
        ("Passes, nearest its limit first", near, False),
        (f"{len(far)} more pass and use less of their limit", far, True),
        (f"{len(advisory)} pass that would only be advice", advisory, True),
        ("Not checked, because a measurement is missing", design.with_verdict("not_checked"), False),
        ("Does not apply to this pad", design.with_verdict("not_applicable"), True),
    )
    return tuple(CheckGroup(heading, tuple(map(_check, found)), folded) for heading, found, folded in groups if found)


def _check(check: Check) -> CheckView:
    drawn = check.finding is not None and check.utilisation > 0
    used = check.utilisation
    return CheckView(
        code=check.code,
        title=check.rule.title,
        words=check.words,
        verdict=check.verdict,
        verdict_words=verdict_words(check),
        bar=shown.bar_width(min(used, 1.0)) if drawn else "",
        bar_over=shown.bar_width(used - 1) if drawn and used > 1 else "",
        formula=check.formula,
        substituted=check.substituted,
        source=str(check.rule.source),
        also=tuple(_also(words, value, unit) for words, value, unit in (check.finding.also if check.finding else ())),
        needs=tuple(LinkView(title_of(key), f"#{field_id(key)}") for key in check.rule.needs if key in FIELDS),
    )


def verdict_words(check: Check) -> str:
    """The verdict of one check with its number: ``passes, 0.65 of its limit``."""
    used = shown.share(check.utilisation)
    match check.verdict:
        case "not_checked":
            return "not checked"
        case "not_applicable":
            return "does not apply"
        case "pass":
            return f"passes, {used} of its limit"
        case "advice" if check.utilisation == 0:
            return "advice"
        case "advice":
            return f"advice, {used} of its limit" if check.utilisation <= 1 else f"advice, {used} times its limit"
        case "fail":
            return f"fails, {used} times its limit" if isfinite(check.utilisation) else "fails, nothing is left"


def _also(words: str, value: float, unit: str) -> str:
    number = formulas.shown(value)
    return f"{words}: {number} {unit}".replace(" –", "").strip()


def governing_words(design: Design) -> str:
    """Which check comes nearest to its limit, and how near."""
    check = design.governing
    title = check.rule.title[0].lower() + check.rule.title[1:]
    return f"Nearest its limit: {title}, {shown.share(check.utilisation)} of it."


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
            f"Lean of the car once the seam has risen {shown.length_with_unit(conditions.lift_needed_mm, units)}",
            f"{shown.plain(conditions.lean_deg, 1)}°",
        ),
    ]
    if conditions.curve is not None:
        rows += [
            (f"The {wheel.wheel} wheel leaves the ground at", shown.length_with_unit(wheel.rise_mm, units, digits=0))
            for wheel in conditions.curve.wheels_leave
        ]
    return tuple(rows)


def caution_groups(cautions: tuple[Caution, ...]) -> tuple[CautionGroup, ...]:
    """The cautions by signal word, the gravest first."""
    found = ((s, tuple(c.text for c in cautions if c.signal == s)) for s in SIGNAL_WORDS)
    return tuple(CautionGroup(signal, sentences) for signal, sentences in found if sentences)


def conflict_of(error: NoPadFitsError, units: str) -> ConflictView:
    """Why no pad fits, with both bounds and what to measure again."""
    title = title_of(f"fixed.{error.dimension}").lower()
    low, high = (shown.length_with_unit(limit.value_mm, units) for limit in (error.lower, error.upper))
    return ConflictView(
        headline=f"No pad fits: the {title} must be at least {low} and at most {high}.",
        lower=_limit("at least", error.lower, units),
        upper=_limit("at most", error.upper, units),
    )


def _limit(side: str, limit: Limit, units: str) -> LimitView:
    return LimitView(
        side=side,
        value=shown.length_with_unit(limit.value_mm, units),
        reason=limit.reason,
        measure=LinkView(title_of(limit.field), f"#{field_id(limit.field)}"),
    )
