"""The route card: everything that is done to make one pad in this shop, in order, from the bar or the spool on."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.checks import judge
from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making import hand, milling
from geometry.making.batch import Batch, batch_of, pads_from_bar
from geometry.making.bench import closing, saw_blank
from geometry.making.card import FIRST, Operation, ToolEntry, tools_of, watched_once
from geometry.making.cross_hole import cross_hole_operation
from geometry.making.hand_verdict import HandVerdict, hand_verdict
from geometry.making.kit import FINE_FILE
from geometry.making.machine import Machine, machine_of
from geometry.making.more_by_hand import more_by_hand
from geometry.making.plug_milled import PLUG, filed_plug
from geometry.making.print_steps import print_steps
from geometry.making.printing import PrintPlan, print_plan, printed_sizes
from geometry.making.set_ups import SetUp, set_ups_of
from geometry.making.slot_hold import hand_hold, milled_on_top
from geometry.making.slot_plan import SlotPlan, cutter_for, slot_plan
from geometry.making.stock import StockPlan, stock_plan
from geometry.making.troubles import has_mill, troubles_of
from geometry.making.turning import Lathe
from geometry.making.wording import Sentence, said
from geometry.pad import Pad

BATCH_SIZES = (1, 3)
"""One pad, and three from one bar."""


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
    what = milled_on_top(pad)
    is_milled = slot is not None if what == "slot" else has_mill(c, shop)
    top = milling.top_operations(pad, c, shop, m, slot) if is_milled else _top_by_hand(pad, c, shop)
    operations = (
        saw_blank(c, plan),
        *Lathe(pad, c, shop, plan, m).operations(),
        *top,
        *_cross_hole(pad, c, m),
        *closing(pad, c),
    )
    by_hand = hand_verdict(pad, c, _BY_HAND[what]) if what and not is_milled else None
    return _card(
        _title(pad, c, shop, is_milled=is_milled),
        c,
        shop,
        operations,
        plan=plan,
        slot=slot,
        by_hand=by_hand,
        pad=pad,
    )


_BY_HAND = {"slot": hand.SLOT, "plug": PLUG, "flats": ("flats_width_mm",)}
"""What is only held to class c where nothing mills it."""


def _title(pad: Pad, c: Conditions, shop: Shop, *, is_milled: bool) -> str:
    """What the card is called: by its machines."""
    what = milled_on_top(pad)
    if c.process == "cnc":
        return f"Set-up sheet for CNC turning{' and milling' if what else ''}"
    if not what:
        return "Route card: lathe"
    where = {"mill": "mill", "vertical_slide": "vertical slide"}.get(shop.slot_machine) if is_milled else None
    return f"Route card: lathe and {where or f'saw and file for the {what}'}"


def _slot(pad: Pad, c: Conditions, shop: Shop, m: Machine) -> SlotPlan | None:
    """The passes of an end mill; None without a slot, without a cutter that enters it, or with nothing to turn one."""
    if not pad.has_slot or not has_mill(c, shop):
        return None
    cutter = cutter_for(slot_width_mm=pad.slot_width_mm, cutters_mm=c.cutters_mm, finishing_mm=m.finishing_mm)
    if cutter is None:
        return None
    return slot_plan(pad, m, cutter_mm=cutter, tool=shop.tool, is_slender=milling.is_slender(shop, m))


def _top_by_hand(pad: Pad, c: Conditions, shop: Shop) -> Iterator[Operation]:
    """What saw and file make of the top: slots with their mouth, a plug's sides, flats."""
    if pad.has_slot:
        yield from hand.slot_by_hand(pad, c, shop)
        if pad.slot_mouth_chamfer_mm > 0:
            yield milling.mouth(pad, c, said("Vice with wooden jaws."), tool=FINE_FILE)
        return
    if pad.has_plug and not pad.plug_is_round:
        yield filed_plug(pad, c, hand_hold(pad))
    yield from more_by_hand(pad, c, hand_hold(pad))


def _cross_hole(pad: Pad, c: Conditions, m: Machine) -> tuple[Operation, ...]:
    return (cross_hole_operation(pad, c, m),) if pad.has_cross_hole else ()


def _by_hand(pad: Pad, c: Conditions, shop: Shop, plan: StockPlan) -> RouteCard:
    operations = (
        saw_blank(c, plan),
        *hand.round_by_hand(pad, c, shop),
        *_top_by_hand(pad, c, shop),
        *_cross_hole(pad, c, machine_of(c, shop)),
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
        set_up=FIRST,
        holding=said("On the printer's bed."),
        tools=(said("Printer, filament {filament} across", filament=shop.filament_diameter_mm),),
        steps=print_steps(pad, plan),
        leaves_mm=printed_sizes(pad),
        other_time_min=plan.time_min,
        setting_time_min=10.0,
    )
    operations = watched_once((operation, *closing(pad, c)))
    return RouteCard(
        title="Print sheet",
        material=c.material.name,
        operations=operations,
        set_ups=(SetUp(number=FIRST, holding=operation.holding, datum=said("The first layer.")),),
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
        operations=watched_once(operations),
        set_ups=set_ups_of(
            operations,
            plan,
            pad,
            is_by_hand=c.process == "hand_tools",
            is_milled=by_hand is None,
        ),
        tools=tools_of(operations),
        stock=plan,
        slot=slot,
        by_hand=by_hand,
        printing=None,
        batches=tuple(batch_of(n, operations, plan, c, shop) for n in BATCH_SIZES),
        pads_from_bar=pads_from_bar(plan, shop.bar_length_mm),
        troubles=tuple(troubles_of(pad, c, shop, operations, plan, slot, by_hand)),
    )
