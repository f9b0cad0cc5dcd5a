"""The clampings of a route card: how each is held, what it is for, and the zero that its sizes are counted from."""

from dataclasses import dataclass

from geometry.making.card import AT_THE_SAW, FIRST, FOR_THE_HOLE, ON_TOP, SECOND, Operation
from geometry.making.slot_hold import milled_on_top
from geometry.making.stock import StockPlan
from geometry.making.wording import Sentence, said
from geometry.pad import Pad


@dataclass(frozen=True, slots=True, kw_only=True)
class SetUp:
    """One clamping, with the zero that its sizes are counted from."""

    number: int
    holding: Sentence
    datum: Sentence


def set_ups_of(
    operations: tuple[Operation, ...], plan: StockPlan, pad: Pad, *, is_by_hand: bool, is_milled: bool
) -> tuple[SetUp, ...]:
    """Each clamping once, with its zero: of a machine on the pad's axis, by hand what the lines are scribed from."""
    datums = {FIRST: _BY_HAND} if is_by_hand else _on_lathe(plan, pad)
    datums[ON_TOP] = _on_top(pad) if is_milled else _SCRIBED
    datums[FOR_THE_HOLE] = said(
        "Middle of the stem across; the seat's face is zero along the axis, the hole {distance} from it.",
        distance=pad.cross_hole_distance_mm,
    )
    first_of = {operation.set_up: operation for operation in reversed(operations)}
    return tuple(SetUp(number=n, holding=first_of[n].holding, datum=datums[n]) for n in sorted(first_of) if n in datums)


def set_up_heading(number: int, pad: Pad, process: str) -> str:
    """What a clamping is called on the card."""
    if process == "printed":
        return "At the printer" if number == FIRST else "At the bench"
    what = milled_on_top(pad) or "top"
    if process == "hand_tools":
        named = {AT_THE_SAW: "At the saw", FIRST: "Round and flat, by hand", ON_TOP: f"The {what}, by hand"}
        return named.get(number, "The cross-hole" if number == FOR_THE_HOLE else "At the bench")
    named = {
        AT_THE_SAW: "At the saw",
        FIRST: "First set-up",
        SECOND: "Second set-up, turned round",
        ON_TOP: f"Third set-up, for the {what}",
        FOR_THE_HOLE: f"{'Fourth' if milled_on_top(pad) else 'Third'} set-up, for the cross-hole",
    }
    return named.get(number, "At the bench")


_BY_HAND = said("The filed foot: every height is scribed up from it; the circles from the centre of each end.")
_SCRIBED = said("The centre line, scribed across the top; depths are counted down from the top.")


def _on_lathe(plan: StockPlan, pad: Pad) -> dict[int, Sentence]:
    first, second = ("top", "foot") if plan.order == "top_first" else ("foot", "top")
    return {
        FIRST: said(f"Axis of the spindle; the faced {first} is zero along it."),
        SECOND: said(
            f"Axis of the spindle; the {second} when faced is zero, {{height}} from the other end.",
            height=pad.overall_height_mm,
        ),
    }


def _on_top(pad: Pad) -> Sentence:
    highest = "wall tops are" if pad.has_slot else "plug's top is" if pad.has_plug else "top is"
    return said(
        f"Middle of the body across; the {highest} zero, the seat face {{height}} below.", height=pad.top_height_mm
    )
