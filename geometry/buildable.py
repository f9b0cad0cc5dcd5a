"""Which dimensions make a single solid body, and which contradict each other."""

from math import hypot, sqrt

from geometry.errors import BadMeasurementsError, Problem
from geometry.pad import Pad

FUSED_MM = 0.5
"""Two diameters closer than this would leave a fin instead of a shoulder."""


def require_buildable(pad: Pad) -> None:
    """Refuse a combination of dimensions that is no single solid body of this shape.

    Raises BadMeasurementsError naming the dimension (as ``fixed.…``) and what it would have to be.
    """
    problems = tuple(
        Problem(f"fixed.{name}", getattr(pad, name), f"{words} Change it or let it go.")
        for name, broken, words in _obstacles(pad)
        if broken
    )
    if problems:
        raise BadMeasurementsError(problems)


Obstacle = tuple[str, bool, str]
"""One way in which dimensions contradict each other: (dimension, is it so, words)."""


def _obstacles(pad: Pad) -> tuple[Obstacle, ...]:
    return (
        *_half_features(pad),
        *_of_the_foot(pad),
        *(_of_the_skirt(pad) if pad.has_skirt else ()),
        *_of_the_body(pad),
        *(_of_the_slot(pad) if pad.has_slot else _without_a_slot(pad)),
        *(_of_the_relief(pad) if pad.has_relief else ()),
        *(_of_the_plug(pad) if pad.has_plug else ()),
    )


_TOGETHER = (
    ("recess", ("seat_recess_diameter_mm", "seat_recess_depth_mm")),
    ("skirt", ("skirt_bore_mm", "skirt_length_mm")),
    ("cross-hole", ("cross_hole_diameter_mm", "cross_hole_distance_mm")),
    ("relief", ("relief_width_mm", "relief_length_mm", "relief_depth_mm")),
    ("plug", ("plug_length_mm", "plug_width_mm", "plug_height_mm")),
)


def _half_features(pad: Pad) -> tuple[Obstacle, ...]:
    """Features of which some dimensions are given and others are not."""
    found = []
    for feature, names in _TOGETHER:
        given = [name for name in names if getattr(pad, name) > 0]
        if 0 < len(given) < len(names):
            missing = [name.removesuffix("_mm").replace("_", " ") for name in names if name not in given]
            found += [(name, True, f"A {feature} has no {' and no '.join(missing)}.") for name in given]
    return tuple(found)


def _of_the_foot(pad: Pad) -> tuple[Obstacle, ...]:
    stem_room = pad.seat_flat_diameter_mm - FUSED_MM
    hole, drop = pad.cross_hole_diameter_mm, pad.cross_hole_distance_mm
    return (
        (
            "seat_corner_radius_mm",
            pad.seat_corner_radius_mm > min(pad.seat_length_mm, (pad.seat_diameter_mm - FUSED_MM) / 2),
            f"A corner radius of {pad.seat_corner_radius_mm:g} mm does not fit on a seat {pad.seat_diameter_mm:g} mm across"
            f" and {pad.seat_length_mm:g} mm long.",
        ),
        (
            "stem_diameter_mm",
            pad.has_stem and pad.stem_diameter_mm > stem_room,
            f"A stem of {pad.stem_diameter_mm:g} mm leaves no seat face: at most {stem_room:g} mm fits.",
        ),
        (
            "seat_recess_diameter_mm",
            pad.has_recess and (pad.has_stem or not FUSED_MM <= pad.seat_recess_diameter_mm <= stem_room),
            f"A recess of {pad.seat_recess_diameter_mm:g} mm leaves no seat face"
            f"{' around a stem' if pad.has_stem else f': {FUSED_MM:g} to {stem_room:g} mm fits'}.",
        ),
        (
            "seat_recess_depth_mm",
            pad.has_recess and pad.seat_recess_depth_mm > pad.web_mm - FUSED_MM,
            f"A recess {pad.seat_recess_depth_mm:g} mm deep goes through a web of {pad.web_mm:g} mm.",
        ),
        (
            "cross_hole_diameter_mm",
            pad.has_cross_hole and hole > pad.stem_diameter_mm - FUSED_MM,
            f"A cross-hole of {hole:g} mm leaves nothing of a stem {pad.stem_diameter_mm:g} mm thick.",
        ),
        (
            "cross_hole_distance_mm",
            pad.has_cross_hole and not hole / 2 + FUSED_MM / 2 <= drop <= pad.stem_length_mm - hole / 2 - FUSED_MM / 2,
            f"A cross-hole of {hole:g} mm, {drop:g} mm below the seat face, does not lie within a stem"
            f" {pad.stem_length_mm:g} mm long.",
        ),
    )


