"""What the load does to the shoulder around a plug."""

from dataclasses import dataclass
from math import inf, pi

from geometry.conditions import Conditions
from geometry.heads.loading import FaceLoading, face_parallelism_mm, top_tolerance_mm
from geometry.heads.overlap import disc_in_rectangle_mm2
from geometry.heads.plug.fields import PlugFacts
from geometry.pad import Pad
from geometry.spread import AS_DRAWN, Spread


@dataclass(frozen=True, kw_only=True)
class PlugLoading(FaceLoading):
    """Pressure on the shoulder; mm, mm², MPa."""

    shoulder_mm: float
    """Flat of the shoulder across, its broken edge left out."""


def plug_loading(c: Conditions, pad: Pad, spread: Spread = AS_DRAWN) -> PlugLoading:
    """What the load does to the shoulder of ``pad``."""
    shoulder = pad.body_diameter_mm - 2 * pad.edge_chamfer_mm
    area = shoulder_area_mm2(c.pocket, shoulder)
    pressure = c.design_force_n / area if area > 0 else inf
    return PlugLoading(
        web_tolerance_mm=spread.of(pad, "web_mm"),
        depth_tolerance_mm=top_tolerance_mm(pad, spread),
        floor_parallelism_mm=face_parallelism_mm(spread),
        pressure_mpa=pressure,
        indentation_mm=min(pressure, c.allowable_mpa) * pad.web_mm / c.modulus_mpa,
        area_mm2=area,
        design_force_n=c.design_force_n,
        shoulder_mm=shoulder,
    )


def shoulder_area_mm2(pocket: PlugFacts, shoulder_mm: float) -> float:
    """Where a round shoulder and the flat rim around a hole meet, [mm²]; 0 where the hole takes all of the shoulder."""
    if pocket.is_round:
        outside = disc_mm2(min(shoulder_mm, pocket.hole_width_mm + 2 * pocket.rim_width_mm))
        return max(0.0, outside - pocket.hole_area_mm2)
    width, length = (side + 2 * pocket.rim_width_mm for side in (pocket.hole_width_mm, pocket.hole_length_mm))
    outside = disc_in_rectangle_mm2(diameter_mm=shoulder_mm, width_mm=width, length_mm=length)
    hole = disc_in_rectangle_mm2(
        diameter_mm=shoulder_mm, width_mm=pocket.hole_width_mm, length_mm=pocket.hole_length_mm
    )
    return max(0.0, outside - hole)


def disc_mm2(diameter_mm: float) -> float:
    """Area of a disc, [mm²]."""
    return pi / 4 * diameter_mm**2
