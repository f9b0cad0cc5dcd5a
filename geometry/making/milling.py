"""The slot: on a milling machine or on a vertical slide, always last, and held where clamping cannot close it."""

from collections.abc import Iterator

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.card import Operation, Table
from geometry.making.kit import CALIPER, INDICATOR
from geometry.making.machine import Machine
from geometry.making.more_cuts import flats_operation, relief_plan, relief_pocket, second_slot
from geometry.making.slot_hold import LEAST_BAND_MM, Hold, slot_hold
from geometry.making.slot_plan import SlotPlan, slot_picture, slot_plan
from geometry.making.slot_words import cutter_words, slot_steps
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad

TRUE_MM = 0.05
"""How even an indicator reads when the pad stands true: common practice, no source."""
_SET_MIN, _RUN_MIN = 15.0, 0.5


def slot_operations(
    pad: Pad, conditions: Conditions, shop: Shop, machine: Machine, plan: SlotPlan
) -> Iterator[Operation]:
    """Set the pad up, rough and finish the slot, chamfer its mouth."""
    on_lathe = shop.slot_machine == "vertical_slide" and not machine.is_stepless
    hold = slot_hold(pad, on_lathe=on_lathe)
    yield _set_up(pad, hold, machine, cutter_mm=plan.cutter_mm, on_lathe=on_lathe)
    yield Operation(
        title="Cut the slot",
        set_up=3,
        holding=hold.words,
        tools=(cutter_words(plan, shop, machine), CALIPER),
        steps=tuple(slot_steps(plan, machine, shop, on_lathe=on_lathe)),
        why=said("The slot comes last: a slotted body cannot be held in a chuck without closing the slot."),
        cut=plan.cut,
        tables=(pass_table(plan),),
        picture=slot_picture(plan),
        watch=watch_for(conditions.material.family, "mill", "hold"),
        leaves_mm={
            "slot_width_mm": pad.slot_width_mm,
            "slot_depth_mm": pad.slot_depth_mm,
            "web_mm": pad.web_mm,
            "slot_corner_radius_mm": pad.slot_corner_radius_mm,
        }
        | ({"slot_offset_mm": pad.slot_offset_mm} if pad.slot_offset_mm > 0 else {}),
        extra_cutting_min=plan.time_min,
        other_time_min=_RUN_MIN * len(plan.passes),
    )
    yield from _more_cuts(pad, conditions, shop, machine, hold, cutter_mm=plan.cutter_mm)
    if pad.slot_mouth_chamfer_mm > 0:
        tool = said("90° chamfer cutter") if machine.is_stepless else said("90° chamfer cutter, or a fine file")
        yield mouth(pad, conditions, hold.words, tool=tool, how=(_by_cutter(pad),))


def _more_cuts(pad: Pad, c: Conditions, shop: Shop, m: Machine, hold: Hold, *, cutter_mm: float) -> Iterator[Operation]:
    """Second slot, relief and flats, in the clamping of the first slot."""
    on_lathe = shop.slot_machine == "vertical_slide" and not m.is_stepless
    slender = is_slender(shop, m)
    if pad.is_crossed:
        # The second slot is as wide as the first, or a little wider; the same cutter enters both.
        turned = pad.with_(slot_width_mm=pad.cross_slot_width_mm, slot_offset_mm=0.0)
        crossing = slot_plan(
            turned, m, cutter_mm=min(cutter_mm, turned.slot_width_mm), tool=shop.tool, is_slender=slender
        )
        yield second_slot(pad, c, m, crossing, hold.words, on_lathe=on_lathe, table=pass_table(crossing))
    if pad.has_relief:
        pocket = relief_plan(pad, c, shop, m, is_slender=slender)
        yield relief_pocket(pad, c, pocket, hold.words, table=pass_table(pocket))
    if pad.has_flats:
        yield flats_operation(pad, c, m, hold.words, in_chuck=hold.words.template.startswith("Three-jaw"))


def is_slender(shop: Shop, machine: Machine) -> bool:
    """Whether cutter or work is held so that it wants lighter cuts."""
    return not machine.is_stepless and (shop.slot_machine == "vertical_slide" or shop.cutter_held_in == "chuck")


def _by_cutter(pad: Pad) -> Sentence:
    if pad.slot_offset_mm > 0:
        return said(
            "With a pointed cutter: its middle over a wall, {near} and {far} from the centre line, its point {size} below the"
            " top, at the end mill's speed.",
            near=pad.slot_offset_mm - pad.slot_width_mm / 2,
            far=pad.slot_offset_mm + pad.slot_width_mm / 2,
            size=pad.slot_mouth_chamfer_mm,
        )
    return said(
        "With a pointed cutter: its middle over a wall, {half} from the centre line, its point {size} below the top, at the"
        " end mill's speed; then the other wall.",
        half=pad.slot_width_mm / 2,
        size=pad.slot_mouth_chamfer_mm,
    )


def mouth(
    pad: Pad, conditions: Conditions, holding: Sentence, *, tool: Sentence, how: tuple[Sentence, ...] = ()
) -> Operation:
    """The chamfers along the slot's mouth, and the sharp ends of the slot."""
    size = pad.slot_mouth_chamfer_mm
    edges = "each mouth" if pad.is_crossed else "the mouth"
    return Operation(
        title="Chamfer the slot's mouth",
        set_up=3,
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


def pass_table(plan: SlotPlan) -> Table:
    """Every pass along the slot, in order."""
    return Table(
        title="Passes of the slot",
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


def _set_up(pad: Pad, hold: Hold, machine: Machine, *, cutter_mm: float, on_lathe: bool) -> Operation:
    steps = [said("Wipe chips off every face that touches.")]
    if pad.has_stem:
        steps.append(said("The stem hangs free: the pad stands on its seat face or its lip, never on the stem."))
    steps += _on_lathe(pad, cutter_mm) if on_lathe else _on_mill(machine)
    if hold.band_mm < LEAST_BAND_MM:
        steps.append(
            said(
                "Only {band} is held. Add a strap down on each wall over a scrap of wood, clear of the"
                " cutter, and take light cuts.",
                band=hold.band_mm,
            )
        )
    return Operation(
        title="Set up for the slot",
        set_up=3,
        holding=hold.words,
        tools=(INDICATOR,),
        steps=tuple(steps),
        why=hold.why,
        setting_time_min=_SET_MIN,
        other_time_min=8.0,
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
