"""Computed changes for a failing check or a conflict: measure again, change a size, change the material.

Each was tried before it is offered. None ever asks for less load. A change is data: whoever shows it words it, in the
reader's unit.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import islice
from typing import Literal

from geometry.bound_rules import BOUND_RULES
from geometry.comparison import MaterialRow, compare_materials
from geometry.conditions import conditions_of
from geometry.design import Design, design_pad
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.kinds import FACE_GROUPS
from geometry.measurements import Measurements
from geometry.rules import Check
from geometry.variants import Changes, bounds_of, number_at, variant

MOST = 3
"""How many changes are offered for one trouble."""
_HALVINGS = 9
_LOAD = {"car.gross_mass_kg", "car.load_kg", "car.front_share", "jack.rated_load_kg"}
"""Never offered for change: the load is what it is, and the jack's plate says what it says."""
_FURTHEST = 0.5
"""A measurement that would have to be half again as large, or half as small, is no slip of the caliper."""
_SIZES = ("body_diameter_mm", "web_mm", "slot_depth_mm", "slot_width_mm", "seat_length_mm", "slot_corner_radius_mm")
_SIZE_STEPS = (0.5, 1.0, 2.0, 4.0, 8.0, 16.0, 32.0)

Attempt = Callable[[Changes], Design | None]


@dataclass(frozen=True, slots=True)
class Remedy:
    """One change that was tried and helps."""

    kind: Literal["measure", "let_go", "size", "material"]
    key: str
    """What changes: a measurement, a fixed size, or ``make.material``."""
    changes: Changes
    before: float | None
    after: float | None
    """In the unit of the field, before and after the change; None for a material."""
    outcome: str
    """The verdict after the change."""
    is_assumed: bool = False
    """Whether the number before was taken because nobody measured it."""


def remedies_for_check(design: Design, check: Check) -> tuple[Remedy, ...]:
    """Up to three changes after which ``check`` no longer fails, one of each kind where there is one.

    Of advice that is past its limit: after which it keeps within it, and nothing else fails or goes past its limit for that.
    """
    is_advice = check.verdict == "advice"
    not_mended = {"fail", "not_checked", "advice"} if is_advice else {"fail", "not_checked"}

    def attempt(changes: Changes) -> Design | None:
        tried = _design(design.measurements, changes)
        if tried is None or _verdict(tried, check.code) in not_mended:
            return None
        return tried if not is_advice or _past_limit(tried) < _past_limit(design) else None

    measurable = [key for key in check.needs if key not in _LOAD]
    return _pick(
        _materials(design.measurements, attempt),
        _sizes(design, attempt),
        _measurements(design.measurements, measurable, attempt),
    )


def remedies_for_conflict(measurements: Measurements, conflict: NoPadFitsError) -> tuple[Remedy, ...]:
    """Up to three changes after which a pad fits."""

    def attempt(changes: Changes) -> Design | None:
        return _design(measurements, changes)

    c = conditions_of(measurements)
    rules = [rule for rule in BOUND_RULES if rule.dimension == conflict.dimension and rule.applies(c.rooms)]
    needed = [key for rule in rules for key in c.own_keys(rule.needs)]
    keys = dict.fromkeys([conflict.upper.field, conflict.lower.field, *needed])
    measurable = [key for key in keys if key not in _LOAD]
    return _pick(
        _measurements(measurements, measurable, attempt),
        _let_go(measurements, attempt),
        _materials(measurements, attempt),
    )


def _pick(*kinds: Iterator[Remedy]) -> tuple[Remedy, ...]:
    """The first of each kind, then more of whichever has more."""
    firsts = [remedy for kind in kinds for remedy in islice(kind, 1)]
    for kind in kinds:
        firsts += islice(kind, MOST - len(firsts)) if len(firsts) < MOST else []
    return tuple(firsts[:MOST])


def _design(measurements: Measurements, changes: Changes) -> Design | None:
    try:
        return design_pad(variant(measurements, changes))
    except (NoPadFitsError, BadMeasurementsError, ValueError):
        return None


