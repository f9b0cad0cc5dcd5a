"""What the load does to a post's stem at its retaining pin, as lines."""

from geometry.calculation.book import Book
from geometry.calculation.sizes import GENERAL_LENGTHS
from geometry.case import Case
from geometry.feet.post.pin import sink_of
from geometry.fits import linear_tolerance_mm
from geometry.provenance import recomputed

_SINK = recomputed("Hooke's law over the whole web, and a disc on a ring (Timoshenko & Woinowsky-Krieger, art. 19)")


def write_pin(book: Book, k: Case) -> None:
    """How far the stem sinks beside its pin, and the tolerance of the hole's place; nothing without a hole."""
    if not k.pad.has_cross_hole:
        return
    book.write("tol_x", linear_tolerance_mm(k.pad.cross_hole_distance_mm), source=GENERAL_LENGTHS)
    pressed = "min(F_d / A, sigma_allow)" if k.foot.area_mm2 > 0 else "sigma_allow"
    sag = "3 * P * a**2 * (3 + nu) * (1 - nu) / (4 * pi * E_hold * web**3)"
    book.write("sink", sink_of(k), formula=f"1.1 * {pressed} * web / E_hold + {sag}", source=_SINK)
