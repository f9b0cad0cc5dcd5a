"""Geometrical tolerances of the part, by ISO 1101, where ISO 2768-1 has none: what the drawing states and the checks allow for."""

from dataclasses import dataclass, replace
from typing import Literal

from geometry.pad import Pad
from geometry.provenance import Source, memory

Characteristic = Literal["symmetry", "position", "parallelism", "run-out"]


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
    is_round: bool = False
    """Whether the zone is a cylinder: its value is then a diameter."""


SEAT_FACE, PLACE_AXIS = "A", "B"
"""Datum letters: the face that stands on the jack, and the axis of what keeps the pad in its place there."""

_CLASS_K = "ISO 2768-2:1989 class K (withdrawn, as a size of what a lathe and a mill give)"
SLOT_SYMMETRY = GeometricalTolerance("slot_symmetry_mm", "symmetry", "slot", 0.6, PLACE_AXIS, memory(_CLASS_K))
"""The slot's middle plane may stand half of this off the axis of what locates the pad, or off its exact place beside that."""
FLOOR_PARALLELISM = GeometricalTolerance(
    "slot_floor_parallelism_mm", "parallelism", "slot floor", 0.2, SEAT_FACE, memory(_CLASS_K)
)
"""The floor may be this much higher or lower at one end than where its height was measured."""
LIP_RUN_OUT = GeometricalTolerance("lip_run_out_mm", "run-out", "lip face", 0.2, PLACE_AXIS, memory(_CLASS_K))
"""The lip may be this much lower on one side than where the seat's length was measured."""
GEOMETRICAL_TOLERANCES = (SLOT_SYMMETRY, FLOOR_PARALLELISM, LIP_RUN_OUT)


def location_of(pad: Pad) -> GeometricalTolerance | None:
    """Where the slot or the plug may stand: one zone about the axis of what locates the pad, or about the exact place beside it.

    None for a cushion, which stands nowhere in particular.
    """
    if pad.has_slot:
        return replace(SLOT_SYMMETRY, characteristic="position") if pad.slot_offset_mm else SLOT_SYMMETRY
    if pad.has_plug:
        kind: Characteristic = "position" if pad.plug_is_round else "symmetry"
        return replace(
            SLOT_SYMMETRY, name="plug_place_mm", characteristic=kind, feature="plug", is_round=pad.plug_is_round
        )
    return None


def carrying_parallelism(pad: Pad) -> GeometricalTolerance:
    """How parallel to the seat face what carries the car must be: the slot's floor, a plug's shoulder or a cushion's top."""
    if pad.has_slot:
        return FLOOR_PARALLELISM
    feature = "shoulder" if pad.has_plug else "top"
    return replace(FLOOR_PARALLELISM, name=f"{feature}_parallelism_mm", feature=feature)


def tolerances_of(pad: Pad) -> tuple[GeometricalTolerance, ...]:
    """Every frame that the drawing of a pad has."""
    location = location_of(pad)
    return (*((location,) if location else ()), carrying_parallelism(pad), LIP_RUN_OUT)
