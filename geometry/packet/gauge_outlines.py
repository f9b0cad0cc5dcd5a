"""Gauges to cut from card or film: closed outlines in true size, of the cup as measured and of the pad as drawn."""

from dataclasses import replace

from geometry.design import Design
from geometry.drawing.facts import Units
from geometry.making.gauge_limits import second_slot_gauge
from geometry.outline import SAME_POINT_MM, Arc, Line, Outline, Point, corner, polyline
from geometry.packet.gauge_gaps import hidden_seat_gauges, plug_gauges, round_gauges
from geometry.packet.gauge_shapes import HANDLE_MM, LEAST_CARD_MM, SHOULDER_MM, SKIRT_SHARE, Gauge, closed, joined
from geometry.packet.words import pad_use, section_notes, sizes, slot_notes
from geometry.pad import Pad
from geometry.profile import section_outline
from geometry.spread import general_tolerance_mm

FACE_SHOWN_MM = 8.0
BODY_SHOWN_MM = 6.0
RELIEF_MM = 0.6
"""Taken off where the gauge would stand on what a tool's nose leaves in an inner corner."""
BOSS_GAP_MM = 1.0
"""Left free around and above a boss on the cup's floor: chosen for card, no source."""


def gauges_of(design: Design, units: Units) -> tuple[Gauge, ...]:
    """The gauges of a design, in the order of use: jack, seam, turning, milling; in the words of its kind of jack."""
    foot = design.conditions.foot
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
    )
    hollow = (_hollow(design, units),) if foot.locates == "seat" else ()
    return tuple(replace(g, title=foot.said(g.title), use=foot.said(g.use)) for g in (*hollow, *pieces))


def _hollow(design: Design, units: Units) -> Gauge:
    """The gauge of what the seat drops into; a plate that a skirt goes around, or a bore for a stem, is no hollow."""
    foot = design.conditions.foot
    corner = foot.own_key("jack.cup_corner_radius_mm").removeprefix("jack.")
    return cup_gauge(
        bore_mm=foot.bore_mm,
        depth_mm=foot.depth_mm,
        corner_radius_mm=foot.corner_radius_mm,
        units=units,
        corner_is_measured=getattr(design.measurements.jack, corner, None) is not None,
        boss_mm=(foot.boss_diameter_mm, foot.boss_height_mm) if foot.boss_height_mm > 0 else None,
    )


def pad_gauges(
    pad: Pad,
    units: Units,
    *,
    slot_tolerance_mm: float = 0.0,
    is_printed: bool = False,
    is_by_hand: bool = False,
    is_fit: bool = True,
) -> tuple[Gauge, ...]:
    """The gauges of the pad itself: its section, its seat corner, and what it is cut to at both limits of its size."""
    part = "finished print" if is_printed else "finished part" if is_by_hand else "turned part"
    slots = slot_gauges(pad, units, tolerance_mm=slot_tolerance_mm, is_fit=is_fit) if pad.has_slot else ()
    return (
        _section(pad, units),
        *_corner(pad, units, part),
        *hidden_seat_gauges(pad, units),
        *(round_gauges(pad, units) if is_by_hand else ()),
        *slots,
        *plug_gauges(pad, units),
    )


def cup_gauge(
    *,
    bore_mm: float,
    depth_mm: float,
    corner_radius_mm: float,
    units: Units,
    corner_is_measured: bool = True,
    boss_mm: tuple[float, float] | None = None,
) -> Gauge:
    """The hollow of the cup as measured, with shoulders that meet the rim and a notch over a boss (width, height)."""
    half, depth, radius = bore_mm / 2, depth_mm, corner_radius_mm
    notch, roof = (
        (min(boss_mm[0] / 2 + BOSS_GAP_MM, half - radius), boss_mm[1] + BOSS_GAP_MM) if boss_mm else (0.0, 0.0)
    )
    out, top = half + SHOULDER_MM, max(depth, roof) + HANDLE_MM
    right: Outline = (
        *polyline([(0, roof), (notch, roof), (notch, 0), (half - radius, 0)]),
        *corner((half - radius, 0), (half, radius), (half - radius, radius)),
        *polyline([(half, radius), (half, depth), (out, depth), (out, top), (0, top)]),
    )
    outline, halved = closed(right)
    doubt = "" if corner_is_measured else " assumed: measure it"
    boss = (
        f" The notch clears the boss of {sizes(units, *boss_mm)} by {sizes(units, BOSS_GAP_MM)} all round: where it touches,"
        " measure the boss again."
        if boss_mm
        else ""
    )
    use = (
        f"The cup as measured: bore and depth {sizes(units, bore_mm, depth)}; corner R {sizes(units, radius)}{doubt}. Stand it in"
        " the cup, across and along. Floor, walls and rim should meet it all at once; where light shows, or it will not go"
        f" in, measure again before cutting anything.{boss}"
    )
    return Gauge("cup", "Cup gauge: into the jack's cup", use, outline, halved)


def _section(whole_pad: Pad, units: Units) -> Gauge:
    """The pad itself, cut across its slot; a second slot, which runs along the cut, is left standing."""
    pad = replace(whole_pad, cross_slot_width_mm=0.0)
    use = (
        f"The pad as drawn: body {sizes(units, pad.body_diameter_mm)}, height {sizes(units, pad.overall_height_mm)}."
        f" {pad_use(pad)}{section_notes(whole_pad, units)}"
    )
    whole = joined(section_outline(pad))
    # With its slot off the middle the section has no half that tells all.
    half = whole if pad.slot_offset_mm else _right_half(pad)
    meets = "over the seam" if pad.has_slot else "into the hole" if pad.has_plug else "under the lift point"
    return Gauge("pad", f"Pad gauge: into the cup and {meets}", use, whole, half)


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
    low, high = width_mm - tolerance_mm, width_mm + tolerance_mm
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
