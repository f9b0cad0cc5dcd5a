"""The slot: on a milling machine or on a vertical slide, always last, and held where clamping cannot close it."""

from collections.abc import Iterator

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.card import Operation, Table
from geometry.making.kit import CALIPER, INDICATOR
from geometry.making.machine import Machine
from geometry.making.slot_hold import LEAST_BAND_MM, Hold, slot_hold
from geometry.making.slot_plan import SlotPlan, slot_picture
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad

TRUE_MM = 0.05
"""How even an indicator reads when the pad stands true: common practice, no source."""
NOTICEABLE_MM = 0.05
"""A cutter that bends further than this leaves a wall that wants another pass."""
LEAST_SAID_MM = 0.01
"""A smaller bend is not worth a figure."""
_SET_MIN, _RUN_MIN = 15.0, 0.5
_ON_MILL = said(
    "In the table +x is along the slot, either way, and +y is on the left of one who looks along +x from above. Both are"
    " moves of the cutter over the work: the table moves the other way."
)
_ON_LATHE = said(
    "In the table +x is along the slot towards you, and +y is up. Both are moves of the cutter over the work: the cross slide"
    " moves away from you for +x, the vertical slide down for +y."
)
_WOUND = said(
    "Feed against the cutter's turning, as the table has it: fed with it, the cutter pulls the work in by the play of the"
    " slide's screw. Come to every place across from the same side, for the same reason."
)
_PROGRAMMED = said(
    "The passes run against the cutter's turning; a machine whose axes have no play may run them the other way."
)


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
        tools=(_cutter(plan, shop, machine), CALIPER),
        steps=tuple(_steps(plan, machine, shop, on_lathe=on_lathe)),
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
        },
        extra_cutting_min=plan.time_min,
        other_time_min=_RUN_MIN * len(plan.passes),
    )
    if pad.slot_mouth_chamfer_mm > 0:
        tool = said("90° chamfer cutter") if machine.is_stepless else said("90° chamfer cutter, or a fine file")
        yield mouth(pad, conditions, hold.words, tool=tool, how=(_by_cutter(pad),))


def _by_cutter(pad: Pad) -> Sentence:
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
    return Operation(
        title="Chamfer the slot's mouth",
        set_up=3,
        holding=holding,
        tools=(tool,),
        steps=(
            said("Chamfer both long edges of the mouth {size} × 45°: the seam finds its way in by them.", size=size),
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


def _cutter(plan: SlotPlan, shop: Shop, machine: Machine) -> Sentence:
    held = "in a chuck" if shop.cutter_held_in == "chuck" and not machine.is_stepless else "in a collet"
    return said(
        f"End mill {{cutter}}, {machine.teeth} teeth, {machine.tool_name}, {held}, {{reach}} out of its holder; flutes, or"
        " flutes and a neck no thicker than them, at least {depth} long",
        cutter=plan.cutter_mm,
        reach=plan.reach_mm,
        depth=plan.depth_mm,
    )


def _steps(plan: SlotPlan, machine: Machine, shop: Shop, *, on_lathe: bool) -> Iterator[Sentence]:
    yield said(
        "Round the cutter's corners to {radius} with a stone; a sharp slot corner starts a crack.",
        radius=plan.corner_note_mm,
    )
    if not machine.is_stepless:
        yield said(
            "Touch the top face with the cutter's end on paper, go on by the paper's thickness, and set the depth dial to"
            " zero there."
        )
    yield _ON_LATHE if on_lathe else _ON_MILL
    if shop.cutter_held_in == "chuck" and not machine.is_stepless:
        yield said(
            "A chuck lets an end mill creep out and dig in: draw a pen line round its shank at the jaws"
            " and look at it after every pass."
        )
    yield from _walls(plan)
    yield _PROGRAMMED if machine.is_stepless else _WOUND
    yield said("Run the cutter out clear at both ends. Clear the chips before every pass.")
    if on_lathe:
        yield said(
            "Set the depth with the carriage locked, by the compound slide. Lock every slide that is not being wound."
        )
    yield said("Before the floor's pass measure the depth from the wall tops, and set that pass by it.")
    yield from _bend(plan)


def _walls(plan: SlotPlan) -> Iterator[Sentence]:
    if plan.side_allowance_mm <= 0:
        yield said(
            "The cutter is as wide as the slot: every pass runs on the centre line. Try it in scrap"
            " first: one that runs out cuts wide."
        )
        return
    yield said(
        "The cutter is smaller than the slot. Rough by the table: down the centre line, then each"
        " side, {side} left on each wall and {floor} on the floor.",
        side=plan.side_allowance_mm,
        floor=plan.floor_allowance_mm,
    )
    yield said(
        "Then the floor at full depth, then the left wall, then the right wall, each against the cutter's turning."
    )
    yield said(
        "Measure the slot after the left wall: what is missing to {width} comes off with the right wall.",
        width=plan.width_mm,
    )


def _bend(plan: SlotPlan) -> Iterator[Sentence]:
    least = plan.deflection_mm < LEAST_SAID_MM
    yield said(
        f"In the finishing pass the cutter is estimated to bend {'less than ' if least else ''}{{bend}} at its end.",
        bend=LEAST_SAID_MM if least else plan.deflection_mm,
    )
    if plan.deflection_mm > NOTICEABLE_MM:
        yield said(
            "That is too much for one pass: repeat the finishing pass without moving the dial until it cuts no more."
        )
