"""What stands in the section, as outlines in model mm: cup, pad, seam, sill and ground."""

from collections.abc import Iterator
from math import sqrt

from geometry.drawing.section_car import car, paint, sheets, thick_place
from geometry.drawing.section_faces import face
from geometry.drawing.section_scene import Scene
from geometry.drawing.section_shape import Shape
from geometry.outline import Outline, Point, corner, moved, polyline, walked_back_mirrored
from geometry.profile import section_outline


def shapes_of(scene: Scene) -> tuple[Shape, ...]:
    """Everything from the ground up, in the order in which it is drawn."""
    has_seam = scene.known.head == "slot"
    return (
        *(car(scene) if has_seam else face(scene)),
        *_jack(scene),
        *_cup(scene),
        *_boss(scene),
        Shape("pad", section_outline(scene.pad), is_closed=True, is_ghost=scene.pad_is_stand_in),
        *_pin_hole(scene),
        *_pad_beyond(scene),
        *((*thick_place(scene), *paint(scene), *sheets(scene)) if has_seam else ()),
        *_centres(scene),
    )


def _centres(scene: Scene) -> Iterator[Shape]:
    """The axis of cup and pad, and the middle of the seam where that is beside it."""
    top = scene.top - 2 * scene.unit_mm
    yield Shape("centre", polyline([(0, scene.ground), (0, top)]))
    if scene.middle:
        low = scene.edge - scene.hanging - 4 * scene.unit_mm
        yield Shape("centre", polyline([(scene.middle, low), (scene.middle, top)]))


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


def cup_inside(scene: Scene) -> Outline:
    """The right half of the cup's inside, from the hole's edge or the middle out and up to the rim."""
    inside, radius = scene.bore, scene.corner
    if not scene.is_in_a_bore:
        return polyline([(scene.hole, 0), (inside, 0)])
    return (
        *polyline([(scene.hole, 0), (inside - radius, 0)]),
        *corner((inside - radius, 0), (inside, radius), (inside - radius, radius)),
        *polyline([(inside, radius), (inside, scene.depth)]),
    )


def _cup(scene: Scene) -> Iterator[Shape]:
    """The cup cut through, hatched; edges that are not measured are dashed."""
    known, inner = scene.known, cup_inside(scene)
    is_ghost = any(known.value_of(key) is None for key in known.asked.balloons if key in known.needed_of_foot)
    top: list[Point] = [(scene.bore, scene.depth), (scene.rim, scene.depth)] if scene.is_in_a_bore else [(scene.rim, 0)]
    outside = polyline([*top, (scene.rim, scene.under)])
    hole = _hole_side(scene)
    low = scene.hole if hole and scene.hole_floor is None else 0.0
    right = (*hole, *inner, *outside, *polyline([(scene.rim, scene.under), (low, scene.under)]))
    left = tuple(piece.mirrored() for piece in right)
    for half in [right, left] if low else [(*right, *walked_back_mirrored(right))]:
        yield Shape("cut-steel", half, is_closed=True, is_ghost=is_ghost)
    edges = (*hole, *inner, *(polyline(top) if scene.is_in_a_bore else ()))
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


def _boss(scene: Scene) -> Iterator[Shape]:
    """What stands on the middle of the cup's floor, cut as the cup is."""
    half, high = scene.boss, scene.boss_height
    if half:
        corners: list[Point] = [(half, 0), (half, high), (-half, high), (-half, 0)]
        yield Shape("cut-steel", polyline([*corners, corners[0]]), is_closed=True)
        yield Shape("cup-edge", polyline(corners))


def _pin_hole(scene: Scene) -> Iterator[Shape]:
    """The retaining pin's hole, which runs across the picture: where the cut meets its upper and its lower side."""
    pad = scene.pad
    if pad.has_cross_hole:
        half, radius = pad.stem_diameter_mm / 2, pad.cross_hole_diameter_mm / 2
        for level in (radius - pad.cross_hole_distance_mm, -radius - pad.cross_hole_distance_mm):
            yield Shape("hole-edge", polyline([(-half, level), (half, level)]), is_ghost=scene.pad_is_stand_in)


def _pad_beyond(scene: Scene) -> Iterator[Shape]:
    """Edges of the pad seen beyond the cut, where a second slot or a pocket takes away what would hide them."""
    pad, is_ghost = scene.pad, scene.pad_is_stand_in
    slot, mouth, top = pad.slot_width_mm / 2, pad.slot_mouth_chamfer_mm, pad.body_top_mm
    wall: list[Point] = [(slot, pad.web_mm), (slot, top - mouth), (slot + mouth, top)]
    if pad.is_crossed:
        # Each post between the slots ends where the body's round, or a flat, meets the second slot's wall.
        far = min(scene.side, sqrt(scene.body**2 - (pad.cross_slot_width_mm / 2) ** 2))
        wall += [(far, top), (far, pad.web_mm)]
    elif pad.has_relief:
        wall += [(pad.relief_width_mm / 2, top)]
    else:
        return
    for side in (polyline(wall), tuple(piece.mirrored() for piece in polyline(wall))):
        yield Shape("hole-edge", moved(side, scene.middle), is_ghost=is_ghost)
    if pad.floor_is_open:
        yield Shape(
            "hole-edge", moved(polyline([(-slot, pad.web_mm), (slot, pad.web_mm)]), scene.middle), is_ghost=is_ghost
        )
