"""The solid against the kernel's own checks, the closed-form volume, and the same part made by other means."""

import cadquery as cq
import pytest
from hypothesis import HealthCheck, given, settings
from OCP.Bnd import Bnd_Box
from OCP.BRepBndLib import BRepBndLib
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.TopoDS import TopoDS_Solid

from geometry.errors import BadMeasurementsError
from geometry.exports import solid_volume_mm3
from geometry.pad import Pad
from geometry.solid import build_solid
from geometry.volume import balance_height_mm, volume_mm3
from tests.geometry.pads import ORDINARY, STEMMED, buildable_pads

Box = tuple[float, float, float, float, float, float]


def box_mm(solid: TopoDS_Solid) -> Box:
    """The exact bounding box."""
    box = Bnd_Box()
    BRepBndLib.AddOptimal_s(solid, box, False, False)
    return tuple(box.Get())


def expected_box_mm(pad: Pad) -> Box:
    """The body's diameter both ways, and from the foot to the wall top."""
    radius = pad.body_diameter_mm / 2
    return (-radius, -radius, -pad.stem_length_mm, radius, radius, pad.top_height_mm)


def assert_exact(pad: Pad) -> None:
    """Valid, the volume of the closed form to 1e-6, and the right size."""
    solid = build_solid(pad)
    assert BRepCheck_Analyzer(solid).IsValid()
    assert solid_volume_mm3(solid) == pytest.approx(volume_mm3(pad), rel=1e-6)
    assert box_mm(solid) == pytest.approx(expected_box_mm(pad), abs=1e-5)


@given(buildable_pads())
@settings(max_examples=40, deadline=None)
def test_every_buildable_pad_becomes_one_exact_solid(pad: Pad) -> None:
    """Kernel's validity check, ∫A(z)dz in closed form, and the dimensions themselves."""
    assert_exact(pad)


@pytest.mark.full
@given(buildable_pads())
@settings(max_examples=2000, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_two_thousand_pads_become_exact_solids(pad: Pad) -> None:
    """The same as above, many times."""
    assert_exact(pad)


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
