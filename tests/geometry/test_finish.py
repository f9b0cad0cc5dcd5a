"""Turned finish, and a corner radius cut as facets."""

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.finish import corner_facets, facet_cusp_mm, roughness_average_um

RADII = st.floats(0.5, 60)
COUNTS = st.integers(1, 12)


def outside_mm(radius_mm: float, inset_mm: float, height_mm: float) -> float:
    """How far a place stands outside the arc, whose centre is one radius in and one radius up."""
    return math.hypot(inset_mm - radius_mm, height_mm - radius_mm) - radius_mm


@pytest.mark.parametrize(
    ("facets", "cusp"),
    [(1, 0.414), (2, 0.0824), (3, 0.0353), (4, 0.0196), (6, 0.00863), (8, 0.00484), (12, 0.00215)],
)
def test_the_cusp_of_a_radius_of_one(facets: int, cusp: float) -> None:
    """Oracle: 1/cos(45°/N) − 1, computed apart from this program to three digits."""
    assert facet_cusp_mm(radius_mm=1, facets=facets) == pytest.approx(cusp, rel=2.5e-3)


@given(radius=RADII, facets=st.integers(2, 12))
def test_the_edges_between_the_cuts_stand_out_by_the_cusp(radius: float, facets: int) -> None:
    """Oracle: the distance of each edge from the centre of the arc, by Pythagoras."""
    cuts = corner_facets(radius_mm=radius, facets=facets)
    highest = max(outside_mm(radius, cut.end_inset_mm, cut.end_height_mm) for cut in cuts)
    assert highest == pytest.approx(facet_cusp_mm(radius_mm=radius, facets=facets), abs=1e-10)


@given(radius=RADII, facets=COUNTS)
def test_every_cut_touches_the_arc_and_none_goes_below_it(radius: float, facets: int) -> None:
    """Oracle: the distance of the centre of the arc from the line of the cut is the radius."""
    for cut in corner_facets(radius_mm=radius, facets=facets):
        run = (cut.end_inset_mm - cut.start_inset_mm, cut.end_height_mm - cut.start_height_mm)
        to_centre = (radius - cut.start_inset_mm, radius - cut.start_height_mm)
        distance = abs(run[0] * to_centre[1] - run[1] * to_centre[0]) / math.hypot(*run)
        assert distance == pytest.approx(radius, rel=1e-9)


@given(radius=RADII, facets=COUNTS)
def test_the_cuts_run_unbroken_from_the_face_to_the_diameter(radius: float, facets: int) -> None:
    """Oracle: each cut starts where the one before it ends."""
    cuts = corner_facets(radius_mm=radius, facets=facets)
    assert len(cuts) == facets
    assert cuts[0].start_height_mm == pytest.approx(0, abs=1e-9)
    assert cuts[-1].end_inset_mm == pytest.approx(0, abs=1e-9)
    for a, b in pairwise(cuts):
        assert (a.end_inset_mm, a.end_height_mm) == (b.start_inset_mm, b.start_height_mm)


@given(radius=RADII, facets=COUNTS)
def test_the_corner_looks_the_same_from_the_face_and_from_the_side(radius: float, facets: int) -> None:
    """Oracle: the bisector of the corner is an axis of symmetry."""
    cuts = corner_facets(radius_mm=radius, facets=facets)
    for a, b in zip(cuts, reversed(cuts), strict=True):
        assert (a.start_inset_mm, a.start_height_mm) == pytest.approx((b.end_height_mm, b.end_inset_mm), abs=1e-9)
        assert a.angle_from_axis_deg + b.angle_from_axis_deg == pytest.approx(90, abs=1e-9)


@given(radius=RADII, facets=COUNTS)
def test_the_slide_is_swivelled_to_the_slope_of_the_cut(radius: float, facets: int) -> None:
    """Oracle: the slope from the two ends; the axis is where only the height changes."""
    for cut in corner_facets(radius_mm=radius, facets=facets):
        slope = math.atan2(cut.start_inset_mm - cut.end_inset_mm, cut.end_height_mm - cut.start_height_mm)
        assert cut.angle_from_axis_deg == pytest.approx(math.degrees(slope), abs=1e-6)


@given(feed=st.floats(0.01, 0.5), nose=st.floats(0.3, 2))
def test_the_average_is_that_of_the_ridges_a_round_nose_leaves(feed: float, nose: float) -> None:
    """Oracle: the mean distance of one ridge, an arc of the nose, from its own mean line, summed in 2000 steps."""
    across = np.linspace(-feed / 2, feed / 2, 2001)
    ridge = nose - np.sqrt(nose**2 - across**2)
    exact_um = 1000 * float(np.mean(np.abs(ridge - np.mean(ridge))))
    estimate = roughness_average_um(feed_mm_rev=feed, nose_radius_mm=nose)
    assert 1.02 <= exact_um / estimate <= 1.04 + (feed / nose) ** 2 / 8
