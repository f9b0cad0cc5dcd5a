"""Setting the pad up for what is cut into its top: standing true, its middle found, the exit backed."""

from collections.abc import Iterator

from geometry.making.card import ON_TOP, Operation
from geometry.making.kit import INDICATOR
from geometry.making.machine import Machine
from geometry.making.slot_hold import LEAST_BAND_MM, Hold, milled_on_top
from geometry.making.wording import Sentence, said
from geometry.pad import Pad

TRUE_MM = 0.05
"""How even an indicator reads when the pad stands true: common practice, no source."""
_SET_MIN, _CLAMP_MIN = 15.0, 8.0


def set_up_operation(
    pad: Pad, hold: Hold, machine: Machine, *, cutter_mm: float, on_lathe: bool, more: tuple[Sentence, ...] = ()
) -> Operation:
    """Clamp the pad and find its middle."""
    what = milled_on_top(pad)
    return Operation(
        title=f"Set up for the {what}",
        set_up=ON_TOP,
        holding=hold.words,
        tools=(INDICATOR,),
        steps=(*_steps(pad, hold, machine, cutter_mm=cutter_mm, on_lathe=on_lathe), *more),
        why=hold.why,
        setting_time_min=_SET_MIN,
        other_time_min=_CLAMP_MIN,
    )


def _steps(pad: Pad, hold: Hold, machine: Machine, *, cutter_mm: float, on_lathe: bool) -> Iterator[Sentence]:
    yield said("Wipe chips off every face that touches.")
    if pad.has_stem:
        yield said("The stem hangs free: the pad stands on its seat face, its lip or its skirt, never on the stem.")
    yield from _on_lathe(pad, cutter_mm) if on_lathe else _on_mill(machine)
    if hold.band_mm < LEAST_BAND_MM:
        where = "on each wall" if pad.has_slot else "on the top, clear of what is cut,"
        yield said(
            f"Only {{band}} is held. Add a strap down {where} over a scrap of wood, clear of the cutter, and take light cuts.",
            band=hold.band_mm,
        )
    if pad.has_slot:
        yield said(
            "Where the cutter leaves the round body, the edge breaks out. Back it there: a block of hardwood, bored {body} across"
            " and cut in two, or hollowed with a rasp, stands on the jaws close against the body and is clamped; the cutter runs"
            " out into it.",
            body=pad.body_diameter_mm,
        )


def _on_lathe(pad: Pad, cutter_mm: float) -> list[Sentence]:
    both = pad.body_diameter_mm + cutter_mm
    return [
        said(
            "Square the top face to the spindle: an indicator in the chuck, swept over it, reads even to {limit}.",
            limit=TRUE_MM,
        ),
        said(
            "Put the cutter in. Touch the uppermost point of the body with its underside, on paper, then raise the work by"
            " {raise_by}, half of body and cutter together: the cutter stands on the centre line. Set the vertical dial to"
            " zero.",
            raise_by=both / 2,
        ),
        said(
            "The cross slide must travel {travel}, body and cutter together; where it does not, cut from both ends.",
            travel=both,
        ),
    ]


def _on_mill(machine: Machine) -> list[Sentence]:
    zero = "Set the zero of the work there" if machine.is_stepless else "Set both dials to zero there"
    return [
        said("Tap the pad down until it sits without rocking."),
        said(
            f"Find the middle: an indicator in the spindle, swept round the body, reads even to {{limit}}. {zero}.",
            limit=TRUE_MM,
        ),
        said("No indicator: touch one side of the body with an edge finder, then the other, and go half way."),
    ]
