"""What a mill cuts beside the first slot, in the same clamping: a second slot, a relief pocket, two flats."""

from collections.abc import Iterator
from math import ceil

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.machining import milling_time_min
from geometry.making.card import Operation, Table
from geometry.making.kit import CALIPER, INDICATOR
from geometry.making.machine import Machine
from geometry.making.slot_plan import SlotPlan, slot_picture, slot_plan
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad

SAWN_SPARE_MM = 1.0
"""Left on each flat by the saw."""
_JAW_SPARE_MM = 0.5
_RUN_MIN = 0.5


def second_slot(
    pad: Pad, c: Conditions, m: Machine, plan: SlotPlan, holding: Sentence, *, on_lathe: bool, table: Table
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
        set_up=3,
        holding=holding,
        tools=(said("End mill {cutter}, as before", cutter=plan.cutter_mm), INDICATOR, said("Square")),
        steps=(
            place,
            said(
                "It runs through the middle of the pad, and its floor is level with the first slot's: keep the depth zero."
            ),
            said("Where the slots meet, round the four upright corners with a file: a sharp one starts a crack."),
        ),
        cut=plan.cut,
        tables=(table,),
        picture=slot_picture(plan),
        watch=watch_for(c.material.family, "mill", "hold"),
        leaves_mm={"cross_slot_width_mm": pad.cross_slot_width_mm},
        extra_cutting_min=plan.time_min,
        other_time_min=10.0 + _RUN_MIN * len(plan.passes),
    )


def relief_cutter_mm(pad: Pad, c: Conditions) -> float:
    """The largest cutter to hand that leaves the drawn corner radius or a smaller one; else the smallest of all."""
    small = [d for d in c.cutters_mm if d <= 2 * pad.relief_corner_radius_mm + 1e-6]
    return max(small) if small else min(c.cutters_mm, default=2 * pad.relief_corner_radius_mm)


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
        set_up=3,
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
        other_time_min=8.0 + _RUN_MIN * len(plan.passes),
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
    yield said(
        "{depth} deep or a little more, never less: it must clear what hangs lower there.", depth=pad.relief_depth_mm
    )


def flats_operation(pad: Pad, c: Conditions, m: Machine, holding: Sentence, *, in_chuck: bool) -> Operation:
    """Two flats along the slot: sawn near, milled to size from the middle of the pad."""
    cutter = max(c.cutters_mm, default=10.0)
    place = (pad.flats_width_mm + cutter) / 2
    high = pad.body_top_mm - pad.seat_length_mm
    levels = ceil(high / cutter)
    rows = [
        (side, job, sign * (place + spare), high * (k + 1) / levels)
        for side, sign in (("left flat", 1.0), ("right flat", -1.0))
        for job, spare in (("rough", m.finishing_mm), ("finish", 0.0))
        for k in (range(levels) if job == "rough" else (levels - 1,))
    ]
    cut = m.milling(cutter)
    run = milling_time_min(
        length_mm=(pad.body_diameter_mm**2 - pad.flats_width_mm**2) ** 0.5,
        cutter_diameter_mm=cutter,
        table_feed_mm_min=cut.table_feed_mm_min or 1.0,
    )
    return Operation(
        title="Saw and mill the two flats",
        set_up=3,
        holding=holding,
        tools=(
            said("Hand saw"),
            said("End mill {cutter} for the flats, its flutes {high} long", cutter=cutter, high=high),
            CALIPER,
        ),
        steps=tuple(_flat_steps(pad, in_chuck=in_chuck)),
        why=said("They come after the slot, which they run along: the pad still stands as it did, on the same zero."),
        cut=cut,
        tables=(
            Table(
                title="Passes of the flats",
                columns=(
                    ("Flat", ""),
                    ("Job", ""),
                    ("Across, from the centre line", "mm"),
                    ("Depth below the top", "mm"),
                ),
                rows=tuple(rows),
            ),
        ),
        watch=watch_for(c.material.family, "mill", "saw"),
        leaves_mm={"flats_width_mm": pad.flats_width_mm},
        extra_cutting_min=run * len(rows),
        other_time_min=20.0,
    )


def _flat_steps(pad: Pad, *, in_chuck: bool) -> Iterator[Sentence]:
    yield said(
        "Scribe both flats on the top, {half} from the pad's centre line, along the slot. Saw {spare} outside the lines, down"
        " the whole body, before the cutter is put in; support the piece that falls off.",
        half=pad.flats_width_mm / 2,
        spare=SAWN_SPARE_MM,
    )
    yield said("The centre line is the axis of the pad, not the middle of a slot that stands off it.")
    if in_chuck:
        yield said(
            "Stop {spare} above a jaw that stands out under a flat, and file the rest level with it afterwards.",
            spare=_JAW_SPARE_MM,
        )
    yield said(
        "Mill by the table, against the cutter's turning. After the first flat measure from it to the round side opposite:"
        " {over}. After the second measure across both: {across}.",
        over=(pad.flats_width_mm + pad.body_diameter_mm) / 2,
        across=pad.flats_width_mm,
    )
    yield said("Break the new edges {edge} × 45° with a file.", edge=pad.edge_chamfer_mm)
