"""What every kind of foot knows of the jack, whatever its own measurements are called."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import inf
from types import MappingProxyType
from typing import ClassVar, Literal

from geometry.own_terms import in_own_terms

Locates = Literal["seat", "skirt", "stem"]
NO_BOSS: Mapping[str, str] = MappingProxyType({"jack.floor_boss_height_mm": "", "jack.floor_boss_diameter_mm": ""})
"""Keys that only a cup's rules need, where nothing of the kind is asked."""
_AROUND_THE_HOLE = " around the stem hole"


@dataclass(frozen=True, kw_only=True)
class FootFacts:
    """The jack's head as understood: every default filled in, lengths in mm."""

    kind: ClassVar[str] = ""
    says: ClassVar[Mapping[str, str]] = MappingProxyType({})
    """Words of a rule that serves several feet, and what they are called on this one; longer words first."""
    keys: ClassVar[Mapping[str, str]] = MappingProxyType({})
    """Keys that such a rule needs, and the keys of this foot's own measurements; empty for what is not asked."""

    rated_load_kg: float
    rim_height_low_mm: float
    """Top of the jack's head above the ground, jack down."""
    rim_height_high_mm: float | None
    saddle_tilt_deg: float
    locates: Locates = "seat"
    """What of the pad keeps it in its place: the seat in a bore, a skirt around a plate, or a stem in a bore."""
    bore_mm: float = 0.0
    """Inside diameter that a seat or a stem goes into, or outside diameter that a skirt goes around."""
    depth_mm: float = 0.0
    """How far what the seat face stands on lies below the top of the head."""
    corner_radius_mm: float = 0.0
    """Radius between what the seat face stands on and the wall around it."""
    rim_diameter_mm: float | None = None
    hole_diameter_mm: float = 0.0
    """Middle of the seat face that stands on nothing; 0 where all of it is carried."""
    hole_depth_mm: float | None = None
    """None where the hole goes through."""
    contact_diameter_mm: float = inf
    """Outside of what the seat face can stand on; infinite where the seat itself ends first."""
    boss_height_mm: float = 0.0
    """0 where nothing stands on the floor."""
    boss_diameter_mm: float = 0.0
    free_edge_mm: float = 0.0
    """How far what a skirt goes around is free below what the seat face stands on; 0 where no skirt needs it."""

    @property
    def rooms(self) -> frozenset[str]:
        """The rooms under ``feet`` whose rules apply: its own, and those that it shares."""
        return frozenset({self.kind})

    @property
    def is_face(self) -> bool:
        """Whether what the seat stands on is one face; else its parts are judged by rules of the kind."""
        return True

    @property
    def terms(self) -> Mapping[str, str]:
        """What the words of shared rules are called here: those of the kind, or of the way in which it is used."""
        return self.says

    def own_key(self, key: str) -> str:
        """This foot's own measurement for a key of a shared rule; empty for what is not asked."""
        return self.keys.get(key, key)

    def said(self, words: str) -> str:
        """Words of a shared rule in those of this foot; a face without a hole carries around none."""
        if not self.hole_diameter_mm:
            words = words.replace(_AROUND_THE_HOLE, "")
        return in_own_terms(words, self.terms)
