"""The pad's volume: the level cut's closed form, added up over the height."""

from collections.abc import Callable
from functools import lru_cache
from itertools import pairwise
from math import cos, hypot, pi, sqrt

from geometry.levels import (
    body_radius_mm,
    cross_section_area_mm2,
    slot_half_width_mm,
)
from geometry.pad import Pad


@lru_cache(maxsize=64)
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
    return sum(_piece_mm3(pad, start, end) for start, end in pairwise(_corner_heights_mm(pad)))


def _piece_mm3(pad: Pad, start: float, end: float) -> float:
    """Volume between two corners of the outline.

    The area is smooth there but for a square root where a fillet starts, and where the cross-hole starts and ends;
    z = root + span t² takes it away.
    """
    root, near, far = _root_of(pad, start, end)
    span, first = far - root, sqrt((near - root) / (far - root))
    nodes = ((first + (1 - first) * node, weight) for node, weight in _GAUSS)
    return abs(span) * (1 - first) * sum(w * 2 * t * cross_section_area_mm2(pad, root + span * t * t) for t, w in nodes)


def _root_of(pad: Pad, start: float, end: float) -> tuple[float, float, float]:
    """Where a stretch's square root lies, then the stretch from its end near there to its far one."""
    for foot, height in ((0.0, pad.seat_corner_radius_mm), (pad.web_mm, pad.slot_corner_radius_mm)):
        if foot <= start < foot + height:
            return foot, start, end
    if pad.has_cross_hole and end == _hole_top_mm(pad):
        return end, end, start
    return start, start, end


def _hole_top_mm(pad: Pad) -> float:
    return pad.cross_hole_diameter_mm / 2 - pad.cross_hole_distance_mm


def _corner_heights_mm(pad: Pad) -> list[float]:
    """Every height where the area's formula changes, from the foot up."""
    lip, web, top, edge = pad.seat_length_mm, pad.web_mm, pad.body_top_mm, pad.edge_chamfer_mm
    low = pad.foot_bottom_mm
    heights = {-pad.stem_length_mm, 0.0, pad.seat_corner_radius_mm, lip, low, low + edge, top - edge, top, web}
    heights.add(pad.seat_recess_depth_mm)
    if pad.has_cross_hole:
        heights |= {
            -pad.cross_hole_distance_mm - pad.cross_hole_diameter_mm / 2,
            -pad.cross_hole_distance_mm,
            _hole_top_mm(pad),
        }
    if pad.has_slot:
        heights |= {web + pad.slot_corner_radius_mm, top - pad.slot_mouth_chamfer_mm}
    if pad.has_relief:
        heights.add(top - pad.relief_depth_mm)
    if pad.has_plug:
        high = pad.top_height_mm
        heights |= {high - edge, high - edge + min(edge, pad.plug_corner_radius_mm), high}
    return sorted(heights | _kinks_mm(pad, sorted(heights)))


def _kinks_mm(pad: Pad, heights: list[float]) -> set[float]:
    """Where the slot's wall, on its way out, meets the relief's corners, or the second slot's the edge of the flats."""
    corner, half = pad.relief_width_mm / 2 - pad.relief_corner_radius_mm, pad.flats_width_mm / 2

    def beyond_the_corner(z: float) -> float:
        return slot_half_width_mm(pad, z, pad.slot_width_mm) - corner

    def beyond_the_flat(z: float) -> float:
        return hypot(half, slot_half_width_mm(pad, z, pad.cross_slot_width_mm)) - body_radius_mm(pad, z)

    met = [beyond_the_corner] if pad.has_relief else []
    met += [beyond_the_flat] if pad.is_crossed and pad.has_flats else []
    levels = [z for z in heights if z >= pad.web_mm]
    return set().union(*(_crossing(function, low, high) for function in met for low, high in pairwise(levels)))


def _crossing(function: Callable[[float], float], low: float, high: float) -> set[float]:
    """Where a function changes its sign, by halving; nothing where it does not."""
    if function(low) * function(high) >= 0:
        return set()
    rising = function(low) < 0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if (function(middle) < 0) == rising else (low, middle)
    return {low}


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
