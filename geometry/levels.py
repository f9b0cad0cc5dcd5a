"""The pad's level cut: how wide it is at a height, and the area that it shows there, in closed form."""

from math import asin, inf, pi, sqrt

from geometry.outline import fillet_inset_mm
from geometry.pad import Pad


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
    Area of the pad's level cut at a height: the turned disc less what is cut there.

    .. math:: A(z) = \int_{-X}^{X} \left(2\sqrt{\rho(z)^2-x^2} - t(x, z)\right) dx

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
    ρ is the turned radius, X half the width across the flats, t what slots and relief take of the chord at x; each piece
    has its antiderivative. On a shoulder the cut just above it counts.

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
    if z_mm < -pad.foot_depth_mm or z_mm > pad.top_height_mm:
        return 0.0
    if pad.has_plug and z_mm >= pad.web_mm:
        return _plug_area_mm2(pad, z_mm)
    if z_mm >= pad.seat_length_mm:
        return _body_area_mm2(pad, z_mm) - _recess_area_mm2(pad, z_mm)
    return _foot_area_mm2(pad, z_mm) + _skirt_area_mm2(pad, z_mm)


def body_radius_mm(pad: Pad, z: float) -> float:
    """Radius of the turned body, or of its skirt, at a height within it, as chamfered at both ends."""
    edge = pad.edge_chamfer_mm
    return pad.body_diameter_mm / 2 - max(0.0, edge - (z - pad.foot_bottom_mm), edge - (pad.body_top_mm - z))


def seat_radius_mm(pad: Pad, z: float) -> float:
    """Radius of the seat at a height within it, its lower corner rounded."""
    return pad.seat_diameter_mm / 2 - fillet_inset_mm(pad.seat_corner_radius_mm, z)


def half_flats_mm(pad: Pad) -> float:
    """How far the flats stand off the axis; without end where there are none."""
    return pad.flats_width_mm / 2 if pad.has_flats else inf


def slot_half_width_mm(pad: Pad, z: float, width_mm: float) -> float:
    """Half the width at a height of a slot that is so wide between its walls; 0 below its floor, and of no slot."""
    if z < pad.web_mm or width_mm == 0:
        return 0.0
    flare = max(0.0, pad.slot_mouth_chamfer_mm - (pad.body_top_mm - z))
    return width_mm / 2 - fillet_inset_mm(pad.slot_corner_radius_mm, z - pad.web_mm) + flare


def relief_within_mm2(pad: Pad, half_width_mm: float) -> float:
    """Area of the relief, seen from above, within so much on both sides of the slot's middle."""
    half, length, radius = pad.relief_width_mm / 2, pad.relief_length_mm, pad.relief_corner_radius_mm
    reach = min(half_width_mm, half)
    straight = min(reach, half - radius)
    into = min(reach - straight, radius)
    corner = into * sqrt(radius**2 - into**2) + radius**2 * asin(into / radius) if into > 0 else 0.0
    return 2 * (length * straight + (length - 2 * radius) * into + corner)


def relief_aside_mm2(pad: Pad, z: float) -> float:
    """Area that the relief takes at a height beside the slot, both sides together."""
    if not pad.has_relief or z < pad.body_top_mm - pad.relief_depth_mm:
        return 0.0
    return relief_within_mm2(pad, inf) - relief_within_mm2(pad, slot_half_width_mm(pad, z, pad.slot_width_mm))


def _body_area_mm2(pad: Pad, z: float) -> float:
    """The body less flats, slots and relief; what is cut in for the foot is not its business."""
    radius, half = body_radius_mm(pad, z), slot_half_width_mm(pad, z, pad.slot_width_mm)
    taken = _strip_aside_mm2(radius, pad.slot_offset_mm, half) + relief_aside_mm2(pad, z)
    if pad.is_crossed:
        cross = slot_half_width_mm(pad, z, pad.cross_slot_width_mm)
        # The square where both slots cross is taken once.
        taken += _cross_strip_mm2(radius, half_flats_mm(pad), cross) - 4 * half * cross
    return _between_flats_mm2(pad, radius) - taken


def _between_flats_mm2(pad: Pad, radius: float) -> float:
    """A disc, or what the flats leave of it."""
    if pad.has_flats:
        return strip_in_disc_mm2(radius_mm=radius, half_width_mm=pad.flats_width_mm / 2)
    return pi * radius**2


def _strip_aside_mm2(radius: float, offset: float, half: float) -> float:
    """Area of a strip of a disc whose middle is so far off the disc's: the strip to its outer side less that to its inner."""
    if offset == 0:
        return strip_in_disc_mm2(radius_mm=radius, half_width_mm=half)
    return (_up_to_mm2(radius, offset + half) - _up_to_mm2(radius, offset - half)) / 2


def _up_to_mm2(radius: float, x: float) -> float:
    """Twice the area of a disc from its middle to so far aside, counted backwards on the other side."""
    area = strip_in_disc_mm2(radius_mm=radius, half_width_mm=abs(x))
    return area if x >= 0 else -area


def _cross_strip_mm2(radius: float, half_flats: float, half: float) -> float:
    """Area of a strip across the flats: a rectangle as far as it reaches, whole chords beyond."""
    corner = sqrt(max(0.0, radius**2 - half**2))
    if half_flats <= corner:
        return 4 * half_flats * half
    return 4 * corner * half + _up_to_mm2(radius, half_flats) - _up_to_mm2(radius, corner)


def _foot_area_mm2(pad: Pad, z: float) -> float:
    """Seat or stem at a height below the lip face."""
    if z >= 0:
        return pi * seat_radius_mm(pad, z) ** 2 - _recess_area_mm2(pad, z)
    if z < -pad.stem_length_mm:
        return 0.0
    radius, hole = pad.stem_diameter_mm / 2, pad.cross_hole_diameter_mm / 2
    across = sqrt(max(0.0, hole**2 - (z + pad.cross_hole_distance_mm) ** 2))
    return pi * radius**2 - strip_in_disc_mm2(radius_mm=radius, half_width_mm=across)


def _recess_area_mm2(pad: Pad, z: float) -> float:
    return pi * (pad.seat_recess_diameter_mm / 2) ** 2 if 0 <= z < pad.seat_recess_depth_mm else 0.0


def _skirt_area_mm2(pad: Pad, z: float) -> float:
    """The ring around the seat, its outside cut by the flats."""
    if not pad.has_skirt or z < pad.foot_bottom_mm:
        return 0.0
    return _between_flats_mm2(pad, body_radius_mm(pad, z)) - pi * (pad.skirt_bore_mm / 2) ** 2


def _plug_area_mm2(pad: Pad, z: float) -> float:
    """The plug's rounded rectangle, standing back all round in its chamfer."""
    inset = max(0.0, pad.edge_chamfer_mm - (pad.top_height_mm - z))
    x, y = pad.plug_width_mm / 2 - inset, pad.plug_length_mm / 2 - inset
    return 4 * x * y - (4 - pi) * max(0.0, pad.plug_corner_radius_mm - inset) ** 2
