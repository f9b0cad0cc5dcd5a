"""Puts every registered check to a pad. Never calls the sizing rules, so sized, fixed and as-made pads are judged alike."""

from functools import cache

import geometry.body.checks
import geometry.feet.cup.boss
import geometry.feet.cup.checks
import geometry.feet.post.checks
import geometry.feet.post.pin
import geometry.feet.post.pin_strength
import geometry.feet.post.strength
import geometry.feet.post.tilt
import geometry.feet.saddle.checks
import geometry.feet.skirt.checks
import geometry.feet.standing
import geometry.heads.cushion.checks
import geometry.heads.face.checks
import geometry.heads.plug.checks
import geometry.heads.plug.strength
import geometry.heads.slot.carrying
import geometry.heads.slot.checks
import geometry.heads.slot.cutting
import geometry.heads.slot.leaning
import geometry.heads.slot.options
import geometry.heads.slot.seam_checks  # noqa: F401 - importing these rooms registers their checks
from geometry.case import Case, case_of
from geometry.conditions import Conditions
from geometry.pad import Pad
from geometry.rules import CHECK_RULES, NOT_CHECKED, Check, CheckRule, Pointless, Verdict, utilisation
from geometry.spread import AS_DRAWN, Spread

_ROUNDING = 1e-9
_UNKNOWN_WITHOUT = {
    "lift_height": ("jack.rim_height_high_mm",),
    "entry_height_flat": ("seam.edge_height_flat_mm",),
    "arm_clear": ("jack.rim_diameter_mm",),
    "cushion_clear": ("rail.clear_beside_mm",),
}
"""Checks that have nothing to compare with where a measurement is missing; all others have a default to go by."""


def judge(conditions: Conditions, pad: Pad, spread: Spread = AS_DRAWN) -> tuple[Check, ...]:
    """Every check of ``pad``, in the order in which they are registered; ``spread`` is how far the part may be from it."""
    case = case_of(conditions, pad, spread)
    return tuple(_answer(rule, case) for rule in _rules_of(conditions.rooms))


@cache
def _rules_of(rooms: frozenset[str]) -> tuple[CheckRule, ...]:
    """The checks of a pad for a foot and a head with these rooms."""
    return tuple(rule for rule in CHECK_RULES.values() if rule.applies(rooms))


def governing_first(checks: tuple[Check, ...]) -> tuple[Check, ...]:
    """Failures, then what passes or is advised by how much of its limit it uses, then what was not judged."""
    rank = {"fail": 0, "pass": 1, "advice": 1, "not_checked": 2, "not_applicable": 3}
    return tuple(sorted(checks, key=lambda c: (rank[c.verdict], c.rule.is_advice, -c.utilisation)))


def _answer(rule: CheckRule, case: Case) -> Check:
    missing = _missing(rule, case)
    if missing:
        return Check(rule, "not_checked", 0.0, None, f"{NOT_CHECKED}{missing}.", case.c)
    found = rule.find(case)
    if isinstance(found, Pointless):
        return Check(rule, "not_applicable", 0.0, None, found.words, case.c)
    used = utilisation(found.value, found.limit, rule.sense) if found.utilisation is None else found.utilisation
    return Check(rule, found.verdict or _verdict(rule, used), used, found, "", case.c)


def _verdict(rule: CheckRule, used: float) -> Verdict:
    if used <= 1 + _ROUNDING:
        return "pass"
    return "advice" if rule.is_advice else "fail"


def _missing(rule: CheckRule, case: Case) -> str:
    """The measurement that a check lacks, in words; empty where it has all it needs."""
    if rule.code == "saddle_pitch" and case.c.pitch_deg is None:
        return "the car's pitch is known only from its statics (wheelbase, track, front share and lifting point)"
    if rule.code not in _UNKNOWN_WITHOUT:
        return ""
    for key in case.c.own_keys(_UNKNOWN_WITHOUT[rule.code]):
        group, name = key.split(".")
        model = getattr(case.c.measurements, group)
        if getattr(model, name) is None:
            return f"{type(model).model_fields[name].title} is not measured"
    return ""
