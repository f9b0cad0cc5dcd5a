"""What goes onto the main view, and the places on the section that its sizes, signs and details share."""

from dataclasses import dataclass
from math import inf, sqrt

from geometry.drawing.facts import FigureUnit
from geometry.drawing.model import Point
from geometry.drawing.scales import Scale
from geometry.pad import Pad

_NARROW_LIP_MM = 2.0
"""A lip that is narrower on paper, less its chamfer, is shown in a detail."""
_NARROW_GROOVE_MM = 3.2
"""A groove between seat and skirt that is narrower on paper is shown in a detail: extension lines go down from both its walls."""
_SMALL_RADIUS_MM = 1.2
"""A seat corner that is smaller on paper is dimensioned in a detail."""


@dataclass(frozen=True, slots=True)
class Plan:
    """What goes onto the section and what into a detail or a note instead."""

    unit: FigureUnit
    windows: tuple[tuple[Point, float], ...] = ()
    """Details: where they look, and how far about it, in model mm."""
    right_limit: float = inf
    lip_apart: bool = False
    """The lip has a detail of its own, with its chamfer and its run-out."""
    run_out_apart: bool = False
    """The run-out stands in the detail of the seat's corner."""
    is_printed: bool = False
    """Built up in layers: no face has a sign of texture."""
    located_by: str = "seat_diameter_mm"
    """The diameter that keeps the pad in its place: its axis is a datum."""
    critical: tuple[str, ...] = ()
    """Dimensions and tolerances that an estimate depends on."""
    may_move: frozenset[str] = frozenset()
    """What may stand at another view that shows it too, where it finds only a troubled place at the section: names of sizes and
    tolerances."""


def half_body(pad: Pad) -> float:
    """Half the body's width in the section, in model mm."""
    return (pad.flats_width_mm if pad.has_flats else pad.body_diameter_mm) / 2


def half_top(pad: Pad) -> float:
    """Half the width of the body's top as seen with the section, where a second slot leaves it, in model mm."""
    rim = pad.body_diameter_mm / 2 - pad.edge_chamfer_mm
    across = pad.cross_slot_width_mm / 2 + pad.slot_mouth_chamfer_mm if pad.is_crossed else 0.0
    return min(half_body(pad), sqrt(rim**2 - across**2))


def lip_outer_mm(pad: Pad) -> float:
    """Where the lip's face ends in the section, from the axis: at the skirt, a flat or the edge's chamfer."""
    if pad.has_skirt:
        return pad.skirt_bore_mm / 2
    return min(half_body(pad), pad.body_diameter_mm / 2 - pad.edge_chamfer_mm)


def seat_corner_needs_detail(pad: Pad, scale: Scale, *, least_mm: float = _SMALL_RADIUS_MM) -> bool:
    """Whether the seat's corner is too small on paper to point at."""
    return 0 < pad.seat_corner_radius_mm * scale.factor < least_mm


def lip_needs_detail(pad: Pad, scale: Scale) -> bool:
    """Whether leaders at the lip would end where one cannot tell them from each other or from the seat's extension line."""
    width = (lip_outer_mm(pad) - pad.seat_diameter_mm / 2) * scale.factor
    if pad.has_skirt:
        return width < _NARROW_GROOVE_MM
    return width < _NARROW_LIP_MM and (pad.has_flats or pad.edge_chamfer_mm > 0)
