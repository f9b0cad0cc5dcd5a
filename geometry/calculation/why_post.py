"""Why seat, stem and cross-hole of a pad on a post's bore are what they are."""

from geometry.calculation.told import Phrase
from geometry.feet.post.places import LEAST_CROSS_HOLE

POST: dict[tuple[str, str], Phrase] = {
    ("seat_diameter_mm", "(bore + u + 4) / (1 + g_cold) + 1.4 + tol"): lambda b: (
        f"2 of seat must stand on the rim on each side of a bore of {b.measured('bore')}, and {b.cold()}"
    ),
    ("seat_diameter_mm", "rim_b + u + 3"): lambda b: (
        f"the rim is {b.measured('rim_b')} across, 1 on each side covers it wherever the stem plays, and the corner takes 0.5"
    ),
    ("seat_diameter_mm", "stock - 6"): lambda b: (
        f"the largest bar to hand is {b.mm('stock')}, with a lip of 2 and 1 to turn off all round"
    ),
    ("seat_corner_radius_mm", "0.5"): lambda b: "a broken edge neither chips nor digs into the bore's rim",
    ("seat_corner_radius_mm", "(seat - bore - 4) / 2"): lambda b: (
        f"2 of flat seat face must stay on each side of a bore of {b.mm('bore')}"
    ),
    ("stem_diameter_mm", "(0.90 * bore + u) / (1 + g_cold) + tol"): lambda b: (
        f"it must fill nine tenths of a bore of {b.measured('bore')}, {b.cold()}, and it may be turned {b.mm('tol')} too thin"
    ),
    ("stem_diameter_mm", "(bore - u) / (1 + g_hot) - 0.20 - tol"): lambda b: (
        f"the bore is {b.measured('bore')}, {b.hot()}, 0.2 is kept free, and it may be turned {b.mm('tol')} too thick"
    ),
    ("stem_length_mm", "(0.5 * stem) / (1 + g_cold) + c_e + tol"): lambda b: (
        f"the bore must guide a stem of {b.mm('stem')} over half of its thickness, beside a chamfer of {b.mm('c_e')}"
    ),
    (
        "stem_length_mm",
        "cross_x + cross / 2 + c_e + tol + max(pin, sqrt(3) * H / (1.7 * stem * sigma_allow))",
    ): lambda b: (
        f"a hole of {b.mm('cross')} lies {b.mm('cross_x')} below the seat, and the pin must not tear out of what is below"
    ),
    ("stem_length_mm", "(bore_depth - u - 1.5) / (1 + g_hot) - tol"): lambda b: (
        f"the bore is {b.measured('bore_depth')} deep, and {b.hot()}. Besides, 1.5 is kept free, and it may be turned"
        f" {b.mm('tol')} too long"
    ),
    ("stem_length_mm", "1.5 * stem"): lambda b: (
        f"one and a half times its thickness of {b.mm('stem')} guides as well as anything longer"
    ),
    (
        "stem_length_mm",
        "1.5 * pi * stem**3 / (32 * H) * sqrt(max(0, sigma_allow**2 - 3 * (4 * H / (pi * stem**2))**2))",
    ): lambda b: f"a side load of {b.numbers['H']:.0f} N at the end of a longer stem would bend it too far at the seat",
    ("cross_hole_diameter_mm", LEAST_CROSS_HOLE): lambda b: (
        f"the pin is {b.measured('pin')} thick and {b.measured('pin_x')} below the bore's rim, the stem sinks by up to"
        f" {b.mm('sink')} and plays {b.mm('play')}. Besides, hole and place have their tolerances, and the pin must never carry"
    ),
    ("cross_hole_diameter_mm", "stem / 2"): lambda b: f"half of a stem of {b.mm('stem')} must stay beside it",
    ("cross_hole_diameter_mm", "2 * (pin_x - 2)"): lambda b: (
        f"2 of stem must stay between it and the seat, the pin being {b.mm('pin_x')} below the bore's rim"
    ),
    ("cross_hole_distance_mm", "pin_x"): lambda b: f"the pin lies {b.measured('pin_x')} below the bore's rim",
    ("web_mm", "sqrt(3) * P / (pi * bore * sigma_allow)"): lambda b: (
        f"{b.numbers['P']:.0f} N stand over a bore of {b.mm('bore')} and must not punch through"
    ),
    ("web_mm", "rim_b - above"): lambda b: (
        f"with {b.mm('above')} above what carries no pad is offered that is taller than its rim of {b.mm('rim_b')} is wide"
    ),
}
"""For every bound of a post, what follows “because”; keyed by dimension and formula."""
