"""What the checks say to hand work, which holds to the coarser class c of ISO 2768-1."""

from dataclasses import dataclass

from geometry.checks import judge
from geometry.conditions import Conditions
from geometry.pad import DIMENSIONS, Pad
from geometry.rules import Check
from geometry.spread import AS_DRAWN, Spread, general_tolerance_mm


@dataclass(frozen=True, slots=True)
class HandVerdict:
    """What the checks say when some dimensions are only held to class c."""

    dimensions: tuple[str, ...]
    """Held to class c of ISO 2768-1."""
    checks: tuple[Check, ...]
    """Every check at class c."""
    newly_failing: tuple[Check, ...]
    """Pass at class m, fail at class c."""

    @property
    def is_enough(self) -> bool:
        """Whether hand work changes no verdict to a failure."""
        return not self.newly_failing

    @property
    def still_met(self) -> tuple[Check, ...]:
        """The checks that pass at class c and depend on a tolerance."""
        return tuple(c for c in self.checks if c.verdict == "pass" and c.finding and "tol" in _symbols(c))

    @property
    def words(self) -> str:
        """Whether hand work will do, in one or two sentences."""
        if self.is_enough:
            return "Made by hand to class c, every estimate that passes as drawn still passes. Not tested."
        names = "; ".join(c.title for c in self.newly_failing)
        return (
            f"Class c is too coarse for this pad: {names}. Work to the drawing's limits with the gauge"
            f" sheet, measure, and enter the"
            " readings: the estimates are then made again for the part as it is."
        )


def hand_verdict(pad: Pad, conditions: Conditions, dimensions: tuple[str, ...] = DIMENSIONS) -> HandVerdict:
    """Judge a pad of which some dimensions are made by hand, to class c of ISO 2768-1."""
    coarse = Spread({name: general_tolerance_mm(pad, name, "c") for name in dimensions if getattr(pad, name) > 0})
    before = {c.code: c.verdict for c in judge(conditions, pad, AS_DRAWN)}
    checks = judge(conditions, pad, coarse)
    failing = tuple(c for c in checks if c.verdict == "fail" and before[c.code] != "fail")
    return HandVerdict(dimensions, checks, failing)


def _symbols(check: Check) -> set[str]:
    numbers = check.finding.numbers if check.finding else {}
    return {"tol" if name.startswith("tol") else name for name in numbers}
