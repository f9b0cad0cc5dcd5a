"""The section, and what all views are made with: exact lines and arcs in model mm; the outlines are the shared ones."""

from collections.abc import Iterator
from functools import lru_cache
from itertools import pairwise
from math import atan2, cos, degrees, hypot, inf, pi, sqrt, tan

from geometry import outline as outlines
from geometry import profile
from geometry.drawing.main_plan import half_body
from geometry.drawing.model import Arc, Area, Box, Curve, Layer, Line, Point, Shape, View
from geometry.pad import Pad

_CURVE_STEPS = 12
"""Points on a curve that is neither line nor arc; such curves are at most a corner's size."""
_PIECE_STEPS = 48
"""Points on an arc that is drawn as a curve."""
_NEARLY_MM = 1e-9


@lru_cache(maxsize=64)
def section_view(pad: Pad, *, over_mm: float, apart_mm: float = 0.0, inner_edges: bool = True) -> View:
    """Across the slot, cut on the axis: x to the right, z up.

    The axis ends below a slot or pocket whose wall is nearer beside it than ``apart_mm``. Without ``inner_edges`` a chamfer
    behind the cut has its outer edge alone: on paper the two would run into one line.
    """
    cut_outlines = profile.section_outlines(pad)
    body, top = half_body(pad), pad.top_height_mm
    box = Box(-body, -pad.foot_depth_mm, body, top)
    high = top + over_mm
    if wall_is_beside_axis(pad, apart_mm):
        high = min(pad.web_mm, pad.body_top_mm - pad.relief_depth_mm)
    axes = [Line((0, box.bottom - over_mm), (0, high), Layer.CENTRE)]
    if pad.slot_offset_mm:
        x = pad.slot_offset_mm
        axes.append(Line((x, pad.web_mm - over_mm), (x, top + over_mm), Layer.CENTRE))
    if pad.has_cross_hole:
        out, level = pad.stem_diameter_mm / 2 + over_mm, -pad.cross_hole_distance_mm
        axes.append(Line((-out, level), (out, level), Layer.CENTRE))
    cut = tuple(drawn(piece) for outline in cut_outlines for piece in outline if not empty(piece))
    return View(
        "section", (*map(hatched, cut_outlines), *cut, *_behind_the_cut(pad, inner_edges=inner_edges), *axes), box
    )


def wall_is_beside_axis(pad: Pad, apart_mm: float) -> bool:
    """Whether a wall of a slot off the axis, or of its pocket, is so near the axis that the two would look like one line."""
    halves = [pad.slot_width_mm / 2] if pad.slot_offset_mm else []
    halves += [pad.relief_width_mm / 2] if halves and pad.has_relief else []
    return any(abs(abs(pad.slot_offset_mm) - half) < apart_mm for half in halves)


def _behind_the_cut(pad: Pad, *, inner_edges: bool) -> Iterator[Shape]:
    """What can be seen behind the cut in its openings."""
    if pad.has_recess:
        yield _level(pad.seat_recess_diameter_mm / 2, 0.0)
    if pad.has_skirt:
        yield from _skirts_edge(pad)
    if pad.has_cross_hole:
        yield from _hole_edges(pad)
    if pad.opens_the_section:
        yield from slot_beyond(pad, inner_edges=inner_edges)


def _level(half: float, z: float) -> Line:
    return Line((-half, z), (half, z), Layer.VISIBLE)


def _skirts_edge(pad: Pad) -> Iterator[Line]:
    """The far edge of the skirt's bore, to where the seat or the stem stands before it."""
    bore, low = pad.skirt_bore_mm / 2, pad.foot_bottom_mm
    if low > 0:
        inset = outlines.fillet_inset_mm(pad.seat_corner_radius_mm, low)
        before = pad.seat_diameter_mm / 2 - inset
    else:
        before = pad.stem_diameter_mm / 2 if -low < pad.stem_length_mm else 0.0
    for way in (1, -1):
        yield Line((way * before, low), (way * bore, low), Layer.VISIBLE)


def _hole_edges(pad: Pad) -> Iterator[Curve]:
    """Where the cross-hole breaks out of the round stem, on both sides."""
    stem, radius, z = pad.stem_diameter_mm / 2, pad.cross_hole_diameter_mm / 2, -pad.cross_hole_distance_mm
    heights = [radius * cos(pi * i / (4 * _CURVE_STEPS)) for i in range(4 * _CURVE_STEPS + 1)]
    points = tuple((sqrt(stem**2 - radius**2 + t**2), z + t) for t in heights)
    yield Curve(points, Layer.VISIBLE)
    yield Curve(tuple((-x, y) for x, y in points), Layer.VISIBLE)


