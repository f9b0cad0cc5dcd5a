"""What the pad is made of and with."""

from typing import Any, Literal, Self

from pydantic import field_validator, model_validator

from geometry.materials import MATERIALS, material
from geometry.quantity import Group, Number, chosen, measured, problem_if, refuse
from geometry.series import CUTTER_DIAMETERS_MM, STOCK_DIAMETERS_MM

UNCERTAINTY_MM = {"caliper": 0.1, "rule": 0.5}
"""Common practice, no source: what a careful hand reads off each instrument on a car."""


def _series(title: str, help: str) -> Any:
    return chosen(title, default=None, kind="lengths", unit="mm", help=help)


class Make(Group):
    """What the pad is made of and with."""

    material: str = chosen(
        "Material", default="pom_c", help="What rod the pad is turned from, or what it is printed in."
    )
    process: Literal["lathe_and_mill", "cnc", "printed", "hand_tools"] = chosen(
        "Process", default="lathe_and_mill", help="What you or a friend can make it on."
    )
    body: Literal["round", "two_flats"] = chosen(
        "Body",
        default="round",
        help="Two flats along the slot give a vice something to hold, show which way the slot runs, and need less room beside"
        " the seam.",
    )
    slots: Literal["one", "crossed"] = chosen(
        "Slots",
        default="one",
        help="Two slots at right angles let the pad be used a quarter turn round; where they cross no wall keeps the seam"
        " upright.",
    )
    step: Literal["metric", "inch"] = chosen(
        "Rounding", default="metric", help="Sizes are rounded to what a metric or an inch machine sets easily."
    )
    stock_diameters_mm: tuple[Number, ...] | None = _series("Bars to hand", "Diameters of rod you can get.")
    cutter_diameters_mm: tuple[Number, ...] | None = _series("Cutters to hand", "Diameters of end mills you have.")
    measured_with: Literal["caliper", "rule"] = chosen(
        "Jack and car measured with",
        default="caliper",
        help="A caliper is taken to be right to 0.1 mm, a rule to 0.5 mm.",
    )
    uncertainty_mm: Number | None = measured(
        "Uncertainty of what is measured on jack and car",
        unit="mm",
        ge=0.01,
        le=3,
        default=None,
        help="How far a measurement of the jack or the car may be off; heights above the ground have their own.",
        assumed="0.1 mm with a caliper, 0.5 mm with a rule",
    )
    ground_uncertainty_mm: Number = measured(
        "Uncertainty of heights above ground",
        unit="mm",
        ge=0,
        le=30,
        default=2.0,
        help="How far a height above the ground may be off.",
        assumed="2 mm",
    )

    @field_validator("material")
    @classmethod
    def _known(cls, key: str) -> str:
        if key not in MATERIALS:
            raise ValueError(f"There is no material “{key[:40]}”; choose one of {', '.join(MATERIALS)}.")
        return key

    @field_validator("stock_diameters_mm", "cutter_diameters_mm")
    @classmethod
    def _usable(cls, series: tuple[float, ...] | None) -> tuple[float, ...] | None:
        if series is None:
            return None
        if not 1 <= len(series) <= 60:
            raise ValueError(f"Give between 1 and 60 diameters, not {len(series)}.")
        wrong = [d for d in series if not 1 <= d <= 400]
        if wrong:
            raise ValueError(f"A diameter of {wrong[0]:g} mm is outside 1 to 400 mm.")
        return tuple(sorted(set(series)))

    @model_validator(mode="after")
    def _must_go_together(self) -> Self:
        chosen_material = material(self.material)
        printed = self.process == "printed"
        way = "turned from rod, not printed" if printed else "printed, not turned from rod"
        remedy = "choose a printed material" if printed else "choose the process “printed”"
        refuse(
            "make",
            problem_if(
                chosen_material.printed != printed,
                "material",
                self.material,
                f"{chosen_material.name} is {way}: {remedy}, or another material.",
            ),
        )
        return self

    @property
    def uncertainty_used_mm(self) -> float:
        """Uncertainty of cup and seam, given or by instrument."""
        return UNCERTAINTY_MM[self.measured_with] if self.uncertainty_mm is None else self.uncertainty_mm

    @property
    def stock_used_mm(self) -> tuple[float, ...]:
        """Bars to choose from, smallest first."""
        return self.stock_diameters_mm or STOCK_DIAMETERS_MM[self.step]

    @property
    def cutters_used_mm(self) -> tuple[float, ...]:
        """Cutters to choose from, smallest first."""
        return self.cutter_diameters_mm or CUTTER_DIAMETERS_MM[self.step]
