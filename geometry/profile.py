"""The pad's exact outlines, and what follows from them in closed form: areas, volume, balance point.

The drawing and the solid play back the same outlines, so that they cannot disagree; no modelling kernel is needed here.
"""

from collections.abc import Callable
from itertools import pairwise
from math import asin, cos, pi, sqrt

from geometry.outline import Line, Outline, Point, corner, moved, polyline, rounded_rectangle, walked_back_mirrored
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
    if floor <= web:
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


def fillet_inset_mm(radius: float, height: float) -> float:
    """How far a rounded corner stands back from its straight side, at a height above the corner's foot."""
    below = max(0.0, radius - height)
    return radius - sqrt(max(0.0, radius**2 - below**2))


def strip_in_disc_mm2(*, radius_mm: float, half_width_mm: float) -> float:
    r"""
    Area of the part of a disc that lies within a strip through its centre.

    .. math:: A = 2\left[w\sqrt{\rho^2-w^2} + \rho^2\arcsin(w/\rho)\right]

    Parameters
    ----------
    radius_mm : float
        Radius of the disc, ρ, [mm]
    half_width_mm : float
        Half the width of the strip, w, [mm]

    Returns
    -------
    area : float
        Area, [mm^2]

    Notes
    -----
    A strip wider than the disc takes all of it. Derived: twice the integral of the chord from 0 to w.

    Examples
    --------
    A strip as wide as the disc is the whole disc, π · 10².

    >>> round(strip_in_disc_mm2(radius_mm=10, half_width_mm=10), 9)
    314.159265359

    References
    ----------
    Plain geometry.
    """
    half = min(half_width_mm, radius_mm)
    return 2 * (half * sqrt(radius_mm**2 - half**2) + radius_mm**2 * asin(half / radius_mm))


def cross_section_area_mm2(pad: Pad, z_mm: float) -> float:
    r"""
    Area of the pad's level cut at a height: the turned disc less the slot's strip.

    .. math:: A(z) = \pi\rho(z)^2 - A_\text{strip}(\rho(z), w(z))

    Parameters
    ----------
    pad : Pad
        The pad, [mm]
    z_mm : float
        Height above the seat face, [mm]

    Returns
    -------
    area : float
        Area, 0 below the foot and above the walls, [mm^2]

    Notes
    -----
    On a shoulder the cut just above it counts.

    Examples
    --------
    Half way up a plain seat 60 mm across the cut is a disc, π · 30².

    >>> pad = Pad(seat_diameter_mm=60, seat_length_mm=12, seat_corner_radius_mm=2, stem_diameter_mm=0, stem_length_mm=0,
    ...     body_diameter_mm=74, slot_width_mm=9, slot_depth_mm=15, web_mm=20, slot_corner_radius_mm=0.5,
    ...     slot_mouth_chamfer_mm=1, edge_chamfer_mm=1)
    >>> round(cross_section_area_mm2(pad, 6), 6)
    2827.433388

    References
    ----------
    Plain geometry.
    """
    radius = _turned_radius_mm(pad, z_mm)
    if radius == 0:
        return 0.0
    return pi * radius**2 - strip_in_disc_mm2(radius_mm=radius, half_width_mm=_slot_half_width_mm(pad, z_mm))


def volume_mm3(pad: Pad) -> float:
    r"""
    Volume of the pad.

    .. math:: V = \int A(z)\,dz

    Parameters
    ----------
    pad : Pad
        The pad, [mm]

    Returns
    -------
    volume : float
        Volume, [mm^3]

    Notes
    -----
    Gauss-Legendre quadrature of the closed-form area between its corners; better than 1e-9 of the volume.

    Examples
    --------
    Without radii, chamfers and stem, and with a slot next to nothing wide, two cylinders remain:
    π · (30² · 12 + 37² · 23).

    >>> pad = Pad(seat_diameter_mm=60, seat_length_mm=12, seat_corner_radius_mm=0, stem_diameter_mm=0, stem_length_mm=0,
    ...     body_diameter_mm=74, slot_width_mm=1e-9, slot_depth_mm=15, web_mm=20, slot_corner_radius_mm=0,
    ...     slot_mouth_chamfer_mm=0, edge_chamfer_mm=0)
    >>> round(volume_mm3(pad), 4)
    132848.5285

    References
    ----------
    Plain geometry.
    """
    return _integral(pad, lambda z: cross_section_area_mm2(pad, z))


