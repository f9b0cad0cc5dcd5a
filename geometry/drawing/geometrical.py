"""Geometrical tolerances of the part, by ISO 1101, where ISO 2768-1 has none; datums by ISO 5459."""

from dataclasses import dataclass
from typing import Literal

from geometry.provenance import Source, memory

Characteristic = Literal["symmetry", "parallelism", "run-out"]


@dataclass(frozen=True, slots=True)
class GeometricalTolerance:
    """How far one feature may stray from a datum."""

    characteristic: Characteristic
    feature: str
    value_mm: float
    datum: str
    source: Source


SEAT_FACE, SEAT_AXIS = "A", "B"
"""Datum letters: the seat face stands on the cup's floor, the seat's axis locates the pad in the bore."""

_CLASS_K = "ISO 2768-2:1989 class K (withdrawn, as a size of what a lathe and a mill give)"
SLOT_SYMMETRY = GeometricalTolerance("symmetry", "slot", 0.6, SEAT_AXIS, memory(_CLASS_K))
FLOOR_PARALLELISM = GeometricalTolerance("parallelism", "slot floor", 0.2, SEAT_FACE, memory(_CLASS_K))
LIP_RUN_OUT = GeometricalTolerance("run-out", "lip face", 0.2, SEAT_AXIS, memory(_CLASS_K))
GEOMETRICAL_TOLERANCES = (SLOT_SYMMETRY, FLOOR_PARALLELISM, LIP_RUN_OUT)

SEAT_ROUGHNESS_UM, FLOOR_ROUGHNESS_UM, OTHER_ROUGHNESS_UM = "3.2", "3.2", "6.3"
"""Greatest Ra of the seat face, the slot floor and the rest, µm: chosen for this project, within a plain lathe's reach."""
