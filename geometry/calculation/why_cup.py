"""Why seat, recess and stem of a pad in a cup are as large as they are: what follows “because”."""

from geometry.calculation.told import Phrase

CUP: dict[tuple[str, str], Phrase] = {
    ("seat_diameter_mm", "(0.90 * cup_bore + u) / (1 + g_cold) + tol"): lambda b: (
        f"it must fill nine tenths of a cup of {b.measured('cup_bore')}, {b.cold()}, and it may be turned {b.mm('tol')} too"
        " small"
    ),
    ("seat_diameter_mm", "(cup_bore - u) / (1 + g_hot) - 0.20 - tol"): lambda b: (
        f"the cup is {b.measured('cup_bore')}, {b.hot()}, 0.2 is kept free, and it may be turned {b.mm('tol')} too large"
    ),
    ("seat_corner_radius_mm", "cup_corner + u + tol"): lambda b: (
        f"the cup's corner is {b.measured('cup_corner')} and the pad's may come out {b.mm('tol')} too sharp"
    ),
    ("seat_corner_radius_mm", "min(seat / 4, (seat - hole - 6) / 2)"): lambda b: (
        f"a seat of {b.mm('seat')} must keep a flat face"
    ),
    ("seat_recess_diameter_mm", "(boss_d + u + play + 1.0) / (1 + g_cold) + tol"): lambda b: (
        f"the boss on the cup's floor is {b.measured('boss_d')} wide, the seat may play {b.mm('play')}, and {b.cold()}."
        f" Besides, 1 is kept"
        f" free, and it may be turned {b.mm('tol')} too narrow"
    ),
    ("seat_recess_diameter_mm", "seat_flat - 6 - tol"): lambda b: (
        f"3 of face must stay on each side of a flat of {b.mm('seat_flat')}"
    ),
    ("seat_recess_depth_mm", "(boss + u + 1.0 + squash) / (1 + g_cold) + tol"): lambda b: (
        f"the boss stands {b.measured('boss')} high, the load squashes the seat by {b.mm('squash')}, and {b.cold()}."
        f" Besides, 1 is kept"
        f" free, and it may be turned {b.mm('tol')} too shallow"
    ),
    ("seat_length_mm", "r + 1"): lambda b: f"it must be 1 longer than its corner radius of {b.mm('r')}",
    ("seat_length_mm", "(cup_depth + u + 0.5 + squash) / (1 + g_cold) + tol + tol_run"): lambda b: (
        f"the cup is {b.measured('cup_depth')} deep, the load squashes the seat by {b.mm('squash')}, and {b.cold()}."
        f" Besides, 0.5 keeps the"
        f" lip off the rim, it may be turned {b.mm('tol')} too short, and its lip may run out by {b.mm('tol_run')}"
    ),
    ("stem_diameter_mm", "6"): lambda b: "a thinner stem breaks off in the hand",
    ("stem_diameter_mm", "(hole - u) / (1 + g_hot) - tol - play - 1.0"): lambda b: (
        f"the hole is {b.measured('hole')}, the seat may play {b.mm('play')} in the cup, and {b.hot()}."
        f" Besides, 1 is kept free, and it may"
        f" be turned {b.mm('tol')} too thick"
    ),
    ("stem_length_mm", "5"): lambda b: "a shorter stem retains nothing",
    ("stem_length_mm", "(hole_depth - u - 1.5) / (1 + g_hot) - tol"): lambda b: (
        f"the hole is {b.measured('hole_depth')} deep, and {b.hot()}."
        f" Besides, 1.5 is kept free, and it may be turned {b.mm('tol')} too long"
    ),
    ("stem_length_mm", "stem"): lambda b: f"a stem longer than its {b.mm('stem')} of thickness only breaks sooner",
}
