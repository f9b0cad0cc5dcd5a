"""Signs on leaders and datum triangles: where each could stand, and the first place that has room."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import product
from math import cos, radians, sin

import numpy as np
from numpy.typing import NDArray

from geometry.drawing.canvas import Canvas
from geometry.drawing.model import Arc, Arrow, Box, Dimension, Layer, Line, Point, Shape, Text
from geometry.drawing.placing import NoRoomError
from geometry.drawing.room import Numbers, perhaps_free
from geometry.drawing.signs import FRAME_MM, Sign, datum
from geometry.drawing.style import STYLE

_ON = Layer.TOLERANCE
_LENGTHS = (4.0, 6.0, 8.0, 10.0, 13.0, 16.0, 20.0, 25.0, 30.0, 37.0, 45.0, 55.0, 70.0, 90.0)
_RISES = (5.0, 7.0, 9.0, 12.0, 15.0, 19.0, 24.0, 30.0, 40.0)
_RUNS = (1.2, 3.0, 6.0, 9.0, 13.0, 18.0, 24.0, 32.0, 42.0, 55.0)
"""Heights at which a leader that stands square on a face turns, and how far it then goes on."""
_TURN_COST_MM = 2.5
_SQUARE_DEG = 90.0
_STEMS_MM = (2.5, 6.0, 9.0)
"""Triangle to frame: longer where a line, like that of a skirt's rim, runs before the face."""
_SHORT_STEM_MM = 1.2
"""The same where only a little room is left beside the feature's own extension line."""
_CROSSED_STEM = 1.0
"""What it costs that a line runs through stem or triangle, as much as to cross an extension line."""
_OFF_FEATURE, _PER_MM = 1.0, 0.05
"""What it costs that a datum stands at the prolonged dimension line, not on the extension line, and the further the more."""
_OFF_FACE_MM = STYLE.clear_mm + 0.01
"""A datum touches its feature: the box that it keeps to itself begins where the part's own free space ends."""
_LEVEL_MM = 1.2


@dataclass(frozen=True, slots=True)
class Placed:
    """A datum at a place: what it covers, its lines, its letter."""

    box: Box
    frame: Box
    """Of that the letter's frame."""
    stem: tuple[Line, ...]
    shapes: tuple[Shape, ...]
    texts: tuple[Text, ...]
    whole_stem: Line
    """From the foot, through the triangle, to the frame."""


def place_callout(
    canvas: Canvas,
    sign: Sign,
    tips: Iterable[Point],
    angles_deg: tuple[float, ...],
    name: str,
    *,
    mirrored: bool = False,
    dotted: bool = False,
) -> None:
    """Put a sign on a leader that points at one of some equal places, nearer before farther.

    ``mirrored`` says that the other side of the axis will do as well; ``dotted`` that it points at a face, not at an edge, and
    so ends in a dot (ISO 128-2).
    """
    at = np.array(tuple(tips))
    which, way, angle, length = _tries(len(at), angles_deg, mirrored)
    tip = np.column_stack((at[which, 0] * way, at[which, 1]))
    across, up = np.cos(np.radians(angle)), np.sin(np.radians(angle))
    elbow = tip + np.column_stack((across, up)) * length[:, None]
    _place_best(canvas, sign, (tip, angle, elbow, np.where(across >= 0, _LEVEL_MM, -_LEVEL_MM)), name, dotted=dotted)


def place_square(
    canvas: Canvas,
    sign: Sign,
    tips: Iterable[Point],
    name: str,
    *,
    up: bool,
    mirrored: bool = False,
    ways: tuple[int, ...] = (1, -1),
    beyond: float = 0.0,
) -> None:
    """Put a sign on a leader that meets a level face square to it, in the direction in which its zone is wide (ISO 1101).

    The leader goes at least so far ``beyond`` the face before it turns aside.
    """
    at = np.array([(x * side, y) for side in ((1, -1) if mirrored else (1,)) for x, y in tips])
    which, way, rise, run = _square_tries(len(at), ways)
    far = rise > beyond
    tip, turn = at[which[far]], 1.0 if up else -1.0
    elbow = np.column_stack((tip[:, 0], tip[:, 1] + turn * rise[far]))
    _place_best(canvas, sign, (tip, np.full(len(tip), turn * _SQUARE_DEG), elbow, (way * run)[far]), name)


