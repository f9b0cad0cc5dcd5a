"""What is measured on a car that is lifted by a reinforced plate or a frame rail."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar, Self

from pydantic import model_validator

from geometry.heads.car import height_on_a_flat_tyre, higher_on_a_flat_tyre, way_in
from geometry.heads.facts import HeadFacts
from geometry.quantity import Group, Number, measured, refuse


@dataclass(frozen=True, kw_only=True)
class CushionFacts(HeadFacts):
    """The face as understood: every default filled in, lengths in mm."""

    kind: ClassVar[str] = "cushion"
    group: ClassVar[str] = "rail"
    says: ClassVar[Mapping[str, str]] = MappingProxyType(
        {
            "assumed friction of the seam on the slot's floor": "assumed friction of the car's face on the pad",
            "share of the stress allowed in a slot wall": "share of the stress allowed",
            "zone of the slot's symmetry to": "zone in which the load may arrive about",
            "parallelism of the slot's floor": "parallelism of the top",
            "general tolerance of the slot's depth": "tolerance of what stands above the top, where nothing does",
            "height, seat face to wall top": "height, seat face to top",
            "web, the floor under the slot": "web, under the top",
            "rise of the seam that is wanted": "rise that is wanted of the car's lifting point",
            " and to the car's own seam": "",
            "earlier damage of the seam and the sill": "earlier damage of the car's own sheet",
            " and seam": " and face",
            "The seam runs on past the pad: its edge stays": "The face runs on past the pad: it stays",
            "the seam at ": "the car's face at ",
            "how far the edge sinks into the floor": "how far the car's face sinks in",
            "a wall of 12 mm stays on each side of the slot, and a lip over the seat": "a lip stays over the seat",
            "less under the slot": "less under the car's face",
            "Play, side load and a slot off the axis": "Play and side load",
            "the seam on the slot's floor": "the car's face on the cushion",
            "the seam's edge": "the car's face",
            "seam's edge": "car's face",
            "roll in under the seam": "roll in under the face",
            "lifts the seam": "lifts the car's face",
            "The sill may load": "The car may load",
            "The walls pass": "The cushion passes",
            "the walls": "the cushion",
            "The walls": "The cushion",
            "under the overhanging seam": "around the seat",
        }
    )
    keys: ClassVar[Mapping[str, str]] = MappingProxyType(
        {
            "seam.edge_height_mm": "rail.face_height_mm",
            "seam.edge_height_flat_mm": "rail.face_height_flat_mm",
            "seam.roll_in_obstacle_mm": "rail.roll_in_obstacle_mm",
            "seam.height_mm": "rail.clear_beside_mm",
            "seam.thickness_mm": "rail.face_width_mm",
        }
    )
    face_width_mm: float
    face_length_mm: float
    clear_beside_mm: float | None
    """Room beside the face above its level; None where it was not measured."""

    @property
    def rooms(self) -> frozenset[str]:
        """Its own, and that of every face that lies on a pad."""
        return frozenset({self.kind, "face"})


class FlatRail(Group):
    """The face that stands on the cushion, and the car around it."""

    face_width_mm: Number = measured(
        "Face width",
        unit="mm",
        ge=10,
        le=300,
        balloon=True,
        help="The face carries the car; the narrower it is, the more it presses into the cushion.",
        how="Measure the flat of the plate or rail across, its rounded edges left out; write down the narrowest.",
    )
    face_length_mm: Number = measured(
        "Face length",
        unit="mm",
        ge=10,
        le=1000,
        balloon=True,
        help="What is carried is the face or the cushion, whichever is smaller.",
        how="Measure the flat of the plate or rail along the car, up to the first hole, step or weld.",
    )
    face_height_mm: Number = measured(
        "Face above the ground",
        unit="mm",
        ge=40,
        le=1500,
        balloon=True,
        help="Jack and pad must pass under it.",
        how="With the car on its wheels, measure from the ground to the face.",
    )
    face_height_flat_mm: Number | None = height_on_a_flat_tyre("Face above the ground, tyre flat")
    clear_beside_mm: Number | None = measured(
        "Clear beside the face",
        unit="mm",
        ge=0,
        le=400,
        default=None,
        balloon=True,
        help="Pipes, cables and flanges beside a rail must not be met by a cushion that is wider than it and gives way.",
        how="Measure from the level of the face up to the lowest thing beside it that the cushion could touch.",
        assumed="nothing; what stands beside the face is then not checked",
    )
    roll_in_obstacle_mm: Number | None = way_in("face")

    @model_validator(mode="after")
    def _must_exist(self) -> Self:
        flat, full = self.face_height_flat_mm, self.face_height_mm
        refuse("rail", higher_on_a_flat_tyre("face_height_flat_mm", flat, full, "face"))
        return self

    def facts(self) -> CushionFacts:
        """The face with every default filled in."""
        return CushionFacts(
            edge_height_mm=self.face_height_mm,
            edge_height_flat_mm=self.face_height_flat_mm,
            roll_in_obstacle_mm=self.roll_in_obstacle_mm,
            face_width_mm=self.face_width_mm,
            face_length_mm=self.face_length_mm,
            clear_beside_mm=self.clear_beside_mm,
        )
