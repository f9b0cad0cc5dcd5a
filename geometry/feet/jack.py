"""What is asked of every jack, whatever it carries with."""

from typing import Any

from geometry.errors import Problem
from geometry.quantity import measured, problem_if


def rated_load() -> Any:
    """The field of the load on the jack's plate."""
    return measured(
        "Jack's rated load",
        unit="kg",
        ge=100,
        le=30000,
        kind="mass",
        help="The load at the sill must not exceed what the jack's maker allows.",
        how="Read it from the plate on the jack.",
    )


def saddle_tilt() -> Any:
    """The field of how far the jack's head tilts."""
    return measured(
        "Saddle tilt",
        unit="°",
        ge=0,
        le=30,
        default=3,
        kind="angle",
        help="A head that tilts a little follows the car as it leans.",
        how="Rock the head by hand and judge how far it tilts to one side.",
        assumed="3°",
    )


def head_height_low(title: str, how: str) -> Any:
    """The field of how high the top of the jack's head stands, jack down."""
    return measured(
        title,
        unit="mm",
        ge=20,
        le=1500,
        balloon=True,
        help="Jack and pad must pass under what they lift by.",
        how=how,
    )


def head_height_high(title: str, how: str) -> Any:
    """The field of how high the top of the jack's head stands, jack up."""
    return measured(
        title,
        unit="mm",
        ge=30,
        le=3000,
        default=None,
        help="The jack must reach far enough to lift the wheel off the ground.",
        how=how,
        assumed="nothing; whether the jack lifts far enough is then not checked",
    )


def no_higher_when_up(*, low_mm: float, high_mm: float | None, stands: str) -> Problem | None:
    """The problem with a jack whose head would stand no higher up than down; ``stands`` opens with what does."""
    return problem_if(
        high_mm is not None and high_mm <= low_mm,
        "rim_height_high_mm",
        high_mm,
        f"Jack up, the {stands} at {high_mm} mm, jack down at {low_mm:g} mm: up must be more than down.",
    )
