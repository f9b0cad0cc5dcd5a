"""Gauges to cut from card or film: closed outlines in true size, of the cup as measured and of the pad as drawn."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import dist

from geometry.design import Design
from geometry.drawing.facts import Units
from geometry.drawing.measures import length_words
from geometry.drawing.model import Box
from geometry.outline import SAME_POINT_MM, Arc, Line, Outline, Point, corner, polyline, walked_back_mirrored
from geometry.pad import Pad
from geometry.profile import section_outline

HANDLE_MM = 12.0
SHOULDER_MM = 8.0
"""What is added to hold a gauge by and to stop it: chosen for card, no source."""
FACE_SHOWN_MM = 8.0
BODY_SHOWN_MM = 6.0
RELIEF_MM = 0.6
"""Taken off where the gauge would stand on what a tool's nose leaves in an inner corner."""


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
    """The four gauges of a design, in the order of use: jack, seam, turning, milling."""
    cup = design.conditions.cup
    found = cup_gauge(bore_mm=cup.bore_mm, depth_mm=cup.depth_mm, corner_radius_mm=cup.corner_radius_mm, units=units)
    return (found, *pad_gauges(design.pad, units))


def pad_gauges(pad: Pad, units: Units) -> tuple[Gauge, ...]:
    """The three gauges of the pad itself: its section, its seat corner, its slot."""
    return (_section(pad, units), _corner(pad, units), _slot(pad, units))


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


def _said(units: Units, *lengths_mm: float) -> str:
    unit = "in" if units == "in" else "mm"
    return " × ".join(length_words(length, units) for length in lengths_mm) + f" {unit}"


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


def cup_gauge(*, bore_mm: float, depth_mm: float, corner_radius_mm: float, units: Units) -> Gauge:
    """The hollow of the cup as measured, with shoulders that meet the rim."""
    half, depth, radius = bore_mm / 2, depth_mm, corner_radius_mm
    out, top = half + SHOULDER_MM, depth + HANDLE_MM
    right: Outline = (
        *polyline([(0, 0), (half - radius, 0)]),
        *corner((half - radius, 0), (half, radius), (half - radius, radius)),
        *polyline([(half, radius), (half, depth), (out, depth), (out, top), (0, top)]),
    )
    outline, halved = _closed(right)
    use = (
        f"The cup as measured: bore and depth {_said(units, bore_mm, depth)}, corner R {_said(units, radius)}. Stand it in"
        " the cup, across and along. Floor, walls and rim should meet it all at once; where light shows, or it will not go"
        " in, measure again before cutting anything."
    )
    return Gauge("cup", "Cup gauge: into the jack's cup", use, outline, halved)


def _section(pad: Pad, units: Units) -> Gauge:
    """The pad itself, cut across its slot."""
    use = (
        f"The pad as drawn: body {_said(units, pad.body_diameter_mm)}, height {_said(units, pad.overall_height_mm)}. Stand it in"
        " the cup: its seat meets the floor and its lip stays off the rim. Hold it over the seam at the lift point: the seam"
        " drops to the slot's floor without force, and the sill stays clear of both walls."
    )
    return Gauge(
        "pad", "Pad gauge: into the cup and over the seam", use, _joined(section_outline(pad)), _right_half(pad)
    )


def _right_half(pad: Pad) -> Outline:
    """The section right of its axis, closed along the axis."""
    pieces: list[Arc | Line] = []
    for piece in section_outline(pad):
        is_last = piece.end[0] < SAME_POINT_MM and bool(pieces)
        # The floor is cut at the axis; a slot as round as it is wide ends there in an arc.
        pieces += polyline([piece.start, (0, pad.web_mm)]) if is_last and isinstance(piece, Line) else [piece]
        if is_last:
            break
    return (*pieces, *polyline([(0, pad.web_mm), pieces[0].start]))


def _corner(pad: Pad, units: Units) -> Gauge:
    """What is left around seat corner, seat and lip: held against the part while it turns no more."""
    seat, body, radius = pad.seat_diameter_mm / 2, pad.body_diameter_mm / 2, pad.seat_corner_radius_mm
    lip, edge = pad.seat_length_mm, pad.edge_chamfer_mm
    flat = seat - radius - pad.stem_diameter_mm / 2
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
        f"Corner R {_said(units, radius)}, seat length {_said(units, lip)}. Against the turned part and a lamp, machine at rest:"
        " it sits on seat face, corner, seat and lip without light between. Light at both ends of the corner: it still stands out,"
        " take more off. Light in its middle: too much is off."
    )
    return Gauge("corner", "Seat corner gauge: against the turned part", use, outline, outline)


def _slot(pad: Pad, units: Units) -> Gauge:
    """The slot's hollow, with shoulders that meet the wall tops."""
    half, depth, radius = pad.slot_width_mm / 2, pad.slot_depth_mm, pad.slot_corner_radius_mm
    mouth = pad.slot_mouth_chamfer_mm
    out, top = half + mouth + SHOULDER_MM, depth + HANDLE_MM
    right: Outline = (
        *polyline([(0, 0), (half - radius, 0)]),
        *corner((half - radius, 0), (half, radius), (half - radius, radius)),
        *polyline([(half, radius), (half, depth - mouth), (half + mouth, depth), (out, depth), (out, top), (0, top)]),
    )
    outline, halved = _closed(right)
    use = (
        f"Slot width and depth {_said(units, pad.slot_width_mm, depth)}. Try it in the slot while cutting: in the finished slot"
        " its foot meets the floor as its shoulders meet the wall tops, and it slides from end to end without rocking."
    )
    return Gauge("slot", "Slot gauge: into the slot", use, outline, halved)


def is_closed(outline: Iterable[Arc | Line]) -> bool:
    """Whether each piece starts where the one before ends."""
    pieces = tuple(outline)
    return all(dist(pieces[i - 1].end, piece.start) <= SAME_POINT_MM for i, piece in enumerate(pieces))
