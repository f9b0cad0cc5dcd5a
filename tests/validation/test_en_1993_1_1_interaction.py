"""EN 1993-1-1:2005, 6.2.9.1(3), rectangular solid section: M_N,Rd = M_pl,Rd [1 − (N_Ed/N_pl,Rd)²] (from memory).

Confirmed here from its definition: a rectangle that is fully plastic, its middle carrying the axial force.
"""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.seam import bending_interaction

HEIGHT, YIELD = st.floats(0.5, 6), st.floats(100, 600)


def plastic_section(thickness: float, fy: float, shift: float) -> tuple[float, float]:
    """Axial force and moment per length of a plastic rectangle whose neutral line lies ``shift`` half-thicknesses off."""
    fibres = (np.arange(20_000) + 0.5) / 20_000 * thickness - thickness / 2
    stress = np.where(fibres > -shift * thickness / 2, fy, -fy)
    return float(stress.mean() * thickness), float((stress * fibres).mean() * thickness)


@given(HEIGHT, YIELD, st.floats(0, 0.98), st.floats(0.5, 40))
def test_a_fully_plastic_strip_is_used_to_exactly_one(thickness: float, fy: float, shift: float, lever: float) -> None:
    """Oracle: stresses summed over 20 000 fibres; H is the side load that makes the plastic moment at the lever."""
    axial, moment = plastic_section(thickness, fy, shift)
    used = bending_interaction(
        pressure_mpa=axial / thickness,
        yield_mpa=fy,
        side_force_n=moment / lever,
        strip_mm=lever,
        loaded_length_mm=1.0,
        bare_thickness_mm=thickness,
    )
    assert used == pytest.approx(1.0, abs=1e-3)


@given(HEIGHT, YIELD, st.floats(0, 1))
def test_the_form_of_the_standard_is_met(thickness: float, fy: float, n: float) -> None:
    """Oracle: M = f_y t²/4 (1 − n²) per length, N = n f_y t."""
    moment = fy * thickness**2 / 4 * (1 - n**2)
    used = bending_interaction(
        pressure_mpa=n * fy,
        yield_mpa=fy,
        side_force_n=moment,
        strip_mm=1,
        loaded_length_mm=1,
        bare_thickness_mm=thickness,
    )
    assert used == pytest.approx(1.0, abs=1e-9)
