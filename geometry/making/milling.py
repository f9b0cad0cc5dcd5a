"""The slot: on a milling machine or on a vertical slide, always last, and held where clamping cannot close it."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.making.card import Operation, Table
from geometry.making.machine import Machine
from geometry.making.slot_plan import SlotPlan, slot_picture
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad

LEAST_BAND_MM = 5.0
"""A lower band than this of solid body is no hold for vice jaws."""
UNDER_FLOOR_MM = 1.0
"""Jaws end this far below the slot's floor, so that neither the cutter nor their squeeze meets the slot."""
TRUE_MM = 0.05
"""How even an indicator reads when the pad stands true: common practice, no source."""
NOTICEABLE_MM = 0.05
"""A cutter that bends further than this leaves a wall that wants another pass."""
_SET_MIN, _RUN_MIN = 15.0, 0.5


@dataclass(frozen=True, slots=True)
class Hold:
    """Where the pad is held while its slot is cut."""

    words: Sentence
    why: Sentence
    band_mm: float
    """Height of solid material in the jaws."""


def slot_hold(pad: Pad, *, on_lathe: bool) -> Hold:
    """The band of the pad that is gripped: the solid body under the slot's floor, or the seat where that is taller."""
    body = pad.web_mm - pad.seat_length_mm - pad.edge_chamfer_mm - UNDER_FLOOR_MM
    seat = pad.seat_length_mm - pad.seat_corner_radius_mm
    by_body = body >= LEAST_BAND_MM or body >= seat
    band = max(body if by_body else seat, 0.0)
    squeeze = (
        "Jaws that press on the walls close the slot while it is cut; released, it is too wide. Here they press on"
    )
    if on_lathe:
        where = "the body under the slot's floor" if by_body else "the straight part of the seat"
        words = said(
            "Vertical slide: seat face flat on the slide, top towards the spindle, slot level so that the"
            " cross slide feeds"
            f" along it. Two clamps or vice jaws on {where}, {{band}} high, at the two ends of the slot.",
            band=band,
        )
        return Hold(words, said(f"{squeeze} solid plastic below its floor, and along the slot, not across it."), band)
    if by_body:
        words = said(
            "Milling vice, seat face down on parallels, a V-block between one jaw and the pad. The jaws"
            " press on {band} of"
            " solid body, ending {under} below the slot's floor, at the two ends of the slot.",
            band=band,
            under=UNDER_FLOOR_MM,
        )
        return Hold(words, said(f"{squeeze} solid plastic below its floor, and along the slot, not across it."), band)
    words = said(
        "Three-jaw chuck clamped to the table, jaws up: on {band} of straight seat, the lip down on the jaws' tops.",
        band=band,
    )
    return Hold(words, said(f"{squeeze} the seat, well below the slot's floor."), band)


def slot_operations(
    pad: Pad, conditions: Conditions, shop: Shop, machine: Machine, plan: SlotPlan
) -> Iterator[Operation]:
    """Set the pad up, rough and finish the slot, chamfer its mouth."""
    on_lathe = shop.slot_machine == "vertical_slide" and not machine.is_stepless
    hold = slot_hold(pad, on_lathe=on_lathe)
    family = conditions.material.family
    yield _set_up(pad, hold, machine, on_lathe=on_lathe)
    yield Operation(
        title="Cut the slot",
        set_up=3,
        holding=hold.words,
        tool=_cutter(plan, shop, machine),
        steps=tuple(_steps(plan, machine, shop, on_lathe=on_lathe)),
        why=said("The slot comes last: a slotted body cannot be held in a chuck without closing the slot."),
        cut=plan.cut,
        tables=(pass_table(plan),),
        picture=slot_picture(plan),
        watch=watch_for(family, "mill", "hold"),
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
        yield mouth(pad, conditions, hold.words, tool=said("90° chamfer cutter, or a fine file at 45°"))


def mouth(pad: Pad, conditions: Conditions, holding: Sentence, *, tool: Sentence) -> Operation:
    """The chamfers along the slot's mouth, and the sharp ends of the slot."""
    size = pad.slot_mouth_chamfer_mm
    return Operation(
        title="Chamfer the slot's mouth",
        set_up=3,
        holding=holding,
        tool=tool,
        steps=(
            said("Chamfer both long edges of the mouth {size} × 45°: the seam finds its way in by them.", size=size),
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


def _set_up(pad: Pad, hold: Hold, machine: Machine, *, on_lathe: bool) -> Operation:
    steps = [said("Wipe chips off every face that touches.")]
    if pad.has_stem:
        steps.append(said("Leave room for the stem: the pad stands on its seat face or its lip, never on the stem."))
    steps += _on_lathe(pad) if on_lathe else _on_mill(machine)
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
        tool=said("Dial indicator"),
        steps=tuple(steps),
        why=hold.why,
        setting_time_min=_SET_MIN,
        other_time_min=8.0,
    )


def _on_lathe(pad: Pad) -> list[Sentence]:
    return [
        said(
            "Square the top face to the spindle: an indicator in the chuck, swept over it, reads even to {limit}.",
            limit=TRUE_MM,
        ),
        said(
            "Touch the uppermost point of the body with the side of the cutter, then raise the work by"
            " half of {body} and half"
            " the cutter: the cutter stands on the centre line. Set the vertical dial to zero.",
            body=pad.body_diameter_mm,
        ),
        said(
            "The cross slide must travel the body, {body}, and the cutter's own width; where it does not,"
            " cut from both ends.",
            body=pad.body_diameter_mm,
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
        f"End mill {{cutter}}, {machine.teeth} teeth, {machine.tool_name}, {held}, {{reach}} out of"
        f" its holder, its corners rounded to {{radius}}",
        cutter=plan.cutter_mm,
        reach=plan.reach_mm,
        radius=plan.corner_note_mm,
    )


def _steps(plan: SlotPlan, machine: Machine, shop: Shop, *, on_lathe: bool) -> Iterator[Sentence]:
    if not machine.is_stepless:
        yield said("Touch the top face with the cutter's end on paper and set the depth dial to zero.")
    yield said("In the table x runs along the slot, and y is counted to the left of it, as seen from the spindle.")
    if shop.cutter_held_in == "chuck" and not machine.is_stepless:
        yield said(
            "A chuck lets an end mill creep out and dig in: draw a pen line round its shank at the jaws"
            " and look at it after every pass."
        )
    if plan.side_allowance_mm > 0:
        yield said(
            "The cutter is smaller than the slot. Rough by the table: down the centre line, then each"
            " side, {side} left on each wall and"
            " {floor} on the floor.",
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
    else:
        yield said(
            "The cutter is as wide as the slot: every pass runs on the centre line. Try it in scrap"
            " first: one that runs out cuts wide."
        )
    yield said("Feed against the cutter's turning: with a plain screw the cutter else pulls the work in.")
    yield said("Run the cutter out clear at both ends. Clear the chips before every pass.")
    if on_lathe:
        yield said(
            "Set the depth with the carriage locked, by the compound slide. Lock every slide that is not being wound."
        )
    yield said("In the finishing pass the cutter is estimated to bend {bend} at its end.", bend=plan.deflection_mm)
    if plan.deflection_mm > NOTICEABLE_MM:
        yield said(
            "That is too much for one pass: repeat the finishing pass without moving the dial until it cuts no more."
        )
    yield said(
        "The cutter's corners should be rounded to {radius} with a stone; a sharp slot corner starts a crack.",
        radius=plan.corner_note_mm,
    )
