"""Balance points of pads by adaptive quadrature (scipy.integrate) of their level cuts: what the solid is compared with."""

from collections.abc import Callable
from itertools import pairwise

from scipy.integrate import quad

from geometry.levels import body_radius_mm, cross_section_area_mm2, relief_aside_mm2, slot_half_width_mm
from geometry.pad import Pad


def moment(pad: Pad, power: int) -> float:
    """∫ zⁿ A(z) dz, piece by piece; a fillet's square root is left to scipy's adaptive rule."""
    return sum(_piece(lambda z: z**power * cross_section_area_mm2(pad, z), a, b) for a, b in _pieces(pad))


def balance_height_mm(pad: Pad) -> float:
    """Height of the centre of gravity above the seat face."""
    return moment(pad, 1) / moment(pad, 0)


def balance_aside_mm(pad: Pad) -> float:
    """How far the centre of gravity stands off the axis along x: what slot and relief take aside, on the other side."""
    taken = sum(_piece(lambda z: _taken_mm3(pad, z), a, b) for a, b in _pieces(pad) if a >= pad.seat_length_mm)
    return -taken / moment(pad, 0)


def _taken_mm3(pad: Pad, z: float) -> float:
    """First moment about the axis, at a height, of the slot's strip of the disc and of the relief beside it."""
    radius, half = body_radius_mm(pad, z), slot_half_width_mm(pad, z, pad.slot_width_mm)
    near, far = pad.slot_offset_mm - half, pad.slot_offset_mm + half
    strip = float(quad(lambda x: 2 * x * (radius**2 - x**2) ** 0.5, near, far)[0]) if half else 0.0
    return strip + pad.slot_offset_mm * relief_aside_mm2(pad, z)


def _pieces(pad: Pad) -> list[tuple[float, float]]:
    """The pad's height between the corners of its outline."""
    lip, web, top, edge = pad.seat_length_mm, pad.web_mm, pad.top_height_mm, pad.edge_chamfer_mm
    kinks = {-pad.stem_length_mm, 0, pad.seat_corner_radius_mm, lip, lip + edge, top - edge, top, web}
    kinks |= {web + pad.slot_corner_radius_mm, top - pad.slot_mouth_chamfer_mm}
    kinks |= {top - pad.relief_depth_mm} if pad.has_relief else set()
    return [(a, b) for a, b in pairwise(sorted(kinks)) if b - a > 1e-9]


def _piece(function: Callable[[float], float], low: float, high: float) -> float:
    return float(quad(function, low, high, epsabs=0, epsrel=1e-11, limit=200)[0])
