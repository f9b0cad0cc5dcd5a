"""Whether points in space lie within the pad: one exact test for all that looks at it from anywhere."""

import numpy as np
from numpy.typing import NDArray

from geometry.pad import Pad

Numbers = NDArray[np.float64]
Truths = NDArray[np.bool_]


def inside(pad: Pad, x: Numbers, y: Numbers, z: Numbers, *, skin_mm: float = 0.0) -> Truths:
    """Which points lie within the pad, and no nearer to its surface than the skin."""
    apart = np.hypot(x, y)
    found = apart < turned_radius_mm(pad, z, skin_mm) - skin_mm
    if pad.has_skirt:
        found |= _in_skirt(pad, apart, z, skin_mm)
    if pad.has_plug:
        found |= _in_plug(pad, x, y, z, skin_mm)
    if pad.has_slot:
        found &= np.abs(x - pad.slot_offset_mm) > slot_half_mm(pad, z, pad.slot_width_mm, skin_mm) + skin_mm
    if pad.is_crossed:
        found &= np.abs(y) > slot_half_mm(pad, z, pad.cross_slot_width_mm, skin_mm) + skin_mm
    if pad.has_flats:
        found &= np.abs(x) < pad.flats_width_mm / 2 - skin_mm
    if pad.has_relief:
        found &= ~_in_relief(pad, x, y, z, skin_mm)
    if pad.has_recess:
        found &= (apart > pad.seat_recess_diameter_mm / 2 + skin_mm) | (z > pad.seat_recess_depth_mm + skin_mm)
    if pad.has_cross_hole:
        found &= np.hypot(y, z + pad.cross_hole_distance_mm) > pad.cross_hole_diameter_mm / 2 + skin_mm
    return np.asarray(found)


def turned_radius_mm(pad: Pad, z: Numbers, skin_mm: float = 0.0) -> Numbers:
    """Radius of stem, seat and body at each height, thinned by the skin upwards and downwards; negative outside."""
    seat, corner, skin = pad.seat_diameter_mm / 2, pad.seat_corner_radius_mm, skin_mm
    low = np.clip(corner - z, 0.0, corner)
    seat_radius = seat - corner + np.sqrt(np.maximum(0.0, corner**2 - low**2))
    stem = pad.stem_diameter_mm / 2 if pad.has_stem else -1.0
    return np.select(
        [z < -pad.stem_length_mm + skin, z < skin, z < pad.seat_length_mm + skin, z < pad.body_top_mm - skin],
        [np.full_like(z, -1.0), np.full_like(z, stem), seat_radius, body_radius_mm(pad, z)],
        -1.0,
    )


def body_radius_mm(pad: Pad, z: Numbers) -> Numbers:
    """Radius of the turned body, or of its skirt, at each height within it."""
    edge = pad.edge_chamfer_mm
    low, high = edge - (z - pad.foot_bottom_mm), edge - (pad.body_top_mm - z)
    return np.asarray(pad.body_diameter_mm / 2 - np.maximum(0.0, np.maximum(low, high)))


def slot_half_mm(pad: Pad, z: Numbers, width_mm: float, skin_mm: float = 0.0) -> Numbers:
    """Half the width of either slot at each height; negative below its floor, less the skin."""
    half, corner = width_mm / 2, pad.slot_corner_radius_mm
    low = np.clip(corner - (z - pad.web_mm), 0.0, corner)
    inset = corner - np.sqrt(np.maximum(0.0, corner**2 - low**2))
    flare = np.maximum(0.0, pad.slot_mouth_chamfer_mm - (pad.body_top_mm - z))
    return np.where(z < pad.web_mm - skin_mm, -1.0, half - inset + flare)


def relief_half_length_mm(pad: Pad, aside: Numbers) -> Numbers:
    """Half the relief's length along the slot, at distances from the slot's middle within its width."""
    radius = pad.relief_corner_radius_mm
    into = np.clip(np.abs(aside) - (pad.relief_width_mm / 2 - radius), 0.0, radius)
    return np.asarray(pad.relief_length_mm / 2 - radius + np.sqrt(radius**2 - into**2))


def _in_skirt(pad: Pad, apart: Numbers, z: Numbers, skin: float) -> Truths:
    ring = (apart > pad.skirt_bore_mm / 2 + skin) & (apart < body_radius_mm(pad, z) - skin)
    # It grows out of the body, whose own skin is no gap between them.
    return np.asarray(ring & (z > pad.foot_bottom_mm + skin) & (z < pad.seat_length_mm + 2 * skin + 1e-9))


def _in_plug(pad: Pad, x: Numbers, y: Numbers, z: Numbers, skin: float) -> Truths:
    inset = np.maximum(0.0, pad.edge_chamfer_mm - (pad.top_height_mm - z)) + skin
    half_x, half_y = pad.plug_width_mm / 2 - inset, pad.plug_length_mm / 2 - inset
    within = _in_rounded(x, y, half_x, half_y, np.maximum(0.0, pad.plug_corner_radius_mm - inset))
    return np.asarray(within & (z > pad.web_mm - 2 * skin - 1e-9) & (z < pad.top_height_mm - skin))


def _in_relief(pad: Pad, x: Numbers, y: Numbers, z: Numbers, skin: float) -> Truths:
    half_x, half_y = pad.relief_width_mm / 2 + skin, pad.relief_length_mm / 2 + skin
    radius = np.full_like(z, pad.relief_corner_radius_mm + skin)
    within = _in_rounded(x - pad.slot_offset_mm, y, np.full_like(z, half_x), np.full_like(z, half_y), radius)
    return np.asarray(within & (z > pad.body_top_mm - pad.relief_depth_mm - skin))


def _in_rounded(x: Numbers, y: Numbers, half_x: Numbers, half_y: Numbers, radius: Numbers) -> Truths:
    """Within rectangles about the origin with rounded corners."""
    over_x, over_y = np.abs(x) - (half_x - radius), np.abs(y) - (half_y - radius)
    near = np.hypot(np.maximum(over_x, 0.0), np.maximum(over_y, 0.0)) < radius
    beside = (np.minimum(over_x, over_y) <= 0) & (np.maximum(over_x, over_y) < radius)
    return np.asarray(near | beside)
