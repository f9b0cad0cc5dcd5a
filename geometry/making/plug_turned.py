"""The plug on the lathe: a round one is turned to size, of any other the round boss that it is milled from."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import ceil, hypot

from geometry.conditions import Conditions
from geometry.dials import dial_infeed_mm
from geometry.machining import pass_time_min
from geometry.making.card import FIRST, Operation, Pass, Table
from geometry.making.cutting import ROUGH_FEED_MM_REV
from geometry.making.groove import OVERLAP_SHARE, PLUNGE_FEED_SHARE, WIDEST_TOOL_MM
from geometry.making.kit import CALIPER, knife_tool, root_words
from geometry.making.last_pass import by_dial, last_pass
from geometry.making.limits import limit_sentence
from geometry.making.machine import Machine
from geometry.making.shoulders import PASS_MIN, Step
from geometry.making.stock import FACING_MM, StockPlan
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.provenance import memory

BOSS_SPARE_MM = 1.0
"""By this the boss is wider than the plug's corners reach, so that none is cut short where the set-ups differ a little."""
PARTING_SHARE = 10.0
PARTING_SOURCE = memory("A parting tool reaches about ten times its width, fed at half the roughing feed")
_ROUND = ("plug_width_mm", "plug_length_mm", "plug_corner_radius_mm")


def boss_mm(pad: Pad) -> float:
    """Diameter to turn: of a round plug its own, else enough for the corners of the other, [mm]."""
    if pad.plug_is_round:
        return pad.plug_width_mm
    radius = pad.plug_corner_radius_mm
    reach = radius + hypot(pad.plug_width_mm / 2 - radius, pad.plug_length_mm / 2 - radius)
    return 2 * reach + BOSS_SPARE_MM


def plug_title(pad: Pad) -> str:
    """What the operation is called."""
    return "Turn the plug" if pad.plug_is_round else "Turn a round boss for the plug"


def plug_step(pad: Pad) -> Step:
    """The plug as a step from the finished body down to its shoulder, the top outwards."""
    return Step(
        title=plug_title(pad),
        start_mm=pad.body_diameter_mm,
        size_mm=boss_mm(pad),
        length_mm=pad.plug_height_mm,
        end="end of the work",
        said_first=(
            said(
                "The car stands on the shoulder: it lies {stop} from the end of the work, square to the axis.",
                stop=pad.plug_height_mm,
            ),
        ),
        said_last=_said_last(pad),
        leaves={name: getattr(pad, name) for name in ("plug_height_mm", *turned_names(pad))},
        cuts_root=pad.plug_is_round,
    )


def turned_names(pad: Pad) -> tuple[str, ...]:
    """The dimensions of a round plug that turning finishes; none of any other."""
    return _ROUND if pad.plug_is_round else ()


