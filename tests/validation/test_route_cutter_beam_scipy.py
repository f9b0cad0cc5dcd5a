"""The bend of a cutter against the beam equation integrated numerically with scipy (our own oracle)."""

from math import pi

import pytest
from scipy.integrate import solve_ivp

from geometry.making.cutter import cutter_deflection_mm


@pytest.mark.parametrize(("force", "reach", "cutter"), [(30.0, 20.0, 6.0), (120.0, 45.0, 10.0), (8.0, 12.0, 3.0)])
def test_the_end_of_a_cutter_moves_as_the_beam_equation_says(force: float, reach: float, cutter: float) -> None:
    """Oracle: E I w'' = F (L − x), clamped at x = 0, for a round rod of 0.8 of the cutter."""
    stiffness = 210_000 * pi * (0.8 * cutter) ** 4 / 64
    found = solve_ivp(
        lambda x, w: [w[1], force * (reach - x) / stiffness], (0, reach), [0.0, 0.0], rtol=1e-10, atol=1e-14
    )
    bent = cutter_deflection_mm(force_n=force, reach_mm=reach, cutter_diameter_mm=cutter, modulus_mpa=210_000)
    assert bent == pytest.approx(found.y[0][-1], rel=1e-6)
