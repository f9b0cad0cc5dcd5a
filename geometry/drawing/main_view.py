"""The main view with its dimensions: section A–A across the slot, everything sized by function from the seat face."""

from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from itertools import permutations, product
from math import inf, sqrt

from geometry.drawing.callouts import place_axis_datum, place_beside, place_callout, place_datum, place_square
from geometry.drawing.canvas import BESIDE, Canvas
from geometry.drawing.facts import Units
from geometry.drawing.geometrical import FLOOR_ROUGHNESS_UM, SEAT_ROUGHNESS_UM
from geometry.drawing.meeting import rival
from geometry.drawing.model import Box, Dimension, Measure, Point
from geometry.drawing.notes import Root, lead_in_words, root_words
from geometry.drawing.placing import NoRoomError, Pointer, Side, Span, WordsAt, place_pointer, place_span
from geometry.drawing.scales import Scale
from geometry.drawing.signs import lines_of_words, stacked, texture, tolerance_frame
from geometry.drawing.style import STYLE
from geometry.drawing.views import section_view
from geometry.geometrical import LIP_RUN_OUT, PLACE_AXIS, SEAT_FACE, carrying_parallelism, location_of
from geometry.pad import Pad

_LENGTHS = (5.0, 7.0, 9.0, 12.0, 15.0, 19.0, 24.0, 30.0, 37.0, 45.0, 55.0, 70.0)
_CORNER = (-45.0, -35.0, -55.0, -25.0, -65.0, -15.0, -75.0)
_ASIDE = (-20.0, -10.0, -35.0, 0.0, 10.0, 20.0, -50.0, 35.0)
_UP = (60.0, 45.0, 75.0, 30.0, 20.0, 12.0, 105.0, 120.0)
"""Directions in which leaders leave, the most wanted first."""
_DOWN = (-60.0, -45.0, -120.0, -135.0)
_DOWN_ASIDE = (-45.0, -30.0, -60.0, -20.0, -75.0, -10.0)
_FEW_CROSSED = 4
"""What a leader that could be a note instead may cost: to cross a dimension line and an extension line at most."""
_FROM_TOP = frozenset({"relief_depth_mm"})
"""Their words stand best above, out of the way of what reaches down."""
_NARROW_LIP_MM = 2.0
"""A lip that is narrower on paper, less its chamfer, is shown in a detail."""
_NARROW_GROOVE_MM = 3.2
"""A groove between seat and skirt that is narrower on paper is shown in a detail: extension lines go down from both its walls."""
_LITTLE_TROUBLE = 2.5
"""An outer radius crosses an extension line of its own seat, a frame beside the slot's width one of the body's."""
_SMALL_RADIUS_MM = 1.2
"""A seat corner that is smaller on paper is dimensioned in a detail."""


@dataclass(frozen=True, slots=True)
class Plan:
    """What goes onto the section and what into a detail or a note instead."""

    units: Units
    windows: tuple[tuple[Point, float], ...] = ()
    """Details: where they look, and how far about it, in model mm."""
    right_limit: float = inf
    lip_apart: bool = False
    """The lip has a detail of its own, with its chamfer and its run-out."""
    is_printed: bool = False
    """Built up in layers: no face has a sign of texture."""
    located_by: str = "seat_diameter_mm"
    """The diameter that keeps the pad in its place: its axis is a datum."""
    critical: tuple[str, ...] = ()
    """Dimensions and tolerances that an estimate depends on."""


_Step = Callable[[Canvas, Pad, dict[str, Measure], Scale, Plan], None]


