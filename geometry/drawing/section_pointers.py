"""What each balloon points at, and the dimension line that shows what is measured there."""

from collections.abc import Mapping
from dataclasses import dataclass

from geometry.drawing.section_faces import face_targets
from geometry.drawing.section_places import own_key
from geometry.drawing.section_scene import Scene
from geometry.drawing.section_spans import Span, across, narrow, upright
from geometry.outline import Point


@dataclass(frozen=True, slots=True)
class Pointer:
    """One balloon's target in model mm."""

    field: str
    title: str
    number: int
    at: Point
    span: Span
    value_mm: float | None
    """None where it is still to be measured, or left out."""
    is_optional: bool
    is_complete: bool
    """Whether everything required is known, so that the form is done."""

    @property
    def is_left(self) -> bool:
        """The jack's balloons stand on the left, the car's on the right, but for the outboard side's on the outboard side.

        So no leader passes the centre line, and none from the left can meet one from the right.
        """
        return self.at[0] < 0

    @property
    def words_if_missing(self) -> str:
        """What stands in place of the value where there is none."""
        if not self.is_optional:
            return "to be measured"
        return "not measured" if self.is_complete else "optional"


def pointers_of(scene: Scene) -> tuple[Pointer, ...]:
    """A pointer for every balloon that this jack and car are asked for, by number; numbers of the others stay free."""
    asked = scene.known.asked
    targets = _in_own_keys(scene, {**_jack_targets(scene), **_car_targets(scene)})
    targets.update(face_targets(scene))
    return tuple(
        Pointer(
            key,
            asked.titles[key],
            number,
            at=targets[key][0],
            span=targets[key][1],
            value_mm=scene.known.value_of(key),
            is_optional=key in asked.optional,
            is_complete=scene.known.is_complete,
        )
        for key, number in asked.balloons.items()
        if scene.known.asks_for(key)
    )


def _in_own_keys(scene: Scene, targets: "Targets") -> dict[str, tuple[Point, Span]]:
    """What a cup's and a seam's balloons point at, by the keys that another kind has in their place."""
    known = scene.known
    return {own: target for key, target in targets.items() if (own := own_key(known.foot, known.head, key))}


Targets = Mapping[str, tuple[Point, Span]]


def _jack_targets(s: Scene) -> Targets:
    k, inside, rim = s.unit_mm, s.bore, s.rim
    hole = s.hole or 0.2 * s.bore
    drop = s.corner * (1 - 0.5**0.5)
    arc_middle = (-inside + drop, drop)
    beside = -max(rim, s.body) - 4 * k
    if s.rim_low is None:
        lowered, low = (-rim, 0.7 * s.depth), s.depth
    else:
        lowered, low = (-rim if s.rim_low < s.under else -rim - 5 * k, s.rim_low), s.rim_low
    return {
        "jack.cup_bore_mm": ((-inside, (s.corner + s.depth) / 2), across(inside, s.under - 5 * k, s.depth / 2)),
        "jack.cup_depth_mm": (
            (-(inside + rim) / 2, s.depth),
            upright(beside, 0, s.depth, from_x=(-inside, -rim)),
        ),
        "jack.cup_corner_radius_mm": (
            arc_middle,
            Span((-inside + s.corner, s.corner), arc_middle, arrows="radius"),
        ),
        "jack.rim_diameter_mm": ((-rim, 0.25 * s.under), across(rim, s.under - 5 * k, s.under)),
        "jack.stem_hole_diameter_mm": ((-hole, 0.8 * s.under), across(hole, s.under - 5 * k, 0.8 * s.under)),
        "jack.rim_height_low_mm": (lowered, upright(-rim - 6 * k, s.ground, low, from_x=(-rim, -rim))),
    }


