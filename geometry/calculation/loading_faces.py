"""What the load does to a cushion, or to a plug and the shoulder around it, as lines."""

from math import pi

from geometry.calculation.book import Book
from geometry.case import Case
from geometry.elastomer import allowed_strain, is_elastomer, small_strain_modulus_mpa
from geometry.heads.cushion.bounds import SHAPE
from geometry.heads.cushion.loading import CushionLoading
from geometry.heads.loading import FaceLoading
from geometry.heads.plug.loading import PlugLoading, plug_area_mm2, reach_mm, tightest
from geometry.heads.plug.strength import ROOT_FACTOR
from geometry.provenance import derived, practice

_WEDGE = derived("A wedge of the lip that is held at the seat alone")
_OVERLAP = derived("Plain geometry: where a disc and a rectangle meet")


def write_face(book: Book, k: Case) -> None:
    """Area, indentation, lip and what a hollow in the seat bridges, under a face of the car."""
    head = k.head
    if isinstance(head, CushionLoading):
        _write_cushion(book, k, head)
    elif isinstance(head, PlugLoading):
        _write_plug(book, k, head)
    if isinstance(head, FaceLoading):
        _write_contact(book, k, head)


def _write_cushion(book: Book, k: Case, s: CushionLoading) -> None:
    book.write("A", s.area_mm2, where="cushion_bearing", source=_OVERLAP, remark="the top and the car's face")
    if is_elastomer(k.c):
        book.write("E_0", small_strain_modulus_mpa(k.c), formula="E_min * f_T * f_w")
        book.write("eps", allowed_strain(k.c), source=SHAPE)
        hollow = "recess" if k.pad.has_recess else "hole"
        flats = "flats - 2 * c_e, " if k.pad.has_flats else ""
        book.write("S", where="cup_floor_bearing", formula=f"(2 * R - {hollow}) / (4 * web)", source=SHAPE)
        book.write("S", s.shape_factor, formula=f"min(body - 2 * c_e, {flats}w_f, l_f) / (4 * web)", source=SHAPE)
    book.write("e_c", s.off_centre_mm, source=practice("How far off a careful eye sets a pad under a rail"))


def _write_plug(book: Book, k: Case, s: PlugLoading) -> None:
    book.write("A", s.area_mm2, where="plug_shoulder_bearing", source=_OVERLAP, remark="the shoulder and the rim")
    book.write("A_p", plug_area_mm2(k.pad), formula="plug_w * plug_l - (4 - pi) * plug_r**2")
    book.write("K_t", ROOT_FACTOR.value, where="plug_bending", source=ROOT_FACTOR.source)
    _write_along(book, k)
    book.write("play_h", s.tight_play_mm, where="plug_corner_clear", remark="hot, the plug at its largest")
    book.write("play_h", s.loose_play_mm, remark="cold, the plug at its smallest, the way in which it plays more")
    book.write("e_c", s.off_centre_mm, formula="play_h / 2")


def _write_along(book: Book, k: Case) -> None:
    """Hole and plug in the way that a fit is judged, where that is along the hole or across the plug's corners."""
    hole, _ = tightest(k.c, k.pad, k.spread)
    if k.c.pocket.is_round and not k.pad.plug_is_round:
        widest = "2 * (plug_r + sqrt((plug_w / 2 - plug_r)**2 + (plug_l / 2 - plug_r)**2))"
        book.write("plug_w", reach_mm(k.pad), where="plug_fit_tight", formula=widest)
    elif hole != k.c.pocket.hole_width_mm:
        book.write("w_h", hole, where="plug_fit_tight", formula="l_h")
        book.write("plug_w", k.pad.plug_length_mm, where="plug_fit_tight", formula="plug_l")


def _write_contact(book: Book, k: Case, s: FaceLoading) -> None:
    book.write("w_c", s.contact_width_mm, source=_OVERLAP)
    book.write("delta", s.indentation_mm, source=derived("Hooke's law over the whole web"))
    book.write("V_l", s.lip.shear_n_per_mm, source=_WEDGE)
    book.write("M_l", s.lip.moment_n, source=_WEDGE)
    hole = max(k.c.foot.hole_diameter_mm, k.pad.seat_recess_diameter_mm)
    if k.pad.has_recess:
        book.write("web_f", k.pad.floor_thickness_mm, formula="web - recess_depth")
    if hole > 0:
        named = "recess" if k.pad.has_recess else "hole"
        over = min(s.pressure_mpa * pi / 4 * hole**2, k.c.design_force_n)
        book.write("P", over, source=derived("The pressure over the hollow, as if the face lay all over it"))
        book.write("a", hole / 2, formula=f"{named} / 2")
        book.write("b", hole / 4, formula=f"{named} / 4", where="web_bending")