class SectionCanvases:
    """The section at a scale with its dimensions, in paper mm about the view's origin, clear of its details' windows.

    Where one order of placing leaves leaders in the way of other lines, others are tried; what several orders begin with is
    placed once.
    """

    def __init__(self, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan, *, patience: int) -> None:
        self.of = (pad, shown, scale, plan)
        empty = _empty_canvas(pad, scale, plan)
        empty.patience = patience
        self.begun: dict[tuple[_Step, ...], Canvas | None] = {(): empty}
        self.found: list[Canvas] = []
        self.orders = iter(_ORDERS)

    def all(self) -> Iterator[Canvas]:
        """All that have room, in the order in which they are tried."""
        yield from tuple(self.found)
        for order in self.orders:
            canvas = self._after(order)
            if canvas:
                self.found.append(canvas)
                yield canvas

    def best(self) -> list[Canvas]:
        """All that have room, those that leave least trouble first; once one leaves little, no more are tried."""
        for canvas in self.all():
            if canvas.trouble <= _LITTLE_TROUBLE:
                break
        return sorted(self.found, key=lambda canvas: canvas.trouble)

    def _after(self, steps: tuple[_Step, ...]) -> Canvas | None:
        """What some steps leave; nothing where one of them finds no room."""
        if steps not in self.begun:
            before = self._after(steps[:-1])
            canvas = before.copied() if before else None
            try:
                if canvas:
                    steps[-1](canvas, *self.of)
            except NoRoomError:
                canvas = None
            self.begun[steps] = canvas
        return self.begun[steps]


def _empty_canvas(pad: Pad, scale: Scale, plan: Plan) -> Canvas:
    """The part's own places, that no words may stand on, and its axis."""
    k = scale.factor
    seat, body = pad.seat_diameter_mm * k / 2, _half_body(pad) * k
    low, high, top, foot = (z * k for z in (pad.foot_bottom_mm, pad.body_top_mm, pad.top_height_mm, -pad.foot_depth_mm))
    lip = pad.seat_length_mm * k
    canvas = Canvas(plan.right_limit, solids=[Box(-body, lip, body, high), Box(-seat, 0, seat, lip)])
    if pad.has_skirt:
        bore = pad.skirt_bore_mm * k / 2
        canvas.solids += [Box(-body, low, -bore, lip), Box(bore, low, body, lip)]
        # Behind the cut the skirt's rim shows from wall to wall.
        canvas.lines.append(((-bore, low), (bore, low)))
    if pad.has_stem:
        stem = pad.stem_diameter_mm * k / 2
        canvas.solids.append(Box(-stem, -pad.stem_length_mm * k, stem, 0))
    if pad.has_plug:
        plug = pad.plug_width_mm * k / 2
        canvas.solids.append(Box(-plug, high, plug, top))
    canvas.part = list(canvas.solids)
    canvas.add_edges(section_view(pad, over_mm=STYLE.centre_over_mm / k).shapes, k)
    for (x, y), reach in plan.windows:
        canvas.solids.append(Box((x - reach) * k, (y - reach) * k, (x + reach) * k, (y + reach) * k))
        canvas.circles.append(((x * k, y * k), reach * k))
    axes = [((0.0, foot - STYLE.centre_over_mm), (0.0, top + STYLE.centre_over_mm))]
    if pad.has_cross_hole:
        out, level = pad.stem_diameter_mm * k / 2 + STYLE.centre_over_mm, -pad.cross_hole_distance_mm * k
        axes.append(((-out, level), (out, level)))
    canvas.lines += axes
    canvas.rivals += [rival(axis, across=0.0, beside=BESIDE) for axis in axes]
    return canvas


def _half_body(pad: Pad) -> float:
    """Half the body's width in the section, in model mm."""
    return (pad.flats_width_mm if pad.has_flats else pad.body_diameter_mm) / 2


def _half_top(pad: Pad) -> float:
    """Half the width of the body's top as seen with the section, where a second slot leaves it, in model mm."""
    rim = pad.body_diameter_mm / 2 - pad.edge_chamfer_mm
    across = pad.cross_slot_width_mm / 2 + pad.slot_mouth_chamfer_mm if pad.is_crossed else 0.0
    return min(_half_body(pad), sqrt(rim**2 - across**2))


