"""The solid as files: STEP exact, STL, 3MF and GLB tessellated. Equal requests give equal bytes, in every process.

One of the two rooms that import the modelling kernel.
"""

import tempfile
from collections.abc import Iterator
from pathlib import Path

from OCP.APIHeaderSection import APIHeaderSection_MakeHeader
from OCP.BRep import BRep_Tool
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.BRepGProp import BRepGProp
from OCP.BRepMesh import BRepMesh_IncrementalMesh
from OCP.GProp import GProp_GProps
from OCP.IFSelect import IFSelect_ReturnStatus
from OCP.Interface import Interface_Static
from OCP.Message import Message, Message_PrinterOStream
from OCP.Quantity import Quantity_Color, Quantity_TypeOfColor
from OCP.STEPCAFControl import STEPCAFControl_Writer
from OCP.STEPControl import STEPControl_StepModelType
from OCP.TCollection import TCollection_ExtendedString, TCollection_HAsciiString
from OCP.TDataStd import TDataStd_Name
from OCP.TDocStd import TDocStd_Document
from OCP.TopAbs import TopAbs_Orientation, TopAbs_ShapeEnum
from OCP.TopExp import TopExp_Explorer
from OCP.TopLoc import TopLoc_Location
from OCP.TopoDS import TopoDS, TopoDS_Face, TopoDS_Solid
from OCP.XCAFDoc import XCAFDoc_ColorType, XCAFDoc_DocumentTool

from geometry.errors import ModelError
from geometry.mesh import Mesh, Triangle, Vertex, glb_bytes, stl_bytes
from geometry.model_label import COLOUR, ModelFormat, ModelLabel, ascii_text
from geometry.pad import Pad
from geometry.solid import build_solid
from geometry.threemf import threemf_bytes
from geometry.volume import volume_mm3

_CHORD_MM = 0.008
"""Asked of the kernel, whose mesh of a rounded corner came out up to a twentieth coarser than asked [measured]."""
_CHORD_RAD = 0.5
_NO_TIME = "1970-01-01T00:00:00"
"""STEP asks for a time stamp; a fixed one keeps equal designs equal byte for byte."""

_VOLUME_TOLERANCE = 1e-6
_QUADRATURE_TOLERANCE = 1e-9

# The kernel reports each step of a transfer on the standard output, where only this program's own words belong.
Message.DefaultMessenger_s().RemovePrinters(Message_PrinterOStream.get_type_descriptor_s())


def model_bytes(pad: Pad, label: ModelLabel, model_format: ModelFormat) -> bytes:
    """Build the pad and write it in one format; a model that is not what was asked for never leaves.

    Raises BadMeasurementsError where the dimensions are no single body, ModelError where the kernel fails.
    """
    solid = build_solid(pad)
    require_sound(solid, pad)
    if model_format == "step":
        return step_bytes(solid, label)
    mesh = mesh_of(solid)
    write = {"stl": stl_bytes, "3mf": threemf_bytes, "glb": glb_bytes}[model_format]
    return write(mesh, label)


def require_sound(solid: TopoDS_Solid, pad: Pad) -> None:
    """Refuse a solid that the kernel itself calls invalid, or whose volume is not that of the pad's closed form."""
    if not BRepCheck_Analyzer(solid).IsValid():
        raise ModelError("The modelling kernel built a body that is not valid.")
    measured, expected = solid_volume_mm3(solid), volume_mm3(pad)
    if abs(measured - expected) > _VOLUME_TOLERANCE * expected:
        raise ModelError(f"The model came out at {measured:.3f} mm³ instead of {expected:.3f} mm³.")


def solid_volume_mm3(solid: TopoDS_Solid) -> float:
    """
    Volume of a solid as the kernel integrates it.

    Parameters
    ----------
    solid : TopoDS_Solid
        A closed solid, [mm]

    Returns
    -------
    volume : float
        Volume, [mm^3]

    Notes
    -----
    The kernel refines its quadrature to an asked tolerance, and misses that by up to 60 times [measured]; unasked it is
    off by up to 3e-6 where two cylinders cross.
    """
    properties = GProp_GProps()
    BRepGProp.VolumeProperties_s(solid, properties, _QUADRATURE_TOLERANCE)
    return float(properties.Mass())


