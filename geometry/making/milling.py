"""What is milled into the pad's top, always last, in one clamping that cannot close a slot."""

from collections.abc import Iterator

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.card import ON_TOP, Operation, Table
from geometry.making.cutter import RUN_MIN, side_cutter_mm
from geometry.making.flats import block_words, flats_operation
from geometry.making.kit import CALIPER
from geometry.making.limits import limit_sentence
from geometry.making.machine import Machine
from geometry.making.more_cuts import crossing_plan, relief_plan, relief_pocket, second_slot
from geometry.making.plug_milled import plug_operation
from geometry.making.slot_hold import Hold, milled_on_top, top_hold
from geometry.making.slot_plan import SlotPlan, slot_picture
from geometry.making.slot_words import cutter_words, slot_steps
from geometry.making.top_set_up import set_up_operation
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad


def top_operations(pad: Pad, c: Conditions, shop: Shop, m: Machine, plan: SlotPlan | None) -> Iterator[Operation]:
    """Set the pad up and cut what is milled: slots, pocket and mouth, then a plug's sides, then flats; nothing for a cushion."""
    if not milled_on_top(pad):
        return
    on_lathe = shop.slot_machine == "vertical_slide" and not m.is_stepless
    hold = top_hold(pad, on_lathe=on_lathe)
    cutter = plan.cutter_mm if plan else side_cutter_mm(c.cutters_mm)
    blocks = () if hold.in_chuck or not pad.has_flats else (block_words(pad, c),)
    yield set_up_operation(pad, hold, m, cutter_mm=cutter, on_lathe=on_lathe, more=blocks)
    if plan:
        yield from _slots(pad, c, shop, m, plan, hold, on_lathe=on_lathe)
    if pad.has_plug and not pad.plug_is_round:
        yield plug_operation(pad, c, m, hold, is_slender=is_slender(shop, m))
    if pad.has_flats:
        yield flats_operation(pad, c, m, hold, was_turned=on_lathe and pad.is_crossed)


def _slots(
    pad: Pad, c: Conditions, shop: Shop, m: Machine, plan: SlotPlan, hold: Hold, *, on_lathe: bool
) -> Iterator[Operation]:
    """The slot, the one that crosses it, the pocket, and their mouth."""
    slender = is_slender(shop, m)
    yield _slot(pad, c, shop, m, plan, hold, on_lathe=on_lathe)
    if pad.is_crossed:
        crossing = crossing_plan(pad, c, shop, m, is_slender=slender)
        table = pass_table(crossing, "Passes of the second slot")
        # Named as before where it is the same cutter, so that the list of tools has it once.
        tool = cutter_words(plan if crossing.cutter_mm == plan.cutter_mm else crossing, shop, m)
        yield second_slot(pad, c, crossing, hold.words, on_lathe=on_lathe, tool=tool, table=table)
    if pad.has_relief:
        pocket = relief_plan(pad, c, shop, m, is_slender=slender)
        yield relief_pocket(pad, c, pocket, hold.words, table=pass_table(pocket, "Passes of the pocket"))
    if pad.slot_mouth_chamfer_mm > 0:
        tool = said("90° chamfer cutter") if m.is_stepless else said("90° chamfer cutter, or a fine file")
        yield mouth(pad, c, hold.words, tool=tool, how=(_by_cutter(pad),))


def _slot(pad: Pad, c: Conditions, shop: Shop, m: Machine, plan: SlotPlan, hold: Hold, *, on_lathe: bool) -> Operation:
    names = ["slot_width_mm", "slot_depth_mm", "web_mm", "slot_corner_radius_mm"]
    names += ["slot_offset_mm"] if pad.slot_offset_mm > 0 else []
    return Operation(
        title="Cut the slot",
        set_up=ON_TOP,
        holding=hold.words,
        tools=(cutter_words(plan, shop, m), CALIPER),
        steps=(
            *slot_steps(plan, m, shop, on_lathe=on_lathe),
            limit_sentence(pad, "slot_width_mm", "The slot"),
            _depth_words(pad),
        ),
        why=said("The slot comes last: a slotted body cannot be held in a chuck without closing the slot."),
        cut=plan.cut,
        tables=(pass_table(plan, "Passes of the slot"),),
        picture=slot_picture(plan),
        watch=watch_for(c.material.family, "mill", "hold"),
        leaves_mm={name: getattr(pad, name) for name in names},
        extra_cutting_min=plan.time_min,
        other_time_min=RUN_MIN * len(plan.passes),
    )


def _depth_words(pad: Pad) -> Sentence:
    """The depth and the web share one floor: both limits bind it."""
    depth, web = limit_sentence(pad, "slot_depth_mm", "Its depth"), limit_sentence(pad, "web_mm", "The web")
    return said(
        "The depth measures from {least} to {most}, and what is left down to the seat's face from {low} to {high}: the floor must"
        " lie inside both.",
        **depth.lengths_mm,
        low=web.lengths_mm["least"],
        high=web.lengths_mm["most"],
    )


def is_slender(shop: Shop, machine: Machine) -> bool:
    """Whether cutter or work is held so that it wants lighter cuts."""
    return not machine.is_stepless and (shop.slot_machine == "vertical_slide" or shop.cutter_held_in == "chuck")


def _by_cutter(pad: Pad) -> Sentence:
    half, off, size = pad.slot_width_mm / 2, pad.slot_offset_mm, pad.slot_mouth_chamfer_mm
    if off <= 0:
        return said(
            "With a pointed cutter: its middle over a wall, {half} from the centre line, its point {size} below the top, at the"
            " end mill's speed; then the other wall.",
            half=half,
            size=size,
        )
    if off == half:
        near_words = "on the centre line"
    else:
        near_words = "{near} to the left of the centre line" if off > half else "{near} to the right of it"
    return said(
        "With a pointed cutter: its middle over a wall, for one {far} to the left of the centre line, for the other"
        f" {near_words}, its point {{size}} below the top, at the end mill's speed.",
        far=off + half,
        near=abs(off - half),
        size=size,
    )


def mouth(
    pad: Pad, conditions: Conditions, holding: Sentence, *, tool: Sentence, how: tuple[Sentence, ...] = ()
) -> Operation:
    """The chamfers along the slot's mouth, and the sharp ends of the slot."""
    size = pad.slot_mouth_chamfer_mm
    edges = "each mouth" if pad.is_crossed else "the mouth"
    return Operation(
        title="Chamfer the slot's mouth",
        set_up=ON_TOP,
        holding=holding,
        tools=(tool,),
        steps=(
            said(f"Chamfer both long edges of {edges} {{size}} × 45°: the seam finds its way in by them.", size=size),
            *how,
            said("Round the four upright edges where the slot leaves the body with a few strokes of a file."),
        ),
        watch=watch_for(conditions.material.family, "edges"),
        leaves_mm={"slot_mouth_chamfer_mm": size},
        other_time_min=6.0,
    )


def pass_table(plan: SlotPlan, title: str) -> Table:
    """Every pass of an end mill along a slot or a pocket, in order."""
    return Table(
        title=title,
        columns=(
            ("Pass", ""),
            ("Job", ""),
            ("Across, from the centre line", "mm"),
            ("Depth below the top", "mm"),
            ("Cuts deep", "mm"),
            ("Cuts wide", "mm"),
            ("Feed along", ""),
            ("Way", ""),
        ),
        rows=tuple(
            (float(p.number), p.job, p.y_mm, p.depth_mm, p.cut_deep_mm, p.cut_wide_mm, p.direction, p.way)
            for p in plan.passes
        ),
    )
