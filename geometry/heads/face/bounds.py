"""What a face of the car that lies on the pad asks of the web."""

from math import sqrt

from geometry.bound_rules import bound
from geometry.case import head_loading
from geometry.draft import Draft
from geometry.geometrical import FLOOR_PARALLELISM
from geometry.heads.face.lip import LipLoad
from geometry.heads.loading import FaceLoading
from geometry.provenance import derived
from geometry.rules import Numbers

_NEEDS = ("seam.thickness_mm", "jack.cup_bore_mm", "car.gross_mass_kg", "make.material")


def _lip(d: Draft) -> LipLoad:
    """What presses beyond the seat at the sizes as they stand; nothing while there is no body."""
    head = head_loading(d.c, d.pad()) if d.body_diameter_mm > 0 else None
    return head.lip if isinstance(head, FaceLoading) else LipLoad()


def _sinks_mm(d: Draft) -> float:
    """How far the car's face sinks into the pad at the sizes as they stand."""
    return head_loading(d.c, d.pad()).indentation_mm if d.body_diameter_mm > 0 else 0.0


def _numbers(d: Draft) -> Numbers:
    lip = _lip(d)
    return {
        "seat_length": d.seat_length_mm,
        "sigma_allow": d.c.allowable_mpa,
        "V_l": lip.shear_n_per_mm,
        "M_l": lip.moment_n,
    }


@bound(
    "web_mm",
    "lower",
    "A lip at least 4 mm thick stands above the seat.",
    formula="seat_length + 4",
    source=derived("Least lip worth making"),
    needs=("jack.cup_depth_mm",),
    numbers=_numbers,
)
def _lip_is_a_lip(d: Draft) -> float:
    return d.seat_length_mm + 4.0


@bound(
    "web_mm",
    "lower",
    "What the car's face presses beyond the seat does not shear the lip off around it.",
    formula="seat_length + sqrt(3) * V_l / sigma_allow",
    source=derived("Shear yield σ/√3 (von Mises) on a cylinder as wide as the seat"),
    needs=_NEEDS,
    numbers=_numbers,
)
def _lip_is_not_sheared(d: Draft) -> float | None:
    shear = _lip(d).shear_n_per_mm
    return d.seat_length_mm + sqrt(3) * shear / d.c.allowable_mpa if shear > 0 else None


@bound(
    "web_mm",
    "lower",
    "What the car's face presses beyond the seat does not bend the lip through at the seat's edge.",
    formula="seat_length + sqrt(6 * M_l / sigma_allow)",
    source=derived("Bending of a wedge of the lip that is held at the seat alone"),
    needs=_NEEDS,
    numbers=_numbers,
)
def _lip_is_not_bent(d: Draft) -> float | None:
    moment = _lip(d).moment_n
    return d.seat_length_mm + sqrt(6 * moment / d.c.allowable_mpa) if moment > 0 else None


@bound(
    "web_mm",
    "lower",
    "The car's face runs on past the pad: it stays above the cup's rim where it has sunk in under load.",
    formula="(cup_depth + u + 1.0 + delta + squash) / (1 + g_cold) + tol + tol_par",
    source=derived("Worst case of measurement, growth and tolerance; 1 mm is kept"),
    needs=("jack.cup_depth_mm", "make.measured_with", "car.gross_mass_kg", "make.material"),
    numbers=lambda d: {
        "cup_depth": d.c.foot.depth_mm,
        "u": d.c.u,
        "delta": _sinks_mm(d),
        "squash": d.squash_mm,
        "g_cold": d.c.g_cold,
        "tol": d.tol,
        "tol_par": FLOOR_PARALLELISM.value_mm,
    },
)
def _stays_above_the_rim(d: Draft) -> float | None:
    c = d.c
    if c.foot.depth_mm <= 0 or d.body_diameter_mm <= 0:
        return None
    least = c.foot.depth_mm + c.u + 1.0 + _sinks_mm(d) + d.squash_mm
    return least / (1 + c.g_cold) + d.tol + FLOOR_PARALLELISM.value_mm
