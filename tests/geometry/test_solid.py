"""The solid against the kernel's own checks, the closed-form volume, and the same part made by other means."""

import cadquery as cq
import numpy as np
import pytest
import trimesh
from hypothesis import given
from OCP.Bnd import Bnd_Box
from OCP.BRepBndLib import BRepBndLib
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.TopoDS import TopoDS_Solid

from geometry.errors import BadMeasurementsError
from geometry.exports import mesh_of, solid_volume_mm3
from geometry.pad import Pad
from geometry.solid import build_solid
from geometry.volume import volume_mm3
from tests.examples import examples
from tests.geometry.balance import balance_aside_mm, balance_height_mm
from tests.geometry.pads import EVERY_KIND, ORDINARY, STEMMED, buildable_pads, pads_of_any_kind

Box = tuple[float, float, float, float, float, float]


def box_mm(solid: TopoDS_Solid) -> Box:
    """The exact bounding box."""
    box = Bnd_Box()
    BRepBndLib.AddOptimal_s(solid, box, False, False)
    return tuple(box.Get())


def expected_box_mm(pad: Pad) -> Box:
    """The body's diameter along the slot, the width across flats if it has any, and from the lowest point to the highest."""
    radius = pad.body_diameter_mm / 2
    across = pad.flats_width_mm / 2 or radius
    return (-across, -radius, -pad.foot_depth_mm, across, radius, pad.top_height_mm)


def assert_exact(pad: Pad) -> None:
    """Valid, the volume of the closed form to 1e-6, and the right size."""
    solid = build_solid(pad)
    assert BRepCheck_Analyzer(solid).IsValid()
    assert solid_volume_mm3(solid) == pytest.approx(volume_mm3(pad), rel=1e-6)
    assert box_mm(solid) == pytest.approx(expected_box_mm(pad), abs=1e-5)


def assert_closed(pad: Pad) -> None:
    """One closed skin whose triangles all look outward, as another library sees it."""
    mesh = mesh_of(build_solid(pad))
    skin = trimesh.Trimesh(np.array(mesh.vertices), np.array(mesh.triangles), process=False)
    assert skin.is_watertight
    assert skin.is_winding_consistent
    assert skin.body_count == 1
    assert abs(skin.volume - volume_mm3(pad)) <= 0.01 * skin.area


@given(buildable_pads())
@examples(25, many=2000)
def test_every_buildable_pad_becomes_one_exact_solid(pad: Pad) -> None:
    """Kernel's validity check, ∫A(z)dz in closed form, and the dimensions themselves."""
    assert_exact(pad)


@given(pads_of_any_kind())
@examples(20, many=2000)
def test_every_kind_of_pad_becomes_one_exact_solid(pad: Pad) -> None:
    """Kernel's validity check, ∫A(z)dz in closed form, and the dimensions themselves; the skin is closed (trimesh)."""
    assert_exact(pad)
    assert_closed(pad)


def test_the_solid_is_the_same_part_as_a_modelling_script_makes() -> None:
    """Built step by step with 3D edge operations instead of profiles: the bodies differ nowhere, to 1e-6 of the volume."""
    pad = STEMMED
    script = (
        cq.Workplane()
        .circle(pad.seat_diameter_mm / 2)
        .extrude(pad.seat_length_mm)
        .faces("<Z")
        .edges()
        .fillet(pad.seat_corner_radius_mm)
        .union(
            cq.Workplane("XY", origin=(0, 0, pad.seat_length_mm))
            .circle(pad.body_diameter_mm / 2)
            .extrude(pad.top_height_mm - pad.seat_length_mm)
            .edges()
            .chamfer(pad.edge_chamfer_mm)
        )
        .union(cq.Workplane().circle(pad.stem_diameter_mm / 2).extrude(-pad.stem_length_mm))
        .cut(slot_by_script(pad))
    )
    other, ours = script.findSolid(), cq.Shape(build_solid(pad))
    assert other.cut(ours).Volume() + ours.cut(other).Volume() < 1e-6 * volume_mm3(pad)


def slot_by_script(pad: Pad) -> cq.Workplane:
    """A block with filleted lower edges, and a trapezium for the mouth."""
    length, half, mouth = pad.body_diameter_mm + 2, pad.slot_width_mm / 2, pad.slot_mouth_chamfer_mm
    block = (
        cq.Workplane("XY", origin=(0, 0, pad.web_mm))
        .rect(2 * half, length)
        .extrude(pad.slot_depth_mm)
        .edges("|Y and <Z")
        .fillet(pad.slot_corner_radius_mm)
    )
    top = pad.top_height_mm
    flare = [(-half, top - mouth), (half, top - mouth), (half + mouth, top), (-half - mouth, top)]
    return block.union(cq.Workplane("XZ").polyline(flare).close().extrude(length / 2, both=True))


