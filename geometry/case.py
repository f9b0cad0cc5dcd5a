"""One pad under one set of conditions: what every check looks at."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from geometry.conditions import Conditions
from geometry.feet.loading import FootLoading, foot_loading
from geometry.heads.cushion.loading import CushionLoading, cushion_loading
from geometry.heads.loading import HeadLoading
from geometry.heads.plug.loading import PlugLoading, plug_loading
from geometry.heads.slot.loading import SlotLoading, slot_loading
from geometry.pad import Pad
from geometry.spread import AS_DRAWN, Spread

_LOADINGS: Mapping[str, Callable[[Conditions, Pad, Spread], HeadLoading]] = MappingProxyType(
    {"slot": slot_loading, "cushion": cushion_loading, "plug": plug_loading}
)


@dataclass(frozen=True, slots=True)
class Case:
    """The pad, what is asked of it, and what the load does to it."""

    c: Conditions
    pad: Pad
    foot: FootLoading
    head: HeadLoading
    spread: Spread = AS_DRAWN
    """How far the part may be from the pad's dimensions."""

    @property
    def slot(self) -> SlotLoading:
        """The slot of a slotted head; no other head may ask for it."""
        if not isinstance(self.head, SlotLoading):
            raise TypeError(f"a {self.c.head.kind} has no slot")
        return self.head

    @property
    def cushion(self) -> CushionLoading:
        """The cushion of a flat head; no other head may ask for it."""
        if not isinstance(self.head, CushionLoading):
            raise TypeError(f"a {self.c.head.kind} is no cushion")
        return self.head

    @property
    def plug(self) -> PlugLoading:
        """The plug of a head that enters a hole; no other head may ask for it."""
        if not isinstance(self.head, PlugLoading):
            raise TypeError(f"a {self.c.head.kind} is no plug")
        return self.head

    def tolerance_mm(self, dimension: str) -> float:
        """Plus and minus of one dimension of the part."""
        return self.spread.of(self.pad, dimension)


def case_of(conditions: Conditions, pad: Pad, spread: Spread = AS_DRAWN) -> Case:
    """Put the load on the pad."""
    foot, head = foot_loading(conditions, pad, spread), head_loading(conditions, pad, spread)
    return Case(conditions, pad, foot, head, spread)


def head_loading(conditions: Conditions, pad: Pad, spread: Spread = AS_DRAWN) -> HeadLoading:
    """What the load does to the pad's head alone."""
    return _LOADINGS[conditions.head.kind](conditions, pad, spread)
