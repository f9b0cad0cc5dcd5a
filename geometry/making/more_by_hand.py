"""A second slot, a relief pocket and two flats by saw, drill and file."""

from collections.abc import Iterator

from geometry.conditions import Conditions
from geometry.making.card import ON_TOP, Operation
from geometry.making.flats import SHARP_FLATS
from geometry.making.gauge_limits import gauge_table, second_slot_gauge
from geometry.making.kit import CALIPER, GAUGES, LARGE_FILE, SCRIBER, SQUARE
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad

CHISEL_SPARE_MM = 0.5
"""Left inside a pocket's lines by drill and chisel."""


def more_by_hand(pad: Pad, c: Conditions, holding: Sentence) -> Iterator[Operation]:
    """What is cut beside the first slot, each where the pad has it."""
    if pad.is_crossed:
        yield _second_slot(pad, c, holding)
    if pad.has_relief:
        yield _relief(pad, c, holding)
    if pad.has_flats:
        yield _flats(pad, c, holding)


def _second_slot(pad: Pad, c: Conditions, holding: Sentence) -> Operation:
    return Operation(
        title="Saw and file the second slot",
        set_up=ON_TOP,
        holding=holding,
        tools=(SQUARE, SCRIBER, said("Hand saw"), GAUGES, CALIPER),
        steps=(
            said("Turn the pad a quarter turn in the vice, so that the jaws press at the ends of the second slot."),
            said(
                "Scribe it square to the first through the middle of the top, {width} wide, its floor level with the first's.",
                width=pad.cross_slot_width_mm,
            ),
            said(
                "Saw and file it as the first. Lay a straight edge over both floors: neither may stand above the other."
            ),
            said("Round the four upright corners where the slots meet: a sharp one starts a crack."),
        ),
        tables=(gauge_table(pad, second_slot_gauge(pad)),),
        watch=watch_for(c.material.family, "saw", "edges"),
        leaves_mm={"cross_slot_width_mm": pad.cross_slot_width_mm},
        other_time_min=120.0,
    )


def _relief(pad: Pad, c: Conditions, holding: Sentence) -> Operation:
    return Operation(
        title="Drill and chisel the relief pocket",
        set_up=ON_TOP,
        holding=holding,
        tools=(SCRIBER, said("Drill and drill press"), said("Narrow chisel"), LARGE_FILE, CALIPER),
        steps=(
            said(
                "Scribe the pocket on the top: {width} across the slot, centred on it, and {length} along, half on each side of"
                " the pad's middle.",
                width=pad.relief_width_mm,
                length=pad.relief_length_mm,
            ),
            said(
                "Drill a row of holes {spare} inside the lines, the drill's point no deeper than {depth}. Hold the work in a vice.",
                spare=CHISEL_SPARE_MM,
                depth=pad.relief_depth_mm,
            ),
            said("Pare the webs out with a narrow chisel and file the sides to the lines."),
            said("Leave the upright corners round, {radius} or less.", radius=pad.relief_corner_radius_mm),
            said("Its floor carries nothing and may stay rough. By hand the pocket comes out to class c at best."),
        ),
        watch=watch_for(c.material.family, "edges"),
        leaves_mm={n: getattr(pad, n) for n in ("relief_width_mm", "relief_length_mm", "relief_depth_mm")},
        other_time_min=60.0,
    )


def _along(pad: Pad) -> str:
    """Which way the flats run."""
    return "along the slot" if pad.has_slot else "along the plug" if pad.has_plug else "to each side of it"


def _flats(pad: Pad, c: Conditions, holding: Sentence) -> Operation:
    return Operation(
        title="Saw and file the two flats",
        set_up=ON_TOP,
        holding=holding,
        tools=(SCRIBER, SQUARE, said("Hand saw"), LARGE_FILE, CALIPER),
        steps=(
            said(
                f"Scribe both flats on the top, {{half}} from the pad's centre line and {_along(pad)}, and square down the sides.",
                half=pad.flats_width_mm / 2,
            ),
            said(
                "Saw just outside the lines and file flat, square to the top, until the caliper reads {across} over both.",
                across=pad.flats_width_mm,
            ),
            SHARP_FLATS,
        ),
        watch=watch_for(c.material.family, "saw", "edges"),
        leaves_mm={"flats_width_mm": pad.flats_width_mm},
        other_time_min=60.0,
    )
