"""What the load does to a seat, whatever it stands on."""

from dataclasses import dataclass
from math import inf

from geometry.conditions import Conditions
from geometry.feet.play import LOCATING, play_mm
from geometry.geometrical import LIP_RUN_OUT, SLOT_SYMMETRY
from geometry.pad import Pad
from geometry.seat import seat_area_mm2, seat_edge_factor, squash_mm
from geometry.spread import AS_DRAWN, Spread
from geometry.stability import load_eccentricity_mm


@dataclass(frozen=True, slots=True)
class FootLoading:
    """Pressures and movements of the seat, at nominal sizes, the worst play and the slot furthest off; mm and MPa."""

    seat_tolerance_mm: float
    flat_radius_mm: float
    """Of what carries: the flat of the seat face, or what it stands on where that ends first."""
    area_mm2: float
    mean_mpa: float
    play_mm: float
    """Of what locates the pad, on the diameter, at worst."""
    slot_symmetry_mm: float
    """Zone of the slot's middle plane about the seat's axis: half of it is how far the load may arrive off that axis."""
    lip_run_out_mm: float
    """How much lower the lip may be on one side than where the seat's length was measured."""
    eccentricity_mm: float
    edge_factor: float
    squash_mm: float


def foot_loading(c: Conditions, pad: Pad, spread: Spread = AS_DRAWN) -> FootLoading:
    """What the load does to the seat of ``pad``."""
    flat = min(pad.seat_flat_diameter_mm, c.foot.contact_diameter_mm)
    hollow = max(c.foot.hole_diameter_mm, pad.seat_recess_diameter_mm)
    area = seat_area_mm2(seat_flat_diameter_mm=flat, hole_diameter_mm=hollow)
    locating = LOCATING[c.foot.locates]
    play = play_mm(c, size_mm=getattr(pad, locating), tolerance_mm=spread.of(pad, locating))
    symmetry = spread.zone_mm(SLOT_SYMMETRY)
    # A slot off the seat's axis moves the load as play does: by half of its zone.
    eccentricity = pad.slot_offset_mm + load_eccentricity_mm(
        play_mm=max(0.0, play) + symmetry,
        side_force_n=c.side_force_n,
        top_height_mm=pad.top_height_mm,
        design_force_n=c.design_force_n,
    )
    return FootLoading(
        seat_tolerance_mm=spread.of(pad, "seat_diameter_mm"),
        flat_radius_mm=flat / 2,
        area_mm2=area,
        mean_mpa=c.design_force_n / area if area > 0 else inf,
        play_mm=play,
        slot_symmetry_mm=symmetry,
        lip_run_out_mm=spread.zone_mm(LIP_RUN_OUT),
        eccentricity_mm=eccentricity,
        edge_factor=seat_edge_factor(eccentricity_mm=eccentricity, radius_mm=flat / 2),
        squash_mm=squash_mm(
            force_n=c.design_force_n,
            area_mm2=area,
            allowable_mpa=c.allowable_mpa,
            cup_depth_mm=c.foot.depth_mm,
            modulus_mpa=c.modulus_mpa,
        ),
    )
