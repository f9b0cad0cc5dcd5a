"""The pad as one exact solid: a turned profile, and one profiled cut for the slot.

One of the two rooms that import the modelling kernel. It is called through its own bindings: the radii and chamfers
stand in the profiles already, so that two operations are enough.
"""

from collections.abc import Iterable

from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge, BRepBuilderAPI_MakeFace, BRepBuilderAPI_MakeWire
from OCP.BRepPrimAPI import BRepPrimAPI_MakePrism, BRepPrimAPI_MakeRevol
from OCP.GC import GC_MakeArcOfCircle
from OCP.gp import gp_Ax1, gp_Dir, gp_Pnt, gp_Vec
from OCP.TopAbs import TopAbs_ShapeEnum
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Edge, TopoDS_Face, TopoDS_Shape, TopoDS_Solid

from geometry.buildable import require_buildable
from geometry.errors import ModelError
from geometry.outline import Line, Outline, Segment
from geometry.pad import Pad
from geometry.profile import slot_outline, turned_outline

_CLEAR_MM = 1.0
"""The cutting body stands out of the part by this much, so that no two faces coincide."""


def build_solid(pad: Pad) -> TopoDS_Solid:
    """The pad standing on z = 0, its axis on Z and its slot along Y.

    Raises BadMeasurementsError where the dimensions are no single body, ModelError where the kernel fails.
    """
    require_buildable(pad)
    turned, slot = _turned_body(pad), _slot_body(pad)
    cut = BRepAlgoAPI_Cut(turned, slot)
    if not cut.IsDone():
        raise ModelError("The modelling kernel could not cut the slot.")
    return _one_solid(cut.Shape())


def _turned_body(pad: Pad) -> TopoDS_Shape:
    """The profile turned once around the axis."""
    outline = turned_outline(pad)
    axis = Line(outline[-1].end, outline[0].start)
    return BRepPrimAPI_MakeRevol(_face((*outline, axis), 0), gp_Ax1(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1))).Shape()


def _slot_body(pad: Pad) -> TopoDS_Shape:
    """What the slot takes away, longer and higher than the part."""
    outline, reach = slot_outline(pad), pad.body_diameter_mm / 2 + _CLEAR_MM
    (left, top), (right, _) = outline[0].start, outline[-1].end
    above = top + _CLEAR_MM
    lid = (
        Line((right, top), (right, above)),
        Line((right, above), (left, above)),
        Line((left, above), (left, top)),
    )
    return BRepPrimAPI_MakePrism(_face((*outline, *lid), -reach), gp_Vec(0, 2 * reach, 0)).Shape()


def _face(outline: Outline, y: float) -> TopoDS_Face:
    """A flat face bounded by a closed outline, in the plane across Y."""
    wire = BRepBuilderAPI_MakeWire()
    for edge in _edges(outline, y):
        wire.Add(edge)
    return BRepBuilderAPI_MakeFace(wire.Wire(), True).Face()


def _edges(outline: Iterable[Segment], y: float) -> Iterable[TopoDS_Edge]:
    """The kernel's edges for the pieces of an outline."""
    for piece in outline:
        start, end = gp_Pnt(piece.start[0], y, piece.start[1]), gp_Pnt(piece.end[0], y, piece.end[1])
        if isinstance(piece, Line):
            yield BRepBuilderAPI_MakeEdge(start, end).Edge()
        else:
            middle = gp_Pnt(piece.middle[0], y, piece.middle[1])
            yield BRepBuilderAPI_MakeEdge(GC_MakeArcOfCircle(start, middle, end).Value()).Edge()


def _one_solid(shape: TopoDS_Shape) -> TopoDS_Solid:
    """The single solid in what an operation returned: a cut gives a compound."""
    explorer = TopExp_Explorer(shape, TopAbs_ShapeEnum.TopAbs_SOLID)
    solids = []
    while explorer.More():
        solids.append(TopoDS.Solid_s(explorer.Current()))
        explorer.Next()
    if len(solids) != 1:
        raise ModelError(f"The model came out as {len(solids)} bodies instead of one.")
    return solids[0]
