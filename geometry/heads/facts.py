"""What every kind of head knows of the car, whatever its own measurements are called."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar

from geometry.own_terms import in_own_terms


@dataclass(frozen=True, kw_only=True)
class HeadFacts:
    """What the car is lifted by, as understood: every default filled in, lengths in mm."""

    kind: ClassVar[str] = ""
    group: ClassVar[str] = ""
    """The group of the document that holds its measurements."""
    says: ClassVar[Mapping[str, str]] = MappingProxyType({})
    """Words of a rule that serves several heads, and what they are called on this one; longer words first."""
    keys: ClassVar[Mapping[str, str]] = MappingProxyType({})
    """Keys that such a rule needs, and the keys of this head's own measurements; empty for what is not asked."""

    edge_height_mm: float
    """Height above the ground of what stands on the pad, car on its wheels."""
    edge_height_flat_mm: float | None
    """The same with a flat tyre."""
    roll_in_obstacle_mm: float | None
    """The lowest thing on the way in, above (+) or below (−) that height."""

    @property
    def rooms(self) -> frozenset[str]:
        """The rooms under ``heads`` whose rules apply."""
        return frozenset({self.kind})

    def said(self, words: str) -> str:
        """Words of a shared rule in those of this head."""
        return in_own_terms(words, self.says)
