"""What is measured on a car that is lifted by a hole or pocket in its body."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar, Literal, Self

from pydantic import model_validator

from geometry.errors import Problem
from geometry.heads.car import height_on_a_flat_tyre, higher_on_a_flat_tyre, way_in
from geometry.heads.facts import HeadFacts
from geometry.quantity import Group, Number, chosen, measured, problem_if, refuse

ASSUMED_RIM_WIDTH_MM = 4.0
"""Flat rim around the hole where it was not measured; own choice, on the small side."""


@dataclass(frozen=True, kw_only=True)
class PlugFacts(HeadFacts):
    """The hole as understood: every default filled in, lengths in mm."""

    kind: ClassVar[str] = "plug"
    group: ClassVar[str] = "pocket"
    says: ClassVar[Mapping[str, str]] = MappingProxyType(
        {
            "assumed friction of the seam on the slot's floor": "assumed friction of the hole's rim on the pad",
            "share of the stress allowed in a slot wall": "share of the stress allowed",
            "zone of the slot's symmetry to": "zone of the plug's place about",
            "parallelism of the slot's floor": "parallelism of the shoulder",
            "general tolerance of the slot's depth": "general tolerance of the plug's height",
            "height, seat face to wall top": "height, seat face to the plug's top",
            "web, the floor under the slot": "web, under the shoulder",
            "rise of the seam that is wanted": "rise that is wanted of the car's lifting point",
            " and to the car's own seam": "",
            "earlier damage of the seam and the sill": "earlier damage of the car's own sheet",
            " and seam": " and hole",
            "The seam runs on past the pad: its edge stays": "The rim of the hole runs on past the pad: it stays",
            "the seam at ": "the hole's rim at ",
            "how far the edge sinks into the floor": "how far the rim sinks in",
            "a wall of 12 mm stays on each side of the slot, and a lip over the seat": "a lip stays over the seat",
            "less under the slot": "less under the shoulder",
            "Play, side load and a slot off the axis": "Play and side load",
            "the seam's edge": "the hole's rim",
            "seam's edge": "hole's rim",
            "roll in under the seam": "roll in under the hole's rim",
            "lifts the seam": "lifts the hole's rim",
            "The sill may load": "The car may load",
            "The walls pass": "The plug passes",
            "the walls": "the plug",
            "The walls": "The plug",
            "under the overhanging seam": "around the seat",
            "The car's face may arrive": "The hole's rim may arrive",
            "the car's face": "the rim",
            "The car's face": "The rim",
            "so that the face is": "so that the rim is",
            "edge of the face": "edge of the rim",
        }
    )
    keys: ClassVar[Mapping[str, str]] = MappingProxyType(
        {
            "seam.edge_height_mm": "pocket.rim_height_mm",
            "seam.edge_height_flat_mm": "pocket.rim_height_flat_mm",
            "seam.roll_in_obstacle_mm": "pocket.roll_in_obstacle_mm",
            "seam.height_mm": "pocket.hole_depth_mm",
            "seam.thickness_mm": "pocket.hole_width_mm",
        }
    )
    shape: Literal["round", "rectangular"]
    hole_width_mm: float
    """Across the car; of a round hole its diameter."""
    hole_length_mm: float
    """Along the car; of a round hole its diameter."""
    corner_radius_mm: float
    """Of a round hole half its width."""
    hole_depth_mm: float
    rim_width_mm: float

    @property
    def rooms(self) -> frozenset[str]:
        """Its own, and that of every face that lies on a pad."""
        return frozenset({self.kind, "face"})

    @property
    def is_round(self) -> bool:
        """Whether a turned plug goes in."""
        return self.shape == "round"


class Pocket(Group):
    """The hole or pocket that the plug enters, and its rim that stands on the shoulder."""

    shape: Literal["round", "rectangular"] = chosen(
        "Shape of the hole",
        default="round",
        help="A round plug is turned with the body; a rectangular one is milled on top of it.",
    )
    hole_width_mm: Number = measured(
        "Hole width",
        unit="mm",
        ge=10,
        le=200,
        balloon=True,
        help="The plug must go in, and not let the car slide off the shoulder.",
        how="Measure across the hole with the caliper's inside jaws, of a round hole in two directions; write down the smaller.",
    )
    hole_length_mm: Number | None = measured(
        "Hole length",
        unit="mm",
        ge=10,
        le=200,
        default=None,
        help="A rectangular plug is as long as its hole allows.",
        how="Measure along the car with the caliper's inside jaws; write down the smallest. A round hole has none.",
        assumed="the hole is round",
        needed_where={"shape": ("rectangular",)},
    )
    corner_radius_mm: Number | None = measured(
        "Corner radius of the hole",
        unit="mm",
        ge=0,
        le=100,
        default=None,
        help="The plug's corners must be rounder than the hole's.",
        how="Hold coins or a radius card into a corner until one fits.",
        assumed="3 mm, or a quarter of the hole's smaller side where that is less",
        only_where={"shape": ("rectangular",)},
    )
    hole_depth_mm: Number = measured(
        "Depth of the hole",
        unit="mm",
        ge=4,
        le=400,
        balloon=True,
        help="The plug must not touch what is above: the rim on the shoulder carries the car.",
        how="Measure with the caliper's depth rod from the rim up to the first thing inside.",
    )
    rim_width_mm: Number | None = measured(
        "Flat rim around the hole",
        unit="mm",
        ge=1,
        le=150,
        default=None,
        balloon=True,
        help="The rim stands on the pad's shoulder; its flat is what carries.",
        how="Measure the flat around the hole, from its edge to the first bend or step; write down the narrowest.",
        assumed="4 mm",
    )
    rim_height_mm: Number = measured(
        "Rim of the hole above the ground",
        unit="mm",
        ge=40,
        le=1500,
        balloon=True,
        help="Jack and pad, plug and all, must pass under it.",
        how="With the car on its wheels, measure from the ground to the rim of the hole.",
    )
    rim_height_flat_mm: Number | None = height_on_a_flat_tyre("Rim above the ground, tyre flat")
    roll_in_obstacle_mm: Number | None = way_in("rim")

    @model_validator(mode="after")
    def _must_exist(self) -> Self:
        flat, full = self.rim_height_flat_mm, self.rim_height_mm
        refuse(
            "pocket",
            *self._shape_problems(),
            higher_on_a_flat_tyre("rim_height_flat_mm", flat, full, "rim"),
        )
        return self

    def _shape_problems(self) -> tuple[Problem | None, ...]:
        """What cannot be about the hole's outline."""
        is_round, length, corner = self.shape == "round", self.hole_length_mm, self.corner_radius_mm
        least = min(self.hole_width_mm, self.hole_width_mm if length is None else length)
        return (
            problem_if(
                not is_round and length is None,
                "hole_length_mm",
                None,
                "Hole length is still to be measured: a rectangular hole has two sides.",
            ),
            problem_if(
                not is_round and corner is not None and corner > least / 2,
                "corner_radius_mm",
                corner,
                f"A corner radius of {corner or 0:g} mm is more than half of the hole's {least:g} mm. Measure both again.",
            ),
        )

    def facts(self) -> PlugFacts:
        """The hole with every default filled in."""
        is_round = self.shape == "round"
        length = self.hole_width_mm if is_round or self.hole_length_mm is None else self.hole_length_mm
        least = min(self.hole_width_mm, length)
        assumed = min(3.0, least / 4) if self.corner_radius_mm is None else self.corner_radius_mm
        return PlugFacts(
            edge_height_mm=self.rim_height_mm,
            edge_height_flat_mm=self.rim_height_flat_mm,
            roll_in_obstacle_mm=self.roll_in_obstacle_mm,
            shape=self.shape,
            hole_width_mm=self.hole_width_mm,
            hole_length_mm=length,
            corner_radius_mm=self.hole_width_mm / 2 if is_round else assumed,
            hole_depth_mm=self.hole_depth_mm,
            rim_width_mm=ASSUMED_RIM_WIDTH_MM if self.rim_width_mm is None else self.rim_width_mm,
        )
