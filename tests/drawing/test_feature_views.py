"""The views of every kind of pad against the kernel's own removal of hidden lines; the drawing does not use the kernel."""

from collections.abc import Callable, Iterator
from functools import cache
from itertools import pairwise
from math import cos, radians, sin
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray

from geometry.drawing.model import Arc, Curve, Layer, Line, Shape, View
from geometry.drawing.plan import top_view, underside_view
from geometry.drawing.side import side_view
from geometry.drawing.views import section_view
from geometry.pad import Pad
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
Points = NDArray[np.float64]
VIEWS: dict[str, tuple[Callable[..., View], tuple[int, int, int], tuple[int, int, int]]] = {
    "top": (top_view, (0, 0, 1), (1, 0, 0)),
    "underside": (underside_view, (0, 0, -1), (1, 0, 0)),
    "side": (side_view, (1, 0, 0), (0, 1, 0)),
    "section": (section_view, (0, -1, 0), (1, 0, 0)),
}
"""How each is drawn, the direction towards the eye, and what is right on paper."""


def kernel_lines(pad: Pad, name: str) -> Points:
    """Points along every visible edge and contour, on paper, as the kernel finds them."""
    import cadquery as cq
    from OCP.BRepLib import BRepLib
    from OCP.gp import gp_Ax2, gp_Dir, gp_Pnt
    from OCP.HLRAlgo import HLRAlgo_Projector
    from OCP.HLRBRep import HLRBRep_Algo, HLRBRep_HLRToShape

    from geometry.solid import build_solid

    _, eye, right = VIEWS[name]
    solid: Any = cq.Workplane(cq.Shape.cast(build_solid(pad)))
    if name == "section":
        solid = solid.intersect(cq.Workplane("XY").box(999, 999, 999).translate((0, 999 / 2, 0)))
    whole = solid.val().wrapped
    BRepLib.EncodeRegularity_s(whole)
    seen = HLRBRep_Algo()
    seen.Add(whole)
    seen.Projector(HLRAlgo_Projector(gp_Ax2(gp_Pnt(0, 0, 0), gp_Dir(*eye), gp_Dir(*right))))
    seen.Update()
    seen.Hide()
    shapes = HLRBRep_HLRToShape(seen)
    found: list[Any] = []
    for lines in (shapes.VCompound(), shapes.OutLineVCompound()):
        if not lines.IsNull():
            BRepLib.BuildCurves3d_s(lines)
            for edge in cq.Shape.cast(lines).Edges():
                count = int(edge.Length() / APART_MM) + 2
                found += [point.toTuple()[:2] for point in edge.positions(np.linspace(0, 1, count))]
    return np.array(found)


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
    apart = np.hypot(points[:, None, 0] - others[None, :, 0], points[:, None, 1] - others[None, :, 1]).min(axis=1)
    return np.asarray(points[apart > APART_MM / 2 + NEAR_MM])


@cache
def compared(name: str, view: str) -> tuple[Points, Points]:
    """Points of the drawing that the kernel does not see, and points that it sees and the drawing lacks."""
    make = VIEWS[view][0]
    drawn, seen = drawn_lines(make(PADS[name], over_mm=0.0)), kernel_lines(PADS[name], view)
    return far_from(drawn, seen), far_from(seen, drawn)


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("name", PADS)
def test_thick_lines_are_what_can_be_seen_and_nothing_that_can_be_seen_is_missing(name: str, view: str) -> None:
    extra, missing = compared(name, view)
    assert len(extra) == 0, extra[:8].round(1).tolist()
    assert len(missing) == 0, missing[:8].round(1).tolist()
