"""Geometrical tolerances of the part, by ISO 1101, where ISO 2768-1 has none: what the drawing states and the checks allow for."""

from dataclasses import dataclass
from typing import Literal

from geometry.provenance import Source, memory

Characteristic = Literal["symmetry", "parallelism", "run-out"]


@dataclass(frozen=True, slots=True)
class GeometricalTolerance:
    """How far one feature may stray from a datum."""

    name: str
    """Its name among the tolerances of a part, beside those of the pad's dimensions."""
    characteristic: Characteristic
    feature: str
    value_mm: float
    """Width of the whole zone."""
    datum: str
    source: Source


SEAT_FACE, SEAT_AXIS = "A", "B"
"""Datum letters: the seat face stands on the cup's floor, the seat's axis locates the pad in the bore."""

_CLASS_K = "ISO 2768-2:1989 class K (withdrawn, as a size of what a lathe and a mill give)"
SLOT_SYMMETRY = GeometricalTolerance("slot_symmetry_mm", "symmetry", "slot", 0.6, SEAT_AXIS, memory(_CLASS_K))
"""The slot's middle plane may stand half of this off the seat's axis."""
FLOOR_PARALLELISM = GeometricalTolerance(
    "slot_floor_parallelism_mm", "parallelism", "slot floor", 0.2, SEAT_FACE, memory(_CLASS_K)
)
"""The floor may be this much higher or lower at one end than where its height was measured."""
LIP_RUN_OUT = GeometricalTolerance("lip_run_out_mm", "run-out", "lip face", 0.2, SEAT_AXIS, memory(_CLASS_K))
"""The lip may be this much lower on one side than where the seat's length was measured."""
GEOMETRICAL_TOLERANCES = (SLOT_SYMMETRY, FLOOR_PARALLELISM, LIP_RUN_OUT)
