"""The work before and after the machines: sawing the blank, deburring, finishing, rest and measurement."""

from collections.abc import Iterator

from geometry.conditions import Conditions
from geometry.making.card import AT_THE_BENCH, AT_THE_SAW, Operation
from geometry.making.kit import (
    CALIPER,
    FINE_FILE,
    FLAT_PLATE,
    GAUGES,
    GRIT,
    GRIT_PAPER,
    RADIUS_GAUGE,
    RULE,
    SCRAPER,
    SCRIBER,
    saw,
)
from geometry.making.own_words import jack_words, way_of
from geometry.making.stock import FACING_MM, StockPlan
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.provenance import practice

REST_HOURS = 24.0
REST_SOURCE = practice("Plastics move for about a day after cutting")
_NO_STUB_MM = 0.1
"""Less of the blank than this is no piece to hold it by."""


def saw_blank(conditions: Conditions, plan: StockPlan) -> Operation:
    """Cut the blank from the bar."""
    stub = (
        said("Of the blank, {stub} only serves to hold it and is cut away.", stub=plan.stub_mm)
        if plan.stub_mm > _NO_STUB_MM
        else None
    )
    return Operation(
        title="Saw the blank",
        set_up=AT_THE_SAW,
        holding=said("Vice or saw clamp, the bar level, the piece that falls off supported."),
        tools=(saw(plan.kerf_mm), RULE),
        steps=(
            said(
                f"Take {conditions.material.name} bar, {{bar}} across; measure it. Note its batch.",
                bar=plan.bar_mm,
            ),
            said("Mark {blank} from a square end, and saw outside the mark.", blank=plan.blank_mm),
            said("{facing} is allowed on each end for facing.", facing=FACING_MM),
            *((stub,) if stub else ()),
        ),
        watch=watch_for(conditions.material.family, "saw"),
        other_time_min=8.0,
    )


def closing(pad: Pad, conditions: Conditions) -> Iterator[Operation]:
    """Deburr, finish, rest, measure."""
    family = conditions.material.family
    yield Operation(
        title="Deburr and finish",
        set_up=AT_THE_BENCH,
        holding=said("In the hand; or the body in paper in a vice with soft jaws."),
        tools=(SCRAPER, FINE_FILE, GRIT_PAPER, FLAT_PLATE, said("Lens")),
        steps=(
            said("Break every edge that the card has not: nothing may feel sharp or furry."),
            *_floor(pad),
            _seat_face(pad),
            said(
                f"Finish the rest with {GRIT}, lightly." + (" Do not round the slot's floor." if pad.has_slot else "")
            ),
            said("Wash in warm water with soap, rinse and wipe dry."),
        ),
        watch=watch_for(family, "edges", "finish"),
        other_time_min=15.0,
    )
    yield Operation(
        title="Rest, then measure",
        set_up=AT_THE_BENCH,
        holding=said("On a flat plate, at room temperature."),
        tools=(CALIPER, said("Micrometer"), RADIUS_GAUGE, GAUGES, SCRIBER),
        steps=(
            said(f"Leave the part in the room for {REST_HOURS:g} hours; note the temperature."),
            said("Measure every line of the inspection sheet in its order, and write every reading down."),
            _marked(pad),
            _tried(pad, conditions),
        ),
        watch=watch_for(family, "rest"),
        other_time_min=15.0,
    )


def _floor(pad: Pad) -> tuple[Sentence, ...]:
    """What is looked at on the face that carries the car."""
    if pad.has_slot:
        return (said("Look into the corners of the slot's floor with a lens: no step, no cut below the floor."),)
    if pad.has_plug:
        return (said("Look round the foot of the plug with a lens: no step, no groove in the shoulder."),)
    return ()


def _seat_face(pad: Pad) -> Sentence:
    even = "until it shows one even pattern"
    if pad.foot_bottom_mm < 0:
        return said(f"Rub the seat face inside the skirt with {GRIT} on a flat stick, {even}: it must stay flat.")
    if pad.has_stem:
        return said(f"Rub the seat face round the stem with {GRIT} on a flat stick, {even}: it must stay flat.")
    return said(f"Draw the seat face over {GRIT} on a flat plate, in figures of eight, {even}.")


def _marked(pad: Pad) -> Sentence:
    """Where number and date go: on the side, where that is high enough to scribe on."""
    if pad.has_side_to_mark:
        where = (
            f", scribed on the side of the body, never {'in the slot' if pad.has_slot else 'on a face that carries'}"
        )
    else:
        where = ", on a tag or its bag: the side is too low to scribe on"
    return said(f"Mark the part with its design number (at the head of this card) and the date{where}.")


def _tried(pad: Pad, c: Conditions) -> Sentence:
    """How the finished pad is tried on the jack that it was measured for."""
    stem = " and the stem goes into its hole" if pad.has_stem and c.foot.locates != "stem" else ""
    jack = jack_words(c)
    where = "in the jack's cup" if way_of(c.foot) == "cup" else "on the jack"
    goes = jack.goes.replace(" into the cup", " in")
    return said(
        f"Try it {where}: it {goes} by itself{stem}, does not rock, and {jack.free.replace('its lip', 'the lip')}."
    )
