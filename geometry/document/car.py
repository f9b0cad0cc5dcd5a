"""The load that arrives at the lifting point."""

from typing import Literal, Self

from pydantic import model_validator

from geometry.quantity import Group, Number, chosen, measured, problem_if, refuse


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
        # The order of a plate's figures is from memory; that the axles together come to no less follows from what they are for.
        how="Read it from the vehicle's plate (door pillar or papers). Of several figures in kilograms take that of the whole"
        " vehicle: not the larger one with a trailer, and not that of one axle, often marked 1 and 2. The two axles together"
        " come to at least as much.",
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
