"""What is measured so far, or what is typical of it: the sizes that the section is drawn by."""

from geometry.drawing.section_known import Known
from geometry.heads.slot.fields import ASSUMED_PAINT_MM, ASSUMED_SHEET_MM

TYPICAL_MM = {
    "cup_bore_mm": 68.0,
    "cup_depth_mm": 12.0,
    "rim_height_low_mm": 105.0,
    "height_mm": 20.0,
    "edge_height_mm": 190.0,
}
"""What is drawn faintly until it is measured; common practice, no source."""
TYPICAL_WIDTH_MM = {"slot": 3.0, "cushion": 50.0, "plug": 30.0}
"""The same of seam, face and hole."""


def or_typical(known: Known, name: str) -> float:
    """The measurement, or what is typical of it."""
    value: float | None = getattr(known, name)
    if value is not None:
        return value
    return TYPICAL_WIDTH_MM[known.head] if name == "thickness_mm" else TYPICAL_MM[name]


def bore_of(known: Known) -> float:
    """The cup bore; typically one that leaves room for what is known of the floor's middle and the rim."""
    if known.cup_bore_mm is not None:
        return known.cup_bore_mm
    in_the_middle = max(known.stem_hole_diameter_mm or 0.0, known.floor_boss_diameter_mm or 0.0)
    bore = max(TYPICAL_MM["cup_bore_mm"], in_the_middle + 16)
    return min(bore, known.rim_diameter_mm - 6) if known.rim_diameter_mm else bore


def rim_of(known: Known) -> float:
    """The outside of what the pad stands in or on."""
    return known.rim_diameter_mm or bore_of(known) + 16.0


def hole_of(known: Known) -> float:
    """The hole in the middle of what the pad stands on, 0 for none: between teeth that it stands on, all that they surround."""
    if known.foot == "saddle" and not known.is_in_a_bore:
        return bore_of(known)
    if known.foot == "post" and known.stem_hole_diameter_mm is None:
        return 0.5 * rim_of(known)
    return known.stem_hole_diameter_mm or 0.0


def hole_depth_of(known: Known) -> float | None:
    """How deep that hole is; None where it goes through."""
    if known.foot == "saddle" and not known.is_in_a_bore:
        return or_typical(known, "cup_depth_mm")
    return known.stem_hole_depth_mm


def corner_of(known: Known) -> float:
    """The cup's corner radius, never more than the cup as drawn has room for; 0 where nothing surrounds the seat."""
    if not known.is_in_a_bore:
        return 0.0
    depth, bore = or_typical(known, "cup_depth_mm"), bore_of(known)
    corner = min(5.0, depth / 2) if known.cup_corner_radius_mm is None else known.cup_corner_radius_mm
    return min(corner, depth - 1, bore / 2)


def bare_of(known: Known, sheets: int) -> float:
    """The seam's thickness without paint."""
    thickness = or_typical(known, "thickness_mm")
    assumed = max(ASSUMED_SHEET_MM * sheets, thickness - ASSUMED_PAINT_MM)
    return min(thickness, assumed if known.bare_thickness_mm is None else known.bare_thickness_mm)
