"""What the pad looks like from its sides, as exact lines and arcs in model mm; the section's outline is the shared one."""

from itertools import pairwise
from math import atan2, degrees, hypot, sqrt, tan

from geometry import outline as outlines
from geometry import profile
from geometry.drawing.model import Arc, Area, Box, Curve, Layer, Line, Point, Shape, View
from geometry.pad import Pad

_CURVE_STEPS = 12
"""Points on a curve that is neither line nor arc; such curves are at most a corner's size."""
_NEARLY_MM = 1e-9


def section_view(pad: Pad, *, over_mm: float) -> View:
    """Across the slot, cut on the axis: x to the right, z up."""
    outline = profile.section_outline(pad)
    box = Box(-pad.body_diameter_mm / 2, -pad.stem_length_mm, pad.body_diameter_mm / 2, pad.top_height_mm)
    axis = Line((0, box.bottom - over_mm), (0, box.top + over_mm), Layer.CENTRE)
    lines = tuple(drawn(piece) for piece in outline if not _empty(piece))
    return View("section", (hatched(outline), *lines, axis), box)


def side_view(pad: Pad, *, over_mm: float, half: bool = False) -> View:
    """Along x, seeing the slot's length: y to the right, z up; a half view of a symmetrical part ends on its axis."""
    right = _side_right_half(pad)
    left = () if half else tuple(_mirrored(shape) for shape in right)
    radius, top = pad.body_diameter_mm / 2, pad.top_height_mm
    box = Box(0 if half else -radius, -pad.stem_length_mm, radius, top)
    axis = Line((0, box.bottom - over_mm), (0, top + over_mm), Layer.CENTRE)
    return View("side", (*right, *left, axis, *(_symmetry_marks(box, over_mm) if half else ())), box)


def _side_right_half(pad: Pad) -> tuple[Shape, ...]:
    """Right of the axis: the silhouette, the edges that end on it, and the hidden slot floor."""
    body, edge, lip, top = pad.body_diameter_mm / 2, pad.edge_chamfer_mm, pad.seat_length_mm, pad.top_height_mm
    # The pad's own rules keep the slot above the lip's chamfer, so that below it the turned profile is the outline.
    below = [p for p in profile.turned_outline(pad) if max(p.start[1], p.end[1]) <= lip + edge + _NEARLY_MM]
    low_edge = lip + edge
    side_points = _slot_zone_silhouette(pad)
    steps = [Line((body, low_edge), (body, pad.web_mm), Layer.VISIBLE)] if pad.web_mm > low_edge else []
    edges = [((0, lip), (body - edge, lip)), ((0, low_edge), (body, low_edge))] if edge else []
    high = (_silhouette_at(pad, top - edge), top - edge)
    edges += [((0, high[1]), high)] if edge else []
    edges += [((0, top), side_points[-1])]
    floor = Line((0, pad.web_mm), (side_points[1][0], pad.web_mm), Layer.HIDDEN)
    return (
        *(drawn(piece) for piece in below if not _empty(piece)),
        *steps,
        Curve(side_points, Layer.VISIBLE),
        *(Line(a, b, Layer.VISIBLE) for a, b in edges),
        floor,
    )


def _slot_zone_silhouette(pad: Pad) -> tuple[Point, ...]:
    """From the slot floor up, the widest point of what the slot leaves: √(ρ² − w²), its step at the floor first."""
    web, top = pad.web_mm, pad.top_height_mm
    corners = {web, web + pad.slot_corner_radius_mm, top - pad.slot_mouth_chamfer_mm, top - pad.edge_chamfer_mm, top}
    corners |= {pad.seat_length_mm + pad.edge_chamfer_mm}
    heights = sorted(z for z in corners if web <= z <= top)
    points: list[Point] = [(outermost_at(profile.turned_outline(pad), web), web)]
    for low, high in pairwise(heights):
        straight = low >= web + pad.slot_corner_radius_mm and high <= top - max(
            pad.slot_mouth_chamfer_mm, pad.edge_chamfer_mm
        )
        steps = 1 if straight else _CURVE_STEPS
        # Towards a fillet's foot the width runs off like a root: points crowd there.
        points += [(_silhouette_at(pad, z), z) for z in (low + (high - low) * (i / steps) ** 2 for i in range(steps))]
    return (*points, (_silhouette_at(pad, top), top))


def _silhouette_at(pad: Pad, z: float) -> float:
    half_width = outermost_at(profile.slot_outline(pad), z) if z >= pad.web_mm else 0.0
    return sqrt(outermost_at(profile.turned_outline(pad), z) ** 2 - half_width**2)


def outermost_at(outline: outlines.Outline, z: float) -> float:
    """Greatest distance from the axis that an outline reaches at a height."""
    reached = 0.0
    for piece in outline:
        low, high = sorted((piece.start[1], piece.end[1]))
        if not low - _NEARLY_MM <= z <= high + _NEARLY_MM:
            continue
        if isinstance(piece, outlines.Arc):
            (x, centre_z), radius = piece.centre, piece.radius_mm
            aside = sqrt(max(0.0, radius**2 - (z - centre_z) ** 2))
            reached = max(reached, x + aside if piece.middle[0] > x else x - aside)
        elif high - low < _NEARLY_MM:
            reached = max(reached, piece.start[0], piece.end[0])
        else:
            along = (z - piece.start[1]) / (piece.end[1] - piece.start[1])
            reached = max(reached, piece.start[0] + along * (piece.end[0] - piece.start[0]))
    return reached


