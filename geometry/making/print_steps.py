"""What is set in the slicing program and done at the printer, and what is dressed, drilled and tried on the finished print."""

from collections.abc import Iterator

from geometry.making.printing import PrintPlan
from geometry.making.wording import Sentence, said
from geometry.pad import Pad


def print_steps(pad: Pad, plan: PrintPlan) -> tuple[Sentence, ...]:
    """What to set in the slicing program and what to do at the printer."""
    thin = "a slot wall" if pad.has_slot else "the skirt" if pad.has_skirt else "an edge"
    return (
        plan.orientation,
        said("Layers {height} high.", height=plan.layer_height_mm),
        said(f"{plan.walls} walls, {{wall}} thick together, and {plan.infill_percent:g} % infill.", wall=plan.wall_mm),
        said("Dry the filament first: damp plastic foams and prints weak."),
        said(f"Let the bed cool before you take the part off, and do not pry at {thin}."),
        *_features(pad),
        *_flexed(pad),
    )


def _features(pad: Pad) -> Iterator[Sentence]:
    """What is dressed where a print comes out rough, or is not there before it is drilled."""
    if pad.slot_corner_radius_mm > 0:
        yield said(
            "The slot's floor corners have a radius of {radius}: file it where the print has a step, no larger, no smaller.",
            radius=pad.slot_corner_radius_mm,
        )
    if pad.has_recess:
        yield said(
            "The recess in the seat is printed over supports or as a bridge {across} wide: clear and file its roof until it is"
            " {depth} deep from the seat's face everywhere.",
            across=pad.seat_recess_diameter_mm,
            depth=pad.seat_recess_depth_mm,
        )
    if pad.has_relief:
        yield said("Measure the relief pocket, {depth} deep, and file what hangs in it.", depth=pad.relief_depth_mm)
    if pad.has_cross_hole:
        yield said(
            "The cross-hole lies level and its roof sags: print it, then drill it out to {across} with the stem held in a vice.",
            across=pad.cross_hole_diameter_mm,
        )


def _flexed(pad: Pad) -> Iterator[Sentence]:
    """What is bent by hand to see whether its layers hold together."""
    thin = [
        w for w, there in (("each wall", pad.has_slot), ("the stem", pad.has_stem), ("the plug", pad.has_plug)) if there
    ]
    if thin:
        yield said(
            f"Flex {' and '.join(thin)} sideways by hand and look along the layers: a light line is a split. Discard it."
        )
