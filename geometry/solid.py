"""The pad as one exact solid: a turned profile, a plug that is not round, and one cut with everything that is cut in.

One of the two rooms that import the modelling kernel. It is called through its own bindings: the radii and chamfers
stand in the profiles already, so that two or three operations are enough.
"""

from collections.abc import Callable, Iterable, Iterator
from math import pi

from OCP.BRepAlgoAPI import BRepAlgoAPI_BooleanOperation, BRepAlgoAPI_Cut, BRepAlgoAPI_Fuse
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge, BRepBuilderAPI_MakeFace, BRepBuilderAPI_MakeWire
from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox, BRepPrimAPI_MakeCylinder, BRepPrimAPI_MakePrism, BRepPrimAPI_MakeRevol
from OCP.GC import GC_MakeArcOfCircle
from OCP.gp import gp_Ax1, gp_Ax2, gp_Dir, gp_Pnt, gp_Vec
from OCP.TopAbs import TopAbs_ShapeEnum
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Edge, TopoDS_Face, TopoDS_Shape, TopoDS_Solid
from OCP.TopTools import TopTools_ListOfShape

from geometry.buildable import require_buildable
from geometry.errors import ModelError
from geometry.outline import Line, Outline, Point, Segment, polyline
from geometry.pad import Pad
from geometry.profile import cross_slot_outline, plug_outline, relief_outline, slot_outline, turned_outline

_CLEAR_MM = 1.0
"""The cutting body stands out of the part by this much, so that no two faces coincide."""
_SUNK_MM = 0.25
"""A plug begins this far below its shoulder, where there is always material."""

Place = Callable[[Point], gp_Pnt]
"""Where a point of a plane outline lies in space."""


def build_solid(pad: Pad) -> TopoDS_Solid:
    """The pad standing on z = 0, its axis on Z and its slot along Y.

    Raises BadMeasurementsError where the dimensions are no single body, ModelError where the kernel fails.
    """
    require_buildable(pad)
    body, tools = _turned_body(pad), list(_tools(pad))
    if pad.has_plug and not pad.plug_is_round:
        body = _done(BRepAlgoAPI_Fuse(body, _plug_body(pad)), "add the plug")
    if len(tools) == 1:
        body = _done(BRepAlgoAPI_Cut(body, tools[0]), "cut the slot")
    elif tools:
        body = _cut_at_once(body, tools)
    return _one_solid(body)


def _tools(pad: Pad) -> Iterator[TopoDS_Shape]:
    """Everything that is taken out of the turned body."""
    if pad.has_slot:
        yield _groove_body(pad, slot_outline(pad), along_x=False)
    if pad.is_crossed:
        yield _groove_body(pad, cross_slot_outline(pad), along_x=True)
    if pad.has_relief:
        yield _relief_body(pad)
    if pad.has_flats:
        yield from _flat_bodies(pad)
    if pad.has_cross_hole:
        yield _hole_body(pad)
    if pad.has_plug and not pad.plug_is_round and pad.edge_chamfer_mm:
        yield from _plug_chamfer_bodies(pad)


def _cut_at_once(body: TopoDS_Shape, tools: list[TopoDS_Shape]) -> TopoDS_Shape:
    """One cut with all tools, which may overlap; faces that lie in one plane become one face again."""
    cut = BRepAlgoAPI_Cut()
    cut.SetArguments(_list_of([body]))
    cut.SetTools(_list_of(tools))
    cut.Build()
    cut.SimplifyResult()
    return _done(cut, "cut what is cut in")


def _list_of(shapes: Iterable[TopoDS_Shape]) -> TopTools_ListOfShape:
    found = TopTools_ListOfShape()
    for shape in shapes:
        found.Append(shape)
    return found


def _done(operation: BRepAlgoAPI_BooleanOperation, what: str) -> TopoDS_Shape:
    if not operation.IsDone():
        raise ModelError(f"The modelling kernel could not {what}.")
    return operation.Shape()


def _turned_body(pad: Pad) -> TopoDS_Shape:
    """The profile turned once around the axis."""
    outline = turned_outline(pad)
    axis = Line(outline[-1].end, outline[0].start)
    face = _face((*outline, axis), _across_y(0))
    return BRepPrimAPI_MakeRevol(face, gp_Ax1(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1))).Shape()


def _groove_body(pad: Pad, outline: Outline, *, along_x: bool) -> TopoDS_Shape:
    """What a slot takes away, longer and higher than the part."""
    reach = pad.body_diameter_mm / 2 + _CLEAR_MM
    (left, top), (right, _) = outline[0].start, outline[-1].end
    above = top + _CLEAR_MM
    lid = (
        Line((right, top), (right, above)),
        Line((right, above), (left, above)),
        Line((left, above), (left, top)),
    )
    place, way = (
        (_across_x(-reach), gp_Vec(2 * reach, 0, 0)) if along_x else (_across_y(-reach), gp_Vec(0, 2 * reach, 0))
    )
    return BRepPrimAPI_MakePrism(_face((*outline, *lid), place), way).Shape()


