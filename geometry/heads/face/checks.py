"""Checks of every pad on which a face of the car lies: the lip beyond the seat, and a load that arrives off the middle or leans."""

from math import atan, degrees, sqrt

from geometry.case import Case
from geometry.heads.loading import FaceLoading
from geometry.heads.over_rim import GAP, LEAST_RIM_GAP_MM, gap_over_rim
from geometry.provenance import derived
from geometry.rules import Finding, Pointless, check
from geometry.told import mm

_NEEDS = ("seam.thickness_mm", "jack.cup_bore_mm", "car.gross_mass_kg", "make.material")
_WITHIN = "The car's face presses within the seat's circle: nothing stands out beyond it."


def _face(k: Case) -> FaceLoading:
    if not isinstance(k.head, FaceLoading):
        raise TypeError(f"no face of the car lies on a {k.c.head.kind}")
    return k.head


@check(
    "face_lip_shear",
    "Lip around the seat, sheared",
    formula="V_l / (web - seat_length)",
    limit_formula="sigma_allow / sqrt(3)",
    unit="MPa",
    source=derived("Shear yield σ/√3 (von Mises) on a cylinder as wide as the seat"),
    needs=_NEEDS,
    place="lip",
)
def _face_lip_shear(k: Case) -> Finding | Pointless:
    lip, limit = _face(k).lip, k.c.allowable_mpa / sqrt(3)
    if lip.shear_n_per_mm <= 0:
        return Pointless(_WITHIN)
    tau = lip.shear_n_per_mm / (k.pad.web_mm - k.pad.seat_length_mm)
    return Finding(
        tau,
        limit,
        lambda: (
            f"Around the seat the lip is sheared by {tau:.1f} MPa; {k.c.material.short_name} stands {limit:.1f} MPa."
        ),
        _lip_numbers(k),
    )


@check(
    "face_lip_bending",
    "Lip around the seat, bent down",
    formula="6 * M_l / (web - seat_length)**2",
    limit_formula="sigma_allow",
    unit="MPa",
    source=derived("Bending of a wedge of the lip that is held at the seat alone; the hoops' help is left out"),
    needs=_NEEDS,
    place="lip",
)
def _face_lip_bending(k: Case) -> Finding | Pointless:
    lip, sigma = _face(k).lip, k.c.allowable_mpa
    if lip.moment_n <= 0:
        return Pointless(_WITHIN)
    stress = 6 * lip.moment_n / (k.pad.web_mm - k.pad.seat_length_mm) ** 2
    return Finding(
        stress,
        sigma,
        lambda: (
            f"At the seat's edge the lip is bent to {stress:.1f} MPa; {k.c.material.short_name} stands {sigma:.1f} MPa."
        ),
        _lip_numbers(k),
    )


def _lip_numbers(k: Case) -> dict[str, float]:
    lip = _face(k).lip
    return {
        "V_l": lip.shear_n_per_mm,
        "M_l": lip.moment_n,
        "web": k.pad.web_mm,
        "seat_length": k.pad.seat_length_mm,
        "sigma_allow": k.c.allowable_mpa,
    }


@check(
    "face_rim_clear",
    "The car's face above the cup's rim",
    formula=GAP,
    limit_formula="1.0",
    unit="mm",
    sense="at_least",
    source=derived("Worst case of measurement, growth and tolerance, after indentation and squash"),
    needs=("jack.cup_depth_mm", "make.measured_with", "service.temperature_low_c"),
    place="lip",
)
def _face_rim_clear(k: Case) -> Finding | Pointless:
    if k.c.foot.depth_mm <= 0:
        return Pointless("Nothing of the jack's head stands up around the pad.")
    gap, numbers = gap_over_rim(k)
    return Finding(
        gap,
        LEAST_RIM_GAP_MM,
        lambda: (
            f"Under load the car's face stays {mm(gap, '.1f')} above the cup's rim; {mm(LEAST_RIM_GAP_MM)} is needed."
            if gap >= 0
            else f"Under load the car's face would meet the cup's rim: it lies {mm(-gap, '.1f')} below it."
        ),
        numbers,
    )


@check(
    "face_centring",
    "The car's face off the pad's middle",
    formula="e_F + e_c",
    limit_formula="R / 2",
    unit="mm",
    source=derived("As for tipping: the load's line stays inside the middle half of the seat's flat radius"),
    needs=("seam.thickness_mm", "jack.cup_bore_mm", "service.ground", "car.lift_needed_mm"),
    place="seat",
)
def _face_centring(k: Case) -> Finding:
    head, limit = _face(k), k.foot.flat_radius_mm / 2
    found = k.foot.eccentricity_mm + head.off_centre_mm
    room = limit - k.foot.eccentricity_mm
    return Finding(
        found,
        limit,
        lambda: (
            f"The car's face may arrive {mm(head.off_centre_mm, '.1f')} off the pad's middle; with play and side load that makes"
            f" {mm(found, '.1f')}, and up to {mm(limit, '.1f')} the pad stays down on the jack."
            + (f" Place the jack so that the face is no further off than {mm(room, '.0f')}." if room > 0 else "")
        ),
        {"e_F": k.foot.eccentricity_mm, "e_c": head.off_centre_mm, "R": k.foot.flat_radius_mm},
    )


@check(
    "face_lean",
    "The car leaning on the pad",
    formula="lean",
    limit_formula="tilt + deg(atan(2 * delta / w_c))",
    unit="°",
    source=derived("One edge of the face just stops pressing where the other sinks in twice as far as the middle"),
    needs=("jack.saddle_tilt_deg", "car.lift_needed_mm", "seam.thickness_mm", "make.material"),
    place="wall_top",
    advice=True,
)
def _face_lean(k: Case) -> Finding:
    head, lean, tilt = _face(k), k.c.lean_deg, k.c.foot.saddle_tilt_deg
    gives = degrees(atan(2 * head.indentation_mm / head.contact_width_mm)) if head.contact_width_mm > 0 else 0.0
    return Finding(
        lean,
        tilt + gives,
        lambda: (
            f"At the wanted lift the car leans {lean:.1f}°; the pad gives way for {gives:.1f}° and the jack's head tilts for"
            f" {tilt:g}°."
            + (
                ""
                if lean <= tilt + gives
                else f" Beyond that one edge of the face carries it all, up to {mm(head.contact_width_mm / 2, '.0f')}"
                " off the middle:"
                " lift less, in stages, and watch that edge."
            )
        ),
        {"lean": lean, "tilt": tilt, "delta": head.indentation_mm, "w_c": head.contact_width_mm},
    )
