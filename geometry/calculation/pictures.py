"""The plots of a design: what it takes to draw them stands here, how they are drawn in the drawing's own room."""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from geometry import lift
from geometry.calculation.basis import moment_bound
from geometry.case import Case, case_of
from geometry.design import Design
from geometry.drawing.plots import Plot, clearance_plot, lift_plot
from geometry.feet.cup.checks import LEAST_SEAT_CLEARANCE_MM
from geometry.feet.facts import Locates
from geometry.feet.play import LOCATING
from geometry.feet.post.checks import LEAST_CLEARANCE_MM as LEAST_STEM_CLEARANCE_MM
from geometry.feet.skirt.checks import LEAST_CLEARANCE_MM as LEAST_SKIRT_CLEARANCE_MM
from geometry.heads.plug.checks import LEAST_PLAY_MM
from geometry.heads.plug.loading import tightest
from geometry.heads.slot.checks import LEAST_SIDE_PLAY_MM
from geometry.units import LengthUnit

_NEEDED_MM: Mapping[Locates, float] = MappingProxyType(
    {"seat": LEAST_SEAT_CLEARANCE_MM, "skirt": LEAST_SKIRT_CLEARANCE_MM, "stem": LEAST_STEM_CLEARANCE_MM}
)


def lift_plot_of(design: Design, *, units: LengthUnit = "mm", is_narrow: bool = False) -> Plot | None:
    """Force and wheel loads against the rise; None where the car's statics are not known."""
    c = design.conditions
    if c.curve is None:
        return None
    return lift_plot(
        c.curve,
        rated_load_n=lift.weight_n(c.foot.rated_load_kg),
        lift_needed_mm=c.lift_needed_mm,
        units=units,
        is_narrow=is_narrow,
    )


def moment_bound_of(design: Design) -> float | None:
    """The greatest force that moments allow, N; None where the car's statics are not known."""
    return moment_bound(design.conditions) if design.conditions.curve else None


def clearance_plots_of(design: Design, *, units: LengthUnit = "mm") -> tuple[Plot, ...]:
    """The least clearance of the seat, and of the seam or the plug, against temperature, dry to soaked."""
    c, k = design.conditions, case_of(design.conditions, design.pad)
    locates, dimension = c.foot.locates, LOCATING[c.foot.locates]
    size, tolerance = getattr(design.pad, dimension), k.tolerance_mm(dimension)
    service = c.measurements.service
    seat = clearance_plot(
        locates,
        clearance_mm=lambda growth: (
            (size - tolerance) * (1 + growth) - c.foot.bore_mm - c.u
            if locates == "skirt"
            else c.foot.bore_mm - c.u - (size + tolerance) * (1 + growth)
        ),
        needed_mm=_NEEDED_MM[locates],
        material=c.material,
        temperature_low_c=service.temperature_low_c,
        temperature_high_c=service.temperature_high_c,
        units=units,
    )
    return (seat, *_of_head(k, units))


def _of_head(k: Case, units: LengthUnit) -> tuple[Plot, ...]:
    """The fit of the seam in its slot or of the plug in its hole; nothing fits into a cushion."""
    c, which = k.c, k.c.head.kind
    if which == "cushion":
        return ()
    plot = clearance_plot(
        "slot" if which == "slot" else "plug",
        clearance_mm=_seam_play(k) if which == "slot" else _plug_play(k),
        needed_mm=LEAST_SIDE_PLAY_MM if which == "slot" else LEAST_PLAY_MM,
        material=c.material,
        temperature_low_c=c.measurements.service.temperature_low_c,
        temperature_high_c=c.measurements.service.temperature_high_c,
        units=units,
    )
    return (plot,)


def _seam_play(k: Case) -> Callable[[float], float]:
    """Least play of the seam by the slot's growth."""
    narrowest, seam = k.pad.slot_width_mm - k.slot.width_tolerance_mm, k.c.seam
    return lambda growth: narrowest * (1 + growth) - seam.thickness_mm - k.c.u - seam.bow_mm


def _plug_play(k: Case) -> Callable[[float], float]:
    """Least play of the plug by its growth."""
    hole, largest = tightest(k.c, k.pad, k.spread)
    return lambda growth: hole - k.c.u - largest * (1 + growth)
