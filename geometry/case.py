"""One pad under one set of conditions: what every check looks at."""

from dataclasses import dataclass

from geometry.conditions import Conditions
from geometry.feet.cup.loading import CupLoading, cup_loading
from geometry.heads.slot.loading import SlotLoading, slot_loading
from geometry.pad import Pad


@dataclass(frozen=True, slots=True)
class Case:
    """The pad, what is asked of it, and what the load does to it."""

    c: Conditions
    pad: Pad
    cup: CupLoading
    slot: SlotLoading


def case_of(conditions: Conditions, pad: Pad) -> Case:
    """Put the load on the pad."""
    return Case(conditions, pad, cup_loading(conditions, pad), slot_loading(conditions, pad))
