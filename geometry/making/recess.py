"""A round recess in the seat face, for a boss in the cup: opened with an end mill on the axis, then bored."""

from collections.abc import Iterator

from geometry.conditions import Conditions
from geometry.dials import dial_infeed_mm
from geometry.machining import pass_time_min
from geometry.making.card import Operation, Pass, Table
from geometry.making.cutting import FINISH_FEED_MM_REV, ROUGH_FEED_MM_REV
from geometry.making.kit import CALIPER
from geometry.making.machine import Machine
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad

BAR_SHARE = 0.7
"""A boring bar of this part of the hole enters it and leaves room for the chips: common practice, no source."""
FLOOR_SPARE_MM = 0.2
"""Left on the recess's floor by the end mill."""


def recess_operation(pad: Pad, c: Conditions, m: Machine, *, holding: Sentence, set_up: int) -> Operation:
    """Open the recess on the axis and bore it, its depth counted from the seat's face."""
    opened = opening_mm(pad, c, m)
    passes = tuple(bore_passes(pad, m, opened_mm=opened))
    depth, across = pad.seat_recess_depth_mm, pad.seat_recess_diameter_mm
    return Operation(
        title="Bore the recess in the seat's face",
        set_up=set_up,
        holding=holding,
        tools=(
            said("End mill or flat-bottomed drill {opened}, cutting to its middle, in the tailstock", opened=opened),
            said(f"Boring bar, {m.tool_name}, {{bar}} or thinner", bar=BAR_SHARE * opened),
            CALIPER,
        ),
        steps=tuple(_steps(pad, m, opened)),
        why=said("The load stands on the ring of seat face round it; the boss on the cup's floor must touch nothing."),
        cut=m.turning(across),
        finish_cut=m.finishing(across),
        passes=passes,
        tables=() if m.is_stepless else (_stops(depth),),
        watch=watch_for(c.material.family, "turn", key=c.material.key),
        leaves_mm={"seat_recess_diameter_mm": across, "seat_recess_depth_mm": depth},
        roughness_um=m.roughness_um,
        other_time_min=10.0 + 0.3 * len(passes),
    )


def opening_mm(pad: Pad, c: Conditions, m: Machine) -> float:
    """The largest cutter to hand that leaves the bore a finishing cut; else a drill of half the recess."""
    most = pad.seat_recess_diameter_mm - 2 * m.finishing_mm
    return max((d for d in c.cutters_mm if d <= most), default=pad.seat_recess_diameter_mm / 2)


def bore_passes(pad: Pad, m: Machine, *, opened_mm: float) -> Iterator[Pass]:
    """Passes that widen the hole to the recess, the last one fine."""
    total = (pad.seat_recess_diameter_mm - opened_mm) / 2
    depths = m.depths_mm(total, grid_mm=m.infeed_grid_mm)
    size, told = opened_mm, 0.0
    for number, depth in enumerate(depths, start=1):
        is_last = number == len(depths)
        wider = pad.seat_recess_diameter_mm if is_last else size + 2 * depth
        reading = dial_infeed_mm(diameter_mm=wider, wanted_diameter_mm=opened_mm, slide=m.slide)
        cut = m.finishing(wider) if is_last else m.turning(wider)
        yield Pass(
            number=number,
            kind="finish" if is_last else "rough",
            axis="diameter",
            before_mm=size,
            after_mm=wider,
            infeed_mm=depth,
            dial_step_mm=reading - told,
            dial_reading_mm=reading,
            length_mm=pad.seat_recess_depth_mm,
            time_min=pass_time_min(
                length_mm=pad.seat_recess_depth_mm,
                feed_mm_rev=FINISH_FEED_MM_REV if is_last else ROUGH_FEED_MM_REV,
                spindle_speed_rpm=cut.rpm,
            ),
        )
        size, told = wider, reading


def _steps(pad: Pad, m: Machine, opened: float) -> Iterator[Sentence]:
    depth = pad.seat_recess_depth_mm
    yield said(
        "Open it on the axis {near} deep, {spare} short of its floor, with a cutter that leaves a flat bottom. A drill with a"
        " point goes only so far that its point stays short of that; the bar takes the rest.",
        near=depth - FLOOR_SPARE_MM,
        spare=FLOOR_SPARE_MM,
    )
    yield said(
        "Put the boring bar's edge on centre height; turn the spindle by hand to see that its heel clears the hole of"
        " {opened}.",
        opened=opened,
    )
    if m.is_stepless:
        yield said("Bore by the passes below to {depth} below the seat's face.", depth=depth)
    else:
        yield said(
            "Touch the hole's wall and the seat's face and set both dials to zero. Bore outwards by the passes below: the cross"
            " slide comes towards you, so the dial turns the other way than in turning. Take up its play first."
        )
    yield said(
        "End the roughing passes {spare} short of the floor. With the last pass go on to {depth}, then draw the tool in to the"
        " middle: that faces the floor. No pip may stay.",
        spare=FLOOR_SPARE_MM,
        depth=depth,
    )
    yield said(
        "Before the last pass stop, let it cool and measure the bore: that pass takes what is missing to {across}. The depth"
        " of {depth} counts from the seat's face, not from a burr at the edge.",
        across=pad.seat_recess_diameter_mm,
        depth=depth,
    )
    yield said("Break the recess's edge lightly with a scraper: the seat's ring is narrow there.")


def _stops(depth: float) -> Table:
    return Table(
        title="Where the tool stops",
        columns=(("Pass", ""), ("From the face", "mm"), ("Lengthwise dial", "mm")),
        rows=(
            ("Each roughing pass ends", depth - FLOOR_SPARE_MM, depth - FLOOR_SPARE_MM),
            ("The finishing pass ends", depth, depth),
        ),
    )
