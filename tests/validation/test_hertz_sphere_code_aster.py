"""Hertz point contact: code_aster document V6.04.104, imposed crush of 4 mm: half width 10 mm, peak 2798.3 MPa, by the
formulas printed there, a = √(Rh/2) and p0 = E/(π(1 − ν²)) √(2h/R) (R 50, E 20 000, ν 0.3 inferred; they reproduce it
exactly): two equal spheres. And tutorsglobe 51707067: sphere of 8 mm on a rigid flat, 30 · 2π N, E 1000, ν 0.3: 1.010 mm.

The program has no such contact: a boss on the cup's floor is refused. The oracle shows that it must be.
"""

from math import pi

import pytest

from geometry.bearing import PRANDTL
from geometry.materials import MATERIALS


def hertz_sphere(force: float, radius: float, contact_modulus: float) -> tuple[float, float]:
    """Radius of the contact and peak pressure of a sphere pressed on a plane."""
    a = (3 * force * radius / (4 * contact_modulus)) ** (1 / 3)
    return a, 3 * force / (2 * pi * a**2)


def test_the_oracle_gives_the_published_crush() -> None:
    """Oracle: V6.04.104; equal spheres have half the radius and half the modulus, and F = 4/3 E* √R* h^1.5."""
    contact, radius = 20_000 / (1 - 0.3**2) / 2, 50 / 2
    force = 4 / 3 * contact * radius**0.5 * 4**1.5
    assert hertz_sphere(force, radius, contact) == pytest.approx((10, 2798.3), abs=0.05)


def test_the_oracle_gives_the_published_contact_of_a_ball() -> None:
    """Oracle: 1.010 mm as printed (1.0096)."""
    assert hertz_sphere(30 * 2 * pi, 8, 1000 / (1 - 0.3**2))[0] == pytest.approx(1.010, abs=1e-3)


@pytest.mark.parametrize("key", ["pa66", "pa6_cast", "pom_c", "pom_h", "uhmw_pe", "hdpe", "pet_p"])
def test_a_domed_screw_head_in_the_cup_would_go_through_any_plastic(key: str) -> None:
    """Own oracle: 10 kN on a dome of 20 mm radius press harder than the limit of a strip on every material for a pad."""
    entry = MATERIALS[key]
    sigma = entry.stress_minutes_mpa.value
    _, peak = hertz_sphere(10_000, 20, entry.modulus_minutes_mpa.value / (1 - 0.4**2))
    assert 2 / 3 * peak > PRANDTL * 2 * sigma / 1.5
