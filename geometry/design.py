"""The front door: measurements in, a judged pad out."""

import hashlib
import json
from dataclasses import dataclass
from functools import cached_property
from math import isfinite
from typing import Any

from geometry import ENGINE_VERSION, SCHEMA_VERSION, formulas
from geometry.case_cautions import cautions_for
from geometry.cautions import Caution
from geometry.checks import governing_first, judge
from geometry.conditions import Conditions, conditions_of
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.ledger import Bound, Entry, Ledger
from geometry.letters import lower_first
from geometry.measurements import Measurements
from geometry.pad import Pad
from geometry.rules import Check
from geometry.sizing import size
from geometry.variants import variant
from geometry.volume import volume_mm3

_CM3_PER_MM3 = 1e-3
_AFTER_THE_DRAWING = frozenset({"shop", "as_made", "as_made_2", "as_made_3", "wear"})
"""Groups that change how the pad is made or what came of it, and neither the drawing nor its number."""


@dataclass(frozen=True)
class Design:
    """One sized and judged pad. Drawing, sheets and API read it and recompute nothing."""

    measurements: Measurements
    conditions: Conditions
    pad: Pad
    ledger: Ledger
    checks: tuple[Check, ...]
    """Governing first."""
    cautions: tuple[Caution, ...]

    @cached_property
    def design_id(self) -> str:
        """Twelve hexadecimal digits of the measurements as understood and the engine that sized them."""
        drawn = {group: answers for group, answers in self.understood.items() if group not in _AFTER_THE_DRAWING}
        document = json.dumps([ENGINE_VERSION, drawn], sort_keys=True, separators=(",", ":"))
        return hashlib.sha256(document.encode()).hexdigest()[:12]

    @cached_property
    def understood(self) -> dict[str, Any]:
        """The measurements as understood, in mm and kg; what was left out is absent."""
        return self.measurements.model_dump(mode="json", exclude_none=True)

    @property
    def fit_to_make(self) -> bool:
        """Whether no estimate fails."""
        return not self.failures

    @property
    def failures(self) -> tuple[Check, ...]:
        """The checks that fail."""
        return self.with_verdict("fail")

    def with_verdict(self, verdict: str) -> tuple[Check, ...]:
        """The checks with one verdict."""
        return tuple(c for c in self.checks if c.verdict == verdict)

    @property
    def governing(self) -> Check:
        """The check that uses most of its limit."""
        return self.checks[0]

    @cached_property
    def mass_kg(self) -> float:
        """Estimated mass of the finished pad."""
        return volume_mm3(self.pad) * _CM3_PER_MM3 * self.conditions.material.density_g_cm3.value / 1000

    @property
    def rim_height_needed_mm(self) -> float:
        """How high above the ground the jack's rim must stand for the wanted lift, at nominal sizes."""
        c = self.conditions
        return c.head.edge_height_mm + c.lift_needed_mm + c.foot.depth_mm - self.pad.web_mm

    @property
    def verdict_words(self) -> str:
        """The outcome in one or two sentences."""
        unchecked = len(self.with_verdict("not_checked"))
        advised = len(self.with_verdict("advice"))
        advice = "1 piece of advice" if advised == 1 else f"{advised} pieces of advice"
        advice += _past_words(sum(check.utilisation > 1 for check in self.with_verdict("advice")), advised)
        rest = (f"; {advice}" if advised else "") + (f"; {unchecked} not checked" if unchecked else "")
        if self.failures:
            worst = self.failures[0]
            return f"Do not make: {_overload(worst)}. {len(self.failures)} of {self.judged} estimates fail{rest}. Not tested."
        return f"All {self.judged} estimates pass{rest}. Not tested."

    @property
    def judged(self) -> int:
        """How many estimates pass or fail."""
        return len(self.with_verdict("pass")) + len(self.failures)

    def to_dict(self) -> dict[str, Any]:
        """The design document, ready for JSON; later versions only add keys."""
        c = self.conditions
        return {
            "schema_version": SCHEMA_VERSION,
            "engine_version": ENGINE_VERSION,
            "design_id": self.design_id,
            "title": self.measurements.title,
            "verdict": self.verdict_words,
            "fit_to_make": self.fit_to_make,
            "pad": self.pad.as_dict(),
            "mass_kg": round(self.mass_kg, 4),
            "material": {"key": c.material.key, "name": c.material.name},
            "ledger": {name: _entry(self, entry) for name, entry in self.ledger.items()},
            "load": _load(c) | {"rim_height_needed_mm": self.rim_height_needed_mm},
            "conditions": {
                "growth_hot": c.g_hot,
                "growth_cold": c.g_cold,
                "allowable_mpa": c.allowable_mpa,
                "modulus_mpa": c.modulus_mpa,
                "uncertainty_mm": c.u,
                "ground_uncertainty_mm": c.u_g,
                "lean_deg": c.lean_deg,
                "pitch_deg": c.pitch_deg,
            },
            "checks": [_check(check) for check in self.checks],
            "not_checked": len(self.with_verdict("not_checked")),
            "cautions": [
                {"signal": c.signal, "text": c.text, "source": c.source.text, "mark": c.source.mark.value}
                for c in self.cautions
            ],
            "measurements": self.understood,
        }


