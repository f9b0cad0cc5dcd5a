"""A plug that is not round: its four sides are milled off the turned boss, down to the turned shoulder."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, sqrt

from geometry.conditions import Conditions
from geometry.machining import milling_time_min
from geometry.making.card import ON_TOP, Operation, Table
from geometry.making.cutter import RUN_MIN, side_cutter_mm
from geometry.making.kit import (
    CALIPER,
    FINE_FILE,
    LARGE_FILE,
    RADIUS_GAUGE,
    ROOT_LEAST_MM,
    ROOT_MOST_MM,
    SCRIBER,
    SQUARE,
    root_words,
)
from geometry.making.limits import limit_sentence
from geometry.making.machine import Machine
from geometry.making.plug_turned import boss_mm
from geometry.making.slot_hold import Hold
from geometry.making.slot_plan import CHUCK_SHARE, DEEPEST_SHARE, STEP_SHARE
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad

LARGEST_FILED_MM = 8.0
"""A larger corner radius is turned on a rotary table, not filed: a judgement."""
PLUG = ("plug_width_mm", "plug_length_mm", "plug_corner_radius_mm")
"""What its sides decide."""
_HAIR = 1e-9


@dataclass(frozen=True, slots=True)
class SidePass:
    """One run of the cutter along a side of the plug."""

    side: str
    job: str
    place_mm: float
    """Cutter's middle from the middle of the plug, square to the side."""
    depth_mm: float
    """Below the plug's top."""


def plug_operation(pad: Pad, c: Conditions, m: Machine, hold: Hold, *, is_slender: bool) -> Operation:
    """Mill the plug's four sides, round its corners."""
    cutter = side_cutter_mm(c.cutters_mm)
    passes = side_passes(pad, m, cutter_mm=cutter, is_slender=is_slender)
    cut = m.milling(cutter)
    run = milling_time_min(
        length_mm=boss_mm(pad), cutter_diameter_mm=cutter, table_feed_mm_min=cut.table_feed_mm_min or 1.0
    )
    radius = pad.plug_corner_radius_mm
    return Operation(
        title="Mill the plug's sides",
        set_up=ON_TOP,
        holding=hold.words,
        tools=(
            said(
                "End mill {cutter}, its flutes {high} long or longer",
                cutter=cutter,
                high=pad.plug_height_mm,
            ),
            CALIPER,
            FINE_FILE,
            *((RADIUS_GAUGE,) if radius > 0 else ()),
        ),
        steps=tuple(_steps(pad, m, cutter)),
        why=said(
            "The shoulder is turned: it is square to the axis all round. The cutter only comes down level with it."
        ),
        cut=cut,
        tables=(
            Table(
                title="Passes of the plug",
                columns=(
                    ("Side", ""),
                    ("Job", ""),
                    ("Cutter's middle from the plug's", "mm"),
                    ("Depth below the plug's top", "mm"),
                ),
                rows=tuple((p.side, p.job, p.place_mm, p.depth_mm) for p in passes),
            ),
        ),
        watch=watch_for(c.material.family, "mill"),
        leaves_mm=_leaves(pad),
        extra_cutting_min=run * len(passes),
        other_time_min=15.0 + RUN_MIN * len(passes),
    )


def filed_plug(pad: Pad, c: Conditions, holding: Sentence) -> Operation:
    """The same sides by saw and file."""
    return Operation(
        title="Saw and file the plug's sides",
        set_up=ON_TOP,
        holding=holding,
        tools=(SCRIBER, SQUARE, said("Hand saw"), LARGE_FILE, CALIPER),
        steps=(
            said(
                "Scribe the plug on its top, {length} along and {width} across, half on each side of the middle, and square the"
                " lines down to the shoulder.",
                length=pad.plug_length_mm,
                width=pad.plug_width_mm,
            ),
            said(
                "Saw just outside the lines, down to just above the shoulder; then file to them with a safe edge below."
            ),
            limit_sentence(pad, "plug_width_mm", "Across, the plug"),
            limit_sentence(pad, "plug_length_mm", "Along, the plug"),
            said("No file mark may cut into the shoulder: the car stands on it. Finish the shoulder with a scraper."),
            *_filed_corners(pad),
            *_top_edges(pad),
        ),
        watch=watch_for(c.material.family, "saw", "edges"),
        leaves_mm=_leaves(pad),
        other_time_min=90.0,
    )


def _leaves(pad: Pad) -> dict[str, float]:
    names = (*PLUG, "edge_chamfer_mm")
    return {name: getattr(pad, name) for name in names if getattr(pad, name) > 0}


