"""The main view's sizes by function from the seat face: heights at its left, what reaches in or down at its right, diameters."""

from collections.abc import Iterable
from contextlib import suppress
from itertools import permutations, product
from math import sqrt

from geometry.drawing.canvas import Canvas
from geometry.drawing.main_notes import ASIDE, note, placed_or_moved
from geometry.drawing.main_plan import Plan, half_body, half_top
from geometry.drawing.model import Measure, Point
from geometry.drawing.placing import NoRoomError, Side, Span, WordsAt, place_span
from geometry.drawing.scales import Scale
from geometry.pad import Pad

_FROM_TOP = frozenset({"relief_depth_mm"})
"""Their words stand best above, out of the way of what reaches down."""


def heights(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """Left of the part, from the seat face: seat length, web with slot depth in one chain, and what they add up to."""
    k, side = scale.factor, half_top(pad)
    face: Point = (-pad.seat_flat_diameter_mm / 2, 0)
    floor: Point = (-side, pad.web_mm)
    if pad.has_slot and not pad.is_crossed:
        wide = pad.relief_width_mm / 2 if pad.floor_is_open else pad.slot_width_mm / 2 - pad.slot_corner_radius_mm
        floor = (pad.slot_offset_mm - wide, pad.web_mm)
    lip_x = (
        pad.skirt_bore_mm / 2 if pad.has_skirt else min(half_body(pad), pad.body_diameter_mm / 2 - pad.edge_chamfer_mm)
    )
    lip: Point = (-lip_x, pad.seat_length_mm)
    top: Point = (-side, pad.body_top_mm)
    peak: Point = (-(pad.plug_width_mm / 2 - pad.edge_chamfer_mm), pad.top_height_mm) if pad.has_plug else top
    foot: Point = (-pad.stem_diameter_mm / 2, -pad.stem_length_mm)
    if pad.foot_depth_mm > pad.stem_length_mm:
        foot = (-min(half_body(pad), pad.body_diameter_mm / 2 - pad.edge_chamfer_mm), -pad.foot_depth_mm)

    def at_left(name: str, start: Point, end: Point) -> Span:
        (ax, az), (bx, bz) = start, end
        return Span(shown[name], "left", (ax * k, az * k), (bx * k, bz * k), -half_body(pad) * k)

    def span(name: str, start: Point, end: Point, rows: tuple[int, ...], words: tuple[WordsAt, ...]) -> None:
        if name in shown:
            place_span(canvas, at_left(name, start, end), scale, rows=rows, words=words)

    # The outermost first: its extension lines are there when the words of the inner ones look for room.
    span("overall_height_mm", foot, peak, (3, 4, 5), ("middle", "low", "high"))
    span("top_height_mm", face, peak, (2, 3, 4), ("middle", "high", "low"))
    span("web_mm", face, floor, (1, 3, 4), ("middle", "low"))
    span("slot_depth_mm", floor, top, (1, 3, 4), ("middle", "high"))
    span("plug_height_mm", top, peak, (1, 3, 4), ("middle", "high"))
    if "seat_length_mm" in shown:
        seat = at_left("seat_length_mm", face, lip)
        # A short one has its arrows outside, where extension lines of others may cross them; at the right a stem reaches down.
        ends: tuple[WordsAt, ...] = ("high", "low") if pad.has_stem else ("low", "high")
        elsewhere = (seat.mirrored(), ("middle", *ends))
        place_span(canvas, seat, scale, rows=(0, 3, 4), words=("middle", "low", "high"), else_at=elsewhere)


def reaches(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """Right of the part: what reaches down from the top, the seat face or the lip, or up into the seat."""
    k, stem = scale.factor, pad.stem_diameter_mm / 2
    face: Point = (pad.seat_flat_diameter_mm / 2, 0)
    rim = min(half_body(pad), pad.body_diameter_mm / 2 - pad.edge_chamfer_mm)
    recess, relief = pad.seat_recess_diameter_mm / 2, pad.slot_offset_mm + pad.relief_width_mm / 2
    spans: tuple[tuple[str, Point, Point], ...] = (
        ("relief_depth_mm", (relief, pad.body_top_mm - pad.relief_depth_mm), (half_top(pad), pad.body_top_mm)),
        ("skirt_length_mm", (pad.skirt_bore_mm / 2, pad.seat_length_mm), (rim, pad.foot_bottom_mm)),
        ("cross_hole_distance_mm", face, (stem, -pad.cross_hole_distance_mm)),
        ("seat_recess_depth_mm", face, (recess, pad.seat_recess_depth_mm)),
        ("stem_length_mm", face, (stem, -pad.stem_length_mm)),
    )
    given = [
        Span(shown[name], "right", (ax * k, az * k), (bx * k, bz * k), half_body(pad) * k)
        for name, (ax, az), (bx, bz) in spans
        if name in shown
    ]
    _place_in_some_order(canvas, given, scale)
    if pad.has_cross_hole:
        radius = pad.cross_hole_diameter_mm / 2
        at = (sqrt(stem**2 - radius**2), radius - pad.cross_hole_distance_mm)
        name = "cross_hole_diameter_mm"
        placed_or_moved(
            canvas,
            plan,
            name,
            lambda canvas: note(canvas, shown[name], scale, ((at, ASIDE),)),
            is_seen=not pad.has_skirt,
        )


def _place_in_some_order(canvas: Canvas, spans: list[Span], scale: Scale) -> None:
    """Spans at one side, in the first order in which all find room: words that stick out best come last, where they cross least."""
    for upwards, order in product((False, True), permutations(sorted(spans, key=lambda span: not span.holds_words))):
        trial = canvas.copied()
        with suppress(NoRoomError):
            for span in order:
                goes_up = upwards != (span.measure.name in _FROM_TOP)
                ends: tuple[WordsAt, ...] = ("high", "low") if goes_up else ("low", "high")
                place_span(trial, span, scale, rows=range(6), words=("middle", *ends))
            canvas.become(trial)
            return
    raise NoRoomError(f"no room for {', '.join(span.measure.name for span in spans)} at {scale.words}")


def diameters_further_out(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The same with a row left free above the part, for long words on a leader out of the slot."""
    if not pad.has_slot:
        raise NoRoomError("nothing comes out of the top")
    diameters(canvas, pad, shown, scale, plan, first_row=1)


def diameters(
    canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan, first_row: int = 0
) -> None:
    """Slot, plug and body above the part, what is round below it beneath it, the narrower nearer."""
    k, top, foot = scale.factor, pad.top_height_mm * scale.factor, -pad.foot_depth_mm * scale.factor - 1e-6

    def span(name: str, x: tuple[float, float], z: float, rows: Iterable[int], words: tuple[WordsAt, ...]) -> None:
        if name in shown:
            side: Side = "above" if z > pad.seat_length_mm + pad.edge_chamfer_mm else "below"
            placed = Span(shown[name], side, (x[0] * k, z * k), (x[1] * k, z * k), top if side == "above" else foot)
            place_span(canvas, placed, scale, rows=rows, words=words)

    def round_(name: str, diameter: float, z: float, rows: Iterable[int], words: tuple[WordsAt, ...]) -> None:
        span(name, (-diameter / 2, diameter / 2), z, rows, words)

    out: tuple[WordsAt, ...] = ("middle", "high", "low")
    rim = pad.body_top_mm - (0.0 if pad.has_flats else pad.edge_chamfer_mm)
    outer = "flats_width_mm" if pad.has_flats else "body_diameter_mm"
    round_(
        outer,
        2 * half_body(pad),
        max(rim, pad.seat_length_mm + pad.edge_chamfer_mm + 1e-6),
        range(1 + first_row, 6),
        out,
    )
    round_("plug_width_mm", pad.plug_width_mm, pad.top_height_mm - pad.edge_chamfer_mm, (0, 2, 3), out)
    if pad.has_slot:
        mouth, x, half = pad.body_top_mm - pad.slot_mouth_chamfer_mm, pad.slot_offset_mm, pad.slot_width_mm / 2
        rows = (first_row, *range(2 + first_row, 6))
        span("slot_width_mm", (x - half, x + half), mouth, rows, ("middle", "low", "high"))
    below = (1, 0, *range(2, 8))
    round_("seat_diameter_mm", pad.seat_diameter_mm, pad.seat_corner_radius_mm, below, ("middle", "low", "high"))
    round_("stem_diameter_mm", pad.stem_diameter_mm, -pad.stem_length_mm, (0, *range(2, 8)), out)
    round_("seat_recess_diameter_mm", pad.seat_recess_diameter_mm, 0.0, (0, *range(2, 8)), out)
    round_("skirt_bore_mm", pad.skirt_bore_mm, pad.foot_bottom_mm, range(2, 8), out)
