"""Checks of the car's own seam: crushing, buckling and bending."""

from geometry.case import Case
from geometry.provenance import memory, recomputed
from geometry.rules import Finding, Pointless, Verdict, check
from geometry.seam import K_FREE, K_GUIDED, bending_interaction, buckling_stress_mpa

DOUBTFUL_TO = 1.5
"""While the yield is the assumed design floor, up to 1.5 times it is advice: sill steels are commonly 210–350 MPa."""
_YIELD = "yield 140 MPa, design floor of DC01–DC05 by EN 10130, while none is given"


def _judged(k: Case, utilisation: float) -> Verdict:
    """The verdict of a check against the steel's yield, milder while the yield is only assumed."""
    if utilisation <= 1:
        return "pass"
    return "advice" if k.c.seam.yield_is_assumed and utilisation <= DOUBTFUL_TO else "fail"


def _doubt(k: Case, utilisation: float) -> str:
    if utilisation <= 1:
        return ""
    if k.c.seam.yield_is_assumed and utilisation <= DOUBTFUL_TO:
        return " The steel is taken at its weakest; most sills are stronger. Ask for the maker's repair data."
    return " Choose another lifting point of the maker's, or spread the load over more seam."


@check(
    "seam_crush",
    "Steel at the seam's edge",
    formula="F_d / (t_b * L)",
    limit_formula="f_y",
    unit="MPa",
    source=memory(f"Plain yield of the edge; {_YIELD}"),
    needs=("car.gross_mass_kg", "seam.edge_thickness_mm", "seam.straight_length_mm", "seam.yield_mpa"),
    place="seam_edge",
)
def _seam_crush(k: Case) -> Finding:
    p, f_y = k.slot.pressure_mpa, k.c.seam.yield_mpa
    yields = "is assumed to yield" if k.c.seam.yield_is_assumed else "yields"
    return Finding(
        p,
        f_y,
        lambda: f"The seam's own edge carries {p:.0f} MPa; its steel {yields} at {f_y:.0f} MPa.{_doubt(k, p / f_y)}",
        {"F_d": k.c.design_force_n, "t_b": k.c.seam.edge_thickness_mm, "L": k.slot.length_mm, "f_y": f_y},
        verdict=_judged(k, p / f_y),
    )


@check(
    "seam_bending",
    "Side load on the seam below the sill",
    formula="(p / f_y)**2 + 4 * H * b / (L * t_bare**2 * f_y)",
    limit_formula="1",
    unit="–",
    source=memory(f"Plastic interaction of axial force and bending, form of EN 1993-1-1 6.2.9.1; {_YIELD}"),
    needs=("car.gross_mass_kg", "seam.bare_thickness_mm", "seam.height_mm", "service.ground", "seam.yield_mpa"),
    place="seam_strip",
)
def _seam_bending(k: Case) -> Finding:
    s, seam = k.slot, k.c.seam

    def interaction(strip_mm: float) -> float:
        return bending_interaction(
            pressure_mpa=s.pressure_mpa,
            yield_mpa=seam.yield_mpa,
            side_force_n=k.c.side_force_n,
            strip_mm=strip_mm,
            loaded_length_mm=s.length_mm,
            bare_thickness_mm=seam.bare_thickness_mm,
        )

    used, without = interaction(s.free_strip_mm), interaction(seam.height_mm)
    return Finding(
        used,
        1.0,
        lambda: (
            f"Side load and pressure use {used:.2f} of what the seam below the sill carries; without a slot it would be"
            f" {without:.2f}.{_doubt(k, used)}"
        ),
        {
            "p": s.pressure_mpa,
            "f_y": seam.yield_mpa,
            "H": k.c.side_force_n,
            "b": max(0.0, s.free_strip_mm),
            "L": s.length_mm,
            "t_bare": seam.bare_thickness_mm,
        },
        verdict=_judged(k, used),
        also=(("without a slot", without, "–"),),
    )


@check(
    "seam_buckling",
    "Seam buckling between sill and slot",
    formula="p * t_b / t_bare",
    limit_formula="min(K * pi**2 * 210000 / (12 * (1 - 0.3**2)) * (t_1 / b)**2 / 1.5, f_y)",
    unit="MPa",
    source=recomputed(f"Timoshenko & Gere, Theory of Elastic Stability: wide column; {_YIELD}"),
    needs=("car.gross_mass_kg", "seam.bare_thickness_mm", "seam.sheets", "seam.height_mm", "seam.yield_mpa"),
    place="seam_strip",
)
def _seam_buckling(k: Case) -> Finding | Pointless:
    s, seam = k.slot, k.c.seam
    if s.free_strip_mm <= 0:
        return Pointless("The slot guides the seam over its whole height.")
    sheet = seam.bare_thickness_mm / seam.sheets
    guided = buckling_stress_mpa(sheet_mm=sheet, strip_mm=s.free_strip_mm, k=K_GUIDED)
    free = buckling_stress_mpa(sheet_mm=sheet, strip_mm=seam.height_mm, k=K_FREE)
    limit = min(guided / 1.5, seam.yield_mpa)
    stress = s.pressure_mpa * seam.edge_thickness_mm / seam.bare_thickness_mm
    return Finding(
        stress,
        limit,
        lambda: (
            f"Each sheet carries {stress:.0f} MPa between sill and slot, up to {limit:.0f} MPa is allowed. It would buckle at"
            f" {guided:.0f} MPa in this slot and at {free:.0f} MPa without one, before the steel's yield caps both."
            f"{_doubt(k, stress / limit)}"
        ),
        {
            "p": s.pressure_mpa,
            "t_b": seam.edge_thickness_mm,
            "t_bare": seam.bare_thickness_mm,
            "K": K_GUIDED,
            "t_1": sheet,
            "b": s.free_strip_mm,
            "f_y": seam.yield_mpa,
        },
        verdict=_judged(k, stress / limit),
        also=(("critical stress in this slot", guided, "MPa"), ("critical stress without a slot", free, "MPa")),
    )
