"""What stands around the pad in the turning view is where the measurements put it."""

from itertools import pairwise

import pytest

from geometry.design import Design, design_pad
from geometry.drawing.bodies import Body, bodies_around
from geometry.measurements import read_measurements
from tests.documents import sample, van

SAMPLES = ("mobile_library_van", "tool_library_hatchback_stem", "choir_minibus_printed", "allotment_estate_inch_shop")


@pytest.fixture(params=SAMPLES)
def design(request: pytest.FixtureRequest) -> Design:
    return design_pad(read_measurements(sample(request.param)))


def bodies(design: Design) -> dict[str, Body]:
    return {body.name: body for body in bodies_around(design.measurements, design.pad)}


def test_every_outline_is_walked_anticlockwise_and_has_no_point_twice(design: Design) -> None:
    """Anticlockwise is a positive area by the shoelace formula; the view needs it to tell inside from outside."""
    for body in bodies(design).values():
        closed = (*body.outline, body.outline[0])
        assert sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairwise(closed)) > 0, body.name
        assert len(set(body.outline)) == len(body.outline)


def test_the_cup_has_the_bore_and_depth_that_were_measured(design: Design) -> None:
    cup, foot = bodies(design)["cup"], design.conditions.foot
    rim = max(z for _, z in cup.outline)
    assert rim == pytest.approx(foot.depth_mm)
    assert min(r for r, z in cup.outline if z == rim) == pytest.approx(foot.bore_mm / 2)
    assert min(r for r, _ in cup.outline) >= 0


def test_the_seam_stands_on_the_slots_floor_and_reaches_into_the_sill(design: Design) -> None:
    around = bodies(design)
    xs, zs = zip(*around["seam"].outline, strict=True)
    assert min(zs) == design.pad.web_mm
    assert max(xs) - min(xs) == pytest.approx(design.conditions.seam.thickness_mm)
    assert min(z for _, z in around["sill"].outline) < max(zs)


def test_the_turning_stem_finds_its_hole(design: Design) -> None:
    """A pad with a stem stands in a cup with a hole wider than the stem and, where it ends, deeper."""
    pad, cup = design.pad, bodies(design)["cup"]
    if not pad.has_stem:
        assert min(r for r, z in cup.outline if z == 0) == 0
        return
    assert min(r for r, z in cup.outline if z == 0) > pad.stem_diameter_mm / 2
    assert min(z for _, z in cup.outline) < -pad.stem_length_mm


def test_a_boss_stands_in_the_cup_and_a_seam_beside_the_axis_is_beside_it() -> None:
    boss = design_pad(read_measurements(van(jack__floor_boss_height_mm=4, jack__floor_boss_diameter_mm=20)))
    beside = design_pad(read_measurements(van(seam__offset_mm=4)))
    cup, seam = bodies(boss)["cup"], bodies(beside)["seam"]
    assert {(0.0, 4.0), (10.0, 4.0), (10.0, 0.0)} <= set(cup.outline)
    xs = [x for x, _ in seam.outline]
    assert (min(xs) + max(xs)) / 2 == pytest.approx(beside.pad.slot_offset_mm)
