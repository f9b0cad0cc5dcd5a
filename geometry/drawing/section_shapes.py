"""What stands in the section, as outlines in model mm: cup, pad, seam, sill and ground."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from geometry.drawing.section_scene import Scene
from geometry.outline import Arc, Outline, Point, corner, polyline, walked_back_mirrored
from geometry.profile import section_outline

Kind = Literal[
    "cut-steel",
    "cup-edge",
    "jack",
    "lowered",
    "pad",
    "paint",
    "seam",
    "sill",
    "ground",
    "car",
    "centre",
    "break",
    "hole-edge",
]


@dataclass(frozen=True, slots=True)
class Shape:
    """One outline and what it means."""

    kind: Kind
    outline: Outline
    is_closed: bool = False
    is_ghost: bool = False
    """Drawn faintly and dashed: still to be measured, or not yet sized."""
    width_mm: float = 0.0
    """Thickness of a sheet whose middle the outline is; 0 for a line."""


def shapes_of(scene: Scene) -> tuple[Shape, ...]:
    """Everything from the ground up, in the order in which it is drawn."""
    return (
        *_car(scene),
        *_jack(scene),
        *_cup(scene),
        Shape("pad", section_outline(scene.pad), is_closed=True, is_ghost=scene.pad_is_stand_in),
        *_paint(scene),
        *_sheets(scene),
        Shape("centre", polyline([(0, scene.ground), (0, scene.top - 2 * scene.unit_mm)])),
    )


def _jack(scene: Scene) -> Iterator[Shape]:
    """Ground, what carries the cup, and where the rim stands with the jack down."""
    k, known = scene.unit_mm, scene.known
    far = scene.reach + 6 * k
    is_ghost = known.edge_height_mm is None
    yield Shape("ground", polyline([(-far, scene.ground), (far, scene.ground)]), is_ghost=is_ghost)
    for x in (-0.45 * scene.rim, 0.45 * scene.rim):
        yield Shape("jack", polyline([(x, scene.under), (x, scene.ground)]))
    half = 0.45 * scene.rim + 5 * k
    for level in scene.breaks:
        aside = half / 2
        zigzag = [
            (-half, 0),
            (aside - 2 * k, 0),
            (aside - k, 2 * k),
            (aside + k, -2 * k),
            (aside + 2 * k, 0),
            (half, 0),
        ]
        yield Shape("break", polyline([(x, level + y) for x, y in zigzag]))
    if scene.rim_low is None:
        return
    is_ghost = known.rim_height_low_mm is None
    if scene.rim_low < scene.under:
        drop = min(5 * k, 0.3 * (scene.rim_low - scene.ground))
        corners = [(-scene.rim, -drop), (-scene.rim, 0), (scene.rim, 0), (scene.rim, -drop)]
        yield Shape("lowered", polyline([(x, scene.rim_low + y) for x, y in corners]), is_ghost=is_ghost)
    else:
        ends = [(-scene.rim - 8 * k, scene.rim_low), (-scene.rim - k, scene.rim_low)]
        yield Shape("lowered", polyline(ends), is_ghost=is_ghost)


def _car(scene: Scene) -> Iterator[Shape]:
    """The room that the car takes up above its lowest surfaces, cut off at the top of the picture."""
    k, x, top = scene.unit_mm, scene.step, scene.top - 6 * scene.unit_mm
    under = [(-scene.reach, scene.outboard), (-x - k, scene.outboard), (-x + k, scene.sill), (x - k, scene.sill)]
    corners = [(-scene.reach, top), *under, (x + k, scene.inboard), (scene.reach, scene.inboard), (scene.reach, top)]
    yield Shape("car", polyline(corners), is_closed=True)
    zigzag = [
        (-scene.reach - 2 * k, 0),
        (0.4 * x, 0),
        (0.4 * x + k, 2 * k),
        (0.4 * x + 3 * k, -2 * k),
        (0.4 * x + 4 * k, 0),
    ]
    yield Shape("break", polyline([(x, top + y) for x, y in [*zigzag, (scene.reach + 2 * k, 0)]]))


def cup_inside(scene: Scene) -> Outline:
    """The right half of the cup's inside, from the hole's edge or the middle out and up to the rim."""
    inside, radius = scene.bore, scene.corner
    return (
        *polyline([(scene.hole, 0), (inside - radius, 0)]),
        *corner((inside - radius, 0), (inside, radius), (inside - radius, radius)),
        *polyline([(inside, radius), (inside, scene.depth)]),
    )


def _cup(scene: Scene) -> Iterator[Shape]:
    """The cup cut through, hatched; edges that are not measured are dashed."""
    known, inner = scene.known, cup_inside(scene)
    is_ghost = known.cup_bore_mm is None or known.cup_depth_mm is None
    outside = polyline([(scene.bore, scene.depth), (scene.rim, scene.depth), (scene.rim, scene.under)])
    hole = _hole_side(scene)
    low = scene.hole if hole and scene.hole_floor is None else 0.0
    right = (*hole, *inner, *outside, *polyline([(scene.rim, scene.under), (low, scene.under)]))
    left = tuple(piece.mirrored() for piece in right)
    for half in [right, left] if low else [(*right, *walked_back_mirrored(right))]:
        yield Shape("cut-steel", half, is_closed=True, is_ghost=is_ghost)
    edges = (*hole, *inner, *polyline([(scene.bore, scene.depth), (scene.rim, scene.depth)]))
    for edge in (edges, tuple(piece.mirrored() for piece in edges)):
        yield Shape("cup-edge", edge, is_ghost=is_ghost)
    outer_is_ghost = is_ghost or known.rim_diameter_mm is None
    for side in (1, -1):
        outer: list[Point] = [
            (side * scene.rim, scene.depth),
            (side * scene.rim, scene.under),
            (side * low, scene.under),
        ]
        yield Shape("cup-edge", polyline(outer), is_ghost=outer_is_ghost)
    yield from _hole_beyond(scene)


def _hole_side(scene: Scene) -> Outline:
    """The right side of the stem hole, from the middle of its floor or from the cup's underside up."""
    if not scene.hole:
        return ()
    if scene.hole_floor is None:
        return polyline([(scene.hole, scene.under), (scene.hole, 0)])
    return polyline([(0, scene.hole_floor), (scene.hole, scene.hole_floor), (scene.hole, 0)])


