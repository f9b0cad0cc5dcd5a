"""The views show the solid that is made; oracle: the modelling kernel, which the drawing does not use."""

from functools import cache
from itertools import pairwise
from math import sqrt
from typing import Any

import pytest

from geometry.drawing.isometric import isometric_view
from geometry.drawing.model import Arc, Curve, Line, View
from geometry.drawing.plan import top_view, underside_view
from geometry.drawing.side import side_view
from geometry.drawing.views import section_view
from geometry.pad import Pad
from tests.drawing.pads import KNOWN

TOLERANCE_MM = 0.01


@pytest.fixture(params=KNOWN)
def pad(request: pytest.FixtureRequest) -> Pad:
    return KNOWN[request.param]


@cache
def solid(pad: Pad) -> Any:
    """The product's own model."""
    import cadquery as cq

    from geometry.solid import build_solid

    return cq.Shape.cast(build_solid(pad))


def extent_at(pad: Pad, z: float) -> float:
    """Half the solid's extent along the slot at a height, by cutting out a thin slice."""
    import cadquery as cq

    slab = cq.Workplane("XY").workplane(offset=z).rect(999, 999).extrude(1e-4)
    slice_: Any = slab.intersect(cq.Workplane(solid(pad))).val()
    return float(slice_.BoundingBox(1e-5).ymax)


def drawn_extent_at(view: View, z: float) -> float:
    """The outermost point that the view shows at a height."""
    reached = 0.0
    for shape in view.shapes:
        if isinstance(shape, Arc):
            (x, y), r = shape.centre, shape.radius_mm
            if x > 0 and abs(z - y) < r and z < y:
                reached = max(reached, x + sqrt(r * r - (z - y) ** 2))
            continue
        points = (
            shape.points if isinstance(shape, Curve) else (shape.start, shape.end) if isinstance(shape, Line) else ()
        )
        for (ax, az), (bx, bz) in pairwise(points):
            if min(az, bz) <= z <= max(az, bz) and az != bz:
                reached = max(reached, ax + (bx - ax) * (z - az) / (bz - az))
    return reached


def test_the_side_views_outline_is_the_solids(pad: Pad) -> None:
    view = side_view(pad, over_mm=0)
    low, high = -pad.stem_length_mm, pad.top_height_mm
    heights = [low + (high - low) * (i + 0.37) / 17 for i in range(17)]
    heights += [pad.web_mm + 0.3 * pad.slot_corner_radius_mm, high - 0.4 * pad.edge_chamfer_mm]
    for z in heights:
        assert drawn_extent_at(view, z) == pytest.approx(extent_at(pad, z), abs=TOLERANCE_MM)


def test_every_point_of_the_isometric_picture_is_on_the_solid_as_seen_from_there(pad: Pad) -> None:
    """The picture's box is that of the solid turned so that the kernel looks along the same diagonal."""
    import cadquery as cq

    toward, right = cq.Vector(1, -1, 1).normalized(), cq.Vector(1, 1, 0).normalized()
    seen = solid(pad).located(cq.Location(cq.Plane((0, 0, 0), right, toward)).inverse)
    box, drawn = seen.BoundingBox(1e-4), isometric_view(pad).box
    assert (drawn.left, drawn.right) == pytest.approx((box.xmin, box.xmax), abs=0.02)
    assert (drawn.bottom, drawn.top) == pytest.approx((box.ymin, box.ymax), abs=0.02)


def test_the_isometric_picture_hides_what_is_behind() -> None:
    """The stem's foot shows, the seat's far side does not: half of the seat's lower edge is at most seen."""
    view = isometric_view(KNOWN["long stem"])
    low = [y for shape in view.shapes for _, y in (shape.points if isinstance(shape, Curve) else ()) if y < -25]
    assert low
    hidden = [shape for shape in view.shapes if isinstance(shape, Line) and shape.start[0] == 0]
    assert not hidden


@pytest.mark.parametrize("make", [section_view, side_view, top_view, underside_view])
def test_views_do_not_lean_to_one_side(make: Any, pad: Pad) -> None:
    box = make(pad, over_mm=1.0).box
    assert box.left == pytest.approx(-box.right, abs=1e-9)
