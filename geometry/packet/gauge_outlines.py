"""Gauges to cut from card or film: closed outlines in true size, of jack and car as measured and of the pad as drawn."""

from dataclasses import replace

from geometry.design import Design
from geometry.drawing.facts import Units
from geometry.making.gauge_limits import second_slot_gauge
from geometry.making.own_words import JACKS, way_of
from geometry.outline import SAME_POINT_MM, Arc, Line, Outline, Point, corner, polyline
from geometry.packet.gauge_gaps import hidden_seat_gauges, plug_gauges, round_gauges
from geometry.packet.gauge_jack import car_gauges, jack_gauge
from geometry.packet.gauge_shapes import HANDLE_MM, LEAST_CARD_MM, SHOULDER_MM, SKIRT_SHARE, Gauge, closed, joined
from geometry.packet.words import pad_use, section_notes, sizes, slot_notes
from geometry.pad import Pad
from geometry.profile import section_outline
from geometry.spread import general_tolerance_mm
from geometry.units import LowerLimit, UpperLimit

FACE_SHOWN_MM = 8.0
BODY_SHOWN_MM = 6.0
RELIEF_MM = 0.6
"""Taken off where the gauge would stand on what a tool's nose leaves in an inner corner."""


def gauges_of(design: Design, units: Units) -> tuple[Gauge, ...]:
    """The gauges of a design, in the order of use: jack, seam, turning, milling; in the words of its kind of jack."""
    entry = design.ledger.get("slot_width_mm")
    tolerance_mm = entry.tolerance_mm if entry is not None else 0.0
    process = design.conditions.process
    pieces = pad_gauges(
        design.pad,
        units,
        slot_tolerance_mm=tolerance_mm,
        is_printed=process == "printed",
        is_by_hand=process == "hand_tools",
        is_fit=design.fit_to_make,
        way=way_of(design.conditions.foot),
    )
    return (jack_gauge(design, units), *car_gauges(design, units), *pieces)


def pad_gauges(
    pad: Pad,
    units: Units,
    *,
    slot_tolerance_mm: float = 0.0,
    is_printed: bool = False,
    is_by_hand: bool = False,
    is_fit: bool = True,
    way: str = "cup",
) -> tuple[Gauge, ...]:
    """The gauges of the pad itself: its section, its seat corner, and what it is cut to at both limits of its size."""
    part = "finished print" if is_printed else "finished part" if is_by_hand else "turned part"
    slots = slot_gauges(pad, units, tolerance_mm=slot_tolerance_mm, is_fit=is_fit) if pad.has_slot else ()
    return (
        _section(pad, units, way),
        *_corner(pad, units, part),
        *hidden_seat_gauges(pad, units),
        *(round_gauges(pad, units) if is_by_hand else ()),
        *slots,
        *plug_gauges(pad, units),
    )


def _section(whole_pad: Pad, units: Units, way: str) -> Gauge:
    """The pad itself, cut across its slot; a second slot, which runs along the cut, is left standing."""
    pad = replace(whole_pad, cross_slot_width_mm=0.0)
    use = (
        f"The pad as drawn: body {sizes(units, pad.body_diameter_mm)}, height {sizes(units, pad.overall_height_mm)}."
        f" {pad_use(pad, way)}{section_notes(whole_pad, units)}"
    )
    whole = joined(section_outline(pad))
    # With its slot off the middle the section has no half that tells all.
    half = whole if pad.slot_offset_mm else _right_half(pad)
    meets = "over the seam" if pad.has_slot else "into the hole" if pad.has_plug else "under the lift point"
    return Gauge("pad", f"Pad gauge: {JACKS[way].into} and {meets}", use, whole, half)


def _right_half(pad: Pad) -> Outline:
    """The section right of its axis, closed along the axis."""
    pieces: list[Arc | Line] = []
    for piece in section_outline(pad):
        is_last = piece.end[0] < SAME_POINT_MM and bool(pieces)
        # The floor is cut at the axis; a slot as round as it is wide ends there in an arc.
        pieces += polyline([piece.start, (0, piece.start[1])]) if is_last and isinstance(piece, Line) else [piece]
        if is_last:
            break
    return (*pieces, *polyline([pieces[-1].end, pieces[0].start]))


