"""The cutting of a slot in words: its cutter, the way of the passes, its walls and how far the cutter bends."""

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from geometry.document.shop import Shop
from geometry.making.machine import Machine
from geometry.making.slot_plan import SlotPlan
from geometry.making.wording import Sentence, said

NOTICEABLE_MM = 0.05
"""A cutter that bends further than this leaves a wall that wants another pass."""
LEAST_SAID_MM = 0.01
"""A smaller bend is not worth a figure."""
_ON_MILL = said(
    "In the table +x is along the slot, either way, and +y is on the left of one who looks along +x from above. Both are"
    " moves of the cutter over the work: the table moves the other way."
)
_ON_LATHE = said(
    "In the table +x is along the slot towards you, and +y is up. Both are moves of the cutter over the work: the cross slide"
    " moves away from you for +x, the vertical slide down for +y."
)
_ON_MILL_ALONG = said(
    "In the table +x is along the slot, either way: a move of the cutter over the work. The table moves the other way."
)
_ON_LATHE_ALONG = said(
    "In the table +x is along the slot towards you: a move of the cutter over the work. The cross slide moves away from you."
)
_WOUND = said(
    "Feed against the cutter's turning, as the table has it: fed with it, the cutter pulls the work in by the play of the"
    " slide's screw. Come to every place across from the same side, for the same reason."
)
_CELLS: Mapping[str, str] = MappingProxyType({"climb": "with", "conventional": "against", "-x": "−x"})
_PROGRAMMED = said(
    "The passes run against the cutter's turning; a machine whose axes have no play may run them the other way."
)


def cell_words(cell: str) -> str:
    """A cell of a table of passes in words: with or against the cutter's turning, and which way it is fed.

    >>> cell_words("conventional"), cell_words("-x"), cell_words("rough")
    ('against', '−x', 'rough')
    """
    return _CELLS.get(cell, cell)


def cutter_words(plan: SlotPlan, shop: Shop, machine: Machine) -> Sentence:
    """The end mill, its holder and how long it must be."""
    held = "in a chuck" if shop.cutter_held_in == "chuck" and not machine.is_stepless else "in a collet"
    return said(
        f"End mill {{cutter}}, {machine.teeth} teeth, {machine.tool_name}, {held}, {{reach}} out of its holder; flutes, or"
        " flutes and a neck no thicker than them, at least {depth} long",
        cutter=plan.cutter_mm,
        reach=plan.reach_mm,
        depth=plan.depth_mm,
    )


def slot_steps(plan: SlotPlan, machine: Machine, shop: Shop, *, on_lathe: bool) -> Iterator[Sentence]:
    """What is done to cut it, in order."""
    yield said(
        "Round the cutter's corners to {radius} with a stone; a sharp slot corner starts a crack.",
        radius=plan.corner_note_mm,
    )
    if not machine.is_stepless:
        yield said(
            "Touch the top face with the cutter's end on paper, go on by the paper's thickness, and set the depth dial to"
            " zero there."
        )
    yield _axes(plan, on_lathe=on_lathe)
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


def _axes(plan: SlotPlan, *, on_lathe: bool) -> Sentence:
    """What the signs of the table mean: those of the passes alone where none goes to a side."""
    if any(p.y_mm for p in plan.passes):
        return _ON_LATHE if on_lathe else _ON_MILL
    return _ON_LATHE_ALONG if on_lathe else _ON_MILL_ALONG


def _walls(plan: SlotPlan) -> Iterator[Sentence]:
    middle = "the centre line" if plan.offset_mm <= 0 else "the slot's middle"
    if plan.offset_mm > 0:
        yield said(
            "The slot stands {off} off the pad's centre line, where the dial's zero stays: the table counts from there. Measure"
            " from each wall to the body's side near it: they differ by {twice}.",
            off=plan.offset_mm,
            twice=2 * plan.offset_mm,
        )
    if plan.side_allowance_mm <= 0:
        yield said(
            f"The cutter is as wide as the slot: every pass runs on {middle}. Try it in scrap"
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
    if plan.deflection_mm < LEAST_SAID_MM:
        yield said("In the finishing pass the cutter is estimated to bend too little to be measured.")
        return
    yield said(
        "In the finishing pass the cutter is estimated to bend {bend} at its end.",
        bend=plan.deflection_mm,
    )
    if plan.deflection_mm > NOTICEABLE_MM:
        yield said(
            "That is too much for one pass: repeat the finishing pass without moving the dial until it cuts no more."
        )
