"""What the load does to a flat cushion."""

from dataclasses import dataclass
from math import inf

from geometry.conditions import Conditions
from geometry.elastomer import is_elastomer, shape_factor, stiffening
from geometry.heads.face.lip import lip_load
from geometry.heads.loading import FaceLoading, face_parallelism_mm, top_tolerance_mm
from geometry.heads.overlap import disc_in_rectangle_mm2
from geometry.pad import Pad
from geometry.spread import AS_DRAWN, Spread

PLACED_BY_EYE_MM = 5.0
"""How far off the middle a careful eye sets a flat pad under a rail; common practice, no source."""


@dataclass(frozen=True, kw_only=True)
class CushionLoading(FaceLoading):
    """Pressure on the cushion's top; mm, mm², MPa."""

    top_mm: float
    """Flat of the top, its broken edge left out."""
    shape_factor: float
    """0 for a material that is judged by its strength."""


def cushion_loading(c: Conditions, pad: Pad, spread: Spread = AS_DRAWN) -> CushionLoading:
    """What the load does to the cushion of ``pad``."""
    top, face = pad.body_diameter_mm - 2 * pad.edge_chamfer_mm, c.rail
    across = min(face.face_width_mm, pad.flats_width_mm - 2 * pad.edge_chamfer_mm if pad.has_flats else inf)
    area = disc_in_rectangle_mm2(diameter_mm=top, width_mm=across, length_mm=face.face_length_mm)
    pressure = c.design_force_n / area if area > 0 else inf
    within = min(top, across, face.face_length_mm)
    shape = shape_factor(loaded_width_mm=within, height_mm=pad.web_mm) if is_elastomer(c) and pad.web_mm > 0 else 0.0
    passed_on = min(pressure, c.allowable_mpa * stiffening(shape))
    return CushionLoading(
        web_tolerance_mm=spread.of(pad, "web_mm"),
        depth_tolerance_mm=top_tolerance_mm(pad, spread),
        floor_parallelism_mm=face_parallelism_mm(spread),
        pressure_mpa=pressure,
        indentation_mm=passed_on * pad.web_mm / (c.modulus_mpa * stiffening(shape)),
        area_mm2=area,
        contact_width_mm=min(top, across),
        off_centre_mm=PLACED_BY_EYE_MM,
        lip=lip_load(
            pressure_mpa=passed_on,
            seat_radius_mm=pad.seat_diameter_mm / 2,
            inner_radius_mm=0.0,
            outer_radius_mm=min(top, max(face.face_width_mm, face.face_length_mm)) / 2,
        ),
        design_force_n=c.design_force_n,
        top_mm=top,
        shape_factor=shape,
    )
