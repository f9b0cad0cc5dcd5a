"""A pad of likely shape for feet and heads other than a cup and a slot, drawn faintly where none is sized."""

from collections.abc import Mapping

from geometry.drawing.section_known import Known
from geometry.pad import Pad

_TYPICAL_BORE_MM, _TYPICAL_DEPTH_MM = 68.0, 12.0
TYPICAL_WIDTH_MM = {"slot": 3.0, "cushion": 50.0, "plug": 30.0}
"""Of seam, face and hole until they are measured; common practice, no source."""


def likely_pad_of_any_kind(known: Known, corner: float, *, rim: float, hole: float, so_far: Mapping[str, float]) -> Pad:
    """The pad's parts in plausible sizes, those taken over that were chosen so far."""
    chosen = dict(so_far)
    sizes = _foot(known, corner, rim, hole)
    web = max(sizes["seat_length_mm"] + 6.0, 14.0)
    sizes |= {"web_mm": web, "edge_chamfer_mm": 1.0} | _head(known)
    across = max(sizes["seat_diameter_mm"] + 10, sizes.get("skirt_bore_mm", 0.0) + 16, sizes.pop("least", 0.0))
    sizes["body_diameter_mm"] = across
    return Pad(**sizes | {name: value for name, value in chosen.items() if sizes.get(name) and value})


def _foot(known: Known, corner: float, rim: float, hole: float) -> dict[str, float]:
    if known.is_in_a_bore:
        seat = (known.cup_bore_mm or _TYPICAL_BORE_MM) - 0.8
        radius = max(0.5, min(corner + 0.5, seat / 4))
        length = max(radius + 1, (known.cup_depth_mm or _TYPICAL_DEPTH_MM) + 1.5)
        return _seat(seat, length, radius)
    if known.foot == "post":
        bore = hole or 0.5 * rim
        return _seat(rim + 2, 2.0, 0.5) | {"stem_diameter_mm": bore - 0.8, "stem_length_mm": 0.8 * bore}
    return _seat(rim - 3, 2.0, 0.5) | {"skirt_bore_mm": rim + 1, "skirt_length_mm": 8.0}


def _seat(diameter: float, length: float, radius: float) -> dict[str, float]:
    stem = {"stem_diameter_mm": 0.0, "stem_length_mm": 0.0}
    return {"seat_diameter_mm": diameter, "seat_length_mm": length, "seat_corner_radius_mm": radius, **stem}


def _head(known: Known) -> dict[str, float]:
    width = known.thickness_mm or TYPICAL_WIDTH_MM[known.head]
    match known.head:
        case "slot":
            depth = max(3.0, (known.height_mm or 20.0) - 3.5)
            return {
                "slot_width_mm": width + 1.8,
                "slot_depth_mm": depth,
                "slot_corner_radius_mm": 0.3,
                "slot_mouth_chamfer_mm": 1.0,
                "least": width + 26,
            }
        case "plug":
            length = known.value_of("pocket.hole_length_mm") or width
            across, along = max(width - 1.0, 4.0), max(length - 1.0, 4.0)
            is_round = known.own.get("pocket.shape") != "rectangular"
            height = max(3.0, min((known.height_mm or 20.0) - 3, 0.6 * across))
            return {
                "plug_width_mm": across,
                "plug_length_mm": across if is_round else along,
                "plug_height_mm": height,
                "plug_corner_radius_mm": across / 2 if is_round else min(3.0, across / 4, along / 4),
                "least": (across if is_round else (across**2 + along**2) ** 0.5) + 16,
            }
        case _:
            return {}
