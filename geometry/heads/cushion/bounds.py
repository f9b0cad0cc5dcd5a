"""What a flat face of the car asks of the cushion under it."""

from math import hypot, inf, sqrt

from geometry.bound_rules import bound
from geometry.draft import Draft
from geometry.elastomer import allowed_strain, is_elastomer, small_strain_modulus_mpa, stiffening
from geometry.elastomer import shape_factor as shape_of
from geometry.heads.overlap import disc_in_rectangle_mm2
from geometry.provenance import derived, found

PRESSURE_AIM = 0.8
_HALVINGS = 22
SHAPE = found(
    "Apparent modulus E₀(1 + 2S²), S = D/4h: Gent & Lindley 1959, as read in a public summary; working strain of 5 to 15 % of"
    " cast polyurethane pads, never above 25 %: psiurethanes.com"
)


def pressed_mm2(d: Draft, top_mm: float) -> float:
    """Where a top this wide and the car's face meet."""
    face = d.c.rail
    return disc_in_rectangle_mm2(diameter_mm=top_mm, width_mm=face.face_width_mm, length_mm=face.face_length_mm)


def _stiffening(d: Draft, top_mm: float) -> float:
    """How many times a plain column's stress a top this wide may see; 1 where the material is not rubbery."""
    face, web = d.c.rail, d.web_mm
    within = min(top_mm, face.face_width_mm, face.face_length_mm)
    return stiffening(shape_of(loaded_width_mm=within, height_mm=web)) if is_elastomer(d.c) and web > 0 else 1.0


def _used(d: Draft, top_mm: float) -> float:
    """Pressure on a top this wide over what the material is allowed; shape counts where it is rubbery."""
    area = pressed_mm2(d, top_mm)
    return d.c.design_force_n / area / (d.c.allowable_mpa * _stiffening(d, top_mm)) if area > 0 else inf


def _wide_enough_mm(d: Draft) -> float:
    """The top that brings the pressure to the aim, as far as the face goes and the lip beyond the seat is stiff."""
    lip = max(0.0, d.web_mm - d.seat_length_mm) / _stiffening(d, d.seat_diameter_mm)
    low, high = 0.0, min(hypot(d.c.rail.face_width_mm, d.c.rail.face_length_mm), d.seat_diameter_mm + lip)
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if _used(d, middle) > PRESSURE_AIM else (low, middle)
    return high


@bound(
    "body_diameter_mm",
    "lower",
    "The top is wide enough for the car's face not to press too hard on it.",
    formula="D_p + 2 * c_e",
    source=derived(
        "Pressure at 0.8 of its limit, as far as the face goes; the lip stands out by half its thickness at most"
    ),
    needs=("rail.face_width_mm", "rail.face_length_mm", "car.gross_mass_kg", "make.material"),
    numbers=lambda d: {"D_p": _wide_enough_mm(d), "c_e": d.edge_chamfer_mm},
    must=False,
)
def _top_is_wide_enough(d: Draft) -> float:
    return _wide_enough_mm(d) + 2 * d.edge_chamfer_mm


def _strain_over(d: Draft) -> float:
    """Strain without the help of shape, over what is allowed, less 1; what shape must make up for."""
    area = pressed_mm2(d, d.body_diameter_mm - 2 * d.edge_chamfer_mm)
    plain = small_strain_modulus_mpa(d.c) * allowed_strain(d.c)
    return d.c.design_force_n / (area * plain) - 1 if area > 0 else inf


@bound(
    "web_mm",
    "upper",
    "The pad is flat enough not to be squeezed out: rubber and polyurethane are the stiffer the flatter they are.",
    formula="min(body - 2 * c_e, w_f, l_f) / 4 * sqrt(2 / (F_d / (A * E_0 * eps) - 1))",
    source=SHAPE,
    needs=("rail.face_width_mm", "make.material", "car.gross_mass_kg"),
    numbers=lambda d: {
        "body": d.body_diameter_mm,
        "c_e": d.edge_chamfer_mm,
        "w_f": d.c.rail.face_width_mm,
        "l_f": d.c.rail.face_length_mm,
        "F_d": d.c.design_force_n,
        "A": pressed_mm2(d, d.body_diameter_mm - 2 * d.edge_chamfer_mm),
        "E_0": small_strain_modulus_mpa(d.c),
        "eps": allowed_strain(d.c),
    },
    must=False,
)
def _flat_enough(d: Draft) -> float | None:
    if not is_elastomer(d.c) or d.body_diameter_mm <= 0:
        return None
    over = _strain_over(d)
    if not 0 < over < inf:
        return None
    face = d.c.rail
    within = min(d.body_diameter_mm - 2 * d.edge_chamfer_mm, face.face_width_mm, face.face_length_mm)
    return within / 4 * sqrt(2 / over)