def _car_targets(s: Scene) -> Targets:
    k, half, m = s.unit_mm, s.thickness / 2, s.middle
    strip = (max(s.edge, min(s.wall_top, s.sill)) + s.sill) / 2
    beside = max(s.body, m + s.step) + 4 * k
    outboard, inboard = (m - s.step - s.reach) / 2, (m + s.step + s.reach) / 2
    return {
        "seam.thickness_mm": ((m + half, strip), narrow(half, strip, k, m)),
        "seam.bare_thickness_mm": ((m, s.edge + 0.35 * (strip - s.edge)), narrow(s.bare / 2, strip, k, m)),
        "seam.height_mm": (
            (m + half + 0.3 * (s.step - half), s.sill),
            upright(beside, s.edge, s.sill, from_x=(m + half, m + s.step)),
        ),
        "seam.edge_height_mm": (
            (m, s.edge),
            upright(max(s.rim, s.body) + 6 * k, s.ground, s.edge, from_x=(s.rim, m + half)),
        ),
        "seam.clear_outboard_mm": (
            (outboard, s.outboard),
            upright(outboard, s.edge, s.outboard, from_x=(m - half, m - s.step)),
        ),
        "seam.clear_inboard_mm": (
            (0.2 * (m + s.step) + 0.8 * s.reach, s.inboard),
            upright(inboard, s.edge, s.inboard, from_x=(m + half, m + s.step)),
        ),
    }


def pad_spans(scene: Scene) -> Mapping[str, Span]:
    """The dimension line of each size of the pad, by the dotted key under which it may be fixed."""
    k, p = scene.unit_mm, scene.pad
    seat, slot, stem = p.seat_diameter_mm / 2, p.slot_width_mm / 2, p.stem_diameter_mm / 2
    right, left = scene.body + 3 * k, -scene.body - 3 * k
    rounded = p.seat_corner_radius_mm * (1 - 0.5**0.5)
    arc_middle = (seat - rounded, rounded)
    spans = {
        "seat_diameter_mm": across(seat, p.seat_length_mm / 2, p.seat_length_mm / 2),
        "seat_length_mm": upright(left, 0, p.seat_length_mm, from_x=(-seat, -seat)),
        "seat_corner_radius_mm": Span(
            (seat - p.seat_corner_radius_mm, p.seat_corner_radius_mm), arc_middle, arrows="radius"
        ),
        "body_diameter_mm": across(scene.body, (p.seat_length_mm + p.web_mm) / 2, p.web_mm),
        "slot_width_mm": narrow(slot, p.web_mm + 0.4 * p.slot_depth_mm, k, scene.middle),
        "slot_depth_mm": upright(right, p.web_mm, p.top_height_mm, from_x=(scene.middle + slot, scene.side)),
        "web_mm": upright(right, 0, p.web_mm, from_x=(0, scene.middle + slot)),
    }
    if p.has_stem:
        spans["stem_diameter_mm"] = across(stem, -p.stem_length_mm / 2, -p.stem_length_mm / 2)
        spans["stem_length_mm"] = upright(0, -p.stem_length_mm, 0, from_x=(0, 0))
    return {f"fixed.{name}": span for name, span in (spans | _option_spans(scene)).items()}


def _option_spans(scene: Scene) -> dict[str, Span]:
    """The same for what not every pad has, as far as it lies in the cut."""
    k, p, m = scene.unit_mm, scene.pad, scene.middle
    recess, relief, floor = p.seat_recess_diameter_mm / 2, p.relief_width_mm / 2, p.body_top_mm - p.relief_depth_mm
    spans: dict[str, Span] = {}
    if p.has_recess:
        spans["seat_recess_diameter_mm"] = across(recess, p.seat_recess_depth_mm / 2, p.seat_recess_depth_mm / 2)
        spans["seat_recess_depth_mm"] = upright(recess + 2 * k, 0, p.seat_recess_depth_mm, from_x=(recess, recess))
    if m:
        y = p.body_top_mm + 2 * k
        spans["slot_offset_mm"] = Span((0, y), (m, y), (((0, p.body_top_mm), (0, y)), ((m, p.body_top_mm), (m, y))))
    if p.has_relief:
        spans["relief_width_mm"] = narrow(relief, max(floor, p.web_mm) + 0.6 * p.slot_depth_mm, k, m)
        spans["relief_depth_mm"] = upright(scene.body + 3 * k, floor, p.body_top_mm, from_x=(m + relief, scene.side))
    if p.has_flats:
        spans["flats_width_mm"] = across(scene.side, (p.seat_length_mm + p.web_mm) / 2, p.web_mm)
    return spans
