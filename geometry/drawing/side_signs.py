"""What the side view tells for a crowded section: leaders at turned features, which it shows as well."""

from collections.abc import Callable
from dataclasses import dataclass
from math import cos, radians, sin

from geometry.drawing.callouts import place_square
from geometry.drawing.canvas import Canvas
from geometry.drawing.facts import SheetFacts
from geometry.drawing.geometrical import FLOOR_ROUGHNESS_UM
from geometry.drawing.main_notes import ASIDE, CORNER, LENGTHS
from geometry.drawing.model import Box, Kind, Measure, Point, View
from geometry.drawing.notes import OnLeader
from geometry.drawing.placing import Pointer, place_pointer
from geometry.drawing.scales import Scale
from geometry.drawing.signs import stacked, texture, tolerance_frame
from geometry.geometrical import FLOOR_PARALLELISM, LIP_RUN_OUT, GeometricalTolerance, carrying_parallelism
from geometry.pad import Pad

_ABOUT_HOLE = (-30.0, 30.0, -45.0, 45.0, -15.0, 15.0, -60.0, 60.0)
"""Directions in which leaders may leave, the most wanted first."""


def side_solids(pad: Pad, view: View, scale: Scale) -> list[Box]:
    """Where the part itself is in the side view, in paper mm."""
    k, left = scale.factor, view.box.left * scale.factor
    sizes = (
        (view.box.right, pad.foot_bottom_mm, pad.body_top_mm),
        (pad.seat_diameter_mm / 2, 0.0, pad.seat_length_mm),
        (pad.stem_diameter_mm / 2, -pad.stem_length_mm, 0.0),
        (pad.plug_length_mm / 2, pad.body_top_mm, pad.top_height_mm),
    )
    return [Box(max(left, -half * k), low * k, half * k, high * k) for half, low, high in sizes if half and high > low]


def hidden_at_side(pad: Pad) -> frozenset[OnLeader]:
    """What the side view does not show: a skirt hides the seat, and a recess the root of the stem in it."""
    if pad.has_skirt:
        return frozenset({"stem root", "lead-in", "seat texture"})
    return frozenset({"stem root"}) if pad.has_recess else frozenset()


@dataclass(frozen=True, slots=True)
class SideSigns:
    """A side view that takes what the section leaves to it: nothing of that may be left out."""

    canvas: Canvas
    pad: Pad
    shown: dict[str, Measure]
    scale: Scale
    facts: SheetFacts
    whole: bool
    """Whether it shows both sides of the axis."""

    def place(self, moved: frozenset[str]) -> None:
        """Put those on leaders, in a fixed order; raises NoRoomError where one finds no place."""
        for name, place in _PLACES.items():
            if name in moved:
                place(self)

    def cross_hole(self) -> None:
        """The hole that a pin goes through, seen round, from any side of it."""
        k, pad = self.scale.factor, self.pad
        radius, level = pad.cross_hole_diameter_mm / 2 * k, -pad.cross_hole_distance_mm * k
        rim = [(a, (radius * cos(radians(a)), level + radius * sin(radians(a)))) for a in _ABOUT_HOLE]
        measure = self.shown["cross_hole_diameter_mm"]
        place_pointer(self.canvas, self.scale, *(Pointer(measure, "note", at, 0.0, (a,), LENGTHS) for a, at in rim))

    def run_out(self) -> None:
        """The lip's face, from below."""
        inner, outer = self.pad.seat_diameter_mm / 2, self.pad.body_diameter_mm / 2 - self.pad.edge_chamfer_mm
        self._square(LIP_RUN_OUT, (inner, outer), self.pad.seat_length_mm, (0.5, 0.65, 0.8), up=False)

    def parallelism(self) -> None:
        """A cushion's top or a plug's shoulder, with its texture as on the section."""
        pad = self.pad
        faces = (pad.plug_length_mm / 2, pad.body_diameter_mm / 2 - pad.edge_chamfer_mm)
        self._square(carrying_parallelism(pad), faces, pad.body_top_mm, (0.5, 0.35, 0.65, 0.8), up=True)

    def edge(self) -> None:
        """The chamfer of the body's lower edge."""
        half = self.pad.edge_chamfer_mm / 2
        at = self.pad.body_diameter_mm / 2 - half, self.pad.foot_bottom_mm + half
        self._pointed("edge_chamfer_mm", "note", at, 0.0, ASIDE)

    def corner(self) -> None:
        """The radius of the seat's corner."""
        radius = self.pad.seat_corner_radius_mm
        self._pointed(
            "seat_corner_radius_mm", "radius", (self.pad.seat_diameter_mm / 2 - radius, radius), radius, CORNER
        )

    def _square(
        self,
        tolerance: GeometricalTolerance,
        face_mm: tuple[float, float],
        level_mm: float,
        shares: tuple[float, ...],
        *,
        up: bool,
    ) -> None:
        k, (inner, outer) = self.scale.factor, face_mm
        tips = [((inner + (outer - inner) * share) * k, level_mm * k) for share in shares]
        sign = tolerance_frame(tolerance, self.facts.figure_unit, critical=self.facts.critical)
        if up and not self.facts.as_printed:
            sign = stacked(sign, texture(FLOOR_ROUGHNESS_UM))
        ways = (1, -1) if self.whole else (1,)
        place_square(self.canvas, sign, tips, tolerance.name, up=up, mirrored=self.whole, ways=ways)

    def _pointed(self, name: str, kind: Kind, at_mm: Point, radius_mm: float, angles: tuple[float, ...]) -> None:
        """A size at the right or, where that is seen, at the left."""
        k, (x, z) = self.scale.factor, at_mm
        right = Pointer(self.shown[name], kind, (x * k, z * k), radius_mm * k, angles, LENGTHS)
        place_pointer(self.canvas, self.scale, right, *((right.mirrored(),) if self.whole else ()))


_PLACES: dict[str, Callable[[SideSigns], None]] = {
    "cross_hole_diameter_mm": SideSigns.cross_hole,
    LIP_RUN_OUT.name: SideSigns.run_out,
    FLOOR_PARALLELISM.name: SideSigns.parallelism,
    "edge_chamfer_mm": SideSigns.edge,
    "seat_corner_radius_mm": SideSigns.corner,
}
AT_SIDE = frozenset(_PLACES)
"""What the section may leave to the side view."""
