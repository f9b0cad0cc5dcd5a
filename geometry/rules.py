"""What a check is, the register that judging reads, and the answer to one check on one pad.

A rule declares the measurements it needs; what is not checked, and which measurement matters, follow from that.
"""

from collections.abc import Callable, Mapping, Set
from dataclasses import dataclass
from functools import cache
from math import inf
from typing import TYPE_CHECKING, Literal

from geometry import formulas
from geometry.provenance import Source
from geometry.told import unmarked

if TYPE_CHECKING:
    from geometry.case import Case
    from geometry.conditions import Conditions

Numbers = Mapping[str, float]


_KINDS = ("geometry.feet.", "geometry.heads.")
_LEAST_PARTS = 3
"""A room of one kind is a module of that kind's package; what stands beside the packages serves all kinds."""


@cache
def kind_of_room(module: str) -> str:
    """The foot or head whose room a module is; empty for a module that serves all.

    >>> kind_of_room("geometry.feet.cup.bounds"), kind_of_room("geometry.feet.standing"), kind_of_room("geometry.body.bounds")
    ('cup', '', '')
    """
    parts = module.split(".")
    return parts[2] if module.startswith(_KINDS) and len(parts) > _LEAST_PARTS else ""


def serves(kind: str, rooms: Set[str]) -> bool:
    """Whether a rule of a kind, or of none, applies to a pad whose foot and head have these rooms."""
    return not kind or kind in rooms


Verdict = Literal["pass", "fail", "advice", "not_applicable", "not_checked"]
Sense = Literal["at_most", "at_least"]
NOT_CHECKED = "Not checked: "
"""How the words of a check begin that was not made; where its verdict stands beside them, they are told without."""
_SIGNS: Mapping[Sense, tuple[str, str]] = {"at_most": ("≤", ">"), "at_least": ("≥", "<")}
"""How a value compares with its limit where it is met, and where it is not."""


@dataclass(frozen=True, slots=True)
class Finding:
    """What a check found: a value, its limit, and how to say so."""

    value: float
    limit: float
    words: Callable[[], str]
    """One sentence for the owner."""
    numbers: Numbers
    """The symbols of both formulas with their values."""
    verdict: Verdict | None = None
    """Set where the check judges in a way of its own; else it follows from value and limit."""
    formula: str | None = None
    limit_formula: str | None = None
    """Set where a branch of the check uses other formulas than its rule shows."""
    also: tuple[tuple[str, float, str], ...] = ()
    """Further figures that belong beside the result: (words, value, unit)."""
    utilisation: float | None = None
    """Set where it is not the plain ratio of value and limit."""

    def meets(self, sense: Sense) -> bool:
        """Whether the value respects its limit, but for what binary arithmetic leaves behind."""
        if sense == "at_most":
            return self.value <= self.limit + _ROUNDING
        return self.value >= self.limit - _ROUNDING

    @property
    def also_words(self) -> tuple[str, ...]:
        """The further figures, each with its words and its unit."""
        told = (f"{words}: {formulas.shown(value)} {unit}" for words, value, unit in self.also)
        return tuple(words.replace(" –", "").strip() for words in told)


@dataclass(frozen=True, slots=True)
class Pointless:
    """A check that has nothing to judge on this pad, and why."""

    words: str


@dataclass(frozen=True, slots=True)
class CheckRule:
    """One question put to a pad."""

    code: str
    title: str
    formula: str
    limit_formula: str
    unit: str
    sense: Sense
    source: Source
    needs: tuple[str, ...]
    place: str
    """Where on the section the trouble spot lies."""
    is_advice: bool
    """Advice never blocks."""
    find: Callable[["Case"], Finding | Pointless]

    @property
    def kind(self) -> str:
        """The foot or head that the check belongs to; empty for a check of every pad."""
        return kind_of_room(self.find.__module__)

    @property
    def sign(self) -> str:
        """How its value is to compare with its limit."""
        return _SIGNS[self.sense][0]

    def applies(self, rooms: Set[str]) -> bool:
        """Whether a pad whose foot and head have these rooms is judged by it."""
        return serves(self.kind, rooms)


CHECK_RULES: dict[str, CheckRule] = {}


