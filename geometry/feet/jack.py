"""What is asked of every jack, whatever it carries with."""

from typing import Any

from geometry.quantity import measured


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
