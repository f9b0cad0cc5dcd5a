"""Which measurement matters: how a check of the same pad moves when one number was measured wrong."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from math import isfinite

from geometry.checks import judge
from geometry.conditions import conditions_of
from geometry.design import Design
from geometry.errors import BadMeasurementsError
from geometry.rules import Check
from geometry.variants import bounds_of, field_of, number_at, variant

_GOVERNING = 3
"""How many checks are asked, governing first."""
_SHOWN = 0.005
"""A smaller change is not seen in two decimals."""
WEAKER = 0.8
"""Most allowables are derived; what if the material allowed 20 % less?"""
_SHARE_OF_OTHERS = 0.05
_ERROR = {"length": 0.5, "angle": 1.0}
"""An error of measurement for each kind of field: 0.5 mm, 1°; of everything else 5 %."""
_NO_MEASUREMENT = {"make", "service", "fixed", "own"}


@dataclass(frozen=True, slots=True)
class Influence:
    """What an error in one measurement does to one check."""

    key: str
    title: str
    error: float
    """How wrong the measurement is taken to be, in its unit."""
    unit: str
    before: float
    after: float
    """Utilisation with the error in its worse direction."""

    @property
    def change(self) -> float:
        """How much more of the limit is used."""
        return self.after - self.before


@dataclass(frozen=True, slots=True)
class Sensitivity:
    """One governing check: which measurements move it, most first, and what a weaker material would do."""

    check: Check
    influences: tuple[Influence, ...]
    weaker_utilisation: float

    @property
    def words(self) -> str:
        """What to measure most carefully, in the fields' own units."""
        return self.told(lambda influence: f"{influence.error:g} {influence.unit}".rstrip())

    def told(self, error_words: Callable[[Influence], str]) -> str:
        """What to measure most carefully; ``error_words`` says how wrong a measurement is taken to be, in a reader's unit."""
        weaker = (
            f"With an allowable stress 20 % lower it would use {self.weaker_utilisation:.2f} of its limit."
            if isfinite(self.weaker_utilisation)
            else "With an allowable stress 20 % lower nothing would be left of its limit."
        )
        if not self.influences or self.influences[0].change < _SHOWN:
            return f"No measurement moves this much. {weaker}"
        top = self.influences[0]
        after = f"{top.after:.2f}" if isfinite(top.after) else "nothing left"
        return f"{top.title} matters most: an error of {error_words(top)} changes {top.before:.2f} to {after}. {weaker}"


def sensitivities(design: Design) -> tuple[Sensitivity, ...]:
    """The governing checks of a design, each with what moves it; the pad stays as it is."""
    return tuple(_sensitivity(design, check) for check in nearest_to_limit(design))


def nearest_to_limit(design: Design) -> tuple[Check, ...]:
    """The checks, advice apart, that use most of their limits; where a limit cannot be met at all nothing moves it."""
    judged = [c for c in design.checks if c.finding and not c.rule.is_advice and isfinite(c.utilisation)]
    return tuple(judged[:_GOVERNING])


def _sensitivity(design: Design, check: Check) -> Sensitivity:
    weaker = replace(design.conditions, allowable_mpa=WEAKER * design.conditions.allowable_mpa)
    again = _same(judge(weaker, design.pad), check)
    influences = tuple(sorted(_influences(design, check), key=lambda i: -i.change))
    return Sensitivity(check, influences, again.utilisation)


def _influences(design: Design, check: Check) -> Iterator[Influence]:
    for key in check.needs:
        value = _value(design, key)
        if key.partition(".")[0] in _NO_MEASUREMENT or value is None:
            continue
        info = field_of(key)
        extra = info.json_schema_extra
        error = _ERROR.get(extra["kind"], abs(value) * _SHARE_OF_OTHERS)
        used = [u for sign in (1, -1) if (u := _with_error(design, check, key, value + sign * error)) is not None]
        if used:
            yield Influence(key, info.title, round(error, 4), extra["unit"], check.utilisation, max(used))


def _value(design: Design, key: str) -> float | None:
    """The number as measured, or as assumed where it was left out."""
    given = number_at(design.measurements, key)
    if given is not None or key.partition(".")[0] not in {"jack", design.conditions.head.group}:
        return given
    group, name = key.split(".")
    facts = design.conditions.foot if group == "jack" else design.conditions.head
    assumed = getattr(facts, name.removeprefix("cup_"), None)
    return float(assumed) if isinstance(assumed, int | float) else None


def _with_error(design: Design, check: Check, key: str, value: float) -> float | None:
    """The utilisation of the same pad if ``key`` really were ``value``; None where it cannot be."""
    bounds = bounds_of(key)
    if bounds is None or not bounds[0] <= value <= bounds[1]:
        return None
    try:
        conditions = conditions_of(variant(design.measurements, {key: value}))
    except (BadMeasurementsError, ValueError):
        return None
    return _same(judge(conditions, design.pad), check).utilisation


def _same(checks: tuple[Check, ...], check: Check) -> Check:
    return next(c for c in checks if c.code == check.code)