def test_the_balance_height_is_that_of_the_solid() -> None:
    """The kernel's own integration of the centre of gravity, to 0.01 µm."""
    centre = cq.Shape.centerOfMass(cq.Shape(build_solid(STEMMED)))
    assert centre.toTuple() == pytest.approx((0, 0, balance_height_mm(STEMMED)), abs=1e-5)


def test_the_balance_point_of_a_slot_beside_the_middle_is_that_of_the_solid() -> None:
    """The kernel's own integration of the centre of gravity, to 0.01 µm."""
    pad = EVERY_KIND["offset slot with relief"]
    centre = cq.Shape.centerOfMass(cq.Shape(build_solid(pad)))
    assert centre.toTuple() == pytest.approx((balance_aside_mm(pad), 0, balance_height_mm(pad)), abs=1e-5)


@pytest.mark.parametrize("kind", EVERY_KIND)
def test_each_kind_by_itself_becomes_one_exact_solid(kind: str) -> None:
    """As every buildable pad."""
    assert_exact(EVERY_KIND[kind])


@pytest.mark.parametrize(
    "changes",
    [
        {"plug_corner_radius_mm": 0},
        {"plug_corner_radius_mm": 1},
        {"plug_corner_radius_mm": 0.4},
        {"plug_corner_radius_mm": 10},
        {"edge_chamfer_mm": 0},
        {"plug_length_mm": 20, "plug_corner_radius_mm": 9.999},
        {"plug_height_mm": 1.01},
    ],
)
def test_a_plug_at_the_end_of_its_range_still_builds(changes: dict[str, float]) -> None:
    """Sharp, as round as its chamfer is wide or less, round at its ends, no chamfer, all but round, next to no wall."""
    assert_exact(EVERY_KIND["plug"].with_(**changes))
    assert_closed(EVERY_KIND["plug"].with_(**changes))


@pytest.mark.parametrize(
    "changes",
    [
        {"relief_depth_mm": 15},
        {"relief_depth_mm": 14.8},
        {"relief_depth_mm": 14.5},
        {"relief_depth_mm": 18},
        {"relief_width_mm": 11.5},
        {"slot_corner_radius_mm": 4.5, "relief_width_mm": 11.5},
        {"relief_length_mm": 0.5},
    ],
)
def test_a_relief_at_the_end_of_its_range_still_builds(changes: dict[str, float]) -> None:
    """Floors in one plane, within the floor radius and at its upper end, an open floor, the slot's own width, a mere nick."""
    assert_exact(EVERY_KIND["relief"].with_(**changes))
    assert_closed(EVERY_KIND["relief"].with_(**changes))


@pytest.mark.parametrize("radius", [0.0, 0.5, 4.0])
@pytest.mark.parametrize("width", [8.0, 9.0, 40.0])
def test_crossed_slots_of_any_floor_radius_build(radius: float, width: float) -> None:
    """Equal widths make floor radii that meet in a curve through a point where all surfaces touch."""
    pad = EVERY_KIND["crossed slots"].with_(slot_corner_radius_mm=radius, cross_slot_width_mm=width)
    assert_exact(pad)
    assert_closed(pad)


@pytest.mark.parametrize(
    "changes",
    [
        {"seat_corner_radius_mm": 0},
        {"seat_corner_radius_mm": 13},
        {"edge_chamfer_mm": 0},
        {"slot_mouth_chamfer_mm": 0},
        {"slot_corner_radius_mm": 0},
        {"slot_corner_radius_mm": 4.5},
        {"seat_corner_radius_mm": 0, "edge_chamfer_mm": 0, "slot_mouth_chamfer_mm": 0, "slot_corner_radius_mm": 0},
        {"slot_corner_radius_mm": 4.5, "slot_depth_mm": 5.5},
        {"web_mm": 14},
    ],
)
def test_a_dimension_at_the_end_of_its_range_still_builds(changes: dict[str, float]) -> None:
    """No radius, full radius, no chamfer, a floor that is all round, a floor at the end of the lip chamfer."""
    assert_exact(ORDINARY.with_(**changes))


def test_an_impossible_pad_is_refused_before_the_kernel_sees_it() -> None:
    """The seat is longer than the web is thick."""
    with pytest.raises(BadMeasurementsError, match="web_mm"):
        build_solid(ORDINARY.with_(web_mm=12))
