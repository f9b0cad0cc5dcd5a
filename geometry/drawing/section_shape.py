"""One outline of the section, and what it means."""

from dataclasses import dataclass
from typing import Literal

from geometry.outline import Outline

Kind = Literal[
    "cut-steel",
    "cup-edge",
    "jack",
    "lowered",
    "pad",
    "paint",
    "seam",
    "sill",
    "ground",
    "car",
    "centre",
    "break",
    "hole-edge",
]


@dataclass(frozen=True, slots=True)
class Shape:
    """One outline and what it means."""

    kind: Kind
    outline: Outline
    is_closed: bool = False
    is_ghost: bool = False
    """Drawn faintly and dashed: still to be measured, or not yet sized."""
    width_mm: float = 0.0
    """Thickness of a sheet whose middle the outline is; 0 for a line."""
