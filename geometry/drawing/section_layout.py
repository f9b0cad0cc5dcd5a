"""The section laid out for one width of screen, in page units with y down."""

from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise
from math import floor, log

from geometry.drawing.section_columns import placed_beside, told_apart
from geometry.drawing.section_lettering import BOLD, cut, length_words, wrapped
from geometry.drawing.section_marks import Band, TroubleSpot, band_of
from geometry.drawing.section_page import (
    LABEL_GAP,
    LINE,
    NARROW,
    RADIUS,
    SMALL,
    TEXT,
    Box,
    Frame,
    Lettering,
    Page,
    Placed,
    Room,
    label_line,
)
from geometry.drawing.section_pointers import Pointer
from geometry.drawing.section_scene import Scene
from geometry.drawing.section_words import scale_words
from geometry.outline import Point
from geometry.units import LengthUnit

__all__ = ["RADIUS", "Box", "Page", "Placed", "lay_out", "lay_out_detail", "value_words"]

_TARGET = 44.0
"""Least height of what a finger taps (WCAG 2.2, 2.5.5)."""
_STEPS_A_DECADE = 40
"""Scales come in preferred numbers (ISO 3, R 40), so that the picture keeps its scale while a size is typed."""
_MOST_A_SIDE = {False: 4, True: 2}
"""Trouble shown on each side of a wide and of a narrow picture; the rest is counted in words."""
_LEAST_HEIGHT = 330

Heights = Callable[[Sequence[Point], float, Room], Sequence[float]]
"""Where the balloons of one column stand, given what they point at and where their leaders end."""


def _heights(targets: Sequence[Point], x: float, room: Room) -> tuple[float, ...]:
    """Where each balloon of a column stands."""
    low, high = room.top + RADIUS + 2, room.ground - RADIUS - 2
    return placed_beside(targets, pitch=_TARGET, low=low, high=high, x=x)


def lay_out(
    scene: Scene,
    pointers: Sequence[Pointer],
    troubles: Sequence[TroubleSpot],
    *,
    units: LengthUnit,
    width: float,
    typed: Mapping[str, str],
    lit: str | None,
    heights: Heights = _heights,
) -> Page:
    """The whole section in a picture of the given width; ``heights`` arranges a column of balloons."""
    is_narrow = width < NARROW
    room = Room(width, max(_LEAST_HEIGHT, round(0.88 * width)) if is_narrow else 560, is_narrow)
    shown, more = _at_most(troubles, _MOST_A_SIDE[is_narrow])
    frame = _whole(scene, room)
    placed = _placed(scene, pointers, shown, frame, room, units=units, typed=typed, heights=heights)
    notes = [f"{p.mark}  {p.spot.words}: {p.spot.numbers(units)}" for p in placed if p.spot] if is_narrow else []
    if more:
        notes.append(f"{more} more {'is' if more == 1 else 'are'} listed below.")
    if is_narrow:
        notes.insert(0, _caption(pointers, lit, units, typed))
    else:
        notes.insert(0, scale_words(scene))
    lines = tuple(line for note in notes for line in wrapped(note, size=TEXT, width=width - 12, most=2) or ("",))
    height = room.height + LINE * max(0, len(lines) - 1)
    return Page(width, height, frame, placed, room.ground, lines, is_narrow)


def lay_out_detail(
    scene: Scene, pointer: Pointer, *, units: LengthUnit, width: float, typed: Mapping[str, str]
) -> Page:
    """Only what one balloon points at, as large as there is room."""
    room = Room(width, round(0.5 * width), is_narrow=True)
    points = [pointer.at, pointer.span.start, pointer.span.end]
    least = 24 * scene.unit_mm
    left, right = min(x for x, _ in points), max(x for x, _ in points)
    low, high = min(y for _, y in points), max(y for _, y in points)
    wide, tall = max(1.2 * (right - left), least), max(1.2 * (high - low), least)
    scale = min((room.width - 2 * room.side) / wide, (room.ground - room.top) / tall)
    middle = (room.top + room.ground) / 2
    frame = Frame(scale, width / 2 - scale * (left + right) / 2, middle + scale * (low + high) / 2)
    placed = _placed(scene, (pointer,), (), frame, room, units=units, typed=typed)
    kept = 2 * room.column
    window = Box(kept if pointer.is_left else 0, 0, width if pointer.is_left else width - kept, room.ground + 6)
    caption = _caption((pointer,), pointer.field, units, typed)
    return Page(width, room.height, frame, placed, room.ground + 2, (caption,), True, window)


def _at_most(troubles: Sequence[TroubleSpot], most: int) -> tuple[tuple[TroubleSpot, ...], int]:
    """The first few of each side, and how many are left over."""
    kept: list[TroubleSpot] = []
    count = {True: 0, False: 0}
    for spot in troubles:
        count[spot.is_left] += 1
        if count[spot.is_left] <= most:
            kept.append(spot)
    return tuple(kept), len(troubles) - len(kept)


