"""Why a cushion and a plug are as large as they are: what follows “because” for the bounds of both."""

from collections.abc import Mapping
from types import MappingProxyType

from geometry.calculation.told import Phrase

_PLUG: dict[tuple[str, str], Phrase] = {
    ("plug_length_mm", "(l_h - u) / (1 + g_hot) - 1.0 - tol"): lambda b: (
        f"the hole is {b.measured('l_h')} long, {b.hot()}, 1 is kept free, and it may be made {b.mm('tol')} too large"
    ),
    ("plug_length_mm", "(l_h + u - max(3, 0.15 * l_h)) / (1 + g_cold) + tol"): lambda b: (
        f"the hole is {b.measured('l_h')} long and must still locate the plug where {b.cold()}"
    ),
    ("plug_length_mm", "plug_w"): lambda b: f"a round plug is as long as its width of {b.mm('plug_w')}",
    ("plug_width_mm", "(w_h - u) / (1 + g_hot) - 1.0 - tol"): lambda b: (
        f"the hole is {b.measured('w_h')} wide, {b.hot()}, 1 is kept free, and it may be made {b.mm('tol')} too large"
    ),
    ("plug_width_mm", "(w_h + u - max(3, 0.15 * w_h)) / (1 + g_cold) + tol"): lambda b: (
        f"the hole is {b.measured('w_h')} wide and must still locate the plug where {b.cold()}"
    ),
    ("plug_width_mm", "plug_l"): lambda b: f"a round plug is as wide as its length of {b.mm('plug_l')}",
    ("plug_height_mm", "(d_h - u - 2.0) / (1 + g_hot) - tol"): lambda b: (
        f"the hole is {b.measured('d_h')} deep, {b.hot()}, 2 is kept free above it, and it may be made {b.mm('tol')} too tall"
    ),
    ("plug_height_mm", "max(8 + c_e, 0.4 * min(plug_w, plug_l))"): lambda b: (
        "a taller plug only bends more and passes harder under the car"
    ),
    (
        "plug_height_mm",
        "(edge - rim_low + cup_depth - u - 2 * u_g - 5 + obstacle) / (1 + g_hot) - seat_length - 6",
    ): lambda b: f"the web needs room under a rim at {b.measured('edge', 'u_g')} as the jack rolls in",
    ("plug_height_mm", "seat - seat_length - 6"): lambda b: (
        f"the web needs room in a pad no taller than its seat of {b.mm('seat')} is wide"
    ),
    ("plug_height_mm", "(4 + c_e) / (1 + g_cold) + tol"): lambda b: (
        f"4 of it must stand in the hole beyond a chamfer of {b.mm('c_e')}"
    ),
    ("plug_height_mm", "0.3 * min(plug_w, plug_l)"): lambda b: "three tenths of its width keep a car that swings",
    ("plug_corner_radius_mm", "r_h + u + tol"): lambda b: (
        f"the hole's corner is {b.measured('r_h')} and the plug's may come out {b.mm('tol')} too sharp"
    ),
    ("plug_corner_radius_mm", "min(plug_w, plug_l) / 2"): lambda b: (
        "the plug's ends are half circles, as the hole's are"
    ),
    (
        "body_diameter_mm",
        "2 * (plug_r + sqrt((plug_w / 2 - plug_r)**2 + (plug_l / 2 - plug_r)**2)) + 3 + 2 * c_e",
    ): lambda b: "1.5 of flat shoulder must stand beyond the plug's corners",
    ("body_diameter_mm", "min(w_h, l_h) + play_h + 4 + 2 * c_e"): lambda b: (
        f"2 of shoulder must stand under each side of the rim where the plug has moved by its play of {b.mm('play_h')}"
    ),
    (
        "body_diameter_mm",
        "2 * (r_h + sqrt((w_h / 2 - r_h)**2 + (l_h / 2 - r_h)**2)) + 4 + 2 * c_e",
    ): lambda b: "the shoulder stands under the hole's whole edge",
    ("flats_width_mm", "max(plug_w + 3, w_h + play_h + 4) + 2 * c_e"): lambda b: (
        f"a hole {b.mm('w_h')} wide needs a shoulder on both sides between the flats, too"
    ),
}
"""Of a plug and its shoulder."""
FACE_PHRASES: "Mapping[tuple[str, str], Phrase]" = MappingProxyType(
    {
        ("web_mm", "seat_length + 4"): lambda b: (
            f"the seat is {b.mm('seat_length')} long and a lip of 4 must stand above it"
        ),
        ("web_mm", "seat_length + sqrt(3) * V_l / sigma_allow"): lambda b: (
            f"the seat is {b.mm('seat_length')} long and above it the lip must take {b.numbers['V_l']:.0f} N/mm in shear at"
            f" {b.numbers['sigma_allow']:.1f} MPa"
        ),
        ("web_mm", "seat_length + sqrt(6 * M_l / sigma_allow)"): lambda b: (
            f"the seat is {b.mm('seat_length')} long and above it the lip must take {b.numbers['M_l']:.0f} N of bending per"
            f" length at {b.numbers['sigma_allow']:.1f} MPa"
        ),
        ("web_mm", "(cup_depth + u + 1.0 + delta + squash) / (1 + g_cold) + tol + tol_par"): lambda b: (
            f"the cup is {b.measured('cup_depth')} deep, the load takes {b.mm('delta')} and {b.mm('squash')} off the height, and"
            f" the car's face must stay 1 above the cup's rim"
        ),
        ("web_mm", "min(body - 2 * c_e, w_f, l_f) / 4 * sqrt(2 / (F_d / (A * E_0 * eps) - 1))"): lambda b: (
            f"a taller pad would give way by more than {100 * b.numbers['eps']:g} %"
        ),
        ("body_diameter_mm", "D_p + 2 * c_e"): lambda b: (
            f"a top of {b.mm('D_p')} carries what lies on it well below its limit, or as much of it as fits"
        ),
        **_PLUG,
    }
)
"""Keyed by dimension and formula."""
