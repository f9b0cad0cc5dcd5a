"""What stands in the way of a pad in this shop: no such bar, no such cutter, too little to hold, a machine that runs too fast."""

from collections.abc import Iterator

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.card import Operation
from geometry.making.foot import awkward_grooves
from geometry.making.hand_verdict import HandVerdict
from geometry.making.machine import machine_of
from geometry.making.more_cuts import missing_cutters
from geometry.making.slot_plan import SlotPlan
from geometry.making.stock import LEAST_LAST_GRIP_MM, StockPlan
from geometry.making.wording import Sentence, said
from geometry.pad import Pad


def has_mill(c: Conditions, shop: Shop) -> bool:
    """Whether anything turns an end mill here."""
    return shop.slot_machine != "none" or c.process == "cnc"


def troubles_of(
    pad: Pad,
    c: Conditions,
    shop: Shop,
    operations: tuple[Operation, ...],
    plan: StockPlan,
    slot: SlotPlan | None,
    by_hand: HandVerdict | None,
) -> Iterator[Sentence]:
    """Whatever the card cannot make good by itself, each in a sentence."""
    if not plan.bar_is_listed:
        yield said(
            "No bar to hand is thick enough: this card takes one of {bar}. Get one of at least that.", bar=plan.bar_mm
        )
    if c.process != "hand_tools" and plan.second_grip_mm < LEAST_LAST_GRIP_MM:
        yield said(
            "Only {grip} of the body can be held for the last facing cut. Bore soft jaws or a split ring to the body, or file the"
            " top flat instead.",
            grip=plan.second_grip_mm,
        )
    if c.process != "hand_tools":
        yield from awkward_grooves(pad, machine_of(c, shop))
    if pad.has_slot and slot is None and has_mill(c, shop) and c.process != "hand_tools":
        yield said("No cutter to hand enters the slot, so it is sawn and filed.")
    if slot is not None:
        yield from missing_cutters(pad, c)
    if any(o.cut and o.cut.is_too_fast for o in operations):
        yield said(
            "Where the card says so, even the machine's slowest speed is faster than wanted: cut lightly,"
            " and let it cool often."
        )
    if by_hand is not None:
        yield Sentence(by_hand.words)