def _top_edges(pad: Pad) -> Iterator[Sentence]:
    if pad.edge_chamfer_mm > 0:
        yield said("Break the plug's top edges {edge} × 45° with a file.", edge=pad.edge_chamfer_mm)


def side_passes(pad: Pad, m: Machine, *, cutter_mm: float, is_slender: bool) -> tuple[SidePass, ...]:
    """All runs: each side roughed level by level from the outside in, then floor and wall finished."""
    spare = m.finishing_mm
    floor_spare = min(spare, pad.plug_height_mm / 2)
    most = (CHUCK_SHARE if is_slender else DEEPEST_SHARE) * cutter_mm
    levels = ceil((pad.plug_height_mm - floor_spare) / most - _HAIR)
    found = []
    for side, half in _sides(pad):
        sign = 1.0 if side in {"left", "far end"} else -1.0
        nearest = half + spare + cutter_mm / 2
        # The outermost run begins outside the boss; nothing of it may stand between the last run and the plug.
        steps = ceil(max(0.0, boss_mm(pad) / 2 - half - spare - cutter_mm) / (STEP_SHARE * cutter_mm) - _HAIR)
        places = [nearest + STEP_SHARE * cutter_mm * k for k in range(max(0, steps), -1, -1)]
        for k in range(levels):
            depth = (pad.plug_height_mm - floor_spare) * (k + 1) / levels
            found += [SidePass(side, "rough", sign * y, depth) for y in places]
        found += [SidePass(side, "floor", sign * y, pad.plug_height_mm) for y in places]
        found.append(SidePass(side, "wall", sign * (half + cutter_mm / 2), pad.plug_height_mm))
    return tuple(found)


def _sides(pad: Pad) -> tuple[tuple[str, float], ...]:
    """Each side with its distance from the middle; y is to the left of one who looks along the plug."""
    x, y = pad.plug_width_mm / 2, pad.plug_length_mm / 2
    return ("left", x), ("right", x), ("far end", y), ("near end", y)


def _steps(pad: Pad, m: Machine, cutter: float) -> Iterator[Sentence]:
    yield said(
        "Round the cutter's corners to {least} with a stone, to {most} at most.", least=ROOT_LEAST_MM, most=ROOT_MOST_MM
    )
    yield root_words("At the plug's foot", "cutter")
    if not m.is_stepless:
        yield said(
            "Touch the plug's top with the cutter's end on paper, go on by the paper's thickness, and set the depth dial to zero"
            " there."
        )
    yield said(
        "The plug's length lies along the table's travel: left and right are its long sides as you look along it. Mill by the"
        " table, every side from outside in, against the cutter's turning: the boss of {boss} becomes the plug.",
        boss=boss_mm(pad),
    )
    yield said(
        "Before the passes at full depth touch the turned shoulder with the cutter: they end level with it, {height} below the"
        " top. No step may stay in the shoulder.",
        height=pad.plug_height_mm,
    )
    yield said("After the first of two opposite sides measure from it to the other: the second takes what is missing.")
    yield limit_sentence(pad, "plug_width_mm", "Across, the plug")
    yield limit_sentence(pad, "plug_length_mm", "Along, the plug")
    yield from _corners(pad, m, cutter)
    yield from _top_edges(pad)


def _corners(pad: Pad, m: Machine, cutter: float) -> Iterator[Sentence]:
    radius = pad.plug_corner_radius_mm
    if radius > 0 and m.is_stepless:
        yield said(
            "Run the wall's finishing pass round the four upright corners with a radius of {radius}.", radius=radius
        )
    elif radius > LARGEST_FILED_MM:
        yield said(
            "The four upright corners have a radius of {radius}: on a rotary table, each corner's centre in turn under its axis,"
            " {x} across and {y} along from the plug's middle, the cutter's middle {place} from it.",
            radius=radius,
            x=pad.plug_width_mm / 2 - radius,
            y=pad.plug_length_mm / 2 - radius,
            place=radius + cutter / 2,
        )
        yield from _filed_corners(pad)
    else:
        yield from _filed_corners(pad)


def _filed_corners(pad: Pad) -> Iterator[Sentence]:
    radius = pad.plug_corner_radius_mm
    if radius <= 0:
        yield said("Take the sharpness off the four upright corners with two strokes of a file.")
        return
    # A 45° cut that begins here, measured along a side from the corner, touches the arc in its middle.
    yield said(
        "Round the four upright corners by file: first a flat of 45° that begins {leg} from each corner, which just touches"
        " the arc; then its two edges, to a gauge of {radius}.",
        leg=radius * (2 - sqrt(2)),
        radius=radius,
    )
