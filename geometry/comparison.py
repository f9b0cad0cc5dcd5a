"""Every material, sized and checked for the user's own case."""

from dataclasses import dataclass
from typing import Literal

from geometry.design import Design, design_pad
from geometry.errors import BadMeasurementsError, NoPadFitsError
from geometry.materials import MATERIALS, Material
from geometry.measurements import Measurements
from geometry.variants import Changes, material_changes, variant

Outcome = Literal["passes", "fails", "no_pad", "refused"]
_RANK: dict[Outcome, int] = {"passes": 0, "fails": 1, "no_pad": 2, "refused": 3}


@dataclass(frozen=True, slots=True)
class MaterialRow:
    """What one material would come to."""

    material: Material
    outcome: Outcome
    words: str
    """The verdict, the conflict or the refusal."""
    design: Design | None
    changes: Changes
    """What choosing this row changes in the document."""
    is_chosen: bool
    conflict: NoPadFitsError | None = None
    """Why no pad fits, where none does."""

    @property
    def body_diameter_mm(self) -> float | None:
        """The diameter that has to be turned."""
        return self.design.pad.body_diameter_mm if self.design else None

    @property
    def top_height_mm(self) -> float | None:
        """Seat face to wall top."""
        return self.design.pad.top_height_mm if self.design else None

    @property
    def is_advised_against(self) -> bool:
        """Whether the material may be used but is a poor choice."""
        head = self.design.measurements.head if self.design else "slot"
        return self.material.advice_in(head) is not None


def compare_materials(measurements: Measurements) -> tuple[MaterialRow, ...]:
    """One row per material: what passes first, and among those the smallest body and what governs least."""
    return tuple(sorted((_row(measurements, chosen) for chosen in MATERIALS.values()), key=_order))


def _order(row: MaterialRow) -> tuple[float, ...]:
    if row.design is None:
        return (_RANK[row.outcome],)
    return (
        _RANK[row.outcome],
        row.is_advised_against,
        row.design.pad.body_diameter_mm,
        row.design.pad.top_height_mm,
        row.design.governing.utilisation,
    )


def _row(measurements: Measurements, chosen: Material) -> MaterialRow:
    is_chosen = chosen.key == measurements.make.material
    changes: Changes = {} if is_chosen else material_changes(measurements, chosen.key)
    refusal = chosen.refusal_in(measurements.head)
    if refusal:
        return MaterialRow(chosen, "refused", refusal, None, changes, is_chosen)
    try:
        design = design_pad(variant(measurements, changes) if changes else measurements)
    except NoPadFitsError as conflict:
        return MaterialRow(chosen, "no_pad", conflict.words, None, changes, is_chosen, conflict)
    except (BadMeasurementsError, ValueError):
        words = f"{chosen.name} cannot serve this case: it creeps, and nothing may rest on it for longer than minutes."
        return MaterialRow(chosen, "refused", words, None, changes, is_chosen)
    outcome: Outcome = "passes" if design.fit_to_make else "fails"
    return MaterialRow(chosen, outcome, design.verdict_words, design, changes, is_chosen)
