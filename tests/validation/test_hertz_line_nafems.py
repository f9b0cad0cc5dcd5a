"""Hertz line contact: Konter, NAFEMS 2006, quoted in code_aster document V6.01.122: 35 kN on a cylinder 1 mm long, R 50 mm,
E 210 and 70 GPa, ν 0.3: half width 6.21 mm, peak 3585 MPa (citation read; numbers from memory, recomputed).

The program uses no Hertz contact: the oracle shows why. A seam's edge is rounded at first touch, and this tells how far it
has sunk when its whole width bears.
"""

from math import pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.bearing import PRANDTL, floor_strength_mpa, indentation_mm


def hertz_line(q: float, radius: float, contact_modulus: float) -> tuple[float, float]:
    """Half width and peak pressure of a cylinder pressed on a plane by ``q`` per length."""
    a = sqrt(4 * q * radius / (pi * contact_modulus))
    return a, 2 * q / (pi * a)


def test_the_oracle_gives_the_published_cylinder_on_a_block() -> None:
    """Oracle: NAFEMS, 6.21 mm and 3585 MPa."""
    contact = 1 / ((1 - 0.3**2) / 210_000 + (1 - 0.3**2) / 70_000)
    a, p0 = hertz_line(35_000, 50, contact)
    assert a == pytest.approx(6.21, abs=0.01)
    assert p0 == pytest.approx(3585, abs=1)


@given(st.floats(0.6, 5), st.floats(8, 40), st.floats(500, 3000))
def test_a_round_edge_would_have_flowed_long_before_the_limit(edge: float, sigma: float, modulus: float) -> None:
    """Own oracle: at the pressure that the program allows, an elastic round edge (R = t/2) would press more than Prandtl's
    limit on less than the whole width, so the flow formula governs and not Hertz. Materials with σ up to E/15."""
    sigma = min(sigma, modulus / 15)
    q = floor_strength_mpa(factor=PRANDTL, allowable_mpa=sigma) * edge
    a, p0 = hertz_line(q, edge / 2, modulus / (1 - 0.4**2))
    assert a < edge / 2
    assert p0 > PRANDTL * 2 * sigma


def test_a_fully_round_edge_sinks_a_third_of_a_millimetre_before_its_width_bears() -> None:
    """Own oracle: at the allowed pressure the flow limit 2.57 Y is reached on 1/1.5 of the width; a round edge of 2.4 mm is
    then in by R − √(R² − (t/3)²) = 0.31 mm, which the elastic indentation (0.2 mm) does not contain."""
    edge, sigma = 2.4, 24.9
    allowed = floor_strength_mpa(factor=PRANDTL, allowable_mpa=sigma)
    width = allowed * edge / (PRANDTL * 2 * sigma)
    sunk = edge / 2 - sqrt((edge / 2) ** 2 - (width / 2) ** 2)
    elastic = indentation_mm(pressure_mpa=allowed, edge_thickness_mm=edge, web_mm=18.5, modulus_mpa=2075)
    assert width == pytest.approx(edge / 1.5, rel=1e-9)
    assert sunk == pytest.approx(0.31, abs=0.01)
    assert elastic < sunk
