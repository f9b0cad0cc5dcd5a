"""Where and how the pad is used."""

from typing import Literal, Self

from pydantic import model_validator

from geometry.quantity import Group, Number, chosen, measured, problem_if, refuse


class Service(Group):
    """Where and how the pad is used."""

    temperature_low_c: Number = measured(
        "Lowest temperature",
        unit="°C",
        ge=-50,
        le=30,
        default=-10,
        kind="number",
        help="In frost the pad shrinks and dry nylon turns brittle.",
        assumed="−10 °C",
    )
    temperature_high_c: Number = measured(
        "Highest temperature",
        unit="°C",
        ge=0,
        le=120,
        default=40,
        kind="number",
        help="In heat the pad grows and softens: think of a car boot in the sun.",
        assumed="40 °C",
    )
    wetness: Literal["dry", "room", "soaked"] = chosen(
        "Wetness",
        default="room",
        help="Nylon swells and softens as it takes up water: kept dry, in room air, or soaked.",
    )
    ground: Literal["rolls", "stuck"] = chosen(
        "Ground", default="rolls", help="Whether the jack can roll as the car swings, or sticks in gravel or a joint."
    )
    hold: Literal["minutes", "overnight", "stored"] = chosen(
        "How long the load stays",
        default="minutes",
        help="Plastics creep. Longer than minutes is asked only to judge ageing: no car may be left standing on a jack.",
    )

    @model_validator(mode="after")
    def _must_exist(self) -> Self:
        refuse(
            "service",
            problem_if(
                self.temperature_low_c > self.temperature_high_c,
                "temperature_low_c",
                self.temperature_low_c,
                f"The lowest temperature {self.temperature_low_c:g} °C is above the highest {self.temperature_high_c:g} °C.",
            ),
        )
        return self
