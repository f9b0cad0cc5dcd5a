"""A round hole with a flat floor, such as the recess for a boss or the inside of a skirt: opened on the axis, then bored."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from geometry.conditions import Conditions
from geometry.dials import dial_infeed_mm
from geometry.making.card import Operation, Pass, Table
from geometry.making.kit import CALIPER
from geometry.making.machine import Machine
from geometry.making.shoulders import PASS_MIN
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said

BAR_SHARE = 0.7
"""A boring bar of this part of the hole enters it and leaves room for the chips: common practice, no source."""
FLOOR_SPARE_MM = 0.2
"""Left on the floor by the end mill."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pocket:
    """A round hole on the axis."""

    title: str
    across_mm: float
    depth_mm: float
    face: str
    """Which face its depth is counted from."""
    further_in_mm: float = 0.0
    """How far that face lies inside the work: the boring bar stands out by so much more."""
    said_last: tuple[Sentence, ...]
    why: Sentence | None = None
    leaves: Mapping[str, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Boring:
    """How a pocket is widened: its passes, the words for them, and where the tool stops."""

    passes: tuple[Pass, ...]
    words: Sentence
    stops: Table


def pocket_operation(p: Pocket, c: Conditions, m: Machine, *, holding: Sentence, set_up: int) -> Operation:
    """Open a pocket on the axis and bore it, its depth counted from its own face."""
    opened = opening_mm(p.across_mm, c, m)
    boring = boring_of(p, m, opened_mm=opened)
    return Operation(
        title=p.title,
        set_up=set_up,
        holding=holding,
        tools=(
            said(
                "End mill or flat-bottomed drill {opened}, cutting to its middle, "
                + ("on the axis" if m.is_stepless else "in the tailstock"),
                opened=opened,
            ),
            said(
                f"Boring bar, {m.tool_name}, {{bar}} thick or thinner, {{out}} out of its holder",
                bar=BAR_SHARE * opened,
                out=p.depth_mm + p.further_in_mm + 2,
            ),
            CALIPER,
        ),
        steps=(*_steps(p, m, opened, boring), *p.said_last),
        why=p.why,
        cut=m.turning(p.across_mm),
        finish_cut=m.finishing(p.across_mm),
        passes=boring.passes,
        tables=() if m.is_stepless else (boring.stops,),
        watch=watch_for(c.material.family, "turn", key=c.material.key),
        leaves_mm=p.leaves,
        roughness_um=m.roughness_um,
        other_time_min=10.0 + PASS_MIN * len(boring.passes),
    )


def opening_mm(across_mm: float, c: Conditions, m: Machine) -> float:
    """The largest cutter to hand that leaves a bore its finishing cut; else a drill of half the bore."""
    most = across_mm - 2 * m.finishing_mm
    return max((d for d in c.cutters_mm if d <= most), default=across_mm / 2)


def boring_of(p: Pocket, m: Machine, *, opened_mm: float) -> Boring:
    """Passes from the opened hole to the wall, along or from the middle outwards, whichever takes fewer."""
    spare = min(FLOOR_SPARE_MM, p.depth_mm / 2)
    rough = max(opened_mm, p.across_mm - 2 * m.finishing_mm)
    along = m.diameter_passes(before_mm=opened_mm, after_mm=p.across_mm, length_mm=p.depth_mm)
    faced = m.length_passes(before_mm=p.depth_mm, after_mm=0.0, diameter_mm=rough, inner_mm=opened_mm)
    if len(faced) + 1 >= len(along):
        words = said(
            "Bore by the passes below, the roughing passes each ending {spare} short of the floor. With the last pass go on to"
            " {depth}, then draw the tool in to the middle: that faces the floor. No pip may stay.",
            spare=spare,
            depth=p.depth_mm,
        )
        ends = (
            ("Each roughing pass ends", p.depth_mm - spare, p.depth_mm - spare),
            ("The finishing pass ends", p.depth_mm, p.depth_mm),
        )
        columns = (("Pass", ""), (f"From the {p.face}", "mm"), ("Lengthwise dial", "mm"))
        return Boring(passes=along, words=words, stops=Table(title=_STOPS, columns=columns, rows=ends))
    wall = m.diameter_passes(before_mm=rough, after_mm=p.across_mm, length_mm=p.depth_mm)
    passes = tuple(replace(each, number=n) for n, each in enumerate((*faced, *wall), start=1))
    words = said(
        "Widen it by facing from the hole outwards to {rough}, by the passes below; the figures are what still stands before"
        " the floor. Draw the last one in to the middle as well: no pip may stay. Then finish the wall in one pass along.",
        rough=rough,
    )
    dial = dial_infeed_mm(diameter_mm=rough, wanted_diameter_mm=opened_mm, slide=m.slide)
    rows = (("Each facing pass begins", opened_mm, 0.0), ("Each facing pass ends", rough, dial))
    columns = (("Pass", ""), ("Diameter", "mm"), ("Cross dial", "mm"))
    return Boring(passes=passes, words=words, stops=Table(title=_STOPS, columns=columns, rows=rows))


_STOPS = "Where the tool stops"


def _steps(p: Pocket, m: Machine, opened: float, boring: Boring) -> Iterator[Sentence]:
    spare = min(FLOOR_SPARE_MM, p.depth_mm / 2)
    yield said(
        f"Open it on the axis {{near}} deep from the {p.face}, {{spare}} short of its floor, with a cutter that leaves a flat"
        " bottom. A drill with a point goes only so far that its point stays short of that; the bar takes the rest.",
        near=p.depth_mm - spare,
        spare=spare,
    )
    yield said(
        "Put the boring bar's edge on centre height; turn the spindle by hand to see that its heel clears the hole of"
        " {opened}.",
        opened=opened,
    )
    if not m.is_stepless:
        yield said(
            f"Touch the hole's wall and the {p.face} and set both dials to zero. Cutting outwards the cross slide comes towards"
            " you, so the dial turns the other way than in turning. Take up its play first."
        )
    yield boring.words
    yield said(
        f"Before the last pass stop, let it cool and measure the bore: that pass takes what is missing to {{across}}. The depth"
        f" of {{depth}} counts from the {p.face}, not from a burr at the edge.",
        across=p.across_mm,
        depth=p.depth_mm,
    )
