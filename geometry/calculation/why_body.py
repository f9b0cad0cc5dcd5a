"""Why web and body are as large as they are, above all those under a seam: what follows “because”."""

from geometry.calculation.told import Phrase, length

BODY: dict[tuple[str, str], Phrase] = {
    ("flats_width_mm", "max(slot + 2 * slot_off + 24, seat + 4)"): lambda b: (
        f"a slot of {b.mm('slot')} needs walls of 12 and a seat of {b.mm('seat')} a lip"
        if b.numbers["slot"] > 0
        else f"a seat of {b.mm('seat')} needs a lip of 2 all round"
    ),
    ("body_diameter_mm", "flats + 4"): lambda b: f"flats {b.mm('flats')} apart are to be wide enough to hold it by",
    ("body_diameter_mm", "slot + 24 + 2 * slot_off"): lambda b: (
        f"a slot of {b.mm('slot')}, {b.mm('slot_off')} off the middle, needs 12 of wall on its thin side"
    ),
    ("body_diameter_mm", "2 * (sqrt((slot_off + relief / 2)**2 + (relief_l / 2)**2) + c_e + 6)"): lambda b: (
        f"a pocket of {b.mm('relief')} by {b.mm('relief_l')} keeps 6 of wall around it"
    ),
    ("body_diameter_mm", "sqrt((L_m + 2 * c_e)**2 + (slot + 2 * slot_off)**2)"): lambda b: (
        f"{b.carried_edge()}, {b.mm('slot_off')} off the middle"
    ),
    ("web_mm", "recess_depth + 5"): lambda b: f"5 must stay over a recess {b.mm('recess_depth')} deep",
    (
        "web_mm",
        "recess_depth + sqrt(6 * P * ((1 + nu) * ln(a / b) + 1 - (1 - nu) * b**2 / (4 * a**2)) / (4 * pi) / sigma_allow)",
    ): lambda b: f"over a recess {b.mm('recess_depth')} deep it must bridge the boss without bending through",
    ("web_mm", "seat_length + relief_d - slot_depth + 4"): lambda b: (
        f"4 of floor must stay under a pocket {b.mm('relief_d')} deep, above a seat of {b.mm('seat_length')}"
    ),
    ("web_mm", "seat - above"): lambda b: (
        f"with {b.mm('above')} above what carries no pad is offered that is taller than its seat of {b.mm('seat')} is wide"
    ),
    ("web_mm", "10"): lambda b: "less under the slot is no web",
    (
        "web_mm",
        "sqrt(6 * P * ((1 + nu) * ln(a / b) + 1 - (1 - nu) * b**2 / (4 * a**2)) / (4 * pi) / sigma_allow)",
    ): lambda b: (
        f"{b.numbers['P']:.0f} N stand over a hole of {length(2 * b.numbers['a'])}, and the web must bridge it"
    ),
    ("web_mm", "(lift + edge - rim_high + cup_depth + u + 2 * u_g) / (1 + g_cold) + tol + tol_par"): lambda b: (
        f"the seam at {b.measured('edge', 'u_g')} must rise {b.mm('lift')} and the jack's rim reaches"
        f" {b.measured('rim_high', 'u_g')}"
    ),
    ("web_mm", "sqrt(3) * q / (2 * sigma_allow)"): lambda b: (
        f"the edge's {b.numbers['q']:.0f} N/mm must not punch through at {b.numbers['sigma_allow']:.1f} MPa"
    ),
    ("web_mm", "(cup_depth + u + 2.0) / (1 + g_cold) + tol + tol_par"): lambda b: (
        f"the cup is {b.measured('cup_depth')} deep, the seam's edge must run 2 above its rim, and {b.cold()}. It may be turned"
        f" {b.mm('tol')} too thin, and the slot's floor may slope by {b.mm('tol_par')}"
    ),
    ("web_mm", "seat_length + max(4, sqrt(3) * q / (2 * sigma_allow))"): lambda b: (
        f"the seat is {b.mm('seat_length')} long and above it the lip must carry the edge's {b.numbers['q']:.0f} N/mm at"
        f" {b.numbers['sigma_allow']:.1f} MPa"
    ),
    (
        "web_mm",
        "seat_length + (1.1 * q + sqrt((1.1 * q)**2 + 5.2 * sigma_allow * q * slot)) / (4 * sigma_allow)",
    ): lambda b: (
        f"the seat is {b.mm('seat_length')} long and above it the lip must not be bent through across a slot of"
        f" {b.mm('slot')} by the edge's {b.numbers['q']:.0f} N/mm"
    ),
    (
        "web_mm",
        "(edge - rim_low + cup_depth - u - 2 * u_g - 5 + obstacle) / (1 + g_hot) - tol - tol_d - tol_par - above",
    ): lambda b: f"the walls must pass under the seam's edge at {b.measured('edge', 'u_g')} as the jack rolls in",
    (
        "web_mm",
        "(edge_flat - rim_low + cup_depth - u - 2 * u_g - 5 + obstacle) / (1 + g_hot) - tol - tol_d - tol_par - above",
    ): lambda b: f"the walls must pass under the seam's edge at {b.measured('edge_flat', 'u_g')} with the tyre flat",
    ("web_mm", "seat_flat - above"): lambda b: f"the pad stays lower than its flat seat of {b.mm('seat_flat')} is wide",
    ("body_diameter_mm", "stock - 2"): lambda b: (
        f"the largest bar to hand is {b.mm('stock')} and 1 is turned off all round"
    ),
    ("body_diameter_mm", "seat + 4"): lambda b: f"the seat is {b.mm('seat')} and a lip of 2 stands out all round",
    ("body_diameter_mm", "slot + 24"): lambda b: (
        f"the slot is {b.mm('slot')} wide and a wall of 12 stands on each side"
    ),
    ("body_diameter_mm", "sqrt((L_m + 2 * c_e)**2 + slot**2)"): lambda b: b.carried_edge(),
}
