"""The pad's exact outlines: as turned, as cut on the axis, and of each thing that is cut in or stands on it.

The drawing and the solid play back the same outlines, so that they cannot disagree; no modelling kernel is needed here.
"""

from geometry.outline import (
    SAME_POINT_MM,
    Line,
    Outline,
    Point,
    corner,
    fillet_inset_mm,
    moved,
    polyline,
    rounded_rectangle,
    walked_back_mirrored,
)
from geometry.pad import Pad


def turned_outline(pad: Pad) -> Outline:
    """The lathe's profile in (r, z), open along the axis: from the foot out, up, and in to the top.

    A plug that is not round is not turned: the profile then ends on its shoulder.
    """
    flank = (*_foot(pad, to_mm=-pad.stem_length_mm), *polyline([_lip(pad), *_body_side(pad)]))
    plug = _plug_side(pad) if pad.plug_is_round else []
    last = plug[-1] if plug else _rim(pad)
    return (*flank, *polyline([_rim(pad), *plug]), Line(last, (0, last[1])))


def slot_outline(pad: Pad) -> Outline:
    """The slot's profile in (x, z), open at the top: from the left mouth edge down, across the floor and up again."""
    return moved(_groove(pad, pad.slot_width_mm), pad.slot_offset_mm)


def cross_slot_outline(pad: Pad) -> Outline:
    """The second slot's profile in (y, z), walked as the first one's."""
    return _groove(pad, pad.cross_slot_width_mm)


def relief_outline(pad: Pad) -> Outline:
    """The relief as seen from above, in (x, y), closed and anticlockwise."""
    size = (pad.relief_width_mm / 2, pad.relief_length_mm / 2)
    return moved(rounded_rectangle(*size, pad.relief_corner_radius_mm), pad.slot_offset_mm)


def plug_outline(pad: Pad) -> Outline:
    """The plug as seen from above, in (x, y), closed and anticlockwise."""
    return rounded_rectangle(pad.plug_width_mm / 2, pad.plug_length_mm / 2, pad.plug_corner_radius_mm)


def section_outline(pad: Pad) -> Outline:
    """The closed outline in (x, z) of a cut on the axis, across the slot, anticlockwise from the foot's centre.

    A cross-hole would cut the stem in two and is left out; :func:`section_outlines` has it.
    """
    return _section(pad, foot_mm=-pad.stem_length_mm)


def section_outlines(pad: Pad) -> tuple[Outline, ...]:
    """What the cut on the axis really shows: one closed outline, and the end of the stem where a cross-hole parts it."""
    if not pad.has_cross_hole:
        return (section_outline(pad),)
    radius, stem = pad.cross_hole_diameter_mm / 2, pad.stem_diameter_mm / 2
    low, high = -pad.cross_hole_distance_mm - radius, -pad.cross_hole_distance_mm + radius
    foot = -pad.stem_length_mm
    end = polyline([(-stem, foot), (stem, foot), (stem, low), (-stem, low), (-stem, foot)])
    return _section(pad, foot_mm=high), end


def _section(pad: Pad, *, foot_mm: float) -> Outline:
    """The cut on the axis with the stem's end at a level of its own."""
    side = _flat_side(pad) if pad.has_flats else _body_side(pad)
    side = _up_to(side, pad.web_mm) if pad.is_crossed else side
    if pad.has_plug:
        side = [*side, *_plug_side(pad)]
    right = (*_foot(pad, to_mm=foot_mm), *polyline([_lip(pad), *side]))
    last, left = side[-1], (-side[-1][0], side[-1][1])
    # A second slot runs along the cut and takes everything down to its floor.
    cut = _cut_in_the_middle(pad) if pad.has_slot and not pad.is_crossed else ()
    back = tuple(piece.reversed() for piece in reversed(cut))
    top = (Line(last, back[0].start), *back, Line(back[-1].end, left)) if back else (Line(last, left),)
    return (*right, *top, *walked_back_mirrored(right))


