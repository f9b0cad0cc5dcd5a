"""The measurement document: everything a person measures or knows before a pad can be sized.

One frozen pydantic model. The form, the API schema and the help are made from it; there is no second list of fields.
"""

from collections.abc import Mapping
from typing import Any, Literal, Self

from pydantic import ValidationError, field_validator, model_validator
from pydantic_core import ErrorDetails

from geometry.errors import BadMeasurementsError, Problem
from geometry.feet.cup.fields import CupJack
from geometry.heads.slot.fields import SlotSeam
from geometry.machining import CUTTER_DIAMETERS_MM, STOCK_DIAMETERS_MM
from geometry.materials import MATERIALS, material
from geometry.quantity import Group, Number, ShortText, chosen, measured, problem_if, refuse

UNCERTAINTY_MM = {"caliper": 0.1, "rule": 0.5}
"""Common practice, no source: what a careful hand reads off each instrument on a car."""
_LONGEST_INTEGER = 10**12


class Car(Group):
    """The load that arrives at the lifting point."""

    load_source: Literal["gross_mass", "stated", "statics"] = chosen(
        "Where the load comes from",
        default="gross_mass",
        help="From the mass on the vehicle's plate; from a load you state; or from the car's own statics.",
    )
    gross_mass_kg: Number | None = measured(
        "Greatest permitted mass",
        unit="kg",
        ge=300,
        le=12000,
        kind="mass",
        default=None,
        help="The car may be lifted loaded, and one sill point can carry more than half of it.",
        how="Read the greatest permitted mass from the vehicle's plate (door pillar or papers).",
    )
    load_kg: Number | None = measured(
        "Stated load",
        unit="kg",
        ge=50,
        le=8000,
        kind="mass",
        default=None,
        help="A load that you know from elsewhere. It is taken as it is and not checked.",
        how="For instance from a wheel scale, all at the one lifting point.",
    )
    front_share: Number | None = measured(
        "Share of the mass on the front axle",
        unit="",
        ge=0.2,
        le=0.8,
        kind="number",
        default=None,
        help="A nose-heavy car loads a front lifting point more.",
        how="Axle mass from the plate or a weighbridge, divided by the whole mass; 0.6 is common with the engine in front.",
    )
    wheelbase_mm: Number | None = measured(
        "Wheelbase",
        unit="mm",
        ge=1200,
        le=6000,
        default=None,
        help="Front axle to rear axle.",
        how="Hub to hub on one side.",
    )
    track_mm: Number | None = measured(
        "Track",
        unit="mm",
        ge=800,
        le=2500,
        default=None,
        help="Left wheel to right wheel.",
        how="Tyre middle to tyre middle on one axle.",
    )
    point_behind_front_axle_mm: Number | None = measured(
        "Lifting point behind the front axle",
        unit="mm",
        ge=0,
        le=6000,
        default=None,
        help="Where along the car it is lifted.",
        how="From the front hub straight back to the lifting point.",
    )
    point_from_centreline_mm: Number | None = measured(
        "Lifting point from the centre line",
        unit="mm",
        ge=200,
        le=1400,
        default=None,
        help="How far out it is lifted.",
        how="Half the distance between the seams of the two sides.",
    )
    cg_offset_mm: Number = measured(
        "Centre of gravity towards the jacked side",
        unit="mm",
        ge=-200,
        le=200,
        default=30,
        help="A driver's seat, tank or tools on one side shift the balance.",
        assumed="30 mm towards the jacked side",
    )
    ride_frequency_hz: Number = measured(
        "Ride frequency",
        unit="Hz",
        ge=0.7,
        le=4,
        default=1.3,
        kind="number",
        help="How soft the springs are: about 1.0 for a soft car, 1.3 usual, 2 and more for a stiff one.",
        how="Push a corner down and count its bounces in ten seconds.",
        assumed="1.3 Hz (from memory)",
    )
    lift_needed_mm: Number = measured(
        "Lift needed",
        unit="mm",
        ge=5,
        le=800,
        default=150,
        help="How far the seam must rise until the wheel is free.",
        how="Lift until the tyre leaves the ground, plus room for the wheel to come off.",
        assumed="150 mm",
    )

    @model_validator(mode="after")
    def _must_be_complete(self) -> Self:
        wanted = {
            "gross_mass": ("gross_mass_kg",),
            "stated": ("load_kg",),
            "statics": (
                "gross_mass_kg",
                "front_share",
                "wheelbase_mm",
                "track_mm",
                "point_behind_front_axle_mm",
                "point_from_centreline_mm",
            ),
        }[self.load_source]
        titles = {name: field.title for name, field in type(self).model_fields.items()}
        behind, base, out, track = (
            self.point_behind_front_axle_mm,
            self.wheelbase_mm,
            self.point_from_centreline_mm,
            self.track_mm,
        )
        refuse(
            "car",
            *(
                problem_if(getattr(self, name) is None, name, None, f"{titles[name]} is still to be measured.")
                for name in wanted
            ),
            problem_if(
                behind is not None and base is not None and behind > base,
                "point_behind_front_axle_mm",
                behind,
                f"A lifting point {behind} mm behind the front axle lies behind the rear axle (wheelbase {base} mm)."
                " Measure both again.",
            ),
            problem_if(
                out is not None and track is not None and out > 0.7 * track,
                "point_from_centreline_mm",
                out,
                f"A lifting point {out} mm from the centre line lies outside a car with a track of {track} mm. Measure both again.",
            ),
        )
        return self


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
    step: Literal["metric", "inch"] = chosen(
        "Rounding", default="metric", help="Sizes are rounded to what a metric or an inch machine sets easily."
    )
    stock_diameters_mm: tuple[Number, ...] | None = _series("Bars to hand", "Diameters of rod you can get, in mm.")
    cutter_diameters_mm: tuple[Number, ...] | None = _series(
        "Cutters to hand", "Diameters of end mills you have, in mm."
    )
    measured_with: Literal["caliper", "rule"] = chosen(
        "Cup and seam measured with",
        default="caliper",
        help="A caliper is taken to be right to 0.1 mm, a rule to 0.5 mm.",
    )
    uncertainty_mm: Number | None = measured(
        "Uncertainty of cup and seam",
        unit="mm",
        ge=0.01,
        le=3,
        default=None,
        help="How far a measurement of the cup or the seam may be off.",
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


def _fixable(title: str, *, ge: float, le: float) -> Any:
    return measured(
        title, unit="mm", ge=ge, le=le, default=None, help="Fixed by you; the other sizes are chosen around it."
    )


class Fixed(Group):
    """Dimensions that are given instead of sized."""

    seat_diameter_mm: Number | None = _fixable("Seat diameter", ge=10, le=250)
    seat_length_mm: Number | None = _fixable("Seat length", ge=2, le=120)
    seat_corner_radius_mm: Number | None = _fixable("Seat corner radius", ge=0.1, le=60)
    stem_diameter_mm: Number | None = _fixable("Stem diameter", ge=0, le=150)
    stem_length_mm: Number | None = _fixable("Stem length", ge=0, le=150)
    body_diameter_mm: Number | None = _fixable("Body diameter", ge=15, le=400)
    slot_width_mm: Number | None = _fixable("Slot width", ge=1, le=60)
    slot_depth_mm: Number | None = _fixable("Slot depth", ge=1, le=120)
    web_mm: Number | None = _fixable("Web", ge=3, le=300)
    slot_corner_radius_mm: Number | None = _fixable("Slot floor radius", ge=0.1, le=20)
    slot_mouth_chamfer_mm: Number | None = _fixable("Slot mouth chamfer", ge=0, le=10)
    edge_chamfer_mm: Number | None = _fixable("Edge chamfer", ge=0, le=10)

    def given(self) -> dict[str, float]:
        """The dimensions that are fixed, by name."""
        return {name: value for name in type(self).model_fields if (value := getattr(self, name)) is not None}


class Measurements(Group):
    """All that is measured, known or chosen for one pad."""

    version: Literal[1] = 1
    title: ShortText = chosen(
        "Name of this job", default="", kind="text", help="For your own use, such as “van, left front point”."
    )
    foot: Literal["cup"] = chosen(
        "What the jack carries with", default="cup", help="A round cup with a floor and a rim."
    )
    head: Literal["slot"] = chosen(
        "What the car is lifted by", default="slot", help="A welded seam that stands in a slot."
    )
    jack: CupJack
    seam: SlotSeam
    car: Car
    service: Service = Service()
    make: Make = Make()
    fixed: Fixed = Fixed()

    @model_validator(mode="after")
    def _must_go_together(self) -> Self:
        chosen_material = material(self.make.material)
        stored = self.service.hold == "stored" and chosen_material.stress_stored_mpa is None
        refuse(
            "make",
            problem_if(
                chosen_material.slot_refusal is not None,
                "material",
                self.make.material,
                f"{chosen_material.name} is not offered for a slot. {chosen_material.slot_refusal or ''} Choose another material.",
            ),
            problem_if(
                stored,
                "material",
                self.make.material,
                f"{chosen_material.name} creeps: nothing may rest on it for longer than minutes. Choose another material.",
            ),
        )
        return self


def read_measurements(document: Mapping[str, Any]) -> Measurements:
    """A document as understood.

    Raises BadMeasurementsError with one Problem per field that cannot be.
    """
    try:
        return Measurements.model_validate(document)
    except ValidationError as error:
        raise BadMeasurementsError(problems_of(error.errors())) from error


def problems_of(errors: list[ErrorDetails]) -> tuple[Problem, ...]:
    """Validation errors in plain words, each with the dotted key of its field."""
    problems: list[Problem] = []
    for error in errors:
        listed = (error.get("ctx") or {}).get("problems")
        if listed:
            problems += [Problem(*entry) for entry in listed]
        else:
            problems.append(_problem(error))
    return tuple(problems)


def _problem(error: ErrorDetails) -> Problem:
    field = ".".join(str(part) for part in error["loc"])
    title, unit = _title_and_unit(error["loc"])
    ctx = error.get("ctx") or {}
    value = error["input"]
    shown = _shown(value, unit)
    match error["type"]:
        case "missing":
            return Problem(field, None, f"{title} is still to be measured.")
        case "extra_forbidden":
            return Problem(field, value, f"“{field[:80]}” is not a field of this document; check its spelling.")
        case "greater_than_equal" | "less_than_equal":
            bound, word = (ctx.get("ge"), "at least") if "ge" in ctx else (ctx.get("le"), "at most")
            return Problem(
                field,
                value,
                f"{title} {shown} cannot be right ({word} {bound:g} {unit}). Measure it again.".replace(" )", ")"),
            )
        case "finite_number" | "float_type" | "float_parsing" | "int_type" | "int_parsing" | "int_from_float":
            return Problem(field, value, f"{title} must be a number; {shown} is not one that can be used.")
        case "literal_error":
            return Problem(field, value, f"{title} must be {ctx.get('expected', 'one of the choices')}, not {shown}.")
        case "value_error":
            return Problem(field, value, str(ctx.get("error", error["msg"])))
        case _:
            return Problem(field, value, f"{title}: {error['msg']}.")


def _shown(value: object, unit: str) -> str:
    """A value that was given, short enough to stand in a sentence."""
    if isinstance(value, float) or (isinstance(value, int) and abs(value) < _LONGEST_INTEGER):
        return f"{value:g} {unit}".strip()
    return "that" if isinstance(value, int) else f"“{str(value)[:40]}”"


def _title_and_unit(loc: tuple[int | str, ...]) -> tuple[str, str]:
    """Title and unit of the field at ``loc``, or its key where there is none."""
    group: type[Group] | None = Measurements
    title, unit = str(loc[-1]) if loc else "The document", ""
    for part in loc:
        info = group.model_fields.get(str(part)) if group else None
        if info is None:
            break
        title = info.title or str(part)
        extra = info.json_schema_extra
        unit = str(extra.get("unit", "")) if isinstance(extra, dict) else ""
        group = info.annotation if isinstance(info.annotation, type) and issubclass(info.annotation, Group) else None
    return title, unit
