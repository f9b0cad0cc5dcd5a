"""Where a disc and a rectangle meet, against a library of planar geometry and against plain bounds."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.heads.face.lip import lip_load
from geometry.heads.overlap import disc_in_rectangle_mm2

_SIDES = st.floats(2, 200)


@settings(max_examples=200, deadline=None)
@given(_SIDES, _SIDES, _SIDES, st.floats(0, 1))
def test_the_shared_area_is_that_of_an_integration_in_small_steps(d: float, w: float, l: float, share: float) -> None:  # noqa: E741
    """Oracle: the quarter outline added up in 4000 strips."""
    corner = share * min(w, l) / 2
    n, end = 4000, min(w, d) / 2
    total = 0.0
    for i in range(n):
        x = (i + 0.5) * end / n
        over = max(0.0, x - (w / 2 - corner))
        outline = l / 2 - corner + math.sqrt(max(0.0, corner**2 - over**2))
        total += min(outline, math.sqrt(d**2 / 4 - x**2)) * end / n
    found = disc_in_rectangle_mm2(diameter_mm=d, width_mm=w, length_mm=l, corner_radius_mm=corner)
    assert found == pytest.approx(4 * total, rel=2e-3)


@given(_SIDES, _SIDES, _SIDES, st.floats(0, 1))
def test_the_shared_area_does_not_depend_on_which_side_is_called_length(d: float, w: float, l: float, s: float) -> None:  # noqa: E741
    corner = s * min(w, l) / 2
    one, other = (
        disc_in_rectangle_mm2(diameter_mm=d, width_mm=a, length_mm=b, corner_radius_mm=corner)
        for a, b in ((w, l), (l, w))
    )
    assert one == pytest.approx(other, rel=1e-6)
    assert one <= min(math.pi / 4 * d**2, w * l) + 1e-3


@settings(max_examples=50)
@given(st.floats(10, 60), st.floats(0, 80), st.floats(0, 40), st.floats(0.1, 30))
def test_the_lip_passes_on_what_an_integration_over_its_wedge_gives(b: float, c: float, more: float, p: float) -> None:
    """Oracle: a wedge of one radian, its pressure added up in 2000 rings, over its length b at the seat."""
    outer, start = c + more, max(b, c)
    shear = moment = 0.0
    n = 2000
    for i in range(n if outer > start else 0):
        r, dr = start + (i + 0.5) * (outer - start) / n, (outer - start) / n
        shear += p * r * dr / b
        moment += p * r * dr * (r - b) / b
    found = lip_load(pressure_mpa=p, seat_radius_mm=b, inner_radius_mm=c, outer_radius_mm=outer)
    assert found.shear_n_per_mm == pytest.approx(shear, rel=1e-4, abs=1e-9)
    assert found.moment_n == pytest.approx(moment, rel=1e-4, abs=1e-9)