def check(
    code: str,
    title: str,
    *,
    formula: str,
    limit_formula: str,
    unit: str,
    source: Source,
    needs: tuple[str, ...],
    place: str,
    sense: Sense = "at_most",
    advice: bool = False,
) -> Callable[[Callable[["Case"], Finding | Pointless]], Callable[["Case"], Finding | Pointless]]:
    """Register the decorated function as the check ``code``."""

    def register(find: Callable[["Case"], Finding | Pointless]) -> Callable[["Case"], Finding | Pointless]:
        if code in CHECK_RULES:
            raise ValueError(f"there are two checks called {code}")
        CHECK_RULES[code] = CheckRule(
            code, title, formula, limit_formula, unit, sense, source, needs, place, advice, find
        )
        return find

    return register


@dataclass(frozen=True, slots=True)
class Check:
    """The answer to one check on one pad."""

    rule: CheckRule
    verdict: Verdict
    utilisation: float
    """1 = at the limit; 0 where there is nothing to compare."""
    finding: Finding | None
    reason: str
    """Why it does not apply or was not checked; empty otherwise."""
    c: "Conditions"
    """What the pad was judged for: a rule that serves several kinds is told in the words of this pad's own."""

    @property
    def title(self) -> str:
        """What is asked, in a few words."""
        return self.c.said(self.rule.title)

    @property
    def needs(self) -> tuple[str, ...]:
        """The measurements that it rests on, by the keys of this pad's own foot and head."""
        return self.c.own_keys(self.rule.needs)

    @property
    def code(self) -> str:
        """The check's fixed name."""
        return self.rule.code

    @property
    def marked(self) -> str:
        """One sentence for the owner, its lengths marked so that they can be told in any unit."""
        return self.c.said(self.finding.words() if self.finding else self.reason)

    @property
    def words(self) -> str:
        """The same as it is written, its lengths in mm."""
        return unmarked(self.marked)

    @property
    def value(self) -> float | None:
        """What was found, in the check's unit."""
        return self.finding.value if self.finding else None

    @property
    def limit(self) -> float | None:
        """What it is compared with, in the check's unit."""
        return self.finding.limit if self.finding else None

    @property
    def also_words(self) -> tuple[str, ...]:
        """Further figures beside the result, each with its words and its unit."""
        return self.finding.also_words if self.finding else ()

    @property
    def formulas(self) -> tuple[str, str]:
        """The formulas of value and limit as used here."""
        finding = self.finding
        return (
            (finding and finding.formula) or self.rule.formula,
            (finding and finding.limit_formula) or self.rule.limit_formula,
        )

    @property
    def formula(self) -> str:
        """Both formulas, as printed."""
        value, limit = self.formulas
        return f"{formulas.pretty(value)} {self.rule.sign} {formulas.pretty(limit)}"

    @property
    def sign(self) -> str:
        """How the value compares with its limit."""
        met, broken = _SIGNS[self.rule.sense]
        return met if self.finding and self.finding.meets(self.rule.sense) else broken

    @property
    def substituted(self) -> str:
        """Both formulas with the numbers put in and their results; empty where nothing was computed."""
        if not self.finding:
            return ""
        value, limit = (
            _line(text, self.finding.numbers, result)
            for text, result in zip(self.formulas, (self.finding.value, self.finding.limit), strict=True)
        )
        return f"{value} {self.sign} {limit}".strip()


def _line(formula: str, numbers: Numbers, result: float) -> str:
    text = formulas.substituted(formula, numbers)
    answer = formulas.shown(result)
    return answer if text == answer else f"{text} = {answer}"


_ROUNDING = 1e-9
"""What binary arithmetic may leave of a difference that is nothing."""


def utilisation(value: float, limit: float, sense: Sense) -> float:
    """How much of a limit is used, [-]; for a minimum limit/value, infinite for value ≤ 0, 0 where a limit of 0 is met.

    >>> utilisation(30, 60, "at_most"), utilisation(3.0, 2.0, "at_least"), utilisation(-1, 2, "at_least")
    (0.5, 0.6666666666666666, inf)
    """
    if sense == "at_most":
        if limit <= 0:
            return 0.0 if value <= limit else inf
        return max(0.0, value / limit)
    if limit <= 0:
        return 0.0 if value >= limit - _ROUNDING else inf
    return limit / value if value > 0 else inf
