"""What the load does to the pad: the quantities that stand between the measurements and the checks, as lines."""

from collections.abc import Mapping
from types import MappingProxyType

from geometry.calculation.book import Book
from geometry.calculation.loading_faces import write_face
from geometry.calculation.loading_post import write_pin
from geometry.calculation.loading_skirt import write_skirt
from geometry.case import Case
from geometry.feet.facts import Locates
from geometry.feet.play import LOCATING
from geometry.provenance import Source, derived, found, recomputed
from geometry.seam import K_FREE, K_GUIDED, bending_interaction, buckling_stress_mpa

_KERN = recomputed("Kern of a circular section, strength-of-materials texts")
_PUNCH = found(
    "Prandtl's strip punch, constraint factor 2.57 (ASME J. Eng. Ind. 92(2):469, 1970) for a thick floor; the fall to"
    " plain yield for a thin one is derived"
)
_COLUMN = recomputed("Timoshenko & Gere, Theory of Elastic Stability: wide column")


def write_loading(book: Book, k: Case) -> None:
    """Pressures and movements at nominal sizes and the worst play."""
    book.open("loading")
    _write_car(book, k)
    _write_seat(book, k)
    if k.c.head.kind == "slot":
        _write_edge(book, k)
        _write_wall(book, k)
        _write_seam(book, k)
        _write_rest(book, k)
    else:
        write_face(book, k)
    _write_tools(book, k)
    if k.c.foot.kind == "post":
        write_pin(book, k)
    if k.c.foot.locates == "skirt":
        write_skirt(book, k)


def _write_car(book: Book, k: Case) -> None:
    if k.c.head.kind == "slot":
        book.write("clear", k.c.seam.least_clear_mm, formula="min(height, clear_out, clear_in)")
    if k.c.head.roll_in_obstacle_mm is None:
        book.write("obstacle", 0.0, remark=k.c.said("nothing is said to hang lower than the seam's edge"))
    else:
        book.write("obstacle", formula="min(0, roll_in)")
    if k.c.head.edge_height_flat_mm is not None:
        book.write("edge", k.c.head.edge_height_flat_mm, where="entry_height_flat", formula="edge_flat")


_PLAY: Mapping[Locates, tuple[str, str]] = MappingProxyType(
    {
        "seat": ("cup_bore + u - (seat - tol) * (1 + g_cold)", "cold, the seat at its smallest"),
        "skirt": ("(skirt + tol) * (1 + g_hot) - around + u", "hot, the skirt at its widest"),
        "stem": ("bore + u - (stem - tol) * (1 + g_cold)", "cold, the stem at its thinnest"),
    }
)


def _write_seat(book: Book, k: Case) -> None:
    """The seat face: area, play, eccentricity, edge, squash."""
    cup = k.foot
    above = " + slot_depth" if k.pad.has_slot else " + plug_h" if k.pad.has_plug else ""
    book.write("h", k.pad.top_height_mm, formula=f"web{above}")
    book.write("seat_flat", k.pad.seat_flat_diameter_mm, formula="seat - 2 * r")
    flat = "seat_flat"
    if k.c.foot.locates == "stem":
        book.write("hole", k.c.foot.hole_diameter_mm, formula="bore", remark="the seat stands around the bore")
        flat = "min(seat_flat, rim_b)"
    book.write("R", cup.flat_radius_mm, formula=f"{flat} / 2")
    hollow = "recess" if k.pad.has_recess else "hole"
    book.write("A", cup.area_mm2, formula=f"pi / 4 * ({flat}**2 - {hollow}**2)")
    formula, remark = _PLAY[k.c.foot.locates]
    book.write("play", cup.play_mm, formula=formula, tolerance_of=LOCATING[k.c.foot.locates], remark=remark)
    if cup.play_mm < 0:
        book.write("play", 0.0, formula="max(0, play)", remark="a seat that is too big has no play to tip in")
    beside = "slot_off + " if k.pad.slot_offset_mm else ""
    off_axis = f"{beside}(play + tol_sym) / 2 + H * h / F_d"
    book.write("e_F", cup.eccentricity_mm, formula=off_axis, source=derived("Statics"))
    _write_edge_factor(book, k)
    if k.c.foot.kind != "cup" and "cup" in k.c.foot.rooms:
        book.write("boss", 0.0, remark="not asked; look for one")
    if k.c.foot.depth_mm <= 0:
        book.write("cup_depth", 0.0, remark="the seat stands on the top of the head")
        book.write("squash", 0.0, remark="nothing beside the seat that it could sink to")
        return
    squashed = "min(F_d / A, sigma_allow)" if cup.area_mm2 > 0 else "sigma_allow"
    book.write(
        "squash",
        cup.squash_mm,
        formula=f"{squashed} * 1.1 * cup_depth / E_hold",
        source=derived("Hooke's law over the depth that the seat stands in, a tenth more for the corner"),
    )


