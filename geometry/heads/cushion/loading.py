"""What the load does to a flat cushion."""

from dataclasses import dataclass
from math import inf

from geometry.conditions import Conditions
from geometry.heads.loading import FaceLoading, face_parallelism_mm, top_tolerance_mm
from geometry.heads.overlap import disc_in_rectangle_mm2
from geometry.pad import Pad
from geometry.spread import AS_DRAWN, Spread


@dataclass(frozen=True, kw_only=True)
class CushionLoading(FaceLoading):
    """Pressure on the cushion's top; mm, mm², MPa."""

    top_mm: float
    """Flat of the top, its broken edge left out."""


def cushion_loading(c: Conditions, pad: Pad, spread: Spread = AS_DRAWN) -> CushionLoading:
    """What the load does to the cushion of ``pad``."""
    top, face = pad.body_diameter_mm - 2 * pad.edge_chamfer_mm, c.rail
    area = disc_in_rectangle_mm2(diameter_mm=top, width_mm=face.face_width_mm, length_mm=face.face_length_mm)
    pressure = c.design_force_n / area if area > 0 else inf
    return CushionLoading(
        web_tolerance_mm=spread.of(pad, "web_mm"),
        depth_tolerance_mm=top_tolerance_mm(pad, spread),
        floor_parallelism_mm=face_parallelism_mm(spread),
        pressure_mpa=pressure,
        indentation_mm=min(pressure, c.allowable_mpa) * pad.web_mm / c.modulus_mpa,
        area_mm2=area,
        design_force_n=c.design_force_n,
        top_mm=top,
    )
