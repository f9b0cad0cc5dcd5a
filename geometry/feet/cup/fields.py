"""What is measured on a jack with a round cup."""

from dataclasses import dataclass
from typing import ClassVar, Self

from pydantic import model_validator

from geometry.errors import Problem
from geometry.feet.facts import FootFacts
from geometry.feet.jack import head_height_high, no_higher_when_up, rated_load, saddle_tilt
from geometry.quantity import Group, Number, measured, problem_if, refuse


@dataclass(frozen=True, kw_only=True)
class CupFacts(FootFacts):
    """The cup as understood: every default filled in, lengths in mm."""

    kind: ClassVar[str] = "cup"


class CupJack(Group):
    """The jack: its cup, from the floor up, and how high it reaches."""

    cup_bore_mm: Number = measured(
        "Cup bore",
        unit="mm",
        ge=20,
        le=200,
        balloon=True,
        help="The seat must drop into the cup without play that lets the pad tip.",
        how="Measure across the inside of the cup near its floor, in two directions; write down the smaller.",
    )
    cup_depth_mm: Number = measured(
        "Cup depth",
        unit="mm",
        ge=2,
        le=60,
        balloon=True,
        help="The pad must stand on the cup's floor, its lip clear of the rim.",
        how="Lay a straight edge over the rim and measure down to the floor in three places; write down the deepest.",
    )
    cup_corner_radius_mm: Number | None = measured(
        "Cup corner radius",
        unit="mm",
        ge=0,
        le=40,
        default=None,
        balloon=True,
        help="The pad's corner must be rounder than the cup's, or it rides on the radius instead of the floor.",
        how="Hold coins or a radius card into the corner between wall and floor until one fits.",
        assumed="5 mm, or half the cup's depth where that is less",
    )
    rim_diameter_mm: Number | None = measured(
        "Rim outside diameter",
        unit="mm",
        ge=20,
        le=400,
        default=None,
        balloon=True,
        help="A body much wider than the rim may foul the jack's arm or lugs.",
        how="Measure across the outside of the rim.",
        assumed="nothing; whether the body clears the arm is then not checked",
    )
    stem_hole_diameter_mm: Number | None = measured(
        "Stem hole diameter",
        unit="mm",
        ge=3,
        le=150,
        default=None,
        balloon=True,
        help="A hole in the cup's floor can take a stem that keeps the pad from falling out.",
        how="Measure across the hole with the caliper's inside jaws.",
        assumed="no hole",
    )
    stem_hole_depth_mm: Number | None = measured(
        "Stem hole depth",
        unit="mm",
        ge=1,
        le=400,
        default=None,
        help="The stem must not reach the bottom: the seat face carries the load.",
        how="Measure with the caliper's depth rod from the cup's floor.",
        assumed="a hole, where there is one, goes through",
    )
    rated_load_kg: Number = rated_load()
    rim_height_low_mm: Number = measured(
        "Rim height, jack down",
        unit="mm",
        ge=20,
        le=1500,
        balloon=True,
        help="Jack and pad must pass under the seam's edge.",
        how="With the jack fully down, measure from the ground to the top of the rim.",
    )
    rim_height_high_mm: Number | None = head_height_high(
        "Rim height, jack up", "Pump the jack up with nothing on it and measure from the ground to the top of the rim."
    )
    saddle_tilt_deg: Number = saddle_tilt()
    floor_boss_height_mm: Number = measured(
        "Height of a boss on the cup's floor",
        unit="mm",
        ge=0,
        le=60,
        default=0,
        help="A bolt head or pin on the floor would carry the pad on one point: the seat face gets a recess over it.",
        how="Measure how far a bolt head, pin or rib in the middle stands above the floor.",
        assumed="the floor is flat",
    )
    floor_boss_diameter_mm: Number | None = measured(
        "Width of that boss",
        unit="mm",
        ge=3,
        le=150,
        default=None,
        help="The recess must clear it on all sides. A boss that is not in the middle cannot be cleared: use another jack.",
        how="Measure the widest way across the bolt head or pin, its washer too.",
        assumed="no boss",
    )

    @model_validator(mode="after")
    def _must_exist(self) -> Self:
        corner, depth, bore = self.cup_corner_radius_mm, self.cup_depth_mm, self.cup_bore_mm
        largest = min(depth - 1, bore / 2)
        hole, high = self.stem_hole_diameter_mm, self.rim_height_high_mm
        refuse(
            "jack",
            problem_if(
                corner is not None and corner > largest,
                "cup_corner_radius_mm",
                corner,
                f"A corner radius of {corner} mm in a cup {depth:g} mm deep: a cup without 1 mm of straight wall cannot locate a"
                f" pad, so at most {largest:g} mm is possible here. Measure the corner and the depth again.",
            ),
            problem_if(
                hole is not None and hole > bore - 6,
                "stem_hole_diameter_mm",
                hole,
                f"A stem hole of {hole} mm leaves no floor in a cup of {bore:g} mm. Measure both again.",
            ),
            problem_if(
                self.rim_diameter_mm is not None and self.rim_diameter_mm < bore,
                "rim_diameter_mm",
                self.rim_diameter_mm,
                f"A rim {self.rim_diameter_mm} mm across cannot surround a bore of {bore:g} mm. Measure both again.",
            ),
            no_higher_when_up(low_mm=self.rim_height_low_mm, high_mm=high, stands="rim stands"),
            problem_if(
                self.rim_height_low_mm <= depth,
                "rim_height_low_mm",
                self.rim_height_low_mm,
                f"A rim {self.rim_height_low_mm:g} mm above the ground with a cup {depth:g} mm deep puts the cup's floor into"
                " the ground. Measure both again.",
            ),
            *self._boss_problems(),
        )
        return self

    def _boss_problems(self) -> tuple[Problem | None, ...]:
        """What cannot be about a boss on the floor."""
        height, width, hole = self.floor_boss_height_mm, self.floor_boss_diameter_mm, self.stem_hole_diameter_mm
        return (
            problem_if(
                height > 0 and width is None,
                "floor_boss_diameter_mm",
                None,
                "Width of that boss is still to be measured: the recess over it must clear it.",
            ),
            problem_if(
                height == 0 and width is not None,
                "floor_boss_height_mm",
                height,
                f"A boss {width or 0:g} mm wide has a height, too. Measure how far it stands above the cup's floor.",
            ),
            problem_if(
                height > 0 and hole is not None,
                "floor_boss_height_mm",
                height,
                f"The middle of a cup's floor has a boss {height:g} mm high or a hole of {hole or 0:g} mm, not both. Measure"
                " again.",
            ),
            problem_if(
                width is not None and width > self.cup_bore_mm - 12,
                "floor_boss_diameter_mm",
                width,
                f"A boss {width or 0:g} mm wide leaves no floor to stand on in a cup of {self.cup_bore_mm:g} mm. Measure both"
                " again.",
            ),
        )

    def facts(self) -> CupFacts:
        """The cup with every default filled in."""
        corner = self.cup_corner_radius_mm
        return CupFacts(
            bore_mm=self.cup_bore_mm,
            depth_mm=self.cup_depth_mm,
            corner_radius_mm=min(5.0, self.cup_depth_mm / 2) if corner is None else corner,
            rim_diameter_mm=self.rim_diameter_mm,
            hole_diameter_mm=self.stem_hole_diameter_mm or 0.0,
            hole_depth_mm=self.stem_hole_depth_mm,
            rated_load_kg=self.rated_load_kg,
            rim_height_low_mm=self.rim_height_low_mm,
            rim_height_high_mm=self.rim_height_high_mm,
            saddle_tilt_deg=self.saddle_tilt_deg,
            boss_height_mm=self.floor_boss_height_mm,
            boss_diameter_mm=self.floor_boss_diameter_mm or 0.0,
        )
