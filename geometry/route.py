"""The route card: everything that is done to make one pad in this shop, in order, from the bar or the spool on."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.checks import judge
from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making import hand, milling, printing
from geometry.making.bench import closing, saw_blank
from geometry.making.card import Operation, ToolEntry, tools_of
from geometry.making.hand_verdict import HandVerdict, hand_verdict
from geometry.making.kit import FINE_FILE
from geometry.making.machine import Machine, machine_of
from geometry.making.printing import PrintPlan, print_plan
from geometry.making.slot_plan import SlotPlan, cutter_for, slot_plan
from geometry.making.stock import (
    LEAST_LAST_GRIP_MM,
    Batch,
    StockPlan,
    bar_mass_kg,
    bar_used_mm,
    pads_from_bar,
    price_of,
    stock_plan,
)
from geometry.making.turning import Lathe
from geometry.making.wording import Sentence, said
from geometry.pad import Pad

BATCH_SIZES = (1, 3)
"""One pad, and three from one bar."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SetUp:
    """One clamping, with the zero that its sizes are counted from."""

    number: int
    holding: Sentence
    datum: Sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class RouteCard:
    """How one pad is made here."""

    title: str
    material: str
    operations: tuple[Operation, ...]
    set_ups: tuple[SetUp, ...]
    tools: tuple[ToolEntry, ...]
    stock: StockPlan | None
    """None for a print."""
    slot: SlotPlan | None
    """None where no end mill cuts it."""
    by_hand: HandVerdict | None
    """What the checks say to hand work, where there is any."""
    printing: PrintPlan | None
    batches: tuple[Batch, ...]
    pads_from_bar: int
    """How many a bar as sold gives; 0 for a print."""
    troubles: tuple[Sentence, ...]
    """What stands in the way in this shop: no such bar, no such cutter, a machine that runs too fast."""

    @property
    def time_min(self) -> float:
        """Estimated time for one pad, settings included."""
        return sum(operation.time_min for operation in self.operations)


def route_card(pad: Pad, conditions: Conditions, shop: Shop) -> RouteCard:
    """Write the card for the process of the document and the machines of the shop."""
    if conditions.process == "printed":
        return _printed(pad, conditions, shop)
    plan = stock_plan(pad, conditions, shop)
    if conditions.process == "hand_tools":
        return _by_hand(pad, conditions, shop, plan)
    return _machined(pad, conditions, shop, plan)


def _machined(pad: Pad, c: Conditions, shop: Shop, plan: StockPlan) -> RouteCard:
    m = machine_of(c, shop)
    slot = _slot(pad, c, shop, m)
    by_hand = None if slot else hand_verdict(pad, c, hand.SLOT)
    operations = (
        saw_blank(c, plan),
        *Lathe(pad, c, shop, plan, m).operations(),
        *(milling.slot_operations(pad, c, shop, m, slot) if slot else _filed_slot(pad, c, shop)),
        *closing(pad, c),
    )
    if c.process == "cnc":
        title = "Set-up sheet for CNC turning and milling"
    else:
        where = {"mill": "mill", "vertical_slide": "vertical slide", "none": "saw and file for the slot"}
        title = f"Route card: lathe and {where[shop.slot_machine] if slot else where['none']}"
    return _card(title, c, shop, operations, plan=plan, slot=slot, by_hand=by_hand, pad=pad)


def _slot(pad: Pad, c: Conditions, shop: Shop, m: Machine) -> SlotPlan | None:
    """The passes of an end mill; None where the shop has none that enters, or nothing to turn it with."""
    if shop.slot_machine == "none" and c.process != "cnc":
        return None
    cutter = cutter_for(slot_width_mm=pad.slot_width_mm, cutters_mm=c.cutters_mm, finishing_mm=m.finishing_mm)
    if cutter is None:
        return None
    return slot_plan(pad, m, cutter_mm=cutter, tool=shop.tool, is_slender=milling.is_slender(shop, m))


def _filed_slot(pad: Pad, c: Conditions, shop: Shop) -> Iterator[Operation]:
    yield from hand.slot_by_hand(pad, c, shop)
    if pad.slot_mouth_chamfer_mm > 0:
        yield milling.mouth(pad, c, said("Vice with wooden jaws."), tool=FINE_FILE)


