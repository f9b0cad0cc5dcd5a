"""What the load does to a plug and to the shoulder around it."""

from dataclasses import dataclass
from math import hypot, inf, pi

from geometry.conditions import Conditions
from geometry.heads.face.lip import LipLoad, lip_load
from geometry.heads.loading import FaceLoading, face_parallelism_mm, top_tolerance_mm
from geometry.heads.overlap import disc_in_rectangle_mm2
from geometry.heads.plug.fields import PlugFacts
from geometry.pad import Pad
from geometry.spread import AS_DRAWN, Spread


@dataclass(frozen=True, kw_only=True)
class PlugLoading(FaceLoading):
    """Pressure on the shoulder, and how the plug lies in its hole; mm, mm², MPa."""

    shoulder_mm: float
    """Flat of the shoulder across, its broken edge left out."""
    tight_play_mm: float
    """Smallest play of the plug in the hole, hot and wet and at its largest: the lesser of both ways."""
    loose_play_mm: float
    """Largest play, cold and dry and at its smallest: the greater of both ways."""


def plug_loading(c: Conditions, pad: Pad, spread: Spread = AS_DRAWN) -> PlugLoading:
    """What the load does to the shoulder of ``pad``."""
    shoulder = pad.body_diameter_mm - 2 * pad.edge_chamfer_mm
    across = pad.flats_width_mm - 2 * pad.edge_chamfer_mm if pad.has_flats else inf
    area = shoulder_area_mm2(c.pocket, shoulder, across)
    pressure = c.design_force_n / area if area > 0 else inf
    passed_on = min(pressure, c.allowable_mpa)
    loose = max(0.0, _loose_mm(c, pad, spread))
    return PlugLoading(
        web_tolerance_mm=spread.of(pad, "web_mm"),
        depth_tolerance_mm=top_tolerance_mm(pad, spread),
        floor_parallelism_mm=face_parallelism_mm(spread),
        pressure_mpa=pressure,
        indentation_mm=passed_on * pad.web_mm / c.modulus_mpa,
        area_mm2=area,
        contact_width_mm=min(shoulder, across, c.pocket.hole_width_mm + 2 * c.pocket.rim_width_mm),
        off_centre_mm=loose / 2,
        lip=_lip(c.pocket, pad.seat_diameter_mm, shoulder, passed_on),
        design_force_n=c.design_force_n,
        shoulder_mm=shoulder,
        tight_play_mm=_tight_mm(c, pad, spread),
        loose_play_mm=loose,
    )


def sides_mm(pad: Pad, pocket: PlugFacts) -> tuple[tuple[float, float, str], ...]:
    """Each way that a plug lies in its hole: (hole, plug, the plug's dimension); of a round hole the plug's widest."""
    if pocket.is_round:
        return ((pocket.hole_width_mm, reach_mm(pad), "plug_width_mm"),)
    return (
        (pocket.hole_width_mm, pad.plug_width_mm, "plug_width_mm"),
        (pocket.hole_length_mm, pad.plug_length_mm, "plug_length_mm"),
    )


def reach_mm(pad: Pad) -> float:
    """Twice how far the plug's outline stands off the axis where it is furthest, [mm]."""
    radius = pad.plug_corner_radius_mm
    return 2 * (radius + hypot(pad.plug_width_mm / 2 - radius, pad.plug_length_mm / 2 - radius))


def tightest(c: Conditions, pad: Pad, spread: Spread) -> tuple[float, float]:
    """The way in which the plug is tightest when it has grown: hole, and plug at its largest before growth, [mm]."""
    ways = ((hole, plug + spread.of(pad, name)) for hole, plug, name in sides_mm(pad, c.pocket))
    return min(ways, key=lambda way: way[0] - way[1] * (1 + c.g_hot))


def _tight_mm(c: Conditions, pad: Pad, spread: Spread) -> float:
    hole, largest = tightest(c, pad, spread)
    return hole - c.u - largest * (1 + c.g_hot)


def _loose_mm(c: Conditions, pad: Pad, spread: Spread) -> float:
    """A round plug plays by its least side, any other by whichever way has more play."""
    hole = c.pocket
    ways = (
        (hole.hole_width_mm, pad.plug_width_mm, "plug_width_mm"),
        (hole.hole_length_mm, pad.plug_length_mm, "plug_length_mm"),
    )
    return max(side + c.u - (plug - spread.of(pad, name)) * (1 + c.g_cold) for side, plug, name in ways)


def _lip(pocket: PlugFacts, seat_mm: float, shoulder_mm: float, pressure_mpa: float) -> LipLoad:
    """The heavier of the two ways in which the rim presses on the shoulder beyond the seat, across the hole and along it."""
    across, along = (
        lip_load(
            pressure_mpa=pressure_mpa,
            seat_radius_mm=seat_mm / 2,
            inner_radius_mm=side / 2,
            outer_radius_mm=min(shoulder_mm, side + 2 * pocket.rim_width_mm) / 2,
        )
        for side in (pocket.hole_width_mm, pocket.hole_length_mm)
    )
    return LipLoad(max(across.shear_n_per_mm, along.shear_n_per_mm), max(across.moment_n, along.moment_n))


def shoulder_area_mm2(pocket: PlugFacts, shoulder_mm: float, across_mm: float = inf) -> float:
    """Where a round shoulder and the flat rim around a hole meet, [mm²]; 0 where the hole takes all of the shoulder.

    Two flats leave no more than ``across_mm`` of the shoulder's width. The rim's outside runs around the hole at an even
    distance, so its corners are rounder than the hole's by that much.
    """
    rim, corner = pocket.rim_width_mm, pocket.corner_radius_mm
    outside = disc_in_rectangle_mm2(
        diameter_mm=shoulder_mm,
        width_mm=min(across_mm, pocket.hole_width_mm + 2 * rim),
        length_mm=pocket.hole_length_mm + 2 * rim,
        corner_radius_mm=corner + rim,
    )
    hole = disc_in_rectangle_mm2(
        diameter_mm=shoulder_mm,
        width_mm=min(across_mm, pocket.hole_width_mm),
        length_mm=pocket.hole_length_mm,
        corner_radius_mm=corner if across_mm >= pocket.hole_width_mm else 0.0,
    )
    return max(0.0, outside - hole)


def plug_area_mm2(pad: Pad) -> float:
    """The plug's level cut, [mm²]."""
    return pad.plug_width_mm * pad.plug_length_mm - (4 - pi) * pad.plug_corner_radius_mm**2
