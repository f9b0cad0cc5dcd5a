"""The ledger as it is read: every dimension with its value, and the bounds that it was chosen between."""

from collections.abc import Mapping
from dataclasses import dataclass

from geometry import formulas
from geometry.bound_rules import BoundRule
from geometry.draft import Draft
from geometry.habits import EPS_MM, HABITS
from geometry.rules import Numbers


@dataclass(frozen=True, slots=True)
class Bound:
    """One limit of one dimension on the finished ledger."""

    rule: BoundRule
    value: float
    draft: Draft

    @property
    def reason(self) -> str:
        """Why, in a sentence, in the words of this pad's own foot and head."""
        return self.draft.c.said(self.rule.reason)

    @property
    def needs(self) -> tuple[str, ...]:
        """The measurements that it rests on, by the keys of this pad's own foot and head."""
        return self.draft.c.own_keys(self.rule.needs)

    @property
    def numbers(self) -> Numbers:
        """The symbols of the formula with their values."""
        return self.rule.numbers(self.draft)

    @property
    def substituted(self) -> str:
        """The formula with the numbers put in."""
        return formulas.substituted(self.rule.formula, self.numbers)

    def allows(self, value_mm: float) -> bool:
        """Whether a value respects this bound."""
        return value_mm >= self.value - EPS_MM if self.rule.side == "lower" else value_mm <= self.value + EPS_MM


@dataclass(frozen=True, slots=True)
class Entry:
    """One dimension of the ledger."""

    dimension: str
    value_mm: float
    tolerance_mm: float
    lower: tuple[Bound, ...]
    upper: tuple[Bound, ...]
    is_fixed: bool
    notes: tuple[str, ...]

    @property
    def bounds(self) -> tuple[Bound, ...]:
        """All bounds, lower first."""
        return self.lower + self.upper

    @property
    def broken(self) -> tuple[Bound, ...]:
        """The musts that the value does not respect; only a fixed value can have any."""
        return tuple(b for b in self.bounds if b.rule.must and not b.allows(self.value_mm))

    @property
    def given_up(self) -> tuple[Bound, ...]:
        """The aims that could not be met."""
        return tuple(b for b in self.bounds if not b.rule.must and not b.allows(self.value_mm))

    @property
    def deciding(self) -> Bound | None:
        """The bound that the value was chosen from."""
        habit = HABITS.get(self.dimension)
        side = self.lower if habit and habit.end == "lower" else self.upper
        met = [b for b in side if b.allows(self.value_mm)]
        return min(met, key=lambda b: abs(b.value - self.value_mm), default=None)


Ledger = Mapping[str, Entry]
