"""Own oracle's own test: a cantilever of 50 × 5, E 3000, ν 0.35, unit load at its end.

1.3408 by scikit-fem in an earlier, independent calculation; Timoshenko's beam 1.3441, Euler's 1.3333 (mechanics texts).
"""

import numpy as np
import pytest

from tests.validation.fe import Array, Plane, graded_mesh


def _bar(size_mm: float) -> tuple[Plane, Array]:
    outline = np.array([(0, 0), (50, 0), (50, 5), (0, 5)], dtype=float)
    bar = Plane(graded_mesh(outline, lambda p: np.full(len(p), size_mm)), modulus=3000, poisson=0.35, strain=False)
    bar.push(lambda x: np.isclose(x[0], 50), lambda x: (0 * x[0], -1 / 5 + 0 * x[0]))
    return bar, bar.solve(bar.held(lambda x: np.isclose(x[0], 0), "u^1", "u^2"))


def test_the_end_of_a_cantilever_sinks_as_computed_before() -> None:
    """Oracle: 1.3408, and between Euler and Timoshenko."""
    bar, u = _bar(1.25)
    sunk = -float(u[bar.held(lambda x: np.isclose(x[0], 50), "u^2")].mean())
    assert sunk == pytest.approx(1.3408, rel=0.002)
    assert 1.3333 < sunk < 1.3441


def test_the_skin_of_a_cantilever_is_stressed_as_a_beam_s() -> None:
    """Oracle: 6 P x/h² = 6 at 25 from the load, on the upper side."""
    bar, u = _bar(1.25)
    places, stress = bar.edge_stress(u, lambda x: np.isclose(x[1], 5) & (abs(x[0] - 25) < 3))
    assert np.interp(25, places[0][np.argsort(places[0])], stress[np.argsort(places[0])]) == pytest.approx(6, rel=0.01)
