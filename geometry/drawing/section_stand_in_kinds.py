"""A pad of likely shape for feet and heads other than a cup and a slot, drawn faintly where none is sized."""

from collections.abc import Mapping

from geometry.drawing.section_known import Known
from geometry.drawing.section_typical import bore_of, hole_of, or_typical, rim_of
from geometry.pad import Pad


def likely_pad_of_any_kind(known: Known, corner: float, so_far: Mapping[str, float]) -> Pad:
    """The pad's parts in plausible sizes, those taken over that were chosen so far."""
    sizes = _foot(known, corner)
    web = max(sizes["seat_length_mm"] + 6.0, 14.0)
    sizes |= {"web_mm": web, "edge_chamfer_mm": 1.0} | _head(known)
    across = max(sizes["seat_diameter_mm"] + 10, sizes.get("skirt_bore_mm", 0.0) + 16, sizes.pop("least", 0.0))
    sizes["body_diameter_mm"] = across
    return Pad(**sizes | {name: value for name, value in so_far.items() if sizes.get(name) and value})


def _foot(known: Known, corner: float) -> dict[str, float]:
    if known.is_in_a_bore:
        seat = bore_of(known) - 0.8
        radius = max(0.5, min(corner + 0.5, seat / 4))
        return _seat(seat, max(radius + 1, or_typical(known, "cup_depth_mm") + 1.5), radius)
    rim = rim_of(known)
    if known.foot == "post":
        bore = hole_of(known)
        return _seat(rim + 2, 2.0, 0.5) | {"stem_diameter_mm": bore - 0.8, "stem_length_mm": 0.8 * bore}
    return _seat(rim - 3, 2.0, 0.5) | {"skirt_bore_mm": rim + 1, "skirt_length_mm": 8.0}


def _seat(diameter: float, length: float, radius: float) -> dict[str, float]:
    stem = {"stem_diameter_mm": 0.0, "stem_length_mm": 0.0}
    return {"seat_diameter_mm": diameter, "seat_length_mm": length, "seat_corner_radius_mm": radius, **stem}


def _head(known: Known) -> dict[str, float]:
    width, height = (or_typical(known, name) for name in ("thickness_mm", "height_mm"))
    match known.head:
        case "slot":
            depth = max(3.0, height - 3.5)
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
            tall = max(3.0, min(height - 3, 0.6 * across))
            return {
                "plug_width_mm": across,
                "plug_length_mm": across if is_round else along,
                "plug_height_mm": tall,
                "plug_corner_radius_mm": across / 2 if is_round else min(3.0, across / 4, along / 4),
                "least": (across if is_round else (across**2 + along**2) ** 0.5) + 16,
            }
        case _:
            return {}
