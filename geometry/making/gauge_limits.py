"""The two sizes that a gauge of the gauge sheet has: the one must go, the other must not."""

from geometry.letters import lower_first
from geometry.making.card import Table
from geometry.making.how_measured import dimension_title
from geometry.outline import SAME_POINT_MM
from geometry.pad import Pad
from geometry.spread import general_tolerance_mm
from geometry.units import LowerLimit, UpperLimit

ROUND_SIZES = ("seat_diameter_mm", "body_diameter_mm", "stem_diameter_mm")
"""What is filed round against a gap gauge where there is no lathe."""
HOLLOW_SIZES = frozenset({"slot_width_mm", "cross_slot_width_mm"})
"""What a gauge goes into; all others it goes over."""


def gauge_limits_mm(pad: Pad, name: str) -> tuple[LowerLimit | UpperLimit, LowerLimit | UpperLimit]:
    """(must go, must not go), in mm: into a slot the low limit goes, over a plug the high one [ISO 2768-1 m, as the drawing]."""
    size, tolerance = getattr(pad, name), general_tolerance_mm(pad, name)
    low, high = LowerLimit(size - tolerance), UpperLimit(size + tolerance)
    return (low, high) if name in HOLLOW_SIZES else (high, low)


def gauge_title(name: str, pad: Pad) -> str:
    """What such a gauge is called, on the gauge sheet as on the card."""
    if name in HOLLOW_SIZES:
        return "Slot gauge" if name == "slot_width_mm" else "Second slot gauge"
    what = dimension_title(name, pad).partition(",")[0]
    return f"Gap gauge for the {lower_first(what)}"


def second_slot_gauge(pad: Pad) -> str:
    """The size whose gauges a second slot is tried with: its own, or the first slot's where both are as wide."""
    is_alike = abs(pad.cross_slot_width_mm - pad.slot_width_mm) < SAME_POINT_MM
    return "slot_width_mm" if is_alike else "cross_slot_width_mm"


def gauge_table(pad: Pad, *names: str) -> Table:
    """The gauges of some sizes that a card of hand work asks for, as they are cut out of the gauge sheet."""
    rows = tuple((gauge_title(name, pad), *gauge_limits_mm(pad, name)) for name in names if getattr(pad, name) > 0)
    return Table(title="Gauges", columns=(("Gauge", ""), ("Must go", "mm"), ("Must not go", "mm")), rows=rows)
