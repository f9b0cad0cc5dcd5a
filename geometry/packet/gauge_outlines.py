"""Gauges to cut from card or film: closed outlines in true size, of the cup as measured and of the pad as drawn."""

from dataclasses import dataclass, replace

from geometry.design import Design
from geometry.drawing.facts import Units
from geometry.drawing.model import Box
from geometry.outline import SAME_POINT_MM, Arc, Line, Outline, Point, corner, polyline, walked_back_mirrored
from geometry.packet.words import section_notes, sizes, slot_notes
from geometry.pad import Pad
from geometry.profile import section_outline

HANDLE_MM = 12.0
SHOULDER_MM = 8.0
"""What is added to hold a gauge by and to stop it: chosen for card, no source."""
FACE_SHOWN_MM = 8.0
BODY_SHOWN_MM = 6.0
RELIEF_MM = 0.6
"""Taken off where the gauge would stand on what a tool's nose leaves in an inner corner."""
BOSS_GAP_MM = 1.0
"""Left free around and above a boss on the cup's floor: chosen for card, no source."""


@dataclass(frozen=True, slots=True)
class Gauge:
    """One piece: its closed outline in mm, y up, and what to do with it."""

    key: str
    title: str
    use: str
    outline: Outline
    half: Outline
    """The right half, for paper that the whole is too wide for; the whole where halving makes no sense."""

    @property
    def can_be_halved(self) -> bool:
        """Whether the piece is the same on both sides of its axis."""
        return self.half != self.outline


def gauges_of(design: Design, units: Units) -> tuple[Gauge, ...]:
    """The gauges of a design, in the order of use: jack, seam, turning, milling."""
    cup, jack = design.conditions.cup, design.measurements.jack
    found = cup_gauge(
        bore_mm=cup.bore_mm,
        depth_mm=cup.depth_mm,
        corner_radius_mm=cup.corner_radius_mm,
        units=units,
        corner_is_measured=jack.cup_corner_radius_mm is not None,
        boss_mm=(cup.boss_diameter_mm, cup.boss_height_mm) if cup.boss_height_mm > 0 else None,
    )
    entry = design.ledger.get("slot_width_mm")
    tolerance_mm = entry.tolerance_mm if entry is not None else 0.0
    is_printed = design.conditions.process == "printed"
    pieces = pad_gauges(
        design.pad, units, slot_tolerance_mm=tolerance_mm, is_printed=is_printed, is_fit=design.fit_to_make
    )
    return (found, *pieces)


def pad_gauges(
    pad: Pad, units: Units, *, slot_tolerance_mm: float = 0.0, is_printed: bool = False, is_fit: bool = True
) -> tuple[Gauge, ...]:
    """The gauges of the pad itself: its section, its seat corner, and its slot at both limits of its width."""
    part = "finished print" if is_printed else "turned part"
    slots = slot_gauges(pad, units, tolerance_mm=slot_tolerance_mm, is_fit=is_fit) if pad.has_slot else ()
    return (_section(pad, units), _corner(pad, units, part), *slots)


def bounds(outline: Outline) -> Box:
    """What an outline covers: its arcs are quarter turns between level and upright, so their ends are their extremes."""
    points = [point for piece in outline for point in (piece.start, piece.end)]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs), min(ys), max(xs), max(ys))


def moved(outline: Outline, by: Point) -> Outline:
    """The outline elsewhere."""

    def at(point: Point) -> Point:
        return point[0] + by[0], point[1] + by[1]

    return tuple(
        Arc(at(p.start), at(p.end), at(p.centre)) if isinstance(p, Arc) else Line(at(p.start), at(p.end))
        for p in outline
    )


def _closed(right: Outline) -> tuple[Outline, Outline]:
    """A symmetric outline, and its right half closed along the axis; ``right`` runs from the axis round to the axis."""
    whole = (*right, *walked_back_mirrored(right))
    return _joined(whole), (*right, *polyline([right[-1].end, right[0].start]))


