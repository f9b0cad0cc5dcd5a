"""Checks of the seam in its slot as the car leans and pitches with the lift."""

from math import degrees

from geometry.case import Case
from geometry.provenance import derived
from geometry.rules import Finding, check
from geometry.side_load import LEAN_LEVER_MM
from geometry.stability import free_lean_deg, pitched_edge_pressure_mpa
from geometry.told import mm


@check(
    "seam_lean",
    "Seam free to lean with the car",
    formula="deg(atan(play / (slot_depth - c_m))) + tilt",
    limit_formula="lean",
    unit="°",
    sense="at_least",
    source=derived("Play of the seam in the slot and tilt of the saddle against the lean of the car"),
    needs=("car.lift_needed_mm", "seam.thickness_mm", "jack.saddle_tilt_deg"),
    place="slot_side",
    advice=True,
)
def _seam_lean(k: Case) -> Finding:
    play, guided = max(0.0, k.slot.tight_play_mm), k.pad.slot_depth_mm - k.pad.slot_mouth_chamfer_mm
    free = free_lean_deg(side_play_mm=play, guided_depth_mm=guided) + k.c.foot.saddle_tilt_deg
    touch = _lift_where_lean_reaches(k, free)
    return Finding(
        free,
        k.c.lean_deg,
        lambda: (
            f"The car leans {k.c.lean_deg:.1f}° at the wanted lift; play and saddle follow up to {free:.1f}°"
            + ("" if touch is None else f", reached when the seam has risen {mm(touch, '.0f')}")
            + "."
            + (
                ""
                if free >= k.c.lean_deg
                else " From there the seam touches both walls: lower, let the jack roll, re-seat, and lift in stages."
            )
        ),
        {
            "play": play,
            "slot_depth": k.pad.slot_depth_mm,
            "c_m": k.pad.slot_mouth_chamfer_mm,
            "tilt": k.c.foot.saddle_tilt_deg,
            "lean": k.c.lean_deg,
        },
    )


def _lift_where_lean_reaches(k: Case, lean_deg: float) -> float | None:
    """The rise of the seam at which the car leans by ``lean_deg``, in mm; None where it never does."""
    if k.c.curve is None:
        return lean_deg / degrees(1) * LEAN_LEVER_MM.value
    before = None
    for point in k.c.curve.points:
        if abs(point.roll_deg) >= lean_deg:
            if before is None or point.roll_deg == before.roll_deg:
                return point.rise_mm
            share = (lean_deg - abs(before.roll_deg)) / (abs(point.roll_deg) - abs(before.roll_deg))
            return before.rise_mm + share * (point.rise_mm - before.rise_mm)
        before = point
    return None


@check(
    "saddle_pitch",
    "Saddle follows the car's pitch",
    formula="pitch",
    limit_formula="tilt",
    unit="°",
    source=derived("Rigid car on four springs against the tilt of the saddle"),
    needs=("car.front_share", "car.wheelbase_mm", "jack.saddle_tilt_deg"),
    place="slot_floor",
    advice=True,
)
def _saddle_pitch(k: Case) -> Finding:
    pitch, tilt = k.c.pitch_deg or 0.0, k.c.foot.saddle_tilt_deg
    pressure = pitched_edge_pressure_mpa(
        pressure_mpa=k.slot.pressure_mpa, loaded_length_mm=k.slot.length_mm, seat_flat_radius_mm=k.foot.flat_radius_mm
    )
    return Finding(
        pitch,
        tilt,
        lambda: (
            f"The car pitches {pitch:.1f}° at the wanted lift; the saddle follows up to {tilt:g}°."
            + ("" if pitch <= tilt else f" One end of the slot then carries {pressure:.0f} MPa: re-seat as it rises.")
        ),
        {"pitch": pitch, "tilt": tilt},
        also=(("edge pressure if the saddle does not follow", pressure, "MPa"),),
    )