def _cut_in_the_middle(pad: Pad) -> Outline:
    """The slot's profile as widened by the relief."""
    if not pad.has_relief:
        return slot_outline(pad)
    half, floor, top = pad.relief_width_mm / 2, pad.body_top_mm - pad.relief_depth_mm, pad.body_top_mm
    wall, radius, web = pad.slot_width_mm / 2, pad.slot_corner_radius_mm, pad.web_mm
    if floor <= web + SAME_POINT_MM:
        whole = polyline([(-half, top), (-half, floor), (half, floor), (half, top)])
        return moved(whole, pad.slot_offset_mm)
    # The relief's floor may meet the slot's wall within the wall's foot radius.
    rise = min(radius, floor - web)
    meets = (wall - fillet_inset_mm(radius, rise), web + rise)
    right = (
        *corner((wall - radius, web), meets, (wall - radius, web + radius)),
        *polyline([meets, (meets[0], floor), (half, floor), (half, top)]),
    )
    whole = (*walked_back_mirrored(right), *polyline([(radius - wall, web), (wall - radius, web)]), *right)
    return moved(whole, pad.slot_offset_mm)


def _groove(pad: Pad, width_mm: float) -> Outline:
    """The profile of either slot, in its own middle."""
    half, radius, mouth = width_mm / 2, pad.slot_corner_radius_mm, pad.slot_mouth_chamfer_mm
    floor, top = pad.web_mm, pad.body_top_mm
    right = (
        *corner((half - radius, floor), (half, floor + radius), (half - radius, floor + radius)),
        *polyline([(half, floor + radius), (half, top - mouth), (half + mouth, top)]),
    )
    return (*walked_back_mirrored(right), *polyline([(radius - half, floor), (half - radius, floor)]), *right)


def _foot(pad: Pad, *, to_mm: float) -> Outline:
    """Stem or recess, seat face and seat, from the axis to the lip face."""
    seat, radius, stem = pad.seat_diameter_mm / 2, pad.seat_corner_radius_mm, pad.stem_diameter_mm / 2
    recess, depth = pad.seat_recess_diameter_mm / 2, pad.seat_recess_depth_mm
    inside: list[Point] = [(0, 0)]
    if pad.has_stem:
        inside = [(0, to_mm), (stem, to_mm), (stem, 0)]
    elif pad.has_recess:
        inside = [(0, depth), (recess, depth), (recess, 0)]
    return (
        *polyline([*inside, (seat - radius, 0)]),
        *corner((seat - radius, 0), (seat, radius), (seat - radius, radius)),
        *polyline([(seat, radius), _lip(pad)]),
    )


def _lip(pad: Pad) -> Point:
    """Where the seat ends on the lip face."""
    return pad.seat_diameter_mm / 2, pad.seat_length_mm


def _body_side(pad: Pad) -> list[Point]:
    """From the lip face to the outermost point of the top, around a skirt."""
    body, edge, low, top = pad.body_diameter_mm / 2, pad.edge_chamfer_mm, pad.foot_bottom_mm, pad.body_top_mm
    return [*_skirt_bore(pad), (body - edge, low), (body, low + edge), (body, top - edge), _rim(pad)]


def _flat_side(pad: Pad) -> list[Point]:
    """The same where a flat is: it takes the chamfers away."""
    half = pad.flats_width_mm / 2
    return [*_skirt_bore(pad), (half, pad.foot_bottom_mm), (half, pad.body_top_mm)]


def _skirt_bore(pad: Pad) -> list[Point]:
    bore = pad.skirt_bore_mm / 2
    return [(bore, pad.seat_length_mm), (bore, pad.foot_bottom_mm)] if pad.has_skirt else []


def _plug_side(pad: Pad) -> list[Point]:
    """From the shoulder to the outermost point of the plug's top."""
    half, edge, top = pad.plug_width_mm / 2, pad.edge_chamfer_mm, pad.top_height_mm
    return [(half, pad.web_mm), (half, top - edge), (half - edge, top)]


def _up_to(side: list[Point], level: float) -> list[Point]:
    """A side that only rises towards its end, cut off at a level."""
    below = [point for point in side if point[1] < level]
    (x0, z0), (x1, z1) = below[-1], side[len(below)]
    return [*below, (x0 + (x1 - x0) * (level - z0) / (z1 - z0), level)]


def _rim(pad: Pad) -> Point:
    """The outermost point of the body's top face."""
    return pad.body_diameter_mm / 2 - pad.edge_chamfer_mm, pad.body_top_mm
