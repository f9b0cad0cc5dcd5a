"""What is asked of every car that stands on a face of the pad, whatever that face is called."""

from typing import Any

from geometry.errors import Problem
from geometry.quantity import measured, problem_if


def height_on_a_flat_tyre(title: str) -> Any:
    """The field of how high what carries the car stands with a tyre flat."""
    return measured(
        title,
        unit="mm",
        ge=20,
        le=1500,
        default=None,
        help="With a flat tyre the car stands lower, and the jack must still go under.",
        how="Measure the same with the tyre let down, or take off what the tyre loses.",
        assumed="nothing; whether the jack goes under with a flat tyre is then not checked",
    )


def way_in(level: str) -> Any:
    """The field of the lowest thing on the jack's way in, from a level."""
    return measured(
        "Lowest thing on the way in",
        unit="mm",
        ge=-300,
        le=300,
        default=None,
        help="The jack must pass under it on its way in.",
        how=f"Measure from the level of the {level}: above it positive, below it negative.",
        assumed=f"nothing hangs below the {level}",
    )


def higher_on_a_flat_tyre(field: str, flat_mm: float | None, full_mm: float, what: str) -> Problem | None:
    """The problem with a car that would stand higher on a flat tyre than on a full one."""
    return problem_if(
        flat_mm is not None and flat_mm > full_mm,
        field,
        flat_mm,
        f"With a flat tyre the {what} cannot stand higher ({flat_mm} mm) than with a full one ({full_mm:g} mm).",
    )
