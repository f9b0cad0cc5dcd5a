"""Round windows of the section at a larger scale, for corners that the main scale hides."""

from dataclasses import dataclass
from math import hypot

from geometry.drawing.callouts import place_square
from geometry.drawing.canvas import Canvas
from geometry.drawing.facts import SheetFacts
from geometry.drawing.geometrical import FLOOR_ROUGHNESS_UM
from geometry.drawing.main_plan import lip_outer_mm, seat_corner_needs_detail
from geometry.drawing.model import Box, Measure, Point, Text, View
from geometry.drawing.placing import Pointer, place_pointer
from geometry.drawing.scales import Scale, largest_scale
from geometry.drawing.signs import counted, stacked, texture, tolerance_frame
from geometry.drawing.style import STYLE
from geometry.drawing.windows import detail_view
from geometry.geometrical import FLOOR_PARALLELISM, LIP_RUN_OUT
from geometry.pad import Pad

_LEAST_WINDOW_MM = 1.5
_ABOUT_LIP = 0.75
"""A window is 2.2 times its corner's size in radius; the lip's two ends need less about them."""
_ABOUT_GROOVE = 0.57
_ABOVE_MM = 0.8
"""Between a window and the shelf of words above it."""
_LEAST_IN_GROOVE_MM = 1.0
"""A seat corner that is smaller in the groove's window has one of its own; smaller than on the section, which has more about it."""
_UP_LEFT = (135.0, 125.0, 145.0, 115.0, 155.0)
_DOWN_RIGHT = (-45.0, -35.0, -55.0, -25.0, -65.0)
_LIP_SHARE = 1.2
"""A seat that is less high than this part of the window's radius stands in its middle, with the lip beside it."""
_AWAY_SHARE = 0.75
_STEEP = (115.0, 110.0, 120.0, 105.0, 125.0)


@dataclass(slots=True)
class Detail:
    """One window: its letter, what it shows and where it lies on the part."""

    letter: str
    view: View
    scale: Scale
    canvas: Canvas
    centre: Point
    window_mm: float


def details_of(
    pad: Pad,
    shown: dict[str, Measure],
    main: Scale,
    facts: SheetFacts,
    *,
    reach_mm: float,
    lip_apart: bool,
    narrow: bool = False,
    shared: bool = True,
) -> tuple[Detail, ...]:
    """The details that a section at a scale needs, their windows ``reach_mm`` in radius on paper.

    ``narrow`` puts words above the slot floor's window instead of beside it; ``shared`` lets a small corner of the seat stand
    in the window of the groove beside it.
    """
    found = [_slot_detail(pad, shown, main, facts, reach_mm, narrow=narrow)] if pad.has_slot else []
    has_corner = "seat_corner_radius_mm" in shown and seat_corner_needs_detail(pad, main)
    if lip_apart and pad.has_skirt:
        together = shared and has_corner and _corner_shows_in_groove(pad, main, reach_mm)
        has_corner = has_corner and not together
        found.append(_groove_detail(pad, shown, main, facts, reach_mm, with_corner=together))
    if has_corner:
        found.append(_corner_detail(pad, shown, main, facts, reach_mm))
    if lip_apart and not pad.has_skirt:
        found.append(_lip_detail(pad, shown, main, facts, reach_mm))
    return tuple(found)


def _slot_detail(
    pad: Pad, shown: dict[str, Measure], main: Scale, facts: SheetFacts, reach: float, *, narrow: bool
) -> Detail:
    """Detail X: the right corner of the slot's floor with its radius, its parallelism and its texture."""
    radius = pad.slot_corner_radius_mm
    detail = _window(pad, "X", (pad.slot_offset_mm + pad.slot_width_mm / 2, pad.web_mm), radius, main, reach)
    k, canvas = detail.scale.factor, detail.canvas
    # Where on the floor the leader ends: half way between the corner and what else the window shows, or clear of words above it.
    seen = max(0.0, min(detail.window_mm, pad.slot_width_mm - radius) - radius)
    floor_mm = radius + seen * (_AWAY_SHARE if narrow else 0.5)
    # A crossing's floors are one level, and both carry.
    count = "2×" if pad.is_crossed else ""
    sign = tolerance_frame(FLOOR_PARALLELISM, facts.figure_unit, critical=facts.critical, is_shared=pad.is_crossed)
    if not facts.as_printed:
        sign = stacked(sign, texture(FLOOR_ROUGHNESS_UM), count=count)
    elif count:
        sign = counted(sign, count)
    tips = [(-floor_mm * k, 0.0)]
    if radius:
        angles = _STEEP if narrow else _UP_LEFT
        centre = (-radius * k, radius * k)
        words = shown["slot_corner_radius_mm"]
        pointer = Pointer(words, "radius", centre, radius * k, angles, _lengths(reach), inner=True, is_turned=narrow)
        place_pointer(canvas, detail.scale, pointer)
    place_square(canvas, sign, tips, "slot floor parallelism", up=True, ways=(1, -1) if narrow else (-1,))
    return _named(detail)


def _lip_detail(pad: Pad, shown: dict[str, Measure], main: Scale, facts: SheetFacts, reach: float) -> Detail:
    """Detail Z: the lip with its chamfer and its run-out, where both are too near each other on the section."""
    seat, lip, edge = pad.seat_diameter_mm / 2, pad.seat_length_mm, pad.edge_chamfer_mm
    outer = lip_outer_mm(pad)
    body = outer if pad.has_flats else outer + edge
    half = hypot(body - seat, edge) / 2
    centre = ((seat + body) / 2, lip + edge / 2)
    detail = _window(pad, "Z", centre, half * _ABOUT_LIP, main, reach)
    k = detail.scale.factor
    if not pad.has_flats:
        at = ((body - edge / 2 - centre[0]) * k, 0.0)
        pointer = Pointer(shown["edge_chamfer_mm"], "note", at, 0.0, _DOWN_RIGHT, _lengths(reach))
        place_pointer(detail.canvas, detail.scale, pointer)
    tip = (((seat + outer) / 2 - centre[0]) * k, -edge / 2 * k)
    frame = tolerance_frame(LIP_RUN_OUT, facts.figure_unit, critical=facts.critical)
    place_square(detail.canvas, frame, [tip], "lip run-out", up=False)
    return _named(detail)


