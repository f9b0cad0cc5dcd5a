"""Cylinders that are turned down to a shoulder, such as stem, seat and plug: their passes, and where the tool stops."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from geometry.conditions import Conditions
from geometry.dials import dial_infeed_mm
from geometry.making.card import Operation, Pass, Table
from geometry.making.kit import CALIPER, knife_tool
from geometry.making.last_pass import by_dial, last_pass
from geometry.making.machine import Machine
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said

PASS_MIN = 0.3
"""Winding back and setting the dial between passes: judged, not measured."""
_NO_FIGURE = "–"


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A cylinder to turn down to its shoulder."""

    title: str
    start_mm: float
    """Diameter that stands there before."""
    size_mm: float
    length_mm: float
    end: str
    """Which face its length is counted from."""
    said_first: tuple[Sentence, ...]
    said_last: tuple[Sentence, ...]
    leaves: Mapping[str, float]
    cuts_root: bool = False
    """Whether the shoulder is the root of a stem or a plug, which the drawing gives a fillet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Roughing:
    """How a step is roughed: its passes, the words for them, and where the tool stops."""

    passes: tuple[Pass, ...]
    words: Sentence
    stops: Table | None
    """None where nothing is wound by hand."""


def step_operation(step: Step, c: Conditions, m: Machine, *, holding: Sentence, set_up: int) -> Operation:
    """Rough a step, finish its side and its shoulder."""
    rough = roughing(step, m)
    return Operation(
        title=step.title,
        set_up=set_up,
        holding=holding,
        tools=(knife_tool(m.tool_name, cuts_root=step.cuts_root), CALIPER),
        steps=(
            *step.said_first,
            *by_dial(m, said(f"Touch the outside and the {step.end}, and set both dials to zero.")),
            rough.words,
            *last_pass(m, step.size_mm),
            *step.said_last,
        ),
        cut=m.turning(step.start_mm),
        finish_cut=m.finishing(step.size_mm),
        passes=rough.passes,
        tables=(rough.stops,) if rough.stops else (),
        watch=watch_for(c.material.family, "turn", "finish", key=c.material.key),
        leaves_mm=step.leaves,
        roughness_um=m.roughness_um,
        other_time_min=PASS_MIN * len(rough.passes) + 2,
    )


def roughing(step: Step, m: Machine) -> Roughing:
    """Passes down to a shoulder, roughed by turning or by facing, whichever takes fewer."""
    spare = m.finishing_mm
    rough = min(step.size_mm + 2 * spare, step.start_mm)
    turned = m.diameter_passes(before_mm=step.start_mm, after_mm=step.size_mm, length_mm=step.length_mm)
    faced = m.length_passes(before_mm=step.length_mm, after_mm=0.0, diameter_mm=step.start_mm, inner_mm=rough)
    if len(faced) + 1 >= len(turned):
        words = said(
            "Rough along by the passes below, each ending {spare} short of the shoulder. With the finishing pass go on to"
            " the shoulder and draw the tool straight out: that cuts its face.",
            spare=spare,
        )
        ends = (("Each roughing pass ends", step.length_mm - spare), ("The finishing pass ends", step.length_mm))
        return Roughing(passes=turned, words=words, stops=_lengths(ends, m))
    side = m.diameter_passes(before_mm=rough, after_mm=step.size_mm, length_mm=step.length_mm)
    passes = tuple(replace(p, number=n) for n, p in enumerate((*faced, *side), start=1))
    words = said(
        "Rough by facing the shoulder back by the passes below, each from the outside in to a diameter of {rough}; the"
        " figures are what still stands before the shoulder. "
        + ("Then finish the side in one pass along." if m.is_stepless else _SIDE),
        rough=rough,
    )
    return Roughing(passes=passes, words=words, stops=_diameters(step, rough, m))


_SIDE = "Then touch the side that this leaves, set the cross dial to zero anew, and finish the side in one pass along."


def _lengths(ends: tuple[tuple[str, float], ...], m: Machine) -> Table | None:
    """What the lengthwise dial reads where a pass along ends."""
    if m.is_stepless:
        return None
    return Table(
        title="Where the tool stops",
        columns=(("Pass", ""), ("From the face", "mm"), ("Lengthwise dial", "mm")),
        rows=tuple((words, length, length) for words, length in ends),
    )


def _diameters(step: Step, rough: float, m: Machine) -> Table | None:
    """What the cross dial reads where a facing pass ends."""
    if m.is_stepless:
        return None
    dial = dial_infeed_mm(diameter_mm=step.start_mm, wanted_diameter_mm=rough, slide=m.slide)
    return Table(
        title="Where the tool stops",
        columns=(("Pass", ""), ("Diameter", "mm"), ("Cross dial", "mm"), ("Lengthwise dial", "mm")),
        rows=(
            ("Each facing pass begins", step.start_mm, 0.0, _NO_FIGURE),
            ("Each facing pass ends", rough, dial, _NO_FIGURE),
            ("The pass along the side ends", step.size_mm, _NO_FIGURE, step.length_mm),
        ),
    )
