"""What is measured on a jack with a bore that takes a post."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar, Self

from pydantic import model_validator

from geometry.errors import Problem
from geometry.feet.facts import NO_BOSS, FootFacts
from geometry.feet.jack import head_height_high, head_height_low, no_higher_when_up, rated_load, saddle_tilt
from geometry.quantity import Group, Number, measured, problem_if, refuse


@dataclass(frozen=True, kw_only=True)
class PostFacts(FootFacts):
    """The bore as understood: every default filled in, lengths in mm."""

    kind: ClassVar[str] = "post"
    says: ClassVar[Mapping[str, str]] = MappingProxyType(
        {
            "the cup's corner and the stem hole take": "its round corner and the bore take",
            "cup and seam": "jack and seam",
            "cup depth": "depth of the seat below the bore's rim, none here",
            "in the cup": "on the bore's rim",
            "the cup's floor": "the bore's rim",
            "cup's floor": "bore's rim",
            "the cup's rim": "the bore's rim",
            "cup's rim": "bore's rim",
            "stem hole": "bore",
            "over a hollow in the seat": "over the bore",
            "Saddle follows": "Jack's head follows",
            "play and saddle follow": "play and the jack's head follow",
            "the saddle": "the jack's head",
            "the cup": "the bore",
        }
    )
    keys: ClassVar[Mapping[str, str]] = MappingProxyType(
        {
            "jack.cup_bore_mm": "jack.bore_rim_diameter_mm",
            "jack.stem_hole_diameter_mm": "jack.post_bore_mm",
            "jack.stem_hole_depth_mm": "jack.post_bore_depth_mm",
            "jack.rim_diameter_mm": "jack.bore_rim_diameter_mm",
            "jack.cup_depth_mm": "",
            "jack.cup_corner_radius_mm": "",
            **NO_BOSS,
        }
    )
    pin_diameter_mm: float
    """Of the retaining pin; 0 for none."""
    pin_distance_mm: float
    """From the bore's rim down to the middle of the pin's hole."""

    @property
    def rooms(self) -> frozenset[str]:
        """A post is like no other foot."""
        return frozenset({"post"})


class PostJack(Group):
    """The jack: the bore for a post, and how high it reaches."""

    post_bore_mm: Number = measured(
        "Bore for the post",
        unit="mm",
        ge=10,
        le=150,
        balloon=True,
        help="The stem locates the pad and takes the side load: it must go in, and not rattle.",
        how="Measure across the bore near its rim and as deep as the caliper reaches, in two directions; write down the smallest.",
    )
    post_bore_depth_mm: Number | None = measured(
        "Depth of that bore",
        unit="mm",
        ge=8,
        le=400,
        default=None,
        balloon=True,
        help="The stem must not reach the bottom: the seat on the bore's rim carries the load.",
        how="Measure with the caliper's depth rod from the rim.",
        assumed="the bore goes through",
    )
    bore_rim_diameter_mm: Number = measured(
        "Outside of the bore's rim",
        unit="mm",
        ge=14,
        le=300,
        balloon=True,
        help="The seat stands on the bore's rim: the wider it is, the less it presses and the steadier the pad stands.",
        how="Measure across the flat top of the tube or boss around the bore, its rounded edge left out.",
    )
    pin_diameter_mm: Number | None = measured(
        "Retaining pin's diameter",
        unit="mm",
        ge=2,
        le=30,
        default=None,
        help="A pin across the bore keeps the stem from falling or being pulled out; it carries nothing of the load.",
        how="Measure the pin that goes through the tube, not its hole.",
        assumed="no pin",
    )
    pin_distance_mm: Number | None = measured(
        "Retaining pin below the rim",
        unit="mm",
        ge=4,
        le=200,
        default=None,
        help="The stem's cross-hole must meet the pin when the seat stands on the bore's rim.",
        how="Measure from the rim down to the middle of the pin's hole in the tube.",
        assumed="no pin",
    )
    rated_load_kg: Number = rated_load()
    rim_height_low_mm: Number = head_height_low(
        "Height of the bore's rim, jack down",
        "With the jack fully down, measure from the ground to the rim around the bore.",
    )
    rim_height_high_mm: Number | None = head_height_high(
        "Height of the bore's rim, jack up",
        "Pump the jack up with nothing on it and measure from the ground to the rim around the bore.",
    )
    saddle_tilt_deg: Number = saddle_tilt()

    @model_validator(mode="after")
    def _must_exist(self) -> Self:
        bore, rim, depth, high = (
            self.post_bore_mm,
            self.bore_rim_diameter_mm,
            self.post_bore_depth_mm,
            self.rim_height_high_mm,
        )
        refuse(
            "jack",
            problem_if(
                rim < bore + 4,
                "bore_rim_diameter_mm",
                rim,
                f"A rim of {rim:g} mm around a bore of {bore:g} mm leaves less than 2 mm of face to stand on. Measure both again.",
            ),
            no_higher_when_up(low_mm=self.rim_height_low_mm, high_mm=high, stands="rim stands"),
            problem_if(
                depth is not None and depth >= self.rim_height_low_mm,
                "post_bore_depth_mm",
                depth,
                f"A bore {depth or 0:g} mm deep in a rim {self.rim_height_low_mm:g} mm above the ground ends in the ground."
                " Measure both again.",
            ),
            *self._pin_problems(),
        )
        return self

    def _pin_problems(self) -> tuple[Problem | None, ...]:
        """What cannot be about a retaining pin."""
        pin, drop, depth = self.pin_diameter_mm, self.pin_distance_mm, self.post_bore_depth_mm
        return (
            problem_if(
                pin is not None and drop is None,
                "pin_distance_mm",
                None,
                "Retaining pin below the rim is still to be measured: the cross-hole must meet the pin.",
            ),
            problem_if(
                pin is None and drop is not None,
                "pin_diameter_mm",
                None,
                "Retaining pin's diameter is still to be measured: the cross-hole must let it through.",
            ),
            problem_if(
                pin is not None and pin > self.post_bore_mm / 3,
                "pin_diameter_mm",
                pin,
                f"A pin of {pin or 0:g} mm through a stem for a bore of {self.post_bore_mm:g} mm leaves too little of the stem: at"
                f" most a third of it, {self.post_bore_mm / 3:.1f} mm. Use a thinner pin, or none.",
            ),
            problem_if(
                drop is not None and depth is not None and drop >= depth,
                "pin_distance_mm",
                drop,
                f"A pin {drop or 0:g} mm below the rim lies under the bottom of a bore {depth or 0:g} mm deep. Measure both again.",
            ),
        )

    def facts(self) -> PostFacts:
        """The bore with every default filled in."""
        return PostFacts(
            rated_load_kg=self.rated_load_kg,
            rim_height_low_mm=self.rim_height_low_mm,
            rim_height_high_mm=self.rim_height_high_mm,
            saddle_tilt_deg=self.saddle_tilt_deg,
            locates="stem",
            bore_mm=self.post_bore_mm,
            rim_diameter_mm=self.bore_rim_diameter_mm,
            hole_diameter_mm=self.post_bore_mm,
            hole_depth_mm=self.post_bore_depth_mm,
            contact_diameter_mm=self.bore_rim_diameter_mm,
            pin_diameter_mm=self.pin_diameter_mm or 0.0,
            pin_distance_mm=self.pin_distance_mm or 0.0,
        )
