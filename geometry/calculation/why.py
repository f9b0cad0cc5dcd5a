"""Why each dimension is what it is, in a sentence or two with its numbers."""

from collections.abc import Mapping
from types import MappingProxyType

from geometry.bound_rules import BoundRule
from geometry.calculation.told import Phrase, Told, length
from geometry.calculation.why_body import BODY
from geometry.calculation.why_cup import CUP
from geometry.calculation.why_faces import FACE_PHRASES
from geometry.calculation.why_post import POST
from geometry.calculation.why_skirt import SKIRT
from geometry.calculation.why_slot import SLOT
from geometry.design import Design, let_go
from geometry.errors import NoPadFitsError
from geometry.habits import HABITS, STEPS_MM
from geometry.ledger import Bound, Entry

_CHAMFER = "it breaks the edge so that it neither cuts nor chips; the usual size"
_IN_ROUNDS = {"web_mm", "body_diameter_mm"}
PHRASES: Mapping[tuple[str, str], Phrase] = MappingProxyType({**CUP, **SLOT, **BODY, **SKIRT, **FACE_PHRASES, **POST})
"""For every bound, what follows “because”; keyed by dimension and formula."""


def why(design: Design, entry: Entry) -> str:
    """The value, and the numbers that made it, in a sentence or two."""
    if entry.is_fixed:
        return f"{length(entry.value_mm)} because you fixed it{_free_words(design, entry)}."
    if entry.value_mm == 0:
        nothing = design.conditions.said("None: the cup has no hole that takes a stem.")
        return entry.notes[0] if entry.notes else nothing
    bound = entry.deciding
    if bound is None:
        return f"{length(entry.value_mm)} because {_CHAMFER}."
    phrase = design.conditions.said(PHRASES[phrase_key(bound.rule)](Told(design, bound, entry.value_mm)))
    return f"{length(entry.value_mm)} because {phrase}{_rounding(design, entry, bound)}."


def _free_words(design: Design, entry: Entry) -> str:
    """What the size would be if it were let go."""
    free = let_go(design, entry.dimension)
    if free is None:
        return ""
    if isinstance(free, NoPadFitsError):
        return "; let go, no pad would fit"
    size = getattr(free.pad, entry.dimension)
    return f"; let go, it would be {length(size)}" if size else "; let go, there would be none"


def _rounding(design: Design, entry: Entry, bound: Bound) -> str:
    """From the bound to the value."""
    if abs(bound.value - entry.value_mm) < 1e-6:
        return ""
    c, made = design.conditions, length(entry.value_mm)
    least = "at least" if bound.rule.side == "lower" else "at most"
    reached = f": {least} {bound.value:.3f}"
    if entry.dimension == "slot_width_mm" and c.slot_is_milled and entry.value_mm in c.cutters_mm:
        return f"{reached}, and {made} is the smallest end mill to hand that gives it"
    step_mm = STEPS_MM[c.is_inch][HABITS[entry.dimension].step]
    # Further from its bound than a step, a value was settled in an earlier round.
    if entry.dimension in _IN_ROUNDS and abs(bound.value - entry.value_mm) >= step_mm:
        return (
            f"{reached}. Sizes hang on each other: while the others were being found this one had to be {made}, and it is not"
            " made smaller again"
        )
    return f"{reached}, rounded {'up' if bound.rule.side == 'lower' else 'down'} to {made}"


def phrase_key(rule: BoundRule) -> tuple[str, str]:
    """Under which key a bound has its phrase."""
    return rule.dimension, rule.formula
