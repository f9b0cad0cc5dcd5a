"""A groove in a face, between the skirt and what stands in its middle: plunged side by side, then finished wall, floor, wall."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import ceil

from geometry.conditions import Conditions
from geometry.dials import dial_infeed_mm
from geometry.machining import pass_time_min
from geometry.making.card import Operation, Pass, Table
from geometry.making.cutting import ROUGH_FEED_MM_REV
from geometry.making.kit import CALIPER
from geometry.making.last_pass import by_dial
from geometry.making.machine import Machine
from geometry.making.shoulders import PASS_MIN
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.provenance import memory

WIDEST_TOOL_MM = 3.0
"""A wider grooving tool chatters on a light lathe."""
NARROWEST_TOOL_MM = 1.0
OVERLAP_SHARE = 0.8
"""Of its width a grooving tool moves on from plunge to plunge, so that no ring stays between two."""
PLUNGE_FEED_SHARE = 0.5
"""Of the roughing feed: the tool cuts with its whole width."""
DEEPEST_SHARE = 6.0
"""A grooving tool that stands out further than this many of its widths bends and chatters."""
GROOVE_SOURCE = memory(
    "Face-grooving tools of 1 to 3 mm, standing out six times their width at most, fed at half the roughing feed"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class GroovePlan:
    """A groove and its plunges; diameters and lengths in mm."""

    inner_mm: float
    outer_mm: float
    depth_mm: float
    tool_mm: float
    side_mm: float
    """Left on each wall by plunging; 0 where the groove is hardly wider than a tool."""
    floor_mm: float
    edges_mm: tuple[float, ...]
    """Diameter of the tool's inner edge at each plunge, outermost first."""

    @property
    def is_awkward(self) -> bool:
        """Whether no usual tool cuts it: too narrow, or too deep for its width."""
        return self.tool_mm < NARROWEST_TOOL_MM or self.depth_mm > DEEPEST_SHARE * self.tool_mm