def _said_last(pad: Pad) -> tuple[Sentence, ...]:
    if pad.plug_is_round:
        return (
            limit_sentence(pad, "plug_width_mm", "The plug"),
            root_words("At its foot"),
        )
    return (
        said("The boss only has to be wide enough: its sides are milled off. The shoulder round it is finished here."),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class NeckPlan:
    """A neck between the body and the bar; lengths count from the faced foot, in mm."""

    from_mm: float
    """Where the shoulder will stand."""
    to_mm: float
    tool_mm: float
    spare_mm: float
    """Left on the shoulder, and on the neck's radius."""
    edges_mm: tuple[float, ...]
    """Of each plunge the tool's edge nearer to the foot."""


def neck_plan(pad: Pad, plan: StockPlan, m: Machine) -> NeckPlan:
    """Lay the plunges that open the neck, the saw cut's room included."""
    start = pad.web_mm + pad.foot_depth_mm
    end = start + pad.plug_height_mm + FACING_MM + plan.kerf_mm
    spare = m.finishing_mm
    room = end - start - spare
    tool = min(WIDEST_TOOL_MM, room)
    steps = ceil((room - tool) / (OVERLAP_SHARE * tool) - 1e-9)
    edges = tuple(start + spare + (room - tool) * k / max(steps, 1) for k in range(steps + 1))
    return NeckPlan(from_mm=start, to_mm=end, tool_mm=tool, spare_mm=spare, edges_mm=edges)


def neck_operation(pad: Pad, c: Conditions, plan: StockPlan, m: Machine, *, holding: Sentence) -> Operation:
    """Turn the plug behind the body, where the pad still hangs on the bar."""
    neck = neck_plan(pad, plan, m)
    size, body = boss_mm(pad), pad.body_diameter_mm
    rough = size + 2 * neck.spare_mm
    feed = PLUNGE_FEED_SHARE * ROUGH_FEED_MM_REV
    cut = m.turning(body, feed_mm_rev=feed)
    plunge = pass_time_min(length_mm=(body - rough) / 2, feed_mm_rev=feed, spindle_speed_rpm=cut.rpm)
    passes = tuple(replace(p, number=n) for n, p in enumerate(_finishing(pad, neck, m), start=1))
    return Operation(
        title=f"{plug_title(pad)} behind the body",
        set_up=FIRST,
        holding=holding,
        tools=(
            said(
                f"Parting tool, {m.tool_name}, {{tool}} wide, reaching {{reach}} in",
                tool=neck.tool_mm,
                reach=(body - size) / 2 + 2,
            ),
            knife_tool(m.tool_name, "Left-hand", cuts_root=pad.plug_is_round),
            CALIPER,
        ),
        steps=tuple(_neck_steps(pad, neck, m)),
        why=said(
            "The short body could not hold the pad while the plug is cut. So the plug is turned as a neck between body and bar,"
            " true to the seat; the saw then goes through it."
        ),
        cut=cut,
        finish_cut=m.finishing(body),
        passes=passes,
        tables=(_neck_table(pad, neck, m),),
        watch=watch_for(c.material.family, "turn", "finish", key=c.material.key),
        leaves_mm={name: getattr(pad, name) for name in ("web_mm", *turned_names(pad))},
        roughness_um=m.roughness_um,
        extra_cutting_min=plunge * len(neck.edges_mm),
        other_time_min=10.0 + PASS_MIN * (len(neck.edges_mm) + len(passes)),
        sources=(("Parting tool", PARTING_SOURCE),),
    )


def _finishing(pad: Pad, neck: NeckPlan, m: Machine) -> Iterator[Pass]:
    """The shoulder from the outside in, then the neck's side."""
    rough = boss_mm(pad) + 2 * neck.spare_mm
    yield from m.length_passes(before_mm=neck.spare_mm, after_mm=0.0, diameter_mm=pad.body_diameter_mm, inner_mm=rough)
    yield from m.diameter_passes(before_mm=rough, after_mm=boss_mm(pad), length_mm=pad.plug_height_mm + FACING_MM)


def _neck_steps(pad: Pad, neck: NeckPlan, m: Machine) -> Iterator[Sentence]:
    if not m.is_stepless:
        yield said(
            "Touch the finished body, {body} across, and set the cross dial to zero; touch the faced foot with the tool's edge"
            " nearer to it, and set the lengthwise dial to zero.",
            body=pad.body_diameter_mm,
        )
    yield said(
        "Plunge by the table, beginning at the shoulder. Draw the tool out every few millimetres, and stop to clear the chips:"
        " in a deep neck they pack and melt."
    )
    reach = (pad.body_diameter_mm - boss_mm(pad)) / 2
    if reach > PARTING_SHARE * neck.tool_mm:
        yield said(
            "The neck is {deep} deep, more than such a tool reaches: plunge {near} deep over its whole length first, then go on in"
            " the open neck with the stronger left-hand tool.",
            deep=reach,
            near=PARTING_SHARE * neck.tool_mm,
        )
    yield from by_dial(
        m, said("Touch what plunging left, and set the dial to zero there anew, before each finishing pass.")
    )
    yield said(
        "Finish with the left-hand tool, which feeds away from the chuck: the shoulder from the outside in, {web} from the"
        " faced foot, then the side, {long} long.",
        web=neck.from_mm,
        long=pad.plug_height_mm + FACING_MM,
    )
    yield from last_pass(m, boss_mm(pad))
    yield from _said_last(pad)
    yield limit_sentence(pad, "web_mm", "From the shoulder to the seat's face it")


def _neck_table(pad: Pad, neck: NeckPlan, m: Machine) -> Table:
    rough = boss_mm(pad) + 2 * neck.spare_mm
    columns = [("Plunge", ""), ("Tool's near edge from the foot", "mm"), ("Down to diameter", "mm")]
    rows: list[tuple[float | str, ...]] = [(float(n), edge, rough) for n, edge in enumerate(neck.edges_mm, start=1)]
    if not m.is_stepless:
        dial = dial_infeed_mm(diameter_mm=pad.body_diameter_mm, wanted_diameter_mm=rough, slide=m.slide)
        columns += [("Lengthwise dial", "mm"), ("Cross dial", "mm")]
        rows = [(*row, edge, dial) for row, edge in zip(rows, neck.edges_mm, strict=True)]
    return Table(title="Plunges of the neck", columns=tuple(columns), rows=tuple(rows))