def _of_the_skirt(pad: Pad) -> tuple[Obstacle, ...]:
    hole_top = pad.cross_hole_diameter_mm / 2 - pad.cross_hole_distance_mm
    return (
        (
            "skirt_bore_mm",
            pad.skirt_bore_mm < pad.seat_diameter_mm + FUSED_MM
            or pad.skirt_bore_mm > pad.body_diameter_mm - 2 * (pad.edge_chamfer_mm + FUSED_MM),
            f"A skirt of {pad.skirt_bore_mm:g} mm inside has no room between a seat of {pad.seat_diameter_mm:g} mm and a body"
            f" of {pad.body_diameter_mm:g} mm.",
        ),
        (
            "skirt_length_mm",
            pad.has_cross_hole and pad.foot_bottom_mm < hole_top + FUSED_MM,
            f"A skirt {pad.skirt_length_mm:g} mm long hangs in front of the stem's cross-hole.",
        ),
        (
            "flats_width_mm",
            pad.has_flats and pad.flats_width_mm < pad.skirt_bore_mm + 2 * FUSED_MM,
            f"Flats {pad.flats_width_mm:g} mm apart cut into a skirt of {pad.skirt_bore_mm:g} mm inside.",
        ),
    )


def _of_the_body(pad: Pad) -> tuple[Obstacle, ...]:
    lip_mm = max(FUSED_MM, 2 * pad.edge_chamfer_mm)
    flats_least = pad.seat_diameter_mm + FUSED_MM
    return (
        (
            "body_diameter_mm",
            pad.body_diameter_mm < pad.seat_diameter_mm + lip_mm,
            f"A body of {pad.body_diameter_mm:g} mm leaves no lip around a seat of {pad.seat_diameter_mm:g} mm.",
        ),
        (
            "flats_width_mm",
            pad.has_flats and not flats_least <= pad.flats_width_mm <= pad.body_diameter_mm - lip_mm - FUSED_MM,
            f"Flats {pad.flats_width_mm:g} mm apart do not fit between a seat of {pad.seat_diameter_mm:g} mm and a body of"
            f" {pad.body_diameter_mm:g} mm.",
        ),
        (
            "web_mm",
            pad.web_mm <= pad.seat_length_mm
            or pad.web_mm < pad.seat_length_mm + pad.edge_chamfer_mm
            or pad.body_top_mm < pad.seat_length_mm + 2 * pad.edge_chamfer_mm + FUSED_MM,
            f"A web of {pad.web_mm:g} mm leaves no body above a seat {pad.seat_length_mm:g} mm long.",
        ),
    )


def _of_the_slot(pad: Pad) -> tuple[Obstacle, ...]:
    breaks = pad.edge_chamfer_mm + pad.slot_mouth_chamfer_mm
    across = min(pad.flats_width_mm or pad.body_diameter_mm, pad.body_diameter_mm)
    narrowest = min(pad.slot_width_mm, pad.cross_slot_width_mm or pad.slot_width_mm)
    wall = (across - pad.slot_width_mm) / 2 - pad.slot_offset_mm
    return (
        (
            "slot_offset_mm",
            pad.slot_offset_mm < 0,
            f"A slot {pad.slot_offset_mm:g} mm off the middle is on the side that has no name: turn the pad round.",
        ),
        (
            "slot_width_mm",
            wall < breaks + FUSED_MM,
            f"A slot of {pad.slot_width_mm:g} mm leaves no walls in a body of {across:g} mm"
            f"{f', {pad.slot_offset_mm:g} mm off its middle' if pad.slot_offset_mm else ''}.",
        ),
        (
            "cross_slot_width_mm",
            pad.is_crossed and (_post_mm(pad) < FUSED_MM or pad.slot_offset_mm > 0 or pad.has_relief),
            f"A second slot of {pad.cross_slot_width_mm:g} mm leaves no walls, or meets a slot that is off centre or has a relief.",
        ),
        (
            "slot_corner_radius_mm",
            pad.slot_corner_radius_mm > min(narrowest / 2, pad.slot_depth_mm - pad.slot_mouth_chamfer_mm),
            f"A floor radius of {pad.slot_corner_radius_mm:g} mm does not fit in a slot {narrowest:g} mm wide"
            f" and {pad.slot_depth_mm:g} mm deep.",
        ),
        (
            "slot_mouth_chamfer_mm",
            pad.slot_mouth_chamfer_mm >= pad.slot_depth_mm,
            f"A mouth chamfer of {pad.slot_mouth_chamfer_mm:g} mm is not less than the slot depth {pad.slot_depth_mm:g} mm.",
        ),
    )


