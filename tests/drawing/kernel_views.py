"""What the kernel sees of a solid once it has removed what is hidden; the drawing does that without it."""

from functools import cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from geometry.pad import Pad

Points = NDArray[np.float64]
Direction = tuple[int, int, int]


def apart_mm(points: Points, others: Points) -> NDArray[np.float64]:
    """How far each point is from the nearest of the others."""
    from scipy.spatial import cKDTree

    return np.asarray(cKDTree(others).query(points)[0])


@cache
def _solid(pad: Pad, *, is_cut: bool) -> Any:
    """The product's own model, or its half beyond the cut across the slot; built once for all sides that it is seen from."""
    import cadquery as cq
    from OCP.BRepLib import BRepLib

    from geometry.solid import build_solid

    solid: Any = cq.Workplane(cq.Shape.cast(build_solid(pad)))
    if is_cut:
        solid = solid.intersect(cq.Workplane("XY").box(999, 999, 999).translate((0, 999 / 2, 0)))
    whole = solid.val().wrapped
    # Lines along which two faces run into each other smoothly are no edges.
    BRepLib.EncodeRegularity_s(whole)
    return whole


def kernel_lines(pad: Pad, *, eye: Direction, right: Direction, apart_mm: float, is_cut: bool = False) -> Points:
    """Points along every visible edge and contour, on paper; of a pad that is cut, its half beyond the cut across the slot."""
    import cadquery as cq
    from OCP.BRepLib import BRepLib
    from OCP.gp import gp_Ax2, gp_Dir, gp_Pnt
    from OCP.HLRAlgo import HLRAlgo_Projector
    from OCP.HLRBRep import HLRBRep_Algo, HLRBRep_HLRToShape

    seen = HLRBRep_Algo()
    seen.Add(_solid(pad, is_cut=is_cut))
    seen.Projector(HLRAlgo_Projector(gp_Ax2(gp_Pnt(0, 0, 0), gp_Dir(*eye), gp_Dir(*right))))
    seen.Update()
    seen.Hide()
    shapes = HLRBRep_HLRToShape(seen)
    found: list[Any] = []
    for lines in (shapes.VCompound(), shapes.OutLineVCompound()):
        if not lines.IsNull():
            BRepLib.BuildCurves3d_s(lines)
            for edge in cq.Shape.cast(lines).Edges():
                count = int(edge.Length() / apart_mm) + 2
                found += [point.toTuple()[:2] for point in edge.positions(np.linspace(0, 1, count))]
    return np.array(found)