def slot_beyond(pad: Pad, *, inner_edges: bool = True) -> Iterator[Shape]:
    """The end wall of a second slot or a relief behind the cut, with the first slot in it."""
    floor = pad.web_mm if pad.is_crossed else pad.body_top_mm - pad.relief_depth_mm
    for piece in profile.slot_outline(pad):
        lower = min(piece.start[1], piece.end[1])
        if (
            not empty(piece)
            and lower >= floor - _NEARLY_MM
            and (pad.is_crossed or lower > floor + _NEARLY_MM or floor < pad.web_mm)
        ):
            yield drawn(piece)
    top, mouth, offset = pad.body_top_mm, pad.slot_width_mm / 2 + pad.slot_mouth_chamfer_mm, pad.slot_offset_mm
    if pad.has_relief:
        half = pad.relief_width_mm / 2
        for way in (1, -1):
            yield Line((offset + way * mouth, top), (offset + way * half, top), Layer.VISIBLE)
            wall = pad.slot_width_mm / 2
            if floor > pad.web_mm:
                yield Line(
                    (offset + way * wall, floor), (offset + way * wall, top - pad.slot_mouth_chamfer_mm), Layer.VISIBLE
                )
        return
    yield from _quarter_beyond(pad, mouth, inner_edges=inner_edges)


def _quarter_beyond(pad: Pad, mouth: float, *, inner_edges: bool) -> Iterator[Shape]:
    """The outside of what a second slot leaves standing behind the cut."""
    across, edge, top = pad.cross_slot_width_mm / 2, pad.slot_mouth_chamfer_mm, pad.body_top_mm
    turned = profile.turned_outline(pad)
    levels = sorted({pad.web_mm, pad.web_mm + pad.slot_corner_radius_mm, top - edge, top - pad.edge_chamfer_mm, top})
    heights = [a + (b - a) * (i / _CURVE_STEPS) ** 2 for a, b in pairwise(levels) for i in range(_CURVE_STEPS)] + [top]
    groove = profile.cross_slot_outline(pad)
    most = pad.flats_width_mm / 2 if pad.has_flats else inf
    side = tuple(
        (min(most, sqrt(outermost_at(turned, z) ** 2 - min(across + edge, outermost_at(groove, z)) ** 2)), z)
        for z in heights
        if z >= pad.web_mm
    )
    for way in (1, -1):
        yield Curve(tuple((way * x, z) for x, z in side), Layer.VISIBLE)
        yield Line((way * mouth, top), (way * side[-1][0], top), Layer.VISIBLE)
        if edge and inner_edges:
            reach = next(x for x, z in side if abs(z - (top - edge)) < 1e-9)
            yield Line((way * pad.slot_width_mm / 2, top - edge), (way * reach, top - edge), Layer.VISIBLE)


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


def hatched(outline: outlines.Outline) -> Area:
    """The closed outline as a region to hatch, its arcs kept exact."""
    pieces = [piece for piece in outline if not empty(piece)]
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


def drawn(piece: outlines.Segment, layer: Layer = Layer.VISIBLE) -> Line | Arc:
    """A piece of an outline as a line, visible unless told otherwise."""
    if isinstance(piece, outlines.Line):
        return Line(piece.start, piece.end, layer)
    first, last = (piece.start, piece.end) if _turn(piece) > 0 else (piece.end, piece.start)
    start, end = (degrees(atan2(y - piece.centre[1], x - piece.centre[0])) for x, y in (first, last))
    return Arc(piece.centre, piece.radius_mm, start, end if end > start else end + 360, layer)


def along(piece: outlines.Segment) -> list[Point]:
    """A piece as points, its ends among them."""
    (ax, az), (bx, bz) = piece.start, piece.end
    shares = [i / _PIECE_STEPS for i in range(_PIECE_STEPS + 1)]
    chord = [(ax + (bx - ax) * share, az + (bz - az) * share) for share in shares]
    if isinstance(piece, outlines.Line):
        return chord
    cx, cz = piece.centre
    scales = [piece.radius_mm / hypot(x - cx, z - cz) for x, z in chord]
    return [(cx + (x - cx) * k, cz + (z - cz) * k) for (x, z), k in zip(chord, scales, strict=True)]


def empty(piece: outlines.Segment) -> bool:
    """Whether a piece is only a point, as where a radius is 0."""
    return hypot(piece.start[0] - piece.end[0], piece.start[1] - piece.end[1]) < _NEARLY_MM


def mirrored(shape: Shape) -> Shape:
    """The shape on the other side of the upright axis."""
    match shape:
        case Line(start, end, layer):
            return Line((-start[0], start[1]), (-end[0], end[1]), layer)
        case Arc(centre, radius, start_deg, end_deg, layer):
            return Arc((-centre[0], centre[1]), radius, 180 - end_deg, 180 - start_deg, layer)
        case Curve(points, layer):
            return Curve(tuple((-x, y) for x, y in points), layer)
    return shape


def cross(reach: float) -> tuple[Line, Line]:
    """Both centre lines of a round view."""
    return Line((-reach, 0), (reach, 0), Layer.CENTRE), Line((0, -reach), (0, reach), Layer.CENTRE)


def symmetry_marks(box: Box, over_mm: float) -> tuple[Line, ...]:
    """Two short thin strokes across each end of the axis of a half view, ISO 128-3."""
    length, gap = over_mm * 0.5, over_mm * 0.25
    heights = [box.top + over_mm * 0.5 + gap * i for i in (0, 1)] + [
        box.bottom - over_mm * 0.5 - gap * i for i in (0, 1)
    ]
    return tuple(Line((-length, z), (length, z), Layer.THIN) for z in heights)
