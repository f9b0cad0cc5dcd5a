"""A boss on the cup's floor, such as a bolt head: the seat face gets a recess over it."""

from geometry.bound_rules import bound
from geometry.case import Case
from geometry.draft import Draft
from geometry.provenance import derived, recomputed
from geometry.rules import Finding, Numbers, Pointless, check
from geometry.seat import disc_thickness_mm
from geometry.told import mm

LEAST_BOSS_GAP_MM = 0.5
LEAST_FACE_MM = 3.0
"""Ring of seat face that must stay around the recess."""
_FIT = derived("Worst case of measurement, growth, play and turning tolerance (ISO 2768-1 m)")
_NEEDS = ("jack.floor_boss_diameter_mm", "jack.floor_boss_height_mm", "jack.cup_bore_mm", "make.measured_with")


def _boss(d: Draft) -> Numbers:
    c = d.c
    return {
        "boss_d": c.foot.boss_diameter_mm,
        "boss": c.foot.boss_height_mm,
        "u": c.u,
        "g_hot": c.g_hot,
        "g_cold": c.g_cold,
        "tol": d.tol,
        "play": d.worst_seat_play_mm,
        "squash": d.squash_mm,
        "seat_flat": d.seat_flat_diameter_mm,
    }


@bound(
    "seat_recess_diameter_mm",
    "lower",
    "The recess clears the boss on all sides wherever the seat's play lets the pad stand.",
    formula="(boss_d + u + play + 1.0) / (1 + g_cold) + tol",
    source=_FIT,
    needs=_NEEDS,
    numbers=_boss,
)
def _recess_clears_the_boss(d: Draft) -> float | None:
    cup = d.c.foot
    if cup.boss_height_mm <= 0:
        return None
    return (cup.boss_diameter_mm + d.c.u + d.worst_seat_play_mm + 1.0) / (1 + d.c.g_cold) + d.tol


@bound(
    "seat_recess_diameter_mm",
    "upper",
    "A ring of seat face 3 mm wide stays around the recess.",
    formula="seat_flat - 6 - tol",
    source=derived("Least face that can be turned and measured"),
    needs=_NEEDS,
    numbers=_boss,
)
def _face_stays_around_the_recess(d: Draft) -> float:
    return d.seat_flat_diameter_mm - 2 * LEAST_FACE_MM - d.tol


@bound(
    "seat_recess_depth_mm",
    "lower",
    "The pad never stands on the boss, even cold and squashed under the load.",
    formula="(boss + u + 1.0 + squash) / (1 + g_cold) + tol",
    source=_FIT,
    needs=_NEEDS[1:],
    numbers=_boss,
)
def _recess_is_deep_enough(d: Draft) -> float | None:
    if d.seat_recess_diameter_mm <= 0:
        return None
    return (d.c.foot.boss_height_mm + d.c.u + 1.0 + d.squash_mm) / (1 + d.c.g_cold) + d.tol


@bound(
    "web_mm",
    "lower",
    "Over the recess the web still bridges the boss without bending through.",
    formula="recess_depth + sqrt(6 * P * ((1 + nu) * ln(a / b) + 1 - (1 - nu) * b**2 / (4 * a**2)) / (4 * pi) / sigma_allow)",
    source=recomputed("Disc on a ring: Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, art. 19"),
    needs=(*_NEEDS[:2], "car.gross_mass_kg", "make.material"),
    numbers=lambda d: {
        "recess_depth": d.seat_recess_depth_mm,
        "P": d.edge_force_n_per_mm * min(d.seat_recess_diameter_mm, d.loaded_length_mm),
        "a": d.seat_recess_diameter_mm / 2,
        "b": d.seat_recess_diameter_mm / 4,
        "nu": 0.4,
        "sigma_allow": d.c.allowable_mpa,
    },
)
def _web_bridges_the_recess(d: Draft) -> float | None:
    recess = d.seat_recess_diameter_mm
    if recess <= 0 or d.edge_force_n_per_mm <= 0:
        return None
    return d.seat_recess_depth_mm + disc_thickness_mm(
        force_n=d.edge_force_n_per_mm * min(recess, d.loaded_length_mm),
        support_radius_mm=recess / 2,
        patch_radius_mm=recess / 4,
        stress_mpa=d.c.allowable_mpa,
    )


@bound(
    "web_mm",
    "lower",
    "At least 5 mm of web stays over the recess.",
    formula="recess_depth + 5",
    source=derived("Least web worth trusting over a hollow; shear and bending ask for more where the load is high"),
    needs=("jack.floor_boss_height_mm",),
    numbers=lambda d: {"recess_depth": d.seat_recess_depth_mm},
)
def _web_stays_over_the_recess(d: Draft) -> float | None:
    return d.seat_recess_depth_mm + 5.0 if d.seat_recess_diameter_mm > 0 else None


@check(
    "boss_clear",
    "Boss free in its recess",
    formula="(recess - tol) * (1 + g_cold) - boss_d - u - play",
    limit_formula="0.5",
    unit="mm",
    sense="at_least",
    source=_FIT,
    needs=_NEEDS,
    place="seat",
)
def _boss_clear(k: Case) -> Finding | Pointless:
    c, pad, cup = k.c, k.pad, k.c.foot
    if cup.boss_height_mm <= 0:
        return Pointless("Nothing stands on the cup's floor.")
    tol, tol_d = k.tolerance_mm("seat_recess_diameter_mm"), k.tolerance_mm("seat_recess_depth_mm")
    side = (pad.seat_recess_diameter_mm - tol) * (1 + c.g_cold) - cup.boss_diameter_mm - c.u - max(0.0, k.foot.play_mm)
    above = (pad.seat_recess_depth_mm - tol_d) * (1 + c.g_cold) - cup.boss_height_mm - c.u - k.foot.squash_mm
    numbers = {
        "recess": pad.seat_recess_diameter_mm,
        "recess_depth": pad.seat_recess_depth_mm,
        "tol": tol if side <= above else tol_d,
        "g_cold": c.g_cold,
        "boss_d": cup.boss_diameter_mm,
        "boss": cup.boss_height_mm,
        "u": c.u,
        "play": max(0.0, k.foot.play_mm),
        "squash": k.foot.squash_mm,
    }
    if side <= above:
        return Finding(
            side,
            LEAST_BOSS_GAP_MM,
            lambda: f"Beside the boss the recess leaves {mm(side, '.2f')} at worst; {mm(LEAST_BOSS_GAP_MM)} is needed.",
            numbers,
        )
    return Finding(
        above,
        LEAST_BOSS_GAP_MM,
        lambda: f"Above the boss the recess leaves {mm(above, '.2f')} at worst; {mm(LEAST_BOSS_GAP_MM)} is needed.",
        numbers,
        formula="(recess_depth - tol) * (1 + g_cold) - boss - u - squash",
    )
