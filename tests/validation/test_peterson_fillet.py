"""Peterson/Pilkey, *Stress Concentration Factors*, shoulder fillet in a flat bar in bending: coefficients in two public code
copies (one for each branch), with a worked value for q = 0.5, D = 1.2, d = 0.8, r = 0.4.

Both copies print the last sign of the lower branch as minus: then K_t = 1.267, and the two branches part at q = 2. With
plus, 1.274 and they meet. The bar is also computed with scikit-fem 12 (own oracle): before anything was adjusted, the
formula lay 0.3 % above the finite elements at q = 0.5, 3 % below at q = 2, 0.5 % above at q = 5, 6.5 % below at q = 7.5.

The program does not use the chart: a slot wall is no stepped bar (test_own_fe_wall_root.py). The chart is the outside witness
for the finite elements that the wall's own factor was fitted to.
"""

from math import sqrt

import numpy as np
import pytest

from tests.validation.fe import Array, Plane, arc, graded_mesh

COEFFICIENTS = {
    False: ((1.006, 0.967, 0.013), (-0.270, -2.372, 0.708), (0.662, 1.157, -0.908), (-0.405, 0.249, 0.200)),
    True: ((1.058, 1.002, -0.038), (-3.652, 1.639, -0.436), (6.170, -5.687, 1.175), (-2.558, 3.046, -0.701)),
}
"""For q up to 2, and above."""


def chart_factor(*, wall_mm: float, slot_width_mm: float, fillet_radius_mm: float) -> float:
    """K_t = C1 + C2 u + C3 u² + C4 u³ with u = 2h/D, q = h/r, for a bar that steps from D = wall + slot to d = wall."""
    q, u = slot_width_mm / 2 / fillet_radius_mm, slot_width_mm / (wall_mm + slot_width_mm)
    terms = (a + b * sqrt(q) + c * q for a, b, c in COEFFICIENTS[q > 2])
    return sum(term * u**power for power, term in enumerate(terms))


WORKED = {"wall_mm": 0.8, "slot_width_mm": 0.4, "fillet_radius_mm": 0.4}


def test_the_worked_value_with_the_corrected_sign() -> None:
    """Oracle: C1 1.696, C2 −1.594, C3 1.026 as printed; K_t 1.274 with + 0.200 q."""
    assert chart_factor(**WORKED) == pytest.approx(1.274, abs=5e-4)


def test_the_worked_value_as_printed_differs_by_that_sign_alone() -> None:
    """Oracle: the printed 1.267 = 1.274 less 2 · 0.200 q u³, u = 1/3."""
    assert chart_factor(**WORKED) - 2 * 0.200 * 0.5 / 27 == pytest.approx(1.267, abs=5e-4)


def test_the_branches_meet_at_q_2() -> None:
    """Oracle: 1.8160 from below and 1.8158 from above for D/d = 1.4."""
    below = chart_factor(wall_mm=1, slot_width_mm=0.4, fillet_radius_mm=0.1 * (1 + 1e-9))
    above = chart_factor(wall_mm=1, slot_width_mm=0.4, fillet_radius_mm=0.1 * (1 - 1e-9))
    assert below == pytest.approx(1.8160, abs=1e-4)
    assert above == pytest.approx(1.8158, abs=1e-4)


def bar_by_finite_elements(wide: float, narrow: float, radius: float) -> float:
    """Peak over nominal stress in a stepped bar, symmetric about its axis, in pure bending."""
    centre, step = (radius, narrow / 2 + radius), 1.5 * wide
    corners = [(-step, 0), (2 * narrow, 0), (2 * narrow, narrow / 2)]
    outline = np.concatenate(
        [
            corners,
            arc(centre, radius, (270, 180), 40),
            [(0, wide / 2), (-step, wide / 2)],
        ]  # the fillet, then the shoulder
    )
    finest = radius * np.pi / 80

    def size(p: Array) -> Array:
        away = np.hypot(*(p - np.array(centre)).T) - radius
        return np.asarray(np.minimum(np.maximum(finest, 0.18 * away + finest), wide / 8), dtype=float)

    bar = Plane(graded_mesh(outline, size), modulus=1000, poisson=0.3, strain=False)
    bar.push(lambda x: np.isclose(x[0], 2 * narrow), lambda x: (2 * x[1] / narrow, 0 * x[1]))
    corner = int(np.argmin(np.hypot(bar.mesh.p[0] + step, bar.mesh.p[1])))
    sides = (
        bar.held(lambda x: np.isclose(x[1], 0) | np.isclose(x[0], -step), "u^1"),
        [bar.basis.nodal_dofs[1, corner]],
    )
    u = bar.solve(np.unique(np.concatenate(sides)))
    on_fillet = bar.edge_stress(u, lambda x: abs(np.hypot(x[0] - centre[0], x[1] - centre[1]) - radius) < 1e-3 * radius)
    return float(on_fillet[1].max())


@pytest.mark.parametrize(
    ("wide", "radius", "agreement"), [(1.2, 0.2, 0.04), (1.4, 0.1, 0.04), (2, 0.1, 0.02), (1.3, 0.02, 0.08)]
)
def test_the_chart_agrees_with_finite_elements_for_a_stepped_bar(wide: float, radius: float, agreement: float) -> None:
    """Own oracle, narrow part 1: the chart is right for the bar that it was made for."""
    formula = chart_factor(wall_mm=1, slot_width_mm=wide - 1, fillet_radius_mm=radius)
    assert formula == pytest.approx(bar_by_finite_elements(wide, 1, radius), rel=agreement)
