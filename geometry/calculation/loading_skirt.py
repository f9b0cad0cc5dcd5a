"""What the side load does to a skirt, and the tips of teeth to a seat, as lines."""

from geometry.calculation.book import Book
from geometry.calculation.sizes import GENERAL_LENGTHS
from geometry.case import Case
from geometry.feet.saddle.fields import SaddleFacts
from geometry.feet.saddle.tips import carried_width_mm
from geometry.feet.skirt.wall import push_n_per_mm, root_strength_mpa
from geometry.fits import linear_tolerance_mm
from geometry.provenance import derived, recomputed

_PLATE = recomputed("Long cantilever plate under a load at its free edge, Jaramillo 1950 and Roark's Formulas")
_YIELD = derived("2σ stands for the yield, 1.5 is the factor")


def write_skirt(book: Book, k: Case) -> None:
    """The push on the skirt, its wall, what its root may see, and how much of a tooth's tip carries."""
    pad, c = k.pad, k.c
    book.write("tol_s", linear_tolerance_mm(pad.seat_length_mm), source=GENERAL_LENGTHS)
    if pad.has_skirt:
        push = push_n_per_mm(side_force_n=c.side_force_n, bore_mm=pad.skirt_bore_mm, length_mm=pad.skirt_length_mm)
        book.write("V_s", push, formula="H / max(skirt / 2, 1.9 * skirt_l)", source=_PLATE)
        outside = "min(flats, body)" if pad.has_flats else "body"
        book.write("t_s", formula=f"({outside} - skirt) / 2", remark="where it is thinnest")
        strength = root_strength_mpa(allowable_mpa=c.allowable_mpa, wall_stress_factor=c.material.wall_stress_factor)
        book.write("sigma_s", strength, formula="2 * sigma_allow / 1.5 * f_z", source=_YIELD)
    if isinstance(c.foot, SaddleFacts):
        _write_tips(book, k, c.foot)


def _write_tips(book: Book, k: Case, foot: SaddleFacts) -> None:
    reach = carried_width_mm(
        seat_flat_mm=k.pad.seat_flat_diameter_mm, over_teeth_mm=foot.bore_mm, tip_width_mm=foot.tip_width_mm
    )
    book.write("reach", reach, formula="min(tip_w, (seat_flat - around) / 2 + tip_w)")
    book.write("R_t", formula="around / 2 - tip_w + reach / 2", remark="to the middle of what carries")
