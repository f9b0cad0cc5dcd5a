"""Checks of the cutter that makes the slot."""

from geometry.case import Case
from geometry.provenance import practice
from geometry.rules import Finding, Pointless, check
from geometry.told import mm


@check(
    "cutter",
    "A cutter that enters the slot",
    formula="d_c",
    limit_formula="slot",
    unit="mm",
    source=practice("A slot is never narrower than its cutter"),
    needs=("make.cutter_diameters_mm",),
    place="slot_side",
)
def _cutter(k: Case) -> Finding | Pointless:
    if not k.c.slot_is_milled:
        return Pointless("No end mill cuts this slot.")
    width = k.pad.slot_width_mm
    cutter = max((d for d in k.c.cutters_mm if d <= width), default=min(k.c.cutters_mm))
    return Finding(
        cutter,
        width,
        lambda: (
            f"A {mm(cutter)} cutter enters the {mm(width)} slot."
            if cutter <= width
            else f"The smallest cutter to hand, {mm(cutter)}, is wider than the {mm(width)} slot."
        ),
        {"d_c": cutter, "slot": width},
        utilisation=0.0 if cutter <= width else cutter / width,
    )


@check(
    "cutter_reach",
    "Cutter reaching the slot's floor",
    formula="slot_depth",
    limit_formula="4 * d_c",
    unit="mm",
    source=practice("An end mill used deeper than four of its diameters bends and chatters"),
    needs=("make.cutter_diameters_mm",),
    place="slot_floor",
    advice=True,
)
def _cutter_reach(k: Case) -> Finding | Pointless:
    entering = [d for d in k.c.cutters_mm if d <= k.pad.slot_width_mm]
    if not k.c.slot_is_milled or not entering:
        return Pointless("No end mill cuts this slot.")
    depth, largest = k.pad.slot_depth_mm, entering[-1]
    return Finding(
        depth,
        4 * largest,
        lambda: (
            f"A {mm(largest)} cutter reaches {mm(depth)} down without trouble."
            if depth <= 4 * largest
            else f"{mm(depth)} deep is more than four times the {mm(largest)} cutter: take a long one, light cuts, and measure."
        ),
        {"slot_depth": depth, "d_c": largest},
    )
