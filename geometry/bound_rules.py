"""What a bound of a dimension is, and the register that sizing reads."""

from collections.abc import Callable, Set
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from geometry.provenance import Source
from geometry.rules import Numbers, kind_of_room, serves

if TYPE_CHECKING:
    from geometry.draft import Draft

Side = Literal["lower", "upper"]


@dataclass(frozen=True, slots=True)
class BoundRule:
    """One requirement on one dimension: a limit with its reason, formula and source."""

    dimension: str
    side: Side
    must: bool
    """A must can empty an interval; an aim is given up as far as needed."""
    reason: str
    formula: str
    source: Source
    needs: tuple[str, ...]
    """Measurement keys; the first is the one to change where this bound leaves no room."""
    compute: Callable[["Draft"], float | None]
    """The limit in mm; None where the rule does not apply."""
    numbers: Callable[["Draft"], Numbers]
    """The symbols of the formula with their values, for people to read."""

    @property
    def kind(self) -> str:
        """The foot or head that the rule belongs to; empty for a rule of every pad."""
        return kind_of_room(self.compute.__module__)

    def applies(self, rooms: Set[str]) -> bool:
        """Whether a pad whose foot and head have these rooms has to respect it."""
        return serves(self.kind, rooms)


BOUND_RULES: list[BoundRule] = []


def bound(
    dimension: str,
    side: Side,
    reason: str,
    *,
    formula: str,
    source: Source,
    needs: tuple[str, ...],
    numbers: Callable[["Draft"], Numbers] = lambda d: {},
    must: bool = True,
) -> Callable[[Callable[["Draft"], float | None]], Callable[["Draft"], float | None]]:
    """Register the decorated function as a bound on ``dimension``."""

    def register(compute: Callable[["Draft"], float | None]) -> Callable[["Draft"], float | None]:
        BOUND_RULES.append(BoundRule(dimension, side, must, reason, formula, source, needs, compute, numbers))
        return compute

    return register
