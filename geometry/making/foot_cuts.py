"""The foot as the lathe sees it: level by level, what is turned off the outside, bored out, or cut as a groove."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from geometry.pad import Pad

_SAME_MM = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class FootCut:
    """What comes off between two levels, which count from the seat face up; diameters in mm."""

    from_mm: float
    to_mm: float
    inner_mm: float
    """What stays in the middle: stem or seat; 0 where nothing does."""
    outer_mm: float
    """Inside of the skirt; 0 where everything outside comes off."""

    @property
    def kind(self) -> Literal["turn", "bore", "groove"]:
        """How it is cut."""
        if self.outer_mm <= 0:
            return "turn"
        return "groove" if self.inner_mm > 0 else "bore"

    @property
    def depth_mm(self) -> float:
        """How far it goes along the axis."""
        return self.to_mm - self.from_mm


def foot_cuts(pad: Pad) -> tuple[FootCut, ...]:
    """All cuts that make the foot of a faced cylinder, from its end to the lip face."""
    return tuple(
        FootCut(from_mm=low, to_mm=high, inner_mm=_inside(pad, (low + high) / 2), outer_mm=_outside(pad, low))
        for low, high in pairwise(_levels(pad))
    )


def makes_seat_face(pad: Pad, cut: FootCut) -> bool:
    """Whether a cut ends on the seat face."""
    return abs(cut.to_mm) < _SAME_MM and pad.seat_length_mm > 0


def makes_lip_face(pad: Pad, cut: FootCut) -> bool:
    """Whether a cut ends on the lip face, which is the last of all."""
    return abs(cut.to_mm - pad.seat_length_mm) < _SAME_MM


def level_words(pad: Pad, level_mm: float) -> str:
    """What stands at a level, as the face that one measures from or cuts down to."""
    if abs(level_mm) < _SAME_MM:
        return "seat's face"
    if abs(level_mm - pad.seat_length_mm) < _SAME_MM:
        return "lip's face"
    if pad.has_skirt and abs(level_mm - pad.foot_bottom_mm) < _SAME_MM:
        return "skirt's end"
    return "stem's end"


def _levels(pad: Pad) -> Iterator[float]:
    """Every level at which the foot changes, from its end to the lip face, each once."""
    levels = [-pad.stem_length_mm, 0.0, pad.seat_length_mm, *([pad.foot_bottom_mm] if pad.has_skirt else [])]
    last = None
    for level in sorted(levels):
        if last is None or level - last > _SAME_MM:
            yield level
            last = level


def _inside(pad: Pad, level_mm: float) -> float:
    if level_mm > 0:
        return pad.seat_diameter_mm
    return pad.stem_diameter_mm if pad.has_stem and level_mm > -pad.stem_length_mm else 0.0


def _outside(pad: Pad, low_mm: float) -> float:
    return pad.skirt_bore_mm if pad.has_skirt and low_mm > pad.foot_bottom_mm - _SAME_MM else 0.0