def groove_plan(*, inner_mm: float, outer_mm: float, depth_mm: float, m: Machine) -> GroovePlan:
    """Lay the plunges of a groove."""
    width = (outer_mm - inner_mm) / 2
    side = m.finishing_mm if width - 2 * m.finishing_mm >= NARROWEST_TOOL_MM else 0.0
    room = width - 2 * side
    tool = min(WIDEST_TOOL_MM, room)
    steps = ceil((room - tool) / (OVERLAP_SHARE * tool) - 1e-9)
    first, last = outer_mm - 2 * (side + tool), inner_mm + 2 * side
    edges = tuple(first - (first - last) * k / steps for k in range(steps + 1)) if steps else (last,)
    return GroovePlan(
        inner_mm=inner_mm,
        outer_mm=outer_mm,
        depth_mm=depth_mm,
        tool_mm=tool,
        side_mm=side,
        floor_mm=min(m.finishing_mm, depth_mm / 2),
        edges_mm=edges,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Groove:
    """A groove with what is said of it."""

    title: str
    plan: GroovePlan
    outside_mm: float
    """Finished diameter of the work outside, from which the cross dial counts."""
    face: str
    """Which face its depth is counted from."""
    said_last: tuple[Sentence, ...]
    why: Sentence | None = None
    leaves: Mapping[str, float]


def groove_operation(g: Groove, c: Conditions, m: Machine, *, holding: Sentence, set_up: int) -> Operation:
    """Plunge a groove and finish it."""
    plan = g.plan
    passes = tuple(replace(p, number=n) for n, p in enumerate(_finishing(plan, m), start=1))
    cut = m.turning(plan.outer_mm, feed_mm_rev=PLUNGE_FEED_SHARE * ROUGH_FEED_MM_REV)
    plunge = pass_time_min(
        length_mm=plan.depth_mm, feed_mm_rev=PLUNGE_FEED_SHARE * ROUGH_FEED_MM_REV, spindle_speed_rpm=cut.rpm
    )
    return Operation(
        title=g.title,
        set_up=set_up,
        holding=holding,
        tools=(
            said(
                f"Face-grooving tool, {m.tool_name}, {{tool}} wide, standing {{out}} out, its outer side ground back to clear"
                " a round wall of {outer}",
                tool=plan.tool_mm,
                out=plan.depth_mm + 2,
                outer=plan.outer_mm,
            ),
            CALIPER,
        ),
        steps=(*_steps(g, m), *g.said_last),
        why=g.why,
        cut=cut,
        finish_cut=m.finishing(plan.outer_mm),
        passes=passes,
        tables=(_plunges(g, m),),
        watch=watch_for(c.material.family, "turn", "finish", key=c.material.key),
        leaves_mm=g.leaves,
        roughness_um=m.roughness_um,
        extra_cutting_min=plunge * len(plan.edges_mm),
        other_time_min=12.0 + PASS_MIN * (len(plan.edges_mm) + len(passes)),
        sources=(("Grooves in a face", GROOVE_SOURCE),),
    )


def _finishing(plan: GroovePlan, m: Machine) -> Iterator[Pass]:
    """The outer wall, the floor from the outside in, the inner wall."""
    side = 2 * plan.side_mm
    yield from m.diameter_passes(before_mm=plan.outer_mm - side, after_mm=plan.outer_mm, length_mm=plan.depth_mm)
    yield from m.length_passes(before_mm=plan.floor_mm, after_mm=0.0, diameter_mm=plan.outer_mm, inner_mm=plan.inner_mm)
    yield from m.diameter_passes(before_mm=plan.inner_mm + side, after_mm=plan.inner_mm, length_mm=plan.depth_mm)


def _steps(g: Groove, m: Machine) -> Iterator[Sentence]:
    plan = g.plan
    if not m.is_stepless:
        yield said(
            f"Touch the finished outside, {{outside}} across, with the tool's inner side and the {g.face} with its end, and set"
            " both dials to zero.",
            outside=g.outside_mm,
        )
    yield said(
        "Plunge by the table, from the outside inwards, each plunge {near} deep, {floor} short of the floor. Draw the tool out"
        " every few millimetres: chips that pack in the groove melt it.",
        near=plan.depth_mm - plan.floor_mm,
        floor=plan.floor_mm,
    )
    if plan.side_mm > 0:
        yield said(
            "Then finish by the passes below: along the outer wall to {depth}, across the floor to the middle, and out along"
            " the inner wall. {side} is left for each wall.",
            depth=plan.depth_mm,
            side=plan.side_mm,
        )
        yield from by_dial(
            m, said("Touch what plunging left, and set the dial to zero there anew, before each of them.")
        )
        yield said("Before each wall let it cool and measure: its pass takes what is missing.")
    else:
        yield said(
            "The tool is as wide as the groove and makes both walls at once: try it in scrap first. The last plunge goes to"
            " {depth}.",
            depth=plan.depth_mm,
        )
    yield said(
        "Where a caliper's jaws do not enter the groove, cut a shallow one in scrap first, saw it through, measure it, and then go"
        f" by {'the offsets' if m.is_stepless else 'the dials'}."
    )


def _plunges(g: Groove, m: Machine) -> Table:
    plan = g.plan
    near = plan.depth_mm - plan.floor_mm
    columns = [("Plunge", ""), ("Tool's inner edge at diameter", "mm"), (f"Depth from the {g.face}", "mm")]
    rows: list[tuple[float | str, ...]] = [(float(n), edge, near) for n, edge in enumerate(plan.edges_mm, start=1)]
    if not m.is_stepless:
        columns.append(("Cross dial", "mm"))
        rows = [
            (*row, dial_infeed_mm(diameter_mm=g.outside_mm, wanted_diameter_mm=edge, slide=m.slide))
            for row, edge in zip(rows, plan.edges_mm, strict=True)
        ]
    return Table(title="Plunges of the groove", columns=tuple(columns), rows=tuple(rows))
