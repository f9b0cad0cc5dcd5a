"""What every symbol of every formula means, and its unit; one table for sheets, pages and tests."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class Symbol:
    """One symbol in plain words."""

    meaning: str
    unit: str
    """Empty for a plain ratio or a count."""


_MM, _N, _MPA, _DEG = "mm", "N", "MPa", "°"

_MEASURED = {
    "cup_bore": Symbol("cup bore", _MM),
    "cup_depth": Symbol("cup depth", _MM),
    "cup_corner": Symbol("corner radius of the cup", _MM),
    "rim_d": Symbol("outside diameter of the cup's rim", _MM),
    "hole": Symbol("stem hole in the cup's floor, 0 for none", _MM),
    "hole_depth": Symbol("depth of the stem hole", _MM),
    "bore": Symbol("bore for the post", _MM),
    "bore_depth": Symbol("depth of the bore for the post", _MM),
    "rim_b": Symbol("outside diameter of that bore's rim", _MM),
    "pin": Symbol("diameter of the retaining pin", _MM),
    "pin_x": Symbol("retaining pin below the bore's rim", _MM),
    "around": Symbol("outside diameter of the plate", _MM),
    "free": Symbol("free height of the plate's edge", _MM),
    "n_t": Symbol("number of teeth", ""),
    "tip_l": Symbol("length of a tooth's tip, around the ring", _MM),
    "tip_w": Symbol("width of a tooth's tip, from the inside outwards", _MM),
    "boss": Symbol("height of a boss on the cup's floor", _MM),
    "boss_d": Symbol("width of that boss", _MM),
    "m_r": Symbol("the jack's rated load, as a mass", "kg"),
    "rim_low": Symbol("rim above ground, jack down", _MM),
    "rim_high": Symbol("rim above ground, jack up", _MM),
    "tilt": Symbol("tilt of the saddle", _DEG),
    "t": Symbol("thickness of the seam with paint and sealer", _MM),
    "n_s": Symbol("sheets in the seam", ""),
    "t_bare": Symbol("steel in the seam", _MM),
    "t_b": Symbol("steel at the seam's lowest edge", _MM),
    "f_y": Symbol("yield of the seam's steel", _MPA),
    "height": Symbol("height of the seam below the sill", _MM),
    "straight": Symbol("straight, unbroken length of the seam", _MM),
    "bow": Symbol("bow of the seam over the pad", _MM),
    "edge": Symbol("seam's edge above ground", _MM),
    "edge_flat": Symbol("seam's edge above ground with a flat tyre", _MM),
    "clear_out": Symbol("clear height outboard of the seam", _MM),
    "clear_in": Symbol("clear height inboard of the seam", _MM),
    "roll_in": Symbol("lowest thing on the way in, above (+) or below (−) the seam's edge", _MM),
    "off": Symbol("distance of the seam from the jack's axis", _MM),
    "t_l": Symbol("thickness of the seam at its thickest place", _MM),
    "drop": Symbol("how far something hangs below the seam's edge", _MM),
    "length_l": Symbol("length of the place where the seam is not plain", _MM),
    "w_f": Symbol("width of the car's face", _MM),
    "l_f": Symbol("length of the car's face", _MM),
    "w_h": Symbol("width of the hole", _MM),
    "l_h": Symbol("length of the hole", _MM),
    "r_h": Symbol("corner radius of the hole", _MM),
    "d_h": Symbol("depth of the hole", _MM),
    "w_r": Symbol("width of the flat rim around the hole", _MM),
    "clear_b": Symbol("room beside the car's face, above its level", _MM),
    "m": Symbol("greatest permitted mass of the car", "kg"),
    "m_s": Symbol("stated load, as a mass", "kg"),
    "f_front": Symbol("share of the mass on the front axle", ""),
    "base": Symbol("wheelbase", _MM),
    "track": Symbol("track", _MM),
    "x_j": Symbol("lifting point behind the front axle", _MM),
    "s_j": Symbol("lifting point from the centre line", _MM),
    "e_cg": Symbol("centre of gravity off the centre line, towards the jacked side", _MM),
    "f_ride": Symbol("ride frequency", "Hz"),
    "lift": Symbol("rise of the seam that is wanted", _MM),
    "T_low": Symbol("lowest temperature", "°C"),
    "T_high": Symbol("highest temperature", "°C"),
    "u": Symbol("uncertainty of measurements of cup and seam", _MM),
    "u_g": Symbol("uncertainty of heights above ground", _MM),
    "stock": Symbol("diameter of the bar that the pad is turned from", _MM),
    "d_c": Symbol("diameter of the end mill", _MM),
}

_PAD = {
    "seat": Symbol("seat diameter", _MM),
    "r": Symbol("corner radius of the seat", _MM),
    "seat_length": Symbol("seat length", _MM),
    "skirt": Symbol("inside diameter of the skirt", _MM),
    "skirt_l": Symbol("length of the skirt", _MM),
    "t_s": Symbol("wall of the skirt", _MM),
    "tol_s": Symbol("general tolerance of the seat's length", _MM),
    "recess": Symbol("diameter of the recess in the seat face", _MM),
    "recess_depth": Symbol("depth of the recess in the seat face", _MM),
    "stem": Symbol("stem diameter", _MM),
    "length": Symbol("stem length", _MM),
    "cross": Symbol("diameter of the hole through the stem", _MM),
    "cross_x": Symbol("hole through the stem below the seat face", _MM),
    "tol_x": Symbol("general tolerance of that distance", _MM),
    "body": Symbol("body diameter", _MM),
    "flats": Symbol("width across the flats", _MM),
    "slot": Symbol("slot width", _MM),
    "slot_off": Symbol("distance of the slot from the pad's axis", _MM),
    "slot_2": Symbol("width of the second slot", _MM),
    "relief": Symbol("width of the pocket in the slot", _MM),
    "relief_l": Symbol("length of the pocket in the slot", _MM),
    "relief_d": Symbol("depth of the pocket in the slot", _MM),
    "above": Symbol("height of the pad above what carries the car", _MM),
    "slot_depth": Symbol("slot depth", _MM),
    "web": Symbol("web, the floor under the slot", _MM),
    "r_f": Symbol("radius between wall and floor of the slot", _MM),
    "c_m": Symbol("chamfer of the slot's mouth", _MM),
    "plug_w": Symbol("width of the plug", _MM),
    "plug_l": Symbol("length of the plug", _MM),
    "plug_h": Symbol("height of the plug", _MM),
    "plug_r": Symbol("radius of the plug's corners", _MM),
    "c_e": Symbol("chamfer of the outer edges", _MM),
    "tol": Symbol("general tolerance", _MM),
    "tol_w": Symbol("general tolerance of the web", _MM),
    "tol_d": Symbol("general tolerance of the slot's depth", _MM),
    "tol_slot": Symbol("general tolerance of the slot's width", _MM),
    "tol_sym": Symbol("zone of the slot's symmetry to the seat's axis", _MM),
    "tol_par": Symbol("parallelism of the slot's floor to the seat face", _MM),
    "tol_run": Symbol("run-out of the lip's face about the seat's axis", _MM),
}

_MATERIAL = {
    "alpha": Symbol("thermal expansion", "1/K"),
    "s_w": Symbol("growth for each per cent of water", "1/%"),
    "w_u": Symbol("water taken up since machining", "%"),
    "k_T": Symbol("softening with temperature", "1/K"),
    "f_T": Symbol("share of strength and stiffness left in the heat", ""),
    "f_w": Symbol("share of strength and stiffness left by water", ""),
    "sigma_hold": Symbol("stress allowed for the time the load stays, at 23 °C", _MPA),
    "sigma_min": Symbol("stress allowed for minutes, at 23 °C", _MPA),
    "sigma_allow": Symbol("stress allowed in this case", _MPA),
    "E_min": Symbol("modulus for minutes, at 23 °C", _MPA),
    "E_hold": Symbol("modulus left in this case", _MPA),
    "f_z": Symbol("share of the stress allowed in a slot wall across printed layers, 1 for solid stock", ""),
    "E_0": Symbol("modulus at small strain in this case, before shape adds to it", _MPA),
    "eps": Symbol("compression allowed for the time the load stays, as a ratio", ""),
    "T_max": Symbol("greatest temperature of the material", "°C"),
    "mu": Symbol("assumed friction of the seam on the slot's floor", ""),
    "nu": Symbol("Poisson's ratio of the material", ""),
    "g_hot": Symbol("growth at the hottest and wettest", ""),
    "g_cold": Symbol("growth at the coldest, dry", ""),
}

_LOAD = {
    "W": Symbol("weight of the car", _N),
    "F": Symbol("greatest force at the lifting point", _N),
    "F_d": Symbol("design force", _N),
    "H": Symbol("side load at the top of the walls", _N),
    "F_M": Symbol("greatest force by moments, whatever the springs", _N),
    "x_cg": Symbol("centre of gravity behind the front axle", _MM),
    "delta_s": Symbol("static deflection of the springs", _MM),
    "N_1": Symbol("load of the front near wheel, standing", _N),
    "N_2": Symbol("load of the front far wheel, standing", _N),
    "N_3": Symbol("load of the rear near wheel, standing", _N),
    "N_4": Symbol("load of the rear far wheel, standing", _N),
    "phi": Symbol("lean of the car at the wanted lift, in radians", "rad"),
    "lean": Symbol("lean of the car at the wanted lift", _DEG),
    "pitch": Symbol("pitch of the car at the wanted lift", _DEG),
    "z_1": Symbol("rise of the row of the curve below the wanted lift", _MM),
    "z_2": Symbol("rise of the row of the curve above the wanted lift", _MM),
    "roll_1": Symbol("roll in the row below", _DEG),
    "roll_2": Symbol("roll in the row above", _DEG),
    "pitch_1": Symbol("pitch in the row below", _DEG),
    "pitch_2": Symbol("pitch in the row above", _DEG),
    "rim_needed": Symbol("rim above ground at the wanted lift", _MM),
}

_BETWEEN = {
    "clear": Symbol("least clear height above the seam's edge", _MM),
    "obstacle": Symbol("what hangs below the seam's edge on the way in, 0 or negative", _MM),
    "t_1": Symbol("thickness of one sheet", _MM),
    "h": Symbol("height, seat face to wall top", _MM),
    "seat_flat": Symbol("flat circle of the seat face", _MM),
    "R": Symbol("radius of the flat seat face", _MM),
    "A": Symbol("area of the seat face", "mm²"),
    "play": Symbol("largest play of the seat in the cup, on the diameter", _MM),
    "e_F": Symbol("distance of the load from the middle of the seat", _MM),
    "k_e": Symbol("pressure at the seat's edge over the mean", ""),
    "V_s": Symbol(
        "side load on each mm of the skirt's width that bends: H over half its bore or 1.9 of its lengths", "N/mm"
    ),
    "sigma_s": Symbol("peak stress that the skirt's root may see", _MPA),
    "reach": Symbol("width of a tooth's tip under the flat of the seat", _MM),
    "R_t": Symbol("radius of the ring of tips that carry", _MM),
    "squash": Symbol("shortening of the seat under load", _MM),
    "sink": Symbol("how far the stem sinks into the bore under load", _MM),
    "L": Symbol("length of seam edge that carries", _MM),
    "L_w": Symbol("length of wall that takes the side load", _MM),
    "web_f": Symbol("floor under the slot where it is thinnest", _MM),
    "L_m": Symbol("length of seam edge that leaves no lasting mark; as much of it as fits", _MM),
    "p": Symbol("pressure of the seam's edge", _MPA),
    "c_u": Symbol("support by the floor around the edge, cutting in", ""),
    "c_2": Symbol("support by the floor around the edge, marking", ""),
    "p_u": Symbol("pressure at which the edge is taken to cut in, with its factor", _MPA),
    "q": Symbol("force per length that the floor passes on", "N/mm"),
    "delta": Symbol("how far the edge sinks into the floor under load", _MM),
    "e": Symbol("mean thickness of a slot wall", _MM),
    "K_t": Symbol("fillet factor at the root of a slot wall", ""),
    "b": Symbol("free height of the seam between sill and slot", _MM),
    "K": Symbol("buckling factor of a strip guided at both ends", ""),
    "P": Symbol("force on the web over the hole or recess", _N),
    "a": Symbol("radius of the hole or recess", _MM),
    "sigma_1": Symbol("critical stress of one sheet in this slot", _MPA),
    "sigma_0": Symbol("critical stress of one sheet without a slot", _MPA),
    "n_0": Symbol("share of what the seam carries that would be used without a slot", ""),
    "A_p": Symbol("the plug's level cut", "mm²"),
    "play_h": Symbol("play of the plug in its hole", _MM),
    "V_l": Symbol("force that the lip beyond the seat passes on, per length of the seat's edge", "N/mm"),
    "M_l": Symbol("moment that it passes on, per length of the seat's edge", _N),
    "D_p": Symbol("diameter of a top that carries the load well below its limit; as much of it as fits", _MM),
    "S": Symbol("shape factor: loaded area over the free surface around it", ""),
    "e_c": Symbol("how far off the pad's middle the car's face may arrive", _MM),
    "w_c": Symbol("how wide the car's face and the pad meet", _MM),
    "p_p": Symbol("edge pressure at the more loaded end if the saddle does not follow", _MPA),
}

SYMBOLS: Mapping[str, Symbol] = MappingProxyType(_MEASURED | _PAD | _MATERIAL | _LOAD | _BETWEEN)
"""Every symbol with the meaning that it has unless a rule gives it another."""

_PATCH = Symbol("radius of the loaded patch, half the hole's radius", _MM)
_MET = Symbol("area where the car's face and the pad meet", "mm²")
_LAYERS = Symbol("share of the stress allowed in a plug across printed layers, 1 for solid stock", "")
_LOOSE_ACROSS = Symbol("largest play of the plug across the hole's smaller side", _MM)
_TIGHTER_HOLE = Symbol("hole, the way in which the plug is tighter", _MM)
_TIGHTER_PLUG = Symbol("plug in that way, of a round hole where it is widest", _MM)
_LOOSER_HOLE = Symbol("hole, the way in which the plug is looser", _MM)
_LOOSER_PLUG = Symbol("plug in that way", _MM)
LOCAL: Mapping[str, Mapping[str, Symbol]] = MappingProxyType(
    {
        "web_bending": {"b": _PATCH},
        "web_mm": {"b": _PATCH, "A": _MET},
        "seam_lean": {"play": Symbol("smallest play of the seam in the slot", _MM)},
        "plug_shoulder_bearing": {"A": _MET},
        "plug_fit_tight": {"w_h": _TIGHTER_HOLE, "plug_w": _TIGHTER_PLUG},
        "plug_fit_loose": {"w_h": _LOOSER_HOLE, "plug_w": _LOOSER_PLUG},
        "plug_corner_clear": {"play_h": Symbol("smallest play of the plug in its hole", _MM)},
        "plug_shear": {"f_z": _LAYERS},
        "plug_bending": {"K_t": Symbol("factor at the root of the plug", ""), "f_z": _LAYERS},
        "body_diameter_mm": {"play_h": _LOOSE_ACROSS},
        "flats_width_mm": {"play_h": _LOOSE_ACROSS},
        "cushion_bearing": {"A": _MET},
        "cushion_strain": {"A": _MET},
        "cushion_marking": {"A": _MET},
        "cushion_slide": {"mu": Symbol("assumed friction of the car's face on the cushion", "")},
        "entry_height_flat": {"edge": Symbol("seam's edge above ground with a flat tyre", _MM)},
    }
)
"""By check or dimension: the few symbols that mean something else in its formulas."""

TOLERANCE_OF: Mapping[str, str] = MappingProxyType(
    {
        "seat_fit_tight": "seat_diameter_mm",
        "seat_fit_loose": "seat_diameter_mm",
        "skirt_fit_tight": "skirt_bore_mm",
        "skirt_fit_loose": "skirt_bore_mm",
        "skirt_overlap": "skirt_length_mm",
        "skirt_clear": "skirt_length_mm",
        "lip_gap": "seat_length_mm",
        "corner_clear": "seat_corner_radius_mm",
        "slot_fit_tight": "slot_width_mm",
        "slot_fit_loose": "slot_width_mm",
        "sill_clear": "slot_depth_mm",
        "rim_clear": "web_mm",
        "lift_height": "web_mm",
        "stem_clear": "stem_diameter_mm",
        "boss_clear": "seat_recess_diameter_mm",
        "post_fit_tight": "stem_diameter_mm",
        "post_fit_loose": "stem_diameter_mm",
        "post_bottom": "stem_length_mm",
        "post_guided": "stem_length_mm",
        "rim_face": "seat_diameter_mm",
        "stem_tilt": "stem_diameter_mm",
        "pin_meets": "cross_hole_diameter_mm",
        "pin_free": "cross_hole_diameter_mm",
        "relief_clear": "relief_width_mm",
        "face_rim_clear": "web_mm",
        "plug_fit_tight": "plug_width_mm",
        "plug_fit_loose": "plug_width_mm",
        "plug_corner_clear": "plug_corner_radius_mm",
        "plug_clear_above": "plug_height_mm",
        "plug_reach": "plug_height_mm",
    }
)
"""Whose tolerance ``tol`` is in the formulas of a check; in those of a bound it is that of the dimension being sized."""


def symbol_in(rule: str, name: str) -> Symbol:
    """A symbol as the formulas of a check (by its code) or a bound (by its dimension) mean it.

    >>> symbol_in("lip_gap", "tol").meaning, symbol_in("web_bending", "b").meaning
    ('general tolerance of the seat length', "radius of the loaded patch, half the hole's radius")
    """
    if name == "tol":
        dimension = TOLERANCE_OF.get(rule, rule)
        return Symbol(f"general tolerance of the {dimension_title(dimension)}", _MM)
    return LOCAL.get(rule, {}).get(name, SYMBOLS[name])


def dimension_title(dimension: str) -> str:
    """The name of a dimension of the pad inside a sentence.

    >>> dimension_title("seat_diameter_mm")
    'seat diameter'
    """
    return dimension.removesuffix("_mm").replace("_", " ")
