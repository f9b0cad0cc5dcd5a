"""The foot on the lathe: stem, seat, skirt and recess, from the end of the work down to the lip face."""

from collections.abc import Iterator
from dataclasses import replace

from geometry.conditions import Conditions
from geometry.making.card import Operation
from geometry.making.foot_cuts import FootCut, foot_cuts, level_words, makes_lip_face, makes_seat_face
from geometry.making.groove import Groove, groove_operation, groove_plan
from geometry.making.kit import LEAD_IN_MM, ROOT_MOST_MM, root_words
from geometry.making.limits import limit_sentence
from geometry.making.machine import Machine
from geometry.making.pocket import Pocket, pocket_operation
from geometry.making.shoulders import Step, step_operation
from geometry.making.wording import Sentence, said
from geometry.pad import Pad

_CARRIES = said("The load stands on the seat's face: square to the axis, no pip, no groove.")


def foot_operations(
    pad: Pad, c: Conditions, m: Machine, *, holding: Sentence, set_up: int, start_mm: float, is_top_done: bool
) -> Iterator[Operation]:
    """Every cut that makes the foot, in order; with the top done the seat face finishes the web as well."""
    for cut in foot_cuts(pad):
        if cut.kind == "turn":
            step = _step(pad, cut, start_mm)
            made = step_operation(step, c, m, holding=holding, set_up=set_up)
        elif cut.kind == "bore":
            made = pocket_operation(_inside(pad, cut), c, m, holding=holding, set_up=set_up)
        else:
            made = groove_operation(_groove(pad, cut, m), c, m, holding=holding, set_up=set_up)
        if is_top_done and makes_seat_face(pad, cut) and not pad.has_slot:
            made = replace(
                made,
                steps=(*made.steps, limit_sentence(pad, "web_mm", "From the seat's face to where the car stands it")),
                leaves_mm={**made.leaves_mm, "web_mm": pad.web_mm},
            )
        yield made


def recess_operation(pad: Pad, c: Conditions, m: Machine, *, holding: Sentence, set_up: int) -> Operation:
    """The recess for a boss, bored from the seat's face."""
    pocket = Pocket(
        title="Bore the recess in the seat's face",
        across_mm=pad.seat_recess_diameter_mm,
        depth_mm=pad.seat_recess_depth_mm,
        face="seat's face",
        further_in_mm=max(0.0, -pad.foot_bottom_mm) if pad.has_skirt else 0.0,
        said_last=(
            limit_sentence(pad, "seat_recess_diameter_mm", "The recess"),
            limit_sentence(pad, "seat_recess_depth_mm", "Its depth"),
            said("Break the recess's edge lightly with a scraper: the seat's ring is narrow there."),
        ),
        why=said("The load stands on the ring of seat face round it; the boss on the cup's floor must touch nothing."),
        leaves={
            "seat_recess_diameter_mm": pad.seat_recess_diameter_mm,
            "seat_recess_depth_mm": pad.seat_recess_depth_mm,
        },
    )
    return pocket_operation(pocket, c, m, holding=holding, set_up=set_up)


def awkward_grooves(pad: Pad, m: Machine) -> Iterator[Sentence]:
    """What stands in the way of a groove that no usual tool cuts."""
    for cut in foot_cuts(pad):
        if cut.kind != "groove":
            continue
        plan = groove_plan(inner_mm=cut.inner_mm, outer_mm=cut.outer_mm, depth_mm=cut.depth_mm, m=m)
        if plan.is_awkward:
            yield said(
                "The groove inside the skirt is only {wide} wide and {deep} deep: no usual grooving tool cuts that. Give the"
                " skirt a wider bore, or make it shorter.",
                wide=(cut.outer_mm - cut.inner_mm) / 2,
                deep=cut.depth_mm,
            )


def _leaves(pad: Pad, cut: FootCut) -> dict[str, float]:
    """The dimensions that are finished with a cut."""
    names: list[str] = []
    if makes_seat_face(pad, cut) and pad.has_stem:
        names += ["stem_diameter_mm", "stem_length_mm"]
    if makes_lip_face(pad, cut):
        names += ["seat_diameter_mm", "seat_length_mm"]
        names += ["skirt_bore_mm", "skirt_length_mm"] if pad.has_skirt else []
    return {name: getattr(pad, name) for name in names}