@cache
def _square_tries(places: int, ways: tuple[int, ...]) -> tuple[NDArray[np.intp], Numbers, Numbers, Numbers]:
    """Place, way, rise and run of each square leader worth a try, the most wanted first."""
    tries = sorted(
        (rise + run + _TURN_COST_MM * (n + 6 * m), rise, run, n, m)
        for n, m, rise, run in product(range(places), range(len(ways)), _RISES, _RUNS)
    )
    _, rises, runs, which, turns = zip(*tries, strict=True)
    return np.array(which), np.array([float(ways[m]) for m in turns]), np.array(rises), np.array(runs)


@cache
def _tries(
    places: int, angles_deg: tuple[float, ...], mirrored: bool
) -> tuple[NDArray[np.intp], Numbers, Numbers, Numbers]:
    """Place, side of the axis, direction and length of each leader worth a try, the most wanted first."""
    tries = sorted(
        (length + _TURN_COST_MM * (i + 2 * n + 6 * (way < 0)), length, angle if way > 0 else 180 - angle, n, way)
        for n, way, (i, angle), length in product(
            range(places), (1, -1) if mirrored else (1,), enumerate(angles_deg), _LENGTHS
        )
    )
    _, lengths, angles, which, ways = zip(*tries, strict=True)
    return np.array(which), np.array(ways, dtype=float), np.array(angles), np.array(lengths)


def _place_best(
    canvas: Canvas, sign: Sign, tries: tuple[Numbers, Numbers, Numbers, Numbers], name: str, *, dotted: bool = False
) -> None:
    """The place whose leader crosses least, of many by their tips, directions, bends, and how far the leader then goes on."""
    tips, angles, elbows, runs = tries
    left = elbows[:, 0] + np.where(runs > 0, runs, runs - sign.width)
    free = perhaps_free(canvas, left, elbows[:, 1] - sign.handle, sign.width, sign.height)
    held = (
        (number, *_held(sign, tips[number].tolist(), elbows[number].tolist(), float(runs[number]))) for number in free
    )
    best = canvas.best_of(
        (canvas.trouble_of_leader(box, lines, is_sign=True), (number, corner, lines))
        for number, corner, lines in held
        if canvas.has_room(box := sign.box_at(corner), lines)
    )
    if best is None:
        raise NoRoomError(f"no room for {name}")
    number, corner, lines = best
    tip, angle = lines[0].start, float(angles[number])
    box, shapes, texts = sign.at(corner, from_left=lines[-1].end[0] <= corner[0])
    # A ring as small as its line is thick is a dot.
    end: Shape = Arc(tip, STYLE.thick_mm / 2, 0, 360, Layer.VISIBLE) if dotted else Arrow(tip, angle + 180, _ON)
    canvas.add(box, texts, (end, *shapes), leader=lines)


def _held(sign: Sign, tip: list[float], elbow: list[float], run: float) -> tuple[Point, tuple[Line, ...]]:
    """The sign's corner and the leader that holds it: by its side, or standing on the leader's level end."""
    near = elbow[0] + run
    under = 0.0 if sign.handle else sign.width
    bend, end = (elbow[0], elbow[1]), (near + (under if run > 0 else -under), elbow[1])
    corner = (near if run > 0 else near - sign.width, elbow[1] - sign.handle)
    return corner, (Line((tip[0], tip[1]), bend, _ON), Line(bend, end, _ON))


def place_beside(canvas: Canvas, sign: Sign, line: Line, name: str) -> None:
    """Put a sign at the prolonged end of a level dimension line: it then speaks of the feature's middle (ISO 1101)."""

    def places() -> Iterator[tuple[Point, Line]]:
        for length, way in product(_LENGTHS, (-1, 1)):
            end = line.start if way < 0 else line.end
            near = (end[0] + way * length, end[1])
            yield (near[0] if way > 0 else near[0] - sign.width, near[1] - sign.handle), Line(end, near, _ON)

    best = canvas.best_of(
        (
            canvas.trouble_of_leader(sign.box_at(corner), (longer,), is_sign=True, apart_from=line),
            (corner, longer),
        )
        for corner, longer in places()
        if canvas.has_room(sign.box_at(corner), (longer,))
    )
    if best is None:
        raise NoRoomError(f"no room for {name}")
    corner, longer = best
    box, shapes, texts = sign.at(corner, from_left=longer.end[0] > longer.start[0])
    canvas.add(box, texts, shapes, leader=(longer,), apart_from=line)