def balance_height_mm(pad: Pad) -> float:
    r"""
    Height of the pad's centre of gravity above its seat face; it lies on the axis.

    .. math:: \bar z = \frac{1}{V}\int z A(z)\,dz

    Parameters
    ----------
    pad : Pad
        The pad, [mm]

    Returns
    -------
    height : float
        Height, [mm]

    Examples
    --------
    Two cylinders as in :func:`volume_mm3`: (30² · 12 · 6 + 37² · 23 · 23.5)/(30² · 12 + 37² · 23).

    >>> pad = Pad(seat_diameter_mm=60, seat_length_mm=12, seat_corner_radius_mm=0, stem_diameter_mm=0, stem_length_mm=0,
    ...     body_diameter_mm=74, slot_width_mm=1e-9, slot_depth_mm=15, web_mm=20, slot_corner_radius_mm=0,
    ...     slot_mouth_chamfer_mm=0, edge_chamfer_mm=0)
    >>> round(balance_height_mm(pad), 6)
    19.030541

    References
    ----------
    Plain geometry.
    """
    return _integral(pad, lambda z: z * cross_section_area_mm2(pad, z)) / volume_mm3(pad)


def slot_floor_area_mm2(pad: Pad) -> float:
    """
    Area of the slot's flat floor, between its corner radii.

    Parameters
    ----------
    pad : Pad
        The pad, [mm]

    Returns
    -------
    area : float
        Area, [mm^2]

    Examples
    --------
    A floor 8 mm wide in a body 74 mm across is a little less than 8 · 74 = 592 mm².

    >>> pad = Pad(seat_diameter_mm=60, seat_length_mm=12, seat_corner_radius_mm=2, stem_diameter_mm=0, stem_length_mm=0,
    ...     body_diameter_mm=74, slot_width_mm=9, slot_depth_mm=15, web_mm=20, slot_corner_radius_mm=0.5,
    ...     slot_mouth_chamfer_mm=1, edge_chamfer_mm=1)
    >>> round(slot_floor_area_mm2(pad), 2)
    590.84
    """
    half = pad.slot_width_mm / 2 - pad.slot_corner_radius_mm
    return strip_in_disc_mm2(radius_mm=_turned_radius_mm(pad, pad.web_mm), half_width_mm=half)


def _turned_radius_mm(pad: Pad, z: float) -> float:
    """Radius of the turned body at a height; 0 outside it."""
    seat, body = pad.seat_diameter_mm / 2, pad.body_diameter_mm / 2
    if z < -pad.stem_length_mm or z > pad.top_height_mm:
        return 0.0
    if z < 0:
        return pad.stem_diameter_mm / 2
    if z < pad.seat_length_mm:
        return seat - fillet_inset_mm(pad.seat_corner_radius_mm, z)
    edge = pad.edge_chamfer_mm
    return body - max(0.0, edge - (z - pad.seat_length_mm), edge - (pad.top_height_mm - z))


def _slot_half_width_mm(pad: Pad, z: float) -> float:
    """Half the slot's width at a height; 0 below its floor."""
    if z < pad.web_mm:
        return 0.0
    flare = max(0.0, pad.slot_mouth_chamfer_mm - (pad.top_height_mm - z))
    return pad.slot_width_mm / 2 - fillet_inset_mm(pad.slot_corner_radius_mm, z - pad.web_mm) + flare


def _integral(pad: Pad, function: Callable[[float], float]) -> float:
    """Integrate over the pad's height.

    Between two corners of the outline the area is smooth but for a square root where a fillet starts;
    z = start + span t² takes it away.
    """
    total = 0.0
    for start, end in pairwise(_corner_heights_mm(pad)):
        span = end - start
        total += span * sum(weight * 2 * t * function(start + span * t * t) for t, weight in _GAUSS)
    return total


def _corner_heights_mm(pad: Pad) -> list[float]:
    """Every height where the area's formula changes, from the foot up."""
    lip, web, top, edge = pad.seat_length_mm, pad.web_mm, pad.top_height_mm, pad.edge_chamfer_mm
    heights = {-pad.stem_length_mm, 0.0, pad.seat_corner_radius_mm, lip, lip + edge, top - edge, top}
    return sorted(heights | {web, web + pad.slot_corner_radius_mm, top - pad.slot_mouth_chamfer_mm})


def _gauss_legendre(count: int) -> tuple[tuple[float, float], ...]:
    """Nodes and weights on 0 to 1: roots of the Legendre polynomial by Newton's method [recomputed: NumPy's table]."""
    nodes = []
    for i in range(count):
        x = cos(pi * (i + 0.75) / (count + 0.5))
        for _ in range(8):
            low, high = 1.0, x
            for k in range(2, count + 1):
                low, high = high, ((2 * k - 1) * x * high - (k - 1) * low) / k
            slope = count * (x * high - low) / (x * x - 1)
            x -= high / slope
        nodes.append(((1 + x) / 2, 1 / ((1 - x * x) * slope * slope)))
    return tuple(nodes)


_GAUSS = _gauss_legendre(16)
