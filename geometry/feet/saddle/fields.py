"""What is measured on a jack whose saddle has teeth or lugs."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import inf, pi
from types import MappingProxyType
from typing import ClassVar, Literal, Self

from pydantic import StrictInt, model_validator

from geometry.errors import Problem
from geometry.feet.facts import NO_BOSS, FootFacts
from geometry.feet.jack import head_height_high, head_height_low, no_higher_when_up, rated_load, saddle_tilt
from geometry.feet.saddle.terms import LAND_TERMS, TIP_TERMS
from geometry.quantity import Group, Number, chosen, measured, problem_if, refuse

ASSUMED_ROOT_RADIUS_MM = 2.0
"""Between land and teeth where it was not measured, or half the teeth's height where that is less; own choice."""
LAND_KEYS: Mapping[str, str] = MappingProxyType(
    {
        "jack.cup_bore_mm": "jack.between_teeth_mm",
        "jack.cup_depth_mm": "jack.tooth_height_mm",
        "jack.cup_corner_radius_mm": "jack.tooth_root_radius_mm",
        "jack.rim_diameter_mm": "jack.over_teeth_mm",
        "jack.stem_hole_diameter_mm": "jack.land_hole_diameter_mm",
        "jack.stem_hole_depth_mm": "jack.land_hole_depth_mm",
        **NO_BOSS,
    }
)
_TIP_KEYS: Mapping[str, str] = MappingProxyType(
    {
        "jack.cup_bore_mm": "jack.over_teeth_mm",
        "jack.cup_depth_mm": "",
        "jack.cup_corner_radius_mm": "",
        "jack.rim_diameter_mm": "jack.over_teeth_mm",
        "jack.plate_diameter_mm": "jack.over_teeth_mm",
        "jack.free_edge_mm": "jack.tooth_height_mm",
        "jack.stem_hole_diameter_mm": "jack.between_teeth_mm",
        "jack.stem_hole_depth_mm": "",
        **NO_BOSS,
    }
)


@dataclass(frozen=True, kw_only=True)
class SaddleFacts(FootFacts):
    """The saddle as understood: every default filled in, lengths in mm."""

    kind: ClassVar[str] = "saddle"
    tooth_height_mm: float
    teeth: int
    tip_length_mm: float
    """Of one tooth, around the ring; 0 where it was not measured."""
    tip_width_mm: float
    """Of one tooth, from the inside outwards; 0 where it was not measured."""

    @property
    def on_teeth(self) -> bool:
        """Whether the pad stands on the teeth's tips."""
        return self.locates == "skirt"

    @property
    def rooms(self) -> frozenset[str]:
        """Between the teeth the pad stands as in a cup whose wall has gaps; on them, as on a plate with a skirt around it."""
        return frozenset({"saddle", "skirt"} if self.on_teeth else {"saddle", "cup"})

    @property
    def is_face(self) -> bool:
        """The land is one; the tips are judged tooth by tooth."""
        return not self.on_teeth

    @property
    def terms(self) -> Mapping[str, str]:
        """What a cup's words mean between the teeth, and on them."""
        return TIP_TERMS if self.on_teeth else LAND_TERMS

    def own_key(self, key: str) -> str:
        """This saddle's own measurement for a key of a shared rule."""
        return (_TIP_KEYS if self.on_teeth else LAND_KEYS).get(key, key)