def place_datum(canvas: Canvas, letter: str, places: Sequence[tuple[Point, float]], *, reached_from: float) -> None:
    """Put a datum triangle with its framed letter at the first of some places that has room.

    A place is the foot of the triangle and the direction in which it stands off (90 up, 270 down); beyond
    ``reached_from`` a thin line prolongs the level face to the foot.
    """
    best = canvas.best_of(
        (trouble, (trouble, longer, placed))
        for longer, placed in _face_datums(letter, places, reached_from)
        if canvas.has_room(placed.frame, (*longer, placed.whole_stem))
        for trouble in (
            canvas.trouble_of_datum(placed.frame, placed.stem, placed.whole_stem.start, beyond=longer)
            + (0.0 if canvas.has_room(placed.box, ()) else _CROSSED_STEM),
        )
    )
    if best is None:
        raise NoRoomError(f"no room for datum {letter}")
    trouble, longer, placed = best
    canvas.add(placed.box, placed.texts, placed.shapes, leader=(*longer, *placed.stem), trouble=trouble)


def _face_datums(
    letter: str, places: Sequence[tuple[Point, float]], reached_from: float
) -> Iterator[tuple[tuple[Line, ...], Placed]]:
    """The datum at each place, with the thin line that reaches it from the face."""
    for (foot, direction), stem in product(places, _STEMS_MM):
        way = 1 if foot[0] > 0 else -1
        beyond = abs(foot[0]) > reached_from
        longer = (Line((way * reached_from, foot[1]), (foot[0] + way * 2, foot[1]), _ON),) if beyond else ()
        yield longer, _datum_at(letter, foot, direction, stem)


def place_axis_datum(canvas: Canvas, letter: str, dimension: Dimension) -> None:
    """Put a datum triangle in line with a level dimension line: it then stands for the axis (ISO 5459).

    Best on the extension line, over against the arrow; where words stand there, at the line's end.
    """
    for whole in (True, False):
        best = canvas.best_of(
            (trouble, (trouble, longer, placed))
            for longer, placed in _axis_datums(letter, dimension)
            if canvas.has_room(placed.box if whole else placed.frame, (*longer, *placed.stem))
            for trouble in (
                canvas.trouble_of_datum(
                    placed.frame, (*longer, *placed.stem), placed.whole_stem.start, apart_from=dimension.lines
                )
                + sum(_OFF_FEATURE + _PER_MM * abs(line.end[0] - line.start[0]) for line in longer),
            )
        )
        if best:
            trouble, longer, placed = best
            canvas.add(placed.box, placed.texts, placed.shapes, leader=(*longer, *placed.stem), trouble=trouble)
            return
    raise NoRoomError(f"no room for datum {letter}")


def _axis_datums(letter: str, dimension: Dimension) -> Iterator[tuple[tuple[Line, ...], Placed]]:
    """The datum in line with a dimension line, with what prolongs that."""
    line, (low, high) = dimension.lines[0], sorted((dimension.start[0], dimension.end[0]))
    against = {1: (high, line.end[1]), -1: (low, line.start[1])}
    places = [(None, stem) for stem in (_STEMS_MM[0], _SHORT_STEM_MM)] + [
        (length, _STEMS_MM[0]) for length in (0.0, *_LENGTHS)
    ]
    for (length, stem), way in product(places, (1, -1)):
        end = line.end if way > 0 else line.start
        foot = against[way] if length is None else (end[0] + way * length, end[1])
        yield ((Line(end, foot, _ON),) if length else ()), _datum_at(letter, foot, 90.0 - way * 90, stem)


def _datum_at(letter: str, foot: Point, direction: float, stem_mm: float = _STEMS_MM[0]) -> Placed:
    """A filled triangle with its base on the feature, a stem, and the framed letter."""
    c, s = round(cos(radians(direction))), round(sin(radians(direction)))
    half = FRAME_MM / 2
    tip = (foot[0] + c * STYLE.arrow_mm, foot[1] + s * STYLE.arrow_mm)
    near = (tip[0] + c * stem_mm, tip[1] + s * stem_mm)
    frame_box, frame, texts = datum(letter).at((near[0] + c * half - half, near[1] + s * half - half))
    triangle = Arrow(tip, direction, _ON, width_mm=STYLE.arrow_mm)
    xs, ys = (foot[0] - half * abs(s), foot[0] + half * abs(s)), (foot[1] - half * abs(c), foot[1] + half * abs(c))
    box = Box(
        min(frame_box.left, *xs) + _OFF_FACE_MM * c,
        min(frame_box.bottom, *ys) + _OFF_FACE_MM * s,
        max(frame_box.right, *xs) + _OFF_FACE_MM * c,
        max(frame_box.top, *ys) + _OFF_FACE_MM * s,
    )
    stem = Line(tip, near, _ON)
    return Placed(box, frame_box, (stem,), (triangle, *frame), texts, Line(foot, near, _ON))