def _post_mm(pad: Pad) -> float:
    """How far the top of each of the four posts between crossed slots reaches out from their corner."""
    breaks = 2 * pad.slot_mouth_chamfer_mm
    corner = hypot(pad.slot_width_mm + breaks, pad.cross_slot_width_mm + breaks) / 2
    return pad.body_diameter_mm / 2 - pad.edge_chamfer_mm - corner


def _without_a_slot(pad: Pad) -> tuple[Obstacle, ...]:
    """What only a slot can have."""
    return tuple(
        (name, getattr(pad, name) > 0, f"Without a slot there is no place for {words} of {getattr(pad, name):g} mm.")
        for name, words in (
            ("slot_depth_mm", "a slot depth"),
            ("cross_slot_width_mm", "a second slot"),
            ("relief_depth_mm", "a relief depth"),
        )
    )


def _of_the_relief(pad: Pad) -> tuple[Obstacle, ...]:
    half_x = pad.slot_offset_mm + pad.relief_width_mm / 2
    across = (pad.flats_width_mm or pad.body_diameter_mm) / 2
    corner = hypot(half_x, pad.relief_length_mm / 2)
    radius = pad.body_diameter_mm / 2 - pad.edge_chamfer_mm - FUSED_MM
    longest = 2 * sqrt(max(0.0, radius**2 - half_x**2))
    return (
        (
            "relief_width_mm",
            pad.relief_width_mm < pad.slot_width_mm + 2 * pad.slot_mouth_chamfer_mm + FUSED_MM
            or half_x > across - pad.edge_chamfer_mm - FUSED_MM,
            f"A relief {pad.relief_width_mm:g} mm wide does not lie between a slot of {pad.slot_width_mm:g} mm and the outside of"
            f" the body.",
        ),
        (
            "relief_length_mm",
            pad.relief_length_mm < FUSED_MM or corner > radius,
            f"A relief {pad.relief_length_mm:g} mm long does not stay within the body: {FUSED_MM:g} to {longest:.1f} mm.",
        ),
        (
            "relief_depth_mm",
            pad.relief_depth_mm > pad.body_top_mm - max(pad.seat_length_mm, pad.seat_recess_depth_mm) - FUSED_MM
            or pad.relief_depth_mm <= pad.slot_mouth_chamfer_mm,
            f"A relief {pad.relief_depth_mm:g} mm deep does not end inside the body.",
        ),
    )


def _of_the_plug(pad: Pad) -> tuple[Obstacle, ...]:
    half_x, half_y, radius = pad.plug_width_mm / 2, pad.plug_length_mm / 2, pad.plug_corner_radius_mm
    reach = radius + hypot(half_x - radius, half_y - radius)
    room = pad.body_diameter_mm / 2 - pad.edge_chamfer_mm - FUSED_MM
    across = (pad.flats_width_mm or pad.body_diameter_mm) / 2 - FUSED_MM
    return (
        (
            "plug_width_mm",
            min(half_x, half_y) < pad.edge_chamfer_mm + FUSED_MM or reach > room or half_x > across or pad.has_slot,
            f"A plug {pad.plug_length_mm:g} × {pad.plug_width_mm:g} mm stands in a slot, leaves no shoulder on a body of"
            f" {pad.body_diameter_mm:g} mm, or is all chamfer.",
        ),
        (
            "plug_corner_radius_mm",
            radius > min(half_x, half_y),
            f"A corner radius of {radius:g} mm does not fit on a plug {pad.plug_length_mm:g} × {pad.plug_width_mm:g} mm.",
        ),
        (
            "plug_height_mm",
            pad.plug_height_mm <= pad.edge_chamfer_mm,
            f"A plug {pad.plug_height_mm:g} mm high is all chamfer.",
        ),
    )