def _relief_body(pad: Pad) -> TopoDS_Shape:
    """The pocket, higher than the part."""
    floor = _face(relief_outline(pad), _level(pad.body_top_mm - pad.relief_depth_mm))
    return BRepPrimAPI_MakePrism(floor, gp_Vec(0, 0, pad.relief_depth_mm + _CLEAR_MM)).Shape()


def _flat_bodies(pad: Pad) -> Iterator[TopoDS_Shape]:
    """What lies outside the flats; seat and stem stand further in."""
    half, reach = pad.flats_width_mm / 2, pad.body_diameter_mm / 2 + _CLEAR_MM
    low, high = pad.foot_bottom_mm - _CLEAR_MM, pad.body_top_mm + _CLEAR_MM
    for near, far in ((half, reach), (-reach, -half)):
        yield BRepPrimAPI_MakeBox(gp_Pnt(near, -reach, low), gp_Pnt(far, reach, high)).Shape()


def _hole_body(pad: Pad) -> TopoDS_Shape:
    """The cross-hole, longer than the stem is thick."""
    reach = pad.stem_diameter_mm / 2 + _CLEAR_MM
    axis = gp_Ax2(gp_Pnt(-reach, 0, -pad.cross_hole_distance_mm), gp_Dir(1, 0, 0))
    return BRepPrimAPI_MakeCylinder(axis, pad.cross_hole_diameter_mm / 2, 2 * reach).Shape()


def _plug_body(pad: Pad) -> TopoDS_Shape:
    """A plug that is not round, its edges sharp, a little way into the body."""
    # Drawn downwards: only the face that is drawn out keeps its level to the last digit, and the other end goes under.
    top = _face(plug_outline(pad), _level(pad.top_height_mm))
    return BRepPrimAPI_MakePrism(top, gp_Vec(0, 0, -pad.plug_height_mm - _SUNK_MM)).Shape()


def _plug_chamfer_bodies(pad: Pad) -> Iterator[TopoDS_Shape]:
    """What the chamfer takes off the plug: a wedge along each side, and a turned quarter around each corner."""
    radius, x, y = pad.plug_corner_radius_mm, pad.plug_width_mm / 2, pad.plug_length_mm / 2
    over = 0.0 if radius else _CLEAR_MM
    for side in (1, -1):
        if y > radius:
            half = y - radius + over
            yield BRepPrimAPI_MakePrism(_face(_wedge(pad, side, x), _across_y(-half)), gp_Vec(0, 2 * half, 0)).Shape()
        if x > radius:
            half = x - radius + over
            yield BRepPrimAPI_MakePrism(_face(_wedge(pad, side, y), _across_x(-half)), gp_Vec(2 * half, 0, 0)).Shape()
    if radius:
        for across, along, turn in ((1, 1, (1, 0)), (-1, 1, (0, 1)), (-1, -1, (-1, 0)), (1, -1, (0, -1))):
            middle = (across * (x - radius), along * (y - radius))
            axis = gp_Ax1(gp_Pnt(*middle, 0), gp_Dir(0, 0, 1))
            yield BRepPrimAPI_MakeRevol(_face(_wedge(pad, 1, radius), _turned(middle, turn)), axis, pi / 2).Shape()


def _wedge(pad: Pad, side: int, half: float) -> Outline:
    """What lies outside the plug's chamfer, beside a wall so far from the middle; on the far side of the middle nothing."""
    edge, top = pad.edge_chamfer_mm, pad.top_height_mm
    # The shoulder below is not to be touched.
    clear = min(_CLEAR_MM, (pad.plug_height_mm - edge) / 2)
    out, high, inner = half + clear, top + clear, half - edge - clear
    points = [(out, top - edge - clear), (out, high), (max(0.0, inner), high)]
    points += [(0.0, top - edge + half)] if inner < 0 else []
    return polyline([(side * across, z) for across, z in (*points, points[0])])


def _across_y(y: float) -> Place:
    """In a plane across Y: points are (x, z)."""
    return lambda point: gp_Pnt(point[0], y, point[1])


def _across_x(x: float) -> Place:
    """In a plane across X: points are (y, z)."""
    return lambda point: gp_Pnt(x, point[0], point[1])


def _level(z: float) -> Place:
    """In a level plane: points are (x, y)."""
    return lambda point: gp_Pnt(point[0], point[1], z)


def _turned(middle: Point, way: tuple[int, int]) -> Place:
    """In an upright plane through an axis: points are (distance from it, z)."""
    return lambda point: gp_Pnt(middle[0] + way[0] * point[0], middle[1] + way[1] * point[0], point[1])


def _face(outline: Outline, place: Place) -> TopoDS_Face:
    """A flat face bounded by a closed outline."""
    wire = BRepBuilderAPI_MakeWire()
    for edge in _edges(outline, place):
        wire.Add(edge)
    return BRepBuilderAPI_MakeFace(wire.Wire(), True).Face()


def _edges(outline: Iterable[Segment], place: Place) -> Iterable[TopoDS_Edge]:
    """The kernel's edges for the pieces of an outline."""
    for piece in outline:
        start, end = place(piece.start), place(piece.end)
        if isinstance(piece, Line):
            yield BRepBuilderAPI_MakeEdge(start, end).Edge()
        else:
            yield BRepBuilderAPI_MakeEdge(GC_MakeArcOfCircle(start, place(piece.middle), end).Value()).Edge()


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