def _verdict(design: Design, code: str) -> str:
    return next(c.verdict for c in design.checks if c.code == code)


@lru_cache(maxsize=8)
def _rows(document: str) -> tuple[MaterialRow, ...]:
    return compare_materials(Measurements.model_validate_json(document))


def _materials(measurements: Measurements, attempt: Attempt) -> Iterator[Remedy]:
    """Other materials, the best first."""
    for row in _rows(measurements.model_dump_json(exclude_unset=True)):
        if row.is_chosen or row.design is None or row.is_advised_against or (tried := attempt(row.changes)) is None:
            continue
        yield Remedy("material", "make.material", row.changes, None, None, tried.verdict_words)


def _let_go(measurements: Measurements, attempt: Attempt) -> Iterator[Remedy]:
    """Fixed dimensions that are let go."""
    for name in measurements.fixed.given():
        changes: Changes = {f"fixed.{name}": None}
        if (tried := attempt(changes)) is not None:
            before = number_at(measurements, f"fixed.{name}")
            yield Remedy("let_go", f"fixed.{name}", changes, before, getattr(tried.pad, name), tried.verdict_words)


def _sizes(design: Design, attempt: Attempt) -> Iterator[Remedy]:
    """Dimensions let go, or moved by no more than needed."""
    yield from _let_go(design.measurements, attempt)
    for name in _SIZES:
        before = getattr(design.pad, name)
        for step in _SIZE_STEPS:
            moved = [round(before + sign * step, 3) for sign in (1, -1) if before + sign * step > 0]
            changes_tried: list[Changes] = [{f"fixed.{name}": value} for value in moved]
            found = next(((c, t) for c in changes_tried if (t := attempt(c)) and _no_worse(design, t)), None)
            if found:
                changes, tried = found
                yield Remedy("size", f"fixed.{name}", changes, before, getattr(tried.pad, name), tried.verdict_words)
                break


def _no_worse(before: Design, after: Design) -> bool:
    """Whether a change makes nothing fail that did not fail before."""
    return {c.code for c in after.failures} <= {c.code for c in before.failures}


def _past_limit(design: Design) -> set[str]:
    """What fails, and what is advised and past its limit."""
    advised = (c for c in design.with_verdict("advice") if c.utilisation > 1)
    return {c.code for c in (*design.failures, *advised)}


def _measurements(measurements: Measurements, keys: list[str], attempt: Attempt) -> Iterator[Remedy]:
    """Measurements that would help if they turned out somewhat different, the smallest difference wanted."""
    for key in keys:
        group = key.partition(".")[0]
        if group not in {"jack", *FACE_GROUPS.values()}:
            continue
        bounds, now = bounds_of(key), number_at(measurements, key)
        if now is None or bounds is None:
            continue
        if (found := _nearest(key, now, bounds, attempt)) is not None:
            value, tried = found
            name = key.partition(".")[2]
            is_assumed = name not in getattr(measurements, group).model_fields_set
            yield Remedy("measure", key, {key: value}, now, value, tried.verdict_words, is_assumed)


def _nearest(key: str, now: float, bounds: tuple[float, float], attempt: Attempt) -> tuple[float, Design] | None:
    """The value nearest to ``now`` with which an attempt succeeds, to about a hundredth of what was searched."""
    ends = (min(bounds[1], now * (1 + _FURTHEST)), max(bounds[0], now * (1 - _FURTHEST)))
    for end in ends:
        if attempt({key: end}) is None:
            continue
        bad, good = now, end
        for _ in range(_HALVINGS):
            middle = (bad + good) / 2
            bad, good = (bad, middle) if attempt({key: middle}) else (middle, good)
        rounded = _rounded_towards(good, end)
        tried = attempt({key: rounded})
        return (rounded, tried) if tried else None
    return None


def _rounded_towards(value: float, end: float) -> float:
    """A value that an instrument can show, on the side of ``end``."""
    step = 0.1 if value < 100 else 1.0
    steps = value / step
    whole = int(steps) + (1 if end > value and steps > int(steps) else 0)
    return round(whole * step, 6)