def _joined(whole: Outline) -> Outline:
    """The outline with the two halves of a straight piece across the axis made one."""
    pieces = list(whole)
    for i in range(len(pieces)):
        one, other = pieces[i - 1], pieces[i]
        if isinstance(one, Line) and isinstance(other, Line) and one.end[0] == 0 and _is_level(one, other):
            pieces[i] = Line(one.start, other.end)
            del pieces[i - 1]
            return _joined(tuple(pieces))
    return tuple(pieces)


def _is_level(one: Line, other: Line) -> bool:
    return one.start[1] == one.end[1] == other.start[1] == other.end[1]


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
    outline, halved = _closed(right)
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
        f"The pad as drawn: body {sizes(units, pad.body_diameter_mm)}, height {sizes(units, pad.overall_height_mm)}. Stand it in"
        " the cup: its seat meets the floor and its lip stays off the rim. Hold it over the seam at the lift point: the seam"
        f" drops to the slot's floor without force, and the sill stays clear of both walls.{section_notes(whole_pad, units)}"
    )
    whole = _joined(section_outline(pad))
    # With its slot off the middle the section has no half that tells all.
    half = whole if pad.slot_offset_mm else _right_half(pad)
    return Gauge("pad", "Pad gauge: into the cup and over the seam", use, whole, half)


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


def _corner(pad: Pad, units: Units, part: str) -> Gauge:
    """What is left around seat corner, seat and lip: held against the part while it turns no more."""
    seat, body, radius = pad.seat_diameter_mm / 2, pad.body_diameter_mm / 2, pad.seat_corner_radius_mm
    lip, edge = pad.seat_length_mm, pad.edge_chamfer_mm
    flat = seat - radius - max(pad.stem_diameter_mm, pad.seat_recess_diameter_mm) / 2
    inner = seat - radius - min(FACE_SHOWN_MM, 0.8 * flat)
    top = min(lip + edge + BODY_SHOWN_MM, pad.top_height_mm - edge)
    relief = min(RELIEF_MM, (lip - radius) / 2, (body - edge - seat) / 2)
    outside = [(inner, 0.0), (inner, -HANDLE_MM), (body + HANDLE_MM, -HANDLE_MM), (body + HANDLE_MM, top), (body, top)]
    inside = [(body, lip + edge), (body - edge, lip), (seat + relief, lip), (seat, lip - relief), (seat, radius)]
    outline: Outline = (
        *polyline([*outside, *inside]),
        *(piece.reversed() for piece in corner((seat - radius, 0), (seat, radius), (seat - radius, radius))),
        *polyline([(seat - radius, 0), (inner, 0)]),
    )
    use = (
        f"Corner R {sizes(units, radius)}, seat length {sizes(units, lip)}. Against the {part} and a lamp, nothing turning:"
        " it sits on seat face, corner, seat and lip without light between. Light at both ends of the corner: it still stands out,"
        " take more off. Light in its middle: too much is off."
    )
    return Gauge("corner", f"Seat corner gauge: against the {part}", use, outline, outline)


def slot_gauges(pad: Pad, units: Units, *, tolerance_mm: float, is_fit: bool = True) -> tuple[Gauge, ...]:
    """Two gauges of the slot: one as wide as its low limit, which goes in, and one at its high limit, which does not."""
    low, high = pad.slot_width_mm - tolerance_mm, pad.slot_width_mm + tolerance_mm
    when = "Try it in the slot while cutting: in" if is_fit else "In"
    goes_in = (
        f"As wide as the slot's low limit, {sizes(units, low)}, and {sizes(units, pad.slot_depth_mm)} deep. {when} the"
        " finished slot its foot meets the floor as its shoulders meet the wall tops, and it slides from end to end."
        f"{slot_notes(pad, units)}"
    )
    stays_out = (
        f"As wide as the slot's high limit, {sizes(units, high)}. It must not enter the finished slot: where it does,"
        " measure the slot, which is too wide."
    )
    return (
        _slot("slot", "Slot gauge: goes in", goes_in, pad, low),
        _slot("slot_high", "Slot gauge: does not go in", stays_out, pad, high),
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
    outline, halved = _closed(right)
    return Gauge(key, title, use, outline, halved)
