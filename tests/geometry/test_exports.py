"""The model files as other readers see them: sizes, names, headers, closed skins, equal bytes."""

import re
import subprocess
import sys
from io import BytesIO
from pathlib import Path

import lib3mf
import numpy as np
import pytest
import trimesh
from hypothesis import given
from numpy.typing import NDArray
from OCP.STEPControl import STEPControl_Reader
from OCP.TopoDS import TopoDS_Solid

from geometry import exports
from geometry.errors import ModelError
from geometry.exports import mesh_of, model_bytes, require_sound, solid_volume_mm3
from geometry.mesh import Mesh, stl_bytes
from geometry.model_label import MODEL_FORMATS, ModelFormat, ModelLabel
from geometry.outline import Line, Outline
from geometry.pad import Pad
from geometry.profile import slot_outline, turned_outline
from geometry.solid import build_solid
from geometry.threemf import threemf_bytes
from geometry.volume import volume_mm3
from tests.examples import examples
from tests.geometry.pads import LABEL, ORDINARY, STEMMED, buildable_pads

Points = NDArray[np.float64]
NOT_FIT = ModelLabel(
    design_id="k3f9", title="van", revision="", material="HDPE", fit_to_make=False, engine_version="0.1.0"
)


def reread(step: bytes, folder: Path) -> TopoDS_Solid:
    """The body in a STEP file, by the kernel's plain reader."""
    path = folder / "pad.step"
    path.write_bytes(step)
    reader = STEPControl_Reader()
    reader.ReadFile(str(path))
    assert reader.TransferRoots() == 1
    return reader.OneShape()


def entities(step: bytes, kind: str) -> list[str]:
    """The written arguments of every entity of a kind."""
    return re.findall(rf"= {kind}\((.*?)\);", re.sub(r"\n *", "", step.decode("ascii")))


def skin(mesh: Mesh) -> trimesh.Trimesh:
    """The triangles as they are, nothing merged or mended."""
    return trimesh.Trimesh(np.array(mesh.vertices), np.array(mesh.triangles), process=False)


def distance_mm(outline: Outline, points: Points) -> Points:
    """How far each point of a plane is from the nearest piece of an outline of lines and arcs."""
    distances = []
    for piece in outline:
        start, end = np.array(piece.start), np.array(piece.end)
        if isinstance(piece, Line):
            along = np.clip((points - start) @ (end - start) / ((end - start) @ (end - start)), 0, 1)
            distances.append(np.linalg.norm(points - start - along[:, None] * (end - start), axis=1))
        else:
            distances.append(abs(np.linalg.norm(points - np.array(piece.centre), axis=1) - piece.radius_mm))
    nearest: Points = np.min(distances, axis=0)
    return nearest


def chord_error_mm(pad: Pad, points: Points) -> Points:
    """How far points are from the turned surface or the slot's, whichever is nearer."""
    x, y, z = points.T
    turned = distance_mm(turned_outline(pad), np.column_stack([np.hypot(x, y), z]))
    return np.minimum(turned, distance_mm(slot_outline(pad), np.column_stack([x, z])))


def assert_files_hold_the_pad(pad: Pad, folder: Path) -> None:
    """STEP reads back with equal volume; STL and 3MF are closed, outward, and of nearly that volume."""
    solid = build_solid(pad)
    require_sound(solid, pad)
    volume = volume_mm3(pad)
    assert solid_volume_mm3(reread(exports.step_bytes(solid, LABEL), folder)) == pytest.approx(volume, rel=1e-6)
    mesh = mesh_of(solid)
    loaded = trimesh.load_mesh(BytesIO(stl_bytes(mesh, LABEL)), file_type="stl")
    for closed in (skin(mesh), loaded):
        assert closed.is_watertight
        assert closed.is_winding_consistent
        assert closed.body_count == 1
        # A skin within 0.01 mm of the solid is off by no more than its area times that.
        assert abs(closed.volume - volume) <= 0.01 * closed.area
    assert np.abs(loaded.bounds[1] - loaded.bounds[0])[2] == pytest.approx(pad.overall_height_mm, abs=1e-4)


@given(pad=buildable_pads())
@examples(12, many=2000)
def test_every_buildable_pad_survives_each_file(pad: Pad, tmp_path: Path) -> None:
    """Volume in closed form; trimesh for the skins."""
    assert_files_hold_the_pad(pad, tmp_path)


@pytest.mark.parametrize("pad", [ORDINARY, STEMMED, STEMMED.with_(slot_corner_radius_mm=4.5)])
def test_no_triangle_is_further_than_a_hundredth_from_the_exact_surface(pad: Pad) -> None:
    """Distance of vertices, edge middles and centroids from the exact outlines: our own oracle."""
    corners = skin(mesh_of(build_solid(pad))).triangles
    middles = (corners + np.roll(corners, 1, axis=1)) / 2
    points = np.concatenate([corners.reshape(-1, 3), middles.reshape(-1, 3), corners.mean(axis=1)])
    assert chord_error_mm(pad, points).max() <= 0.01