def _write_edge_factor(book: Book, k: Case) -> None:
    e, radius = k.foot.eccentricity_mm, k.foot.flat_radius_mm
    if e >= radius:
        book.write("k_e", k.foot.edge_factor, source=_KERN, remark="e_F is at least R: the load leaves the face")
    elif e <= radius / 4:
        remark = "e_F is no more than R/4: the whole face presses"
        book.write("k_e", k.foot.edge_factor, formula="1 + 4 * e_F / R", source=_KERN, remark=remark)
    else:
        source = derived("Beyond R/4 part of the face lifts; meets the other branch at 2")
        formula = "2 * (0.75 * R / (R - e_F))**1.5"
        book.write(
            "k_e",
            k.foot.edge_factor,
            formula=formula,
            source=source,
            remark="e_F is more than R/4: part of the face lifts",
        )


def _reach(k: Case) -> str:
    """Twice how far the slot's outer wall stands off the axis."""
    return "(slot + 2 * slot_off)" if k.pad.slot_offset_mm else "slot"


def _lost(k: Case) -> str:
    """What is taken off the length that carries."""
    return " - relief_l" if k.pad.lost_length_mm else ""


def _write_edge(book: Book, k: Case) -> None:
    """The seam's edge on the slot's floor."""
    s = k.slot
    book.write(
        "L",
        s.length_mm,
        formula=f"min(straight, sqrt(body**2 - {_reach(k)}**2) - 2 * c_e, seat_flat + 1.4 * h){_lost(k)}",
        source=derived("Straight edge, chord of the body, and as far beyond the seat as the overhang is stiff"),
        remark="less what an open pocket takes away" if _lost(k) else "",
    )
    web = "web"
    if k.pad.has_recess:
        book.write("web_f", k.pad.floor_thickness_mm, formula="web - recess_depth")
        web = "web_f"
    book.write("p", s.pressure_mpa, formula="F_d / (t_b * L)")
    book.write("c_u", s.floor_factor, formula=f"min(2.57, max(1, 0.8 + 0.4 * {web} / t_b))", source=_PUNCH)
    twice = derived("2 σ_allow stands for the yield: the allowables are at most half of it; 1.5 against cutting in")
    book.write("p_u", s.strength_mpa, formula="c_u * 2 * sigma_allow / 1.5", source=twice)
    remark = "the floor passes all of it on" if s.pressure_mpa <= s.strength_mpa else "no more than the floor passes on"
    book.write("q", s.edge_force_n_per_mm, formula="min(p, p_u) * t_b", source=derived("Statics"), remark=remark)
    book.write(
        "delta",
        s.indentation_mm,
        formula=f"2 * (1 - 0.4**2) / pi * min(p, p_u) * t_b / E_hold * ln(1 + 3.2 * {web} / t_b)",
        source=derived("A strip on a half plane, its depth fitted to own finite elements"),
    )


def _write_wall(book: Book, k: Case) -> None:
    """Thickness and fillet factor of a slot wall."""
    s = k.slot
    reach = _reach(k)
    chord = f"sqrt(body**2 - {reach}**2)"
    formula = f"(body**2 / 4 * acos({reach} / body) - {reach} / 4 * {chord}) / {chord}"
    if k.pad.has_flats:
        formula = f"min({formula}, (flats - {reach}) / 2)"
    book.write("e", s.wall_mm, formula=formula, remark="the segment of the circle spread over its chord")
    if s.wall_length_mm < s.length_mm:
        missing = "slot_2" if k.pad.is_crossed else "relief_l"
        book.write(
            "L_w",
            s.wall_length_mm,
            formula=f"max(0, L - {missing})",
            remark="where there is no wall it takes no side load",
        )
    source = derived("Fitted to own finite elements of the slot, 5 % below to 27 % above them")
    book.write("K_t", s.fillet_factor, formula="sqrt(e / r_f) * (0.75 + (e / slot_depth)**2 / 12)", source=source)


