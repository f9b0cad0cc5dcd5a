"""Why a skirt, and the seat and body around it, are as large as they are: what follows “because”."""

from geometry.calculation.told import Phrase

_WALL = "max(6, sqrt(V_s * (3 * V_s + sqrt(9 * V_s**2 + (31.2 * sigma_s * skirt_l)**2)) / 2) / sigma_s)"

SKIRT: dict[tuple[str, str], Phrase] = {
    ("seat_diameter_mm", "sqrt(4 * F_d / (pi * sigma_allow) + hole**2) + 1.0"): lambda b: (
        f"{b.numbers['F_d']:.0f} N are to press it with no more than {b.numbers['sigma_allow']:.1f} MPa"
    ),
    ("seat_diameter_mm", "around - u - 4.0 - tol"): lambda b: (
        f"the skirt goes around {b.measured('around')}, a groove of 2 is cut inside it, and the seat may be turned {b.mm('tol')}"
        " too large"
    ),
    ("seat_diameter_mm", "hole + 7.0"): lambda b: (
        f"3 of face and a broken edge must stay around a hole of {b.mm('hole')}"
        if b.numbers["hole"]
        else "less than 7 across is no seat"
    ),
    ("seat_diameter_mm", "around - 2 * tip_w + 3.0"): lambda b: (
        f"it must reach 1 over tips {b.mm('tip_w')} wide, {b.mm('around')} across their outside"
    ),
    ("seat_corner_radius_mm", "0.50"): lambda b: "a broken edge neither cuts nor chips",
    ("seat_corner_radius_mm", "(seat - hole) / 4"): lambda b: (
        f"half the width of a face from {b.mm('hole')} to {b.mm('seat')} must stay flat"
    ),
    ("seat_length_mm", "2.0"): lambda b: "a burred edge and grit are to lie free in the groove around it",
    ("skirt_bore_mm", "(around + u + 0.3) / (1 + g_cold) + tol"): lambda b: (
        f"it goes around {b.measured('around')}, {b.cold()}, 0.3 is kept free, and it may be turned {b.mm('tol')} too narrow"
    ),
    ("skirt_bore_mm", "(1.10 * around - u) / (1 + g_hot) - tol"): lambda b: (
        f"it may play by a tenth around {b.measured('around')}, {b.hot()}, and it may be turned {b.mm('tol')} too wide"
    ),
    ("skirt_length_mm", "seat_length + 4.0 / (1 + g_cold) + tol + tol_s"): lambda b: (
        f"it must reach 4 further down than a seat of {b.mm('seat_length')}, and {b.cold()}. It may be turned {b.mm('tol')} too"
        f" short, and the seat {b.mm('tol_s')} too long"
    ),
    ("skirt_length_mm", "seat_length + (free - u - 2.0) / (1 + g_hot) - tol - tol_s"): lambda b: (
        f"{b.measured('free')} is free below the seat's face, 2 is kept clear, and {b.hot()}. It may be turned {b.mm('tol')} too"
        f" long, and the seat {b.mm('tol_s')} too short"
    ),
    ("skirt_length_mm", "seat_length + 8"): lambda b: (
        f"8 further down than a seat of {b.mm('seat_length')} locates well, and a longer one only bends more"
    ),
    ("body_diameter_mm", f"skirt + 2 * {_WALL}"): lambda b: (
        f"the wall of a skirt {b.mm('skirt')} wide and {b.mm('skirt_l')} long must take {b.numbers['V_s']:.1f} N on each mm of"
        f" its width at {b.numbers['sigma_s']:.1f} MPa"
    ),
    ("flats_width_mm", f"skirt + 2 * {_WALL}"): lambda b: (
        f"the flats must leave as much wall on a skirt of {b.mm('skirt')} as the side load needs"
    ),
    ("web_mm", f"seat_length + {_WALL}"): lambda b: (
        f"above a seat of {b.mm('seat_length')} the body must be as thick as the skirt's wall that hangs from it"
    ),
}
"""Keyed by dimension and formula."""