def test_the_step_file_is_one_named_part_in_millimetres() -> None:
    """ISO 10303-214: one product, one closed body, SI unit with the prefix milli."""
    step = model_bytes(STEMMED, LABEL, "step")
    assert entities(step, "PRODUCT") == ["'lifting pad k3f9wq2a rev B','lifting pad k3f9wq2a rev B','',(#8)"]
    assert len(entities(step, "MANIFOLD_SOLID_BREP")) == 1
    assert b"SI_UNIT(.MILLI.,.METRE.)" in step
    assert b"AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }" in step


def test_the_step_file_carries_material_and_colour() -> None:
    """The colour is the drawing's, #E9DCC3 (233, 220, 195)."""
    step = model_bytes(STEMMED, LABEL, "step")
    assert entities(step, "DESCRIPTIVE_REPRESENTATION_ITEM") == ["'PA66 (nylon), extruded',''"]
    (colour,) = entities(step, "COLOUR_RGB")
    written = [float(part) for part in colour.split(",")[1:]]
    assert written == pytest.approx([233 / 255, 220 / 255, 195 / 255], abs=1e-3)


def test_the_step_header_says_which_design_it_is_in_plain_ascii() -> None:
    """Accents and typographic quotes of the title are gone; no clock time is in the file."""
    step = model_bytes(STEMMED, LABEL, "step")
    assert step.isascii()
    header = " ".join(step[: step.index(b"ENDSEC")].decode().split())
    assert "FILE_NAME('lifting pad k3f9wq2a rev B','1970-01-01T00:00:00'" in header
    assert "lifting pad k3f9wq2a rev B: Van, left front point; PA66 (nylon), extruded" in header


@pytest.mark.parametrize("model_format", MODEL_FORMATS)
def test_a_design_that_is_not_fit_says_so_in_every_file(model_format: ModelFormat) -> None:
    """NOT-FIT stands in the STEP header and product, the STL header and the 3MF title; a fit design has none."""
    marked = [text_of(model_bytes(ORDINARY, label, model_format), model_format) for label in (NOT_FIT, LABEL)]
    assert ["NOT-FIT" in text for text in marked] == [True, False]


def text_of(content: bytes, model_format: ModelFormat) -> str:
    """What a file says in words."""
    if model_format == "3mf":
        return " ".join(metadata(content).values())
    if model_format == "glb":
        return content[20 : 20 + int.from_bytes(content[12:16], "little")].decode()
    return content[:80].decode() if model_format == "stl" else content.decode()


def test_the_stl_header_names_the_design_and_does_not_look_like_text() -> None:
    """80 bytes; a reader takes a file that starts with “solid” for the text form."""
    stl = model_bytes(STEMMED, LABEL, "stl")
    assert stl[:80].startswith(b"lifting pad k3f9wq2a rev B; mm; ")
    assert len(stl) == 84 + 50 * int.from_bytes(stl[80:84], "little")


def test_stl_normals_point_outward_with_length_one() -> None:
    """Against normals computed from the corners (trimesh)."""
    mesh = mesh_of(build_solid(STEMMED))
    facets = np.frombuffer(stl_bytes(mesh, LABEL)[84:], dtype=[("n", "<3f4"), ("v", "<9f4"), ("a", "<u2")])
    expected = skin(mesh).face_normals
    assert np.abs(facets["n"] - expected).max() < 1e-4


def test_a_glb_file_stands_upright_in_metres() -> None:
    """Read by trimesh: closed, of the pad's size with its height along y, its slot along z, and of its volume."""
    content = model_bytes(STEMMED, LABEL, "glb")
    scene = trimesh.load_scene(BytesIO(content), file_type="glb")
    assert len(scene.geometry) == 1
    mesh = next(iter(scene.geometry.values()))
    low, high = mesh.bounds
    across, height = STEMMED.body_diameter_mm / 1000, STEMMED.overall_height_mm / 1000
    assert high - low == pytest.approx([across, height, across], abs=2e-5)
    assert low[1] == pytest.approx(-STEMMED.stem_length_mm / 1000)
    assert mesh.is_watertight
    assert mesh.volume == pytest.approx(volume_mm3(STEMMED) * 1e-9, rel=2e-3)
    # Above the slot's floor radii nothing stands nearer to the middle plane than the slot's walls.
    beside = mesh.vertices[mesh.vertices[:, 1] > (STEMMED.web_mm + STEMMED.slot_corner_radius_mm - 0.01) / 1000]
    assert np.abs(beside[:, 0]).min() == pytest.approx(STEMMED.slot_width_mm / 2000, abs=1e-6)


