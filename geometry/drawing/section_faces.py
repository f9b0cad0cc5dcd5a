"""The car in the section where no seam carries it: a flat face on a cushion, or a hole's rim around a plug."""

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from geometry.drawing.section_shape import Shape
from geometry.drawing.section_spans import Span, across, upright
from geometry.outline import Point, polyline

if TYPE_CHECKING:
    from geometry.drawing.section_scene import Scene

_SHEET = 1.2
"""Thickness of the car's sheet as drawn, in hundredths of the picture's size; it is not measured."""
_BESIDE = 8.0
"""How high the car is drawn beside its lowest face where that was not measured, in hundredths of the picture's size."""
FACE_TITLES: Mapping[str, str] = {
    "slot": "seam and sill",
    "cushion": "the car's face",
    "plug": "the rim of the car's hole",
}
"""What of the car the section shows, by kind of head."""


def underside(scene: "Scene") -> tuple[Point, ...]:
    """The car's lowest surfaces from the outboard side to the inboard side."""
    half, edge, k = scene.thickness / 2, scene.edge, scene.unit_mm
    if scene.known.head == "cushion":
        beside = max(scene.sill, edge)
        right: list[Point] = [(half, edge), (half, beside), (scene.reach, beside)]
    else:
        rim = _rim_ends(scene)
        beside = edge + _BESIDE * k
        right = [(0.0, scene.sill), (half, scene.sill), (half, edge), (rim, edge), (rim, beside)]
        right += [(max(scene.reach, rim), beside)]
    left = [(-x, y) for x, y in reversed(right) if x > 0]
    return (*left, *right)


def _rim_ends(scene: "Scene") -> float:
    """How far out the flat rim around a hole is drawn; one that is wider than the picture ends with it."""
    half, k = scene.thickness / 2, scene.unit_mm
    width = max(scene.known.value_of("pocket.rim_width_mm") or 0.0, 2 * k)
    return min(half + width, scene.reach)


def face(scene: "Scene") -> Iterator[Shape]:
    """The room that the car takes up, and the sheet of its underside."""
    path = underside(scene)
    top = scene.top - 6 * scene.unit_mm
    is_ghost = scene.face_is_ghost
    corners: list[Point] = [(path[0][0], top), *path, (path[-1][0], top), (path[0][0], top)]
    yield Shape("car", polyline(corners), is_closed=True)
    thick = _SHEET * scene.unit_mm
    raised: list[Point] = [(x, y + thick / 2) for x, y in path]
    yield Shape("sill", polyline(raised), is_ghost=is_ghost, width_mm=thick)


Targets = Mapping[str, tuple[Point, Span]]


def face_targets(scene: "Scene") -> Targets:
    """What the balloons of a face or a hole point at, and of what a cup does not have."""
    return {**_foot_targets(scene), **_head_targets(scene)}


def _foot_targets(s: "Scene") -> Targets:
    k = s.unit_mm
    found: dict[str, tuple[Point, Span]] = {}
    if s.known.foot == "plate":
        found["jack.free_edge_mm"] = (
            (-s.rim, 0.6 * s.under),
            upright(-s.rim - 4 * k, s.under, 0, from_x=(-s.rim, -s.rim)),
        )
    if s.known.foot == "post":
        floor = s.under if s.hole_floor is None else s.hole_floor
        found["jack.post_bore_depth_mm"] = ((-0.4 * s.hole, floor), upright(0, floor, 0, from_x=(0, 0)))
    return found


def _head_targets(s: "Scene") -> Targets:
    k, half = s.unit_mm, s.thickness / 2
    beside = max(s.body, half) + 4 * k
    if s.known.head == "cushion":
        level = s.edge + 3 * k
        return {
            "rail.face_width_mm": ((half, s.edge + 1.5 * k), across(half, level, s.edge)),
            "rail.face_length_mm": ((0.3 * half, s.edge), across(half, level, s.edge)),
            "rail.clear_beside_mm": (
                ((half + s.reach) / 2, s.sill),
                upright(beside, s.edge, s.sill, from_x=(half, half)),
            ),
        }
    if s.known.head == "plug":
        rim = _rim_ends(s)
        level = s.sill - 3 * k
        flat = Span((half, s.edge + 2 * k), (rim, s.edge + 2 * k), arrows="between")
        return {
            "pocket.hole_width_mm": ((half, (s.edge + s.sill) / 2), across(half, level, level)),
            "pocket.hole_depth_mm": ((0.4 * half, s.sill), upright(beside, s.edge, s.sill, from_x=(half, half))),
            "pocket.rim_width_mm": (((half + rim) / 2, s.edge), flat),
        }
    return {}
