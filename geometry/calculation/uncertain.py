"""How far what was measured may be off: on jack and car by the one uncertainty of the document, above the ground by the other."""

from geometry import formulas
from geometry.calculation.face_symbols import HEADS_GROUND_KEYS, HEADS_U_KEYS
from geometry.calculation.foot_symbols import FEET_U_KEYS
from geometry.conditions import Conditions

_U_KEYS = frozenset(
    f"jack.{name}_mm"
    for name in ("cup_bore", "cup_depth", "cup_corner_radius", "stem_hole_diameter", "stem_hole_depth")
) | frozenset(f"seam.{name}_mm" for name in ("thickness", "height", "clear_outboard", "clear_inboard"))
_GROUND_KEYS = frozenset(
    ("jack.rim_height_low_mm", "jack.rim_height_high_mm", "seam.edge_height_mm", "seam.edge_height_flat_mm")
)


def uncertainty_words(key: str, c: Conditions) -> str:
    """Plus and minus of an answer with its unit; empty where none enters the calculation."""
    if key in _U_KEYS | FEET_U_KEYS | HEADS_U_KEYS:
        return f"± {formulas.shown(c.u)} mm"
    return f"± {formulas.shown(c.u_g)} mm" if key in _GROUND_KEYS | HEADS_GROUND_KEYS else ""