def design_pad(measurements: Measurements) -> Design:
    """Size and judge a pad.

    Raises NoPadFitsError where two requirements leave no room, BadMeasurementsError where fixed dimensions or the car's
    statics cannot be.
    """
    conditions = conditions_of(measurements)
    sized = size(conditions)
    return Design(
        measurements=measurements,
        conditions=conditions,
        pad=sized.pad,
        ledger=sized.ledger,
        checks=governing_first(judge(conditions, sized.pad)),
        cautions=cautions_for(conditions, sized.pad),
    )


def let_go(design: Design, dimension: str) -> Design | NoPadFitsError | None:
    """The design without one of its fixed sizes; the conflict where no pad fits then, None where it cannot be."""
    try:
        return design_pad(variant(design.measurements, {f"fixed.{dimension}": None}))
    except NoPadFitsError as conflict:
        return conflict
    except BadMeasurementsError:
        return None


def _past_words(past: int, advised: int) -> str:
    """How much of the advice is past its limit, so that nobody reads it as well; nothing where none is.

    >>> _past_words(1, 1), _past_words(1, 3), _past_words(2, 2)
    (', past its limit', ', 1 of them past its limit', ', all past their limits')
    """
    if not past:
        return ""
    limit = "past its limit" if past == 1 else "past their limits"
    if past == advised:
        return f", {limit}" if past == 1 else f", all {limit}"
    return f", {past} of them {limit}"


def _overload(check: Check) -> str:
    title = lower_first(check.title)
    if check.rule.sense == "at_most" and isfinite(check.utilisation) and check.rule.unit in {"MPa", "N", "–"}:
        if check.utilisation >= 2:
            return f"{title}: {check.utilisation:.1f} times what is allowed"
        return f"{title} overloaded by {100 * (check.utilisation - 1):.0f} %"
    return f"{title} fails"


def _number(value: float | None) -> float | None:
    """A number that JSON can carry; what is infinite has no number."""
    return value if value is not None and isfinite(value) else None


def _entry(design: Design, entry: Entry) -> dict[str, Any]:
    deciding = entry.deciding
    free = let_go(design, entry.dimension) if entry.is_fixed else None
    return {
        "value": entry.value_mm,
        "tolerance": entry.tolerance_mm,
        "fixed": entry.is_fixed,
        "free_value": getattr(free.pad, entry.dimension) if isinstance(free, Design) else None,
        "lower": [_bound(b) for b in entry.lower],
        "upper": [_bound(b) for b in entry.upper],
        "reason": deciding.reason if deciding else "",
        "broken": [b.reason for b in entry.broken],
        "given_up": [b.reason for b in entry.given_up],
        "notes": list(entry.notes),
    }


def _bound(bound: Bound) -> dict[str, Any]:
    return {
        "value": bound.value,
        "reason": bound.reason,
        "source": bound.rule.source.text,
        "mark": bound.rule.source.mark.value,
        "must": bound.rule.must,
        "formula": formulas.pretty(bound.rule.formula),
        "substituted": bound.substituted,
        "needs": list(bound.needs),
    }


def _check(check: Check) -> dict[str, Any]:
    return {
        "code": check.code,
        "title": check.title,
        "words": check.words,
        "value": _number(check.value),
        "limit": _number(check.limit),
        "unit": check.rule.unit,
        "sense": check.rule.sense,
        "utilisation": _number(check.utilisation),
        "verdict": check.verdict,
        "advice": check.rule.is_advice,
        "formula": check.formula,
        "substituted": check.substituted,
        "source": check.rule.source.text,
        "mark": check.rule.source.mark.value,
        "needs": list(check.needs),
        "place": check.rule.place,
        "also": [
            {"words": w, "value": _number(v), "unit": u} for w, v, u in (check.finding.also if check.finding else ())
        ],
    }


def _load(c: Conditions) -> dict[str, Any]:
    load: dict[str, Any] = {
        "source": c.measurements.car.load_source,
        "force_n": c.force_n,
        "design_force_n": c.design_force_n,
        "side_force_n": c.side_force_n,
    }
    if c.curve is not None:
        load["curve"] = [
            {
                "rise_mm": p.rise_mm,
                "force_n": p.force_n,
                "wheel_loads_n": list(p.wheel_loads_n),
                "roll_deg": p.roll_deg,
                "pitch_deg": p.pitch_deg,
            }
            for p in c.curve.points
        ]
        load["wheels_leave"] = [{"wheel": w.wheel, "rise_mm": w.rise_mm} for w in c.curve.wheels_leave]
    return load