def top_view(pad: Pad, *, over_mm: float) -> View:
    """From above: x to the right, y up the sheet along the slot."""
    body, rim = pad.body_diameter_mm / 2, pad.body_diameter_mm / 2 - pad.edge_chamfer_mm
    half, mouth = pad.slot_width_mm / 2, pad.slot_width_mm / 2 + pad.slot_mouth_chamfer_mm
    right: list[Shape] = [Line((half, -sqrt(body**2 - half**2)), (half, sqrt(body**2 - half**2)), Layer.VISIBLE)]
    corner_y = sqrt(rim**2 - mouth**2)
    if pad.slot_mouth_chamfer_mm:
        right += [Line((mouth, -corner_y), (mouth, corner_y), Layer.VISIBLE)]
        flare = tuple(_flare_point(pad, i / _CURVE_STEPS) for i in range(_CURVE_STEPS + 1))
        right += [Curve(flare, Layer.VISIBLE), Curve(tuple((x, -y) for x, y in flare), Layer.VISIBLE)]
    if pad.edge_chamfer_mm:
        turn = degrees(atan2(corner_y, mouth))
        right += [Arc((0, 0), rim, -turn, turn, Layer.VISIBLE)]
    circle = Arc((0, 0), body, 0, 360, Layer.VISIBLE)
    box = Box(-body, -body, body, body)
    return View("top", (circle, *right, *(_mirrored(shape) for shape in right), *_cross(body + over_mm)), box)


def _flare_point(pad: Pad, share: float) -> Point:
    """A point of the edge between mouth chamfer and the body's outside, from the wall (0) to the top (1)."""
    z = pad.top_height_mm - pad.slot_mouth_chamfer_mm * (1 - share)
    x = pad.slot_width_mm / 2 + pad.slot_mouth_chamfer_mm * share
    return x, sqrt(outermost_at(profile.turned_outline(pad), z) ** 2 - x**2)


def underside_view(pad: Pad, *, over_mm: float) -> View:
    """From below: stem, seat face, seat, lip face and body as circles; the slot is out of sight."""
    body = pad.body_diameter_mm / 2
    radii = {body, body - pad.edge_chamfer_mm, pad.seat_diameter_mm / 2}
    if pad.has_stem:
        radii.add(pad.stem_diameter_mm / 2)
    circles = tuple(Arc((0, 0), radius, 0, 360, Layer.VISIBLE) for radius in sorted(radii))
    # The edge where the corner radius runs out smoothly is an imaginary one: thin.
    tangent = (Arc((0, 0), pad.seat_flat_diameter_mm / 2, 0, 360, Layer.THIN),) if pad.seat_corner_radius_mm else ()
    return View("underside", (*circles, *tangent, *_cross(body + over_mm)), Box(-body, -body, body, body))


def hatched(outline: outlines.Outline) -> Area:
    """The closed outline as a region to hatch, its arcs kept exact."""
    pieces = [piece for piece in outline if not _empty(piece)]
    return Area(tuple(piece.start for piece in pieces), tuple(_bulge(piece) for piece in pieces))


def _bulge(piece: outlines.Segment) -> float:
    if isinstance(piece, outlines.Line):
        return 0.0
    turn = _turn(piece)
    return tan(turn / 4)


def _turn(arc: outlines.Arc) -> float:
    """Signed angle of an arc, anticlockwise positive, at most half a turn."""
    (ax, ay), (bx, by), (x, y) = arc.start, arc.end, arc.centre
    ux, uy, vx, vy = ax - x, ay - y, bx - x, by - y
    return atan2(ux * vy - uy * vx, ux * vx + uy * vy)


def drawn(piece: outlines.Segment) -> Line | Arc:
    """A piece of an outline as a visible line."""
    if isinstance(piece, outlines.Line):
        return Line(piece.start, piece.end, Layer.VISIBLE)
    first, last = (piece.start, piece.end) if _turn(piece) > 0 else (piece.end, piece.start)
    start, end = (degrees(atan2(y - piece.centre[1], x - piece.centre[0])) for x, y in (first, last))
    return Arc(piece.centre, piece.radius_mm, start, end if end > start else end + 360, Layer.VISIBLE)


def _empty(piece: outlines.Segment) -> bool:
    return hypot(piece.start[0] - piece.end[0], piece.start[1] - piece.end[1]) < _NEARLY_MM


def _mirrored(shape: Shape) -> Shape:
    """The shape on the other side of the upright axis."""
    match shape:
        case Line(start, end, layer):
            return Line((-start[0], start[1]), (-end[0], end[1]), layer)
        case Arc(centre, radius, start_deg, end_deg, layer):
            return Arc((-centre[0], centre[1]), radius, 180 - end_deg, 180 - start_deg, layer)
        case Curve(points, layer):
            return Curve(tuple((-x, y) for x, y in points), layer)
    return shape


def _cross(reach: float) -> tuple[Line, Line]:
    return Line((-reach, 0), (reach, 0), Layer.CENTRE), Line((0, -reach), (0, reach), Layer.CENTRE)


def _symmetry_marks(box: Box, over_mm: float) -> tuple[Line, ...]:
    """Two short thin strokes across each end of the axis of a half view, ISO 128-3."""
    length, gap = over_mm * 0.5, over_mm * 0.25
    heights = [box.top + over_mm * 0.5 + gap * i for i in (0, 1)] + [
        box.bottom - over_mm * 0.5 - gap * i for i in (0, 1)
    ]
    return tuple(Line((-length, z), (length, z), Layer.THIN) for z in heights)
