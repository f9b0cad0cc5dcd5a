"""The picture that a page shows before anything turns: tinted exactly where the solid is; oracle: the kernel's own mesh."""

import re
from itertools import pairwise
from math import sqrt
from xml.etree import ElementTree

import numpy as np
import pytest
from numpy.typing import NDArray

from geometry.drawing.isometric_svg import body_hulls, isometric_svg, seen_through
from geometry.drawing.isometric_tint import covered
from geometry.pad import Pad
from tests.drawing.pads import KNOWN
from tests.geometry.pads import EVERY_KIND

GRID = 100
Points = NDArray[np.float64]
Mask = NDArray[np.bool_]


PADS = {**KNOWN, **EVERY_KIND}


@pytest.fixture(params=PADS)
def pad(request: pytest.FixtureRequest) -> Pad:
    return PADS[request.param]


def covered_by_solid(pad: Pad, xs: NDArray[np.float64], ys: NDArray[np.float64]) -> Mask:
    """Which points of a grid on paper some triangle of the mesh covers, seen along (1, −1, 1); row by row."""
    import cadquery as cq

    from geometry.solid import build_solid

    vertices, triangles = cq.Shape.cast(build_solid(pad)).tessellate(0.02, 0.1)
    x, y, z = np.array([vertex.toTuple() for vertex in vertices]).T
    flat = np.stack(((x + y) / sqrt(2), (2 * z - x + y) / sqrt(6)), axis=1)
    covered = np.zeros((len(ys), len(xs)), dtype=bool)
    corners = flat[np.array(triangles)]
    # What turns its back lies behind what turns to the eye: a solid's skin is closed. The largest come first.
    doubled = cross((corners[:, 1] - corners[:, 0]).T, corners[:, 2] - corners[:, 0])
    # Only the points in the box around a triangle are looked at.
    low, high = corners.min(axis=1), corners.max(axis=1)
    (left, lowest), (right, highest) = (
        [np.searchsorted(v, ends[:, i]) for i, v in enumerate((xs, ys))] for ends in (low, high)
    )
    for at in np.argsort(-doubled):
        if doubled[at] <= 0:
            break
        rows, columns = slice(lowest[at], highest[at]), slice(left[at], right[at])
        if covered[rows, columns].all():
            continue
        points = np.stack(np.meshgrid(xs[columns], ys[rows]), axis=-1)
        a, b, c = corners[at]
        covered[rows, columns] |= np.all([cross(q - p, points - p) >= 0 for p, q in ((a, b), (b, c), (c, a))], axis=0)
    return covered.ravel()


def inside(outline: tuple[tuple[float, float], ...], points: Points) -> Mask:
    """Which points lie within an outline: those whose ray to the right crosses it an odd number of times."""
    found = np.zeros(len(points), dtype=bool)
    for (x0, y0), (x1, y1) in pairwise((*outline, outline[0])):
        if y0 != y1:
            crosses = (y0 > points[:, 1]) != (y1 > points[:, 1])
            found ^= crosses & (points[:, 0] < x0 + (x1 - x0) * (points[:, 1] - y0) / (y1 - y0))
    return found


def cross(way: Points, to: Points) -> Points:
    return np.asarray(way[0] * to[..., 1] - way[1] * to[..., 0])


def test_the_tint_covers_what_the_solid_covers(pad: Pad) -> None:
    """Of 10 000 points spread over the picture, at most 5 in 1000 differ: those on the very outline."""
    hulls, through = (list(body_hulls(pad)), seen_through(pad)) if pad.is_plain else (list(covered(pad)), ())
    corners = np.array([point for hull in hulls for point in hull])
    # The outermost row and column would lie on the outline itself.
    xs, ys = (np.linspace(corners[:, i].min(), corners[:, i].max(), GRID + 2)[1:-1] for i in (0, 1))
    points = np.stack([axis.ravel() for axis in np.meshgrid(xs, ys)], axis=1)
    tinted = np.any([inside(hull, points) for hull in hulls], axis=0)
    tinted &= ~inside(through, points) if through else True
    solid = covered_by_solid(pad, xs, ys)
    assert 0.5 < solid.mean() < 1
    assert np.mean(tinted != solid) < 0.005


def test_the_picture_is_whole_and_free_of_style(pad: Pad) -> None:
    """A strict content policy refuses style blocks and attributes; every number is finite."""
    picture = isometric_svg(pad, title="The pad", description="A <round> block & a slot", name="one")
    root = ElementTree.fromstring(picture)  # noqa: S314  our own picture
    assert not re.search(r"<style|style=|nan|inf", picture)
    assert root.get("aria-labelledby") == "one-title one-words"
    assert [child.text for child in root][:2] == ["The pad", "A <round> block & a slot"]
    assert len(picture) < (30_000 if pad.is_plain else 80_000)
