"""The seat's corner radius as straight cuts of the compound slide, each beside the true arc and never inside it."""

from math import cos, hypot, radians, sin

from geometry.dials import Slide
from geometry.drawing.model import Arc, Layer, Line, Point, Shape
from geometry.finish import Facet, corner_facets, facet_cusp_mm
from geometry.making.card import Label, Picture, Table, picture
from geometry.making.wording import said

MOST_FACETS = 12
"""More settings of the compound slide than this are not worth it: file to the gauge instead."""


def facets_for(*, radius_mm: float, cusp_limit_mm: float) -> int:
    """The fewest facets whose ridges stand no higher than a limit.

    Parameters
    ----------
    radius_mm : float
        Corner radius, [mm]
    cusp_limit_mm : float
        Highest ridge to be filed off, [mm]

    Returns
    -------
    facets : int
        Number of straight cuts, at most 12, [-]

    Examples
    --------
    A corner of 4.5 mm leaves 0.088 mm with four cuts and 0.159 mm with three:

    >>> facets_for(radius_mm=4.5, cusp_limit_mm=0.1)
    4

    References
    ----------
    ``facet_cusp_mm``.
    """
    for count in range(1, MOST_FACETS):
        if facet_cusp_mm(radius_mm=radius_mm, facets=count) <= cusp_limit_mm:
            return count
    return MOST_FACETS


def facet_table(*, seat_diameter_mm: float, radius_mm: float, facets: int, slide: Slide) -> Table:
    """Compound angle, start and end of every cut; the dial counts from where the tool touches the finished seat."""
    double = 1 if slide == "radius" else 2
    rows = [
        (
            float(number),
            cut.angle_from_axis_deg,
            seat_diameter_mm - 2 * cut.start_inset_mm,
            cut.start_height_mm,
            double * cut.start_inset_mm,
            seat_diameter_mm - 2 * cut.end_inset_mm,
            cut.end_height_mm,
            double * cut.end_inset_mm,
        )
        for number, cut in enumerate(corner_facets(radius_mm=radius_mm, facets=facets), start=1)
    ]
    return Table(
        title=f"Corner radius in {facets} straight cuts",
        columns=(
            ("Cut", ""),
            ("Compound from the axis", "°"),
            ("Starts at diameter", "mm"),
            ("Starts from the face", "mm"),
            ("Cross dial at the start", "mm"),
            ("Ends at diameter", "mm"),
            ("Ends from the face", "mm"),
            ("Cross dial at the end", "mm"),
        ),
        rows=tuple(rows),
    )


def facet_picture(*, radius_mm: float, facets: int) -> Picture:
    """The corner in section: the true arc thin, the cuts thick, the material to the lower left; x out, y along the axis."""
    cuts = corner_facets(radius_mm=radius_mm, facets=facets)
    run = 0.6 * radius_mm
    shapes: list[Shape] = [Arc((-radius_mm, radius_mm), radius_mm, 270, 360, Layer.THIN)]
    shapes += [Line(_start(cut), _end(cut), Layer.VISIBLE) for cut in cuts]
    shapes += [
        Line((-radius_mm - run, 0), _start(cuts[0]), Layer.VISIBLE),
        Line(_end(cuts[-1]), (0, radius_mm + run), Layer.VISIBLE),
    ]
    labels = tuple(Label(_middle(cut), said(f"{n}: {cut.angle_from_axis_deg:.4g}°")) for n, cut in enumerate(cuts, 1))
    return picture("corner in facets", shapes, labels)


def _start(cut: Facet) -> Point:
    return -cut.start_inset_mm, cut.start_height_mm


def _end(cut: Facet) -> Point:
    return -cut.end_inset_mm, cut.end_height_mm


def _middle(cut: Facet) -> Point:
    """Just outside the middle of a cut."""
    (x1, y1), (x2, y2) = _start(cut), _end(cut)
    square = radians(cut.angle_from_axis_deg)
    off = 0.5 * hypot(x2 - x1, y2 - y1)
    return (x1 + x2) / 2 + off * cos(square), (y1 + y2) / 2 - off * sin(square)