def step_bytes(solid: TopoDS_Solid, label: ModelLabel) -> bytes:
    """The solid as ISO 10303-21 (STEP), schema AP214, in mm: one named part with colour and material."""
    Interface_Static.SetCVal_s("write.step.schema", "AP214IS")
    Interface_Static.SetCVal_s("write.step.unit", "MM")
    Interface_Static.SetIVal_s("write.step.assembly", 0)
    writer = STEPCAFControl_Writer()
    writer.SetNameMode(True)
    writer.SetColorMode(True)
    writer.SetMaterialMode(True)
    done = writer.Transfer(_document(solid, label), STEPControl_StepModelType.STEPControl_AsIs)
    _write_header(writer, label)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "pad.step")
        if not done or writer.Write(str(path)) != IFSelect_ReturnStatus.IFSelect_RetDone:
            raise ModelError("The modelling kernel could not write the STEP file.")
        return path.read_bytes()


def _document(solid: TopoDS_Solid, label: ModelLabel) -> TDocStd_Document:
    """A document of one part with its name, colour and material."""
    document = TDocStd_Document(TCollection_ExtendedString("XmlXCAF"))
    XCAFDoc_DocumentTool.SetLengthUnit_s(document, 0.001)
    part = XCAFDoc_DocumentTool.ShapeTool_s(document.Main()).AddShape(solid, False)
    TDataStd_Name.Set_s(part, TCollection_ExtendedString(label.product_name))
    colour = Quantity_Color(*COLOUR, Quantity_TypeOfColor.Quantity_TOC_sRGB)
    XCAFDoc_DocumentTool.ColorTool_s(document.Main()).SetColor(part, colour, XCAFDoc_ColorType.XCAFDoc_ColorGen)
    material, nothing = _text(label.material), _text("")
    XCAFDoc_DocumentTool.MaterialTool_s(document.Main()).SetMaterial(part, material, nothing, 0, nothing, nothing)
    return document


def _write_header(writer: STEPCAFControl_Writer, label: ModelLabel) -> None:
    """Say in the file's header what it is, instead of who wrote it when."""
    header = APIHeaderSection_MakeHeader(writer.ChangeWriter().Model())
    header.SetName(_text(label.product_name))
    header.SetTimeStamp(_text(_NO_TIME))
    header.SetAuthorValue(1, _text(""))
    header.SetOrganizationValue(1, _text(""))
    header.SetOriginatingSystem(_text(f"Seamrest {label.engine_version}"))
    header.SetPreprocessorVersion(_text(f"Seamrest {label.engine_version}"))
    header.SetAuthorisation(_text(""))
    header.SetDescriptionValue(1, _text(f"{label.product_name}: {label.title}; {label.material}; {label.standing}"))


def _text(words: str) -> TCollection_HAsciiString:
    return TCollection_HAsciiString(ascii_text(words))


def mesh_of(solid: TopoDS_Solid) -> Mesh:
    """The solid's skin as triangles, nowhere further than 0.01 mm from it.

    Neighbouring faces share the points of their common edge exactly, so that equal coordinates are the same vertex.
    """
    BRepMesh_IncrementalMesh(solid, _CHORD_MM, False, _CHORD_RAD, False)
    index: dict[Vertex, int] = {}
    triangles: list[Triangle] = []
    explorer = TopExp_Explorer(solid, TopAbs_ShapeEnum.TopAbs_FACE)
    while explorer.More():
        triangles += _triangles(TopoDS.Face_s(explorer.Current()), index)
        explorer.Next()
    return Mesh(tuple(index), tuple(triangles))


def _triangles(face: TopoDS_Face, index: dict[Vertex, int]) -> Iterator[Triangle]:
    """The triangles of one face; vertices not yet known are added to the index."""
    skin = BRep_Tool.Triangulation_s(face, TopLoc_Location())
    if skin is None:
        raise ModelError("The modelling kernel could not tessellate a face.")
    points = (skin.Node(i) for i in range(1, skin.NbNodes() + 1))
    # Adding 0.0 turns -0.0 into 0.0.
    names = [index.setdefault((p.X() + 0.0, p.Y() + 0.0, p.Z() + 0.0), len(index)) for p in points]
    inside_out = face.Orientation() == TopAbs_Orientation.TopAbs_REVERSED
    for i in range(1, skin.NbTriangles() + 1):
        a, b, c = (names[node - 1] for node in skin.Triangle(i).Get())
        # Around a cone's point the kernel leaves triangles of no area, two corners of which are one.
        if len({a, b, c}) == 3:
            yield (a, c, b) if inside_out else (a, b, c)