class SaddleJack(Group):
    """The jack: its toothed saddle, from the land up, and how high it reaches."""

    stands_on: Literal["land", "teeth"] = chosen(
        "The pad stands on",
        default="land",
        help="The land between the teeth is the better place: it is a face. Teeth mark and cut plastic; the pad goes on their"
        " tips only where there is no land.",
    )
    between_teeth_mm: Number = measured(
        "Between the teeth",
        unit="mm",
        ge=20,
        le=200,
        balloon=True,
        help="The seat must drop in between the teeth without play that lets the pad tip.",
        how="Measure from tooth to tooth across the middle, near their roots, in two directions; write down the smaller.",
    )
    tooth_height_mm: Number = measured(
        "Height of the teeth",
        unit="mm",
        ge=2,
        le=60,
        balloon=True,
        help="The pad must stand on the land and clear the tips of the teeth, or stand on the tips with its skirt around them.",
        how="Lay a straight edge over the tips and measure down to the land in three places; write down the deepest.",
    )
    tooth_root_radius_mm: Number | None = measured(
        "Radius at the teeth's roots",
        unit="mm",
        ge=0,
        le=20,
        default=None,
        balloon=True,
        help="The pad's corner must be rounder than the roots, or it rides on them instead of on the land.",
        how="Hold coins or a radius card into the corner between land and tooth until one fits.",
        assumed="2 mm, or half the teeth's height where that is less",
        only_where={"stands_on": ("land",)},
    )
    over_teeth_mm: Number | None = measured(
        "Over the teeth",
        unit="mm",
        ge=24,
        le=400,
        default=None,
        balloon=True,
        help="A skirt must go around the teeth; a body much wider than they may foul the jack's arm.",
        how="Measure across the outside of the teeth, in two directions; write down the larger.",
        assumed="nothing; whether the body clears the arm is then not checked",
        needed_where={"stands_on": ("teeth",)},
        is_asked_elsewhere=True,
    )
    teeth: StrictInt = measured(
        "Teeth",
        unit="",
        ge=3,
        le=60,
        default=4,
        kind="count",
        help="What stands on teeth presses on their tips alone.",
        how="Count the teeth or lugs around the saddle.",
        assumed="4",
    )
    tip_length_mm: Number | None = measured(
        "Length of a tooth's tip",
        unit="mm",
        ge=1,
        le=120,
        default=None,
        help="The tips' area carries where the pad stands on the teeth.",
        how="Measure the flat of one tip around the ring; take the shortest tooth.",
        assumed="nothing; it is needed only where the pad stands on the teeth",
        needed_where={"stands_on": ("teeth",)},
    )
    tip_width_mm: Number | None = measured(
        "Width of a tooth's tip",
        unit="mm",
        ge=0.5,
        le=60,
        default=None,
        help="The tips' area carries where the pad stands on the teeth.",
        how="Measure the flat of one tip from its inside to its outside; take the narrowest tooth.",
        assumed="nothing; it is needed only where the pad stands on the teeth",
        needed_where={"stands_on": ("teeth",)},
    )
    land_hole_diameter_mm: Number | None = measured(
        "Hole in the land",
        unit="mm",
        ge=3,
        le=150,
        default=None,
        balloon=True,
        help="A hole in the middle can take a stem; over it the pad stands on nothing.",
        how="Measure across the hole with the caliper's inside jaws. A sunk screw head counts as a hole as deep as it lies.",
        assumed="no hole",
        only_where={"stands_on": ("land",)},
    )
    land_hole_depth_mm: Number | None = measured(
        "Depth of that hole",
        unit="mm",
        ge=1,
        le=400,
        default=None,
        help="The stem must not reach the bottom: the seat face carries the load.",
        how="Measure with the caliper's depth rod from the land.",
        assumed="a hole, where there is one, goes through",
        only_where={"stands_on": ("land",)},
    )
    rated_load_kg: Number = rated_load()
    rim_height_low_mm: Number = head_height_low(
        "Height of the teeth's tips, jack down",
        "With the jack fully down, measure from the ground to the teeth's tips.",
    )
    rim_height_high_mm: Number | None = head_height_high(
        "Height of the teeth's tips, jack up",
        "Pump the jack up with nothing on it and measure from the ground to the teeth's tips.",
    )
    saddle_tilt_deg: Number = saddle_tilt()

    @model_validator(mode="after")
    def _must_exist(self) -> Self:
        refuse(
            "jack",
            *self._ring_problems(),
            *(self._missing_tips() if self.stands_on == "teeth" else ()),
            *self._tip_problems(),
            *self._land_problems(),
        )
        return self

    def _ring_problems(self) -> tuple[Problem | None, ...]:
        """What cannot be of the roots and the outside of the teeth."""
        bore, height, over, root = (
            self.between_teeth_mm,
            self.tooth_height_mm,
            self.over_teeth_mm,
            self.tooth_root_radius_mm,
        )
        return (
            problem_if(
                root is not None and root > height - 1,
                "tooth_root_radius_mm",
                root,
                f"A radius of {root or 0:g} mm at the roots of teeth {height:g} mm high leaves no straight flank to locate a pad:"
                f" at most {height - 1:g} mm is possible. Measure both again.",
            ),
            problem_if(
                over is not None and over < bore + 2,
                "over_teeth_mm",
                over,
                f"{over or 0:g} mm over the teeth cannot go around {bore:g} mm between them. Measure both again.",
            ),
        )

    def _missing_tips(self) -> tuple[Problem | None, ...]:
        """What a pad on the tips needs to be measured."""
        tips = (("tip_length_mm", self.tip_length_mm, "Length"), ("tip_width_mm", self.tip_width_mm, "Width"))
        return (
            problem_if(
                self.over_teeth_mm is None,
                "over_teeth_mm",
                None,
                "Over the teeth is still to be measured: the skirt goes around them.",
            ),
            *(
                problem_if(
                    value is None,
                    name,
                    None,
                    f"{title} of a tooth's tip is still to be measured: the pad stands on the tips.",
                )
                for name, value, title in tips
            ),
        )

    def _land_problems(self) -> tuple[Problem | None, ...]:
        """What cannot be of the land and of its height above the ground."""
        bore, height, hole = self.between_teeth_mm, self.tooth_height_mm, self.land_hole_diameter_mm
        return (
            problem_if(
                hole is not None and hole > bore - 6,
                "land_hole_diameter_mm",
                hole,
                f"A hole of {hole or 0:g} mm leaves no land in {bore:g} mm between the teeth. Measure both again.",
            ),
            no_higher_when_up(low_mm=self.rim_height_low_mm, high_mm=self.rim_height_high_mm, stands="tips stand"),
            problem_if(
                self.rim_height_low_mm <= height,
                "rim_height_low_mm",
                self.rim_height_low_mm,
                f"Tips {self.rim_height_low_mm:g} mm above the ground on teeth {height:g} mm high put the land into the ground."
                " Measure both again.",
            ),
        )

    def _tip_problems(self) -> tuple[Problem | None, ...]:
        """Tips that are wider or longer than the ring that they stand on; 1 mm is left to what was measured near the roots."""
        over, length, width = self.over_teeth_mm, self.tip_length_mm, self.tip_width_mm
        room = (over - self.between_teeth_mm) / 2 + 1 if over else inf
        around = pi * over if over else inf
        return (
            problem_if(
                width is not None and width > room,
                "tip_width_mm",
                width,
                f"Tips {width or 0:g} mm wide do not stand on teeth {room:.1f} mm from inside to outside. Measure both again.",
            ),
            problem_if(
                length is not None and self.teeth * length > around,
                "tip_length_mm",
                length,
                f"{self.teeth} tips of {length or 0:g} mm do not go around {over or 0:g} mm. Measure both again.",
            ),
        )

    def facts(self) -> SaddleFacts:
        """The saddle with every default filled in."""
        on_teeth, height = self.stands_on == "teeth", self.tooth_height_mm
        root = self.tooth_root_radius_mm
        over = self.over_teeth_mm
        return SaddleFacts(
            rated_load_kg=self.rated_load_kg,
            rim_height_low_mm=self.rim_height_low_mm,
            rim_height_high_mm=self.rim_height_high_mm,
            saddle_tilt_deg=self.saddle_tilt_deg,
            locates="skirt" if on_teeth else "seat",
            bore_mm=(over or 0.0) if on_teeth else self.between_teeth_mm,
            depth_mm=0.0 if on_teeth else height,
            corner_radius_mm=(0.0 if on_teeth else min(ASSUMED_ROOT_RADIUS_MM, height / 2) if root is None else root),
            rim_diameter_mm=over,
            hole_diameter_mm=self.between_teeth_mm if on_teeth else (self.land_hole_diameter_mm or 0.0),
            hole_depth_mm=height if on_teeth else self.land_hole_depth_mm,
            contact_diameter_mm=(over or inf) if on_teeth else inf,
            free_edge_mm=height if on_teeth else 0.0,
            tooth_height_mm=height,
            teeth=self.teeth,
            tip_length_mm=self.tip_length_mm or 0.0,
            tip_width_mm=self.tip_width_mm or 0.0,
        )