def test_a_glb_file_says_its_own_length_and_what_it_is() -> None:
    """Lengths as binary glTF 2.0 has them: the whole file, then each part, all multiples of four."""
    content = model_bytes(ORDINARY, LABEL, "glb")
    assert content[:4] == b"glTF"
    version, length, described = (int.from_bytes(content[at : at + 4], "little") for at in (4, 8, 12))
    assert (version, length) == (2, len(content))
    assert described % 4 == len(content) % 4 == 0
    numbers = int.from_bytes(content[20 + described : 24 + described], "little")
    assert 28 + described + numbers == len(content)
    assert f'"name":"{LABEL.product_name}"' in text_of(content, "glb")


def read_3mf(content: bytes) -> "lib3mf.Model":
    """The model as the 3MF Consortium's own library reads it in strict mode; any warning is an error."""
    model = lib3mf.Wrapper().CreateModel()
    reader = model.QueryReader("3mf")
    reader.SetStrictModeActive(True)
    reader.ReadFromBuffer(content)
    assert reader.GetWarningCount() == 0
    return model


def metadata(content: bytes) -> dict[str, str]:
    """The named words of a 3MF file."""
    model = read_3mf(content)
    group = model.GetMetaDataGroup()
    entries = [group.GetMetaData(i) for i in range(group.GetMetaDataCount())]
    return {entry.GetName(): entry.GetValue() for entry in entries}


def test_the_3mf_file_is_one_closed_object_in_millimetres() -> None:
    """lib3mf in strict mode; unit number 3 is the millimetre."""
    model = read_3mf(model_bytes(STEMMED, LABEL, "3mf"))
    objects = model.GetMeshObjects()
    assert objects.MoveNext()
    body = objects.GetCurrentMeshObject()
    assert body.IsManifoldAndOriented()
    assert body.IsValid()
    assert not objects.MoveNext()
    assert model.GetUnit() == lib3mf.ModelUnit.MilliMeter


def test_the_3mf_file_stands_on_the_plate_at_positive_coordinates() -> None:
    """The outbox of the whole build: from 0 to the body's diameter and the overall height."""
    box = read_3mf(model_bytes(STEMMED, LABEL, "3mf")).GetOutbox()
    assert list(box.MinCoordinate) == pytest.approx([0, 0, 0], abs=1e-5)
    assert list(box.MaxCoordinate) == pytest.approx([74, 74, 45], abs=0.01)


def test_the_3mf_file_says_what_it_is() -> None:
    """Title, description and application by the core specification's names."""
    said = metadata(model_bytes(STEMMED, LABEL, "3mf"))
    assert said["Title"] == "lifting pad k3f9wq2a rev B"
    assert said["Application"] == "Seamrest 0.1.0"
    assert said["Description"] == "Van, left front point; every estimate passes, not tested"


def test_the_3mf_file_survives_words_that_are_markup() -> None:
    """A title of tags and quotes is words, not elements."""
    label = ModelLabel(
        design_id='a"b', title="<x>&", revision="]]>", material="'<", fit_to_make=True, engine_version="0"
    )
    assert metadata(threemf_bytes(mesh_of(build_solid(ORDINARY)), label))["Title"] == "lifting pad a b rev ]]"


_HASHES = """
import hashlib, sys
from geometry.exports import model_bytes
from tests.geometry.pads import LABEL, ORDINARY, STEMMED
if sys.argv[1] == "used":
    for form in ("stl", "step", "3mf", "glb"):
        model_bytes(STEMMED, LABEL, form)
print([hashlib.sha256(model_bytes(ORDINARY, LABEL, form)).hexdigest() for form in ("step", "stl", "3mf", "glb")])
"""


def test_equal_designs_give_equal_bytes_in_every_process() -> None:
    """A fresh process and one that has written other files before agree on all four formats."""
    root = Path(exports.__file__).parent.parent
    fresh, used = (
        subprocess.run([sys.executable, "-c", _HASHES, how], cwd=root, capture_output=True, check=True).stdout
        for how in ("fresh", "used")
    )
    assert fresh == used
    assert fresh.count(b",") == 3


def test_a_model_of_another_volume_never_leaves() -> None:
    """The guard compares the solid with the closed form of the pad that was asked for."""
    solid = build_solid(ORDINARY)
    require_sound(solid, ORDINARY)
    with pytest.raises(ModelError, match="instead of"):
        require_sound(solid, ORDINARY.with_(slot_corner_radius_mm=0.55))


def test_the_kernel_says_nothing_on_the_standard_output(capfd: pytest.CaptureFixture[str]) -> None:
    """A command's output is the program's own."""
    model_bytes(ORDINARY, LABEL, "step")
    assert capfd.readouterr().out == ""
