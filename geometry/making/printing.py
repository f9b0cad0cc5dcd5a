"""A printed pad: how it lies on the bed, how solid it is, what it weighs, and plainly where printing is not advisable."""

from dataclasses import dataclass
from math import pi

from geometry.conditions import Conditions
from geometry.document.shop import Shop
from geometry.letters import upper_first
from geometry.making.how_measured import measured_names
from geometry.making.wording import Sentence, said
from geometry.pad import Pad
from geometry.provenance import Source, derived, memory
from geometry.rules import Check
from geometry.volume import volume_mm3

NEAR_LIMIT_C = 10.0
"""Nearer than this to its greatest temperature a print is not to be trusted."""
SOLID_PERCENT = 100.0
ORIENTATION_SOURCE = derived(
    "Axis upright: the load presses the layers together; what the side load bends, bends across the layers, so"
    " it is given the lower strength"
)
KNOCK_DOWN_SOURCE = memory("Tension across layers 0.4 of that along them; voids 0.8 (derived)")
_SECONDS_PER_MIN = 60.0
_TRAVEL_FACTOR = 1.3
"""Moves without plastic and slow first layers: judged."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintPlan:
    """How to print the pad, and what it takes."""

    orientation: Sentence
    layer_height_mm: float
    layers: int
    walls: int
    wall_mm: float
    infill_percent: float
    is_solid: bool
    wall_strength_share: float
    """Share of the allowed stress that a slot wall may use, because it bends across the layers."""
    temperature_max_c: float
    volume_mm3: float
    """Plastic laid down."""
    mass_kg: float
    filament_mm: float
    price: float | None
    time_min: float
    knock_downs: tuple[tuple[str, float, Source], ...]
    """What is taken off a print's strength, with where each comes from."""
    is_advisable: bool
    against: tuple[Sentence, ...]
    """Why printing is not advisable; empty where nothing speaks against it."""

    @property
    def words(self) -> str:
        """The plain statement."""
        if self.is_advisable:
            return "Nothing in these estimates speaks against printing this pad. Prints differ: yours is not tested."
        return "Printing this pad is not advisable. " + " ".join(s.shown() for s in self.against)


def lies(pad: Pad) -> str:
    """How it lies on the bed: on its foot, or upside down where a stem or a skirt is in the way."""
    return "Top on the bed, axis upright" if _is_upside_down(pad) else "Foot on the bed, axis upright"


def _is_upside_down(pad: Pad) -> bool:
    return pad.has_stem or pad.has_skirt


def printed_sizes(pad: Pad) -> dict[str, float]:
    """What a finished print is to measure, by the names of the pad; what the pad does not have is left out."""
    names = (*(name for name in pad.present if name in measured_names(pad)), "overall_height_mm")
    return {name: getattr(pad, name) for name in names}


def _orientation(pad: Pad) -> Sentence:
    """How it lies, and everywhere that something hangs in the air."""
    lengths = {"radius": pad.seat_corner_radius_mm}
    if _is_upside_down(pad):
        up = " and ".join(w for w, there in (("skirt", pad.has_skirt), ("stem", pad.has_stem)) if there)
        under = "supports under the shoulder round the plug" if pad.has_plug else "no supports are needed"
        bridge = " The slot's floor is printed as a bridge: file it flat." if pad.has_slot else ""
        return Sentence(f"{lies(pad)}, {up} up: {under}.{bridge}", lengths)
    corner = (
        ", and under the seat's round corner of {radius}, which leans out too far near the bed"
        if pad.seat_corner_radius_mm > 0
        else ""
    )
    top = "slot" if pad.has_slot else "plug" if pad.has_plug else "flat"
    return Sentence(
        f"{lies(pad)}, {top} on top: supports are needed under the lip, where the body steps out{corner}; nowhere else"
        f"{' but in the recess' if pad.has_recess else ''}.",
        lengths,
    )


