"""One pad under one set of conditions: what every check looks at."""

from dataclasses import dataclass

from geometry.conditions import Conditions
from geometry.feet.cup.loading import CupLoading, cup_loading
from geometry.heads.slot.loading import SlotLoading, slot_loading
from geometry.pad import Pad
from geometry.spread import AS_DRAWN, Spread


@dataclass(frozen=True, slots=True)
class Case:
    """The pad, what is asked of it, and what the load does to it."""

    c: Conditions
    pad: Pad
    cup: CupLoading
    slot: SlotLoading
    spread: Spread = AS_DRAWN
    """How far the part may be from the pad's dimensions."""

    def tolerance_mm(self, dimension: str) -> float:
        """Plus and minus of one dimension of the part."""
        return self.spread.of(self.pad, dimension)


def case_of(conditions: Conditions, pad: Pad, spread: Spread = AS_DRAWN) -> Case:
    """Put the load on the pad."""
    return Case(conditions, pad, cup_loading(conditions, pad, spread), slot_loading(conditions, pad, spread), spread)
