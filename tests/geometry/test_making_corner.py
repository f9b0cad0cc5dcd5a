"""The corner radius by facets: never inside the true arc, as few as the wanted ridge allows."""

from itertools import pairwise
from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.drawing.model import Layer, Line
from geometry.finish import corner_facets, facet_cusp_mm
from geometry.making.corner import MOST_FACETS, facet_picture, facet_table, facets_for

RADII = st.floats(0.5, 30)
COUNTS = st.integers(1, MOST_FACETS)


@given(radius=RADII, count=COUNTS, share=st.floats(0, 1))
def test_facets_never_cut_into_the_true_arc(radius: float, count: int, share: float) -> None:
    """Oracle: from the arc's centre (one radius in, one radius up) no point of a facet is nearer than the radius."""
    for cut in corner_facets(radius_mm=radius, facets=count):
        inset = cut.start_inset_mm + share * (cut.end_inset_mm - cut.start_inset_mm)
        height = cut.start_height_mm + share * (cut.end_height_mm - cut.start_height_mm)
        assert hypot(radius - inset, radius - height) >= radius * (1 - 1e-12)


@given(radius=RADII, count=COUNTS, past=st.floats(-5, 5))
def test_a_cut_that_runs_past_its_ends_still_spoils_nothing(radius: float, count: int, past: float) -> None:
    """Oracle: the card has every line run on until the tool is clear; no point of it is nearer than the radius."""
    for cut in corner_facets(radius_mm=radius, facets=count):
        inset = cut.start_inset_mm + past * (cut.end_inset_mm - cut.start_inset_mm)
        height = cut.start_height_mm + past * (cut.end_height_mm - cut.start_height_mm)
        assert hypot(radius - inset, radius - height) >= radius * (1 - 1e-12)


@given(radius=RADII, count=COUNTS)
def test_facets_join_from_the_face_to_the_seats_side(radius: float, count: int) -> None:
    """Oracle: the first starts on the face, the last ends on the side, each starts where the one before ended."""
    cuts = corner_facets(radius_mm=radius, facets=count)
    assert cuts[0].start_height_mm == pytest.approx(0, abs=1e-9)
    assert cuts[-1].end_inset_mm == pytest.approx(0, abs=1e-9)
    for a, b in pairwise(cuts):
        assert (a.end_inset_mm, a.end_height_mm) == (b.start_inset_mm, b.start_height_mm)


@given(radius=RADII, count=st.integers(2, MOST_FACETS))
def test_the_ridge_is_as_tall_as_stated(radius: float, count: int) -> None:
    """Oracle: where two facets meet, measured from the arc's centre."""
    cut = corner_facets(radius_mm=radius, facets=count)[0]
    ridge = hypot(radius - cut.end_inset_mm, radius - cut.end_height_mm) - radius
    assert ridge == pytest.approx(facet_cusp_mm(radius_mm=radius, facets=count), rel=1e-6)


@given(radius=RADII, limit=st.floats(0.01, 2))
def test_as_few_facets_as_the_ridge_allows(radius: float, limit: float) -> None:
    """Oracle: one facet fewer leaves a taller ridge than wanted; twelve are the most."""
    count = facets_for(radius_mm=radius, cusp_limit_mm=limit)
    assert count == MOST_FACETS or facet_cusp_mm(radius_mm=radius, facets=count) <= limit
    assert count == 1 or facet_cusp_mm(radius_mm=radius, facets=count - 1) > limit


def test_two_cuts_of_a_10_mm_corner_by_hand() -> None:
    """Oracle: tangents at 22.5° and 67.5°: the first starts 10 − 10 tan 11.25° in; both meet at 10/cos 22.5° on the 45° line."""
    table = facet_table(seat_diameter_mm=60, radius_mm=10, facets=2, slide="diameter")
    first = table.rows[0]
    assert first[:4] == pytest.approx((1, 67.5, 60 - 2 * (10 - 10 * 0.198912), 0), abs=1e-4)
    assert first[5:7] == pytest.approx((60 - 2 * (10 - 10.823922 * 0.707107), 10 - 10.823922 * 0.707107), abs=1e-4)


def test_a_dial_that_counts_diameter_reads_twice_the_inset() -> None:
    """Oracle: one column against the other."""
    by_slide = [facet_table(seat_diameter_mm=60, radius_mm=6, facets=4, slide=s).rows for s in ("radius", "diameter")]
    for one, two in zip(*by_slide, strict=True):
        assert two[4] == pytest.approx(2 * one[4], abs=1e-12)


def test_the_picture_has_a_thick_line_for_each_cut_and_two_for_face_and_side() -> None:
    """Oracle: four cuts."""
    shapes = facet_picture(radius_mm=5, facets=4).view.shapes
    assert sum(isinstance(s, Line) and s.layer is Layer.VISIBLE for s in shapes) == 6
