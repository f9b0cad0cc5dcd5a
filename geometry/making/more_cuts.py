"""What a mill cuts beside the first slot, in the same clamping: a second slot, a relief pocket."""

from collections.abc import Iterator

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.card import ON_TOP, Operation, Table
from geometry.making.cutter import RUN_MIN
from geometry.making.kit import CALIPER, INDICATOR, SQUARE
from geometry.making.limits import limit_sentence
from geometry.making.machine import Machine
from geometry.making.slot_plan import SlotPlan, cutter_for, slot_picture, slot_plan
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad


def crossing_plan(pad: Pad, c: Conditions, shop: Shop, m: Machine, *, is_slender: bool) -> SlotPlan:
    """The passes of the slot that crosses the first, by the cutter that suits it; the smallest where none enters."""
    turned = pad.with_(slot_width_mm=pad.cross_slot_width_mm, slot_offset_mm=0.0)
    width = turned.slot_width_mm
    fitting = cutter_for(slot_width_mm=width, cutters_mm=c.cutters_mm, finishing_mm=m.finishing_mm)
    return slot_plan(turned, m, cutter_mm=fitting or width, tool=shop.tool, is_slender=is_slender)


def second_slot(
    pad: Pad,
    c: Conditions,
    plan: SlotPlan,
    holding: Sentence,
    *,
    on_lathe: bool,
    tool: Sentence,
    table: Table,
) -> Operation:
    """The slot that crosses the first, by the same plan turned a quarter turn."""
    place = (
        said(
            "Let the pad go and turn it a quarter turn. A plate or a cutter's shank, lying in the first slot, stands upright: an"
            " indicator run along it by the vertical slide reads even. Find the middle again as before."
        )
        if on_lathe
        else said(
            "Leave the pad clamped; the jaws must stay clear of the cutter's way. The second slot runs along the other slide:"
            " +x of this table is the old +y, and its +y the old −x. Where the slide cannot travel so far, turn the pad a"
            " quarter turn against a square on a plate in the first slot, and find the middle again."
        )
    )
    return Operation(
        title="Cut the second slot",
        set_up=ON_TOP,
        holding=holding,
        tools=(tool, INDICATOR, SQUARE),
        steps=(
            place,
            said(
                "It runs through the middle of the pad, and its floor is level with the first slot's: keep the depth zero."
            ),
            limit_sentence(pad, "cross_slot_width_mm", "The second slot"),
            said("Where the slots meet, round the four upright corners with a file: a sharp one starts a crack."),
        ),
        cut=plan.cut,
        tables=(table,),
        picture=slot_picture(plan),
        watch=watch_for(c.material.family, "mill", "hold"),
        leaves_mm={"cross_slot_width_mm": pad.cross_slot_width_mm},
        extra_cutting_min=plan.time_min,
        other_time_min=10.0 + RUN_MIN * len(plan.passes),
    )


def relief_cutter_mm(pad: Pad, c: Conditions) -> float:
    """The largest cutter to hand that leaves the drawn corner radius or a smaller one, else the smallest that enters at all.

    Where none enters, one that the corners ask for.
    """
    entering = [d for d in c.cutters_mm if d <= min(pad.relief_length_mm, pad.relief_width_mm)]
    drawn = 2 * pad.relief_corner_radius_mm
    small = [d for d in entering if d <= drawn + 1e-6]
    return max(small) if small else min(entering, default=drawn)


def missing_cutters(pad: Pad, c: Conditions) -> Iterator[Sentence]:
    """Which cutter has to be got before the second slot or the pocket can be milled."""
    if pad.is_crossed and not any(d <= pad.cross_slot_width_mm for d in c.cutters_mm):
        yield said(
            "No cutter to hand enters the second slot: get one of {width} or less.", width=pad.cross_slot_width_mm
        )
    room = min(pad.relief_length_mm, pad.relief_width_mm)
    if pad.has_relief and not any(d <= room for d in c.cutters_mm):
        yield said("No cutter to hand enters the relief pocket: get one of {room} or less.", room=room)


def relief_plan(pad: Pad, c: Conditions, shop: Shop, m: Machine, *, is_slender: bool) -> SlotPlan:
    """The pocket as a short, wide slot between two stops."""
    cutter = relief_cutter_mm(pad, c)
    as_slot = pad.with_(
        slot_width_mm=pad.relief_width_mm,
        slot_depth_mm=pad.relief_depth_mm,
        body_diameter_mm=max(pad.relief_length_mm - cutter, 0.1),
    )
    return slot_plan(as_slot, m, cutter_mm=cutter, tool=shop.tool, is_slender=is_slender)


def relief_pocket(pad: Pad, c: Conditions, plan: SlotPlan, holding: Sentence, *, table: Table) -> Operation:
    """The pocket across the middle of the slot, down and across between two stops."""
    return Operation(
        title="Cut the relief pocket",
        set_up=ON_TOP,
        holding=holding,
        tools=(
            said(
                "End mill {cutter}, cutting to its middle, {reach} out of its holder",
                cutter=plan.cutter_mm,
                reach=plan.reach_mm,
            ),
            CALIPER,
        ),
        steps=tuple(_pocket_steps(pad, plan)),
        why=said("The doubler or lip at the lifting point stands in it without touching; the seam bears beside it."),
        cut=plan.cut,
        tables=(table,),
        picture=slot_picture(plan),
        watch=watch_for(c.material.family, "mill"),
        leaves_mm={n: getattr(pad, n) for n in ("relief_width_mm", "relief_length_mm", "relief_depth_mm")},
        extra_cutting_min=plan.time_min,
        other_time_min=8.0 + RUN_MIN * len(plan.passes),
    )


def _pocket_steps(pad: Pad, plan: SlotPlan) -> Iterator[Sentence]:
    ends = (pad.relief_length_mm - plan.cutter_mm) / 2
    yield said(
        "Every pass runs along the slot between two stops, the cutter's middle {ends} to each side of the pad's middle."
        " Begin each level in the slot.",
        ends=ends,
    )
    if pad.floor_is_open:
        yield said(
            "Below {depth} the slot is not open any more: lower the cutter while it is fed along, not straight down.",
            depth=pad.slot_depth_mm,
        )
    yield said(
        "At full depth go round once: one wall, the end, the other wall, the other end, {width} across and {length} long.",
        width=pad.relief_width_mm,
        length=pad.relief_length_mm,
    )
    yield said("The cutter leaves a radius of {radius} in the four upright corners.", radius=plan.cutter_mm / 2)
    if plan.cutter_mm / 2 > pad.relief_corner_radius_mm + 1e-6:
        yield said(
            "That is more than the {radius} drawn: file the corners out, or get a smaller cutter.",
            radius=pad.relief_corner_radius_mm,
        )
    yield limit_sentence(pad, "relief_depth_mm", "The pocket's depth from the wall tops")
    yield said("It must clear what hangs lower there: rather the greater depth than the lesser.")
