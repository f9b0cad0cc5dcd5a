"""What the pad stands in and carries, as simple bodies in model mm: the cup turned, seam and sill drawn out along the slot.

For looking at only: cut off a little beyond the pad, and without bends. The pad itself comes as its own model.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import atan2, cos, hypot, pi, sin
from typing import Literal

from geometry.drawing.section_faces import underside
from geometry.drawing.section_known import known_of
from geometry.drawing.section_scene import Scene, scene_of
from geometry.drawing.section_shapes import cup_inside
from geometry.measurements import Measurements
from geometry.outline import Arc, Point, Segment
from geometry.pad import Pad

_ARC_STEPS = 10
_SILL_THICK = 2.5
"""In hundredths of the picture's size: a sheet thick enough to be seen cut."""


@dataclass(frozen=True, slots=True)
class Body:
    """A closed outline, anticlockwise, and what is done with it.

    ``turned``: points are (radius, height), turned once about the pad's axis; ``along``: points are (across, height), drawn
    out along the slot, ``half_length_mm`` to each side.
    """

    name: Literal["cup", "seam", "sill"]
    way: Literal["turned", "along"]
    outline: tuple[Point, ...]
    half_length_mm: float = 0.0


def bodies_around(measurements: Measurements, pad: Pad) -> tuple[Body, ...]:
    """Jack's head, and what of the car stands on the pad, where they are when the car has just come down on it."""
    scene = scene_of(known_of(measurements), pad)
    half_length = scene.body + 8 * scene.unit_mm
    if scene.known.head != "slot":
        return (Body("cup", "turned", _cup(scene)), Body("sill", "along", _face(scene), half_length))
    top = scene.sill + _SILL_THICK * scene.unit_mm / 2
    left, right = scene.middle - scene.thickness / 2, scene.middle + scene.thickness / 2
    seam = ((left, scene.edge), (right, scene.edge), (right, top), (left, top))
    return (
        Body("cup", "turned", _cup(scene)),
        Body("seam", "along", seam, half_length),
        Body("sill", "along", _sill(scene), half_length),
    )


def _cup(scene: Scene) -> tuple[Point, ...]:
    """The cup's cross-section right of its axis, with its hole or its boss if it has one."""
    inside = [point for piece in cup_inside(scene) for point in _points(piece)]
    if scene.boss:
        inside = [(0.0, scene.boss_height), (scene.boss, scene.boss_height), (scene.boss, 0.0), *inside[1:]]
    outside = [(scene.rim, scene.depth), (scene.rim, scene.under)]
    if scene.hole and scene.hole_floor is None:
        floor = [(scene.hole, scene.under)]
    elif scene.hole and scene.hole_floor is not None:
        floor = [(0.0, scene.under), (0.0, scene.hole_floor), (scene.hole, scene.hole_floor)]
    else:
        floor = [(0.0, scene.under)]
    # Walked up the inside and down the outside it runs clockwise.
    return _without_repeats([*inside, *outside, *floor])[::-1]


def _sill(scene: Scene) -> tuple[Point, ...]:
    """The sheet above the seam, and what hangs lower on either side."""
    k, x, middle = scene.unit_mm, scene.step, scene.middle
    under = [(-scene.reach, scene.outboard), (middle - x - k, scene.outboard), (middle - x + k, scene.sill)]
    under += [(middle + x - k, scene.sill), (middle + x + k, scene.inboard), (scene.reach, scene.inboard)]
    over = [(across, level + _SILL_THICK * k) for across, level in reversed(under)]
    return _without_repeats([*under, *over])


def _face(scene: Scene) -> tuple[Point, ...]:
    """The car's underside with a little of the car above it; a hole in it is drawn out as a channel."""
    under = underside(scene)
    top = max(level for _, level in under) + _SILL_THICK * scene.unit_mm
    return _without_repeats([*under, (under[-1][0], top), (under[0][0], top)])


def _points(piece: Segment) -> Iterator[Point]:
    """Points along a piece, its end included; an arc turns the short way."""
    yield piece.start
    if isinstance(piece, Arc):
        (cx, cy), radius = piece.centre, hypot(piece.start[0] - piece.centre[0], piece.start[1] - piece.centre[1])
        first = atan2(piece.start[1] - cy, piece.start[0] - cx)
        sweep = (atan2(piece.end[1] - cy, piece.end[0] - cx) - first + pi) % (2 * pi) - pi
        for step in range(1, _ARC_STEPS):
            turn = first + sweep * step / _ARC_STEPS
            yield cx + radius * cos(turn), cy + radius * sin(turn)
    yield piece.end


def _without_repeats(points: list[Point]) -> tuple[Point, ...]:
    kept: list[Point] = []
    for point in points:
        if not kept or hypot(point[0] - kept[-1][0], point[1] - kept[-1][1]) > 1e-6:
            kept.append(point)
    return tuple(kept)