def _by_hand(pad: Pad, c: Conditions, shop: Shop, plan: StockPlan) -> RouteCard:
    operations = (
        saw_blank(c, plan),
        *hand.round_by_hand(pad, c, shop),
        *_filed_slot(pad, c, shop),
        *closing(pad, c),
    )
    return _card(
        "Route card: saw and file, against the gauge sheet",
        c,
        shop,
        operations,
        plan=plan,
        slot=None,
        by_hand=hand_verdict(pad, c),
        pad=pad,
    )


def _printed(pad: Pad, c: Conditions, shop: Shop) -> RouteCard:
    plan = print_plan(pad, c, shop, judge(c, pad))
    operation = Operation(
        title="Print the pad",
        set_up=1,
        holding=said("On the printer's bed."),
        tools=(said("Printer, filament {filament} across", filament=shop.filament_diameter_mm),),
        steps=printing.print_steps(pad, plan),
        leaves_mm=pad.as_dict(),
        other_time_min=plan.time_min,
        setting_time_min=10.0,
    )
    operations = (operation, *closing(pad, c))
    return RouteCard(
        title="Print sheet",
        material=c.material.name,
        operations=operations,
        set_ups=(SetUp(number=1, holding=operation.holding, datum=said("The first layer.")),),
        tools=tools_of(operations),
        stock=None,
        slot=None,
        by_hand=None,
        printing=plan,
        batches=(),
        pads_from_bar=0,
        troubles=() if plan.is_advisable else (Sentence(plan.words),),
    )


def _card(
    title: str,
    c: Conditions,
    shop: Shop,
    operations: tuple[Operation, ...],
    *,
    plan: StockPlan,
    slot: SlotPlan | None,
    by_hand: HandVerdict | None,
    pad: Pad,
) -> RouteCard:
    return RouteCard(
        title=title,
        material=c.material.name,
        operations=operations,
        set_ups=_set_ups(operations, plan, pad, is_by_hand=c.process == "hand_tools", is_filed=slot is None),
        tools=tools_of(operations),
        stock=plan,
        slot=slot,
        by_hand=by_hand,
        printing=None,
        batches=tuple(_batch(n, operations, plan, c, shop) for n in BATCH_SIZES),
        pads_from_bar=pads_from_bar(plan, shop.bar_length_mm),
        troubles=tuple(_troubles(c, shop, operations, plan, slot, by_hand)),
    )


def _set_ups(
    operations: tuple[Operation, ...], plan: StockPlan, pad: Pad, *, is_by_hand: bool, is_filed: bool
) -> tuple[SetUp, ...]:
    """Each clamping once, with its zero: of a machine on the pad's axis, by hand what the lines are scribed from."""
    first, second = ("top", "foot") if plan.order == "top_first" else ("foot", "top")
    datums = {
        1: said(f"Axis of the spindle; the faced {first} is zero along it."),
        2: said(
            f"Axis of the spindle; the {second} when faced is zero, {{height}} from the other end.",
            height=pad.overall_height_mm,
        ),
        3: said(
            "Middle of the body across; the wall tops are zero, the seat face {height} below them.",
            height=pad.top_height_mm,
        ),
    }
    if is_by_hand:
        datums = {
            1: said("The filed foot: every height is scribed up from it; the circles from the centre of each end.")
        }
    if is_filed:
        datums[3] = said("The centre line, scribed across the top; the floor is counted down from the wall tops.")
    first_of = {operation.set_up: operation for operation in reversed(operations)}
    return tuple(SetUp(number=n, holding=first_of[n].holding, datum=datums[n]) for n in sorted(first_of) if n in datums)


def _batch(pads: int, operations: tuple[Operation, ...], plan: StockPlan, c: Conditions, shop: Shop) -> Batch:
    used = bar_used_mm(plan, pads)
    return Batch(
        pads=pads,
        bar_used_mm=used,
        mass_kg=bar_mass_kg(plan.bar_mm, used, c),
        price=price_of(plan.bar_mm, used, c, shop),
        time_min=sum(o.setting_time_min + pads * o.each_time_min for o in operations),
    )


def _troubles(
    c: Conditions,
    shop: Shop,
    operations: tuple[Operation, ...],
    plan: StockPlan,
    slot: SlotPlan | None,
    by_hand: HandVerdict | None,
) -> Iterator[Sentence]:
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
    if slot is None and shop.slot_machine != "none" and c.process != "hand_tools":
        yield said("No cutter to hand enters the slot, so it is sawn and filed.")
    if any(o.cut and o.cut.is_too_fast for o in operations):
        yield said(
            "Where the card says so, even the machine's slowest speed is faster than wanted: cut lightly,"
            " and let it cool often."
        )
    if by_hand is not None:
        yield Sentence(by_hand.words)