def _said_last(pad: Pad, cut: FootCut) -> Iterator[Sentence]:
    """Limits of what is finished, and what the face carries or clears."""
    across = "seat_diameter_mm" if cut.from_mm >= 0 else "stem_diameter_mm"
    if cut.inner_mm > 0:
        yield limit_sentence(pad, across, cut_words(across))
    if cut.outer_mm > 0 and makes_lip_face(pad, cut):
        yield limit_sentence(pad, "skirt_bore_mm", "The skirt's bore")
    if makes_seat_face(pad, cut):
        yield _CARRIES
        if pad.has_stem:
            yield said("Break the stem's end {lead_in} × 45°, its lead-in.", lead_in=LEAD_IN_MM)
            yield root_words("At the stem's root")
    if makes_lip_face(pad, cut):
        yield said("Leave no fillet under the lip larger than {most}.", most=ROOT_MOST_MM)


def cut_words(name: str) -> str:
    """The seat or the stem as the subject of a sentence on its diameter."""
    return "The seat" if name == "seat_diameter_mm" else "The stem"


def _step(pad: Pad, cut: FootCut, start_mm: float) -> Step:
    """A cut from the outside in."""
    what = "seat" if cut.from_mm >= 0 else "stem"
    shoulder = level_words(pad, cut.to_mm)
    end = level_words(pad, cut.from_mm)
    is_whole = makes_lip_face(pad, cut) if what == "seat" else makes_seat_face(pad, cut)
    return Step(
        title=f"Turn the {what}" + ("" if is_whole else " down to the skirt"),
        start_mm=start_mm,
        size_mm=cut.inner_mm,
        length_mm=cut.depth_mm,
        end="end of the work" if end == "stem's end" else end,
        said_first=(_shoulder_words(pad, cut, shoulder),),
        said_last=tuple(_said_last(pad, cut)),
        leaves=_leaves(pad, cut),
        cuts_root=pad.has_stem and makes_seat_face(pad, cut),
    )


def _shoulder_words(pad: Pad, cut: FootCut, shoulder: str) -> Sentence:
    from_end = level_words(pad, cut.from_mm)
    if from_end == "seat's face" and pad.has_stem:
        return said(
            f"The shoulder is the {shoulder}, {{stop}} from the seat's face and {{whole}} from the stem's end.",
            stop=cut.depth_mm,
            whole=cut.depth_mm + pad.stem_length_mm,
        )
    face = "end of the work" if from_end == "stem's end" else from_end
    return said(f"The shoulder is the {shoulder}, {{stop}} from the {face}.", stop=cut.depth_mm)


def _inside(pad: Pad, cut: FootCut) -> Pocket:
    """The inside of a skirt, where nothing stands in it yet."""
    floor = level_words(pad, cut.to_mm)
    return Pocket(
        title=f"Bore the skirt down to the {floor}",
        across_mm=cut.outer_mm,
        depth_mm=cut.depth_mm,
        face=level_words(pad, cut.from_mm),
        said_last=(limit_sentence(pad, "skirt_bore_mm", "The skirt's bore"), *_said_last(pad, cut)),
        why=None if pad.has_stem else said("The floor of this bore is the face that the pad stands on."),
        leaves=_leaves(pad, cut),
    )


def _groove(pad: Pad, cut: FootCut, m: Machine) -> Groove:
    """Between the skirt and seat or stem."""
    middle = "seat" if cut.from_mm >= 0 else "stem"
    return Groove(
        title=f"Cut the groove between {middle} and skirt",
        plan=groove_plan(inner_mm=cut.inner_mm, outer_mm=cut.outer_mm, depth_mm=cut.depth_mm, m=m),
        outside_mm=pad.body_diameter_mm,
        face=level_words(pad, cut.from_mm),
        said_last=tuple(_said_last(pad, cut)),
        why=None if middle == "stem" else said("Its floor is the lip's face; the skirt stands outside it."),
        leaves=_leaves(pad, cut),
    )