def _heights(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """Left of the part, from the seat face: seat length, web with slot depth in one chain, and what they add up to."""
    k, side = scale.factor, _half_top(pad)
    face: Point = (-pad.seat_flat_diameter_mm / 2, 0)
    floor: Point = (-side, pad.web_mm)
    if pad.has_slot and not pad.is_crossed:
        wide = pad.relief_width_mm / 2 if pad.floor_is_open else pad.slot_width_mm / 2 - pad.slot_corner_radius_mm
        floor = (pad.slot_offset_mm - wide, pad.web_mm)
    lip_x = (
        pad.skirt_bore_mm / 2 if pad.has_skirt else min(_half_body(pad), pad.body_diameter_mm / 2 - pad.edge_chamfer_mm)
    )
    lip: Point = (-lip_x, pad.seat_length_mm)
    top: Point = (-side, pad.body_top_mm)
    peak: Point = (-(pad.plug_width_mm / 2 - pad.edge_chamfer_mm), pad.top_height_mm) if pad.has_plug else top
    foot: Point = (-pad.stem_diameter_mm / 2, -pad.stem_length_mm)
    if pad.foot_depth_mm > pad.stem_length_mm:
        foot = (-min(_half_body(pad), pad.body_diameter_mm / 2 - pad.edge_chamfer_mm), -pad.foot_depth_mm)

    def span(name: str, start: Point, end: Point, rows: tuple[int, ...], words: tuple[WordsAt, ...]) -> None:
        if name in shown:
            (ax, az), (bx, bz) = start, end
            placed = Span(shown[name], "left", (ax * k, az * k), (bx * k, bz * k), -_half_body(pad) * k)
            place_span(canvas, placed, scale, rows=rows, words=words)

    # The outermost first: its extension lines are there when the words of the inner ones look for room.
    span("overall_height_mm", foot, peak, (3, 4, 5), ("middle", "low", "high"))
    span("top_height_mm", face, peak, (2, 3, 4), ("middle", "high", "low"))
    span("web_mm", face, floor, (1, 3, 4), ("middle", "low"))
    span("slot_depth_mm", floor, top, (1, 3, 4), ("middle", "high"))
    span("plug_height_mm", top, peak, (1, 3, 4), ("middle", "high"))
    span("seat_length_mm", face, lip, (0, 3, 4), ("middle", "low", "high"))


def _stem_length(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """Right of the part: what reaches down from the top, the seat face or the lip, or up into the seat."""
    k, stem = scale.factor, pad.stem_diameter_mm / 2
    face: Point = (pad.seat_flat_diameter_mm / 2, 0)
    rim = min(_half_body(pad), pad.body_diameter_mm / 2 - pad.edge_chamfer_mm)
    recess, relief = pad.seat_recess_diameter_mm / 2, pad.slot_offset_mm + pad.relief_width_mm / 2
    spans: tuple[tuple[str, Point, Point], ...] = (
        ("relief_depth_mm", (relief, pad.body_top_mm - pad.relief_depth_mm), (_half_top(pad), pad.body_top_mm)),
        ("skirt_length_mm", (pad.skirt_bore_mm / 2, pad.seat_length_mm), (rim, pad.foot_bottom_mm)),
        ("cross_hole_distance_mm", face, (stem, -pad.cross_hole_distance_mm)),
        ("seat_recess_depth_mm", (recess, 0), (recess, pad.seat_recess_depth_mm)),
        ("stem_length_mm", face, (stem, -pad.stem_length_mm)),
    )
    given = [
        Span(shown[name], "right", (ax * k, az * k), (bx * k, bz * k), _half_body(pad) * k)
        for name, (ax, az), (bx, bz) in spans
        if name in shown
    ]
    _place_in_some_order(canvas, given, scale)
    if pad.has_cross_hole:
        radius = pad.cross_hole_diameter_mm / 2
        at = (sqrt(stem**2 - radius**2), radius - pad.cross_hole_distance_mm)
        _note(canvas, shown, "cross_hole_diameter_mm", scale, ((at, _ASIDE),))


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


def _diameters_further_out(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The same with a row left free above the part, for long words on a leader out of the slot."""
    if not pad.has_slot:
        raise NoRoomError("nothing comes out of the top")
    _diameters(canvas, pad, shown, scale, plan, first_row=1)


def _diameters(
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
    if pad.is_crossed:
        rim = min(rim, pad.web_mm)
    more = first_row + (1 if pad.slot_offset_mm else 0)
    round_(
        outer,
        2 * _half_body(pad),
        max(rim, pad.seat_length_mm + pad.edge_chamfer_mm + 1e-6),
        range(1 + more, 6),
        out,
    )
    round_("plug_width_mm", pad.plug_width_mm, pad.top_height_mm - pad.edge_chamfer_mm, (0, 2, 3), out)
    if pad.has_slot:
        mouth, x, half = pad.body_top_mm - pad.slot_mouth_chamfer_mm, pad.slot_offset_mm, pad.slot_width_mm / 2
        # The offset nearer: its extension line goes through the middle of the slot, where the width's words stand.
        span("slot_width_mm", (x - half, x + half), mouth, (more, *range(2 + more, 6)), ("middle", "low", "high"))
        span("slot_offset_mm", (0, x), pad.body_top_mm, (first_row, 3, 4, 5), ("middle", "low", "high"))
    below = (1, 0, *range(2, 8))
    round_("seat_diameter_mm", pad.seat_diameter_mm, pad.seat_corner_radius_mm, below, ("middle", "low", "high"))
    round_("stem_diameter_mm", pad.stem_diameter_mm, -pad.stem_length_mm, (0, *range(2, 8)), out)
    round_("seat_recess_diameter_mm", pad.seat_recess_diameter_mm, 0.0, (0, *range(2, 8)), out)
    round_("skirt_bore_mm", pad.skirt_bore_mm, pad.foot_bottom_mm, range(2, 8), out)


def _mouth(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The chamfer of the slot's mouth, on a leader upwards."""
    mouth, z = pad.slot_width_mm / 2 + pad.slot_mouth_chamfer_mm / 2, pad.body_top_mm - pad.slot_mouth_chamfer_mm / 2
    left = tuple(180 - angle for angle in _UP)
    places = (((pad.slot_offset_mm + mouth, z), _UP), ((pad.slot_offset_mm - mouth, z), left))
    _note(canvas, shown, "slot_mouth_chamfer_mm", scale, places, mirrored=False)


def _edge(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The chamfer of the body's edges: at the lip or at the top, whichever has room; flats take it out of the section."""
    edge = pad.edge_chamfer_mm / 2
    rim = pad.body_diameter_mm / 2 - edge
    is_in_detail = plan.lip_apart and not pad.has_skirt
    if not is_in_detail and not pad.has_flats:
        low, top = (rim, pad.foot_bottom_mm + edge), (rim, pad.body_top_mm - edge)
        _note(canvas, shown, "edge_chamfer_mm", scale, ((low, _ASIDE), *(() if pad.is_crossed else ((top, _UP),))))


def _note(
    canvas: Canvas,
    shown: dict[str, Measure],
    name: str,
    scale: Scale,
    places: tuple[tuple[Point, tuple[float, ...]], ...],
    *,
    mirrored: bool = True,
) -> None:
    if name in shown:
        k = scale.factor
        pointers = [Pointer(shown[name], "note", (x * k, z * k), 0.0, angles, _LENGTHS) for (x, z), angles in places]
        both = [either for pointer in pointers for either in (pointer, pointer.mirrored())]
        place_pointer(canvas, scale, *(both if mirrored else pointers))


def _corner(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The seat's corner radius, where the section shows it large enough."""
    radius, k = pad.seat_corner_radius_mm, scale.factor
    if "seat_corner_radius_mm" in shown and not seat_corner_needs_detail(pad, scale):
        at = ((pad.seat_diameter_mm / 2 - radius) * k, radius * k)
        pointer = Pointer(shown["seat_corner_radius_mm"], "radius", at, radius * k, _CORNER, _LENGTHS)
        place_pointer(canvas, scale, pointer, pointer.mirrored())


def _datums(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """Datum A at the seat face, datum B at the axis of what locates the pad, and where slot or plug stand about that."""
    k = scale.factor
    face, body = pad.seat_flat_diameter_mm * k / 2, _half_body(pad) * k
    place_axis_datum(canvas, PLACE_AXIS, _placed(canvas, plan.located_by))
    beside = [(way * (body + x), 0.0) for x in (3.5, 5.0, 12.0, 17.0, 22.0, 30.0, 40.0, 50.0) for way in (-1, 1)]
    places = [((x, 0.0), 270.0) for x in _face_places(pad, scale)]
    places += [(foot, turn) for foot in beside for turn in (270.0, 90.0)]
    place_datum(canvas, SEAT_FACE, places, reached_from=face)
    location = location_of(pad)
    if location:
        line = _placed(canvas, "slot_width_mm" if pad.has_slot else "plug_width_mm").lines[0]
        frame = tolerance_frame(location, plan.units, critical=plan.critical)
        place_beside(canvas, frame, line, f"{location.feature} {location.characteristic}")


def _top(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """Parallelism and texture of a face that carries without a slot: a cushion's top, a plug's shoulder."""
    if pad.has_slot:
        return
    k, rim = scale.factor, pad.body_diameter_mm / 2 - pad.edge_chamfer_mm
    inner = pad.plug_width_mm / 2 if pad.has_plug else 0.0
    half = min(rim, _half_body(pad))
    tips = [((inner + (half - inner) * share) * k, pad.body_top_mm * k) for share in (0.5, 0.35, 0.65, 0.8, 0.2)]
    frame = tolerance_frame(carrying_parallelism(pad), plan.units, critical=plan.critical)
    sign = frame if plan.is_printed else stacked(frame, texture(FLOOR_ROUGHNESS_UM))
    place_square(canvas, sign, tips, "parallelism of the top", up=True, mirrored=True)


def _placed(canvas: Canvas, name: str) -> Dimension:
    return next(d for d in canvas.dimensions if d.measure.name == name)


def _face_places(pad: Pad, scale: Scale) -> list[float]:
    """Where on the seat face, left and right, a sign may stand, the most wanted first."""
    k = scale.factor
    face = pad.seat_flat_diameter_mm * k / 2
    stem = (pad.seat_recess_diameter_mm if pad.has_recess else pad.stem_diameter_mm if pad.has_stem else 0.0) * k / 2
    return [way * (stem + (face - stem) * share) for share in (0.75, 0.6, 0.9, 0.45, 0.3) for way in (1, -1)]


def with_signs(
    canvas: Canvas, pad: Pad, scale: Scale, units: Units, *, rooted: bool, textured: bool
) -> tuple[Canvas, frozenset[Root], bool]:
    """Roots and lead-in on leaders, and the seat's texture: which roots found room, and whether the texture did.

    What finds none, or only a leader that one cannot follow, is a note instead. What is placed first may bar the way of the
    other, so where care is taken both orders are tried.
    """
    found = []
    for texture_first in (False, True) if rooted and textured and canvas.patience else (False,):
        signed, told, is_textured = canvas, frozenset[Root](), False
        if textured and texture_first:
            signed, is_textured = _with_texture(signed, pad, scale)
        if rooted:
            signed, told = _with_roots(signed, pad, scale, units)
        if textured and not texture_first:
            signed, is_textured = _with_texture(signed, pad, scale)
        found.append((len(told) + is_textured, -signed.trouble, signed, told, is_textured))
    return max(found, key=lambda each: each[:2])[2:]


def _with_texture(canvas: Canvas, pad: Pad, scale: Scale) -> tuple[Canvas, bool]:
    """The seat face's texture, on a leader: the sign cannot stand upside down on the face itself."""
    tips = [(x, 0.0) for x in _face_places(pad, scale)[:4]]
    trial = canvas.copied()
    with suppress(NoRoomError):
        place_callout(trial, texture(SEAT_ROUGHNESS_UM), tips, _DOWN, "the seat face's texture")
        if trial.trouble - canvas.trouble <= _FEW_CROSSED:
            return trial, True
    return canvas, False


def _with_roots(canvas: Canvas, pad: Pad, scale: Scale, units: Units) -> tuple[Canvas, frozenset[Root]]:
    """The radius at the root of stem or plug and the lead-in at the stem's end on leaders, and which of them found room.

    None of them is drawn.
    """
    k, told = scale.factor, set()
    stem, plug = pad.stem_diameter_mm * k / 2, pad.plug_width_mm * k / 2
    top = pad.seat_recess_depth_mm * k if pad.has_recess else 0.0
    places: list[tuple[Root, str, Point, tuple[float, ...]]] = []
    if pad.has_stem:
        places.append(("stem root", root_words(units), (stem, top), _DOWN_ASIDE))
        places.append(("lead-in", lead_in_words(units), (stem, -pad.stem_length_mm * k), _DOWN_ASIDE))
    if pad.has_plug:
        places.append(("plug root", root_words(units), (plug, pad.body_top_mm * k), _UP))
    for root, words, tip, angles in places:
        trial = canvas.copied()
        with suppress(NoRoomError):
            place_callout(trial, lines_of_words((words,)), [tip], angles, root, mirrored=True)
            if trial.trouble - canvas.trouble <= _FEW_CROSSED:
                canvas = trial
                told.add(root)
    return canvas, frozenset(told)


def _lip(canvas: Canvas, pad: Pad, shown: dict[str, Measure], scale: Scale, plan: Plan) -> None:
    """The lip's run-out."""
    if not plan.lip_apart:
        k = scale.factor
        inner, outer = pad.seat_diameter_mm / 2, lip_outer_mm(pad)
        tips = [((inner + (outer - inner) * share) * k, pad.seat_length_mm * k) for share in (0.5, 0.65, 0.8)]
        frame = tolerance_frame(LIP_RUN_OUT, plan.units, critical=plan.critical)
        place_square(canvas, frame, tips, "lip run-out", up=False, mirrored=True)


def lip_outer_mm(pad: Pad) -> float:
    """Where the lip's face ends in the section, from the axis: at the skirt, a flat or the edge's chamfer."""
    if pad.has_skirt:
        return pad.skirt_bore_mm / 2
    return min(_half_body(pad), pad.body_diameter_mm / 2 - pad.edge_chamfer_mm)


def seat_corner_needs_detail(pad: Pad, scale: Scale) -> bool:
    """Whether the seat's corner is too small on paper to point at."""
    return 0 < pad.seat_corner_radius_mm * scale.factor < _SMALL_RADIUS_MM


def lip_needs_detail(pad: Pad, scale: Scale) -> bool:
    """Whether leaders at the lip would end where one cannot tell them from each other or from the seat's extension line."""
    width = (lip_outer_mm(pad) - pad.seat_diameter_mm / 2) * scale.factor
    if pad.has_skirt:
        return width < _NARROW_GROOVE_MM
    return width < _NARROW_LIP_MM and (pad.has_flats or pad.edge_chamfer_mm > 0)


_ORDERS: tuple[tuple[_Step, ...], ...] = (
    (_heights, _diameters, _stem_length, _datums, _top, _lip, _corner, _mouth, _edge),
    # Long words on a leader out of the slot go by below the outer diameter where no sign stands at the slot's dimension yet.
    (_heights, _diameters, _stem_length, _mouth, _datums, _top, _lip, _corner, _edge),
    (_heights, _diameters_further_out, _stem_length, _mouth, _datums, _top, _lip, _corner, _edge),
    (_heights, _diameters, _stem_length, _mouth, _lip, _edge, _corner, _datums, _top),
    (_heights, _mouth, _diameters, _stem_length, _datums, _top, _lip, _corner, _edge),
    (_heights, _mouth, _diameters, _stem_length, _lip, _corner, _edge, _datums, _top),
    (_heights, _stem_length, _diameters, _datums, _top, _lip, _corner, _mouth, _edge),
    # Long words on leaders may find room where signs have not taken it yet.
    (_heights, _stem_length, _diameters, _corner, _mouth, _edge, _datums, _top, _lip),
    (_heights, _diameters, _stem_length, _corner, _mouth, _edge, _datums, _top, _lip),
    # Signs at the end of a dimension line go where long words of depths would stand.
    (_heights, _diameters, _datums, _stem_length, _top, _lip, _corner, _mouth, _edge),
)
"""What is placed first finds room most easily."""
