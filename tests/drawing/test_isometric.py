"""The isometric picture of every kind of pad against the kernel's own removal of hidden lines."""

from collections.abc import Iterator
from functools import cache
from itertools import pairwise
from math import cos, sin, sqrt

import numpy as np
import pytest
from hypothesis import given, settings

from geometry.drawing.inside import inside
from geometry.drawing.isometric import isometric_view
from geometry.drawing.model import Curve, Line
from geometry.levels import cross_section_area_mm2
from geometry.pad import Pad
from tests.drawing.kernel_views import Points, apart_mm, kernel_lines
from tests.drawing.pads import KNOWN
from tests.examples import examples
from tests.geometry.pads import EVERY_KIND, pads_of_any_kind

PADS = {**EVERY_KIND, **{name: KNOWN[name] for name in ("typical", "long stem")}}
APART_MM = 0.4
"""Between points taken along the kernel's lines."""


@cache
def drawn_lines(pad: Pad) -> Points:
    """Points along everything that the picture draws."""
    return np.concatenate(list(_drawn(pad)))


def _drawn(pad: Pad) -> Iterator[Points]:
    for shape in isometric_view(pad).shapes:
        assert isinstance(shape, Curve | Line)
        corners = np.array(shape.points if isinstance(shape, Curve) else (shape.start, shape.end))
        for a, b in pairwise(corners):
            count = max(2, int(np.hypot(*(b - a)) / APART_MM) + 1)
            yield a + np.linspace(0, 1, count)[:, None] * (b - a)


def farthest_mm(points: Points, others: Points) -> float:
    """How far any of the points is from the nearest of the others."""
    return float(apart_mm(points, others).max())


@pytest.mark.parametrize("name", PADS)
def test_what_is_drawn_is_seen_and_what_is_seen_is_drawn(name: str) -> None:
    """Every point both ways, to the steps in which points are taken: hidden stretches are left out to a hundredth of that."""
    drawn, seen = drawn_lines(PADS[name]), kernel_lines(PADS[name], eye=(1, -1, 1), right=(1, 1, 0), apart_mm=APART_MM)
    assert farthest_mm(drawn, seen) < 0.45
    assert farthest_mm(seen, drawn) < 0.45


@given(pads_of_any_kind())
@examples(10, many=500)
def test_any_kind_of_pad_has_a_picture(pad: Pad) -> None:
    """Finite, and as wide as the body, or as the body between its flats seen from there."""
    box = isometric_view(pad).box
    assert np.isfinite([box.left, box.right, box.bottom, box.top]).all()
    half = pad.body_diameter_mm / 2
    flat = pad.flats_width_mm / 2
    if flat and flat < half / sqrt(2):
        half = (flat + sqrt(half**2 - flat**2)) / sqrt(2)
    assert (box.left, box.right) == pytest.approx((-half, half), abs=0.01 * half)


@given(pads_of_any_kind())
@settings(max_examples=25, deadline=None)
def test_a_level_full_of_points_finds_the_area_in_closed_form(pad: Pad) -> None:
    """Points in a square grid that lie within, times their share of the square; to 1 in 100 of the square about the body.

    The grid is turned against slot, pocket and flats: else a whole row of it would fall this side or that of a wall.
    """
    side = 1.5 * pad.body_diameter_mm
    places = (np.arange(220) + 0.5) / 220 * side - side / 2
    along, across = (axis.ravel() for axis in np.meshgrid(places, places))
    x, y = along * cos(0.3) - across * sin(0.3), along * sin(0.3) + across * cos(0.3)
    for share in (0.13, 0.37, 0.61, 0.83, 0.97):
        z = -pad.foot_depth_mm + share * pad.overall_height_mm
        found = inside(pad, x, y, np.full_like(x, z)).mean() * side**2
        assert found == pytest.approx(cross_section_area_mm2(pad, z), abs=0.01 * pad.body_diameter_mm**2)
