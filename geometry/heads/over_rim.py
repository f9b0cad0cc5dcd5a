"""How far what stands on the pad stays above the rim of what the pad stands in, under load."""

from geometry.case import Case
from geometry.rules import Numbers

LEAST_RIM_GAP_MM = 1.0
GAP = "(web - tol - tol_par) * (1 + g_cold) - delta - squash - cup_depth - u"
"""The formula of the gap."""


def gap_over_rim(k: Case) -> tuple[float, Numbers]:
    """The least gap, [mm], the pad cold, squashed and at its lowest, and the symbols of its formula with their values."""
    c, head = k.c, k.head
    lowest = (k.pad.web_mm - head.web_tolerance_mm - head.floor_parallelism_mm) * (1 + c.g_cold)
    gap = lowest - head.indentation_mm - k.foot.squash_mm - c.foot.depth_mm - c.u
    return gap, {
        "web": k.pad.web_mm,
        "tol": head.web_tolerance_mm,
        "tol_par": head.floor_parallelism_mm,
        "g_cold": c.g_cold,
        "delta": head.indentation_mm,
        "squash": k.foot.squash_mm,
        "cup_depth": c.foot.depth_mm,
        "u": c.u,
    }