def _whole(scene: Scene, room: Room) -> Frame:
    """The frame that shows everything, the ground always at the same height of the page."""
    wide, tall = 2 * (scene.reach + 2 * scene.unit_mm), scene.top - scene.ground
    fits = min((room.width - 2 * room.side) / wide, (room.ground - room.top) / tall)
    scale = 10 ** (floor(log(fits, 10) * _STEPS_A_DECADE) / _STEPS_A_DECADE)
    return Frame(scale, room.width / 2, room.ground + scale * scene.ground)


def _placed(
    scene: Scene,
    pointers: Sequence[Pointer],
    troubles: Sequence[TroubleSpot],
    frame: Frame,
    room: Room,
    *,
    units: LengthUnit,
    typed: Mapping[str, str],
    heights: Heights = _heights,
) -> tuple[Placed, ...]:
    """Balloons and marks in their columns, left and right."""
    bands = [band_of(spot, scene) for spot in troubles]
    targets = told_apart([frame.at(p.at) for p in pointers] + [frame.at(b.at) for b in bands])
    items: list[tuple[Pointer | None, TroubleSpot | None, Band | None]] = [(p, None, None) for p in pointers]
    items += [(None, spot, band) for spot, band in zip(troubles, bands, strict=True)]
    found: dict[int, Placed] = {}
    for is_left in (True, False):
        chosen = [i for i, (p, s, _) in enumerate(items) if (p or s) and _is_left(p, s) == is_left]
        x = room.column if is_left else room.width - room.column
        near = x + RADIUS if is_left else x - RADIUS
        levels = heights([targets[i] for i in chosen], near, room)
        tap = min([_TARGET, *(b - a for a, b in pairwise(sorted(levels)))]) / 2
        for i, y in zip(chosen, levels, strict=True):
            pointer, spot, band = items[i]
            mark = str(pointer.number) if pointer else chr(ord("A") + i - len(pointers))
            label = _label(pointer, spot, room, units, typed)
            leader = (targets[i], (near, y))
            box = _label_box(label, x, y, room, is_left=is_left)
            target = Box(min(box.left, x - tap), y - tap, max(box.right, x + tap), y + tap)
            found[i] = Placed(mark, (x, y), leader, label, box, target, is_left, pointer, spot, band)
    return tuple(found[i] for i in sorted(found))


def _is_left(pointer: Pointer | None, spot: TroubleSpot | None) -> bool:
    return pointer.is_left if pointer else bool(spot and spot.is_left)


def _label(
    pointer: Pointer | None, spot: TroubleSpot | None, room: Room, units: LengthUnit, typed: Mapping[str, str]
) -> tuple[Lettering, ...]:
    """Title and value, or a few words and numbers; nothing where there is no room beside the balloons."""
    width = room.label_width
    if room.is_narrow:
        return ()
    if pointer:
        value = cut(value_words(pointer, units, typed), size=TEXT * BOLD, width=width)
        title = cut(pointer.title, size=TEXT, width=width)
        return Lettering(title, "balloon-label"), Lettering(value, "balloon-value")
    if spot is None:
        return ()
    words = wrapped(spot.words, size=SMALL * BOLD, width=width, most=2)
    numbers = wrapped(spot.numbers(units), size=SMALL, width=width, most=3 - len(words))
    return (
        *(Lettering(line, "trouble-words") for line in words),
        *(Lettering(line, "trouble-numbers") for line in numbers),
    )


def value_words(pointer: Pointer, units: LengthUnit, typed: Mapping[str, str]) -> str:
    """The measurement as typed, or in the viewer's unit; in words where there is none."""
    if pointer.field in typed:
        return typed[pointer.field]
    if pointer.value_mm is None:
        return pointer.words_if_missing
    return length_words(pointer.value_mm, units)


def _caption(pointers: Sequence[Pointer], lit: str | None, units: LengthUnit, typed: Mapping[str, str]) -> str:
    """What the lit balloon asks for, where balloons have no labels."""
    for pointer in pointers:
        if pointer.field == lit:
            return f"{pointer.number}  {pointer.title}: {value_words(pointer, units, typed)}"
    return ""


def _label_box(label: Sequence[Lettering], x: float, y: float, room: Room, *, is_left: bool) -> Box:
    """The rectangle that a label may fill."""
    if not label:
        return Box(x - RADIUS, y - RADIUS, x + RADIUS, y + RADIUS)
    half = label_line(label) * len(label) / 2
    inner = x - RADIUS - LABEL_GAP if is_left else x + RADIUS + LABEL_GAP
    outer = inner - room.label_width if is_left else inner + room.label_width
    return Box(min(inner, outer), y - half, max(inner, outer), y + half)
