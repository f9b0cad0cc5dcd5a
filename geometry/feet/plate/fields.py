"""What is measured on a jack that carries with a flat plate."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar, Literal, Self

from pydantic import model_validator

from geometry.errors import Problem
from geometry.feet.facts import NO_BOSS, FootFacts
from geometry.feet.jack import head_height_high, head_height_low, no_higher_when_up, rated_load, saddle_tilt
from geometry.feet.plate.terms import TERMS
from geometry.quantity import Group, Number, chosen, measured, problem_if, refuse

ASSUMED_CORNER_MM = 1.0
"""Between the plate and its ring where it was not measured, or half the ring's height where that is less; own choice."""
_HOLE_KEYS = {
    "jack.stem_hole_diameter_mm": "jack.plate_hole_diameter_mm",
    "jack.stem_hole_depth_mm": "jack.plate_hole_depth_mm",
    "jack.rim_diameter_mm": "jack.plate_diameter_mm",
    **NO_BOSS,
}
RING_KEYS: Mapping[str, str] = MappingProxyType(
    {
        "jack.cup_bore_mm": "jack.ring_bore_mm",
        "jack.cup_depth_mm": "jack.ring_height_mm",
        "jack.cup_corner_radius_mm": "jack.ring_corner_radius_mm",
        **_HOLE_KEYS,
    }
)
_EDGE_KEYS: Mapping[str, str] = MappingProxyType(
    {
        "jack.cup_bore_mm": "jack.plate_diameter_mm",
        "jack.cup_depth_mm": "",
        "jack.cup_corner_radius_mm": "",
        **_HOLE_KEYS,
    }
)


@dataclass(frozen=True, kw_only=True)
class PlateFacts(FootFacts):
    """The plate as understood: every default filled in, lengths in mm."""

    kind: ClassVar[str] = "plate"
    located_by: Literal["edge", "ring", "recess"]
    plate_diameter_mm: float

    @property
    def rooms(self) -> frozenset[str]:
        """In a ring or a recess the pad stands as in a shallow cup; around the edge hangs a skirt."""
        return frozenset({"plate", "skirt"} if self.located_by == "edge" else {"plate", "cup"})

    @property
    def terms(self) -> Mapping[str, str]:
        """What a cup's words mean on a bare plate, in a ring, and in a recess."""
        return TERMS[self.located_by]

    def own_key(self, key: str) -> str:
        """This plate's own measurement for a key of a shared rule; a bare plate has no ring to be measured."""
        return (_EDGE_KEYS if self.located_by == "edge" else RING_KEYS).get(key, key)


