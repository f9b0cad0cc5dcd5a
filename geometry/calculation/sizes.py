"""The pad's sizes as chosen or fixed, and how far each may be off, as lines."""

from collections.abc import Mapping
from types import MappingProxyType

from geometry.calculation.book import Book
from geometry.case import Case
from geometry.geometrical import FLOOR_PARALLELISM, LIP_RUN_OUT, SLOT_SYMMETRY
from geometry.pad import DIMENSIONS
from geometry.provenance import Source, found
from geometry.spread import general_tolerance_mm

PAD_SYMBOLS = {
    "seat_diameter_mm": "seat",
    "seat_length_mm": "seat_length",
    "seat_corner_radius_mm": "r",
    "skirt_bore_mm": "skirt",
    "skirt_length_mm": "skirt_l",
    "seat_recess_diameter_mm": "recess",
    "seat_recess_depth_mm": "recess_depth",
    "stem_diameter_mm": "stem",
    "stem_length_mm": "length",
    "cross_hole_diameter_mm": "cross",
    "cross_hole_distance_mm": "cross_x",
    "body_diameter_mm": "body",
    "flats_width_mm": "flats",
    "slot_width_mm": "slot",
    "slot_offset_mm": "slot_off",
    "cross_slot_width_mm": "slot_2",
    "relief_width_mm": "relief",
    "relief_length_mm": "relief_l",
    "relief_depth_mm": "relief_d",
    "slot_depth_mm": "slot_depth",
    "plug_length_mm": "plug_l",
    "plug_width_mm": "plug_w",
    "plug_height_mm": "plug_h",
    "plug_corner_radius_mm": "plug_r",
    "web_mm": "web",
    "slot_corner_radius_mm": "r_f",
    "slot_mouth_chamfer_mm": "c_m",
    "edge_chamfer_mm": "c_e",
}
"""The symbol of each dimension of the pad."""
GENERAL_LENGTHS = found("ISO 2768-1:1989, class m, Table 1")
_GENERAL = found("ISO 2768-1:1989, class m, Tables 1 and 2; below 0.5 mm ± 0.1 mm is written at the dimension")
_EXACT: Mapping[str, tuple[Source, str]] = MappingProxyType(
    {"slot_offset_mm": (SLOT_SYMMETRY.source, "an exact place: half of the zone in its frame")}
)
"""What no general tolerance is for: the source of its own one, and a remark."""


def _write_above(book: Book, k: Case) -> None:
    """How far the pad stands above what carries the car."""
    if k.pad.has_slot:
        book.write("above", k.pad.slot_depth_mm, formula=PAD_SYMBOLS["slot_depth_mm"])
    elif k.pad.has_plug:
        book.write("above", k.pad.plug_height_mm, formula=PAD_SYMBOLS["plug_height_mm"])
    else:
        book.write("above", 0.0, remark="nothing of it does")


def write_pad(book: Book, k: Case, *, fixed: frozenset[str]) -> None:
    """The dimensions as chosen or fixed, the general tolerance of each, and the geometrical ones."""
    book.open("pad")
    for name in DIMENSIONS:
        if name not in k.pad.present:
            continue
        remark = "fixed by you" if name in fixed else "from the ledger"
        book.write(PAD_SYMBOLS[name], getattr(k.pad, name), remark=remark)
    _write_above(book, k)
    book.open("tolerances")
    for name in DIMENSIONS:
        if getattr(k.pad, name) > 0:
            source, remark = _EXACT.get(name, (_GENERAL, ""))
            book.write("tol", general_tolerance_mm(k.pad, name), where=name, source=source, remark=remark)
    for symbol, tolerance in (
        ("tol_w", k.head.web_tolerance_mm),
        ("tol_d", k.head.depth_tolerance_mm),
        *((("tol_slot", k.slot.width_tolerance_mm),) if k.pad.has_slot else ()),
    ):
        book.write(symbol, tolerance, source=_GENERAL, remark="the same as above, where a formula has several")
    for symbol, geometrical in (("tol_sym", SLOT_SYMMETRY), ("tol_par", FLOOR_PARALLELISM), ("tol_run", LIP_RUN_OUT)):
        remark = f"stands in a frame on the drawing, to datum {geometrical.datum}"
        book.write(symbol, k.spread.zone_mm(geometrical), source=geometrical.source, remark=remark)
