"""What leaving a measurement out means: what is taken instead, which estimates are then not made, which rest on a guess."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from geometry.design import design_pad
from geometry.errors import SeamrestError
from geometry.kinds import FACE_GROUPS
from geometry.measurements import Measurements
from geometry.rules import CHECK_RULES, Check
from server.fields import FIELDS, is_asked
from server.links import ready_sample, samples

_MORE: Mapping[str, Mapping[str, Any]] = {
    "jack": {"stem_hole_diameter_mm": 20.0, "stem_hole_depth_mm": 30.0},
    "seam": {"edge_height_flat_mm": 170.0, "clear_outboard_mm": 24.0},
}
"""What the ready example leaves out itself: with these everything that can be checked is."""


@dataclass(frozen=True, slots=True)
class LeftOut:
    """The price of not measuring one thing."""

    unchecked: tuple[str, ...]
    """Titles of the estimates that are not made without it."""
    guessed: tuple[str, ...]
    """Titles of those that are made with what is taken instead."""

    def words(self, assumed: str, taken: str) -> str:
        """What follows where the box is left empty, each thing once.

        >>> LeftOut(("Body beside the jack's arm",), ()).words("nothing; whether the body clears the arm is then not checked", "")
        '; whether the body clears the arm is then not checked.'
        """
        nothing, _, what_is_not_checked = assumed.partition("nothing; ")
        says_it = bool(what_is_not_checked) and not nothing and len(self.unchecked) == 1
        first = (
            f"; {what_is_not_checked}." if says_it else f": {f'{taken} is taken ({assumed})' if taken else assumed}."
        )
        unchecked = "" if says_it or not self.unchecked else f" Not checked then: {'; '.join(self.unchecked)}."
        guessed = f" Resting on that guess then: {'; '.join(self.guessed)}." if self.guessed else ""
        return first + unchecked + guessed


@cache
def left_out(key: str) -> LeftOut:
    """The price of leaving a field out, found by designing one job with it and without it."""
    group, _, name = key.partition(".")
    whole = _whole(key)
    if whole is None:
        return LeftOut((), ())
    less = {**whole, group: {k: v for k, v in whole.get(group, {}).items() if k != name}}
    with_it, without = _checks(whole), _checks(less)
    if without is None or with_it is None:
        return LeftOut((), ())
    unchecked = [c for code, c in without.items() if _is_open(c) and not (code in with_it and _is_open(with_it[code]))]
    guessed = [c for c in without.values() if key in c.needs and c not in unchecked]
    return LeftOut(_titles(unchecked), _titles(guessed))


def _whole(key: str) -> dict[str, Any] | None:
    """An example that asks for this field, with all that can be measured; None where no example does."""
    ready = ready_sample().document
    if is_asked(key, ready):
        return ready | {group: {**ready[group], **answers} for group, answers in _MORE.items()}
    return next((sample.document for sample in samples() if is_asked(key, sample.document)), None)


def _checks(document: Mapping[str, Any]) -> dict[str, Check] | None:
    """Every check of an example by its code; None where nothing can be designed from it."""
    try:
        return {check.code: check for check in design_pad(Measurements.model_validate(document)).checks}
    except (SeamrestError, ValueError):
        return None


def _is_open(check: Check) -> bool:
    return check.verdict == "not_checked"


def _titles(checks: list[Check]) -> tuple[str, ...]:
    order = list(CHECK_RULES)
    return tuple(check.title for check in sorted(checks, key=lambda c: order.index(c.code)))


_TAKEN: Mapping[str, tuple[str, str]] = {
    "jack.cup_corner_radius_mm": ("jack", "corner_radius_mm"),
    "seam.bare_thickness_mm": ("seam", "bare_thickness_mm"),
    "seam.edge_thickness_mm": ("seam", "edge_thickness_mm"),
    "seam.clear_outboard_mm": ("seam", "clear_outboard_mm"),
    "seam.clear_inboard_mm": ("seam", "clear_inboard_mm"),
}
"""Fields whose assumption depends on other answers, and where the understood document has it."""


def taken_mm(key: str, measurements: Measurements | None) -> float | None:
    """The number that stands in for a length left out; None where it needs other answers first, or none is taken."""
    if measurements is None or key not in _TAKEN:
        return None
    if not is_asked(key, {"foot": measurements.foot, "head": measurements.head}):
        return None
    group, name = _TAKEN[key]
    facts = measurements.jack.facts() if group == "jack" else measurements.face.facts()
    value: float = getattr(facts, name)
    return value


def is_optional(key: str) -> bool:
    """Whether a field is measured, and may be left out."""
    return bool(FIELDS[key].assumed) and FIELDS[key].group in {"jack", *FACE_GROUPS.values()}
