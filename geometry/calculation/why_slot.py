"""Why a slot, a second one and a pocket are as large as they are: what follows “because”."""

from geometry.calculation.told import Phrase

SLOT: dict[tuple[str, str], Phrase] = {
    ("slot_offset_mm", "off"): lambda b: f"the seam passes {b.mm('off')} beside the jack's axis",
    ("cross_slot_width_mm", "slot"): lambda b: f"it takes the same seam as the first slot, {b.mm('slot')} wide",
    ("relief_width_mm", "max((t_l + u + bow + 1.0) / (1 + g_cold) + tol, slot + 2 * c_m + 1)"): lambda b: (
        f"the seam's thickest place is {b.measured('t_l')} thick and bowed {b.given('bow')}, and {b.cold()}."
        f" Besides, 1 lets it go in, and the"
        f" pocket must be wider than a slot of {b.mm('slot')}"
    ),
    ("relief_length_mm", "(length_l + u + 6) / (1 + g_cold) + tol"): lambda b: (
        f"the place is {b.measured('length_l')} long, 3 at each end let the jack stand a little off, and {b.cold()}. It may be"
        f" cut {b.mm('tol')} too short"
    ),
    ("relief_depth_mm", "slot_depth + (drop + u + 1.0) / (1 + g_cold) + tol"): lambda b: (
        f"the slot is {b.mm('slot_depth')} deep, {b.mm('drop')} hangs below the seam's edge, 1 is kept free, and {b.cold()}. It"
        f" may be cut {b.mm('tol')} too shallow"
    ),
    ("relief_depth_mm", "slot_depth"): lambda b: f"it is as deep as the slot, {b.mm('slot_depth')}",
    ("slot_width_mm", "(t + u + bow + 0.6) / (1 + g_cold) + tol"): lambda b: (
        f"the seam is {b.measured('t')} thick and bowed {b.given('bow')}, and {b.cold()}."
        f" Besides, 0.6 lets it go in, and the slot may be cut"
        f" {b.mm('tol')} too narrow"
    ),
    ("slot_width_mm", "(t - u + bow + max(2.5, t)) / (1 + g_hot) - tol"): lambda b: (
        f"the seam is {b.measured('t')} thick and bowed {b.given('bow')}, and a wider slot would not keep it upright"
    ),
    ("slot_depth_mm", "0.5 * height"): lambda b: (
        f"half the seam's height of {b.mm('height')} is to be held at its sides"
    ),
    ("slot_depth_mm", "1.0 + c_m"): lambda b: f"1 of wall must guide the seam below a chamfer of {b.mm('c_m')}",
    ("slot_depth_mm", "(clear - u - 3.0) / (1 + g_hot) - tol - tol_par"): lambda b: (
        f"{b.measured('clear')} is free above the seam's edge, 3 is kept between wall and sill, and {b.hot()}."
        f" The slot may be cut"
        f" {b.mm('tol')} too deep, and its floor may slope by {b.mm('tol_par')}"
    ),
    ("slot_corner_radius_mm", "0.3"): lambda b: "a radius of 0.3 keeps the wall's root from cracking",
    ("slot_corner_radius_mm", "0.1"): lambda b: "no end mill leaves a sharper corner",
    ("slot_corner_radius_mm", "((slot - tol_slot) * (1 + g_cold) - t - u - bow) / 2"): lambda b: (
        f"the slot may be {b.mm('tol_slot')} too narrow for a seam of {b.measured('t')}, and its edge must stand flat beside"
        " the radius"
    ),
    ("slot_corner_radius_mm", "0.5"): lambda b: "0.5 is enough for the wall's root",
}