def _hole_beyond(scene: Scene) -> Iterator[Shape]:
    """Edges of the hole seen beyond the cut, or where a hole would be measured if there is one."""
    if scene.hole:
        if scene.hole_floor is None:
            yield Shape("hole-edge", polyline([(-scene.hole, scene.under), (scene.hole, scene.under)]))
    elif not scene.known.is_complete:
        half = 0.2 * scene.bore
        for x in (-half, half):
            yield Shape("hole-edge", polyline([(x, 0), (x, scene.under)]), is_ghost=True)


def _paint(scene: Scene) -> Iterator[Shape]:
    coat = (scene.thickness - scene.bare) / 2
    if coat <= 0:
        return
    top = scene.sill - _bend(scene)
    for side in (-1, 1):
        near, far = side * scene.bare / 2, side * scene.thickness / 2
        corners: list[Point] = [(near, scene.edge), (far, scene.edge), (far, top), (near, top), (near, scene.edge)]
        yield Shape("paint", polyline(corners), is_closed=True, is_ghost=_seam_is_ghost(scene))


def _bend(scene: Scene) -> float:
    """Inside radius with which a sheet turns from the seam into the sill."""
    return min(2.5 * scene.unit_mm, 0.4 * (scene.sill - scene.edge))


def _seam_is_ghost(scene: Scene) -> bool:
    return scene.known.thickness_mm is None or scene.known.height_mm is None


def _sheets(scene: Scene) -> Iterator[Shape]:
    """The seam's sheets side by side, each turning into the sill on its own side."""
    outer = (scene.sheets + 1) // 2
    for side, count, level in ((-1, outer, scene.outboard), (1, scene.sheets - outer, scene.inboard)):
        for index in range(max(count, 1)):
            yield from _sheet(scene, side, index, level, stands=index < count)


def _sheet(scene: Scene, side: int, index: int, level: float, *, stands: bool) -> Iterator[Shape]:
    """One sheet: its straight part in the seam, and its way into the sill; only the outermost runs on to the side."""
    thin, is_ghost, k = scene.bare / scene.sheets, _seam_is_ghost(scene), scene.unit_mm
    x = scene.bare / 2 - thin * (index + 0.5) if stands else 0.0
    y = scene.sill + thin * (index + 0.5)
    bend = min(_bend(scene) + thin * (index + 0.5), y - scene.edge)
    if stands:
        yield _sided("seam", polyline([(x, scene.edge), (x, y - bend)]), side, thin, is_ghost)
        way: Outline = (Arc((x, y - bend), (x + bend, y), (x + bend, y - bend)),)
    else:
        way = polyline([(x, y), (x + bend, y)])
    start = x + bend
    if index:
        way = (*way, *polyline([(start, y), (max(start, 0.75 * scene.step), y)]))
    else:
        beside = level + thin / 2
        points: list[Point] = [(start, y), (max(start, scene.step - k), y), (max(start, scene.step) + k, beside)]
        points.append((scene.reach, beside))
        if side < 0:
            points.append((scene.reach, scene.top - 6 * k))
        way = (*way, *polyline(points))
    yield _sided("sill", way, side, thin, is_ghost)


def _sided(kind: Kind, outline: Outline, side: int, width_mm: float, is_ghost: bool) -> Shape:
    """The same on the left where ``side`` is negative."""
    turned = outline if side > 0 else tuple(piece.mirrored() for piece in outline)
    return Shape(kind, turned, is_ghost=is_ghost, width_mm=width_mm)
