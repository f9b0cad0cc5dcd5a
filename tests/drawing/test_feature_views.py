"""The views of every kind of pad against the kernel's own removal of hidden lines; the drawing does not use the kernel."""

from collections.abc import Callable, Iterator
from functools import cache
from itertools import pairwise
from math import cos, radians, sin

import numpy as np
import pytest

from geometry.drawing.model import Arc, Curve, Layer, Line, Shape, View
from geometry.drawing.plan import top_view, underside_view
from geometry.drawing.side import side_view
from geometry.drawing.views import section_view
from tests.drawing.kernel_views import Points, apart_mm, kernel_lines
from tests.drawing.pads import KNOWN
from tests.geometry.pads import EVERY_KIND, ORDINARY

SHALLOW = ORDINARY.with_(slot_depth_mm=1.5, slot_mouth_chamfer_mm=0.5, edge_chamfer_mm=3.0)
PADS = {
    **EVERY_KIND,
    "long stem": KNOWN["long stem"],
    "slot in the chamfer": SHALLOW,
    "slot and flats in the chamfer": SHALLOW.with_(body_diameter_mm=84, flats_width_mm=72),
}
APART_MM, NEAR_MM = 0.5, 0.08
VIEWS: dict[str, tuple[Callable[..., View], tuple[int, int, int], tuple[int, int, int]]] = {
    "top": (top_view, (0, 0, 1), (1, 0, 0)),
    "underside": (underside_view, (0, 0, -1), (1, 0, 0)),
    "side": (side_view, (1, 0, 0), (0, 1, 0)),
    "section": (section_view, (0, -1, 0), (1, 0, 0)),
}
"""How each is drawn, the direction towards the eye, and what is right on paper."""


def drawn_lines(view: View) -> Points:
    """Points along all thick lines of a view."""
    return np.concatenate([points for shape in view.shapes for points in _points(shape)])


def _points(shape: Shape) -> Iterator[Points]:
    if not isinstance(shape, Line | Arc | Curve) or shape.layer is not Layer.VISIBLE:
        return
    if isinstance(shape, Arc):
        (x, y), r = shape.centre, shape.radius_mm
        turns = [shape.start_deg + (shape.end_deg - shape.start_deg) * i / 1000 for i in range(1001)]
        yield np.array([(x + r * cos(radians(turn)), y + r * sin(radians(turn))) for turn in turns])
        return
    corners = np.array(shape.points if isinstance(shape, Curve) else (shape.start, shape.end))
    for a, b in pairwise(corners):
        count = int(np.hypot(*(b - a)) / APART_MM) + 2
        yield a + np.linspace(0, 1, count)[:, None] * (b - a)


def far_from(points: Points, others: Points) -> Points:
    """Those of the points that are far from all others: farther than a step along a line and what is near."""
    return np.asarray(points[apart_mm(points, others) > APART_MM / 2 + NEAR_MM])


@cache
def compared(name: str, view: str) -> tuple[Points, Points]:
    """Points of the drawing that the kernel does not see, and points that it sees and the drawing lacks."""
    make, eye, right = VIEWS[view]
    drawn, seen = (
        drawn_lines(make(PADS[name], over_mm=0.0)),
        kernel_lines(PADS[name], eye=eye, right=right, apart_mm=APART_MM, is_cut=view == "section"),
    )
    return far_from(drawn, seen), far_from(seen, drawn)


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("name", PADS)
def test_thick_lines_are_what_can_be_seen_and_nothing_that_can_be_seen_is_missing(name: str, view: str) -> None:
    extra, missing = compared(name, view)
    assert len(extra) == 0, extra[:8].round(1).tolist()
    assert len(missing) == 0, missing[:8].round(1).tolist()
