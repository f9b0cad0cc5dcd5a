"""The hole through the stem for a pin: drilled square to the slot, its place counted from the seat face."""

from collections.abc import Iterator

from geometry.conditions import Conditions
from geometry.making.card import FOR_THE_HOLE, Cut, Operation
from geometry.making.kit import CALIPER, INDICATOR, SCRAPER
from geometry.making.limits import limit_sentence
from geometry.making.machine import Machine
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.provenance import memory

PILOT_FROM_MM = 6.0
"""From this diameter on a pilot hole goes first."""
PILOT_SHARE = 0.5
DRILL_SPEED_SHARE = 0.5
"""Of the speed of an end mill: the chips come out slowly, and heat stays in the hole."""
DRILL_FEED_MM_REV = 0.1
DRILL_SOURCE = memory("Drilling plastics at half an end mill's speed, 0.1 mm a turn, drawn out every diameter")


def cross_hole_operation(pad: Pad, c: Conditions, m: Machine) -> Operation:
    """Drill the hole through the middle of the stem, along x, and deburr it."""
    across = pad.cross_hole_diameter_mm
    return Operation(
        title="Drill the cross-hole through the stem",
        set_up=FOR_THE_HOLE,
        holding=_holding(pad),
        tools=(
            said("Centre drill"),
            *(
                (said("Drill {pilot}, for a pilot hole", pilot=PILOT_SHARE * across),)
                if across >= PILOT_FROM_MM
                else ()
            ),
            said("Drill {across}, its edges ground without hook", across=across),
            INDICATOR,
            CALIPER,
            SCRAPER,
        ),
        steps=tuple(_steps(pad, m)),
        why=said("It comes last: a stem with a hole is weaker in every later clamping."),
        cut=_cut(across, m),
        watch=watch_for(c.material.family, "mill"),
        leaves_mm={
            "cross_hole_diameter_mm": across,
            "cross_hole_distance_mm": pad.cross_hole_distance_mm,
        },
        setting_time_min=10.0,
        other_time_min=12.0,
        sources=(("Drilling", DRILL_SOURCE),),
    )


def _cut(across: float, m: Machine) -> Cut:
    return m.drilling(across, share=DRILL_SPEED_SHARE, feed_mm_rev=DRILL_FEED_MM_REV, source=DRILL_SOURCE)


def _holding(pad: Pad) -> Sentence:
    return said(
        "The pad on its side, its axis level: the body in a V-block on the table, or in a vice with a V-block, a strap over it."
        " The stem stands free, a block of wood just under it."
    )


def _steps(pad: Pad, m: Machine) -> Iterator[Sentence]:
    across, distance = pad.cross_hole_diameter_mm, pad.cross_hole_distance_mm
    yield _turned_to(pad)
    yield said("An indicator run along the top of the stem reads even: the axis is level.")
    dial = "the zero of the work" if m.is_stepless else "the dial to zero"
    hidden = max(0.0, -pad.foot_bottom_mm)
    face = "skirt's end" if hidden > 0 else "seat's face"
    also = ", which is {distance} from the seat's face" if hidden > 0 else ""
    yield said(
        f"Touch the stem on both sides with an edge finder, go half way, and set {dial}: the hole stands in its middle. Touch the"
        f" {face}, beside the stem, and go {{far}} from there towards the stem's end{also}; {{rest}} are left to that.",
        far=distance - hidden,
        distance=distance,
        rest=pad.stem_length_mm - distance,
    )
    yield said(
        "At a drill press without dials: scribe that place on the stem, and its middle by a square from the table, and punch it"
        " with a hand-held point."
    )
    yield said(
        "Centre-drill, then drill through by the full stem of {stem}, drawing out every {peck}. Ease off before it breaks"
        " through into the block of wood.",
        stem=pad.stem_diameter_mm,
        peck=across,
    )
    yield limit_sentence(pad, "cross_hole_diameter_mm", "The hole")
    yield said("No drill of that size: take the next smaller one and ream or file to it; the pin itself is the gauge.")
    yield limit_sentence(pad, "cross_hole_distance_mm", "From the seat's face to the middle of the hole it")
    yield said(
        "Deburr both mouths with a countersink turned by hand, no more than takes the burr; clear the burr inside."
    )


def _turned_to(pad: Pad) -> Sentence:
    """How the pad lies, so that the hole runs square to the slot."""
    if pad.has_flats:
        return said("One flat lies down, level: the hole is drilled square to the flats.")
    if pad.has_slot:
        return said("A plate in the slot lies level by the indicator: the hole is drilled square to the slot.")
    if pad.has_plug and not pad.plug_is_round:
        return said(
            "A side of the plug that is {long} long lies level by the indicator: the hole is drilled square to it.",
            long=pad.plug_length_mm,
        )
    return said("The pad may lie turned to any side: it is round.")