class PlateJack(Group):
    """The jack: its plate, and how high it reaches."""

    located_by: Literal["edge", "ring", "recess"] = chosen(
        "What keeps the pad in its place",
        default="edge",
        help="A ring that stands on the plate, a round recess in it, or nothing: then a skirt hangs around the plate's edge.",
    )
    plate_diameter_mm: Number = measured(
        "Plate diameter",
        unit="mm",
        ge=24,
        le=300,
        balloon=True,
        help="The pad stands on the plate, and a skirt must go around its edge.",
        how="Measure across the plate, in two directions; write down the larger. A plate with corners needs a ring or a recess.",
    )
    free_edge_mm: Number | None = measured(
        "Free height of the plate's edge",
        unit="mm",
        ge=3,
        le=100,
        default=None,
        balloon=True,
        help="The skirt hangs beside the edge and must not reach what is below it.",
        how="Measure from the plate's top down to the first thing that stands out beside its edge: a weld, an arm, a lug.",
        assumed="nothing; it is needed only where a skirt goes around the edge",
        needed_where={"located_by": ("edge",)},
    )
    ring_bore_mm: Number | None = measured(
        "Bore of the ring or recess",
        unit="mm",
        ge=20,
        le=200,
        default=None,
        balloon=True,
        help="The seat must drop in without play that lets the pad tip.",
        how="Measure across the inside of the ring or recess near its floor, in two directions; write down the smaller.",
        assumed="nothing; it is needed only where there is a ring or a recess",
        needed_where={"located_by": ("ring", "recess")},
    )
    ring_height_mm: Number | None = measured(
        "Height of the ring, or depth of the recess",
        unit="mm",
        ge=2,
        le=60,
        default=None,
        balloon=True,
        help="The pad must stand on the floor inside, its lip clear of the ring.",
        how="Lay a straight edge over the ring or recess and measure down to the floor in three places; write down the deepest.",
        assumed="nothing; it is needed only where there is a ring or a recess",
        needed_where={"located_by": ("ring", "recess")},
    )
    ring_corner_radius_mm: Number | None = measured(
        "Inner corner radius of the ring or recess",
        unit="mm",
        ge=0,
        le=20,
        default=None,
        help="The pad's corner must be rounder, or it rides on the radius instead of the floor.",
        how="Hold coins or a radius card into the corner until one fits.",
        assumed="1 mm, or half the ring's height where that is less",
        only_where={"located_by": ("ring", "recess")},
    )
    plate_hole_diameter_mm: Number | None = measured(
        "Hole in the plate",
        unit="mm",
        ge=3,
        le=150,
        default=None,
        balloon=True,
        help="Over a hole the pad stands on nothing; inside a ring it can take a stem.",
        how="Measure across the hole with the caliper's inside jaws.",
        assumed="no hole",
    )
    plate_hole_depth_mm: Number | None = measured(
        "Depth of that hole",
        unit="mm",
        ge=1,
        le=400,
        default=None,
        help="A stem must not reach the bottom: the seat face carries the load.",
        how="Measure with the caliper's depth rod from the plate.",
        assumed="a hole, where there is one, goes through",
    )
    rated_load_kg: Number = rated_load()
    rim_height_low_mm: Number = head_height_low(
        "Height of the jack's head, jack down",
        "With the jack fully down, measure from the ground to the highest part of the head: the plate's top, or the ring's.",
    )
    rim_height_high_mm: Number | None = head_height_high(
        "Height of the jack's head, jack up",
        "Pump the jack up with nothing on it and measure from the ground to the highest part of the head.",
    )
    saddle_tilt_deg: Number = saddle_tilt()

    @model_validator(mode="after")
    def _must_exist(self) -> Self:
        refuse("jack", *self._missing(), *self._contradictions())
        return self

    def _missing(self) -> tuple[Problem | None, ...]:
        """What the chosen way of locating the pad needs."""
        return tuple(
            problem_if(
                getattr(self, name) is None,
                name,
                None,
                f"{type(self).model_fields[name].title} is still to be measured.",
            )
            for name in type(self).model_fields
            if self.needs(name, {"located_by": self.located_by})
        )

    def _contradictions(self) -> tuple[Problem | None, ...]:
        plate, bore, height = self.plate_diameter_mm, self.ring_bore_mm, self.ring_height_mm
        corner, hole, high = self.ring_corner_radius_mm, self.plate_hole_diameter_mm, self.rim_height_high_mm
        room = plate if self.located_by == "edge" or bore is None else bore
        return (
            problem_if(
                bore is not None and bore > plate - 2,
                "ring_bore_mm",
                bore,
                f"A ring or recess of {bore or 0:g} mm does not lie on a plate of {plate:g} mm. Measure both again.",
            ),
            problem_if(
                corner is not None and height is not None and corner > height - 1,
                "ring_corner_radius_mm",
                corner,
                f"A corner radius of {corner or 0:g} mm in a ring {height or 0:g} mm high leaves no straight wall to locate a pad:"
                f" at most {(height or 0) - 1:g} mm is possible. Measure both again.",
            ),
            problem_if(
                hole is not None and hole > room - 6,
                "plate_hole_diameter_mm",
                hole,
                f"A hole of {hole or 0:g} mm leaves nothing to stand on in {room:g} mm. Measure both again.",
            ),
            no_higher_when_up(low_mm=self.rim_height_low_mm, high_mm=high, stands="head stands"),
            problem_if(
                height is not None and self.rim_height_low_mm <= height,
                "rim_height_low_mm",
                self.rim_height_low_mm,
                f"A head {self.rim_height_low_mm:g} mm above the ground with a ring {height or 0:g} mm high puts the plate into"
                " the ground. Measure both again.",
            ),
        )

    def facts(self) -> PlateFacts:
        """The plate with every default filled in."""
        on_edge = self.located_by == "edge"
        bore, height = self.ring_bore_mm or 0.0, self.ring_height_mm or 0.0
        corner = self.ring_corner_radius_mm
        return PlateFacts(
            rated_load_kg=self.rated_load_kg,
            rim_height_low_mm=self.rim_height_low_mm,
            rim_height_high_mm=self.rim_height_high_mm,
            saddle_tilt_deg=self.saddle_tilt_deg,
            locates="skirt" if on_edge else "seat",
            bore_mm=self.plate_diameter_mm if on_edge else bore,
            depth_mm=0.0 if on_edge else height,
            corner_radius_mm=0.0 if on_edge else min(ASSUMED_CORNER_MM, height / 2) if corner is None else corner,
            rim_diameter_mm=self.plate_diameter_mm,
            hole_diameter_mm=self.plate_hole_diameter_mm or 0.0,
            hole_depth_mm=self.plate_hole_depth_mm,
            contact_diameter_mm=self.plate_diameter_mm,
            located_by=self.located_by,
            plate_diameter_mm=self.plate_diameter_mm,
            free_edge_mm=self.free_edge_mm or 0.0,
        )
