"""What heat, water and time leave of strength and stiffness."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.allowables import Hold, allowable_mpa, holding_modulus_mpa, temperature_factor
from geometry.growth import Wetness
from geometry.materials import MATERIALS, Material

HOLDS: tuple[Hold, ...] = ("minutes", "overnight", "stored")
WETNESSES: tuple[Wetness, ...] = ("dry", "room", "soaked")
materials = st.sampled_from(list(MATERIALS.values()))
holds = st.sampled_from(HOLDS)
wetnesses = st.sampled_from(WETNESSES)
temperatures = st.floats(-60, 150)


@given(entry=materials, hold=holds, wetness=wetnesses, first=temperatures, second=temperatures)
def test_heat_never_raises_strength_or_stiffness(
    entry: Material, hold: Hold, wetness: Wetness, first: float, second: float
) -> None:
    for answer in (allowable_mpa, holding_modulus_mpa):
        cool = answer(entry, hold=hold, temperature_high_c=min(first, second), wetness=wetness)
        warm = answer(entry, hold=hold, temperature_high_c=max(first, second), wetness=wetness)
        assert (cool is None) == (warm is None)
        if cool is not None and warm is not None:
            assert 0 < warm <= cool


@given(entry=materials, wetness=wetnesses, temperature=temperatures)
def test_a_longer_hold_never_raises_strength_or_stiffness(
    entry: Material, wetness: Wetness, temperature: float
) -> None:
    for answer in (allowable_mpa, holding_modulus_mpa):
        found = [answer(entry, hold=hold, temperature_high_c=temperature, wetness=wetness) for hold in HOLDS]
        allowed = [value for value in found if value is not None]
        assert len(allowed) >= 2
        assert found[: len(allowed)] == allowed == sorted(allowed, reverse=True)


@given(entry=materials, hold=holds, temperature=temperatures)
def test_water_never_raises_strength_or_stiffness(entry: Material, hold: Hold, temperature: float) -> None:
    for answer in (allowable_mpa, holding_modulus_mpa):
        found = [answer(entry, hold=hold, temperature_high_c=temperature, wetness=wetness) for wetness in WETNESSES]
        values = [0.0 if value is None else value for value in found]
        assert values == sorted(values, reverse=True)


def test_strength_falls_in_a_straight_line_to_a_floor() -> None:
    """Oracle: 1 − k (T − 23) above 23 °C, never below 0.3, worked by hand for nylon, polyethylene and aluminium."""
    worked = {
        ("pa66", 20): 1,
        ("pa66", 23): 1,
        ("pa66", 73): 0.5,
        ("pa66", 120): 0.3,
        ("hdpe", 63): 0.48,
        ("aluminium", 90): 1,
    }
    for (key, temperature), factor in worked.items():
        assert temperature_factor(MATERIALS[key], temperature_high_c=temperature) == pytest.approx(factor, abs=1e-12)


def test_heat_and_water_multiply() -> None:
    """Oracle: cast nylon stored at 53 °C, soaked: 11 × 0.70 × 0.65 MPa and 1400 × 11/25 × 0.70 × 0.65 MPa by hand."""
    entry = MATERIALS["pa6_cast"]
    stress = allowable_mpa(entry, hold="stored", temperature_high_c=53, wetness="soaked")
    modulus = holding_modulus_mpa(entry, hold="stored", temperature_high_c=53, wetness="soaked")
    assert stress == pytest.approx(5.005, abs=1e-9)
    assert modulus == pytest.approx(280.28, abs=1e-9)
