"""Checks of a flat cushion: pressure or strain, marks of a narrow face, sliding, and what stands beside the face."""

from geometry.case import Case
from geometry.elastomer import allowed_strain, is_elastomer, small_strain_modulus_mpa, stiffening
from geometry.heads.cushion.bounds import SHAPE
from geometry.provenance import derived, memory
from geometry.rules import Finding, Pointless, check
from geometry.told import mm

LEAST_BESIDE_MM = 2.0
_PRESSED = ("rail.face_width_mm", "rail.face_length_mm", "car.gross_mass_kg", "make.material")


def _pressure_numbers(k: Case) -> dict[str, float]:
    return {"F_d": k.c.design_force_n, "A": k.cushion.area_mm2, "sigma_allow": k.c.allowable_mpa}


@check(
    "cushion_bearing",
    "The car's face on the cushion",
    formula="F_d / A",
    limit_formula="sigma_allow",
    unit="MPa",
    source=derived("Mean pressure where a round top and a rectangular face meet"),
    needs=_PRESSED,
    place="slot_floor",
)
def _cushion_bearing(k: Case) -> Finding | Pointless:
    if is_elastomer(k.c):
        return Pointless("Rubber and polyurethane are judged by how far they give way.")
    p, sigma = k.cushion.pressure_mpa, k.c.allowable_mpa
    return Finding(
        p,
        sigma,
        lambda: (
            f"The car's face presses {p:.1f} MPa on {k.cushion.area_mm2 / 100:.0f} cm² of the cushion;"
            f" {k.c.material.short_name} stands {sigma:.1f} MPa."
        ),
        _pressure_numbers(k),
    )


@check(
    "cushion_strain",
    "How far the cushion gives way",
    formula="100 * F_d / (A * E_0 * (1 + 2 * S**2))",
    limit_formula="100 * eps",
    unit="%",
    source=SHAPE,
    needs=_PRESSED,
    place="slot_floor",
)
def _cushion_strain(k: Case) -> Finding | Pointless:
    if not is_elastomer(k.c):
        return Pointless("Only rubber and polyurethane are judged by how far they give way.")
    s, modulus, most = k.cushion, small_strain_modulus_mpa(k.c), 100 * allowed_strain(k.c)
    strain = 100 * s.pressure_mpa / (modulus * stiffening(s.shape_factor))
    return Finding(
        strain,
        most,
        lambda: f"The cushion gives way by {strain:.1f} % of its height; {k.c.material.short_name} stands {most:g} %.",
        {**_pressure_numbers(k), "E_0": modulus, "S": s.shape_factor, "eps": most / 100},
    )


@check(
    "cushion_marking",
    "Marks of a narrow face",
    formula="F_d / A",
    limit_formula="sigma_allow / 2",
    unit="MPa",
    source=memory(
        "Flat rigid punch: pressure (2/π)/√(1 − x²/a²) times the mean, twice the mean a twentieth from its edge (contact"
        " mechanics textbooks)"
    ),
    needs=_PRESSED,
    place="slot_floor",
    advice=True,
)
def _cushion_marking(k: Case) -> Finding | Pointless:
    s, face = k.cushion, k.c.rail
    if is_elastomer(k.c):
        return Pointless("Rubber and polyurethane give way to an edge and come back.")
    if min(face.face_width_mm, face.face_length_mm) >= s.top_mm:
        return Pointless("The car's face covers the whole top: none of its edges stands on it.")
    limit = k.c.allowable_mpa / 2
    return Finding(
        s.pressure_mpa,
        limit,
        lambda: (
            f"At {s.pressure_mpa:.1f} MPa the edges of the car's face leave no lasting mark (up to {limit:.1f} MPa)."
            if s.pressure_mpa <= limit
            else f"At {s.pressure_mpa:.1f} MPa the edges of the car's face mark the top (from {limit:.1f} MPa): inspect it before"
            " each use."
        ),
        _pressure_numbers(k),
    )


@check(
    "cushion_slide",
    "The car's face sliding on the cushion",
    formula="H / F_d",
    limit_formula="mu",
    unit="–",
    source=memory("Friction of dry, painted steel on plastics: a guess, not measured; wet or oily it is less"),
    needs=("car.lift_needed_mm", "service.ground", "make.material"),
    place="slot_floor",
    advice=True,
)
def _cushion_slide(k: Case) -> Finding:
    ratio, mu = k.c.side_force_n / k.c.design_force_n, k.c.material.assumed_friction.value
    return Finding(
        ratio,
        mu,
        lambda: (
            f"The side load is {ratio:.2f} of the load, the assumed friction {mu:.2f} on a dry face. Nothing else keeps the"
            " car on a flat top: chock the wheels, set the park brake, and"
            + (
                " stop where the face moves."
                if ratio <= mu
                else " lift less, or use a point that a slot or a plug takes."
            )
        ),
        {"H": k.c.side_force_n, "F_d": k.c.design_force_n, "mu": mu},
    )


@check(
    "cushion_clear",
    "Cushion clear of what stands beside the face",
    formula="clear_b - u - delta",
    limit_formula="2",
    unit="mm",
    sense="at_least",
    source=derived("Worst case: the face sinks in and the top beside it stands up by as much"),
    needs=("rail.clear_beside_mm", "rail.face_width_mm", "make.measured_with"),
    place="wall_top",
)
def _cushion_clear(k: Case) -> Finding | Pointless:
    s, face = k.cushion, k.c.rail
    if min(face.face_width_mm, face.face_length_mm) >= s.top_mm:
        return Pointless("The car's face covers the whole top: nothing of it stands beside the face.")
    clear = face.clear_beside_mm or 0.0
    gap = clear - k.c.u - s.indentation_mm
    return Finding(
        gap,
        LEAST_BESIDE_MM,
        lambda: (
            f"Under load the top stays {mm(gap, '.1f')} clear of what stands beside the face; {mm(LEAST_BESIDE_MM)} is wanted."
            if gap >= 0
            else f"Under load the top meets what stands beside the face: {mm(-gap, '.1f')} too much."
        ),
        {"clear_b": clear, "u": k.c.u, "delta": s.indentation_mm},
    )