def _groove_detail(
    pad: Pad, shown: dict[str, Measure], main: Scale, facts: SheetFacts, reach: float, *, with_corner: bool
) -> Detail:
    """Detail Z: the narrow groove between seat and skirt with the run-out of its lip, and the seat's corner where it is small."""
    seat, bore, lip = pad.seat_diameter_mm / 2, lip_outer_mm(pad), pad.seat_length_mm
    low = 0.0 if with_corner else max(0.0, lip - (bore - seat))
    centre = ((seat + bore) / 2, (low + lip) / 2)
    half = hypot(bore - seat, lip - low) / 2
    detail = _window(pad, "Z", centre, half * _ABOUT_GROOVE, main, reach)
    k, radius = detail.scale.factor, pad.seat_corner_radius_mm
    if with_corner:
        at = ((seat - radius - centre[0]) * k, (radius - centre[1]) * k)
        # From inside: from below its leader would cross that of the run-out.
        pointer = Pointer(
            shown["seat_corner_radius_mm"], "radius", at, radius * k, _UP_LEFT, _lengths(reach), inner=True
        )
        place_pointer(detail.canvas, detail.scale, pointer)
    tip = ((bore - seat) * 0.15 * k, (lip - centre[1]) * k)
    frame = tolerance_frame(LIP_RUN_OUT, facts.figure_unit, critical=facts.critical)
    # Out through the groove's opening: aside its leader would go through wall and hatching.
    place_square(detail.canvas, frame, [tip], "lip run-out", up=False, beyond=reach + tip[1])
    return _named(detail)


def _corner_shows_in_groove(pad: Pad, main: Scale, reach: float) -> bool:
    """Whether the groove's window is large enough on paper to point at the seat's corner in it."""
    if not pad.has_skirt:
        return False
    half = hypot(lip_outer_mm(pad) - pad.seat_diameter_mm / 2, pad.seat_length_mm) / 2
    return not seat_corner_needs_detail(pad, _scale_of(half * _ABOUT_GROOVE, main, reach), least_mm=_LEAST_IN_GROOVE_MM)


def lip_shows_in_corner(details: tuple[Detail, ...], pad: Pad) -> bool:
    """Whether the detail of the seat's corner shows the lip too, and so tells its run-out: the seat is very shallow."""
    return any(detail.letter == "Y" and _shows_lip(detail, pad) for detail in details)


def _shows_lip(detail: Detail, pad: Pad) -> bool:
    return not pad.has_skirt and pad.seat_length_mm < _LIP_SHARE * detail.window_mm


def _corner_detail(pad: Pad, shown: dict[str, Measure], main: Scale, facts: SheetFacts, reach: float) -> Detail:
    """Detail Y: the seat's corner radius, where it is too small on the section, and beside a shallow seat the lip's run-out."""
    radius, lip = pad.seat_corner_radius_mm, pad.seat_length_mm
    corner = (pad.seat_diameter_mm / 2, 0.0)
    detail = _window(pad, "Y", corner, radius, main, reach)
    is_shallow = _shows_lip(detail, pad)
    if is_shallow:
        corner = (corner[0], lip / 2)
        detail = _window(pad, "Y", corner, radius, main, reach)
    k = detail.scale.factor
    at = (-radius * k, (radius - corner[1]) * k)
    pointer = Pointer(shown["seat_corner_radius_mm"], "radius", at, radius * k, _DOWN_RIGHT, _lengths(reach))
    place_pointer(detail.canvas, detail.scale, pointer)
    if is_shallow:
        seen = min(lip_outer_mm(pad) - corner[0], (detail.window_mm**2 - (lip / 2) ** 2) ** 0.5)
        frame = tolerance_frame(LIP_RUN_OUT, facts.figure_unit, critical=facts.critical)
        place_square(detail.canvas, frame, [(seen * 0.6 * k, lip / 2 * k)], "lip run-out", up=False, ways=(1,))
    return _named(detail)


def _scale_of(radius: float, main: Scale, reach: float) -> Scale:
    """The largest standard scale at which a window still shows the whole corner."""
    return max(largest_scale(reach / max(_LEAST_WINDOW_MM, 2.2 * radius)), main)


def _window(pad: Pad, letter: str, corner: Point, radius: float, main: Scale, reach: float) -> Detail:
    """A window about a corner, at the largest standard scale that still shows the whole corner."""
    scale = _scale_of(radius, main, reach)
    window = reach / scale.factor
    view = detail_view(pad, letter, centre=corner, window_mm=window)
    return Detail(letter, view, scale, Canvas(solids=[Box(-reach, -reach, reach, reach + _ABOVE_MM)]), corner, window)


def _named(detail: Detail) -> Detail:
    """The detail with its letter and scale above everything else."""
    words = f"{detail.letter} ({detail.scale.words})"
    detail.canvas.add_text(Text((0, detail.canvas.box.top + 3), words, STYLE.large_mm, "centre"))
    return detail


def _lengths(reach: float) -> tuple[float, ...]:
    return tuple(reach * share for share in (0.9, 1.0, 1.1, 1.2, 1.3, 1.4, 1.6, 1.8, 2.0))