def _write_seam(book: Book, k: Case) -> None:
    """The strip of sheet between sill and slot."""
    s, seam = k.slot, k.c.seam
    book.write("t_1", seam.bare_thickness_mm / seam.sheets, formula="t_bare / n_s")
    strip = "height - slot_depth + c_m"
    if s.free_strip_mm < 0:
        book.write("b", 0.0, formula=f"max(0, {strip})", remark="the slot guides the seam over its whole height")
    else:
        book.write("b", s.free_strip_mm, formula=strip)
    book.write("K", K_GUIDED, source=_COLUMN)
    critical = "pi**2 * 210000 / (12 * (1 - 0.3**2)) * (t_1 / {strip})**2"
    sheet = seam.bare_thickness_mm / seam.sheets
    if s.free_strip_mm > 0:
        value = buckling_stress_mpa(sheet_mm=sheet, strip_mm=s.free_strip_mm, k=K_GUIDED)
        book.write("sigma_1", value, formula=f"K * {critical.format(strip='b')}", source=_COLUMN)
        value = buckling_stress_mpa(sheet_mm=sheet, strip_mm=seam.height_mm, k=K_FREE)
        book.write("sigma_0", value, formula=f"0.25 * {critical.format(strip='height')}", source=_COLUMN)
    value = bending_interaction(
        pressure_mpa=s.pressure_mpa,
        yield_mpa=seam.yield_mpa,
        side_force_n=k.c.side_force_n,
        strip_mm=seam.height_mm,
        loaded_length_mm=s.length_mm,
        bare_thickness_mm=seam.bare_thickness_mm,
    )
    book.write("n_0", value, formula="(p / f_y)**2 + 4 * H * height / (L * t_bare**2 * f_y)")


def _write_rest(book: Book, k: Case) -> None:
    """What single checks and bounds need besides."""
    s, hole = k.slot, max(k.c.foot.hole_diameter_mm, k.pad.seat_recess_diameter_mm)
    named, web = ("recess", "web_f") if k.pad.has_recess else ("hole", "web")
    narrowest = "(slot - tol_slot) * (1 + g_cold) - t - u - bow"
    play = max(0.0, s.tight_play_mm)
    book.write("play", play, formula=f"max(0, {narrowest})" if play == 0 else narrowest, where="seam_lean")
    if hole > 0:
        book.write("P", s.edge_force_n_per_mm * min(hole, s.length_mm), formula=f"q * min({named}, L)")
        book.write("a", hole / 2, formula=f"{named} / 2")
        book.write("b", hole / 4, formula=f"{named} / 4", where="web_bending")
    if k.c.pitch_deg is not None:
        _write_pitched(book, k)
    book.write("c_2", formula=f"min(2, max(1, 0.8 + 0.4 * {web} / t_b))", source=derived("As c_u, at most twice"))
    book.write(
        "L_m",
        formula=f"min(F_d / (0.8 * c_2 * sigma_allow * t_b){_lost(k).replace('-', '+')}, straight, seat_flat + 1.4 * h)",
        source=derived("Marking at 0.8 of its limit, as far as the seam is straight and the overhang stiff"),
    )


def _write_pitched(book: Book, k: Case) -> None:
    source: Source = derived("Statics of a no-tension strip; 3 p where the seat is wide")
    if k.foot.flat_radius_mm >= k.slot.length_mm / 3:
        book.write("p_p", formula="3 * p", source=source, remark="R is at least L/3")
    else:
        book.write("p_p", formula="p * L / (1.5 * (L / 2 - R))", source=source, remark="R is less than L/3")


def _write_tools(book: Book, k: Case) -> None:
    """The bar and the cutter."""
    c, pad = k.c, k.pad
    if c.rod_is_cut:
        largest = max(c.stock_mm)
        fitting = next((d for d in c.stock_mm if d >= pad.body_diameter_mm + 2), largest)
        book.write("stock", largest, remark="the largest bar to hand")
        if fitting != largest:
            book.write("stock", fitting, remark="the smallest bar to hand that the body comes out of")
    if c.slot_is_milled and pad.has_slot:
        cutter = max((d for d in c.cutters_mm if d <= pad.slot_width_mm), default=min(c.cutters_mm))
        book.write("d_c", cutter, remark="the largest end mill to hand that enters the slot")