def print_plan(pad: Pad, conditions: Conditions, shop: Shop, checks: tuple[Check, ...]) -> PrintPlan:
    """Plan a print; ``checks`` are those of this pad."""
    wall = shop.walls * shop.line_width_mm
    share = solid_share(pad, wall_mm=wall, infill_percent=shop.infill_percent)
    volume = share * volume_mm3(pad)
    density = shop.filament_density_g_cm3 or conditions.material.density_g_cm3.value
    mass = volume * density * 1e-6
    against = tuple(_against(pad, conditions, shop, checks))
    return PrintPlan(
        orientation=_orientation(pad),
        layer_height_mm=shop.layer_height_mm,
        layers=-int(-pad.overall_height_mm // shop.layer_height_mm),
        walls=shop.walls,
        wall_mm=wall,
        infill_percent=shop.infill_percent,
        is_solid=shop.infill_percent >= SOLID_PERCENT,
        wall_strength_share=conditions.material.wall_stress_factor,
        temperature_max_c=conditions.material.temperature_max_c.value,
        volume_mm3=volume,
        mass_kg=mass,
        filament_mm=filament_length_mm(volume_mm3=volume, filament_diameter_mm=shop.filament_diameter_mm),
        price=None if shop.price_per_kg is None else shop.price_per_kg * mass,
        time_min=_TRAVEL_FACTOR * volume / shop.flow_mm3_s / _SECONDS_PER_MIN,
        knock_downs=knock_downs(conditions),
        is_advisable=not against,
        against=against,
    )


def filament_length_mm(*, volume_mm3: float, filament_diameter_mm: float) -> float:
    r"""Length of filament in a volume of plastic.

    .. math:: l = \frac{4 V}{\pi d^2}

    Parameters
    ----------
    volume_mm3 : float
        Plastic laid down V, [mm^3]
    filament_diameter_mm : float
        Filament diameter d, [mm]

    Returns
    -------
    length_mm : float
        Length l, [mm]

    Examples
    --------
    A cubic centimetre of 1.75 mm filament is 416 mm long:

    >>> round(filament_length_mm(volume_mm3=1000, filament_diameter_mm=1.75))
    416

    References
    ----------
    Plain geometry.
    """
    return 4 * volume_mm3 / (pi * filament_diameter_mm**2)


def solid_share(pad: Pad, *, wall_mm: float, infill_percent: float) -> float:
    """Share of the pad's volume that is plastic: a shell of walls, floor and roof, and infill inside it.

    The shell is reckoned as the outer surface times the wall's thickness, never more than the whole: an estimate for the
    spool, not for the strength.
    """
    seat, body = pad.seat_diameter_mm, pad.body_diameter_mm
    ends = pi / 2 * body**2
    sides = pi * (seat * pad.seat_length_mm + body * (pad.body_top_mm - pad.foot_bottom_mm))
    sides += pi * (pad.skirt_bore_mm * pad.skirt_length_mm + pad.stem_diameter_mm * pad.stem_length_mm)
    sides += 2 * (pad.plug_width_mm + pad.plug_length_mm) * pad.plug_height_mm
    slot = 2 * body * pad.slot_depth_mm
    shell = min(1.0, (ends + sides + slot) * wall_mm / volume_mm3(pad))
    return shell + (1 - shell) * infill_percent / 100


def _against(pad: Pad, c: Conditions, shop: Shop, checks: tuple[Check, ...]) -> list[Sentence]:
    service, found = c.measurements.service, []
    hottest, most = service.temperature_high_c, c.material.temperature_max_c.value
    name = upper_first(c.material.short_name)
    if most - hottest < NEAR_LIMIT_C:
        found.append(
            said(
                f"{name} softens: it keeps its shape up to {most:g} °C and {hottest:g} °C is expected. A dark"
                f" boot in the sun is hotter."
            )
        )
    if service.hold != "minutes":
        found.append(said("A print creeps under a load that stays."))
    if shop.infill_percent < SOLID_PERCENT:
        found.append(
            said(
                f"{shop.infill_percent:g} % infill is not solid; the estimates are for a solid print and say"
                f" nothing about a hollow one."
            )
        )
    failing = [
        check.title
        for check in checks
        if check.verdict == "fail" and check.rule.place in {"wall", "slot_floor", "web", "lip", "seat", "body"}
    ]
    if failing:
        found.append(said(f"These estimates fail: {'; '.join(failing)}. A pad turned from solid rod carries more."))
    return found


def knock_downs(conditions: Conditions) -> tuple[tuple[str, float, Source], ...]:
    """What is taken off a print's strength, with where it comes from."""
    factor = conditions.material.layer_tension_factor
    bent = "Slot walls, bending" if conditions.head.kind == "slot" else "Bending"
    wall = ((f"{bent} across the layers", factor.value, factor.source),) if factor else ()
    return (
        *wall,
        ("Differences between makes and batches", 0.75, memory("10 to 25 % by brand and batch (filament-db wiki)")),
    )
