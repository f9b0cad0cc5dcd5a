"""A pad of likely shape, drawn faintly until one is sized."""

from collections.abc import Mapping
from math import hypot

from geometry.buildable import require_buildable
from geometry.drawing.section_known import Known
from geometry.drawing.section_stand_in_kinds import likely_pad_of_any_kind
from geometry.drawing.section_typical import bore_of, or_typical
from geometry.errors import BadMeasurementsError
from geometry.kinds import USUAL_FOOT, USUAL_HEAD
from geometry.pad import Pad

_TYPICAL_PLACE_MM = 20.0
"""Length along the seam of a place that is not plain, until it is measured; it is not seen in the section."""


def stand_in_pad(known: Known, corner: float, so_far: Mapping[str, float]) -> Pad:
    """A pad of likely shape, drawn faintly where none is sized; it takes over what was chosen so far.

    What cannot be is left out: first what was chosen, then a recess and a pocket.
    """
    slot_offset = {"slot_offset_mm": known.offset_mm or 0.0}
    for chosen, has_options in ((so_far, True), (so_far, False), ({}, True)):
        likely = _likely_pad(known, corner, slot_offset | dict(chosen))
        likely = _with_options(likely, known) if has_options else likely
        try:
            require_buildable(likely)
        except BadMeasurementsError:
            continue
        return likely
    return _likely_pad(known, corner, slot_offset)


def _likely_pad(known: Known, corner: float, so_far: Mapping[str, float]) -> Pad:
    if (known.foot, known.head) != (USUAL_FOOT, USUAL_HEAD):
        return likely_pad_of_any_kind(known, corner, so_far)
    depth, thickness, height = (or_typical(known, n) for n in ("cup_depth_mm", "thickness_mm", "height_mm"))
    clear = min(height, *(c for c in (known.clear_outboard_mm, known.clear_inboard_mm) if c is not None), height)
    seat = so_far.get("seat_diameter_mm", bore_of(known) - 0.8)
    radius = so_far.get("seat_corner_radius_mm", min(corner + 0.5, seat / 4))
    length = so_far.get("seat_length_mm", max(radius + 1, depth + 1.5))
    slot, offset = so_far.get("slot_width_mm", thickness + 1.8), so_far.get("slot_offset_mm", 0.0)
    return Pad(
        seat_diameter_mm=seat,
        seat_length_mm=length,
        seat_corner_radius_mm=radius,
        stem_diameter_mm=so_far.get("stem_diameter_mm", 0.0) if "stem_length_mm" in so_far else 0.0,
        stem_length_mm=so_far.get("stem_length_mm", 0.0) if "stem_diameter_mm" in so_far else 0.0,
        body_diameter_mm=so_far.get("body_diameter_mm", max(seat + 16, slot + 24 + 2 * offset)),
        slot_width_mm=slot,
        slot_depth_mm=so_far.get("slot_depth_mm", max(3.0, clear - 3.5)),
        slot_offset_mm=offset,
        web_mm=so_far.get("web_mm", max(10.0, depth + 6, length + 4)),
        slot_corner_radius_mm=so_far.get("slot_corner_radius_mm", 0.3),
        slot_mouth_chamfer_mm=1.0,
        edge_chamfer_mm=1.0,
    )


def _with_options(pad: Pad, known: Known) -> Pad:
    """The same with a recess over what stands on the cup's floor and a pocket where the seam is not plain."""
    thick, drop = known.local_thickness_mm or 0.0, known.local_drop_mm or 0.0
    if known.floor_boss_height_mm and known.floor_boss_diameter_mm and not pad.has_stem:
        depth = known.floor_boss_height_mm + 2
        recess = known.floor_boss_diameter_mm + 3
        web = max(pad.web_mm, depth + 5)
        pad = pad.with_(seat_recess_diameter_mm=recess, seat_recess_depth_mm=depth, web_mm=web)
    if thick or drop:
        width = max(thick + 2, pad.slot_width_mm + 2 * pad.slot_mouth_chamfer_mm + 1)
        length = (known.local_length_mm or _TYPICAL_PLACE_MM) + 6
        open_by = drop + 2 if drop else 0.0
        least = 2 * (hypot(pad.slot_offset_mm + width / 2, length / 2) + pad.edge_chamfer_mm + 6)
        pad = pad.with_(
            relief_width_mm=width,
            relief_length_mm=length,
            relief_depth_mm=pad.slot_depth_mm + open_by,
            web_mm=max(pad.web_mm, max(pad.seat_length_mm, pad.seat_recess_depth_mm) + open_by + 4),
            body_diameter_mm=max(pad.body_diameter_mm, least),
        )
    return pad
