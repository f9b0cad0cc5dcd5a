"""Facing on the lathe: the first end of the sawn blank, and the second end, which makes the height."""

from dataclasses import dataclass

from geometry.conditions import Conditions
from geometry.making.card import FIRST, SECOND, Operation
from geometry.making.kit import CALIPER, INDICATOR
from geometry.making.last_pass import by_dial
from geometry.making.limits import height_sentence, limit_sentence
from geometry.making.machine import Machine
from geometry.making.shoulders import PASS_MIN
from geometry.making.stock import FACING_MM, StockPlan
from geometry.making.watch import watch_for
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.provenance import practice

CLAMPING_MIN = 4.0
RUN_OUT_BAR_MM = 0.5
RUN_OUT_FINISHED_MM = 0.05
RUN_OUT_SOURCE = practice("Run-out that a careful three-jaw set-up reaches with a packing of paper")
_LENGTHWISE = said(
    "The lengthwise slide is the compound, set along the axis, with the carriage locked; or the carriage, where it has a"
    " dial or an indicator."
)
_SAWN = said("A sawn end is not exact: measure, and where the table says otherwise add or leave out a pass.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Facing:
    """One end to face."""

    title: str
    holding: Sentence
    set_up: int
    before_mm: float
    after_mm: float
    across_mm: float
    said_first: tuple[Sentence, ...] = ()
    said_last: tuple[Sentence, ...] = ()
    why: Sentence | None = None
    leaves: tuple[str, ...] = ()
    """Names of dimensions, or of the whole height, that are finished with it."""


def first_face(title: str, holding: Sentence, plan: StockPlan, m: Machine) -> Facing:
    """The first end of the sawn blank."""
    return Facing(
        title=title,
        holding=holding,
        set_up=FIRST,
        before_mm=plan.blank_mm,
        after_mm=plan.blank_mm - FACING_MM,
        across_mm=plan.bar_mm,
        said_first=(
            said("Where the bar is too thick for the jaws, turn the jaws round."),
            said(
                "Turn the spindle by hand with the indicator on the bar: up to {limit} of run-out does no harm here.",
                limit=RUN_OUT_BAR_MM,
            ),
            *by_dial(m, _LENGTHWISE),
        ),
    )


def face_to_height(
    pad: Pad,
    plan: StockPlan,
    m: Machine,
    *,
    holding: Sentence,
    left_out_mm: float,
    across_mm: float,
    leaves: tuple[str, ...],
) -> Facing:
    """The second end, which makes the whole height.

    ``left_out_mm`` lies beyond the face that the jaws' steps touch: a plug, or the seat with what stands below it.
    """
    is_top_first = plan.order == "top_first"
    other = ("shoulder" if pad.has_plug else "top") if is_top_first else ("skirt's end" if pad.has_skirt else "lip")
    before = pad.overall_height_mm + FACING_MM if plan.is_stub_sawn else plan.blank_mm - FACING_MM
    from_steps = said(
        f"Before the last pass measure with the depth rod from the end to the jaws' steps, which the {other} lies against, and"
        " set that pass by it: {far}" + (", which makes the whole height {height}." if left_out_mm > 0 else "."),
        far=pad.overall_height_mm - left_out_mm,
        height=pad.overall_height_mm,
    )
    web = (
        (limit_sentence(pad, "web_mm", "From the shoulder to the seat's face it"),)
        if pad.has_plug and "web_mm" in leaves
        else ()
    )
    first_end = "top" if is_top_first else "foot"
    why = said(f"The whole height is made here: the {first_end} is finished and lies inwards.")
    return Facing(
        title=f"Face the {'foot' if is_top_first else 'top'} to height",
        holding=holding,
        set_up=SECOND,
        before_mm=before,
        after_mm=pad.overall_height_mm,
        across_mm=across_mm,
        said_last=(*by_dial(m, _SAWN), from_steps, height_sentence(pad), *web),
        why=why if is_top_first else said("Only this light cut is left, so the short body can hold it."),
        leaves=leaves,
    )


def facing_operation(f: Facing, pad: Pad, c: Conditions, m: Machine) -> Operation:
    """Face an end, pass by pass."""
    passes = m.length_passes(before_mm=f.before_mm, after_mm=f.after_mm, diameter_mm=f.across_mm)
    touch = said("Touch the end where it stands out furthest, and set the lengthwise dial to zero.")
    return Operation(
        title=f.title,
        set_up=f.set_up,
        holding=f.holding,
        tools=(said(f"Facing tool, {m.tool_name}"), INDICATOR if f.set_up == FIRST else CALIPER),
        steps=(
            *f.said_first,
            said("Set the tool on centre height."),
            *by_dial(m, touch),
            said("Face from the outside in, by the passes below, to the middle: no pip may stay."),
            *f.said_last,
        ),
        why=f.why,
        cut=m.turning(f.across_mm),
        finish_cut=m.finishing(f.across_mm),
        passes=passes,
        watch=watch_for(c.material.family, "turn", key=c.material.key),
        leaves_mm={name: getattr(pad, name) for name in f.leaves},
        roughness_um=m.roughness_um,
        other_time_min=CLAMPING_MIN * (f.set_up == FIRST) + PASS_MIN * len(passes),
    )