def _corner(pad: Pad, units: Units, part: str) -> tuple[Gauge, ...]:
    """What is left around seat corner, seat and lip; none where a skirt leaves no room for a piece of card."""
    seat, radius, lip = pad.seat_diameter_mm / 2, pad.seat_corner_radius_mm, pad.seat_length_mm
    flat = seat - radius - max(pad.stem_diameter_mm, pad.seat_recess_diameter_mm) / 2
    inner = seat - radius - min(FACE_SHOWN_MM, 0.8 * flat)
    around = _inside_skirt(pad, inner) if pad.has_skirt else _outside_body(pad, inner)
    if not around:
        return ()
    outline: Outline = (
        *polyline([*around, (seat, radius)]),
        *(piece.reversed() for piece in corner((seat - radius, 0), (seat, radius), (seat - radius, radius))),
        *polyline([(seat - radius, 0), (inner, 0)]),
    )
    round_off = (
        " Light at both ends of the corner: it still stands out, take more off. Light in its middle: too much is off."
        if radius > 0
        else ""
    )
    size = f"Corner R {sizes(units, radius)}, seat" if radius > 0 else "Seat"
    beside = " Hold it beside the flats." if pad.has_flats and not pad.has_skirt else ""
    use = (
        f"{size} length {sizes(units, lip)}. Against the {part} and a lamp, nothing turning: it sits on seat face,"
        f"{' corner,' if radius > 0 else ''} seat and lip without light between.{round_off}{beside}"
    )
    return (Gauge("corner", f"Seat corner gauge: against the {part}", use, outline, outline),)


def _outside_body(pad: Pad, inner: float) -> list[Point]:
    """From the seat face round the outside of the body to the seat."""
    seat, body, lip, edge = pad.seat_diameter_mm / 2, pad.body_diameter_mm / 2, pad.seat_length_mm, pad.edge_chamfer_mm
    top = min(lip + edge + BODY_SHOWN_MM, pad.body_top_mm - edge)
    relief = min(RELIEF_MM, (lip - pad.seat_corner_radius_mm) / 2, (body - edge - seat) / 2)
    outside = [(inner, 0.0), (inner, -HANDLE_MM), (body + HANDLE_MM, -HANDLE_MM), (body + HANDLE_MM, top), (body, top)]
    return [*outside, (body, lip + edge), (body - edge, lip), (seat + relief, lip), (seat, lip - relief)]


def _inside_skirt(pad: Pad, inner: float) -> list[Point]:
    """The same from below between seat and skirt; nothing where card would be too narrow to hold."""
    seat, lip, bore = pad.seat_diameter_mm / 2, pad.seat_length_mm, pad.skirt_bore_mm / 2
    out, bottom = seat + SKIRT_SHARE * (bore - seat), min(0.0, pad.foot_bottom_mm) - HANDLE_MM
    if out - seat < LEAST_CARD_MM:
        return []
    relief = min(RELIEF_MM, (lip - pad.seat_corner_radius_mm) / 2, (out - seat) / 2)
    return [(inner, 0.0), (inner, bottom), (out, bottom), (out, lip), (seat + relief, lip), (seat, lip - relief)]


def slot_gauges(pad: Pad, units: Units, *, tolerance_mm: float, is_fit: bool = True) -> tuple[Gauge, ...]:
    """Two gauges of each slot: one as wide as its low limit, which goes in, and one at its high limit, which does not."""
    found = _pair(pad, units, pad.slot_width_mm, tolerance_mm, slot="slot", is_fit=is_fit)
    if pad.is_crossed and second_slot_gauge(pad) == "cross_slot_width_mm":
        spread = general_tolerance_mm(pad, "cross_slot_width_mm")
        found += _pair(pad, units, pad.cross_slot_width_mm, spread, slot="second slot", is_fit=is_fit)
    return found


def _pair(
    pad: Pad, units: Units, width_mm: float, tolerance_mm: float, *, slot: str, is_fit: bool
) -> tuple[Gauge, ...]:
    low, high = LowerLimit(width_mm - tolerance_mm), UpperLimit(width_mm + tolerance_mm)
    when = "Try it in the slot while cutting: in" if is_fit else "In"
    goes_in = (
        f"As wide as the {slot}'s low limit, {sizes(units, low)}, and {sizes(units, pad.slot_depth_mm)} deep. {when} the"
        " finished slot its foot meets the floor as its shoulders meet the wall tops, and it slides from end to end."
        f"{slot_notes(pad, units, is_second=slot != 'slot')}"
    )
    stays_out = (
        f"As wide as the {slot}'s high limit, {sizes(units, high)}. It must not enter the finished slot: where it does,"
        " measure the slot, which is too wide."
    )
    key, title = slot.replace(" ", "_"), slot.capitalize()
    return (
        _slot(key, f"{title} gauge: goes in", goes_in, pad, low),
        _slot(f"{key}_high", f"{title} gauge: does not go in", stays_out, pad, high),
    )


def _slot(key: str, title: str, use: str, pad: Pad, width_mm: float) -> Gauge:
    """The slot's hollow at one width, with shoulders that meet the wall tops."""
    half, depth = width_mm / 2, pad.slot_depth_mm
    radius = min(pad.slot_corner_radius_mm, half)
    mouth = pad.slot_mouth_chamfer_mm
    out, top = half + mouth + SHOULDER_MM, depth + HANDLE_MM
    right: Outline = (
        *polyline([(0, 0), (half - radius, 0)]),
        *corner((half - radius, 0), (half, radius), (half - radius, radius)),
        *polyline([(half, radius), (half, depth - mouth), (half + mouth, depth), (out, depth), (out, top), (0, top)]),
    )
    outline, halved = closed(right)
    return Gauge(key, title, use, outline, halved)
